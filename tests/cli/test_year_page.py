"""The page of a year: whose weather it takes, and how hours, heat, fuel and their ends are said."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import inf
from pathlib import Path
from typing import Any

import pytest

from boxwright.book.year import cache_folder
from boxwright.cli import year_page
from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import text_of
from boxwright.disciplines.heat.burning import Burning, Rates
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.year import Trip, Year
from boxwright.disciplines.heat.year_sheet import year_sheet
from boxwright.rig import weather_fetch
from boxwright.units import Band, HeaderUnits, exactly

RIG = Path(__file__).parents[2] / "rigs" / "whimbrel.yaml"
WEATHER = WeatherHours("Somewhere", "made.epw", 0.6, -1.4, 0.0, -18000.0, (0, 0), (280.0,) * 8760)
WEATHER = replace(WEATHER, level_sun=(100.0,) * 8760)


@pytest.fixture(autouse=True)
def keeps_nothing_at_home(monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory) -> None:
    """What a test compiles is kept beside its other files."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.getbasetemp() / "cache"))


@pytest.fixture(scope="module")
def whimbrel() -> Answered:
    return answered(Question(str(RIG), "finish", "", "sleep"), date(2026, 5, 2))


def made(heater: str = "heater", fuel: Band | None = None, weather: WeatherHours = WEATHER, **more: Any) -> Year:
    """Return a year made by hand."""
    hours = tuple(Band(float(one), one - 10.0, one + 10.0) for one in (5000, 2000, 0, 1500, 260))
    heat = Band(3.6e9, 1.8e9, 7.2e9)
    year = Year(
        WEATHER, heater, 289.817, hours, heat, exactly(2000.0), fuel, exactly(0.0), Band(100.0, 50.0, 200.0),
        exactly(280.0), exactly(305.0), heat, Band(1140.0, 600.0, 2424.0),
        (Band(1.8e9, 0.9e9, 3.6e9), *(exactly(0.0),) * 10, exactly(1.8e9)), 12,
    )  # fmt: skip
    return replace(year, weather=weather, **more)


def said(*given: str, **more: Any) -> str:
    """Return the page of a year made by hand, in the units of the demo rig."""
    year = made(*given, **more)
    units = answered(Question(str(RIG)), date(2026, 5, 2)).units
    found = year_page.Worked((year,), (), 2.5, "finish")
    return " ".join(" ".join(text_of(line).split()) for line in year_page.lines(found, units, 200))


def test_a_year_is_told_in_the_units_of_the_file_with_its_ends() -> None:
    half = Band(0.05, 0.025, 0.1)
    told = said(fuel=Band(0.1, 0.05, 0.2), fuel_by_month=(half, *(exactly(0.0),) * 10, half))
    assert "on days that are colder than that outside, heater gives 1,000 kWh (500 to 2,000) in the year" in told
    assert "burns 26.4 gal (13.2 to 52.8)" in told
    assert "over 82 F for 100 h (50 to 200)" in told
    assert "it takes 1,140 W (600 W to 2,420 W) at the worst hour" in told
    assert "heater off 5,000 h 4,990 to 5,010" in told
    assert "January 500 kWh (250 to 1,000) 13.2 gal (6.6 to 26.4)" in told and "March" not in told
    assert "12 runs, 2.5 ms each" in told and "Somewhere, made.epw: 8,760 hours" in told
    assert "It says nothing of wind, dew point, cloud, straight sun. The ends of each number cover wind from 0" in told
    assert "a dew point 40 F under it; a sky from clear to overcast; sun that comes all straight, and all from" in told
    assert "It leaves the room under 60 F for 0 h." in told, "no ends where there are none"


def test_what_a_heater_makes_of_its_fuel_otherwise_than_such_heaters_is_told_beside_its_fuel() -> None:
    """2000 W of 0.2 l/h are 99.8 % of 36.09 MJ/l."""
    flow = exactly(0.2e-3 / 3600.0)
    burning = Burning("diesel", (Rates(exactly(2000.0), exactly(2000.0), flow, flow),))
    assert "Its heat is 100 % of what is in the diesel it is said to burn" in said(burning=burning)
    assert "Its heat is" not in said()


def test_the_heat_and_fuel_of_a_day_a_trip_and_the_season_and_how_often_its_lowest_is_too_much() -> None:
    told = said(
        fuel=Band(0.1, 0.05, 0.2), season=4800, hot_at_lowest=Band(2400.0, 1200.0, 3000.0),
        hot_by=Band(10.0, 5.0, 20.0), trips=(Trip(3, Band(3.6e8, 1.8e8, 7.2e8), Band(0.01, 0.005, 0.02)),),
    )  # fmt: skip
    assert "too warm for 2,400 h (1,200 to 3,000) of the 4,800 hours it is set, 50 % of them, by up to 18 F" in told
    rarely = said(season=4800, hot_at_lowest=Band(0.0, 0.0, 672.0), hot_by=Band(-3.6, -11.0, 16.0))
    assert "it most likely never makes the room warmer than is wanted, at the most for 672 h, by up to 29 F." in rarely
    assert "a day in the mean of the season 5.0 kWh (2.5 to 10.0) 0.132 gal (0.066 to 0.264)" in told
    assert "the 3 days that take most 100 kWh (50 to 200) 2.64 gal (1.32 to 5.28)" in told
    assert "the season, 200 days 1,000 kWh (500 to 2,000) 26.4 gal (13.2 to 52.8)" in told


def test_weather_without_sun_tells_the_least_of_warmth_and_calls_the_rest_unknown() -> None:
    more = Band(2400.0, 1200.0, inf, known=False)
    told = said(
        weather=replace(WEATHER, level_sun=()), too_warm=Band(0.0, 0.0, inf, known=False), season=4800,
        warmest=Band(303.0, 302.0, inf, known=False), hot_at_lowest=more, hot_by=Band(10.0, 5.0, inf, known=False),
    )  # fmt: skip
    assert "How often it is over 82 F is not known: the weather has no sun in it" in told
    assert "it comes to 84 F at the least; with sun it gets warmer" in told
    assert "too warm for 1,200 h and more of the 4,800 hours it is set, the weather having no sun in it" in told
    assert "by 9 F and more" in told
    (grid,) = year_sheet((made(warmest=Band(303.0, 302.0, inf, known=False), too_warm=more),), HeaderUnits()).grids
    rows = {row[0]: row[1:] for row in grid.rows}
    assert rows["warmest"] == ("not known without sun", "84 F and more")
    assert rows["room over 82 F with all open"] == ("not known without sun", "1,200 h and more")
    assert "it takes" not in told and "over 82 F for" not in told and "too warm, opened" not in told
    assert "to overcast; days from none of it to a clear sky. How warm the room gets" in told
    night = replace(WEATHER, level_sun=(0.0,) * 8760, straight_sun=())
    assert not night.has_sun, "a column of nothing is no sun"
    assert WEATHER.has_sun and replace(WEATHER, level_sun=(), straight_sun=(0.0, 500.0)).has_sun


def test_without_a_heater_nothing_is_said_of_heat() -> None:
    told = said(heater="")
    assert "Nothing warms the room" in told
    assert "HEAT BY MONTH" not in told and "heater off" not in told


def test_a_place_without_a_station_beside_it_and_a_word_that_is_neither_are_told(whimbrel: Answered) -> None:
    with pytest.raises(NothingAsked, match="no weather file and no place of this rig"):
        year_page.weather_asked(whimbrel, "Timbuktu")


def test_a_place_takes_the_station_that_is_beside_it(whimbrel: Answered) -> None:
    pytest.importorskip("pvlib", reason="pvlib is not installed: no typical year is at hand")
    for word, station in (("Greensboro", "723170TYA.CSV"), ("sand point", "703165TY.csv")):
        found = year_page.weather_asked(whimbrel, word).hours
        assert found is not None and found.came_from == station and len(found.outside) == 8760


def test_a_date_that_may_be_either_is_read_as_in_the_country_of_the_rig(whimbrel: Answered, tmp_path: Path) -> None:
    path = tmp_path / "logger.csv"
    path.write_text("time,outside (C)\n2/1/2026 6:00 AM,4\n2/1/2026 7:00 AM,4\n", encoding="utf-8")
    found = year_page.weather_asked(whimbrel, str(path)).hours
    assert found is not None and found.begins == (31, 6), "the first of February, in the United States"


def test_a_few_hours_are_no_year(whimbrel: Answered, tmp_path: Path) -> None:
    rows = [f"2026-01-0{1 + hour // 24} {hour % 24:02d}:00-05:00,{hour % 24}" for hour in range(100)]
    path = tmp_path / "logger.csv"
    path.write_text("\n".join(["time,outside (C)", *rows]) + "\n", encoding="utf-8")
    with pytest.raises(NothingAsked, match="100 hours; a week at least"):
        year_page.worked(whimbrel, str(path))


def test_a_file_that_is_no_weather_is_told_with_what_was_expected(whimbrel: Answered, tmp_path: Path) -> None:
    path = tmp_path / "x.epw"
    path.write_text("nothing\n", encoding="utf-8")
    with pytest.raises(NothingAsked, match=r"x\.epw"):
        year_page.worked(whimbrel, str(path))


def gappy(folder: Path) -> Path:
    """Write ten days of a logger with two hours missing."""
    rows = [f"2026-01-{1 + hour // 24:02d} {hour % 24:02d}:00-05:00,{hour % 24}" for hour in range(240)]
    path = folder / "gaps.csv"
    path.write_text("\n".join(["time,outside (C)", *rows[:100], *rows[102:]]) + "\n", encoding="utf-8")
    return path


def test_gaps_are_filled_only_where_that_is_asked_and_told(whimbrel: Answered, tmp_path: Path) -> None:
    path = gappy(tmp_path)
    with pytest.raises(NothingAsked, match=r"line 101: the weather is missing for 2 hours after hour 100"):
        year_page.worked(whimbrel, str(path))
    found = year_page.weather_asked(whimbrel, str(path), fill=True)
    assert found.hours is not None and found.hours.filled == (100, 101)
    says = "2 hours of gaps.csv were missing and stand between their neighbours now"
    assert [one.says for one in found.problems] == [says]


def test_a_year_is_asked_for_by_place_and_never_over_a_file(
    whimbrel: Answered, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fetched_text(place: str, north: float, east: float) -> str:
        asked.append((place, north, east))
        return "time,outside (C)\n2026-01-01T00:00-05:00,3\n"

    asked: list[tuple[str, float, float]] = []
    monkeypatch.setattr(weather_fetch, "fetched_text", fetched_text)
    path = gappy(tmp_path)
    before = path.read_text(encoding="utf-8")
    with pytest.raises(NothingAsked, match="is there already"):
        year_page.fetched(whimbrel, "Greensboro", str(path))
    with pytest.raises(NothingAsked, match="no place of this rig"):
        year_page.fetched(whimbrel, "Timbuktu", str(tmp_path / "new.epw"))
    assert asked == [] and path.read_text(encoding="utf-8") == before
    with pytest.raises(NothingAsked, match="cannot be written"):
        year_page.fetched(whimbrel, "Greensboro", str(tmp_path / "no folder" / "new.epw"))
    found = year_page.fetched(whimbrel, "greens", str(tmp_path / "new.epw"))
    assert found.hours is not None and found.hours.outside == (276.15,)
    assert asked[-1] == ("Greensboro NC", 36.07, -79.79)


def test_what_does_not_come_back_writes_nothing(
    whimbrel: Answered, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fetched_text(*_: object) -> str:
        raise weather_fetch.NotFetched("no year came back")

    monkeypatch.setattr(weather_fetch, "fetched_text", fetched_text)
    with pytest.raises(NothingAsked, match="no year came back"):
        year_page.fetched(whimbrel, "Greensboro", str(tmp_path / "new.epw"))
    assert list(tmp_path.iterdir()) == []


def test_what_can_be_made_again_is_kept_where_the_system_keeps_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", "/somewhere")
    assert cache_folder() == "/somewhere/boxwright/compiled"
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.setattr("sys.platform", "linux")
    assert cache_folder() == f"{Path.home()}/.cache/boxwright/compiled"
    monkeypatch.setattr("sys.platform", "darwin")
    assert cache_folder().endswith("/Library/Caches/boxwright/compiled")


def test_a_lowest_setting_that_is_never_too_much_is_said_to_be_so() -> None:
    never = said(season=4800, hot_at_lowest=exactly(0.0), hot_by=exactly(-0.8))
    assert "Left shut at its lowest setting it is never too warm in the" in never and "-1.5" not in never
    dark = Band(0.0, 0.0, inf, known=False)
    asked = said(
        weather=replace(WEATHER, level_sun=()),
        season=4800,
        hot_at_lowest=dark,
        hot_by=Band(-0.8, -0.8, inf, known=False),
    )
    assert "Whether its lowest setting is too much cannot be said: the weather has no sun in it." in asked


def test_of_hours_that_hang_on_a_wind_nobody_told_no_most_likely_number_is_told() -> None:
    told = said(too_cold=Band(0.0, 0.0, 2882.0, known=False), banded=(Band(50.0, 22.0, 3896.0, known=False),) * 5)
    assert "leaves the room under 60 F for anything from 0 to 2,882 h." in told
    assert "too cold 0 to 2,882 h" in told and "heater off 22 to 3,896 h" in told and "50 h" not in told
