"""Random layouts for the tests of layout, from a seed, and the same ones mirrored."""

from __future__ import annotations

from random import Random

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.sweeps import Turn
from boxwright.model.place import Surfaces

ROOM = Surfaces(0.0, 6.0, -1.2, 1.2, 0.0, 2.0, 0.0, 6.0, -1.2, 1.2, 2.0)
NO_DOUBT = (0.0, 0.0, 0.0)


def body(name: str, low: tuple[float, float, float], size: tuple[float, float, float]) -> Body:
    """Return a thing of one box."""
    high = (low[0] + size[0], low[1] + size[1], low[2] + size[2])
    return Body(f"parts[{name}]", name, (Block(low, high),), NO_DOUBT, True, "yes", "cargo")


def layout(seed: int, count: int = 40) -> tuple[Body, ...]:
    """Return things strewn about a room; many of them stand in each other."""
    luck = Random(seed)
    found = []
    for number in range(count):
        size = (luck.uniform(0.05, 1.0), luck.uniform(0.05, 0.6), luck.uniform(0.05, 0.8))
        low = (luck.uniform(0.0, 5.0), luck.uniform(-1.2, 0.6), luck.uniform(0.0, 1.2))
        found.append(body(f"thing-{number:03d}", low, size))
    return tuple(found)


def mirrored(bodies: tuple[Body, ...]) -> tuple[Body, ...]:
    """Return the same things with left and right changed over."""
    return tuple(
        Body(
            one.of,
            one.name,
            tuple(
                Block((block.low[0], -block.high[1], block.low[2]), (block.high[0], -block.low[1], block.high[2]))
                for block in one.blocks
            ),
            one.doubt,
            one.known,
            one.stands,
            one.kind,
        )
        for one in bodies
    )


def turn(seed: int) -> Turn:
    """Return a leaf with an upright hinge somewhere in the room, that opens one way or the other."""
    luck = Random(seed)
    along, across = luck.choice([(0, 1), (1, 0)])
    return Turn(
        along=(along, luck.choice([-1.0, 1.0])),
        across=(across, luck.choice([-1.0, 1.0])),
        hinge=(luck.uniform(0.5, 3.0), luck.uniform(-0.8, 0.8)) if along == 0 else (luck.uniform(-0.8, 0.8), 2.0),
        spans=((0.0, luck.uniform(0.3, 1.4)), (0.0, luck.choice([0.0, 0.03]))),
        width=(0.1, 1.6),
        turn=(angle := luck.uniform(0.2, 3.1)),
        at_most=angle,
    )
