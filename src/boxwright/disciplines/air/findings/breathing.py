"""Rules of the air people breathe: enough of it on the hardest night, vents that stand open, air beside a flame."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.air.parts import PlannedVent
from boxwright.disciplines.air.result import Breathing, Result, Vent
from boxwright.disciplines.air.sourced import A_SLEEPER, BY_A_FLAME, GAS_AIR, STALE, TOO_MUCH, source_of
from boxwright.disciplines.air.telling import OWN_RULE, SLEEP, area, flow, is_read, named, ppm, ppm_band, unread_at
from boxwright.finding import Finding, Kind
from boxwright.source import Rule
from boxwright.units import HeaderUnits, exactly, show

STILL = "on a mild and still night, without heater"


def fresh_air(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that sleepers run short of fresh air, or that nothing that stays open lets any in.

    Asks: does a vent that nobody can shut stand wherever somebody sleeps; and what does their breath come to by morning
    Limit: carbon dioxide 5000 ppm, of a day of work, on the safe side; 2000 is stale; a vent of 650 mm2 a sleeper
    Source: own-rule, co2-at-work, as-nzs-5601-2, practice
    Lever: fit a low and a high vent, or make them larger
    """
    if result.use != "sleep":
        return
    if not result.sleepers:
        says = "nobody is named who sleeps, so nobody can say how long the air lasts"
        act = "Write who sleeps: people: at the top of the file, and people: of the load state"
        yield _question("people", says, act, 2, "people")
        return
    fixed = tuple(one for one in result.vents if one.stays_open)
    surely = tuple(one for one in fixed if one.there == "yes" and (one.free.best > 0.0 or not one.free.known))
    perhaps = tuple(one for one in fixed if one.there == "perhaps")
    breathing = result.breathing
    comes_to = f"; by morning {ppm_band(breathing.morning)} of carbon dioxide {STILL}" if breathing else ""
    if not surely and perhaps:
        one = perhaps[0].planned
        says = f"{named(perhaps)} may stand open or not, and no other vent stays open where people sleep{comes_to}"
        act = f"Look whether air passes {one.name}, and tick it, or write what is there now"
        if perhaps[0].before:
            act = f"Move {perhaps[0].before} a hand's length off {one.name}"
        yield _question(one.of, says, act, 2, f"{one.of}.done", True, breathing)
    elif not surely:
        planned = f"; {named(fixed)} is not in yet" if fixed else ""
        says = f"somebody sleeps, and no vent stays open{planned}: cracks alone let air in{comes_to}"
        act = f"Fit {fixed[0].planned.name}" if fixed else "Cut a vent low and one high, and write free_area: of each"
        yield _stop("openings", says, act, 120, "openings", breathing)
    elif _is_too_small(result.low.best + result.high.best, result) and all(one.free.known for one in surely):
        yield _too_small(result, surely[0].planned.of, comes_to, shown_in)
    elif _is_too_small(result.low.low + result.high.low, result):
        one = surely[0].planned
        says = (
            f"what stays open may be as little as {show(result.low.low + result.high.low, 'area', shown_in)}{comes_to}"
        )
        act = f"Measure the clear area of {named(surely)}, mesh and louvres taken off, and write free_area:"
        yield _question(one.of, says, act, 5, f"{one.of}.free_area", True, breathing)
    elif breathing is None:
        says = "nobody wrote how large the room is, so nobody can say how the air in it lasts"
        yield _question("trailer.body", says, "Measure the room, and write body: of the trailer", 5, "trailer.body")
    else:
        yield from _gathered(result, breathing, shown_in)


def _is_too_small(area_open: float, result: Result) -> bool:
    """Return whether so much is less than a vent for each sleeper."""
    return area_open < A_SLEEPER * result.sleepers


def _too_small(result: Result, where: str, comes_to: str, shown_in: HeaderUnits) -> Finding:
    open_area, least = result.low.best + result.high.best, A_SLEEPER * result.sleepers
    says = (
        f"{show(open_area, 'area', shown_in)} stays open where {result.sleepers} sleep; less than"
        f" {show(least, 'area', shown_in)} is no vent{comes_to}"
    )
    return Finding(
        "air/fresh-air", where, "stop", says, open_area, least, open_area - least, "m2",
        source_of("by-a-flame", "a sleeper"), f"{where}.free_area", act="Make the vents larger, one low and one high",
        minutes=120, protects=True, uses=SLEEP, because=(where,),
    )  # fmt: skip


def _gathered(result: Result, breathing: Breathing, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Judge what carbon dioxide comes to by morning."""
    fixed = tuple(one for one in result.vents if one.stays_open)
    missing = next((one for one in fixed if one.there != "yes"), None)
    where = missing.planned.of if missing is not None else fixed[0].planned.of
    fit = f"Fit {missing.planned.name}" if missing is not None else "Make the vents larger, one low and one high"
    lever = f"{where}.done" if missing is not None else f"{where}.free_area"
    says = (
        f"{STILL} {flow(breathing.flow, shown_in)} comes in and {result.sleepers} sleep:"
        f" carbon dioxide comes to {ppm_band(breathing.morning)} by morning"
    )
    if breathing.morning.best > TOO_MUCH:
        yield _stop(where, f"{says}, over {ppm(TOO_MUCH)}", fit, 60, lever, breathing)
    elif breathing.morning.high > TOO_MUCH:
        says += f"; with less air than reckoned that is over {ppm(TOO_MUCH)}"
        yield _question(where, says, f"{fit}, or hang a meter and read it in the morning", 60, lever, False, breathing)
    elif breathing.morning.high > STALE:
        says += f", stale from {ppm(STALE)} on; {show(breathing.need, 'flow', shown_in)} is the least for a dwelling"
        yield Finding(
            "air/fresh-air", where, "advice", says, breathing.morning.high, STALE, STALE - breathing.morning.high,
            "1", source_of("gas", "stale"), lever, act=fit, minutes=60, uses=SLEEP, because=(where,),
        )  # fmt: skip


def _stop(where: str, says: str, act: str, minutes: int, lever: str, breathing: Breathing | None) -> Finding:
    number = breathing.morning.best if breathing is not None and breathing.morning.best > TOO_MUCH else None
    return Finding(
        "air/fresh-air", where, "stop", says, number, TOO_MUCH if number is not None else None,
        TOO_MUCH - number if number is not None else None, "1" if number is not None else "",
        source_of("gas", "stop") if number is not None else OWN_RULE, lever, act=act, minutes=minutes, protects=True,
        uses=SLEEP, because=(where,),
    )  # fmt: skip


def _question(
    where: str, says: str, act: str, minutes: int, lever: str, protects: bool = False, of: Breathing | None = None
) -> Finding:
    number = of.morning.high if of is not None and of.morning.high > TOO_MUCH else None
    return Finding(
        "air/fresh-air", where, "unknown", says, number, TOO_MUCH if number is not None else None,
        TOO_MUCH - number if number is not None else None, "1" if number is not None else "",
        OWN_RULE, lever, act=act, minutes=minutes, protects=protects, uses=SLEEP, because=(where,),
    )  # fmt: skip


def vent_not_open(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which vent of the plan is begun and lets no air through yet, so that it counts for nothing.

    Asks: does every vent whose hole is cut, or that is half done, stand open where somebody sleeps, nothing before it
    Limit: none; what is half done counts for nothing as a vent, and as a hole all the same
    Source: own-rule
    Lever: fit it, and tick it
    """
    if result.use != "sleep":
        return
    for one in result.vents:
        planned = one.planned
        if not one.stays_open or one.there != "perhaps":
            continue
        if planned.is_contradicted:
            yield _ticked_yet(planned)
            continue
        if one.before:
            yield _covered(planned, one.before)
            continue
        now = f": {planned.now}" if planned.now else ""
        hole = "its hole is cut" if one.is_cut else "it may be in or not"
        says = f"{planned.name} is half done, {hole}{now}; until it is fitted no air is counted through it"
        yield Finding(
            "air/vent-not-open", planned.of, "fix", says, source=OWN_RULE, lever=f"{planned.of}.done",
            act=f"Fit {planned.name}, see that nothing covers it, and tick it", minutes=30, uses=SLEEP,
            because=(planned.of,),
        )  # fmt: skip


def _covered(planned: PlannedVent, before: str) -> Finding:
    """Return what is said of a vent that a thing stands close before, or may."""
    says = f"{before} is close before {planned.name}; whether air passes nobody knows, so none is counted through it"
    return Finding(
        "air/vent-not-open", planned.of, "fix", says, source=OWN_RULE, lever=f"parts[{before}].x",
        act=f"Move {before} a hand's length off {planned.name}", minutes=10, uses=SLEEP, because=(planned.of,),
    )  # fmt: skip


def _ticked_yet(planned: PlannedVent) -> Finding:
    """Return the question of a vent that is ticked while what is written of it today says something else."""
    says = f"{planned.name} is ticked, and what is there today is written beside it: {planned.now}; whether air passes"
    says += " nobody knows, so none is counted through it"
    return Finding(
        "air/vent-not-open", planned.of, "unknown", says, source=OWN_RULE, lever=f"{planned.of}.now",
        act=f"Look at {planned.name}: where nothing covers it, take out now: and keep it under note:, else write"
        " done: part", minutes=2, could_stop=False, could_limit=False, uses=SLEEP, because=(planned.of,),
    )  # fmt: skip


def leaf_not_shut(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask whether a door or a window shuts of which something is written that is there today, where somebody sleeps.

    Asks: does every leaf that is ticked shut, as the night takes it
    Limit: none
    Source: own-rule
    Lever: now of the opening
    """
    for one in result.vents if result.use == "sleep" else ():
        planned = one.planned
        if planned.may_stand_open:
            says = f"{planned.name} is ticked, and what is there today is written beside it: {planned.now}; the night"
            says += " takes it as shut, and its cold and damp are not counted where it is not"
            yield Finding(
                "air/leaf-not-shut", planned.of, "unknown", says, source=OWN_RULE, lever=f"{planned.of}.now",
                act=f"Shut {planned.name} and see that it stays so: then write now: shut, else done: part", minutes=2,
                could_stop=False, uses=SLEEP, because=(planned.of,),
            )  # fmt: skip


def low_and_high(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that vents stand at one height only, so that air has no way in and out.

    Asks: does air that nobody can shut off come in low and leave high
    Limit: none; both; practice
    Source: practice
    Lever: a second vent at the other height
    """
    if not result.sleepers:
        return
    low, high = result.low, result.high
    unsaid = next((one for one in result.vents if one.stays_open and one.there == "yes" and _is_unsaid(one)), None)
    if unsaid is not None:
        yield _unsaid(unsaid, shown_in)
        return
    lacking = "high" if low.best > 0.0 and high.best <= 0.0 else "low" if high.best > 0.0 and low.best <= 0.0 else ""
    if not lacking:
        return
    there = low if lacking == "high" else high
    side = tuple(one for one in result.vents if one.stays_open and one.is_low == (lacking == "low"))
    where = side[0].planned.of if side else "openings"
    says = f"air can come in and out {'low' if lacking == 'high' else 'high'} only, by {area(there, shown_in)}"
    says += f"; with as much {lacking} as well, several times as much passes by warmth alone"
    act = f"Fit {side[0].planned.name}" if side else f"Cut a vent {lacking}, and write its free_area:"
    yield Finding(
        "air/low-and-high", where, "advice", says, source="practice", lever=where, act=act, minutes=60, uses=SLEEP,
        because=(where,),
    )  # fmt: skip


def _is_unsaid(vent: Vent) -> bool:
    return not vent.free.known or vent.middle is None


def _unsaid(vent: Vent, shown_in: HeaderUnits) -> Finding:
    """Return the question of a vent whose free area or height nobody knows."""
    planned, is_placed = vent.planned, vent.middle is not None
    says = (
        f"nobody knows how much air passes {planned.name}, so nothing is counted through it"
        if is_placed
        else f"nobody wrote how high {planned.name} lies, so it is counted as low and as driving nothing"
    )
    written = planned.facet.free_area
    if is_placed and written is not None and written.known:
        says = f"{planned.name} is written to pass {area(written, shown_in)}, and its whole hole is no more than"
        says += f" {area(exactly(vent.free.high), shown_in)}: one of them is wrong, so nothing is counted through it"
    act = (
        f"Measure the clear area of {planned.name}, mesh and louvres taken off, and write free_area:"
        if is_placed
        else f"Measure where {planned.name} lies, and write x, z, width and height"
    )
    return Finding(
        "air/low-and-high", planned.of, "unknown", says, source="practice",
        lever=f"{planned.of}.{'free_area' if is_placed else 'z'}", act=act, minutes=5, could_stop=False, uses=SLEEP,
        because=(planned.of,),
    )  # fmt: skip


def air_by_a_flame(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that something burns with an open flame where people sleep or work, and what fixed air it has low and high.

    Asks: where a flame stands in a room people sleep or work in, do vents that nobody can shut stand low and high
    Limit: 4000 mm2 in all, low and high (AS/NZS 5601.2 as quoted; elsewhere borrowed: it clears nothing)
    Source: own-rule, as-nzs-5601-2
    Lever: vents low and high, or the flame goes outside
    """
    if not result.sleepers and result.use != "work":
        return
    rule = next((one for one in result.rules if one.asks == GAS_AIR and is_read(one)), None)
    for flame, _ in result.flames:
        if flame.burns in ("nothing", "none", "electric", "electricity", "induction"):
            continue
        if result.use == "work":
            yield from _at_work(result, flame.of, flame.name, rule, shown_in)
        else:
            yield _by_a_flame(result, flame.of, flame.name, rule, shown_in)


def _at_work(result: Result, of: str, name: str, rule: Rule | None, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Judge a flame where people are awake: with too little fixed air a door stands open while it burns."""
    limit = rule.limit if rule is not None and rule.limit is not None else BY_A_FLAME
    low, high = result.low, result.high
    is_enough = low.low > 0.0 and high.low > 0.0 and low.low + high.low >= limit
    if is_enough and rule is not None:
        return
    says = f"{name} burns in the room, and {area(low, shown_in)} stays open low and {area(high, shown_in)} high;"
    if is_enough:
        says += f" no less than {show(limit, 'area', shown_in)} in all{_borrowed(result)}, which clears nothing: only"
        says += " with a door open while it burns"
    else:
        says += f" with less than {show(limit, 'area', shown_in)} in all only with a door open while it burns"
    yield Finding(
        "air/air-by-a-flame", of, "limit", says, low.low + high.low, limit,
        min(low.low + high.low - limit, 0.0), "m2", rule.source if rule is not None else OWN_RULE, "openings",
        act=f"Open a door before {name} burns", minutes=1, uses=("work",), because=(of,),
    )  # fmt: skip


def _borrowed(result: Result) -> str:
    """Return where the figure comes from where no rule of the country was read."""
    return f", a figure borrowed from an Australian rule{unread_at(result.country)}"


def _by_a_flame(result: Result, of: str, name: str, rule: Rule | None, shown_in: HeaderUnits) -> Finding:
    limit = rule.limit if rule is not None and rule.limit is not None else BY_A_FLAME
    source = rule.source if rule is not None else OWN_RULE
    low, high, whole = result.low, result.high, result.low.best + result.high.best
    beside = f"{area(low, shown_in)} stays open low and {area(high, shown_in)} high"
    asked = f"{show(limit, 'area', shown_in)} in all, low and high" + ("" if rule else _borrowed(result))
    warns = "Nobody sleeps while it burns; open a door when it does"
    # A figure of another country is no ground to call it clear: it limits until the rule of the place is read.
    kind: Kind = "advice" if rule else "limit"
    says, act = f"{name} burns in the room people sleep in; {beside}. {warns}", warns
    if not rule:
        says += f". That air is no less than {asked}; it clears nothing"
    if low.best <= 0.0 or high.best <= 0.0 or whole < limit:
        can_be = low.high > 0.0 and high.high > 0.0 and low.high + high.high >= limit
        kind = "unknown" if can_be and low.low + high.low > 0.0 and not (low.known and high.known) else "stop"
        says = f"{name} burns in the room people sleep in, and {beside}; it wants {asked}"
        act = f"Fit vents low and high, or take {name} out of the room for the night"
    elif low.low <= 0.0 or high.low <= 0.0 or low.low + high.low < limit:
        kind = "unknown"
        says = f"{name} burns in the room people sleep in, and {beside}, which may be too little; it wants {asked}"
        act = "Measure the clear area of the vents, mesh and louvres taken off, and write free_area:"
    is_clear = kind in ("advice", "limit")
    return Finding(
        "air/air-by-a-flame", of, kind, says, whole, limit, None if is_clear else min(whole - limit, 0.0), "m2", source,
        "openings", act=act, minutes=1 if is_clear else 120, protects=not is_clear, uses=SLEEP, because=(of,),
    )  # fmt: skip
