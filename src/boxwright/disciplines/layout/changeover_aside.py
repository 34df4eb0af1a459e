"""Setting things aside on free floor inside: where each could stand meanwhile, and is that less work of hands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, envelope, moved_block
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.changeover import ASIDE, Gate, Mover, Posed
from boxwright.disciplines.layout.changeover_scene import Board, State
from boxwright.disciplines.layout.changeover_search import Found, cheapest_with_apart, with_apart
from boxwright.disciplines.layout.changeover_unpacked import unpacked
from boxwright.disciplines.layout.changeover_ways import outward, overlaps

MOST_SPOTS = 3
"""A thing is offered at most so many spots, none of which overlaps another, the nearest first."""
MOST_TRIED = 2_000
"""So many corners of free floor are looked at for one thing."""
MOST_FREE = 200
"""Of those that are free it is chosen among so many, the nearest."""
MOST_STATES = 2_000
"""A search with things set aside gives up after so many states."""

MOST_UNPACKED = 250
"""So does unpacking what is in the way after so many ways of things."""


def least(board: Board, start: State, goal: State, most: int, ways: int, is_probe: bool = False) -> tuple[Board, Found]:
    """Return the least change-over with nothing set aside, or with something where that costs less; and its board.

    Only where something is moved more than once, or there is no other, can that be less; nor is it looked for in a
    ``is_probe`` that finds nothing. Where the search gives up, what is in the way is unpacked, which may not be least.
    """
    found = cheapest_with_apart(board, start, goal, most, ways)
    if found.moves is None and not found.is_exhausted and not is_probe:
        states = found.states
        found = with_apart(board, start, goal, lambda begun, ended, _: unpacked(board, begun, ended, MOST_UNPACKED))
        return board, found._replace(states=states)
    moved = [move.mover for move, _ in found.moves or ()]
    is_twice = any(moved.count(i) > 1 and board.movers[i].kind == "carry" for i in moved)
    if not is_twice if found.moves is not None else is_probe or not found.is_exhausted:
        return board, found
    other = with_spots(board, start, goal)
    if other is None:
        return board, found
    below = found.cost if found.moves is not None else float("inf")
    again = cheapest_with_apart(other, start, goal, min(most, MOST_STATES), ways, below)
    if again.moves is not None:
        return other, again
    return board, found if found.moves is not None else again


def with_spots(board: Board, start: State, goal: State) -> Board | None:
    """Return a board on which things may be set aside as well; None where there is nowhere for any of them."""
    movers = tuple(_with_spots(board, i, start, goal) for i, _ in enumerate(board.movers))
    if movers == board.movers:
        return None
    return Board(replace(board.setting, movers=movers))


def _with_spots(board: Board, i: int, start: State, goal: State) -> Mover:
    one, blocks = board.movers[i], board.blocks((i, start[i])) or board.blocks((i, goal[i]))
    if one.kind != "carry" or one.rides or not blocks:
        return one
    solid = [block for body in board.setting.fixed for block in body.blocks]
    for j, other in enumerate(board.movers):
        poses = range(len(other.poses)) if other.kind in {"gate", "fold"} else {start[j], goal[j]}
        solid += [block for p in poses for block in board.blocks((j, p)) if j != i]
    before = [block for gate in board.setting.gates for block in _before(gate)]
    spots = tuple(Posed(ASIDE, some) for some in _spots(blocks, solid, before, board.setting.room))
    return replace(one, poses=(*one.poses, *spots))


def _before(gate: Gate) -> Iterator[Block]:
    """Yield what one walks through to an opening, as deep as somebody is wide."""
    if gate.wall == "roof":
        return
    axis, is_high = outward(gate)
    low, high = list(gate.low), list(gate.high)
    low[axis] -= ROOM["pass"] if is_high else 0.0
    high[axis] += 0.0 if is_high else ROOM["pass"]
    yield Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _spots(
    blocks: tuple[Block, ...], solid: list[Block], before: list[Block], room: Block
) -> Iterator[tuple[Block, ...]]:
    """Yield where a thing can stand on free floor, touching what stands there: the nearest first.

    What stands ``before`` an opening comes last, and before that what is hardly moved.
    """
    around = envelope(blocks)
    down = room.low[2] - around.low[2]
    level = room.low[2] + around.size[2]
    near = [block for block in solid if block.low[2] < level]
    xs, ys = (_shifts(around, near, room, axis) for axis in (0, 1))
    places = sorted((abs(x) + abs(y), x, y) for x in xs for y in ys)
    every = (tuple(moved_block(block, (x, y, down)) for block in blocks) for _, x, y in places[:MOST_TRIED])
    free = [there for there in every if there != blocks and not overlaps(there, near)][:MOST_FREE]
    taken: list[tuple[Block, ...]] = []
    for there in sorted(free, key=lambda one: (overlaps(one, before), overlaps(one, blocks))):
        if not any(overlaps(there, other) for other in taken):
            taken.append(there)
            yield there
        if len(taken) >= MOST_SPOTS:
            return


def _shifts(around: Block, near: Iterable[Block], room: Block, axis: int) -> list[float]:
    """Return how far along an axis a thing is shifted to touch a wall or something, or not at all."""
    low, high = around.low[axis], around.high[axis]
    found = {0.0, room.low[axis] - low, room.high[axis] - high}
    for block in near:
        found |= {block.high[axis] - low, block.low[axis] - high}
    least, most = room.low[axis] - low, room.high[axis] - high
    return sorted(round(by, 6) for by in found if least - 1e-9 <= by <= most + 1e-9)
