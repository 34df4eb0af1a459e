"""What holds a leaf of a door by which something is brought in: what is perhaps there, what is brought in, what goes.

By hand, in inches: as in ``test_held_doors``; the lath begins 10 behind the hinge and 12 off the wall.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.test_held_doors import (
    DOUBT,
    INWARD,
    LATH,
    NO_WAY,
    OUTWARD,
    STEP,
    brought_of,
    text_of,
    told,
)
from tests.disciplines.layout.test_past_a_leaf import CHEST
from tests.disciplines.layout.test_past_a_leaf import text_of as chest_of


def now(text: str) -> str:
    """Return a rig of the next stage, at which things come in past what is of an earlier one, ticked or not."""
    return text.replace("today: {stage: now}", "today: {stage: next}").replace("stage: last", "stage: next")


PART = ("done: yes", "done: part")


def test_what_is_perhaps_there_may_hold_a_leaf_or_not() -> None:
    assert told(now(text_of(INWARD, LATH))) == NO_WAY
    assert told(now(text_of(INWARD, LATH.replace(*PART)))) == DOUBT
    assert told(now(text_of(OUTWARD, STEP.replace(*PART)))) == [("doubt", ("step",), ("door",), ("step",))]


def test_a_door_that_is_perhaps_there_is_no_sure_way_in() -> None:
    found = now(text_of(OUTWARD)).replace("cut: yes", "stage: now, cut: yes, done: part")
    assert [(one.word, one.doors) for one in brought_of(found)] == [("doubt", (("openings[door]", "door"),))]


def test_what_pokes_out_through_the_wall_beside_a_door_is_inside_to_a_leaf_that_opens_out() -> None:
    """From 34.5 to 42.5 off the middle, and the outer face is at 42."""
    pipe = "pipe: {x: 30, side: right+2.5, z: 2, size: 4 x 8 x 4, weight: 4, stage: now, done: yes}"
    assert told(text_of(OUTWARD, pipe)) == []


def test_what_is_brought_in_holds_no_leaf_itself() -> None:
    """It is perhaps in its place already, before the door that opens in over it."""
    own = now(CHEST).replace("x: 0, side: right", "x: 30, side: right-12").replace("next", "now, done: part")
    assert told(now(chest_of(INWARD, own % "14 x 14 x 14"))) == []


def test_of_two_in_the_way_the_one_is_named_without_which_there_is_a_way() -> None:
    """A lath 4 to 14 behind the hinge, 24 off the wall, stops the leaf at atan(24 / 14) = 60 deg: 14 of 28 are left."""
    lath = LATH.replace("x: 30, side: right-12", "x: 24, side: right-24")
    stool = "stool: {x: 70, side: left, z: 0, size: 8 x 8 x 60, weight: 4, stage: now, done: yes}"
    (found,) = brought_of(text_of(INWARD, lath, stool))
    assert (found.word, found.by) == ("no way", (("parts[lath]", "lath"),))


@pytest.mark.parametrize(("wide", "words"), [(28, []), (28.2, ["large"])])
def test_a_leaf_that_stands_open_takes_nothing_off_its_hole(wide: float, words: list[str]) -> None:
    chest = CHEST.replace("x: 0, side: right", "x: 100, side: left") % f"{wide} x 30 x 40"
    assert [one.word for one in brought_of(chest_of(INWARD, chest).replace("height: 70", "height: 41"))] == words


def test_where_no_stud_is_known_nobody_knows_how_far_a_door_goes_into_its_wall() -> None:
    text = chest_of("slides: {to: rear, by: 28, runs: in the wall}", CHEST.replace("x: 0", "x: 100") % "18 x 20 x 24")
    bare = text.replace("frame:\n  studs: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}\n", "")
    assert bare != text
    (found,) = brought_of(bare)
    assert (found.word, found.doors) == ("doubt", (("openings[door]", "door"),))


def test_a_wire_in_the_wall_holds_the_door_that_slides_there() -> None:
    """It runs 40 over the deck from 50 to the rear, and the door would come as far as 62."""
    text = chest_of("slides: {to: rear, by: 14, runs: in the wall}", CHEST.replace("x: 0", "x: 100") % "12 x 13 x 14")
    assert told(text) == []
    wired = text.replace("stages:", WIRED)
    (found,) = brought_of(wired)
    assert (found.word, found.held) == ("no hole", (("wires[feed]", "wire feed"),))


WIRED = """  one: {x: 60, side: right, z: 40, size: 2 x 1 x 2, weight: 1, stage: now, done: yes}
  two: {x: 120, side: right, z: 40, size: 2 x 1 x 2, weight: 1, stage: now, done: yes}
wires:
  feed: {from: one, to: two, route: right x50 z40 > x120, gauge: 16 AWG, stage: now, done: yes}
stages:"""
