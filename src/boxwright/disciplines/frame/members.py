"""The members of the shell: each where it was planned, where it was taped, and what openings leave of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from boxwright.disciplines.frame.bands import SMALL, above_nothing, around, known, moved
from boxwright.disciplines.frame.parts import Bows, Framing, Row, Section, WallRow
from boxwright.disciplines.frame.result import Bay, Member, MemberKind, Wall
from boxwright.disciplines.frame.sourced import ASSUMED, WITHIN
from boxwright.disciplines.frame.tapes import REMOVED, as_band, contested, newest_first, rows_of
from boxwright.records import dataclass
from boxwright.units import Band, exactly

UPRIGHT = ("left", "right", "front", "rear", "nose-left", "nose-right")
SIDES = ("left", "right", "front", "rear")
MOST = 400
"""Members of one wall; a spacing of a hair must not fill the memory."""


@dataclass(frozen=True, slots=True)
class Planned:
    """A row as ordered: spacing, first and closing centre (m), and where it differs.

    ``is_stated`` is False where the spacing holds but nobody has said where it begins: on a front or rear wall of which
    nothing of its own is written, or with a first that is unknown. ``doubt_first`` and ``doubt_every`` are how far the
    first and each spacing may be off (m) as they are written, beyond what ordering leaves open.
    """

    every: float
    first: float
    last: float | None
    removed: tuple[int, ...]
    doubled: tuple[int, ...]
    extra: tuple[float, ...]
    is_stated: bool = True
    doubt_first: float = 0.0
    doubt_every: float = 0.0

    def doubt_at(self, number: int) -> float:
        """Return how far a member of the row may be off by what is written; from half a spacing on it is anywhere."""
        return min(self.doubt_first + number * self.doubt_every, self.every / 2.0)


def members_of(section: Section, walls: tuple[Wall, ...]) -> tuple[Member, ...]:
    """Return every member of every wall, in order along it, as if no opening cut one."""
    found: list[Member] = []
    for wall in walls:
        row = planned_row(section, wall)
        mine = list(_row_members(section, wall, row))
        if wall.name in UPRIGHT and (row is not None or mine):
            mine += _posts(section, wall, mine)
        found += sorted(mine, key=lambda one: (one.at.best, one.name))
    return (*found, *_rails(section.framing, walls))


def planned_row(section: Section, wall: Wall) -> Planned | None:
    """Return the row of a wall as ordered; None where no spacing is written, or none that can be."""
    row = _ordered(section.framing, wall)
    if row is None:
        return None
    amiss = _amiss(row, wall, face_of(section, wall))
    if {"every", "first", "last"} & set(amiss):
        return None
    return replace(row, extra=tuple(one for one in row.extra if _is_along(one, wall)))


def amiss_of(section: Section, wall: Wall) -> tuple[str, ...]:
    """Return the rig paths of what is written of a row and cannot be: no spacing, or a place or a number not there."""
    framing = section.framing
    row = _ordered(framing, wall)
    if row is None or framing is None:
        return ()
    keys = _amiss(row, wall, face_of(section, wall))
    if wall.name == "floor":
        return tuple(f"frame.floor.{'cross_members' if key == 'every' else key}" for key in keys)
    if wall.name == "roof":
        return tuple(f"frame.bows.{key}" for key in keys)
    own = getattr(framing.studs, wall.name, None) if wall.name in SIDES else None
    return tuple(f"frame.studs.{wall.name}.{key}" if getattr(own, key, None) else f"frame.studs.{key}" for key in keys)


def _amiss(row: Planned, wall: Wall, face: Band) -> tuple[str, ...]:
    """Return the keys of a row that cannot be.

    A spacing is wider than one member, and on the long walls not more than all of the wall; a place lies on the wall.
    """
    is_long = wall.name in ("left", "right", "roof", "floor")
    found = []
    if row.every <= face.best or (is_long and row.every > wall.high - wall.low + SMALL):
        found.append("every")
    if not _is_along(row.first, wall):
        found.append("first")
    if row.last is not None and not (_is_along(row.last, wall) and row.last >= row.first):
        found.append("last")
    if not all(_is_along(one, wall) for one in row.extra):
        found.append("extra")
    if not found:
        count = len(_centres(row, wall))
        numbered = (("removed", row.removed), ("doubled", row.doubled))
        found = [key for key, numbers in numbered if any(not 0 <= one < count for one in numbers)]
    return tuple(found)


def _is_along(place: float, wall: Wall) -> bool:
    """Return whether a centre lies on its wall, or no farther off its ends than a stud may be."""
    return wall.low - WITHIN["stud"] - SMALL <= place <= wall.high + WITHIN["stud"] + SMALL


def _ordered(framing: Framing | None, wall: Wall) -> Planned | None:
    if framing is None:
        return None
    if wall.name == "floor":
        floor = framing.floor
        every = known(floor.cross_members) if floor is not None else None
        if floor is None or every is None:
            return None
        row = Planned(every.best, wall.low, None, (), (), ())
        return _begun(row, every, floor.first)
    if wall.name == "roof":
        bows = framing.bows
        return _of_row(bows, None, wall) if bows is not None else None
    if framing.studs is None:
        return None
    own = getattr(framing.studs, wall.name, None) if wall.name in SIDES else None
    found = _of_row(framing.studs, own, wall)
    is_stated = wall.name in ("left", "right") or own is not None
    return found if found is None or is_stated else replace(found, is_stated=False)


def _of_row(row: Row, own: WallRow | None, wall: Wall) -> Planned | None:
    # What a wall says of its own wins, an "unknown" too: the row's own spacing would be a guess there.
    every = known(own.every if own is not None and own.every is not None else row.every)
    if every is None:
        return None
    first = own.first if own is not None and own.first is not None else row.first
    last = known(own.last) if own is not None else None
    end = wall.low + last.best if last is not None else None
    more: WallRow | Bows | None = own if own is not None else row if isinstance(row, Bows) else None
    if more is None:
        return _begun(Planned(every.best, wall.low, end, (), (), ()), every, first)
    extra = tuple(wall.low + one.best for one in more.extra if one.known)
    found = Planned(every.best, wall.low, end, more.removed, getattr(more, "doubled", ()), extra)
    return _begun(found, every, first)


def _begun(row: Planned, every: Band, first: Band | None) -> Planned:
    """Return a row with where it begins, and the doubt of its spacing and of its first as they are written."""
    doubt_every = max(every.high - every.best, every.best - every.low)
    if first is not None and not first.known:
        return replace(row, is_stated=False, doubt_every=doubt_every)
    if first is None:
        return replace(row, doubt_every=doubt_every)
    doubt = max(first.high - first.best, first.best - first.low)
    return replace(row, first=row.first + first.best, doubt_first=doubt, doubt_every=doubt_every)


def _centres(row: Planned, wall: Wall) -> list[float]:
    """Return the planned centres of a row: evenly from the first on, the closing one, and those beyond the row."""
    end = row.last if row.last is not None else wall.high
    found: list[float] = []
    while len(found) < MOST and row.first + len(found) * row.every <= end + SMALL:
        found.append(row.first + len(found) * row.every)
    if row.last is not None and (not found or row.last - found[-1] > SMALL):
        found.append(row.last)
    return [*found, *row.extra]


def _row_members(section: Section, wall: Wall, row: Planned | None) -> Iterator[Member]:
    """Yield the numbered members of a wall: planned ones, and those only a tape knows."""
    centres = _centres(row, wall) if row is not None else []
    removed, doubled = (row.removed, row.doubled) if row is not None else ((), ())
    kind, subject, word = rows_of(wall.name)
    taped = {one.key for one in section.readings if (one.kind, one.subject) == (kind, subject)}
    beyond = [int(key) for key in taped if key.isdigit() and len(centres) <= int(key) < MOST]
    for number in (*range(len(centres)), *sorted(beyond)):
        planned = centres[number] if number < len(centres) else None
        found = newest_first(section.readings, kind, subject, str(number))
        newest = found[0] if found else None
        is_removed = number in removed if newest is None else newest.word == REMOVED
        apart = contested(found) if newest is not None and newest.value.known else None
        built = apart or (as_band(newest) if newest is not None and newest.value.known else None)
        if built is not None and wall.name in ("front", "rear"):
            built = moved(built, wall.low)
        at = built or _as_planned(planned, number, word, row)
        if at is None:
            continue
        yield Member(
            of=f"frame.{'bows' if word == 'bow' else 'floor' if word == 'cross-member' else 'studs'}",
            name=f"{wall.letter}{number}" if word == "stud" else f"{word} {number}",
            kind=_kind(word),
            wall=wall.name,
            number=number,
            planned=planned if row is not None and row.is_stated else None,
            built=built,
            at=at,
            is_built=built is not None,
            seen_in=newest.of if newest is not None else "",
            seen_on=newest.on if newest is not None else None,
            face=face_of(section, wall),
            depth=depth_of(section, wall),
            runs="up",
            low=wall.foot,
            high=wall.top,
            pieces=((wall.foot, wall.top),),
            is_removed=is_removed,
            is_doubled=number in doubled,
            is_contested=apart is not None,
        )


def _kind(word: str) -> MemberKind:
    return "bow" if word == "bow" else "cross-member" if word == "cross-member" else "stud"


def _as_planned(planned: float | None, number: int, word: str, row: Planned | None) -> Band | None:
    """Return where a member stands that nobody taped: as ordered, or anywhere in its bay where no order says it."""
    if planned is None or row is None:
        return None
    within = WITHIN[word] + row.doubt_at(number) if row.is_stated else row.every / 2.0
    return around(planned, within, assumed=True)


def face_of(section: Section, wall: Wall) -> Band:
    """Return the width of a wall's members in its own plane: as written, else as usual for their kind."""
    tube, framing = wall.tube, section.framing
    row = framing and (framing.bows if wall.name == "roof" else framing.studs if wall.name != "floor" else None)
    floor = framing.floor if framing is not None and wall.name == "floor" else None
    written = above_nothing(row.face) if row else above_nothing(floor.face) if floor is not None else None
    word = "bow face" if wall.name == "roof" else "cross-member face" if wall.name == "floor" else "stud face"
    return written or above_nothing(tube.face) or ASSUMED[word]


def depth_of(section: Section, wall: Wall) -> Band | None:
    """Return how deep a wall's members are from the skin to their inward face; None where nothing says it."""
    framing = section.framing
    row = framing and (framing.bows if wall.name == "roof" else framing.studs if wall.name != "floor" else None)
    floor = framing.floor if framing is not None and wall.name == "floor" else None
    written = above_nothing(row.depth) if row else above_nothing(floor.depth) if floor is not None else None
    return written or above_nothing(wall.tube.depth)


def _posts(section: Section, wall: Wall, row: list[Member]) -> list[Member]:
    """Return the corner posts of a wall; a stud that stands in the corner is that post."""
    face = face_of(section, wall)
    posts: list[Member] = []
    for name, at in (("first", wall.low), ("last", wall.high)):
        if any(abs(one.at.best - at) < face.best for one in row if not one.is_removed):
            continue
        band = around(at, WITHIN["shell"], assumed=True)
        posts.append(
            Member(
                wall.of,
                f"{wall.letter} {name} corner",
                "corner post",
                wall.name,
                None,
                at,
                None,
                band,
                False,
                "",
                None,
                face,
                depth_of(section, wall),
                "up",
                wall.foot,
                wall.top,
                ((wall.foot, wall.top),),
            )
        )
    return posts


def _rails(framing: Framing | None, walls: tuple[Wall, ...]) -> tuple[Member, ...]:
    """Return the two main rails under the floor, where their distance is written."""
    floor = framing.floor if framing is not None else None
    apart = known(floor.rails) if floor is not None else None
    under = next((one for one in walls if one.name == "floor"), None)
    if apart is None or under is None:
        return ()
    face = ASSUMED["cross-member face"]
    return tuple(
        Member(
            "frame.floor",
            f"main rail {word}",
            "main rail",
            "floor",
            None,
            at,
            None,
            exactly(at),
            False,
            "",
            None,
            face,
            None,
            "along",
            under.low,
            under.high,
            ((under.low, under.high),),
        )
        for word, at in (("left", -apart.best / 2.0), ("right", apart.best / 2.0))
    )


def in_order(members: tuple[Member, ...], walls: tuple[Wall, ...]) -> tuple[Member, ...]:
    """Return members wall by wall, the upright ones along it first, then what lies along."""
    places = {wall.name: place for place, wall in enumerate(walls)}
    return tuple(sorted(members, key=lambda one: (places[one.wall], one.runs == "along", one.at.best, one.name)))


def standing(members: tuple[Member, ...], wall: str) -> tuple[Member, ...]:
    """Return the upright members of a wall that are there, in order along it."""
    mine = (one for one in members if one.wall == wall and one.runs == "up" and not one.is_removed)
    return tuple(sorted(mine, key=lambda one: one.at.best))


def sides(member: Member) -> tuple[float, float]:
    """Return where the two edges of a member are held to be along its wall, without their doubt."""
    half = member.face.best * (1.0 if member.is_doubled else 0.5)
    return member.at.best - half, member.at.best + half


def has_metal_at(member: Member, up: float | None, edge: float) -> bool:
    """Return whether a member is there at a height, an edge distance off where a saw ended it; nowhere said, it is."""
    return up is None or any(
        (low == member.low or up >= low + edge - SMALL) and (high == member.high or up <= high - edge + SMALL)
        for low, high in member.pieces
    )


def edges(member: Member) -> tuple[Band, Band]:
    """Return the two edges of a member along its wall; a doubled one is twice as wide."""
    half = member.face.best * (1.0 if member.is_doubled else 0.5)
    return moved(member.at, -half), moved(member.at, half)


def bays_of(members: tuple[Member, ...], walls: tuple[Wall, ...]) -> tuple[Bay, ...]:
    """Return the clear spaces between neighbouring members of every wall; one of no width is no bay."""
    found: list[Bay] = []
    for wall in walls:
        mine = standing(members, wall.name)
        for first, second in pairwise(mine):
            low, high = edges(first)[1], edges(second)[0]
            clear = Band(
                high.best - low.best, high.low - low.high, high.high - low.low, True, "interval",
                low.assumed or high.assumed,
            )  # fmt: skip
            ends = f"{_end(first)}-{_end(second)}"
            found.append(
                Bay(
                    f"walls[bay {wall.name} {ends}]",
                    wall.name,
                    f"{wall.name} {ends}",
                    first.name,
                    second.name,
                    low,
                    high,
                    clear,
                    first.is_built and second.is_built,
                )
            )
    return tuple(found)


def _end(member: Member) -> str:
    return str(member.number) if member.number is not None else member.name.split(" ")[1]


def cut_out(member: Member, by: str, low: float, high: float) -> Member:
    """Return a member with what an opening takes out of it from ``low`` to ``high`` along its own length."""
    pieces: list[tuple[float, float]] = []
    for start, end in member.pieces:
        if high <= start + SMALL or low >= end - SMALL:
            pieces.append((start, end))
            continue
        if low > start + SMALL:
            pieces.append((start, low))
        if high < end - SMALL:
            pieces.append((high, end))
    return replace(member, pieces=tuple(pieces), cut_by=(*member.cut_by, by))
