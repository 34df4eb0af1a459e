"""How far each leaf of an opening goes before something ends it, at least and at most, by where that may be."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.leaves import FLAT, either_way, leaf_of, sliding_leaf
from boxwright.disciplines.layout.meeting import grown
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.stopping import Face, stopped
from boxwright.disciplines.layout.sweeps import BOTH, NEVER, NEVER_OPENS, Mover, Turn, struck_by
from boxwright.model.place import Surfaces
from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Hold:
    """What ends the way of one leaf, by its number: where at least and where at most (rad, m), infinite for nowhere.

    ``of`` is the path of a thing, or the name of a face of the room.
    """

    of: str
    name: str
    leaf: int
    least: float
    most: float


def leaves_of(one: Closed, outer: Block | None, room: Surfaces) -> tuple[Mover, ...]:
    """Return the leaves of an opening one by one, the one at its low edge first; none where nothing is known of them.

    One of which nobody wrote on which side of its wall it slides, or whether it opens out or in, is there either way.
    """
    slides, swing = (one.facet.slides, one.facet.swing) if one.facet is not None else (None, None)
    if slides is not None:
        return tuple(sliding_leaf(one, slides, outer, room) or ())
    if swing is None or swing.opens in NEVER_OPENS:
        return ()
    leaf = leaf_of(one, swing, outer, room)
    if leaf is None:
        return ()
    if not swing.opens and one.wall not in FLAT and swing.hinge != BOTH:
        return tuple(either_way(one, swing, outer, room))
    begins = [number for number, way in enumerate(leaf.ways) if not (isinstance(way, Turn) and way.begins)]
    return tuple(replace(leaf, ways=leaf.ways[first:last]) for first, last in pairwise((*begins, len(leaf.ways))))


def holds_of(
    leaves: Sequence[Mover],
    bodies: Sequence[Body],
    within: frozenset[str],
    faces: Iterable[Face],
    closed: tuple[Closed, ...],
) -> Iterator[Hold]:
    """Yield what ends the way of each leaf; what is met by no more than the play of its hinge ends nothing.

    ``within`` are the paths of what is inside the shell, where a leaf that opens outward does not come.
    """
    for number, moved in enumerate(leaves):
        leaf = replace(moved, name=f"{moved.name}, {number}")  # remembered apart from the leaves of a slot
        for _, body, sure in struck_by(leaf, bodies, within if leaf.outside else frozenset()):
            if sure != "grazes":
                least, most = reach_between(leaf, body, sure == "sure" and not leaf.is_usual)
                yield Hold(body.of, body.name, number, least, most)
        for face in stopped(leaf, faces, closed) if not leaf.outside else ():
            yield Hold(face.face, face.face, number, face.reached, face.reached if face.sure == "sure" else NEVER)


def reach_between(mover: Mover, body: Body, is_sure: bool) -> tuple[float, float]:
    """Return how far something gets at least and at most before it strikes a thing, wherever within its doubt that is.

    What is not sure to be struck, or to be there, may let it go on for ever.
    """
    (x, y, z), (other_x, other_y, other_z) = mover.doubt, body.doubt
    off = (x + other_x, y + other_y, z + other_z)
    least = min((mover.meets(grown(block, off), "most") for block in body.blocks), default=NEVER)
    if not is_sure or body.stands != "yes":
        return least, NEVER
    most = 0.0
    for blocks in body.either or (body.blocks,):  # where it may fill some or others, the leaf gets as far as past both
        less = (grown(block, (-off[0], -off[1], -off[2])) for block in blocks)
        most = max(most, min((mover.meets(block) for block in less if min(block.size) > 0.0), default=NEVER))
    return least, most
