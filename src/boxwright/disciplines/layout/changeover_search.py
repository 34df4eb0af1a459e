"""The least change-over: a search over what stands where, the cheapest first, of equals what is nearer its end."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from heapq import heappop, heappush
from math import inf
from typing import NamedTuple

from boxwright.disciplines.layout.changeover import ASIDE, OPEN, OUT, OUTSIDE, Mover
from boxwright.disciplines.layout.changeover_numbers import SECONDS
from boxwright.disciplines.layout.changeover_scene import DOWN, UP, Board, State

MOST_STATES = 20_000
"""A search that has looked at so many states gives up, and says so."""
MOST_WAYS = 200
"""So does one that has looked for so many ways of things through the room: they take nearly all its time."""


class Move(NamedTuple):
    """One move of a search: which mover, to which pose, through which opening (a mover, -1 for none), is it turned."""

    mover: int
    to: int
    gate: int
    is_turned: bool = False


Done = tuple[Move, State]
"""A move and the state after it."""


class Found(NamedTuple):
    """How a search ended: the moves with the states after them, None where there were none; the states looked at.

    ``is_least`` is False where there may be others with less work.
    """

    moves: tuple[Done, ...] | None
    cost: float
    states: int
    is_exhausted: bool
    is_least: bool = True


def cheapest(
    board: Board,
    start: State,
    goal: State,
    most: int = MOST_STATES,
    most_ways: int = MOST_WAYS,
    is_done: Callable[[State], bool] | None = None,
    stuck: frozenset[int] = frozenset(),
    below: float = inf,
    may: Callable[[Move, State], bool] | None = None,
) -> Found:
    """Return the moves with the least work of hands from one state to another (or to where ``is_done`` says so).

    ``stuck`` are movers that cannot be moved. What does not cost less than ``below`` is not looked for.
    ``may`` says of a move in a state that there is room for whether it may be made.
    """
    last_way = board.ways + most_ways
    toll = _toll(board, start, goal) if is_done is None else {}

    def still(state: State) -> float:
        return 0.0 if is_done is not None else _still_to_do(board, state, goal, toll)

    came: dict[State, tuple[State, Move]] = {}
    waiting: list[tuple[float, float, tuple[int, ...], int, State, State | None, Move | None]] = []
    heappush(waiting, (round(still(start), 6), 0.0, (), 0, start, None, None))
    done: set[State] = set()
    pushed = 0
    while waiting:
        whole, minus, order, _, state, before, move = heappop(waiting)
        if whole >= below:
            break
        if state in done:
            continue
        if move is not None and before is not None:
            if board.ways > last_way:
                return Found(None, -minus, len(done), False)
            if not _is_possible(board, move, before) or (may is not None and not may(move, before)):
                continue
            came[state] = before, move
        done.add(state)
        so_far = 0.0 - minus
        if state == goal if is_done is None else is_done(state):
            return Found(_way_back(came, start, state), so_far, len(done), False)
        if len(done) >= most or board.ways > last_way:
            return Found(None, so_far, len(done), False)
        for after, onward, price in _moves(board, state, stuck):
            cost = so_far + price
            if after in done:
                continue
            pushed += 1
            whole = round(cost + still(after), 6)
            # a move is looked at closely only when its turn comes: most never come up
            heappush(waiting, (whole, -round(cost, 6), (*order, onward.mover), pushed, after, state, onward))
    return Found(None, 0.0, len(done), True)


def cheapest_with_apart(
    board: Board, start: State, goal: State, most: int, most_ways: int, below: float = inf
) -> Found:
    """Return the same, with what can be set out or put in at any moment set out first and put in last."""

    def sought(begun: State, ended: State, under: float) -> Found:
        return cheapest(board, begun, ended, most, most_ways, stuck=board.apart, below=under)

    return with_apart(board, start, goal, sought, below)


def with_apart(
    board: Board, start: State, goal: State, sought: Callable[[State, State, float], Found], below: float = inf
) -> Found:
    """Return what is sought between two states, with what can be moved at any moment set out first and put in last.

    It is left out of the search: every such thing would double what there is to look through.
    """
    changing = [i for i in sorted(board.apart) if start[i] != goal[i]]
    first = [i for i in changing if board.movers[i].poses[goal[i]].word == OUT]
    last = [i for i in changing if i not in first]
    begun, moves = start, list[Done]()
    for i in first:
        begun = after_a_move(board, begun, i, goal[i])
        moves.append((Move(i, goal[i], -1), begun))
    ended = tuple(start[i] if i in last else pose for i, pose in enumerate(goal))
    more = sum(price_of(board.movers[i], start[i], goal[i]) for i in changing)
    found = sought(begun, ended, below - more)
    if found.moves is None:
        return found
    moves += found.moves
    for i in last:
        ended = after_a_move(board, ended, i, goal[i])
        moves.append((Move(i, goal[i], -1), ended))
    return found._replace(moves=tuple(moves), cost=found.cost + more)


def _way_back(came: dict[State, tuple[State, Move]], start: State, end: State) -> tuple[Done, ...]:
    found = []
    state = end
    while state != start:
        before, move = came[state]
        found.append((move, state))
        state = before
    return tuple(reversed(found))


def price_of(mover: Mover, before: int, after: int) -> float:
    """Return the hand's work of a move (s): its time for each who must lend a hand; nothing where nothing moves."""
    return 0.0 if before == after else mover.seconds * max(mover.hands, 1)


def price_of_turning(mover: Mover) -> float:
    """Return the hand's work of turning a thing on its way."""
    return SECONDS["turn"] * max(mover.hands, 1)


def _moves(board: Board, state: State, stuck: frozenset[int]) -> Iterator[tuple[State, Move, float]]:
    """Yield what could be done next, without looking whether there is room for it."""
    carrying = {number for number, gate in board.gates if gate.carries}
    open_gates = sorted(number for number in carrying if _word(board, number, state) == OPEN)
    for i, one in enumerate(board.movers):
        if one.kind == "gate" and i not in carrying:
            continue  # what nothing is carried through need not be opened
        for to in range(len(one.poses)):
            if to == state[i] or i in stuck:
                continue
            if one.kind == "carry":
                yield from _carries(board, i, to, open_gates, state)
            else:
                yield after_a_move(board, state, i, to), Move(i, to, -1), price_of(one, state[i], to)


def _carries(board: Board, i: int, to: int, gates: list[int], state: State) -> Iterator[tuple[State, Move, float]]:
    one = board.movers[i]
    here, there = one.poses[state[i]].word, one.poses[to].word
    if there == ASIDE and here == ASIDE:
        return
    is_out, goes_out = here == OUTSIDE, there == OUTSIDE
    if one.rides:
        leaf = state[board.index[one.rides]]
        if not goes_out and to != leaf:
            return
    price = price_of(one, state[i], to)
    if is_out or goes_out:
        for gate in gates:
            yield after_a_move(board, state, i, to), Move(i, to, gate), price
            yield after_a_move(board, state, i, to), Move(i, to, gate, True), price + price_of_turning(one)
    else:
        yield after_a_move(board, state, i, to), Move(i, to, -1), price


def may_be_next(board: Board, move: Move, state: State) -> bool:
    """Return whether a move can be made in a state."""
    offered = any(onward == move for _, onward, _ in _moves(board, state, frozenset()))
    return offered and _is_possible(board, move, state)


def after_a_move(board: Board, state: State, i: int, to: int) -> State:
    """Return the state after a move; what lies on a leaf goes along with it."""
    found = list(state)
    found[i] = to
    if board.movers[i].kind == "fold":
        for j, other in enumerate(board.movers):
            if other.rides == board.movers[i].of and state[j] in (UP, DOWN):
                found[j] = to
    return tuple(found)


def _is_possible(board: Board, move: Move, state: State) -> bool:
    one = board.movers[move.mover]
    if one.kind == "fold":
        return not board.turn_meets(move.mover, move.to, state) and not board.lying_on(move.mover, state)
    if one.kind == "gate":
        return not board.gate_meets(move.mover, state)  # a leaf sweeps as much when it is shut
    if one.kind == "set":
        return not board.lying_on(move.mover, state) and not board.meets((move.mover, move.to), state)
    if board.lying_on(move.mover, state):
        return False
    present = board.present(state)
    if not board.is_held((move.mover, move.to), present & ~board.bit(move.mover, state[move.mover])):
        return False
    return board.can_carry(move.mover, move.to, None if move.gate < 0 else move.gate, move.is_turned, state)


def _word(board: Board, mover: int, state: State) -> str:
    return board.movers[mover].poses[state[mover]].word


def _toll(board: Board, start: State, goal: State) -> dict[int, float]:
    """Return for each thing that goes in or out the least that an opening it could go through, and turning it, cost."""
    found = {}
    for i, one in enumerate(board.movers):
        if one.kind != "carry" or start[i] == goal[i]:
            continue
        choices = sorted(
            (2.0 * price_of(board.movers[number], 0, 1) + is_turned * price_of_turning(one), number, is_turned)
            for number, gate in board.gates
            if gate.carries
            for is_turned in (False, True)
        )
        found[i] = next((price for price, number, turned in choices if board.could_pass(i, number, turned)), 0.0)
    return found


def _still_to_do(board: Board, state: State, goal: State, toll: dict[int, float]) -> float:
    """Return what at least is still to be done: one move for each that is not in its place, and one door for them."""
    cost, door, is_open = 0.0, 0.0, False
    for i, one in enumerate(board.movers):
        if one.kind == "gate":
            cost += price_of(one, state[i], goal[i])
            is_open = is_open or one.poses[state[i]].word == OPEN
            continue
        if state[i] == goal[i] or (one.rides and state[i] in (UP, DOWN) and goal[i] in (UP, DOWN)):
            continue
        cost += price_of(one, 0, 1)
        if OUTSIDE in (one.poses[state[i]].word, one.poses[goal[i]].word):
            door = max(door, toll.get(i, 0.0))
    return cost + (0.0 if is_open else door)
