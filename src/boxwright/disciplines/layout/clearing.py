"""The least move of a thing, with all in and on it, after which it meets nothing: tried against all that stands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import isfinite
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body, envelope, moved_block
from boxwright.disciplines.layout.meeting import TOUCH, are_in, grown, least_clear, nearest_free, overlaps
from boxwright.disciplines.layout.result import Axis, Shift
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import NEVER, Mover
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces

AXES: tuple[Axis, ...] = (0, 1)
"""The axes a thing is pushed along that stands on something: what is lifted has nothing to stand on."""
HUNG: tuple[Axis, ...] = (0, 1, 2)
"""The axes along which a thing is hung elsewhere that hangs on a wall."""

HALF = 0.5


class Clearings:
    """What stands in one slot, asked where a thing could be pushed to: clear of all else, and of all that moves."""

    def __init__(
        self,
        bodies: Sequence[Body],
        roots: dict[str, str],
        movers: Iterable[Mover],
        kept: Iterable[tuple[str, Block]],
        passages: Iterable[Block],
        room: Surfaces,
        beds: frozenset[str] = frozenset(),
    ) -> None:
        """Take what stands and moves; ``beds`` are the paths of what is slept on, which moves for nothing else."""
        self._bodies = {body.of: body for body in bodies}
        self._roots = roots
        self._movers = tuple(movers)
        self._kept, self._passages = tuple(kept), tuple(passages)
        self._solids = [(body.of, grown(block, body.doubt)) for body in bodies if body.known for block in body.blocks]
        self._is_whole = all(body.known for body in bodies)
        self._room, self._beds = room, beds
        self._found: dict[str, Shift | None] = {}
        self._borne: dict[str, list[Body]] = {}
        for of, body in self._bodies.items():
            self._borne.setdefault(roots.get(of, of), []).append(body)

    def of(self, body: Body, other: Body) -> Shift | None:
        """Return the least move of the first of two that clears it of everything; None where there is none."""
        del other
        return self.by(body.of)

    def by(self, of: str) -> Shift | None:
        """Return the least move of a thing, or of what carries it, that clears it of everything."""
        root = self._roots.get(of, of)
        if root not in self._found:
            self._found[root] = self._least(root)
        return self._found[root]

    def _least(self, root: str) -> Shift | None:
        own = self._borne.get(root, [])
        if not self._is_whole or root not in self._bodies or not all(body.blocks for body in own):
            return None  # what has no place may be anywhere, and so where this one would go
        if any(mover.of == body.of for mover in self._movers for body in own):
            return None  # with it moves what it opens or folds to, which is another question
        if any(body.of in self._beds for body in own):
            return None
        blocks = [grown(block, body.doubt) for body in own for block in body.blocks]
        mine = {body.of for body in own}
        # what it wants clear goes with it, and is as little to be in anything there
        wanted = [block for of, block in self._kept if of in mine]
        whole = envelope([*blocks, *wanted])
        others = [block for of, block in self._solids if of not in mine]
        is_hung = self._bodies[root].kind != "cargo" and self._hangs(envelope(blocks), others)
        axes = HUNG if is_hung else AXES
        if axes == AXES:  # what is wholly above or below it is met along neither axis
            bottom, top = whole.low[2], whole.high[2]
            others = [block for block in others if block[0][2] < top and block[1][2] > bottom]
        moving = [mover for mover in self._movers if not (mover.outside and self._is_inside(blocks))]
        kept = [block for of, block in self._kept if of not in mine]
        # room before a door that it mostly stands in already is not won back by leaving it there
        kept += [block for block in self._passages if _share(envelope(blocks), block) < HALF]
        found = [self._along(axis, _Load(tuple(blocks), tuple(wanted)), others, kept, moving) for axis in axes]
        shifts = [(abs(by), axis, by) for axis, by in zip(axes, found, strict=True) if by is not None and by != 0.0]
        if not shifts:
            return None
        _, axis, by = min(shifts)
        return Shift(root, self._bodies[root].name, axis, by)

    def _along(
        self, axis: Axis, load: _Load, others: list[Block], kept: list[Block], moving: list[Mover]
    ) -> float | None:
        """Return the least shift along one axis: past the boxes around all that moves, then back to their ways."""
        whole = envelope([*load.own, *load.wanted])
        ends = self._ends(load, axis)
        first, second = (one for one in range(3) if one != axis)
        others = [
            one
            for one in others
            if one.low[first] < whole.high[first]
            and one.high[first] > whole.low[first]
            and one.low[second] < whole.high[second]
            and one.high[second] > whole.low[second]
        ]  # nothing else can be met along this axis
        at_rest = nearest_free(load.met_by(others, kept), axis, ends)
        if at_rest is None:
            return None

        def is_clear(by: float) -> bool:
            there = [moved_block(block, _vector(axis, by)) for block in load.own]
            around = [moved_block(block, _vector(axis, by)) for block in load.wanted]
            return (
                not any(are_in(one, other) for one in there for other in (*others, *kept))
                and not any(are_in(one, other) for one in around for other in others)
                and all(mover.meets(grown(block, mover.doubt), "most") >= NEVER for mover in moving for block in there)
            )

        if is_clear(at_rest):
            return at_rest
        holds = [grown(way.hold, mover.doubt) for mover in moving for way in mover.ways]
        holds += [grown(start, mover.doubt) for mover in moving for start in mover.starts]
        safe = nearest_free(load.met_by(others, [*kept, *holds]), axis, ends)
        if safe is None or is_clear(0.0):
            return safe
        nearest = least_clear(is_clear, safe)
        return nearest if is_clear(nearest) else None

    def _ends(self, load: _Load, axis: int) -> tuple[float, float]:
        """Return how far a box may go each way before it leaves the room; what is outside of it may go nowhere.

        What it wants clear goes no farther into a wall than it is already.
        """
        room, block = self._room, envelope(load.own)
        low, high = ((room.front, room.rear), (room.left, room.right), (room.floor, room.ceiling))[axis]
        if not self._is_inside([block]) or not (isfinite(low) and isfinite(high)):
            return 0.0, 0.0
        ends = low - block.low[axis], high - block.high[axis]
        for one in load.wanted:
            ends = max(ends[0], min(low - one.low[axis], 0.0)), min(ends[1], max(high - one.high[axis], 0.0))
        return ends

    def _hangs(self, block: Block, others: Iterable[Block]) -> bool:
        """Return whether a thing stands on nothing: off the floor, and with no top right under it."""
        bottom, play = block.low[2], LENGTHS["play"]
        under = Block((block.low[0], block.low[1], bottom - play - TOUCH), (block.high[0], block.high[1], bottom))
        on_it = (one for one in others if one.high[2] <= bottom + play)
        return bottom > self._room.floor + play + TOUCH and not any(are_in(under, one) for one in on_it)

    def _is_inside(self, blocks: Iterable[Block]) -> bool:
        room, whole = self._room, envelope(blocks)
        return (
            room.studs_front - TOUCH <= whole.low[0]
            and whole.high[0] <= room.studs_rear + TOUCH
            and room.studs_left - TOUCH <= whole.low[1]
            and whole.high[1] <= room.studs_right + TOUCH
        )


class _Load(NamedTuple):
    """What is pushed: the boxes of a thing with all in and on it, and the room they want clear."""

    own: tuple[Block, ...]
    wanted: tuple[Block, ...]

    def met_by(self, others: list[Block], kept: list[Block]) -> list[tuple[Block, Block]]:
        """Return what is not to be in what: room that two things want clear may be the same."""
        pairs = [(one, other) for other in (*others, *kept) for one in self.own]
        return [*pairs, *((one, other) for other in others for one in self.wanted)]


def _share(one: Block, other: Block) -> float:
    """Return which share of a box is in another."""
    inside = [max(depth, 0.0) for depth in overlaps(one, other)]
    whole = one.size[0] * one.size[1] * one.size[2]
    return inside[0] * inside[1] * inside[2] / whole if whole > 0.0 else 0.0


def _vector(axis: Axis, by: float) -> Vector:
    return (by if axis == 0 else 0.0, by if axis == 1 else 0.0, by if axis == 2 else 0.0)
