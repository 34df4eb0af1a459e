"""A number with its doubt, and the error of a text that is no number."""

from __future__ import annotations

import math
from typing import Literal

from boxwright.records import dataclass

Spread = Literal["exact", "sigma", "interval", "fill", "perhaps"]
"""How a band was written, which decides how it is combined (DESIGN 12):

exact     no doubt was stated
sigma     `45 +-5`: half-width at 95 %, combined in quadrature
interval  `40..55` or `about 45`: nothing known inside, standard uncertainty = half-width / sqrt 3, in quadrature
fill      a permitted extreme of a load state (a tank between two levels): added straight, and permitted
perhaps   a part that may or may not be there (0..weight): added straight, and a doubt
"""

COVERAGE = 1.959963984540054
"""Half-width at 95 % divided by the standard uncertainty, of a normal distribution."""


@dataclass(frozen=True, slots=True)
class Band:
    """A number with its doubt, in SI. ``known = False`` means that no number was given.

    An unknown mass is ``Band(0.0, 0.0, inf, known=False)``: nothing below zero, no upper end. ``best`` of an unknown
    number is only what a sum may start from; whoever shows it must say that it is unknown.
    """

    best: float
    low: float
    high: float
    known: bool = True
    spread: Spread = "exact"
    assumed: bool = False

    @property
    def standard_uncertainty(self) -> float:
        """Return the standard uncertainty; zero for exact, fill and perhaps, which are never put in quadrature."""
        if self.spread == "sigma":
            return (self.high - self.low) / 2.0 / COVERAGE
        if self.spread == "interval":
            return (self.high - self.low) / 2.0 / math.sqrt(3.0)
        return 0.0


def exactly(value: float) -> Band:
    """Return a number without doubt as a band."""
    return Band(value, value, value)


class CannotRead(ValueError):
    """A text that is not a number of the quantity asked for: what was read, what was expected, how to write it."""

    def __init__(self, read: str, expected: str, write: str) -> None:
        super().__init__(f'cannot read {expected} "{read}"; write it as {write}')
        self.read, self.expected, self.write = read, expected, write

    def __reduce__(self) -> tuple[type[CannotRead], tuple[str, str, str]]:
        """Return what rebuilds it, so that a worker process can hand it back."""
        return CannotRead, (self.read, self.expected, self.write)


@dataclass(frozen=True, slots=True)
class HeaderUnits:
    """The ``units:`` line of a rig file: the unit of a bare number, one per quantity; ``None`` where none is given.

    ``words`` is the home country's language of the trade ("US", "UK", "AU" ...): it decides which gallon is meant.
    """

    length: str | None = None
    weight: str | None = None
    temperature: str | None = None
    volume: str | None = None
    wire: str | None = None
    money: str | None = None
    words: str = "US"
