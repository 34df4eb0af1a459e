"""Whether what rides on a thing rests on it: on its top, on its mattress, or on something else that rides there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from boxwright.disciplines.layout.bodies import Block, Body, Pose, place_in
from boxwright.disciplines.layout.meeting import TOUCH, overlaps
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.result import Certainty, Perched
from boxwright.disciplines.layout.sourced import LENGTHS


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
