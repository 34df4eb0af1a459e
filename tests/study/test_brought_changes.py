"""A thing that no way in is left for is brought in at the stage before: a change is offered only where it is proved."""

from __future__ import annotations

from boxwright.rig.compose import read_rig
from boxwright.study.bench import Bench, edited_by
from boxwright.study.remedy import Fix, remedies
from boxwright.study.slots import study
from tests.disciplines.layout.test_bringing import FRIDGE, HEAD, WALL
from tests.study.demo import TODAY

PARTS = f"  {WALL.replace('STAGE', 'next')}\n  {FRIDGE}\n"
TEXT = HEAD.replace("DOORS\n", "").replace("PARTS\n", PARTS)
CODE = "layout/brought-in"


def offered(text: str, number: int) -> list[Fix]:
    bench = Bench(read_rig(text), TODAY)
    found = remedies(bench, number, False, use="tow", chapter="layout").fixes
    return [fix for fix in found if fix.code == CODE]


def said(text: str) -> list[str]:
    return [one.where for one in study(read_rig(text).rig, TODAY, stage=2, ticked=False).findings() if one.code == CODE]


def test_it_is_brought_in_at_the_last_stage_a_way_was_found_at_and_is_not_asked_about_then() -> None:
    assert said(TEXT) == ["parts[wall]", "parts[fridge]"]
    (fix,) = offered(TEXT, 2)
    assert [(edit.path, edit.value) for edit in fix.edits] == [("parts[fridge].stage", "next")]
    assert fix.says == "Bring fridge in at stage next, while there is a way" and fix.is_whole
    changed = edited_by(read_rig(TEXT).document, fix.edits)
    assert changed is not None and said(changed.text) == ["parts[wall]"]


def test_with_no_stage_left_to_bring_it_in_at_nothing_is_offered() -> None:
    shut = TEXT.replace("stage: next}", "stage: now, done: yes}")
    assert said(shut) == ["parts[fridge]"] and offered(shut, 2) == []
