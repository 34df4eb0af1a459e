"""What air works out: nothing yet."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """What air gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What air has worked out: nothing yet."""


def offers() -> Offers:
    """Return what air gives the others."""
    return Offers()


def solve() -> Result:
    """Return what air has worked out."""
    return Result()
