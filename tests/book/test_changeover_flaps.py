"""A flap or a berth nobody sleeps on in a change-over: it is left up, and may be down; safety says the same of it."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.book.changeover import ChangeOver, change_over
from boxwright.book.changeover_ends import ends_of
from boxwright.book.changeover_words import asked_words
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.book.test_changeover_as_safety import nights, told_apart
from tests.disciplines.layout.small_rigs import DONE, mirrored, rig_of

JUDGED_ON = date(2026, 6, 1)
ACROSS = (
    "flap: {x: 2100, side: right, z: 700, size: 450 x 1900 x 30, weight: 6, stage: all, done: yes, folds: up, "
    "folded_depth: 60, hinge: {edge: right}}\n"
)
"""Down it is across the whole room, between the bed and both ways out."""
ASIDE = ACROSS.replace("x: 2100", "x: 1200").replace("450 x 1900", "900 x 500")


def told(text: str, back: bool = False) -> ChangeOver:
    rig = read_rig(text).rig
    ends = ends_of(rig)
    assert ends[0] is not None and ends[1] is not None
    start, goal = ends[::-1] if back else ends
    slot = study(rig, JUDGED_ON, stage=0, use="tow", ticked=False).slots[0]
    assert start is not None and goal is not None
    return change_over(rig, slot, start, goal)


def apart(text: str) -> list[tuple[str, str, str, str]]:
    rig = read_rig(text).rig
    return [one for slot in nights(rig) for one in told_apart(rig, slot)]


@pytest.mark.parametrize("is_mirrored", [False, True])
def test_a_flap_nobody_sleeps_on_is_left_up(is_mirrored: bool) -> None:
    text = rig_of(ASIDE)
    found = told(mirrored(text) if is_mirrored else text)
    assert [(one.name, one.word) for one in found.there.steps] == [("bunk", "let down")]
    assert [(one.name, one.word) for one in found.back.steps] == [("bunk", "fold up")]
    assert [(one.name, one.word) for one in told(text, back=True).there.steps] == [("bunk", "fold up")]
    assert found.out is not None and (found.out.word, [one.word for one in found.out.exits]) == ("found", ["free"] * 2)
    assert [*asked_words(found)] == [] and apart(text) == []


@pytest.mark.parametrize("back", [False, True])
def test_no_way_out_counts_that_hangs_on_a_flap_being_up(back: bool) -> None:
    text = rig_of(ACROSS)
    found = told(text, back)
    assert found.out is not None
    assert found.out.word == "untried" and found.out.seconds is None
    assert [(one.word, one.by) for one in found.out.exits] == [("unknown", ("flap",))] * 2
    assert [one for one in asked_words(found) if "whether flap is up or down at night" in one] != []
    assert apart(text) == []


def test_by_day_it_is_where_it_is_put() -> None:
    """Before the bunk is let down somebody gets out by both."""
    found = told(rig_of(ACROSS))
    assert [one.word for one in found.there.before] == ["free", "free"]


@pytest.mark.parametrize(
    "edit",
    [
        ("sleeps: bunk", "sleeps: flap"),
        ("edge: right}}", "edge: right}, when_sleeping: {x: 2100, side: right, z: 700}}"),
        ("people: [owner]", "people: [owner, second]"),  # nobody knows on what the second sleeps
    ],
)
def test_a_flap_that_is_slept_on_or_has_its_place_at_night_is_let_down(edit: tuple[str, str]) -> None:
    text = rig_of(ACROSS).replace("people:\n", "people:\n  second: {weight: 60, height: 1600}\n")
    assert edit[0] in text
    text = text.replace("people: [owner]", "people: [owner]" if edit[0] != "people: [owner]" else edit[1])
    found = told(text.replace(*edit))
    assert ("flap", "let down") in [(one.name, one.word) for one in found.there.steps]


def test_what_rides_on_it_stays_with_it_and_what_has_its_place_on_it_at_night_wants_it_down() -> None:
    lamp = f"lamp: {{rides_on: flap, x: +100, side: +100, z: +30, size: 100 x 100 x 40, {DONE}}}\n"
    found = told(rig_of(ASIDE + lamp))
    assert [one.name for one in found.there.steps] == ["bunk"]
    elsewhere = lamp.replace(DONE, f"{DONE}, when_sleeping: {{x: 2200, side: left, z: 0}}")
    assert [one.name for one in told(rig_of(ASIDE + elsewhere)).there.steps] == ["lamp", "bunk"]
    bag = "bag: {x: 2200, side: left, z: 0, size: 300 x 300 x 300, weight: 4, kind: cargo, "
    bag += "when_sleeping: {x: 1400, side: right-50, z: 730}}\n"
    steps = [(one.name, one.word) for one in told(rig_of(ASIDE + bag)).there.steps]
    assert ("flap", "let down") in steps and steps.index(("flap", "let down")) < steps.index(("bag", "shift"))
    assert apart(rig_of(ASIDE + bag)) == [] == apart(rig_of(ASIDE + lamp))


@pytest.mark.parametrize("folds", ["folds: up, folded_depth: 60, hinge: {edge: right}", "kind: table"])
def test_what_is_out_at_night_is_carried_out_though_it_is_no_cargo(folds: str) -> None:
    text = rig_of(ACROSS.replace("folds: up, folded_depth: 60, hinge: {edge: right}", f"{folds}, when_sleeping: out"))
    found = told(text)
    assert ("flap", "carry out") in [(one.name, one.word) for one in found.there.steps]
    assert ("flap", "carry in") in [(one.name, one.word) for one in found.back.steps]
    assert found.out is not None and {one.word for one in found.out.exits} == {"free"}
    assert apart(text) == []
