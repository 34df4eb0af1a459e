"""The section of a wall with its lines of temperature: what is on it, by its name, and only by its name."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

pytest.importorskip("skfem", reason="scikit-fem is not installed: no field of a section can be worked out")

from boxwright.book import wall_sections
from boxwright.book.sheets import ONLY_BY_NAME, SLOW
from boxwright.disciplines.heat import method
from boxwright.disciplines.heat.across_field import solved
from boxwright.disciplines.heat.section_sheet import section_sheet, section_shown, taken
from boxwright.drawing import Leader, Line, Shape, Sheet, Text
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Slot, study
from boxwright.units import Band, HeaderUnits, exactly
from tests.disciplines.heat.walls import FOAM, INCH, LINER, wall

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


def test_a_wall_that_is_not_there_and_a_missing_library_say_so(monkeypatch: pytest.MonkeyPatch) -> None:
    assert wall_sections.wall_section("section-nose-left", RIG, slot_at(10), RIG.header.units) == ()

    def missing(*_: object, **__: object) -> None:
        raise ImportError(name="skfem")

    monkeypatch.setattr(method, "section_field", missing)
    assert drawn("section-left", 10).notes == (wall_sections.NO_FIELD,)


def test_a_bare_wall_is_drawn_with_what_it_lets_through() -> None:
    """By hand: films of 0.13 and 0.04 m2K/W and nothing else let 5.88 W/m2K through, 1.04 Btu; inside it is 23.5 % of
    the way from 32 F to 68 F, 40.5 F.
    """
    sheet = drawn("section-left", 1)
    (view,) = sheet.views
    about = {mark.words for mark in view.marks if isinstance(mark, Leader)}
    assert about == {"skin aluminium 0.040", "stud steel"}
    rows = {row[0]: row for row in sheet.grids[0].rows}
    assert rows["between the members"][1:] == ("1.04 Btu/h ft2 F", "1.0")
    assert rows["with the members"][1:] == ("1.04 to 1.24 Btu/h ft2 F", "0.8 to 1.0")  # the worse end first
    assert rows["coldest inside"][1] == "40 F"
    assert "Nothing here keeps heat" in sheet.notes[0]
    floor = drawn("section-floor", 1)
    assert "No member bridges" in floor.notes[0] and "cross-member" not in floor.title
    assert {row[0]: row[2] for row in floor.grids[1].rows}["skin"] == "3/4 in"


def test_thicknesses_in_millimetres_have_their_own_figures() -> None:
    """A quarter of an inch is 6.35 mm and an inch and a half 38.1 mm, exactly: neither is told as 6 or 38."""
    layup = wall_sections.plane_named("left", RIG, slot_at(10))
    assert layup is not None
    shown = {row[0]: row[2] for row in taken(layup, HeaderUnits(length="mm")).rows}
    assert (shown["liner"], shown["foam"]) == ("6.35 mm", "38.1 mm")


def test_no_line_stands_beside_a_section_without_words() -> None:
    """What stands right of the wall is a tick to each temperature that is written there."""
    (view,) = drawn("section-left", 10).views
    edge = max(x for mark in view.marks if isinstance(mark, Shape) for x, _ in mark.points)
    beside = [mark for mark in view.marks if isinstance(mark, Line) and max(mark.start[0], mark.end[0]) > edge + 1e-6]
    written = [mark.at[1] for mark in view.marks if isinstance(mark, Text) and mark.words.endswith(" F")]
    assert sorted(mark.start[1] for mark in beside) == pytest.approx(sorted(written))
    assert all(mark.start[1] == mark.end[1] for mark in beside)


def test_sections_are_slow_and_drawn_only_by_name() -> None:
    assert set(wall_sections.NAMES) <= ONLY_BY_NAME <= set(SLOW)


def section_every(apart: Band | None) -> tuple[Sheet, float]:
    """Return the section of the wall of the sheet on heat with its studs so far apart, and what it lets through."""
    layup = replace(wall(FOAM, LINER), spacing=apart)
    across = section_shown(layup)
    assert across is not None
    found = solved(across)
    return section_sheet(layup, found, HeaderUnits(length="in")), found.field.transmittance


@pytest.mark.parametrize(
    ("inches", "expected", "within"), [(24.0, 0.956, 0.01), (8.0, 1.573, 0.01), (4.0, 2.499, 0.04)]
)
def test_studs_close_to_each_other_let_more_through_each_of_them(inches: float, expected: float, within: float) -> None:
    """The sheet on heat: 1.1099 W/m2K every 16 in (wall.S16). In the middle of a bay it is 0.647 by hand.

    (0.04 + 0.0381 / 0.0288 + 0.00635 / 0.12 + 0.13 = 1.546 m2K/W.) So a stud adds 0.463 every 16 in, and as many times
    that as stand closer, but that fins of the skin that nearly touch lose a little less: 4 in apart, 3 %.
    """
    sheet, through = section_every(exactly(inches * INCH))
    assert through == pytest.approx(expected, rel=within) and through <= expected * 1.005
    assert sheet.notes[0] == f"Studs every {inches:.0f} in."
    ends = [point[0] for mark in sheet.views[0].marks if isinstance(mark, Shape) for point in mark.points]
    assert (max(ends), min(ends)) == pytest.approx((min(0.085, inches * INCH / 2.0), -min(0.085, inches * INCH / 2.0)))
    warm = [mark for mark in sheet.views[0].marks if isinstance(mark, Text) and mark.words.endswith(" F")]
    assert len(warm) > 3 and all(mark.at[0] > max(ends) for mark in warm)


def test_how_far_apart_they_were_taken_is_told_where_it_was_not_as_written() -> None:
    touching, _ = section_every(exactly(1.5 * INCH))
    says = "Studs every 1.5 in leave no bay to cut through: the section is of some every 2 in."
    assert touching.notes[0] == says
    for unsaid in (None, exactly(0.0)):
        assert section_every(unsaid)[0].notes[0] == "Studs every 16 in, as nobody wrote how far apart they stand."
