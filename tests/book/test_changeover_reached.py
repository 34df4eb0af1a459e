"""What is opened to get out at night: only what somebody gets to, and nothing that is perhaps not there yet."""

from __future__ import annotations

from boxwright.book.changeover import ChangeOver
from boxwright.book.changeover_words import asked_words, leaving_words
from tests.book.test_changeover_card import MINI, told, worked

LOCKER = "  locker: {x: 45, side: left, z: 0, size: 10 x 40 x 77, weight: 80}\n"
CRATE = "  crate: {x: 8, side: right-1, z: 0, size: DEEP x 60, weight: 20, kind: cargo}\n"
FULL = "  full: {x: 0, side: left, z: 0, size: WIDE x 77, weight: 90}\n"


def before_the_door(deep: str, more: str = "", people: str = "") -> ChangeOver:
    """Return the room with a crate before its door, 30 in wide from x 10, that stays there at night."""
    text = MINI.replace(LOCKER, CRATE.replace("DEEP", deep) + more).replace("cargo: none", "cargo: [crate]")
    return told(text.replace("sleeps: bed}}", people + "sleeps: bed}}"))


def words(one: ChangeOver) -> str:
    return next(iter(leaving_words(one, worked(MINI)[0].header.units)))


def test_a_crate_before_the_door_is_set_aside_before_it_is_opened() -> None:
    """Nobody opens a door that he cannot get to and carries the crate out by it."""
    one = before_the_door("28 x 20")
    assert one.out is not None and one.out.seconds is not None
    assert [(exit.word, exit.by) for exit in one.out.exits] == [("blocked", ("crate",))]
    assert (one.out.word, [f"{step.word} {step.name}" for step in one.out.steps]) == ("found", ["set aside crate"])
    # by hand: 20 s to rise, 40 s to carry, the way, 10 s for the door, 5 s to go through
    assert one.out.seconds == 20.0 + 40.0 + one.out.ways[0][2] / 0.5 + 10.0 + 5.0


def test_where_it_can_be_set_aside_nowhere_it_is_asked_whether_the_door_is_reached() -> None:
    """All other floor is full: the crate would have to go out by the door it stands before."""
    full = FULL.replace("WIDE", "36 x 56") + FULL.replace("full: {x: 0", "rest: {x: 36").replace("WIDE", "44 x 56")
    one = before_the_door("28 x 20", full)
    assert one.out is not None and one.out.word == "untried" and one.out.past == ("door",)
    assert words(one).endswith("can reach door past what stands before it.")
    assert "whether those who sleep here" in words(one)


def test_an_opening_that_is_perhaps_not_in_yet_is_none_when_it_is_opened() -> None:
    text = MINI.replace("cut: yes, ", "stage: one, ").replace("openings:", "stages:\n  one: {}\nopenings:")
    one = told(text)
    assert any(step.word == "open" for step in one.there.steps)
    assert {exit.word for step in one.there.steps for exit in step.exits} == {"perhaps"}
    assert one.perhaps[-1] == "door" and "Counted as there, though nobody ticked it: " in " ".join(asked_words(one))
