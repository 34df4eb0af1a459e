"""What is set out where one stops and put in before one drives: a step that slides out from under a door, a canopy.

What slides inside, such as a drawer, goes back at once: it is where it is written at both ends of a change-over.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import product

from boxwright.disciplines.layout.bodies import Block, Body, envelope, moved_block
from boxwright.disciplines.layout.canopy import is_written, set_up
from boxwright.disciplines.layout.parts import Fitted, Slide
from boxwright.disciplines.layout.sweeps import AXES
from boxwright.exchange import Vector
from boxwright.model.place import Surfaces
from boxwright.units import Band


def is_set_out(one: Fitted, body: Body, room: Surfaces) -> bool:
    """Return whether a thing is set out where one stops: a canopy, or what slides outside the room."""
    facet = one.facet
    if facet is None or not body.blocks:
        return False
    return facet.out is not None or (facet.slides is not None and _is_outside(body.blocks, room))


def set_out(one: Fitted, body: Body, ground: Band) -> tuple[Block, ...] | None:
    """Return the boxes of such a thing set out, all of its way with them; None where nobody wrote how far it comes."""
    facet = one.facet
    if facet is not None and facet.out is not None:
        if not is_written(one):
            return None
        return tuple(block for piece in set_up(one, body, ground)[0] for block in piece.blocks)
    slides = facet.slides if facet is not None else None
    if slides is None or slides.to not in AXES or slides.by is None or not slides.by.known:
        return None
    return tuple(_slid(block, slides) for block in body.blocks)


def stands_out(one: Fitted, body: Body, ground: Band) -> tuple[tuple[Block, ...], ...]:
    """Return the boxes of a canopy in each way it may stand set out; none where it surely fills all of them."""
    pieces = set_up(one, body, ground)[0] if is_written(one) else ()
    if all(piece.is_sure for piece in pieces):
        return ()
    ways = [
        piece.either
        or ((piece.blocks,) if piece.is_sure else (body.blocks if piece.of == one.of else (), piece.blocks))
        for piece in pieces
    ]
    return tuple(tuple(block for blocks in way for block in blocks) for way in product(*ways))


def _slid(block: Block, slides: Slide) -> Block:
    """Return a box with all it slides through, as far as it may come."""
    assert slides.by is not None
    axis, way = AXES[slides.to]
    most = way * max(slides.by.best, slides.by.high)
    by: Vector = (most if axis == 0 else 0.0, most if axis == 1 else 0.0, most if axis == 2 else 0.0)
    return envelope((block, moved_block(block, by)))


def _is_outside(blocks: Iterable[Block], room: Surfaces) -> bool:
    faces = ((room.front, room.rear), (room.left, room.right), (room.floor, room.ceiling))
    return all(
        any(block.high[axis] <= low or block.low[axis] >= high for axis, (low, high) in enumerate(faces))
        for block in blocks
    )
