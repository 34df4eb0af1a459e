"""The way of one thing: carried level by straight legs, through an opening or to another place, turned if it must."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import hypot, inf

from boxwright.disciplines.layout.bodies import Block, envelope, moved_block
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.changeover_lattice import (
    TOUCH,
    Lattice,
    Rows,
    forbidden,
    lattice,
    legs,
    only,
    region,
)
from boxwright.exchange import Vector

STILL: Vector = (0.0, 0.0, 0.0)
THROUGH = 0.15
"""How deep (m) a wall is taken where a thing goes through it; common practice, no source."""
FEW, TURNED, LEVELS = 2, 4, 7
"""At most so many heights are tried for one way at first, for a turned one, and then; both ends of it always are."""
TURNINGS = 4
"""At most so many places are tried to turn a thing in."""
ROUND = 1.02
"""A thing longer than wide by less than this share gains nothing from being turned."""


def overlaps(one: Iterable[Block], other: Iterable[Block]) -> bool:
    """Return whether two things fill the same room, by more than they touch."""
    solid = tuple(other)
    return any(
        all(a[axis] < d[axis] - TOUCH and c[axis] < b[axis] - TOUCH for axis in (0, 1, 2))
        for a, b in one
        for c, d in solid
    )


def way(
    blocks: tuple[Block, ...],
    to: Vector | None,
    gate: Gate | None,
    stands: Sequence[Block],
    room: Block,
    lift: float,
    is_turned: bool = False,
) -> tuple[Block, ...] | None:
    """Return the boxes a thing sweeps on a free way by ``to`` or out through ``gate``; None where none was found.

    ``is_turned`` asks for a way on which it is turned by a right angle.
    """
    solid = [*stands, *(walls_of(gate, room) if gate is not None else ())]
    places = [STILL] if to is None else [STILL, to]
    if is_turned:
        grid = _grid(blocks, places, gate, solid, room, lift, TURNED)
        return _turned(grid, blocks, gate, solid, room, lift) if gate is not None else None
    for most in (FEW, LEVELS):  # a thing mostly goes low or high; only what does not is tried at more heights
        grid = _grid(blocks, places, gate, solid, room, lift, most)
        found = legs(grid, only(grid, [grid.cell(*STILL)]), goal_of(grid, to, gate))
        if found is not None:
            return swept_by(blocks, [grid.place(cell) for cell in found])
    return None


def _grid(
    blocks: tuple[Block, ...],
    places: Sequence[Vector],
    gate: Gate | None,
    solid: Sequence[Block],
    room: Block,
    lift: float,
    most: int,
) -> Lattice:
    bounds = bounds_of(envelope(blocks), places, gate, room)
    levels = _levels(envelope(blocks), places, gate, solid, min(lift, bounds.high[2]), most)
    return lattice(bounds, forbidden(blocks, solid), places, levels)


def bounds_of(around: Block, places: Sequence[Vector], gate: Gate | None, room: Block) -> Block:
    """Return how far a thing can be shifted within the room, and beyond the wall it goes out through.

    A place it is at or goes to lies within, though it be through a wall: that is said elsewhere.
    """
    low, high = [], []
    for axis in (0, 1, 2):
        here = [place[axis] for place in places]
        low.append(min([room.low[axis] - around.low[axis], *here]))
        high.append(max([room.high[axis] - around.high[axis], *here]))
    if gate is not None:
        axis, is_high = outward(gate)
        if is_high:
            high[axis] = room.high[axis] + THROUGH - around.low[axis]
        else:
            low[axis] = room.low[axis] - THROUGH - around.high[axis]
    return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def outward(gate: Gate) -> tuple[int, bool]:
    """Return the axis one leaves by through an opening, and whether that is along it."""
    return (0 if gate.wall in {"front", "rear"} else 1), gate.wall in {"rear", "right"}


def walls_of(gate: Gate, room: Block) -> Iterator[Block]:
    """Yield the wall around a hole as four boxes, without end along the wall."""
    out, is_high = outward(gate)
    along = 1 - out
    near, far = (room.high[out], room.high[out] + THROUGH) if is_high else (room.low[out] - THROUGH, room.low[out])
    for axis, low, high in (
        (along, -inf, gate.low[along]),
        (along, gate.high[along], inf),
        (2, -inf, gate.low[2]),
        (2, gate.high[2], inf),
    ):
        first, last = [-inf, -inf, -inf], [inf, inf, inf]
        first[out], last[out] = near, far
        first[axis], last[axis] = low, high
        yield Block((first[0], first[1], first[2]), (last[0], last[1], last[2]))


def _levels(
    around: Block, places: Sequence[Vector], gate: Gate | None, solid: Iterable[Block], lift: float, most: int
) -> list[float]:
    """Return the heights a thing is carried at: where it stands and goes, over what is in its way, and the highest."""
    needed = {place[2] for place in places} | {max(lift, 0.0)}
    if gate is not None:
        needed.add(min(max(gate.low[2] - around.low[2], 0.0), max(lift, 0.0)))
    over = sorted({one.high[2] - around.low[2] for one in solid if 0.0 < one.high[2] - around.low[2] < lift})
    if len(needed) >= most:
        return sorted(needed)
    step = max(1, -(-len(over) // (most - len(needed))))
    return sorted(needed | set(over[step - 1 :: step]))


def goal_of(grid: Lattice, to: Vector | None, gate: Gate | None) -> list[Rows]:
    """Return the cells a way ends in: one place, or all of the thing beyond the wall."""
    if gate is None:
        assert to is not None
        return only(grid, [grid.cell(*to)])
    axis, is_high = outward(gate)
    rows, columns = 2 * len(grid.ys) - 1, 2 * len(grid.xs) - 1
    if axis == 0:
        mask = 1 << (columns - 1 if is_high else 0)
        return [(mask,) * rows for _ in grid.zs]
    full = (1 << columns) - 1
    wanted = rows - 1 if is_high else 0
    return [tuple(full if row == wanted else 0 for row in range(rows)) for _ in grid.zs]


def swept_by(blocks: tuple[Block, ...], places: Sequence[Vector]) -> tuple[Block, ...]:
    """Return the boxes a thing fills while it goes from place to place."""
    if len(places) == 1:
        return tuple(moved_block(one, places[0]) for one in blocks)
    return tuple(
        envelope((moved_block(one, before), moved_block(one, after)))
        for before, after in pairwise(places)
        for one in blocks
    )


def _turned(
    grid: Lattice, blocks: tuple[Block, ...], gate: Gate, solid: Sequence[Block], room: Block, lift: float
) -> tuple[Block, ...] | None:
    """Return a way on which the thing is turned by a right angle somewhere, where a square around it is free."""
    around = envelope(blocks)
    length, width, _ = around.size
    if max(length, width) < ROUND * min(length, width):
        return None
    round_it, crosswise = _square(around, hypot(length, width)), _crosswise(around)
    bounds = bounds_of(round_it, [], None, room)
    if any(bounds.low[axis] > bounds.high[axis] for axis in (0, 1)):
        return None
    turning = lattice(bounds, forbidden((round_it,), solid), [], grid.zs)
    start = only(grid, [grid.cell(*STILL)])
    reached = region(grid, start)
    for place in _common(turning, grid, reached):
        there = moved_block(crosswise, place)
        low = [STILL, (0.0, 0.0, -place[2])]
        second = _grid((there,), low, gate, solid, room, lift - place[2], len(grid.zs))
        onward = legs(second, only(second, [second.cell(*STILL)]), goal_of(second, None, gate))
        if onward is None:
            continue
        first = legs(grid, start, only(grid, [containing(grid, place)]))
        assert first is not None
        path = [*(grid.place(cell) for cell in first), place]
        return (
            *swept_by(blocks, path),
            moved_block(round_it, place),
            *swept_by((there,), [second.place(cell) for cell in onward]),
        )
    return None


def _square(around: Block, side: float) -> Block:
    x, y = ((around.low[axis] + around.high[axis]) / 2.0 for axis in (0, 1))
    half = side / 2.0
    return Block((x - half, y - half, around.low[2]), (x + half, y + half, around.high[2]))


def _crosswise(around: Block) -> Block:
    x, y = ((around.low[axis] + around.high[axis]) / 2.0 for axis in (0, 1))
    length, width = around.size[0] / 2.0, around.size[1] / 2.0
    return Block((x - width, y - length, around.low[2]), (x + width, y + length, around.high[2]))


def _common(turning: Lattice, grid: Lattice, reached: Sequence[Rows]) -> Iterator[Vector]:
    """Yield some places at which a thing can be turned and which it can reach, spread over all there are."""
    found: list[Vector] = []
    columns = [_index(grid.xs, x) for x in turning.xs]
    for level, z in enumerate(turning.zs):
        if found or z not in grid.zs:
            continue  # it is turned as low as can be
        here = reached[grid.zs.index(z)]
        for row, y in enumerate(turning.ys):
            free, there = turning.free[level][2 * row], here[_index(grid.ys, y)]
            if free and there:
                found += [
                    (x, y, z)
                    for number, x in enumerate(turning.xs)
                    if free >> (2 * number) & 1 and there >> columns[number] & 1
                ]
    step = max(1, len(found) // TURNINGS)
    yield from found[::step][:TURNINGS]


def containing(grid: Lattice, place: Vector) -> tuple[int, int, int]:
    """Return the cell of a lattice a place lies in; one that is out of its bounds lies in the nearest."""
    return bisect_left(grid.zs, place[2]), _index(grid.ys, place[1]), _index(grid.xs, place[0])


def _index(edges: tuple[float, ...], at: float) -> int:
    at = min(max(at, edges[0]), edges[-1])
    index = bisect_left(edges, at)
    return 2 * index if edges[index] == at else 2 * index - 1
