"""Room that is to be kept clear: round a thing, over it, and before its face where one stands to work on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import product
from math import inf, isfinite
from typing import Literal

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.meeting import TOUCH, are_in, gap, grown, kin_of
from boxwright.disciplines.layout.parts import Closed, Fitted, KeepClear
from boxwright.disciplines.layout.result import Beside
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import WALLS, Facing, ways_it_faces
from boxwright.model.place import Surfaces
from boxwright.records import dataclass
from boxwright.units import Band, exactly

Side = Literal["round", "front", "above"]


Found = tuple[Block, list[tuple[Body, float, bool]]]
"""A room where it is laid, and what stands in it: how much is left to it (m), and whether that is sure."""


@dataclass(frozen=True, slots=True)
class Zone:
    """Room a thing wants: the boxes it must be found in, any one of which will do, and how much it is (m).

    ``wanted`` is how much at most, ``least`` how much at least, and ``surely`` the box of each choice that is wanted
    whatever the doubt. ``face`` is the axis and the way in which it is measured from the thing. ``width`` is how wide
    it is to be, ``lacks`` how much of that the room has not. ``is_either`` says that nobody knows whether the face
    looks that way.
    """

    side: Side
    choices: tuple[Block, ...]
    surely: tuple[Block, ...]
    wanted: float
    least: float
    face: tuple[int, float] = (2, 1.0)
    width: float = 0.0
    lacks: float = 0.0
    is_either: bool = False


def zones_of(one: Fitted, body: Body, bodies: Iterable[Body], room: Surfaces) -> Iterator[Zone]:
    """Yield the room a thing wants, where it is written; what is written as unknown wants none that can be shown."""
    clear = one.facet.keep_clear if one.facet is not None else None
    if clear is None or not body.blocks:
        return
    whole = envelope(body.blocks)
    if _given(clear.all_round):
        by, least = _metres(clear.all_round), _least(clear.all_round)
        yield Zone("round", (grown(whole, (by, by, by)),), (grown(whole, (least, least, least)),), by, least)
    if _given(clear.above):
        by, least = _metres(clear.above), _least(clear.above)
        yield Zone("above", (_over(whole, by),), (_over(whole, least),), by, least)
    if _given(clear.front):
        yield from _before_each(one, whole, clear, bodies, room)


def unsaid_zones(one: Fitted, body: Body, bodies: Iterable[Body], room: Surfaces) -> Iterator[Zone]:
    """Yield the room within which a thing is asked about that wants some, where nobody wrote how much on that side."""
    clear = one.facet.keep_clear if one.facet is not None else None
    if not one.hazard or not body.blocks or (clear is not None and clear.all_round is not None):
        return
    whole, by = envelope(body.blocks), LENGTHS["beside what is hot"]
    if one.hazard == "panel":
        if clear is None or clear.front is None:
            yield from _before_each(one, whole, KeepClear(front=exactly(LENGTHS["before a panel"])), bodies, room)
        return
    for around in _unwritten_sides(one, whole, clear, room):
        yield Zone("round", (around,), (around,), by, by)
    if one.hazard == "flame" and (clear is None or clear.above is None):
        over = _over(whole, LENGTHS["over a flame"])
        yield Zone("above", (over,), (over,), LENGTHS["over a flame"], LENGTHS["over a flame"])


def _unwritten_sides(one: Fitted, whole: Block, clear: KeepClear | None, room: Surfaces) -> Iterator[Block]:
    """Yield the room beside a hot thing, round all of it or, where some sides are written, on each other one.

    On the side that is written each reaches as far as is written there, so that what stands aslant of that is in it.
    """
    by = LENGTHS["beside what is hot"]
    faces = ways_it_faces(one.wall, whole, room)
    written = dict[Facing, float]()
    if clear is not None and clear.above is not None:
        written[2, 1.0] = _metres(clear.above) if clear.above.known else by
    if clear is not None and clear.front is not None and len(faces) == 1:
        written[faces[0]] = _metres(clear.front) if clear.front.known else by
    low, high = ([end + way * min(written.get((axis, way), by), by) for axis, end in enumerate(corner)]
                 for corner, way in zip(whole, (-1.0, 1.0), strict=True))  # fmt: skip
    around = Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    if not written:
        yield around
        return
    for axis, way in product(range(3), (-1.0, 1.0)):
        if (axis, way) not in written:
            ends = list(around.low), list(around.high)
            ends[way < 0.0][axis] = (whole.high if way > 0.0 else whole.low)[axis]
            (x, y, z), (far_x, far_y, far_z) = ends
            yield Block((x, y, z), (far_x, far_y, far_z))


def is_open(clear: KeepClear) -> bool:
    """Return whether a room is asked for that nobody knows the size of."""
    wanted = (clear.all_round, clear.front, clear.width, clear.above)
    return any(one is not None and not one.known for one in wanted) or (clear.width is not None and clear.front is None)


def _given(band: Band | None) -> bool:
    return band is not None and band.known


def _metres(band: Band | None) -> float:
    return max(band.best, band.high) if band is not None else 0.0


def _least(band: Band | None) -> float:
    return min(band.best, band.low) if band is not None else 0.0


def _over(whole: Block, by: float) -> Block:
    low, high = whole
    return Block((low[0], low[1], high[2]), (high[0], high[1], high[2] + by))


def _before_each(one: Fitted, whole: Block, clear: KeepClear, bodies: Iterable[Body], room: Surfaces) -> Iterator[Zone]:
    """Yield the room before the face of a thing; where it may look more than one way, each of them, none for sure."""
    faces = ways_it_faces(one.wall, whole, room)
    for face in faces:
        zone = _before(whole, face, clear, bodies, room)
        yield zone if len(faces) == 1 else replace(zone, least=0.0, is_either=True)


def _before(whole: Block, face: Facing, clear: KeepClear, bodies: Iterable[Body], room: Surfaces) -> Zone:
    """Return the room before the face of a thing: it may lie off its middle, as long as it is before all of the face.

    It reaches from the floor to the height one works at.
    """
    axis, out = face
    level, deep = 1 - axis, _metres(clear.front)
    near = whole.high[axis] if out > 0.0 else whole.low[axis]
    low, high = whole.low[level], whole.high[level]
    wide = max(_metres(clear.width), high - low) if _given(clear.width) else high - low
    narrow = max(_least(clear.width), high - low) if _given(clear.width) else high - low
    bottom = min(room.floor, whole.low[2])
    top = max(min(room.ceiling, room.floor + LENGTHS["working height"]), whole.high[2])

    def placed(start: float, end: float, depth: float) -> Block:
        far = near + out * depth
        ends = {axis: (min(near, far), max(near, far)), level: (start, end), 2: (bottom, top)}
        return Block((ends[0][0], ends[1][0], ends[2][0]), (ends[0][1], ends[1][1], ends[2][1]))

    sides = ((room.front, room.rear), (room.left, room.right))[level]
    edges = [edge for body in bodies for block in body.blocks for edge in (block.high[level], block.low[level] - wide)]
    edges += [sides[0], sides[1] - wide]
    middle, first, last = (low + high - wide) / 2.0, high - wide, low
    starts = [middle, first, last, *(one for one in edges if first <= one <= last)]
    inside = [one for one in starts if sides[0] - TOUCH <= one and one + wide <= sides[1] + TOUCH]
    is_let_in = low < sides[0] - TOUCH or sides[1] + TOUCH < high
    lacks = 0.0 if inside or is_let_in or not all(isfinite(one) for one in sides) else wide - (sides[1] - sides[0])
    starts = list(dict.fromkeys(inside or starts))
    choices = tuple(placed(start, start + wide, deep) for start in starts)
    # how much less it may be is not known to be on either side, so that only what is before the face is sure
    ends = [(start, start + wide) if narrow >= wide else (low, high) for start in starts]
    surely = tuple(placed(start, end, _least(clear.front)) for start, end in ends)
    return Zone("front", choices, surely, deep, _least(clear.front), (axis, out), wide, lacks)


def intruders(zone: Zone, own: Body, bodies: Iterable[Body], skipped: frozenset[str]) -> Found:
    """Return the room where it is laid so that least stands in it, and what does: what is left to it, and how sure."""
    every = envelope(zone.choices)
    around = grown(every, own.doubt)
    others = [body for body in bodies if body.of not in skipped and _is_near(body, around)]
    found = [(choice, _in(zone, number, own, others)) for number, choice in enumerate(zone.choices)]
    return min(found, key=lambda one: (sum(sure for *_, sure in one[1]), len(one[1])))


def _is_near(body: Body, room: Block) -> bool:
    if not body.blocks or not are_in(room, grown(body.around, body.doubt)):
        return False
    return len(body.blocks) == 1 or any(are_in(room, grown(block, body.doubt)) for block in body.blocks)


def _in(zone: Zone, number: int, own: Body, others: list[Body]) -> list[tuple[Body, float, bool]]:
    choice, surely = zone.choices[number], zone.surely[number]
    found: list[tuple[Body, float, bool]] = []
    for body in others:
        left = _left(zone, choice, own, body.blocks)
        off = tuple(mine + theirs for mine, theirs in zip(own.doubt, body.doubt, strict=True))
        worst = _left(zone, choice, own, [grown(block, (off[0], off[1], off[2])) for block in body.blocks])
        if worst >= zone.wanted - TOUCH:
            continue
        is_in = left < zone.least - TOUCH and any(are_in(surely, block) for block in body.blocks)
        found.append((body, min(left, zone.wanted), is_in and body.is_sure))
    return found


def _left(zone: Zone, choice: Block, own: Body, blocks: Iterable[Block]) -> float:
    """Return what is left to a thing of the room that is wanted (m), infinite where it is not in it.

    On every side that is the gap between the two; before and over a thing it is how far from the face it begins.
    """
    if zone.side == "round":
        return gap(own.blocks, blocks)
    (axis, out), (low, high) = zone.face, envelope(own.blocks)
    inside = [block for block in blocks if are_in(choice, block)]
    ahead = [block.low[axis] - high[axis] if out > 0.0 else low[axis] - block.high[axis] for block in inside]
    return max(min(ahead, default=inf), 0.0)


def beside(
    fitted: Iterable[Fitted],
    standing: dict[str, Body],
    every: tuple[Body, ...],
    lines: dict[str, frozenset[str]],
    room: Surfaces,
    beds: frozenset[str],
) -> Iterator[Beside]:
    """Yield what stands nearest to each thing whose room nobody wrote; of a bed safety asks."""
    named = {one.of for one in fitted} - beds
    for one in fitted:
        own = standing[one.of]
        found = [
            (left, zone.wanted, body)
            for zone in unsaid_zones(one, own, every, room)
            for body, left, _ in intruders(zone, own, every, kin_of(one.of, lines))[1]
            if body.of in named
        ]
        if found:
            gap, within, body = min(found, key=lambda each: each[0])
            yield Beside(one.of, one.name, one.hazard, body.of, body.name, gap, within)


def passages(closed: Iterable[Closed], room: Surfaces) -> Iterator[Block]:
    """Yield the room before each opening one goes out by: nothing is pushed there to clear something else."""
    deep = LENGTHS["passage"]
    for one in closed:
        wall, place, size = WALLS.get(one.wall), one.place, one.place.size
        if wall is None or one.facet is None or (one.facet.swing is None and one.facet.slides is None):
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
