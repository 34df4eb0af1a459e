"""A door that opens inwards in a change-over: it wants its arc both ways, and things pass its open leaf."""

from __future__ import annotations

import pytest

from boxwright.book.changeover import ChangeOver
from tests.book.test_changeover_card import MINI, moves, told

OUT, IN = "opens: out, to: 170 deg", "opens: in, to: 90 deg"
CHEST = "x: 60, side: left+2, z: 0, size: 16 x 16 x 16"
CRATE = "  crate: {x: AT, side: right, z: 0, size: 6 x 6 x 20, weight: 20, kind: cargo}\n"


def inward(at: str = "", swing: str = IN, chest: str = CHEST) -> ChangeOver:
    """Return the room with its door opening inwards, a leaf of 30 in hinged at x 10, and a crate that stays."""
    text = MINI.replace(OUT, swing).replace(CHEST, chest)
    assert text != MINI
    crate = CRATE.replace("x: AT, side: right", at) if at else ""
    text = text.replace("cargo: none", "cargo: [crate]") if at else text
    return told(text.replace("  chest:", crate + "  chest:"))


def test_things_are_carried_past_a_leaf_that_stands_open() -> None:
    one = inward()
    assert moves(one.there) == ["open door", "carry out chest", "shut door"]
    assert moves(one.back) == ["open door", "carry in chest", "shut door"]


@pytest.mark.parametrize(
    ("at", "is_free"),
    [
        ("x: 20, side: right-6", False),
        ("x: 34, side: right-24", True),  # by hand: its near corner is 24 and 24 from the hinge, 33.9 of 30
        ("x: 27, side: right-18", False),  # 17 and 18, 24.8
        ("x: 42, side: right", True),  # beside the leaf
    ],
)
def test_only_what_stands_in_the_arc_is_set_aside(at: str, is_free: bool) -> None:
    one = inward(at)
    there = moves(one.there)
    assert one.there.word == "found" and ("set aside crate" in there or "shift crate" in there) is not is_free
    assert there.count("open door") == there.count("shut door") == 1


def test_what_stood_in_the_arc_comes_back_when_the_door_is_shut() -> None:
    there, back = moves(inward("x: 20, side: right-6").there), moves(inward("x: 20, side: right-6").back)
    for done in (there, back):
        assert done[0] == "set aside crate" and done[-2:] == ["shut door", "put back crate"]


def test_past_a_leaf_that_opens_too_little_it_is_asked() -> None:
    """At 60 degrees it stands aslant in the room, and nobody knows what goes past it."""
    one = inward(swing="opens: in, to: 60 deg", chest="x: 60, side: left+2, z: 0, size: 12 x 12 x 12")
    assert one.there.word == "unknown" and any("past the leaf of door" in says for says in one.asks)


@pytest.mark.parametrize(("wide", "swing", "is_aside"), [(46, IN, False), (50, IN, True), (50, OUT, False)])
def test_what_does_not_pass_the_open_leaf_passes_it_shut(wide: int, swing: str, is_aside: bool) -> None:
    """By hand: the room is 78 in wide and the leaf stands 30 in into it, so that 48 are left."""
    done = moves(inward(swing=swing, chest=f"x: 1, side: left, z: 0, size: 8 x {wide} x 60").there)
    assert done == ["set aside chest"] * is_aside + ["open door", "carry out chest", "shut door"]
