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


BESIDE = "  bin: {x: %s, side: left+%s, z: 30, size: 8 x 8 x 8, weight: 2, stage: lined, done: yes}\n"
FRONT = ", wall: left, keep_clear: {front: 4}"


@pytest.mark.parametrize(
    ("written", "x", "side", "is_asked"),
    [
        (FRONT, "74", "0", True),  # 2 in behind its rear edge
        (FRONT, "50", "0", True),  # 2 in ahead of it
        (FRONT, "84", "0", False),  # 12 in behind it, over 300 mm
        (FRONT, "62", "17", False),  # 5 in before its face, where 4 are written
        (FRONT, "73", "14", True),  # aslant of its face, 1 in to the side and 2 before it
        (FRONT, "73", "17", False),
        (", wall: left, keep_clear: 4", "73", "0", False),  # on every side, and told where that is not there
        (", wall: left, keep_clear: {above: 20}", "74", "0", True),
        (", wall: left, keep_clear: {front: 4, above: 20}", "62", "17", False),
    ],
)
def test_the_sides_nobody_wrote_are_asked_though_another_is_written(
    written: str, x: str, side: str, is_asked: bool
) -> None:
    """The stove is from x = 60 to 72 at the left wall and 12 in deep; 300 mm are 11 13/16 in."""
    away = (("bed: {x: 30, ", "bed: {x: 95, "), ("box: {x: 100, ", "box: {x: 20, "))
    found = told(CODE, away, STOVE % written + BESIDE % (x, side))
    assert found == ([("unknown", "parts[stove]")] if is_asked else [])


def test_what_stands_in_room_that_is_written_is_told_and_not_asked_about_too() -> None:
    """A low box 2 in before the face of the stove, where 4 are written, is on no other side of it."""
    away = (("bed: {x: 30, ", "bed: {x: 95, "), ("box: {x: 100, ", "box: {x: 20, "))
    low = "  bin: {x: 62, side: left+14, z: 30, size: 8 x 8 x 2, weight: 2, stage: lined, done: yes}\n"
    assert told(CODE, away, STOVE % FRONT + low) == []
    assert ("fix", "parts[bin]") in told("layout/kept-clear", away, STOVE % FRONT + low)
