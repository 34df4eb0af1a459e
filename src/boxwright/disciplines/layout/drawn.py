"""What the drawings of layout are made from: things with their places, doors with their hinges, the box around them."""

from __future__ import annotations

from math import isfinite

from boxwright.disciplines.layout.parts import Facet
from boxwright.drawing import Mark
from boxwright.drawing.mark import Point
from boxwright.exchange import Box
from boxwright.model.part import Frame
from boxwright.model.place import Place
from boxwright.records import dataclass

THINNEST = 0.03
"""How deep (m) a thing is drawn at least, so that a hand finds it."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A part as it stands, with its other places and a word for each: down, folded, at night; the wall it hangs on."""

    frame: Frame
    elsewhere: tuple[tuple[str, Place], ...] = ()
    facet: Facet | None = None
    wall: str = ""


@dataclass(frozen=True, slots=True)
class Leaf:
    """What closes an opening of a wall, as seen from above: its two ends on the wall, the way out, its height (m).

    ``hinge`` and ``opens`` are the words of the rig file; ``turns`` is how far it opens (rad), None where not written.
    One that slides goes to ``slides`` by so much (m), None where that is not known; ``runs`` is along which face of its
    wall, and its ends are on that face.
    """

    of: str
    name: str
    low: Point
    high: Point
    outward: Point
    height: float
    hinge: str
    opens: str
    turns: float | None
    slides: str = ""
    by: float | None = None
    runs: str = ""


@dataclass(frozen=True, slots=True)
class Planned:
    """A plan to be drawn: ``backdrop`` are the lines of the frame; ``centre`` the centre of gravity from above.

    ``front`` to ``ceiling`` are the finished faces of the room (m); the centre is infinite where it is not known.
    ``length`` and ``width`` are the inside measures in words.
    """

    backdrop: tuple[Mark, ...]
    box: Box
    things: tuple[Thing, ...]
    leaves: tuple[Leaf, ...]
    room: tuple[Point, Point]
    centre: Point
    length: str
    width: str


def corners_of(place: Place) -> tuple[Point, ...]:
    """Return the outline of a thing from above (m: rearward, to the right); empty where its place is not known."""
    x, y = place.x, place.y
    if not (x.known and y.known and isfinite(x.best) and isfinite(y.best)):
        return ()
    length, width = (max(one, THINNEST) / 2.0 for one in place.size[:2])
    if not (isfinite(length) and isfinite(width)):
        return ()
    return box_of((x.best - length, y.best - width), (x.best + length, y.best + width))


def box_of(low: Point, high: Point) -> tuple[Point, ...]:
    """Return the four corners of an upright rectangle."""
    return low, (high[0], low[1]), high, (low[0], high[1])


def middle_of(corners: tuple[Point, ...]) -> Point:
    """Return the middle of an upright rectangle."""
    return (corners[0][0] + corners[2][0]) / 2.0, (corners[0][1] + corners[2][1]) / 2.0
