"""The true way of what a part opens, slides or sets up, as seen from above: arcs of edges, and the ground it covers."""

from __future__ import annotations

from math import atan2, cos, hypot, isfinite, sin

from boxwright.disciplines.layout.bodies import body_of, envelope
from boxwright.disciplines.layout.canopy import is_written, set_up
from boxwright.disciplines.layout.drawn import Thing, box_of, middle_of
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.sweeps import Mover, Turn, moving_part
from boxwright.drawing import Arc, Line, Mark, Shape, Text
from boxwright.drawing.mark import Point
from boxwright.model.place import Surfaces
from boxwright.units import Band

UPRIGHT = 2
"""The axis of an upright hinge."""


def ways_drawn(thing: Thing, room: Surfaces) -> list[Mark]:
    """Return how the lid or the door of a part swings, and the ground its canopy covers; nothing where unknown."""
    frame, facet = thing.frame, thing.facet
    if facet is None or not all(isfinite(one) and one > 0.0 for one in frame.place.size):
        return []
    fitted = Fitted(frame.of, frame.name, frame.kind, frame.place, True, wall=thing.wall, facet=facet)
    body = body_of(fitted, frame.stands, "travel")
    if not body.blocks:
        return []
    movers, _ = moving_part(fitted, body, room)
    marks = [mark for mover in movers if mover.what != "slide" for mark in _swing(mover)]
    if is_written(fitted):
        pieces, _ = set_up(fitted, body, Band(0.0, 0.0, 0.0))
        low, high = envelope(pieces[0].blocks)
        corners, of = box_of(low[:2], high[:2]), f"{frame.of}.open"
        marks += [Shape(corners, "phantom", of), Text(middle_of(corners), f"{frame.name}, set up", of, "small")]
    return marks


def _swing(mover: Mover) -> list[Mark]:
    of, marks = f"{mover.of}.open", list[Mark]()
    for way in mover.ways:
        if not isinstance(way, Turn):
            continue
        if 3 - way.along[0] - way.across[0] == UPRIGHT:
            marks += _turned(way, of)
        else:
            marks += _laid_over(way, of, mover.name)
    return marks


def _turned(way: Turn, of: str) -> list[Mark]:
    """Return a leaf with an upright hinge as it stands open, and the arc of its free edge."""
    hinge: Point = way.hinge if way.along[0] == 0 else (way.hinge[1], way.hinge[0])
    reach = way.spans[0][1]
    along: Point = (way.along[1], 0.0) if way.along[0] == 0 else (0.0, way.along[1])
    across: Point = (way.across[1], 0.0) if way.across[0] == 0 else (0.0, way.across[1])
    start = atan2(along[1], along[0])
    sweep = way.turn if along[0] * across[1] - along[1] * across[0] > 0.0 else -way.turn
    end = (hinge[0] + reach * cos(start + sweep), hinge[1] + reach * sin(start + sweep))
    return [Line(hinge, end, "visible", of), Arc(hinge, reach, start, sweep, "dimension", of)]


def _laid_over(way: Turn, of: str, name: str) -> list[Mark]:
    """Return the ground a lid or a flap with a level hinge goes over, from where it lies to where it lies open."""
    axis, sign = way.along if way.along[0] != UPRIGHT else way.across
    at = way.hinge[0] if way.along[0] == axis else way.hinge[1]
    reach = hypot(way.spans[0][1], way.spans[1][1])
    covered = [cos(way.turn * share / 16) if way.along[0] == axis else sin(way.turn * share / 16)
               for share in range(17)]  # fmt: skip
    ends = sorted(at + sign * reach * one for one in (min(0.0, *covered), max(0.0, *covered)))
    low, high = way.width
    corners = box_of((ends[0], low), (ends[1], high)) if axis == 0 else box_of((low, ends[0]), (high, ends[1]))
    return [Shape(corners, "phantom", of), Text(middle_of(corners), f"{name}, open", of, "small")]
