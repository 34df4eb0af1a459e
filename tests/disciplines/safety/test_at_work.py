"""Ways out of somebody in no bed: at work, and at night while no bed stands."""

from __future__ import annotations

import pytest

from tests.disciplines.safety.test_findings import edited, worked

WORK = ("for: [sleep, leave]", "for: [sleep, leave, work]")
ONE_DOOR = ("egress: wanted, release: inside, clear", "egress: no, clear")
DOOR = "stage: shell, cut: yes, done: yes, release: inside, swing"
BED = "  bed: {x: 500, side: centre, z: 300, size: 1900 x 800 x 300, weight: 60, stage: shell, done: yes}\n"
SHELF = "  shelf: {x: 2700, side: left, z: 0, size: 300 x %s x 1900, weight: 30, stage: shell, done: %s}"
BLOCK = "  block: {x: 0, side: left, z: 0, size: 4200 x 2000 x 900, weight: 30, stage: shell, done: yes}"
GENERATOR = "  gen: {x: 3350, side: right+500, z: -400, size: 600 x 500 x 900, weight: 30, stage: shell, done: yes}"
MORE = "  # one more"
LEAF = "to: %s deg}}\n  window"


def told(*edits: tuple[str, str]) -> list[tuple[str, str]]:
    """Return kind and words of what is said of the ways out at work."""
    found = worked(edited(WORK, ONE_DOOR, *edits), "work")
    return [(one.kind, one.says.partition(": ")[2]) for one in found if one.code == "safety/way-out-at-work"]


@pytest.mark.parametrize(
    ("edits", "said"),
    [
        ([], []),
        ([(MORE, SHELF % (2000, "yes"))], [("stop", "the way to door is shut by shelf")]),
        # by hand: the room is 1900 wide, so that 1480 leave 420; from 450 mm on nothing is asked
        (
            [(MORE, SHELF % (1480, "yes"))],
            [("unknown", "the way to door may be only 420 mm wide or high at shelf")],
        ),
        ([(MORE, SHELF % (1440, "yes"))], []),
        # nobody ticked it: there perhaps, so that it is in the way perhaps
        ([(MORE, SHELF % (2000, "part"))], [("unknown", "the way to door may be only 0 mm wide or high at shelf")]),
        ([(DOOR, DOOR.replace("done: yes", "done: part"))], [("unknown", "door is not ticked")]),
        ([(LEAF % 90, LEAF % 10)], [("stop", "nobody gets through what is clear of door")]),
        ([(LEAF % 90, LEAF % 50)], [("unknown", "door may be too small to get through")]),
        # whoever works inside came in by it
        ([(DOOR, DOOR.replace("release: inside", "release: none"))], []),
        # where nobody can stand nobody works
        ([(MORE, BLOCK)], []),
    ],
)
def test_one_way_out_that_is_free_is_enough_at_work(edits: list[tuple[str, str]], said: list[tuple[str, str]]) -> None:
    assert told(*edits) == said


def test_a_door_that_strikes_something_before_anybody_gets_through_shuts_in_whoever_works() -> None:
    ((kind, says),) = told((MORE, GENERATOR))
    assert (kind, says) == ("stop", "door is held shut by gen")


def test_a_second_way_out_that_is_free_makes_up_for_the_first() -> None:
    """The window is open to the front half, where the middle of the room is; the door lies behind the shelf."""
    found = worked(edited(WORK, (MORE, SHELF % (2000, "yes"))), "work")
    assert "safety/way-out-at-work" not in {one.code for one in found}


def test_a_way_out_that_is_to_come_helps_nobody_yet() -> None:
    window = ("stage: shell, cut: yes, done: yes, egress", "stage: later, egress")
    found = worked(edited(WORK, window, (MORE, SHELF % (2000, "yes"))), "work")
    assert [one.kind for one in found if one.code == "safety/way-out-at-work"] == ["stop"]


def test_no_stage_without_an_opening_is_stopped_for_it() -> None:
    """Before any door is in one works between bare studs."""
    later = (DOOR, DOOR.replace("stage: shell, cut: yes, done: yes", "stage: later"))
    assert told(later, (MORE, SHELF % (2000, "yes"))) == []


@pytest.mark.parametrize(("wide", "word"), [(2000, "the way to door is shut by shelf"), (1400, "")])
def test_where_no_bed_stands_the_ways_out_are_those_from_the_floor(wide: int, word: str) -> None:
    edits = ((BED, ""), (MORE, SHELF % (wide, "yes")))
    found = [one for one in worked(edited(*edits), "sleep") if one.code == "safety/two-ways-out"]
    assert [one.kind for one in found] == (["stop"] if word else [])
    assert all(word in one.says for one in found)


def test_where_nobody_can_stand_and_no_bed_is_in_nobody_gets_out() -> None:
    found = [one for one in worked(edited((BED, ""), (MORE, BLOCK)), "sleep") if one.code == "safety/two-ways-out"]
    assert [one.says.partition(":")[0] for one in found] == ["there is no way out"]
