"""What a sheet of a pose shows: dashed what lies under a bed, numbers that stand upright in their own things."""

from __future__ import annotations

from itertools import pairwise

import pytest

from boxwright.disciplines.layout.headroom import _met
from boxwright.disciplines.layout.seen_from_above import half_hidden
from boxwright.disciplines.layout.tape_things import own_spot
from boxwright.drawing import Arc, Leader, Line, Shape, Text
from boxwright.drawing.layout.placing import Wanted, _shapes
from tests.book.test_poses import drawn, marks, words

RECT = ((0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0))


def seen(*over: tuple[float, float, float, float]) -> tuple[str, str, float]:
    """Return the line and the fill of a rectangle of 2 x 1 under others, and how much of its rim is drawn over it."""
    first, *rest = half_hidden(RECT, "visible", "wood", "parts[a]", list(over))
    assert isinstance(first, Shape) and first.points == RECT
    long = 0.0
    for one in rest:
        assert isinstance(one, Line) and one.line == "visible"
        long += abs(one.end[0] - one.start[0]) + abs(one.end[1] - one.start[1])
    return first.line, first.fill, long


@pytest.mark.parametrize(
    ("over", "line", "fill", "long"),
    [
        ((), "visible", "wood", 0.0),
        (((3.0, 0.0, 4.0, 1.0),), "visible", "wood", 0.0),  # beside it
        (((2.0, 0.0, 3.0, 1.0),), "visible", "wood", 0.0),  # up to it
        (((-1.0, -1.0, 3.0, 2.0),), "hidden", "none", 0.0),  # all of it lies under
        (((1.5, -1.0, 3.0, 2.0),), "hidden", "wood", 4.0),  # a quarter: two sides of 1.5 and an end
        (((0.5, -1.0, 3.0, 2.0),), "hidden", "none", 2.0),  # three quarters
        (((0.5, 0.25, 1.5, 0.75),), "hidden", "wood", 6.0),  # something in its midst hides no edge
        (((0.5, -1.0, 1.0, 0.5), (0.8, -1.0, 1.5, 0.5)), "hidden", "wood", 5.0),  # two that lie over each other
    ],
)
def test_what_lies_under_another_is_dashed_as_far_as_it_does(
    over: tuple[tuple[float, float, float, float], ...], line: str, fill: str, long: float
) -> None:
    found = seen(*over)
    assert found[:2] == (line, fill) and found[2] == pytest.approx(long)


def test_what_perhaps_stands_stays_dashed_all_round() -> None:
    assert half_hidden(RECT, "hidden", "wood", "parts[a]", [(-1.0, -1.0, 3.0, 2.0)]) == [
        Shape(RECT, "hidden", "parts[a]", "wood")
    ]


def test_under_the_bunk_of_whimbrel_all_is_dashed_and_what_stands_up_through_its_end_is_not() -> None:
    found = marks(drawn("whimbrel", 10)["plan-night"])
    lines = {mark.of: mark.line for mark in found if isinstance(mark, Shape)}
    assert (lines["parts[scopes]"], lines["parts[toilet]"], lines["parts[bunk]"]) == ("hidden", "hidden", "hidden")
    assert lines["parts[outboard-stand]"] == "visible"
    fills = {mark.of: mark.fill for mark in found if isinstance(mark, Shape)}
    assert (fills["parts[scopes]"], fills["parts[bunk]"]) == ("none", "wood")
    over = {mark.of for mark in found if isinstance(mark, Line) and mark.line == "visible"}
    assert "parts[bunk]" in over and "parts[scopes]" not in over


def test_the_name_of_a_window_is_led_to_it() -> None:
    sheet = drawn("whimbrel", 10)["plan-night"]
    assert "window-right" in {mark.words for mark in marks(sheet) if isinstance(mark, Leader)}
    assert "window-right" not in words(sheet) and "side-door" in words(sheet)


@pytest.mark.parametrize("name", ["whimbrel", "dunlin"])
def test_numbers_to_be_taped_stand_upright_in_things_of_their_own(name: str) -> None:
    stage = {"whimbrel": 10, "dunlin": 5}[name]
    sheet = drawn(name, stage)["tape-things"]
    rects = {mark.of: mark.points for mark in marks(sheet) if isinstance(mark, Shape)}
    numbers = [mark for mark in marks(sheet) if isinstance(mark, Text) and mark.words.isdigit()]
    assert numbers
    for one in numbers:
        assert inside(one.at, rects[one.of])
        over = [of for of, corners in rects.items() if of != "trailer.body" and inside(one.at, corners)]
        assert min(over, key=lambda of: area(rects[of])) == one.of


def test_a_number_stands_by_the_middle_where_nothing_else_lies() -> None:
    assert own_spot((0.0, 0.0, 2.0, 1.0), []) == (1.0, 0.5)
    x, y = own_spot((0.0, 0.0, 2.0, 1.0), [(0.5, -1.0, 3.0, 2.0)])
    assert x < 0.5 and y == pytest.approx(0.5)
    assert own_spot((0.0, 0.0, 2.0, 1.0), [(-1.0, -1.0, 3.0, 2.0)]) == (1.0, 0.5)


def test_who_sits_up_in_the_bed_of_dunlin_has_shoulders_beside_the_shelf() -> None:
    """By hand: 260 mm of shelf over 600 of bed leave 340; half of 1780 mm of somebody's shoulders fits beside it."""
    (view,) = [one for one in drawn("dunlin", 5)["headroom"].views if one.name.startswith("Across")]
    shelf = next(mark for mark in view.marks if isinstance(mark, Shape) and mark.of == "parts[shelf-right]")
    edge = min(x for x, _ in shelf.points)
    low, high = min(y for _, y in shelf.points), max(y for _, y in shelf.points)
    heads = [mark for mark in view.marks if isinstance(mark, Arc) and mark.of == "people[turner]"]
    sits = max(heads, key=lambda mark: mark.centre[0])
    assert sits.centre[0] + sits.radius < edge
    figures = [mark for mark in view.marks if isinstance(mark, Line | Shape) and mark.of == "people[turner]"]
    assert figures
    for one in figures:
        points = one.points if isinstance(one, Shape) else (one.start, one.end)
        for (x, y), (other, up) in pairwise(points):
            assert not (low + 0.02 < min(y, up) < high and max(x, other) > edge + 0.005)
    assert not any(isinstance(mark, Leader) and "no room" in mark.words for mark in view.marks)


@pytest.mark.parametrize(("said", "turns"), [("6", False), ("19", False), ("bunk", True), ("168 in", True)])
def test_a_number_alone_is_never_laid_on_its_side(said: str, turns: bool) -> None:
    shapes = _shapes(Wanted((0.0, 0.0), said, "parts[a]", "normal", False, False, False))
    assert any(is_turned for _, is_turned in shapes) == turns


def test_what_is_met_is_told_by_its_name() -> None:
    things = [(0.0, 0.2, "shelf")]
    assert (_met(things, 0.5, 0.2), _met(things, 0.35, 0.2), _met(things, 0.4, 0.2)) == ("", "shelf", "")


def inside(at: tuple[float, float], corners: tuple[tuple[float, float], ...]) -> bool:
    (x0, y0), (x1, y1) = corners[0], corners[2]
    return x0 <= at[0] <= x1 and y0 <= at[1] <= y1


def area(corners: tuple[tuple[float, float], ...]) -> float:
    return (corners[2][0] - corners[0][0]) * (corners[2][1] - corners[0][1])
