"""The order sheet shows what was asked, whatever tape and reply have said since."""

from __future__ import annotations

import pytest

from boxwright.cli.ordered import lines_of
from boxwright.disciplines.frame.as_ordered import as_ordered
from boxwright.disciplines.frame.drawn import Drawn
from boxwright.disciplines.frame.order_sheet import order_sheet
from boxwright.drawing import Sheet
from boxwright.drawing.mark import Dimension, Shape
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.book.drawn import DAY, demo

INCH = 0.0254


def made_from(text: str) -> Drawn:
    """Return what the sheets of a rig file's text are made from."""
    reading = read_rig(text.encode("utf-8"))
    rig, slot = reading.rig, study(reading.rig, DAY).asked_slots()[0]
    assert slot.frame is not None and slot.box is not None and rig.frame.framing is not None
    lines = lines_of(rig, reading.document)
    return Drawn("today", slot.frame, slot.box, rig.header.units, (), rig.frame.framing.order, lines)


def rows(sheet: Sheet, title: str) -> dict[str, tuple[str, ...]]:
    """Return the rows of a table of a sheet by their first cells."""
    return {row[0]: row for grid in sheet.grids if grid.title == title for row in grid.rows}


def replied(text: str) -> str:
    """Return a demo whose side door was asked for at 17 1/4 and is now where the builder wants it."""
    return text.replace("height: 72, by: trailer builder, reply: yes", "height: 72, by: trailer builder, "
                        "reply: {x: 16 1/2, was: {x: 17 1/4}}", 1)  # fmt: skip


def test_the_order_shows_no_stud_where_only_a_tape_has_found_it() -> None:
    drawn = made_from(demo("whimbrel"))
    taped = {one.name: one.at.best / INCH for one in drawn.frame.members}
    assert taped["L3"] == pytest.approx(48.125) and taped["L7"] == pytest.approx(112.375)
    sheet = order_sheet(drawn)
    left = next(view for view in sheet.views if view.name == "Left wall")
    written = [mark.words for mark in left.marks if isinstance(mark, Dimension)]
    assert "L3 = 48" in written and "L7 = 112" in written
    middles = [
        sum(x for x, _ in mark.points) / 4.0 / INCH
        for mark in left.marks
        if isinstance(mark, Shape) and mark.of == "frame.studs" and len(mark.points) == 4
    ]
    assert [one for one in middles if abs(one / 16.0 - round(one / 16.0)) > 1e-6] == []
    assert rows(sheet, "Frame, middles as ordered")["left studs"][2].startswith("0, 16, 32, 48, 64")
    # The second right stud was seen to be gone: the door, as ordered, takes it.
    assert "takes R2" in rows(sheet, "Openings")["side-door"][5]


def test_an_opening_and_a_price_stand_on_the_order_as_they_were_asked_and_the_reply_beside_them() -> None:
    drawn = made_from(replied(demo("whimbrel")))
    door = next(one for one in drawn.frame.holes if one.name == "side-door")
    assert door.low / INCH == pytest.approx(16.5)
    asked = next(one for one in as_ordered(drawn).frame.holes if one.name == "side-door")
    assert (asked.low / INCH, asked.high / INCH) == pytest.approx((17.25, 48.25))
    sheet = order_sheet(drawn)
    row = rows(sheet, "Openings")["side-door"]
    assert row[3].startswith("17 1/4 in") and row[-1] == "x 16 1/2 in"
    # By hand: stud faces at 16 1/2 and at 47 1/2, so that the door as asked runs 3/4 in into the fourth stud.
    assert "R1 3/4 in" in row[5] and "R3" in row[5].partition("takes ")[2]
    option = rows(sheet, "Options")["taller"]
    assert option[2] == "240 USD" and option[-1] == "price 260 USD"
    head = rows(sheet, "Order")
    assert head["Lead time"][1:] == ("10 weeks", "11 weeks")
    assert head["Delivery"][2] == "2026-01-16"


def test_an_order_without_reply_and_tape_is_the_plan() -> None:
    drawn = made_from(demo("dunlin"))
    before, after = drawn.frame, as_ordered(drawn).frame
    planned = {one.name: one.planned for one in before.members if one.planned is not None}
    assert planned
    assert {one.name: one.at.best for one in after.members if one.name in planned} == planned
    assert [one.name for one in after.holes] == ["rear"]
