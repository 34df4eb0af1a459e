"""The hour a number of the night is taken from: what came in is what went out, and it comes to what is shown."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.one_hour import last_hour_of_water
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot, study
from boxwright.study.working import number_steps, working
from boxwright.units import HeaderUnits, show
from tests.study.demo import TODAY, slot_of, studied
from tests.study.test_working_warmth import METRIC
from tests.study.test_working_warmth import slot as meadow

PLACES = ("Greensboro NC", "Sand Point AK", "meadow")
RIG = Path(__file__).parents[1] / "findings" / "heat" / "rig.yaml"


@cache
def whimbrel() -> Slot:
    """Return a night with the heater in, held at the one place and not at the other."""
    return slot_of(studied("whimbrel"), "heat", "night", False)


def slot_at(place: str) -> Slot:
    return meadow() if place == "meadow" else whimbrel()


def night_at(place: str) -> HeldNight:
    found = slot_at(place).heat
    assert found is not None
    return next(one for one in found.held if one.outdoors.place == place)


def line(place: str, number: str, begins: str) -> str:
    (found,) = (one for one in working(slot_at(place), f"{number} {place}", METRIC) if one.strip().startswith(begins))
    return found


def summed(text: str, unit: str) -> tuple[float, float]:
    """Return what the amounts of a line add up to, and what it says they do."""
    *each, told = [float(one) for one in re.findall(rf"(-?[\d.]+(?:e-\d+)?) {unit}\b", text)]
    return sum(each), told


@pytest.mark.parametrize("place", PLACES)
def test_the_heat_that_came_in_is_the_heat_that_went_out(place: str) -> None:
    """Energy is kept: the balance of the hour closes within a thousandth of what passed."""
    came, left = (summed(line(place, "room-at-coldest", words), "W") for words in ("came in:", "went out:"))
    assert came[0] == pytest.approx(came[1], abs=0.2) and left[0] == pytest.approx(left[1], abs=0.2)
    assert came[1] == pytest.approx(left[1], rel=1e-3)
    assert left[1] > 100.0, "next to nothing would always add up"


@pytest.mark.parametrize("place", PLACES)
def test_the_hour_is_the_coldest_of_the_night(place: str) -> None:
    night = night_at(place)
    at = night.night.air.index(min(night.night.air))
    said = line(place, "room-at-coldest", "it is so")
    assert f"from {(20 + at) % 24} h, {show(night.night.outside[at], 'temperature', METRIC)} outside" in said
    assert line(place, "room-at-coldest", "= ") == f"  = {show(night.coldest.best, 'temperature', METRIC)}"
    heater = re.search(r"heater ([\d.]+) W", line(place, "room-at-coldest", "came in:"))
    assert heater is not None and float(heater[1]) == pytest.approx(night.night.heat[at], abs=0.06)


@pytest.mark.parametrize("place", PLACES)
def test_the_hours_of_heat_add_up_to_that_of_the_night(place: str) -> None:
    hours = [float(one) for one in line(place, "fuel", "each hour").partition(": ")[2].split(", ")]
    assert len(hours) == 12
    assert sum(hours) * 3600.0 == pytest.approx(night_at(place).energy.best, rel=1e-3)


@pytest.mark.parametrize("place", PLACES)
def test_the_water_that_came_in_left_settled_or_stayed(place: str) -> None:
    lines = [line(place, "humidity", words) for words in ("the last hour", "carried off")]
    came, became = (summed(one.partition(" h: ")[2] or one, "g") for one in lines)
    assert came[0] == pytest.approx(came[1], rel=1e-3) and became[0] == pytest.approx(became[1], rel=1e-3)
    assert came[1] == pytest.approx(became[1], rel=1e-3)
    assert summed(lines[0], "g")[1] > 50.0
    heat = slot_at(place).heat
    assert heat is not None and heat.inside is not None
    hour = last_hour_of_water(night_at(place), heat.inside, heat.moisture)
    assert abs(hour.kept) > 1e-7, "so little that its sign would not matter"
    assert hour.given_off + hour.brought - hour.carried_off - hour.settled == pytest.approx(hour.kept, rel=1e-3)


@pytest.mark.parametrize("place", PLACES)
def test_the_humidity_that_is_shown_is_that_of_the_hour(place: str) -> None:
    """Of so much water a kilogram of dry air: pressure by 0.621945, the ratio of the masses of water and dry air.

    Source: psychrometrics, the same in every handbook (from memory).
    """
    after = float(line(place, "humidity", "= 0.0").split()[1])
    shown = re.search(r"([\d.]+) Pa / ([\d.]+) Pa = ([\d.]+) %", "\n".join(
        working(slot_at(place), f"humidity {place}", METRIC)))  # fmt: skip
    assert shown is not None
    pressure = 101325.0 * after / (0.621945 + after)
    assert float(shown[1]) == pytest.approx(min(pressure, float(shown[2])), rel=2e-3)


def test_the_hours_a_place_stands_wet_are_those_that_are_listed() -> None:
    found = 0
    for slot in (meadow(), whimbrel()):
        assert slot.air is not None
        for night in slot.air.nights:
            for wet in (one for one in night.wet if one.hours > 0):
                lines = working(slot, f"{wet.name} {night.place}", METRIC)
                grams = [float(one) for one in next(one for one in lines if "each hour from" in one).partition(
                    "g: ")[2].split(", ")]  # fmt: skip
                least = float(next(one for one in lines if "wet hours" in one).split()[-4])
                assert f"  = {sum(one > least for one in grams)} h" in lines and f"  = {wet.hours} h" in lines
                assert max(grams) == pytest.approx(wet.most * 1e3, rel=1e-3)
                found += 1
    assert found >= 4


def test_what_is_breathed_out_is_what_the_air_is_worked_out_with() -> None:
    lines = working(whimbrel(), "carbon-dioxide", HeaderUnits())
    told = float(next(one for one in lines if one.startswith("  = ") and one.endswith("e-06 m3/s")).split()[1])
    gathered = number_steps(whimbrel(), "carbon-dioxide")[-1]
    given = dict(gathered.given)
    assert told == pytest.approx(given["source"])
    both = [one.result() for one in number_steps(whimbrel(), "carbon-dioxide")[:-1]]
    assert sum(both) == pytest.approx(given["flow"])
    assert f"  = {given['flow']:.6g} m3/s = {show(sum(both), 'flow', HeaderUnits())}" in lines


def test_a_night_without_a_heater_is_told_so_too() -> None:
    """What people give is all that warms it."""
    lines = RIG.read_text(encoding="utf-8").splitlines(keepends=True)
    text = "".join(one for one in lines if not one.startswith("  heater:"))
    slot = next(one for one in study(read_rig(text).rig, TODAY).slots if one.use == "sleep")
    found = working(slot, "room-at-coldest meadow", METRIC)
    (came,) = (one for one in found if one.strip().startswith("came in:"))
    (left,) = (one for one in found if one.strip().startswith("went out:"))
    assert "heater 0.0 W" in came and summed(came, "W")[1] == pytest.approx(summed(left, "W")[1], abs=0.3)
