"""Rules of fasteners: what each catches, where it would, how long a screw must be."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.frame.result import Result
from boxwright.disciplines.frame.sourced import LIMITS
from boxwright.disciplines.frame.telling import (
    GEOMETRY,
    PRACTICE,
    as_a_whole,
    asking,
    length,
    moving,
    name_of,
    nearest_metal,
    of_unknown_length,
    plane_of,
    screw_ends,
    several,
    taped,
)
from boxwright.finding import USES, Finding
from boxwright.units import HeaderUnits, show, show_band


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
        if one.asks == "into" or not (result.members_of(one.wall) or any(point.catches for point in one.points)):
            continue  # what it bites into, or the wall's members, nobody knows: that is asked once
        misses = [(point, moved) for point, moved in zip(one.points, one.moved, strict=True) if not point.catches]
        # A leaf that tears out is no matter of sleeping alone: whoever only works at a hinged bench is told as well.
        held = {member.name for member in result.members_of(one.wall) if member.is_held}
        if any(point.is_certain or point.nearest in held for point, _ in misses):
            at = " and ".join(taped(point.at, one.wall, result, shown_in) for point, _ in misses)
            subject = "the hinge" if one.what == "hinge" else "the screws"
            says = f"{subject} of {one.name} miss{'es' if one.what == 'hinge' else ''} the metal of the "
            says += f"{plane_of(one.wall)} at {at}"
            act = f"{moving(one, misses, result, shown_in)}{as_a_whole(one, shown_in)}"
            beside = nearest_metal(one, misses, result, shown_in)
            says += f": {beside}" if beside else ", and no other is there at that height"
            worst = min(point.room for point, _ in misses) if beside else None
            yield Finding(
                code, one.of, "fix", says, worst, 0.0, worst, "m",
                "fastener-practice", f"{one.of}.{one.what}.at", act=act, uses=USES,
            )  # fmt: skip
            continue
        doubtful = [point for point in one.points if not point.is_certain]
        if doubtful:
            names = ", ".join(dict.fromkeys(point.catches or point.nearest for point in doubtful))
            says = f"whether {one.name} catches {names} hangs on where it really stands; nobody taped it close enough"
            act = f"Find the edges of {names} with a magnet"
            yield asking(code, one.of, says, act, f"{one.of}.{one.what}.at", USES)


def fastener_blocked(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a wheel box or a housing stands before the place of a fastener.

    Asks: does a hand reach the wall there from inside
    Limit: no place of a fastener behind what takes room inside
    Source: own-arithmetic
    Lever: move the part above it, or beside it
    Methods: none
    """
    code = "frame/fastener-blocked"
    for one in result.fastenings:
        if one.blocked:
            places = several(dict.fromkeys(taped(at, one.wall, result, shown_in) for at, _ in one.blocked))
            names = several(dict.fromkeys(name for _, name in one.blocked))
            says = f"the {one.what} of {one.name} at {places} on the {plane_of(one.wall)} "
            says += f"{'lies' if one.what == 'hinge' else 'lie'} behind {names}"
            yield Finding(
                code, one.of, "fix", says, source=GEOMETRY, lever=f"{one.of}.z",
                act=f"Move {one.name} clear of {names}, up or along", uses=USES,
            )  # fmt: skip
    for of in result.unplaced:
        if of.startswith("frame.intrusions") and any(one.points for one in result.fastenings):
            says = f"nobody can say where {name_of(of)} stands, so nobody can say which fastener it stands before"
            yield asking(code, of, says, f"Write wall, x, length, height and depth of {name_of(of)}", f"{of}.x")


def fastener_unplaced(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when nobody wrote where the screws of a part go, or its backing is too short for them.

    Asks: are the places of the fasteners written
    Limit: a place for each, or a backing behind the whole part
    Source: builder-practice
    Lever: screws: {at: [..]}
    Methods: none
    """
    code = "frame/fastener-unplaced"
    for one in result.fastenings:
        if not one.asks:
            continue
        says = f"nobody wrote where the {one.what} of {one.name} go on the {plane_of(one.wall)}"
        if one.asks == "into":
            says = f"nobody can say what the {one.what} of {one.name} bite into on the {plane_of(one.wall)}"
        if one.asks == "backing too short":
            says = f"{one.backing} does not reach behind all of {one.name}, and no places of its screws are written"
        act = f"Write {one.what}: {{at: [..]}} of {one.name}, the places along the trailer"
        if one.asks == "into":
            act = f"Write screws: {{into: ..}} of {one.name}: studs, bows, or the name of a backing on that wall"
        yield Finding(code, one.of, "advice", says, source=PRACTICE, lever=f"{one.of}.{one.what}.at", act=act)
    for path in result.unplaced:
        if path.endswith((".hinge", ".screws")):
            of, _, what = path.rpartition(".")
            says = f"nobody can say on which wall the {what} of {name_of(of)} are"
            act = f"Write wall: of {name_of(of)}, or edge: of its hinge: left, right, front or rear"
            yield Finding(code, of, "advice", says, source=PRACTICE, lever=f"{of}.wall", act=act)


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
        if reach is None or reach.verdict == "fits":
            continue
        if reach.verdict == "unknown":
            yield from of_unknown_length(one, reach, shown_in)
            continue
        least, most = screw_ends(reach, shown_in)
        if reach.verdict == "no length suits":
            says = f"no screw suits {one.name}: it must be {least} long to hold and {most} at most to stay off the skin"
        else:
            now = show_band(reach.written, "m", shown_in, cuts=True) if reach.written is not None else "unknown"
            if now in (least, most) and reach.written is not None:  # what is told is rounded, what is judged is not
                now = show(reach.written.best, "m", shown_in)
            says = f"the screws of {one.name} are {now} long, {reach.verdict}: {least} at least, {most} at most"
        limit = reach.least if reach.verdict == "too short" else reach.most
        number = reach.written.best if reach.written is not None else reach.least.best
        yield Finding(
            code, one.of, "fix", says, number, limit.best, -abs(number - limit.best), "m", "fastener-practice",
            f"{one.of}.screws.length", act=f"Screws of {least} to {most} for {one.name}", uses=USES,
            besides=(("To hold, at least", least), ("To stay off the skin, at most", most)),
        )  # fmt: skip


def fastener_near_wire(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a wire or a pipe runs where a screw goes in, by its written route and the doubt of it.

    Asks: does every fastener keep clear of what runs in its wall
    Limit: 1 in from the middle of a wire or a pipe
    Source: builder-practice
    Lever: look behind, move the wire or the screw
    Methods: none
    """
    code = "frame/fastener-near-wire"
    for one in result.fastenings:
        mine = [found for found in result.crossings if (found.of, found.what) == (one.of, one.what)]
        if not mine:
            continue
        near = [found for found in mine if found.at is not None and found.away.best <= LIMITS["run_clear"]]
        near = [found for found in near if found.away.known]
        subject = f"the {one.what} of {one.name}"
        names = several(dict.fromkeys(found.run for found in near or mine))
        plane, runs = plane_of(one.wall), f"{names} {'run' if ' and ' in names else 'runs'}"
        act = f"Look behind the {plane} where {runs} before a drill"
        if near:
            closest = min(near, key=lambda found: found.away.best)
            places = several(
                dict.fromkeys(taped(found.at, found.wall, result, shown_in) for found in near if found.at is not None)
            )
            says = f"{subject} {'goes' if one.what == 'hinge' else 'go'} in at {places} on the {plane} within "
            says += f"{length(LIMITS['run_clear'], shown_in)} of where {runs}"
            yield Finding(
                code, one.of, "fix", says, closest.away.best, LIMITS["run_clear"],
                closest.away.best - LIMITS["run_clear"], "m", PRACTICE, closest.run_of, act=act, uses=USES,
            )  # fmt: skip
            continue
        meets = "meets" if one.what == "hinge" else "meet"
        says = f"whether {subject} {meets} {names} in the {plane} hangs on "
        is_routed = any(found.away.known for found in mine)
        says += "where it really runs" if is_routed else "how high or how far along it runs, which no route says"
        yield asking(code, one.of, says, act, mine[0].run_of, ("leave", "work"))
    held = several(dict.fromkeys(one.name for one in result.fastenings))
    if held and result.unrouted:
        names = several(result.unrouted)
        says = f"no route is written of {names}, so nobody can say whether a screw of {held} meets one"
        act = f"Look where {names} run, and write route: such as left z30 > x52"
        yield asking(code, "wires", says, act, "wires", ("leave", "work"))
