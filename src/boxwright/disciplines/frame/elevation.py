"""Elevations: a wall as one sees it from outside or from the room, with its studs, openings and faults."""

from __future__ import annotations

from dataclasses import replace
from math import asin, pi, sin

from boxwright.disciplines.frame.behind import behind_words, run_marks
from boxwright.disciplines.frame.drawn import THERE, UNSAID, Drawn, Eye, Marks, half_face, line_of
from boxwright.disciplines.frame.faults import Fault, fault_marks, fault_notes
from boxwright.disciplines.frame.result import Hole, Intrusion, Member, Wall
from boxwright.disciplines.frame.walls import top_at
from boxwright.drawing import Arc, Dimension, Grid, Leader, Line, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Fill, LineKind, Point

AHEAD = 0.4
"""How far before the wall the sign of the way forward stands (m)."""
CORNER = 0.2
"""How far into an end wall the words for its two sides stand (m)."""
NARROW = 0.9
"""In an end wall narrower than this (m), such as the tip of a nose, the words for its sides find no room: they stand
beside it."""
ACROSS = ("front", "rear", "nose-left", "nose-right")
STEPS = 24
SAME = 1e-4
"""Two places on a wall nearer than this (m) are one."""
CAUTION = "Look behind before you drill: only what is in this file is drawn."


def elevation(drawn: Drawn, wall: Wall, is_inside: bool, faults: tuple[Fault, ...]) -> Sheet:
    """Return the sheet of one wall from one side."""
    eye = Eye(wall, is_inside)
    side = "inside" if is_inside else "outside"
    title = f"{_named(wall)}, {side}"
    view = View(title, eye.looks, tuple(wall_marks(drawn, eye, faults)), eye.datum)
    grids = layers(drawn, wall) if is_inside else [_openings(drawn, wall)] if drawn.holes_of(wall.name) else []
    notes = [*_signs(drawn, eye), *_runs(drawn, eye), *fault_notes(faults, wall.name), CAUTION]
    name = f"{wall.name}-{side}"
    return Sheet(name, title, (view,), tuple(notes), tuple(grids))


def _named(wall: Wall) -> str:
    return f"{wall.name.replace('-', ' ').capitalize()} wall"


def wall_marks(drawn: Drawn, eye: Eye, faults: tuple[Fault, ...]) -> Marks:
    """Return everything that is drawn of a wall."""
    wall = eye.wall
    marks: Marks = [Shape(outline(drawn, eye), "visible", wall.of)]
    if not eye.is_inside:
        marks += _wheels(drawn, eye)
    for member in drawn.frame.members_of(wall.name):
        marks += member_marks(under_roof(drawn, member, wall), eye)
    for inside in drawn.frame.intrusions:
        marks += _intrusion(inside, eye)
    for backing in drawn.frame.backings:
        if backing.wall == wall.name:
            corners = rectangle(eye, backing.low, backing.high, backing.bottom, backing.top)
            line: LineKind = "phantom" if backing.there == "later" else "visible" if eye.is_inside else "hidden"
            marks.append(Shape(corners, line, backing.of, "backing" if eye.is_inside else "none"))
            middle = (backing.low + backing.high) / 2.0, (backing.bottom + backing.top) / 2.0
            if eye.is_inside:
                marks.append(Text(eye.at(*middle), backing.name, backing.of, "small"))
    for hole in drawn.holes_of(wall.name):
        marks += hole_marks(drawn, hole, eye)
    if eye.is_inside:
        marks += run_marks(drawn, eye, (wall.low, wall.high), (wall.foot, wall.top))
        marks += _fasteners(drawn, eye)
    return [*marks, *dimensions(drawn, eye), *_bearings(eye), *fault_marks(faults, eye)]


def rectangle(eye: Eye, low: float, high: float, bottom: float, top: float) -> tuple[Point, ...]:
    """Return the corners of an upright rectangle of a wall."""
    return eye.at(low, bottom), eye.at(high, bottom), eye.at(high, top), eye.at(low, top)


def outline(drawn: Drawn, eye: Eye) -> tuple[Point, ...]:
    """Return the outline of a wall: one that runs across the trailer ends above under the bows."""
    wall = eye.wall
    corners = [(wall.low, wall.foot), (wall.high, wall.foot), *_eaves(drawn, wall)]
    return tuple(eye.at(along, up) for along, up in corners)


def _eaves(drawn: Drawn, wall: Wall) -> list[Point]:
    """Return the upper edge of a wall, from its high to its low end: as high as the bows are over each point of it."""
    if wall.name not in ACROSS or drawn.frame.roof.shape == "flat":
        return [(wall.high, wall.top), (wall.low, wall.top)]
    half = _half_width(drawn)
    steps = {step / STEPS for step in range(STEPS + 1)}
    if drawn.frame.roof.shape == "rounded":
        first, last = wall.start[1], wall.end[1]
        radius = min(max(drawn.frame.roof.radius, 0.0), half)
        turns = [half - radius + radius * sin(pi / 2.0 * step / 8) for step in range(9)] if last != first else []
        rounded = {(sign * turn - first) / (last - first) for turn in turns for sign in (-1.0, 1.0)}
        steps = {0.0, 1.0, *(one for one in rounded if 0.0 < one < 1.0)}
    return [_under_bow(drawn, wall, wall.low + (wall.high - wall.low) * one) for one in sorted(steps, reverse=True)]


def _half_width(drawn: Drawn) -> float:
    """Return half of the width of the body: a nose has the bows of the body, not some of its own."""
    rear = drawn.frame.wall("rear")
    return (rear.high - rear.low) / 2.0 if rear is not None else 0.0


def _under_bow(drawn: Drawn, wall: Wall, along: float) -> Point:
    """Return the point of a wall's upper edge at a place along it."""
    share = (along - wall.low) / (wall.high - wall.low) if wall.high > wall.low else 0.0
    across = wall.start[1] + (wall.end[1] - wall.start[1]) * share
    return along, top_at(drawn.frame.roof, _half_width(drawn), across)


def under_roof(drawn: Drawn, member: Member, wall: Wall) -> Member:
    """Return a stud of a wall across the trailer no higher than the bow over it."""
    if wall.name not in ACROSS or drawn.frame.roof.shape == "flat" or member.runs != "up":
        return member
    _, top = _under_bow(drawn, wall, min(max(member.at.best, wall.low), wall.high))
    pieces = tuple((low, min(high, top)) for low, high in member.pieces if low < top)
    return replace(member, high=min(member.high, top), pieces=pieces)


def _wheels(drawn: Drawn, eye: Eye) -> Marks:
    """Return what one sees of the tyres above the deck, where their size is known."""
    box, marks = drawn.box, Marks()
    if eye.wall.name not in ("left", "right") or not (box.wheel_radius.known and box.deck_height.known):
        return marks
    radius = box.wheel_radius.best
    sunk = box.deck_height.best - radius
    if radius <= 0.0 or abs(sunk) >= radius:
        return marks
    start = asin(sunk / radius)
    for axle in box.axles:
        if axle.x.known:
            centre = eye.at(axle.x.best, -sunk)
            marks.append(Arc(centre, radius, start, pi - 2.0 * start, "phantom", "trailer.axles"))
    return marks


def member_marks(member: Member, eye: Eye, fill: Fill = "none") -> Marks:
    """Return a member as it stands, and where it was planned if that is another place."""
    half, at = half_face(member), member.at.best
    pieces = member.pieces if not member.is_removed else ((member.low, member.high),)
    marks: Marks = []
    for low, high in pieces:
        ends = (at - half, at + half, low, high) if member.runs == "up" else (low, high, at - half, at + half)
        marks.append(Shape(rectangle(eye, *ends), line_of(member), member.of, fill))
    if member.planned is not None and member.is_built and abs(member.planned - at) > SAME:
        along = (member.planned, member.planned), (member.low, member.high)
        (x1, x2), (y1, y2) = along if member.runs == "up" else (along[1], along[0])
        marks.append(Line(eye.at(x1, y1), eye.at(x2, y2), "phantom", member.of))
    return marks


def _intrusion(inside: Intrusion, eye: Eye) -> Marks:
    """Return a wheel box or a surround as it stands before its wall."""
    wall = eye.wall
    if wall.name in ("nose-left", "nose-right"):
        return []
    axis = 1 if wall.name in ("front", "rear") else 0
    across = 0 if axis else 1
    near = wall.start[across]
    if min(abs(inside.low[across] - near), abs(inside.high[across] - near)) > inside.high[across] - inside.low[across]:
        return []
    corners = rectangle(eye, inside.low[axis], inside.high[axis], inside.low[2], inside.high[2])
    middle = eye.at((inside.low[axis] + inside.high[axis]) / 2.0, (inside.low[2] + inside.high[2]) / 2.0)
    line: LineKind = "visible" if eye.is_inside else "hidden"
    return [Shape(corners, line, inside.of), Text(middle, inside.name, inside.of, "small")]


def hole_marks(drawn: Drawn, hole: Hole, eye: Eye, is_named: bool = True) -> Marks:
    """Return an opening with its name and rough size; wide where it is cut, dash and dots where it is planned."""
    line: LineKind = "cut" if hole.is_cut else "phantom"
    marks: Marks = [Shape(rectangle(eye, hole.low, hole.high, hole.bottom, hole.top), line, hole.of, "hole")]
    marks += _swing(hole, eye)
    if is_named:
        middle = eye.at((hole.low + hole.high) / 2.0, (hole.bottom + hole.top) / 2.0)
        marks.append(Text(middle, f"{hole.name} {rough(drawn, hole)}", hole.of))
    return marks


def rough(drawn: Drawn, hole: Hole) -> str:
    """Return the rough size of an opening, width first."""
    ruler = drawn.ruler
    return f"{ruler.mark(hole.high - hole.low)} x {ruler.mark(hole.top - hole.bottom)}"


def _swing(hole: Hole, eye: Eye) -> Marks:
    """Return the two thin lines that run from the far corners to the edge an opening is hinged on."""
    along, up = (hole.low + hole.high) / 2.0, (hole.bottom + hole.top) / 2.0
    low, high, bottom, top = hole.low, hole.high, hole.bottom, hole.top
    ways = {
        "front": ((low, up), (high, bottom), (high, top)),
        "rear": ((high, up), (low, bottom), (low, top)),
        "left": ((low, up), (high, bottom), (high, top)),
        "right": ((high, up), (low, bottom), (low, top)),
        "top": ((along, top), (low, bottom), (high, bottom)),
        "bottom": ((along, bottom), (low, top), (high, top)),
    }
    if hole.swing[0] not in ways:
        return []
    hinge, *corners = ways[hole.swing[0]]
    return [Line(eye.at(*hinge), eye.at(*corner), "dimension", hole.of) for corner in corners]


def _fasteners(drawn: Drawn, eye: Eye) -> Marks:
    """Return the screws and hinge leaves of the parts on a wall, with a word at those that catch nothing."""
    marks: Marks = []
    for one in drawn.frame.fastenings:
        if one.wall != eye.wall.name:
            continue
        for point in one.points:
            up = point.up if point.up is not None else (eye.wall.foot + eye.wall.top) / 2.0
            at = eye.at(point.at, up)
            marks.append(Symbol(at, "screw", one.of))
            if not point.catches:
                way = drawn.ruler.full(abs(point.off))
                marks.append(Leader(at, f"{one.name}: misses {point.nearest} by {way}", one.of))
    return marks


def dimensions(drawn: Drawn, eye: Eye) -> Marks:
    """Return the rows of a wall: studs as on a tape above, edges of openings so below, heights beside."""
    return [*stud_row(drawn, eye), *_edges(drawn, eye), *_heights(drawn, eye)]


def stud_row(drawn: Drawn, eye: Eye) -> Marks:
    """Return the running row of the studs' centres, each with its number."""
    ruler, wall, zero = drawn.ruler, eye.wall, eye.zero
    reached = wall.low
    marks: Marks = []
    for member in drawn.frame.members_of(wall.name):
        if member.runs != "up" or member.kind in ("jamb", "plate"):
            continue
        at = member.at.best
        more = " out" if member.is_removed else " double" if member.is_doubled else ""
        words = f"{short_name(member)} = {ruler.mark(at - zero)}{more}"
        start, end = eye.at(zero, wall.top), eye.at(at, wall.top)
        marks.append(Dimension(start, end, words, member.of, "above", 0, True))
        reached = max(reached, at)
    if wall.high - reached < SAME:
        return marks
    start, end = eye.at(zero, wall.top), eye.at(wall.high, wall.top)
    return [*marks, Dimension(start, end, f"end = {ruler.mark(wall.high - zero)}", wall.of, "above", 0, True)]


def short_name(member: Member) -> str:
    """Return what a member is called where there is little room."""
    if member.kind == "cross-member" and member.number is not None:
        return f"no. {member.number}"
    return "corner" if member.kind == "corner post" else member.name


def _edges(drawn: Drawn, eye: Eye) -> Marks:
    ruler, wall, zero = drawn.ruler, eye.wall, eye.zero
    marks: Marks = []
    for hole in drawn.holes_of(wall.name):
        for edge in (hole.low, hole.high):
            words = ruler.mark(edge - zero)
            marks.append(
                Dimension(eye.at(zero, wall.foot), eye.at(edge, hole.bottom), words, hole.of, "below", 0, True)
            )
    return marks


def _heights(drawn: Drawn, eye: Eye) -> Marks:
    ruler, wall = drawn.ruler, eye.wall
    marks: Marks = []
    ends = sorted((eye.at(wall.low, 0.0)[0], eye.at(wall.high, 0.0)[0]))
    for hole in drawn.holes_of(wall.name):
        middle = eye.at((hole.low + hole.high) / 2.0, 0.0)[0]
        for up in (hole.bottom, hole.top):
            if abs(up) > SAME:
                marks.append(Dimension((ends[1], 0.0), (middle, up), ruler.mark(up), hole.of, "right", 0, True))
    marks.append(
        Dimension((ends[0], wall.foot), (ends[0], wall.top), ruler.full(wall.top - wall.foot), wall.of, "left", 0)
    )
    return marks


def _bearings(eye: Eye) -> Marks:
    """Return the zero and the way forward; on the end walls, which side is which."""
    wall = eye.wall
    marks: Marks = [Symbol(eye.at(eye.zero, wall.foot), "datum", wall.of)]
    up = (wall.foot + wall.top) / 2.0
    ends = sorted((eye.at(wall.low, up)[0], eye.at(wall.high, up)[0]))
    if eye.front is not None:
        at = (ends[0] - AHEAD, up) if eye.front == "left" else (ends[1] + AHEAD, up)
        return [*marks, Symbol(at, "front", wall.of, eye.front)]
    return [*marks, *end_words(eye)]


def end_words(eye: Eye) -> list[Text]:
    """Return which side of an end wall is the trailer's left and which its right, as one looks at it."""
    wall = eye.wall
    is_narrow = wall.high - wall.low < NARROW
    inset, up = (-AHEAD / 4.0, (wall.foot + wall.top) / 2.0) if is_narrow else (CORNER, wall.foot + CORNER)
    ends = (eye.at(wall.low + inset, up), "LEFT"), (eye.at(wall.high - inset, up), "RIGHT")
    return [Text(at, word, wall.of, may_move=not is_narrow, is_turned=is_narrow) for at, word in ends]


def _signs(drawn: Drawn, eye: Eye) -> list[str]:
    """Return what the lines of the drawing mean, as far as they are used."""
    members = drawn.frame.members_of(eye.wall.name)
    notes = []
    if eye.front is not None:
        notes.append(
            f"Drawn as you see it: the front of the trailer is to your {eye.front}. "
            "The row above reads like a tape hooked at the scribed 0: middles of the studs."
        )
    signs = []
    if any(one.is_built for one in members):
        signs.append("solid: as taped")
    if any(not one.is_built and not one.is_removed for one in members):
        signs.append("dashed: as ordered, not taped yet")
    if any(one.is_removed or (one.is_built and one.planned is not None) for one in members):
        signs.append("dash and dots: where it was ordered, or is taken out")
    return [*notes, f"Studs {'; '.join(signs)}."] if signs else notes


def _runs(drawn: Drawn, eye: Eye) -> list[str]:
    """Return which wires and pipes run in a wall, where it is seen from the side they are reached from."""
    wall = eye.wall
    if not eye.is_inside or not any(one.wall == wall.name for one in drawn.frame.runs):
        return []
    said = behind_words(drawn, wall.name, (wall.low, wall.high), (wall.foot, wall.top))
    return [f"Chain lines are wires and pipes by their written routes: {said}."]


def _openings(drawn: Drawn, wall: Wall) -> Grid:
    """Return the openings of a wall with their neighbours and what they cut; where they are the drawing says."""
    rows = []
    holes = drawn.holes_of(wall.name)
    for one in holes:
        rows.append(
            (
                one.name,
                rough(drawn, one),
                beside(drawn, one),
                cuts(drawn, one),
                _swing_words(one),
                "cut" if one.is_cut else "not cut",
            )
        )
    columns = ("Opening", "Rough", "Beside", "Cuts", "Swings", "Sawn")
    return Grid("Openings", columns, tuple(rows), tuple(one.of for one in holes))


def beside(drawn: Drawn, hole: Hole) -> str:
    """Return the members next to an opening and what is clear between; of one its builder frames, its jambs."""
    if is_framed(drawn, hole):
        return "; ".join(_jambs(drawn, hole))
    ruler = drawn.ruler
    said = [f"{gap.to} {ruler.span(gap.clear)}" for gap in (hole.gap_low, hole.gap_high) if gap is not None]
    return "; ".join(said) or UNSAID


def is_framed(drawn: Drawn, hole: Hole) -> bool:
    """Return whether the trailer's builder frames an opening, so that what stands beside it are its jambs."""
    return any(one.of == hole.of for one in drawn.frame.members) and hole.header is not None


def _jambs(drawn: Drawn, hole: Hole) -> list[str]:
    """Return the two jambs of an opening with their middles: pieces of its own, or the studs that stand there."""
    wall, header = drawn.frame.wall(hole.wall), hole.header
    zero = Eye(wall, False).zero if wall is not None else 0.0
    said = []
    for name in (header.from_member, header.to_member) if header is not None else ():
        member = next((one for one in drawn.frame.members_of(hole.wall) if one.name == name), None)
        short = name.removeprefix(f"{hole.name} ") if member is not None and member.of == hole.of else f"{name} as jamb"
        said.append(f"{short}, middle {drawn.ruler.mark(member.at.best - zero)}" if member is not None else short)
    return said


def cuts(drawn: Drawn, hole: Hole) -> str:
    """Return the members an opening cuts; those within the doubt of their place only perhaps.

    Between its own jambs nothing is in doubt: a stud beyond them is not cut.
    """
    if not hole.is_placed:
        return UNSAID
    framed = is_framed(drawn, hole)
    mine = [one for one in hole.members_cut if one.overlap.best > SAME or not framed]
    return ", ".join(one.name if one.is_certain else f"perhaps {one.name}" for one in mine) or "none"


def _swing_words(hole: Hole) -> str:
    hinge, way = hole.swing
    return ", ".join([*([f"hinge {hinge}"] if hinge else []), *([f"opens {way}"] if way else [])])


def layers(drawn: Drawn, wall: Wall) -> list[Grid]:
    """Return the layers of a wall from the skin inwards, with what stands today, and of bays that differ."""
    ruler = drawn.ruler
    grids = []
    for one in drawn.frame.buildups:
        if one.wall != wall.name or not one.layers or (one.place == "member" and not one.bay):
            continue
        rows = tuple(
            (piece.name, piece.material, ruler.thickness(piece.thick), piece.where, THERE[piece.there])
            for piece in one.layers
        )
        total = ("all", "", ruler.thickness(one.finished), "", f"now {ruler.thickness(one.standing)}")
        skin = ("skin", "-", ruler.thickness(wall.skin), "all", THERE["yes"])
        of = (wall.of, *(piece.of for piece in one.layers), one.of)
        title = f"Bay {one.bay.removeprefix('bay ')}" if one.bay else "From the skin inwards"
        grids.append(Grid(title, ("Layer", "Of", "Thick", "Where", "Today"), (skin, *rows, total), of))
    return grids
