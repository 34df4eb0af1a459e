"""Two things that open into each other's room: one at a time, a question, or nothing. By hand, in inches.

The door is the hole from x = 20 to 48 in the right wall, which is at 40: hinged at 20 it opens in and stands across at
x = 20, to 12 from the middle. What slides stands on the floor, with its right side 20 off the right wall.
"""

from __future__ import annotations

from math import cos, pi, sin
from random import Random

import pytest

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.both_open import both_open, turned_open
from boxwright.disciplines.layout.meeting import are_in
from boxwright.disciplines.layout.sweeps import Mover, Slip, Turn
from tests.disciplines.layout.knots import Edits, told, words
from tests.disciplines.layout.small_rigs import DONE, mirrored, rig_of, thing
from tests.disciplines.layout.small_rigs import told as small_told

shapely = pytest.importorskip("shapely", reason="the oracle of leaves is not installed")
CODE = "layout/one-at-a-time"
AWAY = ("fridge: {x: 60", "fridge: {x: 136")
DRAWER = "  drawer: {x: %s, side: %s, z: 0, size: 12 x 10 x 10, weight: 5, stage: lined, done: yes, slides: {%s}}\n"
SWING = "swing: {hinge: front, opens: in, to: 90 deg}"


def door(swing: str) -> Edits:
    return AWAY, (SWING, swing)


@pytest.mark.parametrize(
    ("edits", "more", "kinds"),
    [
        ((AWAY,), DRAWER % (50, "right-20", "to: front, by: 31"), ["limit"]),
        ((AWAY,), DRAWER % (50, "right-20", "to: front, by: 0.5"), []),
        ((AWAY,), DRAWER % (50, "right-20", "to: rear, by: 31"), []),
        ((AWAY,), DRAWER % (50, "right-20", "to: front, by: 0.5..20"), ["unknown"]),
        ((AWAY,), DRAWER % ("50..52", "right-20", "to: front, by: 31"), ["limit"]),
        ((AWAY,), DRAWER % (50, "right-30", "to: front, by: 31"), []),  # beyond the leaf
        (door("swing: {hinge: rear, opens: in, to: 90 deg}"), DRAWER % (5, "right-20", "to: front, by: 4"), []),
        (door("swing: {hinge: front, opens: out, to: 90 deg}"), DRAWER % (50, "right-20", "to: front, by: 31"), []),
    ],
)
def test_a_door_and_a_drawer_before_it_are_opened_one_at_a_time(edits: Edits, more: str, kinds: list[str]) -> None:
    assert [kind for kind, _ in told(CODE, edits, more)] == kinds


@pytest.mark.parametrize(("by", "kinds"), [(14, []), (24, ["limit"]), ("14..24", ["unknown"])])
def test_drawers_that_face_each_other_are_pulled_out_one_at_a_time(by: object, kinds: list[str]) -> None:
    """The aisle between them is 40 wide: 24 and 20 meet, 14 and 20 do not."""
    more = DRAWER.replace("drawer:", "near:") % (60, "left+0", f"to: right, by: {by}")
    more += DRAWER.replace("drawer:", "far:") % (64, "right-20", "to: left, by: 20")
    edits = AWAY, ("bed: {x: 30, side: left", "bed: {x: 84, side: left")
    assert [kind for kind, where in told(CODE, edits, more) if "bed" not in where] == kinds


def test_what_stands_open_and_what_then_stops_are_named_with_how_far_it_gets() -> None:
    """Its corner 11 behind the hinge and 20 off the wall, less 0.2 of play: atan(20.2 / 10.8) = 62 deg."""
    says = words(CODE, (AWAY,), DRAWER % (50, "right-20", "to: front, by: 31"))
    assert says == "one at a time, door or drawer: while drawer stands open door stops after 62 deg of 90 deg"


def test_a_fridge_door_of_which_nobody_wrote_how_it_opens_is_asked_about() -> None:
    carcass = "  larder: {x: 0, side: right-20, z: 0, size: 14 x 12 x 30, weight: 9, stage: lined, done: yes, "
    more = carcass + "carcass: {ply: 1/2, doors: 1}}\n"
    assert [kind for kind, where in told(CODE, (AWAY,), more)] == ["unknown"]
    assert "nobody wrote how it opens" in words(CODE, (AWAY,), more)


def test_a_mirrored_rig_opens_one_at_a_time_alike() -> None:
    """The drawer is pulled out from under the bunk to 100 mm before the wall the door of 700 opens in by."""
    drawer = thing("drawer", 2700, "left+100", 100, "500 x 600 x 300", f"{DONE}, slides: {{to: right, by: 1200}}")
    text = rig_of(drawer, door="swing: {hinge: front, opens: in, to: 90 deg}")
    assert ("limit", "one-at-a-time", "openings[door]") in small_told(text, "sleep")
    assert small_told(mirrored(text), "sleep") == small_told(text, "sleep")


def leaf(of: str, hinge: tuple[float, float], way: tuple[float, float], reach: float, turn: float) -> Mover:
    made = Turn((0, way[0]), (1, way[1]), hinge, ((0.0, reach), (0.0, 0.0)), (0.0, 1.0), turn, turn)
    return Mover(of, of, "door", (made,), turn)


def ends(one: Mover, turn: float) -> tuple[tuple[float, float], tuple[float, float]]:
    way = one.ways[0]
    assert isinstance(way, Turn)
    reach = way.spans[0][1]
    tip = way.hinge[0] + way.along[1] * reach * cos(turn), way.hinge[1] + way.across[1] * reach * sin(turn)
    return way.hinge, tip


@pytest.mark.parametrize("seed", range(60))
def test_two_leaves_meet_where_their_lines_cross_as_one_turns_degree_by_degree(seed: int) -> None:
    """By brute force with shapely: the leaf that stands open is a line, the other is turned by half a degree a step."""
    luck = Random(seed)
    pair = [
        leaf(
            of,
            (luck.uniform(0.0, 1.2), luck.uniform(0.0, 0.9) * (1.0 if of == "one" else -1.0)),
            (luck.choice((-1.0, 1.0)), -1.0 if of == "one" else 1.0),
            luck.uniform(0.4, 0.9),
            luck.choice((pi / 2.0, luck.uniform(0.6, pi))),
        )
        for of in ("one", "other")
    ]
    crossed = []
    for mover, stands in (pair, pair[::-1]):
        line = shapely.LineString(ends(stands, stands.whole))
        steps = int(mover.whole / (pi / 360.0))
        turns = [mover.whole * number / steps for number in range(steps + 1)]
        hit = next((at for at in turns if shapely.LineString(ends(mover, at)).distance(line) < 0.004), None)
        if hit is not None:
            crossed.append((hit, mover.whole))
    found = list(both_open(pair, frozenset()))
    if not found:
        assert crossed == []
    elif found[0].sure == "sure":
        assert crossed
        first = min(crossed, key=lambda one: one[0] / one[1])
        assert found[0].reached / found[0].whole == pytest.approx(first[0] / first[1], abs=0.12)


@pytest.mark.parametrize("turn", [0.3, pi / 2.0, 2.0, pi])
def test_the_boxes_of_a_leaf_that_stands_open_cover_it_and_its_posts_lie_in_it(turn: float) -> None:
    one = leaf("one", (1.0, 2.0), (-1.0, 1.0), 0.8, turn)
    (way,) = one.ways
    assert isinstance(way, Turn)
    cover, core = (turned_open(way, turn, is_cover) for is_cover in (True, False))
    for number in range(81):
        x, y = 1.0 - 0.01 * number * cos(turn), 2.0 + 0.01 * number * sin(turn)
        assert any(box.low[0] <= x <= box.high[0] and box.low[1] <= y <= box.high[1] for box in cover)
    assert all(any(are_in(post, box) or post == box for box in cover) for post in core)
    assert all(abs((post.low[1] + post.high[1]) / 2.0 - 2.0) <= 0.8 * sin(turn) + 1e-9 for post in core)


def test_what_only_passes_beside_and_what_is_in_the_other_says_nothing() -> None:
    start = Block((0.0, 0.0, 0.0), (0.5, 0.5, 0.2))
    low = Mover("parts[low]", "low", "slide", (Slip(start, 0, 0.6, 0.6),), 0.6)
    high = Mover("parts[high]", "high", "slide", (Slip(Block((1.2, 0.0, 0.2), (1.6, 0.5, 0.4)), 0, -0.9, -0.9),), 0.9)
    meets = Mover(
        "parts[meets]", "meets", "slide", (Slip(Block((1.2, 0.0, 0.1), (1.6, 0.5, 0.3)), 0, -0.5, -0.5),), 0.5
    )
    assert list(both_open([low, high], frozenset())) == []
    (found,) = both_open([low, meets], frozenset())
    assert (found.sure, found.of) == ("sure", "parts[meets]")
    assert found.reached == pytest.approx(0.1 + 0.005)  # to the drawer at 1.1, less the play of its runners
    assert list(both_open([low, meets], {("parts[meets]", "parts[low]")})) == []


def test_pieces_of_one_thing_are_not_asked_about_each_other() -> None:
    pair = [leaf("one", (0.0, 0.0), (1.0, 1.0), 0.8, pi / 2.0), leaf("one", (0.5, 0.5), (1.0, -1.0), 0.8, pi / 2.0)]
    assert list(both_open(pair, frozenset())) == []


@pytest.mark.parametrize(("off", "sure"), [(0.0, None), (0.08, None), (0.12, "perhaps")])
def test_what_may_stand_nearer_than_it_is_taken_to_is_in_doubt(off: float, sure: str | None) -> None:
    """The drawers end 0.1 m apart, each pulled out by 0.4; one of them may be off by so much."""
    one = Mover("parts[a]", "a", "slide", (Slip(Block((0.0, 0.0, 0.0), (0.5, 0.5, 0.2)), 0, 0.4, 0.4),), 0.4)
    there = Block((1.4, 0.0, 0.0), (1.9, 0.5, 0.2))
    other = Mover("parts[b]", "b", "slide", (Slip(there, 0, -0.4, -0.4),), 0.4, doubt=(off, 0.0, 0.0))
    assert [found.sure for found in both_open([one, other], frozenset())] == ([sure] if sure else [])


def test_a_leaf_of_which_nobody_knows_how_far_it_opens_may_stand_anywhere_between() -> None:
    """From a right angle to a half turn: a thin slide meets it at any angle, of which only some are looked at."""
    way = Turn((0, 1.0), (1, 1.0), (0.0, 0.0), ((0.0, 1.0), (0.0, 0.0)), (0.0, 1.0), pi / 2.0, pi)
    door = Mover("openings[door]", "door", "leaf", (way,), pi / 2.0)
    for number in range(40):
        turn = pi / 2.0 + 0.05 + 0.037 * number
        tip = 0.96 * cos(turn), 0.96 * sin(turn)
        start = Block((tip[0] - 0.003, tip[1] - 0.003, 2.0), (tip[0] + 0.003, tip[1] + 0.003, 2.1))
        pin = Mover("parts[pin]", "pin", "slide", (Slip(start, 2, -1.5, -1.5),), 1.5)
        assert [found.sure for found in both_open([door, pin], frozenset())] == ["perhaps"], turn
