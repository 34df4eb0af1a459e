"""From a setting to what is told: the change-over in the order of hands, what blocks it, and how everybody gets out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations
from math import hypot
from typing import NamedTuple

from boxwright.disciplines.layout.changeover import (
    OUTSIDE,
    Changed,
    Leaving,
    Mover,
    Setting,
)
from boxwright.disciplines.layout.changeover_aside import least
from boxwright.disciplines.layout.changeover_beds import beds_aside
from boxwright.disciplines.layout.changeover_exits import exits_at
from boxwright.disciplines.layout.changeover_leaving import leaving
from boxwright.disciplines.layout.changeover_scene import Board, State, emptied, outside_of
from boxwright.disciplines.layout.changeover_search import MOST_STATES, MOST_WAYS, Done, Found
from boxwright.disciplines.layout.changeover_steps import steps_of
from boxwright.disciplines.layout.changeover_unpacked import backwards
from boxwright.disciplines.layout.terraces import sides_of

MOST_TRIED = 40
"""So many things, or pairs of things, are tried as what must stay outside."""
PROBED = 300
PROBED_WAYS = 150
"""Each of those tries gives up after so many states, and all together after so many ways of things.

They get half as many after a search that was itself cut short.
"""
BUILT_IN = "what is built in"
TOO_LARGE = "the frame of every opening, being too large for each"
NO_OPENING = "no opening that things are carried through"


class Told(NamedTuple):
    """A change-over there and back, and out of bed where one of its ends is the night."""

    there: Changed
    back: Changed
    out: Leaving | None


def told(
    setting: Setting, ends_at_night: bool, begins_at_night: bool = False, most: int = MOST_STATES, ways: int = MOST_WAYS
) -> Told:
    """Return the change-over of a setting both ways; what must be left out is left out on the way back too.

    Where a night that is begun from cannot be as it is written, it is begun from as one comes to it.
    """
    board = Board(setting)
    start, goal = board.state(is_goal=False), board.state(is_goal=True)
    if begins_at_night and any(_overlapping(board, start)):
        back, begun = changed(board, goal, start, most, ways)
        if back.word == "without":
            there, _ = changed(board, begun, goal, most, ways, 0)
            if there.word == "found":
                there = replace(there, word="without", leave_out=back.leave_out)
            return Told(there, back, leaving(board, begun))
    there, goal, moves = _sought(board, start, goal, most, ways, PROBED_WAYS)
    # from where nobody comes to, it need not be known what would have to be left out on the way back
    probed = PROBED_WAYS if there.word in {"found", "without"} else 0
    like = (start, moves) if there.word == "found" and not there.is_least else None
    back, *_ = _sought(board, goal, start, most, ways, probed, like)
    night = goal if ends_at_night else start if begins_at_night else None
    return Told(there, back, leaving(board, night) if night is not None else None)


def changed(
    board: Board,
    start: State,
    goal: State,
    most: int = MOST_STATES,
    ways: int = MOST_WAYS,
    probed: int = PROBED_WAYS,
) -> tuple[Changed, State]:
    """Return the least change-over from one state to another or what is in its way, and the state it ends in.

    ``probed`` is how many ways may be looked for to say what would have to be left out.
    """
    return _sought(board, start, goal, most, ways, probed)[:2]


def _sought(
    board: Board,
    start: State,
    goal: State,
    most: int,
    ways: int,
    probed: int,
    like: tuple[State, tuple[Done, ...]] | None = None,
) -> tuple[Changed, State, tuple[Done, ...]]:
    """Return the same with the moves; ``like`` is where the way there began, and its moves: they may do backwards."""
    overlaps = tuple(_overlapping(board, start))
    same = set(overlaps)
    meets = tuple(one for one in _overlapping(board, goal) if one not in same)
    meets = (*meets, *(one for one in _met_on_the_way(board, start, goal) if one not in meets))
    fallen = tuple(board.fallen(goal))
    undone = backwards(board, *like) if like is not None and not (meets or fallen) else None
    used, found = board, undone or Found(None, 0.0, 0, True)
    if undone is None and not (meets or fallen):
        used, found = least(board, start, goal, most, ways)
    if found.moves is not None:
        return _told(used, start, goal, found, Changed("found", overlaps=overlaps)), goal, found.moves
    ending = Changed("blocked" if found.is_exhausted else "not-found", states=found.states, overlaps=overlaps)
    ending = replace(ending, meets=meets, fallen=fallen, before=exits_at(board, start))
    last_way = board.ways + (probed if found.is_exhausted else probed // 2)
    for leave_out in _candidates(board, goal, meets):
        if board.ways >= last_way:
            break
        other = _without(board, goal, leave_out)
        if _met_on_the_way(board, start, other):
            continue
        used, again = least(board, start, other, PROBED, last_way - board.ways, is_probe=True)
        if again.moves is not None:
            names = tuple(one.name for one, p, q in zip(board.movers, goal, other, strict=True) if p != q)
            ending = replace(ending, word="without", leave_out=names)
            return _told(used, start, other, again, ending), other, again.moves
    return ending, goal, ()


# ------------------------------------------------------------------ what is told of a search


def _told(board: Board, start: State, goal: State, found: Found, ending: Changed) -> Changed:
    found = found._replace(moves=beds_aside(board, start, found.moves or ()))
    moved = dict.fromkeys(move.mover for move, _ in found.moves or ())
    meanwhile = tuple(
        (board.movers[i].name, board.movers[i].poses[goal[i]].word) for i in moved if board.movers[i].kind != "gate"
    )
    grazes, before = list[tuple[str, str]](), start
    for move, state in found.moves or ():
        one = board.movers[move.mover]
        if one.kind == "fold":
            grazes += [(one.name, name) for name in board.turn_grazes(move.mover, before)]
        before = state
    return replace(
        ending,
        grazes=tuple(grazes),
        steps=tuple(steps_of(board, start, found)),
        before=exits_at(board, start),
        cost=found.cost,
        states=found.states,
        is_least=found.is_least,
        meanwhile=meanwhile,
    )


# ------------------------------------------------------------------ what blocks


def _overlapping(board: Board, state: State) -> Iterator[tuple[str, str]]:
    """Yield the pairs of names that overlap in a state, those of the first mover first."""
    for i, p in enumerate(state):
        for name in board.meets((i, p), state):
            pair = (board.movers[i].name, name)
            number = next((j for j, one in enumerate(board.movers) if one.name == name), -1)
            if number < 0 or number > i:
                yield pair


def _met_on_the_way(board: Board, start: State, goal: State) -> tuple[tuple[str, str], ...]:
    """Return what a thing that must move meets though nothing that can move is in its way: what is built in."""
    found = []
    for i, one in enumerate(board.movers):
        is_crossing = start[i] != goal[i] and OUTSIDE in (one.poses[start[i]].word, one.poses[goal[i]].word)
        if one.kind == "carry" and is_crossing:
            gates = [number for number, gate in board.gates if gate.carries]
            if not any(board.could_pass(i, number, turned) for number in gates for turned in (False, True)):
                found.append((one.name, _barred_by(board, one)))
        elif one.kind == "fold" and start[i] != goal[i]:
            found += [(one.name, name) for name in board.turn_meets(i, goal[i], emptied(board, start))]
    return tuple(found)


def _barred_by(board: Board, one: Mover) -> str:
    """Return what a thing meets on every way out of or into the room: frames it is too large for, or a leaf, or more.

    A leaf that opens too little is told where the bare hole would do.
    """
    gates = [gate for _, gate in board.gates if gate.carries]
    if not gates:
        return NO_OPENING
    bare = {hung.opening.of: sides_of(hung.opening) for hung in board.setting.hung}
    held = ""
    for gate in gates:
        along = 1 if gate.wall in {"front", "rear"} else 0
        low, high = board.leaves.hole(gate.of, gate.low, gate.high, ())
        left = high[along] - low[along], high[2] - low[2]
        if _goes_through(one, left):
            return BUILT_IN
        if _goes_through(one, bare.get(gate.of, left)):
            stopper = board.leaves.stopper(gate.of)
            why = f"is stopped by {stopper}" if stopper else "does not open far enough"
            held = f"the leaf of {gate.name}, which {why}"
    return held or TOO_LARGE


def _goes_through(one: Mover, hole: tuple[float, float]) -> bool:
    """Return whether a thing may go through a hole of some size, by its size alone.

    Its middle side has to pass the hole from corner to corner, its least the lesser side of the hole.
    """
    sides = [sorted(block.size) for pose in one.poses for block in pose.blocks]
    return all(side[0] <= min(hole) and side[1] <= hypot(*hole) for side in sides)


def _candidates(board: Board, goal: State, meets: tuple[tuple[str, str], ...]) -> Iterator[tuple[int, ...]]:
    """Yield what could stay outside as well, the fewest first; where things overlap in the end, what parts them.

    However many those are that alone part what overlaps. Last comes all that could help.
    """
    free = [
        i
        for i, one in enumerate(board.movers)
        if one.kind == "carry" and one.may_leave and one.poses[goal[i]].word != OUTSIDE
    ]
    parted = {i: _parted(board, goal, (i,), meets) for i in free}
    must = tuple(i for i in free if any(not any(pair in parted[j] for j in free if j != i) for pair in parted[i]))
    left = {pair for pair in meets if pair not in set().union(*(parted[i] for i in must))}
    able = [i for i in free if i not in must and (parted[i] & left or not meets)]
    count = 0
    for size in (0, 1, 2, 3) if meets else (0, 1, 2):
        for more in combinations(able, size):
            chosen = (*must, *more)
            other = _without(board, goal, chosen)
            if not left <= set().union(*(parted[i] for i in more)) or other == goal:
                continue
            if size > 1 and any(goal[i] == other[i] for i in chosen):
                continue
            yield chosen
            count += 1
            if count >= MOST_TRIED:
                return
    yield tuple(sorted((*must, *able)))


def _parted(
    board: Board, goal: State, chosen: tuple[int, ...], meets: tuple[tuple[str, str], ...]
) -> frozenset[tuple[str, str]]:
    """Return the pairs that overlap no more where some things, and all they carry, are left outside."""
    other = _without(board, goal, chosen)
    names = {one.name for one, p, q in zip(board.movers, goal, other, strict=True) if p != q}
    return frozenset(pair for pair in meets if names & set(pair))


def _without(board: Board, goal: State, chosen: tuple[int, ...]) -> State:
    """Return the goal with some things outside, and with them all that would have nothing left to lie on."""
    found = list(goal)
    for i in chosen:
        found[i] = outside_of(board.movers[i]) or found[i]
    for _ in board.movers:
        present = board.present(tuple(found))
        fallen = [j for j, p in enumerate(found) if not board.is_held((j, p), present)]
        if not fallen:
            break
        for j in fallen:
            found[j] = outside_of(board.movers[j]) or found[j]
    return tuple(found)
