"""What is seen of things from above: what lies under another is dashed, as far as it lies under it."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.terraces import outline_of
from boxwright.drawing import Line, Mark, Shape
from boxwright.drawing.mark import Fill, LineKind, Point

SAME = 1e-3
"""Two edges nearer than this (m) are one."""


def over_it(one: Body, standing: Iterable[Body]) -> list[Rect]:
    """Return what hides a thing from above: the boxes of what ends higher, but for what lies on others."""
    top = _top(one)
    return [
        outline_of(block)
        for other in standing
        if other.of != one.of and not other.carried_by and one.carried_by != other.of and _top(other) > top + SAME
        for block in other.blocks
        if block.high[2] > top + SAME
    ]


def half_hidden(corners: tuple[Point, ...], line: LineKind, fill: Fill, of: str, over: list[Rect]) -> list[Mark]:
    """Return an upright rectangle: dashed where it lies under something, and filled where most of it is seen.

    Its outline is one shape, so that it is found by a hand; the pieces that are seen are drawn over it.
    """
    rect = (corners[0][0], corners[0][1], corners[2][0], corners[2][1])
    over = [one for one in over if _overlap(one, rect)]
    if not over or line != "visible":
        return [Shape(corners, line, of, fill)]
    hides = sum(_shared(one, rect) for one in over) > (rect[2] - rect[0]) * (rect[3] - rect[1]) / 2.0
    marks: list[Mark] = [Shape(corners, "hidden", of, "none" if hides else fill)]
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        marks += [Line(one, other, line, of) for one, other in _seen(start, end, over)]
    return marks


def _seen(start: Point, end: Point, over: list[Rect]) -> list[tuple[Point, Point]]:
    """Return the pieces of an upright edge that nothing lies over; along the rim of what does it is seen."""
    axis = 0 if abs(end[0] - start[0]) > abs(end[1] - start[1]) else 1
    across, (low, high) = start[1 - axis], sorted((start[axis], end[axis]))
    hides = sorted(
        (one[axis], one[axis + 2])
        for one in over
        if one[1 - axis] + SAME < across < one[3 - axis] - SAME and one[axis] < high and one[axis + 2] > low
    )
    found, at = list[tuple[float, float]](), low
    for begins, ends in (*hides, (high, high)):
        if begins > at + SAME:
            found.append((at, min(begins, high)))
        at = max(at, ends)
    if axis == 0:
        return [((one, across), (other, across)) for one, other in found]
    return [((across, one), (across, other)) for one, other in found]


def _shared(one: Rect, other: Rect) -> float:
    along, across = (min(one[axis + 2], other[axis + 2]) - max(one[axis], other[axis]) for axis in (0, 1))
    return max(along, 0.0) * max(across, 0.0)


def _overlap(one: Rect, other: Rect) -> bool:
    return all(one[axis] + SAME < other[axis + 2] and one[axis + 2] - SAME > other[axis] for axis in (0, 1))


def _top(one: Body) -> float:
    return max(block.high[2] for block in one.blocks)
