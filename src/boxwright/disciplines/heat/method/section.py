"""A wall across a stud, cut through: by the hand rules, and the widths they need.

A section is written as columns and rows: ``widths`` across it, ``depths`` from outside to inside, ``conductivities``
row by row. One stud spacing repeats it, or half of one between two lines of symmetry.
"""

from __future__ import annotations

from math import inf
from typing import Annotated

from boxwright.units import Metre, OutOfRange, Ratio, Unit, WattPerSquareMetreKelvin

WattPerMetreKelvin = Annotated[float, Unit("W/m/K", "conductivity")]
SquareMetreKelvinPerWatt = Annotated[float, Unit("m**2*K/W", "resistance to heat")]
Rows = tuple[tuple[WattPerMetreKelvin, ...], ...]

RADIATION_AT_10_C = 5.1
"""How much heat two black faces exchange at 10 C, W/m2K: ISO 6946."""


def layers_transmittance(
    depths: tuple[Metre, ...], conductivities: tuple[WattPerMetreKelvin, ...], films: SquareMetreKelvinPerWatt
) -> WattPerSquareMetreKelvin:
    """Return the transmittance of layers that lie flat on each other; ``films`` are those of both faces together.

    Formula: transmittance = 1 / (films + sum(depth / conductivity for depth, conductivity in zip(depths, conductivities)))
    Valid: conductivities and films above zero
    Source: first-principles layers in series, as ISO 6946 has them
    Departs: nothing
    Assumes: no stud, no gap between the layers
    """  # noqa: E501
    OutOfRange.unless_positive("films", films)
    for one in conductivities:
        OutOfRange.unless_positive("a conductivity", one)
    return 1 / (films + sum(depth / conductivity for depth, conductivity in zip(depths, conductivities, strict=False)))


def air_layer_resistance(
    convection: WattPerSquareMetreKelvin, warm_emittance: Ratio, cold_emittance: Ratio
) -> SquareMetreKelvinPerWatt:
    """Return the resistance of a still air layer from its convection and the emittance of both its faces.

    Formula: resistance = 1 / (convection + RADIATION_AT_10_C / (1 / warm_emittance + 1 / cold_emittance - 1))
    Units: empirical
    Valid: about 10 C; emittances above zero and up to 1
    Source: iso-6946 air layers
    Departs: nothing
    Assumes: a layer that is much wider than deep; dust raises the emittance of foil
    """
    for one in (warm_emittance, cold_emittance):
        OutOfRange.unless_positive("an emittance", one)
        OutOfRange.unless_between("an emittance", one, 0.0, 1.0)
    return 1 / (convection + RADIATION_AT_10_C / (1 / warm_emittance + 1 / cold_emittance - 1))


def still_air_convection(depth: Metre) -> WattPerSquareMetreKelvin:
    """Return the convection across a still upright air layer.

    Formula: convection = max(1.25, 0.025 / depth)
    Units: empirical
    Valid: depths above zero; from 0.3 m on it is a room with films of its own
    Source: iso-6946 air layers, heat across the horizontal
    Departs: nothing
    Assumes: a difference of less than 5 K across the layer
    """
    OutOfRange.unless_positive("depth", depth)
    return max(1.25, 0.025 / depth)


def parallel_path(
    widths: tuple[Metre, ...], depths: tuple[Metre, ...], conductivities: Rows, films: SquareMetreKelvinPerWatt
) -> WattPerSquareMetreKelvin:
    """Return the transmittance of a section if no heat crossed from column to column: too low where metal bridges.

    Satisfies: result * sum(widths) - sum(wide / (films + sum(deep / row[at] for deep, row in zip(depths, conductivities))) for at, wide in enumerate(widths))
    Valid: wood studs; for metal it is a lower bound and no more
    Source: heat-sheet hand methods
    Departs: nothing
    Assumes: heat goes straight through
    """  # noqa: E501
    _refuse_unlike(widths, depths, conductivities)
    columns = (tuple(row[at] for row in conductivities) for at in range(len(widths)))
    through = sum(
        wide * layers_transmittance(depths, column, films) for wide, column in zip(widths, columns, strict=True)
    )
    return through / sum(widths)


def even_planes(
    widths: tuple[Metre, ...], depths: tuple[Metre, ...], conductivities: Rows, films: SquareMetreKelvinPerWatt
) -> WattPerSquareMetreKelvin:
    """Return the transmittance of a section if each plane between rows were of one temperature: an upper bound.

    Satisfies: 1 / result - films - sum(deep * sum(widths) / sum(wide * one for wide, one in zip(widths, row)) for deep, row in zip(depths, conductivities))
    Valid: any section
    Source: heat-sheet hand methods
    Departs: nothing
    Assumes: heat spreads freely along each plane
    """  # noqa: E501
    _refuse_unlike(widths, depths, conductivities)
    across = sum(widths)
    mean = tuple(sum(wide * one for wide, one in zip(widths, row, strict=True)) / across for row in conductivities)
    return layers_transmittance(depths, mean, films)


def mean_of_bounds(lower: WattPerSquareMetreKelvin, upper: WattPerSquareMetreKelvin) -> WattPerSquareMetreKelvin:
    """Return the transmittance whose resistance is the mean of those of both bounds.

    Formula: transmittance = 2 / (1 / lower + 1 / upper)
    Valid: bounds within half of each other; insulation that metal bridges lies outside its standard
    Source: iso-6946 combined method
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("lower", lower)
    OutOfRange.unless_positive("upper", upper)
    return 2 / (1 / lower + 1 / upper)


def zone_width(face: Metre, cover: Metre) -> Metre:
    """Return how wide a strip of wall a metal stud draws heat from; ``cover`` is what lies over its face.

    Formula: width = face + 2 * max(cover, 0.0127)
    Units: empirical
    Valid: a metal stud
    Source: ashrae-zone the width of the zone
    Departs: nothing
    Assumes: the cover is the thicker of both sides
    """
    OutOfRange.unless_positive("face", face)
    OutOfRange.unless_between("cover", cover, 0.0, inf)
    return face + 2 * max(cover, 0.0127)


def zone_method(
    zone: Metre,
    widths: tuple[Metre, ...],
    depths: tuple[Metre, ...],
    conductivities: Rows,
    films: SquareMetreKelvinPerWatt,
) -> WattPerSquareMetreKelvin:
    """Return the transmittance of a section whose stud stands in its first columns and draws heat from a zone.

    The last column is the plain part between studs; ``zone`` is measured from the first column on.

    Satisfies: result * sum(widths) - zone * even_planes((*widths[:-1], zone - sum(widths[:-1])), depths, conductivities, films) - (sum(widths) - zone) / (films + sum(deep / row[-1] for deep, row in zip(depths, conductivities)))
    Valid: a zone wider than the stud and not wider than the section
    Source: ashrae-zone the zone method
    Departs: nothing
    Assumes: planes of one temperature within the zone, heat straight through beside it
    """  # noqa: E501
    _refuse_unlike(widths, depths, conductivities)
    stud, across = sum(widths[:-1]), sum(widths)
    OutOfRange.unless_between("zone", zone, stud, across)
    within = even_planes((*widths[:-1], zone - stud), depths, conductivities, films)
    beside = layers_transmittance(depths, tuple(row[-1] for row in conductivities), films)
    return (zone * within + (across - zone) * beside) / across


def stud_cavity_resistance(nominal: SquareMetreKelvinPerWatt, factor: Ratio) -> SquareMetreKelvinPerWatt:
    """Return what insulation between steel studs is worth, by a table's factor.

    Formula: resistance = nominal * factor
    Valid: the stud depth and spacing of the table's row
    Source: ashrae-90-1 appendix A
    Departs: nothing
    Assumes: C-studs of 1.1 mm steel with board on both faces
    """
    OutOfRange.unless_between("factor", factor, 0.0, 1.0)
    return nominal * factor


def _refuse_unlike(widths: tuple[Metre, ...], depths: tuple[Metre, ...], conductivities: Rows) -> None:
    """Raise where rows and columns do not fit, or one of them is nothing."""
    if len(conductivities) != len(depths) or any(len(row) != len(widths) for row in conductivities):
        raise OutOfRange("conductivities", float(len(conductivities)), float(len(depths)), float(len(depths)))
    for one in (*widths, *depths, *(each for row in conductivities for each in row)):
        OutOfRange.unless_positive("a width, a depth or a conductivity", one)
