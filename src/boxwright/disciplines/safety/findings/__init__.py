"""Rules of safety: ways out, alarms, extinguisher, fuel, and what lies open.

What protects and stands perhaps counts as absent; what endangers and stands perhaps counts as present. A rule of a
country whose text was read or quoted may stop; what is recalled or practice advises or asks, and clears no stop.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from boxwright.disciplines.safety.findings.alarms import (
    alarm_place,
    co_alarm,
    extinguisher,
    extinguisher_reach,
    gas_alarm,
    out_of_date,
    smoke_alarm,
)
from boxwright.disciplines.safety.findings.asked_first import no_rule_known, to_look_at, who_sleeps_where
from boxwright.disciplines.safety.findings.at_work import way_out_at_work
from boxwright.disciplines.safety.findings.fire import flame_near_fuel, fuel_inside, generator_near, hot_surface
from boxwright.disciplines.safety.findings.hatch import hatch_out_of_reach
from boxwright.disciplines.safety.findings.how_many import two_ways_out
from boxwright.disciplines.safety.findings.undone import half_done, live_end, open_hole
from boxwright.disciplines.safety.findings.ways import (
    clear_opening,
    high_sill,
    opens_from_inside,
    past_the_other,
    release_not_fitted,
    way_blocked,
)
from boxwright.disciplines.safety.result import Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

__all__ = [
    "alarm_place",
    "clear_opening",
    "co_alarm",
    "extinguisher",
    "extinguisher_reach",
    "findings",
    "flame_near_fuel",
    "fuel_inside",
    "gas_alarm",
    "generator_near",
    "half_done",
    "hatch_out_of_reach",
    "high_sill",
    "hot_surface",
    "live_end",
    "no_rule_known",
    "open_hole",
    "opens_from_inside",
    "out_of_date",
    "past_the_other",
    "release_not_fitted",
    "smoke_alarm",
    "to_look_at",
    "two_ways_out",
    "way_blocked",
    "way_out_at_work",
    "who_sleeps_where",
]

RULES: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    two_ways_out,
    opens_from_inside,
    release_not_fitted,
    fuel_inside,
    generator_near,
    way_blocked,
    hatch_out_of_reach,
    smoke_alarm,
    co_alarm,
    gas_alarm,
    out_of_date,
    extinguisher,
    clear_opening,
    who_sleeps_where,
    no_rule_known,
    past_the_other,
    hot_surface,
    flame_near_fuel,
    live_end,
    open_hole,
    half_done,
    alarm_place,
    extinguisher_reach,
    high_sill,
    to_look_at,
    way_out_at_work,
)


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what all rules of safety have to say of one slot."""
    return tuple(finding for rule in RULES for finding in rule(result, shown_in))
