"""Doors of a change-over: one that slides is known, and none lets more through than its leaf leaves of its hole."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.book.changeover import ChangeOver, change_over
from boxwright.book.changeover_ends import End, ends_of
from boxwright.book.changeover_setting import Making
from boxwright.book.changeover_words import asked_words, headline
from boxwright.disciplines.layout.changeover import Changed, Setting
from boxwright.disciplines.layout.changeover_scene import Board
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.at_night import exits_at_night
from boxwright.study.slots import Slot, study
from boxwright.study.standing import cut

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
LATCH = "  latch: {x: 3400, side: left, z: 0, size: 50 x 50 x 50, weight: 1, stage: all, done: yes, release: door}"
GEN = "  gen: {x: 2650, side: right+800, z: -300, size: 600 x 500 x 500, weight: 5, stage: all, done: yes}"


def ends(leaf: str, crate: str, more: str, door: str, release: str = "inside") -> tuple[Rig, Slot, End, End]:
    text = RIG.replace("LEAF", leaf).replace("CRATE", crate).replace("MORE\n", more and f"{more}\n")
    text = text.replace("release: inside", f"release: {release}")
    rig = read_rig(text.replace("x: 2600", door)).rig
    start, goal = ends_of(rig)
    assert start is not None and goal is not None
    return rig, study(rig, date(2026, 6, 1)).slots[0], start, goal


def changed(
    leaf: str, crate: str = "400 x 400 x 400", more: str = "", door: str = "x: 2600", release: str = "inside"
) -> ChangeOver:
    return change_over(*ends(leaf, crate, more, door, release))


def making(leaf: str, crate: str, more: str) -> Setting:
    return Making(*ends(leaf, crate, more, "x: 2600")).setting(1.0)


@pytest.mark.parametrize("leaf", [SWINGS % 170, SLIDES % 700])
def test_a_door_that_opens_wide_is_known_and_lets_a_crate_and_people_out(leaf: str) -> None:
    found = changed(leaf)
    assert (found.there.word, found.asks) == ("found", ())
    assert [one.word for one in found.there.before] == ["free"]
    assert found.out is not None
    assert found.out.word == "found"


@pytest.mark.parametrize(("now", "word"), [("screwed shut", "untried"), ("shut", "found")])
def test_a_ticked_door_of_which_something_else_is_written_is_to_be_tried(now: str, word: str) -> None:
    ticked = f"x: 2600, stage: all, done: yes, now: {now}"
    found = changed(SWINGS % 170, door=ticked)
    assert found.out is not None
    assert found.out.word == word
    latched = changed(SWINGS % 170, door=ticked, more=LATCH)
    assert latched.out is not None
    assert latched.out.word == word  # what releases it does not make up for what may keep it shut
    barred = changed(SWINGS % 170, door=ticked, release="none")
    assert barred.out is not None
    assert barred.out.word == "blocked"


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


@pytest.mark.parametrize(("leaf", "word"), [(SLIDES % 350, "found"), (SLIDES % "200..700", "unknown")])
def test_a_door_that_may_be_too_small_is_to_be_tried(leaf: str, word: str) -> None:
    """By hand: 350 mm let a crate of 300 mm through; nobody knows that 200 to 700 mm do."""
    found = changed(leaf, "300 x 300 x 300")
    assert found.there.word == word
    assert [one.word for one in found.there.before] == ["unknown"]
    assert found.out is not None
    assert found.out.word == "untried"  # neither a way out nor that there is none


POST = "  post: {x: 2100, side: right-5, z: 0, size: 60 x 30 x 1700, weight: 9, stage: all, done: yes%s}\n"
TO_THE_LEFT = ", when_sleeping: {x: 2100, side: left+60, z: 0}"
INSIDE = SLIDES % 700
"""The leaf is 700 long and slides forward along the lining, past 2560 to 1900 and lower."""


def exits_of(found: ChangeOver) -> list[tuple[str, tuple[str, ...]]]:
    """Return the word for the door and what is in its way: before, after each move there, then after each back."""
    steps = [found.there.before, *(one.exits for one in (*found.there.steps, *found.back.steps))]
    return [(one.word, one.by) for exits in steps for one in exits]


def test_a_leaf_is_judged_by_what_stands_in_its_way_at_each_moment() -> None:
    """By hand: the post's rear face is at 2160, 440 mm before the leaf at 2600: 440 of 700 come free, which is tight.

    At night it stands at the other wall: all of the hole but what the frame takes is free.
    """
    found = changed(INSIDE, more=POST.rstrip() % TO_THE_LEFT)
    assert found.there.word == found.back.word == "found"
    said = exits_of(found)
    assert said[0] == ("unknown", ("post",))
    moved = next(number for number, one in enumerate(found.there.steps) if one.name == "post")
    assert set(said[: moved + 1]) == {("unknown", ("post",))}
    assert said[len(found.there.steps)] == ("free", ())
    assert said[-1] == ("unknown", ("post",))


def test_what_gets_its_place_on_the_bed_is_not_in_the_way_of_who_lies_there() -> None:
    """A roll nearly as long and wide as the bed and 900 high: if it stood there for itself, nobody would come past."""
    roll = "  roll: {x: 300, side: right-5, z: 0, size: 1850 x 680 x 900, weight: 3, stage: all, done: yes"
    found = changed(SWINGS % 170, more=f"{roll}, when_sleeping: {{x: 130, side: left+10, z: 650}}}}")
    assert found.there.word == "found"
    assert found.out is not None
    assert [(one.word, one.by) for one in found.out.exits] == [("free", ())]


def test_what_stands_in_the_way_of_a_leaf_only_at_night_takes_nothing_by_day() -> None:
    post = POST.replace("x: 2100, side: right-5", "x: 2400, side: left+60")
    found = changed(INSIDE, more=post.rstrip() % ", when_sleeping: {x: 2400, side: right-5, z: 0}")
    said = exits_of(found)
    assert said[0] == ("free", ())
    assert said[len(found.there.steps)] == ("blocked", ("post",))  # 140 mm are left of it
    assert found.out is not None
    assert found.out.word == "found" and [one.name for one in found.out.steps] == ["post"]


@pytest.mark.parametrize(
    ("door", "more", "said"),
    [
        ("x: 200", "", ("blocked", ("the front wall",))),  # 200 mm come free before the leaf is in the corner
        ("x: 400", "", ("unknown", ("the front wall",))),
        ("x: 2600", GEN.replace("500 x 500, w", "500 x 2300, w"), ("blocked", ("gen",))),  # 50 mm left beside it
        ("x: 2600", GEN.replace("right+800", "right+1500").replace("500 x 500, w", "500 x 2300, w"), ("free", ())),
        ("x: 2600", POST.replace("right-5,", "right-75+-20,").rstrip() % "", ("free", ())),  # the leaf is 40 mm thick
        ("x: 2600", POST.replace("right-5,", "right-55+-20,").rstrip() % "", ("unknown", ("post",))),
    ],
)
def test_walls_and_what_is_close_outside_stop_people_and_doubt_counts_once(
    door: str, more: str, said: tuple[str, tuple[str, ...]]
) -> None:
    found = changed(INSIDE, more=more.rstrip(), door=door)
    assert exits_of(found)[0] == said


def test_a_way_through_a_hole_that_was_found_is_not_taken_where_less_of_it_is_left() -> None:
    """The hole is whole first, and a way through it is found; with the post where it is at night 250 mm are left."""
    post = POST.replace("x: 2100, side: right-5", "x: 2290, side: left+60")
    made = Board(making(INSIDE, "300 x 300 x 300", post.rstrip() % ", when_sleeping: {x: 2290, side: right-5, z: 0}"))
    door, post_at, crate = (made.index[of] for of in ("openings[door]", "parts[post]", "parts[cr]"))
    start = made.state(is_goal=False)
    narrow = tuple(1 if number == post_at else pose for number, pose in enumerate(start))
    assert made.can_carry(crate, 1, door, False, start)
    assert not made.can_carry(crate, 1, door, False, narrow)


def test_a_place_at_night_that_is_only_half_written_is_asked_for() -> None:
    found = changed(INSIDE, more=POST.rstrip() % ", when_sleeping: {side: left+60}")
    assert found.asks == ("where post is at night: write x, side and z of its when_sleeping",)
    assert "post" not in {step.name for step in found.there.steps}


@pytest.mark.parametrize(("x", "word"), [(2160, "found"), (2290, "blocked")])
def test_nothing_is_carried_through_more_of_a_hole_than_its_leaf_leaves_just_then(x: int, word: str) -> None:
    """By hand: a post whose rear face is at 2220 leaves 380 mm for a crate of 300, one at 2350 leaves 250."""
    post = POST.replace("x: 2100", f"x: {x}")
    assert changed(INSIDE, "300 x 300 x 300", post.rstrip() % "").there.word == word


def test_a_slide_without_a_length_is_asked_for() -> None:
    found = changed("slides: {to: front, runs: inside}")
    assert found.asks == ("how far door slides: write its slides by",)
    assert found.there.word == "unknown"


def test_a_crate_too_large_for_every_opening_is_told_so() -> None:
    large = changed(SWINGS % 170, "1800 x 1000 x 1900").there.meets
    assert large == (("cr", "the frame of every opening, being too large for each"),)


POCKET = "slides: {to: rear, by: %s, runs: in the wall}"
SOCKET = "  socket: {x: 3500, side: right+20, z: 900, size: 80 x 60 x 80, weight: 0.2, stage: all, done: yes}"


def judged_at_night(leaf: str, more: str, door: str) -> list[tuple[str, bool, bool]]:
    """Return of each way out what check says of it at night: its name, is it held shut, may it be."""
    rig, slot, _, goal = ends(leaf, "400 x 400 x 400", more, door)
    exits = exits_at_night(rig, slot, cut(rig, slot.number, slot.is_ticked, goal.load, "sleep"))
    return [(one.way.name, one.is_held_shut or one.is_too_small, one.may_be_held_shut) for one in exits]


@pytest.mark.parametrize(
    ("leaf", "more", "word"),
    [
        (POCKET % 690, "", "blocked"),  # the first stud behind the door ends it after 282 of 690 mm
        (POCKET % 200, "", "blocked"),
        (SWINGS % 170, GEN, "blocked"),
        (SLIDES % 700, POST.rstrip() % "", "unknown"),
        (SWINGS % 170, "", "free"),
    ],
)
def test_a_leaf_is_judged_at_night_as_check_judges_it(leaf: str, more: str, word: str) -> None:
    found = changed(leaf, more=more)
    assert found.out is not None
    assert [one.word for one in found.out.exits] == [word]
    ((_, is_shut, may_be),) = judged_at_night(leaf, more, "x: 2600")
    assert (is_shut, is_shut or may_be) == (word == "blocked", word != "free")


def test_a_leaf_that_strikes_studs_in_its_wall_carries_nothing_out_and_says_which() -> None:
    found = changed(POCKET % 690)
    assert found.there.word == "blocked"
    assert found.there.before[0].by[0].startswith("stud R")


def test_what_is_let_into_a_wall_ends_a_leaf_in_it_while_it_is_there() -> None:
    """By hand: the hole ends at 3300; the socket begins 200 mm behind it, the first stud of the wall farther."""
    (socket,) = (one for one in changed(POCKET % 690, more=SOCKET).there.before)
    assert (socket.word, socket.by) == ("blocked", ("socket",))


@pytest.mark.parametrize(
    ("turn", "crate", "word", "says"),
    [
        # By hand: beside a leaf of 700 mm at 45 degrees 495 mm are clear; straight out only 700 (1 - cos 45) = 205.
        (45, "200 x 200 x 200", "found", ""),
        (45, "400 x 400 x 400", "unknown", "whether it goes aslant past the leaf of door"),
        (45, "600 x 600 x 400", "blocked", "the leaf of door, which does not open far enough"),
        (45, "900 x 900 x 900", "blocked", "the frame of every opening, being too large for each"),
        ("unknown", "400 x 400 x 400", "unknown", "how far door opens"),
        ("unknown", "900 x 900 x 900", "blocked", "no opening that things are carried through"),
        ("20..90", "400 x 400 x 400", "unknown", "how far door opens"),
    ],
)
def test_what_a_leaf_leaves_is_told_as_it_is_known(turn: float | str, crate: str, word: str, says: str) -> None:
    found = changed((SWINGS % turn).replace("unknown deg", "unknown"), crate)
    assert (found.there.word, found.back.word) == (word, word)
    if word == "blocked":
        assert found.there.meets == (("cr", says),)
        assert found.asks == ()
    else:
        assert found.there.meets == ()
        assert [one for one in found.asks if one.startswith(says)] == list(found.asks)
        assert bool(found.asks) == bool(says)


def test_what_hangs_on_a_question_is_a_question() -> None:
    found = changed((SWINGS % "unknown").replace("unknown deg", "unknown"))
    assert headline(found.there, "road", "night") == "From road to night: not known. It hangs on what is asked below."
    assert any("write to: of its swing" in one for one in asked_words(found))


def test_the_door_that_stops_at_a_stud_is_named_with_what_stops_it() -> None:
    assert changed(POCKET % 690).there.meets == (("cr", "the leaf of door, which is stopped by stud R9"),)


def test_a_night_that_cannot_be_as_it_is_written_is_begun_from_as_one_comes_to_it() -> None:
    """A crate 700 mm tall stands where the bunk comes down, at 600: it stays outside at night, either way."""
    text = RIG.replace("LEAF", SWINGS % 170).replace("CRATE", "400 x 400 x 700").replace("MORE\n", "")
    text = text.replace("x: 2500, side: left, z: 0", "x: 900, side: left+200, z: 0").replace("out: [cr], ", "")
    rig = read_rig(text).rig
    road, night = ends_of(rig)
    assert road is not None and night is not None
    slot = study(rig, date(2026, 6, 1)).slots[0]
    to_bed, to_drive = change_over(rig, slot, road, night), change_over(rig, slot, night, road)
    assert (to_bed.there.word, to_bed.there.leave_out) == ("without", ("cr",))
    assert (to_drive.there.word, to_drive.there.leave_out) == ("without", ("cr",))
    for one, other in ((to_drive.there, to_bed.back), (to_drive.back, to_bed.there)):
        assert [(step.name, step.word) for step in one.steps] == [(step.name, step.word) for step in other.steps]
    assert to_drive.out == to_bed.out
    assert ("cr", "carry in") in {(step.name, step.word) for step in to_drive.there.steps}


def test_a_search_that_gives_up_says_that_it_gave_up() -> None:
    assert headline(Changed("not-found", states=7), "road", "night") == (
        "From road to night: not known. The search gave up after 7 states; there may be one."
    )
