"""A hole in roof or floor is written by width and across; a height there is said and not taken."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from tests.disciplines.safety.test_findings import RIG

VENT = next(line for line in RIG.splitlines() if line.startswith("  vent:"))


@pytest.mark.parametrize("wall", ["roof", "floor"])
def test_a_height_of_a_hole_in_the_roof_is_said(wall: str) -> None:
    text = RIG.replace(VENT, f"  vent: {{wall: {wall}, x: 1500, width: 400, side: centre, height: 400, stage: shell}}")
    (problem,) = read_rig(text).problems
    assert problem.path == "openings[vent].height"
    assert f"a hole in the {wall} has no height" in problem.says and "across: 14 1/4" in problem.says


def test_across_and_holes_in_walls_are_read_as_they_are() -> None:
    for words in (
        "wall: roof, x: 1500, width: 400, side: centre, across: 400",
        "wall: left, x: 2000, width: 100, z: 100, height: 100",
    ):
        assert read_rig(RIG.replace(VENT, f"  vent: {{{words}, stage: shell}}")).problems == ()
