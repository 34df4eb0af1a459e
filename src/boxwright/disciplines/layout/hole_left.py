"""What is left of a hole to get through: by the leaf that strikes something, and by what stands before it."""

from __future__ import annotations

from collections.abc import Iterable
from math import cos, inf, pi

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.method import left_beside_leaf
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.model.place import Place, Surfaces
from boxwright.units import Band

Rect = tuple[tuple[float, float], tuple[float, float]]
"""Both ends along two axes."""
OUTWARD = {"left": (1, -1.0), "right": (1, 1.0), "front": (0, -1.0), "rear": (0, 1.0), "roof": (2, 1.0)}
"""Along which axis, and which way, one leaves by an opening of a wall."""


def left_of(
    reached: float, turns: bool, is_sure: bool, span: float, is_pair: bool, is_over: bool = False
) -> tuple[float, float]:
    """Return the least and the most (m) that a leaf leaves of a span which turns (rad) or slides (m) only so far.

    Beside a leaf that has turned less than a right angle one gets out between it and the edge it shuts against, less
    its thickness at the worst; over one hinged at its bottom (``is_over``) by what is left over its edge; between two
    leaves by as much as their edges are apart, of which the other may open, or not. One that is not sure to strike may
    leave all of the hole.
    """
    if turns and not (is_pair or is_over):
        left = left_beside_leaf(span, reached)
        thick = LENGTHS["hinged leaf"] if reached < pi / 2.0 else 0.0
        return max(left - thick, 0.0), left if is_sure else span
    hidden = span * cos(min(reached, pi / 2.0)) if turns else max(span - reached, 0.0)
    most = span - (hidden / 2.0 if is_pair else hidden) if is_sure else span
    return span - hidden, most


def covered(wall: str, place: Place, bodies: Iterable[Body], room: Surfaces, reach: float) -> tuple[Body, Band] | None:
    """Return what the things before a hole leave of it (m): over a hatch, under it or outside a wall within ``reach``.

    With it the one that takes most. What stands inside before an upright hole is in the way to it, and found there.
    """
    if wall not in OUTWARD:
        return None
    normal, out = OUTWARD[wall]
    axes = [axis for axis in range(3) if axis != normal]
    at = (place.x, place.y, place.z)
    if not all(at[axis].known and place.size[axis] > 0.0 for axis in axes):
        return None
    doubt = [max(at[axis].high - at[axis].best, at[axis].best - at[axis].low) for axis in axes]
    ends = [(at[axis].best - place.size[axis] / 2.0, at[axis].best + place.size[axis] / 2.0) for axis in axes]
    hole = ends[0], ends[1]
    certain: list[Rect] = []
    possible: list[tuple[Rect, Body]] = []
    start, end = _before(wall, room, reach)
    for body in bodies:
        for block in body.blocks:
            off = body.doubt[normal]
            outward = block.high[normal] if wall == "roof" else min(block.low[normal] * out, block.high[normal] * out)
            more = [body.doubt[axis] + by for axis, by in zip(axes, doubt, strict=True)]
            grown, shrunk = (
                [(block.low[axis] - by, block.high[axis] + by) for axis, by in zip(axes, bys, strict=True)]
                for bys in (more, [-by for by in more])
            )
            is_beside = any(low >= end[1] or high <= end[0] for (low, high), end in zip(grown, hole, strict=True))
            if is_beside or outward + off < start or outward - off >= end:
                continue
            possible.append(((grown[0], grown[1]), body))
            is_before = outward - off >= start and outward + off < end and all(low < high for low, high in shrunk)
            if body.is_sure and body.stands == "yes" and is_before:
                certain.append((shrunk[0], shrunk[1]))
    if not possible:
        return None
    least, most = widest_left(hole, [rect for rect, _ in possible]), widest_left(hole, certain)
    first = min(possible, key=lambda one: widest_left(hole, [one[0]]))
    return first[1], Band(least, least, most)


def _before(wall: str, room: Surfaces, reach: float) -> tuple[float, float]:
    """Return between where outward the top of a thing is over or close under a hatch, or a thing begins outside."""
    if wall == "roof":
        return room.ceiling - reach, inf
    face = {"left": -room.left, "right": room.right, "front": -room.front, "rear": room.rear}[wall]
    return face, face + reach


def widest_left(hole: Rect, things: list[Rect]) -> float:
    """Return the lesser side of the free rectangle of a hole that lets most through."""
    (left, right), up = hole
    edges = sorted({left, right, *(min(max(edge, left), right) for along, _ in things for edge in along)})
    best = 0.0
    for index, start in enumerate(edges):
        for end in edges[index + 1 :]:
            if end - start <= best:
                continue
            across = sorted(other for along, other in things if along[0] < end and along[1] > start)
            free, low = 0.0, up[0]
            for begins, ends in across:
                free, low = max(free, min(begins, up[1]) - low), max(low, ends)
            best = max(best, min(end - start, max(free, up[1] - low)))
    return best
