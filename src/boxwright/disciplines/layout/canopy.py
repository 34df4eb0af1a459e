"""A canopy as it is set up: its sheet as a stack of boxes, its feet to the ground, and whether its figures agree."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import product
from math import atan2, ceil, prod, tan

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.meeting import TOUCH
from boxwright.disciplines.layout.method import slab_height
from boxwright.disciplines.layout.parts import Closed, Fitted
from boxwright.disciplines.layout.result import Beyond, Canopy, Footless
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.units import Band, exactly

FOOT = 0.05
"""How thick a foot or an arm of a canopy is taken to be (m); common practice, no source."""
BRACKET = 0.0
"""Where an arm has its foot on the wall (m): at the deck, where the wall is strong; common practice, no source."""
DEEPEST = 1.0
"""How far under the deck a foot goes down (m) where nobody wrote how high that is; common practice, no source."""
STEPS = 24
"""Boxes that hold an arm which leans out; by so much as one is high and long, it is taken thicker than it is."""
THIN = 0.002
"""How thick its sheet is at least (m), so that it is found; common practice, no source."""

STEEPEST = 1.5
"""The slope (rad) from which on a canopy is no canopy; the formula for its sheet ends there."""

MOST_WAYS = 16
"""At how many ends of what is in doubt arms are looked at; what may stand in more ways is asked about."""
MOST_CANOPIES = 100
"""Canopies that are remembered before all of them are forgotten together."""
_before: dict[str, tuple[Fitted, Body, Band, tuple[Body, ...], Canopy | None]] = {}
"""What each canopy last came to, so that one that is as it was stays the same object."""


def is_written(one: Fitted) -> bool:
    """Return whether all is written that says where a canopy goes: how far out, and how steeply, short of upright."""
    out = one.facet.out if one.facet is not None else None
    if out is None or out.reach is None or out.pitch is None:
        return False
    return out.reach.known and out.pitch.known and abs(out.pitch.best) < STEEPEST


def set_up(one: Fitted, body: Body, ground: Band) -> tuple[tuple[Body, ...], Canopy | None]:
    """Return a canopy as it stands set up, and its outer edge twice: by its slope, and as it is written.

    It goes out on the side it hangs on, away from the trailer's middle, and falls from the top of its roller. The sheet
    is held by boxes no thicker than a table's length, so it is never taken thinner than it is. Each arm, or one at
    either end, stands under the outer edge or leans out from a foot on the wall. Where nobody wrote which, its arms are
    a body of their own that fills the one or the other; where it is in doubt where one is along the trailer, too, from
    one end of that to the other. Where it is in doubt how far it comes out, it is laid as far as it may come, and not
    all of that is filled: ``either`` is what is, at each end of all that is in doubt.
    """
    had = _before.get(one.of)
    if had is None or had[0] != one or had[1] is not body or had[2] != ground:
        if len(_before) > MOST_CANOPIES:
            _before.clear()
        had = _before[one.of] = one, body, ground, *_laid_out(one, body, ground)
    return had[3], had[4]


def _laid_out(one: Fitted, body: Body, ground: Band) -> tuple[tuple[Body, ...], Canopy | None]:
    facet, whole = one.facet, envelope(body.blocks)
    assert facet is not None and facet.out is not None
    reach, pitch = facet.out.reach, facet.out.pitch
    assert reach is not None and pitch is not None
    at, feet, fall = _arms(one, whole), facet.out.feet, reach.best * tan(pitch.best)
    are_sure = feet != "" and all(arm.low == arm.high for arm in at)
    written = _stood(whole, reach, pitch, at, feet, ground)

    def laid(far: Band, steep: Band) -> tuple[Block, ...]:
        arms = sum(_stood(whole, far, steep, at, feet, ground), ()) if are_sure else ()
        return (*body.blocks, *_sheet(whole, far, steep), *arms)

    ends = list(product(_both(reach), _both(pitch)))
    height, judged = facet.out.height, None
    if ground.known and height is not None and height.known:
        judged = Canopy(one.of, one.name, whole.high[2] - fall + ground.best, height.best)
    alone = replace(body, carried_by="", is_inside=False, is_stowed=False)
    sheet = replace(alone, blocks=laid(reach, pitch), is_scattered=len(ends) > 1)
    if len(ends) > 1:
        sheet = replace(sheet, either=tuple(laid(exactly(far), exactly(steep)) for far, steep in ends))
    if are_sure:
        return (sheet,), judged
    arms = replace(
        alone, of=f"{one.of}.{'arms' if feet else 'out'}", name=f"the arms of {one.name}", blocks=sum(written, ()),
        carried_by=one.of, is_scattered=True, either=_every_way(whole, (reach, pitch, *at), feet, ground),
    )  # fmt: skip
    return (sheet, arms), judged


def _both(band: Band) -> tuple[float, ...]:
    """Return both ends of a length or an angle, one where they are the same."""
    return tuple(dict.fromkeys((min(band.best, band.low), max(band.best, band.high))))


def _stood(
    whole: Block, reach: Band, pitch: Band, at: list[Band], feet: str, ground: Band
) -> tuple[tuple[Block, ...], ...]:
    """Return the arms of a canopy with their feet on the ground, and with their feet on the wall, as they may be."""
    falls = [_fall(far, steep) for far, steep in ((reach.low, pitch.low), (reach.high, pitch.high))]
    falls.append(reach.best * tan(pitch.best))
    ends = whole.high[2] - max(falls), whole.high[2] - min(falls)
    down = _feet(whole, reach, ends[1], at, ground) if feet != "wall" else []
    leaning = _leaning(whole, reach, ends, at) if feet != "ground" else []
    return tuple(down), tuple(leaning)


def _every_way(whole: Block, bands: tuple[Band, ...], feet: str, ground: Band) -> tuple[tuple[Block, ...], ...]:
    """Return the arms of a canopy in each way they may stand, at each end of all that is in doubt; none of too many.

    ``bands`` are how far it comes out, how steeply, and where each arm is along the trailer.
    """
    ends = [_both(band) for band in bands]
    if prod(map(len, ends)) > MOST_WAYS:
        return ()
    found = list[tuple[Block, ...]]()
    for far, steep, *at in product(*ends):
        exact = [exactly(far), exactly(steep)]
        down, leaning = _stood(whole, exact[0], exact[1], [exactly(x) for x in at], feet, ground)
        found += [(*down, *leaning)] if feet else [down, leaning]
    return tuple(found)


def _arms(one: Fitted, whole: Block) -> list[Band]:
    """Return where the arms of a canopy may be along the trailer: as written, else one at either end of it.

    One of which nobody knows the place may be anywhere along it.
    """
    ends = exactly(whole.low[0] + FOOT / 2.0), exactly(whole.high[0] - FOOT / 2.0)
    anywhere = Band((ends[0].best + ends[1].best) / 2.0, ends[0].best, ends[1].best, spread="interval")
    out = one.facet.out if one.facet is not None else None
    return [arm if arm.known else anywhere for arm in out.arms] if out is not None and out.arms else list(ends)


def misplaced_arms(fitted: Iterable[Fitted]) -> Iterator[Beyond]:
    """Yield the canopies of which an arm is written, or may be, where the canopy is not: nothing holds it there."""
    for one in fitted:
        out, x, half = one.facet.out if one.facet is not None else None, one.place.x, one.place.size[0] / 2.0
        if out is None or not (one.is_sized and x.known):
            continue
        least = most = 0.0
        for arm in (arm for arm in out.arms if arm.known):
            least = max(least, x.low - half - arm.high, arm.low - x.high - half)
            most = max(most, x.high - half - arm.low, arm.high - x.low - half)
        if most > LENGTHS["play"] + TOUCH:
            is_sure = least > LENGTHS["play"] + TOUCH
            yield Beyond(one.of, one.name, least if is_sure else most, "sure" if is_sure else "perhaps")


def footless(fitted: Iterable[Fitted], bodies: dict[str, Body], closed: Iterable[Closed]) -> Iterator[Footless]:
    """Yield the canopies of which an arm has its foot on the wall where there is none: in a door, say."""
    for one in fitted:
        out, body = one.facet.out if one.facet is not None else None, bodies.get(one.of)
        if out is None or out.feet == "ground" or body is None or not body.blocks:
            continue
        whole = envelope(body.blocks)
        wall, at = "right" if _way(whole) > 0.0 else "left", _arms(one, whole)
        is_told = any(arm.known for arm in out.arms)
        for hole in closed:
            x, z, half, up = hole.place.x, hole.place.z, hole.place.size[0] / 2.0, hole.place.size[2] / 2.0
            if hole.wall != wall or not (x.known and z.known and z.low - up <= BRACKET < z.high + up):
                continue
            wide = FOOT / 2.0 + (0.0 if is_told else body.doubt[0])
            in_it = [arm for arm in at if x.low - half < arm.high + wide and arm.low - wide < x.high + half]
            if in_it:
                is_at = is_told or body.doubt[0] == 0.0
                is_sure = bool(out.feet) and is_at and any(arm.low == arm.high for arm in in_it)
                is_sure = is_sure and x.low == x.high and z.low == z.high
                yield Footless(
                    one.of, one.name, hole.of, hole.name, "sure" if is_sure else "perhaps", bool(out.feet)
                )  # fmt: skip
                break


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


def _feet(whole: Block, reach: Band, top: float, at: list[Band], ground: Band) -> list[Block]:
    """Return the feet, each as wide as it is in doubt how far out it stands."""
    (low, high), way = whole, _way(whole)
    start = high[1] if way > 0.0 else low[1]
    near, edge = start + way * (min(reach.best, reach.low) - FOOT), start + way * max(reach.best, reach.high)
    down = -max(ground.best, ground.high) if ground.known else -DEEPEST
    return [Block((x.low - FOOT / 2.0, min(near, edge), down), (x.high + FOOT / 2.0, max(near, edge), top)) for x in at]


def _leaning(whole: Block, reach: Band, ends: tuple[float, float], at: list[Band]) -> list[Block]:
    """Return the arms that lean out from the wall to the outer edge, each as wide as it is in doubt where that is."""
    (low, high), way = whole, _way(whole)
    wall, start = (low[1], high[1]) if way > 0.0 else (high[1], low[1])
    roller = way * (start - wall)
    near, far = roller + min(reach.best, reach.low), roller + max(reach.best, reach.high)
    found = []
    for x in at:
        for number in range(STEPS):
            begins, ends_at = number / STEPS, (number + 1) / STEPS
            across = wall + way * near * begins, wall + way * far * ends_at
            up = [BRACKET + (end - BRACKET) * share for end in ends for share in (begins, ends_at)]
            found.append(
                Block(
                    (x.low - FOOT / 2.0, min(across), min(up) - FOOT / 2.0),
                    (x.high + FOOT / 2.0, max(across), max(up)),
                )
            )
    return found
