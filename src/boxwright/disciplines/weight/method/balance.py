"""Mass, centre of gravity and inertia of many parts; what coupling, axle and wheels carry.

Axes: x rearward, y to the right looking forward, z up; any datum, as long as one call keeps to one. A load is given as
the mass that weighs as much: kilogram = newton / 9.80665.
"""

from __future__ import annotations

from math import asin, atan2, cos, hypot, sin, tan

from boxwright.units import Degree, Kilogram, KilogramSquareMetre, Metre, OutOfRange, Ratio


def total_mass(masses: tuple[Kilogram, ...]) -> Kilogram:
    """Return the mass of all parts together.

    Formula: mass = sum(masses)
    Valid: any number of parts
    Source: first-principles section 1.1
    Departs: nothing
    Assumes: nothing
    """
    return sum(masses)


def centre(masses: tuple[Kilogram, ...], places: tuple[Metre, ...]) -> Metre:
    """Return where the centre of gravity is along one axis.

    Formula: centre = sum(mass * place for mass, place in zip(masses, places)) / sum(masses)
    Valid: one place for each mass; a total mass above zero
    Source: first-principles section 1.1
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("masses", sum(masses))
    return sum(mass * place for mass, place in zip(masses, places, strict=True)) / sum(masses)


def moment_of_inertia(
    masses: tuple[Kilogram, ...],
    first: tuple[Metre, ...],
    second: tuple[Metre, ...],
    first_sizes: tuple[Metre, ...],
    second_sizes: tuple[Metre, ...],
) -> KilogramSquareMetre:
    """Return the moment of inertia about the axis through the point zero that stands on two given axes.

    For the inertia about the centre of gravity, the places are counted from the centre. With x and y for the two axes
    it is the yaw inertia, with y and z roll, with x and z pitch.

    Formula: inertia = sum(m * (a**2 + b**2 + (c**2 + d**2) / 12) for m, a, b, c, d in zip(masses, first,
        second, first_sizes, second_sizes))
    Valid: one place and one size on both axes for each mass
    Source: first-principles section 1.2
    Departs: nothing
    Assumes: each part is a uniform cuboid that stands square to the axes
    """
    parts = zip(masses, first, second, first_sizes, second_sizes, strict=True)
    return sum(m * (a**2 + b**2 + (c**2 + d**2) / 12) for m, a, b, c, d in parts)


def product_of_inertia(
    masses: tuple[Kilogram, ...], first: tuple[Metre, ...], second: tuple[Metre, ...]
) -> KilogramSquareMetre:
    """Return the product of inertia on two axes about the point zero: the sum of mass times both places.

    Formula: product = sum(mass * a * b for mass, a, b in zip(masses, first, second))
    Valid: one place on both axes for each mass
    Source: first-principles section 1.2
    Departs: nothing; the inertia matrix of many textbooks carries this sum with a minus sign
    Assumes: each part is symmetric about its own middle
    """
    return sum(mass * a * b for mass, a, b in zip(masses, first, second, strict=True))


def tongue_mass(mass: Kilogram, centre_x: Metre, axle_x: Metre, coupler_x: Metre) -> Kilogram:
    """Return the load on the ball of a level trailer on one axle, or on a group that acts at one place.

    Formula: tongue = mass * (axle_x - centre_x) / (axle_x - coupler_x)
    Valid: axle behind the coupler; trailer level, wheels and coupling on the ground
    Source: first-principles section 1.3
    Departs: nothing
    Assumes: the ball carries vertical load only
    """
    OutOfRange.unless_positive("axle_x", axle_x - coupler_x)
    return mass * (axle_x - centre_x) / (axle_x - coupler_x)


def group_mass(mass: Kilogram, centre_x: Metre, axle_x: Metre, coupler_x: Metre) -> Kilogram:
    """Return the load on the one axle, or on the group that acts at one place, of a level trailer.

    It also gives the load on the axle that is left when the other axle of a torsion tandem carries nothing.

    Formula: group = mass * (centre_x - coupler_x) / (axle_x - coupler_x)
    Valid: axle behind the coupler; trailer level
    Source: first-principles section 1.3
    Departs: nothing
    Assumes: the ball carries vertical load only
    """
    OutOfRange.unless_positive("axle_x", axle_x - coupler_x)
    return mass * (centre_x - coupler_x) / (axle_x - coupler_x)


def tongue_share(tongue: Kilogram, mass: Kilogram) -> Ratio:
    """Return the part of the trailer's weight that the ball carries.

    Formula: share = tongue / mass
    Valid: a mass above zero
    Source: first-principles section 1.3
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("mass", mass)
    return tongue / mass


def right_wheels_mass(axle_mass: Kilogram, roll_mass: Kilogram, centre_y: Metre, track: Metre) -> Kilogram:
    """Return what the right wheels of an axle carry; ``roll_mass`` is the mass whose roll this axle holds.

    The ball carries no roll moment, so that the wheels hold the roll of all of the trailer's mass, not only of the
    part of it that rests on them: of one axle ``roll_mass`` is the whole mass, of two equal axles half of it each.

    Formula: right = axle_mass / 2 + roll_mass * centre_y / track
    Valid: level crosswise; both sides on the ground
    Source: first-principles section 1.3
    Departs: nothing
    Assumes: stiff frame, springs alike on both sides
    """
    OutOfRange.unless_positive("track", track)
    return axle_mass / 2 + roll_mass * centre_y / track


def left_wheels_mass(axle_mass: Kilogram, roll_mass: Kilogram, centre_y: Metre, track: Metre) -> Kilogram:
    """Return what the left wheels of an axle carry; see ``right_wheels_mass``.

    Formula: left = axle_mass / 2 - roll_mass * centre_y / track
    Valid: level crosswise; both sides on the ground
    Source: first-principles section 1.3
    Departs: nothing
    Assumes: stiff frame, springs alike on both sides
    """
    OutOfRange.unless_positive("track", track)
    return axle_mass / 2 - roll_mass * centre_y / track


def cross_slope_shift(mass: Kilogram, centre_above_ground: Metre, track: Metre, slope: Degree) -> Kilogram:
    """Return what the downhill wheels gain and the uphill wheels lose on ground that falls to one side.

    Formula: shift = mass * centre_above_ground * tan(slope) / track
    Valid: slope under 30 degrees; both sides stay on the ground
    Source: first-principles section 1.3
    Departs: nothing
    Assumes: the body does not lean further on its springs
    """
    OutOfRange.unless_positive("track", track)
    OutOfRange.unless_between("slope", slope, -0.5235987755982988, 0.5235987755982988)
    return mass * centre_above_ground * tan(slope) / track


def ball_pitch(ball_raise: Metre, lever: Metre, ball_above_axle: Metre) -> Degree:
    """Return how far the nose points up when the ball stands higher than it does with the trailer level.

    ``lever`` is the distance from ball to axle along the level trailer, ``ball_above_axle`` the height of the ball
    over the wheel centre with the trailer level. The trailer turns about its wheel centre.

    Formula: pitch = asin((ball_raise + ball_above_axle) / hypot(lever, ball_above_axle)) -
        atan2(ball_above_axle, lever)
    Valid: the raised ball no further from the wheel centre's height than the ball is from the wheel centre
    Source: first-principles section 1.4
    Departs: nothing
    Assumes: springs and tyres keep the wheel centre where it is
    """
    OutOfRange.unless_positive("lever", lever)
    reach = hypot(lever, ball_above_axle)
    OutOfRange.unless_between("ball_raise", ball_raise, -reach - ball_above_axle, reach - ball_above_axle)
    return asin((ball_raise + ball_above_axle) / reach) - atan2(ball_above_axle, lever)


def pitched_tongue_mass(
    mass: Kilogram,
    axle_behind_centre: Metre,
    centre_above_axle: Metre,
    lever: Metre,
    ball_above_axle: Metre,
    pitch: Degree,
) -> Kilogram:
    """Return the load on the ball of a trailer whose nose points up (positive pitch) or down.

    Heights are over the wheel centre with the trailer level; ``lever`` is the distance from ball to axle,
    ``axle_behind_centre`` from the centre of gravity to the axle, along the level trailer.

    Formula: tongue = mass * (axle_behind_centre * cos(pitch) - centre_above_axle * sin(pitch)) / (lever *
        cos(pitch) - ball_above_axle * sin(pitch))
    Valid: pitch under 30 degrees; one axle, or an equalised group, that acts at its centre
    Source: first-principles section 1.4
    Departs: nothing
    Assumes: springs and tyres keep the wheel centre where it is
    """
    OutOfRange.unless_between("pitch", pitch, -0.5235987755982988, 0.5235987755982988)
    arm = lever * cos(pitch) - ball_above_axle * sin(pitch)
    OutOfRange.unless_positive("lever", arm)
    return mass * (axle_behind_centre * cos(pitch) - centre_above_axle * sin(pitch)) / arm
