"""What a bed that folds up is hinged on: a side wall at that edge, or something built in that stands there."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines.layout.bodies import Block, Body, doubt_of
from boxwright.disciplines.layout.meeting import TOUCH, are_in
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.sourced import LENGTHS, SHARES
from boxwright.disciplines.layout.sweeps import Mover, Turn
from boxwright.model.place import Surfaces


def hangs_on_nothing(one: Fitted, bed: Mover, room: Surfaces, bodies: Iterable[Body]) -> bool:
    """Return whether the edge a bed is hinged on is away from its wall, or may be, and nothing built in stands there.

    What holds it stands near both ends of the hinge, or all along it: from its first piece to its last over a share of
    its length. What is carried, and what rides on the bed, holds no hinge.
    """
    turn, reach = bed.ways[0], LENGTHS["hinge reach"]
    if not isinstance(turn, Turn):
        return False
    z, y = turn.hinge
    off = y - room.left if turn.across[1] > 0.0 else room.right - y
    if off + doubt_of(one.place)[1] <= reach + TOUCH:
        return False
    around = Block((turn.width[0], y - reach, z - reach), (turn.width[1], y + reach, z + one.place.size[2] + reach))
    held = [
        (max(block.low[0], turn.width[0]), min(block.high[0], turn.width[1]))
        for body in bodies
        if body.of != one.of and body.kind != "cargo" and body.carried_by != one.of
        for block in body.blocks
        if are_in(block, around)
    ]
    if not held:
        return True
    over = max(end for _, end in held) - min(start for start, _ in held)
    return over < SHARES["hinged"] * (turn.width[1] - turn.width[0]) - TOUCH
