"""Each number of ``tables/room.toml`` by an example on either side of it, nearer than a tenth of it. By hand, in mm.

The room of the small rig is 4000 by 2000 by 2000 between bare studs; its shell reaches 40 farther, its deck is 300 over
the ground.
"""

from __future__ import annotations

from datetime import date
from itertools import pairwise
from math import radians, tan

import pytest

from boxwright.disciplines.layout.bodies import body_of
from boxwright.disciplines.layout.canopy import set_up
from boxwright.disciplines.layout.parts import Facet, Fitted, Reach
from boxwright.disciplines.layout.result import Brought
from boxwright.model.place import Place
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, exactly
from tests.disciplines.layout.small_rigs import DONE, rig_of, told
from tests.disciplines.layout.small_rigs import thing as p

HOLE = "hole: {wall: left, x: 2500, width: %s, z: %s, height: %s, stage: all, cut: yes, done: yes%s}"


def codes(text: str, use: str = "tow") -> set[tuple[str, str]]:
    return {(kind, code) for kind, code, _ in told(text, "tow" if use == "tow" else "sleep")}


@pytest.mark.parametrize(("side", "is_asked"), [(295, False), (305, True)])
def test_leaf_a_hole_so_wide_and_high_has_something_in_it_that_opens(side: int, is_asked: bool) -> None:
    assert (("unknown", "opening-unsaid") in codes(rig_of(openings=HOLE % (side, 900, side, "")), "sleep")) is is_asked


@pytest.mark.parametrize(("beyond", "is_told"), [(9.7, False), (10.3, True)])
def test_through_a_thing_so_far_beyond_a_stud_face_goes_through_the_wall(beyond: float, is_told: bool) -> None:
    """It is 700 long, which is more than a bay."""
    text = rig_of(p("rail", 2200, f"right+{beyond}", 1500, "700 x 100 x 100"))
    assert (("fix", "through-shell") in codes(text)) is is_told


@pytest.mark.parametrize(("off", "is_covered"), [(145, True), (155, False)])
def test_wall_reach_a_folded_thing_covers_a_window_it_stands_so_near_to(off: int, is_covered: bool) -> None:
    window = "win: {wall: left, x: 800, width: 400, z: 900, height: 400, cut: yes, done: yes, stage: all, unit: "
    window += "{weight: 4, swing: {hinge: top, opens: out, to: 60 deg}}}\n"
    text = rig_of(openings=window).replace("bunk: {x: 100, side: left,", f"bunk: {{x: 100, side: left+{off},")
    assert (("advice", "window-covered") in codes(text)) is is_covered


@pytest.mark.parametrize(("off", "is_asked"), [(145, False), (155, True)])
def test_hinge_reach_a_bed_is_hinged_so_near_to_its_wall(off: int, is_asked: bool) -> None:
    text = rig_of().replace("bunk: {x: 100, side: left,", f"bunk: {{x: 100, side: left+{off},")
    assert (("unknown", "opening-unsaid") in codes(text, "sleep")) is is_asked


@pytest.mark.parametrize(("long", "is_asked"), [(970, False), (930, True)])
def test_hinged_what_holds_a_bed_in_the_room_reaches_over_so_much_of_its_hinge(long: int, is_asked: bool) -> None:
    """The bunk is 1900 long."""
    text = rig_of(p("rail", 900, "left+450", 600, f"{long} x 40 x 60")).replace(
        "side: left, z: 600", "side: left+500, z: 600"
    )
    assert (("unknown", "opening-unsaid") in codes(text, "sleep")) is is_asked


@pytest.mark.parametrize(("under", "is_told"), [(48, False), (52, True)])
def test_canopy_its_slope_and_its_height_may_differ_so_much(under: int, is_told: bool) -> None:
    """The top of its roller is 1900 + 60 over the deck and 300 more over the ground; it falls by 1000 tan 10 deg."""
    edge = 2260.0 - 1000.0 * tan(radians(10.0)) - under
    out = f"{DONE}, out: {{reach: 1000, pitch: 10 deg, height: {edge:.3f}}}"
    text = rig_of(p("awning", 1000, "right+100", 1900, "900 x 60 x 60", out))
    assert (("fix", "canopy") in codes(text, "sleep")) is is_told


def test_canopy_sheet_a_slope_is_held_by_boxes_so_high() -> None:
    """It falls by 200 over its reach: 40 boxes, each 5 lower than the last."""
    place = Place(exactly(1.0), exactly(1.1), exactly(1.9), (0.9, 0.06, 0.06))
    pitch = exactly(0.19739555984988078)  # atan 0.2
    facet = Facet(out=Reach.model_construct(reach=exactly(1.0), pitch=pitch, arms=(), height=None))
    one = Fitted("parts[awning]", "awning", "", place, True, facet=facet)
    found, _ = set_up(one, body_of(one, "yes", "work"), Band(0.0, 0.0, 0.0, known=False))
    sheet = [block for block in found[0].blocks if 0.0 < block.high[1] - block.low[1] < 0.03]  # the roller is 0.06 wide
    assert len(sheet) in {39, 40}
    steps = [near.high[2] - far.high[2] for near, far in pairwise(sheet)]
    assert steps == pytest.approx([0.005] * len(steps))


@pytest.mark.parametrize(("high", "kind"), [(78, "unknown"), (82, "unknown"), (88, "fix"), (92, "fix")])
def test_roof_lid_a_lid_lies_at_most_so_high_over_the_bows(high: int, kind: str) -> None:
    """Laid back by a half turn it lies over a box before it, wherever it hangs: on one of 80 and the play of 5."""
    hatch = "hatch: {wall: roof, x: 1500, width: 600, across: 600, side: centre, stage: all, cut: yes, done: yes, "
    hatch += "egress: no, swing: {hinge: front, opens: up, to: 180 deg}}"
    text = rig_of(p("box", 1200, "centre", "bows", f"200 x 200 x {high}"), hatch)
    assert {one for one, code in codes(text, "sleep") if code == "opening-strikes"} == {kind}


@pytest.mark.parametrize(("off", "is_struck"), [(38, True), (41, False)])
def test_sliding_leaf_one_outside_takes_so_much(off: int, is_struck: bool) -> None:
    text = rig_of(
        p("lamp", 2200, f"right+{40 + off + 60}", 500, "80 x 60 x 80"),
        door="slides: {to: front, by: 700, runs: outside}",
    )
    assert any(code == "opening-strikes" for _, code in codes(text, "sleep")) is is_struck


@pytest.mark.parametrize(("deep", "kind"), [(4.8, "advice"), (5.2, "fix")])
def test_play_two_things_in_each_other_by_no_more_may_pass(deep: float, kind: str) -> None:
    text = rig_of(p("a", 2300, "right", 0, "300 x 300 x 300") + p("b", 2600 - deep, "right", 0, "300 x 300 x 300"))
    assert codes(text) == {(kind, "one-space")}


@pytest.mark.parametrize(("low", "high", "kinds"), [(1985, 1900, set()), (1975, 1900, {"fix"})])
def test_working_height_room_before_a_panel_is_so_high(low: int, high: int, kinds: set[str]) -> None:
    """What hangs lower over where one stands is in the way; the panel itself ends at 1900."""
    text = rig_of(
        p("panel", 2200, "left", high - 400, "300 x 100 x 400", f"{DONE}, keep_clear: {{front: 700}}")
        + p("lamp", 2250, "left+400", low, "100 x 100 x 10")
    )
    assert {kind for kind, code in codes(text) if code == "kept-clear"} == kinds


def brought(parts: str, openings: str, walls: str = "", long: int = 4000) -> tuple[Brought, ...]:
    """Return what is not found to come in by these openings alone into a room so long."""
    known = rig_of(parts, openings).replace("length: 4000", f"length: {long}").replace("4080", str(long + 80))
    lines = [line for line in known.splitlines() if not line.strip().startswith(("door: {", "ramp: {"))]
    text = "\n".join(lines).replace("parts:", f"{walls}parts:", 1)
    text = text.replace("stages:\n  all: {what: all}", "stages:\n  all: {what: all}\n  later: {what: later}")
    read = read_rig(text)
    assert [one.says for one in read.problems if one.kind == "problem"] == []
    found = study(read.rig, date(2026, 6, 1)).slots[0].layout
    assert found is not None
    return found.brought


SWUNG = ", swing: {hinge: top, opens: out, to: 90 deg}"


@pytest.mark.parametrize(("sill", "words"), [(595, []), (605, ["no hole"])])
def test_carried_over_nothing_big_is_brought_in_over_a_sill_so_high(sill: int, words: list[str]) -> None:
    chest = p("chest", 2500, "right", 0, "400 x 400 x 400", "weight: 20, stage: later")
    assert [one.word for one in brought(chest, HOLE % (900, sill, 900, SWUNG))] == words


LINER = "walls:\n  all:\n    layers:\n      liner: {of: ply, weight: 30, stage: later}\n"


REAR = HOLE.replace("wall: left, x: 2500", "wall: rear, side: centre")


@pytest.mark.parametrize(("wide", "words"), [(1225, []), (1215, ["sheet"])])
def test_sheet_wide_a_whole_sheet_comes_in_flat_through_a_slot(wide: int, words: list[str]) -> None:
    """The slot is 310 high, and the room is longer than a sheet is."""
    assert [one.word for one in brought("", REAR % (wide, 100, 310, SWUNG), LINER)] == words


@pytest.mark.parametrize(("long", "words"), [(2450, []), (2430, ["sheet"])])
def test_sheet_long_a_whole_sheet_wants_a_room_as_long(long: int, words: list[str]) -> None:
    """Only along the trailer, through a slot in the rear: across it and up, 2000 are too little."""
    assert [one.word for one in brought("", REAR % (1300, 100, 310, SWUNG), LINER, long)] == words


def test_sheet_thick_where_nobody_wrote_it() -> None:
    (told_of,) = brought("", HOLE % (900, 100, 310, SWUNG), LINER)
    assert told_of.size == pytest.approx((2.44, 1.22, 0.018))


@pytest.mark.parametrize(("z", "is_told"), [(1262, False), (1258, True)])
def test_covered_so_much_of_a_window_is_said(z: int, is_told: bool) -> None:
    """Folded up the bunk stands from 600 to 1300: 38 or 42 of a window of 400."""
    window = f"win: {{wall: left, x: 800, width: 400, z: {z}, height: 400, cut: yes, done: yes, stage: all, unit: "
    window += "{weight: 4, swing: {hinge: top, opens: out, to: 60 deg}}}\n"
    assert (("advice", "window-covered") in codes(rig_of(openings=window))) is is_told


@pytest.mark.parametrize(("wide", "is_told"), [(76.5, False), (81.0, True)])
def test_hidden_so_much_of_what_something_looks_at_is_said(wide: float, is_told: bool) -> None:
    """Of 90 deg, 9 are 2 atan(39.3 / 500): what is 78.7 wide 500 before it."""
    eye = p("eye", 4060, "centre", 1500, "40 x 40 x 40", f"{DONE}, sees: {{toward: rear, angle: 90 deg}}")
    text = rig_of(eye + p("rack", 4600, "centre", 1400, f"300 x {wide} x 300"))
    assert any(code == "sight-hidden" for _, code in codes(text)) is is_told
