"""What cures a finding of safety is offered as a proved change: fitted, put out, closed; and it stays cured."""

from __future__ import annotations

from functools import cache

import pytest

from boxwright.finding import Use
from boxwright.rig.compose import read_rig
from boxwright.study.bench import Bench, edited_by
from boxwright.study.remedy import Fix, remedies
from boxwright.study.slots import study
from tests.study.demo import RIGS, TODAY

TEXT = (RIGS / "whimbrel.yaml").read_text(encoding="utf-8")
CLOSED = (("openings[vent-high].done", "yes"), ("openings[vent-high].now", "fitted"))


@cache
def fixes(number: int, is_ticked: bool, use: Use) -> tuple[Fix, ...]:
    """Return the changes offered for the safety of Whimbrel at one stage and in one use."""
    bench = Bench(read_rig(TEXT), TODAY)
    return remedies(bench, number, is_ticked, use=use, chapter="safety").fixes


def edits(number: int, is_ticked: bool, use: Use) -> set[tuple[tuple[str, str], ...]]:
    """Return the splices of those changes."""
    return {tuple((edit.path, edit.value) for edit in fix.edits) for fix in fixes(number, is_ticked, use)}


def test_today_the_release_is_fitted_and_ticked_and_the_petrol_put_out() -> None:
    assert edits(5, True, "sleep") == {
        (("parts[release-ramp].stage", "liners"), ("parts[release-ramp].done", "yes")),
        (("parts[boat-fuel].when_sleeping", "out"),),
        CLOSED,
    }


def test_in_the_plan_of_a_later_stage_the_release_goes_in_at_it() -> None:
    assert (("parts[release-ramp].stage", "power"),) in edits(6, False, "sleep")


def test_before_it_is_left_the_petrol_is_taken_out_and_the_hole_closed() -> None:
    assert edits(5, True, "leave") == {(("loads[night].out", "boat-fuel"),), CLOSED}


@pytest.mark.parametrize("use", ["sleep", "leave"])
def test_with_the_changes_made_no_stop_of_safety_is_left_today(use: Use) -> None:
    document = read_rig(TEXT).document
    for fix in fixes(5, True, use):
        changed = edited_by(document, fix.edits)
        assert changed is not None
        document = changed
    found = study(read_rig(document.text).rig, TODAY, stage=5).findings(use)
    left = [one for one in found if one.code.startswith("safety/") and one.kind in ("stop", "fix")]
    # Half a lining is put right by hand: no line of the file does it.
    assert {one.code for one in left} <= {"safety/half-done"}


def test_where_no_release_is_to_be_had_one_is_made() -> None:
    text = TEXT.replace("stage: unplanned, release: ramp, have: yes", "stage: unplanned, have: yes")
    assert text != TEXT
    offered = remedies(Bench(read_rig(text), TODAY), 5, True, use="sleep", chapter="safety").fixes
    assert (("openings[ramp].release", "inside"),) in {tuple((e.path, e.value) for e in fix.edits) for fix in offered}
