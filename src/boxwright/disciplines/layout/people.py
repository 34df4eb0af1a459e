"""Whether the rig's own people fit: lying, sitting up in bed, standing, side by side, and stepping in.

Nobody was measured: what a body needs is taken as a share of the height that is written, so it only ever advises.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import pairwise
from math import inf, isfinite
from typing import Literal, NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.body_sizes import ROOM, SHARE
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import Rect, reach, widest, within
from boxwright.disciplines.layout.terraces import (
    OUTSIDE,
    UPRIGHT,
    Bed,
    bed_rect_of,
    is_placed,
    levels_of,
    outline_of,
    span_of,
)
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.records import dataclass
from boxwright.units import Band, exactly

What = Literal["lie", "sit", "stand", "shoulders", "step", "roof", "aisle", "reach", "seat", "lit"]
UNKNOWN = Band(0.0, 0.0, inf, known=False)


@dataclass(frozen=True, slots=True)
class Fit:
    """What one of the people has, and what such a body wants (m); of a step what there is, and what it may be.

    ``of`` is the path of the person or, where it is about several or about anybody, of the bed or the opening ``at``.
    ``under`` is the path of what hangs lowest over the head, empty for the ceiling; of a step what one steps on; of the
    roof, where two sit side by side, what one gets up by; of an aisle what makes it narrow; of a light the bed.
    """

    of: str
    name: str
    what: What
    at: str
    at_name: str
    has: Band
    wants: Band
    under: str = ""


class Over(NamedTuple):
    """The greatest height that is free over a level, and what ends it: a path, empty for the ceiling."""

    height: float
    under: str


def fits_of(
    bodies: tuple[Body, ...],
    beds: tuple[Bed, ...],
    openings: tuple[Closed, ...],
    people: tuple[tuple[str, Person], ...],
    room: Surfaces,
    deck: Band | None,
    floor: float | None = None,
) -> tuple[Fit, ...]:
    """Return how everybody fits, with things as ``bodies`` say and the deck ``deck`` over the ground.

    ``floor`` is how high one steps up to by now, the finished floor where it is not said.
    """
    heights = {name: _height(person) for name, person in people}
    found: list[Fit] = []
    for bed in beds:
        found += _in_bed(bodies, bed, heights, room)
    found += _standing(bodies, heights, room)
    found += _steps(bodies, openings, room, deck, room.floor if floor is None else floor)
    found += _on_the_roof(bodies, openings, room)
    return tuple(found)


def needs(what: Literal["lie", "sit", "stand"], height: Band) -> Band:
    """Return the room a grown person of some height wants (m); not known where the height is not."""
    if not height.known:
        return UNKNOWN
    share, more = {
        "lie": (1.0, ROOM["feet"]),
        "sit": (SHARE["sitting"], ROOM["over the head"]),
        "stand": (1.0, ROOM["over the head"]),
    }[what]
    best, low, high = (share * one + more for one in (height.best, height.low, height.high))
    return Band(best, low, high, spread=height.spread)


def free_over(bodies: Iterable[Body], rect: Rect, level: float, side: float, ceiling: float) -> Over:
    """Return the greatest height over a level at which a square of some side finds room somewhere on a rectangle."""
    boxes = [
        (outline_of(block), block, one.of)
        for one in bodies
        for block in one.blocks
        if block.high[2] > level and within(outline_of(block), rect) is not None
    ]
    heights = sorted({max(block.low[2] - level, 0.0) for _, block, _ in boxes if block.low[2] < ceiling})
    around = walled(rect)
    for height in (ceiling - level, *reversed(heights)):
        closed = [outline for outline, block, _ in boxes if block.low[2] - level < height]
        if height > 0.0 and reach([*around, *closed], rect, (rect,), side)[0]:
            under = next((of for _, block, of in boxes if max(block.low[2] - level, 0.0) == height), "")
            return Over(height, under)
    return Over(0.0, "")


def walled(rect: Rect) -> tuple[Rect, ...]:
    """Return four walls round a rectangle, so thick that nobody gets round them."""
    x0, y0, x1, y1 = rect
    far = OUTSIDE
    return (
        (x0 - far, y0 - far, x0, y1 + far),
        (x1, y0 - far, x1 + far, y1 + far),
        (x0, y0 - far, x1, y0),
        (x0, y1, x1, y1 + far),
    )


def share_of(height: Band, share: float) -> Band:
    """Return a measure of a body that is a share of its height."""
    return Band(height.best * share, height.low * share, height.high * share, spread=height.spread)


def _height(person: Person) -> Band:
    return person.height if person.height is not None else UNKNOWN


def _in_bed(bodies: tuple[Body, ...], bed: Bed, heights: dict[str, Band], room: Surfaces) -> Iterator[Fit]:
    """Yield how the sleepers of a bed lie, how wide each lies, and how they sit up."""
    if not is_placed(bed.place) or not bed.sleepers:
        return
    long, wide = _sides_of(bed)
    over = None
    if isfinite(room.ceiling):
        others = [one for one in bodies if one.of != bed.of and one.carried_by != bed.of]
        over = free_over(others, bed_rect_of(bed), bed.top, ROOM["sit square"], room.ceiling)
    for name in bed.sleepers:
        of, height = f"people[{name}]", heights[name]
        yield Fit(of, name, "lie", bed.of, bed.name, long, needs("lie", height))
        if over is not None:
            doubt = bed.place.z.high - bed.place.z.best, bed.place.z.best - bed.place.z.low
            has = Band(over.height, over.height - doubt[0], over.height + doubt[1], spread=bed.place.z.spread)
            yield Fit(of, name, "sit", bed.of, bed.name, has, needs("sit", height), over.under)
    has = share_of(wide, min(bed.count / len(bed.sleepers), 1.0))
    if len(bed.sleepers) == 1:
        of, name = f"people[{bed.sleepers[0]}]", bed.sleepers[0]
        yield Fit(of, name, "shoulders", bed.of, bed.name, has, exactly(ROOM["shoulders"]))
    else:
        yield Fit(bed.of, bed.name, "shoulders", bed.of, bed.name, has, exactly(ROOM["shoulders"]))


def _sides_of(bed: Bed) -> tuple[Band, Band]:
    """Return how long and how wide one lies on a bed, each with its doubt: on its mattress, where that is written."""
    if bed.lies_on is not None:
        return exactly(max(bed.lies_on)), exactly(min(bed.lies_on))
    sides = sorted(zip(bed.place.size[:2], bed.place.off[:2], strict=True))
    wide, long = (Band(side, side - off, side + off, spread="interval" if off else "exact") for side, off in sides)
    return long, wide


def _standing(bodies: tuple[Body, ...], heights: dict[str, Band], room: Surfaces) -> Iterator[Fit]:
    """Yield how everybody stands at the best place of the room."""
    faces = (room.front, room.left, room.rear, room.right)
    if not all(isfinite(face) for face in (*faces, room.floor, room.ceiling)):
        return
    over = free_over(bodies, faces, room.floor, ROOM["stand square"], room.ceiling)
    for name, height in heights.items():
        has = exactly(over.height)
        yield Fit(f"people[{name}]", name, "stand", "trailer.body", "the room", has, needs("stand", height), over.under)


def _steps(
    bodies: tuple[Body, ...], openings: tuple[Closed, ...], room: Surfaces, deck: Band | None, floor: float
) -> Iterator[Fit]:
    """Yield the greatest rise of each way in: from the ground, over what stands before the sill, to the floor."""
    for one in openings:
        if not _is_walked_into(one, room):
            continue
        if deck is None or not deck.known:
            yield Fit(one.of, one.name, "step", one.of, one.name, UNKNOWN, exactly(ROOM["step up"]))
            continue
        sill = max(levels_of(one)[0], floor)
        treads = {block.high[2]: body.of for body in bodies for block in body.blocks if _is_before(block, one)}
        levels = [-deck.best, *sorted(level for level in treads if -deck.best < level < sill), sill]
        rises = [high - low for low, high in pairwise(levels)]
        best = max(rises)
        # only the lowest rise knows the ground, so only that one is in doubt
        low, high = (max(rises[0] + by, *rises[1:], 0.0) for by in (deck.low - deck.best, deck.high - deck.best))
        on = treads.get(levels[1], "") if len(levels) > 2 else ""
        has = Band(best, low, high, spread=deck.spread)
        yield Fit(one.of, one.name, "step", one.of, one.name, has, exactly(ROOM["step up"]), on)


def _on_the_roof(bodies: tuple[Body, ...], openings: tuple[Closed, ...], room: Surfaces) -> Iterator[Fit]:
    """Yield the width that each of two has side by side on the roof, and what leads up; not whether it carries them.

    Each sits on a square: two of them make a place twice as long as wide, along or across.
    """
    roof = (room.studs_front, room.studs_left, room.studs_rear, room.studs_right)
    if not all(isfinite(face) for face in (*roof, room.bows)):
        return
    taken = [outline_of(block) for one in bodies for block in one.blocks if block.high[2] > room.bows]
    taken += [outline_of_hole(one) for one in openings if one.wall == "roof" and is_placed(one.place)]
    walls = (*walled(roof), *taken)
    side = max(_widest_pair(walls, roof, axis) for axis in (0, 1))
    up = next((one.of for one in bodies if _leads_up(one, room)), "")
    if not up:
        hatches = (one for one in openings if one.wall == "roof" and is_placed(one.place))
        up = next((one.of for one in hatches if min(one.place.size[:2]) >= ROOM["pass"]), "")
    yield Fit("trailer.body", "two", "roof", "trailer.body", "the roof", exactly(side), exactly(ROOM["shoulders"]), up)


@lru_cache(maxsize=64)
def _widest_pair(walls: tuple[Rect, ...], roof: Rect, axis: int) -> float:
    """Return the side of the largest square of which two fit in a row along an axis: one square, all else halved."""
    halved = [_halved(one, axis) for one in walls]
    whole = _halved(roof, axis)
    most = min(whole[2] - whole[0], whole[3] - whole[1])
    return widest(halved, whole, (whole,), most)[0]


def _halved(rect: Rect, axis: int) -> Rect:
    x0, y0, x1, y1 = rect
    return (x0 / 2.0, y0, x1 / 2.0, y1) if axis == 0 else (x0, y0 / 2.0, x1, y1 / 2.0)


def outline_of_hole(one: Closed) -> Rect:
    """Return the hole of an opening as it is seen from above."""
    x, y = one.place.x.best, one.place.y.best
    half_x, half_y = one.place.size[0] / 2.0, one.place.size[1] / 2.0
    return x - half_x, y - half_y, x + half_x, y + half_y


def _leads_up(one: Body, room: Surfaces) -> bool:
    """Return whether one can climb to the roof by a thing: it stands outside, from knee height to the top."""
    for block in one.blocks:
        is_outside = (
            block.low[0] < room.studs_front
            or block.high[0] > room.studs_rear
            or block.low[1] < room.studs_left
            or block.high[1] > room.studs_right
        )
        if is_outside and block.low[2] <= ROOM["step up"] and block.high[2] >= room.bows - ROOM["step up"]:
            return True
    return False


def _is_walked_into(one: Closed, room: Surfaces) -> bool:
    """Return whether one walks in through an opening: at the floor, high enough, and no ramp down to the ground."""
    if one.wall not in UPRIGHT or not is_placed(one.place) or not isfinite(room.floor):
        return False
    low, high = levels_of(one)
    swing = one.facet.swing if one.facet is not None else None
    is_ramp = swing is not None and swing.hinge == "bottom"
    return low <= room.floor + ROOM["step over"] and high - low >= ROOM["stoop"] and not is_ramp


def _is_before(block: Block, one: Closed) -> bool:
    """Return whether a box is a tread before an opening: it stands out beyond the wall, close to it, below the sill."""
    axis = UPRIGHT[one.wall]
    begins, ends = span_of(one)
    face, out = (one.place.x, one.place.y)[axis].best, 1.0 if one.wall in {"right", "rear"} else -1.0
    near, far = sorted((out * (block.low[axis] - face), out * (block.high[axis] - face)))
    is_along = block.low[1 - axis] < ends and block.high[1 - axis] > begins
    return is_along and near <= ROOM["at the sill"] and far >= ROOM["tread"] and block.high[2] <= levels_of(one)[0]
