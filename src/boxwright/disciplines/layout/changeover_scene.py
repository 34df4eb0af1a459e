"""What may be done at one moment of a change-over: every pose of every mover as a bit, and what meets what.

A state is the pose of each mover, by index. A way that was found once stays good wherever nothing stands in what it
sweeps, and where none was found there is none with still more in the way; both are remembered.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, envelope
from boxwright.disciplines.layout.changeover import ASIDE, OUTSIDE, Freed, Gate, Mover, Setting
from boxwright.disciplines.layout.changeover_lattice import TOUCH
from boxwright.disciplines.layout.changeover_leaves import Leaves
from boxwright.disciplines.layout.changeover_ways import overlaps, way
from boxwright.disciplines.layout.meeting import grown
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import NEVER
from boxwright.exchange import Vector

State = tuple[int, ...]
Pose = tuple[int, int]
"""A mover and one of its poses, by index."""
Key = tuple[Pose, int, int, bool]
"""A carry: the pose it begins with (or ends in, coming in), the pose within or -1, the opening or -1; is it turned."""
UP, DOWN = 0, 1
"""The poses of a leaf and of what goes up and down with it."""
TURNING = 3
"""A way on which a thing is turned takes as long to look for as so many others."""
RESTING = 0.005
"""How near (m) an underside is to a top for one thing to lie on the other."""


class Board:
    """A setting made ready to be searched."""

    def __init__(self, setting: Setting) -> None:
        """Give each pose its bit and see which of them overlap, and what lies on what."""
        self.setting = setting
        self.movers = setting.movers
        self.index = {one.of: number for number, one in enumerate(setting.movers)}
        self.gates = [
            (number, next(gate for gate in setting.gates if gate.of == one.of))
            for number, one in enumerate(setting.movers)
            if one.kind == "gate"
        ]
        self.turns = {turn.of: turn for turn in setting.turns}
        self.leaves = Leaves(setting)
        self._poses = [(i, p) for i, one in enumerate(setting.movers) for p in range(len(one.poses))]
        self._bit = {pose: 1 << number for number, pose in enumerate(self._poses)}
        self._free: dict[Key, list[int]] = {}
        self._shut: dict[Key, list[int]] = {}
        self._alone: dict[Key, bool] = {}
        self.exits: dict[tuple[State, bool], tuple[Freed, ...]] = {}
        self.ways = 0
        self._elsewhere = frozenset(pose for pose in self._poses if self._is_elsewhere(pose))
        self._clash = {pose: self._clashes(pose) for pose in self._poses}
        self._fixed_clash = {pose: self._fixed_clashes(pose) for pose in self._poses}
        self._under = {pose: self._beneath(pose) for pose in self._poses}
        self.apart = frozenset(i for i, one in enumerate(self.movers) if one.kind == "set" and self._is_apart(i))

    # ------------------------------------------------------------------ what stands

    def state(self, is_goal: bool) -> State:
        """Return the state a change-over begins or ends with."""
        return tuple(one.goal if is_goal else one.start for one in self.movers)

    def present(self, state: State) -> int:
        """Return the bits of the poses of a state."""
        mask = 0
        for pose in enumerate(state):
            mask |= self._bit[pose]
        return mask

    def standing(self, state: State) -> list[Block]:
        """Return every box that stands in a state, but for those nothing is ever carried past."""
        found = [block for one in self.setting.fixed for block in one.blocks]
        return found + [block for pose in enumerate(state) if pose[0] not in self.apart for block in self.blocks(pose)]

    def blocks(self, pose: Pose) -> tuple[Block, ...]:
        """Return the boxes of one pose."""
        return self.movers[pose[0]].poses[pose[1]].blocks

    def bit(self, mover: int, pose: int) -> int:
        """Return the bit of one pose of a mover."""
        return self._bit[mover, pose]

    def names(self, mask: int) -> tuple[str, ...]:
        """Return the names of the movers whose poses are in a mask."""
        return tuple(dict.fromkeys(self.movers[i].name for i, p in self._poses if mask & self._bit[i, p]))

    # ------------------------------------------------------------------ what meets

    def _may_overlap(self, pose: Pose, other: Pose) -> bool:
        one, its = self.movers[pose[0]], self.movers[other[0]]
        is_within = its.of in one.within and pose not in self._elsewhere
        holds = one.of in its.within and other not in self._elsewhere
        return is_within or holds or one.rides == its.of or its.rides == one.of

    def _is_elsewhere(self, pose: Pose) -> bool:
        """Return whether a thing has a place of its own at night that is neither in nor on what it rides in or on."""
        one = self.movers[pose[0]]
        carrier = self.index.get(one.carried_by)
        word = one.poses[pose[1]].word
        if carrier is None or word not in {"night", ASIDE}:
            return False
        if word == ASIDE:
            return True
        inside = one.body is not None and one.body.is_inside
        held = (block for q in self._carrying(carrier, word) for block in self.blocks((carrier, q)))
        return not any(_is_in(a, b) if inside else _is_on(a, b) for b in held for a in self.blocks(pose))

    def _carrying(self, carrier: int, word: str) -> list[int]:
        """Return the poses in which a thing carries another in a pose of some word: those alike, else any inside."""
        words = [other.word for other in self.movers[carrier].poses]
        alike = {word} if word in words else {*words} - {OUTSIDE, ASIDE}
        return [q for q, other in enumerate(words) if other in alike]

    def _clashes(self, pose: Pose) -> int:
        """Return the poses of other movers that cannot be where this one is."""
        one, blocks, mask = self.movers[pose[0]], self.blocks(pose), 0
        for other in self._poses if blocks else ():
            mover = self.movers[other[0]]
            if _is_crammed(one, pose[1], mover, other[1]) or _is_crammed(mover, other[1], one, pose[1]):
                mask |= self._bit[other]
                continue
            if other[0] != pose[0] and not self._may_overlap(pose, other) and overlaps(blocks, self.blocks(other)):
                mask |= self._bit[other]
        return mask

    def _fixed_clashes(self, pose: Pose) -> tuple[str, ...]:
        one, blocks = self.movers[pose[0]], self.blocks(pose)
        return tuple(
            body.name for body in self.setting.fixed if body.of not in one.within and overlaps(blocks, body.blocks)
        )

    def meets(self, pose: Pose, state: State) -> tuple[str, ...]:
        """Return the names of what a mover overlaps where it is put down."""
        return (*self._fixed_clash[pose], *self.names(self._clash[pose] & self.present(state)))

    def _is_apart(self, mover: int) -> bool:
        """Return whether a thing outside meets nothing in any pose, and stands before no opening one carries through.

        Then it makes no difference when it is moved.
        """
        poses = [(mover, p) for p in range(len(self.movers[mover].poses))]
        if any(self._clash[pose] or self._fixed_clash[pose] for pose in poses):
            return False
        if any(other.carried_by == self.movers[mover].of for other in self.movers):
            return False
        blocks = [block for pose in poses for block in self.blocks(pose)]
        if overlaps(blocks, (self.setting.room,)):
            return False
        return not any(_is_before(block, gate) for block in blocks for _, gate in self.gates if gate.carries)

    # ------------------------------------------------------------------ what lies on what

    def _beneath(self, pose: Pose) -> int:
        """Return the poses of other movers of which one must be there to carry a thing; none where it needs nobody."""
        one, blocks = self.movers[pose[0]], self.blocks(pose)
        if one.kind != "carry" or one.rides or not blocks:
            return 0
        declared = self.index.get(one.carried_by)
        if declared is not None and pose not in self._elsewhere:
            return sum(self._bit[declared, q] for q in self._carrying(declared, one.poses[pose[1]].word))
        floor = Block((-1e3, -1e3, self.setting.room.low[2]), (1e3, 1e3, self.setting.room.low[2]))
        solid = [floor, *(block for body in self.setting.fixed for block in body.blocks)]
        if any(_rests(a, b) for a in blocks for b in solid):
            return 0
        mask = 0
        for other in self._poses:
            if other[0] != pose[0] and any(_rests(a, b) for a in blocks for b in self.blocks(other)):
                mask |= self._bit[other]
        return mask

    def is_held(self, pose: Pose, present: int) -> bool:
        """Return whether what a thing would lie on is there."""
        return not self._under[pose] or bool(self._under[pose] & present)

    def fallen(self, state: State) -> Iterator[tuple[str, str]]:
        """Yield the names of what would lie on nothing in a state, and of what it needs there."""
        present = self.present(state)
        for pose in enumerate(state):
            if not self.is_held(pose, present):
                yield self.movers[pose[0]].name, " or ".join(self.names(self._under[pose]))

    def is_on_leaf(self, pose: Pose) -> bool:
        """Return whether a thing lies on a leaf that is down."""
        return any(one.kind == "fold" and self._under[pose] & self._bit[i, DOWN] for i, one in enumerate(self.movers))

    def lying_on(self, mover: int, state: State) -> tuple[str, ...]:
        """Return the names of what would fall if a mover were taken away as it is now."""
        left = self.present(state) & ~self._bit[mover, state[mover]]
        return tuple(self.movers[j].name for j, p in enumerate(state) if j != mover and not self.is_held((j, p), left))

    # ------------------------------------------------------------------ may it move

    def could_pass(self, mover: int, gate: int, is_turned: bool) -> bool:
        """Return whether a thing could be carried through an opening if nothing that moves stood in its way."""
        for pose, _ in enumerate(self.movers[mover].poses):
            base = (mover, pose)
            if not self.blocks(base) or self.movers[mover].poses[pose].word == ASIDE:
                continue
            if self._passes_alone((base, -1, gate, is_turned)):
                return True
        return False

    def _passes_alone(self, key: Key) -> bool:
        if key not in self._alone:
            found = self._way(key[0], None, key[2], key[3], ())
            self._alone[key] = found is not None
            if found is not None:
                self._keep(key, found, ())
        return self._alone[key]

    def in_the_way(self, mover: int, gate: int, is_turned: bool, state: State) -> frozenset[int] | None:
        """Return what stands on the way out of a thing, of the ways known the freest; None where it has no way out."""
        key = ((mover, state[mover]), -1, gate, is_turned)
        if not self._passes_alone(key):
            return None
        present = self.present(state) & ~self._bit[mover, state[mover]]
        spoilt = min((touched & present for touched in self._free[key]), key=int.bit_count)
        return frozenset(j for j, p in enumerate(state) if spoilt & self._bit[j, p])

    def can_carry(self, mover: int, to: int, gate: int | None, is_turned: bool, state: State) -> bool:
        """Return whether a thing can be carried from where it is to another pose, through an opening or within."""
        here, there = (mover, state[mover]), (mover, to)
        present = self.present(state) & ~self._bit[here]
        is_in = not self.blocks(here)  # what comes in takes the way out, backwards
        base = there if is_in else here
        if self.blocks(there) and (self._clash[there] & present or self._fixed_clash[there]):
            return False
        key = (base, -1 if gate is not None else to, -1 if gate is None else gate, is_turned)
        if any(not touched & present for touched in self._free.get(key, ())):
            return True
        if any(present & shut == shut for shut in self._shut.get(key, ())):
            return False
        found = self._way(base, None if gate is not None else there, gate, is_turned, state)
        if found is None:
            self._shut.setdefault(key, []).append(present)
            return False
        self._keep(key, found, state)
        return True

    def _keep(self, key: Key, swept: Sequence[Block], state: State) -> None:
        """Remember a way that was found, with every pose of other things that would spoil it."""
        base, to, gate, _ = key
        spoilt = self._touched((base,) if to < 0 else (base, (base[0], to)), swept) & ~self._clash[base]
        if gate >= 0:
            others = (base, *(pose for pose in enumerate(state) if pose[0] != base[0]))
            for pose in self.leaves.narrows(self.movers[gate].of, others, self._poses):
                if pose[0] != base[0]:
                    spoilt |= self._bit[pose]
        self._free.setdefault(key, []).append(spoilt)

    def _way(
        self, base: Pose, there: Pose | None, gate: int | None, is_turned: bool, state: State
    ) -> tuple[Block, ...] | None:
        self.ways += TURNING if is_turned else 1
        one, blocks = self.movers[base[0]], self.blocks(base)
        ends = (base,) if there is None else (base, there)
        stands = [block for body in self.setting.fixed if body.of not in one.within for block in body.blocks]
        for pose in enumerate(state):
            if pose[0] != base[0] and not any(self._may_overlap(end, pose) for end in ends):
                stands += self.blocks(pose)
        stands = [block for block in stands if not overlaps(blocks, (block,))]
        by: Vector | None = None
        if there is not None:
            low, other = envelope(blocks).low, envelope(self.blocks(there)).low
            by = (other[0] - low[0], other[1] - low[1], other[2] - low[2])
        hole = next((found for number, found in self.gates if number == gate), None)
        if hole is not None:  # what is carried stands, before or after, where the leaf may want to be
            others = (base, *(pose for pose in enumerate(state) if pose[0] != base[0]))
            low, high = self.leaves.hole(hole.of, hole.low, hole.high, others)
            hole = replace(hole, low=low, high=high)
        return way(blocks, by, hole, stands, self.setting.room, one.lift, is_turned)

    def _touched(self, ends: tuple[Pose, ...], swept: Sequence[Block]) -> int:
        mask = 0
        for pose in self._poses:
            is_apart = pose[0] != ends[0][0] and not any(self._may_overlap(end, pose) for end in ends)
            if is_apart and overlaps(swept, self.blocks(pose)):
                mask |= self._bit[pose]
        return mask

    def turn_meets(self, leaf: int, to: int, state: State) -> tuple[str, ...]:
        """Return the names of what a leaf meets on its way up or down; what lies on it folds with it."""
        present = self.present(state)
        found = [name for name, is_grazed in self._struck(leaf, state) if not is_grazed]
        found += self._fixed_clash[leaf, to]
        found += self.names(self._clash[leaf, to] & present)
        for j, other in enumerate(self.movers):
            if other.rides == self.movers[leaf].of and self.blocks((j, state[j])):
                found += self.names(self._clash[j, to] & present)
                found += [other.name] if not other.fits else []
        return tuple(dict.fromkeys(found))

    def turn_grazes(self, leaf: int, state: State) -> tuple[str, ...]:
        """Return the names of what a leaf passes on its way with no more than the play of its hinge."""
        return tuple(name for name, is_grazed in self._struck(leaf, state) if is_grazed)

    def _struck(self, leaf: int, state: State) -> Iterator[tuple[str, bool]]:
        """Yield what a leaf strikes on its way, and whether by no more than hinges and linings give."""
        one = self.movers[leaf]
        turn = self.turns.get(one.of)
        if turn is None:
            return
        things = [(body.name, body.blocks) for body in self.setting.fixed if body.of not in one.within]
        for j, other in enumerate(self.movers):
            if j != leaf and other.rides != one.of and not self._may_overlap((leaf, state[leaf]), (j, state[j])):
                things.append((other.name, self.blocks((j, state[j]))))
        for name, blocks in things:
            if any(turn.meets(block) < NEVER for block in blocks):
                yield name, all(turn.meets(_pared(block)) >= NEVER for block in blocks)

    def gate_meets(self, gate: int, state: State) -> tuple[str, ...]:
        """Return the names of what a door meets that opens inwards."""
        opening = next(found for number, found in self.gates if number == gate)

        def meets(blocks: tuple[Block, ...]) -> bool:
            if not overlaps(opening.sweep, blocks):
                return False
            is_met = self.leaves.meets_opening(opening.of, blocks)
            return True if is_met is None else is_met

        found = [body.name for body in self.setting.fixed if meets(body.blocks)]
        return (
            *found,
            *(self.movers[j].name for j, p in enumerate(state) if j != gate and meets(self.blocks((j, p)))),
        )


def emptied(board: Board, state: State) -> State:
    """Return a state with everything that can be carried outside."""
    found = list(state)
    for i, one in enumerate(board.movers):
        out = outside_of(one)
        if one.kind == "carry" and out is not None:
            found[i] = out
    return tuple(found)


def outside_of(one: Mover) -> int | None:
    """Return the pose of a thing in which it is outside."""
    return next((p for p, pose in enumerate(one.poses) if pose.word == OUTSIDE), None)


def _is_crammed(one: Mover, pose: int, leaf: Mover, leaf_pose: int) -> bool:
    """Return whether a thing is on a leaf that is up, though it does not go up with it."""
    return one.rides == leaf.of and not one.fits and pose == leaf_pose == UP


def _pared(block: Block) -> Block:
    """Return a box less the play of hinges and linings on every side, as far as it is thick enough."""
    by = tuple(min(LENGTHS["play"], size / 4.0) for size in block.size)
    return grown(block, (-by[0], -by[1], -by[2]))


def _is_before(block: Block, gate: Gate) -> bool:
    """Return whether a box stands outside before an opening, as high as what is carried out through it."""
    axis, is_far = {"left": (1, False), "right": (1, True), "front": (0, False), "rear": (0, True)}.get(
        gate.wall, (2, True)
    )
    beyond = block.high[axis] > gate.high[axis] if is_far else block.low[axis] < gate.low[axis]
    others = [other for other in range(3) if other != axis]
    return beyond and all(
        block.low[other] < gate.high[other] and block.high[other] > gate.low[other] for other in others
    )


def _is_on(above: Block, below: Block) -> bool:
    """Return whether a box stands on another, or a little in it, being larger for all that is in doubt."""
    return _is_over(above, below) and 2.0 * above.low[2] > below.low[2] + below.high[2]


def _is_in(one: Block, other: Block) -> bool:
    return _is_over(one, other) and one.low[2] < other.high[2] - TOUCH and other.low[2] < one.high[2] - TOUCH


def _is_over(above: Block, below: Block) -> bool:
    return all(
        above.low[axis] < below.high[axis] - TOUCH and below.low[axis] < above.high[axis] - TOUCH for axis in (0, 1)
    )


def _rests(above: Block, below: Block) -> bool:
    return abs(above.low[2] - below.high[2]) <= RESTING and _is_over(above, below)
