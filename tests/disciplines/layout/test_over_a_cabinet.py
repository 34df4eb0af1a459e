"""What is used and stands behind something is reached over that and down behind it, or past it, or not at all.

By hand, in mm: who is 1650 tall has an arm of 726 and a shoulder at 1350 (0.44 and 0.818 of the height, from memory).
The valve is 60 deep at the right wall and the cabinet before it, so that one stands 225 before its front. Over a
cabinet 400 deep and 900 high to a valve whose middle is at 230 an arm goes 625 along and 670 down: 1295.
"""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import TODAY, mirrored, rig_of, thing


@cache
def reached(text: str, use: str = "work") -> tuple[str, ...]:
    """Return what is said of a thing by the wall that is out of reach."""
    read = read_rig(text)
    assert [one.says for one in read.problems if one.kind == "problem"] == []
    found = study(read.rig, TODAY).findings(use)
    return tuple(
        sorted({one.says for one in found if one.code == "layout/out-of-reach" and "cabinet" not in one.where})
    )


def rig(at: int, deep: int, high: int, name: str = "valve", long: int = 1500, x: int = 1000, more: str = "") -> str:
    """Return the small rig with a valve so high behind a cabinet."""
    cabinet = thing("cabinet", 500, "right-60", 0, f"{long} x {deep} x {high}") if deep else ""
    return rig_of(thing(name, x, "right", at, "60 x 60 x 60") + cabinet + more)


@pytest.mark.parametrize("is_mirrored", [False, True])
@pytest.mark.parametrize(
    ("at", "deep", "high", "told"),
    [
        (200, 400, 900, 1295),
        (200, 400, 600, 995),
        (200, 0, 0, 0),
        (700, 400, 900, 795),
        (780, 400, 900, 0),  # 625 and 90 are 715
        (1000, 400, 900, 0),  # over it
        (200, 100, 600, 0),  # 325 and 370 are 695
        (200, 100, 700, 795),
        (200, 400, 250, 0),  # over a low step
    ],
)
def test_over_and_down(at: int, deep: int, high: int, told: int, is_mirrored: bool) -> None:
    text = rig(at, deep, high)
    found = reached(mirrored(text) if is_mirrored else text)
    words = f"over cabinet: from where one can stand nearest it is {told} mm"
    assert [words in one for one in found] == [True] * bool(told)


@pytest.mark.parametrize("name", ["valve", "shut-off", "gas-shutoff", "battery-isolator", "panel", "light-switch"])
def test_what_one_shuts_off_by_is_reached_for(name: str) -> None:
    assert len(reached(rig(200, 400, 900, name))) == 1
    assert reached(rig(780, 400, 900, name)) == ()


@pytest.mark.parametrize(("x", "is_told"), [(1900, False), (2010, False), (1500, True)])
def test_past_the_end_of_it(x: int, is_told: bool) -> None:
    """It ends at x = 2000: an arm goes past its end to what begins at 1900, and not to what begins at 1500."""
    assert bool(reached(rig(200, 400, 900, x=x))) is is_told


def test_what_hangs_on_the_front_of_it_is_not_behind_it() -> None:
    front = thing("switch", 1000, "right-460", 700, "60 x 20 x 60")
    assert reached(rig_of(thing("cabinet", 500, "right-60", 0, "1500 x 400 x 900") + front)) == ()


def test_what_is_too_high_to_go_over_is_gone_past_or_not_at_all() -> None:
    assert len(reached(rig(200, 400, 1900))) == 1
    assert reached(rig(200, 400, 1900, long=560)) == (), "it ends at x = 1060, where the valve does"


def test_the_gap_behind_it_is_gone_down_aslant_and_the_highest_of_several_counts() -> None:
    """It stands 100 before the valve: 525 along and the root of 100 and 670 squared, 677, down are 1202."""
    parts = thing("valve", 1000, "right", 200, "60 x 60 x 60") + thing(
        "cabinet", 500, "right-160", 0, "1500 x 300 x 900"
    )
    assert "over cabinet: from where one can stand nearest it is 1202 mm" in reached(rig_of(parts))[0]
    both = rig(200, 300, 900, more=thing("bin", 500, "right-360", 0, "1500 x 100 x 600"))
    assert "over cabinet: from where one can stand nearest it is 1295 mm" in reached(both)[0]
