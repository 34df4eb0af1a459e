"""What water offers: the masses of what is in the tanks. It judges nothing yet, so there is nothing to solve."""

from __future__ import annotations

from dataclasses import replace
from math import inf

from boxwright.disciplines.water import method
from boxwright.disciplines.water.parts import StandingTank
from boxwright.disciplines.water.sourced import density_of
from boxwright.exchange import Mass
from boxwright.model.place import Place, shifted
from boxwright.records import dataclass
from boxwright.units import Band, Spread

UNKNOWN_MASS = Band(0.0, 0.0, inf, known=False)


@dataclass(frozen=True, slots=True)
class Offers:
    """The masses of what is in the tanks; of what nobody named they lie between the lightest and heaviest fluid."""

    masses: tuple[Mass, ...]


@dataclass(frozen=True, slots=True)
class Result:
    """What water has worked out: nothing yet."""


def offers(tanks: tuple[StandingTank, ...]) -> Offers:
    """Return the masses of what is in the tanks that stand. A tank that is empty for certain gives none."""
    holding = tuple(tank for tank in tanks if tank.fill.high > 0.0)
    return Offers(tuple(_fluid(tank) for tank in holding))


def _fluid(tank: StandingTank) -> Mass:
    """Return what is in one tank, at the middle of the depth it is filled to."""
    place = _filled(tank.place, tank.fill.best)
    group = f"density of {tank.tank.of}" if tank.tank.of else ""
    return Mass(tank.of, "fluid", group, _kilograms(tank), place.x, place.y, place.z, place.size)


def _kilograms(tank: StandingTank) -> Band:
    """Return the mass: unknown without a volume; else between the ends of volume, density and fill.

    A fill that is left open, and a tank that stands perhaps, decide how the band is combined: they are extremes.
    """
    volume, fill, share = tank.tank.volume, tank.fill, tank.share
    if volume is None or not volume.known:
        return UNKNOWN_MASS
    density = density_of(tank.tank.of)
    best, low, high = (
        method.fluid_mass(cubic_metres, of, full) * counted
        for cubic_metres, of, full, counted in (
            (volume.best, density.best, fill.best, share.best),
            (volume.low, density.low, fill.low, share.low),
            (volume.high, density.high, fill.high, share.high),
        )
    )
    spread: Spread = "perhaps" if share.spread == "perhaps" else "fill" if fill.low != fill.high else "interval"
    return Band(best, low, high, spread=spread, assumed=volume.assumed or density.assumed or fill.assumed)


def _filled(place: Place, fill: float) -> Place:
    """Return the place of what is in a tank that is filled to a share of its height, on level ground."""
    length, width, height = place.size
    depth = height * fill
    return replace(place, z=shifted(place.z, (depth - height) / 2.0), size=(length, width, depth))


def solve() -> Result:
    """Return what water has worked out."""
    return Result()
