"""What the leaf of an opening leaves of its hole: by how far it is written to turn or slide, and what it strikes.

A hole has two ends: what is surely free of it, and what may be at most.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, inf, pi

from boxwright.disciplines.layout.bodies import doubt_of
from boxwright.disciplines.layout.method import left_beside_leaf
from boxwright.disciplines.layout.parts import Closed, Slide, Swing
from boxwright.disciplines.layout.sweeps import AXES, BOTH, EDGES, WALLS
from boxwright.disciplines.layout.terraces import UPRIGHT
from boxwright.exchange import Vector

Corners = tuple[list[float], list[float]]
SHUT = 1e-9
"""The share of a hole from which on a leaf covers some of it."""
Reaches = Sequence[float]
"""How far each leaf of an opening goes before something ends it (rad, m), the one at the low edge first."""


def opened_hole(one: Closed, reaches: Reaches = (), at_most: bool = False) -> tuple[Vector, Vector]:
    """Return both corners of the part of a hole that its leaf surely leaves free, nothing of it where nobody knows.

    A leaf on a hinge surely leaves what it does not cover seen straight on, for what is carried straight out; one
    without a written angle is laid back. One that slides leaves what it has slid, on the side it comes from.
    ``at_most`` asks for what it may leave at most: beside a leaf on a hinge what gets through aslant, along it.
    """
    low, high = _hole(one, 1.0 if at_most else -1.0)
    slides, swing = (one.facet.slides, one.facet.swing) if one.facet is not None else (None, None)
    if slides is not None:
        _slid(one, slides, (low, high), min(reaches, default=inf), at_most)
    elif swing is not None:
        _turned(one, swing, (low, high), reaches, at_most)
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _hole(one: Closed, by: float) -> Corners:
    """Return a hole as small or as large as it may be, by its size and its place."""
    low, high = list[float](), list[float]()
    for axis, middle in enumerate((one.place.x, one.place.y, one.place.z)):
        off = doubt_of(one.place)[axis] + one.off[axis] / 2.0
        half = one.place.size[axis] / 2.0
        more = by * min(off, half) if UPRIGHT.get(one.wall) != axis else 0.0
        low.append(middle.best - half - more)
        high.append(middle.best + half + more)
    return low, high


def _slid(one: Closed, slides: Slide, hole: Corners, reach: float, at_most: bool) -> None:
    """Take off a hole what its leaf still covers that has slid."""
    low, high = hole
    axis, way = AXES.get(slides.to, (2, 1.0))
    is_known = slides.to in AXES and UPRIGHT.get(one.wall) != axis and slides.by is not None and slides.by.known
    by = inf if at_most else 0.0
    if is_known and slides.by is not None:
        by = slides.by.high if at_most else slides.by.low
    covered = max(high[axis] - low[axis] - min(by, reach), 0.0)
    if way > 0.0:
        high[axis] -= covered
    else:
        low[axis] += covered


def _turned(one: Closed, swing: Swing, hole: Corners, reaches: Reaches, at_most: bool) -> None:
    """Take off a hole what a leaf, or each of two halves, still covers that has turned so far."""
    low, high = hole
    turn = pi / 2.0
    if swing.to is not None:
        turn = (swing.to.high if at_most else swing.to.low) if swing.to.known else pi / 2.0 if at_most else 0.0
    turns = [min(turn, reach, pi / 2.0) for reach in reaches] or [min(turn, pi / 2.0)]
    shares = [cos(one) for one in turns]
    if swing.hinge == BOTH:
        axis = 1 - UPRIGHT.get(one.wall, 1)
        half = (high[axis] - low[axis]) / 2.0
        low[axis] += half * shares[0]
        high[axis] -= half * shares[-1]
    elif swing.hinge in EDGES and EDGES[swing.hinge][0] != WALLS.get(one.wall, (2, 1.0))[0]:
        axis, side = EDGES[swing.hinge]
        whole = high[axis] - low[axis]
        covered = whole - left_beside_leaf(whole, min(turns)) if at_most else whole * max(shares)
        if side > 0.0:
            high[axis] -= covered
        else:
            low[axis] += covered
    elif not at_most and max(shares) > SHUT:  # it covers nobody knows which part
        high[:] = low
