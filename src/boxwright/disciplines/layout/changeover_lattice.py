"""Free ways between boxes: all places a thing can be shifted to by straight legs, as rows of bits.

A thing may be shifted to every place where it meets nothing. Only where it begins to touch something does that change,
so it is enough to look at those places and the gaps between them: an even column or row is such a place, an odd one the
gap up to the next. What is free so is exact for straight shifts along the axes; the heights of a shift are a few.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence

from boxwright.disciplines.layout.bodies import Block
from boxwright.exchange import Vector
from boxwright.records import dataclass

TOUCH = 1e-3
"""Things that overlap by less than this (m) only touch."""
MOST_LEGS = 12
"""A way of more straight legs than this is not looked for."""

Cell = tuple[int, int, int]
"""Level, row (across), column (along)."""
Rows = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Lattice:
    """Where a thing can be: ``free`` by level and row, ``climbs`` where it can go on to the next level."""

    xs: tuple[float, ...]
    ys: tuple[float, ...]
    zs: tuple[float, ...]
    free: tuple[Rows, ...]
    climbs: tuple[Rows, ...]

    def cell(self, x: float, y: float, z: float) -> Cell:
        """Return the cell of a place that is one of the lattice's own."""
        return bisect_left(self.zs, z), 2 * bisect_left(self.ys, y), 2 * bisect_left(self.xs, x)

    def place(self, cell: Cell) -> Vector:
        """Return where a cell is; of a gap its middle."""
        level, row, column = cell
        return _along(self.xs, column), _along(self.ys, row), self.zs[level]

    def is_free(self, cell: Cell) -> bool:
        """Return whether a thing can be at a cell."""
        return bool(self.free[cell[0]][cell[1]] >> cell[2] & 1)


def forbidden(pieces: Iterable[Block], stands: Iterable[Block]) -> list[Block]:
    """Return the shifts (m) at which a thing of some boxes meets something, one box of shifts for each pair."""
    found = []
    solid = tuple(stands)
    for (ax, ay, az), (bx, by, bz) in pieces:
        for (cx, cy, cz), (dx, dy, dz) in solid:
            low = (cx - bx + TOUCH, cy - by + TOUCH, cz - bz + TOUCH)
            high = (dx - ax - TOUCH, dy - ay - TOUCH, dz - az - TOUCH)
            if low[0] < high[0] and low[1] < high[1] and low[2] < high[2]:
                found.append(Block(low, high))
    return found


def lattice(bounds: Block, blocked: Sequence[Block], also: Iterable[Vector], levels: Iterable[float]) -> Lattice:
    """Return where a thing can be shifted to within bounds; ``also`` are places that must be cells of their own."""
    zs = tuple(sorted({z for z in levels if bounds.low[2] <= z <= bounds.high[2]}))
    reached = [one for one in blocked if zs and one.low[2] < zs[-1] and one.high[2] > zs[0] and _meets(one, bounds)]
    wanted = tuple(also)
    xs, ys = (
        _coordinates(bounds, reached, tuple(place[axis] for place in wanted), axis) for axis in (0, 1)
    )  # every edge of what is in the way, within the bounds
    marked = [(one, _span(xs, one.low[0], one.high[0]), _span(ys, one.low[1], one.high[1])) for one in reached]
    full = (1 << (2 * len(xs) - 1)) - 1
    free, climbs = [], []
    for index, z in enumerate(zs):
        free.append(_rows(full, len(ys), [one[1:] for one in marked if one[0].low[2] < z < one[0].high[2]]))
        if index + 1 < len(zs):
            above = zs[index + 1]
            here = [one[1:] for one in marked if one[0].low[2] < above and one[0].high[2] > z]
            climbs.append(_rows(full, len(ys), here))
    return Lattice(xs, ys, zs, tuple(free), tuple(climbs))


def legs(grid: Lattice, start: Sequence[Rows], goal: Sequence[Rows]) -> tuple[Cell, ...] | None:
    """Return the corners of a way of the fewest straight legs from start to goal, None where there is none."""
    runs = [[_runs(row) for row in rows] for rows in grid.free]
    reached = [_cut(start, grid.free)]
    for _ in range(MOST_LEGS + 1):
        hit = _first(reached[-1], goal)
        if hit is not None:
            return _walked_back(grid, runs, reached, hit)
        grown = _grown(grid, runs, reached[-1])
        if grown == reached[-1]:
            return None
        reached.append(grown)
    return None


def region(grid: Lattice, start: Sequence[Rows]) -> list[Rows]:
    """Return every cell that can be reached from some cells."""
    runs = [[_runs(row) for row in rows] for rows in grid.free]
    reached = _cut(start, grid.free)
    while True:
        grown = _grown(grid, runs, reached)
        if grown == reached:
            return reached
        reached = grown


def only(grid: Lattice, cells: Iterable[Cell]) -> list[Rows]:
    """Return rows of bits in which nothing but some cells is set."""
    rows = [[0] * len(level) for level in grid.free]
    for level, row, column in cells:
        rows[level][row] |= 1 << column
    return [tuple(one) for one in rows]


def _along(edges: tuple[float, ...], index: int) -> float:
    at = edges[index // 2]
    return at if index % 2 == 0 else (at + edges[index // 2 + 1]) / 2.0


def _meets(one: Block, bounds: Block) -> bool:
    (ax, ay, _), (bx, by, _) = one
    (cx, cy, _), (dx, dy, _) = bounds
    return ax < dx and bx > cx and ay < dy and by > cy


def _coordinates(bounds: Block, blocked: Iterable[Block], also: Iterable[float], axis: int) -> tuple[float, ...]:
    low, high = bounds.low[axis], bounds.high[axis]
    found = {low, high, *(at for at in also if low <= at <= high)}
    for one in blocked:
        found.update(at for at in (one.low[axis], one.high[axis]) if low <= at <= high)
    return tuple(sorted(found))


def _span(edges: tuple[float, ...], low: float, high: float) -> tuple[int, int]:
    """Return the first and last index strictly between two edges; an edge beyond the bounds takes the end with it."""
    first = 0 if low < edges[0] else 2 * bisect_left(edges, low) + 1
    last = 2 * len(edges) - 2 if high > edges[-1] else 2 * bisect_left(edges, high) - 1
    return first, last


def _rows(full: int, count: int, marked: Iterable[tuple[tuple[int, int], tuple[int, int]]]) -> Rows:
    rows = [full] * (2 * count - 1)
    for (left, right), (first, last) in marked:
        if right >= left:
            keep = ~(((1 << (right - left + 1)) - 1) << left)
            for row in range(first, last + 1):
                rows[row] &= keep
    return tuple(rows)


def _runs(row: int) -> tuple[int, ...]:
    """Return the unbroken runs of free cells of a row, each as a mask."""
    found = []
    while row:
        low = row & -row
        beyond = row + low
        run = row & ~beyond
        found.append(run)
        row &= ~run
    return tuple(found)


def _cut(rows: Sequence[Rows], free: Sequence[Rows]) -> list[Rows]:
    return [tuple(a & b for a, b in zip(one, other, strict=True)) for one, other in zip(rows, free, strict=True)]


def _first(rows: Sequence[Rows], goal: Sequence[Rows]) -> Cell | None:
    for level, (here, there) in enumerate(zip(rows, goal, strict=True)):
        for row, (a, b) in enumerate(zip(here, there, strict=True)):
            both = a & b
            if both:
                return level, row, (both & -both).bit_length() - 1
    return None


def _grown(grid: Lattice, runs: list[list[tuple[int, ...]]], reached: list[Rows]) -> list[Rows]:
    """Return what can be reached by one straight leg more, along any axis."""
    grown: list[list[int]] = []
    for level, rows in enumerate(reached):
        wide = list(rows)
        if any(rows):
            free = grid.free[level]
            _along_rows(rows, runs[level], wide)
            _across_rows(rows, free, wide, range(len(rows)))
            _across_rows(rows, free, wide, range(len(rows) - 1, -1, -1))
        grown.append(wide)
    upward = range(len(reached))
    for order in (upward, upward[::-1]):
        carried: list[int] | Rows = ()
        for place, level in enumerate(order):
            here = reached[level]
            if place and any(carried):
                climbs, free = grid.climbs[min(level, order[place - 1])], grid.free[level]
                carried = [(a & b | c) & d for a, b, c, d in zip(carried, climbs, here, free, strict=True)]
                grown[level] = [a | b for a, b in zip(grown[level], carried, strict=True)]
            else:
                carried = here
    return [tuple(rows) for rows in grown]


def _along_rows(rows: Rows, runs: list[tuple[int, ...]], wide: list[int]) -> None:
    for row, here in enumerate(rows):
        if here:
            for run in runs[row]:
                if run & here:
                    wide[row] |= run


def _across_rows(rows: Rows, free: Rows, wide: list[int], order: range) -> None:
    carried = 0
    for row in order:
        carried = (carried | rows[row]) & free[row]
        if carried:
            wide[row] |= carried


def _walked_back(
    grid: Lattice, runs: list[list[tuple[int, ...]]], reached: list[list[Rows]], end: Cell
) -> tuple[Cell, ...]:
    """Return the corners of the way to a cell, from the sets reached by more and more legs."""
    way = [end]
    for before in reversed(reached[:-1]):
        if before[way[-1][0]][way[-1][1]] >> way[-1][2] & 1:
            continue
        one_leg = _grown(grid, runs, only(grid, [way[-1]]))
        back = _first(before, one_leg)
        assert back is not None
        way.append(back)
    return tuple(reversed(way))
