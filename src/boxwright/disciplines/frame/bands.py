"""Lengths with their doubt, added end by end: what lies behind what, and how near one thing is to another."""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

from boxwright.units import Band, exactly

UNKNOWN = Band(0.0, -inf, inf, known=False)
SMALL = 1e-9
"""Metres below which two places are one."""


def around(best: float, within: float, assumed: bool = False) -> Band:
    """Return a length that is off by at most ``within`` either way."""
    return Band(best, best - within, best + within, spread="interval" if within else "exact", assumed=assumed)


def moved(band: Band, by: float) -> Band:
    """Return a length moved as a whole."""
    return Band(band.best + by, band.low + by, band.high + by, band.known, band.spread, band.assumed)


def together(lengths: Iterable[Band]) -> Band:
    """Return lengths that lie behind each other as one; nothing is nothing thick."""
    total = exactly(0.0)
    for one in lengths:
        total = _joined(total, one.best, one.low, one.high, one)
    return total


def less(one: Band, other: Band) -> Band:
    """Return what is left of a length when another is taken off."""
    return _joined(one, -other.best, -other.high, -other.low, other)


def _joined(one: Band, best: float, low: float, high: float, other: Band) -> Band:
    is_doubtful = any(part.spread != "exact" for part in (one, other))
    return Band(
        one.best + best,
        one.low + low,
        one.high + high,
        one.known and other.known,
        "interval" if is_doubtful else "exact",
        one.assumed or other.assumed,
    )


def above_nothing(band: Band | None) -> Band | None:
    """Return a size where somebody gave it and it is one; nothing, or less, is none."""
    return band if band is not None and band.known and min(band.best, band.low) > 0.0 else None


def known(band: Band | None) -> Band | None:
    """Return a length where somebody gave it, else None."""
    return band if band is not None and band.known else None
