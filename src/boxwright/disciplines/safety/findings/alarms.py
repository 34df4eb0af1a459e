"""Rules of what warns and what puts out: is it there, in date, in its place, and does it suit what may burn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import isfinite

from boxwright.disciplines.safety.parts import There
from boxwright.disciplines.safety.result import Device, Flame, Result
from boxwright.disciplines.safety.solve import ends_of, gap_between
from boxwright.disciplines.safety.sourced import CO, EXTINGUISHER, FUELS, LENGTHS, SMOKE, SOURCE_OF_LENGTH
from boxwright.disciplines.safety.telling import (
    OWN_LABEL,
    SLEEP,
    WORK,
    asked_by,
    length,
    measured_elsewhere,
    question,
    stop,
)
from boxwright.finding import Finding, listed
from boxwright.units import HeaderUnits

AWAY = "is outside the room, or shut in"
"""Why something that stands warns and helps nobody."""


def smoke_alarm(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that somebody sleeps without a smoke alarm.

    Asks: does a smoke alarm stand in the upper half of the room wherever somebody sleeps
    Limit: one; our own rule, practice: nobody is to sleep where none warns; smoke rises; local code may ask more
    Source: own-rule
    Lever: fit one
    """
    if result.use == "sleep":
        yield from _wanted(result, "smoke", "safety/smoke-alarm", "somebody sleeps", SMOKE)


def co_alarm(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that somebody sleeps, or works beside what burns, without an alarm of carbon monoxide.

    Asks: does an alarm of carbon monoxide stand in the room of a sleeper (a neighbour's engine is enough to need it),
    and in that of who works beside a flame, a heater that burns or an engine
    Limit: one; our own rule, practice: nobody is to sleep where none warns; local code may ask more
    Source: own-rule
    Lever: fit one
    """
    burning = _burning(result)
    if result.use == "sleep":
        because = f"somebody sleeps with {listed(burning)}" if burning else "somebody sleeps"
        yield from _wanted(result, "CO", "safety/co-alarm", because, CO)
    elif result.use == "work" and burning:
        for found in _wanted(result, "CO", "safety/co-alarm", f"somebody works with {listed(burning)}", CO):
            yield _at_work(found)


def _burning(result: Result) -> list[str]:
    """Return the names of what burns, or may, and of the engines."""
    return list(dict.fromkeys(one.kept.name for one in (*result.flames, *_generators(result))))


def _at_work(found: Finding) -> Finding:
    """Return what forbids sleeping as it is said to who works there: awake they may still leave, so it limits."""
    return replace(found, kind="limit" if found.kind == "stop" else found.kind, protects=False, uses=WORK)


def gas_alarm(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that gas is aboard, or may be, without an alarm for it.

    Asks: does a gas alarm stand in the lower half of the room where gas is stored or burnt inside
    Limit: one; recalled, so it asks and never stops
    Source: nfpa-1192-recalled
    Lever: fit one, or write what a flame burns
    """
    code = "safety/gas-alarm"
    if result.use != "sleep" or any(warns_of("gas", one, result) == "yes" for one in result.alarms):
        return
    flames = [one.kept for one in result.flames if FUELS.get(one.kept.burns, (False, ""))[1] == "gas"]
    stores = [
        one.store for one in result.stores if one.kind == "gas" and one.is_inside is not False and not one.is_empty
    ]
    if flames or stores:
        told = [_does("burn", [one.name for one in flames]), _does("hold", [one.name for one in stores])]
        high = next((one.kept.name for one in result.alarms if "gas" in one.kept.facet.alarm and one.helps != "no"), "")
        says = f"{listed([one for one in told if one])} inside, and no gas alarm hangs"
        says += f" low; {high} may hang in the upper half of the room, and such gas sinks" if high else ""
        where = [*(one.of for one in flames), *(one.of for one in stores)][0]
        yield question(code, where, says, "Fit a gas alarm near the floor", 30, "parts", "nfpa-1192-recalled")
        return
    for one in result.flames:
        if one.kept.burns not in FUELS:
            is_written = one.kept.burns != "unknown"
            said = f'"{one.kept.burns}" is no fuel known here' if is_written else "nobody wrote what it burns"
            says = f"{one.kept.name} burns with a flame, and {said}; with gas it wants a gas alarm"
            act = f"Look what {one.kept.name} burns, and write burns: butane, propane, spirit, wood or nothing"
            yield question(code, one.kept.of, says, act, 1, f"{one.kept.of}.burns", "nfpa-1192-recalled")


def _does(verb: str, names: list[str]) -> str:
    """Return that what has these names burns or holds gas; empty where nothing does."""
    return f"{listed(names)} {verb if len(names) > 1 else f'{verb}s'} gas" if names else ""


def _wanted(result: Result, what: str, code: str, because: str, asks: str) -> Iterator[Finding]:
    word = {"CO": "carbon monoxide"}.get(what, what)
    found = [one for one in result.alarms if what in one.kept.facet.alarm]
    if any(warns_of(what, one, result) == "yes" for one in found):
        return
    perhaps = [one for one in found if warns_of(what, one, result) == "perhaps"]
    if perhaps:
        kept = perhaps[0].kept
        says = f"{_may_be(perhaps[0])}, and {because} without another alarm for {word}"
        act = f"Look whether {kept.name} hangs, press its button, and tick it"
        if perhaps[0].there == "yes":
            act = f"Measure where {kept.name} hangs, press its button, and write x, side or wall, and z"
        lever = f"{kept.of}.{'x' if perhaps[0].there == 'yes' else 'done'}"
        yield question(code, kept.of, says, act, 2, lever)
        return
    later = f"; {found[0].kept.name} {_why_not(found[0], result)}" if found else ""
    where = found[0].kept.of if found else "parts"
    says = f"{because}, and no alarm for {word} hangs{later}{asked_by(result.law, asks)}"
    yield stop(code, where, says, f"Hang an alarm for {word}, and write it: alarm: {what}", 20, where)


def warns_of(what: str, one: Device, result: Result) -> There:
    """Return whether an alarm warns of something in time where it hangs: smoke rises, and gas of bottles sinks."""
    if what not in one.kept.facet.alarm:
        return "no"
    half = (result.floor + result.ceiling) / 2.0
    if one.helps == "no" or one.up is None or what not in ("smoke", "gas") or not isfinite(half):
        return one.helps
    best, worst = (one.up.high, one.up.low) if what == "smoke" else (-one.up.low, -one.up.high)
    half = half if what == "smoke" else -half
    if best < half:
        return "no"
    return "perhaps" if worst < half else one.helps


def _is_on_the_roof(one: Device, result: Result) -> bool:
    return one.at is not None and one.at[2].low >= result.ceiling


def _why_not(one: Device, result: Result) -> str:
    if one.there == "no":
        return "is not in"
    if one.helps == "no" and _is_on_the_roof(one, result):
        return "lies on the roof, outside the room; what hangs under it is written wall: ceiling"
    return AWAY if one.helps == "no" else "hangs in the lower half of the room, and smoke rises"


def _may_be(one: Device) -> str:
    """Return in what doubt a thing is that protects: whether it hangs at all, whether in the room, or how high."""
    if one.helps == "yes":
        return f"{one.kept.name} may hang in the lower half of the room, and smoke rises"
    return f"{one.kept.name} may be {'outside the room' if one.there == 'yes' else 'there or not'}"


def out_of_date(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which alarm or extinguisher is out of date, or without a date.

    Asks: is every alarm and extinguisher that stands in date on the day; at work, the alarms for what burns there
    Limit: the date on its label
    Source: own-label
    Lever: change it, and write expires:
    """
    for one in (*result.alarms, *result.extinguishers) if result.use == "sleep" else ():
        yield from _dated(one, result)
    for one in result.alarms if result.use == "work" and _burning(result) else ():
        if "CO" in one.kept.facet.alarm:
            yield from (_at_work(found) for found in _dated(one, result))


def _dated(one: Device, result: Result) -> Iterator[Finding]:
    """Give what is to be said of the date of one alarm or extinguisher that stands, or may."""
    code = "safety/out-of-date"
    if one.there != "no":
        kept = one.kept
        if kept.facet.expires is None:
            says = f"nobody wrote until when {kept.name} is good"
            act = f"Read the date on the back of {kept.name}, and write expires: such as 2031-02"
            yield question(code, kept.of, says, act, 1, f"{kept.of}.expires", OWN_LABEL)
        elif kept.facet.expires < result.judged_on:
            says = f"{kept.name} is out of date since {kept.facet.expires}; on {result.judged_on} it protects nobody"
            act = f"Change {kept.name}, and write its new date"
            made = stop(code, kept.of, says, act, 20, f"{kept.of}.expires", OWN_LABEL)
            yield replace(made, kind="fix", protects=False) if _is_made_up_for(one, result) else made


def _is_made_up_for(one: Device, result: Result) -> bool:
    """Return whether all that something out of date is for is done by others that surely hang and are in date."""
    others = [
        other.kept.facet
        for other in (*result.alarms, *result.extinguishers)
        if other.helps == "yes" and other.kept.facet.expires is not None
        if other.kept.facet.expires >= result.judged_on
    ]
    done = {what for facet in others for what in (*facet.alarm, *facet.puts_out)}
    meant = {*one.kept.facet.alarm, *one.kept.facet.puts_out}
    return bool(meant) and meant <= done


def alarm_place(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which alarm hangs where it is not usual.

    Asks: smoke near the ceiling, gas near the floor, carbon monoxide one to three metres to the side of a flame
    Limit: 12 in (recalled) from ceiling or floor; 1 m to 3 m from a flame (EN 50292 as quoted)
    Source: en-50292, recalled, own-label
    Lever: hang it elsewhere; its own leaflet outranks this
    """
    code = "safety/alarm-place"
    for one in result.alarms if result.use == "sleep" else ():
        kept = one.kept
        if one.there == "no":
            continue
        if one.at is None:
            says = f"nobody wrote where {kept.name} hangs, so its place cannot be judged"
            act = f"Measure where {kept.name} hangs, and write x, side or wall, and z"
            yield question(code, kept.of, says, act, 3, f"{kept.of}.x", OWN_LABEL, protects=False)
            continue
        for what, far, key in (
            ("smoke", result.ceiling - one.at[2].high, "from ceiling"),
            ("gas", one.at[2].low - result.floor, "from floor"),
        ):
            limit = LENGTHS[key]
            if what in kept.facet.alarm and far > limit:
                within = f"for {what} within {length(limit, shown_in)}"
                says = f"{kept.name} hangs {length(far, shown_in)} {key}; usual is {within}"
                act = f"Read the leaflet of {kept.name} and hang it so"
                yield _numbered(code, kept.of, says, act, far, limit, SOURCE_OF_LENGTH[key])
        if "CO" in kept.facet.alarm:
            yield from _beside_flames(code, one, result, shown_in)


def _beside_flames(code: str, one: Device, result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    nearest, farthest = LENGTHS["alarm nearest"], LENGTHS["alarm farthest"]
    for flame in result.flames:
        if flame.at is None or one.at is None or flame.is_inside is not True:
            continue
        far = gap_between(one.at, flame.at)
        if nearest <= far <= farthest:
            continue
        says = (
            f"{one.kept.name} hangs {length(far, shown_in)} to the side of {flame.kept.name}; usual is"
            f" {length(nearest, shown_in)} to {length(farthest, shown_in)} (EN 50292, as leaflets of alarms quote"
            " it)"
        )
        act = f"Read the leaflet of {one.kept.name} and hang it so"
        limit = nearest if far < nearest else farthest
        yield _numbered(code, one.kept.of, says, act, far, limit, SOURCE_OF_LENGTH["alarm nearest"])


def _numbered(code: str, where: str, says: str, act: str, number: float, limit: float, source: str) -> Finding:
    margin = -abs(number - limit)
    return Finding(
        code, where, "advice", says, number, limit, margin, "m", source, f"{where}.x", act=act, minutes=10, uses=SLEEP,
        because=(where,),
    )  # fmt: skip


def extinguisher(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that somebody sleeps without an extinguisher, or with one that does not suit what may burn.

    Asks: does an extinguisher stand in the room that puts out solids, and liquids where a liquid or a gas is aboard
    Limit: one; our own rule, practice: nobody is to sleep where none is at hand; local code may ask more
    Source: own-rule, own-label
    Lever: fit one, and write what it puts out from its label
    """
    code = "safety/extinguisher"
    if result.use != "sleep":
        return
    there = [one for one in result.extinguishers if one.helps == "yes"]
    if not there:
        perhaps = [one for one in result.extinguishers if one.helps == "perhaps"]
        if perhaps:
            kept = perhaps[0].kept
            says = f"{_may_be(perhaps[0])}, and it is the only one"
            act, key = f"Look whether {kept.name} hangs, and tick it", "done"
            if perhaps[0].there == "yes":
                act, key = f"Measure where {kept.name} hangs, and write x, side or wall, and z", "x"
            yield question(code, kept.of, says, act, 1, f"{kept.of}.{key}")
            return
        later = "".join(f"; {one.kept.name} {_why_not(one, result)}" for one in result.extinguishers[:1])
        says = f"somebody sleeps, and no extinguisher hangs{later}"
        says += asked_by(result.law, EXTINGUISHER)
        yield stop(code, "parts", says, "Hang an extinguisher by the way out", 20, "parts")
        return
    wanted = _may_burn(result)
    puts_out = {what for one in there for what in one.kept.facet.puts_out}
    kept = there[0].kept
    if not puts_out:
        says = f"nobody wrote what {kept.name} puts out; it has to put out {listed(sorted(wanted))}"
        act = f"Read the letters on {kept.name}, and write puts_out: such as ABC"
        yield question(code, kept.of, says, act, 1, f"{kept.of}.puts_out", OWN_LABEL)
    elif wanted - puts_out:
        says = f"{listed([one.kept.name for one in there])} does not put out {listed(sorted(wanted - puts_out))}"
        act = f"Hang one that puts out {listed(sorted(wanted))}"
        yield stop(code, kept.of, says, act, 20, f"{kept.of}.puts_out", OWN_LABEL)


def _may_burn(result: Result) -> set[str]:
    """Return what an extinguisher has to put out: solids always, liquids where a liquid or a gas burns or is kept."""
    kinds = {FUELS.get(one.kept.burns, (True, "liquid"))[1] for one in result.flames}
    kinds |= {one.kind or "liquid" for one in result.stores if not one.is_empty}
    return {"solids"} | ({"liquids"} if kinds & {"liquid", "gas"} or _generators(result) else set())


def _generators(result: Result) -> list[Flame]:
    """Return what is known to be a generator; what may be one is asked where it stands too near."""
    return [one for one in result.generators if one.kept.facet.generator != "unknown"]


def extinguisher_reach(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that no extinguisher hangs by a way out, or which one hangs too high for everybody to reach.

    Asks: does an extinguisher hang near a way out, so that whoever reaches for it can still leave, and low enough
    Limit: 24 in (610 mm) from a way out, its top 5 ft (1524 mm) over the floor, both recalled, so they advise
    Source: nfpa-1192-recalled, nfpa-10-recalled
    Lever: hang it by the way out, lower
    """
    code = "safety/extinguisher-reach"
    there = [one for one in result.extinguishers if one.there == "yes"] if result.use == "sleep" else []
    exits = [(one, ends) for one in result.exits if one.counts and (ends := ends_of(one.way.place)) is not None]
    yield from _too_high(code, there, result, shown_in)
    limit = LENGTHS["extinguisher"]
    unplaced = [one for one in there if one.at is None]
    pairs = [(gap_between(one.at, ends), one, way) for one in there if one.at is not None for way, ends in exits]
    if pairs:
        far, one, way = min(pairs, key=lambda pair: pair[0])
        if far > limit:
            says = (
                f"{one.kept.name} hangs {length(far, shown_in)} from the nearest way out, {way.way.name};"
                f" within {length(limit, shown_in)} of it nobody has to turn back"
                f"{measured_elsewhere(result.law)}{asked_by(result.law, EXTINGUISHER)}"
            )
            act = f"Hang {one.kept.name} by {way.way.name}"
            yield _numbered(code, one.kept.of, says, act, far, limit, SOURCE_OF_LENGTH["extinguisher"])
    elif unplaced and exits:
        kept = unplaced[0].kept
        says = f"nobody wrote where {kept.name} hangs, so nobody can say whether it is by a way out"
        act = f"Measure where {kept.name} hangs, and write it"
        yield question(code, kept.of, says, act, 2, f"{kept.of}.x", protects=False)


def _too_high(code: str, there: list[Device], result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield which extinguisher hangs higher than everybody reaches."""
    limit = LENGTHS["extinguisher up"]
    for one in there:
        up = one.at[2].high - result.floor if one.at is not None else limit
        if up > limit:
            says = (
                f"the top of {one.kept.name} is {length(up, shown_in)} over the floor;"
                f" not everybody reaches over {length(limit, shown_in)}{measured_elsewhere(result.law)}"
            )
            act = f"Hang {one.kept.name} lower"
            yield _numbered(code, one.kept.of, says, act, up, limit, SOURCE_OF_LENGTH["extinguisher up"])
