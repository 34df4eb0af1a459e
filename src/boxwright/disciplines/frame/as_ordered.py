"""The frame as the order has it: every member where it was planned, every opening of the order as it was asked for."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.frame.drawn import Drawn
from boxwright.disciplines.frame.holes import cut_members, holes_of
from boxwright.disciplines.frame.ordering import OrderLine, Replied
from boxwright.disciplines.frame.result import Hole, Member
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band

QUANTITY = {"price": "money", "weight": "mass", "weeks": "ratio"}
LENGTHS = ("x", "z", "width", "height", "across")
NEAR = 1e-4
"""A jamb or a header this near to an edge of an opening (m), less half its face, belongs to that edge."""


def as_ordered(drawn: Drawn) -> Drawn:
    """Return what the sheets are made from, as it was asked for: no tape and no reply has moved anything."""
    frame = drawn.frame
    asked = {one.of: _asked(drawn, one) for one in frame.holes if is_asked(drawn, one)}
    members = tuple(found for one in frame.members if (found := _planned(one, frame.holes, asked)) is not None)
    bare = tuple(asked.values())
    holes = holes_of(bare, frame.walls, members, frame.intrusions)
    return replace(drawn, frame=replace(frame, members=cut_members(members, holes), holes=holes))


def is_asked(drawn: Drawn, hole: Hole) -> bool:
    """Return whether an opening is a line of the order."""
    return hole.is_by_builder or any(line.of == hole.of for line in drawn.lines)


def asked_of(line: OrderLine, key: str, own: Band | None, units: HeaderUnits) -> Band | None:
    """Return a value that was asked for: what stood there before the owner went on with the reply, else the rig's."""
    told = next((one for one in line.replied if one.key == key), None)
    before = _before(told, units) if told is not None else None
    return before if before is not None else own


def _before(told: Replied, units: HeaderUnits) -> Band | None:
    if not told.was:
        return None
    try:
        return read_band(told.was, QUANTITY.get(told.key, "length"), units)
    except CannotRead:
        return None


def _asked(drawn: Drawn, hole: Hole) -> Hole:
    """Return an opening as it was asked for, with nothing said about members yet."""
    line = next((one for one in drawn.lines if one.of == hole.of), None)
    if line is None or not hole.is_placed:
        return replace(hole, members_cut=(), header=None)
    was = {key: found.best for key in LENGTHS if (found := asked_of(line, key, None, drawn.units)) is not None}
    is_across = hole.wall in ("front", "rear")
    low = hole.low if is_across else was.get("x", hole.low)
    wide = was.get("width", hole.high - hole.low)
    if is_across:  # the reply names no edge across the trailer but in words: the middle stays
        low = (hole.low + hole.high - wide) / 2.0
    if hole.wall in ("roof", "floor"):
        high = was.get("across", hole.top - hole.bottom)
        bottom = (hole.bottom + hole.top - high) / 2.0
    else:
        high, bottom = was.get("height", hole.top - hole.bottom), was.get("z", hole.bottom)
    return replace(hole, low=low, high=low + wide, bottom=bottom, top=bottom + high, members_cut=(), header=None)


def _planned(member: Member, holes: tuple[Hole, ...], asked: dict[str, Hole]) -> Member | None:
    """Return a member where it was ordered; None for one that only a tape knows, or that no order holds any more."""
    if member.planned is None and member.is_built:
        return None
    is_removed = member.is_removed and not member.seen_in
    own = next((one for one in holes if one.of == member.of), None)
    if own is not None and member.of not in asked:
        return None
    found = member if own is None else _at_edge(member, own, asked[member.of])
    at = member.at if found.planned is None else exactly(found.planned)
    return replace(
        found, at=at, built=None, is_built=False, is_contested=False, is_removed=is_removed, seen_in="", cut_by=(),
        pieces=((found.low, found.high),),
    )  # fmt: skip


def _at_edge(member: Member, own: Hole, asked: Hole) -> Member:
    """Return a jamb, a header or a sill moved with the edge of its opening."""
    if member.planned is None:
        return member
    if member.runs == "up":
        edges = (own.low, asked.low), (own.high, asked.high)
    else:
        edges = (own.bottom, asked.bottom), (own.top, asked.top)
        member = replace(member, low=asked.low, high=asked.high)
    planned = member.planned
    assert planned is not None
    reach = member.face.best / 2.0 + NEAR
    by = next((new - old for old, new in edges if abs(planned - old) <= reach), 0.0)
    return replace(member, planned=planned + by)
