"""The sun of a day without cloud, where no file of weather is at hand: how strong, and how much of it is scattered."""

from __future__ import annotations

from math import cos, exp, sin

from boxwright.disciplines.heat.method.sky import WattPerSquareMetre
from boxwright.units import Degree, OutOfRange, Ratio


def beyond_air(angle: Degree) -> WattPerSquareMetre:
    """Return the sun outside the air on a face that looks at it.

    Formula: sun = 1366.1 * (1.00011 + 0.034221 * cos(angle) + 0.00128 * sin(angle) + 0.000719 * cos(2 * angle) + 0.000077 * sin(2 * angle))
    Units: empirical
    Valid: any day
    Source: spencer-1971 distance of the sun, as pvlib has it
    Departs: nothing
    Assumes: the same all day
    """  # noqa: E501
    return 1366.1 * (
        1.00011 + 0.034221 * cos(angle) + 0.00128 * sin(angle) + 0.000719 * cos(2 * angle) + 0.000077 * sin(2 * angle)
    )


def clear_sun(up: Ratio) -> WattPerSquareMetre:
    """Return the sun on level ground under a clear sky; ``up`` is how far the direction to the sun goes up.

    Formula: sun = 1098 * up * exp(-0.059 / up)
    Units: empirical
    Valid: a sun that is up
    Source: haurwitz-1946 as pvlib has it
    Departs: nothing
    Assumes: the haze of the place it was measured at
    """
    OutOfRange.unless_positive("up", up)
    OutOfRange.unless_between("up", up, 0.0, 1.0)
    return 1098 * up * exp(-0.059 / up)


def scattered_share(clearness: Ratio) -> Ratio:
    """Return the share of the sun on level ground that comes from the sky; ``clearness`` is sun by sun beyond the air.

    Formula: share = 1 - 0.09 * clearness if clearness <= 0.22 else 0.9511 - 0.1604 * clearness + 4.388 * clearness**2 - 16.638 * clearness**3 + 12.336 * clearness**4 if clearness <= 0.8 else 0.165
    Units: empirical
    Valid: 0 to 1
    Source: erbs-1982 equation 1, as pvlib has it
    Departs: nothing
    Assumes: the mean of many hours
    """  # noqa: E501
    OutOfRange.unless_between("clearness", clearness, 0.0, 1.0)
    if clearness <= 0.22:
        return 1 - 0.09 * clearness
    if clearness <= 0.8:
        return 0.9511 - 0.1604 * clearness + 4.388 * clearness**2 - 16.638 * clearness**3 + 12.336 * clearness**4
    return 0.165
