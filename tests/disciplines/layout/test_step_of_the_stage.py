"""The rise to a door is to the floor as it is by a stage, not to the one that is not in yet; and plain words of one."""

from __future__ import annotations

import pytest

from boxwright.book.answer import slot_of
from boxwright.book.poses import pose_sheets
from boxwright.disciplines.layout.findings.resting import through_shell
from boxwright.disciplines.layout.result import Crossing, Result
from boxwright.drawing import Grid
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import HeaderUnits
from tests.disciplines.layout.small_rigs import TODAY, rig_of

FLOOR = """\
walls:
  floor:
    layers:
      foam: {of: XPS, thick: 25, weight: 3, stage: all, FOAM}
      board: {of: ply, thick: 12, weight: 9, stage: later}
openings:
"""


@pytest.mark.parametrize(
    ("stage", "foam", "rise"),
    [(0, "done: yes", "325 mm"), (1, "done: yes", "337 mm"), (0, "done: part", "325 mm")],
)
def test_by_hand_one_steps_up_to_what_is_in_by_a_stage(stage: int, foam: str, rise: str) -> None:
    """The deck is 300 mm up; 25 mm of foam go on it, and 12 mm of board later. What perhaps stands is stepped over."""
    text = rig_of().replace("openings:\n", FLOOR.replace("FOAM", foam), 1)
    rig = read_rig(text.replace("  all: {what: all}", "  all: {what: all}\n  later: {what: the rest}")).rig
    found = study(rig, TODAY, stage=stage)
    says = {one.says for one in found.findings("sleep") if one.code == "layout/step-high" and "door" in one.says}
    assert {one.partition(";")[0] for one in says} == {f"the greatest rise at door is {rise}"}
    slot = slot_of(found, "sleep", "")
    assert slot is not None
    (sheet,) = [one for one in pose_sheets(rig, slot, rig.header.units) if one.name == "headroom"]
    rows = [row for one in sheet.grids if isinstance(one, Grid) for row in one.rows]
    assert [row[2] for row in rows if row[1] == "greatest rise at door"] == [rise]


@pytest.mark.parametrize(("count", "says"), [(1, "1 more thing goes through"), (2, "2 more things go through")])
def test_what_is_not_told_one_by_one_is_counted_in_plain_words(count: int, says: str) -> None:
    told = Crossing("parts[a]", "a", "left", 0.1, "sure")
    found = list(through_shell(Result("tow", crossings=(told,), more_crossings=count), HeaderUnits()))
    assert [one.says for one in found if one.where == "parts"] == [f"{says} the shell"]
