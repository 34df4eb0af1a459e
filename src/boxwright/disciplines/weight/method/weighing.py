"""What scale tickets, a bathroom scale with a plank, and a lifted nose say, and how sure they are."""

from __future__ import annotations

from math import sqrt, tan

from boxwright.units import Degree, Kilogram, Metre, OutOfRange, Ratio


def ticket_tongue(
    hitched_steer: Kilogram, hitched_drive: Kilogram, solo_steer: Kilogram, solo_drive: Kilogram
) -> Kilogram:
    """Return the tongue weight from two tickets: the tow vehicle hitched, and the same vehicle alone.

    Formula: tongue = hitched_steer + hitched_drive - solo_steer - solo_drive
    Valid: same people and fuel; no weight distribution bars under tension
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: level scale
    """
    return hitched_steer + hitched_drive - solo_steer - solo_drive


def ticket_mass(tongue: Kilogram, axles: Kilogram) -> Kilogram:
    """Return the trailer's mass from its tongue weight and the hitched reading of its axles.

    Formula: mass = tongue + axles
    Valid: no weight distribution bars under tension
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: level scale
    """
    return tongue + axles


def ticket_centre_x(tongue: Kilogram, axles: Kilogram, axle_x: Metre, coupler_x: Metre) -> Metre:
    """Return where the centre of gravity lies, from what ball and axles carry.

    Formula: centre_x = coupler_x + (axle_x - coupler_x) * axles / (tongue + axles)
    Valid: one axle or an equalised group; level
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: level scale
    """
    OutOfRange.unless_positive("axles", tongue + axles)
    return coupler_x + (axle_x - coupler_x) * axles / (tongue + axles)


def ticket_overhang(hitched_steer: Kilogram, solo_steer: Kilogram, wheelbase: Metre, tongue: Kilogram) -> Metre:
    """Return how far the ball is behind the tow vehicle's rear axle, from what its front axle lost.

    It is a cross-check: a tape that says otherwise means that a ticket was misread.

    Formula: overhang = (solo_steer - hitched_steer) * wheelbase / tongue
    Valid: a tongue weight above zero; no weight distribution bars under tension
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: level scale
    """
    OutOfRange.unless_positive("tongue", tongue)
    return (solo_steer - hitched_steer) * wheelbase / tongue


def step_uncertainty(step: Kilogram) -> Kilogram:
    """Return the standard uncertainty of one reading of a scale that shows steps.

    Formula: uncertainty = step / sqrt(12)
    Valid: the step is the only doubt
    Source: gum-example resolution of a display
    Departs: nothing
    Assumes: every value within a step is as likely as any other
    """
    return step / sqrt(12)


def ticket_tongue_uncertainty(reading: Kilogram) -> Kilogram:
    """Return the standard uncertainty of a tongue weight that is four readings added and subtracted.

    Formula: uncertainty = 2 * reading
    Valid: four readings of one standard uncertainty
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: readings err independently
    """
    return 2 * reading


def ticket_mass_uncertainty(reading: Kilogram) -> Kilogram:
    """Return the standard uncertainty of a trailer mass that is five readings added and subtracted.

    Formula: uncertainty = sqrt(5) * reading
    Valid: five readings of one standard uncertainty
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: readings err independently
    """
    return sqrt(5) * reading


def ticket_centre_uncertainty(
    tongue: Kilogram, axles: Kilogram, lever: Metre, tongue_uncertainty: Kilogram, axles_uncertainty: Kilogram
) -> Metre:
    """Return the standard uncertainty of the centre of gravity from what ball and axles carry.

    Formula: uncertainty = lever * sqrt((tongue * axles_uncertainty)**2 + (axles * tongue_uncertainty)**2) /
        (tongue + axles)**2
    Valid: uncertainties small beside the readings
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: tongue and axle readings err independently
    """
    OutOfRange.unless_positive("axles", tongue + axles)
    spread = sqrt((tongue * axles_uncertainty) ** 2 + (axles * tongue_uncertainty) ** 2)
    return lever * spread / (tongue + axles) ** 2


def plank_tongue(reading: Kilogram, bare_reading: Kilogram, scale_arm: Metre, ball_arm: Metre) -> Kilogram:
    """Return the tongue weight from a bathroom scale under one end of a plank.

    The other end of the plank rests on a block: the pivot. ``scale_arm`` is from pivot to scale, ``ball_arm`` from
    pivot to the place under the coupling. ``bare_reading`` is what the scale shows with the plank alone.

    Formula: tongue = (reading - bare_reading) * scale_arm / ball_arm
    Valid: both arms above zero; scale and block at one height, trailer level, wheels chocked
    Source: plank-method three times the reading with arms of three and one
    Departs: takes the plank's own weight off, which the source leaves to a scale set to zero
    Assumes: plank and coupling touch in lines
    """
    OutOfRange.unless_positive("scale_arm", scale_arm)
    OutOfRange.unless_positive("ball_arm", ball_arm)
    return (reading - bare_reading) * scale_arm / ball_arm


def plank_uncertainty(
    net_reading: Kilogram,
    scale_arm: Metre,
    ball_arm: Metre,
    reading_uncertainty: Kilogram,
    scale_arm_uncertainty: Metre,
    ball_arm_uncertainty: Metre,
) -> Kilogram:
    """Return the standard uncertainty of a tongue weight by bathroom scale and plank.

    Formula: uncertainty = sqrt((scale_arm * reading_uncertainty)**2 + (net_reading * scale_arm_uncertainty)**2
        + (net_reading * scale_arm / ball_arm * ball_arm_uncertainty)**2) / ball_arm
    Valid: uncertainties small beside reading and arms
    Source: first-principles section 3.1
    Departs: nothing
    Assumes: reading and arms err independently
    """
    OutOfRange.unless_positive("ball_arm", ball_arm)
    by_reading = scale_arm * reading_uncertainty
    by_scale_arm = net_reading * scale_arm_uncertainty
    by_ball_arm = net_reading * scale_arm / ball_arm * ball_arm_uncertainty
    return sqrt(by_reading**2 + by_scale_arm**2 + by_ball_arm**2) / ball_arm


def centre_z_by_lift(
    mass: Kilogram,
    lever: Metre,
    axle_z: Metre,
    support_z: Metre,
    level_tongue: Kilogram,
    lifted_tongue: Kilogram,
    lift: Degree,
) -> Metre:
    """Return the height of the centre of gravity from the load under the nose, level and lifted.

    ``axle_z`` is the wheel centre, ``support_z`` the support under the nose with the trailer level; the answer is in
    the same datum. ``lever`` is from that support to the axle.

    Formula: centre_z = axle_z + (level_tongue - lifted_tongue) * lever / (mass * tan(lift)) + lifted_tongue /
        mass * (support_z - axle_z)
    Valid: lift between 2 and 20 degrees up or down; springs blocked, tanks empty or full
    Source: axle-lift 6.5
    Departs: has the support under the nose at a height of its own; with both at one height it is the two-axle form
    Assumes: wheels free to roll, so that the nose is held vertically only
    """
    OutOfRange.unless_positive("mass", mass)
    OutOfRange.unless_between("lift", abs(lift), 0.034, 0.35)
    by_lift = (level_tongue - lifted_tongue) * lever / (mass * tan(lift))
    return axle_z + by_lift + lifted_tongue / mass * (support_z - axle_z)


def centre_z_uncertainty(mass: Kilogram, lever: Metre, reading: Kilogram, lift: Degree) -> Metre:
    """Return the standard uncertainty of the centre's height by a lifted nose, from that of one reading.

    Formula: uncertainty = lever * sqrt(2) * reading / (mass * tan(lift))
    Valid: lift between 2 and 20 degrees; the two readings are the greatest doubt
    Source: first-principles section 3.2
    Departs: nothing
    Assumes: the two readings err independently; angle and lengths without doubt
    """
    OutOfRange.unless_positive("mass", mass)
    OutOfRange.unless_between("lift", lift, 0.034, 0.35)
    return lever * sqrt(2) * reading / (mass * tan(lift))


def agreement(planned: Kilogram, measured: Kilogram, planned_doubt: Kilogram, measured_doubt: Kilogram) -> Ratio:
    """Return how far plan and scale are apart, in units of what both may err together; above 1 they disagree.

    Formula: agreement = abs(planned - measured) / sqrt(planned_doubt**2 + measured_doubt**2)
    Valid: doubts as half-widths at 95 %, not both zero
    Source: first-principles section 3.3
    Departs: nothing
    Assumes: plan and scale err independently
    """
    together = sqrt(planned_doubt**2 + measured_doubt**2)
    OutOfRange.unless_positive("measured_doubt", together)
    return abs(planned - measured) / together
