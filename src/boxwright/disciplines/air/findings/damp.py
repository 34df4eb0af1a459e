"""Rules of water: what settles on cold places, what a mild wet night does, and wood that grows wet."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from boxwright.disciplines.air.hidden import is_hidden, is_skin
from boxwright.disciplines.air.result import DampNight, Result, WetPlace
from boxwright.disciplines.air.sourced import DAMP_WOOD, DROPS, LITTLE, METER, MUCH, RUNS, WANTED, source_of
from boxwright.disciplines.air.telling import LEAVE, SLEEP, flow, grams, listed, percent
from boxwright.finding import Finding, Kind
from boxwright.units import HeaderUnits, show

MOST_KINDS = 4
"""Kinds of cold places that are told one by one; where more stand wet the whole room does."""


def condensation(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which cold places of the room stand wet in a night, for how long and with how much, and what keeps them dry.

    Asks: does vapour of sleepers settle on glass, on metal, or behind a lining, on the coldest night of a place
    Limit: a film (5 g/m2) counts as wet; what runs (100 g/m2) or freezes, and 5 g/m2 on a hidden skin, is put right
    Source: practice; humidity by the night's own balance of vapour, behind foam by vapour through lining and foam
    Lever: a strip on the metal, a lining, sealed edges of foam, more air
    """
    if not result.sleepers:
        return
    if not result.nights:
        yield _no_night()
        return
    kinds = list(wet_kinds(result).values())
    if len(kinds) > MOST_KINDS:
        kinds = [max(kinds, key=lambda one: one[0][1].over)]
        yield _wet(kinds[0], tuple(wet_kinds(result)), shown_in)
        return
    for found in kinds:
        yield _wet(found, (), shown_in)


def wet_kinds(result: Result) -> dict[str, list[tuple[DampNight, WetPlace]]]:
    """Return what is worth telling of what stands wet, by the kind of place, the wettest of each kind first."""
    places: dict[str, list[tuple[DampNight, WetPlace]]] = {}
    for night in result.nights:
        for wet in night.wet:
            is_told = wet.over >= LITTLE if is_hidden(wet.cold) else wet.most >= DROPS
            if wet.hours > 0 and is_told:
                places.setdefault(wet.kind, []).append((night, wet))
    return {kind: sorted(found, key=lambda one: -one[1].over) for kind, found in places.items()}


def _wet(found: list[tuple[DampNight, WetPlace]], kinds: tuple[str, ...], shown_in: HeaderUnits) -> Finding:
    """Return what is said of the wettest place of a kind; with ``kinds`` nearly all of the room stands wet."""
    night, wet = found[0]
    hidden = is_hidden(wet.cold)
    limit, row = (MUCH, ("settling", "much")) if hidden else (RUNS, ("wet", "runs"))
    is_much = wet.over >= limit
    kind: Kind = "fix" if is_much or (wet.is_frost and not hidden) else "advice"
    also = {one.name.partition(", ")[2] for _, one in found} - {wet.name.partition(", ")[2], ""}
    says = f"{wet.name}{f' (and {listed(sorted(also))})' if also else ''}"
    says += f", wettest of {len(kinds)} kinds of place" if kinds else ""
    says += f": {_how(wet, is_much)} in a night at {night.place}"
    says += (" without a heater" if not night.heater else "") + f", up to {grams(wet.over)} a square metre;"
    says += f" it comes to {show(wet.coldest, 'temperature', shown_in)} and begins to drip from {percent(wet.limit)}"
    says += f" of humidity on, {percent(max(night.humidity))} it was" + _remedy(wet, shown_in)
    if is_skin(wet.cold):
        act = "Seal the edges of the foam with tape, so that no air of the room gets behind it"
    elif hidden:
        act = "Put a strip of foam between the members and the lining, and seal the joints of the lining"
    elif kinds:
        act = "Heat the room or sleep elsewhere on such a night, with the vents open, and wipe it dry in the morning"
    else:
        act = (
            f"Wipe it in the morning and air the room; warm the surface of {wet.name}: a foam strip or a lining over it"
        )
    return Finding(
        "air/condensation", wet.where, kind, says, wet.over, limit, min(limit - wet.over, 0.0) if is_much else None,
        "kg/m2", source_of(*row), wet.where, act=act, minutes=60, uses=SLEEP, because=(wet.where,),
    )  # fmt: skip


def _no_night() -> Finding:
    return Finding(
        "air/condensation", "places", "unknown",
        "no coldest night of a place could be worked out, so nobody can say what stands wet in it",
        source=source_of("wet", "a film"), lever="places", minutes=2, could_stop=False, could_limit=False, uses=SLEEP,
        act="Write the coldest night of a place you sleep at: coldest_design: such as 18 F", because=("places",),
    )  # fmt: skip


def _how(wet: WetPlace, is_much: bool) -> str:
    hours = f"{wet.hours} h"
    if wet.is_frost:
        return f"frosted {hours}"
    return f"running with water {hours}" if is_much and not is_hidden(wet.cold) else f"wet {hours}"


def _remedy(wet: WetPlace, shown_in: HeaderUnits) -> str:
    if is_hidden(wet.cold):
        return ". Where air of the room gets behind it, by loose foam or a joint, it is many times as much"
    if not isfinite(wet.air):
        return ". No air from outside keeps it dry: it wants to be warmer"
    costs = f", for {show(wet.watt, 'W', shown_in)} of heat" if wet.watt > 0.0 else ""
    return f". {show(wet.air, 'flow', shown_in)} of outdoor air would keep it dry{costs}"


def mild_wet(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a mild, rainy night leaves the room damp, because the vents pass too little then.

    Asks: do the vents carry off what sleepers give off when it is mild and wet, when warmth drives little air
    Limit: 70 per cent of humidity in the room, which it may have for weeks
    Source: practice
    Lever: larger vents, a fan that runs, a window set open
    """
    mild = result.mild
    if mild is None or mild.flow.best >= mild.need:
        return
    is_known = all(one.free.known for one in result.vents if one.stays_open and one.there == "yes")
    kind: Kind = "advice" if is_known else "unknown"
    there = sorted((one for one in result.vents if one.there == "yes"), key=lambda one: not one.stays_open)
    where = there[0].planned.of if there else "openings"
    says = (
        f"on a mild and rainy night {show(mild.need, 'flow', shown_in)} of outdoor air keeps the room at"
        f" {percent(WANTED)}, and warmth drives {flow(mild.flow, shown_in)}: it comes to {percent(mild.humidity.low)}"
        f" to {percent(mild.humidity.high)}; a heater at its lowest may be too warm then, so open up and let it run"
    )
    yield Finding(
        "air/mild-wet", where, kind, says, mild.flow.best, mild.need, mild.flow.best - mild.need, "m3/s",
        source_of("outdoors", "mild and wet"), "openings",
        act="Set a window or a lid open on such nights, or run a fan", minutes=2, could_stop=False, could_limit=False,
        uses=SLEEP, because=(where,),
    )  # fmt: skip


def damp_wood(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where wood is wet, or grows wetter from reading to reading: water comes in, or cannot get out.

    Asks: is the newest reading of wood at a place over what wood stands, or over the one before it
    Limit: 20 per cent of its dry mass (as quoted); a rise of more than 2 points is more than a meter's own doubt
    Source: wood-damp, practice
    Lever: find the water
    """
    if result.use != "leave":
        return
    for one in result.wood:
        newest, before = one.newest, one.before
        place = f" at {newest.at}" if newest.at else ""
        if not newest.wood.known:
            says = f"nobody can read how wet the wood{place} is"
            yield Finding(
                "air/damp-wood", newest.of, "unknown", says, source=source_of("wood", "damp"),
                lever=f"{newest.of}.wood",
                act=f"Press a moisture meter into the wood{place}, and write wood: such as 14 %", minutes=3,
                could_stop=False, could_limit=False, uses=LEAVE, because=(newest.of,),
            )  # fmt: skip
            continue
        rise = newest.wood.best - before.wood.best if before is not None else 0.0
        is_wet, is_rising = newest.wood.best >= DAMP_WOOD, rise > METER
        if not is_wet and not is_rising:
            continue
        says = f"wood{place} reads {percent(newest.wood.best)}"
        if is_rising and before is not None:
            says += f" and is rising, from {percent(before.wood.best)}" + (f" on {before.on}" if before.on else "")
        says += f"; from {percent(DAMP_WOOD)} on it is too damp" if is_wet else ""
        yield Finding(
            "air/damp-wood", newest.of, "advice", says, newest.wood.best, DAMP_WOOD,
            min(DAMP_WOOD - newest.wood.best, 0.0), "1", source_of("wood", "damp"), newest.of,
            act=f"Look for the leak{place}: hose the seams above it, and read again in a week", minutes=30, uses=LEAVE,
            because=(newest.of,),
        )  # fmt: skip
