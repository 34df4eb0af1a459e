"""What must hold of every page, whatever the sheet: nothing overlaps, nothing is outside, nothing is lost."""

from __future__ import annotations

from math import inf, nan

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from boxwright.drawing import Arc, Dimension, Grid, Leader, Line, Mark, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.layout import laid_out, pages_of
from boxwright.drawing.paper import A4, LETTER, Paper, TitleBlock
from tests.drawing.judge import faults
from tests.drawing.sample import TITLE, sheet
from tests.lanes import every_so_many

PAPERS = pytest.mark.parametrize("paper", [LETTER, A4], ids=lambda one: one.name)

KINDS = st.sampled_from(["visible", "hidden", "centre", "cut", "phantom", "dimension"])
FILLS = st.sampled_from(["none", "metal", "wood", "foam", "skin", "hole", "backing", "fault"])
SIDES = st.sampled_from(["above", "below", "left", "right"])
LENGTHS = st.floats(-4.0, 4.0, allow_nan=False).map(lambda one: round(one, 3))
POINTS = st.tuples(LENGTHS, LENGTHS)
CLOSE = st.tuples(st.floats(0.0, 0.05), st.floats(0.0, 0.05))
WORDS = st.text(st.sampled_from("abcdeé1/2 ½gjW\u0007\t()"), max_size=18) | st.sampled_from(
    ["stud L7", "16 1/8", "a note of a good many words about what is behind the skin here", "W" * 300, "", "L0"]
)
PATHS = st.just("parts.bench")
MARKS: st.SearchStrategy[Mark] = st.one_of(
    st.builds(Line, POINTS, POINTS, KINDS, PATHS),
    st.builds(Arc, POINTS, st.floats(0.0, 2.0), st.floats(-7.0, 7.0), st.floats(-7.0, 7.0), KINDS, PATHS),
    st.builds(Shape, st.lists(POINTS, min_size=3, max_size=6).map(tuple), KINDS, PATHS, FILLS),
    st.builds(
        Text,
        POINTS | CLOSE,
        WORDS,
        PATHS,
        st.sampled_from(["small", "normal", "large"]),
        st.booleans(),
        st.booleans(),
    ),
    st.builds(Dimension, POINTS, POINTS, WORDS, PATHS, SIDES, st.integers(0, 3), st.booleans()),
    st.builds(Leader, POINTS | CLOSE, WORDS, PATHS),
    st.builds(Symbol, POINTS, st.sampled_from(["datum", "front", "screw", "fault"]), PATHS, SIDES),
)
VIEWS = st.builds(View, WORDS, WORDS, st.lists(MARKS, max_size=25).map(tuple), WORDS)


@st.composite
def grids(draw: st.DrawFn) -> Grid:
    """Return a table of any shape."""
    columns = draw(st.lists(WORDS, min_size=1, max_size=8))
    row = st.lists(WORDS | st.just("☐"), min_size=len(columns), max_size=len(columns)).map(tuple)
    rows = draw(st.lists(row, max_size=12))
    return Grid(draw(WORDS), tuple(columns), tuple(rows), ("parts",) * len(rows))


SHEETS = st.builds(
    Sheet,
    st.just("any"),
    WORDS,
    st.lists(VIEWS, max_size=3).map(tuple),
    st.lists(WORDS, max_size=3).map(tuple),
    st.lists(grids(), max_size=2).map(tuple),
    st.sampled_from([0.0, 0.0, 1 / 20, 1 / 5]),
    st.booleans(),
    st.booleans(),
)

often = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


@PAPERS
def test_the_sample_sheet_is_whole_and_clear(paper: Paper) -> None:
    assert faults(sheet(), laid_out(sheet(), paper, TITLE)) == []


@often
@given(any_sheet=SHEETS, paper=st.sampled_from([LETTER, A4]))
def test_any_sheet_is_whole_and_clear(any_sheet: Sheet, paper: Paper) -> None:
    pages = laid_out(any_sheet, paper, TITLE)
    assert faults(any_sheet, pages) == []
    assert pages == laid_out(any_sheet, paper, TITLE)


def one_view(*marks: Mark, name: str = "a view") -> Sheet:
    """Return a sheet of one view."""
    return Sheet("one", "one view", (View(name, "from above", marks),))


MONSTERS = {
    "400 texts at one point": one_view(*(Text((0.0, 0.0), f"part number {one}", f"p{one}") for one in range(400))),
    "400 texts close together": one_view(
        *(Text((one % 20 * 0.01, one // 20 * 0.01), f"part number {one}", f"p{one}") for one in range(400)),
        Shape(((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0)), "visible", "wall"),
    ),
    "a view without marks": one_view(),
    "a view of no size": one_view(Line((1.0, 1.0), (1.0, 1.0), "visible", "p"), Text((1.0, 1.0), "here", "p")),
    "a sheet with nothing": Sheet("none", "nothing"),
    "a word of 300 letters": one_view(
        Line((0.0, 0.0), (3.0, 2.0), "visible", "p"),
        Text((1.0, 1.0), "m" * 300, "p"),
        Leader((1.0, 1.0), "w" * 300, "p"),
        Dimension((0.0, 0.0), (3.0, 0.0), "8" * 300, "p", "below"),
        name="n" * 300,
    ),
    "control characters": one_view(Text((0.0, 0.0), "a\x00b\x1b[31m\u202ec\nd\te\ud800", "p"), name="\x07\x07"),
    "no number and no end": one_view(
        Text((nan, 0.0), "nowhere", "p"),
        Dimension((0.0, 0.0), (inf, 0.0), "for ever", "p", "above"),
        Line((0.0, 0.0), (nan, 1.0), "visible", "p"),
        Arc((0.0, 0.0), inf, 0.0, 1.0, "visible", "p"),
        Shape(((0.0, -inf), (1.0, 1.0), (0.0, 1.0)), "cut", "p", "metal"),
        Symbol((nan, nan), "front", "p"),
        Line((0.0, 0.0), (1.0, 1.0), "visible", "p"),
    ),
    "90 km": one_view(Line((0.0, 0.0), (9e4, 9e4), "visible", "p"), Text((4e4, 1e4), "far", "p")),
    "a speck": one_view(Line((0.0, 0.0), (1e-9, 1e-9), "visible", "p"), Text((0.0, 0.0), "speck", "p")),
    "300 running dimensions": one_view(
        *(Dimension((0.0, 0.0), (one * 0.01, 0.0), f"{one} 1/16", f"p{one}", "below", 0, True) for one in range(300))
    ),
    "200 rows of dimensions": one_view(
        *(Dimension((0.0, 0.0), (1.0, 0.0), f"{one}", f"p{one}", "left", one) for one in range(200))
    ),
    "a table of 60 columns and one tall cell": Sheet(
        "grid",
        "a table",
        grids=(
            Grid("wide", tuple(f"c{one}" for one in range(60)), (tuple(f"{one}" for one in range(60)),), ("p",)),
            Grid("tall", ("a", "b"), (("word " * 3000, "short"),), ("p",)),
            Grid("long", ("a", "b"), tuple((f"{one}", "☐ done") for one in range(400)), ("p",) * 400),
        ),
    ),
    "300 notes": Sheet("notes", "notes", notes=tuple(f"note {one} " + "word " * 30 for one in range(300))),
}


@pytest.mark.parametrize(
    ("name", "paper"),
    every_so_many(((name, paper) for name in MONSTERS for paper in (LETTER, A4)), 2),
    ids=lambda one: one if isinstance(one, str) else one.name,
)
def test_a_monstrous_sheet_is_whole_and_clear(name: str, paper: Paper) -> None:
    monster = MONSTERS[name]
    pages = laid_out(monster, paper, TITLE)
    assert faults(monster, pages) == []


@PAPERS
def test_a_title_block_of_long_words_is_whole(paper: Paper) -> None:
    title = TitleBlock("r" * 300, "as " * 200, "revision " * 20, "2026 " * 30, "u" * 80, ("caution " * 60,))
    long = Sheet("long", "t" * 300, notes=("one note",))
    pages = laid_out(long, paper, title)
    assert faults(long, pages) == []


@PAPERS
def test_pages_are_numbered_through(paper: Paper) -> None:
    pages = pages_of([sheet(), MONSTERS["300 notes"], sheet()], paper, TITLE)
    assert [page.number for page in pages] == list(range(1, len(pages) + 1))
    assert {page.count for page in pages} == {len(pages)}
    for page in pages:
        assert f"{page.number} of {page.count}" in [one.text for one in page.words]
    alone = laid_out(sheet(), paper, TITLE)
    assert [page.name for page in alone] == ["left-outside", "left-outside-2"]
    assert laid_out(sheet(), paper, TITLE, (7, 9))[0].number == 7
