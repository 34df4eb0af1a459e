"""A canopy as it is set up: its sheet as a stack of boxes, its feet to the ground, and whether its figures agree."""

from __future__ import annotations

from math import ceil, tan

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.method import slab_height
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.result import Canopy
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.units import Band

FOOT = 0.05
"""How thick a foot of a canopy is taken to be (m); common practice, no source."""
THIN = 0.002
"""How thick its sheet is at least (m), so that it is found; common practice, no source."""

STEEPEST = 1.5
"""The slope (rad) from which on a canopy is no canopy; the formula for its sheet ends there."""


def is_written(one: Fitted) -> bool:
    """Return whether all is written that says where a canopy goes: how far out, and how steeply, short of upright."""
    out = one.facet.out if one.facet is not None else None
    if out is None or out.reach is None or out.pitch is None:
        return False
    return out.reach.known and out.pitch.known and abs(out.pitch.best) < STEEPEST


def set_up(one: Fitted, body: Body, ground: Band) -> tuple[Body, Canopy | None]:
    """Return a canopy as it stands set up, and its outer edge twice: by its slope, and as it is written.

    It goes out on the side it hangs on, away from the trailer's middle, and falls from the top of its roller. The sheet
    is held by boxes no thicker than a table's length, so it is never taken thinner than it is; its feet stand under
    each arm, or under its ends, where the ground is known.
    """
    facet, (low, high) = one.facet, envelope(body.blocks)
    assert facet is not None and facet.out is not None
    reach, pitch = facet.out.reach, facet.out.pitch
    assert reach is not None and pitch is not None
    way = 1.0 if low[1] + high[1] > 0.0 else -1.0
    start = high[1] if way > 0.0 else low[1]
    fall = reach.best * tan(pitch.best)
    count = max(1, ceil(fall / LENGTHS["canopy sheet"]))
    thick = slab_height(reach.best, pitch.best, float(count)) if fall > 0.0 else 0.0
    blocks = list(body.blocks)
    for number in range(count):
        near, far = (start + way * reach.best * share / count for share in (number, number + 1))
        top = high[2] - number * thick
        blocks.append(Block((low[0], min(near, far), top - max(thick, THIN)), (high[0], max(near, far), top)))
    edge = start + way * reach.best
    if ground.known:
        at = [arm.best for arm in facet.out.arms if arm.known] or [low[0] + FOOT / 2.0, high[0] - FOOT / 2.0]
        for x in at:
            foot = (x - FOOT / 2.0, min(edge, edge - way * FOOT), -ground.best)
            blocks.append(Block(foot, (x + FOOT / 2.0, max(edge, edge - way * FOOT), high[2] - fall)))
    height = facet.out.height
    judged = None
    if ground.known and height is not None and height.known:
        judged = Canopy(one.of, one.name, high[2] - fall + ground.best, height.best)
    return Body(one.of, one.name, tuple(blocks), body.doubt, body.known, body.stands, body.kind), judged
