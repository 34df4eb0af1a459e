"""Each limit and worst hour of air that a slip could turn round without a larger test noticing. By hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from boxwright.disciplines.air.findings import fresh_air
from boxwright.disciplines.air.result import Result
from boxwright.disciplines.air.solve import offers, solve
from boxwright.disciplines.air.sourced import A_SLEEPER, TOO_MUCH
from boxwright.finding import Finding
from boxwright.units import Band
from tests.disciplines.air.test_damp import METRIC, humid, night, worked
from tests.disciplines.air.test_vents import hole, room, standing, vent


def asleep(sleepers: int, area: float) -> Result:
    """Return a room of two vents of one area each."""
    own = room(vent("low", area), vent("high", area))
    offered = offers(own, standing("low", "high"), (hole("low", 0.1), hole("high", 1.8)), 1.0, sleepers, "sleep")
    return solve(own, offered, (), (), (), sleepers, "sleep", ("US",), date(2026, 1, 1))


def breath(result: Result, low: float, best: float, high: float) -> Finding | None:
    """Return what is said where carbon dioxide comes to so much by morning."""
    assert result.breathing is not None
    gathered = replace(result, breathing=replace(result.breathing, morning=Band(best, low, high)))
    return next(iter(fresh_air(gathered, METRIC)), None)


def test_five_thousand_stops_at_best_asks_at_most_and_lets_pass_at_the_limit() -> None:
    whole = asleep(2, 0.01)
    over, under = TOO_MUCH * 1.01, TOO_MUCH * 0.99
    stopped = breath(whole, under, over, over)
    asked = breath(whole, under, under, over)
    stale = breath(whole, under, under, TOO_MUCH)
    assert stopped is not None and stopped.kind == "stop" and stopped.margin is not None and stopped.margin < 0.0
    assert asked is not None and asked.kind == "unknown" and asked.could_stop
    assert stale is not None and stale.kind == "advice"
    assert breath(whole, 0.0005, 0.001, 0.0019) is None


def test_each_sleeper_has_a_vent_of_their_own() -> None:
    for sleepers in (1, 2, 3):
        just = A_SLEEPER * sleepers / 2.0
        assert [one.kind for one in fresh_air(asleep(sleepers, just * 0.99), METRIC)] == ["stop"]
        enough = list(fresh_air(asleep(sleepers, just * 1.01), METRIC))
        assert not [one for one in enough if "is no vent" in one.says]


def test_the_air_that_dries_is_that_of_the_worst_hour() -> None:
    given = night(0.0, 0.1)
    colder = replace(given, outside=(*given.outside[:4], 263.15, *given.outside[5:]))
    _, plain = worked(replace(given, outside=(263.15,) * 8))
    _, wet = worked(colder)
    assert wet.air == pytest.approx(plain.air, rel=1e-6), "outdoor air is as dry as its coldest hour leaves it"
    assert wet.limit == pytest.approx(plain.limit) and wet.coldest == pytest.approx(plain.coldest)
    assert humid(20.0, wet.limit) < humid(20.0, 0.6)
