"""Two things that open into each other's room: which of them cannot be opened while the other stands open.

What stands open is its box moved, or its leaf turned: a leaf aslant is held by boxes that cover it and by posts that
lie in it, so that what only a cover meets is in doubt. What opens then is followed all its way, as past anything else.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Sequence
from itertools import pairwise, zip_longest
from math import cos, pi, sin

from boxwright.disciplines.layout.bodies import Block, envelope, moved_block
from boxwright.disciplines.layout.laid_back import ended
from boxwright.disciplines.layout.meeting import TOUCH, are_in, grown, near_pairs
from boxwright.disciplines.layout.result import Together
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import MOST_MOVERS, NEVER, Mover, Slip, Turn, is_met_anyhow
from boxwright.records import dataclass

THIN = 2.0 * TOUCH
"""Half of how thick a leaf that stands open is taken to be (m), so that what is met is more than a touch."""
STRIPS = 24
"""Boxes and posts that hold a leaf which stands aslant."""
STEP = pi / 24.0
"""Steps between the places a leaf may stand open at where nobody knows how far it opens (rad)."""
SQUARE = 1e-6
"""A leaf within this of a right angle stands square (rad)."""
Key = tuple[str, str, str]


@dataclass(frozen=True, slots=True)
class Stood:
    """What something takes up that stands open: its boxes at most, and those that lie in it.

    ``cores`` are these for each place between both its ends, the likeliest first, so that what meets each of them meets
    it for certain. ``hold`` is a box around all its way, wherever within its doubt that is.
    """

    cover: tuple[Block, ...]
    cores: tuple[tuple[Block, ...], ...]
    hold: Block


_stood: dict[Key, tuple[Mover, Stood]] = {}
"""What each mover last took up that stands open."""
_before: dict[tuple[Key, Key], tuple[Mover, Mover, Together | None]] = {}
"""What two movers last came to, so that only what moved is looked at again."""


def both_open(movers: Sequence[Mover], apart: Container[tuple[str, str]]) -> Iterator[Together]:
    """Yield each pair of which one cannot be opened while the other stands open, or perhaps not; each pair once.

    ``apart`` are the pairs of paths that are not asked about: what is in or on the other, and what strikes it shut.
    """
    wide = [_stood_of(one).hold for one in movers]
    told = set[tuple[str, str]]()
    for pair in sorted({(min(pair), max(pair)) for pair in near_pairs(zip(wide, range(len(movers)), strict=True))}):
        one, other = (movers[number] for number in pair)
        if one.of == other.of or "bed" in {one.what, other.what}:
            continue
        if (one.of, other.of) in apart or (other.of, one.of) in apart or not are_in(*(wide[number] for number in pair)):
            continue
        found = _remembered(one, other)
        if found is not None and (one.of, other.of) not in told:
            told.add((one.of, other.of))
            yield found


def _remembered(one: Mover, other: Mover) -> Together | None:
    key = _key(one), _key(other)
    had = _before.get(key)
    if had is None or had[0] != one or had[1] != other:
        if len(_before) > MOST_MOVERS:
            _before.clear()
        had = _before[key] = one, other, _together(one, other)
    return had[2]


def _together(one: Mover, other: Mover) -> Together | None:
    """Return what two movers come to: the one of them that gets less far past the other, where it does not get by."""
    found = [told for told in (_past(one, other), _past(other, one)) if told is not None]
    sure = [told for told in found if told.sure == "sure"]
    return min(sure or found, key=lambda told: told.reached / max(told.whole, SQUARE), default=None)


def _past(mover: Mover, open_one: Mover) -> Together | None:
    """Return how far one gets while the other stands open, None where it gets by; nothing usual is sure."""
    stood = _stood_of(open_one)
    off = tuple(mine + theirs for mine, theirs in zip(mover.doubt, open_one.doubt, strict=True))
    at = min((mover.meets(block) for block in stood.cores[0]), default=NEVER)
    is_sure = at < NEVER and not (mover.is_usual or open_one.is_usual)
    is_sure = is_sure and all(is_met_anyhow(mover, core, (off[0], off[1], off[2])) for core in stood.cores)
    if at == NEVER:
        covers = [grown(block, (off[0], off[1], off[2])) for block in stood.cover]
        at = min((mover.meets(block, "most") for block in covers), default=NEVER)
    if at == NEVER:
        return None
    return Together(
        mover.of, mover.name, mover.what, open_one.of, open_one.name, open_one.what, at, mover.whole, mover.turns,
        "sure" if is_sure else "perhaps", mover.is_usual or open_one.is_usual,
    )  # fmt: skip


def _stood_of(mover: Mover) -> Stood:
    key = _key(mover)
    had = _stood.get(key)
    if had is None or had[0] != mover:
        if len(_stood) > MOST_MOVERS:
            _stood.clear()
        every = [_opened(way) for way in ended(mover)]
        begun = {isinstance(way, Turn) and way.begins > 0.0 for way in ended(mover)}
        # where it may stand on either side of a half turn, nothing of it is sure
        cores = [core for _, core in every] if len(begun) == 1 else [((),)]
        stood = Stood(
            tuple(block for cover, _ in every for block in cover),
            tuple(tuple(block for core in place for block in core) for place in zip_longest(*cores, fillvalue=())),
            grown(envelope([way.hold for way in mover.ways]), mover.doubt),
        )
        had = _stood[key] = mover, stood
    return had[1]


def _opened(way: Turn | Slip) -> tuple[tuple[Block, ...], tuple[tuple[Block, ...], ...]]:
    """Return what one piece takes up that stands open: anywhere between both its ends, and at each place there."""
    if isinstance(way, Slip):
        ends = [_slid_open(way, by) for by in dict.fromkeys((way.by, way.to("least"), way.most))]
        play = [min(LENGTHS["play"], side / 4.0) for side in way.start.size]
        return (envelope(ends),), tuple((grown(end, (-play[0], -play[1], -play[2])),) for end in ends)
    low, high = way.to("least"), way.at_most
    count = max(round((high - low) / STEP), 1) if high > low + SQUARE else 0
    places = [low + (high - low) * number / max(count, 1) for number in range(count + 1)]
    between = way.radius * STEP / 2.0 if count else 0.0  # so far it may stand beside the next place that is looked at
    written = places if low < way.turn else ()  # where nobody wrote how far, at a right angle
    cover = (block for at in places for block in turned_open(way, at, is_cover=True))
    more = [between if axis in {way.along[0], way.across[0]} else 0.0 for axis in range(3)]
    cores = tuple(turned_open(way, at, is_cover=False) for at in dict.fromkeys((way.turn, *written)))
    return tuple(grown(block, (more[0], more[1], more[2])) for block in cover), cores


def _slid_open(way: Slip, by: float) -> Block:
    off = [0.0, 0.0, 0.0]
    off[way.axis] = by
    return moved_block(way.start, (off[0], off[1], off[2]))


def turned_open(way: Turn, turn: float, is_cover: bool) -> tuple[Block, ...]:
    """Return boxes that hold a leaf that has turned so far: all of it, or posts that lie in it, less its play."""
    near, reach = way.spans[0]
    quarters = turn / (pi / 2.0)
    is_square = abs(quarters - round(quarters)) * pi / 2.0 < SQUARE
    play = 0.0 if is_cover else min(LENGTHS["play"], (reach - near) / 4.0)
    near, reach = near + play, reach - play
    if is_square:
        return (_strip(way, turn, near, reach),)
    cuts = [near + (reach - near) * number / STRIPS for number in range(STRIPS + 1)]
    if is_cover:
        return tuple(_strip(way, turn, low, high) for low, high in pairwise(cuts))
    return tuple(_strip(way, turn, at, at) for at in cuts)


def _strip(way: Turn, turn: float, low: float, high: float) -> Block:
    """Return the box around a stretch of a leaf that has turned so far, by how far from its hinge that is."""
    (i, way_i), (j, way_j) = way.along, way.across
    k = 3 - i - j
    ends = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    for axis, hinge, share in ((i, way.hinge[0], way_i * cos(turn)), (j, way.hinge[1], way_j * sin(turn))):
        both = hinge + share * low, hinge + share * high
        ends[0][axis], ends[1][axis] = min(both) - THIN, max(both) + THIN
    ends[0][k], ends[1][k] = way.width
    return Block((ends[0][0], ends[0][1], ends[0][2]), (ends[1][0], ends[1][1], ends[1][2]))


def _key(mover: Mover) -> Key:
    return mover.of, mover.name, mover.what


def apart_of(lines: dict[str, frozenset[str]], struck: Iterable[tuple[str, str]]) -> frozenset[tuple[str, str]]:
    """Return the pairs that are not asked about: one is in or on the other, or strikes it already while it is shut."""
    return frozenset({*((of, over) for of, line in lines.items() for over in line), *struck})
