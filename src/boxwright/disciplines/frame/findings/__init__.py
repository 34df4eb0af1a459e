"""Rules of the frame: what an opening cuts, what a unit's depth meets, what a fastener catches, what tapes say.

Nothing here stops anybody: a cut stud, a short screw or an unsealed hole is put right before the next stage closes
over it. What is not known is said, with what to read or to measure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from boxwright.disciplines.frame.findings.fasteners import (
    fastener_blocked,
    fastener_misses,
    fastener_near_wire,
    fastener_unplaced,
    screw_length,
)
from boxwright.disciplines.frame.findings.openings import (
    opening_cuts_member,
    opening_outside_wall,
    opening_overlaps,
    recess_depth,
    seal_unknown,
    unit_depth,
)
from boxwright.disciplines.frame.findings.shell import (
    bay_without_width,
    built_beside_plan,
    cannot_be_carried_in,
    members_unknown,
    roof_lower_than_rise,
    tape_disagrees,
)
from boxwright.disciplines.frame.result import Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

RULES: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    opening_cuts_member,
    opening_outside_wall,
    opening_overlaps,
    recess_depth,
    unit_depth,
    seal_unknown,
    fastener_misses,
    fastener_blocked,
    fastener_unplaced,
    screw_length,
    fastener_near_wire,
    tape_disagrees,
    built_beside_plan,
    roof_lower_than_rise,
    bay_without_width,
    members_unknown,
    cannot_be_carried_in,
)


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what the rules of the frame have to say of one slot."""
    return tuple(finding for rule in RULES for finding in rule(result, shown_in))
