"""What a finding asks for can be written where it says: each value has its place, its unit and a meaning."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

import pytest

from boxwright.book.questions import Blank, blanks_of
from boxwright.finding import Finding
from boxwright.rig.compose import Reading, read_rig
from boxwright.rig.described import described
from boxwright.rig.document import Document
from boxwright.rig.splice import tree_at
from boxwright.study.slots import study
from boxwright.web.gestures import written
from tests.web.live import ROOT

DEMOS = ("whimbrel", "dunlin", "gannet")
DAY = date(2026, 6, 1)
PLAUSIBLE = {"in": "30", "mm": "800", "lb": "20", "kg": "9", "": "yes"}


def reading_of(demo: str) -> Reading:
    return read_rig((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"))


def every_blank(demo: str) -> Iterator[tuple[Finding, tuple[Blank, ...]]]:
    reading = reading_of(demo)
    vehicle = next((name for name, _ in reading.rig.tow), "")
    for one in study(reading.rig, DAY).findings():
        yield one, blanks_of(one, reading.document, reading.rig.header.units, vehicle)


@pytest.mark.parametrize(("demo", "least"), [("whimbrel", 0.8), ("dunlin", 0.6), ("gannet", 0.8)])
def test_most_questions_can_be_answered_where_they_are_asked(demo: str, least: float) -> None:
    asked = [blanks for finding, blanks in every_blank(demo) if finding.kind == "unknown"]
    assert len([one for one in asked if one]) >= least * len(asked)


@pytest.mark.parametrize("demo", DEMOS)
def test_each_value_is_written_in_its_own_place_and_changes_nothing_else(demo: str) -> None:
    reading = reading_of(demo)
    tried = {blank.path: blank for _, blanks in every_blank(demo) for blank in blanks}
    assert len(tried) > 5
    for path, blank in tried.items():
        value = PLAUSIBLE.get(blank.unit, "1")
        after = written(reading.document, path, value)
        assert tree_at(after, path) == value, path
        assert blank.explains or blank.example, path
        lines = reading.document.text.splitlines()
        changed = [line for line in after.text.splitlines() if line not in lines]
        assert len(changed) <= 2, (path, changed)


def test_an_answered_question_asks_no_more() -> None:
    reading = reading_of("whimbrel")
    asking = next(one for one, _ in every_blank("whimbrel") if one.code == "weight/weight-unknown")
    (blank, *_) = blanks_of(asking, reading.document, reading.rig.header.units)
    assert (blank.unit, blank.text, blank.label) == ("lb", "unknown", f"weight of {asking.where[6:-1]}")
    after = read_rig(written(reading.document, blank.path, "12").text)
    assert not any(one.code == asking.code and one.where == asking.where for one in study(after.rig, DAY).findings())
    assert blanks_of(asking, after.document, after.rig.header.units) == ()


def test_what_was_written_and_could_not_be_read_is_asked_for_again() -> None:
    reading = reading_of("whimbrel")
    asking = next(one for one, _ in every_blank("whimbrel") if one.code == "weight/weight-unknown")
    after = read_rig(written(reading.document, f"{asking.where}.weight", "banana").text)
    units = after.rig.header.units
    assert blanks_of(asking, after.document, units) == ()
    misread = {one.path for one in after.problems}
    assert [one.text for one in blanks_of(asking, after.document, units, "", misread)] == ["banana"]


def test_what_is_written_for_certain_is_not_asked_for_again() -> None:
    for demo in DEMOS:
        for _, blanks in every_blank(demo):
            for one in blanks:
                assert one.text in {"", "unknown"} or any(sign in one.text for sign in ("..", "+-", "about")), one


@pytest.mark.parametrize(
    ("path", "quantity"),
    [
        ("parts[bunk].weight", "mass"),
        ("parts[bunk].x", ""),
        ("trailer.axles.track", "length"),
        ("trailer.axles.gawr[0]", "mass"),
        ("tow[pickup].tongue", "mass"),
        ("tow[pickup].nose_max", "mass"),
        ("openings[door].width", "length"),
        ("walls[left].layers[liner].done", ""),
        ("trailer.tyres.pressure", "pressure"),
    ],
)
def test_a_path_is_described_by_the_field_it_leads_to(path: str, quantity: str) -> None:
    found = described(path)
    assert found is not None and found.says and found.quantity == quantity


@pytest.mark.parametrize(
    "path", ["", "parts", "parts[bunk]", "parts[bunk].nothing", "trailer", "trailer.axles", "moon.x"]
)
def test_what_is_no_single_value_is_not_described(path: str) -> None:
    assert described(path) is None


def test_where_all_is_written_and_only_in_doubt_the_widest_doubts_are_asked_for() -> None:
    asking = next(one for one, _ in every_blank("dunlin") if one.code == "towing/gross-over-plate")
    reading = reading_of("dunlin")
    units = reading.rig.header.units
    doubts = ["trailer.empty", "trailer.coupler_height", "parts[timber-bought]", "parts[water-can]"]

    def asked(document: Document, of: Finding = asking) -> list[tuple[str, str]]:
        return [(one.path, one.text) for one in blanks_of(of, document, units, "", (), doubts)]

    assert blanks_of(asking, reading.document, units) == (), "all it names is written"
    # The empty trailer was weighed: that is weighed again, and not written over.
    assert asked(reading.document) == [("parts[timber-bought].weight", "95..140")]
    guessed = read_rig(reading.document.text.replace("empty: {cg_z", "empty: {weight: 320 +-20, cg_z")).document
    assert asked(guessed)[0] == ("trailer.empty.weight", "320 +-20")
    sure = read_rig(reading.document.text.replace("95..140", "110")).document
    assert asked(sure) == []
    assert asked(reading.document, replace(asking, kind="stop")) == [], "what is sure is not asked"
