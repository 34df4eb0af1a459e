"""Boxes and sweeps beside shapely and manifold3d, on 200 random layouts each, and beside what has a closed form.

shapely knows outlines seen from above, so heights are added by hand; manifold3d measures between solids.
"""

from __future__ import annotations

from math import atan2, cos, hypot, inf, isfinite, pi, sin
from random import Random
from typing import Any

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.meeting import TOUCH, are_in, gap, near_pairs
from boxwright.disciplines.layout.sweeps import Turn
from tests.disciplines.layout.layouts import layout, turn

shapely = pytest.importorskip("shapely", reason="shapely is not installed")
manifold3d = pytest.importorskip("manifold3d", reason="manifold3d is not installed")

SEEDS = range(200)
STEPS = 24
FARTHEST = 20.0
"""Over which manifold3d looks for the least gap (m); no two boxes of a layout are so far apart."""


def rectangle(block: Block) -> Any:
    return shapely.box(block.low[0], block.low[1], block.high[0], block.high[1])


def in_height(one: Block, other: Block) -> float:
    return min(one.high[2], other.high[2]) - max(one.low[2], other.low[2])


@pytest.mark.parametrize("seed", SEEDS)
def test_pairs_and_distances_are_those_of_shapely(seed: int) -> None:
    blocks = [body.blocks[0] for body in layout(seed, 24)]
    shapes = [rectangle(block) for block in blocks]
    pared = [shape.buffer(-TOUCH / 2.0, join_style="mitre") for shape in shapes]
    wanted = set()
    for first, one in enumerate(blocks):
        for second in range(first):
            other = blocks[second]
            flat, up = shapes[first].distance(shapes[second]), max(-in_height(one, other), 0.0)
            assert gap([one], [other]) == pytest.approx(hypot(flat, up), abs=1e-9)
            if pared[first].intersection(pared[second]).area > 1e-12 and in_height(one, other) > TOUCH:
                wanted.add((second, first))
    found = {tuple(sorted(pair)) for pair in near_pairs([(block, number) for number, block in enumerate(blocks)])}
    assert found == wanted


def solid(block: Block) -> Any:
    return manifold3d.Manifold.cube(block.size).translate(block.low)


@pytest.mark.parametrize("seed", SEEDS)
def test_distances_and_depths_are_those_of_manifold3d(seed: int) -> None:
    """What is in each other has a common part, and no gap; what has a gap has none. The least gap is of triangles."""
    blocks = [body.blocks[0] for body in layout(seed, 7)]
    shapes = [solid(block) for block in blocks]
    for first, one in enumerate(blocks):
        for second in range(first):
            apart = gap([one], [blocks[second]])
            assert apart < FARTHEST
            assert shapes[first].min_gap(shapes[second], FARTHEST) == pytest.approx(apart, abs=1e-9)
            if are_in(one, blocks[second]):
                assert (shapes[first] ^ shapes[second]).volume() > 0.0
            elif apart > 1e-5:
                assert (shapes[first] ^ shapes[second]).is_empty()


def opened(leaf: Turn, angle: float) -> Any:
    """Return a leaf as seen from above after it has turned so far, by its corners alone."""
    (i, way_i), (j, way_j) = leaf.along, leaf.across
    corners = []
    for along, across in ((0, 0), (1, 0), (1, 1), (0, 1)):
        x, y = leaf.spans[0][along], leaf.spans[1][across] or (1e-9 if across else 0.0)
        turned = (x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle))
        place = {i: leaf.hinge[0] + way_i * turned[0], j: leaf.hinge[1] + way_j * turned[1]}
        corners.append((place[0], place[1]))
    return shapely.Polygon(corners)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_leaf_meets_what_shapely_says_it_meets(seed: int) -> None:
    leaf = turn(seed)
    (j, way) = leaf.across
    for body in layout(seed, 12):
        block = body.blocks[0]
        if min(block.high[2], leaf.width[1]) - max(block.low[2], leaf.width[0]) <= TOUCH:
            assert leaf.meets(block) == inf
            continue
        low, high = [list(corner) for corner in block]
        for axis in (0, 1):
            low[axis], high[axis] = low[axis] + TOUCH, high[axis] - TOUCH
        # behind the hinge is wall
        if way > 0.0:
            low[j] = max(low[j], leaf.hinge[1] + TOUCH)
        else:
            high[j] = min(high[j], leaf.hinge[1] - TOUCH)
        at = leaf.meets(block)
        if low[j] >= high[j]:
            assert at == inf
            continue
        there = shapely.box(low[0], low[1], high[0], high[1])
        for step in range(STEPS + 1):
            angle = leaf.turn * step / STEPS
            if angle < at:
                assert not opened(leaf, angle).buffer(-1e-7).intersects(there.buffer(-1e-7))
        if isfinite(at):
            assert opened(leaf, at).distance(there) == pytest.approx(0.0, abs=1e-7)
            assert opened(leaf, min(at + 1e-5, leaf.turn)).intersects(there)


def test_a_corner_is_met_at_the_angle_of_its_sight_line() -> None:
    """Closed form: a thin leaf from the origin meets the corner of a box at the angle under which it sees it."""
    luck = Random(5)
    for _ in range(200):
        x, y = luck.uniform(0.1, 0.9), luck.uniform(0.05, 0.9)
        leaf = Turn((0, 1.0), (1, 1.0), (0.0, 0.0), ((0.0, 2.0), (0.0, 0.0)), (0.0, 1.0), pi / 2.0, pi / 2.0)
        box = Block((x - 0.05, y, 0.0), (x, y + 0.05, 1.0))
        corner = (x - TOUCH, y + TOUCH)
        assert leaf.meets(box) == pytest.approx(atan2(corner[1], corner[0]), abs=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_meeting_just_where_there_is_a_gap(seed: int) -> None:
    blocks = [body.blocks[0] for body in layout(seed, 25)]
    for first, one in enumerate(blocks):
        for other in blocks[:first]:
            assert not (are_in(one, other) and gap([one], [other]) > 0.0)
            deep = min(min(one.high[axis], other.high[axis]) - max(one.low[axis], other.low[axis]) for axis in range(3))
            assert are_in(one, other) == (deep > TOUCH)
            assert (gap([one], [other]) > 0.0) == (deep < 0.0)
