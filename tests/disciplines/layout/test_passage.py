"""The widest way among upright boxes, against another library's unions of grown boxes, and by hand."""

from __future__ import annotations

from itertools import pairwise
from math import hypot
from random import Random

import pytest

from boxwright.disciplines.layout.passage import (
    FINENESS,
    Point,
    Rect,
    beside_both,
    corridor,
    gap_at,
    less,
    meets,
    reach,
    shortest,
    widest,
    within,
)

shapely = pytest.importorskip("shapely", reason="the oracle of ways is not installed")

SIDE = 4.0
START: Rect = (0.0, 0.0, 0.4, 0.4)
GOAL: Rect = (3.6, 3.6, 4.0, 4.0)
WALLS: tuple[Rect, ...] = ((-3, -3, 7, 0), (-3, 4, 7, 7), (-3, -3, 0, 7), (4, -3, 7, 7))


def layout(seed: int) -> tuple[Rect, ...]:
    """Return boxes strewn over a room four metres square."""
    random = Random(seed)
    boxes = []
    for _ in range(random.randrange(3, 12)):
        x, y = random.uniform(0.0, SIDE), random.uniform(0.0, SIDE)
        boxes.append((x, y, x + random.uniform(0.02, 1.5), y + random.uniform(0.02, 1.5)))
    return tuple(boxes)


def gets_there(obstacles: tuple[Rect, ...], width: float) -> bool:
    """Return what the other library says: start and goal touch one piece of what the grown boxes leave free."""
    by = width / 2.0
    grown = shapely.union_all([shapely.box(a - by, b - by, c + by, d + by) for a, b, c, d in obstacles])
    free = shapely.box(-1, -1, 5, 5).difference(grown)
    pieces = list(free.geoms) if hasattr(free, "geoms") else [free]
    start, goal = shapely.box(*START), shapely.box(*GOAL)
    return any(
        piece.intersection(start).area > 1e-12 and piece.intersection(goal).area > 1e-12
        for piece in pieces
        if not piece.is_empty
    )


@pytest.mark.parametrize("seed", range(200))
def test_the_widest_way_is_the_one_another_library_lets_through(seed: int) -> None:
    obstacles = (*WALLS, *layout(seed))
    width = widest(obstacles, START, (GOAL,), 2.0)[0]
    if width > 0.01:
        assert gets_there(obstacles, width - 1e-5)
    if width < 2.0 - FINENESS:
        assert not gets_there(obstacles, width + FINENESS + 1e-5)


@pytest.mark.parametrize("seed", range(200))
def test_what_is_beside_a_way_leaves_it_free_and_one_thing_that_opens_one_is_beside_both_ends(seed: int) -> None:
    boxes, width = layout(seed), 0.3
    fits = reach((*WALLS, *boxes), START, (GOAL,), width)[0]
    way = corridor((*WALLS, *boxes), START, GOAL, width)
    assert bool(way) == fits
    assert not meets(way, (*WALLS, *boxes), width)
    for (x0, y0, x1, y1), (a0, b0, a1, b1) in pairwise(way):  # each stretch goes on from the one before
        assert min(x1, a1) >= max(x0, a0) and min(y1, b1) >= max(y0, b0)
    bare = corridor(WALLS, START, GOAL, width)
    shut = [box for box in boxes if not reach((*WALLS, box), START, (GOAL,), width)[0]]
    assert all(meets(bare, (box,), width) for box in shut)
    things = [(str(number), box) for number, box in enumerate(boxes)]
    opened = {
        of
        for of, _ in things
        if not fits and reach((*WALLS, *(box for name, box in things if name != of)), START, (GOAL,), width)[0]
    }
    assert opened <= set(beside_both(things, WALLS, START, GOAL, width))


def test_of_what_is_strewn_few_are_beside_both_ends() -> None:
    """What stands behind others opens nothing as it alone goes, so that most are not looked at."""
    found = [(layout(seed), beside_both([(str(i), b) for i, b in enumerate(layout(seed))], WALLS, START, GOAL, 0.3))
             for seed in range(200) if not reach((*WALLS, *layout(seed)), START, (GOAL,), 0.3)[0]]  # fmt: skip
    assert len(found) > 50
    assert sum(len(few) for _, few in found) < 0.5 * sum(len(boxes) for boxes, _ in found)


def test_the_strewn_rooms_are_of_every_kind() -> None:
    widths = [widest((*WALLS, *layout(seed)), START, (GOAL,), 2.0)[0] for seed in range(200)]
    assert sum(one == 0.0 for one in widths) >= 20
    assert sum(0.05 < one < 0.6 for one in widths) >= 20


@pytest.mark.parametrize("seed", range(30))
def test_a_mirrored_room_has_ways_as_wide(seed: int) -> None:
    obstacles = (*WALLS, *layout(seed))
    turned = tuple((b, a, d, c) for a, b, c, d in obstacles)
    assert widest(turned, START, (GOAL,), 2.0) == pytest.approx(widest(obstacles, START, (GOAL,), 2.0), abs=FINENESS)


@pytest.mark.parametrize("seed", range(30))
def test_what_is_taken_away_never_makes_a_way_narrower(seed: int) -> None:
    boxes = layout(seed)
    whole = widest((*WALLS, *boxes), START, (GOAL,), 2.0)[0]
    for gone in range(len(boxes)):
        left = (*WALLS, *boxes[:gone], *boxes[gone + 1 :])
        assert widest(left, START, (GOAL,), 2.0)[0] >= whole - FINENESS


def test_by_hand_a_corridor_is_as_wide_as_its_gap_and_never_wider() -> None:
    # two boxes leave 0.610 m between them across the room
    obstacles = (*WALLS, (1.5, 0.0, 2.0, 1.7), (1.5, 2.31, 2.0, 4.0))
    width = widest(obstacles, START, (GOAL,), 2.0)[0]
    assert 0.61 - FINENESS <= width <= 0.61 + 1e-6
    assert reach(obstacles, START, (GOAL,), 0.61) == (True,)
    assert reach(obstacles, START, (GOAL,), 0.611) == (False,)


def test_several_goals_are_answered_each_for_itself() -> None:
    obstacles = (*WALLS, (1.5, 0.0, 2.0, 1.7), (1.5, 2.31, 2.0, 4.0))
    near: Rect = (0.0, 3.6, 0.4, 4.0)  # its farthest corner is 0.4 from both walls, so 0.8 wide
    closed: Rect = (1.6, 0.2, 1.7, 0.3)
    assert widest(obstacles, START, (near, GOAL, closed), 1.4) == pytest.approx((0.8, 0.61, 0.0), abs=FINENESS)


@pytest.mark.parametrize("seed", range(40))
def test_the_way_drawn_touches_nothing_and_is_no_shorter_than_straight(seed: int) -> None:
    obstacles = (*WALLS, *layout(seed))
    width = widest(obstacles, START, (GOAL,), 0.4)[0]
    way = shortest(obstacles, START, GOAL, width - 2.0 * FINENESS) if width > 0.01 else ()
    assert bool(way) == (width > 0.01)
    if not way:
        return
    by = width / 2.0 - FINENESS
    grown = [shapely.box(a - by, b - by, c + by, d + by) for a, b, c, d in obstacles]
    assert all(shapely.LineString(way).intersection(one.buffer(-1e-6)).length < 1e-6 for one in grown)
    assert is_at(way[0], START) and is_at(way[-1], GOAL)
    long = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(way))
    assert long >= shapely.box(*START).distance(shapely.box(*GOAL)) - 1e-9


def is_at(spot: Point, rect: Rect) -> bool:
    """Return whether a spot lies on a rectangle."""
    return rect[0] <= spot[0] <= rect[2] and rect[1] <= spot[1] <= rect[3]


@pytest.mark.parametrize("seed", range(30))
def test_what_is_left_and_what_is_within_make_up_the_whole(seed: int) -> None:
    boxes = layout(seed)
    for first, second in pairwise(boxes):
        pieces, common = less(first, second), within(first, second)
        areas = [(c - a) * (d - b) for a, b, c, d in (*pieces, *((common,) if common else ()))]
        assert sum(areas) == pytest.approx((first[2] - first[0]) * (first[3] - first[1]))
        assert all(within(piece, second) is None for piece in pieces)


def test_by_hand_the_gap_at_a_spot_counts_what_comes_near_beside_the_line() -> None:
    boxes = ((0.0, 0.0, 1.0, 1.0), (2.0, 0.0, 3.0, 1.0), (1.2, 1.2, 1.4, 1.5))
    assert gap_at(boxes, (1.6, 0.5), 0, 0.1) == (1.0, 2.0)
    assert gap_at(boxes, (1.6, 0.9), 0, 0.35) == (1.4, 2.0)
    assert gap_at(boxes, (1.6, 1.1), 0, 0.05) == (float("-inf"), float("inf"))
    assert gap_at(boxes, (1.6, 0.5), 1, 0.1) == (float("-inf"), float("inf"))
    assert gap_at(boxes, (1.3, 0.5), 1, 0.15) == (float("-inf"), 1.2)
    assert gap_at(boxes, (0.5, 0.5), 0, 0.1) is None
