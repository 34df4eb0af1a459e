"""What stands on a thing goes along with it; the room itself stops what opens and takes from what is wanted."""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import said, told, words

STRIKES = "layout/opening-strikes"
LID = ("14 x 16 x 30, weight: 40, stage: lined, done: yes",
       "14 x 16 x 30, weight: 40, stage: lined, done: yes, swing: {hinge: right, opens: up, to: 90 deg}")  # fmt: skip
SHELF = "  shelf: {x: 60, side: right-20, z: 24, size: 20 x 10 x 2, weight: 1, stage: lined, done: yes}\n"
TV = "  tv: {rides_on: fridge, x: +2, side: +2, z: +18, size: 6 x 6 x 30, weight: 1, kind: cargo}\n"


def test_what_stands_on_a_lid_is_struck_before_it_opens_at_all() -> None:
    assert told(STRIKES, (LID,)) == [("fix", "parts[cabinet]")]
    assert "cabinet strikes kettle when it opens: at once" in words(STRIKES, (LID,))
    off = ("kettle: {rides_on: cabinet, x: +2, side: +2, z: +30", "kettle: {x: 100, side: right, z: 0")
    assert told(STRIKES, (LID, off)) == []


def test_what_stands_on_a_thing_that_slides_goes_along() -> None:
    assert told(STRIKES, (), TV) == [] == told(STRIKES, (), SHELF)
    assert words(STRIKES, (), TV + SHELF) == "tv on fridge strikes shelf when it slides out: after 6 in of 12 in"
    # told once where the fridge itself strikes it before
    low = SHELF.replace("z: 24, size: 20 x 10 x 2", "z: 10, size: 20 x 10 x 30")
    assert told(STRIKES, (), TV + low) == [("fix", "parts[fridge]")]


def test_what_stands_beside_it_on_the_same_thing_goes_along_too() -> None:
    both = TV + TV.replace("tv:", "radio:").replace("side: +2", "side: +9")
    assert told(STRIKES, (), both) == []


@pytest.mark.parametrize(
    ("z", "strikes"), [(0, []), (46, []), (48, []), (49, [("fix", "parts[cabinet]")])],
)  # fmt: skip
def test_a_lid_that_meets_the_ceiling_is_told(z: int, strikes: list[tuple[str, str]]) -> None:
    """By hand: 16 in of lid on 14 in of chest stand 30 in over its foot; the ceiling is 78 in up."""
    edits = (("cabinet: {x: 120, side: right, z: 0, size: 14 x 16 x 30",
              f"cabinet: {{x: 120, side: right, z: {z}, size: 14 x 16 x 14"),
             ("weight: 40, stage: lined, done: yes}\n  kettle: {rides_on: cabinet, x: +2, side: +2, z: +30",
              "weight: 40, stage: lined, done: yes, swing: {hinge: left, opens: up, to: 90 deg}}\n"
              "  kettle: {x: 100, side: right, z: 0"))  # fmt: skip
    assert told(STRIKES, edits) == strikes


def test_a_slide_longer_than_the_room_is_stopped_by_its_wall() -> None:
    bed_up = ("bed: {x: 30, side: left, z: 27", "bed: {x: 30, side: left, z: 47")
    lamp = ("lamp: {x: 40, side: left+4, z: 60", "lamp: {x: 140, side: left+4, z: 60")
    assert "fridge strikes the left wall when it slides out: after 64 in of 70 in" in words(
        STRIKES, (("by: 12", "by: 70"), bed_up, lamp)
    )
    assert told(STRIKES, (("by: 12", "by: 64"), bed_up, lamp)) == []
    assert told(STRIKES, (("by: 12", "by: 50..70"), bed_up, lamp)) == [("unknown", "parts[fridge]")]


def test_what_slides_out_through_an_opening_is_not_stopped_by_its_wall() -> None:
    tray = "  tray: {x: 138, side: %s, z: 24, size: 16 x 16 x 4, weight: 1, stage: lined, done: yes, slides: %s}\n"
    through, aside = tray % ("centre", "{to: rear, by: 20}"), tray % ("left", "{to: rear, by: 20}")
    assert told(STRIKES, (), through) == []
    assert told(STRIKES, (), aside) == [("fix", "parts[tray]")]


def test_a_bed_wider_than_the_room_is_stopped_by_the_wall() -> None:
    edits = (("side: left, z: 27, size: 70 x 28 x 2", "side: left, z: 27, size: 70 x 52 x 2"),)
    assert "the ceiling is in the way of bed when it comes down: it stops at once" in words(
        "layout/sleeping-place", edits
    )


# ------------------------------------------------------------------ room that is wanted


def test_room_round_a_thing_is_taken_by_the_wall_behind_it() -> None:
    at_wall = ("heater: {x: 125, side: left+2", "heater: {x: 125, side: left")
    assert words("layout/gap-small", (at_wall,)) == "heater wants 2 in clear round it, and the left wall leaves 0 in"
    assert told("layout/gap-small", (("heater: {x: 125, side: left+2", "heater: {x: 125, side: left+1"),)) == [
        ("fix", "parts[heater]")
    ]
    doubtful = (at_wall[0], "heater: {x: 125, side: left+1..4")
    assert told("layout/gap-small", (doubtful,)) == [("unknown", "parts[heater]")]
    hung = (at_wall[0], "heater: {x: 125, wall: left")
    assert told("layout/gap-small", (hung,)) == [("unknown", "parts[heater]")]


def test_more_room_than_there_is_before_or_over_a_thing_is_told() -> None:
    deep = ("keep_clear: {front: 20, width: 14}", "keep_clear: {front: 200, width: 14}")
    assert "panel wants 200 in clear before it, and the rear wall leaves 156 in" in words("layout/kept-clear", (deep,))
    wide = ("keep_clear: {front: 20, width: 14}", "keep_clear: {front: 20, width: 100}")
    assert "panel wants room 100 in wide before it, and the room leaves 80 in" in words("layout/kept-clear", (wide,))
    over = ("keep_clear: {front: 20, width: 14}", "keep_clear: {above: %s}")
    assert told("layout/kept-clear", ((over[0], over[1] % 26),)) == []
    assert told("layout/kept-clear", ((over[0], over[1] % 27),)) == [("fix", "parts[panel]")]
    assert told("layout/kept-clear", ((over[0], over[1] % "25..27"),)) == [("unknown", "parts[panel]")]


def test_room_of_unknown_width_is_asked_for() -> None:
    unknown = ("keep_clear: {front: 20, width: 14}", "keep_clear: {front: 20, width: unknown}")
    assert told("layout/opening-unsaid", (unknown,)) == [("unknown", "parts[panel]")]


@pytest.mark.parametrize(
    ("clear", "left", "kinds"),
    [("1..5", 3, ["unknown"]), ("1..5", 0.5, ["fix"]), ("1..5", 6, []), ("2", 1, ["fix"]), ("2", 2, [])],
)
def test_room_in_doubt_is_sure_only_where_the_least_of_it_is_taken(clear: str, left: float, kinds: list[str]) -> None:
    # 20 in off the wall, and off its box, so that only the box may be too near
    edits = (("heater: {x: 125, side: left+2, z: 0", "heater: {x: 125, side: left+20, z: 12"),
             ("box: {x: 100, side: left, z: 0", f"box: {{x: {125 - 14 - left}, side: left+18, z: 12"),
             ("keep_clear: 2}", f"keep_clear: {clear}}}"), ("bed: {x: 30", "bed: {x: 10"),
             ("crate: {x: 134", "crate: {x: 60"))  # fmt: skip
    assert [kind for kind, where in told("layout/gap-small", edits) if where == "parts[box]"] == kinds


def test_room_before_a_face_in_doubt_asks_between_its_least_and_its_most() -> None:
    def at(x: int) -> list[str]:
        edits = (("tin: {x: 26", f"tin: {{x: {x}"), ("keep_clear: {front: 20,", "keep_clear: {front: 10..20,"))
        return [kind for kind, _ in told("layout/kept-clear", edits)]

    assert (at(12), at(16), at(25)) == (["fix"], ["unknown"], [])


def test_a_gap_is_measured_straight_and_never_told_where_it_is_kept() -> None:
    """By hand: 2 in wanted, 1.8 in off along and across is 2.5 in off: no matter; 1 in and 1 in is 1.4 in off."""
    for off, kinds in ((1.8, []), (1.0, ["fix"])):
        box = ("box: {x: 100, side: left, z: 0", f"box: {{x: {111 - off}, side: left+{8 + off}, z: 0")
        found = [one for one in said((box,)) if one.code == "layout/gap-small"]
        assert [one.kind for one in found] == kinds
        assert all(one.margin is not None and one.margin < 0.0 for one in found)


def test_what_stands_beside_the_face_is_measured_along_it() -> None:
    wide = ("keep_clear: {front: 20, width: 14}", "keep_clear: {front: 20, width: 60}")
    tin = ("tin: {x: 26, side: left+4", "tin: {x: 9, side: left+30")
    (found,) = (one for one in said((wide, tin)) if one.code == "layout/kept-clear")
    assert "5 in is left" in found.says and found.margin == pytest.approx(-15 * 0.0254)


def test_the_doubt_of_what_wants_room_is_asked_for() -> None:
    near = ("box: {x: 100", "box: {x: 107")
    assert told("layout/gap-small", (near,)) == []
    assert told("layout/gap-small", (near, ("heater: {x: 125", "heater: {x: 122..128"))) == [("unknown", "parts[box]")]


# ------------------------------------------------------------------ what rides on a thing


KETTLE = "kettle: {rides_on: cabinet, x: +2, side: +2, z: +30"


@pytest.mark.parametrize(
    ("z", "held", "space"),
    [
        ("+30", [], []),
        ("+30 3/16", [], []),
        ("+40", [("fix", "parts[kettle]")], []),
        ("+20", [], [("fix", "parts[kettle]")]),
        ("+28..34", [("unknown", "parts[kettle]")], []),
        ("+26..32", [], [("unknown", "parts[kettle]")]),
        ("+26..34", [("unknown", "parts[kettle]")], []),
    ],
)
def test_what_rides_on_a_thing_rests_on_its_top(
    z: str, held: list[tuple[str, str]], space: list[tuple[str, str]]
) -> None:
    edits = ((KETTLE, f"kettle: {{rides_on: cabinet, x: +2, side: +2, z: {z}"),)
    assert told("layout/held-by-nothing", edits, "", "tow") == held
    assert told("layout/one-space", edits, "", "tow") == space


def test_how_far_over_or_down_in_its_carrier_it_is_is_told() -> None:
    over, down = ((KETTLE, KETTLE.replace("+30", z)) for z in ("+40", "+20"))
    assert words("layout/held-by-nothing", (over,), "", "tow") == (
        "kettle rides on cabinet, but is 10 in over it: nothing holds it"
    )
    assert words("layout/one-space", (down,), "", "tow") == "kettle rides on cabinet, but is 10 in down in it"
    beside = (KETTLE, KETTLE.replace("x: +2", "x: +20").replace("z: +30", "z: +10"))
    assert told("layout/held-by-nothing", (beside,), "", "tow") == [("unknown", "parts[kettle]")]


def test_cargo_that_stands_up_out_of_other_cargo_hangs_in_it_and_what_is_all_down_in_it_is_told() -> None:
    deep = KETTLE.replace("+30", "+27")
    cargo = ("14 x 16 x 30, weight: 40, stage: lined, done: yes", "14 x 16 x 30, weight: 40, kind: cargo")
    edits = ((KETTLE, deep), cargo)
    assert told("layout/one-space", edits[:1], "", "tow") == [("fix", "parts[kettle]")]
    assert told("layout/one-space", edits, "", "tow") == []
    sunk = ((KETTLE, KETTLE.replace("+30", "+20")), edits[1])
    assert told("layout/one-space", sunk, "", "tow") == [("fix", "parts[kettle]")]


def test_it_may_rest_on_a_mattress_or_on_what_rides_there_too() -> None:
    pillow = "  pillow: {rides_on: bed, x: +8, side: +8, z: +%s, size: 14 x 14 x 3, weight: 1, kind: cargo}\n"
    thick = (("folds: up,", "mattress: 70 x 28 x 4, folds: up,"),)
    assert told("layout/held-by-nothing", thick, pillow % 6) == told("layout/held-by-nothing", thick, pillow % 2) == []
    cup = "  cup: {rides_on: cabinet, x: +3, side: +3, z: +36, size: 3 x 3 x 4, weight: 1, kind: cargo}\n"
    assert told("layout/held-by-nothing", (), cup, "tow") == []


def test_the_bed_that_cannot_be_slept_in_is_named_and_not_what_lies_on_it() -> None:
    pillow = "  pillow: {rides_on: bed, x: +8, side: +2, z: +2, size: 14 x 14 x 14, weight: 1, kind: cargo}\n"
    lamp = (("lamp: {x: 40, side: left+4, z: 60", "lamp: {x: 40, side: left+4, z: 40"),)
    low = (("lamp: {x: 40, side: left+4, z: 60", "lamp: {x: 40, side: right-8, z: 60"),)
    assert "pillow cannot be slept in" not in words("layout/sleeping-place", lamp, pillow)
    tall = pillow.replace("14 x 14 x 14", "14 x 70 x 40")
    assert "bed cannot be slept in: lamp overlaps pillow on it by" in words("layout/sleeping-place", low, tall)


# ------------------------------------------------------------------ cabinets of which nobody wrote how they open


def opens(carcass: str, more: str) -> str:
    chest = "  chest: {x: 118, side: right, z: 0, size: 16 x 14 x 30, weight: 9, stage: lined, done: yes%s}\n"
    aside = (("cabinet: {x: 120, side: right", "cabinet: {x: 142, side: left"),)
    return words(STRIKES, aside, chest % carcass + more)


POST = "  post: {x: %s, side: right-%s, z: %s, size: 2 x 2 x 4, weight: 1, stage: lined, done: yes}\n"


def test_a_drawer_comes_out_by_the_depth_of_its_cabinet_away_from_the_wall() -> None:
    drawers = ", carcass: {ply: 1/2, drawers: [5, 8]}"
    asked = "a drawer of chest may strike post when it slides out: nobody wrote how it opens"
    assert opens(drawers, POST % (125, 26, 26)) == asked  # 12 in before it, 14 in deep, as high as the upper one
    assert opens(drawers, POST % (125, 30, 26)) == ""  # 16 in before it
    assert opens(drawers, POST % (125, 26, 18)) == asked  # the lower one, from 17 in to 25 in up
    assert opens(drawers, POST % (125, 26, 12)) == ""  # under both
    assert opens("", POST % (125, 26, 26)) == ""
    assert opens(drawers + ", slides: {to: left, by: 2}", POST % (125, 26, 26)) == ""


def test_a_door_is_as_wide_as_its_share_and_hinged_on_either_side() -> None:
    one, two = (f", carcass: {{ply: 1/2, doors: {count}}}" for count in (1, 2))
    asked = "a door of chest may strike post when it opens: nobody wrote how it opens"
    far, near = POST % (118, 26, 10), POST % (125, 20, 10)
    assert (opens(one, far), opens(two, far)) == (asked, "")  # 16 in, or twice 8 in
    assert (opens(one, near), opens(two, near)) == (asked, asked)
    # 14 in before it and near one edge: met with the hinge on that side alone
    assert [opens(one, POST % (x, 28, 10)) for x in (120, 130)] == [asked, asked]
    assert opens(one + ", swing: {hinge: top, opens: no}", near) == ""


def test_a_lid_lifts_along_the_wall_and_what_stands_on_it_holds_it_shut() -> None:
    lid = ", carcass: {ply: 1/2, lid: yes}"
    cup = "  cup: {rides_on: chest, x: +3, side: +3, z: +30, size: 3 x 3 x 4, weight: %s}\n"
    cup = cup % "1, stage: lined, done: yes"
    assert opens(lid, cup) == "the lid of chest may strike cup when it opens: nobody wrote how it opens"
    asked = "the lid of chest may strike post when it opens: nobody wrote how it opens"
    assert opens(lid, POST % (125, 2, 42)) == asked
    written = "weight: 1, stage: lined, done: yes"
    light, heavy = ((POST % (125, 2, 42)).replace(written, f"weight: {weight}, kind: cargo") for weight in (1, 200))
    assert (opens(lid, light), opens(lid, heavy)) == ("", asked)  # what one lifts aside is no question
    assert opens(lid, POST % (125, 2, 45)) == "" == opens("", cup)
