"""How far two ends of pipes are apart: never nearer than said, never farther, wherever in their boxes they end."""

from __future__ import annotations

from itertools import product
from math import dist

from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.heat.findings.fumes import gap_between
from boxwright.exchange import Vector

ALONG = st.floats(-5.0, 5.0)
SPANS = st.tuples(ALONG, ALONG).map(lambda pair: (min(pair), max(pair)))
BOXES = st.tuples(SPANS, SPANS, SPANS)


def corners(box: tuple[tuple[float, float], ...]) -> tuple[Vector, Vector]:
    (x, right), (y, far), (z, top) = box
    return (x, y, z), (right, far, top)


def test_by_hand_two_points_and_a_box_that_holds_the_other() -> None:
    point, other = ((0.0, 0.0, 0.0), (0.0, 0.0, 0.0)), ((3.0, 4.0, 12.0), (3.0, 4.0, 12.0))
    assert (gap_between(point, other).low, gap_between(point, other).high) == (13.0, 13.0)
    around = ((-1.0, -2.0, -2.0), (1.0, 2.0, 2.0))
    assert (gap_between(point, around).low, gap_between(point, around).high) == (0.0, 3.0)


@given(BOXES, BOXES)
def test_corners_lie_between_the_ends_and_the_farthest_pair_is_the_high_end(
    first: tuple[tuple[float, float], ...], second: tuple[tuple[float, float], ...]
) -> None:
    gap = gap_between(corners(first), corners(second))
    apart = [dist(one, other) for one in product(*first) for other in product(*second)]
    assert gap.low <= min(apart) + 1e-9
    assert abs(gap.high - max(apart)) < 1e-9
    assert gap == gap_between(corners(second), corners(first))
