"""A view too large for a page at its scale, cut into pages to be glued together.

The view is laid out as if paper had no end, with no text across a line of the cut, and then cut along those lines. Each
page goes on a strip of glue beyond its line, on which the next page comes to lie.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import ceil

from boxwright.drawing.layout.edges import Sound
from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.placing import NO_ROOM
from boxwright.drawing.layout.plane import Segment, hatched, inside_box, on_circle
from boxwright.drawing.layout.view import Bounds, Fitted, Keyed, drawn_at, fitted
from boxwright.drawing.layout.wrap import block, words_at
from boxwright.drawing.mark import Point
from boxwright.drawing.page import Box, Curve, Stroke
from boxwright.drawing.paper import NORMAL, SMALL

GLUE = 10.0
BAND, SIDE = 10.0, 6.0
"""Room over a piece for its number, and round it for the match marks."""
MARK, ARM = 1.6, 2.6
MOST_PAGES = 150
"""A view that would take more pages is drawn at the next scale that does not."""
TRIES = 4


def tiled(view: Sound, scale: float, body: Box, is_imperial: bool) -> tuple[list[Ink], Keyed] | None:
    """Return the pages of a view cut into pieces, and its key; None where it would take too many."""
    window = Bounds(body.right - body.left - 2 * SIDE, body.bottom - body.top - BAND - SIDE)
    plan = fitted(view, scale, window, is_imperial)
    zero = plan.outer.left - 2.0, plan.outer.top - plan.high_caption
    across, down = _count(plan, zero, window)
    if across * down > MOST_PAGES:
        return None
    for _ in range(TRIES):
        seams = _seams(zero, (across, down), window)
        plan = fitted(view, scale, replace(window, seams_across=seams[0], seams_up=seams[1]), is_imperial)
        least = min(zero[0], plan.outer.left - 2.0), min(zero[1], plan.outer.top - plan.high_caption)
        counted = _count(plan, least, window)
        if least == zero and counted == (across, down):
            break
        zero, (across, down) = least, counted
    area = Box(0.0, 0.0, across * _step(window.wide) + GLUE, down * _step(window.high) + GLUE)
    ink, keyed = drawn_at(plan, area, (-zero[0], -zero[1]))
    pages = []
    for row in range(down):
        for column in range(across):
            cell = _cell(column, row, window)
            end = column + 1 == across, row + 1 == down
            piece = _cut(ink, cell, end).moved(body.left + SIDE - cell.left, body.top + BAND - cell.top)
            at = Box(
                body.left + SIDE,
                body.top + BAND,
                body.left + SIDE + cell.right - cell.left,
                body.top + BAND + cell.bottom - cell.top,
            )
            _label(piece, at, (column, row), (across, down), body)
            pages.append(piece)
    seen = _cells(across, down, window)
    missing = [one.text for one in ink.words if not any(_holds(cell, one.box) for cell in seen)]
    return pages, keyed + [(NO_ROOM, text) for text in missing]


def _step(length: float) -> float:
    """Return how far one piece is from the next: the strip of glue is printed twice."""
    return length - GLUE


def _count(plan: Fitted, zero: Point, window: Bounds) -> tuple[int, int]:
    wide, high = plan.outer.right - zero[0], plan.outer.bottom - zero[1]
    return max(1, ceil((wide - GLUE) / _step(window.wide))), max(1, ceil((high - GLUE) / _step(window.high)))


def _seams(zero: Point, count: tuple[int, int], window: Bounds) -> tuple[tuple[float, ...], tuple[float, ...]]:
    return (
        tuple(zero[0] + place * _step(window.wide) for place in range(1, count[0])),
        tuple(zero[1] + place * _step(window.high) for place in range(1, count[1])),
    )


def _cell(column: int, row: int, window: Bounds) -> Box:
    left, top = column * _step(window.wide), row * _step(window.high)
    return Box(left, top, left + _step(window.wide), top + _step(window.high))


def _cells(across: int, down: int, window: Bounds) -> list[Box]:
    return [
        _with_end(_cell(column, row, window), (column + 1 == across, row + 1 == down))
        for row in range(down)
        for column in range(across)
    ]


def _with_end(cell: Box, end: tuple[bool, bool]) -> Box:
    """Return what of a page stays to be seen: the last ones of a row and a column have no strip of glue."""
    return replace(cell, right=cell.right + GLUE * end[0], bottom=cell.bottom + GLUE * end[1])


def _holds(box: Box, inner: Box) -> bool:
    return (
        box.left - 0.1 <= inner.left
        and inner.right <= box.right + 0.1
        and box.top - 0.1 <= inner.top
        and inner.bottom <= box.bottom + 0.1
    )


def _cut(ink: Ink, cell: Box, end: tuple[bool, bool]) -> Ink:
    """Return what of a drawing stands on one page."""
    piece = Ink()
    window = replace(cell, right=cell.right + GLUE, bottom=cell.bottom + GLUE)
    seen = _with_end(cell, end)
    for stroke in ink.strokes:
        piece.strokes += _cut_stroke(stroke, window)
    for curve in ink.curves:
        piece.curves += _cut_curve(curve, window)
    piece.words = [one for one in ink.words if _holds(seen, one.box)]
    piece.dimensions = [one for one in ink.dimensions if _has(seen, one.line_at)]
    piece.views = list(ink.views)
    return piece


def _has(box: Box, point: Point) -> bool:
    return box.left <= point[0] < box.right and box.top <= point[1] < box.bottom


def _cut_stroke(stroke: Stroke, window: Box) -> list[Stroke]:
    xs, ys = [point[0] for point in stroke.points], [point[1] for point in stroke.points]
    if max(xs) < window.left or min(xs) > window.right or max(ys) < window.top or min(ys) > window.bottom:
        return []
    if min(xs) >= window.left and max(xs) <= window.right and min(ys) >= window.top and max(ys) <= window.bottom:
        return [stroke]
    if stroke.fill == "ink":
        points = _cut_outline(stroke.points, window)
        return [replace(stroke, points=points)] if len(points) > 2 else []
    points = (*stroke.points, stroke.points[0]) if stroke.is_closed else stroke.points
    found = []
    for one, other in pairwise(points):
        within = inside_box((*one, *other), window)
        if within is not None:
            line = _between((*one, *other), *within)
            found.append(Stroke(line, stroke.line, stroke.of, stroke.belongs))
    return found


def _between(line: Segment, low: float, high: float) -> tuple[Point, Point]:
    x1, y1, x2, y2 = line
    return (x1 + low * (x2 - x1), y1 + low * (y2 - y1)), (x1 + high * (x2 - x1), y1 + high * (y2 - y1))


def _cut_outline(points: tuple[Point, ...], window: Box) -> tuple[Point, ...]:
    """Return what of a filled outline lies in a window, side after side."""
    kept = list(points)
    for axis, limit, sign in (
        (0, window.left, 1.0),
        (0, window.right, -1.0),
        (1, window.top, 1.0),
        (1, window.bottom, -1.0),
    ):
        found: list[Point] = []
        for one, other in pairwise([*kept[-1:], *kept]):
            is_in, was_in = sign * (other[axis] - limit) >= 0.0, sign * (one[axis] - limit) >= 0.0
            if is_in != was_in:
                share = (limit - one[axis]) / (other[axis] - one[axis])
                found.append((one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])))
            if is_in:
                found.append(other)
        kept = found
    return tuple(kept)


def _cut_curve(curve: Curve, window: Box) -> list[Curve]:
    points = on_circle(curve.centre, curve.radius, curve.start, curve.sweep)
    inside = [_has(window, one) for one in points]
    if all(inside):
        return [curve]
    step = curve.sweep / (len(points) - 1)
    found, first = [], None
    for number, is_in in enumerate([*inside, False]):
        if is_in and first is None:
            first = number
        elif not is_in and first is not None:
            if number - 1 > first:
                found.append(replace(curve, start=curve.start + first * step, sweep=(number - 1 - first) * step))
            first = None
    return found


def _label(ink: Ink, cell: Box, place: tuple[int, int], count: tuple[int, int], body: Box) -> None:
    """Write which piece this is and how it joins its neighbours; draw the lines, the glue and the match marks."""
    column, row = place
    across, down = count
    number = row * across + column + 1
    title = block(f"{number} of {across * down}", NORMAL, True)
    ink.words += words_at(title, cell.left, body.top - 1.0, "", "border")
    joins = []
    if column:
        joins.append(f"cut along the left line and lay it on the line of {number - 1}")
    if row:
        joins.append(f"cut along the upper line and lay it on the line of {number - across}")
    if column + 1 < across or row + 1 < down:
        joins.append("glue goes on the hatched strip")
    words = block("; ".join(joins), SMALL, False, body.right - cell.left - title.wide - 6.0)
    if joins:
        ink.words += words_at(words, cell.left + title.wide + 5.0, body.top - 1.0, "", "border")
    upright = [x for x, is_seam in ((cell.left, column > 0), (cell.right, column + 1 < across)) if is_seam]
    level = [y for y, is_seam in ((cell.top, row > 0), (cell.bottom, row + 1 < down)) if is_seam]
    right, bottom = cell.right + GLUE, cell.bottom + GLUE
    for x in upright:
        ink.line((x, cell.top), (x, bottom), "dimension", "", "border")
        for y in (cell.top - SIDE / 2, bottom + SIDE / 2):
            _match(ink, (x, y))
    for y in level:
        ink.line((cell.left, y), (right, y), "dimension", "", "border")
        for x in (cell.left - SIDE / 2, right + SIDE / 2):
            _match(ink, (x, y))
    strips = [Box(cell.right, cell.top, right, bottom)] if column + 1 < across else []
    strips += [Box(cell.left, cell.bottom, right, bottom)] if row + 1 < down else []
    for strip in strips:
        corners = (
            (strip.left, strip.top),
            (strip.right, strip.top),
            (strip.right, strip.bottom),
            (strip.left, strip.bottom),
        )
        for x1, y1, x2, y2 in hatched(corners, -0.7, 6.0):
            ink.line((x1, y1), (x2, y2), "dimension", "", "border")


def _match(ink: Ink, at: Point) -> None:
    """Draw a sign that must fall on its like on the neighbouring page."""
    x, y = at
    ink.circle(at, MARK, "dimension", "", "border")
    ink.line((x - ARM, y), (x + ARM, y), "dimension", "", "border")
    ink.line((x, y - ARM), (x, y + ARM), "dimension", "", "border")
