"""What one thing is nearest to: its gaps to the others and to the faces of the room, each with its doubt."""

from __future__ import annotations

from collections.abc import Iterable
from math import isfinite

from boxwright.disciplines.layout.bodies import POSE_OF_USE, Body
from boxwright.disciplines.layout.meeting import deepest, gap, lines_of
from boxwright.disciplines.layout.result import Result
from boxwright.exchange import Clearance
from boxwright.model.place import Surfaces
from boxwright.units import Band

MOST = 4
"""How many gaps are told of one thing."""


def clearances(result: Result, of: str, room: Surfaces | None = None, most: int = MOST) -> tuple[Clearance, ...]:
    """Return the nearest gaps of a thing in a slot, least first; below zero it is so deep in the other.

    What carries it and what it carries are left out. ``room`` adds the faces of the finished room as ``room.left`` and
    so on. A thing without a place has none.
    """
    own = next((body for body in result.bodies if body.of == of and body.known and body.blocks), None)
    if own is None:
        return ()
    lines, when = lines_of(result.bodies), POSE_OF_USE.get(result.use, "travel")
    kin = {of, *lines[of], *(other for other, line in lines.items() if of in line)}
    found = [
        Clearance(of, body.of, _between(own, body), when)
        for body in result.bodies
        if body.of not in kin and body.known and body.blocks
    ]
    if room is not None:
        found += [Clearance(of, f"room.{face}", _exactly(far, own), when) for face, far in _faces(own, room)]
    found.sort(key=lambda one: (one.metre.best, one.to))
    return tuple(found[:most])


def _between(own: Body, other: Body) -> Band:
    deep, _ = deepest(own, other)
    far = -deep if deep > 0.0 else gap(own.blocks, other.blocks)
    doubt = max(mine + theirs for mine, theirs in zip(own.doubt, other.doubt, strict=True))
    return Band(far, far - doubt, far + doubt)


def _exactly(far: float, own: Body) -> Band:
    doubt = max(own.doubt)
    return Band(far, far - doubt, far + doubt)


def _faces(own: Body, room: Surfaces) -> Iterable[tuple[str, float]]:
    """Yield how far a thing in the room is from each of its upright faces and from the ceiling."""
    low, high = own.around
    far = {
        "front": low[0] - room.front, "rear": room.rear - high[0], "left": low[1] - room.left,
        "right": room.right - high[1], "ceiling": room.ceiling - high[2],
    }  # fmt: skip
    if not all(isfinite(one) for one in far.values()) or any(
        far[face] <= -own.around.size[axis]
        for face, axis in (("front", 0), ("rear", 0), ("left", 1), ("right", 1), ("ceiling", 2))
    ):
        return []  # nobody knows where the faces are, or it is wholly outside of one
    return far.items()
