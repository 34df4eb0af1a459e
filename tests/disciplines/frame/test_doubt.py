"""A spacing, a first or a place that is written with doubt is never judged by its best value alone."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.finding import Finding
from boxwright.units import HeaderUnits
from tests.disciplines.frame.small import framed, rig_text, window

INCHES = HeaderUnits(length="in", weight="lb")
INCH = 0.0254
CLEAR = "window: {wall: left, x: 49, width: 14, z: 30, height: 20, cut: no}"
CUTS = "window: {wall: left, x: 58, width: 14, z: 30, height: 20, cut: no}"
SHELF = "shelf: {x: 20, wall: left, z: 40, size: 40 x 8 x 1, weight: 9, screws: {size: 1/4 in, into: studs, at: AT}}"


def said(text: str, code: str = "frame/opening-cuts-member") -> list[Finding]:
    return [one for one in findings(framed(text), INCHES) if one.code == code]


def with_studs(row: str, opening: str = CLEAR, part: str = "") -> str:
    text = rig_text((opening,), (part,) if part else ())
    return text.replace("every: 16, first: 0}\n  bows", f"{row}}}\n  bows")


def test_a_firm_row_leaves_one_window_whole_and_cuts_the_other() -> None:
    assert said(with_studs("every: 16, first: 0")) == []
    assert [one.kind for one in said(with_studs("every: 16, first: 0", CUTS))] == ["fix"]


@pytest.mark.parametrize("row", ["every: about 16, first: 0", "every: 15..17, first: 0", "every: 16, first: 0 +-1"])
def test_a_row_in_doubt_asks_instead_of_passing_the_window(row: str) -> None:
    assert [one.kind for one in said(with_studs(row))] == ["unknown"]


def test_a_row_in_doubt_breaks_by_its_best_value_and_offers_no_place_that_doubt_reaches() -> None:
    (found,) = said(with_studs("every: about 16, first: 0", CUTS))
    assert found.kind == "fix" and "taped" in found.says and found.act.startswith("Tape")


def test_a_row_that_nobody_says_the_beginning_of_has_no_best_value() -> None:
    assert [one.kind for one in said(with_studs("every: 16, first: unknown", CUTS))] == ["unknown"]


def test_the_doubt_of_a_spacing_grows_from_stud_to_stud_and_ends_at_half_a_bay() -> None:
    def widths(row: str) -> list[float]:
        studs = [one for one in framed(with_studs(row)).members if one.kind == "stud" and one.wall == "left"]
        return [one.at.high - one.at.best for one in studs]

    found = widths("every: 15.5..16.5, first: 0")
    assert found[1] - found[0] == pytest.approx(0.5 * INCH)
    assert found[-1] - found[0] == pytest.approx(0.5 * INCH * (len(found) - 1))
    assert max(widths("every: 8..24, first: 0")) - found[0] == pytest.approx(8.0 * INCH)


def test_an_unknown_spacing_of_one_wall_is_not_taken_from_the_row() -> None:
    text = with_studs("every: 16, first: 0, left: {every: unknown}")
    result = framed(text)
    assert not [one for one in result.members if one.wall == "left" and one.kind == "stud"]
    assert [one for one in result.members if one.wall == "right" and one.kind == "stud"]
    assert [one.kind for one in said(text, "frame/members-unknown")] == ["unknown"]


def test_a_window_whose_place_is_a_span_is_judged_at_both_its_ends() -> None:
    doubtful = CLEAR.replace("x: 49", "x: 48..50")
    assert window(framed(rig_text((doubtful,)))).doubt == pytest.approx(1.0 * INCH)
    assert [one.kind for one in said(rig_text((doubtful,)))] == ["unknown"]
    assert [one.kind for one in said(rig_text((CUTS.replace("x: 58", "x: 57..59"),)))] == ["fix"]


def test_where_only_doubt_leaves_no_place_nobody_is_sent_to_the_builder() -> None:
    wide = "window: {wall: left, x: 56, width: 14.9, z: 30, height: 20, cut: no}"
    hole = window(framed(rig_text((wide,))))
    assert (hole.lower_place, hole.higher_place, hole.needs_frame) == (None, None, False)
    assert window(framed(rig_text((wide.replace("14.9", "15.1"),)))).needs_frame


def test_a_hole_through_a_main_rail_is_said_and_moved_across() -> None:
    floor = "  floor: {cross_members: 16, rails: 40}\n  skin"
    hole = "drain: {wall: floor, x: 37, width: 4, side: centre-20, across: 4, cut: no}"
    (found,) = said(rig_text((hole,)).replace("  skin", floor))
    assert found.kind == "fix" and "main rail" in found.says and "across" in found.act
    assert said(rig_text((hole.replace("centre-20", "centre"),)).replace("  skin", floor)) == []


@pytest.mark.parametrize(
    ("row", "at", "kind"),
    [
        ("every: 16, first: 0", "[32, 48]", "unknown"),  # 1/8 in of room, and ordered to 1/4 in
        ("every: 15..17, first: 0", "[32, 48]", "unknown"),
        ("every: 16, first: 0", "[40]", "fix"),
        ("every: 16, first: unknown", "[44]", "unknown"),
    ],
)
def test_a_screw_that_may_or_may_not_miss_is_asked_about(row: str, at: str, kind: str) -> None:
    text = with_studs(row, part=SHELF.replace("AT", at))
    assert [one.kind for one in said(text, "frame/fastener-misses")] == [kind]


TWICE = ("old: {date: 2026-01-01, what: tape, studs: left, values: {3: 44}}",)
AGAIN = (*TWICE, "new: {date: 2026-02-01, what: tape, studs: left, values: {3: 48}}")
BORNE_OUT = (*AGAIN, "third: {date: 2026-03-01, what: tape, studs: left, values: {3: 48}}")


def test_a_stud_that_two_tapes_put_in_two_places_covers_both_and_nothing_is_cut_for_certain() -> None:
    text = rig_text((CUTS.replace("x: 58", "x: 46"),), (), AGAIN)
    stud = next(one for one in framed(text).members if one.name == "L3")
    assert stud.is_contested and not stud.is_held
    assert stud.at.low < 44.0 * INCH and stud.at.high > 48.0 * INCH
    assert [one.kind for one in said(text)] == ["unknown"]
    (tape,) = said(text, "frame/tape-disagrees")
    assert tape.kind == "fix"


def test_a_third_reading_that_bears_one_out_settles_it() -> None:
    text = rig_text((CUTS.replace("x: 58", "x: 46"),), (), BORNE_OUT)
    assert [one.kind for one in said(text)] == ["fix"]
    assert said(text, "frame/tape-disagrees") == []


def test_no_slide_and_no_clear_place_goes_by_a_contested_stud() -> None:
    part = SHELF.replace("AT", "[40]").replace("x: 20", "x: 36")
    found = framed(rig_text((), (part,), AGAIN)).fastenings[0]
    assert all(abs(40.0 * INCH + slid.by - 48.0 * INCH) > 0.5 * INCH for slid in found.slides)
    assert found.moved == (found.points[0].at,) or abs(found.moved[0] - 48.0 * INCH) > 0.5 * INCH
    settled = framed(rig_text((), (part,), BORNE_OUT)).fastenings[0]
    assert any(abs(40.0 * INCH + slid.by - 48.0 * INCH) < 0.5 * INCH for slid in settled.slides)


def test_a_floor_that_nobody_taped_is_told_as_a_wall_is() -> None:
    floor = "  floor: {cross_members: 16}\n  skin"
    hole = "drain: {wall: floor, x: 37, width: 4, side: centre, across: 4, cut: no}"
    (found,) = said(rig_text((hole,)).replace("  skin", floor), "frame/members-unknown")
    assert found.kind == "advice" and "of the floor stand as ordered, not as taped" in found.says
