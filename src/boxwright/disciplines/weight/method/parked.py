"""At rest: the tongue jack, tipping over axle or legs, blocks to stand level."""

from __future__ import annotations

from math import sin

from boxwright.disciplines.weight.method.moment import KilogramMetre
from boxwright.units import Degree, Kilogram, Metre, OutOfRange


def jack_mass(mass: Kilogram, centre_x: Metre, axle_x: Metre, jack_x: Metre) -> Kilogram:
    """Return what the tongue jack carries, uncoupled; more than the ball where the jack is behind the ball.

    Formula: jack = mass * (axle_x - centre_x) / (axle_x - jack_x)
    Valid: axle behind the jack; level
    Source: first-principles section 7.1
    Departs: nothing
    Assumes: axle or equalised group acts at one place; legs up
    """
    OutOfRange.unless_positive("axle_x", axle_x - jack_x)
    return mass * (axle_x - centre_x) / (axle_x - jack_x)


def tip_person_mass(mass: Kilogram, centre_x: Metre, pivot_x: Metre, person_x: Metre) -> Kilogram:
    """Return the mass of a person behind the pivot that lifts the nose of an uncoupled trailer.

    The pivot is the rearmost thing it stands on: the wheels, or the legs behind them.

    Formula: person = mass * (pivot_x - centre_x) / (person_x - pivot_x)
    Valid: the person behind the pivot
    Source: first-principles section 7.1
    Departs: nothing
    Assumes: level, at rest, nobody jumps; nothing holds the nose down
    """
    OutOfRange.unless_positive("person_x", person_x - pivot_x)
    return mass * (pivot_x - centre_x) / (person_x - pivot_x)


def tip_margin(mass: Kilogram, centre_x: Metre, pivot_x: Metre, people: Kilogram, people_x: Metre) -> KilogramMetre:
    """Return the moment that keeps the nose down with people aboard; below zero the trailer tips back.

    Formula: margin = mass * (pivot_x - centre_x) - people * (people_x - pivot_x)
    Valid: uncoupled; the pivot is the rearmost thing it stands on
    Source: first-principles section 7.1
    Departs: nothing
    Assumes: level, at rest, nobody jumps
    """
    return mass * (pivot_x - centre_x) - people * (people_x - pivot_x)


def block_height(track: Metre, slope: Degree) -> Metre:
    """Return the height of the blocks under the low side's wheels that make the trailer stand level crosswise.

    Formula: height = track * sin(slope)
    Valid: slope under 30 degrees
    Source: first-principles section 7.3
    Departs: nothing
    Assumes: tyres and springs give alike on both sides
    """
    OutOfRange.unless_between("slope", slope, -0.5235987755982988, 0.5235987755982988)
    return track * sin(slope)


def nose_change(lever: Metre, slope: Degree) -> Metre:
    """Return how far the nose must rise or fall to stand level lengthwise.

    Formula: change = lever * sin(slope)
    Valid: slope under 30 degrees
    Source: first-principles section 7.3
    Departs: nothing
    Assumes: the trailer turns about its axle, or about the middle of its group
    """
    OutOfRange.unless_between("slope", slope, -0.5235987755982988, 0.5235987755982988)
    return lever * sin(slope)
