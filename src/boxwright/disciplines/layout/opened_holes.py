"""What the leaf of an opening leaves of its hole to carry things through: by how far it is written to turn or slide."""

from __future__ import annotations

from math import cos, inf, isfinite, pi

from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.sweeps import AXES, BOTH, EDGES
from boxwright.disciplines.layout.terraces import UPRIGHT
from boxwright.exchange import Vector


def opened_hole(one: Closed, reached: float = inf) -> tuple[Vector, Vector]:
    """Return both corners of the part of a hole that its leaf surely leaves free, nothing of it where nobody knows.

    A leaf on a hinge leaves what it does not cover seen straight on; one without a written angle is laid back. One that
    slides leaves what it has slid, on the side it comes from. ``reached`` is how far (rad, m) it gets before something
    stops it.
    """
    half = tuple(side / 2.0 for side in one.place.size)
    x, y, z = one.place.x.best, one.place.y.best, one.place.z.best
    low, high = [x - half[0], y - half[1], z - half[2]], [x + half[0], y + half[1], z + half[2]]
    facet = one.facet
    slides, swing = (facet.slides, facet.swing) if facet is not None else (None, None)
    if slides is not None:
        axis, way = AXES.get(slides.to, (2, 1.0))
        is_known = slides.to in AXES and UPRIGHT.get(one.wall) != axis and slides.by is not None and slides.by.known
        by = min(slides.by.low, reached) if is_known and slides.by is not None else 0.0
        covered = max(high[axis] - low[axis] - by, 0.0)
        if way > 0.0:
            high[axis] -= covered
        if way < 0.0:
            low[axis] += covered
    elif swing is not None:
        turn = min(swing.to.low, reached) if swing.to is not None and swing.to.known else reached
        if isfinite(turn):
            _turned(one, swing.hinge, turn, low, high)
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _turned(one: Closed, hinge: str, turn: float, low: list[float], high: list[float]) -> None:
    """Take off a hole what a leaf, or each of two halves, still covers that has turned so far."""
    share = cos(min(turn, pi / 2.0))
    if hinge == BOTH:
        axis = 1 - UPRIGHT.get(one.wall, 1)
        covered = (high[axis] - low[axis]) / 2.0 * share
        low[axis] += covered
        high[axis] -= covered
    elif hinge in EDGES:
        axis, side = EDGES[hinge]
        covered = (high[axis] - low[axis]) * share
        if side > 0.0:
            high[axis] -= covered
        else:
            low[axis] += covered
