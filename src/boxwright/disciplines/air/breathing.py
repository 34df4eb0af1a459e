"""The air people breathe: what comes in on the hardest night, and how much carbon dioxide that leaves by morning."""

from __future__ import annotations

from collections.abc import Mapping
from math import inf

from boxwright.disciplines.air import method
from boxwright.disciplines.air.given_off import hours_of_cooking
from boxwright.disciplines.air.parts import PlannedDamp, Section
from boxwright.disciplines.air.result import Breathing, MildNight
from boxwright.disciplines.air.sourced import (
    A_PERSON,
    AT_WORK,
    BREATH,
    BREATH_AT_WORK,
    CARBON_DIOXIDE,
    COOKING,
    DISCHARGE,
    KEPT_AT,
    MILD,
    MILD_HUMIDITY,
    NIGHT,
    OUTDOORS,
    STACK,
    STOREY,
    UNWRITTEN,
    WANTED,
    WARMER,
    WORKDAY,
)
from boxwright.disciplines.air.vents import ENDS, End, Passage
from boxwright.exchange import Airflow
from boxwright.units import Band

PRESSURE = 101325.0
"""Pa, at sea level: higher up there is less air, and less of everything in it, in the same measure."""
AT_MOST, LITRE = 1.0, 1e-3


def flow_between(airflow: Airflow, height: Band, outside: float, inside: float) -> Band:
    """Return the outdoor air (m3/s) that warmth alone brings in through cracks and vents."""
    flows: list[float] = []
    for end in ENDS:
        stack = stack_of(height, end)
        through = Passage(getattr(airflow.vents, end), getattr(airflow.rise, end))
        cracks = method.leaked(getattr(airflow.leak, end), stack, 0.0, inside - outside, 0.0)
        flows.append(cracks + method.risen(through.area, DISCHARGE, through.rise, inside, outside))
    low, best, high = flows
    return Band(best, low, high, spread="interval", assumed=True)


def stack_of(height: Band, end: End = "best") -> float:
    """Return the coefficient of warmth for cracks of a room so high: a low one drives less than a storey.

    Where nobody wrote the height it is anything a trailer may have.
    """
    high: float = getattr(height if height.known else UNWRITTEN, end)
    return STACK * min(high / STOREY, 1.0)


def breathed(own: Section, airflow: Airflow, sleepers: int) -> Breathing | None:
    """Return what the air of a mild and still night comes to, None where nobody sleeps or the room has no size."""
    if sleepers == 0 or not own.volume.known:
        return None
    return _gathering(own, airflow, [getattr(CARBON_DIOXIDE, end) * sleepers for end in ENDS], NIGHT, sleepers)


def breathed_at_work(own: Section, airflow: Airflow, workers: int, there: Mapping[str, str]) -> Breathing | None:
    """Return the same of a day of work with everything shut that can be, and of what is cooked on a flame meanwhile.

    A flame counts in the mean of the day: so is its limit meant. None where nobody works in it, or it has no size.
    """
    if workers == 0 or not own.volume.known:
        return None
    cooks = [one for one in own.damp if one.is_flame and one.cooks is not None and one.of in there]
    made = [getattr(AT_WORK, end) * workers + sum(_burnt(one, end, there) for one in cooks) for end in ENDS]
    return _gathering(own, airflow, made, WORKDAY, workers)


def _burnt(one: PlannedDamp, end: End, there: Mapping[str, str]) -> float:
    """Return the carbon dioxide (m3/s) of a flame that cooks, in the mean of a day of work."""
    if one.cooks is None or (there[one.of] != "yes" and end == "low"):
        return 0.0
    litres = getattr(COOKING["carbon dioxide, l of a kWh"], end) * getattr(COOKING["flame, kW"], end)
    return hours_of_cooking(one.cooks, end) * float(litres) * LITRE / WORKDAY


def _gathering(own: Section, airflow: Airflow, source: list[float], lasts: float, people: int) -> Breathing:
    flow = flow_between(airflow, own.height, KEPT_AT - WARMER, KEPT_AT)
    # Much air and little breath is the low end of what gathers, little air and much breath the high one.
    against = [flow.high, flow.best, flow.low]
    morning = [
        method.gathered(given, air, own.volume.best, lasts, OUTDOORS)
        for given, air in zip(source, against, strict=True)
    ]
    steady = [OUTDOORS + given / air for given, air in zip(source, against, strict=True)]
    return Breathing(flow, _band(morning), _band(steady), A_PERSON * people, own.volume.best, stack_of(own.height))


def mild_night(own: Section, airflow: Airflow, sleepers: int, workers: int = 0) -> MildNight | None:
    """Return what a mild, wet night asks of the vents, or such a day of work; None where nobody is in it."""
    if sleepers + workers == 0:
        return None
    vapour = {end: getattr(BREATH, end) * sleepers + getattr(BREATH_AT_WORK, end) * workers for end in ENDS}
    outdoors = method.humidity_ratio(MILD_HUMIDITY * method.saturation_pressure(MILD), PRESSURE)
    full = method.saturation_pressure(KEPT_AT)
    gained = method.humidity_ratio(WANTED * full, PRESSURE) - outdoors
    density = method.air_density(KEPT_AT, outdoors, PRESSURE)
    need = [method.air_to_dry(vapour[end], density, gained) if gained > 0.0 else inf for end in ENDS]
    flow = flow_between(airflow, own.height, MILD, KEPT_AT)
    comes_to = []
    for given, air in zip(ENDS, (flow.high, flow.best, flow.low), strict=True):
        ratio = outdoors + vapour[given] / (density * air)
        comes_to.append(min(method.vapour_pressure(ratio, PRESSURE) / full, AT_MOST))
    return MildNight(_band(need), flow, _band(comes_to), own.height.known)


def _band(numbers: list[float]) -> Band:
    low, best, high = numbers
    return Band(best, low, high, spread="interval", assumed=True)
