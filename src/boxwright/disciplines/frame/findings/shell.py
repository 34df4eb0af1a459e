"""Rules of the shell: what tapes say, what stands beside its plan, a roof or a bay that cannot be."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.frame.result import Result, Wall
from boxwright.disciplines.frame.telling import (
    GEOMETRY,
    MINUTES_TO_TAPE,
    PRACTICE,
    asking,
    beside_plan,
    length,
    of_a_tape,
    plane_of,
    several,
)
from boxwright.finding import USES, Finding
from boxwright.units import HeaderUnits, show


def tape_disagrees(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when two tapes contradict each other, or a reading cannot be.

    Asks: do the newest and the older reading agree, in order, inside the wall
    Limit: what both tapes may be off
    Source: builder-practice
    Lever: tape it again
    Methods: none
    """
    for fault in result.faults:
        if fault.what == "beyond":
            continue
        act = f"Tape {fault.name} on the {plane_of(fault.wall)} again"
        yield Finding(
            "frame/tape-disagrees", fault.of, "fix", of_a_tape(fault, result, shown_in), fault.value, fault.against,
            -abs(fault.value - fault.against), "m", PRACTICE, fault.of, act=act, minutes=MINUTES_TO_TAPE, uses=USES,
        )  # fmt: skip


def built_beside_plan(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a member or a measure of the box is not where it was ordered.

    Asks: how far is it off
    Limit: the tolerance of ordering
    Source: builder-practice
    Lever: look again at what was decided on the plan
    Methods: none
    """
    code = "frame/built-beside-plan"
    for fault in result.faults:
        if fault.what == "beyond":
            yield beside_plan(fault, code, result, shown_in)
    for one in result.sized:
        if one.planned is None or one.built is None or abs(one.planned.best - one.built.best) <= one.allowed:
            continue
        off = abs(one.planned.best - one.built.best)
        place = f" {one.place}" if one.place else ""
        said = "the two diagonals are" if one.what == "diagonals" else f"the {one.what}{place} is"
        says = f"{said} {show(off, 'm', shown_in, cuts=True)} off: {length(one.planned.best, shown_in)} and "
        says += f"{length(one.built.best, shown_in)}"
        yield Finding(
            code, one.of, "advice", says, off, one.allowed, one.allowed - off, "m", PRACTICE, one.of,
            act="Measure again, then cut sheets to the tape and not to the plan",
        )  # fmt: skip


def roof_lower_than_rise(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when an arched roof rises more than it is high, or rounded eaves are larger than the roof is.

    Asks: is there wall left under the arch
    Limit: the height of the body
    Source: own-arithmetic
    Lever: the rise or the height
    Methods: none
    """
    roof = result.roof
    width = result.wall("rear")
    half = (width.high - width.low) / 2.0 if width is not None else roof.height
    for shape, key, value in (("arched", "rise", roof.rise), ("rounded", "radius", roof.radius)):
        if roof.shape == shape and value <= 0.0:
            says = f"the roof is {shape}, and nobody wrote how far: its {key} is taken as nothing"
            act = f"Hold a straight edge across a bow and write frame: {{bows: {{{key}: ..}}}}"
            yield asking("frame/roof-lower-than-rise", f"frame.bows.{key}", says, act, f"frame.bows.{key}")
    for key, value, limit in (("rise", roof.rise, roof.height), ("radius", roof.radius, min(roof.height, half))):
        if value > 0.0 and value >= limit:
            says = f"the roof's {key} of {length(value, shown_in)} leaves no wall under {length(limit, shown_in)}"
            yield Finding(
                "frame/roof-lower-than-rise", f"frame.bows.{key}", "fix", says, value, limit, limit - value, "m",
                GEOMETRY, f"frame.bows.{key}", act=f"Look at the {key} of the bows and at the height of the body",
                uses=USES,
            )  # fmt: skip


def bay_without_width(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when two members stand so close, by plan, that there is no bay between them.

    Asks: is there room between two neighbours
    Limit: more than nothing
    Source: own-arithmetic
    Lever: spacing, first and extra members of the row
    Methods: none
    """
    for bay in result.bays:
        if bay.clear.best > 0.0 or bay.is_built:
            continue
        says = f"{bay.first} and {bay.last} of the {plane_of(bay.wall)} overlap by {length(-bay.clear.best, shown_in)}"
        where = "frame.bows" if bay.wall == "roof" else "frame.floor" if bay.wall == "floor" else "frame.studs"
        yield Finding(
            "frame/bay-without-width", where, "fix", says, bay.clear.best, 0.0, bay.clear.best, "m", GEOMETRY, where,
            act="Look at the spacing, the first and the extra members of that row", uses=USES,
        )  # fmt: skip


def members_unknown(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when something hangs on a wall whose members nobody wrote or taped.

    Asks: where do the members of the wall stand
    Limit: a spacing, or a tape
    Source: builder-practice
    Lever: frame: {studs: 16}, or a tape
    Methods: none
    """
    code = "frame/members-unknown"
    if "trailer.body" in result.unplaced:
        says = "the body's length, width or height is not written, so nobody can say what any opening or hinge meets"
        act = "Measure stud face to stud face and deck to bows, and write trailer: {body: {length: .., width: .., ..}}"
        yield asking(code, "trailer.body", says, act, "trailer.body")
    for wall in result.walls:
        holes = [one.name for one in result.holes if one.wall == wall.name and not one.is_by_builder]
        hung = [one.name for one in result.fastenings if one.wall == wall.name and one.points]
        if not (holes or hung):
            continue
        listed = list(dict.fromkeys((*holes, *hung)))
        names = ", ".join(listed)
        hang, go = ("hang", "go") if len(listed) > 1 else ("hangs", "goes")
        if not result.members_of(wall.name):
            says = f"nobody wrote where the members of the {plane_of(wall.name)} stand, and {names} {hang} on it"
            key = "bows" if wall.name == "roof" else "floor" if wall.name == "floor" else "studs"
            act = f"Find them with a magnet and write frame: {{{key}: {{every: .., first: ..}}}}"
            yield asking(code, f"frame.{key}", says, act, f"frame.{key}")
        elif not any(one.is_built for one in result.members_of(wall.name)):
            waiting = [one.name for one in result.holes if one.wall == wall.name and one.is_cut is False]
            if waiting or hung:
                says = f"the members of the {plane_of(wall.name)} stand as ordered, not as taped, "
                says += f"and {names} {go} by them"
                yield Finding(
                    code, _row_of(wall), "advice", says, source=PRACTICE, lever="measured",
                    act=f"Tape the members of the {plane_of(wall.name)} before the saw starts", minutes=MINUTES_TO_TAPE,
                )  # fmt: skip


def _row_of(wall: Wall) -> str:
    """Return the rig path of a wall's members, another one for each wall: two must not be told as one."""
    return {"roof": "frame.bows", "floor": "frame.floor"}.get(wall.name, f"frame.studs.{wall.name}")


def cannot_be_carried_in(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a part that is still to come in passes no opening that is left by then.

    Asks: does its smallest cross-section, carried lengthways, pass a hole of a wall without a unit in it
    Limit: the rough opening
    Source: own-arithmetic
    Lever: build it inside, bring it in before the wall closes, or a larger opening
    Methods: height_for_tilted
    """
    code = "frame/cannot-be-carried-in"
    unsized = []
    for one in result.stuck:
        if one.best is None:
            unsized.append(one)
            continue
        size = " x ".join(length(side, shown_in) for side in one.size)
        says = f"{one.name}, {size}, passes no opening that is left when it goes in: it is "
        says += f"{length(-one.best.spare, shown_in)} short at {one.through}"
        yield Finding(
            code, one.of, "advice", says, one.best.spare, 0.0, one.best.spare, "m", GEOMETRY, f"{one.of}.size",
            act=f"Build {one.name} inside, or in pieces, or bring it in before the walls close",
        )  # fmt: skip
    if unsized:
        names = several(one.name for one in unsized)
        says = f"no size is written of {names}, so nobody can say whether each passes the door"
        act = f"Measure {names}, and write size: length x width x height"
        yield asking(code, unsized[0].of, says, act, f"{unsized[0].of}.size", ("leave", "work"))
