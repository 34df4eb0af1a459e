"""Cells, hatches, cuts and spreading, each against plain geometry or brute force."""

from __future__ import annotations

from itertools import pairwise
from math import cos, hypot, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.drawing.layout.plane import hatched, on_circle, outside_boxes, outside_shape, spread
from boxwright.drawing.layout.raster import CELL, Raster
from boxwright.drawing.layout.wrap import block, width_of, wrapped
from boxwright.drawing.page import Box
from tests.drawing.judge import crosses

PLACE = st.floats(0.0, 40.0)
POINT = st.tuples(PLACE, PLACE)
PEN = 0.1
BOUNDS = Box(0.0, 0.0, 40.0, 40.0)


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    """Return a box inside the bounds, as wide and high as the point of a pen at least: words of no size are none."""
    left, top = draw(st.floats(0.0, 39.0)), draw(st.floats(0.0, 39.0))
    return Box(left, top, draw(st.floats(left + PEN, 40.0)), draw(st.floats(top + PEN, 40.0)))


@given(boxes(), POINT, POINT)
def test_what_is_free_by_the_cells_is_free_by_the_millimetre(
    box: Box, start: tuple[float, float], end: tuple[float, float]
) -> None:
    raster = Raster(BOUNDS)
    raster.take_line(*start, *end)
    if raster.is_free(box):
        assert not crosses(box, start, end)
    else:
        wide = Box(box.left - CELL, box.top - CELL, box.right + CELL, box.bottom + CELL)
        near = Box(wide.left - CELL, wide.top - CELL, wide.right + CELL, wide.bottom + CELL)
        assert crosses(near, start, end) or near.left <= start[0] <= near.right or start == end


@given(boxes(), boxes())
def test_a_taken_box_is_not_free(box: Box, other: Box) -> None:
    raster = Raster(BOUNDS)
    raster.take_box(box)
    share_across = min(box.right, other.right) - max(box.left, other.left)
    share_down = min(box.bottom, other.bottom) - max(box.top, other.top)
    if raster.is_free(other):
        assert share_across <= 0.0 or share_down <= 0.0
    elif box.right > box.left and box.bottom > box.top:
        assert share_across > -2 * CELL and share_down > -2 * CELL


def test_nothing_outside_the_bounds_is_free() -> None:
    raster = Raster(BOUNDS)
    assert raster.is_free(Box(0.0, 0.0, 40.0, 40.0))
    assert not raster.is_free(Box(-0.1, 0.0, 1.0, 1.0))
    assert not raster.is_free(Box(39.0, 39.0, 40.1, 40.0))


@given(st.lists(POINT, min_size=3, max_size=7), st.floats(0.0, pi), st.floats(0.5, 4.0))
def test_a_hatch_stays_in_its_shape_and_fills_it(
    points: list[tuple[float, float]], angle: float, spacing: float
) -> None:
    lines = hatched(tuple(points), angle, spacing)
    for x1, y1, x2, y2 in lines:
        assert hypot(x2 - x1, y2 - y1) > 0.0
        assert is_inside(((x1 + x2) / 2, (y1 + y2) / 2), points)
    area = abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, [*points[1:], points[0]], strict=True))) / 2
    if len(points) == 3:
        # A triangle is convex: lines times spacing is its area, but for what one line more or less makes.
        longest = max(hypot(a[0] - b[0], a[1] - b[1]) for a in points for b in points)
        total = sum(hypot(x2 - x1, y2 - y1) for x1, y1, x2, y2 in lines) * spacing
        assert total == pytest.approx(area, abs=2 * longest * spacing)


def is_inside(point: tuple[float, float], points: list[tuple[float, float]]) -> bool:
    """Return whether a point lies in an outline or on its rim, by the winding of a ray."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in zip(points, [*points[1:], points[0]], strict=True):
        length = hypot(bx - ax, by - ay)
        if length and abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length < 1e-6:
            return True
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            inside = not inside
    return inside


@given(POINT, POINT, st.lists(boxes(), max_size=4))
def test_what_is_left_of_a_line_is_clear_of_the_boxes(
    start: tuple[float, float], end: tuple[float, float], over: list[Box]
) -> None:
    pieces = outside_boxes((*start, *end), over)
    for x1, y1, x2, y2 in pieces:
        assert not any(crosses(box, (x1, y1), (x2, y2)) for box in over)
    if not any(crosses(Box(b.left - 0.1, b.top - 0.1, b.right + 0.1, b.bottom + 0.1), start, end) for b in over):
        assert pieces == [(*start, *end)]


def test_a_line_is_cut_where_a_shape_stands_before_it() -> None:
    window = ((2.0, 2.0), (4.0, 2.0), (4.0, 4.0), (2.0, 4.0))
    assert outside_shape((0.0, 3.0, 10.0, 3.0), window) == [(0.0, 3.0, 2.0, 3.0), (4.0, 3.0, 10.0, 3.0)]
    assert outside_shape((0.0, 5.0, 10.0, 5.0), window) == [(0.0, 5.0, 10.0, 5.0)]
    assert outside_shape((2.5, 3.0, 3.5, 3.0), window) == []


@pytest.mark.parametrize("radius", [0.5, 3.0, 40.0, 300.0])
def test_chords_keep_to_the_circle(radius: float) -> None:
    points = on_circle((10.0, 20.0), radius, 0.3, 2.0 * pi)
    assert points[0] == pytest.approx((10.0 + radius * cos(0.3), 20.0 - radius * sin(0.3)))
    for one, other in pairwise(points):
        middle = (one[0] + other[0]) / 2 - 10.0, (one[1] + other[1]) / 2 - 20.0
        assert radius - hypot(*middle) < 0.05 + 1e-9


@settings(max_examples=60)
@given(st.lists(st.integers(0, 12), min_size=1, max_size=4).map(sorted))
def test_spread_moves_as_little_as_brute_force(wanted: list[int]) -> None:
    apart, low, high = 2, 0, 12
    found = spread([float(one) for one in wanted], apart, low, high)
    assert all(b - a >= apart - 1e-9 for a, b in pairwise(found))
    assert low - 1e-9 <= found[0] and found[-1] <= high + 1e-9

    def cost(places: list[float]) -> float:
        return sum((a - b) ** 2 for a, b in zip(places, wanted, strict=True))

    best = min(cost(list(places)) for places in grids(len(wanted), apart, low, high))
    assert cost(found) <= best + 1e-9


def grids(count: int, apart: int, low: float, high: int) -> list[tuple[float, ...]]:
    """Return all ordered places on a half-unit grid that keep apart."""
    if count == 0:
        return [()]
    steps = [low + half / 2 for half in range(int(2 * (high - low)) + 1)]
    return [(step, *rest) for step in steps for rest in grids(count - 1, apart, step + apart, high)]


@given(st.text(max_size=60), st.floats(1.0, 60.0))
def test_wrapping_loses_no_character_and_keeps_the_limit(words: str, limit: float) -> None:
    lines = wrapped(words, 2.5, False, limit)
    assert "".join("".join(lines).split()) == "".join(block(words, 2.5).lines[0].split())
    for line in lines:
        assert width_of(line, 2.5) <= limit + 1e-9 or len(line) == 1
