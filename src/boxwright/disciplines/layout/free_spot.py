"""Where somebody stands who lies in no bed: a free square of floor, to begin a way out on."""

from __future__ import annotations

from collections.abc import Iterable
from math import isfinite

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.terraces import Bed
from boxwright.exchange import FLOOR
from boxwright.model.place import Place, Surfaces
from boxwright.units import exactly

GRID = 0.1
"""How closely (m) a free spot to stand on is looked for."""
MOST_SPOTS = 4_000
"""So many spots are looked at, at most; a room with a slip in its length is no reason to look for ever."""


def free_spot(bodies: Iterable[Body], room: Surfaces) -> Bed | None:
    """Return a free square of floor as near to the middle of the room as there is; None where all of it is taken."""
    faces = (room.front, room.rear, room.left, room.right, room.floor)
    if not all(isfinite(one) for one in faces):
        return None
    side, under, top = ROOM["pass"], room.floor + ROOM["step over"], room.floor + ROOM["stoop"]
    solid = [b for one in bodies for b in one.blocks if b.low[2] < top and b.high[2] > under]
    middle = ((room.front + room.rear) / 2.0, (room.left + room.right) / 2.0)
    half = side / 2.0
    for i, j in _steps(room.rear - room.front - side, room.right - room.left - side):
        x, y = middle[0] + i * GRID, middle[1] + j * GRID
        if not any(
            b.low[0] < x + half and b.high[0] > x - half and b.low[1] < y + half and b.high[1] > y - half for b in solid
        ):
            place = Place(exactly(x), exactly(y), exactly(room.floor), (side, side, 0.0))
            return Bed(FLOOR, "the floor", place, 0.0, ())
    return None


def _steps(length: float, width: float) -> list[tuple[int, int]]:
    """Return how many steps along and across each spot lies from the middle, the nearest first."""
    along, across = (int(free / 2.0 / GRID) if free > 0.0 else -1 for free in (length, width))
    if (2 * along + 1) * (2 * across + 1) > MOST_SPOTS:
        return [(0, 0)]
    spots = sorted((abs(i) + abs(j), i, j) for i in range(-along, along + 1) for j in range(-across, across + 1))
    return [(i, j) for _, i, j in spots]
