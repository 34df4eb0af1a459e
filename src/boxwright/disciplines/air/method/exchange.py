"""Air that comes and goes: through cracks, by warmth, through two vents, and how much of it is needed."""

from __future__ import annotations

from math import exp, hypot, inf, sqrt
from typing import Annotated

from boxwright.units import (
    CubicMetre,
    CubicMetrePerSecond,
    Kelvin,
    Kilogram,
    Metre,
    MetrePerSecond,
    OutOfRange,
    Pascal,
    Ratio,
    Second,
    SquareMetre,
    Unit,
)

KilogramPerSecond = Annotated[float, Unit("kg/s", "mass flow")]
KilogramPerCubicMetre = Annotated[float, Unit("kg/m**3", "density")]
SquareMetrePerSecondSquaredKelvin = Annotated[float, Unit("m**2/s**2/K", "stack coefficient")]

GRAVITY = 9.80665
"""m/s2"""


def leaked(
    leak: SquareMetre,
    stack: SquareMetrePerSecondSquaredKelvin,
    wind: Ratio,
    difference: Kelvin,
    speed: MetrePerSecond,
) -> CubicMetrePerSecond:
    """Return the air that comes in through cracks of a known area at 4 Pa, by warmth and by wind.

    Formula: flow = leak * sqrt(stack * difference + wind * speed**2)
    Valid: one storey; a room that is not colder than outside; not while towing
    Source: energyplus-io ZoneInfiltration:EffectiveLeakageArea, basic model
    Departs: the area in m2 and the coefficients as squares of a speed over a speed: those of the source, in (L/s)2/cm4, times 100
    Assumes: a house of one storey; a trailer is lower, so that the share of warmth is an upper bound
    """  # noqa: E501
    OutOfRange.unless_between("leak", leak, 0.0, inf)
    OutOfRange.unless_between("difference", difference, 0.0, inf)
    return leak * sqrt(stack * difference + wind * speed**2)


def risen(area: SquareMetre, discharge: Ratio, height: Metre, inside: Kelvin, outside: Kelvin) -> CubicMetrePerSecond:
    """Return the air that warmth drives through an opening so far from the height where nothing flows.

    Formula: flow = discharge * area * sqrt(2 * GRAVITY * height * (inside - outside) / inside)
    Units: empirical
    Valid: a room that is not colder than outside
    Source: ashrae-1997-stack equation 37
    Departs: nothing
    Assumes: no wind
    """
    if not 0.0 < outside <= inside:
        raise OutOfRange("outside", outside, 0.0, inside)
    OutOfRange.unless_between("height", height, 0.0, inf)
    return discharge * area * sqrt(2 * GRAVITY * height * (inside - outside) / inside)


def in_series(first: SquareMetre, second: SquareMetre) -> SquareMetre:
    """Return the one opening that passes as much as a low and a high one together.

    Formula: area = first * second / hypot(first, second)
    Valid: two areas above zero
    Source: heat-sheet low vent and roof vent
    Departs: nothing
    Assumes: the same discharge for both, no other leak
    """
    OutOfRange.unless_positive("first", first)
    OutOfRange.unless_positive("second", second)
    return first * second / hypot(first, second)


def air_to_thin(source: CubicMetrePerSecond, allowed: Ratio) -> CubicMetrePerSecond:
    """Return the outdoor air that keeps a gas at so much more than outside, once it is steady.

    Formula: flow = source / allowed
    Valid: an allowed share above zero
    Source: heat-sheet two sleepers
    Departs: nothing
    Assumes: well mixed
    """
    OutOfRange.unless_positive("allowed", allowed)
    return source / allowed


def gathered(
    source: CubicMetrePerSecond, flow: CubicMetrePerSecond, room: CubicMetre, lasts: Second, outdoors: Ratio
) -> Ratio:
    """Return the share of a gas in a room after a while, from what it is outdoors.

    Formula: share = outdoors + source / flow * (1 - exp(-flow * lasts / room))
    Valid: a flow and a room above zero
    Source: heat-sheet two sleepers, sealed
    Departs: nothing
    Assumes: well mixed; begins as outdoors
    """
    OutOfRange.unless_positive("flow", flow)
    OutOfRange.unless_positive("room", room)
    return outdoors + source / flow * (1 - exp(-flow * lasts / room))


def breathed_out(
    metabolism: Annotated[float, Unit("W", "power")], activity: Ratio, temperature: Kelvin, pressure: Pascal
) -> CubicMetrePerSecond:
    """Return the carbon dioxide a person breathes out.

    ``metabolism`` is that at rest (W); ``activity`` times as much is used: 0.95 asleep, 1.2 sitting.

    Formula: flow = 0.85 * metabolism * activity * temperature / pressure * 1.82304e-5
    Units: empirical
    Valid: adults from asleep to light work
    Source: persily-2017 equation V = RQ BMR M (T/P) 0.000211, with MJ/day and kPa
    Departs: W for MJ/day and Pa for kPa
    Assumes: a respiratory quotient of 0.85
    """
    OutOfRange.unless_positive("pressure", pressure)
    return 0.85 * metabolism * activity * temperature / pressure * 1.82304e-5


def air_to_dry(vapour: KilogramPerSecond, density: KilogramPerCubicMetre, gained: Ratio) -> CubicMetrePerSecond:
    """Return the outdoor air that carries off so much vapour, taking up so much water to a mass of dry air.

    Formula: flow = vapour / (density * gained)
    Valid: outdoor air that is drier than the room may be
    Source: heat-sheet outdoor air against moisture
    Departs: nothing
    Assumes: well mixed, nothing settles
    """
    OutOfRange.unless_positive("gained", gained)
    return vapour / (density * gained)


def dried_after(water: Kilogram, flow: CubicMetrePerSecond, density: KilogramPerCubicMetre, gained: Ratio) -> Second:
    """Return how long air takes to carry off water, taking up so much to a mass of dry air.

    Formula: time = water / (density * flow * gained)
    Valid: a flow above zero, outdoor air that is drier than the room may be
    Source: heat-sheet drying
    Departs: nothing
    Assumes: the wet surface gives it off as fast
    """
    OutOfRange.unless_positive("flow", flow)
    OutOfRange.unless_positive("gained", gained)
    return water / (density * flow * gained)
