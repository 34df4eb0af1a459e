"""How wide a way there is between upright boxes seen from above: the largest square that can be moved along it.

A square of side w moves among rectangles just as its middle moves among the same rectangles grown by w / 2 all round.
Between the edges of those nothing changes, so a handful of cells decides exactly whether the middle gets through; the
width is then halved in on until it is known within `FINENESS`. A body that can turn gets through a little more where
two corners face each other aslant, up to the square root of two: the width here is never more than is free.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator, Sequence
from heapq import heappop, heappush
from math import hypot, inf

Point = tuple[float, float]
Rect = tuple[float, float, float, float]
"""An upright rectangle seen from above: its least x and y, its greatest x and y (m)."""

FINENESS = 1e-4
"""How finely (m) a width is sought: it is given up to this much too small, never too large."""
TOUCHING = 1e-7
"""What slides along an edge is let through (m): a body as wide as the gap fits it."""


def less(rect: Rect, hole: Rect) -> tuple[Rect, ...]:
    """Return what is left of a rectangle where another one is taken out of it."""
    x0, y0, x1, y1 = rect
    if hole[0] >= x1 or hole[2] <= x0 or hole[1] >= y1 or hole[3] <= y0:
        return (rect,)
    a0, b0, a1, b1 = max(x0, hole[0]), max(y0, hole[1]), min(x1, hole[2]), min(y1, hole[3])
    pieces = ((x0, y0, a0, y1), (a1, y0, x1, y1), (a0, y0, a1, b0), (a0, b1, a1, y1))
    return tuple(one for one in pieces if one[0] < one[2] and one[1] < one[3])


def within(rect: Rect, around: Rect) -> Rect | None:
    """Return the part of a rectangle that lies in another one, None where there is none."""
    if around[0] >= rect[2] or around[2] <= rect[0] or around[1] >= rect[3] or around[3] <= rect[1]:
        return None
    return max(rect[0], around[0]), max(rect[1], around[1]), min(rect[2], around[2]), min(rect[3], around[3])


def widest(obstacles: Sequence[Rect], start: Rect, goals: Sequence[Rect], most: float) -> tuple[float, ...]:
    """Return for each goal the widest square, up to ``most``, whose middle gets from the start to it; 0 for none."""
    # what fits through at the full width needs no seeking, and that is the common case
    found = [most if fits else 0.0 for fits in reach(obstacles, start, goals, most)]
    # each entry: goals that the lower width reaches and the higher one does not, as far as is known
    open_ends = [(0.0, most, tuple(index for index, one in enumerate(found) if not one))]
    while open_ends:
        low, high, asked = open_ends.pop()
        if not asked:
            continue
        if high - low <= FINENESS:
            for index in asked:
                found[index] = low
            continue
        middle = (low + high) / 2.0
        reached = reach(obstacles, start, goals, middle)
        through = tuple(index for index in asked if reached[index])
        stuck = tuple(index for index in asked if not reached[index])
        open_ends += [(middle, high, through)] if through else []
        open_ends += [(low, middle, stuck)] if stuck else []
    return tuple(found)


def reach(obstacles: Sequence[Rect], start: Rect, goals: Sequence[Rect], width: float) -> tuple[bool, ...]:
    """Return for each goal whether the middle of a square of some width gets from the start to it."""
    cells = _cells(obstacles, (start, *goals), width)
    seen, _ = _flood(cells, start)
    return tuple(_is_reached(cells, seen, goal) for goal in goals)


def corridor(obstacles: Sequence[Rect], start: Rect, goal: Rect, width: float) -> tuple[Rect, ...]:
    """Return stretches one way of a square's middle keeps to, from the start to the goal; empty for none.

    What meets none of them, grown as obstacles are, leaves that way free.
    """
    cells = _cells(obstacles, (start, goal), width)
    seen, before = _flood(cells, start)
    xs, ys, runs = cells
    rows = _bits(ys, goal[1], goal[3])
    ends = [
        (column, run)
        for column in range(bisect_left(xs, goal[0]), bisect_left(xs, goal[2]))
        for run in runs[column]
        if run & rows & seen[column]
    ]
    if not ends:
        return ()
    way: list[tuple[int, int]] = [ends[0]]
    while (last := before[way[-1]]) is not None:
        way.append(last)
    way.reverse()
    found, at = list[Rect](), _lowest(way[0][1] & _bits(ys, start[1], start[3]))
    for number, (column, run) in enumerate(way):
        both = run & (way[number + 1][1] if number + 1 < len(way) else rows)
        to = at if both >> at & 1 else _lowest(both)  # straight on as far as it goes
        found.append((xs[column], ys[min(at, to)], xs[column + 1], ys[max(at, to) + 1]))
        at = to
    return tuple(_joined(found))


def _joined(stretches: Iterable[Rect]) -> Iterator[Rect]:
    """Yield stretches of a way, those in a row that are as wide and side by side as one."""
    last: Rect | None = None
    for one in stretches:
        if last is not None and (last[1], last[3]) == (one[1], one[3]) and (last[2] == one[0] or one[2] == last[0]):
            last = min(last[0], one[0]), one[1], max(last[2], one[2]), one[3]
            continue
        if last is not None:
            yield last
        last = one
    if last is not None:
        yield last


def meets(stretches: Iterable[Rect], obstacles: Iterable[Rect], width: float) -> bool:
    """Return whether one of some obstacles, grown for a square of some width, is in one of some stretches."""
    by = width / 2.0 - TOUCHING
    grown = [(x0 - by, y0 - by, x1 + by, y1 + by) for x0, y0, x1, y1 in obstacles]
    return any(within(one, stretch) is not None for stretch in stretches for one in grown)


def beside_both(
    things: Sequence[tuple[str, Rect]], walls: Sequence[Rect], start: Rect, goal: Rect, width: float
) -> tuple[str, ...]:
    """Return the things that lie beside all there is to reach from the start and from the goal, each once, in order.

    Where no way leads from the one to the other, none but one of these opens one as it alone is taken away.
    """
    cells = _cells((*walls, *(rect for _, rect in things)), (start, goal), width)
    by, (xs, ys, _) = width / 2.0 - TOUCHING, cells
    found = []
    for end in (start, goal):
        seen, _ = _flood(cells, end)
        beside = set[str]()
        for of, (x0, y0, x1, y1) in things:
            if of in beside:
                continue
            rows = _bits(ys, y0 - by, y1 + by)
            first, last = bisect_left(xs, x0 - by), bisect_left(xs, x1 + by)
            rows |= rows << 1 | rows >> 1
            around = range(max(first - 1, 0), min(last + 1, len(seen)))
            if within((x0 - by, y0 - by, x1 + by, y1 + by), end) or any(seen[column] & rows for column in around):
                beside.add(of)
        found.append(beside)
    return tuple(of for of in dict.fromkeys(of for of, _ in things) if all(of in one for one in found))


_Cells = tuple[list[float], list[float], list[tuple[int, ...]]]
"""The room cut by the edges of all in it: the edges, and of each column the unbroken runs of rows free in it."""


def _cells(obstacles: Sequence[Rect], ends: Sequence[Rect], width: float) -> _Cells:
    by = width / 2.0 - TOUCHING
    grown = [(x0 - by, y0 - by, x1 + by, y1 + by) for x0, y0, x1, y1 in obstacles]
    xs = _edges(one for rect in (*grown, *ends) for one in (rect[0], rect[2]))
    ys = _edges(one for rect in (*grown, *ends) for one in (rect[1], rect[3]))
    # one whole number for each column of cells: the bits of the rows that are closed in it
    closed = [0] * (len(xs) - 1)
    for rect in grown:
        rows = _bits(ys, rect[1], rect[3])
        for column in range(bisect_left(xs, rect[0]), bisect_left(xs, rect[2])):
            closed[column] |= rows
    whole = (1 << (len(ys) - 1)) - 1
    return xs, ys, [_runs(whole & ~one) for one in closed]


def _flood(cells: _Cells, start: Rect) -> tuple[list[int], dict[tuple[int, int], tuple[int, int] | None]]:
    """Return what is reached from the start: its rows by column, and before each run the one it was reached from."""
    xs, ys, runs = cells
    seen = [0] * len(runs)
    rows = _bits(ys, start[1], start[3])
    before: dict[tuple[int, int], tuple[int, int] | None] = {}
    for column in range(bisect_left(xs, start[0]), bisect_left(xs, start[2])):
        for run in runs[column]:
            if run & rows:
                seen[column] |= run
                before[column, run] = None
    waiting = list(before)
    for column, here in waiting:  # it grows as it is gone through, the nearest first, so that a way back is short
        for beside in (column - 1, column + 1):
            if 0 <= beside < len(runs):
                for run in runs[beside]:
                    if run & here and not seen[beside] & run:
                        seen[beside] |= run
                        before[beside, run] = column, here
                        waiting.append((beside, run))
    return seen, before


def _is_reached(cells: _Cells, seen: Sequence[int], goal: Rect) -> bool:
    xs, ys, _ = cells
    rows = _bits(ys, goal[1], goal[3])
    columns = range(bisect_left(xs, goal[0]), bisect_left(xs, goal[2]))
    return any(seen[column] & rows for column in columns)


def _lowest(rows: int) -> int:
    """Return the number of the lowest of some rows."""
    return (rows & -rows).bit_length() - 1


def shortest(obstacles: Sequence[Rect], start: Rect, goal: Rect, width: float) -> tuple[Point, ...]:
    """Return the shortest way of a square's middle from the start to the goal, corner by corner; empty for none.

    It begins and ends at a corner, at the middle or halfway along an edge of the two, where one of these is free.
    """
    by = width / 2.0 - TOUCHING
    grown = [(x0 - by, y0 - by, x1 + by, y1 + by) for x0, y0, x1, y1 in obstacles]
    for lines in (_halves, _all_lines):  # a start that is nearly full has its free places in odd corners
        way = _shortest(grown, _spots(start, grown, lines), _spots(goal, grown, lines))
        if way:
            return way
    return ()


def gap_at(obstacles: Iterable[Rect], spot: Point, axis: int, reach_aside: float) -> tuple[float, float] | None:
    """Return how far a spot is free both ways along an axis, as places on it; None where it stands in something.

    What comes as near as ``reach_aside`` beside the line counts.
    """
    low, high = -inf, inf
    other = 1 - axis
    for rect in obstacles:
        if rect[other] >= spot[other] + reach_aside or rect[other + 2] <= spot[other] - reach_aside:
            continue
        if rect[axis] < spot[axis] < rect[axis + 2]:
            return None
        if rect[axis + 2] <= spot[axis]:
            low = max(low, rect[axis + 2])
        else:
            high = min(high, rect[axis])
    return low, high


def _shortest(grown: Sequence[Rect], starts: list[Point], goals: list[Point]) -> tuple[Point, ...]:
    ends = [*starts, *goals]
    first, last = len(starts), len(ends)
    corners = [
        (x, y)
        for x0, y0, x1, y1 in grown
        for x in (x0, x1)
        for y in (y0, y1)
        if not any(_holds(rect, (x, y)) for rect in grown)
    ]
    spots = [*ends, *corners]
    far = [0.0 if index < first else float("inf") for index in range(len(spots))]
    before = [-1] * len(spots)
    waiting = [(0.0, index) for index in range(first)]
    while waiting:
        so_far, here = heappop(waiting)
        if first <= here < last:
            return _back(spots, before, here)
        if so_far > far[here]:
            continue
        for there, spot in enumerate(spots):
            step = so_far + hypot(spot[0] - spots[here][0], spot[1] - spots[here][1])
            if step < far[there] - TOUCHING and _is_clear(spots[here], spot, grown):
                far[there], before[there] = step, here
                heappush(waiting, (step, there))
    return ()


def _edges(values: Iterable[float]) -> list[float]:
    return sorted(set(values))


def _bits(edges: list[float], low: float, high: float) -> int:
    """Return the rows between two edges as the bits of a whole number."""
    first, last = bisect_left(edges, low), bisect_left(edges, high)
    return (1 << last) - (1 << first)


def _runs(free: int) -> tuple[int, ...]:
    """Return the unbroken runs of bits of a whole number."""
    found = []
    while free:
        lowest = free & -free
        run = free & ~(free + lowest)
        found.append(run)
        free &= ~run
    return tuple(found)


def _spots(
    rect: Rect, grown: Sequence[Rect], lines: Callable[[Rect, Sequence[Rect], int], tuple[float, ...]]
) -> list[Point]:
    """Return the free places of a start or a goal where lines across it cross."""
    xs, ys = lines(rect, grown, 0), lines(rect, grown, 1)
    return [(x, y) for x in xs for y in ys if not any(_holds(one, (x, y)) for one in grown)]


def _halves(rect: Rect, grown: Sequence[Rect], axis: int) -> tuple[float, ...]:
    return rect[axis], (rect[axis] + rect[axis + 2]) / 2.0, rect[axis + 2]


def _all_lines(rect: Rect, grown: Sequence[Rect], axis: int) -> tuple[float, ...]:
    edges = {edge for one in grown for edge in (one[axis], one[axis + 2]) if rect[axis] < edge < rect[axis + 2]}
    return (*_halves(rect, grown, axis), *sorted(edges))


def _holds(rect: Rect, spot: Point) -> bool:
    return rect[0] < spot[0] < rect[2] and rect[1] < spot[1] < rect[3]


def _back(spots: Sequence[Point], before: Sequence[int], last: int) -> tuple[Point, ...]:
    way = [last]
    while before[way[-1]] >= 0:
        way.append(before[way[-1]])
    return tuple(spots[index] for index in reversed(way))


def _is_clear(start: Point, end: Point, grown: Sequence[Rect]) -> bool:
    return not any(_crosses(start, end, rect) for rect in grown)


def _crosses(start: Point, end: Point, rect: Rect) -> bool:
    """Return whether a straight line runs through the inside of a rectangle."""
    enters, leaves = 0.0, 1.0
    for axis in (0, 1):
        by, low, high = end[axis] - start[axis], rect[axis] - start[axis], rect[axis + 2] - start[axis]
        if by == 0.0:
            if low >= 0.0 or high <= 0.0:
                return False
            continue
        near, far = sorted((low / by, high / by))
        enters, leaves = max(enters, near), min(leaves, far)
    return leaves - enters > TOUCHING
