"""Weather that leaves something out, at the ends of what that may be: no logger in the yard has wind, sky and sun.

Ends are of heat loss, as in `as_built`: the high one is windy, dry, clear, without sun and by the sea, the low one is
still, damp, overcast, up high, and yet has all the sun of a clear day. Sun on level ground alone comes straight from
the sun at the low end, as far as it can, and from all of the sky at the high one. No real year is as bad or as mild as
either in every hour.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.climate import HOURS_OF_DAY, clear_hour, level_split
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.method import pressure_at
from boxwright.disciplines.heat.room import at
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.units import Band

UNSAID: dict[str, Band] = {name: interval(*row) for name, row in columns("weather_unsaid").items()}
HALF_A_DAY = 43200.0


def left_out(weather: WeatherHours) -> tuple[str, ...]:
    """Return what the weather says nothing of; a wind or a sun that is nothing all through was not measured."""
    has = {
        "wind": any(one > 0.0 for one in weather.wind),
        "dew point": bool(weather.dew_point),
        "cloud": bool(weather.cloud),
        "sun": weather.has_sun,
        "straight sun": not weather.has_sun or bool(weather.straight_sun or weather.sky_light),
        "height above the sea": weather.altitude is not None,
    }
    return tuple(name for name, there in has.items() if not there)


def at_end(weather: WeatherHours, end: End) -> WeatherHours:
    """Return the weather with what it leaves out as it is at an end of heat loss."""
    lacks, count = left_out(weather), len(weather.outside)
    if "wind" in lacks:
        weather = replace(weather, wind=(at(UNSAID["wind"], end),) * count)
    if "dew point" in lacks:
        under = at(UNSAID["dry air"], end)
        weather = replace(weather, dew_point=tuple(one - under for one in weather.outside))
    if "cloud" in lacks:
        weather = replace(weather, cloud=(at(UNSAID["cloud"], end, False),) * count)
    if "sun" in lacks:
        weather = _sunny(weather, end)
    if "straight sun" in lacks:
        weather = _split(weather, end)
    if "height above the sea" in lacks and not weather.pressure:
        weather = replace(weather, pressure=(pressure_at(at(UNSAID["height"], end, False)),) * count)
    return weather


def _somewhere(weather: WeatherHours, end: End) -> WeatherHours:
    """Return the weather with a place: a file without one stands amid its zone."""
    if weather.latitude or weather.longitude:
        return weather
    return replace(weather, latitude=radians(at(UNSAID["latitude"], end)), longitude=pi * weather.ahead / HALF_A_DAY)


def _split(weather: WeatherHours, end: End) -> WeatherHours:
    """Return the weather with its level sun split: likely as is published, else all of it from where it may come."""
    weather = _somewhere(weather, end)
    where = (weather.latitude, weather.longitude, weather.ahead)
    first = weather.begins[0] * HOURS_OF_DAY + weather.begins[1]
    share = {"low": 0.0, "best": None, "high": 1.0}[end]
    suns = [level_split(where, first + place, level, share) for place, level in enumerate(weather.level_sun)]
    straight, scattered = zip(*suns, strict=True)
    return replace(weather, straight_sun=straight, sky_light=scattered)


def _sunny(weather: WeatherHours, end: End) -> WeatherHours:
    """Return the weather with a share of the sun of clear days."""
    weather = _somewhere(weather, end)
    share = at(UNSAID["sun"], end, False)
    first = weather.begins[0] * HOURS_OF_DAY + weather.begins[1]
    where = (weather.latitude, weather.longitude, weather.ahead)
    suns = [clear_hour(where, first + place, share) for place in range(len(weather.outside))]
    level, straight, scattered = zip(*suns, strict=True)
    return replace(weather, level_sun=level, straight_sun=straight, sky_light=scattered)
