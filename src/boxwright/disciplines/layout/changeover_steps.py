"""The moves of a search as steps of hands, each with the exits as they are after it."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.changeover import ASIDE, OPEN, OUT, OUTSIDE, Mover, Step
from boxwright.disciplines.layout.changeover_exits import exits_at
from boxwright.disciplines.layout.changeover_numbers import SECONDS
from boxwright.disciplines.layout.changeover_scene import DOWN, Board, State
from boxwright.disciplines.layout.changeover_search import Found

TIED = frozenset({"travel", "place"})
"""Where a thing is strapped down, if it is at all."""


def steps_of(board: Board, start: State, found: Found) -> Iterator[Step]:
    """Yield the moves that were found as steps of hands, in their order."""
    before = start
    for move, state in found.moves or ():
        one = board.movers[move.mover]
        word = _word(one, before[move.mover], move.to)
        by = board.movers[move.gate].name if move.gate >= 0 else ""
        is_tied, was_tied = (one.poses[pose].word in TIED for pose in (move.to, before[move.mover]))
        straps = one.straps if is_tied or was_tied else ()
        seconds = one.seconds + (SECONDS["turn"] if move.is_turned else 0.0)
        exits = exits_at(board, state)
        yield Step(one.of, one.name, word, by, seconds, one.hands, straps, exits, move.is_turned, is_tied)
        before = state


def _word(one: Mover, before: int, after: int) -> str:
    if one.kind == "gate":
        return "open" if one.poses[after].word == OPEN else "shut"
    if one.kind == "fold":
        return "let down" if after == DOWN else "fold up"
    if one.kind == "set":
        return "set out" if one.poses[after].word == OUT else "put in"
    here, there = one.poses[before].word, one.poses[after].word
    if OUTSIDE in (here, there):
        return "carry out" if there == OUTSIDE else "carry in"
    if ASIDE in (here, there):
        return "set aside" if there == ASIDE else "put back"
    return "shift"
