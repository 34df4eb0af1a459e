"""What a bed that folds up is hinged on: a side wall at that edge, or something built in that stands there."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines.layout.bodies import Block, Body, doubt_of
from boxwright.disciplines.layout.meeting import TOUCH, are_in
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import Mover, Turn
from boxwright.model.place import Surfaces


def hangs_on_nothing(one: Fitted, bed: Mover, room: Surfaces, bodies: Iterable[Body]) -> bool:
    """Return whether the edge a bed is hinged on is away from its wall, or may be, and nothing built in stands there.

    What is carried, and what rides on the bed, holds no hinge.
    """
    turn, reach = bed.ways[0], LENGTHS["wall reach"]
    if not isinstance(turn, Turn):
        return False
    z, y = turn.hinge
    off = y - room.left if turn.across[1] > 0.0 else room.right - y
    if off + doubt_of(one.place)[1] <= reach + TOUCH:
        return False
    around = Block((turn.width[0], y - reach, z - reach), (turn.width[1], y + reach, z + one.place.size[2] + reach))
    return not any(
        are_in(block, around)
        for body in bodies
        if body.of != one.of and body.kind != "cargo" and body.carried_by != one.of
        for block in body.blocks
    )
