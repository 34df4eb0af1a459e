"""What people step on, climb on and reach over, a twentieth under and over each measure, in rooms reckoned by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.bodies import Block, Body, body_of
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.ways import is_exit, ways_out
from boxwright.rig.compose import read_rig
from tests.disciplines.layout.small_rigs import rig_of, thing, told
from tests.disciplines.layout.test_people import fits
from tests.disciplines.layout.test_ways import BED, DOOR, ROOM, box, place

LOW = Closed("openings[low]", "low", "left", place((2.5, -1.05, 0.9), (3.3, -1.0, 1.4)))
"""A window in the left wall behind the bed, its sill 0.9 over the floor."""


def found(opening: Closed, *bodies: object) -> list[tuple[float, bool]]:
    """Return how wide each way from the bed to an opening is, and whether it climbs over something."""
    ways = ways_out(bodies, (BED,), (opening,), ROOM)  # type: ignore[arg-type]
    return [(round(one.width.best, 3), bool(one.over)) for one in ways]


@pytest.mark.parametrize(("over", "wide"), [(0.475, 0.0), (0.525, 0.8)])
def test_half_a_metre_over_the_mattress_is_enough_to_roll_out(over: float, wide: float) -> None:
    """The mattress is 0.6 high: a cupboard over all of the bed."""
    cupboard = box("cupboard", (0.0, -1.0, 0.6 + over), (1.9, 0.0, 2.0))
    assert found(DOOR, cupboard)[0] == (wide, False)


@pytest.mark.parametrize(("high", "ways"), [(0.57, [(0.0, False), (0.8, True)]), (0.63, [(0.0, False)])])
def test_a_bench_across_the_room_is_climbed_up_to_0_6(high: float, ways: list[tuple[float, bool]]) -> None:
    assert found(DOOR, box("bench", (2.2, -1.0, 0.0), (2.6, 1.0, high))) == ways


@pytest.mark.parametrize(
    ("low", "high", "kind", "ways"),
    [
        ((2.9, 0.6), 0.57, "", [(0.0, False), (0.8, True)]),
        ((2.9, 0.9), 0.57, "", [(0.0, False), (0.8, True)]),  # as thin as a box for pipes along the wall
        ((2.9, -1.0), 0.57, "", [(0.0, False), (0.8, True)]),
        ((2.9, 0.6), 0.63, "", [(0.0, False)]),
        ((2.9, 0.6), 0.57, "cargo", [(0.0, False)]),  # one trips over it in the dark
        ((2.9, 0.6), 0.19, "cargo", [(0.8, True)]),
        ((3.4, 0.6), 0.57, "", [(0.4, False), (0.8, True)]),
        ((3.5, 0.6), 0.57, "", [(0.5, False)]),
    ],
)
def test_a_bench_right_before_a_door_is_climbed_up_to_0_6(
    low: tuple[float, float], high: float, kind: str, ways: list[tuple[float, bool]]
) -> None:
    """From x to 3.9 and from y to the wall of the door, which begins at the floor, from 3 to 3.8."""
    for sign in (1.0, -1.0):
        door = replace(DOOR, wall="right" if sign > 0.0 else "left", place=place((3.0, sign, 0.0), (3.8, sign, 1.8)))
        sides = sorted((sign * low[1], sign))
        bench = box("bench", (low[0], sides[0], 0.0), (3.9, sides[1], high), kind)
        assert found(door, bench) == [(pytest.approx(wide, abs=1e-3), over) for wide, over in ways]


def test_nobody_climbs_over_what_gets_hot() -> None:
    bench = box("bench", (2.9, 0.6, 0.0), (3.9, 1.0, 0.5))
    assert [over for _, over in found(DOOR, bench)] == [False, True]
    assert found(DOOR, replace(bench, is_hot=True)) == [(0.0, False)]


@pytest.mark.parametrize(
    ("more", "is_hot"),
    [("heater: {of: diesel}", True), ("burns: propane", True), ("burns: nothing", False), ("", False)],
)
def test_a_heater_and_a_flame_get_hot(more: str, is_hot: bool) -> None:
    text = rig_of(parts=thing("locker", 200, "right", 0, "700 x 300 x 500", more or "stage: all"))
    rig = read_rig(text).rig
    (one,) = [each for each in rig.layout.fitted if each.name == "locker"]
    assert body_of(one, "yes", "travel").is_hot is is_hot


def test_a_door_is_left_over_a_bench_by_what_is_free_between_the_two() -> None:
    """The bench is 0.5 high, the door 1.8: 1.3 are left, and under what hangs there, or over what lies there, less."""
    bench = box("bench", (2.9, 0.6, 0.0), (3.9, 1.0, 0.5))

    def ways(*more: Body, opening: Closed = DOOR) -> list[tuple[float, float]]:
        every = ways_out((bench, *more), (BED,), (opening,), ROOM)
        return [(round(one.width.best, 3), round(one.height.best, 3)) for one in every]

    assert ways() == [(0.0, 0.0), (0.8, 1.3)]
    # it is 1.3 to the top, so that one stoops under what is 1.2 over the bench
    assert ways(box("shelf", (2.9, 0.6, 1.71), (3.9, 1.0, 2.0))) == [(0.0, 0.0), (0.8, 1.2)]
    assert ways(box("shelf", (2.9, 0.6, 1.69), (3.9, 1.0, 2.0))) == [(0.0, 0.0)]
    assert ways(box("crate", (2.9, 0.6, 0.5), (3.9, 1.0, 0.6), "cargo")) == [(0.0, 0.0)]
    low = replace(DOOR, place=place((3.0, 1.0, 0.0), (3.8, 1.05, 0.9)))
    assert ways(opening=low) == [(0.0, 0.0), (0.8, 0.4)]
    # it ends 0.16 before the door, and one stands down between the two
    off_it = replace(bench, blocks=(Block((2.9, 0.6, 0.0), (3.9, 0.84, 0.5)),))
    assert [round(one.height.best, 3) for one in ways_out((off_it,), (BED,), (DOOR,), ROOM)][-1] == 1.8


@pytest.mark.parametrize(
    ("deep", "ways"),
    [
        (0.1425, [(0.8, False)]),  # leaned across
        (0.1575, [(0.0, False), (0.8, True)]),  # climbed over
        (0.5795, [(0.0, False), (0.8, True)]),
        (0.6405, [(0.0, False)]),
    ],
)
def test_below_a_window_0_15_is_leaned_across_and_0_61_climbed_over(
    deep: float, ways: list[tuple[float, bool]]
) -> None:
    """A board 0.85 high, along the wall before the window and beyond it on either side."""
    assert found(LOW, box("board", (2.2, -1.0, 0.0), (3.6, -1.0 + deep, 0.85))) == ways


@pytest.mark.parametrize(("side", "is_one"), [(0.285, False), (0.315, True)])
def test_nobody_looks_at_an_opening_under_0_3(side: float, is_one: bool) -> None:
    for wide, high in ((side, 1.0), (1.0, side)):
        one = Closed("openings[o]", "o", "left", place((1.0, -1.05, 0.9), (1.0 + wide, -1.0, 0.9 + high)))
        assert is_exit(one) is is_one


@pytest.mark.parametrize(("gap", "ways"), [(0.4275, [(0.427, False), (0.8, True)]), (0.4725, [(0.472, False)])])
def test_beside_a_bench_0_45_lets_one_through_so_that_nobody_climbs(gap: float, ways: list[tuple[float, bool]]) -> None:
    said = found(DOOR, box("bench", (2.2, -1.0, 0.0), (2.6, 1.0 - gap, 0.5)))
    assert [climbs for _, climbs in said] == [climbs for _, climbs in ways]
    assert [wide for wide, _ in said] == pytest.approx([wide for wide, _ in ways], abs=1e-3)


@pytest.mark.parametrize(
    ("begins", "ends", "is_step"),
    [(0.475, 0.9, True), (0.525, 0.9, False), (-0.2, 0.042, True), (-0.2, 0.038, False)],
)
def test_a_step_begins_within_half_a_metre_of_the_door_and_stands_out_by_a_foot_on_edge(
    begins: float, ends: float, is_step: bool
) -> None:
    """Counted from the middle of the wall, 1.025 to the right; without a step one rises 0.45, with one 0.25."""
    step = box("step", (3.0, 1.025 + begins, -0.28), (3.6, 1.025 + ends, -0.2))
    assert fits(step)["step"].has.best == pytest.approx(0.25 if is_step else 0.45)


@pytest.mark.parametrize(("left", "is_narrow"), [(570, True), (630, False)])
def test_between_two_ways_in_0_6_is_wanted_at_work(left: int, is_narrow: bool) -> None:
    """A screen between the door and the ramp of a room 2000 wide, with room enough before and behind it."""
    said = told(rig_of(thing("screen", 3330, "left", 0, f"20 x {2000 - left} x 1900")), "work")
    assert ("aisle-narrow" in {code for _, code, _ in said}) is is_narrow
