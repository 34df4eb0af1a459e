"""The card and the plan of the ways out tell of the night, whatever use they are drawn for."""

from __future__ import annotations

import pytest

from boxwright.book.poses import at_night_of
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
