"""The pages of check and weight, laid out from records made by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.book.numbers import METRIC
from boxwright.cli import check, start, weight
from boxwright.cli.asked import of_chapter
from boxwright.cli.screen import Line, columns_of, text_of
from boxwright.finding import Problem
from tests.cli.by_hand import CHECKED, STATE, STOP, UNKNOWN, WEIGHED


def texts(lines: list[Line]) -> list[str]:
    return [text_of(line) for line in lines]


@pytest.mark.parametrize("columns", [60, 80, 100, 120])
def test_no_page_is_wider_than_the_screen(columns: int) -> None:
    pages = [check.page(CHECKED, columns), start.page(columns)]
    pages += [weight.page(WEIGHED, columns)] if columns >= 80 else []
    for page in pages:
        assert [text for text in texts(page) if columns_of(text) > columns] == []


def test_80_columns_say_no_less_than_120() -> None:
    for page in (check.page, weight.page):
        given = CHECKED if page is check.page else WEIGHED
        narrow, wide = (sorted(" ".join(texts(page(given, columns))).split()) for columns in (80, 120))  # type: ignore[operator]
        assert narrow == wide


def test_120_columns_use_the_room() -> None:
    assert len(weight.page(WEIGHED, 120)) < len(weight.page(WEIGHED, 80))
    assert len(check.page(CHECKED, 120)) < len(check.page(CHECKED, 80))


def test_the_answers_come_first_each_with_its_why_and_what_to_do() -> None:
    page = texts(check.page(CHECKED, 80))
    assert page[2].startswith("TOW    ASK     nothing known is wrong")
    assert [text.split()[:2] for text in page if text[:5].strip() in ("SLEEP", "LEAVE", "WORK")] == [
        ["SLEEP", "NO"],
        ["LEAVE", "NO"],
        ["WORK", "NO"],
    ]
    assert "               first: lower the rear legs (3 min)" in page


def test_the_plan_stands_beside_the_ticks_only_where_they_differ() -> None:
    assert any("as ticked       as planned" in text for text in texts(check.page(CHECKED, 80)))
    alike = replace(CHECKED, planned=(), difference=(), state_planned=None)
    page = " ".join(texts(check.page(alike, 80)))
    assert "as planned" not in page and "difference" not in page


def test_at_most_seven_findings_at_first_and_all_on_asking() -> None:
    findings = tuple(replace(UNKNOWN, where=f"parts[box-{index}]", says=f"box-{index} weighs?") for index in range(9))
    checked = replace(CHECKED, findings=(*findings, STOP))
    first = texts(check.page(checked, 80))
    assert sum("weighs?" in text for text in first) == 7
    assert "  and 3 more: boxwright check rigs/whimbrel.yaml --all" in first
    everything = texts(check.page(checked, 80, is_all=True))
    assert sum("weighs?" in text for text in everything) == 9
    assert not any("more: boxwright" in text for text in everything)


def test_findings_are_grouped_by_use_and_the_asked_use_is_first() -> None:
    groups = check.grouped((UNKNOWN, STOP, replace(STOP, kind="fix", uses=(), use="", says="rust")), "sleep")
    assert [(use, len(group)) for use, group in groups] == [("sleep", 1), ("tow", 1), ("", 1)]


def test_what_is_said_alike_for_two_uses_stands_once() -> None:
    ((use, group),) = check.grouped((replace(UNKNOWN, use="sleep"), UNKNOWN), "tow")
    assert use == "tow" and len(group) == 1


def test_the_gravest_kind_is_first_in_a_group() -> None:
    kinds = ("advice", "fix", "limit", "unknown", "stop")
    ((_, group),) = check.grouped((replace(UNKNOWN, kind=kind, says=kind) for kind in kinds), "tow")
    assert [finding.kind for finding in group] == ["stop", "unknown", "limit", "fix", "advice"]


def test_a_chapter_shows_its_own_findings_and_no_others() -> None:
    towing = replace(STOP, code="towing/too-heavy", says="too heavy", use="tow", uses=("tow",))
    page = texts(check.chapter_page(of_chapter(replace(CHECKED, findings=(UNKNOWN, towing)), "towing"), "towing", 80))
    assert sum("explain" in text for text in page) == 1 and any("too heavy" in text for text in page)
    nothing = texts(check.chapter_page(of_chapter(CHECKED, "towing"), "towing", 80))
    assert "Every rule of this chapter that was judged holds." in nothing
    no_load = replace(CHECKED.verdicts[0], use="sleep", because=("rig/no-load-state",))
    beside = texts(check.chapter_page(of_chapter(replace(CHECKED, verdicts=(no_load,)), "towing"), "towing", 80))
    assert "No load state is judged for sleep: there nothing was." in " ".join(beside)
    unjudged = texts(check.chapter_page(of_chapter(replace(CHECKED, load=""), "towing"), "towing", 80))
    assert not any("holds" in text for text in unjudged)
    assert any("no load state of the file is judged for" in text for text in unjudged)


def test_at_most_twelve_problems_at_first() -> None:
    problems = tuple(Problem(line, 3, "", f"line {line} is odd") for line in range(1, 15))
    page = texts(check.problem_lines(problems, 80, "rig.yaml"))
    assert page[1] == "IN THE TEXT  14 problems"
    assert page[2] == "  1:3      line 1 is odd"
    assert page[-1] == "  and 2 more: boxwright check rig.yaml --all"
    assert len(texts(check.problem_lines(problems, 80, "rig.yaml", is_all=True))) == 16


def test_notes_wait_until_they_are_asked_for() -> None:
    notes = (Problem(4, 1, "", "read as 12 mm", kind="note"),)
    assert texts(check.problem_lines(notes, 80, "r"))[1] == "1 note on how a text was read: boxwright check r --all"
    assert "  4:1      read as 12 mm" in texts(check.problem_lines(notes, 80, "r", is_all=True))


def test_every_page_of_numbers_ends_with_who_comes_first() -> None:
    for page in (check.page(CHECKED, 120), weight.page(WEIGHED, 120)):
        assert "Local law" in " ".join(texts(page)[-2:]) and texts(page)[-1].endswith("trailer.")


def test_a_hostile_name_reaches_no_page() -> None:
    name = "boat\x1b]0;owned\x07\x1b[2J"
    hostile = replace(
        CHECKED,
        rig=name,
        stage=name,
        findings=(replace(UNKNOWN, says=name, where=name, act=name),),
        difference=(name,),
        problems=(Problem(1, 1, name, name),),
        state=replace(STATE, unlisted=(name,), load=name),
        path=name,
    )
    table = replace(
        WEIGHED, rig=name, ticked=(replace(STATE, load=name, stage=name, unlisted=(name,)),), parked=(name,)
    )
    for page in (check.page(hostile, 80, True), check.page(hostile, 80), weight.page(table, 80)):
        assert not [text for text in texts(page) if any(ord(character) < 32 for character in text)]


def test_metric_units_are_shown_when_asked_for() -> None:
    page = " ".join(texts(weight.page(replace(WEIGHED, units=METRIC), 120)))
    assert "weights in kg" in page and "1,548+-27" in page  # 3,412 lb, 60 lb: times 0.45359237, exact by definition


def test_an_open_end_is_told() -> None:
    gross = replace(STATE.gross, high=float("inf"), known=False)
    page = texts(weight.page(replace(WEIGHED, ticked=(replace(STATE, gross=gross),)), 120))
    assert any("3,412+?" in text for text in page)
    shown = texts(check.page(replace(CHECKED, state=replace(STATE, gross=gross)), 80))
    assert any("3,412 lb + ? (at least 3,352)" in text for text in shown)
