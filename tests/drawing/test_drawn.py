"""What a page shows, measured on it: scale, dimensions, bars, hatches, tables, pieces to be glued."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import hypot, pi

import pytest

from boxwright.drawing import Dimension, Grid, Line, Mark, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.layout import laid_out
from boxwright.drawing.mark import Side
from boxwright.drawing.page import Page
from boxwright.drawing.paper import A4, LETTER, SCALES, Paper
from tests.drawing.judge import crosses, faults
from tests.drawing.sample import IN, TITLE, at, inches, rectangle, sheet

PAPERS = pytest.mark.parametrize("paper", [LETTER, A4], ids=lambda one: one.name)


def words(page: Page) -> list[str]:
    """Return the lines of text of a page."""
    return [one.text for one in page.words]


@PAPERS
def test_every_stud_stands_where_the_scale_puts_it(paper: Paper) -> None:
    page = laid_out(sheet(), paper, TITLE)[0]
    (view,) = page.views
    assert view.scale in SCALES
    for number in range(1, 11):
        (stroke,) = [one for one in page.strokes if one.of == f"frame.studs.left.{number}" and one.is_closed]
        across = [point[0] for point in stroke.points]
        middle = (min(across) + max(across)) / 2
        assert (middle - view.origin[0]) / view.scale / 25.4 == pytest.approx(16.0 * number, abs=1e-6)
        assert max(across) - min(across) == pytest.approx(25.4 * view.scale)


@PAPERS
def test_every_dimension_measures_what_it_says(paper: Paper) -> None:
    page = laid_out(sheet(), paper, TITLE)[0]
    (view,) = page.views
    asked = [mark for mark in sheet().views[0].marks if isinstance(mark, Dimension)]
    assert len(page.dimensions) == len(asked)
    for one in page.dimensions:
        axis = 0 if one.side in ("above", "below") else 1
        length = abs(one.end[axis] - one.start[axis]) / view.scale / 25.4
        assert inches(length) == one.words
        assert one.words in words(page)
        # The line lies outside of the view, on the side that was asked for.
        wall = [point for stroke in page.strokes if stroke.of == "walls.left" for point in stroke.points]
        rim = {"above": min(y for _, y in wall), "below": max(y for _, y in wall)}
        rim |= {"left": min(x for x, _ in wall), "right": max(x for x, _ in wall)}
        beyond = one.line_at[1 - axis] - rim[one.side]
        assert beyond < 0.0 if one.side in ("above", "left") else beyond > 0.0


def test_running_dimensions_close_together_are_spread_and_still_point_at_their_place() -> None:
    places = [0.0, 10.0, 10.25, 10.5, 10.75, 40.0]
    marks = tuple(Dimension(at(0, 0), at(x, 0), inches(x), f"p{x}", "below", 0, True) for x in places)
    close = Sheet("close", "close", (View("close", "", (rectangle(0, 0, 48, 20, "visible", "w"), *marks)),))
    (page,) = laid_out(close, LETTER, TITLE)
    assert faults(close, (page,)) == []
    (view,) = page.views
    turned = sorted((one for one in page.words if one.is_turned), key=lambda one: one.at[0])
    assert [one.text for one in turned] == [inches(x) for x in places]
    for x in places:
        ends = [s.points[0][0] for s in page.strokes if s.of == f"p{x}" and s.points[0][0] == s.points[1][0]]
        assert any(end == pytest.approx(view.origin[0] + x * 25.4 * view.scale) for end in ends)


@PAPERS
@pytest.mark.parametrize("stands_up", [False, True])
def test_the_check_bars_are_long_as_they_say(paper: Paper, stands_up: bool) -> None:
    for page in laid_out(replace(sheet(), stands_up=stands_up), paper, TITLE):
        assert (page.width < page.height) == stands_up
        lengths = {
            round(abs(one.points[1][0] - one.points[0][0]), 3)
            for one in page.strokes
            if one.belongs == "border" and one.line == "visible" and len(one.points) == 2
        }
        assert {100.0, 101.6} <= lengths
        assert "100 mm" in words(page) and "4 in" in words(page)


def test_the_scale_bar_has_its_real_length() -> None:
    page = laid_out(sheet(), LETTER, TITLE)[0]
    pieces = [one for one in page.strokes if one.belongs == "border" and one.line == "dimension" and one.is_closed]
    across = [point[0] for one in pieces for point in one.points]
    (label,) = [one for one in words(page) if one.endswith(" ft")]
    assert max(across) - min(across) == pytest.approx(float(label.split()[0]) * 304.8 * page.views[0].scale)


def test_the_largest_scale_that_fits_is_taken() -> None:
    wall = Sheet("w", "w", (View("wall", "", (rectangle(0, 0, 168, 78, "visible", "w"),)),))
    (page,) = laid_out(wall, LETTER, TITLE)
    # Hand arithmetic: 168 in is 4267 mm, 241 mm of paper are left: 1:20 takes 213 and fits, 1:15 would take 284.
    assert page.views[0].scale == 1 / 20
    (upright,) = laid_out(replace(wall, stands_up=True), LETTER, TITLE)
    assert upright.views[0].scale == 1 / 25


def test_a_scale_that_does_not_fit_is_given_up_and_said() -> None:
    wall = Sheet("w", "w", (View("wall", "", (rectangle(0, 0, 168, 78, "visible", "w"),)),), scale=1 / 10)
    pages = laid_out(wall, LETTER, TITLE)
    assert pages[0].views[0].scale == 1 / 20
    assert any("no room for the scale 1:10" in " ".join(words(page)) for page in pages)
    assert laid_out(replace(wall, scale=1 / 50), LETTER, TITLE)[0].views[0].scale == 1 / 50


def test_views_of_one_sheet_have_one_scale_and_do_not_touch() -> None:
    boxes = [rectangle(0, 0, 20, 7 + one / 2, "visible", f"w{one}") for one in range(4)]
    views = tuple(View(f"view {one}", "", (box,)) for one, box in enumerate(boxes))
    (page,) = laid_out(Sheet("four", "four", views), LETTER, TITLE)
    assert len({one.scale for one in page.views}) == 1
    boxes = []
    for one in range(4):
        points = [point for stroke in page.strokes if stroke.of == f"w{one}" for point in stroke.points]
        across, down = [point[0] for point in points], [point[1] for point in points]
        boxes.append((min(across), max(across), min(down), max(down)))
    for place, (left, right, top, bottom) in enumerate(boxes):
        for other in boxes[place + 1 :]:
            assert right < other[0] or other[1] < left or bottom < other[2] or other[3] < top


def test_hatching_is_interrupted_under_a_text_and_behind_an_opening() -> None:
    marks = (
        rectangle(0, 0, 60, 40, "visible", "wall", "foam"),
        rectangle(10, 10, 12, 12, "cut", "window", "hole"),
        Text(at(40, 20), "foam XPS", "wall"),
    )
    foam = Sheet("foam", "foam", (View("wall", "", marks),))
    (page,) = laid_out(foam, LETTER, TITLE)
    (text,) = [one for one in page.words if one.text == "foam XPS"]
    hatch = [one.points for one in page.strokes if one.of == "wall" and one.line == "dimension"]
    assert len(hatch) > 20
    assert not any(crosses(text.box, *line) for line in hatch)
    (view,) = page.views
    step = 25.4 * view.scale
    left, top = view.origin[0] + 10 * step, view.origin[1] - 22 * step
    opening = replace(text.box, left=left, right=left + 12 * step, top=top, bottom=top + 12 * step)
    assert not any(crosses(opening, *line) for line in hatch)
    assert sum(one.of == "window" and one.line == "dimension" for one in page.strokes) == 2


def test_front_points_where_it_was_told() -> None:
    ways: tuple[tuple[Side, float], ...] = (("left", -1.0), ("right", 1.0))
    for towards, sign in ways:
        marks = (rectangle(0, 0, 60, 40, "visible", "wall"), Symbol(at(30, 20), "front", "trailer", towards))
        (page,) = laid_out(Sheet("f", "f", (View("wall", "", marks),)), LETTER, TITLE)
        (head,) = [one for one in page.strokes if one.fill == "ink" and one.of == "trailer"]
        (shaft,) = [one for one in page.strokes if one.of == "trailer" and len(one.points) == 2]
        assert (head.points[0][0] - shaft.points[0][0]) * sign > 10.0
        assert "FRONT" in words(page)


def test_a_long_table_repeats_its_head_and_keeps_its_rows() -> None:
    rows = tuple((f"stud {one}", "16", "", "☐") for one in range(120))
    grid = Grid("studs", ("stud", "expected", "measured", "pass"), rows, tuple(f"stud-{one}" for one in range(120)))
    pages = laid_out(Sheet("g", "g", grids=(grid,)), A4, TITLE)
    assert len(pages) > 2
    for page in pages:
        assert "measured" in words(page)
    assert [one for page in pages for one in words(page) if one.startswith("stud ")] == [row[0] for row in rows]
    ticks = [one for page in pages for one in page.strokes if one.of.startswith("stud-") and one.is_closed]
    assert [one.of for one in ticks] == list(grid.of)
    heads = [one for page in pages for one in page.words if one.text.startswith("studs")]
    assert [one.text for one in heads] == ["studs"] + ["studs (continued)"] * (len(pages) - 1)


def stick() -> Sheet:
    """Return a story stick, too long for a page: a mark every 16 in at full size."""
    marks: list[Mark] = [rectangle(0, 0, 168, 1.5, "visible", "strip")]
    for number in range(11):
        x = number * 16.0
        marks.append(Line(at(x, 0), at(x, 1.5), "cut", f"stud-{number}"))
        marks.append(Dimension(at(0, 0), at(x, 0), inches(x), f"stud-{number}", "below", 0, True))
        marks.append(Text(at(x + 2, 0.75), f"stud L{number}", f"stud-{number}"))
    return Sheet("stick", "Story stick", (View("stick", "", tuple(marks), "0"),), scale=1.0, is_tiled=True)


@PAPERS
def test_a_sheet_in_pieces_joins_to_its_full_length(paper: Paper) -> None:
    pages = laid_out(stick(), paper, TITLE)
    assert faults(stick(), pages) == []
    count = len(pages)
    assert count > 15
    places = []
    for number, page in enumerate(pages, 1):
        assert f"{number} of {count}" in words(page)
        (view,) = page.views
        assert view.scale == 1.0
        for stroke in page.strokes:
            if stroke.of.startswith("stud-") and stroke.line == "cut":
                places.append((stroke.of, (stroke.points[0][0] - view.origin[0]) / 25.4))
    # On every page the view's own zero says where a mark belongs, whichever page it came to lie on.
    for of, place in places:
        assert place == pytest.approx(16.0 * int(of.removeprefix("stud-")))
    assert len({of for of, _ in places}) == 11
    # Neighbours overlap by the strip of glue: the zero moves on by the width of a piece less that strip.
    steps = [one.views[0].origin[0] - other.views[0].origin[0] for one, other in pairwise(pages)]
    frame = paper.width - 30.0
    for step in steps:
        assert step == pytest.approx(frame - 2 * 4.0 - 2 * 6.0 - 10.0)


def test_pieces_go_down_as_well_as_across_and_have_match_marks() -> None:
    marks = (
        Shape((at(0, 0), at(24, 0), at(24, 20), at(0, 20)), "cut", "hole", "hole"),
        Text(at(12, 10), "a hole of 24 x 20 in", "hole"),
    )
    hole = Sheet("template", "Template", (View("template", "", marks),), scale=1.0, is_tiled=True)
    pages = laid_out(hole, LETTER, TITLE)
    assert faults(hole, pages) == []
    # Hand arithmetic: 610 x 508 mm, pieces of 219 mm and about 140 mm: three across, four down.
    assert len(pages) == 12
    signs = [sum(one.belongs == "border" for one in page.curves) for page in pages]
    assert signs[0] == 4 and max(signs) == 8
    length = sum(
        hypot(b[0] - a[0], b[1] - a[1])
        for page in pages
        for stroke in page.strokes
        if stroke.of == "hole" and stroke.line == "cut"
        for a, b in pairwise(stroke.points)
    )
    around = 2 * (24 + 20) * 25.4
    # Each side is printed whole; at a seam the strip of glue is printed twice.
    assert around <= length <= around + 10.0 * 2 * (2 + 3) + 1e-6


def test_a_tiled_sheet_that_fits_a_page_is_left_whole() -> None:
    small = Sheet("s", "s", (View("plate", "", (rectangle(0, 0, 6, 4, "cut", "hole"),)),), scale=1.0, is_tiled=True)
    (page,) = laid_out(small, A4, TITLE)
    (plate,) = [one for one in page.strokes if one.of == "hole"]
    assert max(x for x, _ in plate.points) - min(x for x, _ in plate.points) == pytest.approx(6 * 1000 * IN)
    assert page.views[0].scale == 1.0


def test_a_key_stands_on_the_page_of_its_numbers_where_there_is_room() -> None:
    crowd = tuple(Text(at(10 + one * 0.2, 5), f"a part with number {one}", f"p{one}") for one in range(30))
    full = Sheet("k", "k", (View("crowd", "", (rectangle(0, 0, 20, 10, "visible", "w"), *crowd)),), scale=1 / 10)
    pages = laid_out(full, LETTER, TITLE)
    assert faults(full, pages) == []
    assert "Key to crowd" in words(pages[0])
    rings = [curve for page in pages for curve in page.curves if curve.belongs == "note"]
    assert rings and all(curve.sweep == pytest.approx(2.0 * pi) for curve in rings), "a number breaks its own ring"
