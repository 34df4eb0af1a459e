"""The receiving sheet says of every stud where it is expected, as a tape hooked at the left or the front reads it."""

from __future__ import annotations

from boxwright.disciplines.frame.receiving import expected
from boxwright.drawing import TO_TICK
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.book.drawn import DAY, demo, drawn
from tests.book.test_end_walls import BODY, LOADS

TAPED = "measured:\n  one: {what: tape, studs: rear, date: 2026-01-01, values: {1: 402, 2: 830}}\n"


def cells(text: str, group: str) -> list[tuple[str, str]]:
    """Return what was ordered of a row of members, and what was found with a NO that fails it, as printed."""
    sheet = next(one for one in drawn(text)[0] if one.name == "receiving")
    for grid in sheet.grids:
        if group in grid.columns:
            at = grid.columns.index(group)
            no = {True: "  NO", False: ""}
            return [(row[at], row[at + 1] + no[row[at + 2] == "NO"]) for row in grid.rows if row[at] != "-"]
    raise AssertionError(group)


def test_studs_whose_row_nobody_began_are_expected_about_there() -> None:
    assert [one for one, _ in cells(demo("whimbrel"), "studs rear")] == [
        "about 0 in", "about 16 in", "about 32 in", "about 48 in", "about 64 in", "about 80 in",
    ]  # fmt: skip
    sheet = next(one for one in drawn(demo("whimbrel"))[0] if one.name == "receiving")
    assert not any("?" in cell for grid in sheet.grids if grid.title.startswith("Middles") for row in grid.rows
                   for cell in row)  # fmt: skip


def test_studs_ordered_across_the_trailer_are_read_from_the_left() -> None:
    ordered = BODY.replace("first: 0}", "first: 0, rear: {first: 10}}")
    assert [one for one, _ in cells(ordered + LOADS, "studs rear")] == ["10 mm", "410 mm", "810 mm", "1210 mm"]
    # By hand: 402 is 8 off 410, more than a quarter of an inch; so is 830.
    assert [found for _, found in cells(ordered + TAPED + LOADS, "studs rear")][1:3] == ["402 mm  NO", "830 mm  NO"]


def test_no_reading_fails_a_place_that_was_left_open() -> None:
    text = BODY + TAPED + LOADS
    rig = read_rig(text.encode()).rig
    frame = study(rig, DAY).asked_slots()[0].frame
    assert frame is not None
    lines = [one for one in expected(rig.trailer, frame, rig.frame.readings) if one.group == "studs rear"]
    assert lines and {one.passes for one in lines} == {None}
    assert [found for _, found in cells(text, "studs rear")][1:3] == ["402 mm", "830 mm"]


def test_a_member_stands_in_the_row_of_its_own_number() -> None:
    text = BODY.replace("first: 0}", "first: 0, left: {extra: [1000]}}") + LOADS
    sheet = next(one for one in drawn(text)[0] if one.name == "receiving")
    grid = next(one for one in sheet.grids if "studs left" in one.columns)
    at = grid.columns.index("studs left")
    # By hand: 400 apart over 2500 are seven studs, 0 to 6; the extra one at 1000 is number 7, between 2 and 3.
    assert [(row[0], row[at]) for row in grid.rows] == [
        *((str(number), f"{400 * number} mm") for number in range(7)), ("7", "1000 mm"),
    ]  # fmt: skip


def test_every_member_has_room_for_pass_and_photo() -> None:
    sheet = next(one for one in drawn(demo("whimbrel"))[0] if one.name == "receiving")
    for grid in (one for one in sheet.grids if one.title.startswith("Middles")):
        assert grid.columns[-1] == "Photo" and all(row[-1] == "" for row in grid.rows)
        passes = [number for number, name in enumerate(grid.columns) if name == "Pass"]
        assert len(passes) == grid.columns.count("Measured") > 0
        for row in grid.rows:
            assert all(row[at] in {TO_TICK, "yes", "NO", "-"} for at in passes)
    row = next(row for grid in sheet.grids if "studs left" in grid.columns for row in grid.rows if row[0] == "7")
    # L7 was ordered at 112 and taped at 112 3/8: more than a quarter of an inch off.
    assert row[1:4] == ("112 in", "112 3/8 in", "NO")
