"""The coupling: least of several ratings, coupling strength by D and V, chains, weight-distribution gear."""

from __future__ import annotations

from math import sqrt

from boxwright.disciplines.towing.method.dimensions import (
    STANDARD_GRAVITY,
    MetrePerSecondSquared,
    NewtonMetre,
)
from boxwright.units import Kilogram, Metre, Newton, OutOfRange, Ratio


def least_rating(ratings: tuple[Kilogram, ...]) -> Kilogram:
    """Return what all parts of a coupling allow together: the least of their ratings.

    Formula: least = min(ratings)
    Valid: one rating or more
    Source: directive-92-21 minimum vertical load
    Departs: nothing
    Assumes: nothing
    """
    return min(ratings)


def d_value(tow_mass: Kilogram, trailer_mass: Kilogram, gravity: MetrePerSecondSquared) -> Newton:
    """Return the force D by which a coupling is chosen: what vehicle and trailer do to each other at its joint.

    Formula: force = gravity * tow_mass * trailer_mass / (tow_mass + trailer_mass)
    Valid: trailers with a drawbar
    Source: un-r55 clause 2.11
    Departs: nothing
    Assumes: technically permissible masses, not those of the day
    """
    OutOfRange.unless_positive("tow_mass", tow_mass + trailer_mass)
    return gravity * tow_mass * trailer_mass / (tow_mass + trailer_mass)


def heaviest_by_d_value(force: Newton, tow_mass: Kilogram, gravity: MetrePerSecondSquared) -> Kilogram:
    """Return the heaviest trailer a coupling of a given D may pull behind a vehicle: ``d_value`` turned round.

    Formula: trailer = force * tow_mass / (gravity * tow_mass - force)
    Valid: a force below the tow vehicle's own weight
    Source: un-r55 clause 2.11
    Departs: solved for the trailer
    Assumes: as ``d_value``
    """
    OutOfRange.unless_positive("force", gravity * tow_mass - force)
    return force * tow_mass / (gravity * tow_mass - force)


def v_value(
    body_length: Metre, drawbar_length: Metre, axle_loads: Kilogram, acceleration: MetrePerSecondSquared
) -> Newton:
    """Return the vertical force V at the coupling of a centre-axle trailer.

    Formula: force = acceleration * max(1, (body_length / drawbar_length) ** 2) * axle_loads
    Valid: trailers with axles near their middle; the drawbar counted from coupling to axle
    Source: directive-94-20 Dc and V
    Departs: nothing; asked for above 3.5 t only (from memory)
    Assumes: nothing
    """
    OutOfRange.unless_positive("drawbar_length", drawbar_length)
    return acceleration * max(1, (body_length / drawbar_length) ** 2) * axle_loads


def chain_strength(gross: Kilogram, class_limits: tuple[Kilogram, ...]) -> Kilogram:
    """Return the least breaking strength of one safety chain: the upper end of the trailer's class.

    Formula: strength = min((limit for limit in class_limits if limit >= gross), default=gross)
    Valid: beyond the highest class the trailer's own mass counts
    Source: sae-j684 safety-chain classes
    Departs: nothing; a second public table draws the lines of the first and last class elsewhere
    Assumes: nothing
    """
    return min((limit for limit in class_limits if limit >= gross), default=gross)


def class_four_strength(gross: Kilogram, multiple: Ratio) -> Kilogram:
    """Return the least strength of coupler and ball of the heaviest class in one direction, a multiple of the mass.

    Formula: strength = gross * multiple
    Valid: trailers from 5,000 to 10,000 lb
    Source: comar-11-13-08-10 tables
    Departs: nothing
    Assumes: nothing
    """
    return gross * multiple


def restoring_moment(restored: Ratio, tongue: Kilogram, overhang: Metre, ball_to_axle: Metre) -> NewtonMetre:
    """Return the moment weight-distribution gear must give at the ball to bring back a share of the front axle's load.

    Units: empirical
    Formula: moment = restored * tongue * 9.80665 * overhang * ball_to_axle / (ball_to_axle + overhang)
    Valid: overhang and distance to the trailer's axle above zero
    Source: first-principles section 1.6
    Departs: nothing
    Assumes: level; stiff bars; the trailer's axles act at one place
    """
    OutOfRange.unless_positive("ball_to_axle", ball_to_axle + overhang)
    return restored * tongue * STANDARD_GRAVITY * overhang * ball_to_axle / (ball_to_axle + overhang)


def front_axle_change(
    tongue: Kilogram, moment: NewtonMetre, overhang: Metre, wheelbase: Metre, ball_to_axle: Metre
) -> Kilogram:
    """Return what the tow vehicle's front axle gains, below zero what it loses, by the coupled trailer.

    Units: empirical
    Formula: change = -(tongue - moment / 9.80665 / ball_to_axle) * overhang / wheelbase + moment / 9.80665 / wheelbase
    Valid: moment zero without weight-distribution gear
    Source: first-principles section 1.6
    Departs: nothing
    Assumes: as ``restoring_moment``
    """
    OutOfRange.unless_positive("wheelbase", wheelbase)
    OutOfRange.unless_positive("ball_to_axle", ball_to_axle)
    mass_moment = moment / STANDARD_GRAVITY
    return -(tongue - mass_moment / ball_to_axle) * overhang / wheelbase + mass_moment / wheelbase


def rear_axle_change(
    tongue: Kilogram, moment: NewtonMetre, overhang: Metre, wheelbase: Metre, ball_to_axle: Metre
) -> Kilogram:
    """Return what the tow vehicle's rear axle gains by the coupled trailer: more than the ball carries.

    Units: empirical
    Formula: change = (tongue - moment / 9.80665 / ball_to_axle) * (wheelbase + overhang) / wheelbase - moment /
        9.80665 / wheelbase
    Valid: moment zero without weight-distribution gear
    Source: first-principles section 1.6
    Departs: nothing
    Assumes: as ``restoring_moment``
    """
    OutOfRange.unless_positive("wheelbase", wheelbase)
    OutOfRange.unless_positive("ball_to_axle", ball_to_axle)
    mass_moment = moment / STANDARD_GRAVITY
    return (tongue - mass_moment / ball_to_axle) * (wheelbase + overhang) / wheelbase - mass_moment / wheelbase


def trailer_axle_change(moment: NewtonMetre, ball_to_axle: Metre) -> Kilogram:
    """Return what the trailer's axles gain by weight-distribution gear.

    Units: empirical
    Formula: change = moment / 9.80665 / ball_to_axle
    Valid: distance from ball to the trailer's axles above zero
    Source: first-principles section 1.6
    Departs: nothing
    Assumes: as ``restoring_moment``
    """
    OutOfRange.unless_positive("ball_to_axle", ball_to_axle)
    return moment / STANDARD_GRAVITY / ball_to_axle


def nose_pitch(ball_height: Metre, level_height: Metre, ball_to_axle: Metre) -> Ratio:
    """Return how steeply the nose points up (above zero) where the ball stands off the height of a level coupler.

    Formula: pitch = (ball_height - level_height) / sqrt(ball_to_axle ** 2 - (ball_height - level_height) ** 2)
    Valid: the ball nearer to level than to the axle
    Source: first-principles section 7.3
    Departs: nothing
    Assumes: the trailer turns about its axle, or the middle of its group, at coupler height
    """
    rise = ball_height - level_height
    OutOfRange.unless_positive("ball_to_axle", ball_to_axle - abs(rise))
    return rise / sqrt(ball_to_axle**2 - rise**2)
