"""The page of a hot day: what it is taken to be, what the room comes to, and what cannot be worked out."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from boxwright.book.hot_day import NO_DAY, NO_ROOM, hot_day_sheets
from boxwright.book.sheets import ONLY_BY_NAME, SLOW
from boxwright.cli import day_page
from boxwright.cli.asked import Answered, Question, answered, slot_of
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import text_of

RIG = Path(__file__).parents[2] / "rigs" / "whimbrel.yaml"
TODAY = date(2026, 5, 2)


@pytest.fixture(scope="module")
def whimbrel() -> Answered:
    return answered(Question(str(RIG), "finish", "", "sleep"), TODAY)


def said(answer: Answered, outside: str = "") -> str:
    rooms = day_page.worked(answer, outside)
    return " ".join(" ".join(text_of(line).split()) for line in day_page.lines(rooms, answer.units, 200))


def test_a_day_as_hot_as_was_typed_is_told_with_its_ends(whimbrel: Answered) -> None:
    told = said(whimbrel, "95F")
    assert "Greensboro NC: 95 F outside at its hottest, 77 F before sunrise" in told
    assert "Shut, the room comes to 102 F (" in told
    assert "WHAT HELPS, EACH RUN AS A DAY OF ITS OWN" in told
    assert "never leave a child, an animal" in told
    assert "Sand Point" not in told, "what was typed is one day, at the hottest of the places"


def test_programs_get_the_same_in_si(whimbrel: Answered) -> None:
    (one,) = json.loads(json.dumps(day_page.as_json(day_page.worked(whimbrel, "95F"))))
    assert [run["way"] for run in one["runs"]] == ["shut", "opened", "fans", "doors"]
    assert len(one["runs"][0]["air"]) == 24


def test_what_is_no_hot_day_is_told(whimbrel: Answered) -> None:
    with pytest.raises(NothingAsked, match="is worked out; write it as 36 C"):
        day_page.worked(whimbrel, "200F")


def rig_with(tmp_path: Path, was: str, becomes: str) -> Answered:
    path = tmp_path / "changed.yaml"
    text = RIG.read_text(encoding="utf-8")
    assert was in text
    path.write_text(text.replace(was, becomes), encoding="utf-8")
    return answered(Question(str(path), "finish", "", "sleep"), TODAY)


def test_without_a_hot_month_nothing_is_made_up_but_what_is_typed_is_run(tmp_path: Path) -> None:
    text = RIG.read_text(encoding="utf-8")
    path = tmp_path / "cold.yaml"
    path.write_text(
        text.replace(", july: {high: 89, sun: 5.9 kWh/m2}", "").replace(", july: {high: 57, sun: 4.0 kWh/m2}", "")
        .replace("january: {low: 30, high: 49, sun: 2.5 kWh/m2}", "january: {low: 30}")
        .replace("january: {low: 27, high: 35, sun: 0.4 kWh/m2, wind: 18 mph}", "january: {low: 27}"),
        encoding="utf-8",
    )  # fmt: skip
    bare = answered(Question(str(path), "finish", "", "sleep"), TODAY)
    with pytest.raises(NothingAsked, match="No place says how hot it gets"):
        day_page.worked(bare, "")
    assert "as asked: 95 F outside at its hottest" in said(bare, "95F")
    (sheet,) = hot_day_sheets(bare.reading.rig, slot_of(bare, "sleep"), bare.units)
    assert sheet.notes == (NO_DAY,)


def test_where_a_place_lies_and_how_hot_it_gets_are_read_from_the_file(tmp_path: Path) -> None:
    changed = rig_with(tmp_path, "coldest_design: 18,", "coldest_design: 18, hottest_design: 101,")
    told = said(changed)
    assert "Greensboro NC: 101 F outside at its hottest, 83 F before sunrise" in told
    assert "66 F (62 to 68) outside at its hottest, some degrees over the mean of its hottest month" in told
    north = dict(changed.reading.rig.heat.latitudes)
    assert north["Greensboro NC"] == pytest.approx(0.62954, abs=1e-5)


def test_the_sheet_is_drawn_only_where_it_is_asked_for_by_name(whimbrel: Answered) -> None:
    assert "hot-day" in SLOW and "hot-day" in ONLY_BY_NAME
    (sheet,) = hot_day_sheets(whimbrel.reading.rig, slot_of(whimbrel, "sleep"), whimbrel.units)
    assert [one.title for one in sheet.grids] == [
        "A hot day at Greensboro NC", "What helps, each run as a day of its own",
        "A hot day at Sand Point AK", "What helps, each run as a day of its own",
    ]  # fmt: skip
    assert len(sheet.views) == 2
    (none,) = hot_day_sheets(whimbrel.reading.rig, None, whimbrel.units)
    assert none.notes == (NO_ROOM,)


def test_what_cools_by_its_plate_is_run_shut(tmp_path: Path) -> None:
    ac = "  ac: {x: 20, side: right-2, z: floor+40, size: 18 x 16 x 12, weight: 40, stage: safe, done: yes, cools: 5000 BTU/h}\n"  # noqa: E501
    changed = rig_with(tmp_path, "  lights: ", f"{ac}  lights: ")
    (room,) = day_page.worked(changed, "95F")
    cooled = next(one for one in room.runs if one.way == "cooled")
    # By hand: 5000 BTU/h are 1465 W, nine tenths of it in a hot box.
    assert cooled.cooling.best <= 1319.0
    assert cooled.warmest.best < room.runs[0].warmest.best - 5.0
    assert "shut and cooled" in said(changed, "95F")
