"""Rules, methods and chapters explain themselves; the checks of the methods run where the program is."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import NamedTuple

import pytest

from boxwright.book.labels import taken_apart
from boxwright.cli import check_methods, explain
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import Line, columns_of, text_of
from boxwright.cli.words import CHAPTERS
from boxwright.source import Check, Expected, Given, Source

SOURCE = Source("made-up", "A made-up book", "2", "seen", publisher="nobody")
HOLDS = Check("one", "area", (), "made-up", "page 3", "hand", (Given("side", "2 m", 2.0),),
              (Expected("result", "4 m2", 4.0, 0.01),), "0.01 m2")  # fmt: skip


def texts(lines: list[Line]) -> list[str]:
    return [text_of(line) for line in lines]


def area(side: float) -> float:
    """Return the area of a square.

    A paragraph
    of two lines.

    Formula: area = side *
        side
    Source: made-up page 3
    """
    return side * side


class Sides(NamedTuple):
    long: float
    short: float


def test_a_docstring_is_taken_apart() -> None:
    labelled = taken_apart(area)
    assert labelled.paragraphs == ("Return the area of a square.", "A paragraph of two lines.")
    assert labelled.labels == (("Formula", "area = side * side"), ("Source", "made-up page 3"))
    assert labelled.label("Valid") == ""


def test_a_check_that_holds_shows_both_numbers() -> None:
    outcome = check_methods.ran("frame", HOLDS, SOURCE, area)
    assert not outcome.is_failed
    assert texts(check_methods.outcome_lines(outcome, 80)) == [
        "  holds    one (hand)",
        "           expected 4 m2, got 4 m2, within 0.01 m2",
    ]


def test_a_check_that_fails_is_told_and_counted() -> None:
    outcome = check_methods.ran("frame", HOLDS, SOURCE, lambda side: side)
    assert outcome.is_failed
    page = texts(check_methods.page([outcome], 80))
    assert page[1] == "  FAILS    one (hand)"
    assert page[-1] == "1 checks (0 published, 0 independent, 1 hand): 0 hold, 1 fail."


def test_a_disputed_check_shows_both_numbers_and_fails_nothing() -> None:
    disputed = replace(HOLDS, disputed="the book adds where it should multiply")
    outcome = check_methods.ran("frame", disputed, SOURCE, lambda side: side)
    assert not outcome.is_failed
    page = " ".join(texts(check_methods.page([outcome], 80)))
    assert "disputed" in page and "expected 4 m2, got 2 m2" in page and "1 disputed" in page


def test_a_method_that_breaks_off_fails_its_check() -> None:
    def breaks(side: float) -> float:
        raise ValueError(f"{side} is out of range")

    assert check_methods.ran("frame", HOLDS, SOURCE, breaks).is_failed
    assert check_methods.ran("frame", HOLDS, SOURCE, None).is_failed


def test_a_named_result_is_compared_field_by_field() -> None:
    wanted = (Expected("long", "3 ft", 0.9144, 1e-9), Expected("short", "1 ft", 0.3048, 1e-9))  # exact by definition
    outcome = check_methods.ran("frame", replace(HOLDS, expect=wanted), SOURCE, lambda side: Sides(0.9144, 0.3048))
    assert outcome.got == (("long", "3 ft"), ("short", "1 ft")) and not outcome.misses


def test_a_worked_example_says_where_it_comes_from_and_what_goes_in() -> None:
    example = texts(check_methods.worked_example(check_methods.ran("frame", HOLDS, SOURCE, area), 80))
    assert "           from A made-up book, 2, nobody (seen), page 3" in example
    assert "           given side = 2 m" in example


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_every_chapter_explains_itself(chapter: str) -> None:
    page = texts(explain.page(chapter, 80))
    assert page[0] and not page[0].startswith("#") and len(page) > 2


def test_what_no_discipline_has_judged_is_explained_by_its_chapter() -> None:
    assert texts(explain.page("not-judged/heat", 80)) == texts(explain.page("heat", 80))


def test_every_code_is_explained_with_what_it_asks_and_its_source() -> None:
    found = explain.codes()
    assert len(found) > 10
    for code in found:
        page = texts(explain.page(code, 80))
        assert any(text.startswith("Asks") for text in page) and any(text.startswith("Source") for text in page), code
        assert all(columns_of(text) <= 80 for text in page), code


@pytest.mark.parametrize(("asked", "meant"), [("weight/tips-upp", "weight/tips-up"), ("wieght", "weight")])
def test_a_mistyped_code_is_answered_with_the_nearest(asked: str, meant: str) -> None:
    with pytest.raises(NothingAsked, match=re.escape(f'did you mean "{meant}"?')):
        explain.page(asked, 80)


def test_a_text_with_headings_and_items_is_laid_out() -> None:
    text = "# Head\n\nOne two\nthree.\n\n- first item\n  goes on\n- second\n\n    as it is\n"
    assert texts(explain.read_aloud(text, 80)) == [
        "Head",
        "",
        "One two three.",
        "",
        "  - first item goes on",
        "  - second",
        "",
        "    as it is",
    ]
