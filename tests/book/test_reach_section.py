"""The sheet of what is reached: points where the arithmetic of the file puts them, nothing beyond called reached."""

from __future__ import annotations

from math import hypot

import pytest

from boxwright.disciplines.layout.reach_section import is_in_reach
from boxwright.drawing import Arc, Line, Symbol
from tests.book.test_poses import drawn, grid

INCH = 0.0254


def test_an_arm_gets_as_far_as_a_triangle_of_3_4_and_5_says() -> None:
    assert is_in_reach(0.30, 1.40, 1.0, 0.5) and not is_in_reach(0.301, 1.40, 1.0, 0.5)
    assert is_in_reach(0.50, 0.20, 1.0, 0.5), "bent down to what hangs lower"
    assert not is_in_reach(0.501, 0.20, 1.0, 0.5)
    assert not is_in_reach(0.0, 1.5, 1.0, 0.5), "right overhead, at arm's length, nothing is held"


def test_things_stand_as_far_from_the_bunk_as_the_file_puts_them() -> None:
    """By hand, in inches: the bunk is x 78 to 154, 1.5 to 49.5 from the left; the extinguisher x 50 to 55, 74.5 to 79.5
    from the left, its middle 46.5 over the floor; the cupboard ends at x 48 and begins 54 over the floor.
    """
    sheet = drawn("whimbrel", 10)["reach"]
    _, bed = sheet.views
    at = {mark.of: (mark.at[0] / INCH, mark.at[1] / INCH) for mark in bed.marks if isinstance(mark, Symbol)}
    assert at["parts[extinguisher]"] == pytest.approx((hypot(78 - 55, 74.5 - 49.5), 46.5))
    assert at["parts[cupboard-front]"] == pytest.approx((30.0, 54.0))
    assert "parts[ac-panel]" not in at  # too far to be drawn, in the table alone
    rows = {row["Thing"]: row for row in grid(sheet)}
    assert rows["ac-panel"]["Away from bunk"] == "73 5/8 in"  # 73.5 forward and 4.5 aside, by Pythagoras 73.64


@pytest.mark.parametrize(("name", "stage"), [("whimbrel", 10), ("dunlin", 5)])
def test_what_is_called_reached_lies_within_the_dashes(name: str, stage: int) -> None:
    sheet = drawn(name, stage)["reach"]
    for view, column in zip(sheet.views, (3, 5), strict=True):
        (arc,) = [mark for mark in view.marks if isinstance(mark, Arc) and mark.line == "hidden"]
        (drop,) = [mark for mark in view.marks if isinstance(mark, Line) and mark.line == "hidden"]
        assert drop.start == pytest.approx((arc.radius, arc.centre[1])) and drop.end[1] == 0.0
        said = {of: row[column] for of, row in zip(sheet.grids[0].of, sheet.grids[0].rows, strict=True)}
        seen = [mark for mark in view.marks if isinstance(mark, Symbol)]
        assert seen
        for mark in seen:
            x, z = mark.at
            up = max(z - arc.centre[1], 0.0)
            assert (said[mark.of] == "reached") == (hypot(x, up) <= arc.radius), mark.of


def test_what_is_not_in_yet_is_not_reached_for() -> None:
    assert "reach" not in drawn("whimbrel", 0)
    early = {row["Thing"] for row in grid(drawn("whimbrel", 5)["reach"])}
    assert "extinguisher" in early and "cupboard-front" not in early
