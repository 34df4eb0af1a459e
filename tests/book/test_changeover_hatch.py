"""A hatch in the roof as a way out during a change-over: over the bed, beside it, under panels, shut for good."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from boxwright.book.changeover_ends import ends_of
from boxwright.book.changeover_setting import Making
from boxwright.disciplines.layout.changeover import Freed, Leaving
from boxwright.disciplines.layout.changeover_exits import exits_at
from boxwright.disciplines.layout.changeover_leaving import leaving
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

TEXT = (Path(__file__).resolve().parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
LIGHTS = "lights:          {side: centre-20"
BUNK = "bunk:            {x: 78, side: left+1, z: floor+25"
FAN = "  roof-fan:     {wall"
HATCH = (
    "  hatch: {wall: roof, x: 103, width: 24, across: 21, side: left+3, stage: roof, cut: yes, done: yes 2026-03-14, "
    "release: inside, clear: {width: 22, height: 19}, swing: {hinge: front, opens: out, to: 80 deg}}\n"
)
SHUT = ("release: inside, swing: {hinge: front, opens: out, to: 170", "release: none, swing: {hinge: front, to: 170")


@cache
def board(hatch: str, door: bool = True, bunk: str = BUNK) -> Board:
    """Return the night of Whimbrel as it will stand, with a hatch."""
    assert TEXT.count(FAN) == 1 and TEXT.count(SHUT[0]) == 1
    assert TEXT.count(LIGHTS) == 1
    text = TEXT.replace(FAN, hatch + FAN).replace(LIGHTS, LIGHTS.replace("-20", "+0"))  # out from under the hatch
    assert TEXT.count(BUNK) == 1
    text = text.replace(BUNK, bunk)
    rig = read_rig(text if door else text.replace(*SHUT)).rig
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    slot = study(rig, date(2026, 5, 2), stage=10, use="tow", ticked=False).slots[0]
    return Board(Making(rig, slot, start, goal).setting(1.0))


def exits(hatch: str) -> tuple[Freed, ...]:
    found = board(hatch)
    return exits_at(found, found.state(is_goal=True))


def out(hatch: str) -> Leaving:
    """Return how everybody gets out where nobody opens the door from inside."""
    found = board(hatch, door=False)
    return leaving(found, found.state(is_goal=True))


def test_a_hatch_over_the_bed_that_opens_from_inside_is_a_way_out() -> None:
    only = out(HATCH)
    assert only.word == "found" and {by for _, by, _ in only.ways} == {"hatch"}
    assert out(HATCH.replace("release: inside", "release: none")).word != "found"


def test_nothing_is_carried_through_it() -> None:
    gates = {one.name: one for one in board(HATCH).setting.gates}
    assert gates["hatch"].wall == "roof" and not gates["hatch"].carries
    assert gates["side-door"].carries


@pytest.mark.parametrize(
    ("old", "new", "word", "by"),
    [
        ("", "", "free", ()),
        ("side: left+3,", "side: left+20,", "blocked", ("solar-2",)),  # panels over it
        ("side: left+3,", "side: left+1,", "free", ()),  # a bar close under it leaves 19 in clear beside it
        ("side: left+3,", "side: right-1,", "unknown", ()),  # over the floor: nobody knows how one gets up there
        ("release: inside", "release: none", "shut", ()),
        ("release: inside, ", "", "unknown", ()),
    ],
)
def test_it_counts_only_for_what_is_known_of_it(old: str, new: str, word: str, by: tuple[str, ...]) -> None:
    found = next(one for one in exits(HATCH.replace(old, new, 1)) if one.name == "hatch")
    assert (found.word, tuple(sorted(found.by))) == (word, by)


@pytest.mark.parametrize(("height", "word"), [("22", "free"), ("21", "unknown")])
def test_from_a_low_bed_nobody_knows_whether_one_gets_up_through_it(height: str, word: str) -> None:
    """The room is 76 1/4 in high, bed and mattress 8: at 21 in that leaves 47 1/4 in, 1.2002 m, and 1.2 m counts."""
    found = board(HATCH, bunk=BUNK.replace("floor+25", f"floor+{height}"))
    hatch = next(one for one in exits_at(found, found.state(is_goal=True)) if one.name == "hatch")
    assert hatch.word == word


def test_a_hole_nobody_gets_through_is_not_told_as_a_way_out_and_a_narrow_one_is_to_be_tried() -> None:
    """Under 300 mm nobody gets through, from 450 mm on it is not asked about: 11 in, and 17 in, of a hole."""
    for across, word in (("11", None), ("17", "tight")):
        words = {one.name: one.word for one in exits(HATCH.replace("across: 21", f"across: {across}"))}
        assert words["side-door"] == "free" and words.get("hatch") == word and "roof-fan" not in words
