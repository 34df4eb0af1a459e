"""A leaf that slides into its wall: the studs, wires, pipes, holes and let-in things that lie where it goes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from math import inf, isfinite
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.leaves import IN_WALL
from boxwright.disciplines.layout.meeting import TOUCH
from boxwright.disciplines.layout.method import overlap
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.result import Certainty, Struck
from boxwright.disciplines.layout.sweeps import AXES, WALLS, slid
from boxwright.model.place import Surfaces
from boxwright.records import dataclass

STUDS = "the studs"
"""What is asked about in a wall of which no stud is known."""


@dataclass(frozen=True, slots=True)
class Within:
    """What lies within a wall, between where along it and how high (m); ``is_sure`` says that it surely does.

    One without a wall may lie in any.
    """

    of: str
    name: str
    wall: str
    along: tuple[float, float]
    up: tuple[float, float]
    is_sure: bool = True
    is_stud: bool = False


CERTAIN: tuple[Certainty, ...] = ("sure", "perhaps")


class Around(NamedTuple):
    """What a leaf that slides into its wall may meet: holes, what lies in walls, what is let into them, and how deep.

    ``depths`` are how deep things are let into their walls (m), by their paths and the wall.
    """

    closed: tuple[Closed, ...]
    within: tuple[Within, ...]
    bodies: tuple[Body, ...]
    depths: Mapping[tuple[str, str], float]
    outer: Block
    room: Surfaces


def pocketed(
    closed: Iterable[Closed],
    within: Iterable[Within],
    bodies: Iterable[Body],
    depths: Mapping[tuple[str, str], float],
    outer: Block,
    room: Surfaces,
) -> Iterator[Struck]:
    """Yield what each leaf that slides into its wall strikes in there, what surely does before what perhaps does.

    ``depths`` are how deep things are let into their walls (m), by their paths and the wall.
    """
    around = Around(tuple(closed), tuple(within), tuple(bodies), depths, outer, room)
    for one in around.closed:
        found = list(hits_of(one, around))
        by = one.facet.slides.by if one.facet is not None and one.facet.slides is not None else None
        for sure in CERTAIN:
            some = sorted(
                ((at, other) for at, other, word in found if word == sure), key=lambda hit: (hit[0], hit[1].name)
            )
            if some and by is not None:
                yield _told(one, some, by.best, sure)


Hit = tuple[float, Within, Certainty]
"""How far a leaf gets before something in its wall, and how sure that is."""


def hits_of(one: Closed, around: Around) -> Iterator[Hit]:
    """Yield how far a leaf that slides into its wall gets before each thing that lies there, and how sure that is.

    It strikes for certain only what it strikes however little it slides, and wherever it may be.
    """
    yield from hits_in_wall(one, around)
    yield from hits_let_in(one, around)


def hits_in_wall(one: Closed, around: Around) -> Iterator[Hit]:
    """Yield the same of what belongs to the wall: studs, wires, pipes, other holes; where no stud is known, it asks."""
    wall = WALLS.get(one.wall)
    if wall is None:
        return
    found = [*around.within, *_holes(around.closed, one, 1 - wall[0])]
    if not any(other.is_stud and other.wall == one.wall for other in around.within):
        found.append(Within(one.of, STUDS, one.wall, (-inf, inf), (-inf, inf), is_sure=False))
    yield from _met(one, found)


def hits_let_in(one: Closed, around: Around) -> Iterator[Hit]:
    """Yield the same of the things that are let into its wall."""
    if one.wall in WALLS:
        yield from _met(one, _let_in(around.bodies, around.depths, one.wall, around.outer, around.room))


def _met(one: Closed, things: Iterable[Within]) -> Iterator[Hit]:
    """Yield how far a leaf that slides into its wall gets before each of some things in walls."""
    slides = one.facet.slides if one.facet is not None else None
    wall = WALLS.get(one.wall)
    if slides is None or slides.runs != IN_WALL or one.is_unit or wall is None:
        return
    axis, way = AXES.get(slides.to, (2, 0.0))
    middle, up = (one.place.x, one.place.y)[1 - wall[0]], one.place.z
    if axis != 1 - wall[0] or slides.by is None or not (slides.by.known and middle.known and up.known):
        return
    half, high = one.place.size[axis] / 2.0, one.place.size[2] / 2.0
    near, far = sorted(way * end + half for end in (middle.low, middle.high))
    tall, surely_tall = (up.low - high, up.high + high), (up.high - high, up.low + high)
    _, most, least = slid(slides.by)
    for other in things:
        if other.wall not in {one.wall, ""} or overlap(*other.up, *tall) <= TOUCH:
            continue
        ends = sorted((way * other.along[0], way * other.along[1]))
        gets, gets_at_most = max(ends[0] - far, 0.0), max(ends[0] - near, 0.0)
        is_sure = other.is_sure and ends[1] > far + TOUCH and gets_at_most < least - TOUCH
        is_sure = is_sure and overlap(*other.up, *surely_tall) > TOUCH
        if ends[1] > near + TOUCH and gets < most - TOUCH:
            yield gets, other, "sure" if is_sure else "perhaps"


def _told(one: Closed, hits: list[tuple[float, Within]], by: float, sure: Certainty) -> Struck:
    paths, names = (tuple(dict.fromkeys(getattr(hit, key) for _, hit in hits)) for key in ("of", "name"))
    gets = hits[0][0]
    between = gets, (gets if sure == "sure" else inf)
    return Struck(one.of, one.name, "sash", paths, names, gets, by, False, sure, None, between=between, is_in_wall=True)


def _holes(closed: Iterable[Closed], own: Closed, axis: int) -> Iterator[Within]:
    """Yield the other openings of a wall."""
    for one in closed:
        along, up = (one.place.x, one.place.y, one.place.z)[axis], one.place.z
        if one.of != own.of and one.wall == own.wall and along.known and up.known:
            half, high = one.place.size[axis] / 2.0, one.place.size[2] / 2.0
            ends = (along.low - half, along.high + half), (up.low - high, up.high + high)
            is_sure = along.low == along.high and up.low == up.high
            yield Within(one.of, one.name, one.wall, *ends, is_sure)


def _let_in(
    bodies: Iterable[Body], depths: Mapping[tuple[str, str], float], wall: str, outer: Block, room: Surfaces
) -> Iterator[Within]:
    """Yield the things that reach behind the stud face of a wall, as sockets and switches that are let in do."""
    axis, out = WALLS[wall]
    plane = ((room.studs_front, room.studs_rear), (room.studs_left, room.studs_right))[axis][out > 0.0]
    end = outer.high[axis] if out > 0.0 else outer.low[axis]
    low, high = min(plane, end), max(plane, end)
    for body in bodies:
        deep, off = depths.get((body.of, wall), 0.0), body.doubt
        for block in body.blocks:
            is_behind = isfinite(low + high) and overlap(block.low[axis], block.high[axis], low, high) > TOUCH
            if deep > TOUCH or is_behind:
                along = block.low[1 - axis] - off[1 - axis], block.high[1 - axis] + off[1 - axis]
                up = block.low[2] - off[2], block.high[2] + off[2]
                is_known = body.is_sure and body.stands == "yes" and not any(off)
                is_sure = is_known and (is_behind or isfinite(deep))
                yield Within(body.of, body.name, wall, along, up, is_sure)
