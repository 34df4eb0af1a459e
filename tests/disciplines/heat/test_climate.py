"""Weather as the box takes it: the sky by dew point and cloud, and what a file that lacks a column is taken for."""

from __future__ import annotations

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


def test_what_a_file_lacks_is_none_of_it() -> None:
    bare = around(night(), UP, 0.2, 101325.0)
    assert (bare.sky, bare.wind, bare.humidity, bare.sun) == ((293.15,), (0.0,), (0.0,), ((0.0,),))
