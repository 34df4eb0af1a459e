"""The design night: against the steady state worked by hand, and what must hold whatever is built."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.disciplines.heat.burner import warmth_of
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, OFF, Inside, Outdoors, Warmth, hours_of
from boxwright.disciplines.heat.findings.stated import filling_hours
from boxwright.disciplines.heat.method import box_through_time
from boxwright.disciplines.heat.method.boxed import _damp_through_time, _saturated
from boxwright.disciplines.heat.night import DRY, SUBSTEPS_OF_ENDS, HeldNight, _heater, night_of
from boxwright.disciplines.heat.parts import COLDEST_NIGHT, FuelTank, Heater, PlannedHeater
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.disciplines.heat.room import cold_places, room_of
from boxwright.disciplines.heat.shell import shell_of
from boxwright.exchange import Airflow, LayupLayer, Moisture, Night, NightEnd
from boxwright.model.place import Place
from boxwright.units import Band, exactly
from tests.disciplines.heat.walls import BREAK, FOAM, LINER, STRIP, layer, wall

ZERO = 273.15
NOWHERE = Place(exactly(0.0), exactly(0.0), exactly(0.0), (0.1, 0.1, 0.1))
STILL = Airflow("trailer", exactly(0.0), exactly(0.0), exactly(0.0), 0.0, exactly(0.0), exactly(0.0))
LEAKY = replace(STILL, leak=exactly(0.01))
VENTED = replace(STILL, leak=exactly(0.01), vents=exactly(0.008), rise=exactly(1.7), wind_share=0.3)
STEADY = Outdoors("places[field]", "field", exactly(ZERO - 5.0), exactly(0.0), exactly(2.0))
LARGE = Warmth("parts[heater]", "heater", exactly(0.0), exactly(9000.0), ZERO + 18.0, False, True)


def inside(*layers: LayupLayer, airflow: Airflow = STILL) -> Inside:
    """Return a room of sixteen cubic metres behind ten square metres of one wall."""
    return Inside(shell_of((wall(*layers),), ()), airflow, 16.0, 2.0, 8.0)


def test_a_steady_night_takes_what_the_shell_loses_by_hand() -> None:
    """Over 23 K a shell of so many W/K takes their product; the clear sky takes a little more."""
    room = inside(FOAM, STRIP, LINER)
    night = night_of(room, STEADY, LARGE, ())
    by_hand = room.shell.by_air.best * 23.0
    watts = night.energy.best / (ASLEEP_HOURS * 3600.0)
    assert 0.98 * by_hand < watts < 1.12 * by_hand
    assert night.coldest.best == pytest.approx(ZERO + 18.0, abs=0.05)
    assert night.loss.best == pytest.approx(room.shell.by_air.best)  # nothing leaks


def test_it_holds_down_to_where_its_heat_is_its_loss_times_the_difference() -> None:
    small = replace(LARGE, highest=exactly(300.0))
    night = night_of(inside(FOAM, STRIP, LINER), STEADY, small, ())
    assert night.holds_down_to is not None
    assert night.holds_down_to.best > ZERO + 18.0 - 300.0 / night.loss.best, "the clear sky takes some"
    at_that = replace(STEADY, coldest=exactly(night.holds_down_to.best))
    there = night_of(inside(FOAM, STRIP, LINER), at_that, small, ()).coldest.best
    assert there == pytest.approx(ZERO + 18.0, abs=0.6), "what is said of other nights is what their own run gives"
    colder = replace(STEADY, coldest=exactly(night.holds_down_to.best - 8.0))
    assert night_of(inside(FOAM, STRIP, LINER), colder, small, ()).coldest.best < ZERO + 14.0


def test_people_warm_a_room_that_nothing_else_warms() -> None:
    two = (Moisture("people", exactly(0.0), exactly(140.0), "asleep"),)
    alone, together = (night_of(inside(FOAM, LINER), STEADY, None, damp) for damp in ((), two))
    assert alone.energy == together.energy == exactly(0.0)
    warmer = together.night.air[-1] - alone.night.air[-1]
    assert 0.6 < warmer / (140.0 / together.loss.best) < 1.0, "what stands in the room is still warming up"
    assert alone.coldest.best < STEADY.coldest.best + 0.5


def test_the_coldest_hour_is_six_and_the_day_is_warmer_by_its_swing() -> None:
    hours = hours_of(replace(STEADY, swing=exactly(10.0)), (), LARGE, "best")
    assert min(hours.outside) == pytest.approx(ZERO - 5.0) and max(hours.outside) == pytest.approx(ZERO + 5.0)
    assert hours.outside.index(min(hours.outside)) == (6 - 8) % 24
    assert all(sky < air - 10.0 for sky, air in zip(hours.sky, hours.outside, strict=True)), "a clear night"


def ordered(night: HeldNight) -> bool:
    """Return whether each band runs from its low end to its high one round the best value."""
    bands = (night.coldest, night.warmest, night.energy, night.loss, night.holds_down_to, night.too_warm_above)
    return all(one is None or one.low <= one.best <= one.high for one in bands)


@settings(max_examples=25, deadline=None)
@given(foam=st.floats(0.25, 1.5), more=st.floats(0.0, 1.0), cold=st.floats(-30.0, 10.0))
def test_more_insulation_is_never_colder_and_never_takes_more(foam: float, more: float, cold: float) -> None:
    outdoors = replace(STEADY, coldest=exactly(ZERO + cold), swing=exactly(6.0))
    heater = replace(LARGE, highest=exactly(500.0))
    thin = night_of(inside(layer("foam", "XPS", foam, "bays"), LINER, airflow=LEAKY), outdoors, heater, ())
    inner = layer("break", "XPS", more, "all")
    thick = night_of(inside(layer("foam", "XPS", foam, "bays"), inner, LINER, airflow=LEAKY), outdoors, heater, ())
    assert ordered(thin) and ordered(thick)
    for end in ("low", "best", "high"):
        assert getattr(thick.coldest, end) >= getattr(thin.coldest, end) - 0.02
        assert getattr(thick.energy, end) <= getattr(thin.energy, end) * 1.005 + 1.0


def test_more_air_is_never_warmer() -> None:
    heater = replace(LARGE, highest=exactly(400.0))
    tight, vented = (night_of(inside(FOAM, BREAK, LINER, airflow=one), STEADY, heater, ()) for one in (LEAKY, VENTED))
    assert vented.coldest.best < tight.coldest.best - 1.0
    assert vented.loss.best > tight.loss.best


def test_doubt_of_any_input_widens_the_night() -> None:
    sure = night_of(inside(FOAM, LINER, airflow=LEAKY), STEADY, replace(LARGE, highest=exactly(600.0)), ())
    doubts = (
        night_of(inside(FOAM, LINER, airflow=LEAKY), STEADY, replace(LARGE, highest=Band(600.0, 300.0, 900.0)), ()),
        night_of(inside(FOAM, LINER, airflow=replace(LEAKY, leak=Band(0.01, 0.002, 0.05))), STEADY,
                 replace(LARGE, highest=exactly(600.0)), ()),
        night_of(inside(replace(FOAM, material="something else"), LINER, airflow=LEAKY), STEADY,
                 replace(LARGE, highest=exactly(600.0)), ()),
        night_of(inside(replace(FOAM, is_certain=False), LINER, airflow=LEAKY), STEADY,
                 replace(LARGE, highest=exactly(600.0)), ()),
    )  # fmt: skip
    for one in doubts:
        assert one.coldest.low < sure.coldest.low - 0.5, "never better than what is known"


def test_a_heater_nobody_wrote_the_heat_of_warms_nothing() -> None:
    unknown = replace(LARGE, highest=Band(0.0, 0.0, 0.0, known=False), lowest=Band(0.0, 0.0, 0.0, known=False))
    off = night_of(inside(FOAM, LINER), STEADY, None, ())
    night = night_of(inside(FOAM, LINER), STEADY, unknown, ())
    assert night.energy == exactly(0.0)
    assert night.coldest.best == pytest.approx(off.coldest.best, abs=0.3)
    assert night.holds_down_to is None and night.at_lowest is None


def test_a_heater_nobody_wrote_whether_it_goes_off_by_itself_may_run_on() -> None:
    mild = replace(STEADY, coldest=exactly(ZERO + 5.0))
    steady, asked, cycling = (
        night_of(inside(FOAM, LINER, airflow=LEAKY), mild, replace(LARGE, lowest=exactly(1500.0), switches=one), ())
        for one in (False, None, True)
    )
    assert steady.warmest.low > ZERO + 18.5 and cycling.warmest.high < ZERO + 18.5
    assert asked.coldest.low == cycling.coldest.low, "the worst of being too cold"
    assert asked.warmest.high == steady.warmest.high, "and of being too warm"
    assert asked.energy.high == steady.energy.high


def test_a_lowest_heat_nobody_wrote_is_anything_up_to_the_highest() -> None:
    mild = replace(STEADY, coldest=exactly(ZERO + 5.0))
    heater = Heater(highest=exactly(1500.0), switches=False)
    planned = PlannedHeater("parts[heater]", "heater", NOWHERE, heater)
    unsaid = warmth_of(StandingHeater(planned, True, "electric", "out", "out", None, None, None))
    assert (unsaid.lowest.low, unsaid.lowest.high, unsaid.lowest.known) == (0.0, 1500.0, False)
    asked, flat_out = (
        night_of(inside(FOAM, LINER, airflow=LEAKY), mild, one, ())
        for one in (unsaid, replace(unsaid, lowest=exactly(1500.0)))
    )
    assert asked.warmest.high == flat_out.warmest.high > ZERO + 25.0
    assert asked.at_lowest is None


def test_the_ends_are_as_warm_with_half_the_steps() -> None:
    """A bare skin, where all that changes quickly does so."""
    outdoors = replace(STEADY, swing=exactly(12.0))
    for heater in (None, replace(LARGE, highest=exactly(250.0))):
        night = night_of(inside(airflow=LEAKY), outdoors, heater, ())
        hours = hours_of(outdoors, (), heater, "best")
        room = room_of(inside().shell, LEAKY, 16.0, 2.0, 8.0, "best", _heater(heater, "best") if heater else OFF)
        start = heater.wanted if heater else hours.outside[0], hours.humidity[0]
        again = box_through_time(room._replace(cold=DRY), hours, start, SUBSTEPS_OF_ENDS)
        assert max(abs(one - other) for one, other in zip(again.air[-12:], night.night.air, strict=True)) < 0.1


TWO = (Moisture("people", Band(100e-3 / 3600.0, 70e-3 / 3600.0, 140e-3 / 3600.0), exactly(140.0), "asleep"),)


@settings(max_examples=15, deadline=None)
@given(leak=st.floats(0.001, 0.02), cold=st.floats(-25.0, 8.0), watts=st.floats(0.0, 1500.0))
def test_the_driest_night_and_the_wettest_bound_the_most_likely_one(leak: float, cold: float, watts: float) -> None:
    airflow = replace(VENTED, leak=Band(leak, leak / 2.0, leak * 2.0), vents=Band(0.004, 0.0, 0.008))
    room = inside(FOAM, STRIP, LINER, airflow=airflow)
    heater = replace(LARGE, highest=exactly(watts))
    night = night_of(room, replace(STEADY, coldest=exactly(ZERO + cold)), heater, TWO).night
    dry, wet = night.ends

    def relative(one: Night | NightEnd, hour: int) -> float:
        return one.humidity[hour] / _saturated(one.air[hour], 101325.0)

    for hour in range(ASLEEP_HOURS):
        assert relative(dry, hour) - 1e-3 <= relative(night, hour) <= relative(wet, hour) + 1e-3
        assert wet.flow[hour] <= night.flow[hour] <= dry.flow[hour]
        assert sum(dry.water[hour]) <= sum(night.water[hour]) + 1e-9 <= sum(wet.water[hour]) + 2e-9
    assert dry.outdoors < wet.outdoors


def test_the_wettest_night_is_damper_for_each_thing_nobody_knows() -> None:
    sure = inside(FOAM, LINER, airflow=VENTED)
    plain = night_of(sure, STEADY, LARGE, (replace(TWO[0], kg_per_second=exactly(100e-3 / 3600.0)),)).night.ends[1]
    breath = night_of(sure, STEADY, LARGE, TWO).night.ends[1]
    air = replace(VENTED, leak=Band(0.01, 0.001, 0.02))
    tight = night_of(inside(FOAM, LINER, airflow=air), STEADY, LARGE,
                     (replace(TWO[0], kg_per_second=exactly(100e-3 / 3600.0)),)).night.ends[1]  # fmt: skip
    for damper in (breath, tight):
        assert damper.humidity[-1] > plain.humidity[-1] * 1.05


def test_the_water_of_a_night_is_that_of_the_box_through_time() -> None:
    """Fed with how warm the box gets, in a room that no warmth moves air in: the same humidity and the same water."""
    room = inside(LINER, airflow=replace(STILL, vents=exactly(0.004), wind_share=0.3))
    box = room_of(room.shell, room.airflow, 16.0, 2.0, 8.0, "best", _heater(LARGE, "best"))
    hours = hours_of(STEADY, TWO, LARGE, "best")
    run = box_through_time(box, hours, (ZERO + 18.0, hours.humidity[0]))
    damp = _damp_through_time(box.room, box.cold, hours, run.air)
    assert damp.humidity == pytest.approx(run.humidity, rel=1e-9)
    assert [sum(row) for row in damp.settled] == pytest.approx([sum(row) for row in run.settled], abs=1e-9)
    assert sum(damp.settled[-1]) > 1e-3


def test_cold_places_that_are_alike_get_as_wet_as_when_each_stands_alone() -> None:
    room = inside(LINER, airflow=replace(STILL, vents=exactly(0.002), wind_share=0.3))
    alike = replace(room, shell=shell_of((wall(LINER), replace(wall(LINER), of="walls[r]", area=exactly(4.0))), ()))
    night = night_of(alike, STEADY, LARGE, TWO).night
    box = room_of(alike.shell, VENTED, 16.0, 2.0, 8.0, "best", OFF)
    assert len(box.cold.area) < len(cold_places(alike.shell))
    assert sum(box.cold.area) == pytest.approx(sum(one.area.best for one in cold_places(alike.shell)))
    over = {
        (one.of, one.what): water / one.area.best
        for one, water in zip(night.cold, night.water[-1], strict=True)
        if one.reach == "open"
    }
    by_factor: dict[float, set[float]] = {}
    for one in cold_places(alike.shell):
        by_factor.setdefault(one.factor.best, set()).add(round(over[one.of, one.what], 12))
    assert all(len(each) == 1 for each in by_factor.values()) and any(max(each) > 0.0 for each in by_factor.values())


def test_a_filling_lasts_as_long_as_the_sheet_says_with_what_efficiencies_differ_by() -> None:
    """Seven litres of diesel: 62 h at 0.9 kW, 28 h at 2 kW by the sheet on heat; 0.75 to 0.85 of it by hand."""
    holds, is_full = exactly(7e-3), exactly(1.0)
    tank = FuelTank("parts[fuel]", "fuel", "diesel", holds, is_full, exactly(0.0), exactly(0.2), True, "unknown")
    heater = Heater(of="diesel", lowest=exactly(900.0), highest=exactly(2000.0))
    planned = PlannedHeater("parts[heater]", "heater", NOWHERE, heater)
    standing = StandingHeater(planned, True, "burns", "out", "out", None, None, tank)
    filling = filling_hours(standing)
    assert filling is not None
    assert filling.slow.best / 3600.0 == pytest.approx(62.0, abs=0.5)
    assert filling.flat_out.best / 3600.0 == pytest.approx(28.0, abs=0.2)
    assert filling.slow.low / filling.slow.best == pytest.approx(0.75 / 0.8)
    assert filling.slow.high / filling.slow.best == pytest.approx(0.85 / 0.8)
    doubtful = replace(standing, tank=replace(tank, volume=Band(7e-3, 5e-3, 8e-3)),
                       planned=replace(planned, heater=Heater(of="diesel", lowest=Band(900.0, 800.0, 1000.0),
                                                              highest=exactly(2000.0))))  # fmt: skip
    wider = filling_hours(doubtful)
    assert wider is not None
    assert wider.slow.low == pytest.approx(filling.slow.low * 5.0 / 7.0 * 0.9)
    assert wider.slow.high == pytest.approx(filling.slow.high * 8.0 / 7.0 * 9.0 / 8.0)


def test_nothing_is_said_of_nights_colder_than_any_that_is_worked_out() -> None:
    night = night_of(inside(FOAM, BREAK, LINER), STEADY, LARGE, ())
    assert night.holds_down_to is not None and night.holds_down_to.best == COLDEST_NIGHT
    assert ordered(night)


def test_a_lowest_setting_over_the_highest_gives_no_more_than_the_highest() -> None:
    cold = replace(STEADY, coldest=exactly(ZERO - 40.0))
    crossed = night_of(inside(), cold, replace(LARGE, lowest=exactly(3000.0), highest=exactly(1000.0)), ())
    assert max(crossed.night.heat) == pytest.approx(1000.0)
    assert crossed.energy.high <= 1000.0 * ASLEEP_HOURS * 3600.0 * (1.0 + 1e-9)
