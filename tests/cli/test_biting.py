"""What the pages of changes and of next steps must get right: each case here once stood unguarded."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from boxwright.cli.asked import Question, answered, slot_of
from boxwright.cli.fixes import does, fix_lines, typed
from boxwright.cli.next_steps import next_page, steps
from boxwright.cli.screen import Line
from boxwright.finding import USES, Finding, Use
from boxwright.study.lever import break_even, lever_of
from boxwright.study.moves import Edit
from boxwright.study.slots import Slot
from tests.study.demo import CLEAN, POUND, RIGS, TODAY
from tests.study.test_remedy import CHEST, REAR_HEAVY, sought

UNWEIGHED = CLEAN.replace(CHEST, CHEST.replace("weight: 50", "weight: unknown"))


@pytest.fixture
def path(tmp_path: Path) -> str:
    """Return the path of the small rig with a chest nobody has weighed."""
    assert "unknown" in UNWEIGHED
    file = tmp_path / "rig.yaml"
    file.write_text(UNWEIGHED, encoding="utf-8")
    return str(file)


def text_of(lines: list[Line]) -> str:
    return " ".join("".join(piece.text for piece in line) for line in lines)


def test_a_change_is_typed_by_the_parts_name_and_says_what_it_clears() -> None:
    _, found = sought(REAR_HEAVY, "weight/tongue-lifts")
    (fix,) = found.fixes
    assert typed(fix) == '"chest.x=129 1/2"'
    assert typed(replace(fix, edits=(Edit("loads[road].out", "chest"),))) == '"add chest to loads[road].out"'
    assert does(fix).startswith("clears weight/tongue-lifts (load road")
    open_end = replace(fix, then="weigh it", clears=())
    assert does(open_end) == "no cure yet of weight/tongue-lifts (load road)"
    assert "; weigh it" in text_of(fix_lines(replace(found, fixes=(open_end,)), Question("r.yaml"), 200))
    assert "no cure yet" not in text_of(fix_lines(found, Question("r.yaml"), 200))


def test_of_load_states_with_equal_answers_the_heaviest_speaks(path: str) -> None:
    answer = answered(Question(path), TODAY)
    slot = slot_of(answer, "tow")
    assert slot is not None and slot.weight is not None
    gross = slot.weight.gross
    band = replace(gross.band, best=gross.band.best + 100.0)
    heavy = replace(slot, load="heavier", weight=replace(slot.weight, gross=replace(gross, band=band)))
    for slots in ((slot, heavy), (heavy, slot)):
        assert slot_of(replace(answer, study=replace(answer.study, slots=slots)), "tow") == heavy


def test_what_nobody_has_weighed_is_told_by_the_nearest_limit_it_crosses(path: str) -> None:
    page, answer = next_page(Question(path), TODAY, 200)
    crossings = [
        one.kg / POUND
        for slot in answer.study.asked_slots("tow")
        for finding in slot.findings
        if finding.kind == "unknown" and (lever := lever_of(finding, slot)) is not None
        for one in break_even(finding, lever, slot)
    ]
    assert len(set(crossings)) > 1
    (told,) = re.findall(r"by itself it crosses the limit from ([\d,]+) lb on", text_of(page))
    assert float(told.replace(",", "")) == pytest.approx(min(crossings), abs=0.5)


def unknown(act: str, protects: bool = False) -> Finding:
    return Finding("weight/x", "parts[x]", "unknown", "nobody knows", act=act, minutes=5, protects=protects, uses=USES)


def test_what_betters_most_answers_comes_first_then_what_holds_most_back(path: str) -> None:
    """The last slot waits for the bolt alone; the others wait for two things each, so neither betters anything."""
    answer = answered(Question(path), TODAY)
    tow = slot_of(answer, "tow")
    assert tow is not None

    def waiting(use: Use, *acts: str) -> Slot:
        found = tuple(unknown(act) for act in acts)
        return replace(tow, use=use, findings=found, accepted=())

    slots = (waiting("tow", "tape", "scale"), waiting("sleep", "scale", "tape 2"), waiting("leave", "bolt"))
    assert [(one.act, one.betters, len(one.holds_back)) for one in steps(slots)] == [
        ("bolt", 1, 1), ("scale", 0, 2), ("tape", 0, 1), ("tape 2", 0, 1),
    ]  # fmt: skip
    alarmed = replace(slots[0], findings=(*slots[0].findings, unknown("alarm", protects=True)))
    assert [one.act for one in steps((*slots[1:], alarmed))][:2] == ["alarm", "bolt"]


def test_what_nobody_has_ticked_is_one_walk_and_each_thing_is_named_once(path: str) -> None:
    text = UNWEIGHED.replace("stage: shell, done: yes, alarm: CO", "stage: shell, alarm: CO")
    Path(path).write_text(text.replace("weight: 100, stage: shell, done: yes", "weight: 100, stage: shell"))
    answer = answered(Question(path), TODAY)
    found = steps(answer.study.asked_slots())
    (walk,) = [one for one in found if one.act.endswith("done: yes or no")]
    assert walk.act == "Look whether bed and alarm are in, and tick each: done: yes or no"
    assert walk.minutes == 2 and walk.protects
    # The weighing that alone decides comes next to what protects, before all that only holds answers back.
    (chest,) = [one for one in found if one.crossing is not None]
    assert chest.where == "parts[chest]"
    behind = found[found.index(chest) + 1 :]
    assert all(one.betters <= chest.betters for one in behind)
    page = text_of(next_page(Question(path), TODAY, 200)[0])
    assert "openings[" not in page.partition("NOT TICKED")[0].replace("line", "")


@pytest.mark.parametrize("name", ["whimbrel", "dunlin", "gannet"])
def test_an_act_and_a_sentence_of_the_file_name_things_as_a_person_does(name: str) -> None:
    rig = RIGS / f"{name}.yaml"
    for slot in answered(Question(str(rig)), TODAY).study.slots:
        for one in slot.findings:
            if one.code.endswith(("stands-perhaps", "tick-is-ahead", "tank-not-named")):
                assert not re.search(r"\w+\[", f"{one.says} {one.act}"), one
                assert any(word in one.act for word in one.says.split() if len(word) > 3)
