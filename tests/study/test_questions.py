"""A change that turns a breach into a question is no cure: it comes behind all cures, and says what to weigh.

Expected numbers are worked out here by moments about the axles (statics, from memory).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.cli.fixes import does
from boxwright.study.bench import GRAVITY, adds_nothing
from boxwright.study.lever import lever_of
from boxwright.study.moves import Edit
from boxwright.study.reach import rises
from boxwright.study.remedy import remedies, with_remedies
from tests.study.demo import RIGS
from tests.study.test_remedy import AXLE, LEVER, REAR_HEAVY, applied, asked, bench, codes, sought

BOX = "  box: {x: mid 140, side: centre, z: 30, size: 10 x 10 x 10, weight: unknown, stage: shell, done: yes}\n  can: "
IN_DOUBT = REAR_HEAVY.replace("  can: ", BOX)
CODE = "weight/tongue-lifts"


def test_what_is_left_to_weigh_is_named_with_the_weight_at_which_the_answer_turns() -> None:
    assert (CODE, "stop") in codes(IN_DOUBT)
    _, found = sought(IN_DOUBT, CODE)
    (fix,) = found.fixes
    assert not fix.is_whole
    after = applied(IN_DOUBT, fix.edits)
    assert {kind for code, kind in codes(after) if code == CODE} == {"unknown"}
    # By moments: the chest's middle is 15 in behind its front edge; each pound of the box takes 40/152 off the ball.
    assert fix.edits == (Edit("parts[chest].x", "129 1/2"),)
    ball = 235.0 + (100.0 * 45.0 + 2.0 * 29.5 + 57.5 + 900.0 * (AXLE - 129.5 - 15.0)) / LEVER
    assert fix.then == f"then weigh box first: by itself it crosses the limit from {ball * LEVER / 40.0:.2g} lb on"
    # A little more of the box than that, written down, is a stop again; a little less is none.
    for factor, expected in ((1.01, {"stop"}), (0.99, set[str]())):
        weighed = after.replace("weight: unknown", f"weight: {ball * LEVER / 40.0 * factor:.4f}")
        assert {kind for code, kind in codes(weighed) if code == CODE} == expected


def test_a_question_is_said_to_be_no_cure() -> None:
    one, finding, _ = asked(IN_DOUBT, CODE)
    found = remedies(one, 0, True)
    fix = next(fix for fix in found.fixes if fix.code == CODE)
    assert does(fix).startswith(f"no cure yet of {CODE} (load road)")
    assert (CODE, finding.where, "road") not in fix.clears
    assert with_remedies((finding,), found)[0].remedy == f"{fix.says}; {fix.then}"


@pytest.mark.parametrize("everything", [False, True])
def test_cures_come_before_what_leaves_a_question(everything: bool) -> None:
    one = bench((RIGS / "dunlin.yaml").read_text(encoding="utf-8"))
    fixes = remedies(one, one.reading.rig.header.stage_today, True, everything=everything).fixes
    whole = [fix.is_whole for fix in fixes]
    assert whole == sorted(whole, reverse=True)
    assert True in whole and False in whole
    for some in (True, False):
        graves = [(-GRAVITY[fix.kind], round(fix.effort, 3)) for fix in fixes if fix.is_whole is some]
        assert graves == sorted(graves)


def test_a_cure_is_sought_past_the_first_question() -> None:
    # Half a hundredweight of doubt: a short move leaves a question, a longer one none.
    text = REAR_HEAVY.replace("weight: 900", "weight: 850..950")
    _, found = sought(text, CODE)
    assert [fix.is_whole for fix in found.fixes] == [True]
    assert CODE not in {code for code, _ in codes(applied(text, found.fixes[0].edits))}


def test_a_new_question_beside_a_breach_that_stays_is_harm_and_one_in_its_place_is_not() -> None:
    _, finding, slot = asked(REAR_HEAVY, CODE)
    question = replace(finding, kind="unknown")
    others = tuple(one for one in slot.findings if one != finding)
    assert adds_nothing(slot, replace(slot, findings=(*others, question)))
    assert not adds_nothing(slot, replace(slot, findings=(*slot.findings, question)))
    assert not adds_nothing(replace(slot, findings=others), replace(slot, findings=(*others, question)))
    assert not adds_nothing(replace(slot, findings=(*others, question)), slot)


@pytest.mark.parametrize(
    ("number", "margin", "is_least"),
    [(0.08, -0.02, True), (0.17, -0.02, False), (0.11, 0.01, True), (0.14, 0.01, False)],
)
def test_a_share_in_doubt_is_told_by_its_margin_which_limit_is_meant(
    number: float, margin: float, is_least: bool
) -> None:
    _, finding, slot = asked(REAR_HEAVY, "towing/tongue-share")
    limit = 0.10 if is_least else 0.15
    lever = lever_of(replace(finding, number=number, limit=limit, margin=margin), slot)
    assert lever is not None
    assert rises(lever) is is_least
