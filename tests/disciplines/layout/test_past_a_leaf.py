"""A leaf that opens in stands in the way of what is carried in past it; one in its wall lets in what its pocket does.

By hand, in inches: the door is the hole from x = 20 to 48 in the right wall at y = 40. Hinged at its front edge and
open by a right angle it stands at x = 20 from y = 40 to 12. A counter fills the left of the room as far as y = 0, so
that 12 are left between the two: a chest of 18 does not come past to the front, one of 11 does.
"""

from __future__ import annotations

import pytest

from tests.disciplines.layout.test_bringing import HEAD
from tests.disciplines.layout.test_held_doors import brought_of, told, words

HOLE = "width: 28, z: 0, height: 70, cut: yes"
COUNTER = "counter: {x: 0, side: left, z: 0, size: 110 x 40 x 70, weight: 90, stage: now, done: yes}"
CHEST = "chest: {x: 0, side: right, z: 0, size: %s, weight: 30, stage: last}"
FRONT = "swing: {hinge: front, opens: in, to: %s}"


def text_of(leaf: str, *parts: str) -> str:
    head = HEAD.replace(HOLE, f"{HOLE}, {leaf}").replace("DOORS\n", "")
    return head.replace("PARTS", "\n".join(f"  {part}" for part in parts))


def mirrored(text: str) -> str:
    swapped = {"wall: right": "wall: left", "side: left, z": "side: RIGHT, z", "side: right, z": "side: left, z"}
    for old, new in {**swapped, "RIGHT": "right"}.items():
        text = text.replace(old, new)
    return text


@pytest.mark.parametrize("is_mirrored", [False, True])
@pytest.mark.parametrize(
    ("leaf", "size", "words"),
    [
        (FRONT % "90 deg", "18 x 20 x 24", ["no way"]),
        (FRONT % "90 deg", "11 x 12 x 13", []),  # 11 wide between the leaf and the counter
        ("swing: {hinge: rear, opens: in, to: 90 deg}", "18 x 20 x 24", []),  # the leaf stands at x = 48, behind it
        ("swing: {hinge: front, opens: out, to: 90 deg}", "18 x 20 x 24", []),
        (FRONT % "170 deg", "18 x 20 x 24", ["doubt"]),  # laid back to the front wall, over where the chest will stand
        (FRONT % "80..100 deg", "18 x 20 x 24", ["doubt"]),
        ("slides: {to: front, by: 28, runs: inside}", "18 x 20 x 24", ["doubt"]),  # along the wall, likewise
        ("slides: {to: front, by: 28, runs: outside}", "18 x 20 x 24", []),
    ],
)
def test_a_leaf_that_opens_in_is_in_the_way_of_what_is_carried_past_it(
    leaf: str, size: str, words: list[str], is_mirrored: bool
) -> None:
    text = text_of(leaf, COUNTER, CHEST % size)
    found = [one.word for one in brought_of(mirrored(text) if is_mirrored else text)]
    assert found == words


def test_the_leaf_is_named() -> None:
    text = text_of(FRONT % "90 deg", COUNTER, CHEST % "18 x 20 x 24")
    assert told(text) == [("no way", ("counter", "the leaf of door, which opens in,"), (), ())]
    assert "through door (28 x 70 in): counter and the leaf of door, which opens in, are in the way" in words(text)


def test_a_leaf_over_its_own_place_is_a_question_that_a_box_of_card_answers() -> None:
    text = text_of(FRONT % "170 deg", COUNTER, CHEST % "18 x 20 x 24")
    assert told(text) == [("doubt", ("the leaf of door",), (), ())]
    assert "there is one if the leaf of door is not in the way, and that is not sure" in words(text)
    aside = text_of(FRONT % "170 deg", COUNTER, CHEST.replace("side: right", "side: right-20") % "18 x 20 x 24")
    assert told(aside) == []  # the front wall stops the leaf with its edge sqrt(28^2 - 20^2) = 19.6 off the right one


@pytest.mark.parametrize(
    ("slides", "size", "expected"),
    [
        ("to: rear, by: 28", "18 x 20 x 24", [("no way", ("stud R4",), (), ())]),  # 15 1/4 to the stud at 64
        ("to: rear, by: 28", "13 x 14 x 15", []),
        ("to: front, by: 28", "13 x 14 x 15", [("no hole", (), (), ("stud R0", "stud R1"))]),  # 3 1/2
        ("to: rear, by: 12", "18 x 20 x 24", [("no way", (), (), ())]),  # it goes no farther
    ],
)
def test_a_door_in_its_wall_lets_in_what_its_pocket_leaves(
    slides: str, size: str, expected: list[tuple[str, tuple[str, ...], tuple[str, ...], tuple[str, ...]]]
) -> None:
    text = text_of(f"slides: {{{slides}, runs: in the wall}}", CHEST.replace("x: 0", "x: 100") % size)
    assert told(text) == expected
