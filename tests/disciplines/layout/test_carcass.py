"""A cabinet as its boards: what they fill by hand arithmetic, which way they look, and when a box stays a box."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.carcass import GAP, boards_of
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.solids import Cabinet, solids
from boxwright.drawing.solid import Solid, upright
from boxwright.model.place import Place, Surfaces
from boxwright.render.shape import shape_of
from boxwright.units import exactly
from tests.render.solid import model, shapes

ROOM = Surfaces(
    front=0.0, rear=4.0, left=-1.0, right=1.0, floor=0.0, ceiling=2.0, studs_front=0.0, studs_rear=4.0,
    studs_left=-1.0, studs_right=1.0, deck=0.0, bows=2.0,
)  # fmt: skip
NOWHERE = Place(exactly(0.0), exactly(0.0), exactly(0.0), (0.0, 0.0, 0.0))
LEFT = Block((1.0, -1.0, 0.0), (1.8, -0.6, 0.6))
"""0.8 m along the left wall, 0.4 deep, 0.6 high: its back stands at the wall."""
PLAIN = Fitted("parts[a]", "a", "", NOWHERE, True, ply=0.02)
SHELL = 0.8 * 0.4 * 0.6 - (0.8 - 0.04) * 0.4 * (0.6 - 0.04)
"""Two sides, bottom and top of boards of 20 mm, open before and behind, by hand (m3)."""


def litres(one: Fitted, block: Block = LEFT) -> float:
    found = boards_of(one, block, ROOM)
    assert found is not None
    return shape_of(Solid("parts[a]", "a", "thing", tuple(upright(*board) for board in found.blocks))).litres


def test_the_shell_alone_is_two_sides_a_top_and_a_bottom() -> None:
    assert litres(PLAIN) == pytest.approx(SHELL * 1000.0, rel=1e-6)


def test_a_shelf_and_a_back_add_what_lies_between_the_boards() -> None:
    shelf, back = (0.8 - 0.04) * 0.4 * 0.02, (0.8 - 0.04) * 0.01 * (0.6 - 0.04)
    assert litres(replace(PLAIN, shelves=1)) == pytest.approx((SHELL + shelf) * 1000.0, rel=1e-6)
    assert litres(replace(PLAIN, back=0.01)) == pytest.approx((SHELL + back) * 1000.0, rel=1e-6)


def test_doors_lie_before_the_edges_and_leave_a_gap() -> None:
    shallower = 0.8 * 0.38 * 0.6 - (0.8 - 0.04) * 0.38 * (0.6 - 0.04)
    doors = 2.0 * (0.4 - GAP) * (0.6 - GAP) * 0.02
    assert litres(replace(PLAIN, doors=2)) == pytest.approx((shallower + doors) * 1000.0, rel=1e-6)


def test_drawers_stand_from_the_top_and_the_door_under_them() -> None:
    found = boards_of(replace(PLAIN, drawers=(0.1, 0.2), doors=1), LEFT, ROOM)
    assert found is not None
    fronts = [one for one in found.blocks if one.low[1] == pytest.approx(-0.62)]
    spans = [(round(one.low[2], 4), round(one.high[2], 4)) for one in fronts]
    assert spans == [(0.5015, 0.5985), (0.3015, 0.4985), (0.0015, 0.2985)]
    assert "drawers drawn as their fronts only" in found.taken and "no back is written" in found.taken


def test_shelves_share_what_is_free_under_the_drawers_evenly() -> None:
    found = boards_of(replace(PLAIN, drawers=(0.2,), shelves=2), LEFT, ROOM)
    assert found is not None
    levels = sorted(round(one.low[2], 4) for one in found.blocks if one.size[2] == pytest.approx(0.02))
    assert levels == [0.0, 0.1333, 0.2667, 0.58]  # (0.4 - 0.02 - 2 x 0.02) / 3 = 0.1133 between them


@pytest.mark.parametrize(
    ("block", "axis", "face"),
    [
        (LEFT, 1, -0.6),
        (Block((1.0, 0.6, 0.0), (1.8, 1.0, 0.6)), 1, 0.6),
        (Block((0.0, -0.3, 0.0), (0.4, 0.3, 0.6)), 0, 0.4),
        (Block((3.6, -0.3, 0.0), (4.0, 0.3, 0.6)), 0, 3.6),
    ],
)
def test_the_door_is_in_the_face_that_looks_away_from_the_wall(block: Block, axis: int, face: float) -> None:
    found = boards_of(replace(PLAIN, doors=1, back=0.01), block, ROOM)
    assert found is not None
    door, back = found.blocks[-1], found.blocks[4]
    assert any(one[axis] == pytest.approx(face) for one in door)
    assert all(one[axis] != pytest.approx(face) for one in back) and back.size[axis] == pytest.approx(0.01)
    for one in found.blocks:
        assert all(one.low[number] >= block.low[number] - 1e-9 for number in range(3))
        assert all(one.high[number] <= block.high[number] + 1e-9 for number in range(3))


def test_a_chest_with_a_lid_is_shut_in_front() -> None:
    front = (0.8 - 0.04) * 0.02 * (0.6 - 0.04)
    assert litres(replace(PLAIN, has_lid=True)) == pytest.approx((SHELL + front) * 1000.0, rel=1e-6)


@pytest.mark.parametrize(("thick", "is_built"), [(0.0, False), (0.299, True), (0.301, False), (inf, False)])
def test_boards_that_nobody_wrote_or_that_fill_it_are_not_drawn(thick: float, is_built: bool) -> None:
    assert (boards_of(replace(PLAIN, ply=thick), LEFT, ROOM) is not None) == is_built


@pytest.mark.parametrize(("deep", "is_built"), [(0.069, False), (0.071, True)])
def test_boards_need_room_for_back_and_front(deep: float, is_built: bool) -> None:
    block = Block(LEFT.low, (1.8, -1.0 + deep, 0.6))
    assert (boards_of(replace(PLAIN, back=0.03, doors=1), block, ROOM) is not None) == is_built


def test_the_cabinets_of_a_demo_rig_are_hollow_and_weigh_what_their_boards_do() -> None:
    found = {one.solid.of: one for one in shapes("whimbrel")}
    cabinet = found["parts[front-cabinet]"]
    low_x, low_y, low_z, high_x, high_y, high_z = cabinet.body.bounding_box()
    whole = (high_x - low_x) * (high_y - low_y) * (high_z - low_z) * 1000.0
    assert cabinet.litres < 0.15 * whole
    assert cabinet.kg is not None and cabinet.solid.kg is not None
    assert cabinet.kg[1] <= cabinet.solid.kg.best <= cabinet.kg[2]  # the stock as drawn, and what is written
    shelves = {one.of for one in model("dunlin").solids if one.of.startswith("parts[shelf") and len(one.pieces) == 5}
    assert shelves == {"parts[shelf-left]", "parts[shelf-right]"}


def test_a_thing_of_which_one_box_is_too_thin_for_boards_stays_its_boxes() -> None:
    thin = Block((2.0, -1.0, 0.0), (2.8, -0.6, 0.03))
    drawn: list[Solid] = []
    for blocks in ((LEFT,), (LEFT, thin)):
        whole = Body("parts[a]", "a", blocks, (0.0, 0.0, 0.0), True, "yes", "")
        drawn += solids((whole,), {}, {"parts[a]": Cabinet(PLAIN, (600.0, 400.0, 750.0))}, ROOM)
    assert [len(one.pieces) for one in drawn] == [4, 2]
    assert [one.density is None for one in drawn] == [False, True]
