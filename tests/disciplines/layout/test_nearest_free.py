"""The least push along one axis after which boxes meet nothing, beside one that tries every edge against every box."""

from __future__ import annotations

from random import Random

import pytest

from boxwright.disciplines.layout.bodies import Block, moved_block
from boxwright.disciplines.layout.meeting import TOUCH, are_in, nearest_free

ENDS = (-3.0, 3.0)


def block(luck: Random) -> Block:
    low = (luck.uniform(-2.0, 2.0), luck.uniform(-1.0, 1.0), luck.uniform(0.0, 1.0))
    long, wide, high = luck.choice([0.0007, 0.1, 0.4, 1.0]), luck.uniform(0.1, 1.0), luck.uniform(0.1, 1.0)
    return Block(low, (low[0] + long, low[1] + wide, low[2] + high))


def tried(own: list[Block], others: list[Block]) -> float | None:
    """Return the shortest push to an edge of a box that is in the way somewhere along the axis, at which none is."""
    edges = [0.0]
    for other in others:
        for one in own:
            if all(min(one.high[at], other.high[at]) - max(one.low[at], other.low[at]) > TOUCH for at in (1, 2)):
                edges += [other.low[0] - one.high[0], other.high[0] - one.low[0]]

    def is_free(by: float) -> bool:
        return not any(are_in(moved_block(one, (by, 0.0, 0.0)), other) for one in own for other in others)

    free = [by for by in edges if ENDS[0] - TOUCH <= by <= ENDS[1] + TOUCH and is_free(by)]
    return min(free, key=abs, default=None)


@pytest.mark.parametrize("seed", range(6))
def test_the_push_is_free_and_none_shorter_is(seed: int) -> None:
    luck, found = Random(seed), []
    for _ in range(25):
        own = [block(luck) for _ in range(luck.randint(1, 3))]
        others = [block(luck) for _ in range(luck.choice([0, 2, 8, 30]))]
        found.append(nearest_free([(one, other) for other in others for one in own], 0, ENDS))
        assert found[-1] == tried(own, others)
    assert 0.0 in found and len(set(found)) > 5
