"""What rides along: what stands on a thing that slides goes with it, and what stands on a lid holds it shut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.meeting import TOUCH
from boxwright.disciplines.layout.result import Certainty
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import Mover, Slip


def ridden_along(mover: Mover, carrier: Body, carried: Iterable[Body]) -> Iterator[Mover]:
    """Yield what goes along with a thing that slides, as far as it stands out of the thing's own box."""
    slips = [way for way in mover.ways if isinstance(way, Slip)]
    if mover.what != "slide" or not slips:
        return
    around, first = carrier.around, slips[0]
    for body in carried:
        outside = [
            block
            for block in body.blocks
            if any(block.low[axis] < around.low[axis] - TOUCH or around.high[axis] + TOUCH < block.high[axis]
                   for axis in range(3))
        ]  # fmt: skip
        if outside:
            ways = tuple(replace(first, start=block) for block in outside)
            name = f"{body.name} {'in' if body.is_inside else 'on'} {carrier.name}"
            yield Mover(body.of, name, "slide", ways, mover.whole, doubt=body.doubt, carrier=carrier.of)


def carried_by(of: str, bodies: Mapping[str, Body], lines: Mapping[str, frozenset[str]]) -> list[Body]:
    """Return all that is on a thing or in it, whatever it is on between, and has a place of its own."""
    return [body for body in bodies.values() if of in lines[body.of] and body.blocks and not body.is_stowed]


def on_top(mover: Mover, carrier: Body, carried: Iterable[Body]) -> Iterator[tuple[float, Body, Certainty]]:
    """Yield what stands on a lid, which is met before it opens at all; what is inside of the thing is under its lid."""
    if mover.what != "lid":
        return
    top = carrier.blocks[0].high[2]
    for body in carried:
        low = min(block.low[2] for block in body.blocks)
        if not body.is_inside and abs(low - top) <= LENGTHS["play"] + body.doubt[2]:
            yield 0.0, body, "sure" if body.is_sure else "perhaps"
