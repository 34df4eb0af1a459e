"""Rules of the frame: what an opening cuts, what a unit's depth meets, what a fastener catches, what tapes say.

Nothing here stops anybody: a cut stud, a short screw or an unsealed hole is put right before the next stage closes
over it. What is not known is said, with what to read or to measure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from boxwright.disciplines.frame.result import Fastening, Hole, Point, Result, Shift, TapeFault
from boxwright.finding import USES, Finding, Use
from boxwright.units import HeaderUnits, show, show_band

GEOMETRY = "own-arithmetic"
PRACTICE = "builder-practice"
MINUTES_TO_TAPE = 10
MINUTES_TO_LOOK = 5


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
        if cut:
            at = ", ".join(f"{one.name} at {_length(one.at.best, shown_in)}" for one in cut)
            many = _kind_of(result, cut[0].name, hole.wall) + ("s" if len(cut) > 1 else "")
            says = f"{hole.name} from {_length(hole.low, shown_in)} to {_length(hole.high, shown_in)} cuts the {many} "
            says += at
            overlap = max(one.overlap.best for one in cut)
            yield Finding(
                code, hole.of, "fix", f"{says}; {_way_out(hole, shown_in)}", overlap, 0.0, -overlap, "m", GEOMETRY,
                f"{hole.of}.x", act=_slide(hole, shown_in), uses=USES,
            )  # fmt: skip
            continue
        doubtful = [one for one in hole.members_cut if not hole.is_cut]
        if doubtful:
            names = ", ".join(one.name for one in doubtful)
            says = f"{hole.name} may cut {names}, which stands where it was planned or a little beside; nobody taped it"
            yield _asks(code, hole.of, says, f"Tape where {names} stands on the {hole.wall} wall", f"{hole.of}.x")


def opening_outside_wall(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when an opening reaches beyond the wall it is in.

    Asks: does the wall hold the whole rough opening
    Limit: from end to end and from foot to top of the wall
    Source: own-arithmetic
    Lever: move or shrink the opening
    Methods: none
    """
    for hole in result.holes:
        wall = result.wall(hole.wall)
        if not hole.is_outside_wall or wall is None:
            continue
        along = f"{_length(hole.low, shown_in)} to {_length(hole.high, shown_in)}"
        up = f"{_length(hole.bottom, shown_in)} to {_length(hole.top, shown_in)}"
        says = (
            f"{hole.name} reaches beyond its wall: it runs {along} along and {up} up, and the {hole.wall} wall from "
            f"{_length(wall.low, shown_in)} to {_length(wall.high, shown_in)} and {_length(wall.foot, shown_in)} to "
            f"{_length(wall.top, shown_in)}"
        )
        beyond = max(wall.low - hole.low, hole.high - wall.high, wall.foot - hole.bottom, hole.top - wall.top)
        act = f"Look at the place and the size of {hole.name}"
        yield Finding(
            "frame/opening-outside-wall", hole.of, "fix", says, beyond, 0.0, -beyond, "m", GEOMETRY, f"{hole.of}.width",
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
    for hole in result.holes:
        for other in hole.overlaps:
            says = f"{hole.name} runs into {_name(other)}: both are in the {hole.wall} wall at the same place"
            yield Finding(
                "frame/opening-overlaps", hole.of, "fix", says, source=GEOMETRY, lever=f"{hole.of}.x",
                act=f"Move {hole.name} or {_name(other)}", uses=USES,
            )  # fmt: skip


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
        for fit in hole.depth:
            wall = show_band(fit.finished, "m", shown_in, cuts=True)
            wanted = " to ".join(_length(end.best, shown_in) for end in (fit.lowest, fit.highest) if end is not None)
            takes = f"clamps {wanted}" if fit.what == "clamps" else f"wants {wanted} of depth"
            if fit.fits == "unknown":
                says = f"{hole.name} {takes}, and nobody can say how thick the {hole.wall} wall will be there: {wall}"
                act = f"Write the skin, the studs' depth and the layers of the {hole.wall} wall"
                yield _asks(code, hole.of, says, act, f"walls[{hole.wall}]")
            elif fit.fits == "no":
                limit = fit.highest if fit.highest is not None and fit.finished.best > fit.highest.best else fit.lowest
                now = show_band(fit.standing, "m", shown_in, cuts=True)
                says = f"{hole.name} {takes}, the wall will be {wall} there (it stands at {now} now)"
                act = f"Leave the lining out behind the frame of {hole.name}, or take a unit for a thicker wall"
                if fit.filler is not None:
                    act = f"A filler of {_length(fit.filler.best, shown_in)} at {hole.name}, or another unit"
                bound = limit.best if limit is not None else 0.0
                off = -abs(fit.finished.best - bound)
                yield Finding(
                    code, hole.of, "fix", says, fit.finished.best, bound, off, "m", "own-unit", hole.of, act=act,
                    uses=USES,
                )  # fmt: skip


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
            yield _asks(code, hole.of, says, act, f"{hole.of}.sealant", ("leave",))
        elif not hole.seal:
            unasked.append(hole.name)
    if unasked:
        says = f"no sealant is written of {', '.join(unasked)}; every hole through the skin has one and a day"
        yield Finding(
            code, "openings", "advice", says, source=PRACTICE, lever="openings",
            act=f"Write sealant: {{of: butyl, on: 2026-03-14}} at {unasked[0]}", uses=("leave",),
        )  # fmt: skip


def fastener_misses(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a screw of a hinge or of a part misses the metal or the backing it is meant for.

    Asks: does every fastener stand within the edge distance of a member's face, or on a backing
    Limit: 1.5 shanks from the edge of the metal
    Source: fastener-practice
    Lever: slide it to the member beside it, slide the whole pattern, or a backing strip
    Methods: edge_distance members_in_span fewest_in_span
    """
    code = "frame/fastener-misses"
    for one in result.fastenings:
        misses = [(point, moved) for point, moved in zip(one.points, one.moved, strict=True) if not point.catches]
        uses: tuple[Use, ...] = USES if one.what == "screws" else ("sleep",)
        if misses:
            at = " and ".join(_length(point.at, shown_in) for point, _ in misses)
            subject = "the hinge" if one.what == "hinge" else "the screws"
            says = f"{subject} of {one.name} miss{'es' if one.what == 'hinge' else ''} the metal of the {one.wall} "
            says += f"wall at {at}"
            act = f"{_moved(one, misses, shown_in)}{_as_a_whole(one, shown_in)}"
            worst = min(point.room for point, _ in misses)
            yield Finding(
                code, one.of, "fix", f"{says}: {_nearest(misses, shown_in)}", worst, 0.0, worst, "m",
                "fastener-practice", f"{one.of}.{one.what}.at", act=act, uses=uses,
            )  # fmt: skip
        doubtful = [point for point in one.points if point.catches and not point.is_certain]
        if doubtful and not misses:
            names = ", ".join(dict.fromkeys(point.catches for point in doubtful))
            says = f"whether {one.name} catches {names} hangs on where it really stands; nobody taped it close enough"
            yield _asks(code, one.of, says, f"Find the edges of {names} with a magnet", f"{one.of}.{one.what}.at", uses)


def fastener_unplaced(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when nobody wrote where the screws of a part go, or its backing is too short for them.

    Asks: are the places of the fasteners written
    Limit: a place for each, or a backing behind the whole part
    Source: builder-practice
    Lever: screws: {at: [..]}
    Methods: none
    """
    for one in result.fastenings:
        if not one.asks:
            continue
        says = f"nobody wrote where the {one.what} of {one.name} go on the {one.wall} wall"
        if one.asks == "backing too short":
            says = f"{one.backing} does not reach behind all of {one.name}, and no places of its screws are written"
        act = f"Write {one.what}: {{at: [..]}} of {one.name}, the places along the trailer"
        yield Finding(
            "frame/fastener-unplaced", one.of, "advice", says, source=PRACTICE, lever=f"{one.of}.{one.what}.at", act=act
        )


def screw_length(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a screw does not reach the metal, or comes too near to the outer skin.

    Asks: how long is it beside lining, tube wall and three threads, and beside the depth to the skin
    Limit: three threads behind the tube's wall; 1/4 in left to the skin
    Source: fastener-practice
    Lever: another length
    Methods: screw_length
    """
    code = "frame/screw-length"
    for one in result.fastenings:
        reach = one.reach
        if reach is None or reach.verdict in ("fits", "unknown"):
            continue
        least, most = (show_band(end, "m", shown_in, cuts=True) for end in (reach.least, reach.most))
        if reach.verdict == "no length suits":
            says = f"no screw suits {one.name}: it must be {least} long to hold and {most} at most to stay off the skin"
        else:
            length = show_band(reach.written, "m", shown_in, cuts=True) if reach.written is not None else "unknown"
            says = f"the screws of {one.name} are {length} long, {reach.verdict}: {least} at least, {most} at most"
        limit = reach.least if reach.verdict == "too short" else reach.most
        number = reach.written.best if reach.written is not None else reach.least.best
        yield Finding(
            code, one.of, "fix", says, number, limit.best, -abs(number - limit.best), "m", "fastener-practice",
            f"{one.of}.screws.length", act=f"Screws of {least} to {most} for {one.name}", uses=USES,
        )  # fmt: skip


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
        act = f"Tape {fault.name} on the {fault.wall} wall again"
        yield Finding(
            "frame/tape-disagrees", fault.of, "fix", _of_a_tape(fault, shown_in), fault.value, fault.against,
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
            yield _beside(fault, code, shown_in)
    for one in result.sized:
        if one.planned is None or one.built is None or abs(one.planned.best - one.built.best) <= one.allowed:
            continue
        off = abs(one.planned.best - one.built.best)
        place = f" {one.place}" if one.place else ""
        said = "the two diagonals are" if one.what == "diagonals" else f"the {one.what}{place} is"
        says = f"{said} {show(off, 'm', shown_in, cuts=True)} off: {_length(one.planned.best, shown_in)} and "
        says += f"{_length(one.built.best, shown_in)}"
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
    for key, value, limit in (("rise", roof.rise, roof.height), ("radius", roof.radius, min(roof.height, half))):
        if value > 0.0 and value >= limit:
            says = f"the roof's {key} of {_length(value, shown_in)} leaves no wall under {_length(limit, shown_in)}"
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
        says = f"{bay.first} and {bay.last} of the {bay.wall} wall overlap by {_length(-bay.clear.best, shown_in)}"
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
    for wall in result.walls:
        holes = [one.name for one in result.holes if one.wall == wall.name and not one.is_by_builder]
        hung = [one.name for one in result.fastenings if one.wall == wall.name and one.points]
        if not (holes or hung):
            continue
        names = ", ".join(dict.fromkeys((*holes, *hung)))
        if not result.members_of(wall.name):
            says = f"nobody wrote where the members of the {wall.name} stand, and {names} hangs on it"
            key = "bows" if wall.name == "roof" else "floor" if wall.name == "floor" else "studs"
            act = f"Find them with a magnet and write frame: {{{key}: {{every: .., first: ..}}}}"
            yield _asks(code, f"frame.{key}", says, act, f"frame.{key}")
        elif not any(one.is_built for one in result.members_of(wall.name)) and wall.name != "floor":
            waiting = [one.name for one in result.holes if one.wall == wall.name and one.is_cut is False]
            if waiting or hung:
                says = f"the members of the {wall.name} stand as ordered, not as taped, and {names} goes by them"
                yield Finding(
                    code, "frame", "advice", says, source=PRACTICE, lever="measured",
                    act=f"Tape the members of the {wall.name} before the saw starts", minutes=MINUTES_TO_TAPE,
                )  # fmt: skip


def _beside(fault: TapeFault, code: str, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a stud or an edge beside its plan; a fix where something decided comes out otherwise."""
    apart = abs(fault.value - fault.against)
    stands, beside = _length(fault.value, shown_in), show(apart, "m", shown_in, cuts=True)
    says = f"{fault.name} stands at {stands}, {beside} from where it was ordered; everything here goes by the tape"
    act, lever = f"Look again at what was marked out beside {fault.name}", fault.of
    if fault.other.startswith("openings["):
        says = f"{fault.name} was taped at {stands}, {beside} from where the file has it; the file counts until adopted"
        act, lever = f"Write as_built: with the taped place at {_name(fault.other)}", f"{fault.other}.as_built"
    elif fault.moves:
        moved = ", ".join(fault.moves)
        says += f", and {moved} {'comes' if len(fault.moves) == 1 else 'come'} out otherwise than planned"
        act = f"Look again at {moved}"
    return Finding(
        code, fault.of, "fix" if fault.moves else "advice", says, apart, fault.allowed, fault.allowed - apart, "m",
        PRACTICE, lever, act=act, minutes=MINUTES_TO_LOOK, uses=USES if fault.moves else (),
    )  # fmt: skip


def _kind_of(result: Result, name: str, wall: str) -> str:
    return next((one.kind for one in result.members_of(wall) if one.name == name), "member")


def _asks(code: str, where: str, says: str, act: str, lever: str, uses: tuple[Use, ...] = ()) -> Finding:
    """Return a question that could change what is cut or screwed, and stops nobody."""
    return Finding(
        code, where, "unknown", says, source=PRACTICE, lever=lever, act=act, minutes=MINUTES_TO_LOOK, could_stop=False,
        uses=uses, because=(where,),
    )  # fmt: skip


def _length(value: float, shown_in: HeaderUnits) -> str:
    return show(value, "m", shown_in, cuts=True)


def _name(path: str) -> str:
    return path.partition("[")[2].removesuffix("]") or path


def _way_out(hole: Hole, shown_in: HeaderUnits) -> str:
    """Return where an opening would cut nothing, or that there is no such place, and what a header must carry."""
    places = [one for one in (hole.lower_place, hole.higher_place) if one is not None]
    header = hole.header
    if not places:
        between = f" between {header.from_member} and {header.to_member}" if header is not None else ""
        return f"no place in any bay: a framed opening with a header{between}, from the builder"
    ways = " or ".join(
        f"at {_length(one.low, shown_in)} ({_by(one, shown_in)}, between {one.between[0]} and {one.between[1]})"
        for one in places
    )
    return f"it would cut none {ways}"


def _by(shift: Shift, shown_in: HeaderUnits) -> str:
    way = "forward" if shift.by < 0.0 else "rearward"
    return f"{_length(abs(shift.by), shown_in)} {way}"


def _slide(hole: Hole, shown_in: HeaderUnits) -> str:
    places = [one for one in (hole.lower_place, hole.higher_place) if one is not None]
    if not places:
        return f"Have {hole.name} framed with a header by the builder"
    nearest = min(places, key=lambda one: abs(one.by))
    return f"Slide {hole.name} {_by(nearest, shown_in)}"


def _nearest(misses: list[tuple[Point, float]], shown_in: HeaderUnits) -> str:
    return ", ".join(
        f"{point.nearest} is {_length(abs(point.off), shown_in)} {'ahead of' if point.off > 0.0 else 'behind'} "
        f"{_length(point.at, shown_in)}"
        for point, _ in misses
        if point.nearest
    )


def _moved(one: Fastening, misses: list[tuple[Point, float]], shown_in: HeaderUnits) -> str:
    ways = ", ".join(
        f"{_length(point.at, shown_in)} to {_length(moved, shown_in)}" for point, moved in misses if moved != point.at
    )
    left = sum(moved == point.at for point, moved in misses)
    if not ways:
        return f"Put a backing strip behind {one.name}"
    rest = f", and a backing strip behind the other{'s' if left > 1 else ''}" if left else ""
    return f"Move the {one.what} of {one.name} from {ways}{rest}"


def _as_a_whole(one: Fastening, shown_in: HeaderUnits) -> str:
    if not one.slides:
        return ""
    best = max(one.slides, key=lambda slid: (slid.catches, -abs(slid.by)))
    way = "forward" if best.by < 0.0 else "rearward"
    return f"; slid {_length(abs(best.by), shown_in)} {way} as a whole, {best.catches} of {len(one.points)} catch"


def _of_a_tape(fault: TapeFault, shown_in: HeaderUnits) -> str:
    value, against = _length(fault.value, shown_in), _length(fault.against, shown_in)
    if fault.what == "contradicts":
        return f"{fault.name} was read as {value} and as {against} ({_name(fault.other)}); the newest counts"
    if fault.what == "outside":
        return f"{fault.name} was read as {value}, and its wall ends at {against}"
    if fault.what == "order":
        return f"{fault.name}: the second was read at {value} and the first at {against}; they are in the wrong order"
    return f"{fault.name} stand in one place: {against} and {value}"


RULES: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    opening_cuts_member,
    opening_outside_wall,
    opening_overlaps,
    unit_depth,
    seal_unknown,
    fastener_misses,
    fastener_unplaced,
    screw_length,
    tape_disagrees,
    built_beside_plan,
    roof_lower_than_rise,
    bay_without_width,
    members_unknown,
)


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what the rules of the frame have to say of one slot."""
    return tuple(finding for rule in RULES for finding in rule(result, shown_in))
