"""Rules of towing: the trailer beside its plates, its tow vehicles, and the law of every place of the route.

A rule that stops compares the bad end of the band: the best value or a permitted fill outside is a stop; only the bad
end outside, by doubt or by what is unknown, is a question. A rule of law whose text was not read never stops.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from boxwright.disciplines.towing.findings.bars import bars
from boxwright.disciplines.towing.findings.fitted import chains, lamps, single_chain, wheel_chocks
from boxwright.disciplines.towing.findings.legal import brakes_required, breakaway, class_change
from boxwright.disciplines.towing.findings.misread import papers_implausible, rating_implausible
from boxwright.disciplines.towing.findings.plates import (
    axle_overloaded,
    coupler_over_rating,
    gross_over_plate,
    wheels_over_axles,
)
from boxwright.disciplines.towing.findings.road import (
    coupler_level,
    ground_clearance,
    hill_start,
    rollover,
    stopping,
    wind_parked,
    wind_towing,
)
from boxwright.disciplines.towing.findings.route import no_rule_known, owner_limit, size_on_route, speed_limit
from boxwright.disciplines.towing.findings.tongue import (
    ball_load_too_small,
    tongue_over_rating,
    tongue_share,
    tongue_swing,
)
from boxwright.disciplines.towing.findings.tyres import tyre_code, tyre_old, tyre_overloaded, tyre_pressure
from boxwright.disciplines.towing.findings.vehicle import (
    combination,
    d_value,
    no_vehicle,
    payload,
    rear_axle,
    tow_rating,
    unbraked_limit,
)
from boxwright.disciplines.towing.findings.walk_round import WalkLine, walk_round
from boxwright.disciplines.towing.result import Behind, Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

__all__ = [
    "WalkLine",
    "axle_overloaded",
    "ball_load_too_small",
    "bars",
    "brakes_required",
    "breakaway",
    "chains",
    "class_change",
    "combination",
    "coupler_level",
    "coupler_over_rating",
    "d_value",
    "findings",
    "gross_over_plate",
    "ground_clearance",
    "hill_start",
    "lamps",
    "no_rule_known",
    "no_vehicle",
    "owner_limit",
    "papers_implausible",
    "payload",
    "rating_implausible",
    "rear_axle",
    "rollover",
    "single_chain",
    "size_on_route",
    "speed_limit",
    "stopping",
    "tongue_over_rating",
    "tongue_share",
    "tongue_swing",
    "tow_rating",
    "tyre_code",
    "tyre_old",
    "tyre_overloaded",
    "tyre_pressure",
    "unbraked_limit",
    "walk_round",
    "wheel_chocks",
    "wheels_over_axles",
    "wind_parked",
    "wind_towing",
]

OF_THE_TRAILER: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    gross_over_plate,
    wheels_over_axles,
    axle_overloaded,
    coupler_over_rating,
    rating_implausible,
    tyre_overloaded,
    tyre_pressure,
    tyre_old,
    tyre_code,
    tongue_share,
    tongue_swing,
    ball_load_too_small,
    class_change,
    breakaway,
    chains,
    single_chain,
    wheel_chocks,
    lamps,
    size_on_route,
    owner_limit,
    speed_limit,
    no_rule_known,
    rollover,
    wind_parked,
    wind_towing,
)
OF_A_VEHICLE: tuple[Callable[[Result, Behind, HeaderUnits], Iterator[Finding]], ...] = (
    tongue_over_rating,
    tow_rating,
    unbraked_limit,
    payload,
    combination,
    rear_axle,
    papers_implausible,
    d_value,
    bars,
    brakes_required,
    coupler_level,
    ground_clearance,
    stopping,
    hill_start,
)


def findings(result: Result, shown_in: HeaderUnits, vehicle: str = "") -> tuple[Finding, ...]:
    """Return what all rules of towing have to say of one slot, behind the vehicle asked for (the first by default).

    What would stop behind another vehicle of the file is told as advice at that vehicle: it hinders nobody who takes
    the one asked for.
    """
    said = [*no_vehicle(result)]
    for rule in OF_THE_TRAILER:
        said += rule(result, shown_in)
    names = [behind.name for behind in result.behind]
    chosen = vehicle if vehicle in names else names[0] if names else ""
    for behind in result.behind:
        for of_a_vehicle in OF_A_VEHICLE:
            found = of_a_vehicle(result, behind, shown_in)
            said += found if behind.name == chosen else _of_another(behind, found)
    if not names:
        said += brakes_required(result, None, shown_in)
    return tuple(said)


def _of_another(behind: Behind, found: Iterator[Finding]) -> Iterator[Finding]:
    """Yield what would stop behind a vehicle that was not asked for, where it is about that vehicle."""
    for finding in found:
        if finding.kind == "stop" and finding.where.startswith(behind.of):
            yield replace(finding, kind="advice", says=f"do not tow it behind {behind.name}: {finding.says}")
