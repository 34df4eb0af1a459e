"""A page for each hole through the skin: its template or offsets, what is behind, what seals it, when to look again."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.behind import behind_words, run_marks
from boxwright.disciplines.frame.drawn import THERE, UNSAID, Drawn, Eye, Marks, said
from boxwright.disciplines.frame.elevation import beside, cuts, hole_marks, member_marks, rectangle
from boxwright.disciplines.frame.faults import is_about
from boxwright.disciplines.frame.result import DepthFit, Hole, Wall
from boxwright.drawing import Dimension, Grid, Leader, Line, Shape, Sheet, Symbol, View

LARGEST = 0.13
"""An opening up to this wide and high (m) is drawn full size, as a template for one page of either paper."""
AROUND = 0.12
"""How much of the wall is shown around an opening that is drawn smaller (m), beyond the members beside it."""
ROOM = 0.078, 0.085
"""The width and height that the offsets of an opening may take on paper (m): what its table leaves of a page."""
SCALES = (1 / 2, 1 / 5, 1 / 10, 1 / 15, 1 / 20, 1 / 25, 1 / 30, 1 / 40, 1 / 50, 1 / 60, 1 / 75, 1 / 100)
SIGN = 0.013
"""How far from all that is drawn the sign of the way forward stands on paper (m): its word finds room behind it."""
BELOW = 0.025
"""How far under a template the sign of the way forward stands (m)."""
FITS = {"yes": "fits", "no": "DOES NOT FIT", "unknown": "not known"}
LIES = 0.085
"""A template up to this high (m) stands on a page with its table; a higher one takes an upright page of its own."""
OWN_PAGE = "The template is full size and takes a page of its own; what is known of the hole stands on the next."
CAUTIONS = (
    "Look behind before you drill, lining off: brake and lamp wires run in walls and floor. Disconnect shore power, "
    "battery and tow vehicle; wear eye protection.",
)
DONE = (
    "__ looked behind; __ taped twice; __ corners drilled and looked at; __ cut; __ edge painted; __ sealed; "
    "__ hose test; by _____ date _____ photo ___"
)
AGAIN = "after a hose test; every spring and autumn (common practice, no source)"


def hole_page(drawn: Drawn, hole: Hole) -> Sheet:
    """Return the page of one opening; one without a place says what is missing."""
    mine = [f"Fault {number}: {one.says}" for number, one in drawn.faults() if is_about(one.where, hole.of)]
    notes = (*mine, *CAUTIONS)
    grids = (_facts(drawn, hole),)
    name, title = f"hole-{hole.name}", f"Hole: {hole.name}"
    wall = drawn.frame.wall(hole.wall)
    if wall is None or not hole.is_placed:
        return Sheet(name, title, (), notes, grids)
    eye = Eye(wall, False)
    is_full_size = is_template(hole)
    low, high, bottom, top = _shown(hole, wall)
    scale = 1.0 if is_full_size else scale_for(high - low, top - bottom)
    marks = _template(drawn, hole, eye) if is_full_size else _offsets(drawn, hole, eye, scale)
    what = "Template, full size" if is_full_size else "Offsets from the scribed 0"
    view = View(what, eye.looks if wall.name not in ("roof", "floor") else "seen from above", tuple(marks), eye.datum)
    stands_up = is_full_size and hole.top - hole.bottom > LIES
    return Sheet(name, title, (view,), (*notes, *((OWN_PAGE,) if stands_up else ())), grids, scale, stands_up=stands_up)


def is_template(hole: Hole) -> bool:
    """Return whether an opening is small enough to be drawn full size on one page."""
    return 0.0 < hole.high - hole.low <= LARGEST and 0.0 < hole.top - hole.bottom <= LARGEST


def scale_for(wide: float, high: float, room: tuple[float, float] = ROOM) -> float:
    """Return the largest usual scale at which a width and a height (m) take no more than a room on paper (m)."""
    return next((one for one in SCALES if wide * one <= room[0] and high * one <= room[1]), SCALES[-1])


def _template(drawn: Drawn, hole: Hole, eye: Eye, scale: float = 1.0) -> Marks:
    """Return an opening by itself with its middles and size."""
    along, up = (hole.low + hole.high) / 2.0, (hole.bottom + hole.top) / 2.0
    half_long, half_high = (hole.high - hole.low) * 0.65, (hole.top - hole.bottom) * 0.65
    marks: Marks = [
        Shape(rectangle(eye, hole.low, hole.high, hole.bottom, hole.top), "cut", hole.of),
        Line(eye.at(along - half_long, up), eye.at(along + half_long, up), "centre", hole.of),
        Line(eye.at(along, up - half_high), eye.at(along, up + half_high), "centre", hole.of),
    ]
    if hole.flange is not None and hole.flange > 0.0:
        rim = hole.flange
        corners = rectangle(eye, hole.low - rim, hole.high + rim, hole.bottom - rim, hole.top + rim)
        marks.append(Shape(corners, "phantom", hole.of))
    return [*marks, *_sizes(drawn, hole, eye), *_corners(drawn, hole, eye, marks, scale)]


def _shown(hole: Hole, wall: Wall) -> tuple[float, float, float, float]:
    """Return how much of a wall is shown around an opening: to the members beside it and a little beyond."""
    reach = [abs(gap.clear.best) for gap in (hole.gap_low, hole.gap_high) if gap is not None and gap.clear.known]
    beyond = max([*reach, 0.0]) + AROUND
    along = max(wall.low, hole.low - beyond), min(wall.high, hole.high + beyond)
    return *along, max(wall.foot, hole.bottom - AROUND), min(wall.top, hole.top + AROUND)


def _offsets(drawn: Drawn, hole: Hole, eye: Eye, scale: float) -> Marks:
    """Return an opening among the members beside it, with what is clear to each."""
    ruler, wall = drawn.ruler, eye.wall
    gaps = [(hole.gap_low, hole.low, -1.0), (hole.gap_high, hole.high, 1.0)]
    low, high, bottom, top = _shown(hole, wall)
    marks: Marks = []
    for member in drawn.frame.members_of(wall.name):
        if member.runs == "up" and low - SMALL < member.at.best < high + SMALL:
            pieces = tuple((max(foot, bottom), min(head, top)) for foot, head in member.pieces)
            shown = replace(member, low=bottom, high=top, pieces=tuple(one for one in pieces if one[0] < one[1]))
            marks += member_marks(shown, eye, "metal")
            is_corner = member.kind == "corner post"
            named = "jamb" if member.of == hole.of else "corner" if is_corner else member.name
            at, words = eye.at(member.at.best, top), f"{named} = {ruler.mark(member.at.best - eye.zero)}"
            marks.append(Dimension(at, at, words, member.of, "above", 0, True))
    marks += [*run_marks(drawn, eye, (low, high), (bottom, top)), *hole_marks(drawn, hole, eye)]
    for gap, edge, way in gaps:
        if gap is not None and gap.clear.known:
            ends = eye.at(edge, hole.bottom), eye.at(edge + way * gap.clear.best, hole.bottom)
            marks.append(Dimension(*ends, ruler.mark(gap.clear.best), hole.of, "below", 0))
    wide = ruler.mark(hole.high - hole.low)
    marks.append(Dimension(eye.at(hole.low, hole.bottom), eye.at(hole.high, hole.bottom), wide, hole.of, "below", 0))
    side = max(eye.at(hole.low, 0.0)[0], eye.at(hole.high, 0.0)[0])
    marks.append(
        Dimension((side, hole.bottom), (side, hole.top), ruler.mark(hole.top - hole.bottom), hole.of, "right", 0)
    )
    return [*marks, *_corners(drawn, hole, eye, marks, scale)]


def _sizes(drawn: Drawn, hole: Hole, eye: Eye) -> Marks:
    ruler = drawn.ruler
    wide, high = ruler.full(hole.high - hole.low), ruler.full(hole.top - hole.bottom)
    left = min(eye.at(hole.low, 0.0)[0], eye.at(hole.high, 0.0)[0])
    return [
        Dimension(eye.at(hole.low, hole.top), eye.at(hole.high, hole.top), wide, hole.of, "above", 0),
        Dimension((left, hole.bottom), (left, hole.top), high, hole.of, "left", 0),
    ]


def _corners(drawn: Drawn, hole: Hole, eye: Eye, beside: Marks, scale: float) -> Marks:
    """Return where the two corners are that fix the opening, and which way the front lies; ``beside`` is drawn."""
    ruler = drawn.ruler
    foot = eye.wall.foot if eye.wall.name in ("roof", "floor") else 0.0
    marks: Marks = []
    for along, up in ((hole.low, hole.bottom), (hole.high, hole.top)):
        words = f"{ruler.full(along - eye.zero)} from the 0, {ruler.full(up - foot)} {across(eye.wall)}"
        marks.append(Leader(eye.at(along, up), words, hole.of))
    if eye.front is not None:
        ends = sorted((eye.at(hole.low, 0.0)[0], eye.at(hole.high, 0.0)[0]))
        if is_template(hole):
            at = (ends[0] + ends[1]) / 2.0, hole.bottom - BELOW
        else:
            # Beyond all that is drawn and at half height, where neither a member nor a dimension's line runs.
            drawn_to = [*ends, *(point[0] for mark in beside if isinstance(mark, Shape) for point in mark.points)]
            away = SIGN / scale
            middle = (hole.bottom + hole.top) / 2.0
            at = (min(drawn_to) - away if eye.front == "left" else max(drawn_to) + away), middle
        marks.append(Symbol(at, "front", hole.of, eye.front))
    return marks


def across(wall: Wall) -> str:
    """Return what the second measure of a place on a wall is, in words."""
    return "from the left wall" if wall.name in ("roof", "floor") else "above the deck"


def _facts(drawn: Drawn, hole: Hole) -> Grid:
    """Return everything that is known of an opening, line by line."""
    ruler, wall = drawn.ruler, drawn.frame.wall(hole.wall)
    place = UNSAID
    if wall is not None and hole.is_placed:
        eye = Eye(wall, False)
        foot = wall.foot if wall.name in ("roof", "floor") else 0.0
        place = f"{ruler.both(hole.low - eye.zero)} from the 0; {ruler.both(hole.bottom - foot)} {across(wall)}"
    sealed = hole.seal or "nobody wrote what seals it"
    missing = "" if hole.is_placed else "Missing: its place or its size. Write x (or side), z, width and height."
    rough = f"{ruler.both(hole.high - hole.low)} x {ruler.both(hole.top - hole.bottom)}" if not missing else ""
    unit = " ".join(one for one in (hole.unit, ruler.mass(hole.unit_weight)) if one)
    behind = behind_words(drawn, hole.wall, (hole.low, hole.high), (hole.bottom, hole.top)) if not missing else ""
    pairs = (
        ("Not to be drawn yet", missing),
        ("Wall, made by", f"{hole.wall}, {'trailer builder' if hole.is_by_builder else 'owner'}"),
        ("Rough opening", rough),
        ("Lower left corner" if hole.wall in ("front", "rear") else "Lower front corner", place),
        ("Members beside", beside(drawn, hole)),
        ("Cuts; header", UNSAID if missing else f"{cuts(drawn, hole)}; {_header(drawn, hole)}"),
        ("From outside in", _layers(drawn, hole)),
        ("Wires, pipes", behind),
        *((f"Depth, {one.what}", _depth(drawn, one)) for one in hole.depth),
        ("Unit; sealant", "; ".join(one for one in (unit, f"{sealed} {said(hole.sealed_on)}".strip()) if one)),
        ("Look again", AGAIN),
        ("Done", DONE),
    )
    rows = tuple(pair for pair in pairs if pair[1])
    return Grid("", ("", ""), rows, tuple(hole.of for _ in rows))


def _header(drawn: Drawn, hole: Hole) -> str:
    """Return what the header spans and bears, and what each of its jambs then carries beside its own."""
    need = hole.header
    if need is None:
        return "a header is needed" if hole.needs_frame else "no header is needed"
    span = f"from {need.from_member} to {need.to_member}, {drawn.ruler.full(need.span)} between their middles"
    if not need.offsets:
        return f"header {span}; no stud of the row stands on it"
    first, last = (f"{share:.1f}" for share in need.shares)
    studs = f"{len(need.offsets)} stud{'' if len(need.offsets) == 1 else 's'}"
    needed = "header needed" if hole.needs_frame else "header"
    return f"{needed} {span}; bears {studs}: the load of {first} on {need.from_member}, of {last} on {need.to_member}"


def _layers(drawn: Drawn, hole: Hole) -> str:
    """Return what lies behind the skin at an opening: the layers of its own bay where they are written."""
    ruler, wall = drawn.ruler, drawn.frame.wall(hole.wall)
    mine = [one.name for one in drawn.frame.bays if one.wall == hole.wall and hole.low < one.high.best
            and hole.high > one.low.best] if hole.is_placed else []  # fmt: skip
    own = [found for name in mine if (found := drawn.buildup(hole.wall, "bay", name)) is not None]
    bay = own[0] if len(mine) == 1 and own else drawn.buildup(hole.wall, "bay")
    words = [f"skin {ruler.thickness(wall.skin if wall is not None else None)}"]
    for one in bay.layers if bay is not None else ():
        there = "" if one.there == "yes" else f" {THERE[one.there]}"
        where = " over studs" if one.where == "members" else ""
        named = f"{one.name} {one.material}" if one.material != one.name else one.name
        words.append(f"{named} {ruler.thickness(one.thick)}{where}{there}")
    return "; ".join(words)


def _depth(drawn: Drawn, one: DepthFit) -> str:
    ruler = drawn.ruler
    least, most = ruler.thickness(one.lowest), ruler.thickness(one.highest)
    needs = f"{least} to {most}" if one.what == "clamps" else least
    finished, now = ruler.thickness(one.finished), ruler.thickness(one.standing)
    return f"needs {needs}; finished {finished}: {FITS[one.fits]}; now {now}: {FITS[one.fits_standing]}"
