"""What is let into a wall between two studs is no hole through it. By hand, in inches.

The box is 80 wide inside its studs and 84 outside, so that its walls are 2 deep, less twice the play (0.4) to its skin.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import told, words

THROUGH = "layout/through-shell"
SOCKET = "  socket: {x: 50, side: %s, z: 15, size: %s, weight: 1, done: yes, stage: lined%s}\n"


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize(
    ("deep", "size", "more", "kinds"),
    [
        (1, "4 x 2 x 4", "", ["unknown"]),
        (1, "4 x 2 x 4", ", recess: 2", []),
        (1.4, "4 x 2 x 4", ", recess: unknown", []),
        (1.4, "4 x 2 x 4", ", recess: 0.5", ["unknown"]),
        (0.25, "4 x 2 x 4", "", []),
        (2.25, "4 x 4 x 4", ", recess: 3", ["fix"]),
        (3, "4 x 4 x 4", ", recess: 3", ["fix"]),
        (1, "23 x 2 x 4", "", ["unknown"]),
        (1, "24 x 2 x 4", "", ["fix"]),
        (1, "24 x 2 x 4", ", recess: 2", ["fix"]),
    ],
)
def test_what_ends_in_the_depth_of_a_wall_is_asked_unless_its_recess_is_written(
    hand: str, deep: float, size: str, more: str, kinds: list[str]
) -> None:
    side = f"right+{deep}" if hand == "right" else f"left-{deep}"
    wall = f", wall: {hand}{more}" if more else ""
    assert [kind for kind, where in told(THROUGH, (), SOCKET % (side, size, wall)) if "socket" in where] == kinds


def test_a_recess_of_another_wall_is_none_of_this_one() -> None:
    assert told(THROUGH, (), SOCKET % ("right+1", "4 x 2 x 4", ", wall: left, recess: 2")) == [
        ("unknown", "parts[socket]")
    ]


def test_a_lamp_let_into_the_ceiling_is_let_in_as_far_as_is_written() -> None:
    lamp = "  spot: {x: 50, side: centre, z: ceiling-1, size: 4 x 4 x %s, weight: 1, done: yes, stage: lined%s}\n"
    assert told(THROUGH, (), lamp % (2, ", wall: ceiling, recess: 1")) == []
    assert told(THROUGH, (), lamp % (4, ", wall: ceiling, recess: 1")) == [("fix", "parts[spot]")]
    assert told(THROUGH, (), lamp % (2, "")) == [("fix", "parts[spot]")]


def test_what_is_let_into_a_wall_and_wants_room_round_it_is_asked_about_that_wall() -> None:
    let_in = SOCKET % ("right+1", "4 x 2 x 4", ", keep_clear: 1")
    assert "the right wall may be nearer" in words("layout/gap-small", (), let_in)
    at_it = SOCKET % ("right", "4 x 2 x 4", ", keep_clear: 1")
    assert ("fix", "parts[socket]") in told("layout/gap-small", (), at_it)
