"""A turn, a slide or a place written as a range: sure to strike only what is struck at both its ends; else it is asked.

By hand, in millimetres: the door of 700 is hinged at x = 2600 in the right wall at 1000 off the middle, and opens in.
"""

from __future__ import annotations

from math import pi

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.both_open import both_open
from boxwright.disciplines.layout.sweeps import Mover, Slip, Turn
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import DONE, TODAY, mirrored, rig_of, thing, told

STRIKES = "opening-strikes"
INWARD = "swing: {hinge: front, opens: in, to: %s}"


def said(parts: str, door: str, code: str = STRIKES) -> list[str]:
    text = rig_of(parts, door=door)
    found = told(text, "sleep")
    assert told(mirrored(text), "sleep") == found
    return sorted(kind for kind, one, _ in found if one == code)


@pytest.mark.parametrize(
    ("to", "kinds"),
    [
        ("90 deg", ["fix"]),
        ("80..100 deg", ["fix"]),
        ("10..120 deg", ["unknown"]),  # 65 at its middle strikes; 10 does not
        ("0..10 deg", []),
    ],
)
def test_a_leaf_strikes_for_certain_only_what_it_strikes_however_little_it_opens(to: str, kinds: list[str]) -> None:
    """A crate from 300 to 600 off the wall, 100 behind the hinge: met between 31 and 80 deg."""
    assert said(thing("crate", 2700, "right-300", 0, "300 x 300 x 600", DONE), INWARD % to) == kinds


@pytest.mark.parametrize(("side", "kinds"), [("right-350", ["fix"]), ("right-350..750", ["unknown"])])
def test_what_may_stand_beside_the_way_of_a_leaf_is_asked(side: str, kinds: list[str]) -> None:
    assert said(thing("crate", 2700, side, 0, "400 x 300 x 600", DONE), INWARD % "90 deg") == kinds


@pytest.mark.parametrize(("by", "kinds"), [(700, ["fix"]), ("600..800", ["fix"]), ("300..1400", ["unknown"])])
def test_a_drawer_strikes_for_certain_only_what_it_strikes_however_little_it_slides(
    by: object, kinds: list[str]
) -> None:
    """It begins 500 off the right wall, and a post stands 1000 to 1100 off it: 500 are between."""
    more = thing("drawer", 800, "right", 0, "500 x 500 x 300", f"{DONE}, slides: {{to: left, by: {by}}}")
    assert said(more + thing("post", 1000, "right-1000", 0, "100 x 100 x 500", DONE), INWARD % "90 deg") == kinds


@pytest.mark.parametrize(
    ("by", "kinds"), [(1600, ["fix"]), ("1550..1700", ["fix"]), ("1400..1700", ["unknown"]), ("300..1400", [])]
)
def test_a_wall_stops_for_certain_only_what_goes_so_far_at_least(by: object, kinds: list[str]) -> None:
    """1500 are before it to the left wall."""
    more = thing("drawer", 2100, "right", 0, "400 x 500 x 300", f"{DONE}, slides: {{to: left, by: {by}}}")
    assert said(more, "swing: {hinge: front, opens: out, to: 90 deg}") == kinds


@pytest.mark.parametrize(
    ("to", "kinds"),
    [("115 deg", ["fix"]), ("112..118 deg", ["fix"]), ("100..120 deg", ["unknown"]), ("40..80 deg", [])],
)
def test_a_wall_stops_for_certain_only_a_door_that_turns_so_far_at_least(to: str, kinds: list[str]) -> None:
    """Its hinge is 200 behind the front wall, it is 700 wide: it meets the wall at 90 + asin(200 / 700) = 106.6 deg."""
    more = thing("locker", 200, "right", 0, "700 x 300 x 500", f"{DONE}, swing: {{hinge: front, to: {to}}}")
    assert said(more, "swing: {hinge: front, opens: out, to: 90 deg}") == kinds


def test_where_nobody_wrote_how_far_a_right_angle_is_judged_and_no_wall_is_asked_about() -> None:
    crate = thing("crate", 2700, "right-300", 0, "300 x 300 x 600", DONE)
    assert said(crate, "swing: {hinge: front, opens: in}") == ["fix"]
    locker = thing("locker", 200, "right", 0, "700 x 300 x 500", f"{DONE}, swing: {{hinge: front}}")
    assert said(locker, "swing: {hinge: front, opens: out, to: 90 deg}") == []


@pytest.mark.parametrize(("side", "kinds"), [("right-100", ["fix"]), ("right-0..200", ["unknown"])])
def test_a_wall_stops_for_certain_only_what_reaches_it_wherever_it_stands(side: str, kinds: list[str]) -> None:
    """Its left side is 1300 to 1500 off the left wall, and it comes out by 1450."""
    more = thing("drawer", 2100, side, 0, "400 x 500 x 300", f"{DONE}, slides: {{to: left, by: 1450}}")
    assert said(more, "swing: {hinge: front, opens: out, to: 90 deg}") == kinds


@pytest.mark.parametrize(
    ("side", "kinds"),
    [
        ("left+500", ["stop"]),
        ("left+450..550", ["stop"]),
        ("left+100..900", ["unknown"]),  # beyond the bed of 700 it is in nobody's way
        ("left+700..900", []),
    ],
)
def test_a_lamp_in_the_way_of_a_bed_stops_it_only_wherever_it_may_be(side: str, kinds: list[str]) -> None:
    lamp = thing("lamp", 500, side, 900, "200 x 300 x 100", DONE)
    assert said(lamp, INWARD % "90 deg", "sleeping-place") == kinds


@pytest.mark.parametrize(
    ("place", "kinds"),
    [
        ("side: left, z: 1350", ["stop"]),
        ("side: left, z: 1310..1450", ["stop"]),
        ("side: left, z: 1250..1450", ["unknown"]),  # folded up it is 700 high, under a ceiling at 2000
        ("side: left, z: 1200..1290", []),
    ],
)
def test_the_ceiling_stops_a_bed_only_wherever_that_may_be(place: str, kinds: list[str]) -> None:
    text = rig_of(door=INWARD % "90 deg").replace("side: left, z: 600", place)
    for one in (text, mirrored(text)):
        assert sorted(kind for kind, code, _ in told(one, "sleep") if code == "sleeping-place") == kinds


@pytest.mark.parametrize(
    ("place", "kinds"),
    [("x: 100", ["stop"]), ("x: 90..110", ["stop"]), ("x: 100..700", ["unknown"]), ("x: 700..900", [])],
)
def test_a_bed_in_doubt_is_stopped_only_by_what_is_in_its_way_wherever_it_is(place: str, kinds: list[str]) -> None:
    """A lamp from 200 to 500, clear of a bed that begins at 600 or 700."""
    lamp = thing("lamp", 200, "left+300", 900, "300 x 300 x 100", DONE)
    text = rig_of(lamp).replace("bunk: {x: 100", f"bunk: {{{place}")
    for one in (text, mirrored(text)):
        assert sorted(kind for kind, code, _ in told(one, "sleep") if code == "sleeping-place") == kinds


@pytest.mark.parametrize(
    ("depth", "kinds"), [("300", ["stop"]), ("280..320", ["stop"]), ("120..480", ["unknown"]), ("120..180", [])]
)
def test_what_stands_where_a_bed_is_folded_up_to_is_met_for_certain_only_at_its_least(
    depth: str, kinds: list[str]
) -> None:
    """A rail 200 off the wall and 676 over its hinge: 705 from it, past the corner of the leaf of 700 as it turns."""
    rail = thing("rail", 500, "left+200", 1276, "200 x 40 x 22", DONE)
    text = rig_of(rail, bunk=f"folds: up, folded_depth: {depth}, hinge: {{edge: left}}").replace(
        "x 700 x 50", "x 700 x 20"
    )
    for one in (text, mirrored(text)):
        found = [kind for kind, code, _ in told(one, "sleep") if code == "sleeping-place"]
        assert found == kinds, depth


def leaf(turn: float, least: float, most: float) -> Mover:
    way = Turn((0, 1.0), (1, 1.0), (0.0, 0.0), ((0.0, 1.0), (0.0, 0.0)), (0.0, 1.0), turn, most, at_least=least)
    return Mover("parts[door]", "door", "door", (way,), turn)


@pytest.mark.parametrize(
    ("door", "sure"),
    [
        (leaf(pi / 2.0, pi / 2.0, pi / 2.0), "sure"),
        (leaf(pi / 2.0, 0.45 * pi, 0.55 * pi), "sure"),
        (leaf(pi / 2.0, 0.1, pi - 0.1), "perhaps"),  # at 0.1 it is under the way of the pin, and at pi - 0.1 too
    ],
)
def test_of_two_that_open_one_stops_the_other_for_certain_only_wherever_it_stands(door: Mover, sure: str) -> None:
    """A pin at y from 0.6 on, far in front of the door, slides across all it may turn through."""
    pin = Slip(Block((0.6, 0.6, 0.2), (0.7, 0.7, 0.3)), 0, -1.4, -1.4)
    found = list(both_open([door, Mover("parts[pin]", "pin", "slide", (pin,), 1.4)], frozenset()))
    assert [one.sure for one in found] == [sure]


def test_a_leaf_that_may_stand_on_either_side_of_a_half_turn_is_sure_of_nothing() -> None:
    """A board over all it may come to is met wherever it stands, and still only asked about."""
    first = Turn((0, 1.0), (1, 1.0), (0.0, 0.0), ((0.0, 1.0), (0.0, 0.0)), (0.0, 1.0), pi, pi, at_least=0.9 * pi)
    second = Turn((0, -1.0), (1, -1.0), (0.0, 0.0), ((0.0, 1.0), (0.0, 0.0)), (0.0, 1.0), 0.1, 0.2, pi, 0.0)
    door = Mover("parts[door]", "door", "leaf", (first, second), 1.05 * pi)
    board = Slip(Block((-2.0, -2.0, 1.2), (2.0, 2.0, 1.3)), 2, -1.7, -1.7)
    found = list(both_open([door, Mover("parts[pin]", "pin", "slide", (board,), 1.7)], frozenset()))
    assert [one.sure for one in found] == ["perhaps"]


def test_a_slide_that_may_fall_short_of_what_stands_open_is_not_sure() -> None:
    low = Mover("parts[low]", "low", "slide", (Slip(Block((0.0, 0.0, 0.0), (0.5, 0.5, 0.2)), 0, 0.6, 0.6),), 0.6)
    there = Block((1.2, 0.0, 0.1), (1.6, 0.5, 0.3))
    for least, sure in ((-0.5, "sure"), (-0.05, "perhaps")):
        other = Mover("parts[other]", "other", "slide", (Slip(there, 0, -0.5, -0.5, least),), 0.5)
        assert [one.sure for one in both_open([low, other], frozenset())] == [sure]


@pytest.mark.parametrize(
    ("x", "kinds"),
    [
        (1500, ["fix"]),
        ("1450..1550", ["fix"]),  # 350 to 450 of 500 in each other
        ("1000..1900", ["unknown"]),  # clear of it from 1001 back, and from 1900 on
        ("1000..1500", ["fix"]),  # 100 at least
        ("890..1500", ["unknown"]),
        ("700..900", []),
    ],
)
def test_two_things_want_one_space_for_certain_only_wherever_both_may_be(x: object, kinds: list[str]) -> None:
    """A chest from 1400 to 1900, and a box of 500 whose place is in doubt."""
    more = thing("chest", 1400, "right", 0, "500 x 500 x 500", DONE) + thing(
        "box", x, "right", 0, "500 x 400 x 400", DONE
    )
    assert said(more, "swing: {hinge: front, opens: out, to: 90 deg}", "one-space") == kinds


@pytest.mark.parametrize(
    ("x", "most"),
    [
        ("1200..1300", "100 mm"),  # 50 at its middle, 50 either way
        ("1240..1320", "60 mm"),
        ("1290..1310", "10 mm"),  # beside each other at its middle
    ],
)
def test_two_things_in_doubt_are_told_how_far_they_are_in_each_other_at_most(x: str, most: str) -> None:
    """The crate ends at 1300."""
    text = rig_of(thing("crate", 1000, "right", 0, "300 x 300 x 300") + thing("box", x, "right", 0, "300 x 300 x 300"))
    for one in (text, mirrored(text)):
        says = [it.says for it in study(read_rig(one).rig, TODAY).findings("tow") if it.code == "layout/one-space"]
        assert [words.partition(":")[0] for words in says] == [f"box and crate may overlap by up to {most} of length"]
