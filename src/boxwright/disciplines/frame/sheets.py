"""The sheets of the frame, in the order of a folder."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boxwright.disciplines.frame.drawn import Drawn
    from boxwright.drawing import Sheet

NO_BODY = (
    "Nothing of the frame can be drawn yet. Missing under trailer, body: length, width and height, from stud face to "
    "stud face and from the deck to the roof bows."
)


def sheets(drawn: Drawn) -> tuple[Sheet, ...]:
    """Return every sheet of the frame; for a body without sizes, one that says what is missing."""
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.disciplines.frame.bay_card import bay_cards
    from boxwright.disciplines.frame.build_up import sections
    from boxwright.disciplines.frame.cross_section import cross_section
    from boxwright.disciplines.frame.elevation import elevation
    from boxwright.disciplines.frame.faults import fault_grid, placed_faults
    from boxwright.disciplines.frame.hole_page import hole_page
    from boxwright.disciplines.frame.order_sheet import order_sheet
    from boxwright.disciplines.frame.plans import floor, roof
    from boxwright.disciplines.frame.receiving_sheet import receiving_sheet
    from boxwright.disciplines.frame.story_stick import story_stick
    from boxwright.disciplines.frame.tape_plan import tape_plan
    from boxwright.drawing import Sheet

    frame, faults = drawn.frame, placed_faults(drawn)
    listed = Sheet("to-mend", "What is wrong or open in the frame", (), (), (fault_grid(drawn),))
    found: tuple[Sheet, ...] = (listed,) if drawn.faults() else ()
    if not frame.walls:
        return (*found, Sheet("body", "The body has no size", (), (NO_BODY,)))
    upright = [one for one in frame.walls if one.name not in ("roof", "floor")]
    for is_inside in (False, True):
        found += tuple(elevation(drawn, wall, is_inside, faults) for wall in upright)
    above, below = frame.wall("roof"), frame.wall("floor")
    found += (roof(drawn, above, faults),) if above is not None else ()
    found += (floor(drawn, below, faults),) if below is not None else ()
    found += (sections(drawn), *cross_section(drawn))
    carried = tuple(hole_page(drawn, hole) for hole in frame.holes)
    carried += (order_sheet(drawn), receiving_sheet(drawn))
    carried += tuple(story_stick(drawn, wall) for wall in frame.walls if wall.name != "floor")
    carried += (tape_plan(drawn, below),) if below is not None else ()
    carried += (bay_cards(drawn),)
    return (*found, *(replace(one, is_for_hand=True) for one in carried))
