"""What heat works out of one slot: what its planes are made of so far, and what warms the room."""

from __future__ import annotations

from dataclasses import dataclass

from boxwright.disciplines.heat.parts import PlannedHeater, Section
from boxwright.exchange import Airflow, Layup, Moisture, Night, Opening

__all__ = ["Offers", "Result", "offers", "solve"]


@dataclass(frozen=True, slots=True)
class Offers:
    """What heat gives the others: nothing yet."""


@dataclass(frozen=True, slots=True)
class Result:
    """What heat has worked out in one slot: the heaters that stand in it, and its nights."""

    of: str
    heaters: tuple[PlannedHeater, ...]
    nights: tuple[Night, ...]


def offers() -> Offers:
    """Return what heat gives the others."""
    return Offers()


def solve(
    own: Section,
    standing: tuple[tuple[str, str], ...],
    layups: tuple[Layup, ...],
    openings: tuple[Opening, ...],
    airflow: Airflow,
    moisture: tuple[Moisture, ...],
    sleepers: int,
    use: str,
) -> Result:
    """Return what heat has worked out in one slot.

    ``standing`` pairs the path of each heater that stands with "yes" or "perhaps"; ``sleepers`` are who is inside.
    """
    there = dict(standing)
    return Result("trailer", tuple(one for one in own.heaters if one.of in there), ())
