"""A canopy as it is set up: its sheet as a stack of boxes, its feet to the ground, and whether its figures agree."""

from __future__ import annotations

from dataclasses import replace
from math import atan2, ceil, tan

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

MOST_CANOPIES = 100
"""Canopies that are remembered before all of them are forgotten together."""
_before: dict[str, tuple[Fitted, Body, Band, Body, Canopy | None]] = {}
"""What each canopy last came to, so that one that is as it was stays the same object."""


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
    each arm, or under its ends, where the ground is known. Where it is in doubt how far it comes out, it is laid as far
    as it may come, and not all of that is filled.
    """
    had = _before.get(one.of)
    if had is None or had[0] != one or had[1] is not body or had[2] != ground:
        if len(_before) > MOST_CANOPIES:
            _before.clear()
        had = _before[one.of] = one, body, ground, *_laid_out(one, body, ground)
    return had[3], had[4]


def _laid_out(one: Fitted, body: Body, ground: Band) -> tuple[Body, Canopy | None]:
    facet, whole = one.facet, envelope(body.blocks)
    assert facet is not None and facet.out is not None
    reach, pitch = facet.out.reach, facet.out.pitch
    assert reach is not None and pitch is not None
    is_doubtful = reach.high > reach.low or pitch.high > pitch.low
    blocks = [*body.blocks, *_sheet(whole, reach, pitch)]
    fall = reach.best * tan(pitch.best)
    if ground.known:
        arms = [arm.best for arm in facet.out.arms if arm.known]
        least = min(fall, _fall(min(reach.best, reach.low), pitch.low))
        blocks += _feet(whole, reach, whole.high[2] - least, arms, ground)
    height = facet.out.height
    judged = None
    if ground.known and height is not None and height.known:
        judged = Canopy(one.of, one.name, whole.high[2] - fall + ground.best, height.best)
    alone = replace(body, carried_by="", is_inside=False, is_stowed=False)
    return replace(alone, blocks=tuple(blocks), is_scattered=is_doubtful), judged


def _way(whole: Block) -> float:
    """Return the way out across the trailer on the side a canopy hangs on."""
    return 1.0 if whole.low[1] + whole.high[1] > 0.0 else -1.0


def _fall(reach: float, pitch: float) -> float:
    return reach * tan(max(min(pitch, STEEPEST), -STEEPEST))


def _sheet(whole: Block, reach: Band, pitch: Band) -> list[Block]:
    """Return the sheet as boxes, each as high as the sheet may lie in it between its least slope and its greatest."""
    (low, high), way = whole, _way(whole)
    far, start = max(reach.best, reach.high), high[1] if way > 0.0 else low[1]
    fall, least = _fall(far, max(pitch.best, pitch.high)), _fall(far, min(pitch.best, pitch.low))
    count = max(1, ceil(fall / LENGTHS["canopy sheet"]))
    thick = slab_height(far, atan2(fall, far), float(count)) if fall > 0.0 else 0.0
    found = []
    for number in range(count):
        near, end = (start + way * far * share / count for share in (number, number + 1))
        top = high[2] - number * least / count
        bottom = high[2] - number * thick - max(thick, THIN)
        found.append(Block((low[0], min(near, end), bottom), (high[0], max(near, end), top)))
    return found


def _feet(whole: Block, reach: Band, top: float, arms: list[float], ground: Band) -> list[Block]:
    """Return the feet, each as wide as it is in doubt how far out it stands."""
    (low, high), way = whole, _way(whole)
    start = high[1] if way > 0.0 else low[1]
    near, edge = start + way * (min(reach.best, reach.low) - FOOT), start + way * max(reach.best, reach.high)
    at = arms or [low[0] + FOOT / 2.0, high[0] - FOOT / 2.0]
    return [Block((x - FOOT / 2.0, min(near, edge), -ground.best), (x + FOOT / 2.0, max(near, edge), top)) for x in at]
