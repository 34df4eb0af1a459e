"""Things as solids: each the boxes it fills, a cabinet the boards it is built of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.carcass import boards_of
from boxwright.disciplines.layout.parts import Fitted
from boxwright.drawing.solid import Prism, Solid, Stuff, upright
from boxwright.model.place import Surfaces

LEAST = 0.004
"""How thick (m) a thing is drawn at least: a strap, a sheet, a label."""


class Cabinet(NamedTuple):
    """A cabinet as layout sees it, and the density of its boards (kg/m3): best, low, high; None where unknown."""

    of: Fitted
    density: tuple[float, float, float] | None


def solids(
    bodies: Iterable[Body], stuffs: dict[str, Stuff], cabinets: Mapping[str, Cabinet], room: Surfaces | None
) -> tuple[Solid, ...]:
    """Return every thing that is somewhere; ``stuffs`` says by rig path what a thing is shown as.

    ``cabinets`` are those of them that may be drawn as their boards.
    """
    return tuple(_solid(body, stuffs.get(body.of, "thing"), cabinets.get(body.of), room)
                 for body in bodies if body.blocks)  # fmt: skip


def _solid(body: Body, stuff: Stuff, cabinet: Cabinet | None, room: Surfaces | None) -> Solid:
    doubt = "" if body.known else "its place or its size is in doubt"
    boards = [boards_of(cabinet.of, block, room) for block in body.blocks] if cabinet and room is not None else []
    built = [one for one in boards if one is not None]
    if cabinet is None or not built or len(built) < len(boards):
        return Solid(body.of, body.name, stuff, tuple(_drawn(body.blocks)), taken=doubt)
    pieces = tuple(_drawn(block for one in built for block in one.blocks))
    said = "; ".join(one for one in (doubt, built[0].taken) if one)
    return Solid(body.of, body.name, stuff, pieces, density=cabinet.density, taken=said)


def _drawn(blocks: Iterable[Block]) -> Iterator[Prism]:
    return (upright(*_thick_enough(block)) for block in blocks)


def _thick_enough(block: Block) -> Block:
    pairs = [(low, high) if high - low >= LEAST else ((low + high - LEAST) / 2.0, (low + high + LEAST) / 2.0)
             for low, high in zip(*block, strict=True)]  # fmt: skip
    return Block((pairs[0][0], pairs[1][0], pairs[2][0]), (pairs[0][1], pairs[1][1], pairs[2][1]))
