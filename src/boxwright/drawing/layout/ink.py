"""What has been drawn on one page so far."""

from __future__ import annotations

from dataclasses import replace
from math import pi

from boxwright.drawing.mark import Fill, LineKind, Point
from boxwright.drawing.page import Belongs, Box, Curve, PlacedDimension, PlacedView, Stroke, Words


class Ink:
    """The strokes, curves and words of a page in the making."""

    def __init__(self) -> None:
        self.strokes: list[Stroke] = []
        self.curves: list[Curve] = []
        self.words: list[Words] = []
        self.dimensions: list[PlacedDimension] = []
        self.views: list[PlacedView] = []

    def line(self, start: Point, end: Point, line: LineKind, of: str, belongs: Belongs) -> None:
        """Draw a straight line."""
        self.strokes.append(Stroke((start, end), line, of, belongs))

    def outline(
        self, points: tuple[Point, ...], line: LineKind, of: str, belongs: Belongs, fill: Fill = "none"
    ) -> None:
        """Draw a closed outline."""
        self.strokes.append(Stroke(points, line, of, belongs, True, fill))

    def rectangle(self, box: Box, line: LineKind, of: str, belongs: Belongs, fill: Fill = "none") -> None:
        """Draw an upright rectangle."""
        corners = ((box.left, box.top), (box.right, box.top), (box.right, box.bottom), (box.left, box.bottom))
        self.outline(corners, line, of, belongs, fill)

    def circle(self, centre: Point, radius: float, line: LineKind, of: str, belongs: Belongs) -> None:
        """Draw a full circle."""
        self.curves.append(Curve(centre, radius, 0.0, 2.0 * pi, line, of, belongs))

    def add(self, other: Ink) -> None:
        """Take over all that was drawn elsewhere."""
        self.strokes += other.strokes
        self.curves += other.curves
        self.words += other.words
        self.dimensions += other.dimensions
        self.views += other.views

    def moved(self, across: float, down: float) -> Ink:
        """Return the same drawing at another place."""

        def at(point: Point) -> Point:
            return point[0] + across, point[1] + down

        shifted = Ink()
        shifted.strokes = [
            Stroke(tuple([at(point) for point in one.points]), one.line, one.of, one.belongs, one.is_closed, one.fill)
            for one in self.strokes
        ]
        shifted.curves = [replace(one, centre=at(one.centre)) for one in self.curves]
        shifted.words = [
            Words(
                at(one.at),
                one.text,
                one.height,
                one.of,
                one.belongs,
                Box(one.box.left + across, one.box.top + down, one.box.right + across, one.box.bottom + down),
                one.is_turned,
                one.is_bold,
            )
            for one in self.words
        ]
        shifted.dimensions = [
            replace(one, start=at(one.start), end=at(one.end), line_at=at(one.line_at)) for one in self.dimensions
        ]
        shifted.views = [replace(one, origin=at(one.origin)) for one in self.views]
        return shifted
