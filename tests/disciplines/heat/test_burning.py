"""What a heater burns by the strokes of its pump: counted for a minute it goes before what is said. By hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from boxwright.disciplines.heat.burner_sheet import burner_grids
from boxwright.disciplines.heat.burning import burns_as_counted, burns_of, fuel_of_night
from boxwright.disciplines.heat.findings.stated import filling_hours, hours_by_burn
from boxwright.disciplines.heat.result import Result
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.test_findings import RIG, edited, worked

AN_HOUR, LITRE = 3600.0, 1e-3
COUNTED = "counted: {lowest: 48, highest: 200, each: 0.04 ml, date: 2026-05-03}, holds: 17 C"


def warmed(*edits: tuple[str, str]) -> Result:
    """Return what heat works out for the sleepers of the small rig."""
    slots = study(read_rig(edited(*edits)).rig, date(2026, 6, 1)).slots
    found = next(one.heat for one in slots if one.use == "sleep")
    assert found is not None
    return found


def test_strokes_of_a_minute_times_what_each_moves_is_a_rate() -> None:
    """48 and 200 strokes of 0.04 ml are 1.92 and 8 ml a minute: 0.1152 and 0.48 l/h; a stroke more or less counts."""
    (heater,) = warmed(("holds: 17 C", COUNTED)).heaters
    burns = burns_of(heater.planned.heater)
    assert burns is not None and burns.is_counted and burns.lowest is not None and burns.highest is not None
    assert burns.lowest.best == pytest.approx(0.1152 * LITRE / AN_HOUR)
    assert (burns.lowest.low, burns.lowest.high) == pytest.approx(
        (47 * 0.0024 * LITRE / AN_HOUR, 49 * 0.0024 * LITRE / AN_HOUR)
    )
    assert burns.highest.best == pytest.approx(0.48 * LITRE / AN_HOUR)


def test_a_setting_nobody_counted_is_as_it_is_said_and_without_what_a_stroke_moves_nothing_is_counted() -> None:
    (heater,) = warmed(("holds: 17 C", "counted: {lowest: 48, each: 0.04 ml}, holds: 17 C")).heaters
    burns = burns_of(heater.planned.heater)
    assert burns is not None and not burns.is_counted and burns.lowest is not None and burns.highest is not None
    assert burns.lowest.best == pytest.approx(0.1152 * LITRE / AN_HOUR)
    assert burns.highest.best == pytest.approx(0.5 * LITRE / AN_HOUR)
    (bare,) = warmed(("holds: 17 C", "counted: {lowest: 48}, holds: 17 C")).heaters
    assert burns_as_counted(bare.planned.heater.counted) is None


def test_the_fuel_of_a_night_is_as_counted_and_falls_straight_between_the_settings() -> None:
    """At 900 W it burns 0.1152 l/h, at 4000 W 0.48 l/h, half way half, at 450 W half of the lowest; twelve hours."""
    result = warmed(("holds: 17 C", COUNTED))
    (heater,), (night,) = result.heaters, result.held
    for watts, litres_an_hour in ((900.0, 0.1152), (4000.0, 0.48), (2450.0, 0.2976), (450.0, 0.0576)):
        fuel = fuel_of_night(replace(night, energy=exactly(watts * 12 * AN_HOUR)), heater)
        assert fuel is not None
        assert fuel.best == pytest.approx(litres_an_hour * 12 * LITRE), watts
        assert fuel.low < fuel.best < fuel.high


def test_a_filling_lasts_as_long_as_was_counted_and_the_sheet_says_by_what() -> None:
    """10 l at 0.48 and 0.1152 l/h last 20.8 and 86.8 h."""
    result = warmed(("holds: 17 C", COUNTED))
    (heater,) = result.heaters
    lasting = filling_hours(heater)
    assert lasting is not None
    assert lasting.flat_out.best == pytest.approx(10 / 0.48 * AN_HOUR)
    assert lasting.slow.best == pytest.approx(10 / 0.1152 * AN_HOUR)
    grid, *_ = burner_grids(heater, (), result.held, HeaderUnits())
    assert ("burns", "0.127 gal/h flat out, 0.0304 gal/h at its lowest", "as its pump was counted") in grid.rows


def test_a_filling_lasts_as_long_as_its_burn_is_said_to_take_beside_what_is_in_the_fuel() -> None:
    """10 l at 0.5 and 0.113 l/h last 20 and 88.5 h; 8 to 12 l at 0.4 to 0.5 l/h 16 to 30 h."""
    result = warmed()
    (heater,) = result.heaters
    burnt = hours_by_burn(heater)
    assert burnt is not None and burnt.flat_out is not None and burnt.slow is not None
    assert (burnt.flat_out.best, burnt.slow.best) == pytest.approx((20 * AN_HOUR, 10 / 0.113 * AN_HOUR))
    grid, *_ = burner_grids(heater, (), result.held, HeaderUnits())
    assert ("a filling burnt", "20 h flat out, 88.5 h at its lowest", "by what it is said to burn") in grid.rows
    doubtful = ("burn: {lowest: 0.113 l/h, highest: 0.5 l/h}", "burn: {highest: 0.4..0.5 l/h}")
    (heater,) = warmed(doubtful, ("volume: 10}", "volume: 8..12}")).heaters
    burnt = hours_by_burn(heater)
    assert burnt is not None and burnt.flat_out is not None and burnt.slow is None
    assert (burnt.flat_out.low, burnt.flat_out.high) == pytest.approx((16 * AN_HOUR, 30 * AN_HOUR))


@pytest.mark.parametrize(
    ("burn", "lasts", "says"),
    [
        ("highest: 0.4 l/h", "24 h", "less than its tank lasts flat out at what is burnt then"),
        ("highest: 0.4 l/h", "25 h", ""),
        ("highest: 0.4 l/h", "24..26 h", ""),
        ("lowest: 0.2 l/h", "60 h", "longer than its tank lasts at its lowest at what is burnt then"),
        ("lowest: 0.2 l/h", "50 h", ""),
        ("lowest: 0.2 l/h", "unknown", ""),
    ],
)
def test_hours_that_its_burn_contradicts_are_told_though_its_heat_agrees(burn: str, lasts: str, says: str) -> None:
    """10 l at 0.4 l/h last 25 h, at 0.2 l/h 50 h; by heat and fuel 18.8 to 94.7 h, so that all agree with it."""
    said = ("burn: {lowest: 0.113 l/h, highest: 0.5 l/h}", f"burn: {{{burn}}}"), ("holds:", f"lasts: {lasts}, holds:")
    found = [one for one in worked(edited(*said), "sleep") if one.code == "heat/stated-hours"]
    assert [one.kind for one in found] == (["advice"] if says else [])
    assert all(says in one.says and "by its heat it lasts 18.8 to 21.3 h flat out" in one.says for one in found)


def test_hours_that_are_said_stand_beside_the_heat_they_come_to() -> None:
    """10 l of diesel hold 360.9 MJ: over 20 h at 0.75 to 0.85 of it 3.76 to 4.26 kW."""
    result = warmed(("holds: 17 C", "lasts: 20 h, holds: 17 C"))
    (heater,) = result.heaters
    grid, *_ = burner_grids(heater, (), result.held, HeaderUnits())
    assert ("said to last", "20 h", "3,759 to 4,261 W of heat") in grid.rows
    assert "counted" not in RIG


def test_the_fuel_of_a_night_reaches_from_least_heat_best_burnt_to_most_heat_worst_burnt() -> None:
    """36.09 MJ in a litre: 20 MJ at 0.85, 40 at 0.80, 60 at 0.75 are 0.652, 1.385 and 2.217 l."""
    result = warmed(("burn: {lowest: 0.113 l/h, highest: 0.5 l/h}, ", ""))
    (heater,), (night,) = result.heaters, result.held
    fuel = fuel_of_night(replace(night, energy=Band(4e7, 2e7, 6e7)), heater)
    assert fuel is not None
    ends = (4e7 / 0.80 / 36.09e9, 2e7 / 0.85 / 36.09e9, 6e7 / 0.75 / 36.09e9)
    assert (fuel.best, fuel.low, fuel.high) == pytest.approx(ends)
    nothing = fuel_of_night(replace(night, energy=Band(0.0, 0.0, 6e7)), heater)
    assert nothing is not None and (nothing.best, nothing.low) == (0.0, 0.0) and nothing.high == pytest.approx(ends[2])
    assert fuel_of_night(replace(night, energy=exactly(0.0)), heater) is None


def test_what_it_is_said_to_burn_widens_the_fuel_of_its_heat_on_both_sides() -> None:
    """900 W are its lowest setting: said to burn 0.001 to 0.9 l/h, that is 0.012 to 10.8 l in twelve hours."""
    old = "burn: {lowest: 0.113 l/h, highest: 0.5 l/h}"
    result = warmed((old, "burn: {lowest: 0.001..0.9 l/h, highest: 0.9..1.2 l/h}"))
    (heater,), (night,) = result.heaters, result.held
    energy = exactly(900.0 * 12 * AN_HOUR)
    alone = fuel_of_night(replace(night, energy=energy), warmed((old + ", ", "")).heaters[0])
    both = fuel_of_night(replace(night, energy=energy), heater)
    assert alone is not None and both is not None and both.best == alone.best
    assert both.low == pytest.approx(0.001 * 12 * LITRE) and both.low < alone.low
    assert both.high == pytest.approx(0.9 * 12 * LITRE) and both.high > alone.high


def test_a_stroke_may_move_more_as_well_as_less() -> None:
    """49 strokes of 0.05 ml at most, 47 of 0.03 ml at least, a minute."""
    (heater,) = warmed(("holds: 17 C", COUNTED.replace("0.04 ml", "0.03..0.05 ml"))).heaters
    burns = burns_of(heater.planned.heater)
    assert burns is not None and burns.lowest is not None
    ends = (47 * 0.03e-6 / 60.0, 49 * 0.05e-6 / 60.0)
    assert (burns.lowest.low, burns.lowest.high) == pytest.approx(ends)


def test_a_tank_that_is_surely_too_small_stays_so_whatever_a_second_place_may_take() -> None:
    hill = ("places:\n", "places:\n  hill: {coldest_design: -20..30 C, height: 0 m}\n")
    for volume, alone, both in (("0.5", "limit", "limit"), ("10", "", ""), ("3", "", "unknown")):
        tank = ("volume: 10}", f"volume: {volume}}}")
        for edits, kind in (((tank,), alone), ((tank, hill), both)):
            found = [one for one in worked(edited(*edits), "sleep") if one.code == "heat/fuel-for-the-night"]
            assert [one.kind for one in found] == ([kind] if kind else []), [one.says for one in found]
