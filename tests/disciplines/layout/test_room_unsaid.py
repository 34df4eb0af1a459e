"""How much room a heater, a flame or a panel of the mains wants is asked where nobody wrote it and a thing is near.

The distances are what the fitting table holds: 300, 600 and 750 mm (common practice, no source). Laid out by hand.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import said, told, words

CODE = "layout/room-unsaid"
IN = "weight: 2, stage: lined, done: yes"
STOVE = f"  stove: {{x: 60, side: left, z: 30, size: 12 x 12 x 3, {IN}%s}}\n"
SHELF = f"  shelf: {{x: 62, side: left, z: %s, size: 8 x 8 x 1, {IN}}}\n"
MAINS = f"  mains: {{x: 112, side: left, z: 40, size: 16 x 4 x 16, {IN}, rcd: %s%s}}\n"
BEFORE = "  bin: {x: 115, side: left+%s, z: 0, size: 10 x 10 x 20, weight: 2, kind: cargo}\n"


@pytest.mark.parametrize(("up", "is_asked"), [("34", True), ("56", True), ("57", False)])
def test_a_shelf_over_a_flame_is_asked_about_up_to_600_mm(up: str, is_asked: bool) -> None:
    """The stove ends at 33 in; 600 mm over it are 56 5/8 in."""
    away = (("bed: {x: 30, ", "bed: {x: 82, "),)
    assert told(CODE, away, STOVE % "" + SHELF % up) == ([("unknown", "parts[stove]")] if is_asked else [])


@pytest.mark.parametrize("more", [", keep_clear: {above: 20}", ", burns: nothing", ", burns: induction"])
def test_what_is_written_or_does_not_burn_is_not_asked(more: str) -> None:
    assert told(CODE, (("bed: {x: 30, ", "bed: {x: 82, "),), STOVE % more + SHELF % "55") == []


@pytest.mark.parametrize("burns", ["propane", "unknown", "wood"])
def test_a_flame_by_what_it_burns(burns: str) -> None:
    other = STOVE.replace("stove", "burner") % f", burns: {burns}"
    found = [one for one in said((("bed: {x: 30, ", "bed: {x: 82, "),), other + SHELF % "34") if one.code == CODE]
    assert [(one.kind, one.could_stop, one.where) for one in found] == [("unknown", True, "parts[burner]")]
    assert "which burns with a flame" in found[0].says


@pytest.mark.parametrize(("off", "is_asked"), [("5", True), ("33", True), ("34", False)])
def test_before_a_panel_of_the_mains_is_asked_about_up_to_750_mm(off: str, is_asked: bool) -> None:
    """The panel ends 4 in off the wall; 750 mm before it end at 33 1/2 in."""
    out = (("box: {x: 100, ", "box: {x: 20, "), ("heater: {x: 125, ", "heater: {x: 140, "))
    found = told(CODE, out, MAINS % ("yes", "") + BEFORE % off)
    assert found == ([("unknown", "parts[mains]")] if is_asked else [])
    assert told(CODE, out, MAINS % ("no", "") + BEFORE % off) == found, "it is a panel whether or not one is in it"
    named = MAINS.replace("mains:", "breaker-panel:").replace(", rcd: %s", "") % "" + BEFORE % off
    assert told(CODE, out, named) == ([("unknown", "parts[breaker-panel]")] if is_asked else [])
    assert told(CODE, out, MAINS % ("yes", ", keep_clear: {front: 20}") + BEFORE % off) == []


def test_what_carries_it_and_what_lies_in_the_same_box_is_not_near_to_it() -> None:
    on = STOVE.replace("x: 60, side: left, z: 30", "rides_on: cabinet, x: +1, side: +8, z: +30").replace(
        "12 x 12", "6 x 6"
    )
    assert told(CODE, (), on % "") == [("unknown", "parts[stove]")]
    assert words(CODE, (), on % "").startswith("kettle stands against stove")


def test_the_nearest_of_several_things_is_named() -> None:
    both = SHELF % "50" + SHELF.replace("shelf", "rail") % "40"
    away = (("bed: {x: 30, ", "bed: {x: 90, "),)
    assert words(CODE, away, STOVE % "" + both).startswith("rail is 7 in from stove")
