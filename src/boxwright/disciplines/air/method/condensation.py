"""Where water settles: on a surface, and inside a wall."""

from __future__ import annotations

from math import exp
from typing import Annotated, NamedTuple

from boxwright.units import Kelvin, Metre, OutOfRange, Pascal, Ratio, Second, Unit, WattPerSquareMetreKelvin

SquareMetreKelvinPerWatt = Annotated[float, Unit("m**2*K/W", "resistance to heat")]
KilogramPerSquareMetre = Annotated[float, Unit("kg/m**2", "mass per area")]
KilogramPerMetreSecondPascal = Annotated[float, Unit("kg/(m*s*Pa)", "vapour permeability")]

FREEZING = 273.15
MOULD_GROWS_ABOVE = 0.8
"""The relative humidity at a surface that mould needs, ISO 13788 (as quoted by BS 5250): for several days."""


def curve_over_water(temperature: Kelvin) -> Pascal:
    """Return the saturation pressure over water by the short curve of the standard on condensation in walls.

    Formula: pressure = 610.5 * exp(17.269 * (temperature - 273.15) / (237.3 + temperature - 273.15))
    Units: empirical
    Valid: from freezing to 60 C
    Source: condensaciones-tests after ISO 13788
    Departs: nothing
    Assumes: pure water
    """
    return 610.5 * exp(17.269 * (temperature - 273.15) / (237.3 + temperature - 273.15))


def curve_over_ice(temperature: Kelvin) -> Pascal:
    """Return the saturation pressure over ice by the short curve of the standard on condensation in walls.

    Formula: pressure = 610.5 * exp(21.875 * (temperature - 273.15) / (265.5 + temperature - 273.15))
    Units: empirical
    Valid: from -60 C to freezing
    Source: iso-13788 the curve for below freezing
    Departs: nothing
    Assumes: pure water
    """
    return 610.5 * exp(21.875 * (temperature - 273.15) / (265.5 + temperature - 273.15))


def wall_saturation_pressure(temperature: Kelvin) -> Pascal:
    """Return the saturation pressure as the standard on condensation in walls has it.

    Formula: pressure = curve_over_water(temperature) if temperature >= FREEZING else curve_over_ice(temperature)
    Units: empirical
    Valid: from -60 to 60 C
    Source: condensaciones-tests after ISO 13788
    Departs: nothing
    Assumes: pure water
    """
    OutOfRange.unless_between("temperature", temperature, FREEZING - 60.0, FREEZING + 60.0)
    return curve_over_water(temperature) if temperature >= FREEZING else curve_over_ice(temperature)


def surface_temperature(factor: Ratio, inside: Kelvin, outside: Kelvin) -> Kelvin:
    """Return how warm an inside surface is of which the temperature factor is known.

    Formula: surface = outside + factor * (inside - outside)
    Valid: a factor from 0, as cold as outside, to 1, as warm as the room
    Source: heat-sheet the frozen stud, by ISO 13788
    Departs: nothing
    Assumes: steady temperatures, a night long
    """
    OutOfRange.unless_between("factor", factor, 0.0, 1.0)
    return outside + factor * (inside - outside)


def pane_factor(transmittance: WattPerSquareMetreKelvin, inside_film: SquareMetreKelvinPerWatt) -> Ratio:
    """Return the temperature factor in the middle of a pane.

    Formula: factor = 1 - transmittance * inside_film
    Valid: a transmittance that counts this film in; else the factor comes out below zero, which no surface has
    Source: heat-sheet glazing, by ISO 6946
    Departs: nothing
    Assumes: the middle of the pane; its edge and frame are colder
    """
    OutOfRange.unless_positive("transmittance", transmittance)
    return 1 - transmittance * inside_film


def highest_humidity(surface: Kelvin, inside: Kelvin) -> Ratio:
    """Return the relative humidity of the room at which a surface begins to drip.

    Formula: humidity = wall_saturation_pressure(surface) / wall_saturation_pressure(inside)
    Units: empirical
    Valid: from -60 to 60 C
    Source: heat-sheet glazing
    Departs: nothing
    Assumes: one vapour pressure throughout the room
    """
    return wall_saturation_pressure(surface) / wall_saturation_pressure(inside)


def factor_needed(inside: Kelvin, outside: Kelvin, humidity: Ratio, at_surface: Ratio) -> Ratio:
    """Return the temperature factor a surface must have, that its humidity stays below a share of what it can hold.

    Satisfies: (wall_saturation_pressure(outside + result * (inside - outside)) * at_surface - wall_saturation_pressure(inside) * humidity) / wall_saturation_pressure(inside)
    Valid: a room warmer than outside, a humidity above zero and not above the share
    Source: condensaciones-tests test_comprobaciones, after ISO 13788
    Departs: found by bisection; 0.8 at the surface is for mould, 1 for drops
    Assumes: steady temperatures
    """  # noqa: E501
    if not outside < inside:
        raise OutOfRange("outside", outside, 0.0, inside)
    OutOfRange.unless_positive("humidity", humidity)
    OutOfRange.unless_between("humidity", humidity, 0.0, at_surface)
    wanted = wall_saturation_pressure(inside) * humidity / at_surface
    low, high = FREEZING - 60.0, inside
    for _ in range(200):
        middle = (low + high) / 2.0
        if middle in (low, high):
            break
        low, high = (middle, high) if wall_saturation_pressure(middle) < wanted else (low, middle)
    return (high - outside) / (inside - outside)


class Settled(NamedTuple):
    """What settles within a wall: at each face between two layers, from outside to inside."""

    temperatures: tuple[Kelvin, ...]
    limits: tuple[Pascal, ...]
    settles: tuple[KilogramPerSquareMetre, ...]
    total: KilogramPerSquareMetre


def settled_in_wall(
    resistances: tuple[SquareMetreKelvinPerWatt, ...],
    vapour_lengths: tuple[Metre, ...],
    outside: Kelvin,
    inside: Kelvin,
    outside_vapour: Pascal,
    inside_vapour: Pascal,
    permeability: KilogramPerMetreSecondPascal,
    lasts: Second,
) -> Settled:
    """Return what water settles between the layers of a wall while it lasts.

    ``resistances`` run from the outside film to the inside film, ``vapour_lengths`` (the thickness of still air that
    holds vapour back as much) are those of the layers between the films: two fewer. A negative amount dries out.

    Satisfies: result.total - sum(one for one in result.settles); result.temperatures[0] - outside; result.temperatures[-1] - inside
    Valid: two layers or more; resistances and vapour lengths above zero
    Source: condensaciones-tests test_cerramiento, the five layers, after ISO 13788
    Departs: only wet faces settle; what dries out of a face that was wet before is for whoever adds up the months
    Assumes: no storage, no moving air: air that washes behind loose foam carries far more
    """  # noqa: E501
    if len(resistances) != len(vapour_lengths) + 2 or len(vapour_lengths) < 2:
        raise OutOfRange("vapour_lengths", float(len(vapour_lengths)), 2.0, float(len(resistances) - 2))
    for one in (*resistances, *vapour_lengths):
        OutOfRange.unless_positive("a layer", one)
    whole = sum(resistances)
    temperatures, passed = [outside], 0.0
    for one in resistances:
        passed += one
        temperatures.append(outside + (inside - outside) * passed / whole)
    limits = tuple(wall_saturation_pressure(one) for one in temperatures[1:-1])
    ways = [0.0]
    for one in vapour_lengths:
        ways.append(ways[-1] + one)
    # Vapour takes the tightest string under the limits: the lower hull. Where it bends, the flow in and out differ.
    points = [(0.0, outside_vapour), *list(zip(ways[1:-1], limits[1:-1], strict=True)), (ways[-1], inside_vapour)]
    hull: list[int] = []
    for number in range(len(points)):
        while len(hull) > 1 and _is_above(points[hull[-2]], points[hull[-1]], points[number]):
            hull.pop()
        hull.append(number)
    settles = [0.0] * len(points)
    for before, at, after in zip(hull, hull[1:], hull[2:], strict=False):
        inward = (points[after][1] - points[at][1]) / (points[after][0] - points[at][0])
        outward = (points[at][1] - points[before][1]) / (points[at][0] - points[before][0])
        settles[at] = permeability * lasts * (inward - outward)
    return Settled(tuple(temperatures), limits, tuple(settles), sum(settles))


def _is_above(before: tuple[float, float], at: tuple[float, float], after: tuple[float, float]) -> bool:
    """Return whether a point lies on or above the line between its neighbours."""
    return (at[1] - before[1]) * (after[0] - before[0]) >= (after[1] - before[1]) * (at[0] - before[0])
