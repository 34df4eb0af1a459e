"""A small page made by hand: one of everything that a writer has to write, at known places.

A wall 2400 x 1200 mm at 1:20 from its datum at (40, 150) on paper, four studs, a hole, a screw, three dimensions, a
table and a bar of 100 mm.
"""

from __future__ import annotations

import math

from boxwright.drawing.letters import DEPTH, text_width
from boxwright.drawing.mark import LineKind, Point
from boxwright.drawing.page import Belongs, Box, Curve, Page, PlacedDimension, PlacedView, Stroke, Words

SCALE = 1 / 20
ORIGIN = (40.0, 150.0)
LONG, HIGH, STUD = 2.4, 1.2, 0.038
STUDS = (0.4, 0.8, 1.2, 1.6)
HOLE = (1.0, 0.5, 1.5, 1.0)
SCREW = (0.8, 0.3)
BAR = ((40.0, 200.0), (140.0, 200.0))
POISON = "<&\"' ]]> {{ }} #set page() $x$ \\P %%d `raw` *b* _i_ @ref //c é½木"


def on_paper(x: float, up: float) -> Point:
    """Return where a point of the wall lies on paper."""
    return ORIGIN[0] + 1000.0 * SCALE * x, ORIGIN[1] - 1000.0 * SCALE * up


def rectangle(left: float, low: float, right: float, high: float) -> tuple[Point, ...]:
    return on_paper(left, low), on_paper(right, low), on_paper(right, high), on_paper(left, high)


def words(
    at: Point, text: str, of: str, belongs: Belongs = "note", height: float = 2.5, turned: bool = False,
    bold: bool = False,
) -> Words:  # fmt: skip
    """Return words with the box they cover."""
    x, y = at
    width, depth = text_width(text, height, bold), DEPTH * height
    box = Box(x - height, y - width, x + depth, y) if turned else Box(x, y - height, x + width, y + depth)
    return Words(at, text, height, of, belongs, box, turned, bold)


def line(start: Point, end: Point, kind: LineKind, of: str, belongs: Belongs = "view") -> Stroke:
    return Stroke((start, end), kind, of, belongs)


def arrowhead(tip: Point, dx: float, dy: float, of: str) -> Stroke:
    """Return a filled arrowhead that points along (dx, dy)."""
    x, y = tip
    back = (x - 2.5 * dx, y - 2.5 * dy)
    return Stroke(
        (tip, (back[0] - 0.4 * dy, back[1] + 0.4 * dx), (back[0] + 0.4 * dy, back[1] - 0.4 * dx)),
        "dimension", of, "dimension", is_closed=True, fill="ink",
    )  # fmt: skip


def wall() -> list[Stroke]:
    """Return the outline, the studs, a framed hole with its hatch, the middle and a part that stands elsewhere."""
    marks = [Stroke(rectangle(0.0, 0.0, LONG, HIGH), "cut", "frame/walls/left", "view", is_closed=True, fill="skin")]
    for place, x in enumerate(STUDS):
        kind: LineKind = "visible" if place % 2 else "hidden"
        marks.append(
            Stroke(rectangle(x - STUD / 2, 0.0, x + STUD / 2, HIGH), kind, f"frame/walls/left/studs/{place}", "view",
                   is_closed=True, fill="metal")
        )  # fmt: skip
    marks.append(Stroke(rectangle(*HOLE), "visible", "openings/window", "view", is_closed=True, fill="hole"))
    left, low, right, _ = HOLE
    for step in range(1, 10):
        x = left + (right - left) * step / 10
        marks.append(line(on_paper(left, low + (x - left)), on_paper(x, low), "dimension", "openings/window"))
    marks.append(line(on_paper(1.25, 0.4), on_paper(1.25, 1.1), "centre", "openings/window"))
    marks.append(Stroke(rectangle(1.9, 0.1, 2.3, 0.6), "phantom", "parts/bench", "view", is_closed=True, fill="wood"))
    return marks


def measures() -> tuple[list[Stroke], list[Words], list[PlacedDimension]]:
    """Return a dimension across, one up and two running ones, each as strokes, words and record."""
    strokes, texts, records = [], [], []
    a, b = on_paper(HOLE[0], HOLE[1]), on_paper(HOLE[2], HOLE[1])
    y = ORIGIN[1] + 10.0
    of = "openings/window/width"
    strokes += [line((x, a[1]), (x, y + 1.0), "dimension", of, "dimension") for x in (a[0], b[0])]
    strokes += [line((a[0], y), (b[0], y), "dimension", of, "dimension")]
    strokes += [arrowhead((a[0], y), -1.0, 0.0, of), arrowhead((b[0], y), 1.0, 0.0, of)]
    texts.append(words((a[0] + 8.0, y - 1.0), "500", of, "dimension"))
    records.append(PlacedDimension(a, b, (a[0], y), "500", of, "below", is_running=False))

    low, high, x = on_paper(LONG, 0.0), on_paper(LONG, HIGH), ORIGIN[0] + 130.0
    of = "frame/walls/left/height"
    strokes += [line((low[0], y), (x + 1.0, y), "dimension", of, "dimension") for y in (low[1], high[1])]
    strokes += [line((x, low[1]), (x, high[1]), "dimension", of, "dimension")]
    texts.append(words((x - 1.0, low[1] - 24.0), "1 200", of, "dimension", turned=True))
    records.append(PlacedDimension(low, high, (x, low[1]), "1 200", of, "right", is_running=False))

    for place in (0, 2):
        end, y = on_paper(STUDS[place], HIGH), on_paper(0.0, HIGH)[1] - 8.0
        of = f"frame/walls/left/studs/{place}/x"
        strokes.append(line(end, (end[0], y), "dimension", of, "dimension"))
        texts.append(words((end[0] + 1.0, y), f'{STUDS[place] / 0.0254:.0f}"', of, "dimension", turned=True))
        records.append(
            PlacedDimension(on_paper(0.0, HIGH), end, (end[0], y), texts[-1].text, of, "above", is_running=True)
        )
    return strokes, texts, records


def border() -> list[Stroke]:
    """Return the frame of the page, the bar of 100 mm and a table of two rows."""
    marks = [
        Stroke(((20.0, 10.0), (269.4, 10.0), (269.4, 205.9), (20.0, 205.9)), "cut", "", "border", is_closed=True),
        line(*BAR, "visible", "", "border"),
    ]
    marks += [line((x, 198.0), (x, 202.0), "visible", "", "border") for x in (BAR[0][0], BAR[1][0])]
    marks += [line((180.0, y), (260.0, y), "dimension", "frame/walls/left", "grid") for y in (30.0, 36.0, 42.0)]
    return marks


def page(number: int = 1, count: int = 1) -> Page:
    """Return the page."""
    strokes, texts, records = measures()
    left, low, right, high = HOLE
    middle = on_paper((left + right) / 2, (low + high) / 2)
    return Page(
        name="left-outside",
        title="Left wall from outside",
        number=number,
        count=count,
        width=279.4,
        height=215.9,
        strokes=(*border(), *wall(), *strokes),
        curves=(
            Curve(on_paper(*SCREW), 2.0, 0.0, 2.0 * math.pi, "visible", "parts/bench/screws/0", "view"),
            Curve(middle, 6.0, 0.25 * math.pi, 0.5 * math.pi, "hidden", "openings/window/swing", "view"),
            Curve(middle, 8.0, 0.5 * math.pi, -1.25 * math.pi, "phantom", "openings/window/swing", "view"),
        ),
        words=(
            words((40.0, 25.0), "Left wall from outside", "", "border", 5.0, bold=True),
            words((40.0, 60.0), POISON, "parts/<odd & \"name'>", height=3.5),
            words((40.0, 50.0), "Window: rough opening 500 × 500, sill ½ in over the line", "openings/window"),
            words((182.0, 34.0), "Stud  1  ☐  ⌀ 3,2", "frame/walls/left/studs/1", "grid"),
            words((40.0, 196.0), "100 mm", "", "border"),
            *texts,
        ),
        dimensions=tuple(records),
        views=(PlacedView("left wall", ORIGIN, SCALE),),
    )
