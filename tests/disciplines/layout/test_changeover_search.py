"""The search for a change-over against one that looks at everything, and in rooms worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.changeover import IN, OPEN, OUT, OUTSIDE, Changed, Mover, Posed, Setting
from boxwright.disciplines.layout.changeover_lattice import lattice
from boxwright.disciplines.layout.changeover_leaving import leaving
from boxwright.disciplines.layout.changeover_numbers import SECONDS
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.layout.changeover_search import Move, _is_possible, _still_to_do, _toll, cheapest
from boxwright.disciplines.layout.changeover_told import Told, changed, told
from boxwright.disciplines.layout.changeover_ways import way
from boxwright.exchange import Vector
from tests.disciplines.layout.changing import (
    DOOR,
    bed_across,
    block,
    body,
    by_brute_force,
    closed,
    gate,
    is_sound,
    mirrored,
    random_setting,
    setting,
    thing,
)
from tests.lanes import every_so_many

ROOMS, ONE_IN = 100, 2
SEEDS = every_so_many(range(ROOMS), ONE_IN)
ALL = 100_000
"""So many ways that the search is never cut short."""


def searched(one: Setting) -> Changed:
    board = Board(one)
    return changed(board, board.state(is_goal=False), board.state(is_goal=True), ways=ALL)[0]


def plainly(one: Setting) -> tuple[float | None, bool]:
    """Return what the least change-over costs, None where there is none, and whether something is turned in it."""
    board = Board(one)
    found = cheapest(board, board.state(is_goal=False), board.state(is_goal=True), most_ways=ALL)
    assert found.moves is not None or found.is_exhausted
    return (found.cost if found.moves is not None else None), any(move.is_turned for move, _ in found.moves or ())


@pytest.mark.parametrize("seed", SEEDS)
def test_it_costs_what_a_search_through_everything_says(seed: int) -> None:
    one = random_setting(seed)
    cost, is_turned = plainly(one)
    wanted = by_brute_force(one)
    if is_turned:  # the other search turns nothing, so it can only find something dearer, or nothing
        assert wanted is None or (cost is not None and cost <= wanted)
    else:
        assert cost == wanted


def test_the_random_rooms_hold_both_answers() -> None:
    """Those of every day, so that all of them do."""
    answers = [by_brute_force(random_setting(seed)) for seed in range(0, ROOMS, ONE_IN)]
    assert sum(one is None for one in answers) >= 5
    assert sum(one is not None and one > 100.0 for one in answers) >= 5


@pytest.mark.parametrize("seed", SEEDS)
def test_nothing_overlaps_after_any_step(seed: int) -> None:
    one = random_setting(seed)
    board = Board(one)
    start = board.state(is_goal=False)
    found = cheapest(board, start, board.state(is_goal=True), most_ways=ALL)
    for move, state in found.moves or ():
        assert is_sound(one, state)
        assert sum(a != b for a, b in zip(start, state, strict=True)) == 1
        crosses = OUTSIDE in {one.movers[move.mover].poses[p].word for p in (start[move.mover], state[move.mover])}
        assert (move.gate >= 0) == crosses
        if crosses:
            assert one.movers[move.gate].poses[start[move.gate]].word == OPEN
        start = state


@pytest.mark.parametrize("seed", SEEDS)
def test_a_mirrored_room_is_changed_over_by_the_same_moves(seed: int) -> None:
    one = random_setting(seed)
    here, there = searched(one), searched(mirrored(one))
    assert (here.word, here.cost) == (there.word, there.cost)
    assert [(step.of, step.word, step.by) for step in here.steps] == [
        (step.of, step.word, step.by) for step in there.steps
    ]


@pytest.mark.parametrize("seed", SEEDS)
def test_the_way_back_costs_the_same(seed: int) -> None:
    both: Told = told(random_setting(seed), ends_at_night=False, ways=ALL)
    assert (both.there.word == "found") <= (both.back.word == "found")
    if both.there.word == "found":
        assert both.there.cost == both.back.cost


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_still_to_do_is_never_reckoned_dearer_than_it_is(seed: int) -> None:
    """From every state on a way that was found: what the search reckons with, and what the moves that are left cost."""
    one = random_setting(seed)
    board = Board(one)
    start, goal = board.state(is_goal=False), board.state(is_goal=True)
    found = cheapest(board, start, goal, most_ways=ALL)
    if found.moves is None:
        return
    toll = _toll(board, start, goal)
    states = [start, *(state for _, state in found.moves)]
    costs = [_paid(one, before, move, after) for before, (move, after) in zip(states, found.moves, strict=False)]
    for number, state in enumerate(states):
        assert _still_to_do(board, state, goal, toll) <= sum(costs[number:]) + 1e-9


def _paid(one: Setting, before: tuple[int, ...], move: Move, after: tuple[int, ...]) -> float:
    """Return what one move takes, by the seconds and hands that are written with the thing."""
    assert before != after
    mover = one.movers[move.mover]
    return (mover.seconds + (SECONDS["turn"] if move.is_turned else 0.0)) * mover.hands


def test_an_opening_that_must_be_opened_and_shut_is_reckoned_with_exactly_that() -> None:
    """By hand: 10 s to open, 40 s to carry, 10 s to shut; a mistake of one opening more or less shows here."""
    bag = thing("bag", block((1.0, 2.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    board = Board(setting(bag))
    start, goal = board.state(is_goal=False), board.state(is_goal=True)
    toll = _toll(board, start, goal)
    assert toll == {board.index["parts[bag]"]: 20.0}
    assert _still_to_do(board, start, goal, toll) == 60.0
    opened = tuple(1 if mover.kind == "gate" else p for mover, p in zip(board.movers, start, strict=True))
    assert _still_to_do(board, opened, goal, toll) == 50.0


def words(one: Changed) -> list[str]:
    return [f"{step.word} {step.name}" for step in one.steps]


def test_what_lies_on_a_thing_goes_first_and_comes_last() -> None:
    crate, lid = block((0.0, 1.0, 0.0), (1.0, 1.0, 1.0)), block((0.0, 1.0, 1.0), (1.0, 1.0, 0.5))
    both = told(setting(thing("a-crate", crate, goal=1), thing("lid", lid, goal=1)), ends_at_night=False)
    assert words(both.there) == ["open door", "carry out lid", "carry out a-crate", "shut door"]
    assert words(both.back) == ["open door", "carry in a-crate", "carry in lid", "shut door"]


def test_what_stands_in_the_way_is_taken_out_and_brought_back() -> None:
    behind = thing("behind", block((5.0, 1.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    before = thing("before", block((4.0, 0.0, 0.0), (1.0, 4.0, 1.0)))
    found = searched(setting(behind, before))
    assert words(found) == ["open door", "carry out before", "carry out behind", "carry in before", "shut door"]
    assert found.cost == 10.0 + 40.0 * 3 + 10.0
    # lifted over, it need not be moved
    assert words(searched(setting(replace(behind, lift=1.0), before))) == ["open door", "carry out behind", "shut door"]


def test_a_thing_that_fits_through_no_opening_is_said_to_be_stuck() -> None:
    found = searched(setting(thing("wide", block((3.0, 0.0, 0.0), (3.0, 3.0, 1.0)), goal=1)))
    assert found.word == "blocked"
    assert found.meets == (("wide", "the frame of every opening, being too large for each"),)


def test_a_long_thing_is_turned_and_that_costs() -> None:
    long = thing("pole", block((3.0, 0.0, 0.0), (3.0, 0.5, 0.5)), goal=1)
    found = searched(setting(long))
    assert [(step.word, step.is_turned) for step in found.steps] == [
        ("open", False), ("carry out", True), ("shut", False),
    ]  # fmt: skip
    assert found.cost == 10.0 + (40.0 + 30.0) + 10.0
    assert searched(setting(long, fixed=(body("post", block((0.0, 1.8, 0.0), (8.0, 0.4, 3.0))),))).word == "blocked"


def test_a_thing_is_turned_only_where_the_square_around_it_is_free() -> None:
    """The pole of 3 by 0.5 draws a circle of 3.04 across; crosswise it wants 3.0."""
    long = thing("pole", block((3.0, 0.0, 0.0), (3.0, 0.5, 0.5)), goal=1)
    for room, word in ((3.02, "blocked"), (3.05, "found")):
        wall = body("wall", block((2.0, room, 0.0), (6.0, 4.0 - room, 3.0)))
        assert searched(setting(long, fixed=(wall,))).word == word


def test_two_pairs_of_hands_cost_twice_as_much() -> None:
    bag = thing("bag", block((1.0, 2.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    assert searched(setting(bag)).cost == 10.0 + 40.0 + 10.0
    assert searched(setting(replace(bag, hands=2))).cost == 10.0 + 80.0 + 10.0


def test_of_two_openings_that_serve_the_cheaper_one_is_taken() -> None:
    bag = thing("bag", block((4.0, 1.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    ramp = gate("ramp", "rear", (8.0, 1.0, 0.0), (8.0, 3.0, 2.0), 30.0)
    found = searched(setting(bag, gates=(ramp, DOOR)))
    assert (found.cost, found.steps[0].name) == (60.0, "door")
    assert searched(setting(bag, gates=(ramp,))).cost == 100.0


def test_what_touches_is_free_and_what_is_in_is_not() -> None:
    """One obstacle from 2 to 3 both ways: its edges are free, the gap between them is not."""
    bounds, wall = Block((0.0, 0.0, 0.0), (5.0, 5.0, 1.0)), Block((2.0, 2.0, -1.0), (3.0, 3.0, 0.5))
    grid = lattice(bounds, [wall], [(0.0, 0.0, 0.0)], [0.0, 1.0])
    free = {
        (grid.xs[c // 2], grid.ys[r // 2]) for r in range(0, 8, 2) for c in range(0, 8, 2) if grid.is_free((0, r, c))
    }
    assert free == {(x, y) for x in (0.0, 2.0, 3.0, 5.0) for y in (0.0, 2.0, 3.0, 5.0)}
    assert not grid.is_free((0, 3, 3))
    assert grid.is_free((0, 3, 2)) and grid.is_free((0, 2, 3))  # along the edge itself
    assert grid.is_free((1, 3, 3))  # over it
    assert grid.climbs[0][3] >> 3 & 1 == 0  # but not up through it


def test_two_that_want_one_place_are_named_and_the_least_is_left_out() -> None:
    night = block((4.0, 0.0, 0.0), (2.0, 1.0, 1.0))
    bench = thing("bench", block((6.0, 2.0, 0.0), (2.0, 1.0, 1.0)), night, goal=1, may_leave=False)
    cheap = thing("bag", block((5.0, 0.0, 0.0), (1.0, 1.0, 1.0)))
    found = searched(setting(bench, cheap))
    assert found.word == "without"
    assert found.meets == (("bag", "bench"),)
    assert found.leave_out == ("bag",)
    assert "carry out bag" in words(found)


def test_a_bound_that_is_hit_is_no_proof() -> None:
    behind = thing("behind", block((5.0, 1.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    before = thing("before", block((4.0, 0.0, 0.0), (1.0, 4.0, 1.0)), may_leave=False)
    board = Board(setting(behind, before))
    found = changed(board, board.state(is_goal=False), board.state(is_goal=True), most=2)[0]
    assert (found.word, found.states, found.is_least) == ("found", 2, False)


def test_a_door_that_opens_inwards_wants_its_room() -> None:
    hole, leaf = gate("door", "right", (0.0, 4.0, 0.0), (2.0, 4.0, 2.0))
    sweep = (block((0.0, 2.0, 0.0), (2.0, 2.0, 2.0)),)
    inward = (replace(hole, sweep=sweep), replace(leaf, poses=(leaf.poses[0], Posed(OPEN, sweep))))
    bag = thing("bag", block((1.0, 2.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    assert searched(setting(bag, gates=(inward,))).word == "blocked"
    assert searched(setting(bag, gates=((hole, leaf),))).word == "found"


ROOM = Block((0.0, 0.0, 0.0), (8.0, 4.0, 3.0))


@pytest.mark.parametrize(("gap", "is_free"), [(1.0, True), (0.9985, True), (0.9, False)])
def test_a_gap_lets_through_what_is_no_wider(gap: float, is_free: bool) -> None:
    """A touch of a millimetre each side is no meeting."""
    carried = (block((5.0, 1.5, 0.0), (1.0, 1.0, 1.0)),)
    walls = [block((3.0, 0.0, 0.0), (0.2, 1.0, 3.0)), block((3.0, 1.0 + gap, 0.0), (0.2, 3.0 - gap, 3.0))]
    assert (way(carried, None, DOOR[0], walls, ROOM, 0.0) is not None) is is_free


def test_what_is_swept_on_a_way_meets_nothing() -> None:
    carried = (block((5.0, 1.0, 0.0), (1.0, 1.0, 1.0)),)
    wall = block((3.0, 0.0, 0.0), (0.2, 2.5, 3.0))
    swept = way(carried, None, DOOR[0], [wall], ROOM, 0.0)
    assert swept is not None
    for one in swept:
        assert not all(one.low[n] < wall.high[n] - 0.0011 and wall.low[n] < one.high[n] - 0.0011 for n in range(3))
    assert min(one.low[2] for one in swept) == 0.0
    assert max(one.low[1] for one in swept) > 0.0 and max(one.high[1] for one in swept) > 4.0


def out_of_bed(ramp_seconds: float) -> tuple[str, float, float]:
    """Return by what, how far and how soon somebody in a bed between a near ramp and a far door gets out."""
    ramp = gate("ramp", "rear", (8.0, 1.0, 0.0), (8.0, 3.0, 2.0), ramp_seconds)
    bed = bed_across((5.5, 1.5, 0.0), (1.0, 1.0, 0.3))
    one = replace(setting(gates=(DOOR, ramp)), beds=(bed,), exits=(closed(DOOR[0]), closed(ramp[0])))
    one = replace(one, fixed=(replace(body("bed", block((5.5, 1.5, 0.0), (1.0, 1.0, 0.3))), of=bed.of),))
    board = Board(one)
    out = leaving(board, board.state(is_goal=False))
    assert out.seconds is not None
    ((_, name, far),) = out.ways
    return name, far, out.seconds


def test_what_opens_slowly_is_passed_by_where_another_exit_is_sooner() -> None:
    """By hand: the ramp is 2 m off, the door 4.4 m at the least; at half a metre a second that is 4.8 s more."""
    name, near, soon = out_of_bed(10.0)
    assert name == "ramp" and soon == pytest.approx(20.0 + near / 0.5 + 10.0 + 5.0)
    name, far, late = out_of_bed(30.0)
    assert name == "door" and late == pytest.approx(20.0 + far / 0.5 + 10.0 + 5.0)
    assert near < far and late < 20.0 + near / 0.5 + 30.0 + 5.0


def test_a_bed_that_lies_packed_for_the_road_is_not_one_somebody_lies_on() -> None:
    cot = thing("cot", block((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), block((4.0, 1.0, 0.0), (2.0, 1.0, 0.4)), goal=1)
    bed = replace(bed_across((4.0, 1.0, 0.0), (2.0, 1.0, 0.4)), of=cot.of, name="cot")
    board = Board(replace(setting(cot), beds=(bed,), exits=(closed(DOOR[0]),)))
    assert leaving(board, board.state(is_goal=False)).word == "unknown"
    assert leaving(board, board.state(is_goal=True)).word == "found"


@pytest.mark.parametrize(
    ("corner", "is_apart"),
    [
        ((5.0, 4.0, 0.0), True),
        ((1.0, 4.0, 0.0), False),  # before the door
        ((1.0, 4.0, 2.0), True),  # over it
        ((2.0, 4.0, 0.0), True),  # beside it
        ((5.0, -2.0, 0.0), True),
        ((5.0, 2.5, 0.0), False),  # in the room
        ((5.0, 6.0, 0.0), False),  # where a post stands
    ],
)
def test_only_what_is_in_nobodys_way_is_set_out_apart_from_the_search(corner: Vector, is_apart: bool) -> None:
    out = block(corner, (1.0, 1.0, 1.0))
    step = Mover("parts[step]", "step", "set", (Posed(IN, ()), Posed(OUT, (out,))), 0, 1, 10.0, 1)
    post = body("post", block((5.0, 6.0, 0.0), (1.0, 1.0, 1.0)))
    board = Board(setting(step, fixed=(post,)))
    assert (board.index["parts[step]"] in board.apart) == is_apart


def test_what_is_set_out_before_the_door_waits_until_all_is_carried_out() -> None:
    """Set out it fills the door: a search of all orders finds that the crate goes first, and pays the same."""
    crate = thing("crate", block((4.0, 0.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    across = Posed(OUT, (block((0.0, 4.0, 0.0), (2.0, 1.0, 2.0)),))
    canopy = Mover("parts[canopy]", "canopy", "set", (Posed(IN, ()), across), 0, 1, 120.0, 1)
    found = told(setting(crate, canopy), False)
    assert [step.word for step in found.there.steps].index("carry out") == 1
    assert found.there.steps[-1].word == "set out" or found.there.steps[-2].word == "set out"
    assert found.there.cost == found.back.cost == 10.0 + 40.0 + 10.0 + 120.0
    assert found.back.steps[0].word == "put in" or found.back.steps[1].word == "put in"


def test_a_leaf_is_not_folded_from_under_what_stands_on_it() -> None:
    """What does not fold along with it is taken off first, though nothing is in the way of the leaf itself."""
    flat, up = block((3.0, 0.0, 1.0), (2.0, 1.0, 0.5)), block((3.0, 0.0, 1.0), (2.0, 0.5, 1.0))
    leaf = Mover("parts[leaf]", "leaf", "fold", (Posed("travel", (up,)), Posed("night", (flat,))), 1, 0, 10.0, 1)
    bag = thing("bag", block((3.0, 0.5, 1.5), (1.0, 0.5, 0.5)))
    board = Board(setting(leaf, bag))
    state, number = board.state(is_goal=False), board.index[leaf.of]
    assert board.lying_on(number, state) == ("bag",) and not board.turn_meets(number, 0, state)
    assert not _is_possible(board, Move(number, 0, -1), state)
    alone = Board(setting(leaf))
    assert _is_possible(alone, Move(alone.index[leaf.of], 0, -1), alone.state(is_goal=False))
