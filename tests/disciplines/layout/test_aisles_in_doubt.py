"""An aisle that is wide enough as it is written, and perhaps not wherever its doubt may put what stands beside it.

By hand, in mm: the galley ends 300 to the left of the middle of the small rig, and a wardrobe 400 deep begins so far to
the right of it as 600 less than its offset from the right wall says, or the lower of both ends. Both stand on past the
end of the bunk, so that one goes out between them. At night 500 are usual, between two ways in 600.
"""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import TODAY, mirrored, rig_of, thing

DOOR = "swing: {hinge: front, opens: out, to: 90 deg}"


def rig(side: str, galley: str = "left", between: str = "") -> str:
    """Return the small rig with a wardrobe along the right wall and a galley along the left one, past the bunk."""
    things = thing("wardrobe", 100, side, 0, "2480 x 400 x 1800") + thing("galley", 2010, galley, 0, "1900 x 700 x 900")
    return rig_of(things + between, door=DOOR)


@cache
def narrow(text: str, use: str = "sleep") -> list[tuple[str, str, str]]:
    """Return kind, place and words of what is said of aisles, and of ways that may be blocked."""
    read = read_rig(text)
    assert [one.says for one in read.problems if one.kind == "problem"] == []
    found = study(read.rig, TODAY).findings(use)
    codes = {"layout/aisle-narrow", "safety/way-blocked"}
    return sorted({(str(one.kind), one.where, one.says) for one in found if one.code in codes})


@pytest.mark.parametrize("is_mirrored", [False, True])
@pytest.mark.parametrize(
    ("side", "kinds", "width"),
    [
        ("right-400", [], ""),  # 500 wide
        ("right-390..410", ["unknown"], "490 mm"),  # 500 at best
        ("right-360..430", ["unknown"], "470 mm"),
        ("right-340..380", [], ""),  # 520 at least
        ("right-420..430", ["advice"], "475 mm"),  # not as wide as is usual whatever the doubt
    ],
)
def test_at_night(side: str, kinds: list[str], width: str, is_mirrored: bool) -> None:
    text = rig(side)
    found = narrow(mirrored(text) if is_mirrored else text)
    assert [(kind, where) for kind, where, _ in found] == [(kind, "parts[wardrobe]") for kind in kinds]
    assert all(width in says for *_, says in found)


@pytest.mark.parametrize(("galley", "asked"), [("left+0", False), ("left+0..15", True)])
def test_a_doubt_on_the_other_side_counts_as_well(galley: str, asked: bool) -> None:
    assert [kind for kind, *_ in narrow(rig("right-390", galley))] == (["unknown"] if asked else [])


def test_where_it_may_let_nobody_through_safety_asks_and_that_is_enough() -> None:
    found = narrow(rig("right-300..490"))
    assert {kind for kind, *_ in found} == {"unknown"}
    assert {where for _, where, _ in found} == {"openings[door]", "openings[ramp]"}


@pytest.mark.parametrize(
    ("side", "kinds"),
    [("right-290", []), ("right-250..330", ["unknown"]), ("right-200..380", ["unknown"]), ("right-310", ["advice"])],
)
def test_between_two_ways_in(side: str, kinds: list[str]) -> None:
    """The door is at the front here and the wardrobe stands between it and the ramp: at right-300 it leaves 600."""
    text = rig("right").replace("wardrobe: {x: 100, side: right", f"wardrobe: {{x: 1440, side: {side}")
    text = text.replace("x: 2600, width: 700, z: 0", "x: 500, width: 700, z: 0")
    assert [kind for kind, where, _ in narrow(text, "work") if where == "parts[wardrobe]"] == kinds


@pytest.mark.parametrize(("x", "asked"), [("2600", False), ("2360..2840", True), ("2500..2700", False)])
def test_a_doubt_of_where_the_door_is_counts_as_well(x: str, asked: bool) -> None:
    """The wardrobe ends at x = 2580: of a door 700 wide that begins at 2360 it leaves 480, of one at 2500 more."""
    text = rig("right-300").replace("x: 2600, width: 700", f"x: {x}, width: 700")
    assert narrow(text) == [], "one way in is enough, and the ramp is as wide wherever the door is"
    text = "\n".join(line for line in text.splitlines() if not line.startswith("  ramp:"))  # the door is the only way
    assert [kind for kind, where, _ in narrow(text) if where == "parts[wardrobe]"] == (["unknown"] if asked else [])
