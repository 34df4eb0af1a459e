"""The air people breathe: what comes in on the hardest night, and how much carbon dioxide that leaves by morning."""

from __future__ import annotations

from math import inf

from boxwright.disciplines.air import method
from boxwright.disciplines.air.parts import Section
from boxwright.disciplines.air.result import Breathing, MildNight
from boxwright.disciplines.air.sourced import (
    A_PERSON,
    BREATH,
    CARBON_DIOXIDE,
    DISCHARGE,
    KEPT_AT,
    MILD,
    MILD_HUMIDITY,
    NIGHT,
    OUTDOORS,
    STACK,
    STOREY,
    WANTED,
    WARMER,
)
from boxwright.disciplines.air.vents import ENDS, Passage
from boxwright.exchange import Airflow
from boxwright.units import Band

PRESSURE = 101325.0
"""Pa, at sea level: higher up there is less air, and less of everything in it, in the same measure."""
AT_MOST = 1.0


def flow_between(airflow: Airflow, height: Band, outside: float, inside: float) -> Band:
    """Return the outdoor air (m3/s) that warmth alone brings in through cracks and vents."""
    stack = stack_of(height)
    flows: list[float] = []
    for end in ENDS:
        through = Passage(getattr(airflow.vents, end), getattr(airflow.rise, end))
        cracks = method.leaked(getattr(airflow.leak, end), stack, 0.0, inside - outside, 0.0)
        flows.append(cracks + method.risen(through.area, DISCHARGE, through.rise, inside, outside))
    low, best, high = flows
    return Band(best, low, high, spread="interval", assumed=True)


def stack_of(height: Band) -> float:
    """Return the coefficient of warmth for cracks of a room so high: a low one drives less than a storey."""
    return STACK * min(height.best / STOREY, 1.0) if height.known else STACK


def breathed(own: Section, airflow: Airflow, sleepers: int) -> Breathing | None:
    """Return what the air of a mild and still night comes to, None where nobody sleeps or the room has no size."""
    if sleepers == 0 or not own.volume.known:
        return None
    flow = flow_between(airflow, own.height, KEPT_AT - WARMER, KEPT_AT)
    source = [getattr(CARBON_DIOXIDE, end) * sleepers for end in ENDS]
    # Much air and little breath is the low end of what gathers, little air and much breath the high one.
    against = [flow.high, flow.best, flow.low]
    morning = [
        method.gathered(given, air, own.volume.best, NIGHT, OUTDOORS)
        for given, air in zip(source, against, strict=True)
    ]
    steady = [OUTDOORS + given / air for given, air in zip(source, against, strict=True)]
    return Breathing(flow, _band(morning), _band(steady), A_PERSON * sleepers, own.volume.best, stack_of(own.height))


def mild_night(own: Section, airflow: Airflow, sleepers: int) -> MildNight | None:
    """Return what a mild, wet night asks of the vents, None where nobody sleeps."""
    if sleepers == 0:
        return None
    outdoors = method.humidity_ratio(MILD_HUMIDITY * method.saturation_pressure(MILD), PRESSURE)
    full = method.saturation_pressure(KEPT_AT)
    gained = method.humidity_ratio(WANTED * full, PRESSURE) - outdoors
    density = method.air_density(KEPT_AT, outdoors, PRESSURE)
    need = [
        method.air_to_dry(getattr(BREATH, end) * sleepers, density, gained) if gained > 0.0 else inf for end in ENDS
    ]
    flow = flow_between(airflow, own.height, MILD, KEPT_AT)
    comes_to = []
    for given, air in zip(("low", "best", "high"), (flow.high, flow.best, flow.low), strict=True):
        ratio = outdoors + getattr(BREATH, given) * sleepers / (density * air)
        comes_to.append(min(method.vapour_pressure(ratio, PRESSURE) / full, AT_MOST))
    return MildNight(_band(need), flow, _band(comes_to))


def _band(numbers: list[float]) -> Band:
    low, best, high = numbers
    return Band(best, low, high, spread="interval", assumed=True)
