"""Two and more axles: the equaliser between leaf springs, and torsion axles that share nothing."""

from __future__ import annotations

from typing import NamedTuple

from boxwright.units import Degree, Kilogram, Metre, NewtonPerMetre, OutOfRange

STANDARD_GRAVITY = 9.80665


class TorsionLoads(NamedTuple):
    """What ball and axles of a torsion tandem carry, and how far the nose points up."""

    tongue: Kilogram
    axles: tuple[Kilogram, ...]
    pitch: Degree


def equaliser_front_mass(group: Kilogram, front_arm: Metre, rear_arm: Metre) -> Kilogram:
    """Return what the front axle carries of a group whose leaf springs share an equaliser.

    Formula: front = group * rear_arm / (front_arm + rear_arm)
    Valid: both arms above zero; the equaliser free to turn
    Source: first-principles section 1.5
    Departs: nothing
    Assumes: no friction in the equaliser; equal arms give equal loads at any pitch
    """
    OutOfRange.unless_positive("front_arm", front_arm)
    OutOfRange.unless_positive("rear_arm", rear_arm)
    return group * rear_arm / (front_arm + rear_arm)


def equaliser_group_x(front_x: Metre, rear_x: Metre, front_arm: Metre, rear_arm: Metre) -> Metre:
    """Return the place at which a group of two axles with an equaliser acts.

    Formula: group_x = (front_x * rear_arm + rear_x * front_arm) / (front_arm + rear_arm)
    Valid: both arms above zero; the equaliser free to turn
    Source: first-principles section 1.5
    Departs: nothing
    Assumes: no friction in the equaliser
    """
    OutOfRange.unless_positive("front_arm", front_arm)
    OutOfRange.unless_positive("rear_arm", rear_arm)
    return (front_x * rear_arm + rear_x * front_arm) / (front_arm + rear_arm)


def torsion_tandem(
    mass: Kilogram,
    centre_x: Metre,
    coupler_x: Metre,
    axles_x: tuple[Metre, ...],
    axle_rate: NewtonPerMetre,
    ball_raise: Metre,
) -> TorsionLoads:
    """Return what ball and axles carry where each axle has springs of its own and no link between them.

    Ball and axles are three or more supports: statics alone cannot say what each takes, the springs decide.
    ``ball_raise`` is how much higher the ball stands than with the trailer level under this load; level, all
    axles carry alike. A higher ball turns the nose up: weight goes from the front axle to the rear one and the ball.

    Satisfies: sum(result.axles) + result.tongue - mass; sum(a * (x - coupler_x) for a, x in zip(result.axles,
        axles_x)) - mass * (centre_x - coupler_x); (result.axles[-1] - result.axles[0]) * 9.80665 - axle_rate *
        result.pitch * (axles_x[-1] - axles_x[0])
    Valid: all axles behind the coupler, no axle lifted; small pitch
    Source: first-principles section 1.5
    Departs: nothing
    Assumes: one rate for every axle (both wheels together); the centre of gravity keeps its place as the nose turns
    """
    arms = tuple(place - coupler_x for place in axles_x)
    for arm in arms:
        OutOfRange.unless_positive("axles_x", arm)
    first, second = sum(arms), sum(arm**2 for arm in arms)
    level_mass = mass * (centre_x - coupler_x) / first
    stiffness = axle_rate / STANDARD_GRAVITY
    pitch = ball_raise * first / second
    axles = tuple(level_mass + stiffness * (pitch * arm - ball_raise) for arm in arms)
    return TorsionLoads(mass - sum(axles), axles, pitch)
