"""The plan to tape out on a garage floor: every point marked, lettered, and found by two tapes."""

from __future__ import annotations

from math import hypot

from boxwright.disciplines.frame.drawn import Drawn
from boxwright.disciplines.frame.elevation import AHEAD
from boxwright.disciplines.frame.plans import ABOVE, outline
from boxwright.disciplines.frame.result import Wall
from boxwright.drawing import Dimension, Grid, Line, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Mark, Point
from boxwright.records import dataclass

BESIDE = 0.03
"""How far outside its point a letter stands, as a share of the floor's length: about 5 mm on paper at any scale."""


@dataclass(frozen=True, slots=True)
class TapedPoint:
    """A point to be found with two tapes; ``beside`` is which way from it, in x and y, its letter stands."""

    what: str
    at: Point
    of: str
    beside: Point


@dataclass(frozen=True, slots=True)
class Doorway:
    """Where an opening stands in the edge of the floor."""

    name: str
    of: str
    edges: tuple[Point, Point]


def tape_plan(drawn: Drawn, wall: Wall) -> Sheet:
    """Return the plan to tape out on a floor: every point by two tapes, and the diagonals that must agree."""
    ruler, doorways = drawn.ruler, _doorways(drawn, wall)
    points = [(_letter(number), one) for number, one in enumerate(_points(drawn, wall, doorways))]
    by = BESIDE * (wall.high - wall.low)
    a, b, c, d = ((wall.low, wall.foot), (wall.low, wall.top), (wall.high, wall.top), (wall.high, wall.foot))
    diagonal = ruler.full(hypot(wall.high - wall.low, wall.top - wall.foot))
    marks: list[Mark] = [Shape(outline(drawn, wall), "visible", wall.of)]
    for doorway in doorways:
        marks.append(Line(*doorway.edges, "cut", doorway.of))
        marks.append(Text(_within(doorway, wall), doorway.name, doorway.of, "small"))
    marks += _raised(drawn)
    for start, end in ((a, c), (b, d)):
        marks.append(Line(start, end, "centre", wall.of))
        at = start[0] + (end[0] - start[0]) * 0.3, start[1] + (end[1] - start[1]) * 0.3
        marks.append(Text(at, f"diagonal {diagonal}", wall.of, "small"))
    for letter, one in points:
        (x, y), (ahead, aside) = one.at, one.beside
        marks.append(Text((x + by * ahead, y + by * aside), letter, one.of, "large"))
        marks.append(Symbol(one.at, "datum" if one.at == a else "screw", one.of))
    marks.append(Dimension(a, d, ruler.full(wall.high - wall.low), wall.of, "below", 0))
    marks.append(Dimension(a, b, ruler.full(wall.top - wall.foot), wall.of, "left", 0))
    marks.append(Symbol((wall.low - AHEAD * 1.5, 0.0), "front", wall.of, "left"))
    rows = tuple(
        (
            letter,
            one.what,
            ruler.mark(x - wall.low),
            ruler.mark(y - wall.foot),
            ruler.mark(hypot(x - a[0], y - a[1])),
            ruler.mark(hypot(x - b[0], y - b[1])),
            "",
        )
        for letter, one in points
        for x, y in (one.at,)
    )
    columns = ("Point", "What", "Rearward", "From the left", "From A", "From B", "As taped")
    grid = Grid("Points", columns, rows, tuple(one.of for _, one in points))
    notes = (
        "Strike A to B square to the long side, lay A to D, then find each point with two tapes, from A and from B.",
        f"The two diagonals must be equal: {diagonal}. If they are not, it is not square; shift C and D together.",
        "A circle with a cross marks a point, the heavy line between two of them is an opening.",
    )
    view = View("Floor, to be taped out full size", ABOVE, tuple(marks), "the stud faces, at deck height")
    return Sheet("tape-plan", "Floor tape plan", (view,), notes, (grid,))


def _points(drawn: Drawn, wall: Wall, doorways: tuple[Doorway, ...]) -> list[TapedPoint]:
    """Return the points of the plan: corners, nose, openings in the floor's edge, wheel boxes."""
    found = [
        TapedPoint("front left corner", (wall.low, wall.foot), wall.of, (-1.0, -1.0)),
        TapedPoint("front right corner", (wall.low, wall.top), wall.of, (-1.0, 1.0)),
        TapedPoint("rear right corner", (wall.high, wall.top), wall.of, (1.0, 1.0)),
        TapedPoint("rear left corner", (wall.high, wall.foot), wall.of, (1.0, -1.0)),
    ]
    nose = drawn.frame.nose
    if nose is not None:
        for half in dict.fromkeys((-nose.tip / 2, nose.tip / 2)):
            found.append(TapedPoint("tip of the nose", (wall.low - nose.length, half), nose.of, (-1.0, 0.0)))
    for one in doorways:
        found += [TapedPoint(f"edge of {one.name}", edge, one.of, _outward(edge, wall)) for edge in one.edges]
    for raised in drawn.frame.intrusions:
        inner = min((raised.low[1], raised.high[1]), key=abs)
        inward = 1.0 if raised.low[1] + raised.high[1] < 0.0 else -1.0
        for x, away in ((raised.low[0], -1.0), (raised.high[0], 1.0)):
            found.append(TapedPoint(f"corner of {raised.name}", (x, inner), raised.of, (away, inward)))
    return found


def _doorways(drawn: Drawn, wall: Wall) -> tuple[Doorway, ...]:
    """Return the openings that reach down to the floor, with their two edges at its rim."""
    found = []
    for hole in drawn.frame.holes:
        if not hole.is_placed or hole.bottom > wall.high * 0.01 or hole.wall in ("roof", "floor"):
            continue
        plane = drawn.frame.wall(hole.wall)
        if plane is None or plane.high <= plane.low:
            continue
        (x, y), (end_x, end_y) = plane.start, plane.end
        shares = [(edge - plane.low) / (plane.high - plane.low) for edge in (hole.low, hole.high)]
        first, last = ((x + (end_x - x) * share, y + (end_y - y) * share) for share in shares)
        found.append(Doorway(hole.name, hole.of, (first, last)))
    return tuple(found)


def _raised(drawn: Drawn) -> list[Mark]:
    """Return the outline and the name of what stands up through the floor."""
    marks: list[Mark] = []
    for one in drawn.frame.intrusions:
        (x0, y0), (x1, y1) = one.low[:2], one.high[:2]
        marks.append(Shape(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "visible", one.of))
        marks.append(Text(((x0 + x1) / 2.0, (y0 + y1) / 2.0), one.name, one.of, "small"))
    return marks


def _outward(edge: Point, wall: Wall) -> Point:
    """Return which way it is out of the floor from a place in its rim."""
    x, y = edge
    ahead = -1.0 if x <= wall.low else 1.0 if x >= wall.high else 0.0
    aside = -1.0 if y <= wall.foot else 1.0 if y >= wall.top else 0.0
    return ahead, aside if ahead == 0.0 else 0.0


def _within(doorway: Doorway, wall: Wall) -> Point:
    """Return where the name of an opening stands: inside, before its middle."""
    (x, y), (end_x, end_y) = doorway.edges
    middle = ((x + end_x) / 2.0, (y + end_y) / 2.0)
    centre = ((wall.low + wall.high) / 2.0, (wall.foot + wall.top) / 2.0)
    away = hypot(centre[0] - middle[0], centre[1] - middle[1])
    share = BESIDE * (wall.high - wall.low) / away if away > 0.0 else 0.0
    return middle[0] + share * (centre[0] - middle[0]), middle[1] + share * (centre[1] - middle[1])


def _letter(number: int) -> str:
    """Return A, B ... Z, A1, B1 ..."""
    more, place = divmod(number, 26)
    return "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[place] + (str(more) if more else "")
