"""What stands against a wall, as one sees it who looks at that wall: from the room, or from outside."""

from __future__ import annotations

from collections.abc import Iterable
from math import isfinite

from boxwright.disciplines.layout.drawn import THINNEST, Thing, box_of, middle_of
from boxwright.disciplines.layout.plan import SPREAD, level_of
from boxwright.drawing import Mark, Shape, Text
from boxwright.drawing.mark import LineKind, Point

BACKING = "backing"
"""The kind of a part that is drawn with the frame: it lies within the wall."""
REACH = 0.12
"""How near (m) its wall's stud face a thing's back is, to be drawn with it; common practice, no source."""


def beside(things: Iterable[Thing], inward: Point, face: Point, turn: float, is_inside: bool) -> list[Mark]:
    """Return the things against a wall that runs along x or y, the farthest from the eye first.

    ``inward`` is the way into the room, ``face`` a point of the stud face, ``turn`` 1 where the wall's own coordinate
    runs to the right as one looks, else -1.
    """
    if abs(inward[0]) + abs(inward[1]) != 1.0:  # a slanted wall of a nose: nothing upright stands flat against it
        return []
    across = 0 if inward[0] else 1
    found: list[tuple[float, str, list[Mark]]] = []
    for thing in things:
        away = _away(thing, inward, face)
        if away is None or (is_inside and level_of(thing) == "below"):
            continue
        near, far = away
        if (-REACH <= near <= REACH) if is_inside else far <= 0.0:
            found.append((far if is_inside else -near, thing.frame.of, _drawn(thing, 1 - across, turn)))
    found.sort(key=lambda one: one[:2])
    return [mark for _, _, marks in found for mark in marks]


def _away(thing: Thing, inward: Point, face: Point) -> tuple[float, float] | None:
    """Return how far inside the stud face a thing begins and ends (m); None where it has no place or no solid."""
    place = thing.frame.place
    across = 0 if inward[0] else 1
    known = (place.x, place.y, place.z)
    if thing.frame.kind in {SPREAD, BACKING} or not all(one.known and isfinite(one.best) for one in known):
        return None
    if not all(isfinite(one) for one in place.size):
        return None
    middle = (known[across].best - face[across]) * inward[across]
    half = place.size[across] / 2.0
    return middle - half, middle + half


def _drawn(thing: Thing, along: int, turn: float) -> list[Mark]:
    place, frame = thing.frame.place, thing.frame
    at = turn * (place.x, place.y)[along].best
    wide, high = (max(one, THINNEST) / 2.0 for one in (place.size[along], place.size[2]))
    corners = box_of((at - wide, place.z.best - high), (at + wide, place.z.best + high))
    line: LineKind = "visible" if frame.stands == "yes" else "hidden"
    return [
        Shape(corners, line, frame.of, "wood"),
        Text(middle_of(corners), frame.name, frame.of, "small", may_move=False),
    ]
