"""Formulas of safety: how far two things are apart, and what a leaf that has turned leaves of its hole."""

from __future__ import annotations

from math import cos, pi, sin, sqrt

from boxwright.units import Degree, Metre

Corner = tuple[Metre, Metre]
"""Along the trailer and across it."""


def gap(low: Corner, high: Corner, other_low: Corner, other_high: Corner) -> Metre:
    """Return how far two upright boxes are apart seen from above, nothing where they overlap.

    Formula: gap = sqrt(max(other_low[0] - high[0], low[0] - other_high[0], 0 * low[0])**2
        + max(other_low[1] - high[1], low[1] - other_high[1], 0 * low[1])**2)
    Valid: boxes along the axes of the trailer, the low corner of each before the high one
    Source: first-principles
    Departs: nothing
    Assumes: nothing of how high either stands
    """
    along = max(other_low[0] - high[0], low[0] - other_high[0], 0.0)
    across = max(other_low[1] - high[1], low[1] - other_high[1], 0.0)
    return sqrt(along**2 + across**2)


def left_by_leaf(span: Metre, turn: Degree) -> Metre:
    """Return how wide it is between a leaf that has turned as far as it goes and the edge of its hole it shuts against.

    That edge is nearest to the leaf square to it: with the hinge they are the corners of a right triangle whose long
    side is the span. Whatever is round and no wider gets out between them, round the edge and along the leaf.

    Formula: left = span * sin(min(turn, pi / 2))
    Valid: turn from 0 to pi
    Source: first-principles
    Departs: nothing
    Assumes: a leaf as wide as its hole and without thickness; past a right angle it covers nothing
    """
    return span * sin(min(turn, pi / 2.0))


def left_straight_on(span: Metre, turn: Degree) -> Metre:
    """Return what is left of a hole seen straight on: between the edges of two leaves, or over the edge of a ramp.

    Two leaves of half a hole each are so far apart there; over a leaf that is hinged at its bottom one climbs.

    Formula: left = span * (1 - cos(min(turn, pi / 2)))
    Valid: turn from 0 to pi
    Source: first-principles
    Departs: nothing
    Assumes: leaves without thickness, of which two turn as far; past a right angle they cover nothing
    """
    return span * (1.0 - cos(min(turn, pi / 2.0)))
