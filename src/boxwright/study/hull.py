"""The shell round the room as layout takes it: what the frame worked out of it, without a member or a layer."""

from __future__ import annotations

from math import inf

from boxwright.disciplines.frame.shell import Shell
from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.solve import Hull
from boxwright.exchange import Box
from boxwright.model.trailer import Person


def hull_of(bare: Shell, box: Box) -> Hull:
    """Return the shell round the room: its outer box, and what stands up through the floor."""
    half = box.outside[1] / 2.0 if box.outside[1] > 0.0 else inf
    outer = Block((box.front_x, -half, 0.0), (box.rear_x, half, box.outside[2] or inf))
    fixed = tuple((one.of, one.name, one.low, one.high) for one in bare.intrusions)
    return Hull(outer, fixed, bare.nose is not None, box.deck_height)


def beds_of(people: tuple[tuple[str, Person], ...]) -> tuple[str, ...]:
    """Return the paths of what people sleep on."""
    return tuple(dict.fromkeys(f"parts[{person.sleeps}]" for _, person in people if person.sleeps))
