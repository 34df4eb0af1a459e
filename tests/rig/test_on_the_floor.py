"""What is written to stand on the floor stands where there is one; what lies over a wall in part, layout tells."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig

NONE_OF_IT = "none of it is there"
HEAD = """\
boxwright: 1
units: {length: mm}
trailer: {body: {length: 4000, width: 2000, height: 2000}, coupler_x: -1300}
"""


def told(words: str, nose: str = "", name: str = "box") -> list[tuple[str, int]]:
    """Return where it is said of one thing that no floor is under it."""
    text = f"{HEAD}{nose}parts:\n  shelf: {{x: 500, side: left, z: 400, size: 400 x 300 x 20}}\n  {name}: {{{words}}}\n"
    return [(one.path, one.line) for one in read_rig(text).problems if NONE_OF_IT in one.says]


@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("x: -300, side: centre", "x"),
        ("x: -301, side: centre", "x"),
        ("x: 4000, side: centre", "x"),
        ("x: 1000, side: right+300", "side"),
        ("x: 1000, side: left-300", "side"),
    ],
)
def test_what_stands_on_the_floor_and_wholly_off_it_is_said(place: str, key: str) -> None:
    """A box 300 mm long and wide: at -300 its rear edge is in the plane of the front wall."""
    assert told(f"{place}, z: floor, size: 300 x 300 x 300") == [(f"parts[box].{key}", 6)]


@pytest.mark.parametrize(
    "words",
    [
        "x: -299, side: centre, z: floor",  # in the wall: layout tells of it
        "x: 3999, side: centre, z: floor",
        "x: -400..-200, side: centre, z: floor",  # perhaps over the wall
        "x: -300, side: centre, z: 0",  # on the drawbar, by its height
        "x: -300, side: centre, z: floor+30",
        "x: unknown, side: centre, z: floor",
        "rides_on: shelf, x: -300, side: centre, z: floor",
    ],
)
def test_what_may_have_floor_under_it_or_hangs_elsewhere_is_not(words: str) -> None:
    assert told(f"{words}, size: 300 x 300 x 300") == []


def test_in_a_nose_the_floor_goes_on() -> None:
    words = "x: %s, side: centre, z: floor, size: 300 x 300 x 300"
    nose = "frame: {nose: {length: 600, tip: 200}}\n"
    assert told(words % -500, nose) == []
    assert told(words % -900, nose) == [("parts[box].x", 7)]
    assert told(words % -900, nose.replace("600", "unknown")) == []
