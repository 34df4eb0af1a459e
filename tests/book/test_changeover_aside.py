"""Setting things aside in the change-over of a rig: what is told of it, and how long it is looked for in the demos."""

from __future__ import annotations

import pytest

from boxwright.book.changeover_ends import ends_of
from boxwright.book.changeover_setting import Making
from boxwright.book.changeover_words import step_words
from boxwright.disciplines.layout.changeover_aside import MOST_STATES, with_spots
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.layout.changeover_search import MOST_WAYS, cheapest_with_apart
from tests.book.test_changeover_card import MINI, edited, moves, told, worked, written

CHEST = "  chest:  {x: 60, side: left+2, z: 0, size: 16 x 16 x 16, weight: 20, kind: cargo}\n"
LOCKER = "  locker: {x: 45, side: left, z: 0, size: 10 x 40 x 77, weight: 80}\n"
CRATE = "  NAME: {x: 4, side: DAY, z: 0, size: 24 x 24 x 24, weight: 20, kind: cargo, when_sleeping: NIGHT}\n"


def two_that_change_places() -> str:
    """Return the room with a crate on either side of its front, each in the other's place at night."""
    ends = (("a", "left", "right"), ("b", "right", "left"))
    both = "".join(
        CRATE.replace("NAME", a).replace("DAY", b).replace("NIGHT", f"{{x: 4, side: {c}, z: 0}}") for a, b, c in ends
    )
    return MINI.replace(LOCKER, "").replace(CHEST, both).replace("cargo: none", "cargo: all")


def test_what_is_set_aside_is_told_in_plain_words() -> None:
    one = told(two_that_change_places())
    assert [step_words(step) for step in one.there.steps] == [
        "set a aside on free floor", "put b into the other place", "put a in its place",
    ]  # fmt: skip
    assert one.there.cost == one.back.cost == 3 * 40.0


def test_straps_are_undone_on_the_way_to_the_night_and_fastened_on_the_way_back() -> None:
    text = two_that_change_places().replace("loads:", "straps:\n  web: {over: a}\n  net: {over: b}\nloads:")
    one = told(text)
    assert [step_words(step) for step in one.there.steps if step.name == "a"] == [
        "set a aside on free floor; undo strap web", "put a in its place",
    ]  # fmt: skip
    back = [step_words(step) for step in one.back.steps if step.name == "a"]
    assert back[-1].endswith("; fasten strap web") and not any("undo" in says for says in back)


@pytest.mark.parametrize(
    ("name", "stage", "states"), [("whimbrel", "", 50), ("whimbrel", "finish", 100), ("dunlin", "", 20)]
)
def test_the_demos_are_searched_within_few_states_though_all_may_be_set_aside(
    name: str, stage: str, states: int
) -> None:
    """By the count of states, not by the clock; a state takes some ways to look for, and these nearly all the time."""
    text = written(name)
    if name == "whimbrel" and stage:  # with the outboard out the night is come to as it is written
        text = edited(name, "out: [boat, boat-floor", "out: [outboard, outboard-stand, boat, boat-floor")
    rig, slot = worked(text, stage)
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    board = Board(Making(rig, slot, start, goal).setting(1.0))
    begin, end = board.state(is_goal=False), board.state(is_goal=True)
    plain = cheapest_with_apart(board, begin, end, MOST_STATES, MOST_WAYS)
    other = with_spots(board, begin, end)
    assert other is not None
    again = cheapest_with_apart(other, begin, end, MOST_STATES, MOST_WAYS)
    assert again.states <= states and other.ways <= MOST_WAYS
    assert again.moves is not None and again.cost == plain.cost


def test_in_the_demos_nothing_need_be_set_aside() -> None:
    for name, stage in (("whimbrel", ""), ("whimbrel", "finish"), ("dunlin", "finish")):
        one = told(written(name), stage)
        assert not any("aside" in says for says in (*moves(one.there), *moves(one.back)))
