"""Rules of water: what settles on cold places, what a mild wet night does, and wood that grows wet."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from boxwright.disciplines.air.hidden import is_hidden, is_skin
from boxwright.disciplines.air.result import DampNight, Result, Settled, WetPlace
from boxwright.disciplines.air.sourced import COOKING, DAMP_WOOD, DROPS, LITTLE, METER, MUCH, RUNS, WANTED, source_of
from boxwright.disciplines.air.telling import (
    LEAVE,
    SLEEP,
    WORK,
    between,
    flow,
    is_over_feet,
    percent,
    spread,
    water_over,
)
from boxwright.finding import Finding, Kind, listed
from boxwright.units import Band, HeaderUnits, exactly, show

MEASURE = "Measure how high the room is inside, deck to bows, and write it as trailer.body.height"
WRITE = {
    "cooks": "Write how long of an evening {0} cooks in the room, cooks: 0.5 h, or 0 h where nobody cooks in it. ",
    "U": "Look for foam in {0}, or one pane or two, and write unit: {{U: 2.8 W/m2K}}. ",
}
"""What is written first, by the key."""
MUCH_LESS = 0.8
"""As a share of the wet end: what a value leaves of it to be worth asking for."""
FAR = 10.0
"""As many times the least air that may do, the most is not told as a number."""
MOST_KINDS = 4
"""Kinds of cold places that are told one by one; where more stand wet the whole room does."""


A_COLD_NIGHT = 263.15
"""K: an example of what is written of a place, whole in either degrees."""


def condensation(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which cold places of the room stand wet in a night, for how long and with how much, and what keeps them dry.

    Asks: does vapour of sleepers settle on glass, on metal, or behind a lining, on the coldest night of a place
    Limit: a film (5 g/m2) counts as wet; what runs (100 g/m2) or freezes, and 5 g/m2 on a hidden skin, is put right,
        where it does so even in the driest night there may be, and asked about where it does in the wettest alone
    Source: practice; humidity by the night's own balance of vapour, behind foam by vapour through lining and foam
    Lever: a strip on the metal, a lining, sealed edges of foam, more air
    """
    if not result.sleepers:
        return
    if not result.nights:
        yield _no_night(result, shown_in)
        return
    kinds = list(wet_kinds(result).values())
    if len(kinds) > MOST_KINDS:
        kinds = [min(kinds, key=lambda one: _wettest_first(one[0]))]
        yield _wet(kinds[0], tuple(wet_kinds(result)), shown_in)
        return
    for found in kinds:
        yield _wet(found, (), shown_in)


def wet_kinds(result: Result) -> dict[str, list[tuple[DampNight, WetPlace]]]:
    """Return what is worth telling, by the kind of place, the wettest of each kind first.

    That is what most likely stands wet, and what runs or freezes perhaps.
    """
    places: dict[str, list[tuple[DampNight, WetPlace]]] = {}
    for night in result.nights:
        for wet in night.wet:
            if (wet.hours > 0 and _is_worth_it(wet)) or any(_is_bad(one) and _is_worth_it(one) for one in wet.ends):
                places.setdefault(wet.kind, []).append((night, wet))
    return {kind: sorted(found, key=_wettest_first) for kind, found in places.items()}


def _is_worth_it(wet: WetPlace) -> bool:
    return wet.over >= LITTLE if is_hidden(wet.cold) else wet.most >= DROPS


def _wettest_first(found: tuple[DampNight, WetPlace]) -> tuple[bool, float, float]:
    """Return the order places are told in: what is surely to be put right, then the wettest."""
    wet = found[1]
    return not all(_is_bad(one) for one in wet.every), -wet.over, -wet.wettest.over


def _is_bad(wet: WetPlace) -> bool:
    """Return whether a place at one end of what is not known is to be put right: it runs, or it freezes."""
    if is_hidden(wet.cold):
        return wet.over >= MUCH
    return wet.over >= RUNS or wet.is_frost


def _wet(found: list[tuple[DampNight, WetPlace]], kinds: tuple[str, ...], shown_in: HeaderUnits) -> Finding:
    """Return what is said of the wettest place of a kind; with ``kinds`` nearly all of the room stands wet."""
    night, wet = found[0]
    hidden = is_hidden(wet.cold)
    limit, row = (MUCH, ("settling", "much")) if hidden else (RUNS, ("wet", "runs"))
    surely, perhaps = (test(_is_bad(one) for one in wet.every) for test in (all, any))
    kind: Kind = "fix" if surely else "unknown" if perhaps else "advice"
    also = {one.name.partition(", ")[2] for _, one in found} - {wet.name.partition(", ")[2], ""}
    says = f"{wet.name}{f' (and {listed(sorted(also))})' if also else ''}"
    says += f", wettest of {len(kinds)} kinds of place" if kinds else ""
    says += f": {_how(wet, surely)} in a night at {night.place}"
    says += (" without a heater" if not night.heater else "") + f", {_water(wet, shown_in)};"
    limits = ends_of(wet, "limit")
    says += f" it comes to {between(ends_of(wet, 'coldest'), shown_in)} and begins to drip from"
    says += f" {spread(*(percent(one) for one in limits))} of humidity on,"
    asked = _asked(wet) if kind == "unknown" else None
    says += (
        f" {most_humid(night)} it was"
        + (_ends_of_asked(asked, wet, shown_in) if asked else "")
        + _remedy(wet, shown_in)
    )
    first = WRITE[asked.key].format(name_of(asked.of)) if asked else ""
    number = wet.over if surely else wet.wettest.over
    margin = min(limit - number, 0.0) if number >= limit else None
    return Finding(
        "air/condensation", wet.where, kind, says, number, limit, margin, "kg/m2", source_of(*row), wet.where,
        act=first + _act(wet, kind, bool(kinds)), minutes=60, could_stop=kind != "unknown",
        could_limit=kind != "unknown", uses=SLEEP, because=(wet.where, asked.of) if asked else (wet.where,),
    )  # fmt: skip


def _asked(wet: WetPlace) -> Settled | None:
    """Return the value nobody wrote that takes most of the wet end away; None where none takes much."""
    best = min(wet.settled, key=lambda one: one.over, default=None)
    return best if best is not None and best.over < MUCH_LESS * wet.wettest.over else None


def _ends_of_asked(asked: Settled, wet: WetPlace, shown_in: HeaderUnits) -> str:
    """Return what the one value would make of it at both its ends."""
    least, most = water_over(asked.over, shown_in), water_over(wet.wettest.over, shown_in)
    name, longest = name_of(asked.of), COOKING["hours nobody wrote"].high
    if asked.key == "cooks":
        said = f"how long {name} cooks: with nothing cooked it is {least} at the most, with {longest:.0f} h {most}"
    else:
        said = f"how well {name} keeps heat in: at its best it is {least} at the most, at its worst {most}"
    return f"; nobody wrote {said}"


def name_of(path: str) -> str:
    """Return the builder's own word for a thing of the rig."""
    return path.partition("[")[2].rstrip("]")


def _act(wet: WetPlace, kind: Kind, is_all: bool) -> str:
    """Return what to do about a wet place."""
    if is_skin(wet.cold):
        return "Seal the edges of the foam with tape, so that no air of the room gets behind it"
    if is_hidden(wet.cold):
        return "Put a strip of foam between the members and the lining, and seal the joints of the lining"
    if is_all:
        return "Heat the room or sleep elsewhere on such a night, with the vents open, and wipe it dry in the morning"
    if kind == "unknown":
        return (
            f"Look on the first cold morning, with a meter of humidity in the room, at this: {wet.name}; where it runs"
            " or freezes, warm its surface: a foam strip or a lining over it"
        )
    return f"Wipe it in the morning and air the room; warm the surface of {wet.name}: a foam strip or a lining over it"


def most_humid(night: DampNight) -> str:
    """Return the highest humidity of a night, with its doubt."""
    found = [max(one.humidity, default=0.0) for one in night.every]
    return spread(*(percent(one) for one in (found[0], min(found), max(found))))


def ends_of(wet: WetPlace, name: str) -> tuple[float, float, float]:
    """Return a number of a wet place: most likely, at least, at most."""
    found = [float(getattr(one, name)) for one in wet.every]
    return found[0], min(found), max(found)


def _water(wet: WetPlace, shown_in: HeaderUnits) -> str:
    best, low, high = (water_over(one, shown_in) for one in ends_of(wet, "over"))
    return f"at its wettest {spread(best, low, high)} a square {'foot' if is_over_feet(shown_in) else 'metre'}"


def _no_night(result: Result, shown_in: HeaderUnits) -> Finding:
    """Return the question for what a night lacks: the size of the room, else how cold it gets."""
    where, minutes, lacks = "places", 2, "no coldest night of a place could be worked out"
    act = f"Write the coldest night of a place you sleep at: coldest_design: {show(A_COLD_NIGHT, 'K', shown_in)}"
    if result.breathing is None:
        where, minutes, lacks = "trailer.body", 10, "length, width and height of the body are not all written"
        act = "Measure the body inside, stud face to stud face and deck to bows"
    return Finding(
        "air/condensation", where, "unknown", f"{lacks}, so nobody can say what stands wet in it",
        source=source_of("wet", "a film"), lever=where, minutes=minutes, could_stop=False, could_limit=False,
        uses=SLEEP, act=act, because=(where,),
    )  # fmt: skip


def _how(wet: WetPlace, is_surely_bad: bool) -> str:
    """Return how wet a place gets and for how long; what is not sure is said to be perhaps."""
    hours = spread(*(f"{one:.0f} h" for one in ends_of(wet, "hours")))
    worst = max(wet.every, key=lambda one: (_is_bad(one), one.over))
    if not _is_bad(worst):
        return f"wet {hours}" if wet.driest.hours else f"perhaps wet {hours}"
    state = "frosted" if worst.is_frost else "wet" if is_hidden(wet.cold) else "running with water"
    return f"{'' if is_surely_bad else 'perhaps '}{state} {hours}"


def _remedy(wet: WetPlace, shown_in: HeaderUnits) -> str:
    if is_hidden(wet.cold):
        return ". Where air of the room gets behind it, by loose foam or a joint, it is many times as much"
    if not isfinite(wet.air):
        return ". No air from outside keeps it dry: it wants to be warmer"
    _, least, most = ends_of(wet, "air")
    needs = Band(wet.air, least, most, spread="interval") if most > least else exactly(wet.air)
    # Where a place may be hardly warmer than outdoor air can bear, the upper end is no number to go by.
    is_open = not isfinite(most) or most > FAR * least
    air = f"{show(least, 'flow', shown_in)} or more" if is_open else flow(needs, shown_in)
    _, _, watt = ends_of(wet, "watt")
    costs = f", for up to {show(watt, 'heat flow', shown_in)} of heat" if watt > 0.0 and not is_open else ""
    return f". {air} of outdoor air would keep it dry{costs}"


def mild_wet(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a mild, rainy night, or such a day of work, leaves the room damp: the vents pass too little then.

    Asks: do the vents carry off what people give off when it is mild and wet, when warmth drives little air
    Limit: 70 per cent of humidity in the room, which it may have for weeks
    Source: practice
    Lever: larger vents, a fan that runs, a window set open
    """
    mild = result.mild
    if mild is None or mild.flow.low >= mild.need.high:
        return
    is_known = all(one.free.known for one in result.vents if one.stays_open and one.there == "yes")
    is_known = is_known and mild.has_height
    kind: Kind = "advice" if is_known else "unknown"
    perhaps = "may come to" if mild.flow.high >= mild.need.low else "comes to"
    there = sorted((one for one in result.vents if one.there == "yes"), key=lambda one: not one.stays_open)
    where = there[0].planned.of if there else "openings"
    when, uses = ("day of work", WORK) if result.workers else ("night", SLEEP)
    warns = "a heater at its lowest may be too warm then, so open up and let it run"
    then = "open up then" if result.workers else warns
    unsaid = "" if mild.has_height else "; nobody wrote how high the room is, which drives the air"
    says = (
        f"on a mild and rainy {when} {flow(mild.need, shown_in)} of outdoor air keeps the room at"
        f" {percent(WANTED)}, and warmth drives {flow(mild.flow, shown_in)}: it {perhaps} {percent(mild.humidity.low)}"
        f" to {percent(mild.humidity.high)}; {then}{unsaid}"
    )
    yield Finding(
        "air/mild-wet", where, kind, says, mild.flow.low, mild.need.high, mild.flow.low - mild.need.high, "m3/s",
        source_of("outdoors", "mild and wet"), "openings",
        act=f"Set a window or a lid open on such a {when}, or run a fan" if mild.has_height else MEASURE, minutes=2,
        could_stop=False, could_limit=False, uses=uses,
        because=(where,) if mild.has_height else ("trailer.body", where),
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
