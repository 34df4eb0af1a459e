"""A cut through how far an arm gets, standing and from bed, with each thing that is reached for where it is then.

Things round the room are all drawn in one plane: each as far level from the shoulder as where one stands nearest to it.
"""

from __future__ import annotations

from math import isfinite, pi, sqrt

from boxwright.disciplines.layout.body_sizes import SHARE
from boxwright.disciplines.layout.figures import sitting_front, standing_side
from boxwright.disciplines.layout.posing import POSES, Posed
from boxwright.disciplines.layout.reaching import Reached, reached_for
from boxwright.disciplines.layout.sitting import seated_shoulder
from boxwright.disciplines.layout.terraces import Bed, is_placed
from boxwright.disciplines.layout.ways import is_room
from boxwright.drawing import Arc, Dimension, Grid, Leader, Line, Mark, Shape, Sheet, Symbol, View

FURTHEST = 1.6
"""What is further (m) from a shoulder is told in the table and not drawn."""
WIDE = 0.6
"""How much of a bed is drawn (m)."""
NONE = "-"
NOTES = (
    "A thing is reached where its point lies within the dashes. The arm turns about the shoulder, which is bent down to"
    " what hangs lower; from bed it is that of somebody who sits at the nearest edge. Try it before it is fixed.",
)


def reach_section(posed: Posed) -> Sheet | None:
    """Return the sheet of what can be reached; None without a room, a written height or a thing to be reached for."""
    known = [(height.best, name) for name, height in posed.people if height.known]
    if not known or not is_room(posed.room):
        return None
    height, name = min(known)
    bed = next((one for one in posed.beds if is_placed(one.place)), None)
    things = tuple(reached_for(posed.bodies, bed, height, posed.room))
    if not things:
        return None
    views = [_standing(posed, things, height, name)]
    views += [_from_bed(posed, things, height, name, bed)] if bed is not None else []
    title = f"What {name} reaches, {POSES[posed.pose]}"
    return Sheet("reach", title, tuple(views), NOTES, (_table(posed, things, height, bed),))


def _standing(posed: Posed, things: tuple[Reached, ...], height: float, name: str) -> View:
    of = f"people[{name}]"
    placed = [(one, one.standing) for one in things]
    marks = [*standing_side((0.0, 0.0), height, of), *_around(posed, placed, height, SHARE["shoulder"] * height, of)]
    return View("Standing on the floor", "from the side", tuple(marks), "the finished floor")


def _from_bed(posed: Posed, things: tuple[Reached, ...], height: float, name: str, bed: Bed) -> View:
    of, top = f"people[{name}]", bed.top - posed.room.floor
    placed = [(one, one.sitting) for one in things]
    thick = bed.place.size[2] + bed.mattress
    corners = ((-WIDE, top - thick), (0.0, top - thick), (0.0, top), (-WIDE, top))
    marks: list[Mark] = [Shape(corners, "visible", bed.of, "wood")]
    marks += sitting_front((0.0, top), height, of)
    marks += _around(posed, placed, height, top + seated_shoulder(height), of)
    return View(f"From bed: {bed.name}", "from the end of the bed", tuple(marks), "the finished floor")


def _around(posed: Posed, things: list[tuple[Reached, float]], height: float, shoulder: float, of: str) -> list[Mark]:
    """Return floor and ceiling, how far the arm gets, and the points of things at their distance and height."""
    arm, tall = SHARE["arm"] * height, posed.room.ceiling - posed.room.floor
    shown = [(one, far) for one, far in things if far <= FURTHEST]
    end = max([arm, *(far for _, far in shown)]) + 0.1
    marks: list[Mark] = [Line((-WIDE, level), (end, level), "cut", "trailer.body.height") for level in (0.0, tall)]
    marks += [
        Arc((0.0, shoulder), arm, 0.0, pi / 2.0, "hidden", of),
        Line((arm, shoulder), (arm, 0.0), "hidden", of),
        Dimension((0.0, 0.0), (arm, 0.0), f"arm {posed.length(arm)}", of, "below", 0),
        Dimension((end, 0.0), (end, tall), posed.length(tall), "trailer.body.height", "right", 0),
    ]
    for one, far in shown:
        marks.append(Symbol((far, one.at), "screw", one.of))
        marks.append(Leader((far, one.at), one.name, one.of))
    return marks


def is_in_reach(far: float, at: float, shoulder: float, arm: float) -> bool:
    """Return whether a point so far level from a shoulder and so high is within an arm that may be bent down."""
    up = max(at - shoulder, 0.0)
    return up < arm and far <= sqrt(arm * arm - up * up) + 1e-9


def _table(posed: Posed, things: tuple[Reached, ...], height: float, bed: Bed | None) -> Grid:
    arm, stands = SHARE["arm"] * height, SHARE["shoulder"] * height
    sits = bed.top - posed.room.floor + seated_shoulder(height) if bed is not None else 0.0

    def far(value: float, at: float, shoulder: float) -> tuple[str, str]:
        if not isfinite(value):
            return NONE, NONE
        return posed.length(value), "reached" if is_in_reach(value, at, shoulder, arm) else "TOO FAR"

    rows = tuple(
        (one.name, posed.length(one.at), *far(one.standing, one.at, stands), *far(one.sitting, one.at, sits))
        for one in things
    )
    lies = f"Away from {bed.name}" if bed is not None else "Away from bed"
    columns = ("Thing", "Over the floor", "Away, standing", "It is", lies, "It is")
    return Grid("What is reached for", columns, rows, tuple(one.of for one in things))
