"""The way a big thing is brought in: through an opening to its place, as it will stand, or turned or tilted once.

It is looked for backwards, from its place out. Straight legs are exact for boxes; a turn is made only where the square
its two sides sweep about their middle is free. So a way that is found is one, and where none is found there may be.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import permutations
from math import hypot
from typing import Literal

from boxwright.disciplines.layout.bodies import Block, envelope, moved_block
from boxwright.disciplines.layout.bringing_aslant import Spot, View, place_of, pushes, told_as_boxes, view_of
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.changeover_lattice import (
    TOUCH,
    Cell,
    Lattice,
    Rows,
    forbidden,
    lattice,
    legs,
    only,
    region,
)
from boxwright.disciplines.layout.changeover_ways import (
    ROUND,
    STILL,
    bounds_of,
    containing,
    goal_of,
    outward,
    swept_by,
    walls_of,
)
from boxwright.disciplines.layout.meeting import are_near
from boxwright.exchange import Vector
from boxwright.records import dataclass

Turned = Literal["", "turned", "tilted", "aslant"]
TURNS: tuple[tuple[int, int, Turned], ...] = ((0, 1, "turned"), (0, 2, "tilted"), (1, 2, "tilted"))
"""The two axes whose extents a turn changes over."""
FEW, LEVELS = 4, 9
"""At most so many heights are tried at first, and where that finds nothing; those it needs always are."""
PLACES = 6
"""At most so many places are tried to turn at, spread over all there are."""


@dataclass(frozen=True, slots=True)
class Lane:
    """A way in: through which opening, how it is held there, and the boxes that are swept on it, from its place out.

    ``path`` are the places its middle comes through, from its place out; ``swung`` is what a turn on it sweeps.
    """

    gate: Gate
    turned: Turned
    swept: tuple[Block, ...]
    path: tuple[Vector, ...]
    swung: Block | None = None


def straight_out(blocks: tuple[Block, ...], gates: Iterable[Gate], stands: Sequence[Block], room: Block) -> Lane | None:
    """Return the way up or down, along the wall to a hole and out, if that is free: most things take it."""
    around = envelope(blocks)
    for gate in gates:
        solid = [*stands, *gate.sweep, *walls_of(gate, room)]
        found = _direct(blocks, gate, solid, room) if passes(around, gate) else None
        if found is not None:
            return Lane(gate, "", swept_by(blocks, found), _through(around, found))
    return None


@lru_cache(maxsize=2048)  # an edit moves one thing: most others come in past the same as before
def way_in(blocks: tuple[Block, ...], gates: tuple[Gate, ...], stands: tuple[Block, ...], room: Block) -> Lane | None:
    """Return a free way of a thing from outside to where it will stand, None where none was found."""
    around = envelope(blocks)
    for gate in gates:
        if passes(around, gate):
            solid = [*stands, *gate.sweep, *walls_of(gate, room)]
            for most in (FEW, LEVELS):
                found = _level(blocks, gate, solid, room, most)
                if found is not None:
                    return Lane(gate, "", swept_by(blocks, found), _through(around, found))
    for first, second, word in TURNS:
        lengthwise = around.size[first], around.size[second]
        other = _swapped(around, first, second)
        through = [gate for gate in gates if passes(other, gate)]
        if through and max(lengthwise) >= ROUND * min(lengthwise):  # a square gains nothing from being turned
            for some, past in _by_their_leaves(through, stands):
                lane = _turning(blocks, (first, second), word, other, some, past, room)
                if lane is not None:
                    return lane
    pushed = (_aslant(blocks, some, past, room) for some, past in _by_their_leaves(gates, stands))
    return next((lane for lane in pushed if lane is not None), None)


def _by_their_leaves(gates: Iterable[Gate], stands: Sequence[Block]) -> Iterator[tuple[list[Gate], tuple[Block, ...]]]:
    """Yield ways in whose leaves stand alike in the room, with all that stands there then."""
    alike: dict[tuple[Block, ...], list[Gate]] = {}
    for gate in gates:
        alike.setdefault(gate.sweep, []).append(gate)
    for leaves, some in alike.items():
        yield some, (*stands, *leaves)


@lru_cache(maxsize=128)
def comes_in(size: Vector, gates: tuple[Gate, ...], stands: tuple[Block, ...], room: Block) -> bool:
    """Return whether something is found to come in to any place at all, held on any of its sides."""
    for gate in gates:
        solid = [*stands, *gate.sweep, *walls_of(gate, room)]
        for held in held_ways(size):
            around = _about_the_middle(room, held)
            if passes(around, gate) and all(side <= free + TOUCH for side, free in zip(held, room.size, strict=True)):
                inside, bounds = bounds_of(around, [], None, room), bounds_of(around, [], gate, room)
                ends = [inside.low, inside.high]
                grid = lattice(
                    bounds, forbidden((around,), solid), ends, _levels(around, bounds, [gate], solid, LEVELS)
                )
                if legs(grid, _all_within(grid, inside), goal_of(grid, None, gate)) is not None:
                    return True
    return any(_slips_in(held, gate, stands, room) for gate in gates for held in held_ways(size))


def held_ways(size: Vector) -> list[Vector]:
    """Return the extents of a box along the room, across and up, held on any of its sides."""
    return [(x, y, z) for x, y, z in dict.fromkeys(permutations(size))]


def _all_within(grid: Lattice, inside: Block) -> list[Rows]:
    """Return every cell at which all of a thing is within the room."""
    columns = [containing(grid, (x, 0.0, 0.0))[2] for x in (inside.low[0], inside.high[0])]
    rows = [containing(grid, (0.0, y, 0.0))[1] for y in (inside.low[1], inside.high[1])]
    mask = sum(1 << column for column in range(columns[0], columns[1] + 1))
    level = tuple(mask if rows[0] <= row <= rows[1] else 0 for row in range(2 * len(grid.ys) - 1))
    return [level for _ in grid.zs]


def _slips_in(held: Vector, gate: Gate, stands: Sequence[Block], room: Block) -> bool:
    """Return whether something held so is pushed in aslant, on the floor or just over the sill."""
    low = max(room.low[2], gate.low[2])
    if low + held[2] > min(gate.high[2], room.high[2]) + TOUCH or held[0] < held[1]:
        return False
    view = view_of(gate, room, [*stands, *gate.sweep], low, low + held[2])
    return any(
        next(pushes(view, held[0], held[1], is_along, lambda spot: True), None) is not None
        for is_along in (True, False)
    )


def passes(around: Block, gate: Gate) -> bool:
    """Return whether a box held like that goes straight through a hole."""
    along = 1 - outward(gate)[0]
    return all(around.size[axis] <= gate.high[axis] - gate.low[axis] + TOUCH for axis in (along, 2))


def _direct(blocks: tuple[Block, ...], gate: Gate, solid: Sequence[Block], room: Block) -> list[Vector] | None:
    """Return the first of a few levels at which the straight way out is free."""
    around, (out, is_high) = envelope(blocks), outward(gate)
    along, bounds = 1 - out, _bounds(around, gate, room)
    to_hole = _into((around.low[along], around.high[along]), (gate.low[along], gate.high[along]))
    away = bounds.high[out] if is_high else bounds.low[out]
    for level in _levels(around, bounds, [gate], (), FEW):
        there, gone = [0.0, 0.0, level], [0.0, 0.0, level]
        there[along], gone[along], gone[out] = to_hole, to_hole, away
        corners = [STILL, (0.0, 0.0, level), (there[0], there[1], level), (gone[0], gone[1], level)]
        path = [at for at, before in zip(corners, [None, *corners], strict=False) if at != before]
        swept = swept_by(blocks, path)
        if not any(are_near(one, other) for other in solid for one in swept):
            return path
    return None


def _into(span: tuple[float, float], hole: tuple[float, float]) -> float:
    """Return the least shift that brings one span into another that is wider."""
    return max(hole[0] - span[0], 0.0) + min(hole[1] - span[1], 0.0)


def _level(
    blocks: tuple[Block, ...], gate: Gate, solid: Sequence[Block], room: Block, most: int
) -> list[Vector] | None:
    """Return the shifts of the way of fewest straight legs, at no more than so many heights."""
    around = envelope(blocks)
    bounds = _bounds(around, gate, room)
    grid = lattice(bounds, forbidden(blocks, solid), [STILL], _levels(around, bounds, [gate], solid, most))
    found = legs(grid, only(grid, [grid.cell(*STILL)]), goal_of(grid, None, gate))
    return [grid.place(cell) for cell in found] if found is not None else None


def _through(around: Block, path: Iterable[Vector]) -> tuple[Vector, ...]:
    """Return the places the middle of a thing comes through on its way."""
    x, y, z = _middle(around)
    return tuple((x + at[0], y + at[1], z + at[2]) for at in path)


def _bounds(around: Block, gate: Gate | None, room: Block) -> Block:
    """Return how far a thing can be shifted; to where it is it always can."""
    return bounds_of(around, [STILL], gate, room)


def _levels(around: Block, bounds: Block, gates: Iterable[Gate], solid: Iterable[Block], most: int) -> list[float]:
    """Return the heights a thing is carried at: where it stands, on the floor, by sill and lintel, past things."""
    low, high = bounds.low[2], bounds.high[2]
    needed = {0.0, low}
    for gate in gates:
        needed |= {gate.low[2] - around.low[2], gate.high[2] - around.high[2]}
    needed = {min(max(at, low), high) for at in needed}
    past = {one.high[2] - around.low[2] for one in solid} | {one.low[2] - around.high[2] for one in solid} | {high}
    others = sorted(at for at in past if low < at <= high and at not in needed)
    left = most - len(needed)
    if left <= 0 or not others:
        return sorted(needed)
    step = -(-len(others) // left)
    return sorted(needed | set(others[::-1][::step]))


def _turning(
    blocks: tuple[Block, ...],
    axes: tuple[int, int],
    word: Turned,
    other: Block,
    gates: Sequence[Gate],
    stands: Sequence[Block],
    room: Block,
) -> Lane | None:
    """Return a way on which a thing is turned about one axis, somewhere it can reach and has room to."""
    around = envelope(blocks)
    swung = _square(around, axes)
    bounds = bounds_of(swung, [], None, room)  # where it stands there may be no room to be turned
    if any(bounds.low[axis] > bounds.high[axis] for axis in (0, 1, 2)):
        return None
    near = _bounds(around, None, room)
    at = bounds.low[2], min(max(0.0, bounds.low[2]), bounds.high[2]), bounds.high[2]
    heights = sorted({z for z in at if near.low[2] <= z <= near.high[2]})  # on the floor, as it stands, at the ceiling
    levels = sorted({*_levels(around, near, gates, stands, LEVELS), *heights})
    grid = lattice(near, forbidden(blocks, stands), [STILL], levels)
    start = only(grid, [grid.cell(*STILL)])
    reached = region(grid, start)
    turning = lattice(bounds, forbidden((swung,), stands), [], heights)
    places = list(_common(turning, grid, reached))
    for gate in gates if places else ():
        solid = [*stands, *walls_of(gate, room)]
        out = bounds_of(other, places, gate, room)
        levels = sorted({*(place[2] for place in places), *_levels(other, out, [gate], solid, LEVELS)})
        second = lattice(out, forbidden((other,), solid), places, levels)
        onward = legs(second, only(second, [second.cell(*place) for place in places]), goal_of(second, None, gate))
        if onward is not None:
            place = second.place(onward[0])
            first = legs(grid, start, only(grid, [containing(grid, place)]))
            assert first is not None
            path, out_of_it = [*(grid.place(cell) for cell in first), place], [second.place(cell) for cell in onward]
            square = moved_block(swung, place)
            swept = (*swept_by(blocks, path), square, *swept_by((other,), out_of_it))
            return Lane(gate, word, swept, _through(around, [*path, *out_of_it[1:]]), square)
    return None


def _aslant(blocks: tuple[Block, ...], gates: Iterable[Gate], stands: Sequence[Block], room: Block) -> Lane | None:
    """Return a way on which a thing is pushed in aslant and turned level inside, then goes on by straight legs."""
    around = envelope(blocks)
    long, wide = max(around.size[:2]), min(around.size[:2])
    near = _bounds(around, None, room)
    through = [gate for gate in gates if around.size[2] <= gate.high[2] - gate.low[2] + TOUCH]
    if not through or long < ROUND * wide:
        return None
    at = {0.0, near.low[2], *(gate.low[2] - around.low[2] for gate in through)}
    heights = sorted(z for z in at if near.low[2] <= z <= near.high[2])
    grid = lattice(
        near, forbidden(blocks, stands), [STILL], {*_levels(around, near, through, stands, LEVELS), *heights}
    )
    start = only(grid, [grid.cell(*STILL)])
    reached = region(grid, start)
    x, y, middle_z = _middle(around)
    for gate in through:
        along = 1 - outward(gate)[0]
        for z in heights:
            low, high = around.low[2] + z, around.high[2] + z
            if low < gate.low[2] - TOUCH or high > gate.high[2] + TOUCH:
                continue
            view = view_of(gate, room, stands, low, high)

            def cell_of(spot: Spot, view: View = view, z: float = z) -> Cell:
                at = place_of(view, room, spot, z)
                return containing(grid, (at[0] - x, at[1] - y, z))

            def is_reached(spot: Spot, cell_of: Callable[[Spot], Cell] = cell_of) -> bool:
                level, row, column = cell_of(spot)
                return bool(reached[level][row] >> column & 1)

            push = next(pushes(view, long, wide, around.size[along] >= around.size[1 - along], is_reached), None)
            if push is not None:
                first = legs(grid, start, only(grid, [cell_of(push.spot)]))
                assert first is not None
                path, inside = [grid.place(cell) for cell in first], place_of(view, room, push.spot, middle_z + z)
                boxes = told_as_boxes(view, push, room, low, high)
                outside = place_of(view, room, push.outside, middle_z + z)
                swept = (*swept_by(blocks, path), *boxes)
                return Lane(gate, "aslant", swept, (*_through(around, path), inside, outside), boxes[0])
    return None


def _square(around: Block, axes: tuple[int, int]) -> Block:
    """Return what a box sweeps that is turned about its middle, along the two axes of the turn."""
    side = hypot(around.size[axes[0]], around.size[axes[1]])
    return _about_the_middle(around, tuple(side if axis in axes else around.size[axis] for axis in (0, 1, 2)))


def _swapped(around: Block, first: int, second: int) -> Block:
    """Return a box turned by a right angle about its middle."""
    size = list(around.size)
    size[first], size[second] = size[second], size[first]
    return _about_the_middle(around, tuple(size))


def _middle(around: Block) -> Vector:
    x, y, z = ((low + high) / 2.0 for low, high in zip(*around, strict=True))
    return x, y, z


def _about_the_middle(around: Block, size: tuple[float, ...]) -> Block:
    middle = _middle(around)
    x, y, z = ((at - extent / 2.0, at + extent / 2.0) for at, extent in zip(middle, size, strict=True))
    return Block((x[0], y[0], z[0]), (x[1], y[1], z[1]))


def _common(turning: Lattice, grid: Lattice, reached: Sequence[Rows]) -> Iterator[Vector]:
    """Yield some places at which a thing has room to be turned and which it can reach, spread over all there are."""
    found: list[Vector] = []
    for level, z in enumerate(turning.zs):
        here = reached[grid.zs.index(z)]
        columns = [containing(grid, (x, 0.0, z))[2] for x in turning.xs]
        for row, y in enumerate(turning.ys):
            free, there = turning.free[level][2 * row], here[containing(grid, (0.0, y, z))[1]]
            if free and there:
                found += [
                    (x, y, z)
                    for number, x in enumerate(turning.xs)
                    if free >> (2 * number) & 1 and there >> columns[number] & 1
                ]
    step = max(1, -(-len(found) // PLACES))
    yield from found[::step]
