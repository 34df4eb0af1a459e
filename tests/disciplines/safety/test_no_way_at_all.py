"""Where it is certain that nobody gets out, sleeping is stopped in every country; where one may, it is asked."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import DOOR as DOOR_OF_LAYOUT
from tests.disciplines.layout.small_rigs import TODAY, rig_of
from tests.disciplines.safety.test_findings import edited, worked
from tests.disciplines.safety.test_ways import BIN, DOOR, MORE

UK = ("countries: [US-NC]", "countries: [UK]")
"""No rule on how many ways out is known there, so that only our own is left."""
WINDOW = "egress: wanted, release: inside, clear: {width: 700, height: 500}"
NO_DOOR = (DOOR, DOOR.replace("inside", "none"))
UNMEASURED = WINDOW.replace(", clear: {width: 700, height: 500}", "")
DEVICE = "  handle: {x: 100, side: left, z: 0, size: 50 x 50 x 50, weight: 1, stage: shell, release: window%s}"


def told(*edits: tuple[str, str]) -> tuple[str, str]:
    """Return kind and words of what is said of the number of ways out."""
    (one,) = [one for one in worked(edited(*edits), "sleep") if one.code == "safety/two-ways-out"]
    return one.kind, one.says


@pytest.mark.parametrize(
    "window",
    [
        WINDOW.replace("inside", "none"),
        UNMEASURED.replace("inside", "none"),
        WINDOW.replace("inside", "key"),
        WINDOW.replace("inside", "tool"),
        WINDOW.replace("width: 700", "width: 299"),
    ],
)
def test_no_leaf_that_can_serve_is_a_stop_whatever_its_size(window: str) -> None:
    kind, says = told(UK, NO_DOOR, (WINDOW, window))
    assert kind == "stop"
    assert says.startswith("there is no way out of bed: ")


@pytest.mark.parametrize(
    ("window", "says"),
    [
        (WINDOW, "the only way out of bed is window, and two are wanted: "),
        (UNMEASURED, "the only way out of bed may be window, and two are wanted: "),
        (WINDOW.replace("release: inside, ", ""), "the only way out of bed may be window, and two are wanted: "),
        (WINDOW.replace("width: 700", "width: 250..700"), "the only way out of bed may be window, and two are wanted"),
        (WINDOW.replace("wanted", "unknown"), "the only way out of bed may be window, and two are wanted: "),
    ],
)
def test_one_that_may_serve_is_a_question_and_is_said_to_be_sure_only_where_it_is(window: str, says: str) -> None:
    kind, words = told(UK, NO_DOOR, (WINDOW, window))
    assert (kind, words[: len(says)]) == ("unknown", says)
    assert told(NO_DOOR, (WINDOW, window))[0] == "stop", "where two are asked for by a rule one is too few"


@pytest.mark.parametrize("old", ["stage: shell, cut: yes, done: yes, egress"])
def test_one_that_may_be_in_is_a_question(old: str) -> None:
    kind, says = told(UK, NO_DOOR, (old, old.replace("done: yes", "done: part")))
    assert (kind, says[:20]) == ("unknown", "there is no way out ")
    later = (old, old.replace("shell, cut: yes, done: yes", "later"))
    assert told(UK, NO_DOOR, later)[0] == "stop", "one that goes in later lets nobody out today"


def test_a_release_that_may_be_fitted_may_let_somebody_out() -> None:
    barred = (WINDOW, WINDOW.replace("inside", "none"))
    assert told(UK, NO_DOOR, barred, ("  # one more", DEVICE % ", done: no"))[0] == "stop"
    assert told(UK, NO_DOOR, barred, ("  # one more", DEVICE % ", done: part"))[0] == "unknown"
    other = (DEVICE % ", done: part").replace("release: window", "release: vent")
    assert told(UK, NO_DOOR, barred, ("  # one more", other))[0] == "stop"


def test_one_of_two_ways_that_stand_is_no_certain_stop() -> None:
    assert told(UK, NO_DOOR)[0] == "unknown"


def test_at_dunlin_before_its_hatch_crates_before_the_only_doors_are_a_stop() -> None:
    text = (Path(__file__).parents[3] / "rigs" / "dunlin.yaml").read_text(encoding="utf-8")
    found = study(read_rig(text).rig, date(2026, 6, 7), stage=1).findings("sleep")
    assert {(one.kind, one.says) for one in found if one.code == "safety/two-ways-out"} == {
        ("stop", "there is no way out: the way to rear is shut by bowls-crates and side-hatch is not in")
    }


BED = "bed: {x: %s, z: 300, size: 1900 x 800 x %s, weight: 60, stage: shell, done: yes%s}"
FOLDING = (BED % ("500, side: centre", 300, ""), BED % ("2300, side: right", 100, "%s"))
INWARD = ("swing: {hinge: front, opens: out, to: 90 deg}", "swing: {hinge: front, opens: in, to: 90 deg}")


def test_a_door_held_shut_by_a_bed_that_folds_up_is_a_question_and_says_what_is_folded() -> None:
    """By hand: the bed lies from 2300 to 4200 along the right wall; the door opens in over 3300 to 4000."""
    folds = (FOLDING[0], FOLDING[1] % ", folds: up, folded_depth: 100, hinge: {edge: right}")
    barred = (WINDOW, WINDOW.replace("inside", "none"))
    kind, says = told(UK, INWARD, folds, barred)
    assert (kind, says[:28]) == ("unknown", "there is no way out of bed: ")
    assert "door is held shut by bed until that is folded up" in says
    kind, says = told(UK, INWARD, (FOLDING[0], FOLDING[1] % ""), barred)
    assert kind == "stop"
    assert "door is held shut by bed and" in says
    assert told(INWARD, folds)[0] == "stop", "a way that is to be cleared first is no unobstructed one"


def test_where_no_opening_is_meant_to_be_left_by_it_is_asked() -> None:
    """What is not written may be there: of a file with vents alone nobody knows that there is no door."""
    door = ("release: inside, swing: {hinge: front", "release: inside, egress: no, swing: {hinge: front")
    kind, says = told(UK, door, (WINDOW, WINDOW.replace("wanted", "no")))
    assert (kind, says) == ("unknown", "there is no way out of bed")


def test_a_door_that_something_may_hold_shut_may_be_the_only_way_out() -> None:
    barred = (WINDOW, WINDOW.replace("inside", "none"))
    assert told(UK, barred)[1].startswith("the only way out of bed is door, and two are wanted")
    doubt = told(UK, barred, (MORE, BIN % ("3500..3800", 450)))
    assert doubt[1].startswith("the only way out of bed may be door, and two are wanted")


def test_what_may_be_in_the_way_of_a_leaf_takes_nothing_for_certain() -> None:
    """Ticked in part, it may be there; then the door may be held shut, and is not surely lost."""
    struck = BIN % ("3650", 330)
    barred = (WINDOW, WINDOW.replace("inside", "none"))
    assert told(UK, barred, (MORE, struck))[0] == "stop"
    assert told(UK, barred, (MORE, struck.replace("done: yes", "done: part")))[0] == "unknown"


def test_several_in_one_box_of_which_nobody_wrote_where_each_is_shut_no_way_for_certain() -> None:
    """One box of so much before the door shuts the way to it; three in it of which two may lie on the third do not."""
    barred = (WINDOW, WINDOW.replace("inside", "none"))
    crate = "  crate: {x: 3000, side: right, z: 0, size: 1200 x 1100 x 900, weight: 9, stage: shell, done: yes%s}"
    assert told(UK, barred, (MORE, crate % ""))[0] == "stop"
    assert told(UK, barred, (MORE, crate % ", count: 3"))[0] == "unknown"


def test_what_is_named_as_a_cause_is_named_once() -> None:
    """One way out is left and nothing else was ever to be one, so that it is told at the bed itself."""
    openings = f"egress: no, {DOOR_OF_LAYOUT}"
    (one,) = [
        one
        for one in study(read_rig(rig_of(door=openings)).rig, TODAY).findings("sleep")
        if one.code == "safety/two-ways-out"
    ]
    assert (one.where, one.because) == ("parts[bunk]", ("parts[bunk]",))
