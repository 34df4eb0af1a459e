"""Every shown number can be worked out again from its formula, the numbers put in and the source (I15)."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from math import asin, atan2, cos, hypot, sin, sqrt

import pytest

from boxwright.disciplines.weight import method
from boxwright.exchange import Measured
from boxwright.rig.compose import read_rig
from boxwright.study.once import Once
from boxwright.study.slots import Slot, study
from boxwright.study.trace import broken_off, traced
from boxwright.study.working import NoSuchNumber, Step, labels_of, lines, numbers, working
from boxwright.units import Band, HeaderUnits
from tests.study.demo import CLEAN, TODAY, clean, demo, slot_of, studied

SI = HeaderUnits(length="m", weight="kg", temperature="C", volume="l")
ALWAYS = ("gross", "tongue", "share", "left", "right", "cg-x", "cg-y", "cg-z", "on-wheels")
AXLES = {"single": 1, "equalised": 2, "torsion": 2, "nose up": 2}
CASES = [(gear, number) for gear in AXLES for number in (*ALWAYS, *(f"axle-{one + 1}" for one in range(AXLES[gear])))]


@cache
def worked(gear: str) -> Slot:
    """Return a slot of a trailer with some gear under it."""
    if gear == "single":
        return slot_of(studied("dunlin"), "inside", "home-poor", True)
    if gear == "equalised":
        return slot_of(studied("whimbrel"), "liners", "departure", True)
    if gear == "torsion":
        return slot_of(studied("gannet"), "s06", "departure", True)
    return slot_of(study(clean("ball_height: 18", "ball_height: 26"), TODAY), "bunks", "road")


def shown(slot: Slot) -> Iterator[tuple[str, float]]:
    """Yield the numbers of a slot that are shown, with their best values."""
    assert slot.weight is not None
    weight = slot.weight
    yield from (("gross", weight.gross.band.best), ("tongue", weight.tongue.band.best))
    yield from (("share", weight.share.band.best), ("left", weight.left.band.best), ("right", weight.right.band.best))
    yield from (("cg-x", weight.centre_x.band.best), ("cg-y", weight.centre_y.band.best))
    yield from (("cg-z", weight.centre_z.band.best), ("on-wheels", weight.gross.band.best))
    for index, axle in enumerate(weight.axles):
        yield f"axle-{index + 1}", axle.band.best


def result_line(found: tuple[str, ...]) -> float:
    return float(re.fullmatch(r"  (?:[a-z0-9 ]+)?= (\S+).*", found[-2])[1])  # type: ignore[index]


@pytest.mark.parametrize("gear", AXLES)
def test_the_numbers_gone_through_here_are_those_that_are_shown(gear: str) -> None:
    assert [number for number, _ in shown(worked(gear))] == [number for one, number in CASES if one == gear]


@pytest.mark.parametrize(("gear", "number"), CASES, ids=[f"{gear} {number}" for gear, number in CASES])
def test_the_working_comes_to_the_number_that_is_shown(gear: str, number: str) -> None:
    """Of one axle ``on-wheels`` and ``axle-1`` are shown as the two loads that add up to the whole."""
    value = dict(shown(worked(gear)))["gross" if (gear, number) == ("single", "axle-1") else number]
    assert result_line(working(worked(gear), number, SI)) == pytest.approx(value, rel=1e-5, abs=1e-6)


FUNCTIONS = {"sqrt": sqrt, "abs": abs, "asin": asin, "atan2": atan2, "hypot": hypot, "sin": sin, "cos": cos}


def expression(found: tuple[str, ...]) -> str:
    """Return the line of a working with its numbers in it; empty where it has none."""
    return found[-3].removeprefix("  = ") if found[-3].startswith("  = ") else ""


@pytest.mark.parametrize("gear", AXLES)
def test_the_line_with_the_numbers_in_it_is_sound_arithmetic(gear: str) -> None:
    """The printed expression is worked out by Python itself, as a reader with a calculator would."""
    count = 0
    for number in (number for one, number in CASES if one == gear):
        found = working(worked(gear), number, SI)
        if printed := expression(found):
            count += 1
            given = eval(printed, {"__builtins__": {}}, FUNCTIONS)
            assert given == pytest.approx(result_line(found), rel=1e-4, abs=1e-6), number
    assert count >= 4, "the share, the sides and the load on all wheels at the least"


def test_every_number_but_the_long_sums_and_the_procedures_is_printed_with_the_numbers_in_it() -> None:
    printed = {number for gear, number in CASES if expression(working(worked(gear), number, SI))}
    assert printed == {"tongue", "share", "left", "right", "on-wheels", "axle-1", "axle-2"}


def test_a_working_in_full() -> None:
    assert working(worked("equalised"), "share", SI) == (
        "share = tongue / mass",
        "  tongue = 145.099 kg",
        "  mass = 1405.71 kg",
        "  = 145.099 / 1405.71",
        "  = 0.103221 = 10.3 %",
        "  (tongue_share: first-principles section 1.3)",
    )


def test_a_sum_lists_every_part_the_heaviest_first() -> None:
    found = working(worked("equalised"), "gross", SI)
    rows = [line for line in found if line.endswith(" kg") and ": " in line]
    assert len(rows) == len([mass for mass in worked("equalised").masses if mass.kg.best > 0.0])
    assert rows[0] == "  trailer.empty dry: 889.041 kg"
    weights = [float(row.rpartition(": ")[2].removesuffix(" kg")) for row in rows]
    assert weights == sorted(weights, reverse=True)
    assert sum(weights) == pytest.approx(1405.71, rel=1e-5)


def test_a_procedure_says_what_its_result_satisfies() -> None:
    found = working(worked("torsion"), "axle-2")
    assert [line.startswith("0 = ") for line in found[:3]] == [True, True, True]
    assert found[-2].startswith("  axle 2 = ")


def test_the_formula_is_the_methods_own_text() -> None:
    assert labels_of(method.plank_tongue) == {
        "Formula": "tongue = (reading - bare_reading) * scale_arm / ball_arm",
        "Source": "plank-method three times the reading with arms of three and one",
    }
    step = Step(
        method.plank_tongue, (("reading", 31.0), ("bare_reading", 1.0), ("scale_arm", 1.2), ("ball_arm", 0.3)), "mass"
    )
    assert lines(step, SI)[-3:-1] == ("  = (31 - 1) * 1.2 / 0.3", "  = 120 kg")


def test_a_reading_is_worked_out_against_the_plan() -> None:
    reading = Measured(
        "measured[t]", "tongue", Band(120.0, 118.0, 122.0, spread="sigma"), TODAY, "shell", "road", "plank"
    )
    slot = slot_of(study(replace(clean(), measured=(reading,)), TODAY), "shell", "road", True)
    assert slot.weight is not None
    (compared,) = slot.weight.compared
    assert result_line(working(slot, "measured[t]")) == pytest.approx(compared.agreement, rel=1e-5)
    assert compared.agreement > 1.0


def test_a_reading_that_gave_a_part_its_weight_is_not_compared_with_itself() -> None:
    assert all(slot.weight is not None and not slot.weight.compared for slot in studied("whimbrel").slots)
    assert "measured[boat-scale]" not in numbers(worked("equalised"))


def test_a_number_without_a_working_is_answered_with_those_that_have_one() -> None:
    with pytest.raises(NoSuchNumber) as refused:
        working(worked("equalised"), "weight")
    assert refused.value.known == numbers(worked("equalised"))
    assert "tongue" in refused.value.known


def test_a_trace_counts_what_ran_and_adds_up_the_callers_clock() -> None:
    ticks = iter(range(100_000))
    once = Once(clock=lambda: float(next(ticks)))
    study(demo("whimbrel"), TODAY, stage=10, once=once)
    found = {one.step: (one.runs, one.seconds) for one in traced(once)}
    assert found["frame.offers"] == (2, 2.0), "on the scale at stage measure, and at the last stage"
    assert found["weight.solve"] == (6, 6.0)
    assert [one.step for one in traced(once)][:4] == ["frame.offers", "water.offers", "weight.offers", "study.pooled"]
    assert {one.seconds for one in traced(Once())} == set()


def test_what_broke_off_is_traced_once_with_its_slots(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> object:
        raise KeyError("spring")

    broken.__module__ = "boxwright.disciplines.water.solve"
    monkeypatch.setattr("boxwright.study.weighed.water.offers", broken)
    found = study(clean(), TODAY, stage=1)
    (one,) = broken_off(found)
    assert (one.step, one.says) == ("water.broken", "KeyError: 'spring'")
    assert len(one.slots) == 4
    assert one.slots[0] == "bunks as planned, road, tow"
    assert "spring" in one.traceback
    assert {slot.verdict.because[0] for slot in found.slots} == {"water/could-not-be-worked-out"}
    monkeypatch.undo()
    assert broken_off(study(clean(), TODAY)) == ()


def test_a_tongue_read_by_bathroom_scale_and_plank_shows_its_arithmetic() -> None:
    """(62 - 2) lb read 48 in from the brick, the coupler 12 in from it: the lever makes four times as much, 240 lb."""
    text = CLEAN + (
        "measured:\n  plank-1: {date: 2026-05-01, what: plank, stage: shell, load: road,"
        " plank: {reading: 62, bare: 2, to_scale: 48, to_ball: 12}}\n"
    )
    reading = read_rig(text)
    assert reading.problems == ()
    slot = next(s for s in study(reading.rig, TODAY).slots if s.load == "road" and "measured[plank-1]" in numbers(s))
    printed = working(slot, "measured[plank-1]", HeaderUnits(weight="lb"))
    assert printed[0] == labels_of(method.plank_tongue)["Formula"]
    assert any(line.endswith("= 240 lb") for line in printed), printed
