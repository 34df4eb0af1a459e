"""Ways out whose leaf slides: no more is clear than it uncovers, whether by its words, by what it strikes or a wall."""

from __future__ import annotations

import pytest

from boxwright.disciplines.safety.result import Exit
from boxwright.disciplines.safety.sheets import warning_of
from tests.disciplines.safety.test_findings import edited, worked
from tests.disciplines.safety.test_ways import MORE, kinds, result

SWING = "swing: {hinge: front, opens: out, to: 90 deg}"
LOST = ("stop", "two-ways-out", "openings[door]")
ASKED = ("unknown", "clear-opening", "openings[door]")
POST = "  post: {x: %s, side: right, z: 0, size: 50 x 100 x 900, weight: 5, stage: shell, done: yes}"


RUN = "to: front, by: 700, runs: inside"


def slides(words: str) -> tuple[tuple[str, str], tuple[str, str]]:
    """Return the edits that make the door of the small rig slide, with nothing on the wall it slides along."""
    return (SWING, f"slides: {{{words}}}"), ("x: 3000, wall: right", "x: 3000, wall: left")


def door_of(*edits: tuple[str, str]) -> Exit:
    """Return the door as a way out of the small rig with some edits."""
    (door,) = [one for one in result(*edits).exits if one.way.name == "door"]
    return door


@pytest.mark.parametrize(
    ("words", "clear", "found", "card"),
    [
        # By hand: a hole of 700 mm less 100 mm of frame, and never more than the leaf has slid.
        ("to: front, by: 700, runs: inside", (0.6, 0.6), set(), ""),
        ("to: front, by: 500, runs: inside", (0.5, 0.5), set(), ""),
        ("to: front, by: 350, runs: inside", (0.35, 0.35), {ASKED}, "PERHAPS TOO SMALL"),
        ("to: front, by: 200..700, runs: inside", (0.2, 0.6), {ASKED}, "PERHAPS TOO SMALL"),
        ("to: front, by: 200, runs: inside", (0.2, 0.2), {LOST}, "TOO SMALL"),
        ("to: front, by: 200, runs: in the wall", (0.2, 0.2), {LOST}, "TOO SMALL"),
        ("to: front, runs: inside", None, {ASKED}, None),
        ("to: right, by: 700, runs: inside", None, {ASKED}, None),
    ],
)
def test_no_more_is_clear_of_a_way_out_than_its_leaf_has_slid(
    words: str, clear: tuple[float, float] | None, found: set[tuple[str, str, str]], card: str | None
) -> None:
    door = door_of(*slides(words))
    assert {LOST, ASKED} & kinds(*slides(words)) == found
    if clear is None or card is None:
        assert door.clear is None
        return
    assert door.clear is not None
    assert (door.clear[0].low, door.clear[0].high) == pytest.approx(clear)
    assert warning_of(door) == card


def test_a_leaf_that_slides_up_uncovers_the_height() -> None:
    door = door_of(*slides("to: up, by: 250, runs: outside"))
    assert door.clear is not None
    assert (door.clear[0].best, door.clear[1].best) == pytest.approx((0.6, 0.25))
    assert door.is_too_small


@pytest.mark.parametrize(
    ("x", "left", "lost", "card"),
    [
        (3150, 0.10, True, "SHUT BY post"),
        (2900, 0.35, False, "PERHAPS SHUT BY post"),
        (2500, None, False, ""),
    ],
)
def test_a_leaf_that_slides_into_something_uncovers_no_more(x: int, left: float | None, lost: bool, card: str) -> None:
    """By hand: the front edge of the leaf is at 3300 mm, and the post ends 50 mm behind its own front edge."""
    edits = (*slides(RUN), (MORE, POST % x))
    door = door_of(*edits)
    assert warning_of(door) == card
    assert (LOST in kinds(*edits)) == lost
    assert ("unknown", "way-blocked", "openings[door]") in kinds(*edits) or card != "PERHAPS SHUT BY post"
    assert (door.struck is None) if left is None else (door.struck.metre.low == pytest.approx(left))  # type: ignore[union-attr]


def test_a_leaf_that_runs_against_the_end_of_the_room_uncovers_no_more() -> None:
    """By hand: 200 mm from the front edge of the door to the front wall of a room without lining."""
    near = (*slides(RUN), ("x: 3300, width", "x: 200, width"))
    door = door_of(*near)
    assert door.struck is not None
    assert door.struck.metre.high == pytest.approx(0.2)
    assert door.struck.to == "the front wall"
    assert LOST in kinds(*near)
    assert warning_of(door) == "SHUT BY the front wall"
    outside = (*slides(RUN.replace("inside", "outside")), ("x: 3300, width", "x: 200, width"))
    assert LOST not in kinds(*outside)


def test_a_lid_of_the_roof_hinged_along_the_trailer_uncovers_what_the_hole_is_across() -> None:
    """By hand: at 30 degrees half of 900 mm is clear between lid and edge, and the frame takes 100 mm of it."""
    hatch = "  hatch: {wall: roof, x: 900, side: centre, width: 700, across: 900, stage: shell, cut: yes, done: yes, "
    hatch += "release: inside, swing: {hinge: left, opens: up, to: 30 deg}}\n  vent:"
    (found,) = [one for one in result(("  vent:", hatch)).exits if one.way.name == "hatch"]
    assert found.clear is not None
    assert (found.clear[0].best, found.clear[1].best) == pytest.approx((0.6, 0.35))


@pytest.mark.parametrize("studs", ["", "frame:\n  studs: {tube: 25 x 25 x 1.5 mm, every: 400, first: 0}\nopenings:"])
def test_a_leaf_that_strikes_studs_in_its_wall_says_of_which_wall_they_are(studs: str) -> None:
    edits = (*slides("to: front, by: 690, runs: in the wall"), *([("openings:", studs)] if studs else []))
    door = door_of(*edits)
    assert door.struck is not None
    assert warning_of(door) == f"{'' if studs else 'PERHAPS '}SHUT BY the studs of the right wall"
    told = [one for one in worked(edited(*edits), "sleep") if "openings[door]" in (one.where, *one.because)]
    assert any("the studs of the right wall" in one.says for one in told)
    assert not any("frame.studs" in words for one in told for words in (one.says, one.act, one.lever))
    assert not any("wall stops" in words for one in told for words in (one.says, one.act)), "studs are several"


def test_where_others_are_left_it_is_told_what_a_leaf_in_its_wall_leaves() -> None:
    ramp = "  ramp: {wall: rear, side: centre, width: 1500, z: 0, height: 1800, stage: shell, cut: yes, done: yes, "
    ramp += "release: inside, swing: {hinge: bottom, opens: out, to: 90 deg}}\n  vent:"
    studs = ("openings:", "frame:\n  studs: {tube: 25 x 25 x 1.5 mm, every: 400, first: 0}\nopenings:")
    edits = (*slides("to: front, by: 690, runs: in the wall"), studs, ("  vent:", ramp))
    (one,) = [one for one in worked(edited(*edits), "sleep") if one.code == "safety/way-blocked"]
    assert one.says.startswith("past the studs of the right wall ") and "of door is left to get through" in one.says
    assert (one.act or "").endswith("go another way, not against the studs of the right wall")
