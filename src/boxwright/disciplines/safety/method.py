"""Formulas of safety: how far two things are apart."""

from __future__ import annotations

from math import sqrt

from boxwright.units import Metre

Corner = tuple[Metre, Metre]
"""Along the trailer and across it."""


def gap(low: Corner, high: Corner, other_low: Corner, other_high: Corner) -> Metre:
    """Return how far two upright boxes are apart seen from above, nothing where they overlap.

    Formula: gap = sqrt(max(other_low[0] - high[0], low[0] - other_high[0], 0 * low[0])**2
        + max(other_low[1] - high[1], low[1] - other_high[1], 0 * low[1])**2)
    Valid: boxes along the axes of the trailer, the low corner of each before the high one
    Source: first-principles
    Departs: nothing
    Assumes: nothing of how high either stands
    """
    along = max(other_low[0] - high[0], low[0] - other_high[0], 0.0)
    across = max(other_low[1] - high[1], low[1] - other_high[1], 0.0)
    return sqrt(along**2 + across**2)
