"""What air offers before anything is warm, and what it works out of the nights heat gives it."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from boxwright.disciplines.air.parts import Section
from boxwright.exchange import Airflow, Moisture, Night, Opening
from boxwright.units import Band, exactly

__all__ = ["Offers", "Result", "offers", "solve"]

UNKNOWN = Band(0.0, 0.0, inf, known=False)


@dataclass(frozen=True, slots=True)
class Offers:
    """How the air of the room can change, and what makes it damp."""

    airflow: Airflow
    moisture: tuple[Moisture, ...]


@dataclass(frozen=True, slots=True)
class Result:
    """What air has worked out in one slot."""

    of: str
    airflow: Airflow


def offers(
    own: Section,
    standing: tuple[tuple[str, str], ...],
    openings: tuple[Opening, ...],
    sleepers: int,
    use: str,
) -> Offers:
    """Return how the air of the room can change in one slot, and what makes it damp.

    ``standing`` pairs the path of each vent and fan that stands with "yes" or "perhaps"; ``sleepers`` are who is
    inside.
    """
    nothing = exactly(0.0)
    return Offers(Airflow("trailer", UNKNOWN, UNKNOWN, nothing, 0.0, nothing, nothing), ())


def solve(
    own: Section,
    offered: Offers,
    openings: tuple[Opening, ...],
    nights: tuple[Night, ...],
    sleepers: int,
    use: str,
    countries: tuple[str, ...],
) -> Result:
    """Return what air has worked out in one slot."""
    return Result("trailer", offered.airflow)
