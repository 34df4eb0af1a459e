"""What must hold of every page, measured on the page itself with plain geometry."""

from __future__ import annotations

from itertools import pairwise
from math import cos, isfinite, sin

from boxwright.drawing import Dimension, Leader, Sheet, Text
from boxwright.drawing.layout.wrap import cleaned
from boxwright.drawing.mark import Point
from boxwright.drawing.page import Box, Page, Words
from boxwright.drawing.paper import BINDING_EDGE, EDGE

EDGES = ("visible", "hidden", "cut")
TOUCH = 0.02
"""Boxes that share less than this (mm) only touch."""


def lines(page: Page) -> list[tuple[Point, Point]]:
    """Return the straight pieces of all that no text may stand on."""
    found = []
    for one in page.strokes:
        if one.line in EDGES or one.fill == "ink":
            points = (*one.points, one.points[0]) if one.is_closed else one.points
            found += list(pairwise(points))
    for curve in page.curves:
        if curve.line in EDGES:
            found += list(pairwise(curve_points(curve.centre, curve.radius, curve.start, curve.sweep)))
    return found


def curve_points(centre: Point, radius: float, start: float, sweep: float) -> list[Point]:
    """Return points along a curve of a page."""
    steps = max(8, int(abs(sweep) * 20))
    angles = [start + sweep * one / steps for one in range(steps + 1)]
    return [(centre[0] + radius * cos(one), centre[1] - radius * sin(one)) for one in angles]


def crosses(box: Box, start: Point, end: Point) -> bool:
    """Return whether a straight line runs through the inside of a box."""
    low, high = 0.0, 1.0
    bounds = ((box.left + TOUCH, box.right - TOUCH), (box.top + TOUCH, box.bottom - TOUCH))
    for axis, (least, most) in enumerate(bounds):
        step = end[axis] - start[axis]
        if step == 0.0:
            if not least < start[axis] < most:
                return False
            continue
        one, other = (least - start[axis]) / step, (most - start[axis]) / step
        low, high = max(low, min(one, other)), min(high, max(one, other))
    return low < high


def over_each_other(page: Page) -> list[str]:
    """Return the texts that lie on another text."""
    ordered = sorted(page.words, key=lambda one: one.box.left)
    found = []
    for place, one in enumerate(ordered):
        for other in ordered[place + 1 :]:
            if other.box.left > one.box.right - TOUCH:
                break
            if other.box.top < one.box.bottom - TOUCH and one.box.top < other.box.bottom - TOUCH:
                found.append(f"{one.text!r} on {other.text!r}")
    return found


def on_edges(page: Page) -> list[str]:
    """Return the texts that lie on an edge."""
    edges = lines(page)
    return [one.text for one in page.words if any(crosses(one.box, *edge) for edge in edges)]


def outside(page: Page) -> list[str]:
    """Return what stands outside the margins, or nowhere."""
    left, top, right, bottom = BINDING_EDGE, EDGE, page.width - EDGE, page.height - EDGE
    points = [(f"{one.line} {one.of}", point) for one in page.strokes for point in one.points]
    for curve in page.curves:
        points += [
            (f"curve {curve.of}", one) for one in curve_points(curve.centre, curve.radius, curve.start, curve.sweep)
        ]
    for one in page.words:
        points += [(one.text, (one.box.left, one.box.top)), (one.text, (one.box.right, one.box.bottom))]
    return [
        what
        for what, (x, y) in points
        if not (isfinite(x) and isfinite(y))
        or not (left - TOUCH <= x <= right + TOUCH and top - TOUCH <= y <= bottom + TOUCH)
    ]


def wanted(sheet: Sheet) -> list[str]:
    """Return every text of a sheet."""
    texts = [sheet.title, *sheet.notes]
    for view in sheet.views:
        texts += [view.name, view.looks, view.datum]
        texts += [mark.words for mark in view.marks if isinstance(mark, Text | Leader | Dimension)]
    for grid in sheet.grids:
        texts += [grid.title, *grid.columns, *(cell for row in grid.rows for cell in row)]
    return texts


def lost(sheet: Sheet, pages: tuple[Page, ...]) -> list[str]:
    """Return the texts of a sheet that can be read on none of its pages: all their characters in their order.

    A cell taller than a page goes on in the same column of the next one.
    """
    columns: dict[int, list[Words]] = {}
    for one in (one for page in pages for one in page.words if one.belongs == "grid"):
        if not one.is_bold:
            columns.setdefault(round(one.at[0]), []).append(one)
    read = "\n".join([*(run(page.words) for page in pages), *(run(tuple(column)) for column in columns.values())])
    return [text for text in wanted(sheet) if "".join(cleaned(text).removeprefix("☐").split()) not in read]


def run(words: tuple[Words, ...]) -> str:
    """Return what is written on a page, the lines after each other, without spaces."""
    return "".join("".join(one.text.split()) for one in words)


def faults(sheet: Sheet, pages: tuple[Page, ...]) -> list[str]:
    """Return everything that is wrong with the pages of a sheet."""
    found = [f"lost: {text[:60]!r}" for text in lost(sheet, pages)]
    for page in pages:
        found += [f"page {page.number}, texts: {one}" for one in over_each_other(page)]
        found += [f"page {page.number}, on an edge: {one!r}" for one in on_edges(page)]
        found += [f"page {page.number}, outside: {one}" for one in outside(page)]
    return found
