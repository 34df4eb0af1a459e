"""Rules of what burns and what lies open: fuel inside, a flame beside it, a generator, a hole in the skin."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.safety.result import Flame, Fuelled, Result
from boxwright.disciplines.safety.solve import ends_of, gap_between
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.disciplines.safety.telling import LEAVE, SLEEP, measured_elsewhere, question, stop
from boxwright.finding import Finding
from boxwright.units import HeaderUnits, show


def fuel_inside(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which petrol or gas is inside where somebody sleeps, or while the trailer stands alone.

    Asks: is any fuel whose vapour lights in a room kept inside
    Limit: none, in either
    Source: petrol-indoors
    Lever: put it outside
    """
    for one in result.stores if result.use else ():
        if one.is_inside is False or one.fumes is False or (one.is_empty and not one.fumes):
            continue
        if one.is_empty:
            yield _emptied(one, result.use)
            continue
        made = _kept_inside(one, "with a sleeper" if result.use == "sleep" else "when the trailer is left")
        yield made if result.use == "sleep" else replace(made, uses=LEAVE, protects=False)


def _emptied(one: Fuelled, use: str) -> Finding:
    """Return what is said of a can or tank for petrol or gas that is inside and empty: its vapour is left."""
    store = one.store
    says = f"{store.name} is said to be empty; what held {store.fluid} still holds its vapour"
    act = f"Put {store.name} outside too, open and in the shade, or with its cap tight"
    return Finding(
        "safety/fuel-inside", store.of, "advice", says, source="petrol-indoors", lever=f"{store.of}.when_sleeping",
        act=act, minutes=5, uses=SLEEP if use == "sleep" else LEAVE, because=(store.of,),
    )  # fmt: skip


def _kept_inside(one: Fuelled, when: str) -> Finding:
    """Return what is said of a store that is, or may be, petrol or gas inside."""
    code, store = "safety/fuel-inside", one.store
    name, fluid, source = store.name, store.fluid or "fuel", "petrol-indoors"
    if one.fumes is None:
        read = f'"{fluid}" in {name} is nothing known here' if store.fluid else f"nobody wrote what is in {name}"
        act = f"Look what is in {name}, and write of: petrol, diesel, propane or water"
        says = f"{read}; petrol or gas may not be inside {when}"
        return question(code, store.of, says, act, 2, f"{store.of}.tank", source)
    if one.is_inside is None:
        says = f"nobody wrote where {name} stands, and {fluid} may not be inside {when}"
        act = f"Put {name} outside, and write where it stands"
        return question(code, store.of, says, act, 5, f"{store.of}.x", source)
    act = f"Put {name} outside, away from the door and any flame"
    lever = f"{store.of}.when_sleeping"
    if not store.is_there:
        says = f"{name} may be inside or not, and {fluid} may not be inside {when}"
        return question(code, store.of, says, act, 5, lever, source)
    says = f"{name} holds {fluid} inside {when}: its vapour creeps along the floor to any spark"
    return stop(code, store.of, says, act, 5, lever, source)


def flame_near_fuel(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which flame stands beside petrol or gas.

    Asks: how far is every flame from fuel whose vapour lights in a room
    Limit: 1 m, practice, so it advises; inside such fuel stops by itself
    Source: practice
    Lever: move the fuel away
    """
    limit = LENGTHS["flame"]
    for flame in result.flames if result.use == "sleep" else ():
        for one in result.stores:
            if one.fumes is False or one.is_empty or not _may_be_near(flame, one, limit):
                continue
            far = gap_between(flame.at, one.at) if flame.at is not None and one.at is not None else None
            where = one.store.of
            how = f"stands {show(far, 'm', shown_in)} from" if far is not None else "stands nobody knows how far from"
            says = f"{one.store.name} {how} {flame.kept.name}, which gets hot"
            yield Finding(
                "safety/flame-near-fuel", where, "advice", says, far, limit, far - limit if far is not None else None,
                "m", "practice", f"{where}.x",
                act=f"Keep {one.store.name} at least {show(limit, 'm', shown_in)} from {flame.kept.name}", minutes=5,
                uses=SLEEP, because=(where, flame.kept.of),
            )  # fmt: skip


def _may_be_near(flame: Flame, one: Fuelled, limit: float) -> bool:
    if flame.at is None or one.at is None:
        return True
    return gap_between(flame.at, one.at) < limit


def generator_near(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which generator stands too near to an opening of a trailer somebody sleeps in.

    Asks: how far is every generator from the nearest door, window, hatch or vent
    Limit: 20 ft (6.1 m), as quoted of advice in the United States; a national laboratory thinks of 25 ft
    Source: cpsc-generator
    Lever: a longer lead, or leave it off and outside
    """
    code, limit = "safety/generator-near", LENGTHS["generator"]
    elsewhere = measured_elsewhere(result.law)
    for one in result.generators if result.use == "sleep" else ():
        kept = one.kept
        lever = f"{kept.of}.when_sleeping"
        act = f"Put {kept.name} {show(limit, 'm', shown_in)} away, downwind, its exhaust turned away"
        if one.at is None:
            within = show(limit, "m", shown_in)
            says = f"nobody wrote where {kept.name} stands at night; its exhaust kills within {within}{elsewhere}"
            yield question(code, kept.of, says, act, 5, lever, "cpsc-generator")
            continue
        if one.is_inside:
            says = f"{kept.name} is inside where somebody sleeps; one that is left running kills"
            act = f"Put {kept.name} outside, and write when_sleeping: out"
            yield stop(code, kept.of, says, act, 5, lever, "cpsc-generator")
            continue
        placed = [(ends, hole.name) for hole in result.openings if (ends := ends_of(hole.place)) is not None]
        near = min(((gap_between(one.at, ends), name) for ends, name in placed), default=None)
        if near is None:
            says = f"nobody wrote where the openings are, and {kept.name} stands outside at night"
            yield question(code, kept.of, says, act, 5, lever, "cpsc-generator")
        elif near[0] < limit:
            far, name = near
            stands = f"{kept.name} stands {show(far, 'm', shown_in)} from {name} at night"
            says = f"{stands}; its exhaust comes in within {show(limit, 'm', shown_in)}{elsewhere}"
            yield Finding(
                code, kept.of, "stop", says, far, limit, far - limit, "m", "cpsc-generator", lever, act=act, minutes=10,
                protects=True, uses=SLEEP, because=(kept.of,),
            )  # fmt: skip


def open_hole(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which hole is cut through the skin and not closed.

    Asks: is every opening that is cut also finished before the trailer is left
    Limit: none open
    Source: own-rule
    Lever: fit what goes in, and tick it
    """
    for hole in result.open_holes if result.use == "leave" else ():
        now = f" ({hole.now})" if hole.now else ""
        says = f"{hole.name} is cut and not finished{now}: a hole in the skin, for rain, vermin and hands"
        yield Finding(
            "safety/open-hole", hole.of, "fix", says, source="own-rule", lever=f"{hole.of}.done",
            act=f"Fit what goes into {hole.name}, seal it and tick it", minutes=60, uses=LEAVE, because=(hole.of,),
        )  # fmt: skip
