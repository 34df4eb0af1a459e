"""Charts: round ticks, lines where their numbers are, nothing drawn where nothing is known."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import isclose, isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.drawing import Dimension, Line, Shape, Sheet, Text
from boxwright.drawing.chart import HIGH, LOW, UNKNOWN, WIDE, Bound, Chart, Series, axis, charted, tick_words, ticks
from boxwright.drawing.layout import laid_out, pages_of
from boxwright.drawing.paper import PAPERS, TitleBlock
from boxwright.render.svg import svg_of

LABELS = ("safe", "roof", "wire")
THROUGH = Chart(
    "tongue",
    "Load on the ball",
    "through",
    "lb",
    LABELS,
    (
        Series("empty", (100.0, 200.0, 400.0), (90.0, 190.0, 380.0), (110.0, 210.0, 420.0), ("a", "b", "c")),
        Series("full", (150.0, UNKNOWN, 300.0), (150.0, 0.0, 300.0), (150.0, UNKNOWN, 300.0), ("d", "e", "f")),
    ),
    (Bound("least rating 500 lb", 500.0),),
    tuple(f"stages[{one}]" for one in LABELS),
    "in words",
)
FALL = Chart(
    "weights",
    "What it weighs",
    "fall",
    "kg",
    ("Empty", "Cargo", "All up"),
    (Series("weight", (500.0, 800.0, 800.0), (0.0, 500.0, 0.0), (500.0, 800.0, 800.0), ("x", "y", "z")),),
    (),
    ("trailer", "", ""),
    "in words",
)


@given(st.floats(-1e6, 1e6), st.floats(1e-3, 1e6))
def test_ticks_are_round_in_order_and_few(low: float, span: float) -> None:
    found = ticks(low, low + span)
    assert 1 <= len(found) <= 11
    steps = [other - one for one, other in pairwise(found)]
    assert all(isclose(one, steps[0], rel_tol=1e-6) for one in steps)
    assert all(low - 1e-6 * span <= one <= low + span * (1.0 + 1e-6) for one in found)


@pytest.mark.parametrize(
    ("low", "high", "found"),
    [
        (0.0, 500.0, (0, 100, 200, 300, 400, 500)),
        (0.0, 7000.0, (0, 2000, 4000, 6000)),
        (-50.0, 40.0, (-40, -20, 0, 20, 40)),
    ],
)
def test_ticks_as_one_would_choose_them(low: float, high: float, found: tuple[int, ...]) -> None:
    assert ticks(low, high) == found
    assert ticks(high, low) == ticks(0.0, UNKNOWN) == ()


def test_a_line_runs_through_its_numbers_between_nought_and_the_limit() -> None:
    lines = [one for one in charted(THROUGH).marks if isinstance(one, Line) and one.line == "visible"]
    assert [one.of for one in lines] == ["stages[safe]", "stages[roof]"]
    assert lines[0].start == pytest.approx((0.0, HIGH * 100.0 / 500.0))
    assert lines[1].end == pytest.approx((WIDE, HIGH * 400.0 / 500.0))


def test_what_is_not_known_is_not_drawn() -> None:
    marks = charted(THROUGH).marks
    full = [one for one in marks if isinstance(one, Line) and one.line == "hidden"]
    assert full == [], "no line to or from the stage that nobody knows"
    every = [value for one in marks if isinstance(one, Line) for value in (*one.start, *one.end)]
    assert all(isfinite(value) for value in every)
    alone = replace(THROUGH, series=(replace(THROUGH.series[1], best=(UNKNOWN,) * 3, low=(UNKNOWN,) * 3),))
    names = [one.words for one in charted(alone).marks if isinstance(one, Dimension)]
    assert "full" not in names


def test_lines_are_told_apart_without_colour_and_named_at_their_ends() -> None:
    known = replace(THROUGH.series[1], best=(150.0, 200.0, 300.0))
    marks = charted(replace(THROUGH, series=(THROUGH.series[0], known))).marks
    kinds = {one.line for one in marks if isinstance(one, Line)} - {"dimension", "cut"}
    assert kinds == {"visible", "hidden"}
    named = {one.words: one.end[1] for one in marks if isinstance(one, Dimension) and one.side == "right"}
    assert named["empty"] == pytest.approx(HIGH * 0.8) and named["full"] == pytest.approx(HIGH * 0.6)
    assert named["least rating 500 lb"] == pytest.approx(HIGH)


def test_a_fall_adds_up_bar_by_bar() -> None:
    marks = charted(FALL).marks
    bars = [one for one in marks if isinstance(one, Shape)]
    feet = [min(y for _, y in one.points) for one in bars]
    tops = [max(y for _, y in one.points) for one in bars]
    assert feet[1] == pytest.approx(tops[0]) and tops[2] == pytest.approx(tops[1]) and feet[2] == feet[0] == 0.0
    assert [one.fill for one in bars] == ["wood", "wood", "metal"]
    assert [one.words for one in marks if isinstance(one, Text)] == ["Empty", "Cargo", "All up", "500", "300", "800"]


@pytest.mark.parametrize("chart", [THROUGH, FALL])
def test_a_chart_prints_on_one_page_of_either_paper(chart: Chart) -> None:
    title = TitleBlock("Rig", "as planned", "", "2026-05-02", "inches", ("Check.",), True)
    for paper in PAPERS.values():
        (page,) = pages_of((Sheet(chart.name, chart.title, (charted(chart),), (chart.says,)),), paper, title)
        svg = svg_of(page)
        assert all(label in svg for label in chart.labels)


def test_a_chart_of_nothing_is_empty_axes() -> None:
    bare = replace(THROUGH, series=(), bounds=())
    assert not [one for one in charted(bare).marks if isinstance(one, Line) and one.line != "dimension"]


def test_a_fitted_axis_begins_at_a_round_number_under_the_least_and_another_at_nought() -> None:
    warm = replace(THROUGH, series=(Series("room", (61.0, 62.0, 66.0), (57.0, 60.0, 64.0), (70.0,) * 3, ("",) * 3),),
                   bounds=(), is_fitted=True)  # fmt: skip
    assert axis(warm) == (55.0, 70.0, 2.5) and axis(replace(warm, is_fitted=False))[:2] == (0.0, 70.0)
    assert axis(replace(warm, high=LOW)).step == 5.0, "a low chart has room for few numbers"
    below = replace(warm, series=(Series("out", (-8.0, 3.0, 5.0), (-9.0, 3.0, 5.0), (-7.0, 3.0, 5.0), ("",) * 3),))
    assert axis(below) == (-10.0, 5.0, 2.5)
    assert axis(replace(warm, series=(), is_fitted=True)).high > axis(replace(warm, series=())).low
    flat = replace(warm, series=(Series("held", (62.0,) * 3, (62.0,) * 3, (62.0,) * 3, ("",) * 3),))
    low, high, step = axis(flat)
    assert low <= 62.0 <= high and step > 0.0


@pytest.mark.parametrize(
    ("value", "step", "told"),
    [(0.30000000000000004, 0.1, "0.3"), (-0.0, 2.5, "0.0"), (7.5, 2.5, "7.5"), (6000.0, 2000.0, "6,000")],
)
def test_the_numbers_of_an_axis_have_the_decimals_of_its_step(value: float, step: float, told: str) -> None:
    assert tick_words(value, step) == told


def test_doubt_is_a_tone_between_both_ends_and_a_thin_line_where_one_is_known() -> None:
    marks = charted(THROUGH).marks
    (tone,) = [one for one in marks if isinstance(one, Shape)]
    assert tone.fill == "doubt" and len(tone.points) == 6
    assert tone.points[0] == pytest.approx((0.0, HIGH * 90.0 / 500.0))
    assert tone.points[-1] == pytest.approx((0.0, HIGH * 110.0 / 500.0))
    assert "fill-opacity" in svg_of(pages_of((Sheet("one", "One", (charted(THROUGH),)),), PAPERS["a4"],
                                             TitleBlock("Rig", "", "", "", "inches", (), True))[0])  # fmt: skip
    halves = replace(THROUGH, series=(replace(THROUGH.series[0], high=(UNKNOWN,) * 3),), bounds=())
    drawn = charted(halves).marks
    top = axis(halves).high
    lines = [one for one in drawn if isinstance(one, Line) and one.line == "dimension"]
    thin = [one for one in lines if 0 < one.start[1] != one.end[1]]
    assert not [one for one in drawn if isinstance(one, Shape)]
    assert thin[0].start == pytest.approx((0.0, HIGH * 90.0 / top))


def test_of_one_line_the_ends_have_names_and_of_several_the_tone_tells() -> None:
    alone = charted(replace(THROUGH, series=THROUGH.series[:1])).marks
    assert {"empty, at most", "empty, at least"} <= {one.words for one in alone if isinstance(one, Dimension)}
    both = charted(THROUGH).marks
    assert not any(", at " in one.words for one in both if isinstance(one, Dimension))


def test_short_labels_stand_level_and_long_ones_beside_their_ticks() -> None:
    level = charted(replace(THROUGH, labels=("20 h", "", "2 h")))
    assert [one.words for one in level.marks if isinstance(one, Text)] == ["20 h", "2 h"]
    long = charted(replace(THROUGH, labels=("measure", "safe", "wire")))
    below = [one.words for one in long.marks if isinstance(one, Dimension) and one.side == "below"]
    assert below == ["measure", "safe", "wire"] and not [one for one in long.marks if isinstance(one, Text)]
    assert level.chart is not None and level.chart.labels[0] == "20 h"


def test_a_chart_is_printed_as_large_as_the_page_is_wide() -> None:
    """160 mm of chart with its words beside it do not fit the 178 mm of an upright page; half of it leaves it white."""
    sheet = Sheet("charts", "Charts", (charted(THROUGH),), stands_up=True)
    (page,) = laid_out(sheet, PAPERS["letter"], TitleBlock("Whimbrel", "", "", "2026-05-02", "", (), True))
    assert 0.6 < page.views[0].scale < 1.0
    assert all(one.box.right < page.width - 5.0 for one in page.words)
