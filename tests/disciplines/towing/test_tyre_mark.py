"""Sidewalls: sizes as they are marked, date codes, and the load index table."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.disciplines.towing.method import load_of_index
from boxwright.disciplines.towing.sourced import LOAD_OF_INDEX
from boxwright.disciplines.towing.tyre_mark import TyreMark, read_tyre_mark, read_week
from tests.findings.towing.held import JUDGED_ON, said_of


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("ST205/75R15", TyreMark(False, True, 0, "")),
        ("P205/75R15", TyreMark(True, False, 0, "")),
        ("155/70R13", TyreMark(False, False, 0, "")),
        ("195/50R13C 104/102N", TyreMark(False, False, 102, "N")),
        ("145R10 84N", TyreMark(False, False, 84, "N")),
        ("4.80-8", TyreMark(False, False, 0, "")),
        ("20.5x8.0-10", TyreMark(False, False, 0, "")),
    ],
)
def test_sizes_as_they_are_marked_are_read(text: str, mark: TyreMark) -> None:
    assert read_tyre_mark(text) == mark


@pytest.mark.parametrize("text", ["ST2O5/75R15", "205/75/15", "fifteen inch", "", "75R", "ST205\\75R15"])
def test_a_misspelt_size_is_not_guessed(text: str) -> None:
    assert read_tyre_mark(text) is None


@pytest.mark.parametrize(
    ("text", "monday"),
    [
        ("1325", date(2025, 3, 24)),
        ("0109", date(2008, 12, 29)),
        ("5326", None),
        ("0026", None),
        ("132", None),
        ("4026", None),
        ("x325", None),
    ],
)
def test_a_date_code_is_week_and_year_and_never_in_the_future(text: str, monday: date | None) -> None:
    """Weeks by ISO 8601: week 1 of 2009 begins on 29 December 2008 (from memory)."""
    assert read_week(text, JUDGED_ON) == monday


def test_the_load_index_table_rises_and_lies_along_its_law() -> None:
    """Two slips met in public copies, 62 as 165 kg and 83 as 478 kg, would each fail here."""
    indices = sorted(LOAD_OF_INDEX)
    assert indices == list(range(60, 120))
    loads = [LOAD_OF_INDEX[index] for index in indices]
    assert loads == sorted(set(loads))
    assert max(abs(load_of_index(index) / LOAD_OF_INDEX[index] - 1.0) for index in indices) < 0.018
    assert abs(165 / load_of_index(62) - 1.0) > 0.018 < abs(478 / load_of_index(83) - 1.0)


def test_a_tyre_pumped_low_carries_less_and_a_passenger_tyre_counts_less() -> None:
    """2000 lb axle load a side and axle: 880 lb a tyre. 1820 lb at 50 psi is 910 lb at 25 psi, 800 lb at 22 psi."""
    trips = {one.code: one for one in said_of({"trailer.tyres.pressure": "22 psi"})}
    assert trips["towing/tyre-overloaded"].kind == "stop"
    assert "at the pressure it has" in trips["towing/tyre-overloaded"].says
    rating = {"trailer.tyres.load": "950 lb", "trailer.tyres.size": "P205/75R15"}
    passenger = [one for one in said_of(rating) if one.code == "towing/tyre-overloaded"]
    assert [one.kind for one in passenger] == ["stop"] and "passenger tyre" in passenger[0].says
    trailer = [one for one in said_of({**rating, "trailer.tyres.size": "ST205/75R15"}) if "tyre-over" in one.code]
    assert [one.kind for one in trailer] == ["advice"]


def test_a_load_index_is_offered_where_the_load_is_not_written() -> None:
    edits = {"trailer.tyres.load": "", "trailer.tyres.size": "205/65R15 94N"}
    (found,) = (one for one in said_of(edits) if one.code == "towing/tyre-overloaded")
    assert found.kind == "unknown" and "load index 94 would be 1,477 lb" in found.says  # 670 kg
