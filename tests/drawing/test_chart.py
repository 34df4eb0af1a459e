"""Charts: round ticks, lines where their numbers are, nothing drawn where nothing is known."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import isclose, isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.drawing import Dimension, Line, Shape, Sheet, Text
from boxwright.drawing.chart import HIGH, UNKNOWN, WIDE, Bound, Chart, Series, charted, ticks
from boxwright.drawing.layout import pages_of
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
