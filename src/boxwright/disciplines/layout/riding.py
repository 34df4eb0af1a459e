"""What rides on a thing: it goes along where that slides, holds its lid shut, and rests on its top or is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, Body, Pose, place_in
from boxwright.disciplines.layout.meeting import TOUCH, overlaps
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.result import Certainty, Perched
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


def unperched(
    fitted: Iterable[Fitted], standing: Mapping[str, Body], lines: Mapping[str, frozenset[str]], pose: Pose
) -> Iterator[Perched]:
    """Yield what rides on a thing and is over it, beside it or down in it by more than the play of linings.

    What is folded up, or lies elsewhere at night, lies as it is turned with its carrier and is not judged. Nor is what
    nobody wrote the height of: it is laid on top. Cargo that stands up out of other cargo, as a motor in its stand, is
    taken to hang in an open frame.
    """
    known = {one.of: one for one in fitted}
    for one in known.values():
        body, carrier = standing[one.of], standing.get(one.rides_on)
        if carrier is None or not (body.known and carrier.known and body.blocks and carrier.blocks):
            continue
        if one.place.z.assumed or any(place_in(its, pose) is not its.place for its in (one, known[carrier.of])):
            continue
        tops = list(_tops(body, carrier, known[carrier.of], standing, lines))
        low = body.around.low[2]
        off = min((low - top for top in tops), key=abs, default=None)
        if off is not None and off < 0.0 and carrier.kind == "cargo" and body.around.high[2] > carrier.around.high[2]:
            continue
        doubt = max(body.doubt[2] - carrier.doubt[2], 0.0)
        if off is not None and abs(off) + doubt <= LENGTHS["play"]:
            continue
        sure: Certainty = "sure" if off is not None and abs(off) - doubt > LENGTHS["play"] else "perhaps"
        yield Perched(one.of, one.name, carrier.of, carrier.name, off, sure)


def _tops(
    body: Body, carrier: Body, of_carrier: Fitted, standing: Mapping[str, Body], lines: Mapping[str, frozenset[str]]
) -> Iterator[float]:
    """Yield the heights a thing may rest at: of all that is under it in the plan, its carrier and what rides there."""
    mattress = of_carrier.facet.mattress if of_carrier.facet is not None else None
    for other in standing.values():
        if other.of != carrier.of and (carrier.of not in lines[other.of] or other.is_stowed or other.of == body.of):
            continue
        if body.of in lines[other.of]:
            continue
        for block in other.blocks:
            if any(_is_over(mine, block) for mine in body.blocks):
                yield block.high[2]
                if other is carrier and mattress is not None:
                    yield block.high[2] + mattress[2]


def _is_over(mine: Block, block: Block) -> bool:
    along, across, _ = overlaps(mine, block)
    return along > TOUCH and across > TOUCH
