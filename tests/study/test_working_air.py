"""The working of the air people breathe comes to the numbers that are shown."""

from __future__ import annotations

import pytest

from boxwright.study.slots import study
from boxwright.study.working import number_steps, numbers, working
from tests.study.demo import TODAY, clean


def test_the_steps_come_to_what_comes_in_and_what_it_comes_to() -> None:
    slot = next(one for one in study(clean(), TODAY).slots if one.use == "sleep")
    assert slot.air is not None and slot.air.breathing is not None
    cracks, vents, gathered = number_steps(slot, "carbon-dioxide")
    assert cracks.result() + vents.result() == pytest.approx(slot.air.breathing.flow.best)
    assert gathered.result() == pytest.approx(slot.air.breathing.morning.best)
    assert any("share = outdoors" in line for line in working(slot, "carbon-dioxide"))


def test_where_nobody_sleeps_there_is_no_such_working() -> None:
    slot = next(one for one in study(clean(), TODAY).slots if one.use == "leave")
    assert not {"outdoor-air", "carbon-dioxide"} & set(numbers(slot))
