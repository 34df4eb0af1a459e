"""Which boxes are in each other: first those near each other along the trailer, then each pair by itself."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator
from itertools import accumulate
from math import floor, inf

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.method import distance, overlap
from boxwright.exchange import Vector

TOUCH = 0.001
"""How far two boxes may go into each other and still only touch (m)."""
CELL = 0.6
"""Edge of the cells things are first sorted into (m): about as long as most things are."""
FARTHEST = 60
"""The outermost cell on each side: all beyond is sorted into it, so that a digit too many sorts nothing for ever."""
NOTHING: Vector = (0.0, 0.0, 0.0)

Keyed = tuple[Block, int]
Cells = dict[tuple[int, int], list[Keyed]]


def near_pairs(blocks: Iterable[Keyed]) -> Iterator[tuple[int, int]]:
    """Yield each pair of things whose boxes meet in more than a touch, by the numbers of the things, maybe twice.

    Boxes are sorted into cells seen from above; only what shares a cell is looked at. A pair that shares several cells
    is looked at in the one where both begin.
    """
    yield from pairs_in(cells_of(blocks))


def cells_of(blocks: Iterable[Keyed]) -> Cells:
    """Return boxes sorted into the cells they reach into, seen from above."""
    cells: Cells = {}
    for boxed in blocks:
        for cell in columns_and_rows(boxed[0]):
            cells.setdefault(cell, []).append(boxed)
    return cells


def columns_and_rows(block: Block) -> Iterator[tuple[int, int]]:
    """Yield the cells a box reaches into."""
    (x, y, _), (far_x, far_y, _) = block
    for column in range(_cell(x), _cell(far_x) + 1):
        for row in range(_cell(y), _cell(far_y) + 1):
            yield column, row


def _cell(place: float) -> int:
    return floor(min(max(place / CELL, -FARTHEST), FARTHEST))


def pairs_in(cells: Cells) -> Iterator[tuple[int, int]]:
    """Yield each pair of things in some cells whose boxes meet in more than a touch, maybe twice."""
    for (column, row), held in cells.items():
        if len(held) > 1:
            yield from _in_cell(held, column, row)


def are_near(one: Block, other: Block) -> bool:
    """Return whether two boxes meet in more than a touch, reckoned to the last digit as for all that share a cell."""
    (x, y, z), (high_x, high_y, high_z) = one
    low, high = other
    return (
        low[2] < high_z - TOUCH
        and high[2] > z + TOUCH
        and low[0] < high_x - TOUCH
        and high[0] > x + TOUCH
        and low[1] < high_y - TOUCH
        and high[1] > y + TOUCH
    )


def _in_cell(held: list[Keyed], column: int, row: int) -> Iterator[tuple[int, int]]:
    for index, (one, number) in enumerate(held):
        (x, y, z), (high_x, high_y, high_z) = one
        high_x, high_y, high_z = high_x - TOUCH, high_y - TOUCH, high_z - TOUCH
        low_x, low_y, low_z = x + TOUCH, y + TOUCH, z + TOUCH
        for other, other_number in held[index + 1 :]:
            low, high = other
            if (
                low[2] < high_z
                and high[2] > low_z
                and low[0] < high_x
                and high[0] > low_x
                and low[1] < high_y
                and high[1] > low_y
                and number != other_number
                # the cell in which both begin is the one that counts them
                and _cell(max(low[0], x)) == column
                and _cell(max(low[1], y)) == row
            ):
                yield number, other_number


def overlaps(one: Block, other: Block) -> Vector:
    """Return how far two boxes are in each other along the three axes; below zero they are apart."""
    (low, high), (other_low, other_high) = one, other
    return (
        overlap(low[0], high[0], other_low[0], other_high[0]),
        overlap(low[1], high[1], other_low[1], other_high[1]),
        overlap(low[2], high[2], other_low[2], other_high[2]),
    )


def are_in(one: Block, other: Block) -> bool:
    """Return whether two boxes are in each other by more than a touch: the sign of ``overlaps``, found sooner."""
    (low, high), (other_low, other_high) = one, other
    return (
        high[0] - other_low[0] > TOUCH
        and other_high[0] - low[0] > TOUCH
        and high[1] - other_low[1] > TOUCH
        and other_high[1] - low[1] > TOUCH
        and high[2] - other_low[2] > TOUCH
        and other_high[2] - low[2] > TOUCH
    )


def gap(one: Iterable[Block], others: Iterable[Block]) -> float:
    """Return how far apart two things are (m), 0 where they touch or are in each other."""
    others = tuple(others)
    return min((distance(*overlaps(mine, theirs)) for mine in one for theirs in others), default=inf)


def deepest(one: Body, other: Body) -> tuple[float, int]:
    """Return how far two things are in each other along the axis where it is least, and that axis."""
    found = (-inf, 0)
    for mine in one.blocks:
        for theirs in other.blocks:
            depths = overlaps(mine, theirs)
            along, across, up = round(depths[0], 9), round(depths[1], 9), round(depths[2], 9)
            least = 2 if up < along and up < across else 1 if across < along else 0
            found = max(found, (depths[least], least))
    return found


def way_apart(one: Body, other: Body) -> float:
    """Return the least way one of two has to be moved until their boxes are apart: what is thin is not shallow (m)."""
    return max(
        min(min(mine.high[axis] - theirs.low[axis], theirs.high[axis] - mine.low[axis]) for axis in range(3))
        for mine in one.blocks
        for theirs in other.blocks
    )


def grown(block: Block, by: Vector) -> Block:
    """Return a box grown on all sides."""
    if by == NOTHING:
        return block
    low, high = block
    return Block((low[0] - by[0], low[1] - by[1], low[2] - by[2]), (high[0] + by[0], high[1] + by[1], high[2] + by[2]))


def roots_of(bodies: Iterable[Body]) -> dict[str, str]:
    """Return for each thing the path of what carries it in the end, itself where nothing does."""
    carried = {one.of: one.carried_by for one in bodies}

    def root(of: str) -> str:
        seen = {of}
        while (above := carried.get(of, "")) and above in carried and above not in seen:
            seen.add(above)
            of = above
        return of

    return {of: root(of) for of in carried}


def lines_of(bodies: Iterable[Body]) -> dict[str, frozenset[str]]:
    """Return for each thing all that carries it, one on the other: what it may lie in or on."""
    carried = {one.of: one.carried_by for one in bodies}
    found: dict[str, frozenset[str]] = {}
    for of in carried:
        above, line = carried[of], set[str]()
        while above and above not in line and above != of:
            line.add(above)
            above = carried.get(above, "")
        found[of] = frozenset(line)
    return found


def kin_of(of: str, lines: dict[str, frozenset[str]]) -> frozenset[str]:
    """Return a thing with all that carries it and all that it carries."""
    return frozenset({of, *lines.get(of, frozenset()), *(one for one, line in lines.items() if of in line)})


def nearest_free(pairs: Iterable[tuple[Block, Block]], axis: int, ends: tuple[float, float]) -> float | None:
    """Return the least shift along an axis at which the first box of no pair is in the second, None for none.

    ``ends`` is how far they may go each way before they leave the room. 0 where they meet nothing.
    """
    first, second = (one for one in range(3) if one != axis)
    spans: list[tuple[float, float]] = []
    for (low, high), (other_low, other_high) in pairs:
        if (
            high[first] - other_low[first] > TOUCH
            and other_high[first] - low[first] > TOUCH
            and high[second] - other_low[second] > TOUCH
            and other_high[second] - low[second] > TOUCH
        ):
            spans.append((other_low[axis] - high[axis], other_high[axis] - low[axis]))
    tries = [0.0, *(edge for span in spans for edge in span)]
    tries = [one for one in tries if ends[0] - TOUCH <= one <= ends[1] + TOUCH]
    taken = sorted((low + TOUCH, high - TOUCH) for low, high in spans)
    lows, reach = [low for low, _ in taken], list(accumulate((high for _, high in taken), max))
    for shift in sorted(tries, key=abs):
        before = bisect_left(lows, shift)  # so many begin below it; it is in one of them where the farthest ends above
        if not before or reach[before - 1] <= shift:
            return shift
    return None


def least_clear(is_clear: Callable[[float], bool], far: float) -> float:
    """Return the least shift of the stretch up to ``far`` in which something is clear; at ``far`` it is."""
    low, high = 0.0, far
    for _ in range(24):
        middle = (low + high) / 2.0
        if is_clear(middle):
            high = middle
        else:
            low = middle
    return high


def around(bodies: Iterable[Body]) -> Block:
    """Return the smallest box around some things."""
    return envelope([block for body in bodies for block in body.blocks])
