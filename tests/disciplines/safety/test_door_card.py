"""The card inside the door: one page, whatever the stage; whom to call, how each way opens, what shuts off what."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from boxwright.book.poses import at_night_of, pose_sheets
from boxwright.disciplines.safety.parts import ShutOff
from boxwright.disciplines.safety.sheets import BLANK, numbers_to_call, sheets
from boxwright.drawing import Sheet, Text
from boxwright.drawing.layout.pages import pages_of
from boxwright.drawing.paper import PAPERS, TitleBlock
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.study.standing import paths
from boxwright.units import HeaderUnits
from tests.disciplines.safety.test_ways import BIN, DOOR, result
from tests.study.demo import RIGS

TITLE = TitleBlock("Whimbrel", "as planned", "A", "2026-06-01", "inches", ("Local law comes first.",), True)
INCHES = HeaderUnits(length="in", weight="lb")


def card(name: str, number: int) -> Sheet:
    """Return the card of a demo rig at a stage of its plan."""
    rig = read_rig((RIGS / f"{name}.yaml").read_bytes()).rig
    slot = study(rig, date(2026, 6, 1), stage=number, ticked=False).slots[0]
    assert slot.safety is not None
    night = replace(slot.safety, exits=at_night_of(rig, slot))
    there = frozenset(paths(slot.standing))
    (sheet,) = sheets(night, rig.header.countries, rig.safety.shut_offs, INCHES, there=there)
    return sheet


def cells(sheet: Sheet) -> list[str]:
    """Return every cell of a sheet's tables."""
    return [cell for grid in sheet.grids for row in grid.rows for cell in row]


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize(
    ("name", "number"), [("whimbrel", 0), ("whimbrel", 10), ("dunlin", 0), ("dunlin", 5), ("gannet", 6)]
)
def test_it_is_one_page(name: str, number: int, paper: str) -> None:
    assert len(pages_of((card(name, number),), PAPERS[paper], TITLE)) == 1  # type: ignore[index]


def test_four_countries_and_seven_ways_out_are_one_page_too() -> None:
    many = "  vent:"
    for index in range(5):
        many = (
            f"  way-{index}: {{wall: left, x: {1500 + 450 * index}, width: 400, z: 300, height: 1200, stage: shell, "
            "cut: yes, done: yes, release: inside, swing: {hinge: front, opens: out, to: 90 deg}}\n" + many
        )
    (sheet,) = sheets(result(("  vent:", many)), ("US-NC", "UK", "AU", "NZ"), (), INCHES)
    assert len(sheet.grids[1].rows) == 7
    assert len(pages_of((sheet,), PAPERS["letter"], TITLE)) == 1


def test_whom_to_call_is_told_for_each_country_of_the_route_home_first() -> None:
    assert numbers_to_call(("US-NC", "US-AK", "CA-BC", "EU-FR", "UK", "AU", "NZ")) == (
        ("US", "911"), ("CA", "911"), ("EU", "112"), ("UK", "999 or 112"), ("AU", "000"), ("NZ", "111"),
    )  # fmt: skip
    assert numbers_to_call(("ZZ",)) == (("ZZ", ""),)
    (sheet,) = sheets(result(), ("ZZ",), (), INCHES)
    assert f"CALL {BLANK}" in cells(sheet)


@pytest.mark.parametrize(
    ("release", "says"),
    [("inside", "opens out"), ("none", "NOT FROM INSIDE"), ("key", "ONLY WITH A KEY"), ("unknown", "NOT TRIED YET")],
)
def test_a_way_that_does_not_open_is_never_told_as_one_that_does(release: str, says: str) -> None:
    (sheet,) = sheets(result((DOOR, DOOR.replace("inside", release))), ("US",), (), INCHES)
    assert sheet.grids[1].rows[0] == ("1", "door, right wall", says)
    assert sheet.grids[1].of[0] == "openings[door]"


def test_a_release_names_what_opens_the_way() -> None:
    knob = "  knob: {x: 3500, wall: right, z: 900, size: 50 x 50 x 50, weight: 1, stage: shell, done: yes, "
    knob += "release: door}"
    released = result((DOOR, DOOR.replace("inside", "none")), ("  # one more", knob))
    (sheet,) = sheets(released, ("US",), (), INCHES)
    assert sheet.grids[1].rows[0][2] == "opens out, by knob"


def test_what_nobody_wrote_is_left_to_a_pencil_and_an_extinguisher_that_is_not_there_is_said() -> None:
    (sheet,) = sheets(result(), ("US",), (ShutOff("gas", "valve on the tongue", "parts[valve]"),), INCHES)
    said = cells(sheet)
    assert "Gas: valve on the tongue" in said and f"Shore: {BLANK}" in said
    assert any(cell.startswith("Extinguisher: right side") for cell in said)
    (bare,) = sheets(result(("done: yes, puts_out: ABC", "done: part, puts_out: ABC")), ("US",), (), INCHES)
    assert "NO EXTINGUISHER" in cells(bare)


def test_how_to_be_out_in_two_minutes_has_its_place() -> None:
    (without,) = sheets(result(), ("US",), (), INCHES)
    (quick,) = sheets(result(), ("US",), (), INCHES, ("Lift the bar.",))
    assert [grid.title for grid in quick.grids if grid not in without.grids] == ["Out in two minutes"]


def test_shore_battery_and_fuel_are_told_by_what_the_plan_says() -> None:
    said = cells(card("whimbrel", 10))
    assert "Shore: plug out of inlet-30A" in said
    assert "Battery, last: fuses at battery, in front-cabinet" in said
    assert "Fuel: valve at tank, heater-fuel" in said


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("clear: {width: 700, height: 500}", "clear: {width: 200, height: 500}", "TOO SMALL"),
        ("  # one more", f"{BIN % (3650, 330)}", "SHUT BY bin"),
        ("extinguisher: {x: 3000, wall: right", "extinguisher: {x: 3000, side: right+400", "NO EXTINGUISHER"),
    ],
)
def test_what_counts_for_nobody_is_told_so(old: str, new: str, words: str) -> None:
    (sheet,) = sheets(result((old, new)), ("US-NC",), (), INCHES)
    (before,) = sheets(result(), ("US-NC",), (), INCHES)
    assert words in cells(sheet) and words not in cells(before)


def test_a_way_that_cargo_shuts_from_every_bed_is_told_so() -> None:
    assert card("dunlin", 5).grids[1].rows[0] == ("1", "rear, rear wall", "WAY SHUT BY bowls-crates")


def test_an_extinguisher_is_told_over_the_finished_floor() -> None:
    """It hangs 640 mm over the deck and 2280 mm behind the front, and the mat is 5 mm thick: 25 in up, by hand."""
    (row,) = [row for row in card("dunlin", 5).grids[3].rows if "Extinguisher" in row[1]]
    assert row[1] == "Extinguisher: right side, 89.8 in from the front, 25 in up"


def test_where_no_bed_stands_a_way_is_shut_for_whoever_is_on_the_floor() -> None:
    assert card("dunlin", 3).grids[1].rows[0] == ("1", "rear, rear wall", "WAY SHUT BY bowls-crates")
    assert card("dunlin", 3).grids[1].rows[1][2] == "NOT MEASURED"  # the hatch is reached past the crates
    assert card("dunlin", 0).grids[1].rows[0] == ("1", "rear, rear wall", "opens out")  # nothing stands yet
    assert card("whimbrel", 0).grids[1].rows[0] == ("1", "side-door, right wall", "opens out")


def test_what_is_not_in_at_a_stage_is_not_told_as_a_thing_to_shut_off() -> None:
    early, late = cells(card("whimbrel", 5)), cells(card("whimbrel", 8))
    assert "Fuel: not in yet" in early and "Battery, last: not in yet" in early
    assert "Shore: plug out of inlet-30A" in early and "Fuel: valve at tank, heater-fuel" in late


def test_what_is_to_be_done_last_stands_last() -> None:
    rows = card("whimbrel", 10).grids[-1].rows
    assert [row[0] for row in rows] == [str(number) for number in range(1, 7)]
    assert [", last:" in row[1] for row in rows] == [False] * 5 + [True]


@pytest.mark.parametrize(("number", "title"), [(0, ": NONE HANGS"), (1, "")])
def test_an_alarm_that_does_not_hang_is_told_above_what_to_do_when_it_sounds(number: int, title: str) -> None:
    titles = [grid.title for grid in card("whimbrel", number).grids]
    assert f"When the carbon monoxide alarm sounds{title}" in titles


def test_a_plan_without_a_way_out_says_so_in_large_letters() -> None:
    for name, number, is_said in (("gannet", 6, True), ("dunlin", 5, False)):
        rig = read_rig((RIGS / f"{name}.yaml").read_bytes()).rig
        slot = study(rig, date(2026, 6, 1), stage=number, ticked=False).slots[0]
        (plan,) = [one for one in pose_sheets(rig, slot, INCHES) if one.name == "exits"]
        words = [mark.words for mark in plan.views[0].marks if isinstance(mark, Text) and mark.size == "large"]
        assert ("NO WAY OUT IS WRITTEN" in words) is is_said
