"""A change-over of what rides in or on another thing, and has a place of its own at night: by hand, in the same room.

A crate 16 in high and wide stands at x 50, with a box of 12 in on it or in it, and the locker of the room is away.
"""

from __future__ import annotations

import pytest

from boxwright.book.changeover_words import because
from tests.book.test_changeover_card import MINI, moves, told

LOCKER = "  locker: {x: 45, side: left, z: 0, size: 10 x 40 x 77, weight: 80}\n"
CHEST = "  chest:  {x: 60, side: left+2, z: 0, size: 16 x 16 x 16, weight: 20, kind: cargo}\n"
CRATE = "  crate: {x: 50, side: left+30, z: 0, size: 16 x 16 x 16, weight: 20, kind: cargoCRATE}\n"
BOX = "  box: {HELD: crate, x: +2, side: left+32, z: +UP, size: 12 x 12 x 12, weight: 9, kind: cargoBOX}\n"
AWAY = ", when_sleeping: {x: 20, side: left, z: 0}"


def carried(box: str, crate: str = "", held: str = "rides_on", night: str = "[box]") -> str:
    """Return the room with a box on or in a crate; what each of them has written of the night."""
    both = CRATE.replace("CRATE", crate) + BOX.replace("HELD", held).replace("BOX", box)
    text = MINI.replace(LOCKER, "").replace(CHEST, both.replace("UP", "16" if held == "rides_on" else "2"))
    return text.replace("cargo: none", f"cargo: {night}")


@pytest.mark.parametrize("held", ["rides_on", "inside"])
def test_what_has_a_place_of_its_own_at_night_needs_its_carrier_no_longer(held: str) -> None:
    one = told(carried(AWAY, held=held))
    assert (one.there.word, one.back.word, one.there.meets) == ("found", "found", ())
    assert moves(one.there) == ["shift box", "open door", "carry out crate", "shut door"]
    assert moves(one.back).index("carry in crate") < moves(one.back).index("shift box")
    # by hand: 40 s for each, and the door twice
    assert one.there.cost == one.back.cost == 40.0 + 10.0 + 40.0 + 10.0


def test_where_both_have_one_neither_is_carried_out() -> None:
    one = told(carried(AWAY, ", when_sleeping: {x: 4, side: left, z: 0}", night="[box, crate]"))
    assert moves(one.there) == ["shift box", "shift crate"]
    assert moves(one.back) == ["shift crate", "shift box"]


@pytest.mark.parametrize(("held", "up"), [("rides_on", "16"), ("inside", "3")])
def test_what_is_still_on_its_carrier_at_night_is_held_by_it(held: str, up: str) -> None:
    """The other end of the crate is no place of its own: with the crate out it lies nowhere."""
    there = told(carried(f", when_sleeping: {{x: 53, side: left+32, z: {up}}}", held=held)).there
    assert there.word == "without" and there.leave_out == ("box",)


def test_it_may_not_stand_where_its_carrier_is_by_then() -> None:
    """On the crate it may touch it, in a place of its own it may not."""
    there = told(carried(AWAY, ", when_sleeping: {x: 24, side: left+4, z: 0}", night="[box, crate]")).there
    assert ("box", "crate") in there.meets and there.word == "without"


def test_what_would_lie_on_nothing_is_told_and_nothing_else_is_left_out() -> None:
    """The box stays on a crate that goes; a bag before both in the alphabet has nothing to do with it."""
    bag = "  bag: {x: 4, side: left, z: 0, size: 8 x 8 x 8, weight: 9, kind: cargo}\n"
    one = told(carried("", night="[bag, box]").replace("  crate:", bag + "  crate:", 1))
    assert (one.there.word, one.there.meets, one.there.fallen) == ("without", (), (("box", "crate"),))
    assert one.there.leave_out == ("box",)
    assert "box lies on crate, which is not there then" in " ".join(because(one.there))
