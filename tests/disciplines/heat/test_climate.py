"""Weather as the box takes it: the sky by dew point and cloud, and what a file that lacks a column is taken for."""

from __future__ import annotations

from dataclasses import replace
from math import radians

import pytest

from boxwright.disciplines.heat.climate import around
from boxwright.disciplines.heat.weather import WeatherHours

UP = ((0.0, 0.0, 1.0),)


def night(**columns: tuple[float, ...]) -> WeatherHours:
    """Return an hour at 20 C."""
    return WeatherHours("x", "x", 0.6, -1.4, 0.0, -18000.0, (0, 0), (293.15,), **columns)


def test_a_clouded_sky_is_warmer_than_a_clear_one_and_neither_warmer_than_black() -> None:
    clear = around(night(dew_point=(283.15,)), UP, 0.2, 101325.0).sky[0]
    # Berdahl and Martin at a dew point of 10 C, as the checks have it.
    assert clear == pytest.approx(273.15 + 1.84, abs=0.05)
    half, whole = (around(night(dew_point=(283.15,), cloud=(one,)), UP, 0.2, 101325.0).sky[0] for one in (5.0, 10.0))
    assert clear < half < whole <= 293.15
    # 1 + 0.0224 n - 0.0035 n2 + 0.00028 n3 at ten tenths is 1.154 (hand arithmetic).
    assert (whole / clear) ** 4 == pytest.approx(1.154)


def test_of_three_columns_of_sun_the_one_that_is_missing_is_what_the_others_leave() -> None:
    """Level sun = straight sun * sine of its height + light of the sky (definition); here at noon, 36 degrees north."""
    at_noon = replace(night(), latitude=radians(36.0), longitude=radians(-75.0), begins=(80, 12), outside=(293.15,))
    sides = ((0.0, 0.0, 1.0), (-1.0, 0.0, 0.0), (1.0, 0.0, 0.0))

    def suns(**columns: float) -> tuple[float, ...]:
        (found,) = around(replace(at_noon, **{name: (one,) for name, one in columns.items()}), sides, 0.2, 101325.0).sun
        return found

    # By hand: on level ground all of it; so 700 straight and 150 of the sky are 150 + 700 * up.
    up = (suns(straight_sun=700.0, sky_light=150.0)[0] - 150.0) / 700.0
    assert up == pytest.approx(0.81, abs=0.02), "about the cosine of 36 degrees at an equinox"
    level = 150.0 + 700.0 * up
    whole = suns(level_sun=level, straight_sun=700.0, sky_light=150.0)
    assert suns(straight_sun=700.0, sky_light=150.0) == pytest.approx(whole)
    assert suns(level_sun=level, sky_light=150.0) == pytest.approx(whole)
    assert suns(level_sun=level, straight_sun=700.0) == pytest.approx(whole)
    alone = suns(level_sun=level)
    assert alone[0] == pytest.approx(whole[0]) and alone[1] == alone[2], "all of it from the sky, as bright everywhere"


def test_what_a_file_lacks_is_none_of_it() -> None:
    bare = around(night(), UP, 0.2, 101325.0)
    assert (bare.sky, bare.wind, bare.humidity, bare.sun) == ((293.15,), (0.0,), (0.0,), ((0.0,),))
