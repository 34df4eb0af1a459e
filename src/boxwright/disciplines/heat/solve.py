"""What heat works out: nothing yet."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What heat gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What heat has worked out: nothing yet."""


def offers() -> Offers:
    """Return what heat gives the others."""
    return Offers()


def solve() -> Result:
    """Return what heat has worked out."""
    return Result()
