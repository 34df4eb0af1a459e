"""What is written of how well the builder's own door keeps heat makes of it no unit that came later."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.safety.test_findings import RIG

DOOR = next(line for line in RIG.splitlines() if line.startswith("  door:"))
OWN = DOOR.replace("stage: shell", "by: trailer builder")
SAID = OWN.replace("by: trailer builder", "by: trailer builder, unit: {U: 2.8 W/m2K}")
WEIGHED = OWN.replace("by: trailer builder", "by: trailer builder, unit: {weight: 12, U: 2.8 W/m2K}")


@pytest.mark.parametrize("use", ["tow", "sleep"])
def test_a_u_value_of_the_builders_door_asks_for_no_weight_and_no_clear_size(use: str) -> None:
    answers = []
    for line in (OWN, SAID):
        reading = read_rig(RIG.replace(DOOR, line))
        assert reading.problems == ()
        found = study(reading.rig, date(2026, 6, 1)).findings(use)
        answers.append({(one.code, one.where, one.kind) for one in found if one.code != "heat/hole-not-known"})
    assert answers[0] == answers[1]


def test_a_weight_that_is_written_counts() -> None:
    gross = []
    for line in (OWN, SAID, WEIGHED):
        slot = study(read_rig(RIG.replace(DOOR, line)).rig, date(2026, 6, 1)).asked_slots("sleep", "night")[0]
        assert slot.weight is not None
        gross.append(slot.weight.gross.band.best)
    assert gross[0] == gross[1] and gross[2] == pytest.approx(gross[0] + 12.0)
