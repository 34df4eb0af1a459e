"""A leaf that opens outward past a half turn, or flat against a wall: round the corner, on the ground, over a hole."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import zip_longest
from math import asin, inf, isfinite, sin

from boxwright.disciplines.layout.bodies import Block, doubt_of
from boxwright.disciplines.layout.meeting import TOUCH
from boxwright.disciplines.layout.method import overlap
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.result import Certainty, Overlaid, Stopped
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import AXES, HALF, QUARTER, Mover, Slip, Turn
from boxwright.units import Band

WORDS = {**{axis: word for word, axis in AXES.items()}, (2, 1.0): "roof", (2, -1.0): "floor"}
"""The wall that looks along each axis and way."""
FLAT = 1e-6
"""A leaf this near to a wall lies flat on it (rad)."""


def past_half(first: Turn, outer: Block | None, turns: tuple[float, float, float]) -> Turn | None:
    """Return how a leaf goes on past a half turn about the corner of the shell; None where it does not.

    Its hinge is taken to be at the corner, as it must be to fold round it; a leaf that ends far from the corner has
    the wall in its way.
    """
    if turns[1] <= HALF or outer is None or corner_off(first, outer) > LENGTHS["wall reach"]:
        return None
    (i, way_i), (j, way_j) = first.along, first.across
    off, reach = corner_off(first, outer), max(first.spans[0])
    corner = outer.low[i] if way_i > 0.0 else outer.high[i]
    best, at_most, least = (min(max(end - HALF, 0.0), QUARTER) for end in turns)
    spans = (off, off + reach), (0.0, 0.0)
    return Turn((i, -way_i), (j, -way_j), (corner, first.hinge[1]), spans, first.width, best, at_most, HALF, least)


def corner_off(first: Turn, outer: Block) -> float:
    """Return how far the hinge of a leaf is from the corner of the shell behind it (m); infinite where nobody knows."""
    i, way = first.along
    off = first.hinge[0] - outer.low[i] if way > 0.0 else outer.high[i] - first.hinge[0]
    return off if isfinite(off) else inf


def held_outside(mover: Mover, turn: Band | None, outer: Block, ground: Band) -> Iterator[Stopped]:
    """Yield what of the shell or under it ends the way of a leaf: its own wall past a half turn, the ground.

    That a wall does is never sure: a hinge may stand off it. A turn that nobody knows may be a half one.
    """
    first = mover.ways[0]
    if mover.what != "leaf" or not isinstance(first, Turn) or turn is None:
        return
    turn = turn if turn.known else Band(QUARTER, 0.0, HALF)
    if not mover.outside:
        if turn.high > HALF + FLAT and first.across[0] != 2:
            wall = WORDS[(first.across[0], -first.across[1])]
            yield Stopped(mover.of, mover.name, "leaf", f"the {wall} wall", HALF, turn.best, True, "perhaps")
        return
    is_far = corner_off(first, outer) > LENGTHS["wall reach"]
    if turn.high > HALF + FLAT and is_far and first.across[0] != 2:
        wall = WORDS[first.across]
        yield Stopped(mover.of, mover.name, "leaf", f"the {wall} wall", HALF, turn.best, True, "perhaps")
    if first.along == (2, 1.0) and ground.known and first.across[0] != 2:
        reach = max(first.spans[0])
        low, best, high = (_to_ground(at + first.hinge[0], reach) for at in (ground.low, ground.best, ground.high))
        play = LENGTHS["play"] / reach
        if turn.low > high + play or turn.high > low + play:
            sure: Certainty = "sure" if turn.low > high + play else "perhaps"
            yield Stopped(mover.of, mover.name, "leaf", "the ground", best, turn.best, True, sure)


def _to_ground(height: float, reach: float) -> float:
    """Return how far a flap turns that is hinged so high over the ground, until its free edge is on it (rad)."""
    return QUARTER + asin(min(max(height, 0.0) / reach, 1.0)) if height < reach else inf


def overlaid(movers: Iterable[Mover], closed: Iterable[Closed]) -> Iterator[Overlaid]:
    """Yield the holes of a wall that a leaf lies over which is laid open against it, and how sure that is."""
    closed = tuple(closed)
    for mover in movers:
        if mover.what != "leaf" or not mover.outside:
            continue
        for other in closed:
            if other.of == mover.of:
                continue
            found = [_over(way, other) for way in ended(mover) if isinstance(way, Turn)]
            if any(found):
                sure: Certainty = "sure" if "sure" in found and not mover.is_usual else "perhaps"
                yield Overlaid(mover.of, mover.name, other.of, other.name, sure)


def ended(mover: Mover) -> Iterator[Turn | Slip]:
    """Yield the ways at whose end something may stand open: not the first half of one that surely goes on."""
    for way, after in zip_longest(mover.ways, mover.ways[1:]):
        is_passed = isinstance(after, Turn) and after.begins > 0.0
        if is_passed and isinstance(after, Turn) and after.to("least") <= 0.0 and isinstance(way, Turn):
            yield replace(way, turn=way.turn - 2.0 * FLAT)  # it may stand there, or go on: nothing of it is sure
        elif not is_passed:
            yield way


def _over(way: Turn, hole: Closed) -> Certainty | None:
    """Return whether a leaf lies over a hole when it stands open, surely or perhaps."""
    surely = _laid(way, way.turn) if way.at_most <= way.turn + FLAT else None
    perhaps = _laid(way, way.at_most)
    for laid, word, grown in ((surely, "sure", False), (perhaps, "perhaps", True)):
        if laid is not None and laid[0] == hole.wall and _meets(laid[1], hole, grown):
            return "sure" if word == "sure" else "perhaps"
    return None


def _laid(way: Turn, turn: float) -> tuple[str, dict[int, tuple[float, float]]] | None:
    """Return the wall that a leaf lies against, and between where along both its axes; None where it stands off it."""
    (i, way_i), (j, way_j) = way.along, way.across
    k = 3 - i - j
    left = (QUARTER if way.begins else HALF) - turn
    if left < -FLAT or left > QUARTER or (way.begins and turn <= 0.0):
        return None
    low, high = way.spans[0]
    far = min(high, LENGTHS["wall reach"] / sin(left)) if left > FLAT else high
    if far <= low:
        return None
    if not way.begins:  # back on its own wall, on the other side of its hinge
        ends = way.hinge[0] - way_i * low, way.hinge[0] - way_i * far
        return WORDS[way.across], {i: (min(ends), max(ends)), k: way.width}
    ends = way.hinge[1] + way_j * low, way.hinge[1] + way_j * far
    return WORDS[way.along], {j: (min(ends), max(ends)), k: way.width}


def _meets(spans: dict[int, tuple[float, float]], hole: Closed, is_grown: bool) -> bool:
    middles, doubt = (hole.place.x, hole.place.y, hole.place.z), doubt_of(hole.place)
    for axis, (low, high) in spans.items():
        half = hole.place.size[axis] / 2.0 + ((doubt[axis] + hole.off[axis] / 2.0) if is_grown else 0.0)
        middle = middles[axis]
        if not middle.known or overlap(low, high, middle.best - half, middle.best + half) <= TOUCH:
            return False
    return True
