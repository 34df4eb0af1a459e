"""A vent with a thing close before it: no air is counted through it, and nobody sleeps by it unasked."""

from __future__ import annotations

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
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
