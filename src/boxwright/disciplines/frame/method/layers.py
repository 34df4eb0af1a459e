"""Formulas of layers and tyres: what a layer weighs, how a lined box is spread, how large a tyre is."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from boxwright.units import Kilogram, Metre, Ratio, SquareMetre, Unit

KilogramPerCubicMetre = Annotated[float, Unit("kg/m**3", "density")]


def plate_mass(area: SquareMetre, thickness: Metre, density: KilogramPerCubicMetre) -> Kilogram:
    """Return the mass of a layer of even thickness.

    Formula: mass = area * thickness * density
    Valid: a layer without holes; openings are not taken off
    Source: openstax-college-physics example: mass of a reservoir from its volume
    Departs: nothing
    Assumes: one density all through
    """
    return area * thickness * density


def mean_square(length: Metre, offset: Metre) -> SquareMetre:
    """Return the mean of the squared distances of a uniform length from a point on its line.

    Formula: mean_square = length**2 / 12 + offset**2
    Valid: any length; offset is that of its middle
    Source: university-physics table of moments of inertia, slender rod about its end
    Departs: divided by the mass
    Assumes: mass spread evenly along the length
    """
    return length**2 / 12 + offset**2


def uniform_length(mean_square: SquareMetre) -> Metre:
    """Return how long a uniform body is whose squared distances from its middle have a given mean.

    Formula: length = (12 * mean_square) ** 0.5
    Valid: mean_square not below zero
    Source: thin-rod I = M L^2 / 12
    Departs: solved for the length, divided by the mass
    Assumes: mass spread evenly along the length
    """
    return sqrt(12 * mean_square)


def tyre_diameter(section: Metre, aspect: Ratio, rim: Metre) -> Metre:
    """Return the overall diameter of a new tyre, off the ground, from the marking on its sidewall.

    Formula: diameter = rim + 2 * section * aspect
    Valid: a metric marking such as 155/65R13
    Source: tyre-marking-155-65 computed dimensions
    Departs: nothing
    Assumes: a nominal tyre; makers vary by a few per cent
    """
    return rim + 2 * section * aspect
