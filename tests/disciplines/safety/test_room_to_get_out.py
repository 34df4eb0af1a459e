"""Widths, heights and distances of the ways out at their limits, by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from boxwright.disciplines.safety.findings import way_blocked
from boxwright.disciplines.safety.solve import room_between
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import HeaderUnits, exactly
from tests.disciplines.safety.test_ways import result
from tests.study.demo import RIGS


@pytest.mark.parametrize(("wide", "count"), [(0.449, 2), (0.451, 0)])
def test_a_way_is_asked_about_below_eighteen_inches(wide: float, count: int) -> None:
    own = result()
    aisles = tuple(replace(one, width=exactly(wide), height=exactly(0.9)) for one in own.aisles or ())
    found = list(way_blocked(replace(own, aisles=aisles), HeaderUnits()))
    assert [one.kind for one in found] == ["unknown"] * count


def test_two_boxes_are_as_far_apart_as_sideways_and_in_height_together() -> None:
    low = (exactly(0.0), exactly(0.0), exactly(0.0))
    assert room_between(low, (exactly(3.0), exactly(0.0), exactly(4.0))) == pytest.approx(5.0)
    assert room_between((exactly(3.0), exactly(0.0), exactly(4.0)), low) == pytest.approx(5.0)


def test_a_sill_counts_from_the_finished_floor_not_from_the_deck() -> None:
    rig = read_rig((RIGS / "whimbrel.yaml").read_bytes()).rig
    own = study(rig, date(2026, 6, 1), stage=10, ticked=False).slots[0].safety
    assert own is not None and own.floor > 0.0
    sills = [(one.sill, one.way.place.low_edge(2)) for one in own.exits if one.sill is not None]
    assert sills and all(sill.best == pytest.approx(under.best - own.floor) for sill, under in sills)
