"""Weather that leaves something out, at the ends of what that may be: no logger in the yard has wind, sky and sun.

Ends are of heat loss, as in `as_built`: the high one is windy, dry, clear and without sun, the low one is still,
damp, overcast and yet has all the sun of a clear day. No real year is as bad or as mild as either in every hour.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi, radians

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.climate import HOURS_OF_DAY, clear_hour
from boxwright.disciplines.heat.material import columns, interval
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
    return weather


def _sunny(weather: WeatherHours, end: End) -> WeatherHours:
    """Return the weather with a share of the sun of clear days; a file without a place stands amid its zone."""
    if not weather.latitude and not weather.longitude:
        north, east = radians(at(UNSAID["latitude"], end)), pi * weather.ahead / HALF_A_DAY
        weather = replace(weather, latitude=north, longitude=east)
    share = at(UNSAID["sun"], end, False)
    first = weather.begins[0] * HOURS_OF_DAY + weather.begins[1]
    where = (weather.latitude, weather.longitude, weather.ahead)
    suns = [clear_hour(where, first + place, share) for place in range(len(weather.outside))]
    level, straight, scattered = zip(*suns, strict=True)
    return replace(weather, level_sun=level, straight_sun=straight, sky_light=scattered)
