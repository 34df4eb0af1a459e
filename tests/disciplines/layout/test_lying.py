"""What stands on a bed that is slept on, or hangs low over it, leaves room to lie or is told. By hand, in inches.

The bed is 70 x 28, its owner 65 in tall and wants 4 in (100 mm) at the feet: 68.9 of its 70 in.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.lying import taken_beds
from boxwright.disciplines.layout.meeting import NOTHING
from boxwright.disciplines.layout.terraces import Bed
from boxwright.model.place import Place
from boxwright.model.trailer import Person
from boxwright.units import Band, exactly
from tests.disciplines.layout.knots import Edits, said, told, words

NIGHT = "layout/sleeping-place"
CHEST = "  chest: {rides_on: bed, x: +%s, side: +2, z: +%s, size: %s, weight: 1, kind: cargo%s}\n"


def kinds(more: str, edits: Edits = ()) -> list[str]:
    return [kind for kind, _ in told(NIGHT, edits, more)]


@pytest.mark.parametrize(
    ("chest", "found"),
    [
        (CHEST % (20, 2, "20 x 20 x 20", ""), ["stop"]),
        (CHEST % ("10..40", 2, "20 x 20 x 20", ""), ["stop"]),  # wherever it is
        (CHEST % ("10..69", 2, "20 x 20 x 20", ""), ["unknown"]),  # up to an inch from the foot end: beyond it
        (CHEST % (0, 2, "1 x 20 x 20", ""), []),
        (CHEST % (0, 2, "1.5 x 20 x 20", ""), ["stop"]),
        (CHEST % (69, 2, "1 x 20 x 20", ""), []),
        (CHEST % ("0..1", 2, "0.5 x 20 x 20", ""), ["unknown"]),
        (CHEST % (20, 2, "unknown", ""), ["unknown"]),
        (CHEST % (20, 2, "20 x 20 x 20", ", when_sleeping: out"), []),
        (CHEST % (0, 2, "60 x 24 x 4", ""), []),
        (CHEST % (0, 2, "60 x 24 x 12", ""), ["stop"]),
        (CHEST % (0, 2, "50 x 15 x 4", ""), ["stop"]),  # flat, and over less than half of the bed: no bedding
        (CHEST.replace("chest", "pillow-2") % (0, 2, "14 x 14 x 12", ""), []),
    ],
)
def test_a_chest_on_the_bed_that_is_slept_on_is_told_unless_room_to_lie_is_left(chest: str, found: list[str]) -> None:
    assert kinds(chest) == found
    mirrored = (("bed: {x: 30, side: left, z: 27", "bed: {x: 30, side: right, z: 27"), ("hinge: {edge: left}",
                "hinge: {edge: right}"), ("fridge: {x: 60", "fridge: {x: 110"),
                ("cabinet: {x: 120", "cabinet: {x: 142"), ("lamp: {x: 40", "lamp: {x: 140"))  # fmt: skip
    assert kinds(chest, mirrored) == found


def test_of_several_in_doubt_what_takes_the_bed_wherever_it_is_stops_and_what_they_may_take_together_is_asked() -> None:
    first = CHEST % ("10..40", 2, "20 x 20 x 20", "")
    tub = CHEST.replace("chest", "tub")
    assert "stop" in kinds(first + tub % ("0..60", 2, "5 x 20 x 20", ""))
    # one at the head and one at the foot: each may leave the bed to the sleeper
    at_ends = CHEST % ("0..1", 2, "0.5 x 20 x 20", "") + tub % ("68.5..69.5", 2, "0.5 x 20 x 20", "")
    assert kinds(at_ends) == ["unknown"]


@pytest.mark.parametrize(
    ("axis", "off", "found"),
    [
        (0, 0.1, "sure"),
        (0, 1.25, "sure"),  # 1750 are left of the 1800 mm that are wanted
        (0, 1.35, "perhaps"),
        (1, 0.5, "sure"),  # 550 of 600
        (1, 0.6, "perhaps"),
    ],
)
def test_a_bed_in_doubt_is_taken_for_certain_only_wherever_it_may_be(axis: int, off: float, found: str) -> None:
    """A chest of 1000 x 600 is on the middle of a bed of 2000 x 700, or so far off it either way."""
    chest = Body("parts[chest]", "chest", (Block((-0.5, -0.3, 0.5), (0.5, 0.3, 1.3)),), NOTHING, True, "yes", "part")
    places = [exactly(0.0), exactly(0.0), exactly(0.8)]
    in_doubt = replace(chest, doubt=(off, 0.0, 0.0) if axis == 0 else (0.0, off, 0.0))
    sleeper = [("owner", Person(height=exactly(1.7)))]
    bed = Bed("parts[bed]", "bed", Place(places[0], places[1], places[2], (2.0, 0.7, 0.1)), 0.0, ("owner",))
    assert [one.sure for one in taken_beds([in_doubt], [bed], sleeper, {})] == [found]
    places[axis] = Band(0.0, -off, off, spread="interval")
    bed = Bed("parts[bed]", "bed", Place(places[0], places[1], places[2], (2.0, 0.7, 0.1)), 0.0, ("owner",))
    assert [one.sure for one in taken_beds([chest], [bed], sleeper, {})] == [found]


def test_nobody_tells_how_long_the_sleeper_is_and_it_is_asked() -> None:
    nobody = (("height: 5' 5\", ", ""),)
    assert kinds(CHEST % (0, 2, "1 x 20 x 20", ""), nobody) == ["unknown"]


def test_what_hangs_so_low_over_the_mattress_that_nobody_lies_there_is_told() -> None:
    """By hand: the bed's top is 29 in up, a body on its side takes 250 mm: 38.8 in."""
    flat = (("folds: up, folded_depth: 4, hinge: {edge: left}", "mattress: 70 x 28 x 4"),)
    shelf = "  shelf: {x: 40, side: left, z: %s, size: 20 x 14 x 2, weight: 1, stage: lined, done: yes}\n"
    assert kinds(shelf % 42, flat) == ["stop"]
    assert kinds(shelf % 43, flat) == []
    assert "bed cannot be slept in: shelf is on it at night, or low over it" in words(NIGHT, flat, shelf % 42)
    (one,) = [one for one in said(flat, shelf % 42) if one.code == NIGHT]
    assert one.act == "Give shelf or bed another place", "it is screwed on"
    (chest,) = [one for one in said((), CHEST % (20, 2, "20 x 20 x 20", "")) if one.code == NIGHT]
    assert "Put chest elsewhere for the night" in (chest.act or "")
    assert kinds(shelf.replace("20 x 14", "20 x 4") % 32, flat) == []  # 24 in are left of the 23.6 in of shoulders
    assert kinds(shelf.replace("20 x 14", "20 x 5") % 32, flat) == ["stop"]
    beside = shelf.replace("side: left", "side: left+28")
    assert kinds(beside % 32, flat) == []


def test_what_only_stands_elsewhere_at_night_is_no_bed() -> None:
    table = "  table: {x: 100, side: centre, z: 20, size: 20 x 20 x 2, weight: 1, done: yes, stage: lined"
    table += ", when_sleeping: {x: 134, side: centre, z: 10}}\n"
    assert told(NIGHT, (), table) == []
    assert told("layout/one-space", (), table) == [("fix", "parts[crate]")]


def test_a_crate_on_one_of_several_beds_in_one_box_is_asked_about() -> None:
    cots = (("folds: up, folded_depth: 4, hinge: {edge: left}", "count: 2"),)
    assert kinds(CHEST % (20, 2, "20 x 20 x 20", ""), cots) == ["unknown"]
    assert kinds("", cots) == []


def test_the_same_thing_is_not_told_twice() -> None:
    lamp = (("lamp: {x: 40, side: left+4, z: 60", "lamp: {x: 40, side: left+4, z: 30"),)
    assert len([one for one in said(lamp) if one.code == NIGHT]) == 1


@pytest.mark.parametrize(("height", "found"), [(0.76, []), (0.83, ["perhaps"])])
def test_a_bed_that_may_be_lower_than_its_best_guess_may_have_more_standing_over_it(
    height: float, found: list[str]
) -> None:
    """The top is at 0.85 m, its height 80 mm in doubt: at worst one lies from 5 mm over 0.77 m on."""
    middle = (exactly(0.0), exactly(0.0), Band(0.80, 0.76, 0.84, spread="interval"))
    bed = Bed("parts[bed]", "bed", Place(*middle, (2.0, 0.7, 0.1)), 0.0, ("owner",))
    chest = Body("parts[chest]", "chest", (Block((-0.5, -0.3, 0.5), (0.5, 0.3, height)),), NOTHING, True, "yes", "part")
    taken = taken_beds([chest], [bed], [("owner", Person(height=exactly(1.7)))], {})
    assert [one.sure for one in taken] == found
