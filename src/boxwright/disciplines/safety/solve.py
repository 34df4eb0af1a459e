"""What safety works out: nothing yet."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What safety gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What safety has worked out: nothing yet."""


def offers() -> Offers:
    """Return what safety gives the others."""
    return Offers()


def solve() -> Result:
    """Return what safety has worked out."""
    return Result()
