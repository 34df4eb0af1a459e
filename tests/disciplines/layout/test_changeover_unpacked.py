"""Taking out what is in the way and bringing it back: every step can be done, and nothing is moved that need not be.

Lengths are cells; a move of a thing takes 40 s, the door 10 s, by the numbers of the room they stand in.
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from boxwright.disciplines.layout.changeover import Setting
from boxwright.disciplines.layout.changeover_aside import MOST_UNPACKED, least
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.layout.changeover_search import MOST_STATES, Done, cheapest
from boxwright.disciplines.layout.changeover_told import changed, told
from boxwright.disciplines.layout.changeover_unpacked import backwards, unpacked
from tests.disciplines.layout.changing import (
    DOOR,
    State,
    block,
    body,
    by_brute_force,
    gate,
    goes,
    is_sound,
    random_setting,
    setting,
    thing,
)
from tests.lanes import every_so_many

SEEDS = every_so_many(range(100), 2)
ALL = 100_000


def states_of(one: Setting) -> tuple[State, State]:
    return tuple(mover.start for mover in one.movers), tuple(mover.goal for mover in one.movers)


def names(one: Setting, moves: Sequence[Done]) -> list[str]:
    return [one.movers[move.mover].name for move, _ in moves]


def must_hold(one: Setting, start: State, goal: State, moves: Sequence[Done]) -> None:
    """Hold that every step can be done by another search that looks at every cell, and that it ends where it should."""
    state = start
    for move, after in moves:
        assert [i for i, pose in enumerate(after) if pose != state[i]] == [move.mover]
        assert is_sound(one, after)
        if one.movers[move.mover].kind == "carry" and not move.is_turned:
            assert move.gate in set(goes(one, move.mover, move.to, state))
        state = after
    assert state == goal


@pytest.mark.parametrize("seed", SEEDS)
def test_every_step_can_be_done_and_it_is_never_cheaper_than_the_least(seed: int) -> None:
    one = random_setting(seed)
    start, goal = states_of(one)
    found = unpacked(Board(one), start, goal, ALL)
    assert not found.is_exhausted
    if found.moves is None:
        return
    must_hold(one, start, goal, found.moves)
    assert not found.is_least
    wanted = by_brute_force(one)
    assert wanted is None or found.cost >= wanted


def test_of_the_random_rooms_most_that_can_be_changed_over_are_unpacked_and_many_as_cheaply_as_can_be() -> None:
    done = [
        (unpacked(Board(one), *states_of(one), ALL), by_brute_force(one))
        for one in map(random_setting, range(0, 100, 2))
    ]
    able = [(found, wanted) for found, wanted in done if wanted]
    found = [(one.cost, wanted) for one, wanted in able if one.moves is not None]
    assert len(found) >= 0.9 * len(able)
    assert sum(cost == wanted for cost, wanted in found) >= 0.7 * len(found)


def crates(*out: tuple[int, int]) -> Setting:
    """Return twenty crates as high as the door, side by side in five rows of four from the door on; some go out."""
    made = [
        thing(f"crate-{x}-{y}", block((x, y, 0.0), (1.0, 1.0, 2.0)), goal=int((x, y) in out))
        for x in range(2, 7)
        for y in range(4)
    ]
    return setting(*made)


def test_the_innermost_of_twenty_crates_costs_only_those_before_it() -> None:
    """By hand: the door twice, four crates of its row there and back, and itself: 20 + 9 x 40 s."""
    one = crates((6, 1))
    board, (start, goal) = Board(one), states_of(one)
    found = unpacked(board, start, goal, MOST_UNPACKED)
    assert found.moves is not None
    must_hold(one, start, goal, found.moves)
    assert found.cost == 20.0 + 9 * 40.0
    assert len(found.moves) == 11
    assert board.ways <= MOST_UNPACKED
    assert unpacked(Board(one), start, goal, 1).moves is None


def test_where_the_search_gives_up_it_is_unpacked_and_not_said_to_be_least() -> None:
    one = crates((6, 1), (5, 2))
    board, (start, goal) = Board(one), states_of(one)
    assert cheapest(board, start, goal, most=5).moves is None
    there, ended = changed(board, start, goal, most=5)
    assert (there.word, there.is_least, ended) == ("found", False, goal)
    assert there.states == 5  # those that were looked at before
    assert changed(Board(crates((2, 1))), *states_of(crates((2, 1))))[0].is_least


def test_the_way_back_is_the_way_there_backwards_where_that_is_not_proved_least() -> None:
    both = told(crates((6, 1), (5, 2)), ends_at_night=False, most=5)
    assert both.there.word == both.back.word == "found" and not both.back.is_least
    assert [one.name for one in both.back.steps] == [one.name for one in both.there.steps][::-1]
    assert both.back.cost == both.there.cost
    assert both.back.states == len(both.back.steps)  # none is looked for


def test_what_is_done_backwards_is_looked_at_step_by_step() -> None:
    one = crates((2, 1))
    start, goal = states_of(one)
    found = unpacked(Board(one), start, goal, ALL)
    assert found.moves is not None
    undone = backwards(Board(one), start, found.moves)
    assert undone is not None and undone.moves is not None
    must_hold(one, goal, start, undone.moves)
    opened, carried, shut = found.moves
    assert backwards(Board(one), start, (carried, opened, shut)) is None  # the door is shut when it is to come in


def test_what_stands_on_the_straight_way_and_not_on_another_stays() -> None:
    """The pillar is between the box and the door, and there is room to go round it."""
    box = thing("box", block((5.0, 2.0, 0.0), (1.0, 1.0, 1.0)), goal=1)
    pillar = thing("pillar", block((3.0, 2.0, 0.0), (1.0, 1.0, 3.0)))
    one = setting(box, pillar)
    start, goal = states_of(one)
    found = unpacked(Board(one), start, goal, ALL)
    assert found.moves is not None and names(one, found.moves) == ["door", "box", "door"]


def test_what_has_to_move_first_though_it_is_on_no_straight_way_is_found() -> None:
    """Two that bar each other's straight way: a third beside them is taken out, and they go past where it stood."""
    shut = body("wall", block((2.0, 2.0, 0.0), (1.0, 2.0, 3.0)))
    one = setting(
        thing("far", block((4.0, 1.0, 0.0), (2.0, 2.0, 1.0)), goal=1),
        thing("near", block((1.0, 0.0, 0.0), (2.0, 2.0, 1.0))),
        fixed=(shut,),
    )
    start, goal = states_of(one)
    found = unpacked(Board(one), start, goal, ALL)
    assert found.moves is not None
    must_hold(one, start, goal, found.moves)
    assert names(one, found.moves) == ["door", "near", "far", "near", "door"]


def test_nothing_is_unpacked_by_a_probe_and_nothing_where_all_was_looked_at() -> None:
    one = crates((6, 1))
    board, (start, goal) = Board(one), states_of(one)
    assert least(board, start, goal, 5, 200, is_probe=True)[1].moves is None
    walled = setting(thing("box", block((5.0, 2.0, 0.0), (1.0, 1.0, 1.0)), goal=1),
                     fixed=(body("wall", block((2.0, 0.0, 0.0), (1.0, 4.0, 3.0))),))  # fmt: skip
    found = least(Board(walled), *states_of(walled), MOST_STATES, 200)[1]
    assert found.moves is None and found.is_exhausted


def test_a_bed_is_folded_and_a_second_door_opened_on_the_way() -> None:
    ramp = gate("ramp", "rear", (8.0, 1.0, 0.0), (8.0, 3.0, 2.0), 30.0)
    one = setting(*(mover for mover in crates((6, 1)).movers if mover.kind == "carry"), gates=(DOOR, ramp))
    start, goal = states_of(one)
    found = unpacked(Board(one), start, goal, ALL)
    assert found.moves is not None
    must_hold(one, start, goal, found.moves)
    # by hand: nothing stands between the last row and the ramp
    assert names(one, found.moves) == ["ramp", "crate-6-1", "ramp"] and found.cost == 60.0 + 40.0
