"""Who sits has headroom or is told; what is reached from a seat is in reach; each bed has a light by it. In inches.

The owner is 65 high: 33.8 from seat to crown and 2 of air (35.8), the shoulder 21.97 over the seat, an arm 28.6.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.knots import told, words

HEAD, REACH = "layout/headroom-low", "layout/out-of-reach"
SEAT = "  %s: {x: 100, side: centre, z: 0, size: 20 x 20 x %s, weight: 9, stage: lined, done: yes}\n"
RACK = "  overhead: {x: 98, side: centre, z: %s, size: 24 x 30 x 2, weight: 3, stage: lined, done: yes}\n"
LAMP = "lamp: {x: 40, side: left+4, z: 60, size: 4 x 4 x 4"


@pytest.mark.parametrize(
    ("name", "high", "rack", "found"),
    [
        ("bench", 18, 53, [("advice", "people[owner]")]),  # 35 in
        ("bench", 18, 54, []),  # 36 in
        ("box-seat", 18, 53, [("advice", "people[owner]")]),
        ("locker", 18, 53, []),
        ("bench", 8, 40, [("advice", "people[owner]")]),
        ("bench", 7, 30, []),  # a step, and no seat
    ],
)
def test_headroom_over_a_seat_is_told(name: str, high: int, rack: int, found: list[tuple[str, str]]) -> None:
    assert told(HEAD, (), SEAT % (name, high) + RACK % rack) == found


def test_what_lies_on_a_seat_takes_no_headroom_and_the_thing_above_is_named() -> None:
    cushion = "  cushion: {rides_on: bench, x: +0, side: +0, z: +18, size: 20 x 20 x 3, weight: 1, stage: lined}\n"
    assert told(HEAD, (), SEAT % ("bench", 18) + cushion) == []
    assert words(HEAD, (), SEAT % ("bench", 18) + RACK % 53).startswith(
        "owner cannot sit upright on bench: 35 in is free, under overhead"
    )


def test_a_switch_in_reach_of_a_seat_alone_is_in_reach() -> None:
    """A block keeps who stands 33.9 in before a switch, the door is 29 in behind it; an arm is 28.6 in."""
    things = "  block: {x: 104, side: left, z: 0, size: 56 x 52 x 10, weight: 9, stage: lined, done: yes}\n"
    things += "  switch: {x: 129, side: left, z: 44, size: 2 x 2 x 2, weight: 1, stage: lined, done: yes}\n"
    bench = "  bench: {rides_on: block, x: +17, side: +10, z: +10, size: 16 x 16 x 9, weight: 1, stage: lined}\n"
    assert told(REACH, (), things) == [("advice", "parts[switch]")]
    assert told(REACH, (), things + bench) == []
    assert told(REACH, (), things + bench.replace("bench", "locker-1")) == [("advice", "parts[switch]")]


@pytest.mark.parametrize(
    ("lamp", "kinds"),
    [
        ("lamp: {x: 40, side: left+4, z: 60, size: 4 x 4 x 4", []),
        # the bed ends at 100 in: 28 in behind it is within the arm, 29 in is not
        ("lamp: {x: 128, side: left+4, z: 40, size: 4 x 4 x 4", []),
        ("lamp: {x: 129, side: left+4, z: 40, size: 4 x 4 x 4", ["advice"]),
        # its middle 28 in over the shoulder, which is 51 in up; and 1 in more
        ("lamp: {x: 40, side: left+30, z: 72, size: 4 x 4 x 4", []),
    ],
)
def test_a_light_is_in_reach_of_the_bed_or_told(lamp: str, kinds: list[str]) -> None:
    assert [kind for kind, _ in told(REACH, ((LAMP, lamp),))] == kinds


def test_no_light_is_written_or_none_is_a_light_and_nobody_asks() -> None:
    assert told(REACH, (("  lamp:", "  spice-box:"),)) == []
    far = "lamp: {x: 129, side: left+4, z: 40, size: 4 x 4 x 4"
    says = "owner cannot put on a light from bed: lamp is nearest, 29 in from the shoulder, and an arm is 28 5/8 in"
    assert words(REACH, ((LAMP, far),)) == says
    near = "  switch: {x: 60, side: left, z: 44, size: 2 x 2 x 2, weight: 1, stage: lined, done: yes}\n"
    assert told(REACH, ((LAMP, far),), near) == []
