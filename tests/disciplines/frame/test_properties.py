"""What must hold of any frame: end for end, a pitch further on, taped as it was planned, and every place it offers."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.disciplines.frame.result import Hole, Result
from tests.disciplines.frame.small import framed, hung, rig_text, window

INCH = 0.0254
PITCH, LENGTH, STUDS = 16.0, 160.0, 11
SIXTEENTHS = st.integers(1, int(LENGTH) * 16 - 1).map(lambda count: count / 16)
TAPED = "studs: {date: 2026-01-19, what: tape, within: 1/64, studs: left, values: {" + (
    ", ".join(f"{number}: {number * PITCH:g}" for number in range(STUDS)) + "}}"
)


def opening(x: float, width: float, name: str = "window") -> str:
    return f"{name}: {{wall: left, x: {x!r}, width: {width!r}, z: 30, height: 20, stage: shell, cut: no}}"


def bed(points: list[float]) -> str:
    at = ", ".join(repr(point) for point in points)
    return (
        "bed: {x: 0, side: left, z: 30, size: 160 x 20 x 2, weight: 40, stage: shell, "
        f"hinge: {{edge: left, length: 160, at: [{at}]}}, screws: {{size: 1/4 in, into: studs}}}}"
    )


def cut(hole: Hole) -> list[float]:
    """Return the places of the studs that are surely cut, in inches."""
    return sorted(one.at.best / INCH for one in hole.members_cut if one.overlap.best > 1e-9)


@settings(max_examples=60, deadline=None)
@given(x=SIXTEENTHS, width=st.integers(1, 800).map(lambda count: count / 16))
def test_a_wall_turned_end_for_end_says_the_same_turned(x: float, width: float) -> None:
    if x + width > LENGTH:
        return
    one = window(framed(rig_text((opening(x, width),))))
    other = window(framed(rig_text((opening(LENGTH - x - width, width),))))
    assert [LENGTH - place for place in reversed(cut(other))] == pytest.approx(cut(one), abs=1e-6)
    for mine, theirs in ((one.gap_low, other.gap_high), (one.gap_high, other.gap_low)):
        assert (mine is None) == (theirs is None)
        if mine is not None and theirs is not None:
            assert mine.clear.best == pytest.approx(theirs.clear.best, abs=1e-9)
    for mine_place, their_place in ((one.lower_place, other.higher_place), (one.higher_place, other.lower_place)):
        assert (mine_place is None) == (their_place is None)
        if mine_place is not None and their_place is not None:
            assert mine_place.by == pytest.approx(-their_place.by, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(x=st.integers(256, 16 * 90).map(lambda count: count / 16), width=st.integers(1, 640).map(lambda n: n / 16))
def test_everything_one_pitch_further_on_counts_the_same(x: float, width: float) -> None:
    here = window(framed(rig_text((opening(x, width),))))
    there = window(framed(rig_text((opening(x + PITCH, width),))))
    assert len(cut(here)) == len(cut(there))
    assert [one.is_certain for one in here.members_cut] == [one.is_certain for one in there.members_cut]
    points = [x, x + width / 2, x + width]
    first = hung(framed(rig_text(parts=(bed(points),))))
    second = hung(framed(rig_text(parts=(bed([point + PITCH for point in points]),))))
    assert [bool(one.catches) for one in first.points] == [bool(one.catches) for one in second.points]


@settings(max_examples=60, deadline=None)
@given(x=SIXTEENTHS, width=st.integers(1, 640).map(lambda n: n / 16), at=st.lists(SIXTEENTHS, min_size=1, max_size=5))
def test_taped_where_it_was_planned_changes_how_sure_it_is_and_nothing_else(
    x: float, width: float, at: list[float]
) -> None:
    planned = framed(rig_text((opening(x, width),), (bed(at),)))
    built = framed(rig_text((opening(x, width),), (bed(at),), (TAPED,)))
    assert cut(window(planned)) == pytest.approx(cut(window(built)))
    caught = [[one.catches for one in hung(result).points] for result in (planned, built)]
    assert caught[0] == caught[1]
    left = [[one for one in result.members if one.wall == "left"] for result in (planned, built)]
    assert [one.at.best for one in left[0]] == pytest.approx([one.at.best for one in left[1]])
    assert [one.pieces for one in left[0]] == [one.pieces for one in left[1]]
    assert not any(one.is_built for one in left[0]) and all(one.is_built for one in left[1])
    assert all(one.at.high - one.at.low < other.at.high - other.at.low for other, one in zip(*left, strict=True))
    assert built.faults == ()


def cuts_nothing(result: Result, low: float, width: float) -> bool:
    """Return whether an opening from a place on would meet no stud, even at the doubt of each (m)."""
    studs = [one for one in result.members if one.wall == "left" and not one.is_removed]
    half = {one.name: one.face.best / 2 for one in studs}
    inside = low >= 0.0 and low + width <= LENGTH * INCH + 1e-9
    return inside and all(
        low + width <= one.at.low - half[one.name] + 1e-9 or low >= one.at.high + half[one.name] - 1e-9 for one in studs
    )


@settings(max_examples=60, deadline=None)
@given(x=SIXTEENTHS, width=st.integers(16, 16 * 16).map(lambda count: count / 16))
def test_the_place_offered_cuts_nothing_and_none_is_nearer(x: float, width: float) -> None:
    """By brute force, in steps of a hundredth of an inch."""
    if x + width > LENGTH:
        return
    result = framed(rig_text((opening(x, width),)))
    hole = window(result)
    if not cut(hole):
        assert hole.lower_place is None and hole.higher_place is None
        return
    step, metres = 0.01 * INCH, width * INCH
    for place, way in ((hole.lower_place, -1), (hole.higher_place, 1)):
        tried = (hole.low + way * count * step for count in range(int(LENGTH * INCH / step)))
        nearest = next((low for low in tried if cuts_nothing(result, low, metres)), None)
        if place is None:
            assert nearest is None
            continue
        assert cuts_nothing(result, place.low, metres)
        assert place.low == pytest.approx(hole.low + place.by)
        assert nearest is None or abs(place.by) <= abs(nearest - hole.low) + 1e-9
    if hole.needs_frame:  # where only the doubt of the members leaves no place, a tape decides and not the builder
        assert hole.lower_place is None and hole.higher_place is None


@settings(max_examples=40, deadline=None)
@given(at=st.lists(SIXTEENTHS, min_size=1, max_size=6, unique=True))
def test_a_leaf_is_moved_to_metal_that_no_other_leaf_has(at: list[float]) -> None:
    result = framed(rig_text(parts=(bed(sorted(at)),)))
    hinge = hung(result)
    centres = {one.at.best: one.name for one in result.members if one.wall == "left"}
    landed = []
    for point, moved in zip(hinge.points, hinge.moved, strict=True):
        if point.catches:
            assert moved == point.at
            landed.append(point.catches)
        elif moved != point.at:
            assert moved in centres
            landed.append(centres[moved])
    fresh = [name for name in landed if name not in {one.catches for one in hinge.points}]
    assert len(fresh) == len(set(fresh))


@settings(max_examples=40, deadline=None)
@given(at=st.lists(SIXTEENTHS, min_size=1, max_size=5, unique=True))
def test_a_slide_catches_as_many_as_it_says_and_more_than_now(at: list[float]) -> None:
    now = hung(framed(rig_text(parts=(bed(sorted(at)),))))
    for slid in now.slides:
        moved = [point + slid.by / INCH for point in sorted(at)]
        then = hung(framed(rig_text(parts=(bed(moved),))))
        count = sum(bool(one.catches) for one in then.points)
        assert count == slid.catches > sum(bool(one.catches) for one in now.points)


@given(x=SIXTEENTHS, width=st.integers(1, 640).map(lambda n: n / 16))
@settings(max_examples=40, deadline=None)
def test_bays_and_studs_fill_the_wall(x: float, width: float) -> None:
    result = framed(rig_text((opening(x, width),)))
    bays = [one for one in result.bays if one.wall == "left"]
    studs = [one for one in result.members if one.wall == "left"]
    between = sum(one.clear.best for one in bays)
    faces = sum(one.face.best for one in studs) - (studs[0].face.best + studs[-1].face.best) / 2
    assert between + faces == pytest.approx(LENGTH * INCH)
    for first, second in pairwise(bays):
        assert first.last == second.first


@given(number=st.integers(1, STUDS - 2), width=st.integers(17, 30))
@settings(max_examples=20, deadline=None)
def test_a_stud_that_was_seen_taken_out_frees_its_place(number: int, width: int) -> None:
    """Two bays become one; an opening as wide as both and the stud is clear there, and cut before."""
    x = number * PITCH - width / 2
    line = opening(x, width)
    gone = f"gone: {{date: 2026-02-01, what: seen, studs: left, values: {{{number}: removed}}}}"
    before, after = framed(rig_text((line,))), framed(rig_text((line,), measured=(gone,)))
    assert cut(window(before)) == [pytest.approx(number * PITCH)]
    assert cut(window(after)) == []
    bays = [[one for one in result.bays if one.wall == "left"] for result in (before, after)]
    assert len(bays[0]) - len(bays[1]) == 1
    assert f"left {number - 1}-{number + 1}" in {one.name for one in bays[1]}
    leaf = bed([number * PITCH])
    assert hung(framed(rig_text(parts=(leaf,)))).points[0].catches
    assert not hung(framed(rig_text(parts=(leaf,), measured=(gone,)))).points[0].catches


@given(at=st.lists(SIXTEENTHS, min_size=1, max_size=5, unique=True))
@settings(max_examples=40, deadline=None)
def test_a_bed_turned_end_for_end_catches_the_same_turned(at: list[float]) -> None:
    here = hung(framed(rig_text(parts=(bed(sorted(at)),))))
    there = hung(framed(rig_text(parts=(bed(sorted(LENGTH - place for place in at)),))))
    assert [bool(one.catches) for one in here.points] == [bool(one.catches) for one in reversed(there.points)]
    assert [one.room for one in here.points] == pytest.approx([one.room for one in reversed(there.points)])
    turned = sorted((-one.by, one.catches) for one in there.slides)
    assert [one[1] for one in turned] == [one[1] for one in sorted((one.by, one.catches) for one in here.slides)]
    assert [one[0] for one in turned] == pytest.approx(sorted(one.by for one in here.slides))
