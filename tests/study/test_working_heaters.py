"""The workings of a heater's electricity, noise, distances and air up high: what is printed is what is shown."""

from __future__ import annotations

import re
from datetime import date
from functools import cache
from math import hypot, log10
from pathlib import Path

import pytest

from boxwright.disciplines.heat.burner import air_share
from boxwright.disciplines.heat.sound import heard
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot, study
from boxwright.study.working import number_steps, numbers, working
from boxwright.units import HeaderUnits, exactly

TRIO = (Path(__file__).parents[1] / "findings" / "heat" / "rig.yaml").read_text(encoding="utf-8")
METRIC = HeaderUnits(length="mm", weight="kg", volume="l", temperature="C", words="AU")
LOUD = "draw: 1.2 A, noise: {level: 52 dB, at: 1000 mm, pillow: 2000 mm, neighbour: 8000 mm}, "


@cache
def slot(old: str = "draw: 1.2 A, ", new: str = LOUD) -> Slot:
    assert old in TRIO
    rig = read_rig(TRIO.replace(old, new).replace("height: 0 m", "height: 2000 m")).rig
    return study(rig, date(2026, 6, 1)).asked_slots("sleep")[0]


def test_each_has_its_working_that_ends_with_its_source() -> None:
    names = numbers(slot())
    wanted = {
        "electricity meadow heater", "heard-at-the-pillow heater", "heard-at-the-neighbour's heater",
        "exhaust-to window heater", "exhaust-to door heater", "exhaust-to own-air heater", "air-for-a-burner meadow",
    }  # fmt: skip
    assert wanted <= set(names)
    for name in wanted:
        lines = working(slot(), name, METRIC)
        assert lines[-1].startswith("  (") and lines[-1].endswith(")"), (name, lines)


def test_the_electricity_adds_up_to_what_the_night_takes() -> None:
    result = slot().heat
    assert result is not None
    (load,) = result.loads
    lines = working(slot(), "electricity meadow heater", METRIC)
    (product,) = [line for line in lines if line.endswith(" J")]
    told = [float(one) for one in re.findall(r"[\d.e+]+(?= W| s| J)", product)]
    running, hours, glowing, starting, _, joule = told
    assert running * (hours - glowing) + starting * glowing == pytest.approx(joule, rel=1e-3)
    assert joule == pytest.approx(load.joule.best, rel=1e-5)
    assert any("as written, at 12.8 V" in line for line in lines)


def test_one_that_goes_on_and_off_shows_how_often_it_starts() -> None:
    """A warmer night: the heater's lowest is too much, so it cycles."""
    mild = slot("lowest: 900 W", "lowest: 3000 W")
    lines = working(mild, "electricity meadow heater", METRIC)
    (starts,) = [line for line in lines if line.startswith("  starts = 1 + ")]
    told = re.findall(r"([\d.]+) h that.*\* ([\d.]+) an hour = ([\d.]+)", starts)[0]
    hours, often, every = (float(one) for one in told)
    assert 1.0 + hours * often == pytest.approx(every, rel=1e-3)
    assert mild.heat is not None and mild.heat.loads[0].starts.best == pytest.approx(every, rel=1e-3)


def test_an_electric_heater_takes_what_it_gives() -> None:
    electric = slot("of: diesel, lowest", "of: electric, lowest")
    lines = working(electric, "electricity meadow heater", METRIC)
    assert lines[0].startswith("electricity = heat") and not any("air-for" in one for one in numbers(electric))


def test_noise_falls_by_six_decibels_for_twice_as_far() -> None:
    pillow, *_ = number_steps(slot(), "heard-at-the-pillow heater")
    neighbour, *_ = number_steps(slot(), "heard-at-the-neighbour's heater")
    assert pillow.result() == pytest.approx(52.0 - 20.0 * log10(2.0))
    assert neighbour.result() == pytest.approx(52.0 - 20.0 * log10(8.0))
    result = slot().heat
    assert result is not None
    noise = result.heaters[0].planned.heater.noise
    assert noise is not None
    level = heard(noise, noise.pillow)
    assert level is not None and pillow.result() == pytest.approx(level.best)
    assert not any("heard" in one for one in numbers(slot("1.2 A, ", "1.2 A, ")))


def test_a_distance_is_that_of_its_three_axes() -> None:
    lines = working(slot(), "exhaust-to window heater", METRIC)
    axes = [told[0] for line in lines if (told := re.findall(r": ([\d,]+) mm to ([\d,]+) mm$", line))]
    least, most = (hypot(*(float(one[end].replace(",", "")) for one in axes)) for end in (0, 1))
    ends = re.findall(r"= ([\d,.]+) mm at least, ([\d,.]+) mm at most", lines[-2])[0]
    assert len(axes) == 3
    assert float(ends[0].replace(",", "")) == pytest.approx(least, rel=0.01)
    assert float(ends[1].replace(",", "")) == pytest.approx(most, rel=0.01)


def test_the_air_of_a_height_is_that_of_the_standard_atmosphere() -> None:
    """79.5 kPa at 2,000 m (standard atmosphere, from memory) of 101.3."""
    pressure, share = number_steps(slot(), "air-for-a-burner meadow")
    assert pressure.result() == pytest.approx(79_500.0, rel=0.002)
    of_air = air_share(exactly(2000.0))
    assert of_air is not None and share.result() == pytest.approx(of_air.best)
