"""Steps and canopies in a change-over: out at night, in on the road, first and last, and never through anything."""

from __future__ import annotations

import pytest

from boxwright.book.changeover import ChangeOver
from boxwright.book.changeover_words import asked_words, stands_words, step_words
from tests.book.test_changeover_card import MINI, demo, moves, told

STEP = "  step: {x: 14, side: right+4, z: -8, size: 20 x 8 x 3, weight: 10, slides: {to: right, by: 9}}\n"
CANOPY = "  canopy: {x: 50, side: right+7, z: 73, size: 60 x 5 x 5, weight: 30, out: {reach: 70, pitch: 12 deg}}\n"
DRAWER = "  drawer: {x: 20, side: left+1, z: 0, size: 20 x 16 x 18, weight: 20, slides: {to: right, by: 12}}\n"
CRATE = "  crate: {x: 14, side: right+14, z: -9, size: 20 x 8 x 6, weight: 10, kind: cargo}\n"


def mini(*lines: str) -> ChangeOver:
    """Return the change-over of the room worked out by hand, with more things in or at it."""
    return told(MINI.replace("deck_height: 18", "").replace("parts:\n", "parts:\n" + "".join(lines)))


def test_a_step_is_set_out_first_and_put_in_last() -> None:
    one = mini(STEP)
    assert moves(one.there) == ["set out step", "open door", "carry out chest", "shut door"]
    assert moves(one.back) == ["open door", "carry in chest", "shut door", "put in step"]
    assert one.there.cost == one.back.cost == 60.0 + 10.0
    assert [step_words(step) for step in (one.there.steps[0], one.back.steps[-1])] == ["set step out", "put step in"]
    assert stands_words(one.there) == "set out: step; outside: chest"
    assert stands_words(one.back) == "in its place inside: chest; put in: step"


def test_a_canopy_takes_its_time_and_no_strap() -> None:
    one = mini(CANOPY)
    assert moves(one.there)[0] == "set out canopy" and moves(one.back)[-1] == "put in canopy"
    assert one.there.cost == one.back.cost == 60.0 + 120.0
    assert not one.asks


def test_the_exits_are_those_of_the_same_room_without_them() -> None:
    plain, with_both = mini(), mini(STEP, CANOPY)
    assert with_both.there.before == plain.there.before
    assert with_both.there.steps[-1].exits == plain.there.steps[-1].exits
    assert with_both.out == plain.out


def test_what_slides_inside_is_no_move_of_a_change_over() -> None:
    assert moves(mini(DRAWER).there) == moves(mini().there)


@pytest.mark.parametrize(
    ("line", "old", "new"),
    [(STEP, ", by: 9", ""), (STEP, "by: 9", "by: unknown"), (CANOPY, ", pitch: 12 deg", "")],
)
def test_what_nobody_wrote_how_far_it_comes_is_asked_for_and_stays_in(line: str, old: str, new: str) -> None:
    assert old in line
    one = mini(line.replace(old, new))
    assert moves(one.there) == moves(mini().there)
    assert any("comes out" in says for says in asked_words(one))


@pytest.mark.parametrize(("side", "is_free"), [("right+8", False), ("right+25", True)])
def test_a_step_is_not_set_out_into_what_stands_there(side: str, is_free: bool) -> None:
    """The step slides to 4 + 9 in beyond the face it is measured from: a post 4 in thick at 8 is in it, at 25 not."""
    post = f"  post: {{x: 20, side: {side}, z: -12, size: 4 x 4 x 12, weight: 5}}\n"
    one = mini(STEP, post)
    assert one.there.word == one.back.word == "found"  # one sleeps without a step too
    assert ("set out step" in moves(one.there)) == ("put in step" in moves(one.back)) == is_free
    said = [says for says in asked_words(one) if "where step can be set out: it meets post, and is left in" in says]
    assert len(said) == (0 if is_free else 1)


def test_a_canopy_before_the_door_is_a_thing_one_carries_past() -> None:
    """Its leg stands in the way out of the door; carried first and set up after, it costs the same."""
    over_door = CANOPY.replace("x: 50", "x: 5").replace("pitch: 12 deg", "pitch: 12 deg, arms: [25]")
    one = mini(over_door)
    assert one.there.word == "found"
    assert one.there.cost == 180.0 and sorted(moves(one.there)) == sorted(moves(mini(CANOPY).there))


def test_the_demo_rigs_set_out_what_they_have() -> None:
    for name, words in (("whimbrel", {"awning", "step"}), ("dunlin", {"hatch-awning"})):
        one = demo(name, "finish")
        assert {step.name for step in one.there.steps if step.word == "set out"} == words
        assert {step.name for step in one.back.steps if step.word == "put in"} == words
        assert {step.word for step in one.there.steps[: len(words)]} == {"set out"}
        assert {step.word for step in one.back.steps[-len(words) :]} == {"put in"}


def test_nothing_to_move_costs_nothing_and_no_less() -> None:
    assert str(demo("whimbrel", "measure").there.cost) == "0.0"
