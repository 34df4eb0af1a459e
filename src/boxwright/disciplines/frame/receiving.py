"""What is checked when the trailer is handed over: each value as ordered, how far it may be off, and what was read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import cache
from math import hypot
from typing import Literal

from boxwright.disciplines.frame.bands import moved
from boxwright.disciplines.frame.result import Hole, Member, Result
from boxwright.disciplines.frame.tapes import Read
from boxwright.exchange import Measured
from boxwright.model.trailer import Trailer
from boxwright.records import dataclass
from boxwright.source import Row, Source, Table, load_sources, load_table
from boxwright.units import Band, exactly

PACKAGE = "boxwright.disciplines.frame"
ROWS = {"stud": "studs", "bow": "bows", "cross-member": "cross-members"}
EMPTY = "empty"


@cache
def _lengths() -> Table:
    return load_table(PACKAGE, "receiving_lengths")


@cache
def _weight_rows() -> Table:
    return load_table(PACKAGE, "receiving_weights")


@cache
def _look_rows() -> Table:
    return load_table(PACKAGE, "receiving_looks")


@cache
def _sources() -> dict[str, Source]:
    """Return the sources of the tables; read only by who prints a receiving sheet."""
    return load_sources(PACKAGE, with_checks=False)


@dataclass(frozen=True, slots=True)
class Expected:
    """One line of the receiving sheet.

    ``of`` is the rig path it is about. ``quantity`` "look" is a thing seen or tried, with ``how``. ``value`` is what
    was ordered, in m or kg: assumed where its place was left open, None where nothing was written; ``words`` the same
    where it is no number. ``within`` is how far it may be off, None where it must be exactly so; ``mark`` says where
    that figure comes from. ``typed`` are the words behind ``boxwright measured RIG`` that enter it. ``read`` is the
    newest reading, ``entry`` its rig path.
    """

    of: str
    group: str
    what: str
    quantity: Literal["length", "mass", "text", "look"]
    value: Band | None = None
    words: str = ""
    within: float | None = None
    mark: str = ""
    how: str = ""
    typed: str = ""
    read: Band | None = None
    entry: str = ""
    on: date | None = None

    @property
    def passes(self) -> bool | None:
        """Return whether what was read is near enough to what was ordered; None where that cannot be said."""
        if self.read is None or self.value is None or self.within is None:
            return None
        if not self.read.known or not self.value.known or self.value.assumed:
            return None
        return abs(self.read.best - self.value.best) <= self.within


def expected(
    trailer: Trailer, result: Result, readings: tuple[Read, ...] = (), weighed: tuple[Measured, ...] = ()
) -> tuple[Expected, ...]:
    """Return everything that is checked on delivery, beside what was read of it so far.

    In the order a person walks: box, frame, openings, running gear, weights, then what is tried and looked at.
    """
    found = [*_box(trailer, readings), *_members(result, readings), *_openings(result, readings)]
    return (*found, *_running_gear(trailer), *_weights(trailer, weighed), *_stamps(trailer), *_looks())


def differing(found: tuple[Expected, ...]) -> tuple[Expected, ...]:
    """Return the lines whose reading is farther from the order than it may be, the farthest first."""
    return tuple(sorted((one for one in found if one.passes is False), key=_excess, reverse=True))


def _excess(one: Expected) -> float:
    assert one.read is not None and one.value is not None and one.within
    return abs(one.read.best - one.value.best) / one.within


def _newest(readings: tuple[Read, ...], kind: str, subject: str, key: str) -> Read | None:
    """Return the newest reading of a thing; of one day the last in the file."""
    mine = [one for one in readings if (one.kind, one.subject, one.key) == (kind, subject, key) and one.value.known]
    return max(reversed(mine), key=lambda one: one.on or date.min, default=None)


def _length(
    name: str, of: str, group: str, what: str, value: Band | None, typed: str, read: Read | None = None
) -> Expected:
    """Return a line for a length, with the tolerance of its kind."""
    row = _row(_lengths(), name)
    return Expected(
        of, group, what, "length", value, within=_lengths().number(row, "within"), mark=_seen(row),
        typed=typed, read=read.value if read else None, entry=read.of if read else "", on=read.on if read else None,
    )  # fmt: skip


def _row(table: Table, name: str) -> Row:
    return next(row for row in table.rows if row.cells[0] == name)


def _seen(row: Row) -> str:
    """Return how sure a tolerance is."""
    return _sources()[row.source].seen


def _box(trailer: Trailer, readings: tuple[Read, ...]) -> Iterator[Expected]:
    body = trailer.body
    for key, value in (("length", body.length), ("width", body.width), ("height", body.height)):
        for where in ("left", "right") if key == "length" else ("front", "mid", "rear"):
            word = f"{key}-{where}"
            read = _newest(readings, "body", "inside", word) or _newest(readings, "body", "inside", key)
            of, what = f"trailer.body.{key}", f"inside {key}, {where}"
            yield _length("inside", of, "box", what, value, f"body {word}=", read)
    square = None
    if body.length is not None and body.width is not None and body.length.known and body.width.known:
        diagonal = hypot(body.length.best, body.width.best)
        square = Band(diagonal, diagonal, diagonal)
    for number in ("1", "2"):
        read = _newest(readings, "body", "inside", f"diagonal-{number}")
        what = f"floor diagonal {number}, front {'left' if number == '1' else 'right'} corner to the opposite one"
        yield _length("diagonals", "trailer.body", "box", what, square, f"body diagonal-{number}=", read)
    outside = trailer.outside
    for key, value in (("length", outside.length), ("width", outside.width), ("height", outside.height)):
        read = _newest(readings, "body", "outside", key)
        yield _length("outside", f"trailer.outside.{key}", "box", f"outside {key}", value, f"body outside {key}=", read)


def _members(result: Result, readings: tuple[Read, ...]) -> Iterator[Expected]:
    """Yield the places of studs, bows and cross-members, across the trailer from the left stud face as a tape reads."""
    for one in result.members:
        if one.kind not in ROWS or one.number is None:
            continue
        kind = ROWS[one.kind]
        subject = one.wall if one.kind == "stud" else "roof" if one.kind == "bow" else "floor"
        plane = result.wall(one.wall)
        zero = plane.low if plane is not None and one.wall in ("front", "rear") else 0.0
        read = _newest(readings, kind, subject, str(one.number)) or _built(one, kind, subject, zero)
        wall = f" {one.wall}" if one.kind == "stud" else ""
        typed = f"{kind}{wall} {one.number}="
        line = _length(one.kind, one.of, f"{kind}{wall}", f"{one.kind} {one.number}", _place(one, zero), typed, read)
        yield line if line.value is not None else replace(line, words="not fixed")


def _place(member: Member, zero: float) -> Band | None:
    """Return where a member is expected: as ordered, or about there where nobody ordered where its row begins."""
    if member.planned is not None:
        return exactly(member.planned - zero)
    if member.is_built:
        return None
    at = member.at
    return Band(at.best - zero, at.low - zero, at.high - zero, at.known, at.spread, assumed=True)


def _built(one: Member, kind: str, subject: str, zero: float) -> Read | None:
    """Return what the frame already holds of a member as built, as its tape reads."""
    if one.built is None:
        return None
    return Read(kind, subject, str(one.number), moved(one.built, -zero), one.seen_on, one.seen_in)


def _openings(result: Result, readings: tuple[Read, ...]) -> Iterator[Expected]:
    for hole in result.holes:
        if not hole.is_by_builder or not hole.is_placed:
            continue
        for key, value in _edges(hole, result):
            read = _newest(readings, "opening", hole.name, key)
            edge = Band(value, value, value)
            yield _length("opening", hole.of, "openings", f"{hole.name}, {key} edge", edge,
                          f"opening {hole.name} {key}=", read)  # fmt: skip


def _edges(hole: Hole, result: Result) -> tuple[tuple[str, float], ...]:
    """Return the edges of an opening as a tape reads them: across the trailer from the left wall's stud face."""
    wall, left = result.wall(hole.wall), result.wall("left")
    from_left = left.start[1] if left is not None else 0.0
    if hole.wall in ("front", "rear"):
        along = (("left", hole.low - from_left), ("right", hole.high - from_left))
    else:
        along = (("front", hole.low), ("rear", hole.high))
    if hole.wall in ("roof", "floor"):
        return (*along, ("left", hole.bottom - from_left), ("right", hole.top - from_left))
    return (*along, ("bottom", hole.bottom), ("top", hole.top)) if wall is None or wall.top > wall.foot else along


def _running_gear(trailer: Trailer) -> Iterator[Expected]:
    for number, place in enumerate(trailer.axles.x):
        yield _length("axle", f"trailer.axles.x[{number}]", "running gear",
                      f"axle {number + 1} behind the front wall, left and right", place, "")  # fmt: skip
    for name, key, what, value in (
        ("coupler", "coupler_x", "ball centre to the front wall", trailer.coupler_x),
        ("height", "coupler_height", "ball height, trailer level", trailer.coupler_height),
        ("height", "deck_height", "ground to the deck, level", trailer.deck_height),
        ("outside", "outside.over_fenders", "greatest width, over the fenders", trailer.outside.over_fenders),
        ("outside", "outside.length_overall", "length overall", trailer.outside.length_overall),
    ):
        yield _length(name, f"trailer.{key}", "running gear", what, value, "")


def _weights(trailer: Trailer, weighed: tuple[Measured, ...]) -> Iterator[Expected]:
    empty = trailer.empty
    for name, key, what, value in (
        ("empty", "total", "empty weight, unhitched", empty.weight),
        ("tongue", "tongue", "on the ball, empty and level", empty.tongue),
    ):
        row = _row(_weight_rows(), name)
        share = _weight_rows().number(row, "share")
        within = share * value.best if share is not None and value is not None and value.known else None
        mine = [one for one in weighed if one.what == key and one.load in ("", EMPTY)]
        read = min(mine, key=lambda one: one.on or date.max, default=None)
        yield Expected(
            f"trailer.empty.{'weight' if key == 'total' else key}", "weights", what, "mass", value, within=within,
            mark=_seen(row), typed=f"ticket {key}=", read=read.value if read else None,
            entry=read.of if read else "", on=read.on if read else None,
        )  # fmt: skip


def _stamps(trailer: Trailer) -> Iterator[Expected]:
    """Yield what is read off plates, tyres and stamps: it must be exactly what was ordered."""
    masses: list[tuple[str, str, Band | None]] = [("gvwr", "greatest mass on the plate", trailer.gvwr)]
    for number, one in enumerate(trailer.axles.gawr):
        masses.append((f"axles.gawr[{number}]", f"rating of axle {number + 1}", one))
    masses.append(("coupler.rating", "rating stamped on the coupler", trailer.coupler.rating))
    masses.append(("jack.rating", "rating of the jack", trailer.jack.rating))
    masses.append(("tyres.load", "load stamped on one tyre", trailer.tyres.load))
    if trailer.chains is not None:
        masses.append(("chains.rating", "rating of one chain", trailer.chains.rating))
    for key, what, value in masses:
        yield Expected(f"trailer.{key}", "plates and stamps", what, "mass", value)
    ball = trailer.coupler.ball
    yield Expected("trailer.coupler.ball", "plates and stamps", "ball size stamped on the coupler", "length", ball)
    for key, what, words in (
        ("tyres.size", "tyre size, each", trailer.tyres.size),
        ("tyres.date", "tyre date code, each", trailer.tyres.date),
        ("socket", "plug", trailer.socket),
    ):
        yield Expected(f"trailer.{key}", "plates and stamps", what, "text", words=words)


def _looks() -> Iterator[Expected]:
    for row in _look_rows().rows:
        name, group, how = (str(cell) for cell in row.cells)
        yield Expected("trailer", group, name, "look", how=how, mark=_seen(row))
