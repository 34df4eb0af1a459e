"""Closed forms of the frame against trying everything: counting, sliding a hinge, turning a thing in a hole."""

from __future__ import annotations

from math import cos, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.passing import passing
from tests.disciplines.frame.small import framed, hung, rig_text

INCH = 0.0254
PITCH, LENGTH, STUDS, HALF_FACE, EDGE = 16.0, 160.0, 11, 0.5, 0.375
"""The small rig's left wall in inches: faces of 1 in, and 1.5 shanks of a 1/4 in screw from their edges."""
STEP = 1 / 64
SIXTEENTHS = st.integers(1, int(LENGTH) * 16 - 1).map(lambda count: count / 16)
MOST = 12.0
EXACT = 1e-6


@settings(max_examples=200)
@given(span=st.floats(0.01, 5.0), pitch=st.floats(0.05, 1.5), share=st.floats(0.0, 1.0), edge=st.floats(0.0, 0.1))
def test_members_in_a_span_are_as_many_as_are_counted_one_by_one(
    span: float, pitch: float, share: float, edge: float
) -> None:
    phase = share * pitch
    if edge > phase or edge > span - edge:
        return
    centres = [phase + number * pitch for number in range(-3, int(span / pitch) + 4)]
    least = sum(edge + EXACT <= one <= span - edge - EXACT for one in centres)
    most = sum(edge - EXACT <= one <= span - edge + EXACT for one in centres)
    assert least <= method.members_in_span(span, pitch, phase, edge) <= most


@settings(max_examples=100)
@given(span=st.floats(0.1, 5.0), pitch=st.floats(0.05, 1.5), edge=st.floats(0.0, 0.04))
def test_the_fewest_and_one_more_are_all_that_a_span_meets_at_any_phase(span: float, pitch: float, edge: float) -> None:
    fewest = method.fewest_in_span(span, pitch, edge)
    beyond = (span - 2 * edge) / pitch
    if abs(beyond - round(beyond)) < EXACT:
        return
    reach = range(-2, int(span / pitch) + 3)
    counts = {
        sum(edge <= number * pitch + phase <= span - edge for number in reach)
        for phase in (edge - 1e-9, edge, *(pitch * part / 97 for part in range(97)))
    }
    assert counts == {fewest, fewest + 1}


def caught(points: list[float], by: float) -> int:
    """Return how many points keep the edge distance to a stud, slid as a whole (in)."""
    number = 0
    for point in points:
        nearest = min(max(round((point + by) / PITCH), 0), STUDS - 1) * PITCH
        number += abs(point + by - nearest) <= HALF_FACE - EDGE + EXACT
    return number


def bed(points: list[float]) -> str:
    at = ", ".join(repr(point) for point in points)
    return (
        "bed: {x: 0, side: left, z: 30, size: 160 x 20 x 2, weight: 40, stage: shell, "
        f"hinge: {{edge: left, length: 160, at: [{at}]}}, screws: {{size: 1/4 in, into: studs}}}}"
    )


@settings(max_examples=25, deadline=None)
@given(at=st.lists(SIXTEENTHS, min_size=1, max_size=5, unique=True))
def test_no_slide_catches_more_and_none_that_catches_as_much_is_shorter(at: list[float]) -> None:
    """In steps of a sixty-fourth of an inch, both ways up to a foot, short of the ends of the wall."""
    points = sorted(at)
    found = hung(framed(rig_text(parts=(bed(points),))))
    now = caught(points, 0.0)
    assert sum(bool(one.catches) for one in found.points) == now
    slides = {one.by > 0.0: one for one in found.slides}
    for is_rearward in (False, True):
        room = min(LENGTH - points[-1] if is_rearward else points[0], MOST)
        way = 1.0 if is_rearward else -1.0
        tried = [(caught(points, way * count * STEP), count * STEP) for count in range(1, int(room / STEP) + 1)]
        best = max((number for number, _ in tried), default=0)
        if best <= now:
            assert is_rearward not in slides
            continue
        shortest = min(by for number, by in tried if number == best)
        if is_rearward not in slides:  # a slide of just the most there is may be a rounding beyond it
            assert shortest > MOST - STEP
            continue
        slid = slides[is_rearward]
        assert slid.catches == best
        assert shortest - STEP - EXACT <= abs(slid.by) / INCH <= shortest + EXACT


@settings(max_examples=40, deadline=None)
@given(at=st.lists(SIXTEENTHS, min_size=1, max_size=6, unique=True))
def test_every_leaf_that_is_moved_catches_a_stud_of_its_own_and_one_that_stays_has_none_near(at: list[float]) -> None:
    points = sorted(at)
    found = hung(framed(rig_text(parts=(bed(points),))))
    moved = [one / INCH for one in found.moved]
    used = [round(one / PITCH) for one in moved if caught([one], 0.0)]
    for point, place in zip(points, moved, strict=True):
        if caught([point], 0.0):
            assert place == pytest.approx(point)
            continue
        assert abs(place - point) <= MOST + EXACT
        if abs(place - point) > EXACT:
            assert caught([place], 0.0) == 1 and used.count(round(place / PITCH)) == 1
        else:
            # Between neighbours that keep their order, a free stud within reach would have been taken.
            before = max((one for other, one in zip(points, moved, strict=True) if other < point), default=-MOST)
            after = min((one for other, one in zip(points, moved, strict=True) if other > point), default=LENGTH + MOST)
            studs = (number * PITCH for number in range(STUDS) if number not in used)
            assert not any(before + EXACT < one < after - EXACT and abs(one - point) < MOST for one in studs)


SIZES = st.floats(0.01, 3.0)


@settings(max_examples=150, deadline=None)
@given(thin=SIZES, wide=SIZES, width=SIZES, height=SIZES)
def test_a_thing_passes_where_turning_it_by_hundredths_of_a_degree_finds_a_way(
    thin: float, wide: float, width: float, height: float
) -> None:
    found = passing("", "", (9.0, wide, thin), (width, height))
    angles = [pi / 2 * step / 9000 for step in range(9001)]
    spare = max(
        min(width - wide * cos(angle) - thin * sin(angle), height - wide * sin(angle) - thin * cos(angle))
        for angle in angles
    )
    if abs(spare) > 3.0 * pi / 2 / 9000 * 2:  # nearer than one step of the sweep it cannot tell
        assert found.passes == (spare > 0.0)
    if found.passes:
        turned = (
            wide * abs(cos(found.tilt)) + thin * abs(sin(found.tilt)),
            wide * abs(sin(found.tilt)) + thin * abs(cos(found.tilt)),
        )
        assert any(across <= width + EXACT and up <= height + EXACT for across, up in (turned, tuple(reversed(turned))))
