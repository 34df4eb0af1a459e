"""What a view is drawn with. Every mark stands in its view's own plane and says which rig path it is about.

Plane: metres, the first number across (to the right as one looks at the view), the second up. A mark carries meaning
("this is cut", "this is 16 1/8 from the datum"); how thick a line is and where a text finds room is settled when the
sheet is laid out on paper, so that every writer shows the same.
"""

from __future__ import annotations

from typing import Literal

from boxwright.records import dataclass

Point = tuple[float, float]

LineKind = Literal["visible", "hidden", "centre", "cut", "phantom", "dimension"]
"""Visible edges; edges behind something; middles; the outline of what is cut through; what is elsewhere at another
time, planned or swept; everything thin that is no edge."""

Fill = Literal["none", "metal", "wood", "foam", "skin", "hole", "backing", "fault", "doubt", "ink"]
"""What a shape is filled with. Told apart by hatch, never by colour alone; ``ink`` alone is solid, ``doubt`` a tone."""

Side = Literal["above", "below", "left", "right"]
Size = Literal["small", "normal", "large"]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    line: LineKind
    of: str


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, from the angle ``start`` through ``sweep`` (rad, anticlockwise, 0 is to the right)."""

    centre: Point
    radius: float
    start: float
    sweep: float
    line: LineKind
    of: str


@dataclass(frozen=True, slots=True)
class Shape:
    """A closed outline of three or more points."""

    points: tuple[Point, ...]
    line: LineKind
    of: str
    fill: Fill = "none"


@dataclass(frozen=True, slots=True)
class Text:
    """Words at a point, centred there. One that ``may_move`` finds room nearby, or is led in from the margin."""

    at: Point
    words: str
    of: str
    size: Size = "normal"
    may_move: bool = True
    is_turned: bool = False


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance, written outside the view on ``side``; ``row`` 0 is nearest to it.

    Above and below measure across, left and right measure up. ``is_running`` writes only the far end, as a distance
    from the view's datum, so that a row of studs reads like a tape.
    """

    start: Point
    end: Point
    words: str
    of: str
    side: Side
    row: int = 0
    is_running: bool = False


@dataclass(frozen=True, slots=True)
class Leader:
    """A note about a point: the words stand where there is room, a thin line leads to the point."""

    at: Point
    words: str
    of: str


@dataclass(frozen=True, slots=True)
class Symbol:
    """A sign of fixed size on paper: the datum, the way forward, a screw, a warning at a fault.

    ``towards`` is where the rig's front lies as one looks at the view; only the sign of the way forward uses it.
    """

    at: Point
    kind: Literal["datum", "front", "screw", "fault"]
    of: str
    towards: Side = "left"


Mark = Line | Arc | Shape | Text | Dimension | Leader | Symbol
