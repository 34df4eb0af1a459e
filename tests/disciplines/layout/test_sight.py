"""What hides from a camera what it looks at: seen from above, at its own height, each share reckoned by hand."""

from __future__ import annotations

from datetime import date
from math import atan, degrees

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import DONE, mirrored, rig_of
from tests.disciplines.layout.small_rigs import thing as p

EYE = f"{DONE}, sees: {{toward: rear, angle: 90 deg}}"
AT = p("eye", 4060, "centre", 1500, "40 x 40 x 40", EYE)
"""It looks rearward from 4100, at 1520 over the deck."""


def hidden(parts: str) -> list[tuple[float, float, tuple[str, ...]]]:
    """Return how much is hidden surely and at most (deg), and by what; the same mirrored."""
    found = []
    for text in (rig_of(parts), mirrored(rig_of(parts))):
        rig = read_rig(text)
        assert [one.says for one in rig.problems if one.kind == "problem"] == []
        laid = next(one.layout for one in study(rig.rig, date(2026, 6, 1)).slots if one.use == "tow")
        assert laid is not None
        found.append([(round(one.share * 90.0, 6), round(one.most * 90.0, 6), one.names) for one in laid.hidden])
    assert found[0] == found[1]
    return found[0]


def by_hand(half: float, deep: float) -> float:
    return round(2.0 * degrees(atan(half / deep)), 6)


def test_a_thing_straight_behind_hides_its_angle_by_its_near_face() -> None:
    """Its near face is 500 behind the eye and 300 wide."""
    share = by_hand(150.0, 500.0)
    rack = p("rack", 4600, "centre", 1400, "300 x 300 x 300")
    assert hidden(AT + rack) == [(share, share, ("rack",))]
    # what is behind the first hides nothing more
    assert hidden(AT + rack + p("far", 5000, "centre", 1400, "100 x 300 x 300")) == [(share, share, ("rack", "far"))]


def test_two_things_side_by_side_hide_what_both_do() -> None:
    """By hand: 100 to 200 to each side at 500: twice atan(0.4) less atan(0.2)."""
    pair = p("one", 4600, "centre+150", 1400, "1 x 100 x 300") + p("two", 4600, "centre-150", 1400, "1 x 100 x 300")
    share = round(2.0 * degrees(atan(0.4) - atan(100.0 / 501.0)), 6)
    assert hidden(AT + pair) == [(share, share, ("one", "two"))]


@pytest.mark.parametrize(
    "more",
    [
        p("low", 4600, "centre", 300, "300 x 300 x 1200"),  # its top at 1500 is under the middle of the eye
        p("high", 4600, "centre", 1540, "300 x 300 x 300"),
        p("aside", 4600, "centre+1200", 1400, "300 x 300 x 300"),  # beyond 45 deg
        p("thin", 4600, "centre", 1400, "300 x 30 x 300"),  # 3.4 of 90 deg
        p("before", 3000, "centre", 1400, "300 x 300 x 300"),
        p("hood", 4100, "centre", 1500, "60 x 80 x 60", f"{DONE}, rides_on: eye"),
    ],
)
def test_what_does_not_stand_in_its_sight_hides_nothing(more: str) -> None:
    assert hidden(AT + more) == []


def test_what_perhaps_stands_there_is_told_as_perhaps() -> None:
    found = hidden(AT + p("rack", "4600+-100", "centre", 1400, "300 x 300 x 300"))
    assert found == [(by_hand(150.0, 500.0), by_hand(150.0, 400.0), ("rack",))]
    unticked = p("rack", 4600, "centre", 1400, "300 x 300 x 300", "weight: 5, stage: all, done: part")
    assert hidden(AT + unticked) == [(0.0, by_hand(150.0, 500.0), ("rack",))]


def test_what_sees_within_the_room_is_not_judged() -> None:
    inside = p("eye", 1000, "centre", 1500, "40 x 40 x 40", EYE)
    assert hidden(inside + p("rack", 1500, "centre", 1400, "300 x 300 x 300")) == []


def test_what_nobody_wrote_how_wide_it_sees_looks_straight_ahead() -> None:
    straight = AT.replace(", angle: 90 deg", "")
    assert hidden(straight + p("rack", 4600, "centre", 1400, "300 x 300 x 300")) == [(90.0, 90.0, ("rack",))]
    assert hidden(straight + p("rack", 4600, "centre+300", 1400, "300 x 300 x 300")) == []
