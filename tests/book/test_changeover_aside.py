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


BIKES = """
boxwright: 1
rig: Two bikes
units: {length: mm, weight: kg}
countries: [GB]
class: cargo
people: {owner: {weight: 80, height: 1750, sleeps: bunk}}
trailer:
  body: {length: 4200, width: 2000, height: 1950}
  coupler_x: -1000
  axles: {kind: leaf, x: [2400], gawr: [1300]}
  gvwr: 1300
openings:
  door: {wall: right, x: 2800, width: 700, z: 0, height: 1800, cut: yes, release: inside,
    swing: {hinge: front, opens: out, to: 170 deg}}
parts:
  bunk: {x: 200, side: left, z: 400, size: 1900 x 700 x 150, weight: 30}
  one: {x: 2300, side: left+50, z: 0, size: 1700 x 400 x 1000, weight: 16, kind: cargo}
  two: {x: 2300, side: left+500, z: 0, size: 1700 x 400 x 1000, weight: 16, kind: cargo}
loads:
  road: {cargo: all, for: [tow]}
  night: {cargo: none, parked: yes, people: [owner], for: [sleep]}
"""


def test_what_is_set_aside_on_the_way_out_is_set_down_aside_on_the_way_in() -> None:
    """Each bike draws 1746 mm across where it is turned, and beside the other 1500 of 2000 are left."""
    one = told(BIKES)
    # by hand: the door twice, two of them carried and turned, one of them aside
    assert one.there.cost == one.back.cost == 10.0 + 2 * (40.0 + 30.0) + 40.0 + 10.0
    assert [step.word for step in one.back.steps].count("carry in") == 2
