"""What takes up room: each thing as upright boxes, where it is on the road, at night or at work, and how sure that is.

Everything of layout that asks whether two things meet, what is free to walk on or what must move first, asks these.
Lengths are metres in the rig's datum: x rearward, y to the right, z up.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import inf, isfinite
from typing import Literal, NamedTuple

from boxwright.disciplines.layout.parts import Facet, Fitted, Piece
from boxwright.exchange import Vector
from boxwright.model.place import Place
from boxwright.records import dataclass
from boxwright.units import Band

Pose = Literal["travel", "night", "work"]
"""How things lie: folded up and packed for the road, as one sleeps, and folded up to work."""
POSE_OF_USE: dict[str, Pose] = {"tow": "travel", "leave": "travel", "sleep": "night", "work": "work"}
Standing = tuple[str, Literal["yes", "perhaps"]]
"""The path of a thing that is there, and whether it is for certain."""
WITHOUT_SOLID = frozenset({"spread", "backing"})
"""Kinds that take up no room of their own: spread over others, or within a wall."""


class Block(NamedTuple):
    """An upright box, by its front left under corner and its rear right upper one (m)."""

    low: Vector
    high: Vector

    @property
    def size(self) -> Vector:
        """Return its length, width and height (m)."""
        low, high = self
        return high[0] - low[0], high[1] - low[1], high[2] - low[2]


@dataclass(frozen=True, slots=True)
class Body:
    """A thing as the boxes it fills. ``doubt`` is how far it may be off along each axis (m), infinite where unknown.

    ``known`` is False where its place or its size is not known: then ``blocks`` are empty or a guess that proves
    nothing. ``carried_by`` is the path of what it is inside of or rides on, empty where it stands for itself;
    ``is_inside`` tells the two apart. ``is_scattered`` says that its box holds several pieces that are not written one
    by one, so that not all of it is filled; ``is_stowed`` that it lies somewhere in what it is inside of, nobody wrote
    where. ``either`` are the boxes of which it fills some or others, nobody wrote which, each at one end of what is in
    doubt of them; empty where that is known, or nobody can say. ``is_hot`` says that it heats or burns.
    """

    of: str
    name: str
    blocks: tuple[Block, ...]
    doubt: Vector
    known: bool
    stands: Literal["yes", "perhaps"]
    kind: str
    carried_by: str = ""
    is_inside: bool = False
    is_scattered: bool = False
    is_stowed: bool = False
    is_hot: bool = False
    either: tuple[tuple[Block, ...], ...] = ()

    @property
    def around(self) -> Block:
        """Return the smallest box around it; it must have one."""
        return self.blocks[0] if len(self.blocks) == 1 else envelope(self.blocks)

    @property
    def is_sure(self) -> bool:
        """Return whether all its boxes are known to be filled."""
        return self.known and not self.is_scattered


MOST_LAID = 20_000
"""Bodies that are remembered before all of them are forgotten together."""
_laid: dict[tuple[str, str, Pose], tuple[Fitted, Body]] = {}
"""What each thing last came to, so that one that is as it was stays the same object."""


def standing_bodies(fitted: Iterable[Fitted], stood: Iterable[Standing], pose: Pose) -> tuple[Body, ...]:
    """Return what stands as bodies in one pose; what takes up no room, or leaves for the night, is left out."""
    known = {one.of: one for one in fitted}
    found = []
    for of, stands in stood:
        one = known.get(of)
        if one is None or one.kind in WITHOUT_SOLID or (pose == "night" and one.leaves_at_night):
            continue
        had = _laid.get((of, stands, pose))
        if had is None or had[0] is not one:
            if len(_laid) > MOST_LAID:
                _laid.clear()
            had = _laid[of, stands, pose] = one, body_of(one, stands, pose)
        found.append(had[1])
    return tuple(found)


def body_of(one: Fitted, stands: Literal["yes", "perhaps"], pose: Pose) -> Body:
    """Return one thing as a body in one pose."""
    place = place_in(one, pose)
    doubt = doubt_of(place)
    is_known = one.is_sized and all(isfinite(extent) for extent in doubt)
    blocks = _blocks(one, place) if one.is_sized and _is_somewhere(place) else ()
    return Body(
        of=one.of,
        name=one.name,
        blocks=blocks,
        doubt=doubt,
        known=is_known,
        stands=stands,
        kind=one.kind,
        carried_by=one.inside or one.rides_on,
        is_inside=bool(one.inside),
        is_stowed=bool(one.inside) and any(band.assumed for band in (place.x, place.y, place.z)),
        is_scattered=one.count > 1 and not one.pieces,
        is_hot=one.hazard in ("hot", "flame"),
    )


def place_in(one: Fitted, pose: Pose) -> Place:
    """Return where a thing is in a pose: its place at night, folded up for everything else, or as it is written."""
    other = one.asleep if pose == "night" else one.folded
    return other if other is not None else one.place


def facets_of(fitted: Iterable[Fitted]) -> dict[str, Facet]:
    """Return what layout reads of each thing that says something of how it moves or what room it wants."""
    return {one.of: one.facet for one in fitted if one.facet is not None}


def moved_block(block: Block, by: Vector) -> Block:
    """Return a box moved as a whole."""
    low, high = block
    return Block((low[0] + by[0], low[1] + by[1], low[2] + by[2]), (high[0] + by[0], high[1] + by[1], high[2] + by[2]))


def envelope(blocks: Iterable[Block]) -> Block:
    """Return the smallest upright box around some."""
    lows, highs = zip(*blocks, strict=True)
    return Block(tuple(map(min, zip(*lows, strict=True))), tuple(map(max, zip(*highs, strict=True))))


def doubt_of(place: Place) -> Vector:
    """Return how far a thing may be off along each axis (m), infinite where its place is not known."""
    return _half(place.x), _half(place.y), _half(place.z)


def _half(band: Band) -> float:
    """Return how far a middle may be off either way (m)."""
    return max(band.high - band.best, band.best - band.low, 0.0) if band.known else inf


def _is_somewhere(place: Place) -> bool:
    """Return whether there is a best guess of a place, however doubtful."""
    return all(isfinite(band.best) and band.known for band in (place.x, place.y, place.z))


def _blocks(one: Fitted, place: Place) -> tuple[Block, ...]:
    """Return the boxes of a thing: as it is written of it while it lies as written, else the one around it."""
    middles = one.along if one.along and place is one.place else (place.x.best,)
    found: list[Block] = []
    for x in middles:
        whole = _around((x, place.y.best, place.z.best), place.size)
        is_as_written = bool(one.pieces) and place.size == one.place.size
        found += [_piece(whole.low, piece) for piece in one.pieces] if is_as_written else [whole]
    if place is one.place or place is one.asleep:
        found += _legs(one, place)
    return tuple(found)


def _around(middle: Vector, size: Vector) -> Block:
    x, y, z = middle
    length, width, height = size[0] / 2.0, size[1] / 2.0, size[2] / 2.0
    return Block((x - length, y - width, z - height), (x + length, y + width, z + height))


def _piece(corner: Vector, piece: Piece) -> Block:
    low = (corner[0] + piece.low[0], corner[1] + piece.low[1], corner[2] + piece.low[2])
    return Block(low, (low[0] + piece.size[0], low[1] + piece.size[1], low[2] + piece.size[2]))


def _legs(one: Fitted, place: Place) -> list[Block]:
    """Return the legs of what folds as they stand when it is down; folded they lie against it and add nothing."""
    if not one.legs:
        return []
    by = tuple(here.best - there.best for here, there in
               zip((place.x, place.y, place.z), (one.place.x, one.place.y, one.place.z), strict=True))  # fmt: skip
    return [moved_block(Block(low, high), (by[0], by[1], by[2])) for low, high in one.legs]
