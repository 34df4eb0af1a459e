"""The sun of a hot day against another program: how strong it is, and how much of it is scattered."""

from __future__ import annotations

from math import radians

import pytest

pytest.importorskip("pvlib", reason="pvlib is not installed: nothing to compare the sun with")

import pandas as pd
import pvlib

from boxwright.disciplines.heat.climate import HOURS_OF_DAY, clear_hour


def test_the_sun_of_an_hour_is_that_of_another_program() -> None:
    # Noon by the sun on the meridian of Greenwich, and a morning and an evening hour beside it.
    for clock in (7, 12, 16):
        level, straight, scattered = clear_hour((radians(36.0), 0.0, 0.0), 195 * HOURS_OF_DAY + clock, 1.0)
        when = pd.DatetimeIndex([f"2001-07-15 {clock:02d}:30"], tz="UTC")
        zenith = float(pvlib.solarposition.get_solarposition(when, 36.0, 0.0).zenith.iloc[0])
        clear = float(pvlib.clearsky.haurwitz(pd.Series([zenith])).ghi.iloc[0])
        split = pvlib.irradiance.erbs(clear, zenith, when)
        assert level == pytest.approx(clear, rel=0.005)
        assert scattered == pytest.approx(float(split.dhi.iloc[0]), rel=0.01)
        assert straight == pytest.approx(float(split.dni.iloc[0]), rel=0.01)
