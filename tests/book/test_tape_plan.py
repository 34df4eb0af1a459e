"""The printed plan to tape out on a floor: its points are marked, lettered and where two tapes find them."""

from __future__ import annotations

from fractions import Fraction
from math import hypot

import pytest

from boxwright.drawing import Sheet
from boxwright.drawing.mark import Point
from boxwright.drawing.page import Page
from boxwright.drawing.paper import LARGE
from tests.book.drawn import demo, pages
from tests.book.test_sheets import wrong

INCH = 25.4
NEAREST = 12.0
"""A letter further (mm on paper) from its mark would be looked for."""
RIGS = {
    "whimbrel": (demo("whimbrel"), INCH, 1 / 32),
    "dunlin": (demo("dunlin"), 1.0, 0.5),
    "wheel boxes": (wrong("a door in a wheel box", "wheel boxes"), 1.0, 0.5),
    "nose": (wrong("a door in a wheel box", "nose"), 1.0, 0.5),
}
EACH = pytest.mark.parametrize("name", sorted(RIGS))


def printed(name: str) -> tuple[Sheet, Page]:
    found = next(found for found in pages(RIGS[name][0], "letter") if found[0].name == "tape-plan")
    return found[0], found[1][0]


def marks(page: Page) -> set[Point]:
    """Return where on the paper a point is marked: a circle, with a cross or with quarters."""
    return {(round(one.centre[0], 3), round(one.centre[1], 3)) for one in page.curves if one.radius < 2.0}


def lettered(name: str) -> dict[str, Point]:
    """Return the mark that is nearest to each letter, on paper."""
    sheet, page = printed(name)
    found = {}
    for letter in (row[0] for row in sheet.grids[0].rows):
        (word,) = [one for one in page.words if one.text == letter and one.height == LARGE]
        assert not word.is_turned
        x, y = (word.box.left + word.box.right) / 2, (word.box.top + word.box.bottom) / 2
        away, found[letter] = min((hypot(at[0] - x, at[1] - y), at) for at in marks(page))
        assert away < NEAREST, letter
    return found


def length(words: str) -> float:
    return float(sum(Fraction(one) for one in words.split()))


@EACH
def test_every_point_of_the_tape_plan_is_marked_beside_its_letter(name: str) -> None:
    found = list(lettered(name).values())
    assert len(set(found)) == len(found) > 4, "each letter has a mark of its own"
    assert set(found) == marks(printed(name)[1])


@EACH
def test_two_tapes_find_every_point_of_the_tape_plan(name: str) -> None:
    """Distances taken off the paper with a rule are those of the table."""
    (sheet, page), (_, unit, rounding) = printed(name), RIGS[name]
    found = lettered(name)

    def away(one: Point, other: Point) -> float:
        return hypot(one[0] - other[0], one[1] - other[1]) / page.views[0].scale / unit

    for letter, _, rearward, across, from_a, from_b, _ in sheet.grids[0].rows:
        (x, y), (left, bottom) = found[letter], found["A"]
        within = rounding + 0.01 / page.views[0].scale / unit
        assert (x - left) / page.views[0].scale / unit == pytest.approx(length(rearward), abs=within)
        assert (bottom - y) / page.views[0].scale / unit == pytest.approx(length(across), abs=within)
        assert away((x, y), found["A"]) == pytest.approx(length(from_a), abs=within)
        assert away((x, y), found["B"]) == pytest.approx(length(from_b), abs=within)
