"""The workings of heat and air come to the numbers their pages show."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from boxwright.disciplines.heat.burning import fuel_of_night
from boxwright.disciplines.heat.findings.stated import filling_hours
from boxwright.disciplines.heat.shell import by_members
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot, study
from boxwright.study.working import number_steps, numbers, working
from boxwright.units import HeaderUnits, show
from tests.study.demo import TODAY

TEXT = (Path(__file__).parents[1] / "findings" / "heat" / "rig.yaml").read_text(encoding="utf-8")
METRIC = HeaderUnits(length="mm", temperature="C")


@cache
def slot() -> Slot:
    """Return the night of the small rig of the rules of heat, its heater as it may not switch, in hard frost."""
    text = TEXT.replace("switches: yes", "switches: no").replace("coldest_design: -5 C", "coldest_design: -15 C")
    text = text.replace("highest: 4000 W", "highest: 1500 W")
    return next(one for one in study(read_rig(text).rig, TODAY).slots if one.use == "sleep")


def last(name: str) -> float:
    """Return what the last formula of a working comes to."""
    return number_steps(slot(), name)[-1].result()


def test_every_number_of_the_two_pages_has_its_working() -> None:
    assert slot().heat is not None and slot().air is not None
    wanted = {
        "loss", "loss-by-members", "room-at-coldest meadow", "loss-with-air meadow", "held-down-to meadow",
        "too-warm-above meadow", "at-lowest meadow", "fuel meadow", "a-filling heater", "a-filling-burnt heater",
        "free-area", "outdoor-air",
        "carbon-dioxide", "carbon-dioxide-at-last", "air-wanted", "air-mild-and-wet", "air-that-keeps-dry",
        "humidity-mild-and-wet", "humidity meadow", "gear-dries meadow",
    }  # fmt: skip
    assert wanted <= set(numbers(slot()))
    wet = {f"{one.name} meadow" for night in slot().air.nights for one in night.wet if one.hours > 0}
    assert wet and wet <= set(numbers(slot()))
    for name in numbers(slot()):
        lines = working(slot(), name, METRIC)
        assert lines[-1].startswith("  (") and lines[-1].endswith(")"), (name, lines)


def test_the_temperatures_of_a_night_come_out_of_their_formulas() -> None:
    assert slot().heat is not None
    (held,) = slot().heat.held
    assert held.holds_down_to is not None and held.too_warm_above is not None and held.at_lowest is not None
    assert last("held-down-to meadow") == pytest.approx(held.holds_down_to.best)
    told = working(slot(), "held-down-to meadow", METRIC)
    loss, by_the_sum = (next(one for one in told if one.startswith(begins)) for begins in ("  loss =", "  = "))
    assert float(loss.split()[2]) == pytest.approx(float(by_the_sum.split()[1]), rel=5e-3)
    assert any("the setting: parts[heater]" in one for one in told)
    assert last("too-warm-above meadow") == pytest.approx(held.too_warm_above.best)
    assert last("at-lowest meadow") == pytest.approx(held.at_lowest.best)
    assert f"  = {show(held.coldest.best, 'temperature', METRIC)}" in working(slot(), "room-at-coldest meadow", METRIC)


def test_the_sums_come_to_what_the_page_shows() -> None:
    assert slot().heat is not None and slot().air is not None
    result, (held,) = slot().heat, slot().heat.held

    def sums(name: str) -> float:
        (line,) = (one for one in working(slot(), name, METRIC) if one.startswith("  = "))
        return float(line.split()[1])

    assert sums("loss") == pytest.approx(result.shell.by_air.best, rel=5e-3)
    parts = [one.partition(" = ")[2] for one in working(slot(), "loss", METRIC) if "W/m2K" in one]
    assert sum(float(one.split()[0]) for one in parts) == pytest.approx(result.shell.by_air.best, rel=1e-3)
    assert sums("loss-by-members") == pytest.approx(sum(by_members(one).best for one in result.shell.faces), rel=5e-3)
    assert sums("loss-with-air meadow") == pytest.approx(held.loss.best, rel=5e-3)


def test_the_fuel_comes_out_of_its_formulas() -> None:
    assert slot().heat is not None
    (held,), (heater,) = slot().heat.held, slot().heat.heaters
    fuel, filling = fuel_of_night(held, heater), filling_hours(heater)
    assert fuel is not None and filling is not None
    assert last("fuel meadow") * 12 * 3600.0 == pytest.approx(fuel.best)
    _, flat_out, _, slow = number_steps(slot(), "a-filling heater")
    assert flat_out.result() == pytest.approx(filling.flat_out.best)
    assert slow.result() == pytest.approx(filling.slow.best)
    assert [one.result() for one in number_steps(slot(), "a-filling-burnt heater")] == pytest.approx(
        [10 / 0.5 * 3600.0, 10 / 0.113 * 3600.0]
    )


def test_the_air_of_a_mild_night_and_of_very_long_ones_comes_out_of_its_formulas() -> None:
    assert slot().air is not None
    breathing, mild = slot().air.breathing, slot().air.mild
    assert breathing is not None and mild is not None
    assert last("carbon-dioxide-at-last") == pytest.approx(breathing.steady.best)
    assert sum(one.result() for one in number_steps(slot(), "air-mild-and-wet")) == pytest.approx(mild.flow.best)
    assert last("air-that-keeps-dry") == pytest.approx(mild.need.best)
    assert any(f"= {mild.humidity.best * 100.0:.3g} %" in one for one in working(slot(), "humidity-mild-and-wet"))


def test_what_stands_wet_comes_out_of_its_formulas() -> None:
    assert slot().air is not None
    (night,) = slot().air.nights
    assert last("gear-dries meadow") == pytest.approx(night.dries)
    for wet in night.wet:
        if wet.hours == 0:
            continue
        surface, holds, full, *kept = number_steps(slot(), f"{wet.name} meadow")
        assert surface.result() == pytest.approx(wet.coldest)
        assert min(holds.result() / full.result(), 1.0) == pytest.approx(wet.limit)
        assert [one.result() for one in kept] == pytest.approx([wet.air] if wet.drier is not None else [])


def test_what_was_counted_at_the_pump_goes_before_what_is_in_the_fuel() -> None:
    counted = TEXT.replace("holds: 17 C", "counted: {lowest: 48, highest: 200, each: 0.04 ml}, holds: 17 C")
    one = next(each for each in study(read_rig(counted).rig, TODAY).slots if each.use == "sleep")
    assert one.heat is not None
    filling = filling_hours(one.heat.heaters[0])
    assert filling is not None
    flat_out, slow = number_steps(one, "a-filling heater")
    assert (flat_out.result(), slow.result()) == pytest.approx((filling.flat_out.best, filling.slow.best))
    burnt = fuel_of_night(one.heat.held[0], one.heat.heaters[0])
    assert burnt is not None and f"  = {show(burnt.best, 'volume', METRIC)}" in working(one, "fuel meadow", METRIC)
