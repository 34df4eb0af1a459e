"""Upright boxes: how far they are in each other along one axis, and how far apart."""

from __future__ import annotations

from math import hypot, tan

from boxwright.units import Degree, Metre, OutOfRange, Ratio


def overlap(low: Metre, high: Metre, other_low: Metre, other_high: Metre) -> Metre:
    """Return how far two spans of one axis lie in each other; below zero it is the gap between them.

    Formula: overlap = min(high, other_high) - max(low, other_low)
    Valid: each span's low end not above its high end
    Source: first-principles section on spans
    Departs: nothing
    Assumes: nothing
    """
    return min(high, other_high) - max(low, other_low)


def distance(along: Metre, across: Metre, up: Metre) -> Metre:
    """Return how far apart two upright boxes are, from their overlaps along the three axes; 0 where they touch.

    Formula: distance = hypot(max(-along, 0.0 * along), max(-across, 0.0 * across), max(-up, 0.0 * up))
    Valid: any overlaps
    Source: first-principles section on distances
    Departs: nothing
    Assumes: both boxes have their edges along the axes
    """
    return hypot(max(-along, 0.0), max(-across, 0.0), max(-up, 0.0))


def slab_height(reach: Metre, pitch: Degree, count: Ratio) -> Metre:
    """Return how high each box is of those that hold a sloping sheet: by so much they are thicker than the sheet.

    Formula: height = reach * tan(pitch) / count
    Valid: a reach above zero, a pitch from level to short of upright, at least one box
    Source: first-principles section on sloping sheets
    Departs: nothing
    Assumes: the sheet is flat and has no thickness of its own
    """
    OutOfRange.unless_positive("reach", reach)
    OutOfRange.unless_positive("count", count)
    OutOfRange.unless_between("pitch", pitch, 0.0, 1.5)
    return reach * tan(pitch) / count
