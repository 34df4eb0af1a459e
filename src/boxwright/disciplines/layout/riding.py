"""What rides on a thing: it goes along where that slides, holds its lid shut, and rests on its top or is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, Body, Pose, envelope, place_in
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

    What is folded up, or lies elsewhere at night, lies as it is turned with its carrier and is not judged. What nobody
    wrote the height of is laid on top. Cargo that stands up out of other cargo, as a motor in its stand, is
    taken to hang in an open frame.
    """
    known = {one.of: one for one in fitted}
    for one in known.values():
        body, carrier = standing[one.of], standing.get(one.rides_on)
        if carrier is None or not (body.known and carrier.known and body.blocks and carrier.blocks):
            continue
        if any(place_in(its, pose) is not its.place for its in (one, known[carrier.of])):
            continue
        if one.place.z.assumed:
            yield from _over_the_edge(one, carrier, list(carrier.blocks), standing, lines)
            continue
        tops = list(_tops(body, carrier, known[carrier.of], standing, lines))
        low = body.around.low[2]
        off = min((low - top for top, _ in tops), key=abs, default=None)
        if off is not None and off < 0.0 and carrier.kind == "cargo" and body.around.high[2] > carrier.around.high[2]:
            continue
        doubt = max(body.doubt[2] - carrier.doubt[2], 0.0)
        if off is not None and abs(off) + doubt <= LENGTHS["play"]:
            under = [block for top, block in tops if abs(low - top) <= LENGTHS["play"]]
            yield from _over_the_edge(one, carrier, under, standing, lines)
            continue
        sure: Certainty = "sure" if off is not None and abs(off) - doubt > LENGTHS["play"] else "perhaps"
        yield Perched(one.of, one.name, carrier.of, carrier.name, off, sure)


def _over_the_edge(
    one: Fitted,
    carrier: Body,
    under: list[Block],
    standing: Mapping[str, Body],
    lines: Mapping[str, frozenset[str]],
) -> Iterator[Perched]:
    """Yield a thing whose middle is beyond the edges of all it rests on, so that it tips off; what hangs does not."""
    body = standing[one.of]
    if one.wall or _tips(one, body, carrier, under) is None:
        return
    low, play = body.around.low[2], LENGTHS["play"]
    for other in standing.values():
        if other.of != body.of and body.of not in lines[other.of]:
            under += [block for block in other.blocks if abs(low - block.high[2]) <= play]
    out = _tips(one, body, carrier, under)
    if out is not None:
        sure: Certainty = "sure" if out[0] > TOUCH else "perhaps"
        yield Perched(one.of, one.name, carrier.of, carrier.name, 0.0, sure, out[0] if out[0] > TOUCH else out[1])


def _tips(one: Fitted, body: Body, carrier: Body, under: Iterable[Block]) -> tuple[float, float] | None:
    """Return how far the middle of a thing is beyond the edges of all it rests on, and may be; None where it is not.

    Where nobody wrote where it stands, it only has to find room there.
    """
    rests = [block for block in under if any(_is_over(mine, block) for mine in body.blocks)]
    sizes = [_volume(block) for block in body.blocks]
    if not rests or sum(sizes) <= 0.0:
        return None
    mine, on = envelope(body.blocks), envelope(rests)
    best, worst = 0.0, 0.0
    for axis, band in ((0, one.place.x), (1, one.place.y)):
        if band.assumed:
            continue
        middle = sum((block.low[axis] + block.high[axis]) / 2.0 * size
                     for block, size in zip(body.blocks, sizes, strict=True)) / sum(sizes)  # fmt: skip
        edges = max(on.low[axis], mine.low[axis]), min(on.high[axis], mine.high[axis])
        out = max(edges[0] - middle, middle - edges[1])
        best, worst = max(best, out), max(worst, out + max(body.doubt[axis] - carrier.doubt[axis], 0.0))
    return (best, worst) if worst > TOUCH else None


def _volume(block: Block) -> float:
    length, width, height = block.size
    return length * width * height


def _tops(
    body: Body, carrier: Body, of_carrier: Fitted, standing: Mapping[str, Body], lines: Mapping[str, frozenset[str]]
) -> Iterator[tuple[float, Block]]:
    """Yield the heights a thing may rest at, and on what: all under it in the plan, its carrier, what rides there."""
    mattress = of_carrier.facet.mattress if of_carrier.facet is not None else None
    for other in standing.values():
        if other.of != carrier.of and (carrier.of not in lines[other.of] or other.is_stowed or other.of == body.of):
            continue
        if body.of in lines[other.of]:
            continue
        for block in other.blocks:
            if any(_is_over(mine, block) for mine in body.blocks):
                yield block.high[2], block
                if other is carrier and mattress is not None:
                    yield block.high[2] + mattress[2], block


def _is_over(mine: Block, block: Block) -> bool:
    along, across, _ = overlaps(mine, block)
    return along > TOUCH and across > TOUCH
