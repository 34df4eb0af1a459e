"""Where the sun stands, and what of it a face gets: by its day, its hour, and where the face looks."""

from __future__ import annotations

from math import cos, pi, sin
from typing import NamedTuple

from boxwright.disciplines.heat.method.sky import WattPerSquareMetre
from boxwright.units import Degree, OutOfRange, Ratio, Second


class Toward(NamedTuple):
    """A direction of length one: how far it goes north, east and up."""

    north: Ratio
    east: Ratio
    up: Ratio


def day_angle(day: Ratio) -> Degree:
    """Return how far round the year a day is, 1 January being 0.

    Formula: angle = 2 * pi * day / 365
    Valid: 0 to 365
    Source: spencer-1971 day angle
    Departs: nothing
    Assumes: a year of 365 days
    """
    return 2 * pi * day / 365


def declination(angle: Degree) -> Degree:
    """Return how far north of the equator the sun stands.

    Formula: declination = 0.006918 - 0.399912 * cos(angle) + 0.070257 * sin(angle) - 0.006758 * cos(2 * angle) + 0.000907 * sin(2 * angle) - 0.002697 * cos(3 * angle) + 0.00148 * sin(3 * angle)
    Units: empirical
    Valid: any day; within 0.04 degrees
    Source: spencer-1971 as pvlib has it
    Departs: nothing
    Assumes: the same all day
    """  # noqa: E501
    return (
        0.006918
        - 0.399912 * cos(angle)
        + 0.070257 * sin(angle)
        - 0.006758 * cos(2 * angle)
        + 0.000907 * sin(2 * angle)
        - 0.002697 * cos(3 * angle)
        + 0.00148 * sin(3 * angle)
    )


def sundial_ahead(angle: Degree) -> Second:
    """Return how far a sundial is ahead of an even clock.

    Formula: ahead = 60 * 229.18 * (0.0000075 + 0.001868 * cos(angle) - 0.032077 * sin(angle) - 0.014615 * cos(2 * angle) - 0.040849 * sin(2 * angle))
    Units: empirical
    Valid: any day; within 35 s
    Source: spencer-1971 as pvlib has it, equation of time
    Departs: seconds for minutes
    Assumes: the same all day
    """  # noqa: E501
    return (
        60
        * 229.18
        * (
            0.0000075
            + 0.001868 * cos(angle)
            - 0.032077 * sin(angle)
            - 0.014615 * cos(2 * angle)
            - 0.040849 * sin(2 * angle)
        )
    )


def hour_angle(clock: Second, zone: Second, longitude: Degree, sundial: Second) -> Degree:
    """Return how far the sun is past south, from the standard time of the place since midnight.

    ``zone`` is how far that clock is ahead of universal time, ``sundial`` how far a sundial is ahead of an even clock.

    Formula: angle = pi * (clock - zone + sundial - 43200) / 43200 + longitude
    Units: empirical
    Valid: longitude east of Greenwich
    Source: pvlib-solar hour_angle
    Departs: nothing
    Assumes: a day of 86,400 s
    """
    return pi * (clock - zone + sundial - 43200) / 43200 + longitude


def toward_sun(latitude: Degree, declined: Degree, past_south: Degree) -> Toward:
    """Return where the sun is seen; it is down where that goes down.

    Satisfies: result.north**2 + result.east**2 + result.up**2 - 1
    Valid: anywhere
    Source: pvlib-solar get_solarposition
    Departs: no refraction, half a degree at the horizon
    Assumes: a sphere
    """
    return Toward(
        cos(latitude) * sin(declined) - sin(latitude) * cos(declined) * cos(past_south),
        -cos(declined) * sin(past_south),
        sin(latitude) * sin(declined) + cos(latitude) * cos(declined) * cos(past_south),
    )


def sun_on_face(
    straight: WattPerSquareMetre,
    sky_light: WattPerSquareMetre,
    level: WattPerSquareMetre,
    ground: Ratio,
    facing: tuple[Ratio, Ratio, Ratio],
    sun: tuple[Ratio, Ratio, Ratio],
) -> WattPerSquareMetre:
    """Return the sun on a face: straight, from an even sky, and from the ground before it.

    ``facing`` and ``sun`` are directions north, east and up; ``ground`` is the share the ground throws back.

    Formula: sun = straight * max(0, facing[0] * sun[0] + facing[1] * sun[1] + facing[2] * sun[2]) + sky_light * (1 + facing[2]) / 2 + level * ground * (1 - facing[2]) / 2
    Valid: a sun that is up; a facing of length one
    Source: pvlib-solar get_total_irradiance, isotropic
    Departs: nothing
    Assumes: a sky as bright everywhere, level ground without shade
    """  # noqa: E501
    OutOfRange.unless_between("facing up", facing[2], -1.0, 1.0)
    met = max(0.0, facing[0] * sun[0] + facing[1] * sun[1] + facing[2] * sun[2])
    return straight * met + sky_light * (1 + facing[2]) / 2 + level * ground * (1 - facing[2]) / 2
