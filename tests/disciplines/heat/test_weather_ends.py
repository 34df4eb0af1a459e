"""What weather leaves out: which end is the one of more loss, and that real years lie between both."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from importlib.util import find_spec
from math import degrees, pi
from pathlib import Path
from statistics import mean

import pytest

from boxwright.disciplines.heat.climate import clear_hour, level_split
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.weather_ends import UNSAID, at_end, left_out
from boxwright.rig.weather import open_weather

STATIONS = ("723170TYA.CSV", "703165TY.csv", "12839.tm2")
YARD = WeatherHours("yard", "log.csv", 0.0, 0.0, 0.0, -18000.0, (171, 0), (293.15,) * 24)


def test_at_the_end_of_more_loss_it_is_windy_dry_clear_and_without_sun() -> None:
    assert left_out(YARD) == ("wind", "dew point", "cloud", "sun")
    low, best, high = (at_end(YARD, end) for end in ("low", "best", "high"))  # type: ignore[arg-type]
    assert low.wind[0] == 0.0 < best.wind[0] < high.wind[0]
    assert low.dew_point[0] == 293.15 > best.dew_point[0] > high.dew_point[0]
    assert low.cloud[0] == 10.0 > best.cloud[0] > high.cloud[0] == 0.0
    assert sum(low.level_sun) > sum(best.level_sun) > sum(high.level_sun) == 0.0
    assert [left_out(one) for one in (low, best, high)] == [("wind",), (), ("sun",)], "still air and no sun are ends"


def test_what_is_told_is_kept_and_a_wind_of_nothing_is_none() -> None:
    told = replace(
        YARD, wind=(3.0,) * 24, dew_point=(280.0,) * 24, cloud=(4.0,) * 24, level_sun=(90.0,) * 24, latitude=0.6,
        sky_light=(60.0,) * 24,
    )  # fmt: skip
    assert left_out(told) == () and at_end(told, "high") is told
    assert left_out(replace(told, wind=(0.0,) * 24)) == ("wind",), "a cup that never turned measured no wind"
    assert at_end(replace(told, wind=()), "high").dew_point == told.dew_point


SUNNY = replace(
    YARD,
    level_sun=(0.0,) * 8 + (40.0, 300.0, 500.0, 600.0, 500.0, 300.0, 40.0) + (0.0,) * 9,
    latitude=0.7,
    longitude=-75.0 * pi / 180.0,
)


def test_level_sun_alone_is_run_as_all_straight_and_as_all_from_the_sky() -> None:
    """What comes straight times the sine of the sun's height, and what comes from the sky, are the level sun."""
    assert "straight sun" in left_out(SUNNY)
    low, best, high = (at_end(SUNNY, end) for end in ("low", "best", "high"))  # type: ignore[arg-type]
    assert sum(low.straight_sun) > sum(best.straight_sun) > sum(high.straight_sun) == 0.0
    assert high.sky_light == SUNNY.level_sun
    for one in (low, best, high):
        assert one.level_sun == SUNNY.level_sun and max(one.straight_sun) < 1400.0, (
            "more than comes to the earth at all"
        )
    noon = 11
    up = (low.level_sun[noon] - low.sky_light[noon]) / low.straight_sun[noon]
    assert low.sky_light[noon] == pytest.approx(0.0, abs=1e-9)
    # By hand: 40.1 degrees north, 20 June, declination 23.4 degrees: at half past eleven by the sun 72 degrees up.
    assert up == pytest.approx(0.95, abs=0.03)
    assert best.straight_sun[noon] * up + best.sky_light[noon] == pytest.approx(600.0)


def test_a_sun_that_is_hardly_up_gives_no_more_than_comes_from_it() -> None:
    where = (0.7, -75.0 * pi / 180.0, -18000.0)
    for hour in range(171 * 24, 172 * 24):
        beam, sky = level_split(where, hour, 500.0, 0.0)
        assert 0.0 <= beam <= 1420.0 and sky >= -1e-9, hour
    assert level_split(where, 171 * 24, 5.0, 0.0) == (0.0, 5.0), "at night what is measured is not the sun"


def test_a_file_without_a_height_is_run_by_the_sea_and_up_high() -> None:
    """The standard atmosphere: 101,325 Pa by the sea, 70,109 Pa at 3000 m."""
    low, best, high = (at_end(replace(YARD, altitude=None), end) for end in ("low", "best", "high"))  # type: ignore[arg-type]
    assert (high.pressure[0], low.pressure[0]) == pytest.approx((101_325.0, 70_109.0), rel=1e-3)
    assert low.pressure[0] < best.pressure[0] < high.pressure[0]
    told = replace(YARD, altitude=None, pressure=(90_000.0,) * 24)
    assert "height above the sea" in left_out(told) and at_end(told, "low").pressure == told.pressure
    assert at_end(YARD, "low").pressure == ()


def test_a_logger_without_a_place_has_its_noon_amid_its_zone_and_a_file_with_one_there() -> None:
    """Within a quarter of an hour, as far as a sundial is off the clock."""
    sun = at_end(YARD, "low")
    assert degrees(sun.longitude) == pytest.approx(-75.0) and degrees(sun.latitude) == pytest.approx(25.0)
    morning, evening = sum(sun.level_sun[:12]), sum(sun.level_sun[12:])
    assert morning == pytest.approx(evening, rel=0.03) and sun.level_sun[0] == sun.level_sun[23] == 0.0
    west = at_end(replace(YARD, latitude=0.9, longitude=-95.0 * pi / 180.0), "low")
    assert (degrees(west.longitude), west.latitude) == (pytest.approx(-95.0), 0.9)
    assert sum(west.level_sun[:12]) < 0.85 * sum(west.level_sun[12:])


@cache
def station(name: str) -> WeatherHours:
    package = find_spec("pvlib")
    if package is None:
        pytest.skip("pvlib is not installed: no typical year is at hand")
    (folder,) = package.submodule_search_locations or ()
    read = open_weather(Path(folder) / "data" / name)
    assert read.hours is not None
    return read.hours


@pytest.mark.parametrize(
    ("name", "wind", "dry", "cloud", "sun"),
    list(zip(STATIONS, (3.1, 5.1, 4.3), (6.2, 4.3, 5.5), (5.6, 7.3, 5.4), (0.71, 0.52, 0.74), strict=True)),
)
def test_what_is_taken_is_what_three_typical_years_have(
    name: str, wind: float, dry: float, cloud: float, sun: float
) -> None:
    """Stations of the typical years that pvlib ships, whose numbers the source of the table names."""
    hours = station(name)
    under = sorted(air - point for air, point in zip(hours.outside, hours.dew_point, strict=True))
    assert (mean(hours.wind), mean(under), mean(hours.cloud)) == pytest.approx((wind, dry, cloud), abs=0.05)
    where = (hours.latitude, hours.longitude, hours.ahead)
    clear = sum(clear_hour(where, hour, 1.0)[0] for hour in range(8760))
    assert sum(hours.level_sun) / clear == pytest.approx(sun, abs=0.005)
    for row, found in (("wind", sorted(hours.wind)), ("dry air", under)):
        assert found[int(0.99 * 8760)] < UNSAID[row].high, "99 of 100 hours"
