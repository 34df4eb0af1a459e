"""The section of a wall with its lines of temperature: what is on it, by its name, and only by its name."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

pytest.importorskip("skfem", reason="scikit-fem is not installed: no field of a section can be worked out")

from boxwright.book import wall_sections
from boxwright.book.sheets import ONLY_BY_NAME, SLOW
from boxwright.disciplines.heat import method
from boxwright.drawing import Leader, Sheet, Text
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot, study

RIG = read_rig((Path(__file__).parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")).rig


def slot_at(stage: int) -> Slot:
    return next(one for one in study(RIG, date(2026, 5, 2), stage=stage, use="tow").slots if not one.is_for_ticket)


def drawn(name: str, stage: int) -> Sheet:
    """Return one section of the demo rig at a stage."""
    (found,) = wall_sections.wall_section(name, RIG, slot_at(stage), RIG.header.units)
    return found


def test_the_finished_wall_names_what_lies_in_it_and_how_far_each_rule_of_the_hand_is_off() -> None:
    sheet = drawn("section-left", 10)
    (view,) = sheet.views
    noted = [mark.words for mark in view.marks if isinstance(mark, Leader)]
    assert {"foam XPS", "strip foam tape", "liner ply", "stud steel", "skin aluminium 0.040"} <= set(noted)
    assert any(words.startswith("coldest ") for words in noted)
    warm = [mark.words for mark in view.marks if isinstance(mark, Text) and mark.words.endswith(" F")]
    assert warm == ["36 F", "40 F", "44 F", "48 F", "52 F", "56 F", "60 F", "64 F"]
    rows = {row[0]: row for row in sheet.grids[0].rows}
    assert rows["field of temperature"][1] == "0.15 Btu/h ft2 F"  # the sheet on heat: 0.854 W/m2K, over 5.678263
    assert rows["straight through"][3] == "-25 %" and rows["planes of one temperature"][3].startswith("+1")


def test_what_each_layer_was_taken_to_be_stands_beside_it() -> None:
    rows = {row[0]: row for row in drawn("section-left", 10).grids[1].rows}
    assert rows["foam"][1:4] == ("xps", "1 1/2 in", "0.2 (0.18 to 0.25) Btu in/h ft2 F")
    assert rows["member"][1] == "steel" and rows["skin"][1] == "aluminium"
    assert all(row[4] for row in rows.values())


def test_a_wall_with_nothing_in_it_and_a_missing_library_say_so(monkeypatch: pytest.MonkeyPatch) -> None:
    assert drawn("section-left", 2).notes == (wall_sections.NO_MEMBER,)
    assert wall_sections.wall_section("section-nose-left", RIG, slot_at(10), RIG.header.units) == ()

    def missing(*_: object, **__: object) -> None:
        raise ImportError(name="skfem")

    monkeypatch.setattr(method, "section_field", missing)
    assert drawn("section-left", 10).notes == (wall_sections.NO_FIELD,)


def test_sections_are_slow_and_drawn_only_by_name() -> None:
    assert set(wall_sections.NAMES) <= ONLY_BY_NAME <= set(SLOW)
