"""Where openings would cut nothing, what is told of them, and how the places in it are counted."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, rig_text, window

INCH = 0.0254
INCHES = HeaderUnits(length="in")


def said(text: str, code: str, kind: str = "fix") -> list[Finding]:
    return [one for one in findings(framed(text), INCHES) if (one.code, one.kind) == (f"frame/{code}", kind)]


def win(more: str, wall: str = "left", name: str = "window") -> str:
    return f"{name}: {{wall: {wall}, {more}}}"


def test_no_place_is_offered_across_a_stud_that_two_tapes_put_in_two_places() -> None:
    """L4 was read at 64 and, later, at 76: from 63 to 77 nothing is offered, though its best place leaves a bay."""
    tapes = ("a: {date: 2026-01-02, what: tape, studs: left, values: {2: 32, 3: 48, 4: 64, 5: 80}}",
             "b: {date: 2026-02-02, what: tape, studs: left, values: {4: 76}}")  # fmt: skip
    hole = window(framed(rig_text((win("x: 44, width: 14, z: 30, height: 10"),), measured=tapes)))
    for place in (hole.lower_place, hole.higher_place):
        if place is not None:
            assert place.low + 14 * INCH <= 63.5 * INCH or place.low >= 76.5 * INCH
            assert "L4" not in place.between or place.low >= 76.5 * INCH or place.low + 14 * INCH <= 63.5 * INCH
    assert hole.higher_place is not None and hole.higher_place.between == ("L3", "L4")
    loose = window(framed(rig_text((win("x: 70, width: 4, z: 30, height: 10"),), measured=tapes)))
    assert loose.lower_place is None or loose.lower_place.low + 4 * INCH <= 63.5 * INCH


def test_a_contested_stud_takes_the_bays_it_reaches_over() -> None:
    """L4 may stand at 64 or at 90: between L5 at 80 and L6 at 96 nothing is free either."""
    tapes = ("a: {date: 2026-01-02, what: tape, studs: left, values: {4: 64, 5: 80, 6: 96, 7: 112}}",
             "b: {date: 2026-02-02, what: tape, studs: left, values: {4: 90}}")  # fmt: skip
    place = window(framed(rig_text((win("x: 76, width: 14, z: 30, height: 10"),), measured=tapes))).higher_place
    assert place is not None and place.between == ("L6", "L7")


def test_a_hole_of_the_floor_takes_its_own_length_out_of_a_main_rail() -> None:
    text = rig_text((win("x: 20, width: 10, across: 10, side: centre+25", "floor"),))
    text = text.replace("  skin:", "  floor: {cross_members: 16, rails: 60}\n  skin:")
    (rail,) = [one for one in framed(text).members if one.name == "main rail right"]
    assert rail.pieces == (
        (pytest.approx(0.0), pytest.approx(20 * INCH)), (pytest.approx(30 * INCH), pytest.approx(160 * INCH))
    )  # fmt: skip
    (told,) = said(text, "opening-cuts-member")
    assert "main rail right at 70 in" in told.says  # 30 right of the middle of a floor 80 wide


def test_a_place_under_a_bow_is_one_where_the_upper_corners_are_under_it() -> None:
    """By hand: an arch 6 high over 80 has a radius of 136 1/3; 76 up it reaches 23 1/4 in to each side.

    Half a stud and its doubt stand in the middle: 22 1/2 in are left on each side there, and much more 66 up.
    """
    for width, has_place in (("22 1/4", True), ("23", False)):
        hole = window(framed(arched(win(f"side: centre, width: {width}, z: 66, height: 10", "rear"))))
        assert [one.name for one in hole.members_cut] == ["B0"]
        for place in (hole.lower_place, hole.higher_place):
            assert (place is not None) == has_place
            if place is not None:
                assert place.low >= -23.3 * INCH and place.low + 22.25 * INCH <= 23.3 * INCH


def arched(opening: str) -> str:
    text = rig_text((opening,))
    text = text.replace("every: 16, first: 0}\n  skin", "every: 16, first: 0, shape: arched, rise: 6}\n  skin")
    return text.replace("every: 16, first: 0}\n  bows", "every: 16, first: 0, rear: {every: 40, first: 40}}\n  bows")


def test_an_opening_below_is_not_in_the_way() -> None:
    lines = (win("x: 60, width: 10, z: 40, height: 10"), win("x: 65, width: 14, z: 5, height: 10", name="low"))
    place = window(framed(rig_text(lines))).higher_place
    assert place is not None and place.between == ("L4", "L5") and place.low < 66 * INCH


def test_a_unit_of_doubtful_range_is_asked_about_at_its_narrow_end() -> None:
    walls = "walls:\n  left: {layers: {liner: {of: ply, thick: 1/4, stage: shell}}}\nopenings:"
    for highest, fits in (("1 7/8", "yes"), ("1 3/4..1 7/8", "unknown"), ("1 3/4", "no")):
        line = win(f"x: 100, width: 10, z: 30, height: 12, unit: {{clamps: {{lowest: 1, highest: {highest}}}}}")
        (fit,) = window(framed(rig_text((line,)).replace("openings:", walls))).depth
        assert fit.fits == fits


def test_on_a_slanted_wall_an_opening_is_read_along_it() -> None:
    """By hand: 24 back and 32 across is 40 in of wall (3-4-5): 16 in across from its corner is 20 in along it."""
    for place in ("side: studs-left+16", "x: -18"):
        line = win(f"{place}, width: 10, z: 30, height: 12", "nose-left")
        hole = window(framed(rig_text((line,)).replace("  skin:", "  nose: {length: 24, tip: 16}\n  skin:")))
        assert hole.is_placed and not hole.is_outside_wall
        assert (hole.low / INCH, hole.high / INCH) == pytest.approx((20.0, 30.0))


@pytest.mark.parametrize(("x", "by"), [("99.3", ""), ("98.99", "1/2 in"), ("112.51", "")])
def test_a_slide_is_never_told_too_short(x: str, by: str) -> None:
    """What is told is typed again, and then nothing is cut."""
    tapes = ("a: {date: 2026-01-02, what: tape, studs: left, values: {5: 80, 6: 96.03, 7: 112.03, 8: 128}}",)
    text = rig_text((win(f"x: {x}, width: 13.4, z: 30, height: 10"),), measured=tapes)
    for told in said(text, "opening-cuts-member"):
        place = told.says.split("cut none at ")[1].split(" in (")[0]
        again = rig_text((win(f"x: {place}, width: 13.4, z: 30, height: 10"),), measured=tapes)
        assert not any(one.overlap.best > 0.0 for one in window(framed(again)).members_cut)


def test_a_hole_that_is_cut_is_not_told_to_slide_and_one_longer_than_its_wall_not_to_be_framed() -> None:
    (cut,) = said(rig_text((win("x: 44, width: 10, z: 30, height: 10, cut: yes"),)), "opening-cuts-member")
    assert "Slide" not in cut.act and "cut already: it needs a header between L2 and L4" in cut.says
    (long,) = said(rig_text((win("x: 2, width: 170, z: 30, height: 10"),)), "opening-cuts-member")
    assert "header" not in long.says + long.act and "longer than its wall" in long.says


def test_what_is_told_of_end_walls_counts_from_the_left_stud_face() -> None:
    rear = win("side: studs-left+74, width: 10, z: 30, height: 10", "rear")
    (told,) = said(rig_text((rear,)), "opening-outside-wall")
    assert "runs 74 in to 84 in along" in told.says and "from 0 in to 80 in" in told.says
    (fan,) = said(rig_text((win("x: 20, width: 10, across: 10, side: studs-left+74", "roof"),)), "opening-outside-wall")
    assert "74 in to 84 in across" in fan.says and "0 in to 80 in" in fan.says


def test_each_wall_as_ordered_has_a_place_of_its_own() -> None:
    """So that taping one of them takes its advice away and leaves the other's."""
    lines = (win("x: 100, width: 10, z: 30, height: 12, cut: no"),
             win("x: 100, width: 10, z: 30, height: 12, cut: no", "right", "other"))  # fmt: skip
    told = said(rig_text(lines), "members-unknown", "advice")
    assert [one.where for one in told] == ["frame.studs.left", "frame.studs.right"]
    assert [one.act for one in told] == [
        f"Tape the members of the {side} wall before the saw starts" for side in ("left", "right")
    ]


@pytest.mark.parametrize(("x", "flange", "over"), [("113", "2", "3 in"), ("116", "2", ""), ("115 1/2", "2", "1/2 in")])
def test_flanges_of_neighbours_do_not_lie_over_each_other(x: str, flange: str, over: str) -> None:
    lines = (win(f"x: 100, width: 12, z: 30, height: 12, flange: {flange}"),
             win(f"x: {x}, width: 10, z: 30, height: 12, flange: {flange}", name="other"))  # fmt: skip
    told = said(rig_text(lines), "opening-overlaps")
    assert [one.act for one in told] == ([f"Move window away from other by {over}"] if over else [])


@pytest.mark.parametrize(("z", "by"), [("66", ""), ("67", "1 in")])
def test_a_flange_ends_with_its_wall(z: str, by: str) -> None:
    told = said(rig_text((win(f"x: 100, width: 10, z: {z}, height: 10, flange: 2"),)), "opening-outside-wall")
    assert [by in one.act for one in told] == ([True] if by else [])


def test_several_cross_members_are_named_once_each() -> None:
    text = rig_text((win("x: 14, width: 20, across: 10, side: centre", "floor"),))
    text = text.replace("  skin:", "  floor: {cross_members: 16}\n  skin:")
    (told,) = said(text, "opening-cuts-member")
    assert "cuts the cross-member 1 at 16 in, cross-member 2 at 32 in" in told.says
