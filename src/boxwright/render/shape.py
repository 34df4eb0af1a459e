"""Solids as closed surfaces: outlines drawn out, put together and cut, so that nothing leaks."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Literal

from boxwright.drawing.solid import Prism, Solid
from boxwright.render.extra import MissingExtra

if TYPE_CHECKING:
    from manifold3d import Manifold

Axis = Literal["x", "y", "z"]
AXES: tuple[Axis, ...] = ("x", "y", "z")
TOUCHING = 1e-9
"""Boxes nearer than this (m) may meet."""


@dataclass(frozen=True)
class Shape:
    """A solid with its closed surface. ``body`` answers for volume and cuts; it is built once."""

    solid: Solid
    body: Manifold

    @property
    def litres(self) -> float:
        """Return how much room it fills, in litres."""
        return float(self.body.volume()) * 1000.0

    @property
    def kg(self) -> tuple[float, float, float] | None:
        """Return what this much of its stock weighs: best, low and high; None where its density is not known."""
        if self.solid.density is None:
            return None
        best, low, high = (self.body.volume() * one for one in self.solid.density)
        return best, low, high


@dataclass(frozen=True, slots=True)
class Section:
    """A plane square to ``axis`` at ``at`` (m); what lies above it along the axis goes, or what lies below."""

    axis: Axis
    at: float
    keeps: Literal["below", "above"]


def shapes_of(solids: Iterable[Solid], section: Section | None = None) -> tuple[Shape, ...]:
    """Return the solids as closed surfaces, cut by the section where one is asked for; what is nothing is left out."""
    found = (shape_of(one) for one in solids)
    cut = (cut_by(one, section) for one in found) if section is not None else found
    return tuple(one for one in cut if not one.body.is_empty())


def shape_of(solid: Solid) -> Shape:
    """Return one solid as a closed surface."""
    three = _three()
    joined = _joined(three, [_drawn_out(three, one) for one in solid.pieces])
    box = joined.bounding_box()
    cutters = [_drawn_out(three, one) for one in solid.cut]
    met = [one for one in cutters if _meet(box, one.bounding_box())]
    return Shape(solid, three.Manifold.batch_boolean([joined, *met], three.OpType.Subtract) if met else joined)


def cut_by(shape: Shape, section: Section) -> Shape:
    """Return what a section leaves of a shape, closed again where it was cut."""
    sign = -1.0 if section.keeps == "below" else 1.0
    normal = tuple(sign if one == section.axis else 0.0 for one in AXES)
    return Shape(shape.solid, shape.body.trim_by_plane(normal, sign * section.at))


@dataclass(frozen=True, slots=True)
class Face:
    """Where a section cuts a piece, by its number among the shapes: triangles and outline, each a run of places (m)."""

    piece: int
    corners: tuple[float, ...]
    outline: tuple[float, ...]


def faces_of(shapes: Iterable[Shape], axis: Axis, at: float) -> tuple[Face, ...]:
    """Return the faces where a plane square to an axis cuts each shape; what it does not meet has none."""
    number = AXES.index(axis)
    found = []
    for place, shape in enumerate(shapes):
        box = shape.body.bounding_box()
        if box[number] < at < box[number + 3]:
            face = _face(shape.body, number, at)
            found += [Face(place, *face)] if face[0] else []
    return tuple(found)


def _face(body: Manifold, number: int, at: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the triangles and the outline of a cut, turned back to where it lies."""
    three = _three()
    first, second = (number + 1) % 3, (number + 2) % 3
    turned = [[1.0 if column == source else 0.0 for column in range(4)] for source in (first, second, number)]
    rings = body.transform(turned).slice(at).to_polygons()
    corners = [(float(one[0]), float(one[1])) for ring in rings for one in ring]

    def placed(corner: tuple[float, float]) -> tuple[float, float, float]:
        found = [0.0, 0.0, 0.0]
        found[first], found[second], found[number] = corner[0], corner[1], at
        return _rounded(found[0]), _rounded(found[1]), _rounded(found[2])

    order = three.triangulate(rings) if rings else ()
    inside = tuple(one for triangle in order for corner in triangle for one in placed(corners[corner]))
    edges = [(ring[place - 1], ring[place]) for ring in rings for place in range(len(ring))]
    return inside, tuple(one for edge in edges for corner in edge for one in placed((corner[0], corner[1])))


def _rounded(metres: float) -> float:
    return round(float(metres), 6)


def _joined(three: ModuleType, pieces: list[Manifold]) -> Manifold:
    return pieces[0] if len(pieces) == 1 else three.Manifold.batch_boolean(pieces, three.OpType.Add)


def _drawn_out(three: ModuleType, prism: Prism) -> Manifold:
    """Return an outline drawn out, turned to where it lies."""
    outlines = [prism.outline, *prism.holes]
    flat = three.CrossSection([list(one) for one in outlines], three.FillRule.EvenOdd)
    across, up, along = prism.across, prism.up, prism.along
    rows = [[across[row], up[row], along[row], prism.origin[row]] for row in range(3)]
    return three.Manifold.extrude(flat, prism.deep).transform(rows)


def _meet(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return all(one[axis] < other[axis + 3] + TOUCHING and other[axis] < one[axis + 3] + TOUCHING for axis in range(3))


def _three() -> ModuleType:
    try:
        import manifold3d
    except ImportError:
        raise MissingExtra("solid", "manifold3d") from None
    found: ModuleType = manifold3d
    return found
