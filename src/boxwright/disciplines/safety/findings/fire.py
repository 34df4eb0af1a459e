"""Rules of what burns and what gets hot: fuel inside, a flame beside it, a bed beside what is hot, a generator."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.safety.result import Bed, Flame, Fuelled, Result
from boxwright.disciplines.safety.solve import ends_of, gap_between, room_between
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.disciplines.safety.telling import (
    LEAVE,
    OWN_LABEL,
    SLEEP,
    WORK,
    length,
    measured_elsewhere,
    question,
    stop,
)
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

KEPT_OUT_OF = ("sleep", "leave")
"""Uses in which no vapour may be inside; who works beside a can knows that it is there."""


def fuel_inside(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which petrol or gas is inside where somebody sleeps, or while the trailer stands alone.

    Asks: is any fuel whose vapour lights in a room kept inside
    Limit: none, in either
    Source: petrol-indoors
    Lever: put it outside
    """
    for one in result.stores if result.use in KEPT_OUT_OF else ():
        if one.is_inside is False or one.fumes is False or (one.is_empty and not one.fumes):
            continue
        if one.is_empty:
            yield _emptied(one, result.use)
            continue
        made = _kept_inside(one, "with a sleeper" if result.use == "sleep" else "when the trailer is left")
        yield made if result.use == "sleep" else replace(made, uses=LEAVE, protects=False)
    for can in result.unsaid if result.use in KEPT_OUT_OF else ():
        if can.is_inside is not False:
            made = _by_its_name(can)
            yield made if result.use == "sleep" else replace(made, uses=LEAVE, protects=False)


def _by_its_name(can: Flame) -> Finding:
    """Return what is asked of a thing that holds petrol or gas by its name, and of which no tank is written."""
    name = can.kept.name
    says = f"{name} holds petrol or gas by its name, and nobody wrote what is in it or how much; neither may be inside"
    act = f"Put {name} outside; write what is in it, such as tank: {{of: petrol, volume: ..}}, and when_sleeping: out"
    return question("safety/fuel-inside", can.kept.of, says, act, 2, f"{can.kept.of}.tank", "petrol-indoors")


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
            how = f"stands {length(far, shown_in)} from" if far is not None else "stands nobody knows how far from"
            says = f"{one.store.name} {how} {flame.kept.name}, which gets hot"
            yield Finding(
                "safety/flame-near-fuel", where, "advice", says, far, limit, far - limit if far is not None else None,
                "m", "practice", f"{where}.x",
                act=f"Keep {one.store.name} at least {length(limit, shown_in)} from {flame.kept.name}", minutes=5,
                uses=SLEEP, because=(where, flame.kept.of),
            )  # fmt: skip


def _may_be_near(flame: Flame, one: Fuelled, limit: float) -> bool:
    if flame.at is None or one.at is None:
        return True
    return gap_between(flame.at, one.at) < limit


def hot_surface(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which bed is nearer to what gets hot than its leaflet allows, or where nobody wrote what it allows.

    Asks: is every bed somebody lies on as far from each heater and flame inside as that one wants kept clear
    Limit: what its own leaflet says, written as keep_clear; not written, it is asked for within 1 m, practice
    Source: own-label, practice
    Lever: move it away, and write keep_clear from its leaflet
    """
    code, limit = "safety/hot-surface", LENGTHS["flame"]
    for bed in result.beds if result.use == "sleep" else ():
        for one in result.hot:
            kept = one.kept
            is_placed = one.at is not None and bed.at is not None
            far = room_between(one.at, bed.at) if one.at is not None and bed.at is not None else 0.0
            if kept.wants is not None and is_placed and far < kept.wants.high:
                yield _too_hot(code, one, bed, far, kept.wants.high, shown_in)
            elif not is_placed:
                where = kept.of if one.at is None else bed.of
                name = kept.name if one.at is None else bed.name
                says = (
                    f"nobody wrote where {name} is at night, so nobody can say whether {kept.name} is clear of bedding"
                )
                act = f"Measure where {name} is at night, and write it"
                yield replace(question(code, where, says, act, 3, f"{where}.x"), because=(kept.of, bed.of))
            elif kept.wants is None and far < limit:
                says = (
                    f"{bed.name} is {length(far, shown_in)} from {kept.name}, which gets hot, and nobody wrote how"
                    f" much room it wants"
                )
                act = f"Read in the leaflet of {kept.name} how far from it nothing may be that burns; write keep_clear"
                made = question(code, kept.of, says, act, 5, f"{kept.of}.keep_clear", OWN_LABEL)
                because = (kept.of, bed.of)
                yield replace(made, number=far, limit=limit, margin=far - limit, unit="m", because=because)


def _too_hot(code: str, one: Flame, bed: Bed, far: float, wants: float, shown_in: HeaderUnits) -> Finding:
    kept = one.kept
    says = (
        f"{bed.name} is {length(far, shown_in)} from {kept.name}, which gets hot and wants"
        f" {length(wants, shown_in)} kept clear: bedding may catch fire"
    )
    act = f"Move {bed.name} or {kept.name} apart, or leave {kept.name} off and out of it at night"
    return Finding(
        code, kept.of, "stop", says, far, wants, far - wants, "m", OWN_LABEL, f"{kept.of}.x", act=act, minutes=10,
        protects=True, uses=SLEEP, because=(kept.of, bed.of),
    )  # fmt: skip


def generator_near(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which generator stands too near to an opening of a trailer somebody sleeps in, or in the room at work.

    Asks: how far is every generator from the nearest door, window, hatch or vent
    Limit: 20 ft (6.1 m), as quoted of advice in the United States; a national laboratory thinks of 25 ft
    Source: cpsc-generator
    Lever: a longer lead, or leave it off and outside
    """
    code = "safety/generator-near"
    for one in result.generators if result.use == "sleep" else ():
        found, kept = _by_the_openings(code, one, result, shown_in), one.kept
        if found is not None and kept.facet.generator == "unknown":
            says = f"nobody wrote whether {kept.name} is a generator, and if it is: {found.says}"
            act = f"Look whether an engine in {kept.name} makes electricity, and write generator: yes or no"
            found = question(code, kept.of, says, act, 1, f"{kept.of}.generator", "cpsc-generator")
        if found is not None:
            yield found
    for one in result.generators if result.use == "work" else ():
        if one.is_inside and one.kept.facet.generator != "unknown":
            kept = one.kept
            says = f"{kept.name} is inside where somebody works; started in there it kills"
            act = f"Carry {kept.name} out, {length(LENGTHS['generator'], shown_in)} away and its exhaust turned away,"
            yield Finding(
                code, kept.of, "limit", says, source="cpsc-generator", lever=kept.of, minutes=5, uses=WORK,
                act=f"{act} before anybody starts it", because=(kept.of,),
            )  # fmt: skip


def _by_the_openings(code: str, one: Flame, result: Result, shown_in: HeaderUnits) -> Finding | None:
    """Return what is to be said of a generator where it stands at night, if anything."""
    kept, limit, elsewhere = one.kept, LENGTHS["generator"], measured_elsewhere(result.law)
    lever = f"{kept.of}.when_sleeping"
    act = f"Put {kept.name} {length(limit, shown_in)} away, its exhaust turned away; write when_sleeping: out"
    if one.at is None:
        within = length(limit, shown_in)
        says = f"nobody wrote where {kept.name} stands at night; its exhaust kills within {within}{elsewhere}"
        return question(code, kept.of, says, act, 5, lever, "cpsc-generator")
    if one.is_inside:
        says = f"{kept.name} is inside where somebody sleeps; one that is left running kills"
        act = f"Put {kept.name} outside, and write when_sleeping: out"
        return stop(code, kept.of, says, act, 5, lever, "cpsc-generator")
    placed = [(ends, hole.name) for hole in result.openings if (ends := ends_of(hole.place)) is not None]
    near = min(((gap_between(one.at, ends), name) for ends, name in placed), default=None)
    if near is None:
        says = f"nobody wrote where the openings are, and {kept.name} stands outside at night"
        return question(code, kept.of, says, act, 5, lever, "cpsc-generator")
    far, name = near
    if far >= limit:
        return None
    stands = f"{kept.name} stands {length(far, shown_in)} from {name} at night"
    says = f"{stands}; its exhaust comes in within {length(limit, shown_in)}{elsewhere}"
    return Finding(
        code, kept.of, "stop", says, far, limit, far - limit, "m", "cpsc-generator", lever, act=act, minutes=10,
        protects=True, uses=SLEEP, because=(kept.of,),
    )  # fmt: skip
