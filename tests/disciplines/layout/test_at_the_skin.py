"""What stands in the depth of a wall, on its outer skin or out past it, and what opens outside there.

By hand, in mm: the studs of the small rig end 1000 from the middle and its outer skin is 1040 from it. The door is the
hole from x = 2600 to 3300 in the right wall, hinged at its front edge. A leaf laid back by 180 degrees lies along the
skin from x = 1900 to 2600; a lamp at x = 2300 that is 30 deep and hangs on the skin is struck, one in the wall is not.
"""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import DONE, TODAY, mirrored, rig_of, thing

BACK = "swing: {hinge: front, opens: out, to: 180 deg}"
SQUARE = "swing: {hinge: front, opens: out, to: 90 deg}"
INWARD = "swing: {hinge: front, opens: in, to: 90 deg}"
CODE = "layout/opening-strikes"


@cache
def struck(text: str, where: str = "openings[door]") -> list[tuple[str, str]]:
    """Return the kind and the words of what one thing strikes while somebody sleeps."""
    rig = read_rig(text)
    assert [one.says for one in rig.problems if one.kind == "problem"] == []
    found = study(rig.rig, TODAY).findings("sleep")
    return sorted({(str(one.kind), one.says) for one in found if one.code == CODE and one.where == where})


def from_to(name: str, x: int, low: int, high: int, more: str = DONE, size: str = "60 x {} x 60") -> str:
    """Return a thing 800 over the deck that begins and ends so far to the right of the middle."""
    return thing(name, x, f"centre+{(low + high) / 2}", 800, size.format(high - low), more)


@pytest.mark.parametrize("is_mirrored", [False, True])
@pytest.mark.parametrize(
    ("low", "high", "door", "kinds"),
    [
        (1000, 1030, BACK, ["unknown"]),  # wholly in the depth of the wall
        (1008, 1038, BACK, ["unknown"]),
        (1040, 1070, BACK, ["fix"]),  # hung on the skin
        (1020, 1050, BACK, ["fix"]),
        (970, 1000, BACK, []),  # against the studs, in the room
        (990, 1004, BACK, []),
        (1000, 1030, SQUARE, []),  # the leaf does not come to x = 2300
        (1000, 1030, INWARD, []),
    ],
)
def test_what_is_in_the_depth_of_the_wall_a_leaf_lies_back_on(
    low: int, high: int, door: str, kinds: list[str], is_mirrored: bool
) -> None:
    text = rig_of(from_to("lamp", 2300, low, high), door=door)
    found = struck(mirrored(text) if is_mirrored else text)
    assert [kind for kind, _ in found] == kinds
    if kinds == ["unknown"]:
        assert "nobody wrote whether lamp stands in the wall or hangs on its outside" in found[0][1]


def test_what_is_written_as_let_in_is_no_question() -> None:
    let_in = f"wall: right, recess: 30, {DONE}"
    assert struck(rig_of(from_to("lamp", 2300, 1000, 1030, let_in), door=BACK)) == []


@pytest.mark.parametrize(
    ("low", "high", "kinds"),
    [
        (900, 1050, ["unknown"]),  # its middle is in the room, and it stands 10 out past the skin
        (900, 1040, []),
        (960, 990, []),
        (1000, 1030, ["unknown"]),  # in the hole itself
        (960, 1110, ["fix"]),
    ],
)
def test_what_stands_in_the_hole_of_a_leaf_that_opens_out(low: int, high: int, kinds: list[str]) -> None:
    found = struck(rig_of(from_to("lamp", 2700, low, high), door=SQUARE))
    assert [kind for kind, _ in found] == kinds
    if low == 900 and kinds:
        assert "lamp stands out past the outer skin" in found[0][1]


@pytest.mark.parametrize(
    ("off", "deep", "kinds"),
    [("centre+600..900", 30, []), ("centre+600..1150", 30, ["unknown"]), ("centre+780..980", 200, [])],
)
def test_what_may_be_outside_is_asked_though_it_is_more_likely_inside(off: str, deep: int, kinds: list[str]) -> None:
    """Its middle is at 750, 875 or 880 at best; only the second may be beyond the studs."""
    found = struck(rig_of(thing("lamp", 2700, off, 800, f"60 x {deep} x 60"), door=SQUARE))
    assert [kind for kind, _ in found] == kinds


POST = thing("post", 1100, "centre+1370", 0, "100 x 60 x 1500")
"""A post before the side of the trailer: 1340 to 1400 from its middle."""


@pytest.mark.parametrize("is_mirrored", [False, True])
@pytest.mark.parametrize("wall", ["", "wall: right, "])
@pytest.mark.parametrize(
    ("low", "high", "opens", "kinds"),
    [
        (1040, 1240, "swing: {hinge: front, opens: out, to: 90 deg}", ["fix"]),
        (1040, 1240, "swing: {hinge: front, to: 90 deg}", ["fix"]),
        (1040, 1240, "carcass: {ply: 12, doors: 1}", ["unknown"]),
        (1000, 1240, "swing: {hinge: front, opens: out, to: 90 deg}", ["fix"]),
        (1000, 1030, "swing: {hinge: front, opens: out, to: 90 deg}", ["unknown"]),  # into the room, or out
        (700, 900, "swing: {hinge: front, opens: out, to: 90 deg}", []),
    ],
)
def test_a_locker_on_the_outer_skin_opens_away_from_the_trailer(
    low: int, high: int, opens: str, kinds: list[str], wall: str, is_mirrored: bool
) -> None:
    """Its door is 400 wide and hinged at x = 1000: the post begins 340 or less before its face, at x = 1100."""
    text = rig_of(from_to("locker", 1000, low, high, f"{wall}{DONE}, {opens}", "400 x {} x 400") + POST)
    found = struck(mirrored(text) if is_mirrored else text, "parts[locker]")
    assert [kind for kind, _ in found if "post" in str(found)] == kinds
