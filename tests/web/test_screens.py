"""Every screen is there for every rig, drawn the right way round, and tells only what changed."""

from __future__ import annotations

import re
from datetime import date
from functools import cache
from pathlib import Path
from typing import get_args
from xml.etree import ElementTree

import pytest

from boxwright.book.sheets import Printing, sheets_of_chapter
from boxwright.drawing import Sheet
from boxwright.finding import USES, Answer, Kind
from boxwright.web import contract, printed, terms
from boxwright.web.figures import numbers_of
from boxwright.web.forms import measures
from boxwright.web.printed import pages
from boxwright.web.screens import DRAW, EMPTY, ON_FILE, Screens, chapters
from boxwright.web.session import Session

ROOT = Path(__file__).resolve().parents[2]
DAY = date(2026, 5, 2)
RIGS = ("whimbrel", "dunlin", "gannet")
BARE = "boxwright: 1\nrig: Bare\nstages: {all: {what: everything}}\n"
TODAY = contract.Slot()
DRAWS_ITSELF = frozenset({"file", "solid"})
"""The screens the page fills by itself: the text, and the solids, which it fetches."""
SMALL = """\
boxwright: 1
rig: Small
units: {length: mm, weight: kg}
trailer:
  body: {length: 3000, width: 1800, height: 1900}
  coupler_x: -1200
  axles: {x: [1600], gawr: [1500]}
frame: {studs: {every: 400, first: 0, face: 25, depth: 38}}
stages: {all: {what: everything}}
openings:
  window-left: {wall: left, x: 900, z: 900, width: 500, height: 400}
  window-rear: {wall: rear, side: 0, z: 900, width: 500, height: 400}
parts:
  left:  {x: 1500, side: left, z: 500, size: 400 x 60 x 300, weight: 10}
  right: {x: 1500, side: right, z: 500, size: 400 x 60 x 300, weight: 10}
  front: {x: front, side: centre+200, z: 500, size: 60 x 300 x 300, weight: 10}
  rear:  {x: rear-60, side: centre+200, z: 500, size: 60 x 300 x 300, weight: 10}
loads: {empty: {cargo: none, for: [tow]}}
"""


@cache
def text_of(name: str) -> str:
    return (ROOT / "rigs" / f"{name}.yaml").read_text(encoding="utf-8")


def opened(text: str) -> tuple[Session, Screens]:
    return Session(text, DAY), Screens()


def shown(session: Session, screens: Screens, name: str) -> contract.Screen:
    found = screens.screen(session, name, TODAY)
    assert found is not None
    return found


def names_of(screens: Screens) -> list[str]:
    return [one.name for one in screens.names()]


# ---------------------------------------------------------------------- all of them


@pytest.mark.parametrize("rig", RIGS)
def test_every_screen_of_every_demo_rig_shows_something_or_says_why_not(rig: str) -> None:
    session, screens = opened(text_of(rig))
    for name in names_of(screens):
        one = shown(session, screens, name)
        assert contract.Screen.model_validate_json(one.model_dump_json()) == one
        has = one.pictures or one.tables or one.charts or one.pages or one.findings or one.empty
        assert has or name in DRAWS_ITSELF, f"{name} is blank"
        assert one.title and one.explains


def test_a_bare_file_has_the_same_screens_each_with_one_sentence_and_one_thing_to_do() -> None:
    session, screens = opened(BARE)
    for name in names_of(screens):
        one = shown(session, screens, name)
        if name in EMPTY and not (one.tables or one.pages):
            # The plan and the records ask on the spot, in a form: they lead nowhere else.
            assert one.empty == EMPTY[name][0]
            assert one.act in {"file", "plan"} or name in {"plan", "elevations", "records"}
            assert name != "plan" or [form.name for form in measures(session)] == ["measures"]


def test_each_discipline_has_its_screen_and_none_twice() -> None:
    names = names_of(Screens())
    assert len(names) == len(set(names))
    assert {one.word for one in chapters()} <= set(names)
    assert set(DRAW) | set(ON_FILE) <= set(names)
    assert {one.word for one in chapters() if not one.judges} - set(ON_FILE) <= {
        one.name for one in Screens().names() if one.explains.endswith("Not judged yet.")
    }


def test_a_chapter_that_is_not_built_says_what_is_not_judged_and_what_to_do_by_hand() -> None:
    session, screens = opened(SMALL)
    for chapter in (one for one in chapters() if not one.judges):
        one = shown(session, screens, chapter.word)
        says = one.empty if chapter.word not in ON_FILE else one.notes[-1]
        assert re.fullmatch(r"Not judged: [^.]+\. By hand: [^.]+\.", says), "one sentence for each of the two"
        assert "judge" not in one.explains, "and neither is said twice"
    assert set(terms.BY_HAND) >= {one.word for one in chapters() if not one.judges}


def test_every_screen_begins_with_a_whole_sentence() -> None:
    session, screens = opened(SMALL)
    for name in names_of(screens):
        says = shown(session, screens, name).explains
        assert says[0].isupper() and says.rstrip()[-1] in ".?", (name, says)


def test_no_screen_of_that_name() -> None:
    session, screens = opened(SMALL)
    assert screens.screen(session, "../../etc/passwd", TODAY) is None


def test_what_a_chapter_answers_comes_without_marks_of_its_page() -> None:
    session, screens = opened(SMALL)
    for one in chapters():
        says = shown(session, screens, one.word).explains
        assert says and not re.search(r"[*`#]", says)


# ---------------------------------------------------------------------- pictures


def corners(picture: contract.Picture, of: str) -> tuple[float, float]:
    """Return the middle of the first shape of a group, with up counted upwards (mm)."""
    root = ElementTree.fromstring(f"<svg>{picture.svg}</svg>")
    group = next(one for one in root if one.get("data-of") == of)
    shape = next(one for one in group if one.tag == "polygon")
    points = [tuple(float(value) for value in pair.split(",")) for pair in (shape.get("points") or "").split()]
    return sum(x for x, _ in points) / len(points), -sum(y for _, y in points) / len(points)


@pytest.mark.parametrize("screen", ["plan", "elevations"])
def test_what_is_moved_in_the_rig_moves_the_same_way_in_every_picture(screen: str) -> None:
    """``right`` and ``up`` say which way the page's hand counts: a wrong sign would move things against the hand."""
    session, screens = opened(SMALL)
    count = 0
    for picture in shown(session, screens, screen).pictures:
        for of in picture.movable:
            shift = (0.05, 0.0, 0.0) if picture.right[1] == "x" else (0.0, 0.05, 0.0)
            if of.startswith("openings[") and picture.right[1] == "y":
                continue
            before = corners(picture, of)
            up = (0.0, 0.0, 0.03) if picture.up == "+z" else (0.0, 0.03, 0.0)
            if of.startswith("openings[") and picture.up == "+y":
                up = (0.0, 0.0, 0.0)
            session.move(of, tuple(one + two for one, two in zip(shift, up, strict=True)), session.rev, 0.0)  # type: ignore[arg-type]
            drawn = next(one for one in shown(session, screens, screen).pictures if one.name == picture.name)
            now = corners(drawn, of)
            session.undo()
            sign = 1.0 if picture.right[0] == "+" else -1.0
            assert now[0] - before[0] == pytest.approx(sign * 50.0, abs=0.6), f"{of} on {picture.name}"
            assert now[1] - before[1] == pytest.approx(30.0 if any(up) else 0.0, abs=0.6), f"{of} on {picture.name}"
            count += 1
    assert count >= (5 if screen == "plan" else 4)


def test_things_catch_on_studs_faces_and_the_middle_each_by_name() -> None:
    session, screens = opened(SMALL)
    (plan,) = shown(session, screens, "plan").pictures
    labels = {(one.axis, one.label) for one in plan.snaps}
    assert {("x", "stud 3"), ("x", "front"), ("y", "left wall"), ("y", "middle")} <= labels
    studs = sorted({round(one.mm, 3) for one in plan.snaps if one.label == "stud 3"})
    assert studs == [1200 - 12.5, 1200 + 12.5], "both faces of a stud 25 mm wide"


def test_things_catch_on_their_neighbours_by_the_word_for_each_edge() -> None:
    session, screens = opened(SMALL)
    (plan,) = shown(session, screens, "plan").pictures
    edges = {one.label: one.mm for one in plan.snaps if one.of == "parts[left]"}
    assert {word: round(mm) for word, mm in edges.items()} == {
        "front of left": 1500, "rear of left": 1900, "left side of left": -900, "right side of left": -840
    }  # fmt: skip
    wall = next(one for one in shown(session, screens, "elevations").pictures if one.name == "right-inside")
    edges = {one.label: round(one.mm) for one in wall.snaps if one.of == "parts[right]"}
    assert edges == {"front of right": 1500, "rear of right": 1900, "underside of right": 500, "top of right": 800}
    middles = {one.label: round(one.mm, 1) for one in plan.snaps if one.label.startswith("middle of bay left")}
    assert middles["middle of bay left 3-4"] == 1400.0


def test_a_moved_thing_is_caught_on_where_it_stands_now() -> None:
    session, screens = opened(SMALL)
    shown(session, screens, "plan")
    session.move("parts[left]", (0.1, 0.0, 0.0), session.rev, 0.0)
    (patch,) = screens.patches(session, "plan", TODAY)
    assert {one.label: round(one.mm) for one in patch.snaps if one.of == "parts[left]" and one.axis == "x"} == {
        "front of left": 1600, "rear of left": 2000
    }  # fmt: skip


def test_words_of_the_file_stay_words_on_every_picture() -> None:
    poison = "<img src=x onerror=alert(1)>"
    session, screens = opened(SMALL.replace("  left: ", f"  '{poison}': "))
    for name in ("plan", "elevations"):
        for picture in shown(session, screens, name).pictures:
            tags = {one.tag for one in ElementTree.fromstring(f"<svg>{picture.svg}</svg>").iter()}
            assert "img" not in tags
    assert any(poison in (one.text or "") for one in ElementTree.fromstring(
        f"<svg>{shown(session, screens, 'plan').pictures[0].svg}</svg>").iter())  # fmt: skip


# ---------------------------------------------------------------------- only what changed


def test_a_moved_thing_is_told_alone() -> None:
    session, screens = opened(text_of("whimbrel"))
    before = shown(session, screens, "plan").pictures[0]
    session.move("parts[tools]", (0.1, 0.0, 0.0), session.rev, 0.0)
    (patch,) = screens.patches(session, "plan", TODAY)
    assert not patch.whole and "parts[tools]" in patch.groups and "parts[boat]" not in patch.groups
    after = before.svg
    for of, svg in patch.groups.items():
        old = re.search(rf'<g data-of="{re.escape(of)}"[^>]*>.*?</g>', after)
        assert old is not None
        after = after.replace(old[0], svg)
    assert after == shown(session, Screens(), "plan").pictures[0].svg, "patched and drawn anew are the same"


def test_a_new_thing_redraws_the_whole_and_nothing_redraws_nothing() -> None:
    session, screens = opened(SMALL)
    shown(session, screens, "plan")
    assert screens.patches(session, "plan", TODAY) == []
    session.copy("parts[left]", "", session.rev, 0.0)
    assert [one.whole for one in screens.patches(session, "plan", TODAY)] == [True]


@pytest.mark.parametrize("name", ["records", "stages", "weight", "towing", "frame"])
def test_what_is_written_in_tables_follows_the_text(name: str) -> None:
    session, screens = opened(SMALL)
    shown(session, screens, name)
    assert screens.patches(session, name, TODAY) == []
    session.set("parts[left].weight", "7", session.rev, 0.0)
    assert [one.whole for one in screens.patches(session, name, TODAY)] == [True]


# ---------------------------------------------------------------------- through the stages


def through(session: Session, screens: Screens, name: str) -> int:
    pieces = 0
    while not screens.one_piece(session, name, TODAY):
        pieces += 1
        assert pieces < 100
    return pieces + 1


def test_stages_are_worked_out_one_at_a_time_and_told_as_they_come() -> None:
    session, screens = opened(text_of("whimbrel"))
    first = shown(session, screens, "stages").tables[0]
    assert {row[-1] for row in first.rows} == {"being worked out"}
    assert through(session, screens, "stages") == len(session.reading.rig.stages_in_order) == len(first.rows)
    rows = {row[0]: row for row in shown(session, screens, "stages").tables[0].rows}
    assert not any("being worked out" in row for row in rows.values())
    assert rows["measure"][6] == "9 of 9" and rows["liners"][1] == "today" and rows["finish"][1] == "ahead"
    assert rows["measure"][7].startswith("1,960"), "the ticket of the empty trailer"
    assert screens.one_piece(session, "stages", TODAY) is False, "nothing is left to do"


def test_the_load_on_the_ball_runs_through_all_stages_with_its_doubt() -> None:
    session, screens = opened(text_of("whimbrel"))
    through(session, screens, "weight")
    tongue = next(one for one in shown(session, screens, "weight").charts if one.name == "tongue")
    assert tongue.labels == [one.name for one in session.reading.rig.stages_in_order]
    assert {one.label for one in tongue.series} == {"empty", "departure", "going-home", "boat-out"}
    for one in tongue.series:
        for best, low, high in zip(one.y, one.low, one.high, strict=True):
            assert best is not None and (low is None or low <= best) and (high is None or best <= high)
    assert {round(one.y[0] or 0.0) for one in tongue.series} == {235}, "the ticket said 235 lb"


def test_what_it_weighs_adds_up_to_all_up() -> None:
    session, screens = opened(text_of("whimbrel"))
    weights = next(one for one in shown(session, screens, "weight").charts if one.name == "weights")
    (bars,) = weights.series
    steps = [(high or 0.0) - (low or 0.0) for low, high in zip(bars.low, bars.high, strict=True)]
    assert sum(steps[:-1]) == pytest.approx(steps[-1])
    gross = next(one for one in numbers_of(session.seen(TODAY), 0, 0, False).figures if one.key == "gross")
    assert gross.text.startswith(f"{steps[-1]:,.0f}")


# ---------------------------------------------------------------------- on file


def test_records_stand_beside_the_plan() -> None:
    session, screens = opened(text_of("whimbrel"))
    tables = {one.title: one for one in shown(session, screens, "records").tables}
    taped = {row[0]: row[1:] for row in tables["Taped and weighed of the trailer"].rows}
    assert taped["studs left: stud 7"] == ["112 in", "112 3/8 in", "3/8 in, more than it may", "studs-left"]
    assert taped["studs left: stud 3"][2] == "1/8 in" and taped["studs left: stud 6"][2] == "nothing"
    assert [row[0] for row in tables["Every entry"].rows][:2] == ["ticket-empty", "studs-left"]
    built = opened(SMALL.replace("weight: 10}", "weight: 10, as_built: {x: 1512}}", 1))
    made = {one.title: one for one in shown(*built, "records").tables}["Built otherwise than planned"]
    assert made.rows == [["left", "x", "1500", "1512"]] and made.of == ["parts[left]"]


def test_the_book_lists_its_sheets_and_lays_out_only_what_is_opened() -> None:
    session, screens = opened(text_of("dunlin"))
    listed = shown(session, screens, "book").pages
    assert {"plan", "walk-round", "weights", "order"} <= {one.name for one in listed}
    assert all(not one.svg and one.title for one in listed)
    asked = screens.asked(session, "plan", TODAY)
    found = pages(asked.seen, "plan", asked.planned)
    assert found and all(one.svg.startswith("<svg") for one in found)
    assert pages(asked.seen, "no such sheet", asked.planned) == []


# ---------------------------------------------------------------------- words


def test_every_term_on_the_page_has_its_line() -> None:
    assert set(terms.KINDS) == set(get_args(Kind)) and set(terms.ANSWERS) == set(get_args(Answer))
    assert set(terms.USES) == set(USES)
    session, _ = opened(text_of("whimbrel"))
    numbers = numbers_of(session.seen(TODAY), 0, 0, False)
    assert all(one.explains for one in (*numbers.answers, *(numbers.findings or ())))
    figures = numbers.figures
    assert len(figures) >= 6 and all(one.explains and one.label for one in figures)
    said = [*terms.FIGURES.values(), *terms.ANSWERS.values(), *terms.SLOT.values()]
    said += [one for pair in (*terms.KINDS.values(), *terms.USES.values()) for one in pair[1:]]
    assert all(one.endswith((".", "?")) and len(one) < 160 and "\n" not in one for one in said)


def test_the_sheets_of_a_screen_are_made_once_and_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[str] = []
    original = sheets_of_chapter

    def counted(chapter: str, printing: Printing) -> tuple[Sheet, ...]:
        made.append(chapter)
        return original(chapter, printing)

    monkeypatch.setattr(printed, "sheets_of_chapter", counted)
    session, screens = opened(text_of("dunlin"))
    slot = contract.Slot(stage="inside")
    first = screens.screen(session, "layout", slot)
    assert made == ["layout"]
    assert screens.screen(session, "layout", slot) == first and made == ["layout"]
    session.set("parts[lathe].weight", "81", session.rev, 0.0)
    screens.screen(session, "layout", slot)
    assert made == ["layout", "layout"]


def test_what_nothing_is_known_of_is_said_in_words_and_never_as_nothing() -> None:
    session, screens = opened(BARE.replace("{all: {what: everything}}", "{shell: {}, bed: {}}"))
    figures = {one.key: one for one in numbers_of(session.seen(TODAY), 0, 0, False).figures}
    assert (figures["gross"].text, figures["gross"].unit, figures["gross"].band) == ("not known yet", "", "")
    assert not any(re.match(r"[-−]?0\b", one.text) for one in figures.values())
    through(session, screens, "stages")
    assert {row[7] for row in shown(session, screens, "stages").tables[0].rows} == {"not known yet"}


def test_a_table_on_a_screen_begins_with_what_it_is() -> None:
    for rig in RIGS:
        session, screens = opened(text_of(rig))
        for name in names_of(screens):
            for table in shown(session, screens, name).tables:
                heads = [table.title, *(one for one in table.columns if one)]
                assert [one for one in heads if not (one[0].isupper() or one[0].isdigit())] == [], (name, table.title)
                cells = " ".join(cell for row in table.rows for cell in row)
                assert not re.search(r"\b(?:trailer|tow)\.[a-z_]+", cells), (name, table.title)


def test_a_chapter_of_a_box_that_is_not_known_says_what_to_do_first() -> None:
    session, screens = opened(BARE)
    one = shown(session, screens, "layout")
    assert one.act == "plan" and "length, width and height" in one.empty
