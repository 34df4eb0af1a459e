"""Drawers, doors and the lid of a cabinet of which nobody wrote how they open: as they mostly do, and only to ask.

They are in the face that looks away from the wall. A drawer comes out by the depth of the cabinet, in a row from its
top; a door takes its share of the width and may be hinged on either side; a lid is hinged along the wall. Cargo that
one lifts aside first is no question then.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.sweeps import QUARTER, Facing, Mover, Slip, Turn, turned, ways_it_faces
from boxwright.model.place import Surfaces

SQUARE_ON = (QUARTER, QUARTER, QUARTER)
"""What nobody wrote opens by a right angle (rad)."""


def fronts_of(one: Fitted, body: Body, room: Surfaces) -> Iterator[Mover]:
    """Yield what opens of a cabinet by its carcass alone; what is written of it as it moves stands instead.

    Where nobody knows which way its face looks it opens each way it may.
    """
    if body.blocks:
        for face in ways_it_faces(one.wall, body.around, room):
            yield from _opening(one, body, face)


def _opening(one: Fitted, body: Body, face: Facing) -> Iterator[Mover]:
    facet, block = one.facet, body.around
    axis, out = face
    made = Mover(one.of, "", "door", (), QUARTER, doubt=body.doubt, is_usual=True)
    if one.drawers and (facet is None or facet.slides is None):
        deep = block.size[axis]
        ways = tuple(Slip(front, axis, out * deep, out * deep) for front in _drawers(one.drawers, block))
        yield replace(made, name=f"a drawer of {one.name}", what="slide", ways=ways, whole=deep)
    if facet is not None and facet.swing is not None:
        return
    if one.doors:
        yield replace(made, name=f"a door of {one.name}", ways=tuple(_doors(one.doors, block, (axis, out))))
    if one.has_lid:
        lid = turned(block, (axis, -out), (2, 1.0), SQUARE_ON)
        yield replace(made, name=f"the lid of {one.name}", what="lid", ways=(lid,))


def _drawers(heights: tuple[float, ...], block: Block) -> Iterator[Block]:
    (low, high), top = block, block.high[2]
    for height in heights:
        bottom = max(top - height, low[2])
        if bottom < top:
            yield Block((low[0], low[1], bottom), (high[0], high[1], top))
        top = bottom


def _doors(count: int, block: Block, face: tuple[int, float]) -> Iterator[Turn]:
    level = 1 - face[0]
    wide = block.size[level] / count
    for number in range(count):
        low, high = list(block.low), list(block.high)
        low[level] = block.low[level] + number * wide
        high[level] = low[level] + wide
        leaf = Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))
        for side in (-1.0, 1.0):
            yield turned(leaf, (level, side), face, SQUARE_ON)
