"""A change-over of a room packed full, and of a bed over more things than three: what is told of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.book.changeover import ChangeOver
from boxwright.book.changeover_card import card
from boxwright.book.changeover_ends import ends_of
from boxwright.book.changeover_setting import Making
from boxwright.book.changeover_words import NOT_LEAST, headline, leaving_words
from boxwright.cli.changing_over import Asked
from boxwright.disciplines.layout.changeover import Freed, Leaving
from boxwright.disciplines.layout.changeover_aside import MOST_UNPACKED
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.layout.changeover_search import MOST_STATES, MOST_WAYS
from boxwright.disciplines.layout.changeover_told import changed
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.book.test_changeover_flaps import JUDGED_ON, told
from tests.disciplines.layout.small_rigs import CARGO, mirrored, rig_of, thing

OUT = ", when_sleeping: out"


def packed(*out: tuple[int, int], height: int = 1500) -> str:
    """Return twenty crates with hardly a gap between, five rows of four before both ways out; some go out at night."""
    parts = "".join(
        thing(f"crate-{row}-{file}", 100 + row * 420, f"left+{30 + file * 480}", 0, f"400 x 460 x {height}",
              CARGO + (OUT if (row, file) in out else ""))
        for row in range(5) for file in range(4)
    )  # fmt: skip
    text = rig_of(parts, bunk="kind: bed")
    return text.replace("x: 100, side: left, z: 600, size: 1900 x 700", "x: 100, side: left, z: 1900, size: 700 x 600")


def carried(one: ChangeOver) -> list[str]:
    return [step.name for step in one.there.steps if step.word == "carry out"]


@pytest.mark.parametrize("is_mirrored", [False, True])
def test_of_twenty_packed_crates_the_innermost_goes_out_by_those_before_it(is_mirrored: bool) -> None:
    """By hand: the four before it in its row go out and come back, 10 + 9 x 40 + 10 s."""
    text = packed((0, 1))
    one = told(mirrored(text) if is_mirrored else text)
    assert (one.there.word, one.there.cost, len(carried(one))) == ("found", 380.0, 5)
    assert one.back.cost == 380.0 and not one.there.is_least and not one.back.is_least
    assert headline(one.there, "travel", "night").endswith(NOT_LEAST)
    rows = card(one, read_rig(text).rig.header.units).grids[0].rows
    assert any(NOT_LEAST in row[1] for row in rows)


def test_it_takes_no_more_than_so_many_ways_and_states() -> None:
    """Each thing that moves is looked at once alone by each opening beside what a search may look at."""
    rig = read_rig(packed(*((row, file) for row in range(5) for file in range(4) if (row + file) % 2))).rig
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    slot = study(rig, JUDGED_ON, stage=0, use="tow", ticked=False).slots[0]
    board = Board(Making(rig, slot, start, goal).setting(1.0))
    there, _ = changed(board, board.state(is_goal=False), board.state(is_goal=True))
    assert there.word == "found" and not there.is_least
    assert board.ways <= MOST_WAYS + MOST_UNPACKED
    assert there.states <= MOST_STATES


def test_a_found_one_that_is_least_says_no_more_than_its_moves() -> None:
    one = told(packed((4, 1)))
    assert one.there.is_least and headline(one.there, "travel", "night").endswith("pair of hands.")


@pytest.mark.parametrize("count", [3, 4, 5])
def test_however_many_things_stand_where_a_bed_comes_down_they_are_left_outside(count: int) -> None:
    crates = "".join(thing(f"crate-{n}", 150 + n * 350, "left+150", 0, "300 x 400 x 700", CARGO) for n in range(count))
    one = told(rig_of(crates))
    assert (one.there.word, one.back.word) == ("without", "found")
    assert one.there.leave_out == tuple(f"crate-{n}" for n in range(count))
    assert [step.name for step in one.there.steps] == ["door", *one.there.leave_out, "door", "bunk"]


def test_of_two_that_want_one_place_only_one_is_left_outside_beside_those_under_the_bed() -> None:
    crates = "".join(thing(f"crate-{n}", 150 + n * 350, "left+150", 0, "300 x 400 x 700", CARGO) for n in range(4))
    crates += thing("one", 2200, "left", 0, "300 x 400 x 400", f"{CARGO}, when_sleeping: {{x: 3000, side: left, z: 0}}")
    crates += thing("two", 3000, "left", 0, "300 x 400 x 400", CARGO)
    out = told(rig_of(crates)).there.leave_out
    assert out[:4] == tuple(f"crate-{n}" for n in range(4))
    assert len(out) == 5 and out[4] in {"one", "two"}


@pytest.mark.parametrize(
    ("word", "says"),
    [("blocked", "nobody can come to it"), ("not-found", "is not known"), ("unknown", "is asked"), ("found", "")],
)
def test_a_night_is_said_to_be_out_of_reach_only_where_that_is_known(word: str, says: str) -> None:
    text = packed((4, 1))
    one = told(text)
    made = replace(one, there=replace(one.there, word=word))  # type: ignore[arg-type]
    found = [words for words in leaving_words(made, read_rig(text).rig.header.units) if words.startswith("That is of")]
    assert len(found) == bool(says) and all(says in words for words in found)


def test_that_who_carries_takes_no_room_is_said_where_it_matters_and_is_no_plain_yes() -> None:
    text = packed((4, 1))
    one, units = told(text), read_rig(text).rig.header.units
    assert any("Who carries takes no room" in note for note in card(one, units).notes)
    step = next(step for step in one.there.steps if step.word == "carry out")
    ways = (("bunk", "door", 3.0),)
    exits = (Freed("openings[door]", "door", "free"),)
    for steps, says, code in (((), False, 0), ((replace(step, word="open"),), False, 0), ((step,), True, 1)):
        out = Leaving("found", steps, ways, 60.0, exits)
        made = replace(one, out=out)
        assert ("Whoever carries takes no room" in next(iter(leaving_words(made, units)))) is says
        assert Asked(None, made).exit_code == code  # type: ignore[arg-type]
