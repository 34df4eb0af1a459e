"""Room that is to be kept clear: round a thing, over it, and before its face where one stands to work on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import isfinite
from typing import Literal

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.meeting import TOUCH, are_in, gap, grown, overlaps
from boxwright.disciplines.layout.parts import Closed, Fitted, KeepClear
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import WALLS, face_of
from boxwright.model.place import Surfaces
from boxwright.units import Band

Side = Literal["round", "front", "above"]


@dataclass(frozen=True, slots=True)
class Zone:
    """Room a thing wants: the boxes it must be found in, any one of which will do, and how much it is (m)."""

    side: Side
    choices: tuple[Block, ...]
    wanted: float


def zones_of(one: Fitted, body: Body, bodies: Iterable[Body], room: Surfaces) -> Iterator[Zone]:
    """Yield the room a thing wants, where it is written; what is written as unknown wants none that can be shown."""
    clear = one.facet.keep_clear if one.facet is not None else None
    if clear is None or not body.blocks:
        return
    whole = envelope(body.blocks)
    if _given(clear.all_round):
        by = _metres(clear.all_round)
        yield Zone("round", (grown(whole, (by, by, by)),), by)
    if _given(clear.above):
        (low, high), by = whole, _metres(clear.above)
        yield Zone("above", (Block((low[0], low[1], high[2]), (high[0], high[1], high[2] + by)),), by)
    if _given(clear.front):
        yield _before(whole, clear, bodies, room)


def is_open(clear: KeepClear) -> bool:
    """Return whether a room is asked for that nobody knows the size of."""
    return any(one is not None and not one.known for one in (clear.all_round, clear.front, clear.above))


def _given(band: Band | None) -> bool:
    return band is not None and band.known


def _metres(band: Band | None) -> float:
    return band.high if band is not None else 0.0


def _before(whole: Block, clear: KeepClear, bodies: Iterable[Body], room: Surfaces) -> Zone:
    """Return the room before the face of a thing: it may lie off its middle, as long as it is before all of the face.

    It reaches from the floor to the height one works at.
    """
    axis, out = face_of(whole, room)
    level, deep = 1 - axis, _metres(clear.front)
    near = whole.high[axis] if out > 0.0 else whole.low[axis]
    depth = (min(near, near + out * deep), max(near, near + out * deep))
    low, high = whole.low[level], whole.high[level]
    wide = max(_metres(clear.width), high - low) if _given(clear.width) else high - low
    bottom = min(room.floor, whole.low[2])
    top = max(min(room.ceiling, room.floor + LENGTHS["working height"]), whole.high[2])

    def placed(start: float) -> Block:
        ends = {axis: depth, level: (start, start + wide), 2: (bottom, top)}
        return Block((ends[0][0], ends[1][0], ends[2][0]), (ends[0][1], ends[1][1], ends[2][1]))

    first, last = high - wide, low
    edges = [edge for body in bodies for block in body.blocks for edge in (block.high[level], block.low[level] - wide)]
    starts = [(low + high - wide) / 2.0, first, last, *(one for one in edges if first <= one <= last)]
    return Zone("front", tuple(placed(start) for start in dict.fromkeys(starts)), deep)


def intruders(zone: Zone, bodies: Iterable[Body], skipped: frozenset[str]) -> tuple[Block, list[tuple[Body, bool]]]:
    """Return the room where it is laid so that least stands in it, and what does, with whether that is sure."""
    every = envelope(zone.choices)
    others = [body for body in bodies if body.of not in skipped and _is_near(body, every)]
    found = [(choice, _in(choice, others)) for choice in zone.choices]
    return min(found, key=lambda one: (sum(sure for _, sure in one[1]), len(one[1])))


def _is_near(body: Body, room: Block) -> bool:
    return bool(body.blocks) and any(are_in(room, grown(block, body.doubt)) for block in body.blocks)


def _in(choice: Block, others: list[Body]) -> list[tuple[Body, bool]]:
    found: list[tuple[Body, bool]] = []
    for body in others:
        if any(are_in(choice, block) for block in body.blocks):
            found.append((body, body.is_sure))
        elif any(are_in(choice, grown(block, body.doubt)) for block in body.blocks):
            found.append((body, False))
    return found


def left_of(zone: Zone, body: Body, other: Body) -> float:
    """Return what is left of the room that is wanted, to a thing in it (m)."""
    if zone.side == "round":
        return gap(body.blocks, other.blocks)
    if zone.side == "above":
        top = envelope(body.blocks).high[2]
        inside = [block for block in other.blocks if are_in(zone.choices[0], block)]
        return max(min((block.low[2] for block in inside), default=top) - top, 0.0)
    # before the face: the way from the face to what is nearest to it
    whole, near = envelope(body.blocks), envelope(other.blocks)
    apart = [-one for one in overlaps(whole, near)[:2] if one < TOUCH]
    return max([0.0, *apart])


def passages(closed: Iterable[Closed], room: Surfaces) -> Iterator[Block]:
    """Yield the room before each opening one goes out by: nothing is pushed there to clear something else."""
    deep = LENGTHS["passage"]
    for one in closed:
        wall, place, size = WALLS.get(one.wall), one.place, one.place.size
        if wall is None or one.facet is None or one.facet.swing is None:
            continue
        axis, out = wall
        middles = (place.x, place.y, place.z)
        level = 1 - axis
        if not (middles[level].known and place.z.known) or size[level] < LENGTHS["leaf"]:
            continue
        face = ((room.front, room.rear), (room.left, room.right))[axis][out > 0.0]
        if not isfinite(face):
            continue
        ends = {
            axis: (min(face, face - out * deep), max(face, face - out * deep)),
            level: (middles[level].best - size[level] / 2.0, middles[level].best + size[level] / 2.0),
            2: (place.z.best - size[2] / 2.0, place.z.best + size[2] / 2.0),
        }
        yield Block((ends[0][0], ends[1][0], ends[2][0]), (ends[0][1], ends[1][1], ends[2][1]))
