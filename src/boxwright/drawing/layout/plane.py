"""Plane geometry of strokes: what of a line lies in a shape, and what of it is left beside boxes. mm on paper."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from boxwright.drawing.mark import Point
from boxwright.drawing.page import Box

Segment = tuple[float, float, float, float]
Points = tuple[Point, ...]

SHORTEST = 0.3
"""A piece of a broken line shorter than this is left out: it prints as a speck."""


def hatched(points: Points, angle: float, spacing: float) -> list[Segment]:
    """Return parallel lines at an angle that fill an outline, by the even-odd rule."""
    turn, tilt = cos(angle), sin(angle)
    ends = [(x * turn + y * tilt, y * turn - x * tilt) for x, y in points]
    low, high = min(v for _, v in ends), max(v for _, v in ends)
    lines: list[Segment] = []
    # Counted from the paper's own zero, so that neighbouring shapes of one material are hatched in one piece.
    level = (low // spacing + 1) * spacing
    while level < high:
        cuts = crossings(ends, level)
        for start, end in zip(cuts[::2], cuts[1::2], strict=False):
            if end - start > SHORTEST:
                lines.append(
                    (
                        start * turn - level * tilt,
                        start * tilt + level * turn,
                        end * turn - level * tilt,
                        end * tilt + level * turn,
                    )
                )
        level += spacing
    return lines


def crossings(points: list[Point], level: float) -> list[float]:
    """Return where an outline crosses a level line, from left to right."""
    found = []
    before = points[-1]
    for point in points:
        if (before[1] <= level) != (point[1] <= level):
            found.append(before[0] + (level - before[1]) * (point[0] - before[0]) / (point[1] - before[1]))
        before = point
    return sorted(found)


def outside_boxes(line: Segment, boxes: list[Box]) -> list[Segment]:
    """Return what of a line lies outside all of the boxes."""
    x1, y1, x2, y2 = line
    left, right = (x1, x2) if x1 < x2 else (x2, x1)
    top, bottom = (y1, y2) if y1 < y2 else (y2, y1)
    near = [one for one in boxes if one.left <= right and one.right >= left and one.top <= bottom and one.bottom >= top]
    return without(line, [within for box in near if (within := inside_box(line, box)) is not None])


def inside_box(line: Segment, box: Box) -> tuple[float, float] | None:
    """Return from where to where, as shares of its length, a line lies in a box; None where it does not."""
    x1, y1, x2, y2 = line
    low, high = 0.0, 1.0
    for start, step, least, most in ((x1, x2 - x1, box.left, box.right), (y1, y2 - y1, box.top, box.bottom)):
        if step == 0.0:
            if not least < start < most:
                return None
            continue
        one, other = (least - start) / step, (most - start) / step
        low, high = max(low, min(one, other)), min(high, max(one, other))
    return (low, high) if low < high else None


def outside_shape(line: Segment, points: Points) -> list[Segment]:
    """Return what of a line lies outside an outline, by the even-odd rule."""
    return without(line, inside_shape(line, points))


def inside_shape(line: Segment, points: Points) -> list[tuple[float, float]]:
    """Return from where to where, as shares of its length, a line lies inside an outline."""
    x1, y1, x2, y2 = line
    length = hypot(x2 - x1, y2 - y1)
    if length == 0.0:
        return []
    turn, tilt = (x2 - x1) / length, (y2 - y1) / length
    turned = [((x - x1) * turn + (y - y1) * tilt, (y - y1) * turn - (x - x1) * tilt) for x, y in points]
    cuts = [min(1.0, max(0.0, cut / length)) for cut in crossings(turned, 0.0)]
    return [(low, high) for low, high in zip(cuts[::2], cuts[1::2], strict=False) if low < high]


def without(line: Segment, spans: list[tuple[float, float]]) -> list[Segment]:
    """Return what is left of a line when spans of it, as shares of its length, are taken out."""
    if not spans:
        return [line]
    x1, y1, x2, y2 = line
    length = hypot(x2 - x1, y2 - y1)
    left, here = [], 0.0
    for low, high in [*sorted(spans), (1.0, 1.0)]:
        low = min(low, 1.0)
        if (low - here) * length >= SHORTEST:
            left.append((x1 + here * (x2 - x1), y1 + here * (y2 - y1), x1 + low * (x2 - x1), y1 + low * (y2 - y1)))
        here = max(here, high)
    return left


def on_circle(centre: Point, radius: float, start: float, sweep: float) -> list[Point]:
    """Return points along part of a circle, seen on paper, close enough that the chords leave it by 0.05 mm."""
    per_turn = min(720, int(10.0 * radius**0.5 + 8))
    count = max(1, int(per_turn * abs(sweep) / (2.0 * pi)) + 1)
    angles = [start + sweep * step / count for step in range(count + 1)]
    return [(centre[0] + radius * cos(one), centre[1] - radius * sin(one)) for one in angles]


def spread(wanted: list[float], apart: float, low: float, high: float) -> list[float]:
    """Return places in the given order, at least so far apart and inside limits, moved as little as can be.

    Least squares under an order: pool adjacent places that are too close and set each pool at its mean.
    """
    pools: list[tuple[float, int]] = []
    for number, place in enumerate(wanted):
        mean, count = place - number * apart, 1
        while pools and pools[-1][0] > mean:
            other, others = pools.pop()
            mean, count = (mean * count + other * others) / (count + others), count + others
        pools.append((mean, count))
    most = high - (len(wanted) - 1) * apart
    flat = [max(low, min(mean, most)) for mean, count in pools for _ in range(count)]
    return [place + number * apart for number, place in enumerate(flat)]
