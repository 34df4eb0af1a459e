"""How long each move takes, how many hands it wants and how high things are carried: each by hand, in the same room."""

from __future__ import annotations

import pytest

from boxwright.book.changeover import ChangeOver
from tests.book.test_changeover_card import MINI, moves, told

CHEST = "  chest:  {x: 60, side: left+2, z: 0, size: 16 x 16 x 16, weight: 20, kind: cargo}\n"
DOOR = "  door: {wall: right, x: 10,"
FLAP = "  flap: {x: 20, side: left, z: 30, size: 20 x 20 x 2, weight: 10, folds: up, hinge: {edge: left}%s}\n"


def room(*edits: tuple[str, str]) -> ChangeOver:
    """Return the change-over of the small room, in which a chest goes out for the night, with some edits."""
    text = MINI
    for old, new in edits:
        assert old in text, old
        text = text.replace(old, new)
    return told(text)


def seconds(one: ChangeOver, name: str) -> float:
    return next(step.seconds for step in one.there.steps if step.name == name)


def test_a_strap_is_undone_beside_carrying() -> None:
    strap = "straps:\n  s: {over: chest, to: [d-ring 1], wll: 500}\nloads:\n"
    assert seconds(room(("loads:\n", strap)), "chest") == 40.0 + 20.0


def test_a_long_thing_is_turned_on_its_way() -> None:
    """72 in long along the room, before a door 30 in wide: it is turned to go out."""
    pole = CHEST.replace("x: 60, side: left+2, z: 0, size: 16 x 16 x 16", "x: 2, side: right-6, z: 0, size: 72 x 4 x 4")
    one = room((CHEST, pole), ("locker: {x: 45", "locker: {x: 78"))
    assert [step.is_turned for step in one.there.steps if step.name == "chest"] == [True]
    assert seconds(one, "chest") == 40.0 + 30.0


@pytest.mark.parametrize(("legs", "takes"), [("", 60.0), (", legs: {at: [22, 36], side: +17, size: 2 x 2 x 30}", 80.0)])
def test_a_leaf_takes_a_minute_and_its_legs_a_third_of_one_more(legs: str, takes: float) -> None:
    one = room((CHEST, CHEST + FLAP % legs), ("sleeps: bed", "sleeps: flap"))
    assert "let down flap" in moves(one.there)
    assert seconds(one, "flap") == takes


def test_a_ramp_and_a_window_take_as_long_as_they_are_heavy_to_open() -> None:
    assert seconds(room(("hinge: front, opens: out", "hinge: bottom, opens: out")), "door") == 30.0
    assert seconds(room(), "door") == 10.0


def test_through_a_window_one_climbs() -> None:
    """By hand: 20 s to rise, the way at half a metre a second, 10 s to open it, 20 s to climb through it."""
    one = room(
        (DOOR, "  door: {wall: right, x: 85,"),
        ("z: 0, height: 72", "z: 30, height: 30"),
        ("16 x 16 x 16", "16 x 16 x 4"),
    )
    assert one.out is not None and one.out.seconds == pytest.approx(20.0 + one.out.ways[0][2] / 0.5 + 10.0 + 20.0)


@pytest.mark.parametrize(("weight", "hands"), [("24.5 kg", 1), ("25.5 kg", 2), ("49 kg", 2), ("51 kg", 3)])
def test_one_carries_25_kg_and_two_50(weight: str, hands: int) -> None:
    one = room(("16 x 16 x 16, weight: 20", f"16 x 16 x 16, weight: {weight}"))
    assert next(step.hands for step in one.there.steps if step.name == "chest") == hands


@pytest.mark.parametrize(
    ("high", "weight", "word"),
    [
        ("46", "20", "found"),
        ("48.5", "20", "blocked"),
        ("22.8", "30 kg", "found"),
        ("24.4", "30 kg", "blocked"),
    ],
)
def test_one_lifts_a_thing_over_1_2_and_two_over_0_6(high: str, weight: str, word: str) -> None:
    """A cabinet from wall to wall between the chest and the door, and the chest 16 in high under a room of 78."""
    one = room(
        (
            "locker: {x: 45, side: left, z: 0, size: 10 x 40 x 77",
            f"locker: {{x: 45, side: left, z: 0, size: 10 x 78 x {high}",
        ),
        ("16 x 16 x 16, weight: 20", f"16 x 16 x 16, weight: {weight}"),
    )
    assert one.there.word == word


@pytest.mark.parametrize(("sill", "word"), [("0.57 m", "found"), ("0.63 m", "blocked")])
def test_things_are_carried_over_a_sill_of_0_6(sill: str, word: str) -> None:
    assert room(("z: 0, height: 72", f"z: {sill}, height: 40")).there.word == word
