"""The ways out of every sleeping place: how wide, how high, over what, and what would have to go.

Each width is that of a square carried all the way (`passage`) over the terraces of the room (`terraces`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from math import inf, isfinite
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import (
    FINENESS,
    Point,
    Rect,
    corridor,
    less,
    meets,
    reach,
    shortest,
    widest,
    within,
)
from boxwright.disciplines.layout.terraces import (
    UPRIGHT,
    Bed,
    Scene,
    bed_rect_of,
    climbed_on,
    forecourt,
    is_placed,
    levels_of,
    outline_of,
    scene_of,
    sides_of,
)
from boxwright.exchange import Aisle, Vector
from boxwright.model.place import Place, Surfaces, shifted
from boxwright.units import Band

UNKNOWN = Band(0.0, 0.0, inf, known=False)


class Quest(NamedTuple):
    """A way that is looked for: from a bed to an opening of a room, on foot or climbing on what is built in."""

    bed: Bed
    opening: Closed
    room: Surfaces
    climbs: bool

    def scene(self, bodies: tuple[Body, ...], head: float = ROOM["stoop"]) -> Scene:
        """Return what is in the way of somebody ``head`` high on the floor."""
        return scene_of(bodies, self.bed, self.opening, self.room, self.climbs, head)


def ways_out(
    bodies: tuple[Body, ...], beds: tuple[Bed, ...], openings: tuple[Closed, ...], room: Surfaces
) -> tuple[Aisle, ...]:
    """Return the widest way from each bed to each opening somebody could get through.

    Where walking is too narrow for a person, a wider way over what can be climbed on is given beside it.
    """
    exits = tuple(one for one in openings if is_exit(one))
    found: list[Aisle] = []
    for bed in beds:
        for one in exits:
            found += _aisles(bodies, bed, one, exits, room)
    return tuple(found)


def scene_drawn(bodies: tuple[Body, ...], first: Bed | Closed, opening: Closed, room: Surfaces, climbs: bool) -> Scene:
    """Return what is in the way from a bed, or from an opening, to another one; both have their places."""
    if isinstance(first, Bed):
        bodies = in_the_room(bodies, first, room)
    return scene_of(bodies, first, opening, room, climbs, ROOM["stoop"])


def way_drawn(scene: Scene, width: float) -> tuple[Point, ...]:
    """Return the shortest line along which something of a width gets out; empty for none."""
    return shortest(scene.without(()), scene.start, scene.goal, width)


def gets_out(bodies: tuple[Body, ...], bed: Bed, opening: Closed, room: Surfaces) -> bool:
    """Return whether somebody gets from a bed to an opening and through it, on foot or climbing, wherever both are."""
    there = in_the_room(bodies, bed, room)
    return any(
        all(_passes(there, quest) for quest in _shifted(Quest(bed, opening, room, climbs))) for climbs in (False, True)
    )


def _passes(bodies: tuple[Body, ...], quest: Quest) -> bool:
    if _through(bodies, quest) < ROOM["pass"]:
        return False
    scene = quest.scene(bodies)
    return scene.most >= ROOM["pass"] and reach(scene.without(()), scene.start, (scene.goal,), ROOM["pass"])[0]


def is_exit(one: Closed) -> bool:
    """Return whether anybody could wriggle through an opening; one whose size is not known is kept."""
    sides = sides_of(one)
    return not all(isfinite(side) for side in sides) or min(sides) >= ROOM["wriggle"]


def is_room(room: Surfaces) -> bool:
    """Return whether all faces of the room are known."""
    faces = (room.front, room.rear, room.left, room.right, room.floor, room.ceiling)
    return all(isfinite(face) for face in faces)


def _aisles(
    bodies: tuple[Body, ...], bed: Bed, opening: Closed, exits: tuple[Closed, ...], room: Surfaces
) -> list[Aisle]:
    """Return the way on foot, and where that lets nobody through the wider one that climbs."""
    unsure = tuple(one.of for one in bodies if not one.known and not one.is_inside and one.of != bed.of)
    is_known = is_placed(bed.place) and is_placed(opening.place) and is_room(room)
    if not is_known or opening.wall not in {*UPRIGHT, "roof"}:
        return [Aisle(bed.of, opening.of, UNKNOWN, UNKNOWN, (), (), unsure, (), bed.sleepers)]
    walked = _aisle(bodies, Quest(bed, opening, room, False), exits, unsure)
    if walked.width.best >= ROOM["pass"]:
        return [walked]
    climbed = _aisle(bodies, Quest(bed, opening, room, True), exits, unsure)
    return [walked, climbed] if climbed.width.best > walked.width.best else [walked]


def _aisle(bodies: tuple[Body, ...], quest: Quest, exits: tuple[Closed, ...], unsure: tuple[str, ...]) -> Aisle:
    bed, opening = quest.bed, quest.opening
    nominal = in_the_room(bodies, bed, quest.room)
    scene = quest.scene(nominal)
    width = _in_doubt(nominal, quest, lambda there, way: _width(way.scene(there)))
    best, target = width.best, min(ROOM["pass"], scene.most)
    height = _in_doubt(nominal, quest, lambda there, way: _headroom(there, way, best)) if best else width
    return Aisle(
        bed.of,
        opening.of,
        replace(width, low=0.0, spread="interval") if unsure else width,
        height,
        _in_the_way(scene, nominal, target) if best < target else (),
        _stepped_over(scene, nominal, quest, min(best, target)),
        unsure,
        _gone_by(scene, exits, quest, min(best, target)),
        bed.sleepers,
    )


def _width(scene: Scene) -> float:
    """Return how wide a way is; one that is just as wide as what is asked about is not said to be narrower."""
    solid = scene.without(())
    found = widest(solid, scene.start, (scene.goal,), scene.most)[0]
    for limit in (ROOM["pass"], ROOM["wriggle"]):
        if found < limit <= found + FINENESS and reach(solid, scene.start, (scene.goal,), limit)[0]:
            return limit
    return found


def _in_doubt(nominal: tuple[Body, ...], quest: Quest, measure: Callable[[tuple[Body, ...], Quest], float]) -> Band:
    """Return what is measured with everything where it is written, and with all that is in doubt at its worst and best.

    What stands perhaps is in the way except at its best.
    """
    best = measure(nominal, quest)
    worst, least = at_one_end(nominal, 1.0), at_one_end(nominal, -1.0)
    quests = tuple(_shifted(quest))
    if worst == nominal and least == nominal and len(quests) == 1:
        return Band(best, best, best)
    low = min(measure(worst, one) for one in quests)
    high = max(measure(least, one) for one in quests)
    return Band(best, min(low, best), max(high, best), spread="interval")


def _shifted(quest: Quest) -> Iterator[Quest]:
    """Yield the quest with bed and opening at each end of where they may be."""
    for bed_place in ends_of(quest.bed.place):
        for place in ends_of(quest.opening.place):
            yield quest._replace(bed=replace(quest.bed, place=bed_place), opening=replace(quest.opening, place=place))


def ends_of(place: Place) -> Iterator[Place]:
    """Yield a place at every corner of its doubt; once where it has none."""
    for x in _both(place.x):
        for y in _both(place.y):
            for z in _both(place.z):
                yield replace(place, x=x, y=y, z=z)


def _both(band: Band) -> tuple[Band, ...]:
    if band.low == band.high or not (isfinite(band.low) and isfinite(band.high)):
        return (band,)
    return shifted(band, band.low - band.best), shifted(band, band.high - band.best)


def in_the_room(bodies: tuple[Body, ...], bed: Bed, room: Surfaces) -> tuple[Body, ...]:
    """Return what may stand in the way in the room: not the bed, nor what lies on it or inside another thing."""
    return tuple(
        one
        for one in bodies
        if one.of != bed.of
        and one.carried_by != bed.of
        and not one.is_inside
        and any(_may_be_in(block, one.doubt, room) for block in one.blocks)
    )


def _may_be_in(block: Block, doubt: Vector, room: Surfaces) -> bool:
    """Return whether a box may reach into the room above its floor."""
    low = (room.front, room.left, room.floor)
    high = (room.rear, room.right, room.ceiling)
    return all(
        block.low[axis] - doubt[axis] < high[axis] and block.high[axis] + doubt[axis] > low[axis] for axis in range(3)
    )


def at_one_end(bodies: tuple[Body, ...], by: float) -> tuple[Body, ...]:
    """Return the bodies as large as their doubt may make them (1), or as small (-1) and without what stands perhaps.

    Of several that lie somewhere in one box nobody knows which of it is filled.
    """
    found = []
    for one in bodies:
        if by < 0.0 and (one.stands == "perhaps" or one.is_scattered):
            continue
        blocks = one.blocks
        if any(extent != 0.0 for extent in one.doubt) and all(isfinite(extent) for extent in one.doubt):
            grown = (_grown(block, one.doubt, by) for block in one.blocks)
            blocks = tuple(block for block in grown if min(block.size) > 0.0)
        found.append(one if blocks == one.blocks else replace(one, blocks=blocks))
    return tuple(found)


def _grown(block: Block, doubt: Vector, by: float) -> Block:
    low, high = block
    x, y, z = (by * extent for extent in doubt)
    return Block((low[0] - x, low[1] - y, low[2] - z), (high[0] + x, high[1] + y, high[2] + z))


def _headroom(bodies: tuple[Body, ...], quest: Quest, width: float) -> float:
    """Return the least height of the widest way, over its floor and through the opening as it is reached."""
    room = quest.room
    undersides = {block.low[2] - room.floor for one in bodies for block in one.blocks}
    ceiling = room.ceiling - room.floor
    heights = [ROOM["stoop"], *sorted(one for one in undersides if ROOM["stoop"] < one < ceiling), ceiling]
    low_end, high_end = 0, len(heights) - 1
    while low_end < high_end:  # the taller somebody stands the more is in the way, so the first that fails ends it
        middle = (low_end + high_end + 1) // 2
        scene = quest.scene(bodies, heights[middle])
        if reach(scene.without(()), scene.start, (scene.goal,), width)[0]:
            low_end = middle
        else:
            high_end = middle - 1
    return min(heights[low_end], ceiling, _through(bodies, quest))


def _through(bodies: tuple[Body, ...], quest: Quest) -> float:
    """Return how much of the height of an opening is left over what one stands on before it, and under what hangs."""
    opening, bed, room = quest.opening, quest.bed, quest.room
    if opening.wall not in UPRIGHT:
        return inf
    low, high = levels_of(opening)
    before = forecourt(opening, room, ROOM["lean"])
    levels = [low, room.floor, *((bed.top,) if _is_before(bed_rect_of(bed), before) else ())]
    levels += [top for rect, top in climbed_on(bodies, room) if _is_before(rect, before)] if quest.climbs else []
    sill = max(levels)
    hangs = [
        block.low[2]
        for one in bodies
        for block in one.blocks
        if sill + ROOM["crawl"] <= block.low[2] < high and _is_before(outline_of(block), before)
    ]
    left: float = min(hangs, default=high) - sill
    return max(round(left, 9), 0.0)


def _is_before(rect: Rect, before: Rect | None) -> bool:
    """Return whether something reaches into the stretch right before an opening."""
    return before is not None and within(rect, before) is not None


def _in_the_way(scene: Scene, bodies: tuple[Body, ...], width: float) -> tuple[str, ...]:
    """Return a least set of things that, taken away, leave a way of this width; what is built in stays if it can.

    They are put back one by one; only what stands on the way there is asks for another one.
    """
    stood, way = list(scene.walls), corridor(scene.walls, scene.start, scene.goal, width)
    if not way:
        return ()
    pieces: dict[str, list[Rect]] = {}
    for of, rect in scene.things:
        pieces.setdefault(of, []).append(rect)
    kinds, gone = {one.of: one.kind for one in bodies}, list[str]()
    for of in sorted(pieces, key=lambda one: (kinds.get(one) == "cargo", one)):
        more = pieces[of]
        past = corridor([*stood, *more], scene.start, scene.goal, width) if meets(way, more, width) else way
        if past:
            stood, way = [*stood, *more], past
        else:
            gone.append(of)
    return tuple(sorted(gone))


def _stepped_over(scene: Scene, bodies: tuple[Body, ...], quest: Quest, width: float) -> tuple[str, ...]:
    """Return what one cannot but step or climb over on a way of this width: without going over it there is none."""
    if width <= 0.0:
        return ()
    low = [(one.of, pieces) for one in bodies if (pieces := _low_pieces(one, quest))]
    bare = scene.without(())
    if reach([*bare, *(piece for _, pieces in low for piece in pieces)], scene.start, (scene.goal,), width)[0]:
        return ()
    way = corridor(bare, scene.start, scene.goal, width)
    on_it = (one for one in low if not way or meets(way, one[1], width))  # nothing beside a way shuts it
    return tuple(of for of, pieces in on_it if not reach([*bare, *pieces], scene.start, (scene.goal,), width)[0])


def _low_pieces(one: Body, quest: Quest) -> list[Rect]:
    """Return where a thing stands on the floor, beside the bed and not right below the opening, under its sill."""
    room, before = quest.room, forecourt(quest.opening, quest.room, ROOM["lean"])
    inside, found = (room.front, room.left, room.rear, room.right), list[Rect]()
    for block in one.blocks:
        if block.high[2] <= room.floor or block.low[2] >= room.floor + ROOM["climb"]:
            continue
        is_under = before is not None and block.high[2] <= max(
            levels_of(quest.opening)[0], room.floor + ROOM["step over"]
        )
        pieces = [part for part in [within(outline_of(block), inside)] if part is not None]
        for gone in (bed_rect_of(quest.bed), *((before,) if before is not None and is_under else ())):
            pieces = [piece for part in pieces for piece in less(part, gone)]
        found += pieces
    return found


def _gone_by(scene: Scene, exits: tuple[Closed, ...], quest: Quest, width: float) -> tuple[str, ...]:
    """Return the other openings whose forecourt this way must cross: with that closed there is no way left.

    Where two forecourts overlap, or a bed reaches into one, nobody goes by anything there.
    """
    if width <= 0.0:
        return ()
    free = [bed_rect_of(quest.bed)]
    own = forecourt(quest.opening, quest.room, ROOM["reach over"])
    if own is None:
        (x, y), half = (quest.opening.place.x.best, quest.opening.place.y.best), width / 2.0
        own = (x - half, y - half, x + half, y + half)
    free.append(own)
    found = []
    for other in exits:
        before = forecourt(other, quest.room, ROOM["reach over"]) if is_placed(other.place) else None
        if other.of == quest.opening.of or before is None:
            continue
        closed = [before]
        for one in free:
            closed = [piece for part in closed for piece in less(part, one)]
        if not reach([*scene.without(()), *closed], scene.start, (scene.goal,), width)[0]:
            found.append(other.of)
    return tuple(found)
