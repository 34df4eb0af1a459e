"""How the rules of the frame tell it: places, ways out and acts in words, in the user's units."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import combinations
from math import ceil, floor

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.layering import buildup_at
from boxwright.disciplines.frame.result import Fastening, Hole, Point, Result, ScrewReach, TapeFault, Wall
from boxwright.finding import USES, Finding, Use
from boxwright.units import Band, HeaderUnits, show, shown_unit

GEOMETRY = "own-arithmetic"
PRACTICE = "builder-practice"
MOST_NAMES = 3
"""Names that a sentence lists before it counts the rest."""
MINUTES_TO_TAPE = 10
MINUTES_TO_LOOK = 5
INCH, MILLIMETRE, CUT = 0.0254, 0.001, 16
"""Metres; lengths are cut and sold to a sixteenth of an inch or to a millimetre."""
ROUNDING = 1e-6
"""Steps by which a length may miss a whole one and still be it."""


def kind_of(result: Result, name: str, wall: str) -> str:
    """Return what kind of member a name is on a wall: stud, bow, cross-member."""
    return next((one.kind for one in result.members_of(wall) if one.name == name), "member")


def asking(code: str, where: str, says: str, act: str, lever: str, uses: tuple[Use, ...] = ()) -> Finding:
    """Return a question that could change what is cut or screwed, and stops nobody."""
    return Finding(
        code, where, "unknown", says, source=PRACTICE, lever=lever, act=act, minutes=MINUTES_TO_LOOK, could_stop=False,
        could_limit=False, uses=uses, because=(where,),
    )  # fmt: skip


def length(value: float, shown_in: HeaderUnits) -> str:
    """Return a length as it is cut or taped; what is less than a cut can show is never shown as nothing."""
    text = show(value, "m", shown_in, cuts=True)
    return show(value, "m", shown_in) if text.startswith("0 ") and abs(value) > ROUNDING else text


def stepped(value: float, way: float, shown_in: HeaderUnits) -> str:
    """Return a length rounded to a whole cut, up where ``way`` is above nothing, else down: never short of the mark."""
    step = INCH / CUT if shown_unit("m", shown_in)[0] in ("in", "ft") else MILLIMETRE
    steps = ceil(value / step - ROUNDING) if way > 0.0 else floor(value / step + ROUNDING)
    return show(steps * step, "m", shown_in, cuts=True)


def apart(one: float, other: float, shown_in: HeaderUnits) -> tuple[str, str]:
    """Return two lengths that decide something, with as many digits as it takes to see which is the greater."""
    first, second = length(one, shown_in), length(other, shown_in)
    if first == second and abs(one - other) > ROUNDING:
        first, second = show(one, "m", shown_in), show(other, "m", shown_in)
    decimals = 2
    while first == second and abs(one - other) > ROUNDING:
        unit, scale = shown_unit("m", shown_in)
        decimals += 1
        first, second = (f"{scale.from_si(value):.{decimals}f} {unit}" for value in (one, other))
    return first, second


def several(names: Iterable[str]) -> str:
    """Return names as a sentence lists them; of many the first ones, and how many more."""
    listed = list(names)
    if len(listed) > MOST_NAMES:
        return f"{', '.join(listed[:MOST_NAMES])} and {len(listed) - MOST_NAMES} more"
    return " and ".join(part for part in (", ".join(listed[:-1]), listed[-1] if listed else "") if part)


def name_of(path: str) -> str:
    """Return the name in a rig path such as ``openings[window]``."""
    return path.partition("[")[2].removesuffix("]") or path


def way_out(hole: Hole, result: Result, shown_in: HeaderUnits) -> str:
    """Return where an opening would cut nothing, or that there is no such place, and what a header must carry."""
    places = [one for one in (hole.lower_place, hole.higher_place) if one is not None]
    header = hole.header
    if not places and any(one.name.startswith("main rail") for one in hole.members_cut):
        return "a main rail stays whole: move it across the trailer"
    between = f" between {header.from_member} and {header.to_member}" if header is not None else ""
    if hole.is_cut:
        return f"it is cut already: it needs a header{between}"
    if _is_longer(hole, result):
        return "it is longer than its wall"
    if not places and not hole.needs_frame:
        return "a place may be found beside it once the members are taped"
    if not places:
        return f"no place in any bay: a framed opening with a header{between}, from the builder"
    ways = " or ".join(
        f"at {stepped(_as_taped(one.low, hole.wall, result), one.by, shown_in)} "
        f"({shifted_by(one.by, hole.wall, shown_in)}, between {one.between[0]} and {one.between[1]})"
        for one in places
    )
    return f"it would cut none {ways}"


def built_at(result: Result, hole: Hole) -> Band | None:
    """Return how thick the finished wall is at an opening; None where it is not known."""
    middle = (hole.low + hole.high) / 2.0
    bay = next((one for one in result.bays if one.wall == hole.wall and one.low.best <= middle <= one.high.best), None)
    found = buildup_at(result.buildups, hole.wall, bay.name if bay is not None else "", False)
    return found.finished if found is not None and found.finished.known and hole.wall != "floor" else None


def plane_of(wall: str) -> str:
    """Return a wall as a sentence names it; roof and floor are none."""
    return wall if wall in ("roof", "floor") else f"{wall} wall"


def shifted_by(by: float, wall: str, shown_in: HeaderUnits) -> str:
    """Return how far at least and which way a thing moves along its wall; a nose is counted from its body corner."""
    ways = ("forward", "rearward")
    if wall in ("front", "rear"):
        ways = ("to the left", "to the right")
    elif wall.startswith("nose"):
        ways = ("rearward", "forward")
    return f"{stepped(abs(by), 1.0, shown_in)} {ways[0] if by < 0.0 else ways[1]}"


def taped(at: float, wall: str, result: Result, shown_in: HeaderUnits) -> str:
    """Return a place along a wall as a tape reads it: across front and rear from their left stud face."""
    return length(_as_taped(at, wall, result), shown_in)


def _as_taped(at: float, wall: str, result: Result) -> float:
    plane = result.wall(wall) if wall in ("front", "rear") else None
    return at - plane.low if plane is not None else at


def taped_up(up: float, wall: str, result: Result, shown_in: HeaderUnits) -> str:
    """Return a height on a wall, and across roof and floor a place from their left stud face."""
    plane = result.wall(wall) if wall in ("roof", "floor") else None
    return length(up - plane.foot if plane is not None else up, shown_in)


def _is_longer(hole: Hole, result: Result) -> bool:
    wall = result.wall(hole.wall)
    return wall is not None and hole.high - hole.low > wall.high - wall.low


def sliding(hole: Hole, result: Result, shown_in: HeaderUnits) -> str:
    """Return what to do about a cut member: slide the opening, or have it framed."""
    places = [one for one in (hole.lower_place, hole.higher_place) if one is not None]
    if not places and any(one.name.startswith("main rail") for one in hole.members_cut):
        return f"Move {hole.name} across the trailer, clear of the main rail"
    if hole.is_cut:
        return f"Have {hole.name} framed with a header before more hangs on that wall"
    if _is_longer(hole, result):
        return f"Look at the width of {hole.name}"
    if not places and not hole.needs_frame:
        return f"Tape the members beside {hole.name} before it is cut"
    if not places:
        return f"Have {hole.name} framed with a header by the builder"
    nearest = min(places, key=lambda one: abs(one.by))
    return f"Slide {hole.name} {shifted_by(nearest.by, hole.wall, shown_in)}"


def nearest_metal(one: Fastening, misses: list[tuple[Point, float]], result: Result, shown_in: HeaderUnits) -> str:
    """Return where the nearest metal is from each fastener that misses."""
    before, behind = ("left of", "right of") if one.wall in ("front", "rear") else ("ahead of", "behind")
    return ", ".join(
        f"{point.nearest} is {length(abs(point.off), shown_in)} {before if point.off > 0.0 else behind} "
        f"{taped(point.at, one.wall, result, shown_in)}"
        for point, _ in misses
        if point.nearest
    )


def moving(one: Fastening, misses: list[tuple[Point, float]], result: Result, shown_in: HeaderUnits) -> str:
    """Return where each fastener that misses would catch, and what to do about the rest."""
    ways = ", ".join(
        f"{taped(point.at, one.wall, result, shown_in)} to {taped(moved, one.wall, result, shown_in)}"
        for point, moved in misses
        if moved != point.at
    )
    left = sum(moved == point.at for point, moved in misses)
    strip = f"screw into {one.backing} behind it" if one.backing else f"put a backing strip behind {one.name}"
    if not ways:
        return f"{strip[0].upper()}{strip[1:]}"
    rest = ""
    if left:
        other = "the others" if left > 1 else "the other"
        rest = f", and {other} into {one.backing}" if one.backing else f", and a backing strip behind {other}"
    return f"Move the {one.what} of {one.name} from {ways}{rest}"


def as_a_whole(one: Fastening, shown_in: HeaderUnits) -> str:
    """Return what sliding the whole pattern would catch, where that is more than now."""
    if not one.slides:
        return ""
    best = max(one.slides, key=lambda slid: (slid.catches, -abs(slid.by)))
    by = shifted_by(best.by, one.wall, shown_in)
    return f"; slid {by} as a whole, {best.catches} of {len(one.points)} catch"


def of_a_tape(fault: TapeFault, result: Result, shown_in: HeaderUnits) -> str:
    """Return what two readings, or a reading and the shell, contradict each other in."""
    value, against = (taped(one, fault.wall, result, shown_in) for one in (fault.value, fault.against))
    if fault.what == "contradicts":
        value, against = length(fault.value, shown_in), length(fault.against, shown_in)  # as the tapes read
        says = f"{fault.name} was read as {value} and as {against} ({name_of(fault.other)})"
        return f"{says}; until a third reading bears one out, it may stand at either"
    if fault.what == "outside":
        return f"{fault.name} was read as {value}, and its wall ends at {against}"
    if fault.what == "order":
        return f"{fault.name} are in the wrong order: the first stands at {against}, the second at {value}"
    return f"{fault.name} stand in one place: {against} and {value}"


def beside_plan(fault: TapeFault, code: str, result: Result, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a stud or an edge beside its plan; a fix where something decided comes out otherwise."""
    apart = abs(fault.value - fault.against)
    stands, beside = taped(fault.value, fault.wall, result, shown_in), show(apart, "m", shown_in, cuts=True)
    says = f"{fault.name} stands at {stands}, {beside} from where it was ordered; everything here goes by the tape"
    act, lever = f"Look again at what was marked out beside {fault.name}", fault.of
    if fault.other.startswith("openings["):
        stands = length(fault.value, shown_in)  # as the tape read
        says = f"{fault.name} was taped at {stands}, {beside} from where the file has it; the file counts until adopted"
        act, lever = f"Write as_built: with the taped place at {name_of(fault.other)}", f"{fault.other}.as_built"
    elif fault.moves:
        moved = ", ".join(fault.moves)
        says += f", and {moved} {'comes' if len(fault.moves) == 1 else 'come'} out otherwise than planned"
        act = f"Look again at {moved}"
    return Finding(
        code, fault.of, "fix" if fault.moves else "advice", says, apart, fault.allowed, fault.allowed - apart, "m",
        PRACTICE, lever, act=act, minutes=MINUTES_TO_LOOK, uses=USES if fault.moves else (),
    )  # fmt: skip


def screw_ends(reach: ScrewReach, shown_in: HeaderUnits) -> tuple[str, str]:
    """Return the least and the most length of a screw, each rounded to its safe side as screws are sold."""
    least, most = reach.least, reach.most
    up = stepped(least.best, 1.0, shown_in) if least.known else "unknown"
    down = stepped(most.best, -1.0, shown_in) if most.known else "unknown"
    return up, down


def of_unknown_length(one: Fastening, reach: ScrewReach, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what screws suit a part whose length nobody wrote, or what is missing to say it."""
    code, lever = "frame/screw-length", f"{one.of}.screws.length"
    least, most = screw_ends(reach, shown_in)
    suits = f"from {least} to {most} suits" if reach.least.known and reach.most.known else ""
    ends = (("To hold, at least", least), ("To stay off the skin, at most", most)) if suits else ()
    if reach.written is not None and not (reach.written.known and suits):
        says = f"nobody wrote how long the screws of {one.name} are"
        if reach.written.known:
            says = f"nobody can say whether the screws of {one.name} are of the right length"
        says += f"; {suits}" if suits else "; the studs' section, the skin or a layer's thickness is not written"
        asked = asking(code, one.of, says, f"Measure the screws of {one.name} and write their length", lever)
        yield replace(asked, besides=ends)
    elif suits and one.there != "yes":
        says = f"no length is written of the screws of {one.name}; {suits}"
        act = f"Buy screws of {least} to {most} for {one.name}"
        yield Finding(code, one.of, "advice", says, source="fastener-practice", lever=lever, act=act, besides=ends)


def flange_beyond(hole: Hole, wall: Wall, code: str, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield where the flange of an opening that is itself inside its wall reaches beyond the flat of it."""
    if not hole.is_placed or hole.is_by_builder or hole.curved > 0.0:
        return
    flange = hole.flange or 0.0
    ends = (wall.low - hole.low, hole.high - wall.high, wall.foot - hole.bottom, hole.top - wall.top)
    beyond = max(ends) + flange
    if flange > 0.0 and beyond > SMALL:
        by = stepped(beyond, 1.0, shown_in)
        says = f"the flange of {hole.name} covers {length(flange, shown_in)} around it and reaches {by} beyond its wall"
        act = f"Move {hole.name} inwards by {by}, or look whether the skin is flat there"
        yield Finding(
            code,
            hole.of,
            "fix",
            says,
            beyond,
            0.0,
            -beyond,
            "m",
            GEOMETRY,
            f"{hole.of}.flange",
            act=act,
            uses=USES,
        )


def flanges_meet(result: Result, code: str, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield the pairs of openings that are apart themselves, and whose flanges lie over each other or over a hole."""
    placed = [one for one in result.holes if one.is_placed]
    for one, other in combinations(sorted(placed, key=lambda hole: bool(hole.is_cut)), 2):
        flanges = (one.flange or 0.0) + (other.flange or 0.0)
        if one.wall != other.wall or other.of in one.overlaps or one.of in other.overlaps or flanges <= 0.0:
            continue
        apart_by = max(other.low - one.high, one.low - other.high, other.bottom - one.top, one.bottom - other.top)
        over = flanges - apart_by
        if over > SMALL:
            gap, by = length(max(apart_by, 0.0), shown_in), stepped(over, 1.0, shown_in)
            says = f"{one.name} and {other.name} are {gap} apart on the {plane_of(one.wall)}, and their flanges take "
            says += length(flanges, shown_in)
            yield Finding(
                code, one.of, "fix", says, apart_by, flanges, -over, "m", GEOMETRY, f"{one.of}.x",
                act=f"Move {one.name} away from {other.name} by {by}", uses=USES,
            )  # fmt: skip
