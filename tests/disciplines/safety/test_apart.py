"""How far a bed is from what gets hot: seen from above and in height, at its nearest; by hand, in metres."""

from __future__ import annotations

import pytest

from boxwright.disciplines.safety.solve import Ends, ends_of, gap_between, room_between
from boxwright.model.place import Place
from boxwright.units import Band, exactly
from tests.disciplines.safety.test_ways import kinds

HEATER = "  heater: {x: 100, side: left, z: 0, size: 300 x 200 x 200, weight: 5, stage: shell, done: yes, "
HEATER += "heater: {of: diesel}, keep_clear: %s}"


def cube(x: float, y: float, z: float, off: float = 0.0) -> Ends:
    """Return the ends of a box of 0.2 m by its middle, that may be off either way."""
    found = ends_of(Place(Band(x, x - off, x + off), exactly(y), exactly(z), (0.2, 0.2, 0.2)))
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("other", "flat", "all_round"),
    [
        (cube(0.5, 0.0, 0.0), 0.3, 0.3),
        (cube(0.5, 0.6, 0.0), 0.5, 0.5),
        (cube(0.0, 0.0, 1.4), 0.0, 1.2),
        (cube(0.0, 0.0, -1.4), 0.0, 1.2),
        (cube(0.5, 0.6, 1.4), 0.5, 1.3),  # 5, 12 and 13
        (cube(0.5, 0.6, -1.4), 0.5, 1.3),
        (cube(0.1, 0.1, 0.1), 0.0, 0.0),
        (cube(0.0, 0.0, 0.2), 0.0, 0.0),
        (cube(0.7, 0.6, 1.4, 0.2), 0.5, 1.3),  # at its nearest
    ],
)
def test_the_room_between_two_things_is_straight_and_the_same_both_ways(
    other: Ends, flat: float, all_round: float
) -> None:
    own = cube(0.0, 0.0, 0.0)
    assert gap_between(own, other) == pytest.approx(flat) == gap_between(other, own)
    assert room_between(own, other) == pytest.approx(all_round) == room_between(other, own)


@pytest.mark.parametrize(
    ("wants", "is_too_hot"), [("400", False), ("430", True), ("400..430", True), ("300..400", False)]
)
def test_room_in_doubt_that_a_heater_wants_counts_as_the_most_it_may_want(wants: str, is_too_hot: bool) -> None:
    """The bed is 424 mm from it, as the trio of hot-surface has it."""
    found = kinds(("  # one more", HEATER % wants))
    assert (("stop", "hot-surface", "parts[heater]") in found) is is_too_hot
