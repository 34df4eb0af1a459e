"""The card and the plan of the ways out tell of the night, whatever use they are drawn for."""

from __future__ import annotations

import pytest

from boxwright.book.poses import _posed, at_night_of
from boxwright.book.sheets import sheets_of
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.safety.test_findings import JUDGED_ON, edited

BIN = "  bin: {x: 3650, side: right+%s, z: 0, size: 300 x 300 x 400, weight: 3, stage: shell, done: yes%s}"
AT_THE_DOOR = ", when_sleeping: {x: 3650, side: right+400, z: 0}"


@pytest.mark.parametrize(
    ("line", "word"), [(BIN % (2000, AT_THE_DOOR), "SHUT BY bin"), (BIN % (400, ", when_sleeping: out"), "opens out")]
)
def test_a_card_drawn_for_the_road_tells_how_the_door_opens_at_night(line: str, word: str) -> None:
    rig = read_rig(edited(("  # one more", line))).rig
    found = {slot.use: slot for slot in study(rig, JUDGED_ON, ticked=True).slots}
    asleep = found["sleep"].safety
    assert asleep is not None
    for slot in (found["tow"], found["leave"], found["sleep"]):
        assert at_night_of(rig, slot) == asleep.exits
        (card,) = [one for one in sheets_of(rig, slot, (), (), "", rig.header.units) if one.name == "door-card"]
        assert word in [cell for grid in card.grids for row in grid.rows for cell in row]


PILLOW = "  pillow: {x: 600, side: centre, z: 0, size: 300 x 780 x 900, weight: 1, stage: shell, done: yes"
ON_THE_BED = ", when_sleeping: {x: 1000, side: centre, z: 600}}"


def test_the_plan_of_the_night_is_drawn_from_the_bodies_that_are_judged() -> None:
    """What gets its place on the bed goes with it: whoever lies there is shut in by it neither there nor here."""
    folds = ("done: yes}\n  smoke", "done: yes, folds: up}\n  smoke")
    rig = read_rig(edited(("  # one more", PILLOW + ON_THE_BED), folds)).rig
    asleep = next(slot for slot in study(rig, JUDGED_ON, ticked=True).slots if slot.use == "sleep")
    assert asleep.safety is not None and asleep.safety.aisles
    drawn = _posed(rig, asleep, "night", "sleep", rig.header.units)
    assert drawn is not None and asleep.layout is not None
    assert drawn.aisles == asleep.safety.aisles
    assert set(drawn.bodies) == set(asleep.layout.bodies)
    assert next(one.carried_by for one in drawn.bodies if one.name == "pillow") == "parts[bed]"
