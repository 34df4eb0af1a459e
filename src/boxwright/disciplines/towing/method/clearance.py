"""What hangs low: the change of grade it passes behind the axle, and between ball and axle."""

from __future__ import annotations

from math import atan2

from boxwright.units import Degree, Metre, OutOfRange, Ratio


def pitched_height(height: Metre, ahead_of_axle: Metre, pitch: Ratio) -> Metre:
    """Return how high a point stands when the nose points up: higher ahead of the axle, lower behind it.

    Formula: pitched = height + ahead_of_axle * pitch
    Valid: small pitch (rise over run)
    Source: first-principles clearance
    Departs: nothing
    Assumes: the trailer turns about its axle, or the middle of its group
    """
    OutOfRange.unless_between("pitch", pitch, -0.5, 0.5)
    return height + ahead_of_axle * pitch


def departure_angle(height: Metre, behind_rear_wheel: Metre) -> Degree:
    """Return the steepest rise of the road behind the rear wheels that a point behind them clears.

    The trailer stands on the level and the road behind it rises, as where it leaves a driveway for the street.

    Formula: angle = atan2(height, behind_rear_wheel)
    Valid: a point behind the place where the rear wheels touch
    Source: first-principles clearance
    Departs: nothing
    Assumes: springs and tyres do not give
    """
    OutOfRange.unless_positive("behind_rear_wheel", behind_rear_wheel)
    OutOfRange.unless_positive("height", height)
    return atan2(height, behind_rear_wheel)


def breakover_angle(height: Metre, behind_tow_wheel: Metre, ahead_of_wheel: Metre) -> Degree:
    """Return the sharpest crest that a point between two axles clears: the sum of the angles to both wheels.

    Formula: angle = atan2(height, behind_tow_wheel) + atan2(height, ahead_of_wheel)
    Valid: a point between the wheels ahead of it and those behind it
    Source: breakover-page both halves of the formula
    Departs: the low point may stand anywhere between the axles, not only in the middle
    Assumes: vehicle and trailer in line and stiff; springs and tyres do not give
    """
    OutOfRange.unless_positive("behind_tow_wheel", behind_tow_wheel)
    OutOfRange.unless_positive("ahead_of_wheel", ahead_of_wheel)
    OutOfRange.unless_positive("height", height)
    return atan2(height, behind_tow_wheel) + atan2(height, ahead_of_wheel)
