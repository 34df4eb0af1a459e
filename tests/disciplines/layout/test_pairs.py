"""Pairs kept up as things move are those found from nothing, and only what moved is looked at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random

import pytest

from boxwright.disciplines.layout import pairs
from boxwright.disciplines.layout.bodies import Body, moved_block
from boxwright.disciplines.layout.meeting import TOUCH, deepest, lines_of
from boxwright.disciplines.layout.pairs import Crowd, pairs_of
from tests.disciplines.layout.layouts import body, layout


@pytest.fixture(autouse=True)
def nothing_remembered() -> Iterator[None]:
    pairs._shelf.cache_clear()
    yield
    pairs._shelf.cache_clear()


def moved(one: Body, luck: Random) -> Body:
    """Return a thing somewhere else, in another doubt, unknown, or in pieces."""
    by = (luck.uniform(-0.5, 0.5), luck.uniform(-0.3, 0.3), luck.choice([0.0, 0.1]))
    blocks = tuple(moved_block(block, by) for block in one.blocks)
    what = luck.randrange(8)
    if what == 0:
        return replace(one, known=not one.known)
    if what == 1:
        return replace(one, doubt=luck.choice([(0.0, 0.0, 0.0), (0.2, 0.1, 0.0)]))
    if what == 2:
        return replace(one, blocks=(*blocks, moved_block(blocks[0], (0.4, 0.0, 0.0))))
    return replace(one, blocks=blocks)


@pytest.mark.parametrize("seed", range(12))
def test_what_is_kept_up_is_what_is_found_from_nothing(seed: int) -> None:
    luck, bodies = Random(seed), layout(seed, 60)
    lines = lines_of(bodies)
    for _ in range(25):
        changed = list(bodies)
        for number in luck.sample(range(len(changed)), luck.choice([0, 1, 1, 1, 3, 40])):
            changed[number] = moved(changed[number], luck)
        bodies = tuple(changed)
        assert pairs_of(bodies, lines) == tuple(Crowd(bodies, lines).pairs)


def test_two_that_all_but_touch_are_judged_alike_kept_up_and_from_nothing() -> None:
    still = body("still", (0.0, 0.0, 0.0), (1.0, 1.0, 1.0))
    for step in range(40):
        beside = body("beside", (1.0 - TOUCH + (step - 20) * 2.0**-54, 0.0, 0.0), (0.5, 1.0, 1.0))
        for bodies in ((still, beside), (beside, still)):
            lines = lines_of(bodies)
            assert pairs_of(bodies, lines) == tuple(Crowd(bodies, lines).pairs)


def test_who_carries_what_is_asked_anew() -> None:
    box, tin = body("box", (0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), body("tin", (0.2, 0.2, 0.2), (0.1, 0.1, 0.1))
    assert len(pairs_of((box, tin), lines_of((box, tin)))) == 1
    held = (box, replace(tin, carried_by=box.of))
    assert pairs_of(held, lines_of(held)) == ()
    assert len(pairs_of((box, tin), lines_of((box, tin)))) == 1


def test_only_the_pairs_of_what_moved_are_looked_at(monkeypatch: pytest.MonkeyPatch) -> None:
    bodies = layout(3, 300)
    lines = lines_of(bodies)
    every = pairs_of(bodies, lines)
    assert len(every) > 1_000
    asked: list[tuple[str, str]] = []

    def counting(one: Body, other: Body) -> tuple[float, int]:
        asked.append((one.of, other.of))
        return deepest(one, other)

    monkeypatch.setattr(pairs, "deepest", counting)
    assert pairs_of(bodies, lines) == every
    assert asked == []
    shifted = replace(bodies[7], blocks=tuple(moved_block(one, (0.01, 0.0, 0.0)) for one in bodies[7].blocks))
    now = pairs_of((*bodies[:7], shifted, *bodies[8:]), lines)
    assert asked
    assert all(shifted.of in two for two in asked)
    assert len(asked) == sum(shifted.of in (bodies[one.first].of, bodies[one.second].of) for one in now)
