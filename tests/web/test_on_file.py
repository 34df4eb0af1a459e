"""Tables as the page shows them: what waits for a pencil is no dead box, and every row keeps its thing."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.drawing import TO_TICK, Grid
from boxwright.web import contract
from boxwright.web.on_file import tables_of
from boxwright.web.screens import Screens, chapters
from boxwright.web.session import Session
from tests.web.live import ROOT


def test_what_waits_for_a_pencil_is_left_to_the_printed_sheet() -> None:
    grid = Grid(
        "Walk round",
        ("", "Look at", "Found"),
        (
            (TO_TICK, "the coupler", ""),
            (TO_TICK, "parts[bed]", "loose"),
            ("", "Walked by ______________", ""),
        ),
        ("", "parts[bed]", ""),
    )
    (table,) = tables_of([grid])
    assert table.columns == ["Look at", "Found"]
    assert table.rows == [["the coupler", ""], ["bed", "loose"]]
    assert table.of == ["", "parts[bed]"]
    assert table.title == "Walk round; ticked on paper, the Book prints it"
    (led,) = tables_of([Grid("Walk", ("Before the road",), ((f"{TO_TICK} the coupler",),), ("",))])
    assert led.rows == [["the coupler"]]


def test_a_table_without_boxes_is_told_as_it_is() -> None:
    grid = Grid("Weights", ("Thing", ""), (("parts[bed]", "80 lb"), ("parts[box]", "")), ("parts[bed]", "parts[box]"))
    (table,) = tables_of([grid])
    assert (table.title, table.columns) == ("Weights", ["Thing", ""])
    assert table.rows == [["bed", "80 lb"], ["box", ""]]


@pytest.mark.parametrize("demo", ["whimbrel", "dunlin"])
def test_no_screen_shows_a_box_that_nobody_can_tick(demo: str) -> None:
    session = Session((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"), date(2026, 11, 28))
    for name in (*(one.word for one in chapters()), "records", "stages"):
        found = Screens().screen(session, name, contract.Slot())
        assert found is not None
        for table in found.tables:
            assert all(len(row) == len(table.columns) for row in table.rows)
            assert len(table.of) == len(table.rows)
            assert TO_TICK not in "".join(cell for row in table.rows for cell in row), (name, table.title)
