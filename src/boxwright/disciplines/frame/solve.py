"""What frame works out."""

from dataclasses import dataclass

from boxwright.exchange import Mass


@dataclass(frozen=True, slots=True)
class Offers:
    """What frame gives the others."""

    masses: tuple[Mass, ...] = ()


@dataclass(frozen=True, slots=True)
class Result:
    """What frame has worked out."""


def offers() -> Offers:
    """Return what frame gives the others."""
    return Offers()


def solve() -> Result:
    """Return what frame has worked out."""
    return Result()
