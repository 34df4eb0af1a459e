"""How far something gets is told as far as a tape or the eye can tell; less than that is at once."""

from __future__ import annotations

from math import radians

import pytest

from boxwright.disciplines.layout.telling import got_to
from boxwright.units import HeaderUnits

MM, INCH = HeaderUnits(length="mm"), HeaderUnits(length="in")


@pytest.mark.parametrize(
    ("reached", "whole", "turns", "header", "words"),
    [
        (radians(0.0957), radians(90), True, MM, "at once"),
        (radians(0.49), radians(90), True, MM, "at once"),
        (radians(0.51), radians(90), True, MM, "after 0.51 deg of 90 deg"),
        (radians(39.7), radians(90), True, MM, "after 39.7 deg of 90 deg"),
        (0.0, 0.7, False, MM, "at once"),
        (0.0000357, 0.7, False, MM, "at once"),
        (0.0006, 0.7, False, MM, "after 1 mm of 700 mm"),
        (0.0007, 0.7, False, INCH, "at once"),
        (0.0009, 0.254, False, INCH, "after 1/16 in of 10 in"),
    ],
)
def test_less_than_a_mark_is_at_once(
    reached: float, whole: float, turns: bool, header: HeaderUnits, words: str
) -> None:
    assert got_to(reached, whole, turns, header) == words
