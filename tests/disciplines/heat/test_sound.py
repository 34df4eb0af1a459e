"""How loud a heater is: nearer is louder, a doubt in any number is one in the level, nothing written is nothing."""

from __future__ import annotations

import pytest

from boxwright.disciplines.heat.burner_sheet import burner_grids
from boxwright.disciplines.heat.parts import Noise
from boxwright.disciplines.heat.sound import heard, level_of
from boxwright.rig.compose import read_rig
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.test_burning import warmed
from tests.disciplines.heat.test_findings import edited


def test_levels_as_they_are_written() -> None:
    assert level_of("52 dB") == level_of("52dB(A)") == exactly(52.0)
    assert level_of("50..55 dB") == Band(52.5, 50.0, 55.0)
    assert level_of("loud") is level_of("unknown") is level_of("") is None


def test_twice_as_far_is_six_decibels_less_and_each_doubt_counts() -> None:
    noise = Noise(level="50..56 dB", at=exactly(1.0))
    near, far = heard(noise, exactly(2.0)), heard(noise, Band(4.0, 2.0, 8.0))
    assert near is not None and far is not None
    assert (near.low, near.best, near.high) == pytest.approx((43.979, 46.979, 49.979), abs=0.001)
    assert (far.low, far.high) == pytest.approx((31.938, 49.979), abs=0.001)
    assert heard(noise, None) is heard(noise, exactly(0.0)) is heard(Noise(level="50 dB"), exactly(2.0)) is None


def test_the_sheet_compares_and_a_level_that_is_none_is_told() -> None:
    given = "noise: {level: 52 dB, at: 1000, pillow: 2000, neighbour: 10000}, holds: 17 C"
    (heater,) = warmed(("holds: 17 C", given)).heaters
    rows = burner_grids(heater, (), (), HeaderUnits(length="mm"))[0].rows
    beside = "nothing between; {} dB leave people asleep there"
    assert ("heard at the pillow", "46 dB, 2000 mm away", beside.format(30)) in rows
    assert ("heard at the neighbour's", "32 dB, 10000 mm away", beside.format(45)) in rows
    (problem,) = read_rig(edited(("holds: 17 C", "noise: {level: loud, at: 1000}, holds: 17 C"))).problems
    assert 'cannot read the level "loud"' in problem.says
