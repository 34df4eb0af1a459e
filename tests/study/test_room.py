"""Where a part is free to go: what touches does not block, what is within a millimetre of it either."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.weight.geometry import loads_of, measures_of
from boxwright.model.place import Surfaces
from boxwright.study.lever import Lever, break_even, pull_of
from boxwright.study.room import TOUCH, Room, is_inside
from tests.study.demo import POUND
from tests.study.test_remedy import REAR_HEAVY, asked

BOX = Surfaces(front=0.0, rear=4.0, left=-1.0, right=1.0, deck=0.0, floor=0.02, ceiling=1.9, bows=2.0,
               studs_left=-1.05, studs_right=1.05, studs_front=0.0, studs_rear=4.0)  # fmt: skip


@pytest.mark.parametrize(
    ("blocked", "forward", "rearward"),
    [
        (((0.5, 1.0),), 2.0, 0.5),
        (((-1.0, -0.5),), 0.5, 3.0),
        (((-0.001, 0.4),), 2.0, 0.0),  # a neighbour that touches on the rear side stops it there and then
        (((-0.4, 0.001),), 0.0, 3.0),
        (((-0.4, -0.1), (0.2, 0.3), (0.7, 0.9)), 0.1, 0.2),
        ((), 2.0, 3.0),
    ],
)
def test_a_part_is_pushed_to_the_nearest_thing_in_its_way(
    blocked: tuple[tuple[float, float], ...], forward: float, rearward: float
) -> None:
    room = Room(-2.0, 3.0, blocked)
    assert (room.way(-1.0), room.way(1.0)) == pytest.approx((forward, rearward))


@pytest.mark.parametrize("axis", [0, 1, 2])
@pytest.mark.parametrize("end", [0, 1])
def test_a_box_is_inside_to_a_millimetre_on_every_side(axis: int, end: int) -> None:
    limits = [(BOX.front, BOX.rear), (BOX.left, BOX.right), (BOX.deck, BOX.bows)]

    def beyond(by: float) -> bool:
        box = [list(one) for one in limits]
        box[axis][end] += by if end else -by
        return is_inside(tuple((low, high) for low, high in box), BOX)  # type: ignore[arg-type]

    assert beyond(0.0) and beyond(TOUCH / 2.0)
    assert not beyond(TOUCH * 2.0) and not beyond(0.5)


def test_what_may_happen_and_not_the_best_guess_decides_how_far_a_load_must_fall() -> None:
    _, finding, slot = asked(REAR_HEAVY, "weight/tongue-lifts")
    assert slot.weight is not None
    gross = slot.weight.gross
    full = replace(gross, permitted_high=gross.band.best + 40.0 * POUND)
    slot = replace(slot, weight=replace(slot.weight, gross=full))
    limit = gross.band.best - 100.0 * POUND
    rule = replace(finding, code="towing/gross-over-plate", number=gross.band.best, limit=limit, unit="kg")
    pull = pull_of(rule, Lever("gross", False), slot)
    assert pull is not None
    assert pull.at_least == pytest.approx(140.0 * POUND, rel=1e-5)


def test_twin_tyres_share_what_their_wheel_must_lose() -> None:
    _, finding, slot = asked(REAR_HEAVY, "weight/tongue-lifts")
    assert slot.weight is not None and slot.box is not None
    wheel = slot.weight.axles_left[0]
    per_tyre = wheel.band.best / 2.0
    rule = replace(finding, code="towing/tyre-overloaded", number=per_tyre, limit=per_tyre - 10.0, unit="kg")
    pull = pull_of(rule, Lever("wheel", False, 0, "left"), slot)
    geometry = measures_of(slot.box, slot.ball_height).best
    assert pull is not None and geometry is not None
    assert pull.times == 2.0
    # Each of the two is 10 kg over, so the wheel must lose 20 (arithmetic by hand).
    assert pull.at_least == pytest.approx(20.0 + max(0.0, wheel.permitted_high - wheel.band.best), rel=1e-5)
    assert pull.per == loads_of(geometry).axles_left[0]


def test_what_nobody_weighed_crosses_the_limit_of_the_wheels_by_what_does_not_rest_on_the_ball() -> None:
    _, finding, slot = asked(REAR_HEAVY, "weight/tongue-lifts")
    assert slot.weight is not None
    masses = tuple(
        replace(mass, kg=replace(mass.kg, known=False)) if mass.of == "parts[bed]" else mass for mass in slot.masses
    )
    slot = replace(slot, masses=masses)
    wheels = slot.weight.gross.band.best - slot.weight.tongue.band.best
    rule = replace(finding, code="towing/wheels-over-axles", limit=wheels + 10.0, unit="kg")
    (even,) = break_even(rule, Lever("wheels", False), slot)
    # The bed's middle is at 55 in; of each pound there, (100 - 55) / 152 rests on the ball, by moments.
    assert even.kg == pytest.approx(10.0 / (1.0 - 45.0 / 152.0), rel=1e-6)
