"""Names on a page: none hides what it names, none stands where another thing is, each has a number where it must."""

from __future__ import annotations

from itertools import pairwise
from math import hypot

import pytest

from boxwright.drawing import Grid, Mark, Sheet, Text, View
from boxwright.drawing.layout import laid_out
from boxwright.drawing.page import Page
from boxwright.drawing.paper import LETTER
from tests.book.test_poses import drawn
from tests.drawing.judge import faults
from tests.drawing.sample import TITLE, at, rectangle

ROOM = rectangle(0, 0, 160, 80, "visible", "room")
PLANS = [(name, stage, sheet) for name, stage in (("whimbrel", 10), ("dunlin", 5)) for sheet in
         ("plan-travel", "plan-night", "plan-work", "exits")]  # fmt: skip


def page_of(*marks: Mark) -> Page:
    sheet = Sheet("s", "s", (View("room", "", (ROOM, *marks)),))
    (page,) = laid_out(sheet, LETTER, TITLE)
    assert faults(sheet, (page,)) == []
    return page


@pytest.mark.parametrize("may_move", [True, False])
def test_a_name_never_hides_the_small_thing_it_names(may_move: bool) -> None:
    """By hand: at 1:20 a socket of 4 x 2 in is 5 x 2.5 mm on paper, its rim 15 mm; the word is longer."""
    socket = rectangle(78, 39, 4, 2, "dimension", "socket")
    page = page_of(socket, Text(at(80, 40), "socket", "socket", "small", may_move=may_move))
    rim = [one for one in page.strokes if one.of == "socket" and one.belongs == "view"]
    ends = [(*one.points, one.points[0]) if one.is_closed else one.points for one in rim]
    drawn_of_it = sum(hypot(b[0] - a[0], b[1] - a[1]) for points in ends for a, b in pairwise(points))
    assert drawn_of_it == pytest.approx(12 * 25.4 * page.views[0].scale), "the word runs over what it names"
    assert "socket" in {one.text for one in page.words}


def test_a_name_that_is_led_stands_on_no_other_thing_s_point() -> None:
    """A name without room at its own place goes round the next one's, which is written later."""
    stands = rectangle(60, 38, 40, 4, "visible", "shut", "none")
    names = [
        Text(at(80, 40), "a thing with no room for its name", "shut"),
        Text(at(80, 50.5), "x", "small-one", "small"),
    ]
    page = page_of(stands, *names)
    (view,) = page.views
    point = view.origin[0] + 80 * 25.4 * view.scale, view.origin[1] - 50.5 * 25.4 * view.scale
    for one in page.words:
        if one.of == "shut":
            assert not (one.box.left < point[0] < one.box.right and one.box.top < point[1] < one.box.bottom)


@pytest.mark.parametrize(("name", "stage", "which"), PLANS)
def test_no_led_name_of_a_demo_stands_on_another_thing_s_point(name: str, stage: int, which: str) -> None:
    sheet = drawn(name, stage)[which]
    page = laid_out(sheet, LETTER, TITLE)[0]
    (view,) = page.views
    led = {one.of for one in page.strokes if one.belongs == "note" and len(one.points) == 2}
    points = {}
    for mark in sheet.views[0].marks:
        if isinstance(mark, Text):
            x, y = (view.origin[axis] + sign * mark.at[axis] * 1000.0 * view.scale for axis, sign in ((0, 1), (1, -1)))
            points[mark.of] = (x, y)
    wrong = [
        (one.text, of)
        for one in page.words
        if one.belongs == "view" and one.of in led
        for of, (x, y) in points.items()
        if of != one.of
        and one.box.left < x < one.box.right
        and one.box.top < y < one.box.bottom
        and hypot(x - points.get(one.of, (0.0, 0.0))[0], y - points.get(one.of, (0.0, 0.0))[1]) > 1.5
    ]
    assert wrong == []


def test_numbers_that_find_no_room_are_ringed_as_they_are() -> None:
    """A number of a number is looked up twice: 24 in a ring is thing 24, and no key says so."""
    crowd = tuple(Text(at(79 + one % 9 * 0.25, 39 + one // 9 * 0.25), str(100 + one), f"p{one}") for one in range(81))
    pages = laid_out(Sheet("n", "n", (View("crowd", "", (ROOM, *crowd)),)), LETTER, TITLE)
    rings = {one.text for page in pages for one in page.words if one.belongs == "note"}
    assert rings and rings <= {mark.words for mark in crowd}
    keyed = [one.text for page in pages for one in page.words if one.belongs == "grid" and not one.is_bold]
    assert not {one for one in keyed if one.isdigit()} & rings


def test_a_long_table_begins_where_most_of_it_has_room() -> None:
    """Beside a key of two rows a table may be as high as the page: it does not stop where the key does."""
    key = Grid("key", ("no.", "what"), (("1", "wheel"), ("2", "latch")), ("", ""))
    rows = tuple(
        (f"thing {one}", "108 15/16 in", "120 in", "14 in", "16 in x 12 in x 12 in and more") for one in range(40)
    )
    long = Grid("things", ("thing", "rearward", "from the left", "over the floor", "size"), rows, ("",) * 40)
    first = laid_out(Sheet("g", "g", grids=(key, long)), LETTER, TITLE)[0]
    texts = [one.text for one in first.words]
    assert "latch" in texts
    # a page of LETTER takes 27 rows of one line under a title and a head
    assert sum(one.startswith("thing ") for one in texts) > 20
