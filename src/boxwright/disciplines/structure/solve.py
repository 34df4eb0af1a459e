"""What structure works out: nothing yet."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What structure gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What structure has worked out: nothing yet."""


def offers() -> Offers:
    """Return what structure gives the others."""
    return Offers()


def solve() -> Result:
    """Return what structure has worked out."""
    return Result()
