"""A stage of the file may be called as what is never built is called elsewhere."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig

HEAD = "boxwright: 1\nunits: {length: mm, weight: kg}\n"
PART = "parts:\n  chest: {x: 0, side: centre, z: 0, size: 500 x 500 x 500, weight: 20, stage: later}\n"


@pytest.mark.parametrize(
    ("stages", "number"),
    [("stages: {shell: {what: shell}, later: {what: the rest}}\n", 1), ("stages: {shell: {what: shell}}\n", None)],
)
def test_later_is_the_stage_of_that_name_where_there_is_one(stages: str, number: int | None) -> None:
    reading = read_rig(HEAD + stages + PART)
    (chest,) = reading.rig.parts
    assert [one for one in reading.problems if one.path.startswith("parts")] == []
    assert (chest.marks.stage, chest.marks.planned) == (number, number is not None)
