"""The openings of a change-over: how each opens, what is carried by it, and what its leaf lets through."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isfinite, pi

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import OPEN, SHUT, Freed, Gate, Hung, Mover, Posed, Release, Wall
from boxwright.disciplines.layout.changeover_numbers import REACHED, SECONDS
from boxwright.disciplines.layout.laid_back import held_outside
from boxwright.disciplines.layout.opened_holes import opened_hole
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.pockets import Around, hits_in_wall
from boxwright.disciplines.layout.resting import let_in
from boxwright.disciplines.layout.result import Stopped
from boxwright.disciplines.layout.solve import opened
from boxwright.disciplines.layout.stopping import faces_of, stopped
from boxwright.disciplines.layout.sweeps import NEVER_OPENS, QUARTER, Turn
from boxwright.disciplines.layout.sweeps import Mover as Sweep
from boxwright.disciplines.layout.terraces import is_placed, sides_of
from boxwright.disciplines.layout.ways import is_exit
from boxwright.disciplines.safety.parts import Facet as SafetyFacet
from boxwright.disciplines.safety.result import Exit
from boxwright.disciplines.safety.solve import OPENED_BY
from boxwright.model.place import Surfaces
from boxwright.model.stage import Stands
from boxwright.rig.rig import Item, Rig
from boxwright.study.at_night import walls_of
from boxwright.study.slots import Slot
from boxwright.study.standing import Standing

WALLS: dict[str, Wall] = {"front": "front", "rear": "rear", "left": "left", "right": "right", "roof": "roof"}

SHUT_FOR_GOOD = frozenset({"none", "key", "tool"})
"""What does not open an opening from inside with a bare hand."""
ROUNDED = 1e-9
"""Less than this (rad) is no smaller angle, only rounded otherwise."""


class Openings:
    """The openings that stand at an end of a change-over; what nobody wrote of them is added to ``asks``."""

    def __init__(
        self,
        rig: Rig,
        slot: Slot,
        standing: Standing,
        stands: Mapping[str, Stands],
        exits: tuple[Exit, ...],
        asks: list[str],
    ) -> None:
        """Take what stands, and the ways out as they are judged of the night."""
        self._rig, self._slot, self._standing, self._stands = rig, slot, standing, stands
        self._exits, self._asks = exits, asks
        self._hull = walls_of(rig, slot.box) if slot.box is not None else None

    def _every(self) -> Iterator[Closed]:
        """Yield the openings that stand, in a place that is known."""
        stands = {one.of: one for one in self._standing.openings}
        for one in self._rig.layout.closed:
            if one.of not in stands or one.wall not in WALLS or not is_placed(one.place):
                continue
            if not (self._slot.is_ticked and stands[one.of].opening.cut is False):
                yield one

    def exits(self) -> tuple[Closed, ...]:
        """Return the openings somebody could get out through: all that safety judges as ways out."""
        ways = {one.way.of for one in self._exits if one.there != "no"}
        return tuple(one for one in self._rig.layout.closed if one.of in ways)

    def gates(self, hopes: bool = False) -> Iterator[Gate]:
        """Yield the openings people get through, if only just, with what is carried by them and how they open.

        Their holes are as large as their leaves surely leave them, or with ``hopes`` at most.
        """
        room, ways = self._rig.layout.room, {one.of for one in self.exits()}
        for one in self._every():
            swing = one.facet.swing if one.facet is not None else None
            is_wide = _is_for_people(one)
            if not is_wide and one.of not in ways:
                continue
            slides = one.facet.slides if one.facet is not None else None
            self._asks += _unsaid(one) if is_wide else []
            low, high = opened_hole(one, at_most=hopes)
            is_low = room is not None and low[2] - room.floor <= REACHED["sill"]
            is_in = slides is None and swing is not None and swing.opens == "in"
            never = swing is not None and swing.opens in NEVER_OPENS
            does_open = slides is not None or (not never and (hopes or (swing is not None and bool(swing.hinge))))
            along = 1 if one.wall in {"front", "rear"} else 0
            is_hole = high[along] > low[along] and high[2] >= low[2]
            sweep = _sweep(one, low, high) if is_in else ()
            stands = self._stands_open(one, sweep, hopes) if is_in else ()
            yield Gate(
                one.of, one.name, WALLS[one.wall], low, high, self._release(one),
                is_wide and is_low and does_open and is_hole, sweep, stands,
            )  # fmt: skip

    def _stands_open(self, one: Closed, sweep: tuple[Block, ...], hopes: bool) -> tuple[Block, ...]:
        """Return what the leaf of an opening fills that stands open inwards: square to its wall, where it surely can.

        Where it opens less, that is all it sweeps, or with ``hopes`` nothing.
        """
        room = self._rig.layout.room
        leaves = self._leaves(one, room) if room is not None else []
        turns = [way for leaf in leaves if not leaf.outside for way in leaf.ways if isinstance(way, Turn)]
        if turns and all(way.to("least") >= QUARTER - ROUNDED for way in turns):
            return tuple(_at_right_angle(way) for way in turns)
        return () if hopes else sweep

    def _leaves(self, one: Closed, room: Surfaces) -> list[Sweep]:
        return opened(one, self._hull.outer if self._hull is not None else None, room)[0]

    def unsure(self) -> Iterator[str]:
        """Yield what is asked where a hole may let through more than its leaf surely leaves of it."""
        surely = {gate.of: (gate.carries, gate.low, gate.high) for gate in self.gates()}
        for gate in self.gates(hopes=True):
            if not gate.carries or surely[gate.of] == (gate.carries, gate.low, gate.high):
                continue
            one = next(found for found in self._every() if found.of == gate.of)
            swing = one.facet.swing if one.facet is not None else None
            to = swing.to if swing is not None else None
            if unsaid := _unsaid(one):
                yield from unsaid
            elif to is not None and to.known and to.low >= pi / 2.0:
                yield f"how wide and high {one.name} is, and where: measure it"
            elif to is not None and to.known and to.low == to.high:
                yield f"whether it goes aslant past the leaf of {one.name}, which opens no farther: try it"
            elif to is not None:
                yield f"how far {one.name} opens: write to: of its swing, such as to: 90 deg"
            else:
                yield f"how far {one.name} slides, and how wide it is: measure it"
        carrying = {gate.of for gate in self.gates(hopes=True) if gate.carries}
        for hung in self.hung():
            if hung.opening.of not in carrying:
                continue
            if any(leaf.is_usual for leaf in hung.leaves) or not all(sure for _, _, sure in hung.stops):
                yield f"how far {hung.opening.name} opens before something stops its leaf: try it"

    def around(self) -> Around | None:
        """Return what a leaf that slides into its wall may meet there, but for what is let in and may be moved."""
        room, hull = self._rig.layout.room, self._hull
        if room is None or hull is None:
            return None
        return Around(tuple(self._every()), hull.within, (), let_in(self._rig.layout.fitted), hull.outer, room)

    def _outside(self, leaf: Sweep, one: Closed) -> Iterator[Stopped]:
        """Yield what of the shell, and the ground, ends the way of a leaf that opens outward."""
        swing = one.facet.swing if one.facet is not None else None
        if swing is not None and self._hull is not None:
            yield from held_outside(leaf, swing.to, self._hull.outer, self._hull.ground)

    def _release(self, one: Closed) -> Release:
        """Return what opens an opening from inside, as the ways out are judged: as it is written, or by a part."""
        if any(other.of == one.of and other.share.low != other.share.high for other in self._standing.openings):
            return "not in yet"
        item = next((found for found in self._rig.openings if found.of == one.of), None)
        facet = _safety(item) if item is not None else None
        written = OPENED_BY.get(facet.release.strip().lower(), "unknown") if facet is not None else "unknown"
        if any(found.way.of == one.of and found.way.said_otherwise for found in self._exits):
            return "unknown" if written == "inside" else written
        for part in self._rig.parts:
            built = _safety(part)
            if built is not None and built.release.strip() == one.name and self._stands.get(part.of) == "yes":
                return "inside"
        return written

    def mover(self, gate: Gate) -> Mover:
        """Return an opening as what is opened and shut."""
        poses = (Posed(SHUT, ()), Posed(OPEN, gate.stands))
        return Mover(gate.of, gate.name, "gate", poses, 0, 0, SECONDS[self._height(gate)], 1)

    def _height(self, gate: Gate) -> str:
        one = next(found for found in self._rig.layout.closed if found.of == gate.of)
        hinge = one.facet.swing.hinge if one.facet is not None and one.facet.swing is not None else ""
        return "ramp" if hinge == "bottom" else "door" if gate.carries else "window"

    def held(self) -> Iterator[Freed]:
        """Yield the ways out that let nobody, or perhaps nobody, through whatever stands before them."""
        placed = {one.of for one in self._every() if is_exit(one)}
        for one in self._exits:
            of, name = one.way.of, one.way.name
            if one.there == "perhaps":
                yield Freed(of, name, "perhaps")
            elif one.way.is_fixed:
                yield Freed(of, name, "fixed")
            elif of not in placed and one.opens in SHUT_FOR_GOOD:
                yield Freed(of, name, "shut", () if one.opens == "none" else (one.opens,))
            elif one.is_too_small:
                yield Freed(of, name, "blocked", ("its own leaf",))
            elif of not in placed or one.way.facet.egress == "unknown" or _may_be_small_by_its_leaf(one):
                yield Freed(of, name, "unknown")
            elif not one.is_measured or _is_more_than_the_hole(one):
                yield Freed(of, name, "unmeasured")

    def hung(self) -> Iterator[Hung]:
        """Yield the leaf of each opening as it opens, with the faces of the room that stop it."""
        room, ways = self._rig.layout.room, {one.way.of: one.way for one in self._exits}
        if room is None:
            return
        faces = faces_of(room, self._hull is not None and self._hull.has_nose)
        closed, around = tuple(self._every()), self.around()
        for one in closed:
            leaves = self._leaves(one, room)
            stops = [
                (stop.face, stop.reached, stop.sure == "sure")
                for leaf in leaves
                for stop in (stopped(leaf, faces, closed) if not leaf.outside else self._outside(leaf, one))
            ]
            if around is not None:
                stops += [(other.name, at, sure == "sure") for at, other, sure in hits_in_wall(one, around)]
            way = ways.get(one.of)
            span = (way.height if way.is_level else way.width) if way is not None else None
            kind = [way is not None and word in way.turns for word in ("both", "bottom")]
            known = span.best if span is not None and span.known else None
            yield Hung(one, tuple(leaves), known, kind[0], kind[1], tuple(stops))


def _is_more_than_the_hole(one: Exit) -> bool:
    """Return whether what is written to be clear of a way out is more than its hole, so that it is to be measured."""
    written, way = one.way.facet.clear, one.way
    if written is None:
        return False
    sides = ((written.width, way.width), (written.height, way.height))
    return any(a is not None and b is not None and a.known and b.known and a.low > b.high for a, b in sides)


def _may_be_small_by_its_leaf(one: Exit) -> bool:
    """Return whether what is reckoned to be clear of a way out may be too little, and nobody measured it."""
    return one.may_be_too_small and one.way.facet.clear is None


def _unsaid(one: Closed) -> list[str]:
    """Return what nobody wrote of how an opening opens, as something that is asked; nothing where it is written."""
    slides, swing = (one.facet.slides, one.facet.swing) if one.facet is not None else (None, None)
    if slides is not None:
        is_known = slides.by is not None and slides.by.known
        return [] if is_known else [f"how far {one.name} slides: write its slides by"]
    if swing is None or not (swing.hinge or swing.opens in NEVER_OPENS):
        return [f"how {one.name} opens: write its swing, such as swing: {{hinge: front, opens: out}}"]
    return []


def _at_right_angle(turn: Turn) -> Block:
    """Return where a leaf is that has turned by a right angle."""
    (i, way_i), (j, way_j) = turn.along, turn.across
    k = 3 - i - j
    low, high = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    low[i], high[i] = sorted(turn.hinge[0] - way_i * thick for thick in turn.spans[1])
    low[j], high[j] = sorted(turn.hinge[1] + way_j * far for far in turn.spans[0])
    low[k], high[k] = turn.width
    return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _sweep(one: Closed, low: tuple[float, float, float], high: tuple[float, float, float]) -> tuple[Block, ...]:
    """Return the whole square before an opening as what its leaf takes up that opens inwards: never too little."""
    along = 1 if one.wall in {"front", "rear"} else 0
    swing = one.facet.swing if one.facet is not None else None
    is_flap = swing is not None and swing.hinge in {"top", "bottom"}
    deep = high[2] - low[2] if is_flap else high[along] - low[along]
    first, last = list(low), list(high)
    if one.wall == "roof":
        first[2] = low[2] - max(high[0] - low[0], high[1] - low[1])
        return (Block((first[0], first[1], first[2]), high),)
    out = 1 - along
    if one.wall in {"front", "left"}:
        last[out] = high[out] + deep
    else:
        first[out] = low[out] - deep
    return (Block((first[0], first[1], first[2]), (last[0], last[1], last[2])),)


def _is_for_people(one: Closed) -> bool:
    sides = sides_of(one)
    return all(isfinite(side) for side in sides) and min(sides) >= ROOM["pass"]


def _safety(item: Item) -> SafetyFacet | None:
    facet = item.facet("safety")
    return facet if isinstance(facet, SafetyFacet) else None
