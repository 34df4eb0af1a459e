"""What stages works out: nothing yet."""

from __future__ import annotations

from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What stages gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What stages has worked out: nothing yet."""


def offers() -> Offers:
    """Return what stages gives the others."""
    return Offers()


def solve() -> Result:
    """Return what stages has worked out."""
    return Result()
