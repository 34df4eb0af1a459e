"""Rules of layout: what is in what, what strikes what as it opens, what stands in room to be kept clear.

A bed that cannot be made up stops sleeping. All else is put right before the next stage closes over it, or is asked.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from boxwright.disciplines.layout.findings.bringing import brought_in
from boxwright.disciplines.layout.findings.moving import (
    canopy,
    leaf_over,
    one_at_a_time,
    opening_strikes,
    opens_over_bed,
    sleeping_place,
    way_in,
)
from boxwright.disciplines.layout.findings.people import (
    bed_narrow,
    bed_short,
    body_height_unknown,
    headroom_low,
    step_high,
)
from boxwright.disciplines.layout.findings.reaching import aisle_narrow, out_of_reach, roof_seat
from boxwright.disciplines.layout.findings.resting import (
    gap_small,
    held_by_nothing,
    kept_clear,
    one_space,
    sight_hidden,
    sticks_out,
    through_shell,
    window_covered,
)
from boxwright.disciplines.layout.findings.unsaid import opening_unsaid, place_unknown, room_unsaid
from boxwright.disciplines.layout.result import Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

RULES: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    sleeping_place,
    one_space,
    opening_strikes,
    one_at_a_time,
    leaf_over,
    opens_over_bed,
    kept_clear,
    gap_small,
    through_shell,
    held_by_nothing,
    sticks_out,
    window_covered,
    sight_hidden,
    canopy,
    way_in,
    brought_in,
    opening_unsaid,
    place_unknown,
    room_unsaid,
    bed_short,
    bed_narrow,
    headroom_low,
    step_high,
    out_of_reach,
    aisle_narrow,
    roof_seat,
    body_height_unknown,
)


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what the rules of layout have to say of one slot."""
    return tuple(finding for rule in RULES for finding in rule(result, shown_in))
