"""Lids hinged in the roof and the floor are judged as doors are: up against what is there, down into the room.

By hand, in inches: the hole is 24 x 20 from x = 100 on; a lid in the roof lies 0 to 3.15 (80 mm) over the bows.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import said, told, words

STRIKES, UNSAID = "layout/opening-strikes", "layout/opening-unsaid"
HATCH = "  hatch: {wall: %s, x: 100, width: 24, across: 20, side: %s, cut: yes, done: yes, stage: lined, %s}\n  window:"
BAR = "  bar: {x: %s, side: %s, z: %s, size: %s, weight: 1, done: yes, stage: lined}\n"


def edits(how: str, wall: str = "roof", side: str = "centre") -> tuple[tuple[str, str], ...]:
    return (("  window:", HATCH % (wall, side, how)),)


def swing(hinge: str, opens: str, to: str = "90 deg") -> str:
    return f"swing: {{hinge: {hinge}, opens: {opens}, to: {to}}}"


@pytest.mark.parametrize(
    ("how", "bar", "kinds"),
    [
        # a rack over the hole, 15 in to 17 in behind the hinge and as high: 21 in to 23 in from it
        (swing("front", "up"), BAR % (115, "centre", "bows+15", "2 x 30 x 2"), ["fix"]),
        (swing("front", "up"), BAR % (120, "centre", "bows+15", "2 x 30 x 2"), ["unknown"]),
        (swing("front", "up"), BAR % (121, "centre", "bows+17", "2 x 30 x 2"), []),
        (swing("rear", "out"), BAR % (107, "centre", "bows+15", "2 x 30 x 2"), ["fix"]),
        ("unit: {weight: 3}", BAR % (115, "centre", "bows+15", "2 x 30 x 2"), ["unknown"]),
        ("unit: {weight: 3}", BAR % (70, "centre", "bows+4", "25 x 20 x 2"), []),
        # beside its hinge it is met only by a lid that is laid back
        (swing("front", "up", "170 deg"), BAR % (70, "centre", "bows+4", "25 x 20 x 2"), ["fix"]),
        ("swing: {hinge: front, opens: up}", BAR % (70, "centre", "bows+4", "25 x 20 x 2"), ["unknown"]),
        (swing("front", "up"), BAR % (70, "centre", "bows+4", "25 x 20 x 2"), []),
        # what is inside is in nobody's way
        (swing("front", "up"), BAR % (110, "centre", 68, "4 x 4 x 4"), []),
        (swing("left", "in"), BAR % (110, "centre+4", 68, "4 x 4 x 4"), ["fix"]),
        (swing("left", "in"), BAR % (110, "centre+4", 50, "4 x 4 x 4"), []),
        (swing("left", "in"), BAR % (110, "centre+4", "bows+4", "4 x 4 x 4"), []),
    ],
)
def test_a_lid_in_the_roof_strikes_what_is_in_its_way(how: str, bar: str, kinds: list[str]) -> None:
    assert told(STRIKES, edits(how), bar) == [(kind, "openings[hatch]") for kind in kinds]


def test_a_lid_in_the_roof_mirrored_is_told_alike() -> None:
    for hinge, side, at in (("left", "left+10", "left+18"), ("right", "right-10", "right-18")):
        bar = BAR % (110, at, "bows+8", "4 x 4 x 4")
        assert told(STRIKES, edits(swing(hinge, "up"), side=side), bar) == [("fix", "openings[hatch]")]
        off = BAR % (110, at, "bows+24", "4 x 4 x 4")
        assert told(STRIKES, edits(swing(hinge, "up"), side=side), off) == []


def test_a_lid_of_two_halves_meets_only_half_as_high() -> None:
    high, low = (BAR % (110, "left+34", f"bows+{z}", "4 x 4 x 2") for z in (14, 6))
    assert told(STRIKES, edits(swing("both sides", "up"), side="left+30"), high) == []
    assert told(STRIKES, edits(swing("both sides", "up"), side="left+30"), low) == [("fix", "openings[hatch]")]
    # over a lid hinged 1 in beside it, and 10 in from one that were hinged at its front or rear: a half reaches 10 in
    # up, and lies 0 to 3.1 in over the bows, nobody wrote how high
    for z, kind in ((8, "fix"), (10.5, "unknown")):
        beside = BAR % (110, "left+31", f"bows+{z}", "4 x 2 x 4")
        assert told(STRIKES, edits(swing("both sides", "up"), side="left+30"), beside) == [(kind, "openings[hatch]")]


def test_a_lid_that_comes_down_into_the_room_is_stopped_by_its_wall_and_takes_headroom() -> None:
    laid_back = edits(swing("left", "in", "170 deg"), side="left+10")
    assert "hatch strikes the left wall when it opens: after 120 deg of 170 deg" in words(STRIKES, laid_back)
    # 20 in of lid under a ceiling of 78 in, and 65 in of owner with 2 in of air
    assert "cannot stand upright in the room where hatch hangs open: 58 in is free" in words(
        "layout/headroom-low", edits(swing("left", "in"))
    )
    assert told("layout/headroom-low", edits(swing("left", "in", "30 deg"))) == []
    assert told("layout/headroom-low", edits(swing("left", "in", "170 deg"))) == [("advice", "people[owner]")]
    assert told("layout/headroom-low", edits(swing("left", "up"))) == []


def test_a_lid_in_the_floor_is_held_down_by_what_stands_on_it() -> None:
    box = BAR % (110, "centre+4", 0, "4 x 4 x 4")
    for opens in ("up", "in"):
        assert told(STRIKES, edits(swing("left", opens), "floor"), box) == [("fix", "openings[hatch]")]
        assert told(STRIKES, edits(swing("left", opens), "floor")) == []
    assert told(STRIKES, edits(swing("left", "down"), "floor"), box) == []


@pytest.mark.parametrize(("hinge", "opens"), [("top", "up"), ("front", "sideways")])
def test_words_that_say_nothing_of_a_lid_are_asked_for(hinge: str, opens: str) -> None:
    assert told(UNSAID, edits(swing(hinge, opens))) == [("unknown", "openings[hatch]")]


def test_a_hatch_that_has_room_says_nothing() -> None:
    assert said(edits(swing("front", "up"))) == ()
