"""Which one value nobody wrote a wet end hangs on: told at both its ends, each held against the rig with it written."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from boxwright.disciplines.air.findings.damp import MUCH_LESS, _asked
from boxwright.disciplines.air.result import DampNight, Settled, WetPlace
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.air.test_findings import JUDGED_ON, edited
from tests.disciplines.heat.test_findings import RIG as HEATED

COLD = ("coldest_design: 14 C", "coldest_design: -3 C")
STOVE = "  stove: {x: 3000, side: left, z: 900, size: 300 x 300 x 100, weight: 4, stage: shell, done: yes"
STOVE += ", burns: propane"
UNSAID, NEVER = (("  # one more", STOVE + end) for end in ("}", ", cooks: 0 h}"))
WITH_U = ("unit: {weight: 10, swing", "unit: {weight: 10, U: 1.5 W/m2K, swing")


@cache
def slept(*edits: tuple[str, str]) -> tuple[DampNight, tuple[Finding, ...]]:
    """Return the night of the small rig and what is said of what stands wet in it."""
    (slot, *_) = study(read_rig(edited(*edits)).rig, JUDGED_ON).asked_slots("sleep", "night")
    assert slot.air is not None
    return slot.air.nights[0], tuple(one for one in slot.findings if one.code == "air/condensation")


def settled(wet: WetPlace, key: str) -> Settled:
    """Return what one value makes of a place."""
    return next(one for one in wet.settled if one.key == key)


def test_nothing_cooked_makes_it_what_it_is_where_that_is_written() -> None:
    """The wet end without cooking is the wet end of the rig that says so, place by place."""
    asked, told = slept(COLD, UNSAID)[0], slept(COLD, NEVER)[0]
    seen = 0
    for one, same in zip(asked.wet, told.wet, strict=True):
        for each in one.settled:
            if each.key == "cooks":
                seen += 1
                assert each.of == "parts[stove]"
                assert each.over == pytest.approx(same.wettest.over), one.name
                assert each.over <= one.wettest.over + 1e-12
    assert seen > 3


def test_what_fills_a_hole_at_its_best_leaves_less_on_it_in_a_heated_room() -> None:
    """By its own kind: the window of a heated rig, with what it keeps in written and not."""
    told = HEATED.replace("coldest_design: -5 C", "coldest_design: -15 C")
    asked, written = (warm_window(text) for text in (told.replace(", U: 2.8 W/m2K", ""), told))
    best = settled(asked, "U")
    assert best.of == "openings[window]" and all(one.key != "U" for one in written.settled)
    assert best.over < MUCH_LESS * asked.wettest.over, "the least of what it may hold by its key alone"
    better = warm_window(told.replace("U: 2.8", "U: 1.2"))
    assert better.wettest.over <= best.over + 1e-9, "one that is better than its kind is drier yet"


def warm_window(text: str) -> WetPlace:
    """Return the window of a heated rig in its night."""
    (slot, *_) = study(read_rig(text).rig, JUDGED_ON).asked_slots("sleep", "night")
    assert slot.air is not None
    return next(one for one in slot.air.nights[0].wet if one.cold.of == "openings[window]")


def test_where_all_is_written_nothing_is_asked() -> None:
    for wet in slept(COLD, NEVER, WITH_U)[0].wet:
        assert all(one.key != "cooks" and one.of != "openings[window]" for one in wet.settled)


def test_the_finding_names_the_value_and_both_its_ends() -> None:
    _, found = slept(COLD, UNSAID, WITH_U)
    told = [one for one in found if "nobody wrote how long stove cooks: with nothing cooked it is" in one.says]
    assert told and all(one.kind == "unknown" for one in told)
    assert all("at the most, with 1 h" in one.says and one.act.startswith("Write how long of an") for one in told)
    assert all("parts[stove]" in one.because for one in told)
    _, silent = slept(COLD, NEVER, WITH_U)
    assert all("cooks" not in one.says for one in silent)


def test_of_two_values_the_one_that_takes_more_of_it_away_is_asked_for() -> None:
    wet = slept(COLD, UNSAID)[0].wet[0]
    wettest = wet.wettest.over
    little, much = Settled("cooks", "parts[stove]", 0.7 * wettest), Settled("U", "openings[window]", 0.2 * wettest)
    for order in ((little, much), (much, little)):
        assert _asked(replace(wet, settled=order)) == much
    assert _asked(replace(wet, settled=(Settled("U", "openings[window]", 0.9 * wettest),))) is None
    assert _asked(replace(wet, settled=())) is None
