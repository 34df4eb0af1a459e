"""The openings that big things are brought in by, as far as what stands by then lets their leaves open."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body, doubt_of, moved_block
from boxwright.disciplines.layout.both_open import THIN, turned_open
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.held_leaves import Hold, holds_of, leaves_of
from boxwright.disciplines.layout.opened_holes import SHUT, opened_hole
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.pockets import Around, hits_of
from boxwright.disciplines.layout.result import Hole
from boxwright.disciplines.layout.solve import Hull
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.stopping import faces_of, is_within
from boxwright.disciplines.layout.sweeps import NEVER, NEVER_OPENS, Mover, Turn
from boxwright.disciplines.layout.terraces import UPRIGHT, is_placed, sides_of
from boxwright.model.place import Surfaces
from boxwright.records import dataclass

Names = tuple[tuple[str, str], ...]


class Ways(NamedTuple):
    """The ways in past what stands: the hole each surely leaves, largest first, and what others may leave at most.

    ``least`` is how wide and high the smallest of them surely is (m), that of a door that opens little a leaf's.
    """

    sure: tuple[Gate, ...]
    perhaps: tuple[Gate, ...]
    least: float

    @property
    def every(self) -> tuple[Gate, ...]:
        """Return each way in once: by what it surely leaves, else by what it may."""
        known = {gate.of for gate in self.sure}
        return (*self.sure, *(gate for gate in self.perhaps if gate.of not in known))


@dataclass(frozen=True, slots=True)
class Door:
    """An opening at a stage, and what ends the way of its leaves then; ``is_sure`` says that it is there for certain.

    ``leaves`` are those that can be drawn, ``count`` how many may be held: one that slides into its wall is seen by
    nobody. ``is_drawn`` is False where it is written how it opens and that says nothing.
    """

    closed: Closed
    is_sure: bool
    holds: tuple[Hold, ...] = ()
    leaves: tuple[Mover, ...] = ()
    count: int = 0
    is_drawn: bool = True

    def at(self, is_sure: bool, there: Container[str], surely: Container[str]) -> Door:
        """Return it as a stage begins, with what is ``there`` by then; what is not ``surely`` there may not hold it."""
        holds = tuple(
            one if not _is_part(one.of) or one.of in surely else replace(one, most=NEVER)
            for one in self.holds
            if not _is_part(one.of) or one.of in there
        )
        return replace(self, is_sure=is_sure, holds=holds)

    def gate(self, gone: Container[str] = (), at_most: bool = False) -> Gate:
        """Return what is free of it: surely, or at most; ``gone`` are the paths of what does not hold it.

        A leaf that stands in the room is in the way there; at most, only where nobody doubts how far it goes.
        """
        least, most = ([NEVER] * self.count for _ in "ab")
        for one in self.holds:
            if one.of not in gone:
                least[one.leaf] = min(least[one.leaf], one.least)
                most[one.leaf] = min(most[one.leaf], one.most)
        ends = most if at_most else least
        low, high = opened_hole(self.closed, ends if self.is_drawn or at_most else (0.0,), at_most)
        inside = [
            block
            for leaf, near, far in zip(self.leaves, least, most, strict=False)
            if not (leaf.outside or (at_most and leaf.is_usual))
            for block in _open_in(leaf, near, far, at_most)
        ]
        closed = self.closed
        return Gate(closed.of, closed.name, closed.wall, low, high, "unknown", True, tuple(inside))  # type: ignore[arg-type]

    def holders(self, in_doubt: bool = False) -> Names:
        """Return what keeps its leaves from opening as far as they would; ``in_doubt`` only what perhaps does."""
        every, found = {one.of for one in self.holds}, list[tuple[str, str]]()
        for one in self.holds:
            narrow, wide = (self.gate(every - {one.of}, at_most) for at_most in (False, True))
            if narrow != self.gate(every) and not (in_doubt and wide == narrow):
                found.append((one.of, one.name))
        return tuple(dict.fromkeys(found))


def hole_of(one: Closed) -> Hole:
    """Return a bare hole, as large as it may be."""
    width, height = sides_of(one)
    along = 1 if one.wall in {"front", "rear"} else 0
    return Hole(one.of, one.name, width + one.off[along], height + one.off[2 if one.wall in UPRIGHT else 1])


def _is_part(of: str) -> bool:
    """Return whether a path is one of a thing: what is in a wall, or the room itself, is there at any stage."""
    return of.startswith("parts[")


def _open_in(leaf: Mover, least: float, most: float, at_most: bool) -> Iterator[Block]:
    """Yield boxes that hold a leaf as it stands open, as far as it goes for certain."""
    for way in leaf.ways:
        ends = [min(abs(way.to("least")), least), min(abs(way.to("most")), most)]
        if at_most and abs(ends[1] - ends[0]) > SHUT:
            continue
        if isinstance(way, Turn):
            beside = [0.0, 0.0, 0.0]  # its thickness is taken off no hole
            beside[way.along[0]] = -way.along[1] * THIN
            strips = turned_open(way, ends[0], is_cover=True)
            yield from (moved_block(strip, (beside[0], beside[1], beside[2])) for strip in strips)
        else:
            by = [0.0, 0.0, 0.0]
            by[way.axis] = ends[0] if way.by > 0.0 else -ends[0]
            yield moved_block(way.start, (by[0], by[1], by[2]))


def doors_of(
    closed: Iterable[Closed],
    bodies: Sequence[Body],
    hull: Hull,
    room: Surfaces,
    depths: Mapping[tuple[str, str], float] = MappingProxyType({}),
) -> tuple[Door, ...]:
    """Return the openings of upright walls that big things may be brought in by, each with all that may hold it.

    ``depths`` are how deep things are let into their walls (m), by their paths and the wall.
    """
    faces, holes, found = faces_of(room, hull.has_nose), tuple(closed), list[Door]()
    within = frozenset(body.of for body in bodies if is_within(body, room))
    around = Around(holes, hull.within, tuple(bodies), depths, hull.outer, room)
    for one in holes:
        if is_placed(one.place) and min(sides_of(one)) > 0.0 and _may_be_way_in(one, room):
            leaves = leaves_of(one, hull.outer, room)
            holds = tuple(holds_of(leaves, bodies, within, faces, holes))
            pocket = tuple(
                Hold(other.of or other.name, other.name, 0, at, at if sure == "sure" else NEVER)
                for at, other, sure in hits_of(one, around)
            )
            is_drawn = bool(leaves) or not _is_written(one)
            found.append(Door(one, True, (*holds, *pocket), leaves, max(len(leaves), bool(pocket)), is_drawn))
    return tuple(found)


def ways_by(doors: Iterable[Door], gone: Container[str] = ()) -> Ways:
    """Return the ways in that some doors leave; ``gone`` are the paths of what does not hold them."""
    sure, perhaps, least = list[Gate](), list[Gate](), list[float]()
    for one in doors:
        narrow, wide = one.gate(gone), one.gate(gone, at_most=True)
        if not is_wide(wide):
            continue
        least.append(max(min(clear_of(narrow)), LENGTHS["leaf"]))
        if one.is_sure and is_wide(narrow):
            sure.append(narrow)
        if not one.is_sure or narrow != wide:
            perhaps.append(wide)
    order = sorted(sure, key=_area, reverse=True)
    return Ways(tuple(order), tuple(perhaps), min(least, default=LENGTHS["leaf"]))


def clear_of(gate: Gate) -> tuple[float, float]:
    """Return how wide and how high the hole of a way in is (m)."""
    along = 0 if gate.wall in {"left", "right"} else 1
    return gate.high[along] - gate.low[along], gate.high[2] - gate.low[2]


def is_wide(gate: Gate) -> bool:
    """Return whether big things may be brought in by a hole at all."""
    return min(clear_of(gate)) >= LENGTHS["leaf"]


def told_hole(gate: Gate) -> Hole:
    """Return a way in as it is told."""
    return Hole(gate.of, gate.name, *clear_of(gate))


def _may_be_way_in(one: Closed, room: Surfaces) -> bool:
    """Return whether big things may be brought in by an opening: in a wall, over a low sill, wide, and it opens."""
    swing = one.facet.swing if one.facet is not None else None
    is_shut = swing is not None and swing.opens in NEVER_OPENS
    sill = one.place.z.best - one.place.size[2] / 2.0 - room.floor
    is_wide = min(hole_of(one).width, hole_of(one).height) + _beyond(one) >= LENGTHS["leaf"]
    return one.wall in UPRIGHT and is_wide and not is_shut and sill <= LENGTHS["carried over"]


def _beyond(one: Closed) -> float:
    """Return by how much a hole may reach farther than its own size, by where it may be (m)."""
    return 2.0 * max(off for axis, off in enumerate(doubt_of(one.place)) if UPRIGHT.get(one.wall) != axis)


def _is_written(one: Closed) -> bool:
    """Return whether it is written how an opening turns."""
    swing = one.facet.swing if one.facet is not None and one.facet.slides is None else None
    return swing is not None and bool(swing.hinge or swing.opens)


def _area(gate: Gate) -> float:
    width, height = clear_of(gate)
    return width * height
