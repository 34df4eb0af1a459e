"""Setting things aside in a change-over: by hand, against the search through everything, and how long it looks."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout import changeover_aside, changeover_leaving
from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.changeover import ASIDE, Gate, Mover, Setting
from boxwright.disciplines.layout.changeover_aside import least, with_spots
from boxwright.disciplines.layout.changeover_leaving import leaving
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.disciplines.layout.changeover_told import Told, told
from tests.disciplines.layout.changing import (
    DOOR,
    bed_across,
    block,
    body,
    by_brute_force,
    closed,
    is_sound,
    meet,
    random_setting,
    setting,
    thing,
)
from tests.lanes import every_so_many

ALL = 100_000
SEEDS = every_so_many(range(100), 2)
ONE, OTHER = block((5.0, 0.0, 0.0), (2.0, 2.0, 1.0)), block((5.0, 2.0, 0.0), (2.0, 2.0, 1.0))


def words(found: Told) -> list[str]:
    return [f"{step.word} {step.name}" for step in found.there.steps]


def swapped(*fixed: Body, gates: tuple[tuple[Gate, Mover], ...] = (DOOR,), lift: float = 0.0) -> Setting:
    """Return a room in which two crates change places."""
    crates = thing("a", ONE, OTHER, goal=1, lift=lift), thing("b", OTHER, ONE, goal=1, lift=lift)
    return setting(*crates, fixed=fixed, gates=gates)


def test_two_that_change_places_need_no_door() -> None:
    """By hand: one aside, the other over, the one over: 3 times 40 s; by the door it would be 20 s more."""
    found = told(swapped(), ends_at_night=False)
    assert words(found) == ["set aside a", "shift b", "put back a"]
    assert found.there.cost == found.back.cost == 3 * 40.0
    assert [word for _, word in found.there.meanwhile] == ["night", "night"]


def test_where_there_is_no_floor_free_they_go_by_the_door() -> None:
    """Steps 0.2 high on all floor but theirs: they are carried over, and not set down there."""
    low = body("steps", block((0.0, 0.0, 0.0), (5.0, 4.0, 0.2)), block((7.0, 0.0, 0.0), (1.0, 4.0, 0.2)))
    found = told(swapped(low, lift=0.5), ends_at_night=False)
    assert found.there.cost == 10.0 + 3 * 40.0 + 10.0
    assert "set aside a" not in words(found) and words(found)[0] == "open door"


def test_without_any_opening_they_change_places_all_the_same() -> None:
    found = told(swapped(gates=()), ends_at_night=False)
    assert (found.there.word, found.there.cost) == ("found", 120.0)


def test_a_way_that_is_blocked_both_ways_is_still_said_to_be() -> None:
    """A pillar leaves no square of 2 by 2 free, and no opening: there is none, and all states were looked at."""
    pillars = body("pillars", *(block((x, y, 0.0), (0.5, 0.5, 3.0)) for x in (1.5, 3.5) for y in (0.5, 2.5)))
    found = told(swapped(pillars, gates=()), ends_at_night=False)
    assert found.there.word == "blocked"


def test_what_is_set_aside_stands_before_no_opening_if_it_need_not() -> None:
    board = Board(swapped())
    other = with_spots(board, board.state(is_goal=False), board.state(is_goal=True))
    assert other is not None
    (crate,) = (one for one in other.movers if one.name == "a")
    spots = [pose.blocks[0] for pose in crate.poses if pose.word == ASIDE]
    assert 1 <= len(spots) <= changeover_aside.MOST_SPOTS
    assert spots[0].low[0] >= 2.0 or spots[0].high[1] <= 3.5
    assert all(spot.low[2] == 0.0 for spot in spots)
    assert not any(meet(spot, taken) for spot in spots for taken in (ONE, OTHER))


def test_the_nearest_spot_is_not_the_first_where_it_is_before_the_door() -> None:
    """Two cells to the front it stands before the door, from 0 to 2; two cells to the left it does not."""
    board = Board(setting(thing("a", block((2.0, 2.0, 0.0), (2.0, 2.0, 1.0)), goal=1)))
    other = with_spots(board, board.state(is_goal=False), board.state(is_goal=True))
    assert other is not None
    (crate,) = (one for one in other.movers if one.name == "a")
    assert next(pose.blocks[0].low for pose in crate.poses if pose.word == ASIDE) == (2.0, 0.0, 0.0)


def test_of_two_that_cost_the_same_nothing_is_set_aside() -> None:
    """The door is open for the bag anyway: out and in again is as much as aside and back."""
    crates = thing("a", ONE, OTHER, goal=1), thing("b", OTHER, ONE, goal=1)
    found = told(setting(*crates, thing("bag", block((2.0, 0.0, 0.0), (1.0, 1.0, 1.0)), goal=1)), ends_at_night=False)
    assert found.there.cost == 10.0 + 40.0 + 3 * 40.0 + 10.0
    assert "set aside a" not in words(found) and "set aside b" not in words(found)


def test_a_search_that_gave_up_is_no_proof(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(changeover_aside, "MOST_STATES", 1)
    assert told(swapped(gates=()), ends_at_night=False).there.word == "not-found"


@pytest.mark.parametrize("seed", SEEDS)
def test_it_is_never_dearer_than_without_and_never_cheaper_than_a_search_through_everything(seed: int) -> None:
    one = random_setting(seed)
    board = Board(one)
    start, goal = board.state(is_goal=False), board.state(is_goal=True)
    used, found = least(board, start, goal, ALL, ALL)
    plain = by_brute_force(one)
    if any(move.is_turned for move, _ in found.moves or ()):
        return
    if found.moves is None:
        assert plain is None
        return
    assert plain is None or found.cost <= plain
    other = with_spots(board, start, goal)
    wanted = by_brute_force(other.setting if other is not None else one)
    assert wanted is not None and wanted <= found.cost
    assert all(is_sound(used.setting, state) for _, state in found.moves)


def behind_a_crate() -> Setting:
    """Return a room with a bed, and a crate wider than the door before it."""
    crate = thing("crate", block((0.0, 1.5, 0.0), (2.5, 2.5, 2.5)), may_leave=False)
    bed = bed_across((6.0, 1.0, 0.0), (1.0, 2.0, 0.3))
    stands = replace(body("bed", block((6.0, 1.0, 0.0), (1.0, 2.0, 0.3))), of=bed.of)
    return replace(setting(crate, fixed=(stands,)), beds=(bed,), exits=(closed(DOOR[0]),))


def test_a_crate_before_the_door_that_goes_out_by_none_is_set_aside_at_night() -> None:
    """Whoever lies in bed gets out when it is pushed away."""
    board = Board(behind_a_crate())
    out = leaving(board, board.state(is_goal=False))
    assert (out.word, [step.word for step in out.steps]) == ("found", ["set aside"])


def test_who_cannot_get_out_of_an_empty_room_is_told_so_however_little_is_looked_at(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(changeover_leaving, "MOST_ASIDE", 1)
    for release, word in (("inside", "not-found"), ("none", "blocked")):
        one = behind_a_crate()
        board = Board(replace(one, gates=tuple(replace(hole, release=release) for hole in one.gates)))
        assert leaving(board, board.state(is_goal=False)).word == word
