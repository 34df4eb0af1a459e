"""When a bed is let down or folded up: of orders that cost the same, down when all else is done, up before all else."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.disciplines.layout.changeover_scene import DOWN, Board, State
from boxwright.disciplines.layout.changeover_search import Done, Move, after_a_move, may_be_next


def beds_aside(board: Board, start: State, moves: Sequence[Done]) -> tuple[Done, ...]:
    """Return the same moves with each bed let down as late as it can be, and folded up as soon as it can be.

    So nobody carries anything out from under a bed, or past it, that need not be. What lies on it goes with it.
    """
    order = [move for move, _ in moves]
    last = len(order)
    for at in reversed(range(len(order))):
        if _ends_on_bed(board, order[at]):
            last = _moved(board, start, order, at, range(last - 1, at, -1))
    first = -1
    for at in range(len(order)):
        if _begins_on_bed(board, order[at], _pose_before(start, order, at)):
            first = _moved(board, start, order, at, range(first + 1, at))
    done = done_in_order(board, start, order)
    assert done is not None
    return done


def _ends_on_bed(board: Board, move: Move) -> bool:
    """Return whether a move lets a bed down, or puts on it what it carries."""
    if board.movers[move.mover].kind == "fold":
        return move.to == DOWN
    return board.is_on_leaf((move.mover, move.to))


def _begins_on_bed(board: Board, move: Move, before: int) -> bool:
    """Return whether a move folds a bed up, or takes from it what it carries."""
    if board.movers[move.mover].kind == "fold":
        return move.to != DOWN
    return board.is_on_leaf((move.mover, before))


def _pose_before(start: State, order: Sequence[Move], at: int) -> int:
    """Return the pose a thing is in before one of the moves."""
    mover = order[at].mover
    return next((move.to for move in reversed(order[:at]) if move.mover == mover), start[mover])


def _moved(board: Board, start: State, order: list[Move], at: int, places: range) -> int:
    """Put a move into the first of some places in which all of them can still be done; return where it is then."""
    for place in places:
        other = [*order[:at], *order[at + 1 :]]
        other.insert(place, order[at])
        if done_in_order(board, start, other) is not None:
            order[:] = other
            return place
    return at


def done_in_order(board: Board, start: State, order: Sequence[Move]) -> tuple[Done, ...] | None:
    """Return the moves with the state after each, None where one of them cannot be done by then."""
    state, found = start, list[Done]()
    for move in order:
        if not may_be_next(board, move, state):
            return None
        state = after_a_move(board, state, move.mover, move.to)
        found.append((move, state))
    return tuple(found)
