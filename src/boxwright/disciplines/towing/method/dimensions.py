"""The units and the constant that the formulas of towing need beyond those everybody has."""

from __future__ import annotations

from typing import Annotated

from boxwright.units import Unit

MetrePerSecondSquared = Annotated[float, Unit("m/s**2", "acceleration")]
KilogramPerCubicMetre = Annotated[float, Unit("kg/m**3", "density")]
NewtonMetre = Annotated[float, Unit("N*m", "torque")]
JoulePerCubicMetre = Annotated[float, Unit("J/m**3", "heat in a fuel")]
CubicMetrePerMetre = Annotated[float, Unit("m**2", "fuel for a distance")]

STANDARD_GRAVITY = 9.80665
"""m/s2; 3rd General Conference on Weights and Measures, 1901 (from memory)."""
