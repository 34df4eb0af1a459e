"""How everybody gets out of bed and out of the trailer at night: what is cleared first, and by which exit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise
from math import dist
from typing import Literal, NamedTuple

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import OPEN, Freed, Leaving, Setting
from boxwright.disciplines.layout.changeover_aside import with_spots
from boxwright.disciplines.layout.changeover_exits import bodies_at, exits_at, floor_at, is_down
from boxwright.disciplines.layout.changeover_numbers import PACE, SECONDS
from boxwright.disciplines.layout.changeover_scene import Board, State, emptied, outside_of
from boxwright.disciplines.layout.changeover_search import MOST_WAYS, Found, Move, cheapest
from boxwright.disciplines.layout.changeover_steps import steps_of
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.terraces import Bed
from boxwright.disciplines.layout.ways import scene_drawn, way_drawn

MOST_TO_LEAVE = 400
MOST_ASIDE = 60
"""A search for the way out gives up after so many states; so does one with things set aside."""
MOST_EXPLAINED = 40
"""Where a search gave up it is looked in so many of its states whether an exit is one to be tried."""
UNTRIED = frozenset({"unknown", "unmeasured", "tight"})
"""What is said of an exit by which somebody may get out, and which has to be tried or measured first."""
THE_FLOOR = "the floor"


def leaving(board: Board, start: State) -> Leaving:
    """Return how everybody gets out of bed and out of the trailer in a state.

    Where nobody's bed is there it begins at the free floor, and how long it takes from bed is not known.
    """
    beds = tuple(bed for bed in board.setting.beds if bed.sleepers)
    if not all(is_down(board, start, bed) for bed in beds):
        return Leaving("unknown", exits=exits_at(board, start))
    hands = sum(len(bed.sleepers) for bed in beds) or max(len(board.setting.people), 1)
    heavy = frozenset(i for i, one in enumerate(board.movers) if one.hands > hands)
    out, found = _cleared(board, start, beds)
    too_heavy = tuple(board.movers[i].name for i in sorted(heavy & {move.mover for move, _ in found.moves or ()}))
    past = tuple(_opened_past(out))
    if too_heavy or past:
        lifted, _ = _cleared(board, start, beds, heavy, must_reach=True)
        if lifted.word == "found":
            out = lifted
        else:  # they may drag it, or lean over it, or not; and what nobody weighed counts for more than it may weigh
            shut_in = tuple(_whence(beds)) if not beds else lifted.shut_in
            out = Leaving("untried", exits=out.exits, states=out.states, shut_in=shut_in, heavy=too_heavy, past=past)
    if beds or out.word != "found":
        return out
    return replace(out, word="unknown")


def _opened_past(out: Leaving) -> Iterator[str]:
    """Yield the names of openings that are opened while no way leads to them."""
    known = out.exits
    for step in out.steps:
        if step.word == "open" and not _is_reached(step.of, known):
            yield step.name
        known = step.exits


def _is_reached(of: str, known: Iterable[Freed]) -> bool:
    """Return whether somebody may get to an opening from bed, as wide or narrow as the way may be."""
    return any(one.of == of and one.word in {"free", *UNTRIED} for one in known)


def _cleared(
    board: Board,
    start: State,
    beds: tuple[Bed, ...],
    heavy: frozenset[int] = frozenset(),
    must_reach: bool = False,
) -> tuple[Leaving, Found]:
    """Return how everybody gets out where some things are too heavy to move, and the search for it.

    What is in the way is carried out, or where that frees no exit set aside. With ``must_reach`` nothing is opened that
    no way leads to from bed.
    """
    out, found = _searched(board, start, beds, heavy, must_reach, MOST_TO_LEAVE)
    is_all_out = all(one.kind != "carry" or outside_of(one) is not None for one in board.movers)
    is_shut = is_all_out and _shut_in(exits_at(board, emptied(board, start)), _whence(beds))
    if out.word != "blocked" or is_shut:
        return out, found
    other = with_spots(board, start, start)
    if other is None:
        return out, found
    aside, moves = _searched(other, start, beds, heavy, must_reach, MOST_ASIDE)
    return (out, found) if aside.word == "blocked" else (aside, moves)


def _whence(beds: tuple[Bed, ...]) -> list[str]:
    return [bed.name for bed in beds] or [THE_FLOOR]


def _shut_in(known: tuple[Freed, ...], whence: list[str]) -> list[str]:
    """Return from where nobody gets out by any exit."""
    return [name for name in whence if not any(one.lets_out(name) for one in known)]


def _searched(
    board: Board, start: State, beds: tuple[Bed, ...], heavy: frozenset[int], must_reach: bool, most: int
) -> tuple[Leaving, Found]:
    exits = exits_at(board, start)
    tonight = {bed.of for bed in beds}
    inside = {gate.of for gate in board.setting.gates if gate.release == "inside"}
    # nobody folds up the bed he lies in, or opens from inside what does not open from there
    stuck = heavy | frozenset(
        i for i, one in enumerate(board.movers) if one.of in tonight or (one.kind == "gate" and one.of not in inside)
    )
    whence = _whence(beds)
    looked_at, shut_in = list[State](), list(whence)

    def is_done(state: State) -> bool:
        looked_at.append(state)
        without = _shut_in(exits_at(board, state, is_explained=False), whence)
        shut_in[:] = [name for name in shut_in if name in without]
        return not without

    def may(move: Move, state: State) -> bool:
        one = board.movers[move.mover]
        return one.kind != "gate" or _is_reached(one.of, exits_at(board, state))

    found = cheapest(board, start, start, most, MOST_WAYS, is_done, stuck, may=may if must_reach else None)
    if found.moves is None:
        word: Literal["untried", "blocked", "not-found"]
        explained = looked_at if found.is_exhausted else looked_at[:MOST_EXPLAINED]
        is_untried = any(one.word in UNTRIED for state in explained for one in exits_at(board, state))
        word = "untried" if is_untried else "blocked" if found.is_exhausted else "not-found"
        return Leaving(word, exits=exits, states=found.states, shut_in=tuple(shut_in)), found
    steps = tuple(steps_of(board, start, found))
    state = found.moves[-1][1] if found.moves else start
    starts = beds or floor_at(board, state)
    ways, onward = _quickest(board, state, starts)
    named = tuple((bed.name, one.name, one.far) for bed, one in zip(starts, ways, strict=True))
    seconds = SECONDS["rise"] + sum(step.seconds for step in steps) + onward
    return Leaving("found", steps, named, seconds, exits, found.states), found


class _Path(NamedTuple):
    """One way from a bed: the exit's name, how far it is (m), and how long opening it and going through it take (s)."""

    name: str
    far: float
    opened: float
    through: float


def _quickest(board: Board, state: State, beds: tuple[Bed, ...]) -> tuple[tuple[_Path, ...], float]:
    """Return which way each bed takes so that the last is out soonest, and when that is, counted from who is up.

    All go to the exit at once, it is opened, and they go through one after the other, the slowest hole counted for all.
    """
    paths = [tuple(_paths(board, state, bed)) for bed in beds]
    sleepers = sum(len(bed.sleepers) for bed in beds)
    every = {(one.opened, one.through) for some in paths for one in some}
    chosen = []
    for opened in sorted({one for one, _ in every}):
        for through in sorted({one for _, one in every}):
            # among exits no slower than these the nearest is as good as any
            able = [[one for one in some if one.opened <= opened and one.through <= through] for some in paths]
            if all(able):
                ways = tuple(min(some, key=lambda one: (one.far, one.name)) for some in able)
                chosen.append((_soonest(ways, sleepers), tuple((one.far, one.name) for one in ways), ways))
    seconds, _, ways = min(chosen)
    return ways, seconds


def _soonest(ways: tuple[_Path, ...], sleepers: int) -> float:
    far = max(one.far for one in ways)
    return far / PACE + max(one.opened for one in ways) + sleepers * max(one.through for one in ways)


def _paths(board: Board, state: State, bed: Bed) -> Iterator[_Path]:
    """Yield the way from a bed by each free exit."""
    free = {one.of for one in exits_at(board, state) if one.lets_out(bed.name)}
    bodies = bodies_at(board, state)
    for opening in board.setting.exits:
        far = _far(bodies, bed, opening, board.setting) if opening.of in free else None
        number = board.index.get(opening.of)
        if far is None or number is None:
            continue
        gate = next(one for one in board.setting.gates if one.of == opening.of)
        mover = board.movers[number]
        is_open = mover.poses[state[number]].word == OPEN
        kind = "through door" if gate.carries else "through window"
        yield _Path(opening.name, far, 0.0 if is_open else mover.seconds, SECONDS[kind])


def _far(bodies: tuple[Body, ...], bed: Bed, opening: Closed, setting: Setting) -> float | None:
    """Return how far (m) it is from the middle of a bed to an exit, on foot if it can be; None where no way leads."""
    for climbs in (False, True):
        path = way_drawn(scene_drawn(bodies, bed, opening, setting.faces, climbs), ROOM["pass"])
        if path:
            middle = (bed.place.x.best, bed.place.y.best)
            return sum(dist(a, b) for a, b in pairwise(path)) + dist(middle, path[0])
    return None
