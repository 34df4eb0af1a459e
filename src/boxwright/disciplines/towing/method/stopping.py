"""Stopping a vehicle with a trailer from what each can brake of its own weight."""

from __future__ import annotations

from boxwright.disciplines.towing.method.dimensions import STANDARD_GRAVITY, MetrePerSecondSquared
from boxwright.units import Kilogram, Metre, MetrePerSecond, OutOfRange, Ratio, Second


def deceleration(
    tow_mass: Kilogram, trailer_mass: Kilogram, tow_braked: Ratio, trailer_braked: Ratio
) -> MetrePerSecondSquared:
    """Return how hard a combination brakes on the level; each share is brake force over own weight.

    Units: empirical
    Formula: slowing = 9.80665 * (tow_braked * tow_mass + trailer_braked * trailer_mass) / (tow_mass + trailer_mass)
    Valid: no wheel locked; zero for a trailer without brakes
    Source: first-principles section 6.1
    Departs: nothing
    Assumes: vehicle and trailer stay in line
    """
    OutOfRange.unless_positive("tow_mass", tow_mass + trailer_mass)
    return STANDARD_GRAVITY * (tow_braked * tow_mass + trailer_braked * trailer_mass) / (tow_mass + trailer_mass)


def stopping_distance(speed: MetrePerSecond, reaction: Second, slowing: MetrePerSecondSquared) -> Metre:
    """Return the way from seeing the danger to standing still.

    Formula: distance = speed * reaction + speed ** 2 / (2 * slowing)
    Valid: level road
    Source: first-principles section 6.1
    Departs: nothing
    Assumes: full braking from the end of the reaction time
    """
    OutOfRange.unless_positive("slowing", slowing)
    return speed * reaction + speed**2 / (2 * slowing)


def mean_deceleration(speed: MetrePerSecond, distance: Metre) -> MetrePerSecondSquared:
    """Return the mean deceleration behind a stop from a speed within a distance.

    Formula: slowing = speed ** 2 / (2 * distance)
    Valid: distance above zero, reaction not counted
    Source: nz-stop 7 m from 30 km/h
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("distance", distance)
    return speed**2 / (2 * distance)
