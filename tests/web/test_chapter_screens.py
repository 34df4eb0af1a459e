"""The screen of a chapter is what its sheets are: a chapter that is built later needs no line in page or server."""

from __future__ import annotations

import re
from datetime import date
from importlib import import_module
from typing import get_type_hints

import pytest

from boxwright.book import sheets as printing
from boxwright.book.sheets import IN_ORDER, Printing
from boxwright.drawing import Grid, Line, Sheet, View
from boxwright.web import contract
from boxwright.web.screens import Screens, chapters, what_it_answers
from boxwright.web.session import Session
from tests.web.live import ROOT

DAY = date(2026, 5, 2)
DEMOS = ("whimbrel", "dunlin", "gannet")
PATH = re.compile(r"\b[a-z]+\[[^\]]+\]")


def session_of(demo: str) -> Session:
    return Session((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"), DAY)


def screen_of(session: Session, name: str) -> contract.Screen:
    found = Screens().screen(session, name, contract.Slot())
    assert found is not None
    return found


def test_a_chapter_that_is_built_later_has_its_drawings_tables_and_notes_on_its_screen(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def drawn(asked: Printing) -> tuple[Sheet, ...]:
        assert asked.slot is not None
        table = Grid("Who breathes what", ("Opening", "Free area, cm2"), (("openings[roof-fan]", "310"),), ("",))
        view = View("Air", "from above", (Line((0.0, 0.0), (1.0, 0.0), "visible", "openings[roof-fan]"),))
        card = Sheet("air-card", "Card", grids=(Grid("card", ("a",), (("b",),), ("",)),), is_for_hand=True)
        return (Sheet("air", "Air", (view,), ("Keep it clear of snow.",), (table,)), card)

    session = session_of("whimbrel")
    before = screen_of(session, "cutting")
    assert not before.tables and not before.pictures and not before.notes
    monkeypatch.setattr(printing, "IN_ORDER", (*IN_ORDER, ("cutting", drawn)))
    # What a screen was made of is kept for the text it was made from.
    found = screen_of(session_of("whimbrel"), "cutting")
    (table,), (picture,) = found.tables, found.pictures
    assert table.title == "Air: Who breathes what" and table.rows == [["opening roof-fan", "310"]]
    assert table.names == {"opening roof-fan": "openings[roof-fan]"}
    assert picture.title == "Air" and "roof-fan" in picture.svg and picture.movable == []
    assert found.notes == ["Keep it clear of snow."]


def test_every_chapter_that_draws_something_is_in_the_book_and_so_on_its_screen() -> None:
    for chapter in chapters():
        sheets = import_module(f"boxwright.disciplines.{chapter.word}").sheets
        draws = get_type_hints_or_words(sheets) not in ("tuple[()]", tuple[()])
        assert draws == (chapter.word in {name for name, _ in IN_ORDER}), chapter.word


def get_type_hints_or_words(function: object) -> object:
    """Return what a function gives back; in words where its types are not there to be looked up."""
    try:
        return get_type_hints(function)["return"]
    except NameError:
        return getattr(function, "__annotations__", {})["return"]


@pytest.mark.parametrize("demo", DEMOS)
def test_tables_name_things_and_keep_the_path_behind_the_name(demo: str) -> None:
    session = session_of(demo)
    named = 0
    for name in Screens().names():
        for table in screen_of(session, name.name).tables:
            cells = [cell for row in table.rows for cell in row]
            if table.title != "Every entry":  # as it was typed
                assert not any(PATH.search(cell) for cell in cells), (name.name, table.title)
            named += len(table.names)
            for words, path in table.names.items():
                assert any(words in cell for cell in cells) and path != words
    assert named or demo == "dunlin"


@pytest.mark.parametrize("demo", DEMOS)
def test_tables_of_weight_say_what_they_are_and_in_which_unit(demo: str) -> None:
    first, *others = screen_of(session_of(demo), "weight").tables
    assert all(head[0].isupper() and " " in head for head in first.columns)
    assert "On the ball" in [row[0] for row in first.rows]
    widened = [one for one in others if one.title.startswith("What makes")]
    unit = "lb" if demo != "dunlin" else "kg"
    for table in widened:
        assert table.columns[1].endswith(f", {unit}") and table.columns[2].endswith(", %")


def test_an_introduction_does_not_send_the_reader_of_the_page_to_the_command_line() -> None:
    for word in ("air", "heat"):
        assert len(what_it_answers(word)) > 100 and "its page" not in what_it_answers(word)
