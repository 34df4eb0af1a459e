"""Long things pushed in aslant: each push and turn is followed in small steps with another library of geometry."""

from __future__ import annotations

from math import degrees, pi
from random import Random
from typing import Any

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.bringing_aslant import Push, View, place_of, pushes, told_as_boxes, view_of
from boxwright.disciplines.layout.bringing_ways import way_in
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.changeover_ways import THROUGH
from tests.lanes import every_so_many

shapely = pytest.importorskip("shapely", reason="the oracle of ways is not installed")
affinity = pytest.importorskip("shapely.affinity", reason="the oracle of ways is not installed")
Polygon = Any

ROOM = Block((0.0, -1.0, 0.0), (4.0, 1.0, 2.0))
DOOR = Gate("door", "door", "right", (0.5, 1.0, 0.0), (1.2, 1.0, 1.8), "inside", True)
STEPS = 60
TOUCHED = 2e-3
"""As far (m) as two things may be in each other and only touch, twice."""


def viewed(seed: int) -> tuple[View, float, float]:
    luck = Random(seed)
    solid = []
    for _ in range(luck.randint(0, 4)):
        x, y = luck.uniform(0.0, 3.6), luck.uniform(0.0, 1.8)
        solid.append(((x, x + luck.uniform(0.05, 0.4)), (y, min(y + luck.uniform(0.05, 0.3), 2.0))))
    return View(DOOR, (0.5, 1.2), (0.0, 4.0), 2.0, tuple(solid)), luck.uniform(0.8, 2.3), luck.uniform(0.01, 0.5)


def held(push: Push, at: tuple[float, float], angle: float) -> Polygon:
    lying = shapely.box(-push.long / 2.0, -push.wide / 2.0, push.long / 2.0, push.wide / 2.0)
    lean = angle if push.way > 0.0 else pi - angle
    return affinity.translate(affinity.rotate(lying, degrees(lean), origin=(0.0, 0.0)), *at)


def walls(view: View) -> list[Polygon]:
    (left, right), (low, high) = view.hole, view.ends
    return [
        shapely.box(-9.0, -THROUGH, left, 0.0),
        shapely.box(right, -THROUGH, 9.0, 0.0),
        shapely.box(low - 1.0, 0.0, low, view.depth + 1.0),
        shapely.box(high, 0.0, high + 1.0, view.depth + 1.0),
        shapely.box(-9.0, view.depth, 9.0, view.depth + 1.0),
    ]


def deep(one: Polygon, other: Polygon) -> bool:
    """Return whether two outlines are in each other by more than they touch."""
    return bool(
        one.buffer(-TOUCHED / 2.0, join_style="mitre").intersects(other.buffer(-TOUCHED / 2.0, join_style="mitre"))
    )


@pytest.mark.parametrize("seed", every_so_many(range(60), 5))
def test_a_push_and_its_turn_meet_nothing_in_any_of_many_steps(seed: int) -> None:
    view, long, wide = viewed(seed)
    solid = [shapely.box(a, c, b, d) for (a, b), (c, d) in view.solid] + walls(view)
    for is_along in (True, False):
        for push in list(pushes(view, long, wide, is_along, lambda spot: True))[:3]:
            start, end = push.outside, push.spot
            assert held(push, start, push.angle).bounds[3] < 0.0  # it begins outside
            for step in range(STEPS + 1):
                part = step / STEPS
                at = start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part
                assert not any(deep(held(push, at, push.angle), one) for one in solid)
                angle = push.angle + (push.level - push.angle) * part
                assert not any(deep(held(push, end, angle), one) for one in solid)
            x0, _, x1, _ = held(push, end, push.level).bounds
            assert x1 - x0 == pytest.approx(long if is_along else wide)


@pytest.mark.parametrize("seed", every_so_many(range(60), 5))
def test_the_boxes_that_tell_what_is_in_the_way_hold_all_of_it_that_is_in_the_room(seed: int) -> None:
    view, long, wide = viewed(seed)
    inside = shapely.box(-9.0, 0.0, 9.0, 9.0)
    for push in list(pushes(view, long, wide, True, lambda spot: True))[:3]:
        boxes = told_as_boxes(view, push, ROOM, 0.2, 0.9)
        assert {(one.low[2], one.high[2]) for one in boxes} == {(0.2, 0.9)}
        # Seen from the right wall, inwards is to the left: from y = 1 down.
        told = shapely.union_all([shapely.box(a, 1.0 - d, b, 1.0 - c) for (a, c, _), (b, d, _) in boxes])
        turned = [held(push, push.spot, push.angle + (push.level - push.angle) * part / 20) for part in range(21)]
        pushed = shapely.union_all([held(push, push.outside, push.angle), turned[0]]).convex_hull
        swept = shapely.union_all([pushed, *turned]).intersection(inside)
        assert told.buffer(TOUCHED).covers(swept)


def test_pushes_are_found_in_many_rooms_and_not_in_all() -> None:
    found = [bool(list(pushes(*viewed(seed), True, lambda spot: True))) for seed in range(60)]
    assert 10 < sum(found) < 55


def test_a_mirrored_room_has_the_same_pushes() -> None:
    for seed in range(20):
        view, long, wide = viewed(seed)
        flat = View(
            DOOR,
            (4.0 - view.hole[1], 4.0 - view.hole[0]),
            view.ends,
            view.depth,
            tuple(((4.0 - b, 4.0 - a), span) for (a, b), span in view.solid),
        )
        here = list(pushes(view, long, wide, True, lambda spot: True))
        there = list(pushes(flat, long, wide, True, lambda spot: True))
        assert len(here) == len(there)
        assert sorted((round(one.angle, 9), round(4.0 - one.spot[0], 9)) for one in here) == sorted(
            (round(one.angle, 9), round(one.spot[0], 9)) for one in there
        )


@pytest.mark.parametrize("wall", ["left", "right", "front", "rear"])
def test_a_view_is_of_the_wall_it_looks_from(wall: str) -> None:
    """A box 0.3 from the wall and 0.1 to 0.4 along it is seen there, whichever wall it is."""
    low, high = {
        "left": ((0.1, -0.7, 0.0), (0.4, -0.5, 1.0)),
        "right": ((0.1, 0.5, 0.0), (0.4, 0.7, 1.0)),
        "front": ((0.3, 0.1, 0.0), (0.5, 0.4, 1.0)),
        "rear": ((3.5, 0.1, 0.0), (3.7, 0.4, 1.0)),
    }[wall]
    gate = Gate("g", "g", wall, (0.0, 0.0, 0.0), (0.0, 0.0, 1.0), "inside", True)  # type: ignore[arg-type]
    view = view_of(gate, ROOM, [Block(low, high)], 0.0, 0.5)
    (along, inwards) = view.solid[0]
    assert along == (0.1, 0.4)
    assert inwards == pytest.approx((0.3, 0.5))
    place = place_of(view, ROOM, (0.1, 0.3), 0.7)
    axis = 0 if wall in {"front", "rear"} else 1
    assert place[1 - axis] == 0.1 and place[2] == 0.7
    assert place[axis] == pytest.approx(low[axis] if wall in {"left", "front"} else high[axis])
    assert view_of(gate, ROOM, [Block(low, high)], 1.0, 1.5).solid == ()  # lower than what is carried


def test_a_board_longer_than_the_room_is_wide_comes_in_by_a_door_at_its_side() -> None:
    """2.4 m by 0.02 through a door of 0.7 into a room 2.0 wide: at 55 deg to the wall it is 1.98 deep."""
    board = (Block((1.0, -0.98, 0.0), (3.4, -0.96, 1.2)),)
    lane = way_in(board, (DOOR,), (), ROOM)
    assert lane is not None and lane.turned == "aslant"
    assert lane.path[-1][1] > 1.0 and lane.path[0] == pytest.approx((2.2, -0.97, 0.6))
    # a column in the middle of the room is in the way of every push, and one in the far corner of none
    pole = Block((1.6, -1.0, 0.0), (1.7, 1.0, 2.0))
    assert way_in((Block((1.8, -0.98, 0.0), (3.98, -0.96, 1.2)),), (DOOR,), (pole,), ROOM) is None
    assert way_in(board, (DOOR,), (Block((3.9, 0.9, 0.0), (4.0, 1.0, 2.0)),), ROOM) is not None


def test_what_is_too_wide_for_the_hole_held_aslant_does_not_come_in_so() -> None:
    """At the steepest angle tried, 85 deg, a door of 0.7 in a wall of 0.15 lets 0.684 through: 0.7 sin - 0.15 cos."""
    view = View(DOOR, (0.5, 1.2), (-9.0, 9.0), 9.0, ())
    assert list(pushes(view, 3.0, 0.683, True, lambda spot: True))
    assert not list(pushes(view, 3.0, 0.686, True, lambda spot: True))
