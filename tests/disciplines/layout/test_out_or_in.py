"""A leaf of which nobody wrote whether it opens out or in is asked about where it may strike something either way."""

from __future__ import annotations

import pytest

from boxwright.disciplines.layout.held_leaves import leaves_of
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.knots import JUDGED_ON, KNOT, said, told, words

CODE = "layout/opening-strikes"
DOOR = "swing: {hinge: front, opens: in, to: 90 deg}"
UNSAID = (DOOR, "swing: {hinge: front, to: 90 deg}")
OUT = (DOOR, "swing: {hinge: front, opens: out, to: 90 deg}")
INSIDE = "  crate-in: {x: 30, side: right-6, z: 0, size: 12 x 12 x 30, weight: 2, stage: lined, done: yes}\n"
LIGHT = "  bag-in: {x: 30, side: right-6, z: 0, size: 12 x 12 x 30, weight: 2, kind: cargo}\n"
OUTSIDE = "  lamp-out: {x: 30, side: right+14, z: 40, size: 6 x 6 x 6, weight: 2, stage: lined, done: yes}\n"


@pytest.mark.parametrize(
    ("edit", "thing", "kinds"),
    [
        (UNSAID, INSIDE, ["unknown"]),
        (UNSAID, OUTSIDE, ["unknown"]),
        (UNSAID, LIGHT, ["unknown"]),
        (UNSAID, "", []),
        (OUT, INSIDE, []),
        ((DOOR, DOOR), OUTSIDE, []),
        (OUT, OUTSIDE, ["fix"]),
        ((DOOR, DOOR), INSIDE, ["fix"]),
    ],
)
def test_what_a_leaf_may_strike_either_way_is_asked(edit: tuple[str, str], thing: str, kinds: list[str]) -> None:
    found = [kind for kind, where in told(CODE, (edit,), thing) if where == "openings[door]"]
    assert found == kinds
    if kinds == ["unknown"]:
        assert "nobody wrote how it opens" in words(CODE, (edit,), thing)


def test_a_ramp_is_asked_about_too() -> None:
    whole = "swing: {hinge: bottom, opens: out, to: 90 deg}}\n  window"
    assert ("unknown", "openings[ramp]") in told(CODE, ((whole, whole.replace("opens: out, ", "")),))


@pytest.mark.parametrize(("edit", "may"), [(UNSAID, True), (OUT, False)])
def test_a_door_that_may_be_held_shut_from_inside_counts_as_one_to_be_tried(edit: tuple[str, str], may: bool) -> None:
    text = KNOT.read_text(encoding="utf-8").replace(*edit).replace("  beam:", f"{INSIDE}  beam:", 1)
    (slot,) = study(read_rig(text).rig, JUDGED_ON).asked_slots("sleep", "night")
    assert slot.safety is not None
    (door,) = [one for one in slot.safety.exits if one.way.name == "door"]
    assert door.may_be_held_shut is may and not door.is_held_shut


@pytest.mark.parametrize(("edit", "outside"), [(UNSAID, [True, False]), (OUT, [True]), ((DOOR, DOOR), [False])])
def test_what_is_carried_in_goes_past_a_leaf_that_stands_either_way(edit: tuple[str, str], outside: list[bool]) -> None:
    rig = read_rig(KNOT.read_text(encoding="utf-8").replace(*edit)).rig
    assert rig.layout.room is not None
    (door,) = [one for one in rig.layout.closed if one.name == "door"]
    leaves = leaves_of(door, None, rig.layout.room)
    assert [one.outside for one in leaves] == outside
    assert all(one.is_usual for one in leaves) is (len(outside) > 1)


POST = "  post: {x: 0, side: right+16, z: 0, size: 3 x 3 x 60, weight: 2, stage: lined, done: yes}\n"
FLAP = "swing: {hinge: bottom, opens: out, to: %s}"


@pytest.mark.parametrize(
    ("to", "thing", "kinds"),
    [
        ("out, to: 90 deg", OUTSIDE, ["fix"]),
        ("out, to: unknown", OUTSIDE, ["unknown"]),  # it may open by less than strikes
        ("out, to: 90 deg", POST, []),
        ("out, to: unknown", POST, ["unknown"]),  # and by more than a right angle
        ("in, to: 90 deg", INSIDE, ["fix"]),
        ("in, to: unknown", INSIDE, ["unknown"]),
    ],
)
def test_a_leaf_that_nobody_knows_how_far_opens_is_asked_at_every_end(to: str, thing: str, kinds: list[str]) -> None:
    """The post stands ahead of the hinge at x = 20 and within the 28 in of the leaf: only past 90 degrees is it met.

    Its near corner is 17 in ahead of the hinge and 11 before the outer skin: 20.2 in from it.
    """
    name = thing.split(":")[0].strip()
    edit = (DOOR, f"swing: {{hinge: front, opens: {to}}}")
    rows = [one for one in said((edit,), thing) if one.code == CODE and one.where == "openings[door]"]
    assert [str(one.kind) for one in rows if name in one.says] == kinds


@pytest.mark.parametrize(("to", "asks"), [("90 deg", False), ("unknown", True)])
def test_a_ramp_that_nobody_knows_how_far_opens_may_strike_the_ground(to: str, asks: bool) -> None:
    whole = "swing: {hinge: bottom, opens: out, to: 90 deg}}\n  window"
    assert (("unknown", "openings[ramp]") in told(CODE, ((whole, FLAP % to + "}\n  window"),))) is asks
