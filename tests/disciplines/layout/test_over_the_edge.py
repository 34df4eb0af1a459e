"""What stands on a thing with its middle beyond the edge tips off; what goes through no rear opening is told."""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import Edits, told, words

HELD, WAY = "layout/held-by-nothing", "layout/way-in"
KETTLE = "kettle: {rides_on: cabinet, x: +2, side: +2, z: +30, size: 6 x 6 x 6"


def kettle(x: object, side: object, z: str = "z: +30, ", more: str = "") -> Edits:
    return ((KETTLE, f"kettle: {{rides_on: cabinet, x: +{x}, side: +{side}, {z}size: 6 x 6 x 6{more}"),)


@pytest.mark.parametrize(
    ("x", "side", "kinds"),
    [
        (2, 2, []),
        (10, 2, []),  # 2 in of 6 are over the edge of 14
        (12, 2, ["fix"]),  # 4 in of 6
        (2, "-4", ["fix"]),
        (2, "-2", []),
        (2, 14, ["fix"]),
        ("10..11.5", 2, ["unknown"]),
        ("10..10.8", 2, []),
    ],
)
def test_a_kettle_two_thirds_over_the_edge_of_the_counter_tips_off(x: object, side: object, kinds: list[str]) -> None:
    edits = kettle(x, side)
    assert [kind for kind, _ in told(HELD, edits, "", "tow")] == kinds
    unwritten = kettle(x, side, z="")
    assert [kind for kind, _ in told(HELD, unwritten, "", "tow")] == kinds, "what is laid on top tips as well"


def test_how_far_its_middle_is_out_is_told_and_what_hangs_or_spans_does_not_tip() -> None:
    says = "the middle of kettle is 1 in beyond the edge of cabinet: it tips off"
    assert words(HELD, kettle(12, 2), "", "tow") == says
    assert told(HELD, kettle(12, 2, more=", wall: right"), "", "tow") == []
    stool = "  stool: {x: 134, side: right, z: %s, size: 6 x 16 x 10, weight: 4, stage: lined, done: yes}\n"
    crate = ("crate: {x: 134, side: centre", "crate: {x: 134, side: left+10")
    assert told(HELD, (*kettle(12, 2), crate), stool % 20, "tow") == []
    assert told(HELD, (*kettle(12, 2), crate), stool % 19, "tow") == [("fix", "parts[kettle]")]


def test_a_beam_across_two_stands_rests_on_both() -> None:
    post = "  post-{0}: {{x: {1}, side: left+10, z: 0, size: 4 x 4 x 10, weight: 4, stage: lined, done: yes}}\n"
    plank = "  plank: {rides_on: post-1, x: +0, side: +0, z: +10, size: 24 x 4 x 1, weight: 4, stage: lined}\n"
    one, other = post.format(1, 110), post.format(2, 130)
    assert told(HELD, (), one + other + plank, "tow") == []
    assert told(HELD, (), one + plank, "tow") == [("fix", "parts[plank]")]


# ------------------------------------------------------------------ rolled in through an opening that is too small


RAMP = "ramp: {wall: rear, side: centre, width: 60, z: 0, height: 70"


@pytest.mark.parametrize(
    ("ramp", "kinds"),
    [
        (RAMP, []),
        (RAMP.replace("width: 60", "width: 20"), []),
        (RAMP.replace("width: 60", "width: 19"), ["advice"]),
        (RAMP.replace("height: 70", "height: 20"), []),
        (RAMP.replace("height: 70", "height: 18"), ["advice"]),
    ],
)
def test_heavy_cargo_wider_or_higher_than_the_rear_opening_is_told(ramp: str, kinds: list[str]) -> None:
    beam = ("beam: {x: 156, side: centre, z: 60", "beam: {x: 156, side: centre, z: 72")
    assert [kind for kind, _ in told(WAY, ((RAMP, ramp), beam), "", "tow")] == kinds


def test_by_how_much_is_told_and_a_window_in_the_rear_is_no_way_to_roll_in() -> None:
    narrow = (RAMP, RAMP.replace("width: 60", "width: 17"))
    says = "crate cannot be rolled in from the rear: ramp is 3 in too narrow or too low"
    assert says in words(WAY, (narrow,), "", "tow")
    light = "  light: {wall: rear, side: left+4, width: 30, z: 30, height: 30, cut: yes, done: yes}\n  window:"
    both = (narrow, ("  window:", light))
    assert [kind for kind, _ in told(WAY, both, "", "tow")] == ["advice"]
