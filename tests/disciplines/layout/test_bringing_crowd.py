"""A room so crowded that ways in take long to look for: the number of searches has an end, and it says so."""

from __future__ import annotations

from random import Random

import pytest

from boxwright.disciplines.layout import bringing
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import TODAY, rig_of


def crowd(count: int) -> str:
    luck = Random(4)
    done = "weight: 1, stage: all, done: yes"
    lines = "".join(
        f"  many-{number}: {{x: {luck.randint(0, 3800)}, side: left+{luck.randint(0, 1800)},"
        f" z: {luck.randint(0, 1800)}, size: 150 x 120 x 100, {done}}}\n"
        for number in range(count)
    )
    return lines + "  fridge: {x: 3000, side: left, z: 0, size: 600 x 600 x 800, weight: 20, stage: all}\n"


def test_in_a_crowded_room_few_searches_are_made_and_none_is_taken_for_a_way(monkeypatch: pytest.MonkeyPatch) -> None:
    """By hand, past 120 boxes a search counts 15 * 120 * 2 = 3,600 of 10,000: three are made, and what is under way."""
    searches = []
    found = bringing.way_in

    def counted(*given: object) -> object:
        searches.append(len(given[2]))  # type: ignore[arg-type]
        return found(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(bringing, "way_in", counted)
    told = study(read_rig(rig_of(crowd(120).strip() + "\n")).rig, TODAY).findings("tow")
    said = [one for one in told if one.where == "parts[fridge]" and one.code == "layout/brought-in"]
    assert 0 < len(searches) <= 5
    assert said, "a fridge that is not found to come in is told"
