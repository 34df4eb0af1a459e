"""Rules of how an exhaust runs: away from the burner's own air, falling, short enough, clear of what burns.

The maker's instructions, the installer and the law of the place come first; a missing fact on an exhaust is a no while
somebody sleeps.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot, isfinite

from boxwright.disciplines.heat.findings.night import MARGINS
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP, source_of, warm
from boxwright.exchange import Vector
from boxwright.finding import Finding, Kind
from boxwright.units import Band, HeaderUnits, show

NEAR_INTAKE = MARGINS["near exhaust"]
NEAR_HOT_PIPE = MARGINS["near hot pipe"]
BEARS = columns("bears")["foam and wood"][0]
UPWARD = frozenset({"roof", "up"})


def exhaust_near_intake(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the burner may breathe its own fumes.

    Asks: the gap between the end of the exhaust and that of the combustion air pipe
    Limit: 0.5 m (common practice: the maker's manual and the installer rule)
    Source: heater-practice
    Lever: the ends of exhaust and intake
    """
    for one in _led_out(result):
        gap = intake_gap(one)
        if gap is None or gap.low >= NEAR_INTAKE:
            continue
        name, is_sure = one.planned.name, gap.high < NEAR_INTAKE
        says = f"the exhaust of {name} {'ends' if is_sure else 'may end'} {show(gap.low, 'length', shown_in)} from"
        says += f" where it takes its own air; makers ask for {show(NEAR_INTAKE, 'length', shown_in)} and more, for"
        says += " what breathes its own fumes soots and makes carbon monoxide"
        yield _told(
            "heat/exhaust-near-intake", one, is_sure, says, "Measure from the end of the exhaust to that of the air"
            " pipe, write x: and length: of both, and lead them apart", gap.low, NEAR_INTAKE, gap.low - NEAR_INTAKE,
            "near exhaust",
        )  # fmt: skip


def intake_gap(one: StandingHeater) -> Band | None:
    """Return how far (m) the exhaust ends from the burner's own air, at least and at most; None where one is inside."""
    if one.ends_low is None or one.ends_high is None or one.inlet_low is None or one.inlet_high is None:
        return None
    return gap_between((one.ends_low, one.ends_high), (one.inlet_low, one.inlet_high))


def gap_between(first: tuple[Vector, Vector], second: tuple[Vector, Vector]) -> Band:
    """Return how far two points are apart, each of which lies anywhere in a box of its own: at least and at most."""
    least, most = [], []
    for low, high, other_low, other_high in zip(*first, *second, strict=True):
        least.append(max(other_low - high, low - other_high, 0.0))
        most.append(max(other_high - low, high - other_low))
    low, high = hypot(*least), hypot(*most)
    return Band((low + high) / 2.0, low, high, spread="interval")


def exhaust_falls(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that an exhaust holds water in a low place, or ask whether it does.

    Asks: does the exhaust fall all the way to its end, or drain at its lowest place; not of a chimney
    Limit: yes
    Source: own-rule; the maker's instructions come first
    Lever: falls of the exhaust
    """
    for one in _led_out(result):
        pipe = one.planned.heater.exhaust
        if pipe is None or pipe.falls is True or " ".join(pipe.out.lower().split()) in UPWARD:
            continue
        name, is_sure = one.planned.name, pipe.falls is False
        says = f"the exhaust of {name} does not fall all the way: water stands in its low place and shuts it"
        if not is_sure:
            says = f"nobody wrote whether the exhaust of {name} falls all the way; where water stands in it, it is shut"
        act = "Hang it so that it falls all the way to its end, or drill the drain hole its leaflet shows at its"
        yield _told("heat/exhaust-falls", one, is_sure, says, f"{act} lowest place, and write falls: yes")


def exhaust_length(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that an exhaust is longer than its leaflet lets it be, or ask for both.

    Asks: the length of the exhaust, no less than the straight way to its end, and the longest one of the leaflet
    Limit: the longest one of the leaflet
    Source: own-rule; the maker's instructions come first
    Lever: length and longest of the exhaust
    """
    for one in _led_out(result):
        pipe = one.planned.heater.exhaust
        if pipe is None:
            continue
        name, length, longest = one.planned.name, pipe.length, pipe.longest
        if length is None or longest is None or not (length.known and longest.known):
            missing = [f"how long the exhaust of {name} is"] if length is None or not length.known else []
            if longest is None or not longest.known:
                missing.append(f"how long its leaflet lets {'it' if missing else f'the exhaust of {name}'} be")
            yield _told(
                "heat/exhaust-length", one, False, f"nobody wrote {' and '.join(missing)}; one that is too long holds"
                " its fumes back", "Measure the pipe along its middle, read the longest one in its leaflet, and write"
                " length: and longest: of the exhaust",
            )  # fmt: skip
        elif max(length.high, straight := _straight_to_its_end(one)) > longest.low:
            least, most = max(length.low, straight), max(length.high, straight)
            is_sure = least > longest.high
            says = f"the exhaust of {name} {'is' if is_sure else 'may be'} {show(most, 'length', shown_in)} long"
            if straight > length.high:
                says += f", as far as its end is away, where {show(length.high, 'length', shown_in)} is written"
            says += f", and its leaflet lets it be {show(longest.low, 'length', shown_in)}: it holds its fumes back"
            yield _told(
                "heat/exhaust-length", one, is_sure, says, "Measure where it ends and how long it is; shorten it, or"
                " lead it out at a nearer side", most, longest.low, longest.low - most,
            )  # fmt: skip


def _straight_to_its_end(one: StandingHeater) -> float:
    """Return how far the end of an exhaust is from its heater at least (m): no pipe to it is shorter than that."""
    place = one.planned.place
    if one.ends_low is None or one.ends_high is None or not all(at.known for at in (place.x, place.y, place.z)):
        return 0.0
    sides = [(at, size / 2.0) for at, size in zip((place.x, place.y, place.z), place.size, strict=True)]
    x, y, z = (at.low - half for at, half in sides)
    x_most, y_most, z_most = (at.high + half for at, half in sides)
    gap = gap_between((one.ends_low, one.ends_high), ((x, y, z), (x_most, y_most, z_most))).low
    return gap if isfinite(gap) else 0.0


def exhaust_clear(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a hot exhaust comes too near to what burns, or ask how near it comes.

    Asks: the least gap between the side of the exhaust and wood, foam, wire or hose
    Limit: 50 mm (common practice: the maker's manual and the installer rule)
    Source: heater-practice
    Lever: clear of the exhaust
    """
    for one in _led_out(result):
        pipe = one.planned.heater.exhaust
        clear = pipe.clear if pipe is not None else None
        if clear is not None and clear.known and clear.low >= NEAR_HOT_PIPE:
            continue
        name, act = one.planned.name, "Measure the least gap all along the pipe, through floor and skin too, lag it or"
        act += " move it by its leaflet, and write clear: of the exhaust"
        if clear is None or not clear.known:
            says = f"nobody wrote how near the exhaust of {name}, which gets hot enough to light them, comes to wood,"
            yield _told("heat/exhaust-clear", one, False, f"{says} foam, wire or hose", act)
            continue
        is_sure = clear.high < NEAR_HOT_PIPE
        says = f"the exhaust of {name} {'comes' if is_sure else 'may come'} as near as"
        says += f" {show(clear.low, 'length', shown_in)} to what burns; makers ask for"
        says += f" {show(NEAR_HOT_PIPE, 'length', shown_in)} and more"
        yield _told(
            "heat/exhaust-clear", one, is_sure, says, act, clear.low, NEAR_HOT_PIPE, clear.low - NEAR_HOT_PIPE,
            "near hot pipe",
        )  # fmt: skip


def hot_plate(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that what a heater is screwed to gets hotter than foam and wood bear, or ask how hot that of a flame gets.

    Asks: the temperature of the plate, or of the floor beside it, at the highest setting
    Limit: 75 C, from memory
    Source: bears-recalled
    Lever: plate of the heater
    """
    plated = [one for one in result.heaters if one.runs == "electric" and _is_written(one)]
    for one in (*_led_out(result), *(plated if result.use == "sleep" else ())):
        plate, name, where = one.planned.heater.plate, one.planned.name, one.planned.of
        source = source_of("bears", "foam and wood")
        act = f"Run {name} at its highest setting for half an hour with somebody awake beside it, hold a thermometer to"
        act += " the wood or foam at its plate, and write plate: of the heater"
        if plate is None or not plate.known:
            yield Finding(
                "heat/hot-plate", where, "unknown", f"nobody wrote how hot the plate of {name} gets, and foam and wood"
                f" bear {warm(BEARS, shown_in)}", source=source, lever=where, act=act, minutes=40, uses=SLEEP,
                because=(where,),
            )  # fmt: skip
        elif plate.high > BEARS:
            is_sure = plate.low > BEARS
            says = f"the plate of {name} {'gets' if is_sure else 'may get'} {warm(plate.high, shown_in)}; foam and wood"
            says += f" beside it bear {warm(BEARS, shown_in)}"
            yield Finding(
                "heat/hot-plate", where, "stop" if is_sure else "unknown", says, plate.high, BEARS, BEARS - plate.high,
                "K", source, where, act="Set it on a metal plate with an air gap all round, as its leaflet shows, and"
                " measure again", minutes=60, uses=SLEEP, because=(where,),
            )  # fmt: skip


def _is_written(one: StandingHeater) -> bool:
    """Return whether somebody wrote how hot the plate of a heater gets."""
    return one.planned.heater.plate is not None


def _led_out(result: Result) -> Iterator[StandingHeater]:
    """Give the heaters that burn, or may burn, and lead their fumes out where somebody sleeps."""
    for one in result.heaters if result.use == "sleep" else ():
        if one.runs != "electric" and one.vented == "out":
            yield one


def _told(
    code: str,
    one: StandingHeater,
    is_sure: bool,
    says: str,
    act: str,
    number: float | None = None,
    limit: float | None = None,
    margin: float | None = None,
    row: str = "",
) -> Finding:
    """Return what is said of an exhaust: a stop where it is sure, else an unknown that is a no with a sleeper."""
    where = one.planned.of
    kind: Kind = "stop" if is_sure else "unknown"
    return Finding(
        code, where, kind, says, number, limit, margin, "m" if number is not None else "",
        source_of("margins", row) if row else OWN_RULE, where, act=act, minutes=20, protects=True, uses=SLEEP,
        because=(where,),
    )  # fmt: skip


__all__ = ["exhaust_clear", "exhaust_falls", "exhaust_length", "exhaust_near_intake", "hot_plate"]
