"""A box that turns on a hinge, seen along the hinge: the angle at which it first meets another box."""

from __future__ import annotations

from collections.abc import Iterable
from math import acos, atan2, cos, hypot, inf, pi, sin

from boxwright.units import Degree, Metre, OutOfRange

Span = tuple[Metre, Metre]
Arc = tuple[float, float]

NEVER = inf
"""The angle of a meeting that does not come."""
WHOLE = 2.0 * pi
SAME = 1e-12
"""Radians below which two angles are one."""


def first_meeting(along: Span, across: Span, other_along: Span, other_across: Span, turn: Degree) -> Degree:
    """Return the angle at which a rectangle turning about the origin first overlaps another; infinite if it never does.

    ``along`` and ``across`` are its spans before it turns, ``other_along`` and ``other_across`` those of the one that
    stands; a turn above zero goes from along to across. The answer is exact: two rectangles are apart just while one
    of their eight edge lines parts them, and for each line the angles at which all four corners of the other one lie
    beyond it are arcs in closed form. What is left of the turn is where they overlap. Both ends of the turn are part
    of it.

    Satisfies: result * turned_apart(along, across, other_along, other_across, result, turn)
    Valid: a turn of at most once around; spans with their low end not above their high end
    Source: first-principles section on turning boxes
    Departs: nothing
    Assumes: a stiff rectangle, an axis that does not move
    """
    OutOfRange.unless_between("turn", turn, -WHOLE, WHOLE)
    if turn < 0.0:  # the same seen from the other side
        across, other_across, turn = (-across[1], -across[0]), (-other_across[1], -other_across[0]), -turn
    mine, theirs = _polar(along, across), _polar(other_along, other_across)
    lines: list[tuple[list[tuple[float, float]], float]] = []
    for quarter, (low, high) in ((0.0, other_along), (pi / 2.0, other_across)):
        # the corners of the turning one beyond the standing one's edges: r cos(angle + turned - quarter)
        ahead = [(radius, angle - quarter) for radius, angle in mine]
        lines += [(ahead, high), ([(radius, angle + pi) for radius, angle in ahead], -low)]
    for quarter, (low, high) in ((0.0, along), (pi / 2.0, across)):
        # the standing one's corners beyond the turning one's edges: r cos(angle - quarter - turned), an even function
        behind = [(radius, quarter - angle) for radius, angle in theirs]
        lines += [(behind, high), ([(radius, angle + pi) for radius, angle in behind], -low)]
    return _left_of([arc for corners, least in lines for arc in _apart(corners, least, turn)], turn)


def turned_apart(
    along: Span, across: Span, other_along: Span, other_across: Span, turned: Degree, turn: Degree
) -> Metre:
    """Return how far apart, along the best of their edges' normals, two rectangles are when one has turned so far.

    Below zero they lie in each other by so much. ``turned`` counts from 0 in the direction of ``turn``.

    Satisfies: result - turned_apart(other_along, other_across, along, across, -turned, turn)
    Valid: spans with their low end not above their high end
    Source: first-principles section on turning boxes
    Departs: nothing
    Assumes: as ``first_meeting``
    """
    by = turned if turn >= 0.0 else -turned
    mine, theirs = _corners(along, across), _corners(other_along, other_across)
    there = [(x * cos(by) - y * sin(by), x * sin(by) + y * cos(by)) for x, y in mine]
    seen = [(x * cos(by) + y * sin(by), y * cos(by) - x * sin(by)) for x, y in theirs]
    gaps = [_gap(there, axis, span) for axis, span in enumerate((other_along, other_across))]
    gaps += [_gap(seen, axis, span) for axis, span in enumerate((along, across))]
    return max(gaps)


def left_beside_leaf(span: Metre, turn: Degree) -> Metre:
    """Return how wide it is between a leaf that has turned so far and the edge of its hole it shuts against.

    That edge is nearest to the leaf square to it: with the hinge they are the corners of a right triangle whose long
    side is the span. Nothing that is wider every way seen from along the hinge gets past, however it is held.

    Formula: left = span * sin(min(turn, pi / 2))
    Valid: turn from 0 to pi
    Source: first-principles section on turning boxes
    Departs: nothing
    Assumes: a leaf as wide as its hole and without thickness; past a right angle it covers nothing
    """
    return span * sin(min(turn, pi / 2.0))


def _gap(points: list[tuple[float, float]], axis: int, span: Span) -> float:
    places = [point[axis] for point in points]
    return max(min(places) - span[1], span[0] - max(places))


def _corners(along: Span, across: Span) -> list[tuple[float, float]]:
    return [(x, y) for x in along for y in across]


def _polar(along: Span, across: Span) -> list[tuple[float, float]]:
    return [(hypot(x, y), atan2(y, x)) for x, y in _corners(along, across)]


def _apart(corners: list[tuple[float, float]], least: float, turn: float) -> list[Arc]:
    """Return the stretches of a turn in which every corner, r cos(angle + turned), is at least so far out."""
    found: list[Arc] = [(0.0, turn)]
    for radius, angle in corners:
        if radius <= abs(least):
            if least > 0.0 and radius < least:
                return []
            if least <= 0.0:  # it is always so far out
                continue
        half = acos(max(-1.0, min(1.0, least / radius)))
        start = (-angle - half) % WHOLE
        arcs = [(start - WHOLE, start + 2.0 * half - WHOLE), (start, start + 2.0 * half)]
        found = [
            (max(one[0], other[0]), min(one[1], other[1]))
            for one in found
            for other in arcs
            if max(one[0], other[0]) <= min(one[1], other[1])
        ]
    return found


def _left_of(arcs: Iterable[Arc], turn: float) -> float:
    """Return the first angle of a turn that no stretch covers; infinite where all of it is covered."""
    reached = 0.0
    for low, high in sorted(arcs):
        if low > reached + SAME:
            break
        reached = max(reached, high)
    return NEVER if reached >= turn - SAME else reached
