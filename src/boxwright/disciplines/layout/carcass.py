"""A cabinet as the boards it is built of, so that one sees into it: only ever drawn.

Whether two things meet is asked of the whole box, which is never less than the boards in it. What nobody wrote is taken
as it mostly is, and said: the fronts lie on the edges of the boards, shelves share the height evenly.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.sweeps import way_it_faces
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces

GAP = 0.003
"""The gap between two fronts (m): common practice, no source."""


class Boards(NamedTuple):
    """The boards of one cabinet, and what of them nobody wrote."""

    blocks: tuple[Block, ...]
    taken: str


class Span(NamedTuple):
    """A board by how far it reaches: away from the back, across the face and up (m)."""

    deep: tuple[float, float]
    across: tuple[float, float]
    up: tuple[float, float]


def boards_of(one: Fitted, block: Block, room: Surfaces) -> Boards | None:
    """Return a cabinet as its boards; None where nobody wrote how thick they are, or they would fill it."""
    axis, out = way_it_faces(one.wall, block, room)
    deep, across, up = block.size[axis], block.size[1 - axis], block.size[2]
    has_front = bool(one.drawers or one.doors)
    thick = one.ply
    if not 0.0 < 2.0 * thick < min(across, up) or thick + one.back + (thick if has_front else 0.0) >= deep:
        return None
    edge = deep - thick if has_front else deep
    under = max(up - sum(one.drawers), 0.0)
    spans = [*_shell(one, (edge, across, up)), *_shelves(one, edge, across, min(under, up - thick))]
    spans += _fronts(one, (edge, deep), across, up)
    return Boards(tuple(_placed(span, block, axis, out) for span in spans), _taken(one))


def _shell(one: Fitted, size: Vector) -> Iterator[Span]:
    deep, across, up = size
    for side in ((0.0, one.ply), (across - one.ply, across)):
        yield Span((0.0, deep), side, (0.0, up))
    for level in ((0.0, one.ply), (up - one.ply, up)):
        yield Span((0.0, deep), (0.0, across), level)
    if one.back > 0.0:
        yield Span((0.0, one.back), (0.0, across), (0.0, up))
    if one.has_lid and not (one.drawers or one.doors):  # what one reaches from above is shut in front
        yield Span((deep - one.ply, deep), (0.0, across), (0.0, up))


def _shelves(one: Fitted, edge: float, across: float, top: float) -> Iterator[Span]:
    """Yield the shelves, evenly between the bottom board and what is over them."""
    free = (top - one.ply - one.shelves * one.ply) / (one.shelves + 1)
    for number in range(one.shelves if free > 0.0 else 0):
        under = one.ply + free + number * (free + one.ply)
        yield Span((0.0, edge), (0.0, across), (under, under + one.ply))


def _fronts(one: Fitted, deep: tuple[float, float], across: float, up: float) -> Iterator[Span]:
    top, half = up, GAP / 2.0
    for height in one.drawers:
        bottom = max(top - height, 0.0)
        if bottom + GAP < top:
            yield Span(deep, (half, across - half), (bottom + half, top - half))
        top = bottom
    wide = across / one.doors if one.doors else 0.0
    for number in range(one.doors if top > GAP and wide > GAP else 0):
        yield Span(deep, (number * wide + half, (number + 1) * wide - half), (half, top - half))


def _placed(span: Span, block: Block, axis: int, out: float) -> Block:
    """Return a board where it is: its depth counts from the face that stands at the wall."""
    low, high = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    for number in (0, 1):
        from_back = span.deep[number] if out > 0.0 else -span.deep[1 - number]
        begin = block.low[axis] if out > 0.0 else block.high[axis]
        (low, high)[number][axis] = begin + from_back
        (low, high)[number][1 - axis] = block.low[1 - axis] + span.across[number]
        (low, high)[number][2] = block.low[2] + span.up[number]
    return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _taken(one: Fitted) -> str:
    found = []
    if one.back <= 0.0:
        found.append("no back is written: drawn without one")
    if one.drawers:
        found.append("drawers drawn as their fronts only")
    if one.drawers or one.doors:
        found.append("fronts drawn as thick as the boards")
    if one.shelves:
        found.append("shelves drawn evenly apart")
    return "; ".join(found)
