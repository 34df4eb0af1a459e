"""Where somebody stands who lies in no bed: as near to the middle as there is room, and nowhere where there is none."""

from __future__ import annotations

from dataclasses import replace
from math import inf

import pytest

from boxwright.disciplines.layout.body_sizes import ROOM as BODY
from boxwright.disciplines.layout.free_spot import GRID, free_spot
from tests.disciplines.layout.layouts import ROOM, body


def test_an_empty_room_is_stood_in_in_the_middle() -> None:
    spot = free_spot((), ROOM)
    assert spot is not None and (spot.place.x.best, spot.place.y.best, spot.place.z.best) == (3.0, 0.0, 0.0)
    assert spot.place.size == (BODY["pass"], BODY["pass"], 0.0)


def test_what_stands_in_the_middle_is_stood_beside() -> None:
    half = BODY["pass"] / 2.0
    spot = free_spot((body("crate", (2.8, -0.2, 0.0), (0.4, 0.4, 1.0)),), ROOM)
    assert spot is not None
    x, y = abs(spot.place.x.best - 3.0), abs(spot.place.y.best)
    assert max(x, y) >= 0.2 + half  # clear of it
    assert min(x, y) == pytest.approx(0.0) and max(x, y) < 0.2 + half + GRID  # and no farther than a step of the grid


@pytest.mark.parametrize(
    ("low", "high", "is_free"),
    [
        (0.0, BODY["step over"], True),  # stepped over
        (0.0, BODY["step over"] + 0.01, False),
        (BODY["stoop"], 1.9, True),  # stooped under
        (BODY["stoop"] - 0.01, 1.9, False),
    ],
)
def test_what_lies_low_or_hangs_high_is_no_hindrance(low: float, high: float, is_free: bool) -> None:
    everywhere = body("sheet", (-1.0, -2.0, low), (9.0, 4.0, high - low))
    assert (free_spot((everywhere,), ROOM) is not None) == is_free


def test_in_a_room_that_is_full_or_too_small_or_unknown_nobody_stands() -> None:
    assert free_spot((body("all", (0.0, -1.2, 0.0), (6.0, 2.4, 2.0)),), ROOM) is None
    assert free_spot((), replace(ROOM, left=-0.1, right=0.1)) is None
    assert free_spot((), replace(ROOM, rear=inf)) is None


def test_a_room_with_a_slip_in_its_length_is_not_looked_through_for_ever() -> None:
    long = replace(ROOM, rear=6000.0)
    assert free_spot((), long) is not None
    assert free_spot((body("crate", (2999.0, -1.0, 0.0), (4.0, 2.0, 1.0)),), long) is None
