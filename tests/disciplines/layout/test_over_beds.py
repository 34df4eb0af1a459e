"""What opens in over who lies in a bed: leaves, drawers, lids; beside it, over it, or with room left to lie.

By hand, in millimetres: the bunk lies from x = 100 to 2000 along the left wall, 700 wide, its top at 650; a body on it
takes 250 over that, and the owner of 1650 wants 1750 of its length.
"""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import TODAY, mirrored, rig_of, thing, told

CODE = "opens-over-bed"
HATCH = "hatch: {wall: left, x: %s, width: 700, z: %s, height: 500, stage: all, cut: yes, done: yes, release: inside, "
HATCH += "swing: {hinge: %s, opens: %s, to: %s}}"
DONE = "weight: 5, stage: all, done: yes"
FOLDS = "folds: up, folded_depth: 120, hinge: {edge: left}"
FLAT = "mattress: 1900 x 700 x 100"


def said(parts: str = "", openings: str = "", bunk: str = "", use: str = "sleep") -> list[tuple[str, str]]:
    text = rig_of(parts, openings, bunk=bunk or FOLDS)
    found = told(text, "sleep" if use == "sleep" else "work")
    assert told(mirrored(text), "sleep" if use == "sleep" else "work") == found
    return sorted((kind, where) for kind, code, where in found if code == CODE)


def drawer(x: object = 600, z: object = 700, by: object = 1000, side: str = "right") -> str:
    return thing("drawer", x, side, z, "700 x 500 x 150", f"{DONE}, slides: {{to: left, by: {by}}}")


@pytest.mark.parametrize(
    ("at", "kinds"),
    [
        ((600, 700, "top", "in", "90 deg"), ["limit"]),  # its free edge is at 700, under 900
        ((600, 950, "top", "in", "90 deg"), []),  # it begins over who lies there, and goes up
        ((600, 950, "bottom", "in", "90 deg"), []),  # it comes down to 950 and lies over them
        ((600, 899, "bottom", "in", "170 deg"), ["limit"]),  # and past that it hangs down on them
        ((600, 700, "top", "out", "90 deg"), []),
        ((2100, 700, "top", "in", "90 deg"), []),  # beyond the foot
        ((1860, 700, "top", "in", "90 deg"), []),  # over the last 140: 1760 are left, and 1750 wanted
        ((1840, 700, "top", "in", "90 deg"), ["limit"]),  # over the last 160
        ((600, 700, "top", "in", "0..90 deg"), ["unknown"]),
        ((600, "700..950", "top", "in", "90 deg"), ["unknown"]),
        (("600..2200", 700, "top", "in", "90 deg"), ["unknown"]),
    ],
)
def test_a_leaf_that_opens_in_over_a_sleeper(at: tuple[object, ...], kinds: list[str]) -> None:
    assert [kind for kind, where in said(openings=HATCH % at) if where == "openings[hatch]"] == kinds


@pytest.mark.parametrize(
    ("more", "kinds"),
    [
        ({}, ["advice"]),  # from 1500 off the left wall to 500 off it
        ({"by": 800}, []),  # to 700
        ({"by": 895}, []),  # 605 are left of 700; 600 are shoulders
        ({"by": 905}, ["advice"]),
        ({"z": 660}, ["advice"]),
        ({"z": 901}, []),  # over a body
        ({"z": 500}, []),  # under the bunk
        ({"by": "700..1000"}, ["unknown"]),
        ({"z": "700..950"}, ["unknown"]),
        ({"x": 2100}, []),
    ],
)
def test_a_drawer_that_slides_out_over_a_sleeper(more: dict[str, object], kinds: list[str]) -> None:
    assert [kind for kind, _ in said(drawer(**more))] == kinds  # type: ignore[arg-type]


def test_two_who_share_a_bed_want_room_beside_each_other() -> None:
    text = rig_of(drawer(by=600)).replace("1900 x 700 x 50", "1900 x 1300 x 50")
    two = text.replace("sleeps: bunk}", "sleeps: bunk}\n  guest: {weight: 70, height: 1650, sleeps: bunk}")
    two = two.replace("people: [owner]", "people: [owner, guest]")
    assert not {one for one in told(text, "sleep") if one[1] == CODE}, "900 of 1300 are left for one"
    assert {kind for kind, code, _ in told(two, "sleep") if code == CODE} == {"advice"}
    away = two.replace("people: [owner, guest]", "people: [owner]")
    assert not {one for one in told(away, "sleep") if one[1] == CODE}, "who is not in it that night takes no room"
    everybody = two.replace("people: [owner, guest], ", "")
    assert {kind for kind, code, _ in told(everybody, "sleep") if code == CODE} == {"advice"}, "nobody is named"


def test_what_is_in_the_mattress_is_met_too() -> None:
    low = drawer(z=500 + 155)
    assert [kind for kind, _ in said(low)] == ["advice"]
    assert said(drawer(z=905)) == []
    assert [
        kind for kind, _ in said(drawer(z=905), bunk=f"folds: up, folded_depth: 120, {FLAT}, hinge: {{edge: left}}")
    ]


def test_nobody_lies_there_by_day_and_a_drawer_of_the_bed_itself_goes_with_it() -> None:
    assert said(drawer(), use="work") == []
    assert said(bunk=f"{FOLDS}, slides: {{to: right, by: 500}}") == []


def test_who_nobody_knows_the_height_of_is_asked_about() -> None:
    text = rig_of(openings=HATCH % (1840, 700, "top", "in", "90 deg")).replace(", height: 1650", "")
    assert {kind for kind, code, _ in told(text, "sleep") if code == CODE} == {"unknown"}


def test_what_is_said_names_who_lies_there_and_how_far_it_gets() -> None:
    found = study(read_rig(rig_of(drawer())).rig, TODAY).findings("sleep")
    (one,) = [one for one in found if one.code == f"layout/{CODE}"]
    says = "drawer opens in over bunk, where owner lies, and meets them after 800 mm of 1000 mm: owner has to get up"
    assert one.says == says
    assert one.because == ("parts[bunk]",)
    assert one.uses == ("sleep",)


THIN = "weight: 5, stage: all, done: yes, slides: {to: left, by: 1000}"


def test_a_tray_that_slides_through_the_mattress_is_met() -> None:
    """The mattress lies from 650 to 750, the tray from 680 to 730."""
    bunk = f"{FOLDS}, mattress: 1900 x 700 x 100"
    tray = thing("tray", 600, "right", 680, "700 x 500 x 50", THIN)
    assert [kind for kind, _ in said(tray, bunk=bunk)] == ["advice"]


def test_a_leaf_over_the_head_leaves_the_foot() -> None:
    """Over the first 140 of the bed: 1760 are left, and 1750 wanted; over the first 160 too little."""
    for wide, kinds in ((240, []), (260, ["limit"])):
        hatch = (HATCH % (0, 700, "top", "in", "90 deg")).replace("width: 700", f"width: {wide}")
        assert [kind for kind, where in said(openings=hatch) if where == "openings[hatch]"] == kinds


def test_of_two_cots_on_one_line_nobody_knows_which_of_them_it_opens_over() -> None:
    text = rig_of(drawer()).replace("x: 100, side: left, z: 600", "x: 100, count: 2, side: left, z: 600")
    assert {kind for kind, code, _ in told(text, "sleep") if code == CODE} == {"unknown"}


def test_the_lid_of_a_bed_and_drawers_of_which_nobody_wrote_how_they_open_are_no_matter_here() -> None:
    assert said(bunk="swing: {hinge: left, opens: up}") == []
    larder = "weight: 5, stage: all, done: yes, carcass: {ply: 12, drawers: [200, 200]}"
    chest = thing("larder", 1000, "right-200", 600, "700 x 900 x 400", larder)
    found = told(rig_of(chest), "sleep")
    assert not any(code == CODE for _, code, _ in found)
    assert any(code == "opening-strikes" and where == "parts[larder]" for _, code, where in found)
