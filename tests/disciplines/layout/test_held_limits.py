"""What the limits and defaults of layout come to, each by hand: a right angle and a half turn, a tenth, a passage."""

from __future__ import annotations

import pytest

from boxwright.disciplines.layout.bodies import Block, body_of
from boxwright.disciplines.layout.parts import Closed, Facet, Fitted, Swing
from boxwright.disciplines.layout.stopping import faces_of
from boxwright.disciplines.layout.zones import passages
from boxwright.model.place import Place
from boxwright.units import exactly
from tests.disciplines.layout.knots import told
from tests.disciplines.layout.layouts import ROOM

STRIKES = "layout/opening-strikes"
POST = "  post: {x: %s, side: right-%s, z: %s, size: %s, weight: 1, stage: lined, done: yes}\n"
SWING = "swing: {hinge: front, opens: in, to: 90 deg}"


def at(x: float, y: float, z: float, size: tuple[float, float, float]) -> Place:
    return Place(exactly(x), exactly(y), exactly(z), size)


def test_a_leaf_of_unwritten_turn_is_asked_for_past_a_right_angle_and_up_to_a_half_turn() -> None:
    past = POST % (10, 4, 20, "4 x 4 x 4")  # 6 in before the hinge and 4 in from the wall: met between the two
    assert told(STRIKES, ((SWING, "swing: {hinge: front, opens: in}"),), past) == [("unknown", "openings[door]")]
    assert told(STRIKES, (), past) == []
    # 28 in of leaf hinged 20 in behind the front wall meets that wall too
    assert told(STRIKES, ((SWING, SWING.replace("90", "170")),), past) == [("fix", "openings[door]")] * 2
    assert set(told(STRIKES, ((SWING, SWING.replace("90", "10..165")),), past)) == {("unknown", "openings[door]")}


@pytest.mark.parametrize(
    ("wall", "low", "high"),
    [
        ("left", (2.0, -1.2, 0.0), (2.8, -0.6, 1.8)),
        ("right", (2.0, 0.6, 0.0), (2.8, 1.2, 1.8)),
        ("front", (0.0, -0.4, 0.0), (0.6, 0.4, 1.8)),
        ("rear", (5.4, -0.4, 0.0), (6.0, 0.4, 1.8)),
    ],
)
def test_the_passage_before_a_door_is_in_the_room_and_600_mm_deep(
    wall: str, low: tuple[float, float, float], high: tuple[float, float, float]
) -> None:
    across = wall in {"front", "rear"}
    place = at(2.4, 0.0, 0.9, (0.05, 0.8, 1.8) if across else (0.8, 0.05, 1.8))
    door = Closed("openings[door]", "door", wall, place, Facet(swing=Swing(hinge="front", opens="in")))
    (found,) = passages([door], ROOM)
    assert (*found.low, *found.high) == pytest.approx((*low, *high))


@pytest.mark.parametrize(
    ("x", "side", "told_of"), [(97, "left", 1), (99, "left", 0), (97, "left+4", 1), (97, "left+8", 0)]
)
def test_a_tenth_of_a_window_behind_what_is_folded_near_its_wall_is_told(x: int, side: str, told_of: int) -> None:
    """By hand: the bed ends at 100 in, so that it covers 3 in of 14, or 1 in; 4 in is 102 mm, 8 in is 203 mm."""
    edits = (("window: {wall: left, x: 104", f"window: {{wall: left, x: {x}"),
             ("bed: {x: 30, side: left", f"bed: {{x: 30, side: {side}"))  # fmt: skip
    assert len(told("layout/window-covered", edits)) == told_of


def test_the_feet_of_an_awning_stand_on_the_ground_under_its_edge() -> None:
    written = "reach: 60, pitch: 10 deg, feet: ground, height: 82 3/8"

    def met(reach: str, side: int, z: int) -> list[str]:
        text = POST % (58, 0, z, "6 x 6 x 6")
        edits = ((written, f"reach: {reach}, pitch: 10 deg, feet: ground"),)
        return [kind for kind, _ in told("layout/one-space", edits, text.replace("right-0", f"right+{side}"))]

    assert (met("20", 26, -10), met("20", 26, 10)) == (["fix"], ["fix"])
    assert met("20", 18, -10) == []
    assert met("10..40", 20, -10) == ["unknown"]  # its edge may be anywhere from 10 in to 40 in out
    assert met("25..40", 20, -10) == []


def test_legs_stand_where_a_bed_stands_and_move_with_it_for_the_night() -> None:
    legs = (((0.1, 0.1, 0.0), (0.2, 0.2, 0.5)),)
    day, night = at(1.0, 0.0, 0.55, (2.0, 0.7, 0.1)), at(2.5, 0.1, 0.55, (2.0, 0.7, 0.1))
    bed = Fitted("parts[bed]", "bed", "", day, True, folded=at(1.0, -1.0, 1.0, (2.0, 0.1, 0.7)), legs=legs)
    assert body_of(bed, "yes", "night").blocks[1:] == (Block(*legs[0]),)
    assert len(body_of(bed, "yes", "travel").blocks) == 1
    aside = Fitted("parts[bed]", "bed", "", day, True, asleep=night, legs=legs)
    (moved,) = body_of(aside, "yes", "night").blocks[1:]
    assert (*moved.low, *moved.high) == pytest.approx((1.6, 0.2, 0.0, 1.7, 0.3, 0.5))


def test_a_nose_has_no_front_wall_and_what_is_let_into_a_wall_is_not_stopped_by_it() -> None:
    assert [name for name, *_ in faces_of(ROOM, False)] == ["front", "rear", "left", "right", "floor", "ceiling"]
    assert "front" not in [name for name, *_ in faces_of(ROOM, True)]
    assert told(STRIKES, (("fridge: {x: 60, side: right", "fridge: {x: 60, side: right+1"),)) == []
