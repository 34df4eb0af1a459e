"""What is offered for a clash is proved: the thing moved to where it is free at every time, or out for the night."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.bench import Bench
from boxwright.study.clash_moves import MET
from boxwright.study.remedy import Fix, remedies
from boxwright.study.slots import study

RIGS = Path(__file__).parents[2] / "rigs"
KNOT = (Path(__file__).parents[1] / "findings" / "layout" / "rig.yaml").read_text(encoding="utf-8")
DAY = date(2026, 6, 1)


def fixes(text: str, stage: int) -> tuple[Bench, tuple[Fix, ...]]:
    bench = Bench(read_rig(text), DAY)
    found = remedies(bench, stage, False, chapter="layout")
    return bench, found.fixes


@pytest.mark.parametrize(
    ("name", "stage", "thing"),
    [
        ("dunlin", 5, "bowls-crates"),
        pytest.param("whimbrel", 7, "outboard-stand", marks=pytest.mark.nightly),
    ],
)
def test_what_is_in_the_way_of_a_bed_is_taken_out_for_the_night(name: str, stage: int, thing: str) -> None:
    bench, found = fixes((RIGS / f"{name}.yaml").read_text(encoding="utf-8"), stage)
    (fix,) = [one for one in found if one.code == "layout/sleeping-place"]
    assert fix.says == f"Take {thing} out of the trailer for the night"
    assert [(edit.path, edit.value) for edit in fix.edits] == [(f"parts[{thing}].when_sleeping", "out")]
    after = bench.after(fix.edits)
    assert after is not None
    said = study(after.rig, DAY, stage=stage, use="sleep", ticked=False).findings("sleep")
    assert not any(one.code == fix.code and one.kind == "stop" for one in said)


def test_a_box_in_a_heater_is_moved_to_where_nothing_is() -> None:
    text = KNOT.replace("box: {x: 100", "box: {x: 118")
    assert text != KNOT
    bench, found = fixes(text, 0)
    (fix,) = [one for one in found if one.where == "parts[box]"]
    assert {edit.path for edit in fix.edits} <= {"parts[box].x", "parts[box].side"}
    after = bench.after(fix.edits)
    assert after is not None
    for slot in study(after.rig, DAY, stage=0).slots:
        assert not any(one.code in MET for one in slot.findings)


def test_nothing_is_offered_where_nothing_is_in_the_way() -> None:
    assert fixes(KNOT, 0)[1] == ()
