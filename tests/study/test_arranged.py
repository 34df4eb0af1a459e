"""One arrangement for every load state: never more work than one move that does, and every limit of every state kept.

Expected distances are worked out here by moments about the axles (statics, from memory).
"""

from __future__ import annotations

from itertools import combinations
from math import ceil

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from boxwright.rig.compose import read_rig
from boxwright.study.arranged import kept
from boxwright.study.moves import Edit
from boxwright.study.packing import least_effort
from boxwright.study.remedy import HARDLY_MORE, Fix, remedies
from boxwright.study.room import edges, meets
from boxwright.study.slots import study
from tests.lanes import examples
from tests.study.demo import TODAY
from tests.study.test_remedy import AXLE, LEVER, applied, bench, chest, rig_text

GRAVE = {"stop", "fix", "limit"}


def two_states(chest_x: int, weight: int, crate_x: int, crate: int, stove: int = 500) -> str:
    """Return a rig towed with all its cargo, and without the crate; a stove is built in at the rear."""
    return rig_text(
        chest(f"x: {chest_x}, side: right-10, z: 0, size: 20 x 20 x 20, weight: {weight}"),
        ("  can: ", f"  crate: {{x: {crate_x}, side: right-10, z: 0, size: 20 x 20 x 20, weight: {crate}, stage: shell,"
                    f" kind: cargo}}\n  stove: {{x: 140, side: centre, z: 30, size: 20 x 20 x 20, weight: {stove},"
                    " stage: shell, done: yes}\n  can: "),
        ("  night: {", "  home: {cargo: all, out: [crate], tanks: {can: empty}, for: [tow]}\n  night: {"),
    )  # fmt: skip


def breaches(text: str) -> set[tuple[str, str, str]]:
    """Return what a rig breaks as it stands today on the road: code, load state and kind."""
    slots = study(read_rig(text).rig, TODAY, use="tow").asked_slots("tow")
    return {(said.code, slot.load, said.kind) for slot in slots for said in slot.findings if said.kind in GRAVE}


def for_all(text: str) -> list[Fix]:
    """Return the changes of places alone that leave no breach of any load state of today."""
    found = remedies(bench(text), 0, True, use="tow", everything=True)
    moves = [fix for fix in found.fixes if all(edit.path.startswith("parts[") for edit in fix.edits)]
    return [fix for fix in moves if not breaches(applied(text, fix.edits))]


def test_one_arrangement_cures_what_each_load_state_needs_of_another_part() -> None:
    text = two_states(105, 400, 130, 250, stove=400)
    assert breaches(text) == {("towing/tongue-share", load, "limit") for load in ("road", "home")}
    (first, *_) = for_all(text)
    # A tenth of the weight is wanted on the ball, and a tenth of a per cent more as the margin. Without the crate the
    # chest alone would do, with it even the chest at the front wall does not: by moments the crate gives the rest, in
    # whole half inches.
    bare = 235.0 + (100.0 * 45.0 + 2.0 * 29.5 + 57.5 - 400.0 * 50.0) / LEVER
    road = bare + (400.0 * (AXLE - 10.0) + 250.0 * (AXLE - 140.0)) / LEVER
    rest = (0.101 * (1960.0 + 100.0 + 3.0 + 400.0 + 400.0 + 250.0) - road) * LEVER / 250.0
    far = ceil(rest * 2.0) / 2.0
    assert far == 6.0
    assert bare + 400.0 * (AXLE - 10.0) / LEVER > 0.1 * (1960.0 + 100.0 + 3.0 + 400.0 + 400.0)
    assert set(first.edits) == {Edit("parts[chest].x", "0"), Edit("parts[crate].x", f"{130.0 - far:g}")}
    assert first.is_whole
    assert {load for _, _, load in first.clears} == {"road", "home"}


def test_parts_follow_one_another_and_never_stand_in_each_other() -> None:
    # The crate stands behind the chest, touching it, and would stand in it where it is wanted.
    text = two_states(60, 100, 80, 500, stove=235)
    one = bench(text)
    moves = [fix for fix in remedies(one, 0, True, use="tow", everything=True).fixes if len(fix.edits) > 1]
    assert [fix for fix in moves if {edit.path for edit in fix.edits} >= {"parts[chest].x", "parts[crate].x"}]
    for fix in moves:
        rig = read_rig(applied(text, fix.edits)).rig
        boxes = [edges(item.place) for item in rig.parts if item.name in {"chest", "crate"}]
        assert boxes[0] is not None and boxes[1] is not None
        assert not meets(boxes[0], boxes[1])


@examples(5, 100)
@given(
    chest_x=st.integers(20, 140),
    weight=st.integers(100, 700),
    crate_x=st.integers(20, 140),
    crate=st.integers(100, 700),
)
def test_the_arrangement_is_never_more_work_than_the_best_single_move_that_cures_all(
    chest_x: int, weight: int, crate_x: int, crate: int
) -> None:
    text = two_states(chest_x, weight, crate_x, crate)
    assume(breaches(text))
    cures = for_all(text)
    alone = [one for one in singles(text) if not breaches(applied(text, one.edits))]
    if alone:
        assert cures, "one move does, so there is an arrangement"
        best, first = min(alone, key=lambda one: one.effort), cures[0]
        # What clears more for hardly more work stands in the place of the lesser change.
        clears_more = set(first.clears) > set(best.clears) and first.effort <= HARDLY_MORE * best.effort
        assert first.effort <= best.effort + 1e-6 or clears_more


def singles(text: str) -> list[Fix]:
    """Return the proved single moves found for each finding by itself, without the programme."""
    found = remedies(bench(text), 0, True, use="tow", per_finding=8)
    return [fix for fix in found.fixes if fix.moves == 1 and fix.edits[0].path.startswith("parts[")]


@examples(4, 100)
@given(weight=st.integers(100, 700), crate=st.integers(100, 700))
def test_the_arrangement_breaks_no_limit_of_any_load_state(weight: int, crate: int) -> None:
    text = two_states(115, weight, 120, crate)
    had = breaches(text)
    for fix in remedies(bench(text), 0, True, use="tow", everything=True).fixes:
        assert breaches(applied(text, fix.edits)) <= had


def test_a_limit_that_is_kept_now_is_a_row_with_what_may_be_lost() -> None:
    one = bench(two_states(60, 50, 60, 50, stove=1))
    slot = next(slot for slot in one.before if (slot.load, slot.use) == ("road", "tow"))
    assert slot.weight is not None
    rows = [row.need for row in kept(slot, "", with_sides=False)]
    # The vehicle carries 900 lb on its hitch; whatever the ball carries less of that may still be put on it.
    room = 900.0 * 0.45359237 - slot.weight.tongue.band.high
    assert min(abs(need + room) for need in rows) < 1e-6
    assert all(need <= 0.0 for need in rows)


def corners(
    weights: list[float], ways: list[tuple[float, float]], gains: list[list[float]], needs: list[float]
) -> float | None:
    """Return the least weight times distance by looking at every corner of what is possible: slow, and sure.

    Each part is two numbers, as far as it goes either way; a corner is where as many limits meet as there are numbers.
    """
    count = 2 * len(weights)
    cost = np.repeat(weights, 2)
    sides = [(np.array([g for one in row for g in (one, -one)]), need) for row, need in zip(gains, needs, strict=True)]
    for index, (least, most) in enumerate(ways):
        for column, way in ((2 * index, most), (2 * index + 1, -least)):
            unit = np.zeros(count)
            unit[column] = 1.0
            sides += [(unit, 0.0), (-unit, -way)]
    best: float | None = None
    for chosen in combinations(sides, count):
        matrix = np.array([row for row, _ in chosen])
        if abs(np.linalg.det(matrix)) < 1e-9:
            continue
        corner = np.linalg.solve(matrix, np.array([need for _, need in chosen]))
        if all(row @ corner >= need - 1e-7 for row, need in sides):
            found = float(cost @ corner)
            best = found if best is None else min(best, found)
    return best


numbers = st.integers(-9, 9).map(float)


@examples(25, 300)
@given(
    weights=st.lists(st.integers(1, 50).map(float), min_size=2, max_size=2),
    ways=st.lists(st.tuples(st.integers(-5, 0).map(float), st.integers(0, 5).map(float)), min_size=2, max_size=2),
    gains=st.lists(st.lists(numbers, min_size=2, max_size=2), min_size=1, max_size=3),
    needs=st.lists(st.integers(-20, 20).map(float), min_size=3, max_size=3),
)
def test_the_programme_finds_the_best_of_all_corners(
    weights: list[float], ways: list[tuple[float, float]], gains: list[list[float]], needs: list[float]
) -> None:
    needs = needs[: len(gains)]
    shifts, best = least_effort(weights, ways, gains, needs), corners(weights, ways, gains, needs)
    assert (shifts is None) == (best is None)
    if shifts is not None and best is not None:
        assert sum(kg * abs(shift) for kg, shift in zip(weights, shifts, strict=True)) == pytest.approx(best, abs=1e-3)
        for row, need in zip(gains, needs, strict=True):
            assert sum(gain * shift for gain, shift in zip(row, shifts, strict=True)) >= need - 1e-6
