"""A wall across a stud as a steady field of temperature in two dimensions."""

from __future__ import annotations

from bisect import bisect
from math import inf
from typing import Annotated, NamedTuple

from boxwright.disciplines.heat.method.section import (
    Rows,
    SquareMetreKelvinPerWatt,
    _refuse_unlike,
)
from boxwright.units import Kelvin, Metre, OutOfRange, Ratio, Unit, WattPerSquareMetreKelvin

WattPerMetre = Annotated[float, Unit("W/m", "heat per length")]

SAME = 1e-9
"""Two lines nearer than this (m) are one."""


class SectionField(NamedTuple):
    """A field of temperature: ``x`` across, ``y`` from outside to inside; rows of ``temperatures`` are at one ``y``.

    ``asked`` are the temperatures at the places that were asked for, straight between the four lines around each.
    ``inward`` is the heat that comes in through the inside face for a metre of height (W/m), ``sideways`` through the
    left one, ``outward`` what leaves through the outside one.
    """

    x: tuple[Metre, ...]
    y: tuple[Metre, ...]
    temperatures: tuple[tuple[Kelvin, ...], ...]
    asked: tuple[Kelvin, ...]
    inward: WattPerMetre
    sideways: WattPerMetre
    outward: WattPerMetre
    transmittance: WattPerSquareMetreKelvin
    coldest_inside: Kelvin
    factor: Ratio


def section_field(
    widths: tuple[Metre, ...],
    depths: tuple[Metre, ...],
    conductivities: Rows,
    outside: tuple[Kelvin, SquareMetreKelvinPerWatt],
    inside: tuple[Kelvin, SquareMetreKelvinPerWatt],
    left: tuple[Kelvin, SquareMetreKelvinPerWatt] | None = None,
    asked: tuple[tuple[Metre, Metre], ...] = (),
    finest: Metre = 0.0003,
) -> SectionField:
    """Return the steady temperatures of a section; each face is a temperature (K) and a film (m2K/W).

    ``asked`` are places across and from outside (m) whose temperatures are wanted. The right side is a line of
    symmetry, and so is the left one unless ``left`` says what it looks at. ``finest`` is the first cell at a face
    between materials; cells grow by half from there, up to twenty times as much.

    Satisfies: result.inward + result.sideways - result.outward
    Valid: rectangles that touch; conductivities above zero
    Source: iso-10211 annex A, the two cases in two dimensions
    Departs: nothing
    Assumes: steady; perfect contact; no heat along the stud
    """
    _refuse_unlike(widths, depths, conductivities)
    OutOfRange.unless_positive("finest", finest)
    for film in (outside, inside, *((left,) if left is not None else ())):
        OutOfRange.unless_positive("a film", film[1])
    x, y = _graded(widths, finest), _graded(depths, finest)
    rows, outward, inward, sideways = _solved((x, y), widths, depths, conductivities, (outside, inside, left))
    difference = inside[0] - outside[0]
    if not difference:
        raise OutOfRange("inside", inside[0], outside[0], inf)
    coldest = min(rows[-1])
    return SectionField(
        x,
        y,
        rows,
        tuple(_between(x, y, rows, *place) for place in asked),
        inward,
        sideways,
        outward,
        inward / (sum(widths) * difference),
        coldest,
        (coldest - outside[0]) / difference,
    )


def _graded(spans: tuple[Metre, ...], finest: Metre) -> tuple[Metre, ...]:
    """Return lines across spans that touch: fine at each face, wider by half from line to line towards the middle."""
    lines = [0.0]
    for span in spans:
        half, step = span / 2.0, finest
        steps: list[Metre] = []
        while sum(steps) + step < half:
            steps.append(step)
            step = min(step * 1.5, finest * 20.0)
        scale = half / sum(steps) if steps else 1.0
        steps = [one * scale for one in steps] or [half]
        start = lines[-1]
        for one in (*steps, *reversed(steps)):
            lines.append(lines[-1] + one)
        lines[-1] = start + span
    return tuple(lines)


def _between(
    x: tuple[Metre, ...], y: tuple[Metre, ...], rows: tuple[tuple[Kelvin, ...], ...], across: Metre, deep: Metre
) -> Kelvin:
    """Return the temperature at a place from the four crossings around it."""
    OutOfRange.unless_between("a place across", across, 0.0, x[-1] + SAME)
    OutOfRange.unless_between("a place from outside", deep, 0.0, y[-1] + SAME)
    column = min(max(bisect(x, across) - 1, 0), len(x) - 2)
    row = min(max(bisect(y, deep) - 1, 0), len(y) - 2)
    along = (across - x[column]) / (x[column + 1] - x[column])
    up = (deep - y[row]) / (y[row + 1] - y[row])
    low, high = (rows[one][column] * (1.0 - along) + rows[one][column + 1] * along for one in (row, row + 1))
    return low * (1.0 - up) + high * up


def _solved(
    lines: tuple[tuple[Metre, ...], tuple[Metre, ...]],
    widths: tuple[Metre, ...],
    depths: tuple[Metre, ...],
    conductivities: Rows,
    faces: tuple[tuple[Kelvin, SquareMetreKelvinPerWatt] | None, ...],
) -> tuple[tuple[tuple[Kelvin, ...], ...], float, float, float]:
    """Return temperatures at the crossings of all lines, row by row, and the heat in through the inside, out outside.

    Quadratic rectangles; ``faces`` are outside, inside and left, the last None where it is a line of symmetry.
    """
    # These take most of a second to load: only who asks for a field pays for them.
    import numpy as np
    from skfem import Basis, BilinearForm, ElementQuad0, ElementQuad2, FacetBasis, LinearForm, MeshQuad, asm, solve
    from skfem.helpers import dot, grad

    mesh = MeshQuad.init_tensor(np.array(lines[0]), np.array(lines[1]))
    element = ElementQuad2()
    basis = Basis(mesh, element)
    middle_x, middle_y = mesh.p[:, mesh.t].mean(axis=1)
    column, row = (np.searchsorted(np.cumsum(spans), at) for spans, at in ((widths, middle_x), (depths, middle_y)))
    through = basis.with_element(ElementQuad0()).interpolate(np.array(conductivities)[row, column])
    conduction = BilinearForm(lambda u, v, w: w["through"] * dot(grad(u), grad(v)))
    film = BilinearForm(lambda u, v, w: u * v)
    along = LinearForm(lambda v, w: 1.0 * v)

    matrix, load, passes = asm(conduction, basis, through=through), np.zeros(basis.N), []
    for number, face in enumerate(faces):
        if face is None:
            continue
        axis, at = ((1, 0.0), (1, lines[1][-1]), (0, 0.0))[number]
        facets = mesh.facets_satisfying(lambda p, axis=axis, at=at: abs(p[axis] - at) < SAME, boundaries_only=True)
        looked = FacetBasis(mesh, element, facets=facets)
        length = asm(along, looked)
        matrix = matrix + asm(film, looked) / face[1]
        load += face[0] / face[1] * length
        passes.append((length, face))
    found = solve(matrix, load)
    came = [float(face[0] * length.sum() - length @ found) / face[1] for length, face in passes]
    outward, inward, sideways = -came[0], came[1], sum(came[2:])
    at_corners = found[basis.nodal_dofs[0]]
    rows = np.empty((len(lines[1]), len(lines[0])))
    rows[np.searchsorted(lines[1], mesh.p[1] - SAME), np.searchsorted(lines[0], mesh.p[0] - SAME)] = at_corners
    return tuple(tuple(float(one) for one in each) for each in rows), outward, inward, sideways
