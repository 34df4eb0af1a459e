"""What cutting works out: nothing yet."""

from __future__ import annotations

from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What cutting gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What cutting has worked out: nothing yet."""


def offers() -> Offers:
    """Return what cutting gives the others."""
    return Offers()


def solve() -> Result:
    """Return what cutting has worked out."""
    return Result()
