"""A page: a sheet laid out on paper. Only what stands here is drawn; writers turn it into a file and add nothing.

Plane: millimetres on the paper from its top left corner, the first number to the right, the second down.
"""

from __future__ import annotations

from typing import Literal

from boxwright.drawing.mark import Fill, LineKind, Point, Side
from boxwright.records import dataclass

Belongs = Literal["view", "dimension", "note", "grid", "border"]
"""What a piece of a page belongs to: a writer that has real dimensions draws those in place of their strokes."""


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle on paper."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through two or more points; a closed one may be filled.

    ``fill`` tells what the shape is; its hatch is drawn by strokes of their own. A writer fills only ``ink``, solid,
    and may tint the others on a screen.
    """

    points: tuple[Point, ...]
    line: LineKind
    of: str
    belongs: Belongs
    is_closed: bool = False
    fill: Fill = "none"


@dataclass(frozen=True, slots=True)
class Curve:
    """Part of a circle. Angles as one sees them on paper: anticlockwise, 0 to the right."""

    centre: Point
    radius: float
    start: float
    sweep: float
    line: LineKind
    of: str
    belongs: Belongs


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text. ``at`` is the left end of its baseline; turned, it reads from below upwards.

    ``height`` is that of a capital letter. ``box`` is what it covers: no other text and no line of an edge crosses it.
    """

    at: Point
    text: str
    height: float
    of: str
    belongs: Belongs
    box: Box
    is_turned: bool = False
    is_bold: bool = False


@dataclass(frozen=True, slots=True)
class PlacedDimension:
    """A dimension as it came to lie: its two ends and a point of its line, on paper, with what it says."""

    start: Point
    end: Point
    line_at: Point
    words: str
    of: str
    side: Side
    is_running: bool


@dataclass(frozen=True, slots=True)
class PlacedView:
    """Where a view came to lie: its (0, 0) on paper, and drawing over real size."""

    name: str
    origin: Point
    scale: float


@dataclass(frozen=True, slots=True)
class Page:
    """One side of paper, complete. ``width`` and ``height`` are in millimetres."""

    name: str
    title: str
    number: int
    count: int
    width: float
    height: float
    strokes: tuple[Stroke, ...]
    curves: tuple[Curve, ...]
    words: tuple[Words, ...]
    dimensions: tuple[PlacedDimension, ...]
    views: tuple[PlacedView, ...]
