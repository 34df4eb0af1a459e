"""Whether room is left to lie on a bed that is slept on tonight, beside what stands on it or hangs low over it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import product
from math import floor

from boxwright.disciplines.layout.bodies import Block, Body, doubt_of, moved_block
from boxwright.disciplines.layout.body_sizes import BEDDING, ROOM
from boxwright.disciplines.layout.meeting import NOTHING, grown
from boxwright.disciplines.layout.passage import Rect, within
from boxwright.disciplines.layout.people import needs
from boxwright.disciplines.layout.result import Taken
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.terraces import Bed, bed_rect_of, is_placed, outline_of
from boxwright.exchange import Vector
from boxwright.model.trailer import Person

SLACK = 1e-6
"""Places that miss by no more (of one) are counted: the numbers were rounded, not the bed."""


def taken_beds(
    bodies: Iterable[Body],
    beds: Iterable[Bed],
    people: Iterable[tuple[str, Person]],
    lines: Mapping[str, frozenset[str]],
) -> Iterator[Taken]:
    """Yield what leaves the sleepers of a bed no room to lie: things on it, or so low over it that nobody lies there.

    Bedding is lain on. Each sleeper wants a strip along the bed as long as a body and as wide as shoulders, or as the
    bed gives each where it is narrower.
    """
    bodies, heights = tuple(bodies), dict(people)
    for bed in beds:
        if not is_placed(bed.place) or not bed.sleepers:
            continue
        near = [one for one in bodies if one.of != bed.of and not one.is_inside and not _is_bedding(one, bed, lines)]
        is_whole = bed.count == 1  # of several in one box nobody knows which of them is lain on
        certain = [one for one in near if is_whole and one.is_sure and one.stands == "yes"]
        sure = _surely_short(bed, certain, heights)
        if sure:
            yield Taken(bed.of, bed.name, tuple(one.of for one in sure), tuple(one.name for one in sure), "sure")
            continue
        vague = [one for one in near if not (one.blocks and is_whole) and bed.of in lines.get(one.of, ())]
        doubt = vague or (_short(bed, near, heights, True) if is_whole else [])
        if doubt:
            yield Taken(bed.of, bed.name, tuple(one.of for one in doubt), tuple(one.name for one in doubt), "perhaps")


def is_named_bedding(name: str) -> bool:
    """Return whether a thing is called as what one lies on or under is."""
    return bool(set(name.lower().replace("_", "-").split("-")) & BEDDING)


def _is_bedding(one: Body, bed: Bed, lines: Mapping[str, frozenset[str]]) -> bool:
    """Return whether a thing is lain on or under: so named, or flat and over half of the bed it lies on."""
    if bed.of not in lines.get(one.of, ()):
        return False
    if is_named_bedding(one.name):
        return True
    on_it = [part for block in one.blocks if (part := within(outline_of(block), bed_rect_of(bed))) is not None]
    length, width, _ = bed.place.size
    is_flat = all(block.size[2] <= ROOM["lie over"] for block in one.blocks)
    return is_flat and sum((part[2] - part[0]) * (part[3] - part[1]) for part in on_it) > length * width / 2.0


def _short(bed: Bed, near: Iterable[Body], heights: Mapping[str, Person], is_worst: bool) -> list[Body]:
    """Return what is on a bed where it leaves less strips than there are sleepers, with all in doubt at its worst."""
    off = bed.place.z.high - bed.place.z.low if is_worst else 0.0
    low, high = bed.top + LENGTHS["play"] - off, bed.top + ROOM["lie over"] + off
    found, closed = list[Body](), list[Rect]()
    for one in near:
        blocks = [grown(block, one.doubt) for block in one.blocks] if is_worst else list(one.blocks)
        pieces = [part for block in blocks if (part := _on(block, bed, low, high)) is not None]
        found += [one] if pieces else []
        closed += pieces
    if not closed:
        return []
    along = 0 if bed.place.size[0] >= bed.place.size[1] else 1
    wants = [needs("lie", height) for name in bed.sleepers
             if (height := heights[name].height) is not None]  # fmt: skip
    is_known = len(wants) == len(bed.sleepers) and all(want.known for want in wants)
    if not is_known and not is_worst:
        return []  # nobody knows how long they are, so perhaps they curl up beside it
    longest = max(bed.place.size[:2])
    long = min(max((want.high if is_worst else want.best for want in wants), default=longest), longest)
    wide = min(ROOM["shoulders"], min(bed.place.size[:2]) / len(bed.sleepers))
    strips = _strips(bed_rect_of(bed), closed, along, long if is_known else longest, wide)
    return found if strips < len(bed.sleepers) else []


def _surely_short(bed: Bed, near: Sequence[Body], heights: Mapping[str, Person]) -> list[Body]:
    """Return what leaves less strips than there are sleepers wherever the bed and all on it may be.

    Of what is in doubt one thing at a time is looked at, at each end of where it may be, and of the rest only what they
    surely fill.
    """
    found, off = _short(bed, near, heights, False), doubt_of(bed.place)
    loose = [one for one in near if any(one.doubt)]
    if not found or not (loose or any(off)):
        return found
    for one in (None, *loose):
        rest = [_core(other) for other in near if other is not one]
        if all(
            _short(bed, [*_moved(rest, by), *_moved([one] if one is not None else [], also, by)], heights, False)
            for by in _ends(off)
            for also in (_ends(one.doubt) if one is not None else (NOTHING,))
        ):
            return found
    return []


def _ends(off: Vector) -> Iterator[Vector]:
    """Yield each end of how far something may be off."""
    yield from ((x, y, z) for x, y, z in product(*((-far, far) if far else (0.0,) for far in off)))


def _core(body: Body) -> Body:
    """Return what a thing fills wherever it may be."""
    x, y, z = body.doubt
    less = (grown(block, (-x, -y, -z)) for block in body.blocks)
    return replace(body, blocks=tuple(block for block in less if min(block.size) > 0.0))


def _moved(bodies: Iterable[Body], *ways: Vector) -> Iterator[Body]:
    for body in bodies:
        blocks = body.blocks
        for by in ways:
            blocks = tuple(moved_block(block, by) for block in blocks)
        yield replace(body, blocks=blocks)


def _on(block: Block, bed: Bed, low: float, high: float) -> Rect | None:
    return within(outline_of(block), bed_rect_of(bed)) if block.low[2] < high and block.high[2] > low else None


def _strips(bed: Rect, closed: list[Rect], along: int, long: float, wide: float) -> int:
    """Return how many strips of some length and width find room side by side on a bed, at the best place along it."""
    across = 1 - along
    first, last = bed[along], bed[along + 2] - long
    starts = [first, last, *(end for one in closed for end in (one[along + 2], one[along] - long))]
    most = 0
    for start in starts:
        if not first - SLACK <= start <= last + SLACK:
            continue
        there = sorted(
            (one[across], one[across + 2])
            for one in closed
            if one[along] < start + long - SLACK and one[along + 2] > start + SLACK
        )
        free, reached = 0, bed[across]
        for begins, closes in (*there, (bed[across + 2], bed[across + 2])):
            free += max(floor((begins - reached) / wide + SLACK), 0)
            reached = max(reached, closes)
        most = max(most, free)
    return most
