"""Rules of how a heater is fitted: fumes below the floor, holes whose place nobody knows, the angle of its pump.

The maker's instructions, the installer and the law of the place come first.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from boxwright.disciplines.heat.burner import BELOW
from boxwright.disciplines.heat.findings.night import MARGINS
from boxwright.disciplines.heat.fuel_way import way_of
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP, source_of
from boxwright.exchange import Opening
from boxwright.finding import Finding, Kind
from boxwright.units import HeaderUnits, show

NEAR_EXHAUST = MARGINS["near exhaust"]
FLATTEST, STEEPEST = columns("pump_angle")["with its outlet up"]
"""Between which slopes makers of small metering pumps want them."""
ITS_OWN = 0.05
"""m around a heater's foot within which a hole in the floor is that of its own plate."""


def exhaust_under_floor(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which exhaust leaves its fumes below the floor, where they gather and come up through every hole in it.

    Asks: does an exhaust end below the floor, or beside a hole in the floor
    Limit: none below it with a hole in the floor; beside one 0.5 m (common practice: the maker's manual rules)
    Source: own-rule, heater-practice
    Lever: the end of the exhaust, led out at the side
    """
    for one in _burning(result):
        holes = [each for each in result.openings if each.wall == "floor" and not _is_its_own(one, each)]
        if _ends_below(one):
            yield from _gathers(one, holes)
            continue
        near = [(gap, each) for each in holes if (gap := _gap(one, each)) is not None and gap < NEAR_EXHAUST]
        if near:
            yield _beside(one, *min(near, key=lambda pair: pair[0]), shown_in)


def _burning(result: Result) -> Iterator[StandingHeater]:
    for one in result.heaters if result.use == "sleep" else ():
        if one.runs != "electric" and one.vented == "out":
            yield one


def _ends_below(one: StandingHeater) -> bool:
    pipe = one.planned.heater.exhaust
    return pipe is not None and " ".join(pipe.out.lower().split()) in BELOW


def _gathers(one: StandingHeater, holes: list[Opening]) -> Iterator[Finding]:
    """Say what comes of an exhaust that ends below the floor: a stop with an open hole in it, else a question."""
    name, where = one.planned.name, one.planned.of
    act = f"Lead the exhaust of {name} out at the side, past the skin, falling all the way"
    says = f"the exhaust of {name} ends below the floor: its fumes gather there"
    if not holes:
        yield Finding(
            "heat/exhaust-under-floor", where, "fix", f"{says}, and come up wherever the floor is not tight",
            source=OWN_RULE, lever=where, act=act, minutes=60, uses=SLEEP, because=(where,),
        )  # fmt: skip
        return
    open_ones = [each for each in holes if each.is_certain and not each.has_unit] or [
        each for each in holes if each.is_open
    ]
    first = (open_ones or holes)[0]
    kind: Kind = "stop" if open_ones else "unknown"
    rest = ", which is open" if open_ones else "; whether that is sealed nobody wrote"
    yield Finding(
        "heat/exhaust-under-floor", where, kind, f"{says}, below {first.name} in the floor{rest}", source=OWN_RULE,
        lever=where, act=act, minutes=60, protects=True, uses=SLEEP, because=(where, first.of),
    )  # fmt: skip


def _beside(one: StandingHeater, gap: float, hole: Opening, shown_in: HeaderUnits) -> Finding:
    name, where = one.planned.name, one.planned.of
    says = f"the exhaust of {name} may end {show(gap, 'length', shown_in)} from {hole.name} in the floor; makers ask"
    says += f" for {show(NEAR_EXHAUST, 'length', shown_in)} and more to anything that opens"
    return Finding(
        "heat/exhaust-under-floor", where, "unknown", says, gap, NEAR_EXHAUST, gap - NEAR_EXHAUST, "m",
        source_of("margins", "near exhaust"), where, act=f"Measure from the end of the exhaust to {hole.name}, write x:"
        " of the exhaust, and seal the hole", minutes=15, protects=True, uses=SLEEP, because=(where, hole.of),
    )  # fmt: skip


def _is_its_own(one: StandingHeater, hole: Opening) -> bool:
    """Return whether a hole in the floor lies below the heater itself: its plate sits on it."""
    if hole.low is None or hole.high is None:
        return False
    place = one.planned.place
    for axis in (0, 1):
        middle, half = (place.x, place.y)[axis], place.size[axis] / 2.0 + ITS_OWN
        low, high = sorted((hole.low[axis], hole.high[axis]))
        if not middle.known or low < middle.best - half or high > middle.best + half:
            return False
    return True


def _gap(one: StandingHeater, hole: Opening) -> float | None:
    """Return how near the exhaust may end to a hole in the floor; None where its place is not known."""
    if hole.low is None or hole.high is None or one.ends_low is None or one.ends_high is None:
        return None
    gaps = []
    for axis in (0, 1, 2):
        low, high = sorted((hole.low[axis], hole.high[axis]))
        gaps.append(max(low - one.ends_high[axis], one.ends_low[axis] - high, 0.0))
    return hypot(*gaps)


def opening_not_placed(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask where a hole of the shell is that an exhaust may end beside.

    Asks: is the place of every hole that is cut or stands known, where a heater that burns sends its fumes out
    Limit: none
    Source: own-rule
    Lever: the place of the opening
    """
    heater = next(_burning(result), None)
    for hole in result.openings if heater is not None else ():
        if hole.low is not None and hole.high is not None:
            continue
        name = heater.planned.name if heater is not None else ""
        yield Finding(
            "heat/opening-not-placed", hole.of, "unknown", f"nobody wrote where {hole.name} is, so nobody can say how"
            f" near to it the exhaust of {name} ends", source=OWN_RULE, lever=hole.of,
            act=f"Measure where {hole.name} is, and write its x and z", minutes=5, protects=True, uses=SLEEP,
            because=(hole.of, heater.planned.of if heater is not None else hole.of),
        )  # fmt: skip


def pump_angle(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where a metering pump lies flatter or steeper than such pumps are made for, or nobody wrote how.

    Asks: the angle written beside the pump in the path of the fuel, its outlet up
    Limit: 15 to 35 degrees, from memory: the leaflet of the pump rules
    Source: pump-recalled
    Lever: path of the heater
    """
    for one in result.heaters:
        pump = next((each for each in way_of(one, shown_in) if each.kind == "pump"), None)
        if one.runs != "burns" or pump is None:
            continue
        name, where, source = one.planned.name, one.planned.of, source_of("pump_angle", "with its outlet up")
        angle = pump.angle
        wants = f"{show(FLATTEST, 'angle', shown_in)} to {show(STEEPEST, 'angle', shown_in)}"
        if angle is None or not angle.known:
            yield Finding(
                "heat/pump-angle", where, "unknown", f"nobody wrote at what angle the pump of {name} lies",
                source=source, lever=where, act="Measure its angle, outlet up, and write it in path:, such as"
                f" {pump.written} at 30 deg", minutes=5, could_stop=False, could_limit=False, because=(where,),
            )  # fmt: skip
            continue
        if angle.low >= FLATTEST and angle.high <= STEEPEST:
            continue
        is_flat = FLATTEST - angle.low > angle.high - STEEPEST
        number, limit = (angle.low, FLATTEST) if is_flat else (angle.high, STEEPEST)
        is_sure = angle.high < FLATTEST or angle.low > STEEPEST
        lies = "lies" if is_sure else "may lie"
        yield Finding(
            "heat/pump-angle", where, "fix" if is_sure else "unknown", f"the pump of {name} {lies} at"
            f" {show(number, 'angle', shown_in)}; such pumps want {wants}, outlet up, so that air leaves them", number,
            limit, -abs(number - limit), "rad", source, where, act="Turn the pump in its clamp, by its leaflet",
            minutes=20, could_stop=False, could_limit=False, because=(where,),
        )  # fmt: skip


__all__ = ["exhaust_under_floor", "opening_not_placed", "pump_angle"]
