"""Readings of instruments with their doubt, and plan against scale."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import inf, sqrt
from random import Random
from statistics import stdev

import pytest

from boxwright.disciplines.weight.solve import instrument_doubt, plank_reading, scale_pads_reading
from boxwright.exchange import Mass, Measured
from boxwright.units import COVERAGE, Band, exactly
from tests.disciplines.weight.rigs import SHELL, UNKNOWN_MASS, fill, interval, mass, sigma, solved

POUND = 0.45359237
"""Kilogram in a pound, exact by definition (international pound of 1959, from memory)."""


def reading(what: str, value: Band, part: str = "") -> Measured:
    return Measured("measured[ticket]", what, value, date(2026, 4, 1), "shell", "road", "public scale", part)


@pytest.mark.parametrize(
    ("instrument", "value", "half"),
    [
        ("public scale", 800.0, 20.0 * POUND),
        ("Public Scale, cash 12", 800.0, 20.0 * POUND),
        ("bathroom scale", 20.0, 0.5),
        ("bathroom scale", 90.0, 0.9),
        ("scale", 90.0, 1.8),
        ("a thing of my own", 100.0, 20.0 * POUND),
        ("", 1000.0, 20.0),
    ],
)
def test_a_scale_has_the_doubt_of_its_kind_and_says_that_it_was_assumed(
    instrument: str, value: float, half: float
) -> None:
    found = instrument_doubt(instrument, exactly(value))
    assert (found.best, found.spread, found.assumed) == (value, "sigma", True)
    assert (found.high - found.low) / 2.0 == pytest.approx(half)


def test_a_small_reading_is_not_below_zero() -> None:
    assert instrument_doubt("public scale", exactly(2.0)).low == 0.0


def test_two_tickets_give_tongue_and_axles() -> None:
    hitched = [sigma(1190.0, 5.0), sigma(1700.0, 5.0), sigma(2060.0, 5.0)]
    pads = scale_pads_reading(hitched, [sigma(1290.0, 5.0), sigma(1370.0, 5.0)])
    assert pads.axles == hitched[2]
    assert pads.tongue.best == pytest.approx(230.0)
    assert pads.tongue.high - pads.tongue.best == pytest.approx(2.0 * 5.0)


def test_a_plank_gives_the_tongue_with_the_doubt_a_simulation_gives() -> None:
    """20,000 seeded draws: the standard deviation errs by 0.5 %, and four of these are allowed."""
    read, bare, scale_arm, ball_arm = sigma(62.0, 1.0), sigma(3.0, 0.5), sigma(1.2, 0.006), sigma(0.3, 0.003)
    found = plank_reading(read, bare, scale_arm, ball_arm)
    assert found.best == pytest.approx(59.0 * 4.0)
    random = Random(7)

    def draw(band: Band) -> float:
        return band.best + band.standard_uncertainty * random.gauss(0.0, 1.0)

    drawn = [(draw(read) - draw(bare)) * draw(scale_arm) / draw(ball_arm) for _ in range(20_000)]
    assert found.standard_uncertainty == pytest.approx(stdev(drawn), rel=0.02)
    assert not found.assumed


def test_arms_without_doubt_get_that_of_a_tape_and_an_unknown_reading_stays_unknown() -> None:
    exact = plank_reading(exactly(60.0), None, exactly(1.2), exactly(0.3))
    assert exact.assumed and exact.high > exact.best
    half = 60.0 * 4.0 * sqrt((0.005 / 1.2) ** 2 + (0.005 / 0.3) ** 2)
    assert exact.high - exact.best == pytest.approx(half)
    assert not plank_reading(UNKNOWN_MASS, None, exactly(1.2), exactly(0.3)).known


def compared(*masses: Mass, what: str, value: Band, part: str = ""):  # type: ignore[no-untyped-def]
    found = solved(*masses, measured=(reading(what, value, part),)).compared
    return found[0] if found else None


def test_plan_and_scale_are_apart_by_their_common_doubt() -> None:
    one = compared(SHELL, mass("a", sigma(100.0, 30.0), 0.5), what="total", value=sigma(1040.0, 10.0))
    assert one.gap == pytest.approx(40.0)
    assert one.agreement == pytest.approx(40.0 / sqrt(30.0**2 + 10.0**2))
    assert one.weigh_next == ("parts[a]",)


@pytest.mark.parametrize("what", ["total", "axles", "tongue", "left", "right", "axle 1", "axle 2"])
def test_every_kind_of_reading_meets_its_own_answer(what: str) -> None:
    parts = (SHELL, mass("a", interval(90.0, 110.0), 0.5, -0.5))
    found = solved(*parts)
    wanted = {"total": found.gross, "axles": found.on_wheels, "tongue": found.tongue, "left": found.left}
    wanted |= {"right": found.right, "axle 1": found.axles[0], "axle 2": found.axles[1]}
    one = compared(*parts, what=what, value=sigma(wanted[what].band.best, 5.0))
    assert one.planned == wanted[what]
    assert one.agreement == 0.0


def test_what_is_open_explains_a_gap_before_anything_disagrees() -> None:
    tank, lost = mass("tank", fill(20.0, 60.0), 0.5), mass("lost", UNKNOWN_MASS, 0.5)
    assert compared(SHELL, tank, what="total", value=sigma(955.0, 1.0)).agreement == 0.0
    assert compared(SHELL, tank, what="total", value=sigma(962.0, 1.0)).gap == pytest.approx(2.0)
    assert compared(SHELL, lost, what="total", value=sigma(1200.0, 1.0)).agreement == 0.0
    assert compared(SHELL, lost, what="total", value=sigma(890.0, 1.0)).gap == pytest.approx(-10.0)


def test_without_any_doubt_a_gap_is_endless_and_no_gap_is_none() -> None:
    assert compared(SHELL, what="total", value=exactly(900.0)).agreement == 0.0
    assert compared(SHELL, what="total", value=exactly(901.0)).agreement == inf


def test_a_weighed_part_is_compared_with_its_own_dry_weight() -> None:
    boat = mass("boat", sigma(50.0, 4.0), 3.0)
    one = compared(SHELL, boat, what="part", value=sigma(58.0, 3.0), part="boat")
    assert (one.part, one.planned.band.best) == ("parts[boat]", 50.0)
    assert one.agreement == pytest.approx(8.0 / 5.0)
    full = replace(boat, what="contents", kg=exactly(10.0))
    assert compared(SHELL, boat, full, what="part", value=sigma(58.0, 3.0), part="boat").planned == one.planned


@pytest.mark.parametrize(
    ("what", "value", "part"),
    [("moisture", exactly(1.0), ""), ("total", UNKNOWN_MASS, ""), ("part", exactly(1.0), "nothing of this name")],
)
def test_a_reading_of_nothing_planned_is_left_alone(what: str, value: Band, part: str) -> None:
    assert compared(SHELL, what=what, value=value, part=part) is None


def test_a_reading_never_changes_the_plan() -> None:
    plain, read = solved(SHELL), solved(SHELL, measured=(reading("total", sigma(1000.0, 5.0)),))
    assert replace(read, compared=()) == plain
    assert read.compared[0].measured.standard_uncertainty == pytest.approx(5.0 / COVERAGE)
