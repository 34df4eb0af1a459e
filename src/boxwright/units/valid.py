"""The one exception of the formulas: an argument outside the range a formula is valid for."""

from __future__ import annotations


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
