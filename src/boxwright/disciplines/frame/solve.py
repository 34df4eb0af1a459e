"""What the frame offers: the masses of its layers and of what fills its openings, and the trailer as a body on wheels.

It judges nothing yet, so there is nothing to solve.
"""

from __future__ import annotations

from dataclasses import dataclass

from boxwright.disciplines.frame.box import box_of, inside_of
from boxwright.disciplines.frame.lining import UNKNOWN_MASS, layer_masses, surfaces, there
from boxwright.disciplines.frame.parts import Framing, StandingLayer, StandingOpening
from boxwright.exchange import Box, Mass
from boxwright.model.trailer import Trailer

__all__ = ["Offers", "Result", "offers", "solve", "surfaces"]


@dataclass(frozen=True, slots=True)
class Offers:
    """The masses of layers and opening units, and the trailer's measures."""

    masses: tuple[Mass, ...]
    box: Box


@dataclass(frozen=True, slots=True)
class Result:
    """What the frame has worked out: nothing yet."""


def offers(
    layers: tuple[StandingLayer, ...],
    openings: tuple[StandingOpening, ...],
    trailer: Trailer,
    framing: Framing | None = None,
) -> Offers:
    """Return the masses of what stands of walls and openings, and the trailer as a body on wheels."""
    masses = layer_masses(layers, inside_of(trailer), framing)
    units = tuple(_unit_mass(standing) for standing in openings if standing.opening.unit is not None)
    return Offers(masses + units, box_of(trailer))


def _unit_mass(standing: StandingOpening) -> Mass:
    """Return the mass of the unit in an opening, at the opening's place."""
    unit, place = standing.opening.unit, standing.place
    kg = unit.weight if unit is not None and unit.weight is not None else UNKNOWN_MASS
    return Mass(standing.of, "dry", "", there(kg, standing.share), place.x, place.y, place.z, place.size)


def solve() -> Result:
    """Return what the frame has worked out."""
    return Result()
