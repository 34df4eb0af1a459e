"""Views from above: the roof with its bows, the framing of the floor, and the plan to tape out on a garage floor."""

from __future__ import annotations

from math import hypot

from boxwright.disciplines.frame.drawn import Drawn, Eye, Marks
from boxwright.disciplines.frame.elevation import (
    AHEAD,
    beside,
    cuts,
    hole_marks,
    layers,
    member_marks,
    rectangle,
    rough,
    stud_row,
)
from boxwright.disciplines.frame.faults import Fault, fault_marks, fault_notes
from boxwright.disciplines.frame.result import Wall
from boxwright.drawing import Dimension, Grid, Leader, Line, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Mark, Point
from boxwright.exchange import Box

ABOVE = "seen from above, the front to your left"
DATUM = "the front stud face (scribed 0); across from the left wall's stud face"
TYRE = 0.2
"""How wide a tyre is drawn in plan (m): a sign for where it stands, not its size."""


def roof(drawn: Drawn, wall: Wall, faults: tuple[Fault, ...]) -> Sheet:
    """Return the sheet of the roof."""
    view = View("Roof", ABOVE, tuple(_plane(drawn, wall, faults)), DATUM)
    notes = ("Look behind before you drill: only what is in this file is drawn.", *fault_notes(faults, wall.name))
    return Sheet("roof", "Roof: bows and openings", (view,), notes, (*_openings(drawn, wall), *layers(drawn, wall)))


def floor(drawn: Drawn, wall: Wall, faults: tuple[Fault, ...]) -> Sheet:
    """Return the sheet of the floor framing with axles, coupler and what stands up through the deck."""
    marks = [*_plane(drawn, wall, faults), *_running_gear(drawn.box, wall)]
    for one in drawn.frame.intrusions:
        corners = rectangle(Eye(wall, False), one.low[0], one.high[0], one.low[1], one.high[1])
        marks.append(Shape(corners, "visible", one.of))
        marks.append(Text(((one.low[0] + one.high[0]) / 2, (one.low[1] + one.high[1]) / 2), one.name, one.of, "small"))
    view = View("Floor framing", ABOVE, tuple(marks), DATUM)
    notes = ("Before a hole goes through the deck: look under it for cross-members, brake wires, hoses and tanks.",)
    grids = (*_openings(drawn, wall), *layers(drawn, wall))
    return Sheet("floor", "Floor framing", (view,), (*notes, *fault_notes(faults, wall.name)), grids)


def _plane(drawn: Drawn, wall: Wall, faults: tuple[Fault, ...]) -> Marks:
    """Return what roof and floor have in common: outline, nose, members, openings, rows, bearings."""
    eye, ruler = Eye(wall, False), drawn.ruler
    half = max(abs(wall.foot), abs(wall.top))
    marks: Marks = [Shape(_body(drawn, wall), "visible", wall.of)]
    for member in drawn.frame.members_of(wall.name):
        marks += member_marks(member, eye)
    for hole in drawn.holes_of(wall.name):
        marks += hole_marks(drawn, hole, eye)
        for edge in (hole.low, hole.high):
            start, end = (0.0, wall.foot), (edge, hole.bottom)
            marks.append(Dimension(start, end, ruler.mark(edge), hole.of, "below", 0, True))
        for edge in (hole.bottom, hole.top):
            start, end = (wall.high, wall.foot), (hole.high, edge)
            marks.append(Dimension(start, end, ruler.mark(edge - wall.foot), hole.of, "right", 0, True))
    marks += stud_row(drawn, eye)
    width = ruler.full(wall.top - wall.foot)
    marks.append(Dimension((wall.low, wall.foot), (wall.low, wall.top), width, wall.of, "left", 0))
    ahead = wall.low - (drawn.frame.nose.length if drawn.frame.nose is not None else 0.0)
    marks.append(Symbol((ahead - AHEAD, 0.0), "front", wall.of, "left"))
    marks.append(Symbol((0.0, wall.foot), "datum", wall.of))
    for side, at in (("RIGHT", half), ("LEFT", -half)):
        marks.append(Text((wall.high - AHEAD / 2.0, at - AHEAD / 4.0 * (1.0 if at > 0.0 else -1.0)), side, wall.of))
    return [*marks, *fault_marks(faults, eye)]


def _body(drawn: Drawn, wall: Wall) -> tuple[Point, ...]:
    """Return the outline of the box seen from above, with its nose."""
    nose = drawn.frame.nose
    ahead = [(wall.low - nose.length, half) for half in (nose.tip / 2.0, -nose.tip / 2.0)] if nose is not None else []
    return (wall.low, wall.foot), (wall.high, wall.foot), (wall.high, wall.top), (wall.low, wall.top), *ahead


def _openings(drawn: Drawn, wall: Wall) -> tuple[Grid, ...]:
    ruler, holes = drawn.ruler, drawn.holes_of(wall.name)
    if not holes:
        return ()
    rows = tuple(
        (
            one.name,
            rough(drawn, one),
            f"{ruler.mark(one.low)} to {ruler.mark(one.high)}",
            f"{ruler.mark(one.bottom - wall.foot)} to {ruler.mark(one.top - wall.foot)}",
            beside(drawn, one),
            cuts(drawn, one),
        )
        for one in holes
    )
    columns = ("Opening", "Rough", "From the front", "From the left", "Members beside", "Cuts")
    return (Grid("Openings", columns, rows, tuple(one.of for one in holes)),)


def _running_gear(box: Box, wall: Wall) -> Marks:
    """Return axles and tyres, and the middle of the ball, where they are known."""
    marks: Marks = []
    for number, axle in enumerate(box.axles, start=1):
        if not axle.x.known:
            continue
        at, of = axle.x.best, f"trailer.axles.x[{number - 1}]"
        half = box.track.best / 2.0 if box.track.known else max(abs(wall.foot), abs(wall.top)) + TYRE
        marks.append(Line((at, -half), (at, half), "centre", of))
        if box.wheel_radius.known:
            reach = box.wheel_radius.best
            for side in (-half, half):
                low, high = side - TYRE / 2.0, side + TYRE / 2.0
                corners = ((at - reach, low), (at + reach, low), (at + reach, high), (at - reach, high))
                marks.append(Shape(corners, "phantom", of))
        marks.append(Leader((at, -half), f"axle {number}", of))
    if box.coupler_x.known:
        at = box.coupler_x.best
        for side in (wall.foot, wall.top):
            marks.append(Line((at, 0.0), (wall.low, side / 2.0), "phantom", "trailer.coupler_x"))
        marks.append(Leader((at, 0.0), "middle of the ball", "trailer.coupler_x"))
    return marks


def tape_plan(drawn: Drawn, wall: Wall) -> Sheet:
    """Return the plan to tape out on a floor: every point by two tapes, and the diagonals that must agree."""
    ruler = drawn.ruler
    corners = _points(drawn, wall)
    marks: list[Mark] = [Shape(_body(drawn, wall), "visible", wall.of)]
    a, b, c, d = ((wall.low, wall.foot), (wall.low, wall.top), (wall.high, wall.top), (wall.high, wall.foot))
    diagonal = ruler.full(hypot(wall.high - wall.low, wall.top - wall.foot))
    for start, end in ((a, c), (b, d)):
        marks.append(Line(start, end, "centre", wall.of))
        at = start[0] + (end[0] - start[0]) * 0.3, start[1] + (end[1] - start[1]) * 0.3
        marks.append(Text(at, f"diagonal {diagonal}", wall.of, "small"))
    marks += [Text(point, letter, of, "large") for letter, _, point, of in corners]
    marks.append(Dimension(a, d, ruler.full(wall.high - wall.low), wall.of, "below", 0))
    marks.append(Dimension(a, b, ruler.full(wall.top - wall.foot), wall.of, "left", 0))
    marks += [Symbol((wall.low - AHEAD * 1.5, 0.0), "front", wall.of, "left"), Symbol(a, "datum", wall.of)]
    rows = tuple(
        (
            letter,
            what,
            ruler.mark(x - wall.low),
            ruler.mark(y - wall.foot),
            ruler.mark(hypot(x - a[0], y - a[1])),
            ruler.mark(hypot(x - b[0], y - b[1])),
            "",
        )
        for letter, what, (x, y), _ in corners
    )
    columns = ("Point", "What", "Rearward", "From the left", "From A", "From B", "As taped")
    grid = Grid("Points", columns, rows, tuple(of for *_, of in corners))
    notes = (
        "Strike A to B square to the long side, lay A to D, then find each point with two tapes, from A and from B.",
        f"The two diagonals must be equal: {diagonal}. If they are not, it is not square; shift C and D together.",
    )
    view = View("Floor, to be taped out full size", ABOVE, tuple(marks), "the stud faces, at deck height")
    return Sheet("tape-plan", "Floor tape plan", (view,), notes, (grid,))


def _points(drawn: Drawn, wall: Wall) -> tuple[tuple[str, str, Point, str], ...]:
    """Return the points of the plan with their letters: corners, nose, doors in the floor's edge, wheel boxes."""
    found: list[tuple[str, Point, str]] = [
        ("front left corner", (wall.low, wall.foot), wall.of),
        ("front right corner", (wall.low, wall.top), wall.of),
        ("rear right corner", (wall.high, wall.top), wall.of),
        ("rear left corner", (wall.high, wall.foot), wall.of),
    ]
    nose = drawn.frame.nose
    if nose is not None:
        found += [
            ("tip of the nose", (wall.low - nose.length, half), nose.of)
            for half in dict.fromkeys((-nose.tip / 2, nose.tip / 2))
        ]
    for hole in drawn.frame.holes:
        if not hole.is_placed or hole.bottom > wall.high * 0.01 or hole.wall in ("roof", "floor"):
            continue
        plane = drawn.frame.wall(hole.wall)
        if plane is None or plane.high <= plane.low:
            continue
        for edge in (hole.low, hole.high):
            share = (edge - plane.low) / (plane.high - plane.low)
            point = (
                plane.start[0] + (plane.end[0] - plane.start[0]) * share,
                plane.start[1] + (plane.end[1] - plane.start[1]) * share,
            )
            found.append((f"edge of {hole.name}", point, hole.of))
    for one in drawn.frame.intrusions:
        inner = min((one.low[1], one.high[1]), key=abs)
        found += [(f"corner of {one.name}", (x, inner), one.of) for x in (one.low[0], one.high[0])]
    return tuple((_letter(number), *one) for number, one in enumerate(found))


def _letter(number: int) -> str:
    """Return A, B ... Z, A1, B1 ..."""
    more, place = divmod(number, 26)
    return "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[place] + (str(more) if more else "")
