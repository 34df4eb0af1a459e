"""What tape, magnet and eye read of the frame, and where two of them cannot both be right."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import pairwise

from boxwright.disciplines.frame.bands import UNKNOWN, around
from boxwright.disciplines.frame.result import Member, TapeFault, Wall, WallName
from boxwright.disciplines.frame.sourced import WITHIN
from boxwright.records import dataclass
from boxwright.units import Band

REMOVED = "removed"


@dataclass(frozen=True, slots=True)
class Read:
    """A length that was read: of what kind of thing, of which, under which word; its value (m) and its entry.

    ``kind`` is "studs", "bows", "cross-members", "opening" or "body", as it is typed for ``boxwright measured``.
    ``how`` is the instrument, ``within`` how far it may be off where that is written. ``word`` is what was written in
    place of a length: "removed".
    """

    kind: str
    subject: str
    key: str
    value: Band
    on: date | None
    of: str
    how: str = ""
    within: float | None = None
    word: str = ""


def doubt_of(read: Read) -> float:
    """Return how far a reading may be off: as written, else by its instrument."""
    if read.within is not None:
        return read.within
    return WITHIN["seen"] if read.how == "seen" else WITHIN["tape"]


def as_band(read: Read) -> Band:
    """Return a reading with the doubt of its instrument; one that carries its own keeps it."""
    if not read.value.known:
        return UNKNOWN
    if read.value.spread != "exact":
        return read.value
    return around(read.value.best, doubt_of(read), assumed=read.within is None)


def newest_first(readings: tuple[Read, ...], kind: str, subject: str, key: str) -> list[Read]:
    """Return every reading of one thing, the newest first; of one day the last in the file first."""
    mine = [one for one in readings if (one.kind, one.subject, one.key) == (kind, subject, key)]
    mine.reverse()  # sorting keeps the order of equals, and of one day the last in the file is the newest
    return sorted(mine, key=lambda one: one.on or date.min, reverse=True)


def contradicting(newest: list[Read]) -> tuple[Read, ...]:
    """Return the older readings of one thing that cannot be right if the newest is; the newest stands first.

    Where an older one bears the newest out, two stand against one, and the others were wrong.
    """
    found = [one for one in newest if one.value.known]
    apart = tuple(
        one for one in found[1:] if abs(found[0].value.best - one.value.best) > doubt_of(found[0]) + doubt_of(one)
    )
    return apart if len(apart) == len(found) - 1 else ()


def contested(newest: list[Read]) -> Band | None:
    """Return the range over readings that contradict each other, its best value the newest; None where they agree."""
    apart = contradicting(newest)
    if not apart:
        return None
    first = next(one for one in newest if one.value.known)
    bands = [as_band(one) for one in (first, *apart)]
    low, high = min(one.low for one in bands), max(one.high for one in bands)
    return Band(bands[0].best, low, high, True, "interval", bands[0].assumed)


def faults_of(readings: tuple[Read, ...], walls: tuple[Wall, ...], members: tuple[Member, ...]) -> Iterator[TapeFault]:
    """Yield what two readings, or a reading and the shell, contradict each other in."""
    for wall in walls:
        kind, subject, _ = rows_of(wall.name)
        mine = [one for one in members if one.wall == wall.name and one.number is not None and not one.is_removed]
        for member in mine:
            yield from _against_older(readings, kind, subject, member)
            yield from _against_the_plan(member, wall)
        yield from _against_the_neighbour(mine)


def rows_of(wall: WallName) -> tuple[str, str, str]:
    """Return the kind and subject a wall's members are read under, and their kind."""
    if wall == "roof":
        return "bows", "roof", "bow"
    if wall == "floor":
        return "cross-members", "floor", "cross-member"
    return "studs", wall, "stud"


def _against_older(readings: tuple[Read, ...], kind: str, subject: str, member: Member) -> Iterator[TapeFault]:
    found = [one for one in newest_first(readings, kind, subject, str(member.number)) if one.value.known]
    for older in contradicting(found)[:1]:
        allowed = doubt_of(found[0]) + doubt_of(older)
        yield TapeFault(
            found[0].of, older.of, "contradicts", member.name, member.wall, found[0].value.best, older.value.best,
            allowed, (),
        )  # fmt: skip


def _against_the_plan(member: Member, wall: Wall) -> Iterator[TapeFault]:
    if member.built is None:
        return
    read = member.built.best
    if not wall.low - WITHIN["stud"] <= read <= wall.high + WITHIN["stud"]:
        against = wall.low if read < wall.low else wall.high
        yield TapeFault(member.seen_in, wall.of, "outside", member.name, wall.name, read, against, WITHIN["stud"], ())
    elif member.planned is not None and abs(read - member.planned) > WITHIN["order"]:
        yield TapeFault(
            member.seen_in, member.of, "beyond", member.name, wall.name, read, member.planned, WITHIN["order"], ()
        )


def _by_plan(member: Member) -> float:
    return member.planned if member.planned is not None else member.at.best


def _by_number(member: Member) -> int:
    return member.number if member.number is not None else 0


def _against_the_neighbour(members: list[Member]) -> Iterator[TapeFault]:
    """Yield studs that are taped behind the next one, or in its place.

    They are meant to stand in the order of their plan, a stud beyond the row between its neighbours; one that only a
    tape knows is put where it was read. Where no plan says it they follow their numbers.
    """
    is_planned = any(one.planned is not None for one in members)
    for first, second in pairwise(sorted(members, key=_by_plan if is_planned else _by_number)):
        if not (first.is_built or second.is_built):
            continue
        apart = second.at.best - first.at.best
        if apart <= 0.0:
            what, allowed = "order", 0.0
        elif apart < (first.face.best + second.face.best) / 2.0:
            what, allowed = "two places", (first.face.best + second.face.best) / 2.0
        else:
            continue
        yield TapeFault(
            second.seen_in or first.seen_in or second.of, first.seen_in or first.of,
            "order" if what == "order" else "two places", f"{first.name} and {second.name}", first.wall,
            second.at.best, first.at.best, allowed, (),
        )  # fmt: skip
