"""Heavy cargo on its way in from the rear: rolled along the trailer, then to the side, past all that is built in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.meeting import TOUCH, are_in, overlaps
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.result import Blocked
from boxwright.model.place import Surfaces


def blocked_ways(
    bodies: Sequence[Body],
    roots: Mapping[str, str],
    heavy: frozenset[str],
    closed: Iterable[Closed],
    room: Surfaces,
) -> Iterable[Blocked]:
    """Yield heavy cargo on the floor that cannot be rolled in: along the trailer from a rear opening, then sideways.

    An opening with a sill higher than a step is no such opening; one it does not go through upright is too small. Other
    cargo is loaded before or after it and is in nobody's way. Both legs are boxes, so the way is exact; what takes more
    turns than one is not looked for.
    """
    doors = [one for one in closed if one.wall == "rear" and one.place.size[1] > 0.0 and _is_at_the_floor(one, room)]
    fixed = [body for body in bodies if body.kind != "cargo" and body.blocks]
    for body in bodies:
        on_floor = body.kind == "cargo" and roots.get(body.of) == body.of and body.blocks and body.known
        if not on_floor or not doors or body.of not in heavy:
            continue
        own = envelope(body.blocks)
        if own.low[2] > room.floor + TOUCH or own.high[0] > room.rear:
            continue
        short, hole = min((_short(own, door), door.of) for door in doors)
        if short > TOUCH:
            is_sure = min(_short(own, door, -1.0) for door in doors) > TOUCH
            yield Blocked(body.of, body.name, (), (), hole, short, is_sure)
            continue
        mine = [other for other in fixed if roots.get(other.of) != body.of]
        tried: list[tuple[Body, ...]] = []
        for lane in _lanes(own, doors, mine):
            tried.append(_in_way(own, lane, mine, room))
            if not tried[-1]:
                break
        if tried and tried[-1]:
            least = min(tried, key=lambda one: (len(one), [other.of for other in one]))
            yield Blocked(body.of, body.name, tuple(one.of for one in least), tuple(one.name for one in least))


def _is_at_the_floor(door: Closed, room: Surfaces) -> bool:
    """Return whether an opening begins so low that something is rolled in over its sill."""
    return door.place.z.known and door.place.low_edge(2).best <= room.floor + ROOM["step over"]


def _short(own: Block, door: Closed, doubt: float = 1.0) -> float:
    """Return how much too narrow or too low an opening is for a thing as it stands (m); below zero it goes through.

    It is as small as it may be, or with ``doubt`` of -1 as large.
    """
    top = door.place.z.best + door.place.size[2] / 2.0
    lower = door.off[2] + max(door.place.z.best - door.place.z.low, 0.0)
    return max(own.size[1] - door.place.size[1] + doubt * door.off[1], own.high[2] - top + doubt * lower)


def _lanes(own: Block, doors: Iterable[Closed], fixed: Iterable[Body]) -> list[float]:
    """Return how far to the side of its place a thing comes in: straight, or just past an edge, within an opening."""
    wide = own.size[1]
    found = []
    for door in doors:
        low, high = door.place.y.best - door.place.size[1] / 2.0, door.place.y.best + door.place.size[1] / 2.0
        if _short(own, door) > TOUCH:
            continue
        edges = [edge for body in fixed for one in body.blocks for edge in (one.high[1], one.low[1] - wide)]
        found += [
            at - own.low[1] for at in (own.low[1], low, high - wide, *edges) if low - TOUCH <= at <= high - wide + TOUCH
        ]
    return list(dict.fromkeys(found))


def _in_way(own: Block, aside: float, fixed: Iterable[Body], room: Surfaces) -> tuple[Body, ...]:
    low, high = own
    along = Block((low[0], low[1] + aside, low[2]), (max(high[0], room.rear), high[1] + aside, high[2]))
    sideways = Block((low[0], low[1] + min(aside, 0.0), low[2]), (high[0], high[1] + max(aside, 0.0), high[2]))
    at_rest = Block(low, high)
    return tuple(
        body
        for body in fixed
        if any(are_in(leg, block) for leg in (along, sideways) for block in body.blocks)
        and not any(min(overlaps(at_rest, block)) > TOUCH for block in body.blocks)
    )
