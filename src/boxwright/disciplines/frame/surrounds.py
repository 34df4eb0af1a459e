"""What stands around an opening the trailer's builder frames: jambs, header and sill, as ordered or as taped.

An opening is framed where it takes a stud out of its row, or where somebody goes in and out through it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.bands import SMALL, around, moved
from boxwright.disciplines.frame.members import UPRIGHT, depth_of, face_of, sides, standing
from boxwright.disciplines.frame.parts import Section
from boxwright.disciplines.frame.result import HeaderNeed, Hole, Member, MemberKind, Wall
from boxwright.disciplines.frame.sourced import LIMITS, WITHIN
from boxwright.disciplines.frame.tapes import as_band, newest_first
from boxwright.units import Band


def surrounds_of(
    holes: tuple[Hole, ...], walls: tuple[Wall, ...], members: tuple[Member, ...], section: Section
) -> tuple[Member, ...]:
    """Return the jambs, headers and sills of the openings the builder frames; a stud beside one is its jamb."""
    found: list[Member] = []
    for hole in holes:
        wall = next((one for one in walls if one.name == hole.wall), None)
        if wall is not None and wall.name in UPRIGHT and is_framed(hole, members):
            found += _around(hole, wall, members, section)
    return tuple(found)


def is_framed(hole: Hole, members: tuple[Member, ...]) -> bool:
    """Return whether the trailer's builder frames an opening: it is a way in, or takes a stud out of its row."""
    if not (hole.is_by_builder and hole.is_placed):
        return False
    is_way_in = min(hole.high - hole.low, hole.top - hole.bottom) >= LIMITS["least_way_in"]
    return is_way_in or bool(_taken_out(hole, members))


def _taken_out(hole: Hole, members: tuple[Member, ...]) -> list[Member]:
    """Return the uprights that an opening takes the place of: those that are cut, and those that were left out."""
    return [
        one
        for one in members
        if one.wall == hole.wall and one.runs == "up" and one.kind != "jamb" and one.of != hole.of
        and sides(one)[0] < hole.high - SMALL and sides(one)[1] > hole.low + SMALL
        and one.low < hole.top - SMALL and one.high > hole.bottom + SMALL
    ]  # fmt: skip


def _around(hole: Hole, wall: Wall, members: tuple[Member, ...], section: Section) -> Iterator[Member]:
    face = face_of(section, wall)
    half = face.best / 2.0
    words = ("left", "right") if wall.name in ("front", "rear") else ("front", "rear")
    for word, at, by in ((words[0], hole.low, -half), (words[1], hole.high, half)):
        is_there = any(abs(one.at.best - at - by) < face.best for one in standing(members, wall.name))
        if not is_there and wall.low - SMALL <= at + by <= wall.high + SMALL:
            taped = _taped(section, hole, word, wall.low if words[0] == "left" else 0.0)
            yield _member(hole, f"{hole.name} {word} jamb", "jamb", wall, section, at, by, taped)
    for word, kind, at, by in (("top", "header", hole.top, half), ("bottom", "sill", hole.bottom, -half)):
        if wall.foot - SMALL <= at + by - half and at + by + half <= wall.top + SMALL:
            taped = _taped(section, hole, word, 0.0)
            yield _member(hole, f"{hole.name} {kind}", "header" if kind == "header" else "sill", wall, section, at, by,
                          taped)  # fmt: skip


def _taped(section: Section, hole: Hole, edge: str, zero: float) -> tuple[Band, str] | None:
    """Return the newest tape of an edge of an opening, with its entry."""
    found = [one for one in newest_first(section.readings, "opening", hole.name, edge) if one.value.known]
    return (moved(as_band(found[0]), zero), found[0].of) if found else None


def _member(
    hole: Hole,
    name: str,
    kind: MemberKind,
    wall: Wall,
    section: Section,
    edge: float,
    by: float,
    taped: tuple[Band, str] | None,
) -> Member:
    """Return one piece of a frame; ``by`` is how far its middle lies from the opening's ``edge``."""
    within = WITHIN["opening"] + (hole.doubt if kind == "jamb" else 0.0)
    built = moved(taped[0], by) if taped is not None else None
    low, high = (wall.foot, wall.top) if kind == "jamb" else (hole.low, hole.high)
    return Member(
        of=hole.of,
        name=name,
        kind=kind,
        wall=wall.name,
        number=None,
        planned=edge + by,
        built=built,
        at=built or around(edge + by, within, assumed=True),
        is_built=built is not None,
        seen_in=taped[1] if taped is not None else "",
        seen_on=None,
        face=face_of(section, wall),
        depth=depth_of(section, wall),
        runs="up" if kind == "jamb" else "along",
        low=low,
        high=high,
        pieces=((low, high),),
    )


def with_header(hole: Hole, members: tuple[Member, ...]) -> Hole:
    """Return an opening with what its header spans and bears, from jamb to jamb as they will stand.

    A stud that was left out for the opening counts as one that is cut: the header bears its share of the roof.
    """
    framed = is_framed(hole, members)
    if not framed and hole.header is None:
        return hole
    mine = standing(members, hole.wall)
    before = [one for one in mine if sides(one)[1] <= hole.low + SMALL]
    after = [one for one in mine if sides(one)[0] >= hole.high - SMALL]
    if not before or not after:
        return replace(hole, header=None)
    first, last = before[-1], after[0]
    span = last.at.best - first.at.best
    offsets = tuple(one.at.best - first.at.best for one in _taken_out(hole, members))
    offsets = tuple(sorted(one for one in offsets if 0.0 < one < span))
    if span <= 0.0 or not (offsets or framed):
        return replace(hole, header=None)
    share = method.first_bearing(span, (1.0,) * len(offsets), offsets) if offsets else 0.0
    return replace(hole, header=HeaderNeed(span, first.name, last.name, offsets, (share, len(offsets) - share)))
