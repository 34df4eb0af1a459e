"""What water works out."""

from dataclasses import dataclass

from boxwright.exchange import Mass


@dataclass(frozen=True, slots=True)
class Offers:
    """What water gives the others."""

    masses: tuple[Mass, ...] = ()


@dataclass(frozen=True, slots=True)
class Result:
    """What water has worked out."""


def offers() -> Offers:
    """Return what water gives the others."""
    return Offers()


def solve() -> Result:
    """Return what water has worked out."""
    return Result()
