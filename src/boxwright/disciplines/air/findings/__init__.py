"""Rules of air: what people breathe, what stays open, what settles where it is cold, wood that grows wet.

A vent that stands perhaps counts as shut where people breathe, and as open where something is lost through it. A rule
of a country that was read or quoted may stop; what is practice advises, or stops on the safe side, and clears nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from boxwright.disciplines.air.findings.at_work import air_at_work
from boxwright.disciplines.air.findings.breathing import (
    air_by_a_flame,
    fresh_air,
    leaf_not_shut,
    low_and_high,
    vent_not_open,
)
from boxwright.disciplines.air.findings.damp import condensation, damp_wood, mild_wet
from boxwright.disciplines.air.findings.lockers import gas_drop, gas_locker
from boxwright.disciplines.air.result import Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

__all__ = [
    "air_at_work",
    "air_by_a_flame",
    "condensation",
    "damp_wood",
    "findings",
    "fresh_air",
    "gas_drop",
    "gas_locker",
    "leaf_not_shut",
    "low_and_high",
    "mild_wet",
    "vent_not_open",
]

RULES: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    fresh_air,
    air_at_work,
    air_by_a_flame,
    vent_not_open,
    leaf_not_shut,
    low_and_high,
    condensation,
    mild_wet,
    damp_wood,
    gas_locker,
    gas_drop,
)


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what all rules of air have to say of one slot."""
    return tuple(finding for rule in RULES for finding in rule(result, shown_in))
