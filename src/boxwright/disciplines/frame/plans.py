"""Views from above: the roof with its bows, and the framing of the floor."""

from __future__ import annotations

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
from boxwright.drawing.mark import Point
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
    marks: Marks = [Shape(outline(drawn, wall), "visible", wall.of)]
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


def outline(drawn: Drawn, wall: Wall) -> tuple[Point, ...]:
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
