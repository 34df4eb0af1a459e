"""Which side is which on the walls that run across the trailer, and where they end above."""

from __future__ import annotations

from math import hypot, sqrt

import pytest

from boxwright.drawing.mark import Shape
from boxwright.drawing.page import Page
from tests.book.drawn import drawn, pages

BODY = """
boxwright: 1
rig: End
units: {length: mm, weight: kg}
trailer:
  body: {length: 2500, width: 1300, height: 1650}
frame:
  studs: {tube: 25 x 25 x 1.5, face: 25, depth: 25, every: 400, first: 0}
"""
LOADS = "loads:\n  empty: {cargo: none, for: [tow]}\n"
NOSES = {
    "flat": "",
    "tip of a hand": "  nose: {length: 600, tip: 100}\n",
    "tip of two": "  nose: {length: 600, tip: 200}\n",
    "blunt": "  nose: {length: 600, tip: 400}\n",
    "broad": "  nose: {length: 300, tip: 1000}\n",
}


def middle(page: Page, word: str) -> float:
    """Return where a word stands across the paper."""
    box = next(one.box for one in page.words if one.text == word)
    return (box.left + box.right) / 2.0


def page_of(text: str, sheet: str) -> Page:
    return next(printed[0] for one, printed in pages(text, "a4") if one.name == sheet)


@pytest.mark.parametrize("nose", sorted(NOSES))
@pytest.mark.parametrize("wall", ["front", "rear"])
def test_left_and_right_change_places_as_one_goes_round_an_end_wall(nose: str, wall: str) -> None:
    # Who stands before the trailer and looks at its front has the trailer's left side at the right hand.
    text = BODY + NOSES[nose] + LOADS
    outside, inside = (page_of(text, f"{wall}-{side}") for side in ("outside", "inside"))
    left_is_right = middle(outside, "LEFT") > middle(outside, "RIGHT")
    assert left_is_right == (wall == "front")
    assert (middle(inside, "LEFT") > middle(inside, "RIGHT")) != left_is_right


@pytest.mark.parametrize("nose", sorted(NOSES))
def test_the_order_names_the_sides_of_the_front_as_its_elevation_does(nose: str) -> None:
    openings = "openings:\n  hatch: {wall: front, side: centre, width: 60, z: 500, height: 60, by: trailer builder}\n"
    text = BODY + NOSES[nose] + openings + LOADS
    printed = next(found for one, found in pages(text, "a4") if one.name == "order")
    page = next(one for one in printed if any(word.text == "LEFT" for word in one.words))
    assert middle(page, "LEFT") > middle(page, "RIGHT")


def top_of(text: str, wall: str) -> list[float]:
    """Return the heights of a wall's upper edge at its two ends and at its highest point."""
    sheet = next(one for one in drawn(text)[0] if one.name == f"{wall}-inside")
    shape = next(mark for mark in sheet.views[0].marks if isinstance(mark, Shape))
    reach = [x for x, _ in shape.points]
    ends = [max(y for x, y in shape.points if abs(x - end) < 1e-9) for end in (min(reach), max(reach))]
    return [*ends, max(y for _, y in shape.points)]


def test_under_an_arched_roof_a_nose_ends_where_the_bows_of_the_body_do() -> None:
    text = BODY + "  bows: {every: 500, shape: arched, rise: 80}\n" + NOSES["blunt"] + LOADS
    # By hand: the radius of an arch 80 high over 1300, and its height 200 from the middle.
    radius = (0.65**2 + 0.08**2) / (2 * 0.08)
    tip = 1.65 - radius + sqrt(radius**2 - 0.2**2)
    assert top_of(text, "front") == pytest.approx([tip, tip, 1.65])
    assert sorted(top_of(text, "nose-left")) == pytest.approx([1.57, tip, tip])
    assert top_of(text, "rear") == pytest.approx([1.57, 1.57, 1.65])


def test_a_rounded_eave_is_drawn_on_the_wall_that_it_reaches() -> None:
    text = BODY + "  bows: {every: 500, shape: rounded, radius: 120}\n" + NOSES["blunt"] + LOADS
    assert top_of(text, "rear") == pytest.approx([1.53, 1.53, 1.65])
    assert top_of(text, "front") == pytest.approx([1.65, 1.65, 1.65])
    assert sorted(top_of(text, "nose-right")) == pytest.approx([1.53, 1.65, 1.65])
    sheet = next(one for one in drawn(text)[0] if one.name == "rear-inside")
    shape = next(mark for mark in sheet.views[0].marks if isinstance(mark, Shape))
    centres = {sign: (sign * (0.65 - 0.12), 1.53) for sign in (-1.0, 1.0)}
    round_ones = [(x, y) for x, y in shape.points if abs(x) > 0.53 and y > 1.53]
    assert len(round_ones) >= 14
    for x, y in round_ones:
        at = centres[1.0 if x > 0.0 else -1.0]
        assert hypot(x - at[0], y - at[1]) == pytest.approx(0.12)


@pytest.mark.parametrize("wall", ["front", "rear"])
def test_a_roof_lower_than_its_rise_is_marked_on_both_ends(wall: str) -> None:
    text = BODY + "  bows: {every: 500, shape: arched, rise: 2000}\n" + LOADS
    for side in ("outside", "inside"):
        page = page_of(text, f"{wall}-{side}")
        assert any(one.text.startswith("fault") and one.of == "frame.bows.rise" for one in page.words)
        sheet = next(one for one in drawn(text)[0] if one.name == f"{wall}-{side}")
        assert any("rise" in note and note.startswith("Fault") for note in sheet.notes)
