"""Every sheet of the demo rigs, and of rigs that are wrong: complete, legible, true to size."""

from __future__ import annotations

import io
from itertools import pairwise
from math import hypot

import pytest
from ezdxf import recover

from boxwright.drawing.mark import Shape, Text
from boxwright.drawing.page import Page, Stroke
from boxwright.drawing.paper import PAPERS, PaperName
from boxwright.render.dxf import APPLICATION, dxf_of
from boxwright.render.svg import svg_of
from tests.book.drawn import DEMOS, demo, drawn, pages
from tests.drawing.judge import faults

BOTH = pytest.mark.parametrize("paper", sorted(PAPERS))
BY_NIGHT = pytest.mark.nightly
ONE_BY_DAY = pytest.mark.parametrize("paper", ["letter", pytest.param("a4", marks=BY_NIGHT)])
OTHER_BY_DAY = pytest.mark.parametrize("paper", ["a4", pytest.param("letter", marks=BY_NIGHT)])
OWN_BY_DAY = pytest.mark.parametrize(
    ("name", "paper"),
    [
        ("whimbrel", "letter"),
        ("dunlin", "a4"),
        pytest.param("whimbrel", "a4", marks=BY_NIGHT),
        pytest.param("dunlin", "letter", marks=BY_NIGHT),
    ],
)
EACH = pytest.mark.parametrize("name", DEMOS)
BODY = """
boxwright: 1
rig: Wrong
units: {length: mm, weight: kg}
trailer:
  body: {length: 2500, width: 1300, height: 1650}
frame:
  studs: {tube: 25 x 25 x 1.5, face: 25, depth: 25, every: 400, first: 0}
"""
LOADS = "loads:\n  empty: {cargo: none, for: [tow]}\n"
WRONG = {
    "an opening wider than its wall": (
        "openings:\n  gate: {wall: rear, side: centre, width: 3000, z: 0, height: 1500, by: trailer builder}\n"
    ),
    "a door in a wheel box": (
        "openings:\n  door: {wall: right, x: 900, width: 600, z: 0, height: 1500}\n"
        "  hatch: {wall: right, x: 1200, width: 300, z: 600, height: 400}\n"
    ),
    "a stud in two places": (
        "measured:\n  one: {what: tape, studs: left, date: 2026-01-01, values: {1: 400, 2: 390}}\n"
        "  two: {what: tape, studs: left, date: 2026-01-01, values: {1: 460}}\n"
    ),
    "an opening of no size": "openings:\n  slit: {wall: left, x: 500, z: 100}\n",
    "an opening turned round": "openings:\n  back: {wall: left, x: 500, width: -200, z: 100, height: 300}\n",
    "an opening far away": "openings:\n  moon: {wall: left, x: 900000, width: 200, z: 100, height: 300}\n",
}
SHAPES = {
    "flat": "",
    "arched": "  bows: {every: 500, shape: arched, rise: 80}\n",
    "arched beyond its height": "  bows: {every: 500, shape: arched, rise: 2000}\n",
    "rounded": "  bows: {every: 500, shape: rounded, radius: 120}\n",
    "nose": "  bows: {every: 500}\n  nose: {length: 600, tip: 300}\n",
    "wheel boxes": (
        "  bows: {every: 500}\n  intrusions:\n"
        "    box-left: {what: wheel box, wall: left, x: 1000, length: 800, height: 200, depth: 180}\n"
        "    box-right: {what: wheel box, wall: right, x: 1000, length: 800, height: 200, depth: 180}\n"
    ),
}


def wrong(what: str, shape: str = "wheel boxes") -> str:
    """Return the text of a rig with one thing wrong in it and a roof or a nose of a shape."""
    return BODY + SHAPES[shape] + WRONG[what] + LOADS


@OWN_BY_DAY
def test_every_page_of_a_demo_is_legible_and_loses_nothing(name: str, paper: PaperName) -> None:
    found = [f"{sheet.name}: {one}" for sheet, printed in pages(demo(name), paper) for one in faults(sheet, printed)]
    assert found == []


@EACH
def test_every_opening_member_and_finding_of_the_frame_is_on_a_sheet(name: str) -> None:
    sheets, _, frame, findings = drawn(demo(name))
    assert frame is not None
    about = {mark.of for sheet in sheets for view in sheet.views for mark in view.marks}
    listed = {of for sheet in sheets for grid in sheet.grids for of in grid.of}
    named = " ".join(
        mark.words for sheet in sheets for view in sheet.views for mark in view.marks if hasattr(mark, "words")
    )
    assert {one.of for one in frame.holes} <= about & listed
    assert {one.of for one in frame.backings} <= about
    numbered = [one for one in frame.members if one.runs == "up" and one.kind in ("stud", "bow")]
    assert [one.name for one in numbered if f"{one.name} = " not in named] == []
    mine = [one for one in findings if one.code.startswith("frame/")]
    assert mine
    assert {one.where for one in mine} <= listed
    told = {row[2] for sheet in sheets if sheet.name == "to-mend" for row in sheet.grids[0].rows}
    assert {one.says for one in mine} == told


@EACH
def test_a_finding_with_a_place_is_shown_there_with_its_number(name: str) -> None:
    sheets, _, frame, findings = drawn(demo(name))
    assert frame is not None
    holes = {one.of for one in frame.holes}
    wanted = {one.where for one in findings if one.code.startswith("frame/") and one.where in holes}
    shown = {
        mark.of
        for sheet in sheets
        for view in sheet.views
        for mark in view.marks
        if isinstance(mark, Text) and mark.words.startswith("fault ")
    }
    assert wanted
    assert wanted <= shown


def page_of(name: str, sheet: str) -> Page:
    return next(printed[0] for one, printed in pages(demo(name), "letter") if one.name == sheet)


def real(page: Page, stroke: Stroke) -> list[tuple[float, float]]:
    """Return the corners of a stroke as it was measured off the paper, in mm of the trailer."""
    view = page.views[0]
    return [((x - view.origin[0]) / view.scale, (view.origin[1] - y) / view.scale) for x, y in stroke.points]


@pytest.mark.parametrize(("sheet", "turn"), [("left-outside", 1.0), ("left-inside", -1.0)])
def test_studs_and_openings_measure_on_paper_what_they_measure_on_the_trailer(sheet: str, turn: float) -> None:
    frame, page = drawn(demo("whimbrel"))[2], page_of("whimbrel", sheet)
    assert frame is not None
    outlines = [real(page, one) for one in page.strokes if one.is_closed and one.belongs == "view"]
    for member in frame.members_of("left"):
        if member.kind == "stud":
            middle, half = turn * member.at.best * 1000.0, member.face.best * 500.0
            ends = [[min(x for x, _ in one), max(x for x, _ in one)] for one in outlines]
            assert any(one == pytest.approx([middle - half, middle + half], abs=0.1) for one in ends), member.name
    for hole in frame.holes:
        if hole.wall == "left":
            wanted = sorted((turn * hole.low * 1000.0, turn * hole.high * 1000.0))
            wanted += [hole.bottom * 1000.0, hole.top * 1000.0]
            boxes = [
                [min(x for x, _ in one), max(x for x, _ in one), min(y for _, y in one), max(y for _, y in one)]
                for one in outlines
            ]
            assert any(box == pytest.approx(wanted, abs=0.1) for box in boxes), hole.name


def test_the_drawing_file_measures_the_same_and_its_rows_say_it() -> None:
    frame, page = drawn(demo("whimbrel"))[2], page_of("whimbrel", "left-outside")
    assert frame is not None
    doc, audit = recover.read(io.BytesIO(dxf_of(page)))
    assert (audit.errors, audit.fixes) == ([], [])
    placed: dict[str, list[list[float]]] = {}
    for one in doc.modelspace().query("LWPOLYLINE"):
        of = "".join(tag.value for tag in one.get_xdata(APPLICATION))
        xs, ys = [point[0] for point in one.get_points()], [point[1] for point in one.get_points()]
        placed.setdefault(of, []).append([min(xs), max(xs), min(ys), max(ys)])
    for hole in frame.holes:
        if hole.wall == "left":
            wanted = [1000.0 * one for one in (hole.low, hole.high, hole.bottom, hole.top)]
            assert any(box == pytest.approx(wanted, abs=0.1) for box in placed[hole.of]), hole.name


@OWN_BY_DAY
def test_every_page_is_clean_to_another_reader(name: str, paper: PaperName) -> None:
    for sheet, printed in pages(demo(name), paper):
        if sheet.views and not sheet.name.startswith("story"):
            _, audit = recover.read(io.BytesIO(dxf_of(printed[0])))
            assert (audit.errors, audit.fixes) == ([], []), sheet.name


@EACH
@BOTH
def test_the_paper_that_is_laid_on_the_wall_is_full_size(name: str, paper: PaperName) -> None:
    for sheet, printed in pages(demo(name), paper):
        if sheet.name.startswith("story") or sheet.scale == 1.0:
            assert {view.scale for page in printed for view in page.views} == {1.0}, sheet.name


@pytest.mark.parametrize("wall", ["left", "right", "front", "rear", "roof"])
def test_the_strips_of_a_story_stick_cover_their_wall_once(wall: str) -> None:
    sheets, _, frame, _ = drawn(demo("whimbrel"))
    assert frame is not None
    plane = frame.wall(wall)
    assert plane is not None
    sheet = next(one for one in sheets if one.name == f"story-{wall}")
    strips = sorted(
        [min(x for x, _ in mark.points), max(x for x, _ in mark.points)]
        for view in sheet.views
        for mark in view.marks[:1]
        if isinstance(mark, Shape)
    )
    assert strips[-1][1] - strips[0][0] == pytest.approx(plane.high - plane.low)
    overlaps = [one[1] - other[0] for one, other in pairwise(strips)]
    assert overlaps == pytest.approx([0.01] * len(overlaps))


def test_the_diagonals_of_the_tape_plan_are_those_of_the_box() -> None:
    sheet = next(one for one in drawn(demo("dunlin"))[0] if one.name == "tape-plan")
    words = [mark.words for mark in sheet.views[0].marks if isinstance(mark, Text)]
    assert words.count(f"diagonal {round(hypot(2500, 1300))} mm") == 2


@pytest.mark.parametrize("what", sorted(WRONG))
@OTHER_BY_DAY
def test_a_rig_that_is_wrong_is_drawn_all_the_same(what: str, paper: PaperName) -> None:
    found = [f"{sheet.name}: {one}" for sheet, printed in pages(wrong(what), paper) for one in faults(sheet, printed)]
    assert found == []
    names = {sheet.name for sheet in drawn(wrong(what))[0]}
    assert {"left-outside", "rear-inside", "floor", "walk-round"} <= names


@pytest.mark.parametrize("shape", sorted(SHAPES))
@ONE_BY_DAY
def test_a_box_of_any_shape_is_drawn_without_a_line_too_many(shape: str, paper: PaperName) -> None:
    text = wrong("a door in a wheel box", shape)
    found = [f"{sheet.name}: {one}" for sheet, printed in pages(text, paper) for one in faults(sheet, printed)]
    assert found == []


@pytest.mark.parametrize(
    "what",
    ["an opening wider than its wall", "a stud in two places", "a door in a wheel box"],
)
def test_a_fault_of_a_wrong_rig_is_shown_where_it_is(what: str) -> None:
    shown = [
        mark.words
        for sheet in drawn(wrong(what))[0]
        for view in sheet.views
        for mark in view.marks
        if isinstance(mark, Text) and mark.words.startswith("fault ")
    ]
    assert shown


def test_a_body_without_sizes_gives_a_sheet_that_says_what_is_missing() -> None:
    sheets = drawn("boxwright: 1\nrig: Bare\nunits: {length: mm}\n" + LOADS)[0]
    said = " ".join(note for sheet in sheets for note in sheet.notes)
    assert "length, width and height" in said
    assert "walk-round" in {sheet.name for sheet in sheets}


@pytest.mark.parametrize("name", ["dunlin", pytest.param("whimbrel", marks=BY_NIGHT)])
def test_no_sheet_depends_on_what_was_drawn_before(name: str) -> None:
    first = [svg_of(page) for _, printed in pages(demo(name), "a4") for page in printed]
    pages.cache_clear()
    drawn.cache_clear()
    assert [svg_of(page) for _, printed in pages(demo(name), "a4") for page in printed] == first
