"""A leaf that slides along its wall strikes what stands before the wall there. By hand, in inches.

The door is the hole from x = 20 to 48 in the right wall, 70 high; slid 28 to the rear its leaf ends at 76. It is 1.57
(40 mm) thick.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import said, told, words

STRIKES, UNSAID = "layout/opening-strikes", "layout/opening-unsaid"
SWUNG = "swing: {hinge: front, opens: in, to: 90 deg}"
POST = "  post: {x: %s, side: right%s, z: %s, size: 4 x 4 x 4, weight: 1, done: yes, stage: lined}\n"
FRIDGE = ("fridge: {x: 60", "fridge: {x: 136")


def slid(slides: str, unit: str = "") -> tuple[tuple[str, str], ...]:
    return ((SWUNG, f"slides: {{{slides}}}{unit}"), FRIDGE)


@pytest.mark.parametrize(
    ("slides", "post", "kinds"),
    [
        ("to: rear, by: 28, runs: inside", POST % (70, "-0", 20), ["fix"]),
        ("to: rear, by: 28, runs: inside", POST % (77, "-0", 20), []),
        ("to: rear, by: 28..30, runs: inside", POST % (77, "-0", 20), ["unknown"]),
        ("to: rear, by: 28, runs: inside", POST % (70, "-2", 20), []),
        ("to: rear, by: 28, runs: inside", POST % (70, "-0", 72), []),
        ("to: rear, by: 28", POST % (70, "-0", 20), ["unknown"]),
        ("to: rear, by: 28", POST % (70, "-2", 20), []),
        ("to: rear, by: 28, runs: outside", POST % (70, "-0", 20), []),
        ("to: rear, by: 28, runs: outside", POST % (70, "+6", 20), ["fix"]),
        ("to: rear, by: 28, runs: outside", POST % (77, "+6", 20), []),
        ("to: rear, by: 12, runs: in the wall", POST % (70, "-0", 20), []),  # its wall strikes it, no post before it
    ],
)
def test_what_stands_in_the_path_of_a_sliding_door_is_struck(slides: str, post: str, kinds: list[str]) -> None:
    assert told(STRIKES, slid(slides), post) == [(kind, "openings[door]") for kind in kinds]


def test_a_sliding_door_mirrored_is_told_alike() -> None:
    bed = ("bed: {x: 30, side: left, z: 27", "bed: {x: 85, side: left, z: 27")
    lamp = ("lamp: {x: 40", "lamp: {x: 144")
    left = (*slid("to: rear, by: 28, runs: inside"), ("door: {wall: right", "door: {wall: left"), bed, lamp)
    for x, kinds in ((70, ["fix"]), (77, [])):
        post = POST.replace("right%s", "left%s") % (x, "+0", 20)
        assert [kind for kind, where in told(STRIKES, left, post) if where == "openings[door]"] == kinds


def test_a_window_that_came_in_a_frame_of_its_own_slides_in_it() -> None:
    assert told(STRIKES, slid("to: rear, by: 28", ", unit: {weight: 9}"), POST % (70, "-0", 20)) == []
    assert told(UNSAID, slid("to: rear, by: 28", ", unit: {weight: 9}")) == []


def test_the_front_wall_stops_a_leaf_that_slides_too_far() -> None:
    assert "door strikes the front wall when it slides open: after 20 in of 28 in" in words(
        STRIKES, slid("to: front, by: 28, runs: inside")
    )
    assert told(STRIKES, slid("to: front, by: 20, runs: inside")) == []
    assert "nobody wrote on which side of its wall it runs" in words(STRIKES, slid("to: front, by: 28"))


@pytest.mark.parametrize("slides", ["to: left, by: 28", "to: rear", "to: rear, by: 28, runs: somewhere"])
def test_words_that_say_nothing_of_how_it_slides_are_asked_for(slides: str) -> None:
    assert ("unknown", "openings[door]") in told(UNSAID, slid(slides))


def test_a_sliding_door_that_has_room_says_nothing() -> None:
    assert said(slid("to: rear, by: 28, runs: inside")) == ()
