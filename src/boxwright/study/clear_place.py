"""Where an opening cuts nothing and a fastener meets metal: the frame's own places as candidates, none proved yet.

Only what is not made yet is moved: an opening no saw has been at, the hinge or the screws of a part not built in. The
new place is written the way the old one was, to a sixteenth of an inch or a millimetre, on the clear side.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from math import ceil, floor, inf
from typing import NamedTuple

from boxwright.disciplines.frame.holes import clear_places
from boxwright.disciplines.frame.members import edges, standing
from boxwright.disciplines.frame.result import Fastening, Hole, Member, Result, Wall
from boxwright.finding import Finding
from boxwright.model.stage import stands
from boxwright.rig.rig import Item, Rig
from boxwright.rig.splice import tree_at
from boxwright.study.bench import Bench
from boxwright.study.moves import Candidate, Edit
from boxwright.study.remedy_words import (
    backing_needed,
    between,
    fasteners_moved,
    inside_wall,
    opening_moved,
    part_slid,
    pattern_slid,
)
from boxwright.study.rewritten import Offset, rewritten, taken_apart
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits

OPENINGS = frozenset({"frame/opening-cuts-member", "frame/opening-overlaps", "frame/opening-outside-wall"})
MISSES = "frame/fastener-misses"
PLACED = OPENINGS | {MISSES}
"""Rules a better place clears; they say the same in every load state."""
STEPS = {
    "in": Fraction(1, 16), "ft": Fraction(1, 100), "mm": Fraction(1), "cm": Fraction(1, 10), "m": Fraction(1, 1000),
}  # fmt: skip
"""What a place is rounded to when it is marked out for a saw or a drill, in each unit of length."""
HAIR = Fraction(1, 10**6)
"""Steps by which a place may miss a whole one and still be it."""
TOUCH = 1e-6
"""Metres below which two places along a wall are one."""
READ_AGAIN = 1e-4
"""Metres by which a place taken apart may differ from the same place read: figures are kept to a ten-thousandth."""


class Way(NamedTuple):
    """A place moved along one axis: its key, how it is written, how far (m, + is rearward, right or up)."""

    key: str
    text: str
    shift: float


def clear_place_moves(bench: Bench, finding: Finding, slot: Slot) -> list[Candidate]:
    """Return the moves of openings and fasteners that should clear a finding of the frame."""
    if slot.frame is None or finding.kind != "fix" or finding.code not in PLACED:
        return []
    if finding.code == MISSES:
        return list(_of_fasteners(bench, finding, slot.frame))
    hole = next((one for one in slot.frame.holes if one.of == finding.where), None)
    if hole is None:
        return []
    beside = hole.overlaps if finding.code == "frame/opening-overlaps" else ()
    asked = (hole, *(one for one in slot.frame.holes if one.of in beside))
    return [found for one in asked for found in _of_opening(bench, one, slot.frame)]


def nothing_clear(bench: Bench, finding: Finding, slot: Slot) -> str:
    """Return what is said of a fastener no place of its part lets catch; of an opening the finding says it itself."""
    if slot.frame is None or finding.kind != "fix" or finding.code != MISSES:
        return ""
    item = _item(bench.reading.rig.parts, finding.where)
    if item is None or not _is_to_be_made(item, bench.reading.rig):
        return ""
    mine = [one for one in slot.frame.fastenings if one.of == finding.where]
    stuck = [(one, _stuck(one)) for one in mine]
    return "; ".join(backing_needed(one.name, one.backing, places, bench.units) for one, places in stuck if places)


def _stuck(one: Fastening) -> list[float]:
    """Return the places of the fasteners that miss and have no metal to go to."""
    pairs = zip(one.points, one.moved, strict=True)
    return [point.at for point, moved in pairs if not point.catches and moved == point.at]


def _header(bench: Bench) -> HeaderUnits:
    """Return the units the file is written in, whatever it is shown in."""
    return bench.reading.rig.header.units


def _item(items: Iterable[Item], of: str) -> Item | None:
    return next((one for one in items if one.of == of), None)


def _is_to_be_made(item: Item, rig: Rig) -> bool:
    """Return whether it is certain that a thing is not there today."""
    return stands(item.marks, rig.header.stage_today, True) == "no" and not item.words.as_built


def _is_uncut(hole: Hole, item: Item, rig: Rig) -> bool:
    """Return whether it is certain that no saw has been at an opening."""
    is_taped = any((one.kind, one.subject) == ("opening", hole.name) for one in rig.frame.readings)
    if hole.is_cut or is_taped or item.words.as_built:
        return False
    return item.marks.done.tick in ("no", "unmarked") if hole.is_cut is False else _is_to_be_made(item, rig)


def _of_opening(bench: Bench, hole: Hole, frame: Result) -> Iterator[Candidate]:
    """Yield an opening moved to the nearest clear place on either side, and up or down into its wall."""
    rig, wall = bench.reading.rig, frame.wall(hole.wall)
    item = _item(rig.openings, hole.of)
    if item is None or wall is None or not hole.is_placed or not _is_uncut(hole, item, rig):
        return
    is_across = hole.wall in ("front", "rear")
    lifted = _lifted(hole, wall, item, _header(bench))
    if lifted is None:
        return
    for place in dict.fromkeys(clear_places(hole, frame.holes, wall, frame.members, frame.intrusions)):
        if place is None:
            continue
        along = _way("side" if is_across else "x", item, place.by, _header(bench))
        ways = [one for one in (along, *lifted) if one is not None and one.shift != 0.0]
        if along is None or not ways:
            continue
        where = between(place.between) if along.shift else inside_wall(hole.wall)
        effort = sum(abs(one.shift) for one in ways)
        edits = tuple(Edit(f"{hole.of}.{one.key}", one.text) for one in ways)
        yield Candidate(opening_moved(hole.name, ways, where, bench.units), edits, effort, len(ways))


def _lifted(hole: Hole, wall: Wall, item: Item, header: HeaderUnits) -> tuple[Way, ...] | None:
    """Return how far up or down an opening goes to be in its wall; nothing in roof and floor; None where it cannot."""
    if hole.wall in ("roof", "floor"):
        return ()
    by = max(wall.foot - hole.bottom, 0.0) + min(wall.top - hole.top, 0.0)
    if abs(by) <= TOUCH:
        return ()
    way = _way("z", item, by, header)
    return (way,) if way is not None and hole.top - hole.bottom <= wall.top - wall.foot + TOUCH else None


def _way(key: str, item: Item, by: float, header: HeaderUnits) -> Way | None:
    """Return a place written anew, moved at least so far; None where it is not written as a plain place."""
    offset = taken_apart(getattr(item.words, key), header)
    if offset is None:
        return None
    shift = _grown(offset, by) if abs(by) > TOUCH else 0.0
    return Way(key, rewritten(offset, shift), shift)


def _grown(offset: Offset, by: float) -> float:
    """Return a shift (m) grown so that the new place is a whole step: farther on is farther into the clear."""
    step = STEPS[offset.unit]
    count = (Fraction(by / offset.metres) + offset.figure) / step
    whole = ceil(count - HAIR) if by > 0.0 else floor(count + HAIR)
    return float(whole * step - offset.figure) * offset.metres


def _of_fasteners(bench: Bench, finding: Finding, frame: Result) -> Iterator[Candidate]:
    """Yield each fastener of a part moved to its own metal, and each pattern slid as one."""
    rig = bench.reading.rig
    item = _item(rig.parts, finding.where)
    if item is None or not _is_to_be_made(item, rig):
        return
    mine = [one for one in frame.fastenings if one.of == finding.where]
    missing = [one for one in mine if not all(point.catches for point in one.points)]
    moved = [one for one in (_moved(bench, pattern) for pattern in missing) if one is not None]
    if missing and len(moved) == len(missing):
        edits = tuple(edit for one in moved for edit in one.edits)
        says = "; ".join(one.says for one in moved)
        yield Candidate(says, edits, sum(one.effort for one in moved), len(edits))
    if len(missing) == 1 and len(missing[0].points) > 1:
        yield from _slid(bench, missing[0], item, frame)


def _listed(bench: Bench, path: str) -> list[tuple[str, Offset]]:
    """Return each place of a written list with its own path; none where one of them is not a plain place."""
    tree = tree_at(bench.reading.document, path)
    pairs = [(path, tree)]
    if isinstance(tree, tuple):
        pairs = [(f"{path}[{count}]", text) for count, text in enumerate(tree)]
    found = [(at, taken_apart(text, _header(bench)) if isinstance(text, str) else None) for at, text in pairs]
    plain = [(at, offset) for at, offset in found if offset is not None and not offset.before]
    return plain if len(plain) == len(pairs) else []


def _places(bench: Bench, one: Fastening) -> list[tuple[str, Offset]]:
    """Return the written places of a fastening, point by point; none where they are not those that were judged."""
    found = _listed(bench, f"{one.of}.{one.what}.at")
    read = [float(offset.figure) * offset.metres for _, offset in found]
    is_same = len(read) == len(one.points) and all(
        abs(value - point.at) <= READ_AGAIN for value, point in zip(read, one.points, strict=True)
    )
    return found if is_same else []


def _moved(bench: Bench, one: Fastening) -> Candidate | None:
    """Return the fasteners that miss moved to where each catches; None where one of them has no such place."""
    written = _places(bench, one)
    if not written:
        return None
    edits, said, effort = list[Edit](), list[tuple[float, float]](), 0.0
    for (path, offset), point, at in zip(written, one.points, one.moved, strict=True):
        if point.catches:
            continue
        if at == point.at:
            return None
        step = STEPS[offset.unit]
        figure = round(Fraction(at / offset.metres) / step) * step
        shift = float(figure - offset.figure) * offset.metres
        edits.append(Edit(path, rewritten(offset, shift)))
        said.append((point.at, point.at + shift))
        effort += abs(shift)
    return Candidate(fasteners_moved(one.what, one.name, said, bench.units), tuple(edits), effort, len(edits))


def _slid(bench: Bench, one: Fastening, item: Item, frame: Result) -> Iterator[Candidate]:
    """Yield a pattern slid as one to where all of it catches, its part with it where its ends would be passed."""
    written = _places(bench, one)
    if len({offset.unit for _, offset in written}) != 1:
        return
    grid = float(STEPS[written[0][1].unit]) * written[0][1].metres
    for slid in one.slides:
        if slid.catches < len(one.points):
            continue
        shift = _settled(one, slid.by, grid, frame)
        edits = tuple(Edit(path, rewritten(offset, shift)) for path, offset in written)
        if not _is_past_ends(bench.reading.rig, one, shift):
            yield Candidate(pattern_slid(one.what, one.name, shift, bench.units), edits, abs(shift), 1)
            continue
        with_it = _with_its_part(bench, item, shift)
        if with_it:
            says = part_slid(one.what, one.name, shift, with_it[0].value, bench.units)
            yield Candidate(says, (*with_it, *edits), abs(shift), 2)


def _settled(one: Fastening, by: float, grid: float, frame: Result) -> float:
    """Return a slide taken on from the edge of the metal to where it is certain, in whole steps."""
    edge, low, high = one.edge_distance.best, -inf, inf
    metal = [_sure_metal(member, edge) for member in standing(frame.members, one.wall)]
    metal += [(strip.low + edge, strip.high - edge) for strip in frame.backings if strip.name == one.backing]
    for point in one.points:
        at = point.at + by
        first, last = min((max(begin - at, at - end), begin, end) for begin, end in metal)[1:]
        low, high = max(low, first - point.at), min(high, last - point.at)
    near = min(max(by, low), high) if low <= high else by
    way = 1.0 if near > 0.0 else -1.0
    count = ceil(abs(near) / grid - float(HAIR))
    return way * (count if low <= way * count * grid <= high else count - 1) * grid


def _sure_metal(member: Member, edge: float) -> tuple[float, float]:
    """Return the stretch of a member in which a fastener catches whatever the doubt of its place."""
    first, last = edges(member)
    inward = edge + max(member.at.high - member.at.best, member.at.best - member.at.low) + TOUCH
    return first.best + inward, last.best - inward


def _is_past_ends(rig: Rig, one: Fastening, shift: float) -> bool:
    """Return whether a pattern that lies within the ends of its part would pass one of them."""
    place = next((held.place for held in rig.structure.fastened if held.of == one.of), None)
    if place is None or not place.x.known:
        return False
    low, high = place.x.best - place.size[0] / 2.0 - TOUCH, place.x.best + place.size[0] / 2.0 + TOUCH
    ends = min(point.at for point in one.points), max(point.at for point in one.points)
    return low <= ends[0] and ends[1] <= high and not (low <= ends[0] + shift and ends[1] + shift <= high)


def _with_its_part(bench: Bench, item: Item, shift: float) -> tuple[Edit, ...]:
    """Return the edits that move a part itself, and its legs, along with its fasteners; none where there is no room."""
    offset = taken_apart(item.words.x, _header(bench))
    if offset is None or item.words.at or not bench.rooms.room(item.of, 0).is_free(shift):
        return ()
    built = item.facet("structure")
    is_legged = getattr(getattr(built, "legs", None), "at", ())
    legs = _listed(bench, f"{item.of}.legs.at") if is_legged else []
    if is_legged and not legs:
        return ()
    moved = (Edit(path, rewritten(leg, shift)) for path, leg in legs)
    return (Edit(f"{item.of}.x", rewritten(offset, shift)), *moved)
