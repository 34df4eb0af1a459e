"""The sheet of a year: drawn only when it is asked for, and in words where nothing can be."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from boxwright.book import year as book_year
from boxwright.book.sheets import ONLY_BY_NAME, SLOW, slow_titles
from boxwright.book.year import NO_PLACE, NO_ROOM, NO_WEATHER, still_to_come, year_sheets
from boxwright.disciplines.heat.burning import Burning, Rates
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.year import Year
from boxwright.disciplines.heat.year_sheet import BELOW_BARS, year_sheet
from boxwright.rig.compose import read_rig
from boxwright.rig.weather import WeatherRead
from boxwright.study.slots import study
from boxwright.units import Band, HeaderUnits, exactly
from tests.study.demo import demo, slot_of, studied

US = HeaderUnits(length="in", temperature="F", volume="gal")
WEATHER = WeatherHours("Somewhere", "made.epw", 0.6, -1.4, 0.0, -18000.0, (0, 0), (280.0,) * 8760)
HOURS = tuple(Band(float(one), one - 10.0, one + 10.0) for one in (5000, 2000, 0, 1500, 260))
MADE = Year(
    WEATHER, "heater", 289.817, HOURS, Band(3.6e9, 1.8e9, 7.2e9), exactly(2000.0), exactly(0.2), exactly(0.0),
    Band(100.0, 50.0, 200.0), exactly(280.0), exactly(305.0), exactly(0.0), exactly(0.0),
    (Band(1.8e9, 9e8, 3.6e9), *(exactly(0.0),) * 10, Band(1.8e9, 9e8, 3.6e9)), 12,
    (Band(1e-3, 5e-4, 2e-3), *(exactly(0.0),) * 10, Band(1e-3, 5e-4, 2e-3)),
)  # fmt: skip


def test_the_bars_stand_on_each_other_and_add_up_to_the_year() -> None:
    sheet = year_sheet((MADE,), US)
    names = ["How heater runs through the year", "Heat of heater by month", "Fuel of heater by month"]
    assert [one.name for one in sheet.views] == names
    assert not any(one.is_to_scale for one in sheet.views)
    told = [str(getattr(one, "words", "")) for one in sheet.views[0].marks]
    assert {*BELOW_BARS, "5,000", "2,000", "1,500", "260", "8,760"} <= set(told)
    (grid,) = sheet.grids
    rows = {row[0]: row[1:] for row in grid.rows}
    assert rows["heater off"] == ("5,000 h", "4,990 to 5,010 h")
    assert rows["heat"] == ("1,000 kWh", "500 to 2,000 kWh")
    assert rows["room over 82 F with all open"] == ("100 h", "50 to 200 h")
    assert "made.epw: 8,760 hours" in sheet.notes[0]


def test_heat_and_fuel_of_a_month_are_told_with_their_ends() -> None:
    """1.8e9 J are 500 kWh; a litre is 0.264172 gal (NIST SP 811, from memory)."""
    _, heat, fuel = (one.chart for one in year_sheet((MADE,), US).views)
    assert heat is not None and fuel is not None
    (line,), (burnt,) = heat.series, fuel.series
    assert (line.best[0], line.low[0], line.high[0]) == pytest.approx((500.0, 250.0, 1000.0))
    assert (burnt.best[11], burnt.low[11], burnt.high[11]) == pytest.approx((0.264172, 0.132086, 0.528344), rel=1e-5)
    assert fuel.unit == "gal" and burnt.texts[0] == "Jan: 0.3 gal (0.1 to 0.5)"
    without = year_sheet((replace(MADE, fuel=None, fuel_by_month=()),), US)
    assert [one.name for one in without.views] == ["How heater runs through the year", "Heat of heater by month"]


def test_the_sheet_says_where_a_heater_makes_less_of_its_fuel_than_such_heaters() -> None:
    """500 W of 0.25 l/h are 20 % of 36.09 MJ/l."""
    flow = exactly(0.25e-3 / 3600.0)
    burning = Burning("diesel", (Rates(exactly(500.0), exactly(500.0), flow, flow),))
    told = year_sheet((replace(MADE, burning=burning),), US).notes[-1]
    assert told.startswith("heater: Its heat is 20 % of what is in the diesel it is said to burn")
    assert len(year_sheet((MADE,), US).notes) == 2


def test_without_a_heater_there_is_a_table_and_no_chart() -> None:
    sheet = year_sheet((replace(MADE, heater="", fuel=None),), US)
    assert sheet.views == () and sheet.grids[0].title == "The year without a heater"


def test_a_year_without_the_heater_of_the_plan_says_when_that_comes() -> None:
    rig = demo("whimbrel")
    liners, heat = (slot_of(studied("whimbrel"), stage, "departure", use="tow") for stage in ("liners", "heat"))
    assert still_to_come(rig, liners) == (
        "No heater stands at stage liners. The plan has heater at stage heat: ask with --stage heat.",
    )
    assert still_to_come(rig, heat) == ()
    dunlin = studied("dunlin")
    assert still_to_come(demo("dunlin"), next(one for one in dunlin.slots if one.use == "tow")) == ()  # it has none


def test_it_is_drawn_only_where_it_is_asked_for_by_name() -> None:
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    assert "year" in SLOW and "year" in ONLY_BY_NAME
    assert slow_titles(rig, slot)["year"] == "A year of the room"
    assert "year" not in slow_titles(rig, None)


def test_where_no_year_can_be_had_it_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    assert year_sheets(rig, None, US)[0].notes == (NO_ROOM,)
    nowhere = replace(rig, heat=replace(rig.heat, latitudes=()))
    assert year_sheets(nowhere, slot, US)[0].notes == (NO_PLACE,)
    monkeypatch.setattr(book_year, "beside", lambda place: None)
    monkeypatch.setattr(book_year, "find_spec", lambda name: object())
    assert year_sheets(rig, slot, US)[0].notes == (NO_WEATHER,)


def test_the_first_place_with_a_station_beside_it_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    asked: list[tuple[float, float]] = []

    def beside(place: tuple[float, float]) -> WeatherRead | None:
        asked.append(place)
        return WeatherRead(WEATHER, ()) if len(asked) == 2 else None

    monkeypatch.setattr(book_year, "beside", beside)
    monkeypatch.setattr(book_year, "years_of", lambda slot, hours, people: (MADE,))
    (sheet,) = year_sheets(rig, slot, US)
    assert sheet.name == "year" and len(sheet.views) == 3
    assert [round(one, 1) for one in asked[1]] == [55.3, -160.5], "west of Greenwich, beyond ninety degrees"


def test_a_year_burns_what_the_heater_of_the_rig_is_said_to(monkeypatch: pytest.MonkeyPatch) -> None:
    """A counted pump goes before energy and efficiency, by the year as by the night."""
    text = (Path(__file__).parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
    was, counts = "highest: 2000 W,", "highest: 2000 W, counted: {lowest: 120, highest: 260, each: 0.06 ml},"
    assert was in text
    rig = read_rig(text.replace(was, counts)).rig
    taken: list[Burning] = []

    def year_of(*given: object) -> Year:
        taken.extend(one for one in given if isinstance(one, Burning))
        return MADE

    monkeypatch.setattr(book_year, "year_of", year_of)
    heat = next(one for one in study(rig, date(2026, 5, 2), stage=10, use="sleep").slots if one.heat is not None)
    assert book_year.years_of(heat, WEATHER, ()) == (MADE,)
    (burning,) = taken
    (rates,) = burning.rates
    assert burning.is_counted and burning.fuel == "diesel"
    # 260 strokes of 0.06 ml a minute (hand arithmetic).
    assert rates.highest.best == pytest.approx(260 * 0.06e-6 / 60.0)
