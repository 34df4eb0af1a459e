"""The printed plan to tape out on a floor: its points are marked, lettered and where two tapes find them."""

from __future__ import annotations

from fractions import Fraction
from math import dist, hypot
from random import Random

import pytest

from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.tape_things import ROOMY, STEPS, own_spot
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


@pytest.mark.parametrize("seed", range(40))
def test_a_number_stands_where_a_look_at_every_thing_would_put_it(seed: int) -> None:
    """Only what is near a thing is looked at; the other way looks at all there are."""
    draw = Random(seed)

    def drawn() -> Rect:
        x, y = draw.choice([0.0, 0.3, 0.33, 1.0]) + draw.random() * 0.2, draw.random()
        return x, y, x + draw.choice([0.1, 0.4, 0.8]), y + draw.choice([0.1, 0.4, 0.8])

    rect, others = drawn(), [drawn() for _ in range(draw.randint(0, 8))]
    x0, y0, x1, y1 = rect
    middle = (x0 + x1) / 2.0, (y0 + y1) / 2.0
    steps = range(1, STEPS)
    spots = [(x0 + (x1 - x0) * i / STEPS, y0 + (y1 - y0) * j / STEPS) for i in steps for j in steps]
    spots.sort(key=lambda spot: dist(spot, middle))

    def area(one: Rect) -> float:
        return (one[2] - one[0]) * (one[3] - one[1])

    def hides(one: Rect, spot: tuple[float, float], room: float) -> bool:
        return all(one[n] - room < spot[n] < one[n + 2] + room for n in (0, 1))

    smaller = [one for one in others if area(one) <= area(rect)]
    wanted = middle
    for some, room in ((others, ROOMY), (others, 0.0), (smaller, ROOMY), (smaller, 0.0)):
        free = [spot for spot in (middle, *spots) if not any(hides(one, spot, room) for one in some)]
        if free:
            wanted = free[0]
            break
    assert own_spot(rect, others) == wanted


def test_a_number_keeps_its_room_from_what_lies_beside_its_thing() -> None:
    """Nine tenths are covered: with 50 mm of room from what is beside it nothing is left, so the first that is free."""
    one = (0.0, 0.0, 1.0, 1.0)
    assert own_spot(one, [(-1.0, -1.0, 0.9, 2.0), (1.0, -1.0, 2.0, 2.0)]) == (22 / STEPS, 12 / STEPS)
    assert own_spot(one, [(0.1, -1.0, 2.0, 2.0), (-1.0, -1.0, 0.0, 2.0)]) == (2 / STEPS, 12 / STEPS)
