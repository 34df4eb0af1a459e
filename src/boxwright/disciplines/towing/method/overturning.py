"""Overturning: in a bend, and by the wind, parked and on the road."""

from __future__ import annotations

from math import atan2, hypot, sqrt

from boxwright.disciplines.towing.method.dimensions import STANDARD_GRAVITY, KilogramPerCubicMetre
from boxwright.units import Degree, Kilogram, Metre, MetrePerSecond, OutOfRange, Ratio, SquareMetre


def rollover_threshold(track: Metre, centre_height: Metre) -> Ratio:
    """Return the sideways acceleration that tips a rigid trailer over, as a share of gravity.

    Formula: threshold = track / (2 * centre_height)
    Valid: level road; the centre of gravity over the ground
    Source: static-stability-factor half the track over the height of the centre of gravity
    Departs: nothing; springs and tyres that lean tip sooner
    Assumes: rigid body, the coupling holds no roll
    """
    OutOfRange.unless_positive("centre_height", centre_height)
    return track / (2 * centre_height)


def rollover_speed(threshold: Ratio, radius: Metre) -> MetrePerSecond:
    """Return the speed at which a bend of some radius tips the trailer over.

    Units: empirical
    Formula: speed = sqrt(threshold * 9.80665 * radius)
    Valid: level bend, steady speed
    Source: first-principles section 6.4
    Departs: nothing
    Assumes: as ``rollover_threshold``
    """
    OutOfRange.unless_positive("radius", radius)
    OutOfRange.unless_positive("threshold", threshold)
    return sqrt(threshold * STANDARD_GRAVITY * radius)


def unloading_wind(
    share: Ratio,
    mass: Kilogram,
    track: Metre,
    side_coefficient: Ratio,
    side_area: SquareMetre,
    pressure_height: Metre,
    density: KilogramPerCubicMetre,
) -> MetrePerSecond:
    """Return the steady side wind that takes a share of the load off the windward wheels; at 1 they lift.

    Units: empirical
    Formula: wind = sqrt(share * mass * 9.80665 * track / (density * side_coefficient * side_area * pressure_height))
    Valid: wind square to the side, level ground
    Source: first-principles section 6.4
    Departs: nothing; gusts exceed the mean wind of a forecast
    Assumes: the ball holds no roll; the side coefficient is the user's
    """
    area = side_coefficient * side_area * pressure_height * density
    OutOfRange.unless_positive("side_area", area)
    OutOfRange.unless_positive("track", share * mass * track)
    return sqrt(share * mass * STANDARD_GRAVITY * track / area)


def resultant_wind(speed: MetrePerSecond, crosswind: MetrePerSecond) -> MetrePerSecond:
    """Return the wind a moving trailer meets in a wind from the side.

    Formula: wind = hypot(speed, crosswind)
    Valid: wind square to the road
    Source: first-principles section 6.4
    Departs: nothing
    Assumes: nothing
    """
    return hypot(speed, crosswind)


def wind_angle(speed: MetrePerSecond, crosswind: MetrePerSecond) -> Degree:
    """Return the angle from straight ahead at which a moving trailer meets the wind.

    Formula: angle = atan2(crosswind, speed)
    Valid: wind square to the road
    Source: first-principles section 6.4
    Departs: nothing
    Assumes: nothing
    """
    return atan2(crosswind, speed)
