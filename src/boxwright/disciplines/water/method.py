"""Formulas of water: what is in a tank weighs something."""

from __future__ import annotations

from typing import Annotated

from boxwright.units import CubicMetre, Kilogram, Ratio, Unit

KilogramPerCubicMetre = Annotated[float, Unit("kg/m**3", "density")]


def fluid_mass(volume: CubicMetre, density: KilogramPerCubicMetre, fill: Ratio) -> Kilogram:
    """Return the mass of what is in a tank.

    Formula: mass = volume * density * fill
    Valid: fill from 0, empty, to 1, full
    Source: openstax-college-physics example: mass of a reservoir from its volume
    Departs: a share of the volume
    Assumes: the volume on the label is what it holds
    """
    return volume * density * fill
