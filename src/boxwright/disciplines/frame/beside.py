"""What stands beside its plan: the things a stud that came out elsewhere moves, and taped edges of openings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.result import Fastening, Hole, Member, TapeFault, Wall
from boxwright.disciplines.frame.sourced import WITHIN
from boxwright.disciplines.frame.tapes import Read, doubt_of, newest_first


def with_what_it_moves(
    fault: TapeFault, members: tuple[Member, ...], holes: tuple[Hole, ...], fastenings: tuple[Fastening, ...]
) -> TapeFault:
    """Return a stud beside its plan with the names of what was decided on the plan and comes out worse.

    What misses the plan and suits the stud where it stands was decided by the tape.
    """
    member = next((one for one in members if one.name == fault.name and one.wall == fault.wall), None)
    if fault.what != "beyond" or member is None or member.planned is None:
        return fault
    by = member.planned - member.at.best
    names = [
        one.name
        for one in holes
        if one.wall == member.wall and _is_cut(one, member, 0.0) and not _is_cut(one, member, by)
    ]
    names += [
        one.name
        for one in fastenings
        if one.wall == member.wall and _loses(_caught(one, member, by), _caught(one, member, 0.0))
    ]
    return replace(fault, moves=tuple(dict.fromkeys(names)))


def _edges(member: Member, by: float) -> tuple[float, float]:
    half = member.face.best * (1.0 if member.is_doubled else 0.5)
    return member.at.best + by - half, member.at.best + by + half


def _is_cut(hole: Hole, member: Member, by: float) -> bool:
    if not hole.is_placed or hole.bottom >= member.high - SMALL or hole.top <= member.low + SMALL:
        return False
    first, last = _edges(member, by)
    return min(hole.high, last) - max(hole.low, first) > SMALL


def _caught(fastening: Fastening, member: Member, by: float) -> tuple[bool, ...]:
    first, last = _edges(member, by)
    distance = fastening.edge_distance.best
    return tuple(min(one.at - first, last - one.at) >= distance - SMALL for one in fastening.points)


def _loses(planned: tuple[bool, ...], built: tuple[bool, ...]) -> bool:
    """Return whether a fastener that was to catch a member does not catch it where it stands."""
    return any(was and not is_now for was, is_now in zip(planned, built, strict=True))


def taped_edges(readings: tuple[Read, ...], holes: tuple[Hole, ...], walls: tuple[Wall, ...]) -> Iterator[TapeFault]:
    """Yield the edges of openings whose newest tape says otherwise than the file, by more than the tape may be off."""
    for hole in holes:
        wall = next((one for one in walls if one.name == hole.wall), None)
        if wall is None or not hole.is_placed:
            continue
        for edge, written in _as_taped(hole, wall):
            found = [one for one in newest_first(readings, "opening", hole.name, edge) if one.value.known]
            if not found:
                continue
            allowed = max(doubt_of(found[0]), WITHIN["opening"])
            if abs(found[0].value.best - written) > allowed:
                yield TapeFault(
                    found[0].of, hole.of, "beyond", f"the {edge} edge of {hole.name}", hole.wall,
                    found[0].value.best, written, allowed, (hole.name,),
                )  # fmt: skip


def _as_taped(hole: Hole, wall: Wall) -> tuple[tuple[str, float], ...]:
    """Return the edges of an opening as a tape reads them: across the trailer from the left stud face."""
    if hole.wall in ("front", "rear"):
        return (
            ("left", hole.low - wall.low),
            ("right", hole.high - wall.low),
            ("bottom", hole.bottom),
            ("top", hole.top),
        )
    if hole.wall in ("roof", "floor"):
        across = (("left", hole.bottom - wall.foot), ("right", hole.top - wall.foot))
        return ("front", hole.low), ("rear", hole.high), *across
    return ("front", hole.low), ("rear", hole.high), ("bottom", hole.bottom), ("top", hole.top)
