"""Lines, arcs, shapes and signs brought onto paper. Hatches come last, so that they stop at texts."""

from __future__ import annotations

from itertools import pairwise
from math import cos, isfinite, pi, sin

from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.plane import (
    Points,
    Segment,
    hatched,
    inside_shape,
    on_circle,
    outside_boxes,
    outside_shape,
)
from boxwright.drawing.layout.raster import Raster
from boxwright.drawing.layout.wrap import around, grown
from boxwright.drawing.mark import Arc, Dimension, Fill, Leader, Line, Mark, Point, Shape, Symbol, Text
from boxwright.drawing.page import Box, Curve, Stroke
from boxwright.drawing.sheet import View
from boxwright.records import dataclass

FURTHEST = 1e5
"""A place further from the zero than this (m) is on no trailer and is not drawn; its words are still printed."""

HATCHES: dict[Fill, tuple[tuple[float, float], ...]] = {
    "metal": ((pi / 4, 1.6),),
    "wood": ((0.0, 1.8),),
    "foam": ((pi / 4, 4.0), (3 * pi / 4, 4.0)),
    "skin": ((3 * pi / 4, 1.2),),
    "backing": ((3 * pi / 4, 2.0),),
    "fault": ((pi / 4, 1.4), (3 * pi / 4, 1.4)),
}
"""Angle as one sees it on paper with y down, and spacing: mm (`common practice, no source`)."""

UNHATCHED = frozenset({"none", "ink", "doubt"})
MOST_LINES = 40
THIN = 1.5
"""A cut piece thinner than this on paper is blackened, any other left white (ISO 128-50 `from memory`)."""

HARD = frozenset({"visible", "hidden", "cut"})
"""The kinds of line that are edges: no text stands on them."""

ARROW, HEAD, SHAFT = 14.0, 4.0, 1.3
FRONT_WIDE, FRONT_HIGH = 17.0, 7.5
"""Room for the arrow of the way forward with its word over it."""
SCREW, FAULT, DATUM = 0.9, 2.6, 1.8


@dataclass(frozen=True, slots=True)
class Sound:
    """A view with the marks that have a place on paper, and the words of those that have none."""

    view: View
    marks: tuple[Mark, ...]
    lost: tuple[str, ...]


def sound(view: View) -> Sound:
    """Return a view without the marks that have no place on paper."""
    found: list[Mark] = []
    lost: list[str] = []
    for mark in view.marks:
        if all(isfinite(one) and abs(one) <= FURTHEST for one in _numbers(mark)):
            if not isinstance(mark, Shape) or len(mark.points) > 1:
                found.append(mark)
        elif isinstance(mark, Text | Leader | Dimension):
            lost.append(mark.words)
    return Sound(view, tuple(found), tuple(lost))


def _numbers(mark: Mark) -> tuple[float, ...]:
    match mark:
        case Line() | Dimension():
            return (*mark.start, *mark.end)
        case Arc():
            return (*mark.centre, mark.radius, mark.start, mark.sweep)
        case Shape():
            return tuple(one for point in mark.points for one in point)
        case _:
            return mark.at


def edges(marks: list[Mark], origin: Point, factor: float, ink: Ink) -> None:
    """Draw the lines, arcs and outlines of a view, the hatch of shapes left out."""
    ox, oy = origin

    def at(point: Point) -> Point:
        return ox + point[0] * factor, oy - point[1] * factor

    for mark in marks:
        match mark:
            case Line():
                ink.strokes.append(Stroke((at(mark.start), at(mark.end)), mark.line, mark.of, "view"))
            case Shape():
                points = tuple(at(point) for point in mark.points)
                ink.strokes.append(Stroke(points, mark.line, mark.of, "view", len(points) > 2, mark.fill))
            case Arc():
                centre, radius = at(mark.centre), abs(mark.radius) * factor
                ink.curves.append(Curve(centre, radius, mark.start, mark.sweep, mark.line, mark.of, "view"))
            case Symbol():
                symbol(mark, at(mark.at), ink)


def symbol(mark: Symbol, at: Point, ink: Ink) -> None:
    """Draw a sign at a point; the word beside the sign of the way forward is placed with the texts."""
    x, y = at
    if mark.kind == "front":
        turn = {"left": pi, "right": 0.0, "above": -pi / 2, "below": pi / 2}[mark.towards]
        along, beside = (cos(turn), sin(turn)), (-sin(turn), cos(turn))

        def point(ahead: float, aside: float) -> Point:
            return x + ahead * along[0] + aside * beside[0], y + ahead * along[1] + aside * beside[1]

        tip, neck = ARROW / 2, ARROW / 2 - HEAD
        ink.line(point(-ARROW / 2, 0.0), point(neck, 0.0), "visible", mark.of, "view")
        head = (point(tip, 0.0), point(neck, SHAFT), point(neck, -SHAFT))
        ink.outline(head, "visible", mark.of, "view", "ink")
    elif mark.kind == "datum":
        ink.circle(at, DATUM, "visible", mark.of, "view")
        for start in (0.0, pi):
            quarter = tuple(on_circle(at, DATUM, start, pi / 2))
            ink.outline((at, *quarter), "visible", mark.of, "view", "ink")
    elif mark.kind == "screw":
        ink.circle(at, SCREW, "visible", mark.of, "view")
        reach = SCREW + 0.7
        ink.line((x - reach, y), (x + reach, y), "dimension", mark.of, "view")
        ink.line((x, y - reach), (x, y + reach), "dimension", mark.of, "view")
    else:
        sides = tuple((x + FAULT * cos(one), y - FAULT * sin(one)) for one in (pi / 2, 7 * pi / 6, 11 * pi / 6))
        ink.outline(sides, "visible", mark.of, "view")
        ink.rectangle(Box(x - 0.2, y - 1.2, x + 0.2, y + 0.2), "dimension", mark.of, "view", "ink")
        ink.rectangle(Box(x - 0.2, y + 0.5, x + 0.2, y + 0.9), "dimension", mark.of, "view", "ink")


def extents(marks: list[Mark], factor: float) -> Box | None:
    """Return the box of what a view draws, from its own zero, texts and dimensions left out; None where nothing is."""
    # A view is measured at many scales and drawn at one: only its signs, which do not grow with it, are drawn for this.
    ink = Ink()
    points: list[Point] = []
    for mark in marks:
        match mark:
            case Line():
                points += [(x * factor, -y * factor) for x, y in (mark.start, mark.end)]
            case Shape():
                points += [(x * factor, -y * factor) for x, y in mark.points]
            case Arc():
                centre = mark.centre[0] * factor, -mark.centre[1] * factor
                points += on_circle(centre, abs(mark.radius) * factor, mark.start, mark.sweep)
            case Symbol():
                x, y = mark.at[0] * factor, -mark.at[1] * factor
                symbol(mark, (x, y), ink)
                if mark.kind == "front":
                    points += [(x - FRONT_WIDE / 2, y - FRONT_HIGH), (x + FRONT_WIDE / 2, y + SHAFT)]
    points += [point for stroke in ink.strokes for point in stroke.points]
    for curve in ink.curves:
        points += on_circle(curve.centre, curve.radius, curve.start, curve.sweep)
    return around(points) if points else None


def take(ink: Ink, hard: Raster, soft: Raster) -> None:
    """Mark on rasters what is drawn so far: edges on the one, thin lines on the other."""
    for stroke in ink.strokes:
        raster = hard if stroke.line in HARD else soft
        points = (*stroke.points, stroke.points[0]) if stroke.is_closed else stroke.points
        for one, other in pairwise(points):
            raster.take_line(*one, *other)
        if stroke.fill == "ink":
            raster.take_box(around(list(stroke.points)))
    for curve in ink.curves:
        raster = hard if curve.line in HARD else soft
        for one, other in pairwise(on_circle(curve.centre, curve.radius, curve.start, curve.sweep)):
            raster.take_line(*one, *other)


def hatch(ink: Ink) -> None:
    """Fill the shapes of a view; a later shape stands before an earlier one, and texts are left clear."""
    filled = [one for one in ink.strokes if one.belongs == "view" and one.is_closed and one.fill not in UNHATCHED]
    boxes = [grown(one.box, 0.4) for one in ink.words]
    outer = [around(list(one.points)) for one in filled]
    for number, shape in enumerate(filled):
        box = outer[number]
        wide, high = box.right - box.left, box.bottom - box.top
        if min(wide, high) < THIN:
            if shape.line == "cut" and min(wide, high) > 0.0:
                ink.outline(shape.points, "cut", shape.of, "view", "ink")
            continue
        later = range(number + 1, len(filled))
        over = [filled[one].points for one in later if _meet(box, outer[one])]
        lines = _lines(shape, box)
        for points in over:
            lines = [piece for line in lines for piece in outside_shape(line, points)]
        under = [one for one in boxes if _meet(box, one)]
        for line in lines:
            for x1, y1, x2, y2 in outside_boxes(line, under) if under else [line]:
                ink.line((x1, y1), (x2, y2), "dimension", shape.of, "view")


def _lines(shape: Stroke, box: Box) -> list[Segment]:
    """Return the hatch of a shape, wider spaced where it is large so that it stays a few dozen lines."""
    wide, high = box.right - box.left, box.bottom - box.top
    if shape.fill == "hole":
        return _crossed(shape.points, box)
    directions = HATCHES[shape.fill]
    if shape.fill == "wood" and high > wide:
        directions = tuple((pi / 2, spacing) for _, spacing in directions)
    lines = []
    for angle, spacing in directions:
        reach = abs(wide * sin(angle)) + abs(high * cos(angle))
        lines += hatched(shape.points, angle, max(spacing, reach / MOST_LINES))
    return lines


def _crossed(points: Points, box: Box) -> list[Segment]:
    """Return the two diagonals that say a shape is an opening."""
    diagonals = (
        (box.left, box.top, box.right, box.bottom),
        (box.left, box.bottom, box.right, box.top),
    )
    return [
        (x1 + low * (x2 - x1), y1 + low * (y2 - y1), x1 + high * (x2 - x1), y1 + high * (y2 - y1))
        for x1, y1, x2, y2 in diagonals
        for low, high in inside_shape((x1, y1, x2, y2), points)
    ]


def clear_thin_lines(ink: Ink, texts: Raster) -> None:
    """Break the thin lines of a view and its dimensions where they would run through a text."""
    kept: list[Stroke] = []
    boxes = [grown(one.box, 0.3) for one in ink.words]
    for stroke in ink.strokes:
        points = (*stroke.points, stroke.points[0]) if stroke.is_closed else stroke.points
        is_thin = stroke.line not in HARD and stroke.belongs in ("view", "dimension") and stroke.fill != "doubt"
        if not is_thin or all(texts.is_line_free(*one, *other) for one, other in pairwise(points)):
            kept.append(stroke)
            continue
        for one, other in pairwise(points):
            for x1, y1, x2, y2 in outside_boxes((*one, *other), boxes):
                kept.append(Stroke(((x1, y1), (x2, y2)), stroke.line, stroke.of, stroke.belongs))
    ink.strokes[:] = kept
    ink.curves[:] = [piece for curve in ink.curves for piece in _clear_curve(curve, texts, boxes)]


def _clear_curve(curve: Curve, texts: Raster, boxes: list[Box]) -> list[Curve]:
    points = on_circle(curve.centre, curve.radius, curve.start, curve.sweep)
    is_balloon = curve.belongs == "note"  # around a number, which is not to break it
    if is_balloon or curve.line in HARD or all(texts.is_line_free(*one, *other) for one, other in pairwise(points)):
        return [curve]
    step = curve.sweep / (len(points) - 1)
    clear = [outside_boxes((*one, *other), boxes) == [(*one, *other)] for one, other in pairwise(points)]
    pieces, first = [], None
    for number, is_clear in enumerate([*clear, False]):
        if is_clear and first is None:
            first = number
        elif not is_clear and first is not None:
            start, sweep = curve.start + first * step, (number - first) * step
            pieces.append(Curve(curve.centre, curve.radius, start, sweep, curve.line, curve.of, curve.belongs))
            first = None
    return pieces


def _meet(one: Box, other: Box) -> bool:
    return one.left < other.right and other.left < one.right and one.top < other.bottom and other.top < one.bottom
