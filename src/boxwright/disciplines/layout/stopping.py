"""The room about what moves and what wants room: its walls, its floor and its ceiling stop both."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from math import isfinite

from boxwright.disciplines.layout.bodies import Block, Body, envelope, moved_block
from boxwright.disciplines.layout.meeting import TOUCH, are_in, grown
from boxwright.disciplines.layout.parts import Closed, Fitted
from boxwright.disciplines.layout.resting import passes
from boxwright.disciplines.layout.result import Certainty, Short, Stopped, Whereabouts
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import MOST_MOVERS, NEVER, WALLS, Far, Mover, Slip, Turn
from boxwright.disciplines.layout.zones import Zone
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces

FAR = 100.0
"""How thick a wall is taken to be (m): farther than anything of a trailer reaches."""
NAMED = {"front": "the front wall", "rear": "the rear wall", "left": "the left wall", "right": "the right wall",
         "floor": "the floor", "ceiling": "the ceiling"}  # fmt: skip
Face = tuple[str, int, float, float]
"""A face of the finished room: its name, its axis, the way out through it, and where it is (m)."""


def faces_of(room: Surfaces, has_nose: bool) -> list[Face]:
    """Return the faces of the finished room; a nose goes on where the front wall would be."""
    found: list[Face] = [
        ("front", 0, -1.0, room.front), ("rear", 0, 1.0, room.rear), ("left", 1, -1.0, room.left),
        ("right", 1, 1.0, room.right), ("floor", 2, -1.0, room.floor), ("ceiling", 2, 1.0, room.ceiling),
    ]  # fmt: skip
    return [face for face in found if isfinite(face[3]) and not (face[0] == "front" and has_nose)]


_before: dict[tuple[str, str, str], tuple[Mover, tuple[Face, ...], tuple[Closed, ...], tuple[Stopped, ...]]] = {}
"""What last stopped each mover, by its path, its name and what it is."""


def stopped(mover: Mover, faces: Iterable[Face], closed: tuple[Closed, ...]) -> tuple[Stopped, ...]:
    """Return the faces of the room that stop something; what moves as it did, in the same room, is not tried again."""
    key, faces = (mover.of, mover.name, mover.what), tuple(faces)
    had = _before.get(key)
    if had is None or had[0] != mover or had[1] != faces or had[2] != closed:
        if len(_before) > MOST_MOVERS:
            _before.clear()
        had = _before[key] = mover, faces, closed, tuple(_stopped(mover, faces, closed))
    return had[3]


def _stopped(mover: Mover, faces: tuple[Face, ...], closed: tuple[Closed, ...]) -> Iterator[Stopped]:
    """Yield the faces of the room that stop something, each by more than the play of linings, and how sure that is.

    What goes out through an opening is not stopped there. A lid or a door of which nobody wrote how far it opens may
    lean on a wall, so it is judged at a right angle.
    """
    for face in faces:
        name, axis, _, _ = face
        ways = [way for way in mover.ways if not (mover.what != "bed" and _reaches(_closed(way), face))]
        ways = [way for way in ways if not any(passes(one, way.hold, _hole(name), axis) for one in closed)]
        sure: Certainty = "sure"
        at = _first(ways, mover.starts, _beyond(face))
        if at < NEVER:  # by more than the play: it is met where the face itself is
            sure = "sure" if _is_met_anyhow(ways, mover, face) else "perhaps"
            at = min(at, _first(ways, mover.starts, _beyond(face, 0.0)))
        else:
            sure, at = "perhaps", _first(ways, mover.starts, grown(_beyond(face), mover.doubt), "most")
        if at < NEVER:
            sure = "perhaps" if mover.is_usual else sure
            yield Stopped(mover.of, mover.name, mover.what, NAMED[name], at, mover.whole, mover.turns, sure,
                          mover.is_usual)  # fmt: skip


def _hole(face: str) -> str:
    return "roof" if face == "ceiling" else face


def _is_met_anyhow(ways: Iterable[Turn | Slip], mover: Mover, face: Face) -> bool:
    """Return whether a face is met however little something opens, and as far off it as it may be."""
    name, axis, out, plane = face
    far = name, axis, out, plane + out * mover.doubt[axis]
    return isfinite(far[3]) and _first(ways, mover.starts, _beyond(far), "least") < NEVER


def _first(ways: Iterable[Turn | Slip], starts: Iterable[Block], wall: Block, far: Far = "best") -> float:
    """Return how far something gets before it meets a wall, infinite if it never does.

    How far a leaf goes at most where nobody wrote it is not asked.
    """
    if any(are_in(start, wall) for start in starts):
        return 0.0
    return min((way.meets(wall, "best" if far == "most" and _is_unwritten(way) else far) for way in ways),
               default=NEVER)  # fmt: skip


def _is_unwritten(way: Turn | Slip) -> bool:
    return isinstance(way, Turn) and way.to("least") >= way.turn


def _beyond(face: Face, play: float = LENGTHS["play"]) -> Block:
    """Return all that is behind a face, and behind the play of its lining."""
    _, axis, out, plane = face
    low, high = [-FAR, -FAR, -FAR], [FAR, FAR, FAR]
    if out > 0.0:
        low[axis] = plane + play
    else:
        high[axis] = plane - play
    return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _closed(way: Turn | Slip) -> Block:
    """Return where something is before it moves."""
    if isinstance(way, Slip):
        return way.start
    (i, way_i), (j, way_j) = way.along, way.across
    low, high = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    for axis, turn, hinge, span in ((i, way_i, way.hinge[0], way.spans[0]), (j, way_j, way.hinge[1], way.spans[1])):
        ends = (hinge + turn * span[0], hinge + turn * span[1])
        low[axis], high[axis] = min(ends), max(ends)
    low[3 - i - j], high[3 - i - j] = way.width
    return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _reaches(block: Block, face: Face) -> bool:
    """Return whether something is let into a face already, so that the face is no stop to it."""
    return -_left(block, face) > LENGTHS["play"]


def _left(block: Block, face: Face) -> float:
    _, axis, out, plane = face
    return plane - block.high[axis] if out > 0.0 else block.low[axis] - plane


# ------------------------------------------------------------------ room that is wanted


def cramped(one: Fitted, zone: Zone, body: Body, faces: Iterable[Face]) -> Iterator[Short]:
    """Yield the faces of the room nearer to a thing than the room it wants; what it stands on is no matter.

    A wall it is written to hang on, or is let into, may be meant to be there, and is asked about.
    """
    whole, off = envelope(body.blocks), body.doubt
    if zone.side == "front" and zone.lacks > TOUCH:
        certain: Certainty = "perhaps" if zone.is_either else "sure"
        left = zone.width - zone.lacks
        yield Short(one.of, one.name, "wide", "the room", left, zone.width, certain, zone.is_either)
    for face in faces:
        name, axis, out, _ = face
        if zone.side != "round" and (axis, out) != zone.face:
            continue
        left = _left(whole, face)
        if left < -whole.size[axis] or (name == "floor" and left <= LENGTHS["play"]):
            continue  # it is outside of the room, or stands on its floor
        if left - off[axis] >= zone.wanted - TOUCH:
            continue
        is_its = (one.wall == name and left <= LENGTHS["play"]) or (left < -LENGTHS["play"] and _is_narrow(whole, axis))
        is_sure = left + off[axis] < zone.least - TOUCH and not is_its
        sure: Certainty = "sure" if is_sure else "perhaps"
        yield Short(one.of, one.name, zone.side, NAMED[name], max(left, 0.0), zone.wanted, sure, zone.is_either)


def _is_narrow(whole: Block, axis: int) -> bool:
    """Return whether a thing may lie between two studs of a wall."""
    return axis < 2 and whole.size[1 - axis] <= LENGTHS["bay"]


def is_in_room(body: Body, room: Surfaces) -> bool:
    """Return whether the middle of a thing is in the bare shell, where the faces of the room are about it."""
    if not body.blocks:
        return False
    low, high = body.around
    return (
        room.studs_front <= (low[0] + high[0]) / 2.0 <= room.studs_rear
        and room.studs_left <= (low[1] + high[1]) / 2.0 <= room.studs_right
        and room.deck <= (low[2] + high[2]) / 2.0 <= room.bows
    )


def is_within(body: Body, room: Surfaces) -> bool:
    """Return whether the middle of all of a thing is inside the bare shell, where what opens outward does not come."""
    return bool(body.blocks) and all(
        room.studs_front <= (block.low[0] + block.high[0]) / 2.0 <= room.studs_rear
        and room.studs_left <= (block.low[1] + block.high[1]) / 2.0 <= room.studs_right
        and room.deck <= (block.low[2] + block.high[2]) / 2.0 <= room.bows
        for block in body.blocks
    )


OUTDOORS_IN_DOUBT: tuple[Whereabouts, ...] = ("in the wall", "past the skin")
Outdoors = tuple[Body, Whereabouts]
"""A thing as a leaf that opens outward may find it, and what of that nobody wrote; empty where nothing is in doubt."""


def seen_outdoors(
    bodies: Iterable[Body], room: Surfaces, outer: Block, recesses: Mapping[tuple[str, str], float]
) -> Iterator[Outdoors]:
    """Yield each thing a leaf that opens outward may come to; what is surely inside the shell is left out.

    What is in the depth of a wall is let into it or hung on its outer skin, nobody wrote which. What stands out past
    the outer skin from inside may be put there once the leaf is open. ``recesses`` are what is written as let in.
    """
    for body in bodies:
        if not body.blocks:
            continue
        away = [_from_studs(body.around, wall, room, outer) for wall in WALLS]
        if is_within(body, room):
            if any(far > depth + LENGTHS["play"] for _, far, depth in away):
                yield replace(body, is_scattered=True), "past the skin"
            elif not _is_surely_within(body, room):
                yield body, ""
            continue
        yield body, ""
        for wall, (near, _, depth) in zip(WALLS, away, strict=True):
            is_in_wall = -LENGTHS["play"] <= near < depth - LENGTHS["play"]
            if is_in_wall and (body.of, wall) not in recesses:
                yield _hung(body, wall, depth - near), "in the wall"


def _is_surely_within(body: Body, room: Surfaces) -> bool:
    """Return whether a thing is inside the bare shell at each end of where it may be along and across it."""
    x, y, _ = body.doubt
    ends = [(by_x, by_y, 0.0) for by_x in (-x, x) for by_y in (-y, y)]
    return all(is_within(replace(body, blocks=_moved(body, by)), room) for by in ends)


def _from_studs(around: Block, wall: str, room: Surfaces, outer: Block) -> tuple[float, float, float]:
    """Return how far outward of the studs of a wall a thing begins and ends, and how deep that wall is (m)."""
    axis, out = WALLS[wall]
    studs = ((room.studs_front, room.studs_rear), (room.studs_left, room.studs_right))[axis][out > 0.0]
    ends = sorted(out * (end - studs) for end in (around.low[axis], around.high[axis]))
    depth = out * ((outer.high if out > 0.0 else outer.low)[axis] - studs)
    return ends[0], ends[1], depth if isfinite(depth) else 0.0


def _hung(body: Body, wall: str, by: float) -> Body:
    """Return a thing as it hangs on the outer skin of a wall, which is no more than may be."""
    axis, out = WALLS[wall]
    far = [0.0, 0.0, 0.0]
    far[axis] = out * by
    return replace(body, blocks=_moved(body, (far[0], far[1], far[2])), is_scattered=True)


def _moved(body: Body, by: Vector) -> tuple[Block, ...]:
    return tuple(moved_block(block, by) for block in body.blocks)
