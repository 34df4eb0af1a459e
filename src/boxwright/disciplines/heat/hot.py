"""The hot day of a place: how hot, how sunny, how damp it gets, as it is written or as hot days are."""

from __future__ import annotations

from functools import lru_cache
from math import cos, pi

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.climate import HOURS_OF_DAY, clear_hour
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.method.boxed import _saturated
from boxwright.disciplines.heat.parts import MONTHS, ClimateFacet, Section
from boxwright.disciplines.heat.room import SEA_LEVEL, at
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.records import dataclass
from boxwright.units import Band

HOT: dict[str, Band] = {name: interval(*row) for name, row in columns("a_hot_day").items()}
DAYS, BEGINS, HOTTEST_AT = 3, 6, 15
"""Three days alike from six to six; sun and clock agree, so that noon is when the sun stands highest."""
BEFORE = (0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334)
MIDDLE = 14
"""Days of a month before its middle."""


@dataclass(frozen=True, slots=True)
class HotDay:
    """A hot day: its hottest hour and how much (K) the coldest is under it, its sun as a share of a clear day's.

    ``wind`` in m/s, ``humidity`` at the coldest hour; ``latitude`` in rad, ``day`` of the year from 0. ``is_written``
    says that the rig names the day, not only the mean of its month.
    """

    of: str
    place: str
    hottest: Band
    swing: Band
    sun: Band
    wind: Band
    humidity: Band
    latitude: Band
    day: int
    is_written: bool


def hot_days(own: Section) -> tuple[HotDay, ...]:
    """Return the hot day of every place that says how hot it gets, by its hottest month."""
    north = dict(own.latitudes)
    found = [_hot_day(name, one, north.get(name)) for name, one in own.climates]
    return tuple(one for one in found if one is not None)


def _hot_day(name: str, climate: ClimateFacet, north: float | None) -> HotDay | None:
    months = [(number, one) for number, key in enumerate(MONTHS) if (one := getattr(climate, key)) is not None]
    hot = [(one.high, number, one) for number, one in months if one.high is not None and one.high.known]
    written = climate.hottest_design
    latitude = _latitude(north)
    number, month = (6 if latitude.best >= 0.0 else 0), None
    if hot:
        high, number, month = max(hot, key=lambda one: (one[0].best, one[1]))
        hottest = written if written is not None and written.known else _over(high)
    elif written is not None and written.known:
        hottest = written
    else:
        return None
    swing = HOT["swing"]
    if month is not None and month.low is not None and month.low.known:
        usual = max(month.high.best - month.low.best, 0.0)
        swing = Band(usual, min(usual, swing.low), max(usual, swing.high), spread="interval", assumed=True)
    wind = month.wind if month is not None and month.wind is not None and month.wind.known else HOT["wind"]
    return HotDay(
        f"places[{name}]", name, hottest, swing, HOT["sun"], wind, HOT["humidity"], latitude,
        BEFORE[number] + MIDDLE, hottest is written,
    )  # fmt: skip


def _over(mean: Band) -> Band:
    more = HOT["over the mean high"]
    return Band(mean.best + more.best, mean.low + more.low, mean.high + more.high, spread="interval", assumed=True)


def _latitude(north: float | None) -> Band:
    if north is not None:
        return Band(north, north, north)
    # Nobody wrote it: somewhere between the tropics and the north.
    best, low, high = (one * pi / 180.0 for one in (HOT["latitude"].best, HOT["latitude"].low, HOT["latitude"].high))
    return Band(best, low, high, spread="interval", assumed=True)


@lru_cache(maxsize=16)
def weather_of(hot: HotDay, end: End) -> WeatherHours:
    """Return three days of it; at the high end the night cools little, no wind blows and all of the sun shines."""
    hottest, swing = at(hot.hottest, end), at(hot.swing, end, False)
    clocks = [(BEGINS + hour) % HOURS_OF_DAY for hour in range(DAYS * HOURS_OF_DAY)]
    outside = tuple(
        hottest - swing / 2.0 * (1.0 - cos(2.0 * pi * (clock - HOTTEST_AT) / HOURS_OF_DAY)) for clock in clocks
    )
    dew = _dew_point(at(hot.humidity, end) * _saturated(hottest - swing, SEA_LEVEL))
    where = (at(hot.latitude, end, False), 0.0, 0.0)
    suns = [clear_hour(where, hot.day * HOURS_OF_DAY + clock, at(hot.sun, end)) for clock in clocks]
    level, straight, scattered = zip(*suns, strict=True)
    return WeatherHours(
        place=hot.place,
        came_from="a hot day",
        latitude=at(hot.latitude, end, False),
        longitude=0.0,
        altitude=0.0,
        ahead=0.0,
        begins=(hot.day, BEGINS),
        outside=outside,
        dew_point=(dew,) * len(clocks),
        wind=(at(hot.wind, end, False),) * len(clocks),
        level_sun=level,
        straight_sun=straight,
        sky_light=scattered,
    )


def _dew_point(ratio: float) -> float:
    """Return the temperature (K) at which air with so much water drips, by halving between frost and heat."""
    low, high = 250.0, 330.0
    for _ in range(40):
        middle = (low + high) / 2.0
        low, high = (middle, high) if _saturated(middle, SEA_LEVEL) < ratio else (low, middle)
    return low
