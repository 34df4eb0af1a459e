"""What opens in over a bed where somebody lies: a leaf or a drawer that leaves no room there for who sleeps in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from boxwright.disciplines.layout.bodies import Block, doubt_of
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.meeting import grown
from boxwright.disciplines.layout.people import needs
from boxwright.disciplines.layout.result import OverBed
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import NEVER, Mover, is_met_anyhow
from boxwright.disciplines.layout.terraces import Bed, bed_rect_of, is_placed
from boxwright.exchange import Vector
from boxwright.model.trailer import Person

STEP = 0.02
"""Steps across a bed in which room to lie is sought (m)."""
SLACK = 1e-6
"""What misses by no more (m) is there: the numbers were rounded."""


def over_beds(
    movers: Iterable[Mover],
    beds: Iterable[Bed],
    people: Iterable[tuple[str, Person]],
    lines: Mapping[str, frozenset[str]],
) -> Iterator[OverBed]:
    """Yield what leaves the sleepers of a bed too little room to lie as it opens, and how sure that is.

    The bed itself, what it is on and what is on it go with it. What nobody wrote how it opens is asked of elsewhere.
    """
    heights = dict(people)
    beds = [bed for bed in beds if is_placed(bed.place) and bed.sleepers]
    inside = [one for one in movers if one.what != "bed" and not one.outside and not one.is_usual]
    for bed in beds:
        for mover in inside:
            if mover.of != bed.of and not _is_of(mover.of, bed.of, lines):
                yield from _over(mover, bed, heights)


def _is_of(of: str, bed: str, lines: Mapping[str, frozenset[str]]) -> bool:
    return of in lines.get(bed, frozenset()) or bed in lines.get(of, frozenset())


def _over(mover: Mover, bed: Bed, heights: Mapping[str, Person]) -> Iterator[OverBed]:
    """Yield what something that opens takes of a bed, where less of it is left than its sleepers want."""
    whole = _lain_on(bed)
    off = _sum(mover.doubt, doubt_of(bed.place))
    if mover.meets(grown(whole, off), "most") == NEVER:
        return
    wants = [needs("lie", height) for name in bed.sleepers if (height := heights[name].height) is not None]
    is_known = len(wants) == len(bed.sleepers) and all(want.known for want in wants) and bed.count == 1
    longest = max(bed.place.size[:2])
    # who nobody knows how long is may curl up beside it at best, and wants all of the bed at worst
    best = min(max(want.best for want in wants), longest) if is_known else 0.0
    most = min(max(want.high for want in wants), longest) if is_known else longest
    is_sure = is_known and _strips(mover, bed, (whole, best), off, is_worst=False) < len(bed.sleepers)
    if not is_sure and _strips(mover, bed, (whole, most), off, is_worst=True) >= len(bed.sleepers):
        return
    at = mover.meets(whole)
    if at == NEVER:
        at = mover.meets(grown(whole, off), "most")
    yield OverBed(
        mover.of, mover.name, mover.what, bed.of, bed.name, bed.sleepers, at, mover.whole, mover.turns,
        "sure" if is_sure else "perhaps",
    )  # fmt: skip


def _lain_on(bed: Bed) -> Block:
    """Return the room over the leaf of a bed that its mattress and a body lying on it take."""
    low_x, low_y, high_x, high_y = bed_rect_of(bed)
    under = bed.top - bed.mattress + LENGTHS["play"]
    return Block((low_x, low_y, under), (high_x, high_y, bed.top + ROOM["lie over"]))


def _sum(one: Vector, other: Vector) -> Vector:
    return one[0] + other[0], one[1] + other[1], one[2] + other[2]


def _strips(mover: Mover, bed: Bed, lies: tuple[Block, float], off: Vector, is_worst: bool) -> int:
    """Return how many find room, so long, to lie beside each other where something opens: at worst, or at best."""
    whole, long = lies
    along = 0 if bed.place.size[0] >= bed.place.size[1] else 1
    across = 1 - along
    wide = min(ROOM["shoulders"], bed.place.size[across] / len(bed.sleepers))
    spare = max(whole.size[along] - long, 0.0)
    at, found = whole.low[across], 0
    while at + wide <= whole.high[across] + SLACK:
        if any(
            _is_free(mover, _strip(whole, along, (start, long), (at, wide)), off, is_worst) for start in (0.0, spare)
        ):
            found, at = found + 1, at + wide
        else:
            at += STEP
    return found


def _strip(whole: Block, along: int, run: tuple[float, float], side: tuple[float, float]) -> Block:
    """Return the room of one who lies on a bed: from where along it and how long, from where across it and how wide."""
    low, high = list(whole.low), list(whole.high)
    low[along] += run[0]
    high[along] = low[along] + run[1]
    low[1 - along], high[1 - along] = side[0], side[0] + side[1]
    return Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _is_free(mover: Mover, strip: Block, off: Vector, is_worst: bool) -> bool:
    if is_worst:
        return mover.meets(grown(strip, off), "most") == NEVER
    return not is_met_anyhow(mover, (strip,), off)
