"""Tipping back at rest: with legs up or down, with people at the rear end, by own arithmetic of levers."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.weight.result import Parked
from boxwright.units import Band, exactly
from tests.disciplines.weight.rigs import SHELL, UNKNOWN_MASS, Gear, box_of, mass, sigma, solved

ONE, TWO = (exactly(80.0),), (exactly(80.0), exactly(70.0))


def parked(*boarding: Band, gear: Gear = "equalised", **changes: object) -> Parked:
    found = solved(SHELL, box=box_of(gear, **changes), parked=True, boarding=boarding).parked
    assert found is not None
    return found


def test_the_margin_is_the_trailers_moment_less_that_of_the_people() -> None:
    """900 kg 0.3 m ahead of the group's middle against 80 kg 1.7 m behind it: own arithmetic."""
    found = parked(*ONE)
    assert found.legs_up.pivot_x == pytest.approx(2.5)
    assert found.legs_up.margin.band.best == pytest.approx(900.0 * 0.3 - 80.0 * 1.7)
    assert found.legs_up.person is not None
    assert found.legs_up.person.band.best == pytest.approx(900.0 * 0.3 / 1.7)
    assert found.ball.band.best == pytest.approx((270.0 - 136.0) / 3.8)
    assert found.jack.band.best == pytest.approx(270.0 / 3.4)


def test_a_torsion_tandem_tips_over_its_rear_wheels() -> None:
    assert parked(*ONE, gear="independent").legs_up.pivot_x == pytest.approx(2.9)


def test_legs_behind_the_wheels_hold_and_legs_ahead_of_them_do_not() -> None:
    behind = parked(*TWO)
    assert behind.legs_down is not None
    assert behind.legs_down.pivot_x == pytest.approx(4.0)
    assert behind.legs_down.margin.band.best == pytest.approx(900.0 * 1.8 - 150.0 * 0.2)
    ahead = parked(*TWO, legs_x=(exactly(0.2),))
    assert ahead.legs_down is not None
    assert ahead.legs_down.margin.band == ahead.legs_up.margin.band


def test_with_legs_at_the_rear_end_nobody_can_tip_it() -> None:
    found = parked(*ONE, legs_x=(exactly(4.3),))
    assert found.legs_down is not None and found.legs_down.person is None
    assert parked(*ONE, legs_x=()).legs_down is None


def test_people_aboard_are_counted_once() -> None:
    guest = replace(mass("x", 80.0, 0.5), of="people[owner]", what="people")
    with_guest = solved(SHELL, guest, parked=True, boarding=ONE).parked
    assert with_guest is not None
    assert with_guest.legs_up.margin == parked(*ONE).legs_up.margin


def test_somebody_of_unknown_weight_opens_the_low_end() -> None:
    margin = parked(UNKNOWN_MASS).legs_up.margin
    assert margin.band.low == -inf
    assert margin.band.high == pytest.approx(270.0)
    assert margin.unknown == ("people",)


def test_doubt_of_leg_and_person_widens_the_margin() -> None:
    legs = parked(*ONE, legs_x=(sigma(4.0, 0.1),)).legs_down
    assert legs is not None
    assert legs.margin.half_width == pytest.approx((900.0 + 80.0) * 0.1)
    assert parked(sigma(80.0, 5.0)).legs_up.margin.half_width == pytest.approx(5.0 * 1.7)


@given(st.floats(0.0, 300.0))
def test_the_person_found_is_the_one_who_just_lifts_the_nose(more: float) -> None:
    person = parked().legs_up.person
    assert person is not None
    limit = person.band.best
    assert parked(exactly(limit)).legs_up.margin.band.best == pytest.approx(0.0, abs=1e-5)
    assert (parked(exactly(more)).legs_up.margin.band.best > 0.0) == (more < limit)


def test_nothing_is_said_of_a_trailer_that_is_driven() -> None:
    assert solved(SHELL, boarding=ONE).parked is None


def test_the_balls_place_in_doubt_is_counted_once_in_what_the_ball_carries() -> None:
    """The ball of a parked trailer is the coupler itself: its doubt stands for one place, not for two.

    270 kg m about the wheels over a lever of 3.8 m, give or take 0.2 m: half of what the two ends differ by, own
    arithmetic.
    """
    ball = parked(coupler_x=sigma(-1.3, 0.2)).ball
    assert ball.half_width == pytest.approx((270.0 / 3.6 - 270.0 / 4.0) / 2.0)
