"""Doors of a change-over: one that slides is known, and none lets more through than its leaf leaves of its hole."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.book.changeover import ChangeOver, change_over, ends_of
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

RIG = """\
boxwright: 1
rig: Small
units: {length: mm, weight: kg, temperature: C}
countries: [EU-DE]
class: cargo
today: {stage: all}
people:
  owner: {weight: 75, height: 1650, sleeps: bunk}
trailer:
  body: {length: 4000, width: 2000, height: 2000}
  outside: {length: 4080, width: 2080, over_fenders: 2400, height: 2600, length_overall: 5400}
  deck_height: 300
  coupler_x: -1300
  axles: {kind: leaf, x: [2200], gawr: [1800], track: 2200}
  gvwr: 1800
  empty: {weight: 700, tongue: 60, cg_z: 500}
frame:
  studs: {tube: 25 x 25 x 1.5, every: 400, first: 0}
openings:
  door: {wall: right, x: 2600, width: 700, z: 0, height: 1700, by: builder, cut: yes, release: inside, LEAF}
parts:
  bunk: {x: 100, side: left, z: 600, size: 1900 x 700 x 50, weight: 25, stage: all, done: yes, folds: up,
    folded_depth: 120, hinge: {edge: left}}
  cr: {x: 2500, side: left, z: 0, size: CRATE, weight: 5, kind: cargo}
MORE
stages:
  all: {what: all}
loads:
  road: {cargo: all, for: [tow]}
  night: {cargo: all, out: [cr], parked: yes, coupled: yes, people: [owner], for: [sleep, leave, work]}
"""
SWINGS = "swing: {hinge: front, opens: out, to: %s deg}"
SLIDES = "slides: {to: front, by: %s, runs: inside}"
GEN = "  gen: {x: 2650, side: right+800, z: -300, size: 600 x 500 x 500, weight: 5, stage: all, done: yes}"


def changed(leaf: str, crate: str = "400 x 400 x 400", more: str = "") -> ChangeOver:
    rig = read_rig(RIG.replace("LEAF", leaf).replace("CRATE", crate).replace("MORE\n", more and f"{more}\n")).rig
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    return change_over(rig, study(rig, date(2026, 6, 1)).slots[0], start, goal)


@pytest.mark.parametrize("leaf", [SWINGS % 170, SLIDES % 700])
def test_a_door_that_opens_wide_is_known_and_lets_a_crate_and_people_out(leaf: str) -> None:
    found = changed(leaf)
    assert (found.there.word, found.asks) == ("found", ())
    assert [one.word for one in found.there.before] == ["free"]
    assert found.out is not None
    assert found.out.word == "found"


@pytest.mark.parametrize(
    ("leaf", "more", "by"),
    [(SWINGS % 15, "", "its own leaf"), (SLIDES % 200, "", "its own leaf"), (SWINGS % 170, GEN, "gen")],
)
def test_a_door_that_opens_a_hands_breadth_lets_nobody_out_and_no_crate(leaf: str, more: str, by: str) -> None:
    found = changed(leaf, more=more)
    assert found.there.word == "blocked"
    assert [(one.word, one.by) for one in found.there.before] == [("blocked", (by,))]
    assert found.out is not None
    assert found.out.word == "blocked"


@pytest.mark.parametrize(("leaf", "word"), [(SLIDES % 350, "found"), (SLIDES % "200..700", "blocked")])
def test_a_door_that_may_be_too_small_is_to_be_tried(leaf: str, word: str) -> None:
    """By hand: 350 mm let a crate of 300 mm through; nobody knows that 200 to 700 mm do."""
    found = changed(leaf, "300 x 300 x 300")
    assert found.there.word == word
    assert [one.word for one in found.there.before] == ["unknown"]
    assert found.out is not None
    assert found.out.word == "not-found"  # neither a way out nor that there is none


def test_a_slide_without_a_length_is_asked_for() -> None:
    found = changed("slides: {to: front, runs: inside}")
    assert any("write its slides by" in one for one in found.asks)
    assert found.there.word == "blocked"


def test_a_crate_too_large_for_every_opening_is_told_so() -> None:
    large = changed(SWINGS % 170, "1800 x 1000 x 1900").there.meets
    assert large == (("cr", "the frame of every opening, being too large for each"),)
