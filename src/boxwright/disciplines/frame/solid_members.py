"""The members of the frame as solids: tubes hollow with their wall, bows as round as the roof, cut at openings."""

from __future__ import annotations

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.result import Member, Tube, Wall
from boxwright.disciplines.frame.solid_plane import Plane, depth_of, is_depth_written
from boxwright.disciplines.frame.sourced import density_of
from boxwright.drawing.mark import Point
from boxwright.drawing.solid import Prism, Solid, oblong
from boxwright.units import Band

NO_SIZE = "nobody wrote how deep the members of this wall are; drawn as is usual"
NO_GAUGE = "nobody wrote the wall of the tube; drawn full"
NO_SHAPE = "a section of this shape is drawn full"
BEYOND = 1e-3
"""How far (m) a hollow is drawn past the end of its bar, so that the end is open."""
HOLLOW = ("tube", "channel", "angle", "zed")
Outline = tuple[Point, ...]
Section = tuple[tuple[Outline, ...], tuple[Outline, ...]]
"""Outlines that together are a section across and out, and the holes in them."""


def member_solids(planes: dict[str, Plane], members: tuple[Member, ...], deck: float) -> tuple[Solid, ...]:
    """Return every member that is there and whose best place is one to go by. ``deck`` is how thick the deck is."""
    found = []
    for member in members:
        plane = planes.get(member.wall)
        if plane is None or member.is_removed or not member.is_held or not member.pieces:
            continue
        found.append(_member(plane, member, members, deck))
    return tuple(found)


def _member(plane: Plane, member: Member, members: tuple[Member, ...], deck: float) -> Solid:
    wall = plane.wall
    deep = member.depth.best if member.depth is not None and member.depth.known else depth_of(members, wall.name)
    out = deck if wall.name == "floor" else 0.0
    section = section_of(wall.tube, member.face.best, deep)
    over = max(depth_of(members, side) for side in ("left", "right"))
    pieces: list[Prism] = []
    cut: list[Prism] = []
    for half in (-0.5, 0.5) if member.is_doubled else (0.0,):
        at = member.at.best + half * member.face.best
        if member.kind == "bow":
            solid, hollow = _bow(plane, at, section, member, over)
            pieces, cut = pieces + solid, cut + hollow
            continue
        draw = plane.rail if member.runs == "along" else plane.post
        outlines, holes = section
        hole = _moved(holes[0], at, out) if holes else ()
        highest = plane.top(at) if member.runs == "up" else member.high
        for low, high in member.pieces:
            if min(high, highest) > low:
                pieces += [draw(_moved(one, at, out), low, min(high, highest), hole) for one in outlines]
    return Solid(
        of=member.of,
        name=member.name,
        stuff="metal",
        pieces=tuple(pieces),
        cut=tuple(cut),
        density=_density(wall.tube),
        taken=_taken(wall, members, member),
    )


def section_of(tube: Tube, face: float, deep: float) -> Section:
    """Return the section of a member about the middle of its face: across, and outward from the stud face."""
    half, thick = face / 2.0, tube.gauge.best if tube.gauge is not None and tube.gauge.known else 0.0
    whole = oblong((-half, 0.0), (half, deep))
    if tube.shape not in HOLLOW or not 0.0 < 2.0 * thick < min(face, deep):
        return (whole,), ()
    if tube.shape == "tube":
        return (whole,), (oblong((-half + thick, thick), (half - thick, deep - thick)),)
    if tube.shape == "channel":
        inside = ((half, thick), (-half + thick, thick), (-half + thick, deep - thick), (half, deep - thick))
        return (((-half, 0.0), (half, 0.0), *inside, (half, deep), (-half, deep)),), ()
    if tube.shape == "angle":
        leg = ((half, 0.0), (half, thick), (-half + thick, thick), (-half + thick, deep))
        return (((-half, 0.0), *leg, (-half, deep)),), ()
    web = thick / 2.0
    lower = ((-web, 0.0), (face - web, 0.0), (face - web, thick), (web, thick))
    upper = ((web, deep), (web - face, deep), (web - face, deep - thick), (-web, deep - thick))
    return ((*lower, *upper),), ()


def _moved(outline: Outline, across: float, out: float) -> Outline:
    return tuple((one + across, other + out) for one, other in outline)


def _bow(plane: Plane, at: float, section: Section, bow: Member, over: float) -> tuple[list[Prism], list[Prism]]:
    """Return a bow over the room and over the studs on both sides, as round as the roof, and what is hollow of it.

    ``over`` is how deep the studs are that it lies on.
    """
    outlines, holes = section
    solid: list[Prism] = []
    hollow: list[Prism] = []
    for low, high in bow.pieces:
        low, high = (_onto_wall(end, plane.half, over) for end in (low, high))
        if plane.wall.roof.shape == "flat":
            hole = _moved(holes[0], at, 0.0) if holes else ()
            solid += [plane.post(_moved(one, at, 0.0), low, high, hole) for one in outlines]
            continue
        solid.append(_round(plane, at, outlines[0], low, high))
        hollow += [_round(plane, at, one, low - BEYOND, high + BEYOND) for one in holes]
    return solid, hollow


def _onto_wall(end: float, half: float, over: float) -> float:
    """Return the end of a bow, drawn on over the studs where it reaches the stud face."""
    if abs(abs(end) - half) > SMALL:
        return end
    return end + over if end > 0.0 else end - over


def _round(plane: Plane, at: float, section: Outline, low: float, high: float) -> Prism:
    """Return a section, oblong about ``at``, drawn along the round of the roof from one side to the other."""
    along = [at + one for one, _ in section]
    out = [one for _, one in section]
    return plane.arch((min(along), max(along)), (low, high), min(out), max(out))


def _density(tube: Tube) -> tuple[float, float, float] | None:
    """Return the density of a section whose shape and sizes are written, kg/m3: best, low and high."""
    found: Band | None = density_of(tube.material) if tube.area is not None else None
    return (found.best, found.low, found.high) if found is not None else None


def _taken(wall: Wall, members: tuple[Member, ...], member: Member) -> str:
    if not is_depth_written((member, *members), wall.name):
        return NO_SIZE
    if wall.tube.shape in HOLLOW:
        return "" if wall.tube.gauge is not None and wall.tube.gauge.known else NO_GAUGE
    return "" if wall.tube.shape == "solid" else NO_SHAPE if wall.tube.written else NO_GAUGE
