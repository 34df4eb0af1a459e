"""What is brought in comes in by no more than what stands by then lets a leaf open. By hand, in inches.

The door is the hole from x = 20 to 48 in the right wall, 28 wide. A lath on the floor, 10 long, begins 10 behind the
hinge and 12 off the wall: a leaf of 28 that opens in meets its far corner, at 20 and 12, after atan(12 / 20) = 31
degrees, and leaves 28 (1 - cos 31) = 4 of its hole. A fridge of 24 is lifted over the lath, but not through that.
"""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.disciplines.layout.result import Brought
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.test_bringing import FRIDGE, HEAD

INWARD = "swing: {hinge: front, opens: in, to: 90 deg}"
OUTWARD = "swing: {hinge: front, opens: out, to: 90 deg}"
BOTH = "swing: {hinge: both sides, opens: in, to: 90 deg}"
LATH = "lath: {x: 30, side: right-12, z: 0, size: 10 x 4 x 4, weight: 4, stage: now, done: yes}"
STEP = "step: {x: 30, side: right+14, z: 2, size: 10 x 4 x 4, weight: 4, stage: now, done: yes}"
Told = list[tuple[str, tuple[str, ...], tuple[str, ...], tuple[str, ...]]]


def text_of(leaf: str, *parts: str, wide: str = "28") -> str:
    hole = "width: {}, z: 0, height: 70, cut: yes"
    head = HEAD.replace(hole.format(28), f"{hole.format(wide)}, {leaf}")
    return head.replace("DOORS\n", "").replace("PARTS", "\n".join(f"  {part}" for part in (*parts, FRIDGE)))


def mirrored(text: str) -> str:
    swapped = {"wall: right": "wall: left", "side: right-": "side: left+", "side: right+": "side: left-"}
    for old, new in {"side: left, z": "side: right, z", **swapped}.items():
        text = text.replace(old, new)
    return text


def brought_of(text: str) -> tuple[Brought, ...]:
    read = read_rig(text)
    assert [one.says for one in read.problems if one.kind == "problem"] == []
    found = study(read.rig, date(2026, 5, 2)).slots[0].layout
    assert found is not None
    return found.brought


def told(text: str) -> Told:
    return [(one.word, names(one.by), names(one.doors), names(one.held)) for one in brought_of(text)]


def names(some: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    return tuple(name for _, name in some)


def words(text: str) -> str:
    found = study(read_rig(text).rig, date(2026, 5, 2)).findings("tow")
    return "; ".join(one.says for one in found if one.code == "layout/brought-in")


CLEAR: Told = []
NO_WAY: Told = [("no way", ("lath",), (), ())]
"""The lath ends the leaf after 31 degrees, and beside it 28 sin 31 = 14 are clear for a fridge of 24."""
NO_HOLE: Told = [("no hole", (), (), ("lath",))]
DOUBT: Told = [("doubt", ("lath",), ("door",), ("lath",))]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("leaf", "thing", "expected"),
    [
        (INWARD, LATH, NO_WAY),
        (INWARD.replace("front", "rear"), LATH, NO_WAY),
        (INWARD, LATH.replace("right-12", "right-30"), CLEAR),  # farther off than the leaf is wide
        (OUTWARD, LATH, CLEAR),
        (OUTWARD, STEP, [("no hole", (), (), ("step",))]),
        (INWARD, STEP, CLEAR),
        (INWARD, LATH.replace("x: 30", "x: 20..60"), DOUBT),
        (INWARD, LATH.replace("x: 30", "x: 28..32"), NO_WAY),  # wherever it is
        (INWARD, LATH.replace("10 x 4 x 4", "1 x 1 x 1").replace("x: 30", "x: 20"), CLEAR),  # at the hinge, 85 degrees
        (BOTH, LATH, CLEAR),  # neither leaf of 14 comes so far
        (BOTH, LATH.replace("right-12", "right-8"), NO_HOLE),  # each after asin(8 / 14) = 35 degrees
        (BOTH, LATH.replace("right-12", "right-8").replace("x: 30", "x: 20"), [("no way", ("lath",), (), ())]),
        ("slides: {to: rear, by: 28, runs: outside}", STEP.replace("x: 30", "x: 60"), CLEAR),  # 14 off the wall
        ("slides: {to: rear, by: 28, runs: outside}", STEP.replace("x: 30", "x: 60").replace("+14", "+2.5"),
         [("no way", ("step",), (), ())]),
        ("slides: {to: rear, by: 28}", STEP.replace("x: 30", "x: 60").replace("+14", "+2.5"),
         [("doubt", (), ("door",), ("step",))]),
    ],
)  # fmt: skip
def test_a_door_is_as_wide_as_what_its_leaf_strikes_lets_it(
    leaf: str, thing: str, expected: Told, turned: bool
) -> None:
    text = text_of(leaf, thing)
    assert told(mirrored(text) if turned else text) == expected


@pytest.mark.parametrize(
    ("leaf", "wide", "expected"),
    [
        (INWARD, "24..30", CLEAR),
        (INWARD, "23..30", [("doubt", (), ("door",), ())]),
        (INWARD, "20..23", [("large", (), (), ())]),
        ("swing: {hinge: front, opens: in, to: 85..90 deg}", "28", CLEAR),  # 28 (1 - cos 85) = 25.6
        ("swing: {hinge: front, opens: in, to: 80..90 deg}", "28", [("doubt", (), ("door",), ())]),  # 23.1
        # beside the leaf, aslant: 28 sin 60 = 24.2, 28 sin 58 = 23.7
        ("swing: {hinge: front, opens: in, to: 50..60 deg}", "28", [("doubt", (), ("door",), ())]),
        ("swing: {hinge: front, opens: in, to: 50..58 deg}", "28", [("no way", (), (), ())]),
        ("swing: {hinge: front, opens: in, to: unknown}", "28", [("doubt", (), ("door",), ())]),
        ("swing: {hinge: front, opens: in}", "28", CLEAR),
        ("swing: {hinge: somewhere, opens: in, to: 70 deg}", "28", [("doubt", (), ("door",), ())]),
        ("slides: {to: rear, by: 24..28, runs: outside}", "28", CLEAR),
        ("slides: {to: rear, by: 23..28, runs: outside}", "28", [("doubt", (), ("door",), ())]),
        ("slides: {to: rear, by: 12..23, runs: outside}", "28", [("no way", (), (), ())]),
    ],
)
def test_between_the_ends_of_a_band_nobody_knows(leaf: str, wide: str, expected: Told) -> None:
    """A fridge of 24: clear only by the narrow end, no way only by the wide one."""
    assert told(text_of(leaf, wide=wide)) == expected


def test_the_words_name_what_holds_the_leaf() -> None:
    said = words(text_of(INWARD, LATH))
    assert "no way was found to bring fridge in" in said and said.endswith("70 in): lath is in the way")
    said = words(text_of(BOTH, LATH.replace("right-12", "right-8")))
    assert "no opening that fridge could be brought in through is known to open far enough: lath is in the way of" in (
        said
    )
    doubt = words(text_of(INWARD, LATH.replace("x: 30", "x: 20..60")))
    assert (
        "there is one if lath is not in the way and door is there and opens far enough, and that is not sure" in doubt
    )
    assert "lath may keep it from opening" in doubt


def test_what_is_brought_in_holds_no_leaf_itself() -> None:
    """The fridge itself stands where the leaf comes: it is not there yet."""
    text = text_of(INWARD).replace("fridge: {x: 100, side: left", "fridge: {x: 30, side: right-12")
    assert told(text) == CLEAR


@pytest.mark.parametrize(
    ("leaf", "thing", "expected"),
    [
        (INWARD, LATH.replace("now, done: yes", "last"), CLEAR),  # of one stage the one that must comes first
        (INWARD, LATH.replace("now, done: yes", "next"), NO_WAY),
        (INWARD, LATH.replace("x: 30", "x: 39.55").replace("right-12", "right-19.9"), CLEAR),  # grazed by 27.9 of 28
        ("swing: {hinge: front, opens: sideways, to: 90 deg}", LATH, [("doubt", (), ("door",), ())]),
    ],
)
def test_what_holds_a_leaf_is_what_is_there_by_then(leaf: str, thing: str, expected: Told) -> None:
    assert told(text_of(leaf, thing)) == expected


@pytest.mark.parametrize(
    ("x", "expected"), [("20", CLEAR), ("18..21", CLEAR), ("18..24", [("doubt", (), ("door",), ())])]
)
def test_a_door_that_may_stand_elsewhere_is_sure_only_where_it_is_anyway(x: str, expected: Told) -> None:
    """28 in less 3 in either way it may be off leaves 22: less than the fridge."""
    assert told(text_of(INWARD).replace("door: {wall: right, x: 20", f"door: {{wall: right, x: {x}")) == expected


def test_a_wall_that_ends_the_way_of_a_leaf_is_named() -> None:
    """Hinged 2 in before the front wall, a leaf that slides forward has no more than that."""
    found = brought_of(text_of("slides: {to: front, by: 20, runs: inside}").replace("x: 20, width", "x: 2, width"))
    assert [one.word for one in found] == ["no hole"]
    assert found[0].held == (("the front wall", "the front wall"),)


def test_what_surely_holds_a_door_is_named_alone_where_nothing_else_is_in_the_way() -> None:
    """Half of the pair opens: 14 in and what the other leaves; an idle box elsewhere bars nothing."""
    idle = "idle: {x: 130, side: right-4, z: 0, size: 10 x 10 x 10, weight: 4, stage: now, done: yes}"
    text = text_of(BOTH, LATH.replace("right-12", "right-8").replace("x: 30", "x: 20"), idle)
    assert told(text) == [("no way", ("lath",), (), ())]
