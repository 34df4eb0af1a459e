"""The plan of what is brought in at a stage: a line for each big thing a way was found for, a sign for each other."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from boxwright.book.poses import pose_sheets
from boxwright.drawing import Grid, Line, Shape, Sheet, Symbol, Text
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

ROOT = Path(__file__).resolve().parents[2]
DAY = date(2026, 5, 2)
BULKHEAD = "  bulkhead: {x: 49, side: left, z: floor, size: 1 x 79 x 74, weight: 40, stage: power}\n  galley: {x: 50"
LOW = ("width: 74, z: 0, height: 72", "width: 74, z: 0, height: 30")


@cache
def drawn(name: str, stage: int, edits: tuple[tuple[str, str], ...] = ()) -> Sheet | None:
    text = (ROOT / "rigs" / f"{name}.yaml").read_text(encoding="utf-8")
    for old, new in edits:
        assert text.count(old) == 1
        text = text.replace(old, new)
    rig = read_rig(text).rig
    slot = study(rig, DAY, stage=stage, use="tow", ticked=False).slots[0]
    return next((one for one in pose_sheets(rig, slot, rig.header.units) if one.name == "bringing-in"), None)


def rows(sheet: Sheet) -> list[tuple[str, ...]]:
    (grid,) = sheet.grids
    assert isinstance(grid, Grid)
    return list(grid.rows)


def of_kind(sheet: Sheet, of: str, line: str) -> list[Line]:
    return [mark for mark in sheet.views[0].marks if isinstance(mark, Line) and mark.of == of and mark.line == line]


def test_each_big_thing_of_the_stage_has_its_number_its_row_and_its_way_from_outside() -> None:
    sheet = drawn("whimbrel", 9)
    assert sheet is not None and sheet.title == "Bringing in, stage galley"
    assert [row[:5] for row in rows(sheet)] == [
        ("1", "galley", "26 x 20 x 36 in", "ramp", "as it will stand"),
        ("2", "cupboard-front", "46 x 14 x 18 in", "ramp", "as it will stand"),
        ("3", "bench-right", "32 x 18 x 17 in", "ramp", "as it will stand"),
        ("4", "toilet", "14 x 14 x 13 in", "ramp", "as it will stand"),
    ]
    inch = 0.0254
    for number, name, at in (("1", "galley", (63.0, -29.5)), ("3", "bench-right", (98.0, 29.5))):
        lines = of_kind(sheet, f"parts[{name}]", "centre")
        assert lines[0].start[0] > 168 * inch  # it begins behind the ramp
        assert lines[-1].end == pytest.approx([one * inch for one in at], abs=0.5 * inch)  # and ends at its place
        assert any(isinstance(mark, Text) and mark.words == number for mark in sheet.views[0].marks)
    assert not [mark for mark in sheet.views[0].marks if isinstance(mark, Symbol) and mark.kind == "fault"]


def test_what_no_way_was_found_for_is_marked_and_told_with_what_is_in_the_way() -> None:
    sheet = drawn("whimbrel", 9, (("  galley:          {x: 50", BULKHEAD),))
    assert sheet is not None
    told = {row[1]: row[3:] for row in rows(sheet)}
    assert told["cupboard-front"] == ("-", "no way in was found", "bunk", "front-cabinet, bulkhead")
    assert told["galley"][0] == "ramp"
    faults = [mark.of for mark in sheet.views[0].marks if isinstance(mark, Symbol) and mark.kind == "fault"]
    assert faults == ["parts[cupboard-front]"]
    assert of_kind(sheet, "parts[cupboard-front]", "centre") == []


def test_what_stands_later_sets_the_stage_before_which_a_thing_is_carried_in() -> None:
    """A bulkhead of the stage after, before the door, shuts the way of what stands ahead of it, and of nothing else."""
    early = BULKHEAD.replace("stage: power", "stage: bunk").replace("x: 49", "x: 16")
    sheet = drawn("whimbrel", 6, (("  galley:          {x: 50", early),))
    assert sheet is not None
    at = {row[1]: row[5] for row in rows(sheet)}
    assert at == {"front-cabinet": "heat", "fridge": "-"}
    assert (plain := drawn("whimbrel", 6)) is not None and rows(plain)[0][5] == "-"


def test_a_thing_that_is_tilted_has_the_square_it_is_set_up_in() -> None:
    """Through a ramp 30 in high and a door 16 in wide a cabinet of 36 in comes lying down."""
    sheet = drawn("whimbrel", 9, (LOW, ("width: 31, z: 0, height: 72", "width: 16, z: 0, height: 72")))
    assert sheet is not None
    told = {row[1]: row[3:] for row in rows(sheet)}
    assert told["galley"] == ("ramp", "tilted over, set up inside", "-", "-")
    around = [
        mark
        for mark in sheet.views[0].marks
        if isinstance(mark, Shape) and mark.of == "parts[galley]" and mark.line == "phantom"
    ]
    assert len(around) == 2  # where it will stand, and the square it is turned in


def test_what_is_bulky_is_looked_at_though_every_opening_is_wider() -> None:
    """A fridge of 25 x 16 x 18 in goes through all doors; behind a bulkhead that leaves 15 in no way leads to it."""
    plain = drawn("whimbrel", 6)
    assert plain is not None and {row[1]: row[3] for row in rows(plain)}["fridge"] == "ramp"
    walls = "".join(
        f"  {name}: {{x: {x}, side: right, z: floor, size: 1 x {deep} x 74, weight: 40, stage: safe, done: yes}}\n"
        for name, x, deep in (("bulkhead-a", 48.5, 34), ("bulkhead-b", 80, 34))
    )
    rail = "  rail: {x: 49, side: right-34, z: floor, size: 32 x 1 x 74, weight: 9, stage: safe, done: yes}\n"
    shut = drawn("whimbrel", 6, (("  front-cabinet:   {x: front", f"{walls}{rail}  front-cabinet:   {{x: front"),))
    assert shut is not None
    fridge = next(row for row in rows(shut) if row[1] == "fridge")
    assert fridge[3:5] == ("-", "no way in was found") and fridge[6] != "-"


def test_whole_sheets_of_linings_come_in_at_their_stage_and_those_in_already_are_not_told() -> None:
    sheet = drawn("whimbrel", 5)
    assert sheet is not None and rows(sheet) == [
        ("-", "sheets of left liner, right liner and ceiling liner", "4 x 8 ft, 1/4 in thick", "ramp",
         "flat or on edge, whole", "-", "-"),
    ]  # fmt: skip
    wall = "  wall: {x: 150, side: left, z: floor, size: 1 x 79 x 75, weight: 40, stage: bunk}\n"
    wall += "  galley:          {x: 50"
    small = ("width: 31, z: 0, height: 72", "width: 31, z: 0, height: 30")
    later = drawn("whimbrel", 5, (small, ("  galley:          {x: 50", wall)))
    assert later is not None and rows(later)[0][3:6] == ("ramp", "flat or on edge, whole", "heat")
    low = drawn("whimbrel", 5, (LOW, ("width: 31, z: 0, height: 72", "width: 16, z: 0, height: 72")))
    assert low is not None and rows(low)[0][3] == "ramp"  # flat through 30 in, on to the room behind
    narrow = ("width: 74, z: 0, height: 72", "width: 30, z: 0, height: 30")
    none = drawn("whimbrel", 5, (narrow, ("width: 31, z: 0, height: 72", "width: 31, z: 0, height: 30")))
    assert none is not None and rows(none)[0][3:5] == ("-", "no way in was found: cut them outside")


@pytest.mark.parametrize(("name", "stage"), [("whimbrel", 0), ("whimbrel", 4), ("gannet", 7), ("dunlin", 0)])
def test_there_is_none_where_nothing_big_is_brought_in_or_no_opening_is_known(name: str, stage: int) -> None:
    assert drawn(name, stage) is None
