"""Where moving is not the cure: other ways to stand at night, and how far all that may be done can reach.

Expected numbers are worked out here by moments about the axles (statics, from memory).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.study.lever import Lever, lever_of
from boxwright.study.moves import Edit
from boxwright.study.reach import best_reachable, said_without
from tests.study.test_remedy import (
    AXLE,
    FILLED,
    LEVER,
    REAR_HEAVY,
    WATER,
    applied,
    asked,
    chest,
    codes,
    rig_text,
    sought,
)

CAMPED = rig_text(
    ("owner: {weight: 170", "owner: {weight: 900"),
    ("  deck_height: 18 1/2\n", "  deck_height: 18 1/2\n  legs: {x: [4, 164]}\n"),
    ("coupled: yes, legs: down", "coupled: no, legs: up"),
)
LEGS_DOWN, COUPLED = Edit("loads[night].legs", "down"), Edit("loads[night].coupled", "yes")


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ((), [LEGS_DOWN, COUPLED]),
        ((("coupled: no, legs: up", "coupled: no"),), [LEGS_DOWN, COUPLED]),
        ((("  legs: {x: [4, 164]}\n", ""),), [COUPLED]),  # nobody knows where legs would stand
        ((("[4, 164]", "[4, 104]"),), [COUPLED]),  # legs too far forward hold nothing
    ],
)
def test_a_nose_that_may_lift_is_held_by_the_rear_legs_or_the_coupling(
    changes: tuple[tuple[str, str], ...], expected: list[Edit]
) -> None:
    text = CAMPED
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    assert "weight/tips-up" in {code for code, _ in codes(text)}
    _, found = sought(text, "weight/tips-up", everything=True)
    at_night = [fix.edits[0] for fix in found.fixes if fix.load == "night"]
    assert [edit for edit in at_night if edit.path.endswith(("legs", "coupled"))] == expected
    for edit in expected:
        after = applied(text, (edit,))
        assert not [code for code, kind in codes(after) if code == "weight/tips-up" and kind != "advice"]


FULL = rig_text(
    chest("x: 100, side: centre-10, z: 0, size: 30 x 20 x 20, weight: 100"),
    (
        "  can: ",
        "  stove: {x: 135, side: centre, z: 0, size: 30 x 20 x 20, weight: 900, stage: shell, done: yes}\n  can: ",
    ),
)


def test_a_definite_no_says_the_best_that_all_moving_and_leaving_can_reach() -> None:
    _, found = sought(FULL.replace("weight: 900", "weight: 1500"), "weight/tongue-lifts")
    assert not found.fixes
    # The chest at the front wall has its middle at x 15, and the can is full; nothing else moves. By moments, in lb:
    ball = 235.0 + 100.0 * 45.0 / LEVER + 2.0 * 29.5 / LEVER + 57.5 / LEVER + FILLED
    best = ball - 1500.0 * 50.0 / LEVER + 100.0 * (AXLE - 15.0) / LEVER
    assert f"the best that can be reached is {best:.0f} lb; 0 lb is needed" in found.without[0][1]


def test_a_share_that_cannot_be_reached_is_said_in_per_cent() -> None:
    text = FULL.replace("weight: 900", "weight: 700")
    one, finding, slot = asked(text, "towing/tongue-share")
    lever = lever_of(finding, slot)
    assert lever is not None
    # Moved to the front wall the chest gives 85/152 of its 100 lb; left behind it would give nothing.
    ball = (
        235.0 + 100.0 * 45.0 / LEVER + 2.0 * 29.5 / LEVER + 57.5 / LEVER - 700.0 * 50.0 / LEVER + 100.0 * 85.0 / LEVER
    )
    gross = 1960.0 + 100.0 + 2.0 + 1.0 + 700.0 + 100.0
    # Each pound of water puts 29.5/152 of itself on the ball, more than the share that is asked for.
    best = (ball + FILLED) / (gross + WATER)
    assert best_reachable(one, finding, lever, slot) == pytest.approx(best, rel=1e-5)


def test_cargo_inside_something_may_be_taken_out_and_carried_to_the_front_wall() -> None:
    text = FULL.replace("weight: 900", "weight: 700")
    text = text.replace("chest: {x: 100, side: centre-10, z: 0", "chest: {inside: stove, x: +0, side: +0, z: +1")
    one, finding, slot = asked(text, "towing/tongue-share")
    lever = lever_of(finding, slot)
    assert lever is not None
    # At the very most its middle stands at the wall itself.
    ball = 235.0 + (100.0 * 45.0 + 2.0 * 29.5 + 57.5 - 700.0 * 50.0 + 100.0 * AXLE) / LEVER
    best = (ball + FILLED) / (2863.0 + WATER)
    assert best_reachable(one, finding, lever, slot) == pytest.approx(best, rel=1e-5)


def test_what_is_emptied_comes_off_the_weight_a_share_is_taken_of() -> None:
    text = REAR_HEAVY.replace("stage: shell, kind: cargo", "stage: shell, done: yes").replace(
        "weight: 900", "weight: 600"
    )
    for old, new in (
        ("can: {x: 66", "can: {x: 155"),
        ("tank: {of: water, volume: 5}", "tank: {of: water, volume: 10}"),
        ("road: {cargo: all, tanks: {can: empty}", "road: {cargo: all, tanks: {can: full}"),
    ):
        assert old in text
        text = text.replace(old, new)
    one, finding, slot = asked(text, "towing/tongue-share")
    lever = lever_of(finding, slot)
    assert lever is not None
    # Without the water, by moments: the empty can has its middle at x 159 1/2.
    ball = 235.0 + (100.0 * 45.0 - 2.0 * 59.5 + 57.5 - 600.0 * 50.0) / LEVER
    gross = 1960.0 + 100.0 + 2.0 + 1.0 + 600.0
    assert best_reachable(one, finding, lever, slot) == pytest.approx(ball / gross, rel=1e-5)


def test_nothing_is_said_where_no_load_is_over_its_limit() -> None:
    one, finding, slot = asked(REAR_HEAVY, "weight/tongue-lifts")
    rule = replace(finding, code="towing/gross-over-plate", kind="limit", lever="parts", number=1.0, limit=9e9)
    lever = lever_of(rule, slot)
    assert lever == Lever("gross", False)
    assert said_without(one, rule, lever, slot) == ""


def test_where_the_load_could_be_put_right_but_not_without_harm_it_is_no_definite_no() -> None:
    # The chest at the front wall would put far more than a tenth on the ball, and the vehicle carries 20 lb.
    text = REAR_HEAVY.replace("rating: 9000, tongue: 900", "rating: 9000, tongue: 20")
    _, found = sought(text, "towing/tongue-share")
    assert not found.fixes
    assert [words.partition(" is enough")[0] for _, words in found.without] == [
        "No move, leaving behind, emptying or filling tried"
    ]
