"""The series of the standards: their rule, and that what is used is a member of them."""

from __future__ import annotations

from itertools import pairwise
from math import sqrt

import pytest

from boxwright.drawing.layout.foot import BARS
from boxwright.drawing.paper import (
    A4,
    HEIGHT_OF,
    ISO_SCALES,
    LETTER,
    LETTER_HEIGHTS,
    LINE_WIDTHS,
    SCALES,
    USUAL_SCALES,
    WIDTH_OF,
    dashes,
    scale_words,
)


@pytest.mark.parametrize("series", [LINE_WIDTHS, LETTER_HEIGHTS], ids=["line widths", "letter heights"])
def test_each_member_is_root_two_times_the_one_before(series: tuple[float, ...]) -> None:
    # The standards round the members to what can be said shortly, so a step is off by a fiftieth or two.
    for smaller, larger in pairwise(series):
        assert larger / smaller == pytest.approx(sqrt(2.0), rel=0.03)


def test_line_widths_are_of_the_series_and_told_apart() -> None:
    assert set(WIDTH_OF.values()) <= set(LINE_WIDTHS)
    assert WIDTH_OF["cut"] == 2 * WIDTH_OF["visible"]
    assert WIDTH_OF["visible"] / WIDTH_OF["dimension"] == pytest.approx(2.0, rel=0.03)
    assert set(HEIGHT_OF.values()) <= set(LETTER_HEIGHTS)
    assert min(HEIGHT_OF.values()) >= 2.5


def test_dashes_are_told_apart_by_their_pattern() -> None:
    assert dashes("visible") == dashes("cut") == dashes("dimension") == ()
    assert [len(dashes(one)) for one in ("hidden", "centre", "phantom")] == [2, 4, 6]
    assert dashes("hidden") == (12 * 0.25, 3 * 0.25)


def test_scales_go_down_by_one_two_five() -> None:
    # ISO 5455 as hand arithmetic: each decade has 1, 2 and 5.
    assert [round(1 / one, 6) for one in ISO_SCALES] == [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]
    assert not set(ISO_SCALES) & set(USUAL_SCALES)
    assert list(SCALES) == sorted(SCALES, reverse=True)


@pytest.mark.parametrize(
    ("scale", "words"),
    [
        # Hand arithmetic: 12 in to the foot over 20 is 0.6 in, and 10/16 is the nearest sixteenth.
        (1 / 20, "1:20 (about 5/8 in to the foot)"),
        (1 / 25, "1:25 (about 1/2 in to the foot)"),
        (1 / 2, "1:2 (6 in to the foot)"),
        (1 / 10, "1:10 (about 1 3/16 in to the foot)"),
        (1.0, "1:1"),
        (2.0, "2:1"),
    ],
)
def test_a_scale_is_said_for_a_rule_in_inches(scale: float, words: str) -> None:
    assert scale_words(scale, is_imperial=True) == words
    assert scale_words(scale) == words.split(" (")[0]


def test_papers_have_their_size() -> None:
    assert (LETTER.width, LETTER.height) == pytest.approx((11 * 25.4, 8.5 * 25.4))
    assert (A4.width, A4.height) == (297.0, 210.0)
    assert {words: step * count for words, step, count in BARS} == {"100 mm": 100.0, "4 in": pytest.approx(101.6)}
