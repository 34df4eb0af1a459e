"""What power works out: nothing yet."""

from __future__ import annotations

from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What power gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What power has worked out: nothing yet."""


def offers() -> Offers:
    """Return what power gives the others."""
    return Offers()


def solve() -> Result:
    """Return what power has worked out."""
    return Result()
