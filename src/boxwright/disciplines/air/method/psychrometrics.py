"""Moist air: how much water it holds, and when it lets it go."""

from __future__ import annotations

from math import exp, inf, log
from typing import Annotated

from boxwright.units import Kelvin, OutOfRange, Pascal, Ratio, Unit

KilogramPerCubicMetre = Annotated[float, Unit("kg/m**3", "density")]

TRIPLE_POINT = 273.16
"""The temperature (K) above which water vapour settles as water and below which as frost."""
COLDEST, HOTTEST = 173.15, 473.15
WATER_TO_AIR = 0.621945
"""The mass of a mole of water over that of a mole of dry air."""
GAS_CONSTANT_OF_DRY_AIR = 287.042
"""J per kg and K."""


def over_ice(temperature: Kelvin) -> Ratio:
    """Return the natural logarithm of the saturation pressure over ice, in pascal.

    Formula: exponent = -5674.5359 / temperature + 6.3925247 - 9.677843e-3 * temperature + 6.2215701e-7 * temperature**2 + 2.0747825e-9 * temperature**3 - 9.484024e-13 * temperature**4 + 4.1635019 * log(temperature)
    Units: empirical
    Valid: from -100 C to the triple point; beyond it the curve runs on without meaning
    Source: psychrolib-source GetSatVapPres, the Hyland and Wexler curve of ASHRAE Fundamentals 2017 chapter 1
    Departs: nothing
    Assumes: pure water
    """  # noqa: E501
    return (
        -5674.5359 / temperature
        + 6.3925247
        - 9.677843e-3 * temperature
        + 6.2215701e-7 * temperature**2
        + 2.0747825e-9 * temperature**3
        - 9.484024e-13 * temperature**4
        + 4.1635019 * log(temperature)
    )


def over_water(temperature: Kelvin) -> Ratio:
    """Return the natural logarithm of the saturation pressure over water, in pascal.

    Formula: exponent = -5800.2206 / temperature + 1.3914993 - 4.8640239e-2 * temperature + 4.1764768e-5 * temperature**2 - 1.4452093e-8 * temperature**3 + 6.5459673 * log(temperature)
    Units: empirical
    Valid: from the triple point to 200 C; beyond it the curve runs on without meaning
    Source: psychrolib-source GetSatVapPres, the Hyland and Wexler curve of ASHRAE Fundamentals 2017 chapter 1
    Departs: nothing
    Assumes: pure water
    """  # noqa: E501
    return (
        -5800.2206 / temperature
        + 1.3914993
        - 4.8640239e-2 * temperature
        + 4.1764768e-5 * temperature**2
        - 1.4452093e-8 * temperature**3
        + 6.5459673 * log(temperature)
    )


def saturation_pressure(temperature: Kelvin) -> Pascal:
    """Return the vapour pressure at which air of a temperature can hold no more water.

    Formula: pressure = exp(over_ice(temperature) if temperature <= TRIPLE_POINT else over_water(temperature))
    Units: empirical
    Valid: from -100 to 200 C
    Source: psychrolib-source GetSatVapPres
    Departs: nothing
    Assumes: no enhancement by the air it is mixed with (0.2 to 0.6 per cent in humidity ratio)
    """
    OutOfRange.unless_between("temperature", temperature, COLDEST, HOTTEST)
    return exp(over_ice(temperature) if temperature <= TRIPLE_POINT else over_water(temperature))


def dew_point(vapour_pressure: Pascal) -> Kelvin:
    """Return the temperature at which air of a vapour pressure begins to drip, or to grow frost.

    Satisfies: (saturation_pressure(result) - vapour_pressure) / vapour_pressure
    Valid: vapour pressures that air holds between -100 and 200 C
    Source: psychrolib-source GetTDewPointFromVapPres
    Departs: found by bisection, to the last digit
    Assumes: what `saturation_pressure` assumes
    """
    low, high = COLDEST, HOTTEST
    OutOfRange.unless_between("vapour_pressure", vapour_pressure, saturation_pressure(low), saturation_pressure(high))
    for _ in range(200):
        middle = (low + high) / 2.0
        if middle in (low, high):
            break
        low, high = (middle, high) if saturation_pressure(middle) < vapour_pressure else (low, middle)
    return high


def humidity_ratio(vapour_pressure: Pascal, pressure: Pascal) -> Ratio:
    """Return how much water there is to a mass of dry air.

    Formula: ratio = WATER_TO_AIR * vapour_pressure / (pressure - vapour_pressure)
    Valid: vapour pressure from zero to less than the pressure of the air
    Source: psychrolib-source GetHumRatioFromVapPres
    Departs: nothing
    Assumes: ideal gases
    """
    OutOfRange.unless_positive("pressure", pressure)
    if not 0.0 <= vapour_pressure < pressure:
        raise OutOfRange("vapour_pressure", vapour_pressure, 0.0, pressure)
    return WATER_TO_AIR * vapour_pressure / (pressure - vapour_pressure)


def vapour_pressure(humidity_ratio: Ratio, pressure: Pascal) -> Pascal:
    """Return the vapour pressure of air that holds so much water.

    Formula: vapour = pressure * humidity_ratio / (WATER_TO_AIR + humidity_ratio)
    Valid: a humidity ratio that is not below zero
    Source: psychrolib-source GetVapPresFromHumRatio
    Departs: nothing
    Assumes: ideal gases
    """
    OutOfRange.unless_between("humidity_ratio", humidity_ratio, 0.0, inf)
    return pressure * humidity_ratio / (WATER_TO_AIR + humidity_ratio)


def wet_bulb_humidity(dry_bulb: Kelvin, wet_bulb: Kelvin, pressure: Pascal) -> Ratio:
    """Return the humidity ratio from a dry and a wetted thermometer in moving air.

    Satisfies: ((2501.0 + 1.86 * (dry_bulb - 273.15) - 4.186 * (wet_bulb - 273.15)) * result - (2501.0 - 2.326 * (wet_bulb - 273.15)) * humidity_ratio(saturation_pressure(wet_bulb), pressure) + 1.006 * (dry_bulb - wet_bulb)) / 2501.0
    Valid: a wet bulb above freezing and not above the dry bulb
    Source: psychrolib-source GetHumRatioFromTWetBulb
    Departs: refuses a frozen wet bulb
    Assumes: a wet bulb that is washed by moving air
    """  # noqa: E501
    OutOfRange.unless_between("wet_bulb", wet_bulb, TRIPLE_POINT, dry_bulb)
    dry, wet = dry_bulb - 273.15, wet_bulb - 273.15
    saturated = humidity_ratio(saturation_pressure(wet_bulb), pressure)
    return ((2501.0 - 2.326 * wet) * saturated - 1.006 * (dry - wet)) / (2501.0 + 1.86 * dry - 4.186 * wet)


def air_density(temperature: Kelvin, humidity_ratio: Ratio, pressure: Pascal) -> KilogramPerCubicMetre:
    """Return the mass of dry air in a volume of moist air.

    Formula: density = pressure / (GAS_CONSTANT_OF_DRY_AIR * temperature * (1 + humidity_ratio / WATER_TO_AIR))
    Units: empirical
    Valid: a temperature and a pressure above zero
    Source: psychrolib-source GetMoistAirVolume, turned over
    Departs: per volume instead of per mass
    Assumes: ideal gases
    """
    OutOfRange.unless_positive("temperature", temperature)
    return pressure / (GAS_CONSTANT_OF_DRY_AIR * temperature * (1 + humidity_ratio / WATER_TO_AIR))


def standard_pressure(altitude: Annotated[float, Unit("m", "length")]) -> Pascal:
    """Return the pressure of the air at a height above the sea.

    Formula: pressure = 101325 * (1 - 2.25577e-5 * altitude) ** 5.2559
    Units: empirical
    Valid: from 500 m below the sea to 11,000 m above it
    Source: psychrolib-source GetStandardAtmPressure
    Departs: nothing
    Assumes: the standard atmosphere; weather moves it by three per cent either way
    """
    OutOfRange.unless_between("altitude", altitude, -500.0, 11000.0)
    return float(101325 * (1 - 2.25577e-5 * altitude) ** 5.2559)
