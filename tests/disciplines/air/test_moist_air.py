"""Moist air against an open library of psychrometric functions, psychrolib 2.5.0, and against itself."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.air.method import (
    air_density,
    dew_point,
    factor_needed,
    humidity_ratio,
    saturation_pressure,
    settled_in_wall,
    standard_pressure,
    surface_temperature,
    vapour_pressure,
    wall_saturation_pressure,
    wet_bulb_humidity,
)
from boxwright.units import OutOfRange

psychrolib = pytest.importorskip("psychrolib")
psychrolib.SetUnitSystem(psychrolib.SI)

AIR = 101325.0


@given(celsius=st.floats(-60.0, 60.0))
def test_what_air_can_hold_is_what_the_library_says(celsius: float) -> None:
    assert saturation_pressure(celsius + 273.15) == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=1e-9)


@given(celsius=st.floats(-40.0, 50.0), humidity=st.floats(0.05, 1.0))
def test_the_dew_point_is_what_the_library_says(celsius: float, humidity: float) -> None:
    pressure = saturation_pressure(celsius + 273.15) * humidity
    ours = dew_point(pressure) - 273.15
    assert ours == pytest.approx(psychrolib.GetTDewPointFromVapPres(celsius, pressure), abs=2e-3)
    assert ours <= celsius + 1e-9


@given(celsius=st.floats(1.0, 45.0), share=st.floats(0.05, 0.999), metres=st.floats(0.0, 4000.0))
def test_the_wet_bulb_gives_the_water_the_library_says(celsius: float, share: float, metres: float) -> None:
    pressure = standard_pressure(metres)
    assert pressure == pytest.approx(psychrolib.GetStandardAtmPressure(metres), rel=1e-9)
    wet = 0.2 + (celsius - 0.2) * share
    theirs = psychrolib.GetHumRatioFromTWetBulb(celsius, wet, pressure)
    ours = wet_bulb_humidity(celsius + 273.15, wet + 273.15, pressure)
    assert max(ours, 1e-7) == pytest.approx(theirs, rel=1e-9)  # the library never gives less than 1e-7


@given(celsius=st.floats(-30.0, 45.0), humidity=st.floats(0.01, 1.0))
def test_water_to_air_and_back(celsius: float, humidity: float) -> None:
    pressure = saturation_pressure(celsius + 273.15) * humidity
    ratio = humidity_ratio(pressure, AIR)
    assert vapour_pressure(ratio, AIR) == pytest.approx(pressure, rel=1e-12)
    assert ratio == pytest.approx(psychrolib.GetHumRatioFromVapPres(pressure, AIR), rel=1e-12)
    volume = psychrolib.GetMoistAirVolume(celsius, ratio, AIR)
    assert air_density(celsius + 273.15, ratio, AIR) == pytest.approx(1.0 / volume, rel=1e-4)


@given(outside=st.floats(-30.0, 10.0), warmer=st.floats(5.0, 40.0), humidity=st.floats(0.2, 0.79))
def test_a_surface_with_the_factor_that_is_needed_is_just_at_its_limit(
    outside: float, warmer: float, humidity: float
) -> None:
    cold, warm = outside + 273.15, outside + warmer + 273.15
    factor = factor_needed(warm, cold, humidity, 0.8)
    surface = cold + factor * (warm - cold)
    assert wall_saturation_pressure(surface) * 0.8 == pytest.approx(wall_saturation_pressure(warm) * humidity, rel=1e-9)
    if 0.0 <= factor <= 1.0:
        assert surface_temperature(factor, warm, cold) == pytest.approx(surface)


def test_metal_on_the_outside_gathers_water_and_metal_on_the_inside_keeps_it_out() -> None:
    foam, ply, skin = (1.322916667, 5.715), (0.052916667, 0.9525), (6.35e-06, 1500.0)
    vapour = (0.8 * wall_saturation_pressure(273.15), 0.6 * wall_saturation_pressure(291.15))

    def gathers(*layers: tuple[float, float]) -> float:
        resistances = (0.04, *(one[0] for one in layers), 0.13)
        lengths = tuple(one[1] for one in layers)
        return settled_in_wall(resistances, lengths, 273.15, 291.15, *vapour, 2e-10, 30 * 86400.0).total

    # 47.08 g/m2 in thirty days: the project's sheet of checks, worked out there by other code.
    assert gathers(skin, foam, ply) == pytest.approx(0.04708, rel=0.01)
    assert gathers(foam, ply, skin) == 0.0


def test_no_wall_of_one_layer_and_no_layer_of_nothing() -> None:
    with pytest.raises(OutOfRange):
        settled_in_wall((0.04, 1.0, 0.13), (1.0,), 273.15, 293.15, 500.0, 1000.0, 2e-10, 1.0)
    with pytest.raises(OutOfRange):
        settled_in_wall((0.04, 1.0, 0.0, 0.13), (1.0, 1.0), 273.15, 293.15, 500.0, 1000.0, 2e-10, 1.0)
