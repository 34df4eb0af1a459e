"""Rules of openings: what they cut, whether they fit their wall, what a unit's depth meets, what seals them."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.frame.result import CutMember, Hole, Result
from boxwright.disciplines.frame.telling import (
    GEOMETRY,
    PRACTICE,
    apart,
    asking,
    built_at,
    flange_beyond,
    flanges_meet,
    kind_of,
    length,
    name_of,
    plane_of,
    sliding,
    stepped,
    taped,
    taped_up,
    way_out,
)
from boxwright.finding import USES, Finding
from boxwright.units import HeaderUnits, show_band


def opening_cuts_member(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when an opening runs through a stud, a bow or a cross-member that nobody has framed around.

    Asks: does the rough opening leave every member whole
    Limit: no overlap; what the trailer builder framed is left to the builder
    Source: own-arithmetic overlap of intervals
    Lever: slide the opening to the nearest place between two members
    Methods: first_bearing
    """
    code = "frame/opening-cuts-member"
    for hole in result.holes:
        if hole.is_by_builder:
            continue
        cut = [one for one in hole.members_cut if one.overlap.best > 0.0]
        if any(one.is_held or one.is_certain for one in cut):
            at = ", ".join(_cut_at(one, hole, result, shown_in) for one in cut)
            many = kind_of(result, cut[0].name, hole.wall)
            # "bow 4" says its kind itself
            many = "" if cut[0].name.startswith(many) else f"{many}{'s' if len(cut) > 1 else ''} "
            ends = (taped(end, hole.wall, result, shown_in) for end in (hole.low, hole.high))
            says = f"{hole.name} from {' to '.join(ends)} cuts the {many}"
            says += at
            overlap = max(one.overlap.best for one in cut)
            says += f"; {way_out(hole, result, shown_in)}"
            yield Finding(
                code, hole.of, "fix", says, overlap, 0.0, -overlap, "m", GEOMETRY, f"{hole.of}.x",
                act=sliding(hole, result, shown_in), uses=USES,
            )  # fmt: skip
            continue
        doubtful = [one for one in hole.members_cut if not hole.is_cut]
        if doubtful:
            names = ", ".join(one.name for one in doubtful)
            says = f"{hole.name} may cut {names}, by what is known of their places and its own; nobody taped it"
            yield asking(code, hole.of, says, f"Tape where {names} stands on the {plane_of(hole.wall)}", f"{hole.of}.x")


def _cut_at(cut: CutMember, hole: Hole, result: Result, shown_in: HeaderUnits) -> str:
    lies_along = any(one.name == cut.name and one.runs == "along" for one in result.members_of(hole.wall))
    place = taped_up if lies_along else taped
    return f"{cut.name} at {place(cut.at.best, hole.wall, result, shown_in)}"


def opening_outside_wall(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when an opening reaches beyond the wall it is in.

    Asks: does the wall hold the whole rough opening
    Limit: from end to end and from foot to top of the wall, short of a rounded eave, under the bow of an end wall
    Source: own-arithmetic
    Lever: move or shrink the opening
    Methods: none
    """
    code = "frame/opening-outside-wall"
    for hole in result.holes:
        wall = result.wall(hole.wall)
        if not hole.is_placed:
            says = f"nobody can say where {hole.name} goes in the {plane_of(hole.wall)}: a place or a size of it is "
            says += "not written, or is none that can be"
            keys = "x, z, width and height"
            if hole.wall in ("roof", "floor"):
                keys = "x, width, side and across"
            elif hole.wall not in ("left", "right"):
                keys = "side, z, width and height"
            act = f"Write {keys} of {hole.name}"
            yield asking(code, hole.of, says, act, f"{hole.of}.x")
        if hole.curved > 0.0 and not hole.is_outside_wall:
            by = length(hole.curved, shown_in)
            says = f"{hole.name} reaches {by} into the rounded eave{', with its flange' if hole.flange else ''}"
            if hole.wall in ("front", "rear"):
                says = f"{hole.name} reaches {by} above the bow at its upper corner: the wall ends there"
            way = "toward the middle" if hole.wall == "roof" else "down"
            act = f"Move {hole.name} {way} by {stepped(hole.curved, 1.0, shown_in)}, or make it smaller"
            yield Finding(
                code, hole.of, "fix", says, hole.curved, 0.0, -hole.curved, "m", GEOMETRY,
                f"{hole.of}.{'side' if hole.wall == 'roof' else 'z'}", act=act, uses=USES,
            )  # fmt: skip
        if not hole.is_outside_wall or wall is None:
            yield from flange_beyond(hole, wall, code, shown_in) if wall is not None else ()
            continue
        along, whole = (
            " to ".join(taped(end, hole.wall, result, shown_in) for end in ends)
            for ends in ((hole.low, hole.high), (wall.low, wall.high))
        )
        up, high = (
            " to ".join(taped_up(end, hole.wall, result, shown_in) for end in ends)
            for ends in ((hole.bottom, hole.top), (wall.foot, wall.top))
        )
        way = "across" if hole.wall in ("roof", "floor") else "up"
        corner = " from its corner of the body" if hole.wall.startswith("nose") else ""
        says = f"{hole.name} reaches beyond its wall: it runs {along} along{corner} and {up} {way}, and the wall from "
        says += f"{whole} and {high}"
        beyond = max(wall.low - hole.low, hole.high - wall.high, wall.foot - hole.bottom, hole.top - wall.top)
        act = f"Look at the place and the size of {hole.name}"
        yield Finding(
            code, hole.of, "fix", says, beyond, 0.0, -beyond, "m", GEOMETRY, f"{hole.of}.width",
            act=act, uses=USES,
        )  # fmt: skip


def opening_overlaps(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when an opening runs into another opening, a wheel box or a spring housing.

    Asks: is the wall free where the opening is
    Limit: no overlap
    Source: own-arithmetic overlap of rectangles
    Lever: move the opening
    Methods: none
    """
    code = "frame/opening-overlaps"
    for of in result.unplaced:
        if of.startswith("frame.intrusions"):
            says = f"nobody can say where {name_of(of)} stands, so nobody can say whether an opening runs into it"
            act = f"Write wall (left, right, front or rear), x, length, height and depth of {name_of(of)}"
            yield asking(code, of, says, act, f"{of}.x")
    told: set[tuple[str, ...]] = set()
    # Of two openings the one that is not cut yet is told: it is the one that can still be moved.
    for hole in sorted(result.holes, key=lambda one: bool(one.is_cut)):
        for other in hole.overlaps:
            pair = tuple(sorted((hole.of, other)))
            if pair in told:
                continue
            told.add(pair)
            says = f"{hole.name} runs into {name_of(other)}: both are in the {plane_of(hole.wall)} at the same place"
            yield Finding(
                code, hole.of, "fix", says, source=GEOMETRY, lever=f"{hole.of}.x",
                act=f"Move {hole.name} or {name_of(other)}", uses=USES,
            )  # fmt: skip
    yield from flanges_meet(result, code, shown_in)


def unit_depth(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a window, a fan or a socket does not suit the thickness of the wall it goes into.

    Asks: is the finished wall as thick as the unit clamps, and deep enough for what goes into it
    Limit: the unit's own range
    Source: own-unit
    Lever: a filler frame, a thinner lining there, another unit
    Methods: none
    """
    code = "frame/unit-depth"
    for hole in result.holes:
        plane = plane_of(hole.wall)
        for fit in hole.depth:
            wall = show_band(fit.finished, "m", shown_in, cuts=True)
            wanted = " to ".join(length(end.best, shown_in) for end in (fit.lowest, fit.highest) if end is not None)
            takes = f"clamps {wanted}" if fit.what == "clamps" else f"wants {wanted} of depth"
            if fit.fits == "unknown":
                says = f"{hole.name} {takes}, and nobody can say how thick the {plane} will be there: {wall}"
                act = f"Write the skin, the studs' depth and the layers of the {plane}"
                yield asking(code, hole.of, says, act, f"walls[{hole.wall}]")
            elif fit.fits == "no":
                limit = fit.highest if fit.highest is not None and fit.finished.best > fit.highest.best else fit.lowest
                bound = limit.best if limit is not None else 0.0
                now = show_band(fit.standing, "m", shown_in, cuts=True)
                if fit.finished.low == fit.finished.high:
                    wall, told = apart(fit.finished.best, bound, shown_in)
                    takes = takes.replace(length(bound, shown_in), told)
                says = f"{hole.name} {takes}, the wall will be {wall} there (it stands at {now} now)"
                act = f"Leave the lining out behind the frame of {hole.name}, or take a unit for a thicker wall"
                if fit.filler is not None:
                    act = f"A filler of {stepped(fit.filler.best, 1.0, shown_in)} at {hole.name}, or another unit"
                off = -abs(fit.finished.best - bound)
                yield Finding(
                    code, hole.of, "fix", says, fit.finished.best, bound, off, "m", "own-unit", hole.of, act=act,
                    uses=USES,
                )  # fmt: skip
        wall_there = built_at(result, hole)
        if hole.reaches is not None and wall_there is not None and hole.reaches.low > wall_there.high:
            stands = length(hole.reaches.best - wall_there.best, shown_in)
            reaches, thick = length(hole.reaches.best, shown_in), show_band(wall_there, "m", shown_in, cuts=True)
            says = f"{hole.name} reaches {reaches} behind the skin, and the wall will be {thick} there: it stands "
            says += f"{stands} into the room"
            besides = (("Behind the skin", reaches), ("The wall there", thick), ("Into the room", stands))
            clear = stepped(hole.reaches.best - wall_there.best, 1.0, shown_in)
            act = f"Keep {clear} clear before {hole.name}, and its way out for wires and hands"
            yield Finding(
                code,
                hole.of,
                "advice",
                says,
                source="own-unit",
                lever=f"{hole.of}.unit.depth",
                act=act,
                besides=besides,
            )


def recess_depth(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a socket, a switch or a lamp let into a wall finds a member there, or too little depth.

    Asks: is the finished wall as deep to its skin as the recess, and is there a bay behind it
    Limit: its own depth
    Source: own-unit
    Lever: move it into a bay, or a box that stands out
    Methods: none
    """
    code = "frame/recess-depth"
    for path in result.unplaced:
        if path.endswith(".recess"):
            of = path.removesuffix(".recess")
            says = f"nobody can say into which wall {name_of(of)} goes"
            yield asking(code, of, says, f"Write wall: left, right, front, rear or roof of {name_of(of)}", f"{of}.wall")
    for one in result.recesses:
        wants = show_band(one.depth, "m", shown_in, cuts=True)
        room = show_band(one.room, "m", shown_in, cuts=True)
        if one.hits:
            at = ", ".join(f"{name} at {taped(place, one.wall, result, shown_in)}" for name, place in one.hits)
            says = f"{one.name} goes into the {plane_of(one.wall)} where a member stands: {at}"
            act = f"Move {one.name} into a bay there"
            yield Finding(code, one.of, "fix", says, source=GEOMETRY, lever=f"{one.of}.at", act=act, uses=USES)
        elif one.fits == "no":
            short = one.depth.best - one.room.best
            if one.depth.low == one.depth.high and one.room.low == one.room.high:
                wants, room = apart(one.depth.best, one.room.best, shown_in)
            says = f"{one.name} goes {wants} into the {plane_of(one.wall)}, and to the skin it is {room} deep there"
            act = f"A frame of {stepped(short, 1.0, shown_in)} under {one.name}, or a shallower one"
            yield Finding(
                code, one.of, "fix", says, one.depth.best, one.room.best, -short, "m", "own-unit", f"{one.of}.recess",
                act=act, uses=USES,
            )  # fmt: skip
        elif one.fits == "unknown":
            says = f"{one.name} goes {wants} into the {plane_of(one.wall)}, and nobody can say how deep it is there"
            says += f": {room}"
            act = f"Write recess and place of {one.name}, and skin, studs and layers of the {plane_of(one.wall)}"
            yield asking(code, one.of, says, act, f"{one.of}.recess")


def seal_unknown(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when nobody knows what keeps the water out of a hole that has been cut.

    Asks: what seals the hole, and since when
    Limit: every cut hole has a sealant written
    Source: builder-practice
    Lever: look, or seal it again and write it
    Methods: none
    """
    code = "frame/seal-unknown"
    unasked = []
    for hole in result.holes:
        if hole.is_by_builder or not (hole.is_cut or hole.there == "yes"):
            continue
        if hole.seal.strip().lower() in ("unknown", "?"):
            says = f"nobody wrote what seals {hole.name}"
            act = f"Look at {hole.name} from outside, or bed it again, and write sealant: {{of: .., on: ..}}"
            yield asking(code, hole.of, says, act, f"{hole.of}.sealant", ("leave",))
        elif not hole.seal:
            unasked.append(hole.name)
    if unasked:
        says = f"no sealant is written of {', '.join(unasked)}; every hole through the skin has one and a day"
        yield Finding(
            code, "openings", "advice", says, source=PRACTICE, lever="openings",
            act=f"Write sealant: {{of: butyl, on: 2026-03-14}} at {unasked[0]}", uses=("leave",),
        )  # fmt: skip
