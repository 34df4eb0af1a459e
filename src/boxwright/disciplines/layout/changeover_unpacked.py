"""A change-over by taking out what stands in the way and bringing it back: found soon, not proved to be the least work.

Each thing that moves has a way of its own through the room; what stands on it is taken out first, and so on. From the
end it is the same backwards; between the two, beds are folded and doors opened by a search among few.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from boxwright.disciplines.layout.changeover import OPEN
from boxwright.disciplines.layout.changeover_beds import done_in_order
from boxwright.disciplines.layout.changeover_scene import Board, State, outside_of
from boxwright.disciplines.layout.changeover_search import (
    Done,
    Found,
    Move,
    after_a_move,
    cheapest,
    may_be_next,
    price_of,
    price_of_turning,
)

MOST_BETWEEN = 500
"""The search for what is done while all that is in the way is out gives up after so many states."""


class _Way(NamedTuple):
    """How a thing goes out if nothing is in its way: the opening, is it turned, and the movers that are on that way."""

    gate: int
    is_turned: bool
    blocked_by: frozenset[int]


class _Task(NamedTuple):
    """What there is to unpack: what can be taken out at all, and after how many ways it is given up."""

    board: Board
    able: frozenset[int]
    last_way: int


def unpacked(board: Board, start: State, goal: State, most_ways: int, stuck: frozenset[int] = frozenset()) -> Found:
    """Return a change-over that takes out what stands in the way of what moves, with as few such things as it may.

    No moves where none was found so: that proves nothing.
    """
    able = frozenset(
        i
        for i, one in enumerate(board.movers)
        if one.kind == "carry" and not one.rides and outside_of(one) is not None and i not in stuck
    )
    task = _Task(board, able, board.ways + most_ways)
    must = frozenset(i for i in able if start[i] != goal[i])
    best = _there_and_back(task, start, goal, must, stuck)
    for i in sorted(_taken(best) - must):  # what need not be taken out after all stays
        if board.ways >= task.last_way:
            break
        if i in _taken(best):
            fewer = _there_and_back(task._replace(able=able - {i}), start, goal, must, stuck)
            best = fewer if fewer is not None and _cost(board, start, fewer) < _cost(board, start, best or ()) else best
    if best is None:
        return Found(None, 0.0, 0, False)
    return Found(tuple(best), _cost(board, start, best), len(best), False, is_least=False)


def backwards(board: Board, start: State, moves: Sequence[Done]) -> Found | None:
    """Return the same moves from their end to their start, None where one of them cannot be made that way round."""
    end = moves[-1][1] if moves else start
    found = done_in_order(board, end, _reversed(start, moves))
    return Found(found, _cost(board, end, found), len(found), False, is_least=False) if found is not None else None


def _taken(moves: Iterable[Done] | None) -> frozenset[int]:
    return frozenset(move.mover for move, _ in moves or () if move.gate >= 0)


def _cost(board: Board, start: State, moves: Iterable[Done]) -> float:
    cost, state = 0.0, start
    for move, after in moves:
        one = board.movers[move.mover]
        cost += price_of(one, state[move.mover], move.to) + (price_of_turning(one) if move.is_turned else 0.0)
        state = after
    return cost


def _there_and_back(
    task: _Task, start: State, goal: State, must: frozenset[int], stuck: frozenset[int]
) -> tuple[Done, ...] | None:
    """Return all moves: what is taken out from the start, what is done then, and what is brought in to the end."""
    board, wanted, last = task.board, must, frozenset[int]()
    out, back = list[Done](), list[Done]()
    while wanted != last:  # what is taken out at one end is out at the other as well
        last = wanted
        for state, moves in ((start, out), (goal, back)):
            found = _taken_out(task, state, wanted)
            if found is None:
                return None
            moves[:] = found
            wanted |= _taken(found)
    begun, ended = (moves[-1][1] if moves else state for state, moves in ((start, out), (goal, back)))
    between = cheapest(board, begun, ended, MOST_BETWEEN, max(task.last_way - board.ways, 1), stuck=stuck | wanted)
    if between.moves is None:
        return None
    order = [*(move for move, _ in (*out, *between.moves)), *_reversed(goal, back)]
    return done_in_order(board, start, order)


def _reversed(start: State, moves: Sequence[Done]) -> list[Move]:
    """Return some moves in the order they are undone."""
    before = (start, *(state for _, state in moves))
    undone = [move._replace(to=state[move.mover]) for (move, _), state in zip(moves, before, strict=False)]
    return undone[::-1]


# ------------------------------------------------------------------ taking out


def _taken_out(task: _Task, state: State, wanted: Iterable[int]) -> list[Done] | None:
    """Return moves after which some things are out, with all that stood on their ways; None where none were found."""
    board, moves = task.board, list[Done]()
    wanted = _with_what_blocks(task, state, wanted)
    while left := [i for i in sorted(wanted) if board.blocks((i, state[i]))]:
        ways = {i: _way_of(task, i, state) for i in left}
        free = [i for i, way in ways.items() if way is not None and not way.blocked_by]
        # what is on no way but its own goes without looking for another one
        move = next(_possible(board, state, ((i, ways[i]) for i in (*free, *left))), None)
        if move is None or board.ways > task.last_way:
            return None
        state = after_a_move(board, state, move.mover, move.to)
        moves.append((move, state))
    return moves


def _with_what_blocks(task: _Task, state: State, wanted: Iterable[int]) -> frozenset[int]:
    """Return some things, all that stands on their ways and can be taken out, all that stands on theirs, and so on."""
    found, waiting = set[int](), list(wanted)
    while waiting:
        i = waiting.pop()
        if i in found:
            continue
        found.add(i)
        way = _way_of(task, i, state) if task.board.blocks((i, state[i])) else None
        blocked_by = sorted((way.blocked_by if way is not None else frozenset()) & task.able)
        waiting += [j for j in blocked_by if _way_of(task, j, state) is not None]
        waiting += [j for j in _lying_on(task.board, i, state) if j in task.able]
    return frozenset(found)


def _lying_on(board: Board, i: int, state: State) -> list[int]:
    names = board.lying_on(i, state)
    return [j for j, one in enumerate(board.movers) if one.name in names]


def _way_of(task: _Task, i: int, state: State) -> _Way | None:
    """Return the way of a thing with the fewest on it, by a door that is open before others, unturned before turned."""
    board, found = task.board, list[tuple[tuple[bool, int, bool, float], _Way]]()
    for is_turned in (False, True):
        for number, gate in board.gates:
            by = board.in_the_way(i, number, is_turned, state) if gate.carries else None
            if by is not None:
                one = board.movers[number]
                is_shut = one.poses[state[number]].word != OPEN
                found.append(((bool(by - task.able), len(by), is_shut, one.seconds), _Way(number, is_turned, by)))
        if found:
            break
    return min(found, key=lambda one: one[0])[1] if found else None


def _possible(board: Board, state: State, ways: Iterable[tuple[int, _Way | None]]) -> Iterator[Move]:
    """Yield what can be done next of some things to be carried out by their ways: open the door, or carry one."""
    for i, way in ways:
        outside = outside_of(board.movers[i])
        if way is None or outside is None:
            continue
        move = Move(i, outside, way.gate, way.is_turned)
        if board.movers[way.gate].poses[state[way.gate]].word != OPEN:
            move = Move(way.gate, 1 - state[way.gate], -1)
        if may_be_next(board, move, state):
            yield move
