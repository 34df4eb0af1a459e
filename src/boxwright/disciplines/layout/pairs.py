"""All pairs of things that are in each other, kept up as things move: what did not move is not looked at again.

What comes out depends on the things alone, never on what was asked before: a remembered pair is a pair of two things
that are both as they were.
"""

from __future__ import annotations

from bisect import insort
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Body, moved_block
from boxwright.disciplines.layout.meeting import (
    TOUCH,
    Cells,
    Keyed,
    are_near,
    cells_of,
    columns_and_rows,
    deepest,
    grown,
    pairs_in,
    way_apart,
)
from boxwright.disciplines.layout.result import Certainty
from boxwright.disciplines.layout.sourced import LENGTHS

ORDER: tuple[Certainty, ...] = ("sure", "perhaps", "grazes")
MOST_CROWDS = 24
"""Rows of things that are remembered: about as many as the load states of a plan from today on."""


class Pair(NamedTuple):
    """Two things in each other by their numbers: sorted as it is, the surest and deepest comes first."""

    rank: int
    less: float
    of: str
    first: int
    second: int
    axis: int

    @property
    def depth(self) -> float:
        """Return how far they are in each other (m)."""
        return -self.less


def pairs_of(bodies: tuple[Body, ...], lines: Mapping[str, frozenset[str]]) -> tuple[Pair, ...]:
    """Return every two things in each other of which neither carries the other, the surest and deepest first."""
    shelf = _shelf(tuple(one.of for one in bodies))
    try:
        # It is off the shelf while it changes, so that nobody who asks at the same time sees it half changed.
        crowd = shelf.pop()
    except IndexError:
        crowd = Crowd(bodies, lines)
    if crowd.lines != lines:
        crowd = Crowd(bodies, lines)
    crowd.become(bodies)
    found = tuple(crowd.pairs)
    shelf.append(crowd)
    return found


@lru_cache(maxsize=MOST_CROWDS)
def _shelf(paths: tuple[str, ...]) -> list[Crowd]:
    """Return where what was found of a row of things is put down, empty the first time."""
    del paths
    return []


class Crowd:
    """Things that stand at one time: the cells they are in, and the pairs of them that are in each other."""

    def __init__(self, bodies: tuple[Body, ...], lines: Mapping[str, frozenset[str]]) -> None:
        self.lines = dict(lines)
        self._bodies = bodies
        self._cells: Cells = cells_of(_boxes(enumerate(bodies)))
        numbers = {(a, b) if a < b else (b, a) for a, b in pairs_in(self._cells)}
        self.pairs = sorted(pair for first, second in sorted(numbers) if (pair := self._pair(first, second)))

    def become(self, bodies: tuple[Body, ...]) -> None:
        """Take over the same things where they stand now; only what moved is looked at, against what is near it."""
        before, self._bodies = self._bodies, bodies
        moved = [number for number, (one, had) in enumerate(zip(bodies, before, strict=True))
                 if one is not had and one != had]  # fmt: skip
        if not moved:
            return
        for boxed in _boxes((number, before[number]) for number in moved):
            for cell in columns_and_rows(boxed[0]):
                self._cells[cell].remove(boxed)
        own = list(_boxes((number, bodies[number]) for number in moved))
        for boxed in own:
            for cell in columns_and_rows(boxed[0]):
                self._cells.setdefault(cell, []).append(boxed)
        gone = frozenset(moved)
        self.pairs = [one for one in self.pairs if one.first not in gone and one.second not in gone]
        for first, second in sorted({pair for boxed in own for pair in self._near(boxed)}):
            pair = self._pair(first, second)
            if pair is not None:
                insort(self.pairs, pair)

    def _near(self, boxed: Keyed) -> Iterable[tuple[int, int]]:
        block, number = boxed
        for cell in columns_and_rows(block):
            for other, other_number in self._cells[cell]:
                # in the order of their numbers, so that a box at the very edge is judged as when all are looked at
                if other_number < number and are_near(other, block):
                    yield other_number, number
                elif number < other_number and are_near(block, other):
                    yield number, other_number

    def _pair(self, first: int, second: int) -> Pair | None:
        one, other = self._bodies[first], self._bodies[second]
        if other.of in self.lines[one.of] or one.of in self.lines[other.of]:
            return None
        depth, axis = deepest(one, other)
        off = one.doubt[axis] + other.doubt[axis]
        far = _way_through(one, other, depth)
        if far > LENGTHS["play"] or (depth > TOUCH and far + off <= LENGTHS["play"]):
            grazes = far <= LENGTHS["play"]
            is_anyhow = grazes or _are_in_anyhow(one, other)
            is_sure = _is_filled(one) and _is_filled(other) and is_anyhow
            sure: Certainty = "grazes" if grazes else "sure" if is_sure else "perhaps"
            depth += 0.0 if is_anyhow else off
        else:
            depth, sure = depth + off, "perhaps"
        return Pair(ORDER.index(sure), -depth, one.of, first, second, axis)


def _is_filled(body: Body) -> bool:
    """Return whether all boxes of a thing are known to be filled, or what is in each way it may stand."""
    return body.is_sure or (body.known and bool(body.either))


def _are_in_anyhow(one: Body, other: Body) -> bool:
    """Return whether two things are in each other by more than the play at each end of where and how they may be."""
    off = tuple(mine + theirs for mine, theirs in zip(one.doubt, other.doubt, strict=True))
    if not (any(off) or one.either or other.either):
        return True
    return all(
        here.blocks and there.blocks and _way_through(here, there, deepest(here, there)[0]) > LENGTHS["play"]
        for here in _ways_of(one)
        for way in _ways_of(other)
        for x, y, z in product(*((-far, far) if far else (0.0,) for far in off))
        for there in [replace(way, blocks=tuple(moved_block(block, (x, y, z)) for block in way.blocks))]
    )


def _ways_of(body: Body) -> list[Body]:
    """Return a thing in each way it may stand, at the ends of what is in doubt of how."""
    return [replace(body, blocks=blocks, either=(), is_scattered=False) for blocks in body.either] or [body]


def _way_through(one: Body, other: Body, depth: float) -> float:
    """Return how far two things are in each other (m): what is thin is not shallow."""
    return way_apart(one, other) if TOUCH < depth <= LENGTHS["play"] else depth


def _boxes(numbered: Iterable[tuple[int, Body]]) -> Iterable[Keyed]:
    """Yield the boxes of what is known, grown by how far it may be off."""
    for number, body in numbered:
        if body.known:
            for block in body.blocks:
                yield (grown(block, body.doubt) if any(body.doubt) else block), number
