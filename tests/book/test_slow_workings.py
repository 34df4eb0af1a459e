"""The workings of a hot day and of a trip: worked out only where they are asked for."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.book import slow_workings as module
from boxwright.book.slow_workings import slow_workings
from boxwright.disciplines.heat.burning import Burning, Rates
from boxwright.disciplines.heat.year import Trip
from boxwright.rig.weather import WeatherRead
from boxwright.units import Band, exactly
from tests.book.test_year import MADE, US, WEATHER
from tests.study.demo import demo, slot_of, studied


def refused(*_: object) -> object:
    raise AssertionError("nobody asked for it")


def test_naming_them_works_nothing_out(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("hot_rooms", "years_of", "beside"):
        monkeypatch.setattr(module, name, refused)
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    places = ("Greensboro NC", "Sand Point AK")
    assert list(slow_workings(rig, slot)) == [f"{what} {one}" for what in ("hot-day", "trip") for one in places]
    assert slow_workings(rig, replace(slot, heat=None)) == {}
    assert slot.heat is not None
    assert not [one for one in slow_workings(rig, replace(slot, heat=replace(slot.heat, heaters=()))) if "trip" in one]


def test_a_trip_shows_its_heat_and_what_fuel_that_is(monkeypatch: pytest.MonkeyPatch) -> None:
    """360 MJ at 0.8 of 36.09 GJ/m3 are 12.47 l, 3.29 gal."""
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    trip = Trip(3, Band(3.6e8, 1.8e8, 7.2e8), Band(12.47e-3, 6e-3, 26e-3))
    monkeypatch.setattr(module, "beside", lambda place: WeatherRead(WEATHER, ()))
    monkeypatch.setattr(
        module, "years_of", lambda slot, hours, people: (replace(MADE, trips=(trip,), burning=Burning("diesel")),)
    )
    lines = slow_workings(rig, slot)["trip Greensboro NC"](US)
    assert lines[0].startswith("3 days with heater") and lines[1] == "  heat 100 kWh (50 to 200)"
    assert "3.6e+08 J / 0.8 / 3.609e+10 J/m3 = 3.29 gal" in lines[2]
    assert lines[-1] == "  (box_through_time: heat-sheet network, over made.epw)"
    flow = exactly(0.25e-3 / 3600.0)
    counted = Burning("diesel", (Rates(exactly(500.0), exactly(500.0), flow, flow, "counted"),), True)
    monkeypatch.setattr(module, "years_of", lambda *_: (replace(MADE, trips=(trip,), burning=counted),))
    fuel, why = slow_workings(rig, slot)["trip Greensboro NC"](US)[2:4]
    assert fuel.startswith(
        "  fuel = what its pump was counted to move, hour by hour by the heat of each = 3.29 gal (1.59"
    )
    assert why.startswith("  Its heat is 20 % of what is in the diesel its pump was counted to move")
    monkeypatch.setattr(module, "beside", lambda place: None)
    without = slow_workings(rig, slot)["trip Greensboro NC"](US)
    assert "no year is at hand for Greensboro NC" in without[1] and "--year FILE, an EPW" in without[2]
    assert '--year "Greensboro NC" --fetch FILE' in without[3]


def test_a_trip_to_a_place_nobody_wrote_the_whereabouts_of_asks_for_them(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "beside", refused)
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    nowhere = replace(rig, heat=replace(rig.heat, latitudes=(), longitudes=()))
    lines = slow_workings(nowhere, slot)["trip Sand Point AK"](US)
    assert "lat: and lon: of the place" in lines[1] and "--year FILE" in lines[2]


def test_a_hot_day_shows_what_it_is_and_each_way_it_is_aired(monkeypatch: pytest.MonkeyPatch) -> None:
    rig, slot = demo("whimbrel"), slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    monkeypatch.setattr(module, "hot_rooms", lambda slot, days, people: ())
    lines = slow_workings(rig, slot)["hot-day Greensboro NC"](US)
    assert "Greensboro NC: 98 F" in lines[1] and "hottest_design" in lines[1]
    assert lines[-1].endswith("the day: three-years)")
