"""Things as solids: each the boxes it fills."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.drawing.solid import Solid, Stuff, upright

LEAST = 0.004
"""How thick (m) a thing is drawn at least: a strap, a sheet, a label."""


def solids(bodies: Iterable[Body], stuffs: dict[str, Stuff]) -> tuple[Solid, ...]:
    """Return every thing that is somewhere; ``stuffs`` says by rig path what a thing is shown as."""
    return tuple(
        Solid(
            of=body.of,
            name=body.name,
            stuff=stuffs.get(body.of, "thing"),
            pieces=tuple(upright(*_thick_enough(block)) for block in body.blocks),
            taken="" if body.known else "its place or its size is in doubt",
        )
        for body in bodies
        if body.blocks
    )


def _thick_enough(block: Block) -> Block:
    pairs = [(low, high) if high - low >= LEAST else ((low + high - LEAST) / 2.0, (low + high + LEAST) / 2.0)
             for low, high in zip(*block, strict=True)]  # fmt: skip
    return Block((pairs[0][0], pairs[1][0], pairs[2][0]), (pairs[0][1], pairs[1][1], pairs[2][1]))
