"""Each limit of the room, just under it and just over it: a number changed in the table is told here. By hand."""

from __future__ import annotations

import pytest

from tests.disciplines.layout.small_rigs import DONE, rig_of, told
from tests.disciplines.layout.small_rigs import thing as p

SLID = "slides: {to: front, by: 700, runs: outside}"


@pytest.mark.parametrize(("deep", "kind"), [(4, "advice"), (6, "fix")])
def test_two_things_may_be_in_each_other_by_the_play_of_linings(deep: int, kind: str) -> None:
    text = rig_of(p("a", 2300, "right", 0, "300 x 300 x 300") + p("b", 2600 - deep, "right", 0, "300 x 300 x 300"))
    assert {(one, code) for one, code, _ in told(text, "tow")} == {(kind, "one-space")}


@pytest.mark.parametrize(("off", "is_struck"), [(25, True), (33, True), (42, False)])
def test_a_leaf_that_slides_outside_takes_forty_millimetres(off: int, is_struck: bool) -> None:
    """The outer face is 40 mm beyond the inner one; ``off`` is from there to the near face of the lamp."""
    text = rig_of(p("lamp", 2200, f"right+{40 + off + 60}", 500, "80 x 60 x 80"), door=SLID)
    assert any(code == "opening-strikes" for _, code, _ in told(text, "sleep")) is is_struck


@pytest.mark.parametrize(("weight", "is_rolled"), [(39, False), (41, True), (48, True)])
def test_from_forty_kilograms_on_cargo_is_rolled_and_not_lifted_over_a_beam(weight: int, is_rolled: bool) -> None:
    engine = p("engine", 2200, "centre", 0, "600 x 500 x 700", f"weight: {weight}, kind: cargo")
    text = rig_of(engine + p("beam", 3400, "centre", 0, "100 x 2000 x 150"))
    assert (("advice", "way-in", "parts[engine]") in told(text, "tow")) is is_rolled


@pytest.mark.parametrize(("off", "is_covered"), [(90, True), (200, False)])
def test_a_folded_bunk_covers_the_window_it_is_within_reach_of(off: int, is_covered: bool) -> None:
    window = "win: {wall: left, x: 800, width: 400, z: 900, height: 400, cut: yes, done: yes, stage: all, unit: "
    window += "{weight: 4, swing: {hinge: top, opens: out, to: 60 deg}}}\n"
    text = rig_of(openings=window).replace("bunk: {x: 100, side: left,", f"bunk: {{x: 100, side: left+{off},")
    assert any(code == "window-covered" for _, code, _ in told(text, "tow")) is is_covered


@pytest.mark.parametrize("off", [-4, 0, 4])
def test_a_thing_a_little_in_its_wall_still_wants_its_room_there(off: int) -> None:
    text = rig_of(p("heater", 2200, f"right{off:+d}", 500, "300 x 200 x 200", f"{DONE}, keep_clear: 100"))
    assert any(code == "gap-small" for _, code, _ in told(text, "tow"))
