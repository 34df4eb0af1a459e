"""What a part is by its name alone: what may burn is asked about, and taken for no box."""

from __future__ import annotations

import pytest

from boxwright.disciplines.safety.sourced import word_means
from tests.disciplines.safety.test_ways import MORE, kinds

WHERE = "{x: 100, side: left, z: 0, size: 420 x 300 x 100, weight: 5, stage: shell, done: yes"


@pytest.mark.parametrize("name", ["propane-heater-2", "heater", "wood burner", "candle lantern", "gas fridge"])
def test_what_may_burn_is_known_by_its_name(name: str) -> None:
    assert word_means(name) == "flame"


@pytest.mark.parametrize("name", ["electric heater", "fan-heater", "heater-plate", "heater-fuel", "lantern", "fridge"])
def test_what_does_not_burn_or_is_only_for_a_heater_is_no_flame(name: str) -> None:
    assert word_means(name) == ""


def test_a_heater_without_keys_is_asked_about_until_they_tell() -> None:
    heater = (MORE, f"{MORE}\n  propane heater: {WHERE}}}")
    assert ("unknown", "gas-alarm", "parts[propane heater]") in kinds(heater)
    told = (MORE, f"{MORE}\n  propane heater: {WHERE}, burns: electric}}")
    assert not [one for one in kinds(told) if one[2] == "parts[propane heater]" and one[1] == "gas-alarm"]


@pytest.mark.parametrize(
    "name", ["petrol", "spare gasoline", "propane", "butane-can", "lpg-bottle", "gas-canister", "moped"]
)
def test_what_holds_fuel_is_known_by_its_name(name: str) -> None:
    assert word_means(name) == "fuel"


@pytest.mark.parametrize("name", ["petrol-strimmer-bag", "propane-locker", "motor-oil", "gas-strut", "grill-tongs"])
def test_what_is_only_for_fuel_holds_none(name: str) -> None:
    assert word_means(name) in ("", "holder")
