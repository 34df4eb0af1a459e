"""What moves is looked at again only against what moved, and comes to what it comes to from nothing."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from boxwright.disciplines.layout import stopping, sweeps
from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.stopping import faces_of, stopped
from boxwright.disciplines.layout.sweeps import Mover, Slip, struck_by
from tests.disciplines.layout.layouts import ROOM, layout, turn

NOBODY: frozenset[str] = frozenset()


def mover(seed: int) -> Mover:
    luck = Random(seed)
    start = Block((2.0, -0.5, 0.2), (2.5, 0.5, 0.7))
    ways = (turn(seed),) if seed % 2 else (Slip(start, luck.choice([0, 1]), luck.uniform(-1.0, 1.0), 1.2),)
    return Mover("parts[leaf]", "leaf", "door", ways, 1.0, doubt=(luck.uniform(0.0, 0.1), 0.0, 0.0))


def from_nothing(one: Mover, bodies: tuple[Body, ...]) -> list[tuple[float, str, str]]:
    sweeps._before.clear()
    return [(at, body.of, sure) for at, body, sure in struck_by(one, bodies, NOBODY)]


@pytest.mark.parametrize("seed", range(12))
def test_what_is_struck_after_a_move_is_what_is_struck_from_nothing(seed: int) -> None:
    """The mover stays or is another of the same name; one body after the other moves, or only its doubt does."""
    luck, bodies, one = Random(seed), layout(seed), mover(seed)
    for count in range(12):
        sweeps._before.clear()
        list(struck_by(one, bodies, NOBODY))
        at = luck.randrange(len(bodies))
        other = layout(seed + count + 100)[at]
        moved = replace(bodies[at], blocks=other.blocks) if count % 3 else replace(bodies[at], doubt=(0.4, 0.4, 0.4))
        bodies = (*bodies[:at], moved, *bodies[at + 1 :])
        one = mover(seed + count) if count % 4 == 3 else one
        again = [(at, body.of, sure) for at, body, sure in struck_by(one, bodies, NOBODY)]
        assert again == from_nothing(one, bodies)


def test_only_what_moved_is_looked_at_again(monkeypatch: pytest.MonkeyPatch) -> None:
    sweeps._before.clear()
    bodies, one, looked = layout(3), mover(3), list[str]()
    met = sweeps._met
    monkeypatch.setattr(sweeps, "_met", lambda mover, hold, body: looked.append(body.of) or met(mover, hold, body))
    list(struck_by(one, bodies, NOBODY))
    assert len(looked) == len(bodies)
    moved = replace(bodies[7], doubt=(0.1, 0.0, 0.0))
    list(struck_by(mover(3), (*bodies[:7], moved, *bodies[8:]), NOBODY))
    assert looked[len(bodies) :] == [moved.of]


def test_what_stopped_a_thing_in_one_room_is_not_taken_for_another() -> None:
    stopping._before.clear()
    slide = Mover("parts[tray]", "tray", "slide", (Slip(Block((5.0, -0.5, 0.2), (5.5, 0.5, 0.7)), 0, 1.0, 1.0),), 1.0)
    near, far = faces_of(ROOM, False), faces_of(replace(ROOM, rear=9.0), False)
    assert [one.face for one in stopped(slide, near, ())] == ["the rear wall"]
    assert stopped(slide, far, ()) == ()
    short = replace(slide, ways=(Slip(Block((5.0, -0.5, 0.2), (5.5, 0.5, 0.7)), 0, 0.4, 0.4),))
    assert (stopped(short, near, ()), len(stopped(slide, near, ()))) == ((), 1)
