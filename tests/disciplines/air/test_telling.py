"""How much water is said to be: an ounce is 28.349523125 g, a square foot 0.09290304 m2 (international units)."""

from __future__ import annotations

import pytest

from boxwright.disciplines.air.telling import grams, water, water_over
from boxwright.units import HeaderUnits

FEET, METRES = HeaderUnits(length="in"), HeaderUnits(length="mm")


@pytest.mark.parametrize(("kilogram", "said"), [(0.5, "18 oz"), (0.1, "4 oz"), (0.0283495, "1 oz"), (0.0, "0 oz")])
def test_a_little_water_is_told_in_ounces_where_lengths_are_in_inches(kilogram: float, said: str) -> None:
    assert water(kilogram, FEET) == said


@pytest.mark.parametrize(("kilogram", "said"), [(0.5, "500 g"), (0.0099, "9.9 g"), (0.01, "10 g"), (0.0, "0 g")])
def test_a_little_water_is_told_in_grams_elsewhere(kilogram: float, said: str) -> None:
    assert water(kilogram, METRES) == water_over(kilogram, METRES) == grams(kilogram) == said


def test_water_on_a_surface_is_told_on_a_square_foot_where_lengths_are_in_inches() -> None:
    """By hand: 1 kg/m2 is 0.0929 kg on a square foot, 3.28 oz."""
    assert water_over(1.0, FEET) == "3.3 oz"
