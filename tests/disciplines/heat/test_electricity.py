"""What a heater takes of electricity in a night, by hand: its fan all the while it runs, its glow pin at each start."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.cold_hours import Warmth
from boxwright.disciplines.heat.electricity import hours_on, load_of, starts_of
from boxwright.disciplines.heat.findings import findings
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.disciplines.heat.sheets import grids_of
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.test_burning import warmed

HOUR = 3600.0
ROOM = exactly(17.0)


def one_night(heat: float, *banded: int, switches: bool | None = True) -> tuple[HeldNight, StandingHeater]:
    """Return a night of twelve hours at a mean heat (W) with so many hours in each band; the heater's lowest 900 W."""
    result = warmed()
    (night,), (heater,) = result.held, result.heaters
    warmth = Warmth("parts[heater]", "heater", exactly(900.0), exactly(4000.0), 290.0, False, switches)
    return replace(night, warmth=warmth, banded=banded, energy=exactly(heat * 12 * HOUR)), heater


def test_a_heater_that_runs_all_night_starts_once() -> None:
    """1.2 A and 9 A of 11.5, 12.8 or 14.4 V; 3 min of glowing, 2 at least and 5 at most."""
    night, heater = one_night(1500.0, 0, 0, 0, 12, 0, switches=False)
    load = load_of(night, heater, ROOM)
    assert load is not None
    assert (load.starts, load.when) == (Band(1.0, 1.0, 1.0, spread="interval"), "meadow")
    assert load.watt.best == pytest.approx(15.36) and load.surge.best == pytest.approx(115.2)
    assert load.joule.best == pytest.approx(15.36 * (12 * HOUR - 180.0) + 115.2 * 180.0)
    assert load.joule.low == pytest.approx(13.8 * (12 * HOUR - 120.0) + 103.5 * 120.0)
    assert load.joule.high == pytest.approx(17.28 * (12 * HOUR - 300.0) + 129.6 * 300.0)


def test_one_that_goes_on_and_off_starts_again_and_runs_less() -> None:
    """Half of its heat is wanted: it is on for 29000 * 17 * 2 / 450 s and off as long, 0.82 times an hour."""
    night, heater = one_night(450.0, 2, 10, 0, 0, 0)
    found = hours_on(night)
    assert (found.best, found.low, found.high) == pytest.approx((10 * HOUR, 5 * HOUR, 12 * HOUR))
    starts = starts_of(night, ROOM)
    assert starts.best == pytest.approx(1.0 + 10.0 * HOUR / (2 * 29000 * 17 * 2 / 450.0))
    assert starts.low == 1.0 and starts.high > starts.best
    load = load_of(night, heater, ROOM)
    assert load is not None
    assert load.joule.low < load.joule.best < load.joule.high
    steady, _ = one_night(450.0, 2, 0, 10, 0, 0)
    fewer = load_of(steady, heater, ROOM)
    assert fewer is not None and fewer.joule.best < load.joule.best


def test_a_heater_that_may_go_on_and_off_does_so_at_the_high_end_and_one_that_never_runs_takes_nothing() -> None:
    unsaid, _ = one_night(700.0, 0, 0, 12, 0, 0, switches=None)
    fixed, heater = one_night(700.0, 0, 0, 12, 0, 0, switches=False)
    assert starts_of(unsaid, ROOM).high > starts_of(fixed, ROOM).high == 1.0
    off, _ = one_night(0.0, 12, 0, 0, 0, 0)
    load = load_of(off, heater, ROOM)
    assert load is not None and (load.joule.best, load.joule.high) == (0.0, 0.0)


def test_where_nobody_wrote_what_it_takes_it_is_what_such_heaters_take() -> None:
    told = warmed().loads[0]
    asked = warmed(("draw: 1.2 A, start: 9 A, ", "")).loads[0]
    assert (asked.watt.low, asked.watt.best, asked.watt.high) == (10.0, 20.0, 40.0)
    assert asked.joule.low < told.joule.best < asked.joule.high


def test_what_runs_on_electricity_takes_its_heat_and_the_sheet_says_what_feeds_it() -> None:
    result = warmed(("of: diesel, lowest", "of: electric, fed_by: mains, lowest"))
    (load,), (night,) = result.loads, result.held
    assert load.joule.best == night.energy.best and load.bus == "mains"
    (grid,) = [one for one in grids_of(result, HeaderUnits()) if "electricity" in one.title]
    assert grid.rows[0][:4] == ("meadow, heater", "mains", "4,000 W", "")


def test_a_pin_glows_no_longer_than_the_heater_runs() -> None:
    """One hour of going on and off in a small room: 1 + 3600 / (2 * 290 * 2 / 450) starts of 3 min fill the hour."""
    night, heater = one_night(450.0, 11, 1, 0, 0, 0)
    load = load_of(night, heater, exactly(0.01))
    assert load is not None and load.starts.best * 180.0 > HOUR
    assert load.joule.best == pytest.approx(115.2 * HOUR)
    assert load.joule.high <= 129.6 * 12 * HOUR * (1.0 + 1e-9)


def test_the_least_it_runs_is_by_the_least_heat_of_the_night() -> None:
    """Between 270 and 630 W of 900: on for three tenths of the hours it goes on and off, at least."""
    night, _ = one_night(450.0, 2, 10, 0, 0, 0)
    wide = replace(night, energy=Band(450.0 * 12 * HOUR, 270.0 * 12 * HOUR, 630.0 * 12 * HOUR))
    assert hours_on(wide).low == pytest.approx(3.0 * HOUR)


def test_a_stove_of_wood_takes_no_electricity_unless_it_is_written_and_is_not_asked() -> None:
    stove = warmed(("of: diesel, lowest", "of: wood, lowest"), ("draw: 1.2 A, start: 9 A, ", ""))
    assert stove.loads == ()
    blown = warmed(("of: diesel, lowest", "of: wood, lowest"))
    assert blown.loads[0].watt.best == pytest.approx(15.36)
    asked = [one.code for one in findings(stove, HeaderUnits()) if one.code == "heat/draw-not-known"]
    pellets = warmed(("of: diesel, lowest", "of: pellets, lowest"), ("draw: 1.2 A, start: 9 A, ", ""))
    told = [one.code for one in findings(pellets, HeaderUnits()) if one.code == "heat/draw-not-known"]
    assert (asked, told) == ([], ["heat/draw-not-known"])
