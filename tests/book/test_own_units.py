"""A working is in the units of the rig's header: pounds and inches in a US rig, kilograms and millimetres elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import asin, atan2, cos, hypot, isclose, sin

import pytest

from boxwright.book.numbers import METRIC, US
from boxwright.book.reasons import Reason, in_print
from boxwright.disciplines.towing import method as towing
from boxwright.study.own_units import IN_SI, own, put_in, units_of
from boxwright.study.slots import study
from boxwright.study.working import numbers, working
from boxwright.units import HeaderUnits
from tests.book.reasoned import DAY, DEMOS, every_reason, last_stage, reading_of

METRIC_UNITS = re.compile(r"\d (?:kg m|kg|mm|cm|m|C|K|l|m\*\*3|m3)(?![\w*/])")
US_UNITS = re.compile(r"\d (?:lb|in|ft|F|gal)(?![\w*/])")
OF_THE_LAW = {"towing/class-change": "from what weight brakes are asked for, in the figure of the law itself"}
"""Rules that compare what a law says, in its own unit, each with why."""
HEADERS = ((US, METRIC_UNITS), (METRIC, US_UNITS))


def of_the_program(reason: Reason) -> Iterator[str]:
    """Yield what a reason says in its own words: what is written, its rule and its sources say it as they do."""
    yield from (text for _, text in reason.compared)
    for step in reason.steps:
        yield from (one.text for one in step.given)
        yield from (step.result, step.with_numbers)


def steps_of_its_header(demo: str, *stages: int) -> int:
    """Return how many steps were looked at, all in the units of the rig's header."""
    steps, foreign = 0, US_UNITS if reading_of(demo).rig.header.units.length == "mm" else METRIC_UNITS
    for _, _, reason in every_reason(demo, *stages):
        steps += len(reason.steps)
        if reason.code in OF_THE_LAW:
            continue
        assert [one for one in of_the_program(reason) if foreign.search(one)] == [], reason.code
    return steps


@pytest.mark.parametrize("demo", DEMOS)
def test_no_finding_at_the_end_is_worked_in_the_units_of_somebody_else(demo: str) -> None:
    assert steps_of_its_header(demo, last_stage(demo)) > 5, "nothing was looked at"


@pytest.mark.nightly
@pytest.mark.parametrize("demo", DEMOS)
def test_no_finding_of_any_stage_is_worked_in_the_units_of_somebody_else(demo: str) -> None:
    assert steps_of_its_header(demo, *range(last_stage(demo) + 1)) > 5, "nothing was looked at"


@pytest.mark.parametrize("demo", DEMOS)
def test_no_figure_is_worked_in_the_units_of_somebody_else(demo: str) -> None:
    for slot in study(reading_of(demo).rig, DAY).asked_slots():
        for header, foreign in HEADERS:
            for number in numbers(slot):
                lines = [line for line in working(slot, number, header) if not line.startswith("  (")]
                assert [line for line in lines if foreign.search(line)] == [], number


def test_a_line_with_pounds_and_inches_in_it_gives_what_stands_under_it() -> None:
    """Worked once more by python, from the line as printed: six figures are printed, so five agree."""
    names = {"asin": asin, "atan2": atan2, "cos": cos, "hypot": hypot, "sin": sin}
    slot = study(reading_of("whimbrel").rig, DAY).asked_slots("tow")[0]
    for header, unit in ((US, "lb"), (METRIC, "kg")):
        *_, with_numbers, result, _source = working(slot, "tongue", header)
        number, shown = result.strip(" =").split(" ")
        worked = eval(with_numbers.strip(" ="), {"__builtins__": {}}, names)
        assert shown == unit and isclose(worked, float(number), rel_tol=2e-5)


def test_a_formula_with_a_unit_in_it_says_that_its_numbers_are_in_si() -> None:
    """9.80665 m/s2 is no number of inches; a share of two weights is the same in any unit. By hand."""
    brake = {"tow_mass": 1000.0, "trailer_mass": 500.0, "tow_braked": 0.75, "trailer_braked": 0.0}
    shown = put_in(towing.deceleration, "slowing = tow_braked * tow_mass / trailer_mass", brake, US)
    assert shown == "= 0.75 * 2204.62 / 1102.31"
    stop = {"speed": 10.0, "distance": 12.7}
    assert put_in(towing.mean_deceleration, "slowing = speed / distance", stop, US) == f"{IN_SI}= 10 / 12.7"
    assert put_in(towing.mean_deceleration, "slowing = speed / distance", stop, HeaderUnits()) == f"{IN_SI}= 10 / 12.7"


@pytest.mark.parametrize(
    ("value", "unit", "name", "us", "metric"),
    [
        (0.45359237, "kg", "", "1 lb", "0.453592 kg"),
        (0.0254, "m", "", "1 in", "25.4 mm"),
        (273.15, "K", "inside", "32 F", "0 C"),
        (20.0, "K", "difference", "36 F", "20 C"),
        (10.0, "K", "sky_drop", "18 F", "10 C"),
        (2.0, "W/m**2/K", "", "2 W/m**2/K", "2 W/m**2/K"),
        (0.5, "", "", "0.5", "0.5"),
        (6.9e-18, "rad", "", "0 rad = 0 deg", "0 rad = 0 deg"),
    ],
)
def test_a_number_that_goes_in_is_said_in_the_unit_of_the_header(
    value: float, unit: str, name: str, us: str, metric: str
) -> None:
    assert own(value, unit, US, name) == us
    assert own(value, unit, METRIC, name) == metric


def test_the_parts_of_a_result_have_their_units() -> None:
    from boxwright.disciplines.heat.method import fuel

    found = units_of(fuel.cycling)
    assert (found["return.on"], found["return.share"]) == ("s", "")


def test_a_reason_in_print_says_which_line_is_in_si() -> None:
    lines = [line for _, _, reason in every_reason("dunlin", last_stage("dunlin")) for line in in_print(reason)]
    assert any(line.startswith(f"  {IN_SI}=") for line in lines)
