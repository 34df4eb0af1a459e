"""What a face outside feels: the air, the sun, and a sky that is colder than the air."""

from __future__ import annotations

from math import log
from typing import Annotated

from boxwright.units import Kelvin, OutOfRange, Ratio, Unit, WattPerSquareMetreKelvin

WattPerSquareMetre = Annotated[float, Unit("W/m**2", "irradiance")]

STEFAN_BOLTZMANN = 5.670374419e-8
"""W/m2K4"""


def sky_emittance(dew_point: Kelvin) -> Ratio:
    """Return how much a clear night sky radiates, as a share of a black one as warm as the air at the ground.

    Formula: emittance = 0.711 + 0.56 * (dew_point - 273.15) / 100 + 0.73 * ((dew_point - 273.15) / 100) ** 2
    Units: empirical
    Valid: a clear sky; dew points from -20 to 30 C
    Source: berdahl-martin coefficients 0.711, 0.56, 0.73
    Departs: without the terms for the hour and the pressure, which are small
    Assumes: nothing
    """
    return 0.711 + 0.56 * (dew_point - 273.15) / 100 + 0.73 * ((dew_point - 273.15) / 100) ** 2


def warm_sky_emittance(dew_point: Kelvin) -> Ratio:
    """Return how much a clear sky radiates by another fit, which gives a warmer sky: the two are shown as a range.

    Formula: emittance = 0.787 + 0.764 * log(dew_point / 273)
    Units: empirical
    Valid: a clear sky
    Source: energyplus-sky worked example
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("dew_point", dew_point)
    return 0.787 + 0.764 * log(dew_point / 273)


def cloud_factor(tenths: Ratio) -> Ratio:
    """Return how much more a sky of so many tenths of cloud radiates than a clear one.

    Formula: factor = 1 + 0.0224 * tenths - 0.0035 * tenths**2 + 0.00028 * tenths**3
    Valid: 0 to 10 tenths
    Source: energyplus-sky equation for opaque cloud
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_between("tenths", tenths, 0.0, 10.0)
    return 1 + 0.0224 * tenths - 0.0035 * tenths**2 + 0.00028 * tenths**3


def sky_temperature(air: Kelvin, emittance: Ratio) -> Kelvin:
    """Return the temperature of a black sky that radiates as much.

    Formula: sky = air * emittance**0.25
    Valid: an emittance above zero
    Source: berdahl-martin sky temperature
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("emittance", emittance)
    return float(air * emittance**0.25)


def sky_radiation(air: Kelvin, emittance: Ratio) -> WattPerSquareMetre:
    """Return the heat a level face receives from the sky.

    Formula: radiation = STEFAN_BOLTZMANN * emittance * air**4
    Units: empirical
    Valid: a temperature above zero
    Source: energyplus-sky worked example
    Departs: the constant of today, 5.6704e-8, for 5.6697e-8
    Assumes: nothing
    """
    return STEFAN_BOLTZMANN * emittance * air**4


def sol_air(
    air: Kelvin, sun: WattPerSquareMetre, absorptance: Ratio, film: WattPerSquareMetreKelvin, sky_drop: Kelvin
) -> Kelvin:
    """Return the temperature of air that alone would do to a face what air, sun and sky do together.

    ``sky_drop`` is how much colder (K) the sky makes a face that the sun does not reach.

    Formula: felt = air + absorptance * sun / film - sky_drop
    Valid: a film above zero
    Source: ashrae-sol-air equations 28 to 30
    Departs: nothing
    Assumes: a face without mass
    """
    OutOfRange.unless_positive("film", film)
    return air + absorptance * sun / film - sky_drop
