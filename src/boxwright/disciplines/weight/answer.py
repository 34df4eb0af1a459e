"""One answer from its reach over the parts and the doubts of the trailer's own measures."""

from __future__ import annotations

from collections.abc import Iterable
from math import sqrt
from typing import NamedTuple

from boxwright.disciplines.weight.linear import Coefficients, Pool, Reach, rounded
from boxwright.disciplines.weight.result import Output
from boxwright.units import COVERAGE, Band


class Spread(NamedTuple):
    """What one doubtful measure of the trailer does to an answer: its value with the measure at either end."""

    path: str
    band: Band
    low: float
    high: float

    @property
    def standard_uncertainty(self) -> float:
        """Return the standard uncertainty the measure gives to the answer."""
        half = abs(self.high - self.low) / 2.0
        return half / COVERAGE if self.band.spread == "sigma" else half / sqrt(3.0)


def answer(
    of: str, name: str, unit: str, pool: Pool, moved_by: Coefficients, reach: Reach, spreads: Iterable[Spread] = ()
) -> Output:
    """Return an answer as a record; ``moved_by`` says which of the open parts can move it."""
    spreads = tuple(spreads)
    half = COVERAGE * sqrt(reach.variance + sum(spread.standard_uncertainty**2 for spread in spreads))
    unknown = {item.of for item in pool.open if item.why == "unknown" and item.moves(moved_by)}
    is_closed = reach.low == reach.best == reach.high
    band = Band(
        rounded(reach.best),
        rounded(reach.low - half),
        rounded(reach.high + half),
        known=not unknown,
        spread="interval" if not is_closed else "sigma" if half > 0.0 else "exact",
        assumed=any(spread.band.assumed and spread.standard_uncertainty > 0.0 for spread in spreads),
    )
    permitted = rounded(reach.permitted_low), rounded(reach.permitted_high)
    return Output(of, name, unit, band, rounded(half), *permitted, tuple(sorted(unknown)))


def unanswered(of: str, name: str, unit: str, missing: tuple[str, ...]) -> Output:
    """Return an answer that cannot be given, with the paths of what is missing."""
    nothing = Band(0.0, float("-inf"), float("inf"), known=False)
    return Output(of, name, unit, nothing, 0.0, 0.0, 0.0, missing)
