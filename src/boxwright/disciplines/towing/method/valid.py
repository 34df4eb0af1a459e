"""The one exception of the formulas, and the units they need beyond those everybody has."""

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


class OutOfRange(ValueError):
    """An argument outside the range of a formula. ``low`` and ``high`` are the ends of that range, in SI."""

    def __init__(self, argument: str, value: float, low: float, high: float) -> None:
        super().__init__(f"{argument} is {value:g}; the formula holds between {low:g} and {high:g}")
        self.argument, self.value, self.low, self.high = argument, value, low, high

    @classmethod
    def unless_positive(cls, argument: str, value: float) -> None:
        """Raise where a value that must be above zero is not."""
        if not value > 0.0:
            raise cls(argument, value, 0.0, float("inf"))

    @classmethod
    def unless_between(cls, argument: str, value: float, low: float, high: float) -> None:
        """Raise where a value is outside its two ends."""
        if not low <= value <= high:
            raise cls(argument, value, low, high)
