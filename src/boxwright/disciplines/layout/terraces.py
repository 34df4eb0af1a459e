"""What is in the way on foot, over a bed, before a window: the room seen from above, cut into terraces.

On the floor only what lies between knee and head counts; over the mattress, before a window and on what is climbed
on, only what stands above that. Each of these is a terrace with its own outline and its own levels.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import isfinite
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import Rect, less, within
from boxwright.model.place import Place, Surfaces
from boxwright.records import dataclass

UPRIGHT = {"left": 1, "right": 1, "front": 0, "rear": 0}
"""The axis that each upright wall stands across."""
SPOT = 1e-3
"""Half the side (m) of the spot under a hole in the roof that is to be reached."""
OUTSIDE = 3.0
"""How thick (m) the walls are taken, so that nobody walks round them."""


@dataclass(frozen=True, slots=True)
class Bed:
    """A sleeping place: where it is at night, how thick its mattress is, and who sleeps there.

    ``lies_on`` is the length and width of the mattress, None where nobody wrote it. ``count`` is how many of it there
    are, such as two cots.
    """

    of: str
    name: str
    place: Place
    mattress: float
    sleepers: tuple[str, ...]
    lies_on: tuple[float, float] | None = None
    count: int = 1

    @property
    def top(self) -> float:
        """Return how high one lies (m over the deck)."""
        return self.place.z.best + self.place.size[2] / 2.0 + self.mattress


class Terrace(NamedTuple):
    """A stretch of the room with one level to be on: only what is between ``low`` and ``high`` is in the way there."""

    rect: Rect
    low: float
    high: float


class Scene(NamedTuple):
    """What is in the way, thing by thing, on the way from one bed to one opening; ``walls`` are always there."""

    things: tuple[tuple[str, Rect], ...]
    walls: tuple[Rect, ...]
    start: Rect
    goal: Rect
    most: float

    def without(self, gone: Iterable[str]) -> list[Rect]:
        """Return what is in the way when some things are taken away."""
        taken = set(gone)
        return [*self.walls, *(rect for of, rect in self.things if of not in taken)]


def sides_of(one: Closed) -> tuple[float, float]:
    """Return how wide an opening is and how high; of one in the roof its two sides."""
    length, width, height = one.place.size
    if one.wall in UPRIGHT:
        return (length, width)[1 - UPRIGHT[one.wall]], height
    return length, width


def is_placed(place: Place) -> bool:
    """Return whether a place is known, if only roughly, and the size of what is there."""
    bands = (place.x, place.y, place.z)
    return all(band.known and isfinite(band.best) for band in bands) and all(isfinite(side) for side in place.size)


def outline_of(block: Block) -> Rect:
    """Return a box as it is seen from above."""
    return block.low[0], block.low[1], block.high[0], block.high[1]


def scene_of(
    bodies: tuple[Body, ...], first: Bed | Closed, opening: Closed, room: Surfaces, climbs: bool, head: float
) -> Scene:
    """Return what is in the way from a bed, or from another opening, to one for somebody ``head`` high on the floor."""
    walls, goal = _walls(opening, room)
    inside = (room.front, room.left, room.rear, room.right)
    if isinstance(first, Bed):
        terraces = _terraces(bodies, first, bed_rect_of(first), opening, room, climbs, head)
        start = within(bed_rect_of(first), inside) or bed_rect_of(first)
    else:  # somebody who comes in is outside to begin with, so both walls are open
        terraces, (_, start) = (), _walls(first, room)
        walls = tuple(piece for wall in walls for piece in less(wall, _gap(first, room)))
    floor = Terrace(inside, room.floor + ROOM["step over"], min(room.floor + head, room.ceiling))
    things: list[tuple[str, Rect]] = []
    lowest = min(one.low for one in (*terraces, floor))
    highest = max(one.high for one in (*terraces, floor))
    for one in bodies:
        for block in one.blocks:
            if block.low[2] < highest and block.high[2] > lowest:
                things += [(one.of, rect) for rect in _in_the_plan(block, terraces, floor)]
    most = min(sides_of(opening)) if opening.wall == "roof" else sides_of(opening)[0]
    return Scene(tuple(things), walls, start, goal, most)


def bed_rect_of(bed: Bed) -> Rect:
    """Return a bed as it is seen from above."""
    x, y = bed.place.x.best, bed.place.y.best
    half_x, half_y = bed.place.size[0] / 2.0, bed.place.size[1] / 2.0
    return x - half_x, y - half_y, x + half_x, y + half_y


def _in_the_plan(block: Block, terraces: Sequence[Terrace], floor: Terrace) -> list[Rect]:
    """Return where a box is in the way: on each terrace by that terrace's levels, elsewhere by those of the floor."""
    found: list[Rect] = []
    left = [outline_of(block)]
    for terrace in terraces:
        if block.low[2] < terrace.high and block.high[2] > terrace.low:
            found += [part for piece in left if (part := within(piece, terrace.rect)) is not None]
        left = [piece for one in left for piece in less(one, terrace.rect)]
    if block.low[2] < floor.high and block.high[2] > floor.low:
        found += [part for piece in left if (part := within(piece, floor.rect)) is not None]
    return found


def _terraces(
    bodies: tuple[Body, ...], bed: Bed, bed_rect: Rect, opening: Closed, room: Surfaces, climbs: bool, head: float
) -> tuple[Terrace, ...]:
    """Return the levels above the floor: before the opening, on the bed, on what is climbed on; the first one wins.

    Who walks out by a high door stoops under what hangs before the top of it; by a window one crawls under it. What is
    climbed on right before a hole that begins lower is left by as from a bed there.
    """
    found = [Terrace(bed_rect, bed.top, bed.top + ROOM["crawl"])]
    steps = climbed_on(bodies, room) if climbs else ()
    found += [Terrace(rect, top, top + ROOM["stoop"] - ROOM["climb"]) for rect, top in steps]
    front = forecourt(opening, room, ROOM["reach over"] if climbs else ROOM["lean"])
    if front is None:
        return tuple(found)
    sill, high = levels_of(opening)
    low = max(sill, room.floor + ROOM["step over"])
    on_bed = within(front, bed_rect)
    at_bed = [] if on_bed is None else [Terrace(on_bed, max(low, bed.top), used_of(max(low, bed.top), high, head))]
    at_steps = [
        Terrace(part, top, used_of(top, high, head))
        for rect, top in steps
        if top > low and (part := within(front, rect)) is not None
    ]
    top = high if climbs else used_of(max(sill, room.floor), high, head)
    return (*at_bed, *at_steps, Terrace(front, low, top), *found)


def used_of(low: float, high: float, head: float) -> float:
    """Return up to where whoever leaves uses a hole: ``head`` high on foot, where nobody stoops as low crawling."""
    return min(high, low + (head if high - low >= ROOM["stoop"] else ROOM["crawl"]))


def climbed_on(bodies: Iterable[Body], room: Surfaces) -> list[tuple[Rect, float]]:
    """Return what can be climbed on, seen from above, and how high each is (m over the deck), the highest first."""
    found = [(outline_of(block), block.high[2]) for one in bodies if _is_climbed(one, room) for block in one.blocks]
    return sorted(found, key=lambda one: (-one[1], one[0]))


def _is_climbed(one: Body, room: Surfaces) -> bool:
    """Return whether one can climb on a thing: it is built in, stands for sure, is low enough, and does not get hot."""
    tops = [block.high[2] - room.floor for block in one.blocks]
    is_low = bool(tops) and ROOM["step over"] < max(tops) <= ROOM["climb"]
    is_built_in = one.kind != "cargo" and one.stands == "yes" and one.known and not one.carried_by
    return is_low and is_built_in and not one.is_hot


def levels_of(opening: Closed) -> tuple[float, float]:
    """Return the sill and the top of an opening of a wall (m over the deck)."""
    z, half = opening.place.z.best, opening.place.size[2] / 2.0
    return z - half, z + half


def span_of(opening: Closed) -> tuple[float, float]:
    """Return where an opening of an upright wall begins and ends along that wall."""
    axis = 1 - UPRIGHT[opening.wall]
    middle, half = (opening.place.x, opening.place.y)[axis].best, opening.place.size[axis] / 2.0
    return middle - half, middle + half


def forecourt(opening: Closed, room: Surfaces, deep: float) -> Rect | None:
    """Return the stretch of the room right before an opening of a wall; None for one in the roof."""
    if opening.wall not in UPRIGHT:
        return None
    low, high = span_of(opening)
    return {
        "left": (low, room.left, high, room.left + deep),
        "right": (low, room.right - deep, high, room.right),
        "front": (room.front, low, room.front + deep, high),
        "rear": (room.rear - deep, low, room.rear, high),
    }[opening.wall]


def _sides(room: Surfaces) -> dict[str, Rect]:
    """Return the walls around the room, thick enough that nobody walks round them."""
    far = OUTSIDE
    return {
        "left": (room.front - far, room.left - far, room.rear + far, room.left),
        "right": (room.front - far, room.right, room.rear + far, room.right + far),
        "front": (room.front - far, room.left - far, room.front, room.right + far),
        "rear": (room.rear, room.left - far, room.rear + far, room.right + far),
    }


def _gap(opening: Closed, room: Surfaces) -> Rect:
    """Return what an opening leaves free of its wall; of one in the roof nothing."""
    if opening.wall not in UPRIGHT:
        return (0.0, 0.0, 0.0, 0.0)
    low, high = span_of(opening)
    x0, y0, x1, y1 = _sides(room)[opening.wall]
    return (low, y0, high, y1) if UPRIGHT[opening.wall] == 1 else (x0, low, x1, high)


def _walls(opening: Closed, room: Surfaces) -> tuple[tuple[Rect, ...], Rect]:
    """Return the walls around the room with the one gap that leads out, and the place in it to be reached."""
    sides = _sides(room)
    if opening.wall not in UPRIGHT:
        x, y = opening.place.x.best, opening.place.y.best
        return tuple(sides.values()), (x - SPOT, y - SPOT, x + SPOT, y + SPOT)
    x0, y0, x1, y1 = _gap(opening, room)
    if UPRIGHT[opening.wall] == 1:
        y0, y1 = y0 + (y1 - y0) / 4.0, y1 - (y1 - y0) / 4.0
    else:
        x0, x1 = x0 + (x1 - x0) / 4.0, x1 - (x1 - x0) / 4.0
    gap = _gap(opening, room)
    return tuple(piece for wall in sides.values() for piece in less(wall, gap)), (x0, y0, x1, y1)
