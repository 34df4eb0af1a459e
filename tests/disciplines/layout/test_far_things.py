"""A digit too many makes a thing as long as a country: it is sorted at once, and met by what is in it all the same."""

from __future__ import annotations

from itertools import combinations
from math import inf

from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.meeting import FARTHEST, are_near, columns_and_rows, near_pairs

MOST_CELLS = (2 * FARTHEST + 1) ** 2
PLACES = st.one_of(st.floats(-5.0, 5.0), st.floats(-40.0, 40.0), st.floats(-1e9, 1e9), st.sampled_from([-inf, inf]))


@st.composite
def blocks(draw: st.DrawFn) -> Block:
    ends = [sorted((draw(PLACES), draw(PLACES))) for _ in range(3)]
    low, high = zip(*ends, strict=True)
    return Block(low, high)


@given(st.lists(blocks(), min_size=2, max_size=4))
def test_wherever_things_are_those_that_meet_are_found(boxes: list[Block]) -> None:
    numbered = [(box, number) for number, box in enumerate(boxes)]
    found = {tuple(sorted(pair)) for pair in near_pairs(numbered)}
    wanted = {(a, b) for (one, a), (other, b) in combinations(numbered, 2) if are_near(one, other)}
    assert found == wanted


def test_a_thing_without_end_reaches_into_so_many_cells_and_no_more() -> None:
    everywhere = Block((-1e9, -1e9, 0.0), (1e9, 1e9, 1.0))
    assert len(list(columns_and_rows(everywhere))) == MOST_CELLS
    assert len(list(columns_and_rows(Block((0.1, 0.1, 0.0), (1e9, 0.2, 1.0))))) == FARTHEST + 1
