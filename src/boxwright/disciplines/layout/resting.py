"""What is wrong with things as they lie: two in one space, one through a wall, one held by nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from math import hypot, inf, isfinite
from types import MappingProxyType

from boxwright.disciplines.layout.bodies import Block, Body, Pose, body_of, envelope, moved_block, place_in
from boxwright.disciplines.layout.meeting import TOUCH, overlaps
from boxwright.disciplines.layout.pairs import ORDER, Pair, pairs_of
from boxwright.disciplines.layout.parts import Closed, Fitted
from boxwright.disciplines.layout.result import Axis, Certainty, Covered, Crossing, Meeting, Protruding, Shift, Unheld
from boxwright.disciplines.layout.sourced import LENGTHS, SHARES
from boxwright.disciplines.layout.sweeps import NEVER_OPENS, WALLS, ways_it_faces
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces

MOST = 8
"""How many meetings are told one by one; the rest are counted."""
MOST_APART = 200
"""So many different ways between two pieces of a counted thing are looked at."""
AXES_ALL: tuple[Axis, ...] = (0, 1, 2)
Clearing = Callable[[Body, Body], Shift | None]
Face = tuple[str, Axis, bool]
FACES: tuple[Face, ...] = (
    ("front", 0, False), ("rear", 0, True), ("left", 1, False), ("right", 1, True), ("floor", 2, False),
    ("roof", 2, True),
)  # fmt: skip
"""The faces of the shell: axis, and whether it is the far one."""


def meetings(
    bodies: tuple[Body, ...], lines: Mapping[str, frozenset[str]], beds: Mapping[str, str], clearing: Clearing
) -> tuple[tuple[Meeting, ...], int]:
    """Return the things that are in each other, the deepest first, and how many more pairs there are.

    ``beds`` are the names of the beds by the paths of all that is slept on. What carries a thing is not in its way. A
    pair whose best places are apart is in each other perhaps, where either is in doubt.
    """
    found = pairs_of(bodies, lines)
    foremost: Sequence[Pair] = found
    if beds:  # of those that are as sure, first what lies in a bed

        def is_on_bed(pair: Pair) -> bool:
            return bodies[pair.first].of in beds or bodies[pair.second].of in beds

        foremost = sorted(found, key=lambda pair: (pair.rank, not is_on_bed(pair)))
    told = [
        _meeting(ORDER[one.rank], one.depth, one.axis, bodies[one.first], bodies[one.second], beds, clearing)
        for one in foremost[:MOST]
    ]
    return tuple(told), max(len(found) - MOST, 0)


def _meeting(
    sure: Certainty, depth: float, axis: int, one: Body, other: Body, beds: Mapping[str, str], clearing: Clearing
) -> Meeting:
    mine, theirs = (one, other) if _moves_first(one, other, beds) else (other, one)
    shift = (clearing(mine, theirs) or clearing(theirs, mine)) if sure == "sure" else None
    is_bed = one.of in beds or other.of in beds
    along: Axis = 0 if axis == 0 else 1 if axis == 1 else 2
    return Meeting(mine.of, mine.name, theirs.of, theirs.name, depth, along, sure, is_bed, shift,
                   beds.get(theirs.of, beds.get(mine.of, "")))  # fmt: skip


def against_themselves(fitted: Iterable[Fitted], bodies: Iterable[Body], pose: Pose) -> Iterator[Meeting]:
    """Yield the counted things of which two pieces are in each other, each with its worst two.

    All pieces are alike and lie along the trailer, so that two meet or not by how far they are apart. Of more than
    ``MOST_APART`` different ways between them the shortest are looked at.
    """
    counted = {one.of: one for one in fitted if len(one.along) > 1 and place_in(one, pose) is one.place}
    for body in bodies:
        one = counted.get(body.of)
        if one is None or not body.blocks or not one.is_sized:
            continue
        each = max(len(one.pieces), 1)
        piece = body.blocks[:each]
        ways = _ways_between(sorted(one.along), envelope(piece).size[0])
        moved = ([moved_block(block, (by, 0.0, 0.0)) for block in piece] for by in ways)
        depth, axis = max((_deepest(piece, other) for other in moved), default=(0.0, 0))
        if depth > TOUCH:
            sure: Certainty = "sure" if depth > LENGTHS["play"] else "grazes"
            yield Meeting(one.of, one.name, one.of, one.name, depth, axis, sure, False, None)


def _ways_between(places: list[float], length: float) -> list[float]:
    """Return each way between two of some places in order that is shorter than a piece (m), the shortest first."""
    found = set[float]()
    for number, place in enumerate(places):
        for other in places[number + 1 : number + 1 + MOST_APART]:
            if other - place >= length:
                break
            found.add(round(other - place, 6))
    return sorted(found)[:MOST_APART]


def _deepest(one: Sequence[Block], other: Sequence[Block]) -> tuple[float, Axis]:
    """Return how far two pieces of a thing are in each other at most, along the axis that parts them soonest."""
    shared = [overlaps(mine, theirs) for mine in one for theirs in other]
    return max((min((along[axis], axis) for axis in AXES_ALL) for along in shared), default=(0.0, 0))


def _moves_first(one: Body, other: Body, beds: Mapping[str, str]) -> bool:
    """Return whether the first of two is the one to move: no bed, cargo before what is built in, then the smaller."""

    def rank(body: Body) -> tuple[bool, bool, float, str]:
        size = envelope(body.blocks).size
        return body.of in beds, body.kind != "cargo", size[0] * size[1] * size[2], body.of

    return rank(one) <= rank(other)


def crossings(
    bodies: Iterable[Body], room: Surfaces, closed: Iterable[Closed], has_nose: bool, outer: Block,
    recesses: Mapping[tuple[str, str], float] = MappingProxyType({}),
) -> Iterator[Crossing]:  # fmt: skip
    """Yield what goes through a face of the bare shell where no opening is.

    What is wholly outside is meant to be there. ``outer`` are the outer faces of the shell: what ends in the depth of a
    wall and is no wider than a bay may be let into it, and is as far as ``recesses`` says of its path and that face:
    then the frame is asked whether it finds room there. What is through it as it is written, and perhaps not by what of
    it is in doubt, is perhaps so.
    """
    faces = (
        room.studs_front, room.studs_rear, room.studs_left, room.studs_right, room.deck, room.bows,
    )  # fmt: skip
    openings = tuple(closed)
    known = [(face, plane) for face, plane in zip(FACES, faces, strict=True)
             if isfinite(plane) and not (face[0] == "front" and has_nose)]  # fmt: skip
    for body in bodies:
        if not body.known:
            continue
        around = body.around
        for face, plane in known:
            name, axis, _ = face
            if not around.low[axis] + TOUCH < plane < around.high[axis] - TOUCH:
                continue
            beyond = max((_beyond(block, face, plane, openings) for block in body.blocks), default=0.0)
            if beyond <= LENGTHS["through"] or not _is_in_the_box(body, axis, room):
                continue
            is_doubtful = beyond - body.doubt[axis] <= LENGTHS["through"]
            if is_doubtful and body.is_stowed:
                continue  # it lies somewhere in what it is inside of, and that is asked whether it fits
            least = beyond - (0.0 if is_doubtful else body.doubt[axis]) - LENGTHS["play"]
            is_in_wall = least <= _depth(face, plane, outer) and _is_in_a_bay(around, axis)
            if least > recesses.get((body.of, name), 0.0) or not (is_in_wall or axis == 2):
                yield Crossing(body.of, body.name, name, beyond, "perhaps" if is_in_wall or is_doubtful else "sure")


def let_in(fitted: Iterable[Fitted]) -> dict[tuple[str, str], float]:
    """Return how deep each thing is let into its wall, by its path and the name of that face.

    Where nobody knows how deep, the frame asks.
    """
    return {
        (one.of, "roof" if one.wall == "ceiling" else one.wall): one.recess.high if one.recess.known else inf
        for one in fitted
        if one.recess is not None
    }


def _depth(face: Face, plane: float, outer: Block) -> float:
    """Return how deep a thing may be let into an upright wall: to the play before its outer face."""
    _, axis, is_far = face
    end = outer.high[axis] if is_far else outer.low[axis]
    return max(abs(end - plane) - 2.0 * LENGTHS["play"], 0.0) if axis < 2 and isfinite(end) else 0.0


def _is_in_a_bay(around: Block, axis: int) -> bool:
    """Return whether a thing is so narrow along its wall that it may lie between two studs."""
    return around.size[1 - axis] <= LENGTHS["bay"] if axis < 2 else False


def _beyond(block: Block, face: Face, plane: float, openings: tuple[Closed, ...]) -> float:
    """Return how far a box is through a face, both ways: the lesser of what is outside of it and what is inside."""
    name, axis, is_far = face
    low, high = block.low[axis] - plane, block.high[axis] - plane
    outside, inside = (high, -low) if is_far else (-low, high)
    if min(outside, inside) <= TOUCH or any(passes(one, block, name, axis) for one in openings):
        return 0.0
    return outside if inside > LENGTHS["through"] else 0.0


def _is_in_the_box(body: Body, axis: int, room: Surfaces) -> bool:
    """Return whether a thing is within the shell along the other two axes, so that it goes through this face."""
    ends = (
        (room.studs_front, room.studs_rear), (room.studs_left, room.studs_right), (room.deck, room.bows),
    )  # fmt: skip
    block = envelope(body.blocks)
    return all(
        min(block.high[one], ends[one][1]) - max(block.low[one], ends[one][0]) > TOUCH
        for one in range(3)
        if one != axis
    )


def passes(one: Closed, block: Block, face: str, axis: int) -> bool:
    """Return whether a box goes through an opening: the hole is in this face and holds all of it."""
    if ("roof" if one.wall == "ceiling" else one.wall) != face:
        return False
    middles = (one.place.x, one.place.y, one.place.z)
    return all(
        middles[other].known
        and middles[other].best - one.place.size[other] / 2.0 - TOUCH <= block.low[other]
        and block.high[other] <= middles[other].best + one.place.size[other] / 2.0 + TOUCH
        for other in range(3)
        if other != axis
    )


def unheld(fitted: Iterable[Fitted], there: Mapping[str, str]) -> Iterator[Unheld]:
    """Yield what is aboard while what it is inside of or rides on is not there, or is there only perhaps."""
    for one in fitted:
        carrier = one.inside or one.rides_on
        if one.of not in there or not carrier or there.get(carrier) == "yes":
            continue
        if there.get(carrier) == "perhaps" and there[one.of] == "perhaps":
            continue  # both are doubtful together, and that is asked already
        yield Unheld(one.of, one.name, carrier, bool(one.inside), "perhaps" if carrier in there else "sure")


def protruding(
    fitted: Iterable[Fitted], standing: Mapping[str, Body], pose: Pose, room: Surfaces
) -> Iterator[Protruding]:
    """Yield what sticks out of the thing it is inside of by more than the play of its lining, or is too large for it.

    What goes up with a bed turns with what it is inside of: both are looked at as they lie. Boards of a cabinet take of
    what is clear in it, wherever the thing is written to be between them.
    """
    known = {one.of: one for one in fitted}
    for one in known.values():
        body, carrier = standing[one.of], standing.get(one.inside)
        if carrier is None or place_in(one, pose) not in (one.place, one.folded):
            continue
        if one.folded is not None:
            body, carrier = _as_it_lies(one), _as_it_lies(known[one.inside])
        if not (body.blocks and carrier.blocks):
            continue
        own, around = body.around, carrier.around
        clear = _clear_inside(known[one.inside], around, room)
        assumed = [place.assumed for place in (one.place.x, one.place.y, one.place.z)]
        found: list[tuple[float, float, Axis]] = []
        for axis in AXES_ALL:
            beyond = max(around.low[axis] - own.low[axis], own.high[axis] - around.high[axis])
            doubt = max(body.doubt[axis] - carrier.doubt[axis], 0.0)
            too_large = own.size[axis] - clear[axis]
            if assumed[axis]:  # nobody wrote where: it only has to fit
                beyond, doubt = too_large, 0.0
            found.append((round(max(beyond, too_large), 9), doubt, axis))
        beyond, _, axis = max(found)
        worst, along = max((best + doubt, axis) for best, doubt, axis in found)
        if beyond > LENGTHS["play"]:
            sure: Certainty = "perhaps" if all(assumed) and _may_go_in_turned(own.size, clear) else "sure"
            yield Protruding(one.of, one.name, carrier.of, carrier.name, beyond, axis, sure, sure != "sure")
        elif worst > LENGTHS["play"]:
            yield Protruding(one.of, one.name, carrier.of, carrier.name, worst, along, "perhaps")


def _clear_inside(one: Fitted, block: Block, room: Surfaces) -> Vector:
    """Return how much of a cabinet is clear within its boards at most, whichever way it faces; its box without any.

    Boards of which nobody wrote how thick they are take nothing.
    """
    has_front = one.drawers or one.doors or one.has_lid
    deep, across = one.back + (one.ply if has_front else 0.0), 2.0 * one.ply
    axes = {axis for axis, _ in ways_it_faces(one.wall, block, room)}
    takes = [deep if axes == {axis} else across if axis not in axes else min(deep, across) for axis in (0, 1)]
    return block.size[0] - takes[0], block.size[1] - takes[1], block.size[2] - 2.0 * one.ply


def _may_go_in_turned(size: Vector, clear: Vector) -> bool:
    """Return whether a box may go into another held some other way: no thicker than that is, no longer than aslant."""
    return min(size) <= min(clear) + LENGTHS["play"] and max(size) <= hypot(*clear)


def _as_it_lies(one: Fitted) -> Body:
    """Return a thing that goes up with a bed as it is where that is down."""
    return body_of(replace(one, folded=None), "yes", "travel")


def covered(fitted: Iterable[Fitted], standing: frozenset[str], closed: Iterable[Closed]) -> Iterator[Covered]:
    """Yield the windows that a thing covers while it is folded up: those openings of its wall that open."""
    windows = [one for one in closed if _opens(one)]
    for one in fitted:
        if one.folded is None or not one.folds or one.of not in standing:
            continue
        place = one.folded
        if not one.is_sized or not all(band.known for band in (place.x, place.y, place.z)):
            continue
        middle = (place.x.best, place.y.best, place.z.best)
        leaf = Block(
            (middle[0] - place.size[0] / 2.0, middle[1] - place.size[1] / 2.0, middle[2] - place.size[2] / 2.0),
            (middle[0] + place.size[0] / 2.0, middle[1] + place.size[1] / 2.0, middle[2] + place.size[2] / 2.0),
        )
        for window in windows:
            share = _share(leaf, window)
            if share >= SHARES["covered"]:
                yield Covered(one.of, one.name, window.of, window.name, share)


def _opens(one: Closed) -> bool:
    swing = one.facet.swing if one.facet is not None else None
    if one.facet is not None and one.facet.slides is not None:
        return True
    return swing is not None and swing.opens not in NEVER_OPENS


def _share(leaf: Block, window: Closed) -> float:
    """Return which share of a window a folded thing before it covers."""
    wall = WALLS.get(window.wall)
    middles = (window.place.x, window.place.y, window.place.z)
    if wall is None or not all(middles[one].known for one in range(3) if one != wall[0]):
        return 0.0
    axis, reach = wall[0], LENGTHS["wall reach"]
    at = middles[axis].best
    hole = Block(
        _corner(middles[0].best, middles[1].best, middles[2].best, window.place.size, -1.0, axis, at - reach),
        _corner(middles[0].best, middles[1].best, middles[2].best, window.place.size, 1.0, axis, at + reach),
    )
    inside = overlaps(leaf, hole)
    if min(inside) <= TOUCH:
        return 0.0
    across = [one for one in range(3) if one != axis]
    return inside[across[0]] * inside[across[1]] / (hole.size[across[0]] * hole.size[across[1]])


def _corner(
    x: float, y: float, z: float, size: tuple[float, float, float], way: float, axis: int, edge: float
) -> tuple[float, float, float]:
    corner = [x + way * size[0] / 2.0, y + way * size[1] / 2.0, z + way * size[2] / 2.0]
    corner[axis] = edge
    return corner[0], corner[1], corner[2]
