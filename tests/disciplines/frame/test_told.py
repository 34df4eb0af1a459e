"""What is told shows why it is told: two lengths that decide never look alike, and nothing is told twice."""

from __future__ import annotations

import pytest

from boxwright.disciplines.frame.findings import findings
from boxwright.disciplines.frame.telling import apart, length
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.units import HeaderUnits, show
from tests.disciplines.frame.small import framed, rig_text

INCHES, METRIC = HeaderUnits(length="in", weight="lb"), HeaderUnits(length="mm", weight="kg")
INCH = 0.0254
WINDOW = "window: {wall: left, x: 49, width: 14, z: 30, height: 20, cut: no}"


def said(text: str, code: str) -> list[Finding]:
    return [one for one in findings(framed(text), INCHES) if one.code == code]


@pytest.mark.parametrize("other", [2.0, 2.02, 2.03, 2.004, 2.0001, 2.5])
def test_two_lengths_that_differ_are_shown_apart(other: float) -> None:
    for units in (INCHES, METRIC):
        one, two = apart(2.0 * INCH, other * INCH, units)
        assert (one == two) is (other == 2.0)


def test_a_length_below_a_cut_is_not_shown_as_nothing() -> None:
    assert length(0.02 * INCH, INCHES) == "0.02 in" and length(0.0, INCHES) == "0 in"


def test_equal_gaps_are_shown_alike_whatever_the_last_digit_of_a_float() -> None:
    assert show(0.0875 - 1e-12, "m", METRIC, cuts=True) == show(0.0875 + 1e-12, "m", METRIC, cuts=True)


def test_a_clamping_range_that_ends_a_hair_short_is_seen_to() -> None:
    """The wall is 0.040 + 1.5 in thick, and the range ends at 1.536: both would be 1 9/16."""
    unit = ", unit: {weight: 9, clamps: {lowest: 1, highest: 1.536}}}"
    (found,) = said(rig_text((WINDOW.replace("}", unit),)), "frame/unit-depth")
    assert "1.536 in" in found.says and "1.540 in" in found.says


def test_a_clamping_range_the_wrong_way_round_is_a_problem_and_fits_no_wall() -> None:
    text = rig_text((WINDOW.replace("}", ", unit: {weight: 9, clamps: {lowest: 2, highest: 1}}}"),))
    assert ["clamps" in one.says for one in read_rig(text).problems] == [True]
    assert [one.kind for one in said(text, "frame/unit-depth")] == ["fix"]


def test_a_unit_that_reaches_through_the_wall_is_told_with_what_stands_out() -> None:
    (found,) = said(rig_text((WINDOW.replace("}", ", unit: {weight: 9, depth: 3}}"),)), "frame/unit-depth")
    assert found.kind == "advice" and "it stands 1 7/16 in into the room" in found.says
    assert said(rig_text((WINDOW.replace("}", ", unit: {weight: 9, depth: 1}}"),)), "frame/unit-depth") == []


def test_two_openings_in_one_place_are_told_once_at_the_one_that_can_be_moved() -> None:
    cut = "door: {wall: left, x: 52, width: 9, z: 30, height: 20, cut: yes}"
    (found,) = said(rig_text((cut, WINDOW)), "frame/opening-overlaps")
    assert found.where == "openings[window]"


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("a: {date: 2026-01-01, what: tape, opening: windw, values: {front: 49}}", "did you mean window?"),
        ("a: {date: 2026-01-01, what: tape, opening: window, values: {frnt: 49}}", '"frnt" is no edge'),
        ("a: {date: 2026-01-01, what: tape, bows: rof, values: {1: 16}}", "write it as bows: roof"),
    ],
)
def test_a_tape_of_nothing_is_a_problem_with_its_line(line: str, says: str) -> None:
    found = read_rig(rig_text((WINDOW,), (), (line,))).problems
    assert [says in one.says for one in found] == [True] and found[0].line > 1


def test_a_size_below_nothing_is_a_problem_with_its_line_and_not_called_unwritten() -> None:
    text = rig_text((WINDOW.replace("width: 14", "width: -14"),))
    (problem,) = read_rig(text).problems
    assert "nothing or less" in problem.says and problem.line == text[: text.index("window:")].count("\n") + 1
    (found,) = said(text, "frame/opening-outside-wall")
    assert "none that can be" in found.says
