"""Hills: the pull up a grade, what the drive axle holds, extra fuel, and the trailer parked on a slope."""

from __future__ import annotations

from math import atan, cos, sin, sqrt

from boxwright.disciplines.towing.method.dimensions import (
    STANDARD_GRAVITY,
    CubicMetrePerMetre,
    JoulePerCubicMetre,
    KilogramPerCubicMetre,
)
from boxwright.units import Degree, Kilogram, Metre, MetrePerSecond, Newton, OutOfRange, Ratio, SquareMetre, Watt


def grade_force(mass: Kilogram, grade: Ratio, rolling: Ratio) -> Newton:
    """Return the force that holds or creeps a combination up a grade (rise over run), air left out.

    Units: empirical
    Formula: force = mass * 9.80665 * (sin(atan(grade)) + rolling * cos(atan(grade)))
    Valid: walking speed
    Source: first-principles section 6.2
    Departs: nothing
    Assumes: one rolling resistance for all wheels
    """
    return mass * STANDARD_GRAVITY * (sin(atan(grade)) + rolling * cos(atan(grade)))


def grade_power(force: Newton, speed: MetrePerSecond) -> Watt:
    """Return the power at the wheels for a force at a speed.

    Formula: power = force * speed
    Valid: any speed
    Source: first-principles section 6.2
    Departs: nothing
    Assumes: nothing
    """
    return force * speed


def rear_axle_on_grade(
    tow_mass: Kilogram,
    trailer_mass: Kilogram,
    tongue: Kilogram,
    wheelbase: Metre,
    centre_behind_front: Metre,
    centre_height: Metre,
    overhang: Metre,
    ball_height: Metre,
    grade: Ratio,
) -> Newton:
    """Return what the rear axle carries while the vehicle holds itself and the trailer on a grade.

    Units: empirical
    Formula: force = 9.80665 / wheelbase * (tow_mass * (centre_behind_front * cos(atan(grade)) + centre_height *
        sin(atan(grade))) + tongue * cos(atan(grade)) * (wheelbase + overhang) + trailer_mass * sin(atan(grade)) *
        ball_height)
    Valid: nose uphill; standing or creeping
    Source: first-principles section 6.2
    Departs: nothing
    Assumes: trailer unbraked, its pull along the slope at ball height; rolling left out
    """
    OutOfRange.unless_positive("wheelbase", wheelbase)
    along, across = sin(atan(grade)), cos(atan(grade))
    own = tow_mass * (centre_behind_front * across + centre_height * along)
    behind = tongue * across * (wheelbase + overhang) + trailer_mass * along * ball_height
    return STANDARD_GRAVITY / wheelbase * (own + behind)


def front_axle_on_grade(tow_mass: Kilogram, tongue: Kilogram, rear_axle: Newton, grade: Ratio) -> Newton:
    """Return what the front axle carries on a grade: what the rear axle leaves of vehicle and ball load.

    Units: empirical
    Formula: force = 9.80665 * (tow_mass + tongue) * cos(atan(grade)) - rear_axle
    Valid: as ``rear_axle_on_grade``
    Source: first-principles section 6.2
    Departs: nothing
    Assumes: as ``rear_axle_on_grade``
    """
    return STANDARD_GRAVITY * (tow_mass + tongue) * cos(atan(grade)) - rear_axle


def grip_needed(force: Newton, drive_axle: Newton) -> Ratio:
    """Return the grip the driven wheels must find, as force over the load on them.

    Formula: grip = force / drive_axle
    Valid: a load above zero
    Source: first-principles section 6.2
    Departs: nothing
    Assumes: nothing
    """
    OutOfRange.unless_positive("drive_axle", drive_axle)
    return force / drive_axle


def extra_road_force(
    speed: MetrePerSecond, density: KilogramPerCubicMetre, drag_area: SquareMetre, mass: Kilogram, rolling: Ratio
) -> Newton:
    """Return what a trailer adds to the force along a level road.

    Units: empirical
    Formula: force = density / 2 * speed ** 2 * drag_area + rolling * mass * 9.80665
    Valid: no wind; ``drag_area`` is what the trailer adds to the vehicle's own
    Source: first-principles section 6.3
    Departs: nothing
    Assumes: nothing
    """
    return density / 2 * speed**2 * drag_area + rolling * mass * STANDARD_GRAVITY


def extra_fuel(force: Newton, efficiency: Ratio, fuel_heat: JoulePerCubicMetre) -> CubicMetrePerMetre:
    """Return the fuel a force costs along the road, as volume per distance.

    Formula: fuel = force / (efficiency * fuel_heat)
    Valid: efficiency from tank to wheel above zero
    Source: first-principles section 6.3
    Departs: nothing
    Assumes: the efficiency does not change with the load
    """
    OutOfRange.unless_positive("efficiency", efficiency * fuel_heat)
    return force / (efficiency * fuel_heat)


def slope_force(mass: Kilogram, slope: Degree) -> Newton:
    """Return the force that pulls a parked trailer down a slope and that its chocks must hold.

    Units: empirical
    Formula: force = mass * 9.80665 * sin(slope)
    Valid: tongue on a castor jack, brakes off
    Source: first-principles section 7.2
    Departs: nothing
    Assumes: nothing
    """
    return mass * STANDARD_GRAVITY * sin(slope)


def chock_ratio(wheel_radius: Metre, chock_height: Metre) -> Ratio:
    """Return the force that rolls a wheel over its chock, as a share of the load on the wheel.

    Formula: ratio = sqrt(wheel_radius ** 2 - (wheel_radius - chock_height) ** 2) / (wheel_radius - chock_height)
    Valid: a chock lower than the wheel's middle
    Source: first-principles section 7.2
    Departs: nothing; a chock mostly slides first
    Assumes: rigid wheel; the chock does not slide
    """
    OutOfRange.unless_positive("chock_height", chock_height)
    OutOfRange.unless_positive("wheel_radius", wheel_radius - chock_height)
    return sqrt(wheel_radius**2 - (wheel_radius - chock_height) ** 2) / (wheel_radius - chock_height)


def chocked_grade(ratio: Ratio, chocked_share: Ratio) -> Ratio:
    """Return the grade on which chocked wheels with a share of the weight on them hold before they roll over.

    Formula: grade = ratio * chocked_share
    Valid: as ``chock_ratio``
    Source: first-principles section 7.2
    Departs: nothing
    Assumes: the load on the wheels is that of level ground
    """
    return ratio * chocked_share
