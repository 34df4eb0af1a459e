"""The arms of a canopy: with a foot on the ground or on the wall, both where nobody wrote which, and doors by them.

The door lies at 2600 to 3300 mm in the right wall; the deck is 300 mm over the ground.
"""

from __future__ import annotations

import re
from math import inf, radians, tan

import pytest

from boxwright.book.changeover import change_over
from boxwright.book.changeover_ends import ends_of
from boxwright.disciplines.layout.bodies import Block, body_of
from boxwright.disciplines.layout.canopy import FOOT, set_up
from boxwright.finding import Finding, Use
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, exactly
from tests.disciplines.layout.small_rigs import DONE, TODAY, mirrored, rig_of, told

OUTWARD, INWARD = (f"swing: {{hinge: front, opens: {way}, to: 90 deg}}" for way in ("out", "in"))
STRIKES = "layout/opening-strikes"
GROUND = exactly(0.3)


def rig(at: int | str, feet: str, door: str = OUTWARD, reach: str = "1200") -> str:
    """Return the small rig with a canopy over its door, one arm of it at a place along the trailer."""
    said = f", feet: {feet}" if feet else ""
    more = f"{DONE}, out: {{reach: {reach}, pitch: 8 deg, arms: [{at}]{said}}}"
    return rig_of(
        parts=f"awn: {{x: 2000, side: right+100, z: 1900, size: 1800 x 60 x 60, {more}}}\n",
        door=door,
    )


def found(text: str, use: Use, *codes: str) -> list[Finding]:
    """Return what is said of a rig under some codes."""
    return [one for one in study(read_rig(text).rig, TODAY).findings(use) if one.code in codes]


def pieces(text: str) -> tuple[tuple[Block, ...], ...]:
    """Return the boxes of the canopy as it stands set up, and of its arms where they are in doubt."""
    rig_read = read_rig(text).rig
    (one,) = [part for part in rig_read.layout.fitted if part.name == "awn"]
    bodies, _ = set_up(one, body_of(one, "yes", "travel"), GROUND)
    return tuple(body.blocks for body in bodies)


def holds(blocks: tuple[Block, ...], point: tuple[float, float, float]) -> bool:
    """Return whether a point lies in one of the boxes."""
    return any(
        all(low - 1e-9 <= at <= high + 1e-9 for low, at, high in zip(one.low, point, one.high, strict=True))
        for one in blocks
    )


@pytest.mark.parametrize(("feet", "leans", "stands"), [("ground", 0, 1), ("wall", 1, 0), ("both", 1, 1), ("", 1, 1)])
def test_an_arm_runs_from_its_foot_to_the_outer_edge(feet: str, leans: bool, stands: bool) -> None:
    """By hand: its edge is 1200 mm off the roller and 1960 less 1200 tan 8 over the deck; its foot is at the wall."""
    laid = pieces(rig(2900, feet))
    assert len(laid) == (1 if feet else 2)
    blocks = laid[-1]
    y_of_wall = min(one.low[1] for one in laid[0])
    edge = y_of_wall + 0.06 + 1.2, 1.96 - 1.2 * tan(radians(8.0))
    for share in (0.0, 0.1, 0.37, 0.5, 0.81, 0.95):
        y, z = y_of_wall + share * (edge[0] - y_of_wall), share * edge[1]
        assert holds(blocks, (2.9, y, z)) == leans, share
        assert not holds(blocks, (2.9 + FOOT, y, z))
        assert not holds(blocks, (2.9, y, z + 0.2)), "an arm is no wall under the sheet"
    assert holds(blocks, (2.9, edge[0] - 0.01, -0.299)) == stands


@pytest.mark.parametrize(
    ("at", "feet", "kinds"),
    [
        (2900, "wall", ["fix"]),
        (2900, "both", ["fix"]),
        (2900, "ground", []),
        (2900, "", ["unknown"]),
        (2900, "unknown", ["unknown"]),
        (2100, "wall", []),
        (2100, "", []),
        (3650, "wall", []),
    ],
)
def test_a_leaf_that_strikes_an_arm_is_told(at: int, feet: str, kinds: list[str]) -> None:
    text = rig(at, feet)
    for one in (text, mirrored(text)):
        hits = found(one, "work", STRIKES)
        assert [hit.kind for hit in hits] == kinds
        assert all("awn" in hit.says for hit in hits)
    assert {one for one in told(text, "tow") if "opening-strikes" in one[1]} == set()


@pytest.mark.parametrize(
    ("at", "feet", "kinds"),
    [
        (2900, "wall", ["fix"]),
        (2900, "both", ["fix"]),
        (2900, "", ["unknown"]),
        (2900, "ground", []),
        (2580, "wall", ["fix"]),
        (2570, "wall", []),
        (2570, "", []),
    ],
)
def test_a_foot_in_a_doorway_has_no_wall_behind_it(at: int, feet: str, kinds: list[str]) -> None:
    """The door opens inward and strikes nothing; an arm is 50 mm wide, and the hole begins at 2600."""
    for text in (rig(at, feet, INWARD), mirrored(rig(at, feet, INWARD))):
        hits = found(text, "sleep", "layout/canopy", STRIKES)
        assert [hit.kind for hit in hits] == kinds
        assert all("door" in hit.says and hit.because == ("openings[door]",) for hit in hits)


def test_a_foot_of_which_the_place_is_in_doubt_is_asked() -> None:
    (hit,) = found(rig("2400..2600", "wall", INWARD), "sleep", "layout/canopy")
    assert hit.kind == "unknown" and "write out: {arms: [..]}" in (hit.act or "")


@pytest.mark.parametrize(
    ("at", "feet", "kinds"),
    [
        ("2100..2900", "wall", ["unknown"]),  # at its best, 2500, it is beside the door
        ("2900..3700", "wall", ["unknown"]),
        ("2100..2300", "wall", []),
        ("2100..2900", "ground", []),
        ("unknown", "wall", ["unknown"]),
        ("2100, unknown", "wall", ["unknown"]),
    ],
)
def test_a_leaf_is_held_against_an_arm_wherever_that_may_be(at: str, feet: str, kinds: list[str]) -> None:
    for text in (rig(at, feet), mirrored(rig(at, feet))):
        hits = found(text, "work", STRIKES)
        assert [hit.kind for hit in hits] == kinds
        assert all("write out: {arms: [..]}" in (hit.act or "") for hit in hits)
        asked = [one.says for one in found(text, "work", "layout/opening-unsaid")]
        assert any("where an arm of awn is along the trailer" in one for one in asked) == ("unknown" in at)


@pytest.mark.parametrize(
    ("at", "kinds"),
    [
        ("2100", []),
        ("1996", []),
        ("1980", ["fix"]),
        ("3900", ["fix"]),
        ("1900..2100", ["unknown"]),
        ("3810..3820", ["fix"]),
    ],
)
def test_an_arm_beyond_the_ends_of_its_canopy_is_told(at: str, kinds: list[str]) -> None:
    """The canopy goes from 2000 to 3800."""
    for text in (rig(at, "ground", INWARD), mirrored(rig(at, "ground", INWARD))):
        hits = found(text, "work", "layout/canopy")
        assert [hit.kind for hit in hits] == kinds
        assert all("beyond its end" in hit.says for hit in hits)


def test_a_foot_on_the_ground_stands_before_a_door_whatever_the_height_of_the_deck() -> None:
    """A leaf as wide as 700 comes out 700 and more; the foot of so short a canopy stands 550 to 600 off its roller."""
    near = rig(2900, "ground", reach="600")
    assert [hit.kind for hit in found(near, "work", STRIKES)] == ["fix"]
    for deck in ("", "  deck_height: unknown\n", "  deck_height: 200..700\n"):
        text = re.sub(r"^  deck_height: .*\n", deck, near, flags=re.MULTILINE)
        assert text != near
        assert [hit.kind for hit in found(text, "work", STRIKES)] == ["fix"], deck


def test_where_its_feet_are_asked_it_says_how_to_write_it() -> None:
    hits = found(rig(2900, ""), "work", STRIKES, "layout/canopy")
    assert [hit.code for hit in hits] == [STRIKES, "layout/canopy"]
    assert all("write out: {feet: ground}, wall or both" in (hit.act or "") for hit in hits)
    assert "nobody wrote where they have their feet" in hits[0].says
    lamp = f"{DONE}}}\n  lamp: {{x: 2600, side: right+20..right+900, z: 1000, size: 50 x 50 x 50, {DONE}"
    text = rig(2900, "").replace(DONE + "}", lamp + "}", 1)
    (both,) = found(text, "work", STRIKES)
    assert "write out: {feet: ground}" in (both.act or "")


@pytest.mark.parametrize(
    ("reach", "at", "kinds"),
    [
        ("600", "2900", ["fix"]),  # on the ground its foot stands in the way of the leaf, on the wall in the doorway
        ("600", "2100", []),
        ("1200", "2900", ["unknown"]),  # on the ground it stands too far out
        ("600", "2850..2950", ["fix"]),
        ("600", "2850..3150", ["unknown"]),  # 500 behind the hinge a foot 550 out is past the leaf of 700
        ("600..610", "2900", ["fix"]),
        ("600..900", "2900", ["unknown"]),
    ],
)
def test_an_arm_that_a_leaf_strikes_wherever_its_feet_are_is_struck(reach: str, at: str, kinds: list[str]) -> None:
    for text in (rig(at, "", reach=reach), mirrored(rig(at, "", reach=reach))):
        hits = found(text, "work", STRIKES)
        assert [hit.kind for hit in hits] == kinds
        words = {"fix": "whether they stand on the ground or on the wall", "unknown": "where they have their feet"}
        assert all(words[hit.kind] in hit.says for hit in hits)


@pytest.mark.parametrize(("reach", "feet", "is_held"), [("100", "", True), ("300", "", False), ("300", "wall", True)])
def test_a_leaf_gets_as_far_as_the_feet_let_it_that_are_less_in_its_way(reach: str, feet: str, is_held: bool) -> None:
    """By hand: 600 mm behind its hinge a foot 50 mm out holds it at 5 degrees.

    One 250 mm out holds it at 23, which leaves 272 mm of 700, and on the wall one holds it shut.
    """
    says = [one.says for one in found(rig(3200, feet, reach=reach), "sleep", "safety/two-ways-out")]
    assert any("door is held shut by" in one for one in says) == is_held


@pytest.mark.parametrize(
    ("at", "feet", "reach", "kinds"),
    [
        ("2700..3200", "wall", "600", ["fix"]),
        ("2700..3200", "both", "600", ["fix"]),
        ("2850..2950", "ground", "600", ["fix"]),
        ("2850..3150", "ground", "600", ["unknown"]),
        ("2900", "wall", "500..900", ["fix"]),
        ("2900", "ground", "500..600", ["fix"]),
        ("2900", "ground", "500..900", ["unknown"]),
        # of two arms one of which is struck wherever it is, and of two that each may be beside the door
        ("2100..2300, 2850..2950", "wall", "600", ["fix"]),
        ("2100..2900, 2900..3700", "wall", "600", ["unknown"]),
        # more of them in doubt than is looked at end by end
        ("2850..2950, 2855..2950, 2860..2950, 2865..2950, 2870..2950", "wall", "600", ["unknown"]),
    ],
)
def test_an_arm_in_doubt_that_a_leaf_strikes_wherever_it_may_be_is_struck(
    at: str, feet: str, reach: str, kinds: list[str]
) -> None:
    for text in (rig(at, feet, reach=reach), mirrored(rig(at, feet, reach=reach))):
        hits = found(text, "work", STRIKES)
        assert [hit.kind for hit in hits] == kinds
        is_along = ".." in at and kinds == ["fix"]
        assert all(("wherever along the trailer they are" in hit.says) == is_along for hit in hits)


def test_an_arm_that_shuts_a_door_takes_the_way_out() -> None:
    """Thirty millimetres behind its hinge it holds a leaf that goes all of the way round, and not at a right angle."""
    round_ = OUTWARD.replace("to: 90", "to: 170")
    (hit,) = found(rig(2500, "wall", round_), "sleep", STRIKES)
    assert hit.kind == "fix" and found(rig(2500, "ground", round_), "sleep", STRIKES) == []
    (shut,) = found(rig(3200, "wall"), "sleep", "safety/two-ways-out")
    assert "door is held shut by awn" in shut.says


def test_a_word_that_is_no_foot_is_a_mistake() -> None:
    (mistake,) = [one for one in read_rig(rig(2900, "roof")).problems if "feet" in one.path]
    assert "ground, wall, both or unknown" in mistake.says


@pytest.mark.parametrize(("pitch", "is_shut"), [(45, True), (8, False)])
def test_a_canopy_set_up_across_a_window_is_in_the_way_of_whoever_leaves_by_it(pitch: int, is_shut: bool) -> None:
    """The hole is 500 high, from 800, under the roller; 600 mm out a sheet from 1380 has fallen to 780, or to 1296."""
    window = (
        "flap: {wall: left, x: 2600, width: 700, z: 800, height: 500, cut: yes, done: yes, stage: all, egress: wanted,"
        " release: inside, clear: {width: 650, height: 480}, slides: {to: front, by: 700, runs: inside}}"
    )
    more = f"{DONE}, out: {{reach: 1200, pitch: {pitch} deg, feet: ground}}"
    text = rig_of(
        parts=f"awn: {{x: 2200, side: left-100, z: 1320, size: 1600 x 60 x 60, {more}}}\n",
        openings=window,
        door=f"egress: no, {OUTWARD}",
    )
    says = [one.says for one in found(text, "sleep", "safety/two-ways-out", "safety/way-blocked") if "awn" in one.says]
    assert bool(says) == is_shut


@pytest.mark.parametrize(
    ("at", "feet", "reach", "states"),
    [
        ("3200", "wall", "600", {"blocked"}),
        ("3200", "", "100", {"blocked"}),  # on the ground and on the wall
        ("3200", "", "600", {"unknown"}),
        ("3200", "", "1200", {"unknown"}),
        ("3200", "ground", "1200", {"free"}),
        ("3150..3250", "wall", "600", {"blocked"}),  # wherever it is, it holds the leaf shut
        ("3150..3500", "wall", "600", {"unknown"}),
        ("3200", "", "100..110", {"blocked"}),
        ("3200", "", "100..400", {"unknown"}),
        ("2100", "", "600", {"free"}),
    ],
)
def test_a_change_over_says_of_a_door_by_an_arm_no_more_than_is_known(
    at: str, feet: str, reach: str, states: set[str]
) -> None:
    for text in (rig(at, feet, reach=reach), mirrored(rig(at, feet, reach=reach))):
        read = read_rig(text).rig
        start, goal = ends_of(read)
        assert start is not None and goal is not None
        found = change_over(read, study(read, TODAY).slots[0], start, goal).there
        (step,) = [one for one in found.steps if one.name == "awn"]
        assert {one.word for one in step.exits if one.name == "door"} == states


def test_a_foot_on_the_ground_is_looked_at_wherever_its_arm_may_be_and_down_to_any_ground() -> None:
    near = [hit.kind for hit in found(rig("2100..2900", "ground", reach="600"), "work", STRIKES)]
    assert near == ["unknown"], "at its least it stands beside the door"
    (one,) = [part for part in read_rig(rig(2900, "ground")).rig.layout.fitted if part.name == "awn"]
    bodies, _ = set_up(one, body_of(one, "yes", "travel"), Band(0.0, 0.0, inf, known=False))
    assert min(block.low[2] for body in bodies for block in body.blocks) == -1.0, "deeper than any deck is high"


@pytest.mark.parametrize(("pitch", "z", "kinds"), [("5..30 deg", 950, {"unknown"}), ("5..30 deg", 400, set())])
def test_arms_on_the_wall_of_a_steep_or_a_flat_sheet_are_held_as_low_as_they_may_reach(
    pitch: str, z: int, kinds: set[str]
) -> None:
    """At 30 degrees the sheet is 866 mm down at its edge 1500 mm out; the box is there at 950 to 1050 mm."""
    more = f"{DONE}, out: {{reach: 1500, pitch: {pitch}, feet: wall, arms: [2100, 3700]}}"
    box = f"ob: {{x: 2080, side: right+1500, z: {z}, size: 100 x 100 x 100, {DONE}}}"
    text = rig_of(
        parts=f"awn: {{x: 2000, side: right+100, z: 1850, size: 1800 x 100 x 100, {more}}}\n  {box}\n", door=OUTWARD
    )
    assert {one.kind for one in found(text, "sleep", STRIKES, "layout/one-space") if "ob" in one.says} == kinds
