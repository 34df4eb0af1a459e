"""Weather as a box through time takes it: what is around it hour by hour, and the sun on each of its directions."""

from __future__ import annotations

from typing import NamedTuple

from boxwright.disciplines.heat.method.boxed import _saturated
from boxwright.disciplines.heat.method.clear import beyond_air, clear_sun, scattered_share
from boxwright.disciplines.heat.method.sky import cloud_factor, sky_emittance, sky_temperature
from boxwright.disciplines.heat.method.sun import (
    day_angle,
    declination,
    hour_angle,
    sun_on_face,
    sundial_ahead,
    toward_sun,
)
from boxwright.disciplines.heat.weather import WeatherHours

Facing = tuple[float, float, float]

HOURS_OF_DAY, SECONDS_OF_HOUR, DAYS_OF_YEAR = 24, 3600.0, 365
LOWEST_SUN = 0.02
"""How far up the sun must be for any of it to count: a degree over the ground."""


class Around(NamedTuple):
    """The columns of weather of a box's hours: as they stand in `Hours`, by the same names."""

    outside: tuple[float, ...]
    sky: tuple[float, ...]
    wind: tuple[float, ...]
    humidity: tuple[float, ...]
    sun: tuple[tuple[float, ...], ...]


def around(weather: WeatherHours, facings: tuple[Facing, ...], ground: float, pressure: float) -> Around:
    """Return what is around a box that looks in these directions.

    The sun stands where it does in the middle of the hour. A column the weather does not have is none: no wind, no
    sun, a dry sky without cloud as cold as its dew point makes it; without dew point, a sky as warm as the air.
    """
    count = len(weather.outside)
    none = (0.0,) * count
    outside, dew = weather.outside, weather.dew_point
    cloud = weather.cloud or none
    sky = tuple(
        sky_temperature(air, min(sky_emittance(point) * cloud_factor(min(max(tenths, 0.0), 10.0)), 1.0))
        for air, point, tenths in zip(outside, dew, cloud, strict=True)
    ) if dew else outside  # fmt: skip
    humidity = tuple(_saturated(point, pressure) for point in dew) if dew else none
    return Around(outside, sky, weather.wind or none, humidity, _suns(weather, facings, ground))


def _suns(weather: WeatherHours, facings: tuple[Facing, ...], ground: float) -> tuple[tuple[float, ...], ...]:
    """Return the sun of each hour on each direction.

    Level sun is what comes straight and what comes from the sky: of the three a column that is missing is what the two
    others leave. Of level sun alone all counts as from the sky, which a flat roof does not feel.
    """
    count, dark = len(weather.outside), (0.0,) * len(facings)
    straight = weather.straight_sun or (0.0,) * count
    level = weather.level_sun or (0.0,) * count
    first = weather.begins[0] * HOURS_OF_DAY + weather.begins[1]
    rows: list[tuple[float, ...]] = []
    for place in range(count):
        if level[place] <= 0.0 and straight[place] <= 0.0:
            rows.append(dark)
            continue
        day, hour = divmod(first + place, HOURS_OF_DAY)
        angle = day_angle(day % DAYS_OF_YEAR + (hour + 0.5) / HOURS_OF_DAY)
        clock = (hour + 0.5) * SECONDS_OF_HOUR
        past = hour_angle(clock, weather.ahead, weather.longitude, sundial_ahead(angle))
        sun = toward_sun(weather.latitude, declination(angle), past)
        beam = straight[place] if sun.up > 0.0 else 0.0
        light = weather.sky_light[place] if weather.sky_light else max(level[place] - beam * max(sun.up, 0.0), 0.0)
        if not weather.straight_sun and sun.up > LOWEST_SUN:
            beam = max(level[place] - light, 0.0) / sun.up
        whole = level[place] if weather.level_sun else light + beam * max(sun.up, 0.0)
        rows.append(tuple(sun_on_face(beam, light, whole, ground, one, sun) for one in facings))
    return tuple(rows)


def level_split(where: tuple[float, float, float], hour: int, level: float, share: float | None) -> tuple[float, float]:
    """Return what of an hour's sun on level ground comes straight from the sun, and what from the sky (W/m2).

    ``share`` comes from the sky, None for the one that is published; what no sun could give comes from there too.
    """
    beyond, up = _sun_of(where, hour)
    if level <= 0.0 or up <= LOWEST_SUN:
        return 0.0, max(level, 0.0)
    scattered = scattered_share(min(level / (beyond * up), 1.0)) if share is None else share
    beam = min(level * (1.0 - scattered) / up, beyond)
    return beam, level - beam * up


def _sun_of(where: tuple[float, float, float], hour: int) -> tuple[float, float]:
    """Return what comes from the sun beyond the air (W/m2) amid an hour of the year, and how far up it stands."""
    latitude, longitude, ahead = where
    day, clock = divmod(hour, HOURS_OF_DAY)
    angle = day_angle(day % DAYS_OF_YEAR + (clock + 0.5) / HOURS_OF_DAY)
    past = hour_angle((clock + 0.5) * SECONDS_OF_HOUR, ahead, longitude, sundial_ahead(angle))
    return beyond_air(angle), toward_sun(latitude, declination(angle), past).up


def clear_hour(where: tuple[float, float, float], hour: int, share: float) -> tuple[float, float, float]:
    """Return a share of a clear hour's sun on level ground, straight from the sun, and from the sky.

    ``where`` is latitude, longitude, and how far its clock is ahead; ``hour`` counts from the year's first.
    """
    beyond, up = _sun_of(where, hour)
    if up <= LOWEST_SUN or share <= 0.0:
        return 0.0, 0.0, 0.0
    level = share * clear_sun(min(up, 1.0))
    scattered = level * scattered_share(min(level / (beyond * up), 1.0))
    return level, (level - scattered) / up, scattered
