"""A vent with a thing close before it: no air is counted through it, and nobody sleeps by it unasked."""

from __future__ import annotations

import pytest

from boxwright.disciplines import air
from boxwright.disciplines.air.parts import PlannedVent
from boxwright.model.part import Frame
from boxwright.model.place import Place
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.study.warmth import covered_vents
from boxwright.units import Band, exactly
from tests.study.demo import CLEAN, TODAY, if_all_judge

BOX = "  {name}: {{x: {x}, side: {side}, z: {z}, size: 14 x 4 x 10, weight: 2, stage: shell, done: yes}}\n"


def asked_of_covered(low: str, high: str) -> tuple[str, list[str]]:
    """Return whether one may sleep with a box before each vent, so far off its wall, and what is asked of the vents."""
    boxes = BOX.format(name="crate", x=128, side=low, z=2) + BOX.format(name="rack", x=18, side=high, z=67)
    found = study(read_rig(CLEAN.replace("  shelf:", f"{boxes}  shelf:")).rig, TODAY)
    said = [one.says for one in found.findings("sleep") if one.code == "air/vent-not-open"]
    return if_all_judge(found, "sleep").answer, said


def test_a_vent_with_a_thing_close_before_it_counts_for_nothing_and_is_asked() -> None:
    """By hand: a hand's breadth is 150 mm, which is 5.9 in from the hole; the box is 14 in over 10."""
    assert asked_of_covered("left+8", "right-8") == ("go", [])
    answer, said = asked_of_covered("left", "right")
    assert answer != "go" and len(said) == 2
    assert "crate is close before vent-low; whether air passes nobody knows, so none is counted through it" in said
    _, (one,) = asked_of_covered("left", "right-8")
    assert "vent-low" in one
    _, (doubtful,) = asked_of_covered("left+3..9", "right-8")
    assert "vent-low" in doubtful


DOUBTED = Band(1.0, 0.9, 1.1, spread="interval")
SIZE = (0.2, 0.02, 0.2)
"""m: a hole of 200 x 200 mm in a left or a right wall."""


@pytest.mark.parametrize(
    ("along", "across", "covers"),
    [
        # Across it: a hand's breadth, 150 mm, from the nearest the hole may lie.
        ((0.9, 1.1), (1.24, 1.34), True),
        ((0.9, 1.1), (1.26, 1.36), False),
        ((0.9, 1.1), (0.66, 0.76), True),
        ((0.9, 1.1), (0.64, 0.74), False),
        # Along it: a hole of 200 mm at 1.0 +- 0.1 m may reach from 0.8 to 1.2 m; a quarter of it is 50 mm.
        ((1.14, 1.3), (1.0, 1.1), True),
        ((0.7, 0.86), (1.0, 1.1), True),
        ((1.16, 1.3), (1.0, 1.1), False),
        ((0.7, 0.84), (1.0, 1.1), False),
    ],
)
def test_a_thing_may_stand_close_before_a_hole_wherever_both_may_be(
    along: tuple[float, float], across: tuple[float, float], covers: bool
) -> None:
    """By hand, in metres: a quarter of the hole covered is covered."""
    (start, end), (near, far) = along, across
    place = Place(
        exactly((start + end) / 2.0), exactly((near + far) / 2.0), exactly(0.5), (end - start, far - near, 1.0)
    )
    crate = Frame("crate", "parts[crate]", place, exactly(1.0), None, "part", "", "yes")
    vent = PlannedVent("openings[vent]", "vent", Place(DOUBTED, DOUBTED, exactly(0.5), SIZE))
    found = covered_vents((crate,), air.Section(vents=(vent,)))
    assert found == ((("openings[vent]", "crate"),) if covers else ())
