"""A fuel heater: what it burns, how long a filling lasts, what its lowest setting holds, and how it cycles."""

from __future__ import annotations

from typing import Annotated, NamedTuple

from boxwright.units import (
    CubicMetre,
    CubicMetrePerSecond,
    Kelvin,
    Metre,
    OutOfRange,
    Pascal,
    Ratio,
    Second,
    Unit,
    Watt,
)

JoulePerCubicMetre = Annotated[float, Unit("J/m**3", "energy content")]
WattPerKelvin = Annotated[float, Unit("W/K", "heat loss")]
JoulePerKelvin = Annotated[float, Unit("J/K", "heat capacity")]

SEA_LEVEL = 101325.0
"""The pressure (Pa) of the standard atmosphere at sea level."""


def fuel_burnt(heat: Watt, efficiency: Ratio, content: JoulePerCubicMetre) -> CubicMetrePerSecond:
    """Return the fuel a heater burns for its heat.

    Formula: flow = heat / (efficiency * content)
    Valid: efficiency above zero and up to 1, on the lower heating value
    Source: heat-sheet stated hours against burn rate
    Departs: nothing
    Assumes: steady; starting and stopping cost more
    """
    OutOfRange.unless_positive("efficiency", efficiency)
    OutOfRange.unless_between("efficiency", efficiency, 0.0, 1.0)
    OutOfRange.unless_positive("content", content)
    return heat / (efficiency * content)


def heat_of_filling(volume: CubicMetre, lasts: Second, efficiency: Ratio, content: JoulePerCubicMetre) -> Watt:
    """Return the heat a heater must have given if a filling lasted so long.

    Formula: heat = volume * content * efficiency / lasts
    Valid: a time above zero; the whole filling was drawn
    Source: heat-sheet stated hours against burn rate
    Departs: nothing
    Assumes: an empty tank at the end
    """
    OutOfRange.unless_positive("lasts", lasts)
    return volume * content * efficiency / lasts


def filling_lasts(volume: CubicMetre, flow: CubicMetrePerSecond) -> Second:
    """Return how long a filling lasts at one rate of burning.

    Formula: time = volume / flow
    Valid: a flow above zero
    Source: heat-sheet stated hours against burn rate
    Departs: nothing
    Assumes: all of it can be drawn
    """
    OutOfRange.unless_positive("flow", flow)
    return volume / flow


def energy_per_volume(energy: Annotated[float, Unit("J", "energy")], volume: CubicMetre) -> JoulePerCubicMetre:
    """Return the energy in a volume of fuel.

    Formula: content = energy / volume
    Valid: a volume above zero
    Source: greet-heating-values diesel, petrol and propane
    Departs: nothing
    Assumes: the lower heating value
    """
    OutOfRange.unless_positive("volume", volume)
    return energy / volume


def held_outside(inside: Kelvin, heat: Watt, loss: WattPerKelvin) -> Kelvin:
    """Return the temperature outside at which a steady heat just holds the room; at milder ones it gets too warm.

    Formula: outside = inside - heat / loss
    Valid: a loss above zero
    Source: heat-sheet balance of the lowest setting
    Departs: nothing
    Assumes: steady, no sun, nobody in the room but what the heat counts
    """
    OutOfRange.unless_positive("loss", loss)
    return inside - heat / loss


def drifts_to(outside: Kelvin, heat: Watt, loss: WattPerKelvin) -> Kelvin:
    """Return the temperature a room drifts to under a steady heat.

    Formula: inside = outside + heat / loss
    Valid: a loss above zero
    Source: heat-sheet balance of the lowest setting
    Departs: nothing
    Assumes: steady
    """
    OutOfRange.unless_positive("loss", loss)
    return outside + heat / loss


class Cycling(NamedTuple):
    """A heater that switches: how long on, how long off, and the share of time on."""

    on: Second
    off: Second
    share: Ratio


def cycling(capacity: JoulePerKelvin, band: Kelvin, lowest: Watt, needed: Watt) -> Cycling:
    """Return how a heater switches whose lowest setting gives more than is needed.

    Satisfies: result.on * (lowest - needed) - capacity * band; result.off * needed - capacity * band; result.share * lowest - needed
    Valid: a need above zero and below the lowest setting; a controller that may switch off
    Source: heat-sheet cycling
    Departs: nothing
    Assumes: only the air and what follows it fast goes up and down
    """  # noqa: E501
    OutOfRange.unless_positive("needed", needed)
    if not needed < lowest:
        raise OutOfRange("needed", needed, 0.0, lowest)
    return Cycling(capacity * band / (lowest - needed), capacity * band / needed, needed / lowest)


def pressure_at(height: Metre) -> Pascal:
    """Return the pressure of the air at a height above the sea.

    Formula: pressure = SEA_LEVEL * (1 - 2.25577e-5 * height) ** 5.2559
    Units: empirical
    Valid: from 500 m below the sea to 11,000 m above it
    Source: ashrae-2017 chapter 1 table 1
    Departs: nothing
    Assumes: the standard atmosphere; weather moves it by three per cent either way
    """
    OutOfRange.unless_between("height", height, -500.0, 11000.0)
    return float(SEA_LEVEL * (1 - 2.25577e-5 * height) ** 5.2559)


def thin_air(pressure: Pascal) -> Ratio:
    """Return the share of its air that a burner gets up high; unless its fuel is cut as much, it soots.

    Formula: share = pressure / SEA_LEVEL
    Units: empirical
    Valid: equal intake temperature, a fan of fixed speed
    Source: ashrae-2017 chapter 1 table 1
    Departs: nothing
    Assumes: a heater without a setting for height
    """
    return pressure / SEA_LEVEL


class Burnt(NamedTuple):
    """What a kilogram of fuel takes and gives, in kilograms: air, water, carbon dioxide."""

    air: Ratio
    water: Ratio
    carbon_dioxide: Ratio


def burnt(carbon: Ratio, hydrogen: Ratio) -> Burnt:
    """Return the air a fuel needs, and the water and carbon dioxide it makes, for each kilogram of it.

    Satisfies: result.water - hydrogen * 18.015 / 2.016; result.carbon_dioxide - carbon * 44.009 / 12.011; 0.2314 * result.air + carbon + hydrogen - result.water - result.carbon_dioxide
    Valid: a fuel of carbon and hydrogen alone, burnt whole
    Source: afdc-properties number 2 diesel, 87 % carbon and 13 % hydrogen; the rest is stoichiometry
    Departs: nothing
    Assumes: air of 23.14 % oxygen by mass; real heaters take half as much again to three times
    """  # noqa: E501
    OutOfRange.unless_between("carbon and hydrogen", carbon + hydrogen, 0.0, 1.0 + 1e-9)
    water, carbon_dioxide = hydrogen * 18.015 / 2.016, carbon * 44.009 / 12.011
    return Burnt((water + carbon_dioxide - carbon - hydrogen) / 0.2314, water, carbon_dioxide)
