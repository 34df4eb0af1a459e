"""A night with a logger: the loss of a room that is known comes back, and what no night can tell is not told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.heat.cold_hours import Inside, Outdoors, Warmth
from boxwright.disciplines.heat.logged import OVER, LoggedNight, NightLoss, as_measured, night_loss, worked_out
from boxwright.disciplines.heat.method import one_mass
from boxwright.disciplines.heat.night import night_of
from boxwright.units import Band, OutOfRange, exactly
from tests.disciplines.heat.nights import HOUR, RoomOfTwo, night_of_two
from tests.disciplines.heat.test_hot_day import inside

HOLDS = Band(1.6e6, 1.0e6, 2.4e6, spread="interval")


def six_and_six(second: float) -> float:
    return 1500.0 if second < 6.0 * HOUR else 0.0


def told(night: LoggedNight) -> NightLoss:
    return night_loss(night, HOLDS)


def test_two_heats_give_the_loss_of_a_room_of_two_masses_within_a_tenth() -> None:
    for loss in (30.0, 50.0, 80.0):
        found = told(night_of_two(six_and_six, RoomOfTwo(loss)))
        assert found.how == "two slopes" and found.loss is not None
        assert found.loss.best == pytest.approx(loss, rel=0.10)
        assert found.loss.low < loss < found.loss.high
        # One mass fitted to the whole night is far off, and says so itself.
        assert found.one is not None and found.one.loss > 1.1 * loss
        assert not found.is_one_mass


def test_a_room_of_one_mass_is_known_as_one() -> None:
    light = RoomOfTwo(air=1.6e6, mass=1.0, between=0.0)
    found = told(night_of_two(six_and_six, light, noise=0.1))
    assert found.is_one_mass and found.one is not None and found.loss is not None
    assert found.one.loss == pytest.approx(50.0, rel=0.01)
    assert found.one.capacity == pytest.approx(1.6e6, rel=0.02)
    assert found.loss.best == pytest.approx(50.0, rel=0.05)


def test_a_heat_that_holds_the_room_gives_its_loss_and_what_it_still_takes_up_is_doubt() -> None:
    found = told(night_of_two(lambda second: 1000.0, over=19.0))
    assert found.how == "held even" and found.loss is not None
    assert found.loss.low < 50.0 < found.loss.high
    assert found.loss.best == pytest.approx(50.0, rel=0.03)
    # Still warming when the night ends: who does not know what it holds knows its loss less well.
    warming = told(night_of_two(lambda second: 1000.0, over=12.0))
    assert warming.loss is not None
    assert warming.loss.low < 50.0 < warming.loss.high
    assert warming.loss.high - warming.loss.low > found.loss.high - found.loss.low


def test_a_heater_that_switches_counts_by_what_it_gave_in_the_mean() -> None:
    found = told(night_of_two(lambda second: 2000.0 if second % 1200 < 600 else 0.0, over=19.0))
    assert found.how == "held even" and found.loss is not None
    assert found.loss.low < 50.0 < found.loss.high


def test_a_night_without_heat_tells_how_long_it_lasts_and_no_loss() -> None:
    night = night_of_two(lambda second: 0.0, RoomOfTwo(air=1.2e6, mass=1.0, between=0.0), noise=0.0, over=20.0)
    found = told(night)
    assert (found.how, found.loss) == ("cooled alone", None)
    # The sheet on heat: 50 W/K and 1.2 MJ/K cool by two thirds in 6.667 h, and only that can be told.
    assert found.lasts == pytest.approx(6.667 * HOUR, rel=0.01)
    with pytest.raises(OutOfRange):
        one_mass(night.times, night.inside, night.outside, night.heat)


def test_the_doubt_of_one_mass_is_that_of_many_nights() -> None:
    """The sheet on heat: 0.09 W/K and 4.4 kJ/K for 0.1 K of noise each five minutes, six hours at 1 kW and six off."""
    from math import exp
    from random import Random

    fitted = []
    for number in range(60):
        luck, air = Random(number), 278.15
        inside, heat = [], []
        for step in range(145):
            watt = 1000.0 if step < 72 else 0.0
            inside.append(air + luck.gauss(0.0, 0.1))
            heat.append(watt)
            end = 273.15 + watt / 50.0
            air = end + (air - end) * exp(-300.0 * 50.0 / 1.2e6)
        times = tuple(300.0 * step for step in range(145))
        fitted.append(one_mass(times, tuple(inside), (273.15,) * 145, tuple(heat)))
    mean = sum(one.loss for one in fitted) / len(fitted)
    off = (sum((one.loss - mean) ** 2 for one in fitted) / len(fitted)) ** 0.5
    held = sum(one.capacity for one in fitted) / len(fitted)
    capacity = (sum((one.capacity - held) ** 2 for one in fitted) / len(fitted)) ** 0.5
    assert off == pytest.approx(0.09, rel=0.3)
    assert capacity == pytest.approx(4400.0, rel=0.3)
    assert sum(one.doubt for one in fitted) / len(fitted) == pytest.approx(off, rel=0.3)


def test_too_short_and_too_even_nights_tell_nothing() -> None:
    assert told(night_of_two(lambda second: 1000.0, hours=3.0)).how == "too short"
    assert told(night_of_two(lambda second: 30.0, over=0.5)).how == "too even"
    little = told(night_of_two(lambda second: 100.0 if second < 6 * HOUR else 0.0, over=1.0))
    assert little.how == "too even" and little.loss is None and little.over < OVER["at least"]


def test_more_doubt_of_the_heat_is_more_doubt_of_the_loss() -> None:
    night = night_of_two(six_and_six)
    sure, unsure = told(night).loss, told(replace(night, doubt=0.2)).loss
    assert sure is not None and unsure is not None
    assert unsure.low < sure.low < sure.best == unsure.best < sure.high < unsure.high


def test_the_nights_of_the_room_go_by_what_was_measured() -> None:
    room: Inside = inside("white")
    night = night_of_two(six_and_six)
    own = worked_out(room, night)
    # With the loss that was worked out, and no doubt of it, the night is the one that was worked out.
    same = as_measured(room, own, exactly(own.loss.best))
    assert same is not None
    cold = Outdoors("", "here", exactly(268.15), exactly(5.0), exactly(2.0))
    heater = Warmth("", "", exactly(0.0), exactly(400.0), 290.0, False, True)
    before, after = (night_of(one, cold, heater, ()).coldest for one in (room, same))
    assert after.best == pytest.approx(before.best, abs=0.01)
    assert after.high - after.low < before.high - before.low
    more = as_measured(room, own, exactly(1.3 * own.loss.best))
    assert more is not None
    assert night_of(more, cold, heater, ()).coldest.best < before.best - 0.3


def test_less_than_the_air_alone_takes_is_no_shell() -> None:
    room = inside("white")
    own = worked_out(room, night_of_two(six_and_six))
    assert as_measured(room, own, exactly(0.5 * (own.loss.best - own.shell.best))) is None
