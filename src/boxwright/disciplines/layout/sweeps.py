"""What moves, and the room it takes up on its way: leaves and lids on hinges, drawers and steps that slide, beds.

A turn is exact: see ``method.first_meeting``. A slide is the box from where it is to where it ends. Both hold their end
positions.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import product
from math import hypot, inf, isfinite, pi
from typing import Literal

from boxwright.disciplines.layout.bodies import Block, Body, doubt_of, envelope, moved_block
from boxwright.disciplines.layout.meeting import NOTHING, TOUCH, are_in, grown
from boxwright.disciplines.layout.method import first_meeting, overlap
from boxwright.disciplines.layout.parts import Fitted, Swing
from boxwright.disciplines.layout.result import Certainty, Lacks
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces
from boxwright.records import dataclass
from boxwright.units import Band

NEVER = inf
"""How far something gets before it meets what it does not meet."""
QUARTER = pi / 2.0
HALF = pi
NEVER_OPENS = frozenset({"no", "not", "never", "fixed", "none"})
"""What is written of a leaf that does not open."""
BOTH = "both sides"
Far = Literal["best", "most", "least"]
"""How far something is taken to go: as is most likely, at most, or for certain."""
Facing = tuple[int, float]
"""The axis along which a thing looks, and the way."""
FLAT = 2.0
"""A thing so many times as wide as it is deep looks away from its flat side (common practice, no source)."""
What = Literal["leaf", "sash", "lid", "door", "slide", "bed"]
AXES: dict[str, tuple[int, float]] = {
    "front": (0, -1.0), "rear": (0, 1.0), "left": (1, -1.0), "right": (1, 1.0), "down": (2, -1.0), "up": (2, 1.0),
}  # fmt: skip
"""The axis and the way along it of each word."""
WALLS: dict[str, tuple[int, float]] = {word: AXES[word] for word in ("front", "rear", "left", "right")}
"""The axis of a wall and the way out of the room through it."""
EDGES: dict[str, tuple[int, float]] = {**WALLS, "bottom": (2, -1.0), "top": (2, 1.0)}


@dataclass(frozen=True, slots=True)
class Turn:
    """A box that turns on a hinge along one axis.

    ``along`` is the axis, with its way, from the hinge to the free edge before it turns; ``across`` that towards which
    it turns. ``hinge`` are the places of the hinge along the two; ``spans`` those of the box from the hinge along the
    two; ``width`` its span along the hinge. ``turn`` is how far (rad), ``at_most`` how far it may be where that is not
    written, ``at_least`` how far it surely does where that is less. Only what lies on the side it turns to is struck:
    what is behind the hinge is wall. ``begins`` is how far it has turned already where this is the second half of a way
    round a corner.
    """

    along: tuple[int, float]
    across: tuple[int, float]
    hinge: tuple[float, float]
    spans: tuple[tuple[float, float], tuple[float, float]]
    width: tuple[float, float]
    turn: float
    at_most: float
    begins: float = 0.0
    at_least: float = inf

    def to(self, far: Far) -> float:
        """Return how far it turns: at its best, at least or at most (rad)."""
        return {"best": self.turn, "most": self.at_most, "least": min(self.turn, self.at_least)}[far]

    def meets(self, block: Block, far: Far = "best") -> float:
        """Return the angle at which it meets a box (rad), infinite if it never does."""
        turn = self.to(far)
        if self.begins and turn <= 0.0:
            return NEVER
        (i, way_i), (j, way_j) = self.along, self.across
        k = 3 - i - j
        low, high = block
        if overlap(low[k], high[k], *self.width) <= TOUCH:
            return NEVER
        along = _seen(low[i], high[i], self.hinge[0], way_i)
        across = _seen(low[j], high[j], self.hinge[1], way_j)
        # a touch is no meeting
        along, across = (along[0] + TOUCH, along[1] - TOUCH), (across[0] + TOUCH, across[1] - TOUCH)
        across = (max(across[0], TOUCH), across[1])
        if along[0] >= along[1] or across[0] >= across[1]:
            return NEVER
        if _nearest(along, across) >= self.radius:
            return NEVER
        return self.begins + first_meeting(*self.spans, along, across, turn)

    @property
    def radius(self) -> float:
        """Return how far from the hinge its farthest corner is."""
        return max(hypot(x, y) for x in self.spans[0] for y in self.spans[1])

    @property
    def hold(self) -> Block:
        """Return a box around all its way."""
        (i, _), (j, _) = self.along, self.across
        k, radius = 3 - i - j, self.radius
        low, high = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
        low[i], high[i] = self.hinge[0] - radius, self.hinge[0] + radius
        low[j], high[j] = self.hinge[1] - radius, self.hinge[1] + radius
        low[k], high[k] = self.width
        return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


@dataclass(frozen=True, slots=True)
class Slip:
    """A box that slides along an axis: the box it leaves, how far it goes at its best, at most and surely (m).

    ``least`` is how far it surely goes, None where that is as far as at its best.
    """

    start: Block
    axis: int
    by: float
    most: float
    least: float | None = None

    def to(self, far: Far) -> float:
        """Return how far it slides, with its way along the axis: at its best, at least or at most (m)."""
        return {"best": self.by, "most": self.most, "least": self.by if self.least is None else self.least}[far]

    def meets(self, block: Block, far: Far = "best") -> float:
        """Return how far it slides before it meets a box (m), infinite if it never does."""
        if not are_in(self._swept(self.to(far)), block):
            return NEVER
        low, high = self.start.low[self.axis], self.start.high[self.axis]
        ahead = block.low[self.axis] - high if self.by > 0.0 else low - block.high[self.axis]
        return max(ahead, 0.0)

    @property
    def hold(self) -> Block:
        """Return the box of all its way, as far as it may go."""
        return self._swept(self.most)

    def _swept(self, by: float) -> Block:
        low, high = list(self.start.low), list(self.start.high)
        low[self.axis] += min(by, 0.0)
        high[self.axis] += max(by, 0.0)
        return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


@dataclass(frozen=True, slots=True)
class Mover:
    """Something that moves: the ways its pieces take, and where they begin if that is not where it stands.

    ``outside`` says that it moves outside the shell, where nothing in the room can be in its way. ``starts`` are boxes
    it fills before it moves that its own body does not show, ``may_start`` those it fills at most and ``surely_start``
    those it fills for certain, where these are others. ``doubt`` is how far it may be off along each axis (m).
    ``carrier`` is the path of what it goes along with, empty where it moves by itself; ``is_usual`` says that nobody
    wrote how it moves, so that it is taken to go as such things mostly do.
    """

    of: str
    name: str
    what: What
    ways: tuple[Turn | Slip, ...]
    whole: float
    outside: bool = False
    starts: tuple[Block, ...] = ()
    may_start: tuple[Block, ...] = ()
    surely_start: tuple[Block, ...] = ()
    doubt: Vector = NOTHING
    carrier: str = ""
    is_usual: bool = False

    @property
    def turns(self) -> bool:
        """Return whether it turns, else it slides."""
        return any(isinstance(way, Turn) for way in self.ways)

    def meets(self, block: Block, far: Far = "best") -> float:
        """Return how far it gets before it meets a box, infinite if it never does."""
        starts = {"best": self.starts, "most": self.may_start, "least": self.surely_start}[far] or self.starts
        if any(are_in(start, block) for start in starts):
            return 0.0
        return min((way.meets(block, far) for way in self.ways), default=NEVER)


def _seen(low: float, high: float, hinge: float, way: float) -> tuple[float, float]:
    return (low - hinge, high - hinge) if way > 0.0 else (hinge - high, hinge - low)


def _nearest(along: tuple[float, float], across: tuple[float, float]) -> float:
    return hypot(max(along[0], -along[1], 0.0), max(across[0], -across[1], 0.0))


def written_turn(band: Band | None) -> tuple[float, float, float]:
    """Return how far something turns at its best, at most, at least: unwritten, a right angle to a half turn.

    Where it is written that nobody knows, it may be anything up to a half turn, and as little as nothing.
    """
    if band is None or not band.known:
        return QUARTER, HALF, QUARTER if band is None else 0.0
    return band.best, max(band.best, band.high), min(band.best, band.low)


def slid(band: Band) -> tuple[float, float, float]:
    """Return how far something slides at its best, at most and at least (m)."""
    return band.best, max(band.best, band.high), min(band.best, band.low)


# ------------------------------------------------------------------ parts


def is_unsaid(swing: Swing) -> bool:
    """Return whether it is written that something opens, and nothing of how."""
    return not (swing.hinge or swing.opens)


def moving_part(one: Fitted, body: Body, room: Surfaces) -> tuple[list[Mover], Lacks | None]:
    """Return how a part opens or slides, and what is written of that so that it cannot be understood."""
    facet, found = one.facet, list[Mover]()
    lacks: Lacks | None = None
    if facet is None or not body.blocks:
        return [], None
    if facet.slides is not None:
        slip = _slides(one, body)
        found += [slip] if slip is not None else []
        lacks = "slide" if slip is None else None
    if facet.swing is not None and facet.swing.opens not in NEVER_OPENS:
        swung = _swings(one, body, facet.swing, room)
        found += [swung] if swung is not None else []
        if swung is None and lacks is None:
            lacks = "swing" if is_unsaid(facet.swing) else "turn"
    return found, lacks


def _slides(one: Fitted, body: Body) -> Mover | None:
    slides = one.facet.slides if one.facet is not None else None
    if slides is None or slides.to not in AXES or slides.by is None or not slides.by.known:
        return None
    axis, way = AXES[slides.to]
    by, most, least = (way * end for end in slid(slides.by))
    ways = tuple(Slip(block, axis, by, most, least) for block in body.blocks)
    return Mover(one.of, one.name, "slide", ways, abs(by), doubt=body.doubt)


def _swings(one: Fitted, body: Body, swing: Swing, room: Surfaces) -> Mover | None:
    """Return a lid, which opens up about an edge of the top, or a door in the face that looks away from the wall."""
    block, turns = body.blocks[0], written_turn(swing.to)
    edge = EDGES.get(swing.hinge)
    if edge is None:
        return None
    if swing.opens == "up" and edge[0] != 2:
        return Mover(one.of, one.name, "lid", (turned(block, edge, (2, 1.0), turns),), turns[0], doubt=body.doubt)
    faces = (AXES[swing.opens],) if swing.opens in AXES else ways_it_faces(one.wall, block, room)
    faces = tuple(face for face in faces if face[0] != edge[0])
    if swing.opens not in {"out", "", *WALLS} or not faces:
        return None
    ways = tuple(turned(block, edge, face, turns) for face in faces)
    return Mover(one.of, one.name, "door", ways, turns[0], doubt=body.doubt, is_usual=len(faces) > 1)


def ways_it_faces(wall: str, block: Block, room: Surfaces) -> tuple[Facing, ...]:
    """Return the ways the face of a thing may look, each as axis and way: one, where it is known.

    It looks away from the wall it is written to hang on, else from the one it is nearest to. Where two are as near, as
    in a corner, a flat thing looks away from its flat side; of any other nobody knows. What stands outside the shell
    looks away from it; what may lie in its wall, or before the front where a nose may be, either way.
    """
    if outdoors := _faces_outdoors(block, room):
        return outdoors
    if wall in WALLS:
        axis, outward = WALLS[wall]
        return ((axis, -outward),)
    (low_x, low_y, _), (high_x, high_y, _) = block
    away: dict[Facing, float] = {
        (0, 1.0): low_x - room.front, (0, -1.0): room.rear - high_x,
        (1, 1.0): low_y - room.left, (1, -1.0): room.right - high_y,
    }  # fmt: skip
    nearest = min(away.values())
    near = sorted((face for face, far in away.items() if far <= nearest + LENGTHS["as near"]), key=away.__getitem__)
    wide, deep = block.size[0], block.size[1]
    flat = [face for face in near if block.size[face[0]] * FLAT <= (deep, wide)[face[0]]]
    return tuple(flat or near)


def _faces_outdoors(block: Block, room: Surfaces) -> tuple[Facing, ...]:
    """Return the ways a thing may look that stands outside the studs of a wall; none where it stands in the room."""
    studs = {"front": room.studs_front, "rear": room.studs_rear, "left": room.studs_left, "right": room.studs_right}
    for wall, face in studs.items():
        axis, out = WALLS[wall]
        near, far = sorted(out * (end - face) for end in (block.low[axis], block.high[axis]))
        if isfinite(face) and near >= -LENGTHS["play"]:
            is_either = wall == "front" or (near <= LENGTHS["play"] and far <= LENGTHS["wall reach"])
            return ((axis, out), (axis, -out)) if is_either else ((axis, out),)
    return ()


def way_it_faces(wall: str, block: Block, room: Surfaces) -> Facing:
    """Return the way the face of a thing looks, the likeliest where nobody knows."""
    return ways_it_faces(wall, block, room)[0]


def turned(block: Block, edge: tuple[int, float], face: tuple[int, float], turns: tuple[float, float, float]) -> Turn:
    """Return the face of a box as it turns open about one of its edges, at its best, at most and at least so far."""
    along, side = edge
    axis, out = face
    hinge = block.high[along] if side > 0.0 else block.low[along]
    plane = block.high[axis] if out > 0.0 else block.low[axis]
    reach, across = block.size[along], 3 - along - axis
    width = (block.low[across], block.high[across])
    spans = ((0.0, reach), (0.0, 0.0))
    return Turn((along, -side), (axis, out), (hinge, plane), spans, width, turns[0], turns[1], at_least=turns[2])


# ------------------------------------------------------------------ beds


def bed_of(one: Fitted) -> Mover | None:
    """Return a bed as it comes down from where it is folded up; None where it folds about nothing that is known.

    Its own thickness turns with it about the edge of its underside at the wall. What lies on it folds within its folded
    depth, and what is behind its hinge is in the wall.
    """
    up = one.folded
    known = (one.place.x, one.place.y, one.place.z)
    if up is None or not one.is_sized or not all(band.known for band in known):
        return None
    if one.hinge not in {"left", "right"}:
        return None
    (x, y, z), (length, width, thick) = (band.best for band in known), one.place.size
    way = 1.0 if one.hinge == "left" else -1.0
    hinge = y - way * width / 2.0
    spans = ((0.0, width), (-thick, 0.0))
    turn = Turn(
        along=(2, 1.0),
        across=(1, way),
        hinge=(z - thick / 2.0, hinge),
        spans=spans,
        width=(x - length / 2.0, x + length / 2.0),
        turn=QUARTER,
        at_most=QUARTER,
    )
    low_z, depth, deep = z - thick / 2.0, up.size[1], one.folded_depth
    most, least = (max(deep.high, depth), min(deep.low, depth)) if deep is not None else (depth, depth)

    def stowed(deep: float) -> Block:
        sides = (hinge, hinge + way * deep)
        return Block((x - length / 2.0, min(sides), low_z), (x + length / 2.0, max(sides), low_z + width))

    return Mover(
        one.of, one.name, "bed", (turn,), QUARTER, starts=(stowed(depth),), may_start=(stowed(min(most, width)),),
        surely_start=(stowed(max(least, thick)),), doubt=doubt_of(one.place),
    )  # fmt: skip


Met = tuple[float, Certainty] | None
"""How far something gets before it strikes a thing, and how sure that is; None where it does not."""
MOST_MOVERS = 2_000
"""Movers that are remembered before all of them are forgotten together."""
MOST_POSES = 4
"""How often as many bodies as there are now are remembered of each: three poses, and what has moved since."""
_before: dict[tuple[str, str, str], tuple[Mover, dict[int, tuple[Body, Met]]]] = {}
"""What each mover last met of each body, so that only what moved is looked at again."""


def struck_by(mover: Mover, bodies: Sequence[Body], skipped: frozenset[str]) -> Iterator[tuple[float, Body, Certainty]]:
    """Yield how far something gets before it strikes each thing in its way, and how sure that is.

    What is in the way only where either is in doubt, or only if it opens farther than is written, is in the way
    perhaps; what is met by no more than the play of hinges and linings is grazed.
    """
    known = _known_of(mover, MOST_POSES * len(bodies))
    hold: Block | None = None
    for body in bodies:
        if body.of in skipped or not body.blocks:
            continue
        had = known.get(id(body))
        if had is None:  # it is kept with its body, so that no other one has the same number
            hold = hold or _hold_of(mover)
            had = known[id(body)] = body, _met(mover, hold, body)
        if had[1] is not None:
            at, sure = had[1]
            yield at, body, sure


def _known_of(mover: Mover, most: int) -> dict[int, tuple[Body, Met]]:
    """Return what is known already of what a mover meets: nothing, unless it moves just as it did."""
    key = mover.of, mover.name, mover.what
    had = _before.get(key)
    if had is None or had[0] != mover or len(had[1]) > most:
        if len(_before) > MOST_MOVERS:
            _before.clear()
        had = _before[key] = mover, {}
    return had[1]


def met(mover: Mover, body: Body) -> Met:
    """Return how far something gets before it strikes one thing, and how sure that is; None where it does not."""
    return _met(mover, _hold_of(mover), body) if body.blocks else None


def _hold_of(mover: Mover) -> Block:
    return envelope([*(way.hold for way in mover.ways), *mover.starts, *mover.may_start])


def _met(mover: Mover, hold: Block, body: Body) -> Met:
    if body.either:
        return _met_either(mover, hold, body)
    (x, y, z), (other_x, other_y, other_z) = mover.doubt, body.doubt
    off = (x + other_x, y + other_y, z + other_z)
    if not are_in(hold, grown(body.around, off)):
        return None
    blocks = [block for block in body.blocks if are_in(hold, grown(block, off))]
    at = min((mover.meets(block) for block in blocks), default=NEVER)
    if at < NEVER:
        pared = [_pared(block) for block in blocks]
        if min(mover.meets(block) for block in pared) < NEVER:
            return at, "sure" if body.is_sure and is_met_anyhow(mover, pared, off) else "perhaps"
        deeper = any(mover.meets(grown(block, off), "most") < NEVER for block in pared)
        return at, "perhaps" if deeper and any(off) else "grazes"
    at = min((mover.meets(grown(block, off), "most") for block in blocks), default=NEVER)
    return (at, "perhaps") if at < NEVER else None


def _met_either(mover: Mover, hold: Block, body: Body) -> Met:
    """Return the same of a thing that fills some boxes or others: it is surely struck where it is in each way."""
    hull = _met(mover, hold, replace(body, either=(), is_scattered=True))
    if hull is None or hull[1] == "grazes":
        return hull
    ways = [replace(body, blocks=blocks, either=(), is_scattered=False) for blocks in body.either]
    found = [_met(mover, hold, one) if one.blocks else None for one in ways]
    hits = [hit for hit in found if hit is not None and hit[1] == "sure"]
    return (min(at for at, _ in hits), "sure") if len(hits) == len(ways) else hull


def is_met_anyhow(mover: Mover, blocks: Iterable[Block], off: Vector) -> bool:
    """Return whether something meets one of some boxes however little it opens, at each end of where they may be."""
    blocks = tuple(blocks)
    ends = product(*((-far, far) if far else (0.0,) for far in off))
    return all(any(mover.meets(moved_block(block, (x, y, z)), "least") < NEVER for block in blocks) for x, y, z in ends)


def _pared(block: Block) -> Block:
    """Return a box less the play on every side, as far as it is thick enough."""
    by = tuple(min(LENGTHS["play"], size / 4.0) for size in block.size)
    return grown(block, (-by[0], -by[1], -by[2]))
