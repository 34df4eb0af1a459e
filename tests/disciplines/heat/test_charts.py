"""The charts of nights: what they show is what the nights came to, with the ends of each hour."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.book.sheets import damp_of
from boxwright.disciplines.heat.burning import fuel_of_night
from boxwright.disciplines.heat.charts import LABELS, charts_of
from boxwright.disciplines.heat.electricity import amps, by_hour, load_of
from boxwright.disciplines.heat.night import runs_of
from boxwright.disciplines.heat.result import Result
from boxwright.drawing.chart import UNKNOWN, Chart
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.test_burning import warmed
from tests.study.demo import demo, slot_of, studied

SI = HeaderUnits(length="mm", temperature="C", volume="L", words="UK")
HOUR = 3600.0


@pytest.fixture(scope="module")
def finished() -> Result:
    found = slot_of(studied("whimbrel"), "finish", "night", use="sleep").heat
    assert found is not None
    return found


def by_name(result: Result, place: int = 0) -> dict[str, Chart]:
    """Return the charts of one night by the first word of their name."""
    one = replace(result, held=result.held[place : place + 1])
    slot = slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    assert slot.air is not None
    return {chart.name.partition("-" + one.held[0].outdoors.place)[0]: chart for chart in charts_of(
        one, SI, damp_of(slot.air))}  # fmt: skip


def test_a_night_shows_warmth_damp_fuel_and_current_over_the_same_hours(finished: Result) -> None:
    charts = by_name(finished)
    assert list(charts)[1:] == ["night", "night-damp", "night-fuel", "night-current"]
    for chart in list(charts.values())[1:]:
        assert chart.labels == LABELS and (LABELS[0], LABELS[-1]) == ("20 h", "8 h")
        for line in chart.series:
            known = [ends for ends in zip(line.low, line.best, line.high, strict=True) if ends[1] != UNKNOWN]
            assert len(known) >= 12 and all(low <= best <= high for low, best, high in known)
    assert len({chart.name for chart in charts_of(finished, SI)}) == len(charts_of(finished, SI))


def test_the_temperatures_are_those_of_the_night_and_reach_to_its_ends(finished: Result) -> None:
    one = finished.held[1]
    room, outside = by_name(finished, 1)["night"].series
    assert room.best[:12] == pytest.approx([kelvin - 273.15 for kelvin in one.night.air])
    assert outside.best[:12] == pytest.approx([kelvin - 273.15 for kelvin in one.night.outside])
    assert min(room.low[:12]) == pytest.approx(one.coldest.low - 273.15)
    assert max(room.high[:12]) == pytest.approx(one.warmest.high - 273.15)
    assert "(" in room.texts[0] and room.texts[0].startswith("20 h, room: ")


def test_the_fuel_ends_at_the_fuel_of_the_night_and_never_falls(finished: Result) -> None:
    (line,) = by_name(finished)["night-fuel"].series
    fuel = fuel_of_night(finished.held[0], finished.heaters[0])
    assert fuel is not None
    assert (line.best[0], line.best[-1]) == pytest.approx((0.0, fuel.best * 1000.0))
    assert (line.low[-1], line.high[-1]) == pytest.approx((fuel.low * 1000.0, fuel.high * 1000.0))
    assert list(line.best) == sorted(line.best)


def test_the_humidity_is_the_one_air_has_worked_out(finished: Result) -> None:
    slot = slot_of(studied("whimbrel"), "finish", "night", use="sleep")
    assert slot.air is not None
    (line,) = by_name(finished)["night-damp"].series
    assert line.best[:12] == pytest.approx([100.0 * one for one in slot.air.nights[0].humidity])


@pytest.mark.parametrize("heat", [0.2, 1.0, 3.0])
def test_the_current_of_the_hours_adds_up_to_the_load_of_the_night(heat: float) -> None:
    """Volts times amps of all hours are the joules of the night, while no hour glows from end to end."""
    result = warmed()
    (night,), (heater,) = result.held, result.heaters
    assert night.warmth is not None
    lowest = exactly(900.0 * heat)
    night = replace(night, warmth=replace(night.warmth, lowest=lowest))
    runs = runs_of(result.inside, night.outdoors, night.warmth, result.moisture)
    bands = tuple(runs["best"].band[-12:].count(one) for one in range(5))
    night = replace(night, banded=bands, energy=exactly(sum(runs["best"].heat[-12:]) * HOUR))
    load = load_of(night, heater, exactly(17.0))
    hours = by_hour(night, heater, exactly(17.0), runs)
    assert load is not None and len(hours) == 12
    assert sum(one.best for one in hours) * HOUR * 12.8 == pytest.approx(load.joule.best)
    assert sum(one.high for one in hours) * HOUR * 14.4 == pytest.approx(load.joule.high)
    assert sum(one.low for one in hours) * HOUR * 11.5 <= load.joule.low


def test_an_hour_with_a_start_takes_no_more_than_its_start_and_the_least_is_the_share_of_it_that_it_runs() -> None:
    """A pin that takes as much as the fan adds nothing: it glows instead of the rest of the hour, not besides."""
    result = warmed(("draw: 1.2 A, start: 9 A", "draw: 1.2 A, start: 1.2 A"))
    (night,), (heater,) = result.held, result.heaters
    assert night.warmth is not None
    night = replace(night, warmth=replace(night.warmth, lowest=exactly(2700.0)))
    assert night.warmth is not None
    runs = runs_of(result.inside, night.outdoors, night.warmth, result.moisture)
    bands = tuple(runs["best"].band[-12:].count(one) for one in range(5))
    hours = by_hour(replace(night, banded=bands), heater, exactly(17.0), runs)
    assert max(one.high for one in hours) == pytest.approx(1.2)
    least = [min(heats) / 2700.0 for heats in zip(*(run.heat[-12:] for run in runs.values()), strict=True)]
    assert any(0.0 < share < 0.8 for share in least)
    assert [one.low for one in hours] == pytest.approx(
        [min(1.2 * min(share, 1.0), one.best) for share, one in zip(least, hours, strict=True)]
    )


def test_each_end_of_an_hour_is_by_its_own_end_of_what_the_heater_takes() -> None:
    """It takes 1.0 to 1.4 A and starts once, at 8 to 10 A for 5 minutes at the most: 1.4 x 55/60 + 10 x 5/60 A."""
    result = warmed(("draw: 1.2 A, start: 9 A", "draw: 1.0..1.4 A, start: 8..10 A"))
    (night,), (heater,) = result.held, result.heaters
    assert night.warmth is not None
    lowest = Band(2700.0, 2400.0, 3000.0, spread="interval")
    warmth = replace(night.warmth, lowest=lowest, switches=False)
    runs = runs_of(result.inside, night.outdoors, warmth, result.moisture)
    hours = by_hour(replace(night, warmth=warmth, banded=(0, 0, 12, 0, 0)), heater, exactly(17.0), runs)
    assert hours[0].high == pytest.approx(1.4 * 55.0 / 60.0 + 10.0 * 5.0 / 60.0)
    assert [one.high for one in hours[1:]] == pytest.approx([1.4] * 11)
    least = [min(heats) for heats in zip(*(run.heat[-12:] for run in runs.values()), strict=True)]
    assert any(0.0 < heat < 3000.0 for heat in least)
    assert [one.low for one in hours] == pytest.approx([min(heat / 3000.0, 1.0) for heat in least])


def test_an_hour_may_take_nothing_where_nobody_knows_the_lowest_setting_and_no_heat_may_be_wanted() -> None:
    result = warmed(("draw: 1.2 A, start: 9 A", "draw: 1.2 A, start: 0.1 A"))
    (night,), (heater,) = result.held, result.heaters
    assert night.warmth is not None
    runs = runs_of(result.inside, night.outdoors, night.warmth, result.moisture)
    idle = {end: run._replace(heat=[0.0] * len(run.heat)) for end, run in runs.items()}
    unsaid = replace(night, warmth=replace(night.warmth, lowest=Band(0.0, 0.0, 4000.0, known=False)))
    assert [one.low for one in by_hour(unsaid, heater, exactly(17.0), idle)] == [0.0] * 12
    steady = replace(night, warmth=replace(night.warmth, lowest=exactly(10.0)))
    for one in by_hour(steady, heater, exactly(17.0), runs):
        assert one.low <= one.best <= one.high, "a start that takes less than running takes off what is most likely"


def test_a_current_is_the_one_written_or_what_such_heaters_take_at_any_volts() -> None:
    """20 W (10 to 40) at 12.8 V (11.5 to 14.4)."""
    assert amps(exactly(1.2), "running") == exactly(1.2)
    taken = amps(None, "running")
    assert (taken.best, taken.low, taken.high) == pytest.approx((20 / 12.8, 10 / 14.4, 40 / 11.5))
    assert amps(Band(0.0, 0.0, 0.0, known=False), "running") == taken


def test_an_electric_heater_shows_its_watts_and_one_that_does_not_run_no_battery(finished: Result) -> None:
    electric = replace(finished, heaters=tuple(replace(one, runs="electric") for one in finished.heaters))
    charts = by_name(electric)
    assert "night-current" not in charts
    (line,) = charts["night-takes"].series
    assert line.best[:12] == pytest.approx(finished.held[0].night.heat) and charts["night-takes"].unit == "W"
    unknown = replace(finished, heaters=tuple(replace(one, runs="unknown") for one in finished.heaters))
    assert not {"night-current", "night-takes"} & set(by_name(unknown))


def test_the_axis_of_a_night_begins_near_its_coldest_and_the_demo_rig_is_in_its_own_unit(finished: Result) -> None:
    us = charts_of(finished, demo("whimbrel").header.units)
    assert all(one.is_fitted for one in us if one.name.startswith(("night-Greens", "cold-")))
    assert us[0].labels[0] == "50 F" and us[0].unit == "F"
