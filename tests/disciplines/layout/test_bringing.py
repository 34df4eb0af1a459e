"""Big things brought in: what is found is free, box by box; what is said to be impossible is, whatever is tried."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import permutations
from math import cos, hypot, pi, sin
from random import Random

import pytest

from boxwright.disciplines import structure
from boxwright.disciplines.frame.shell import shell
from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.bringing import brought_in, least_short
from boxwright.disciplines.layout.bringing_ways import comes_in, held_ways, passes, straight_out, way_in
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.result import Brought, Hole
from boxwright.rig.compose import read_rig
from boxwright.study.hull import hull_of
from boxwright.study.slots import study
from tests.lanes import every_so_many

ROOM = Block((0.0, -1.0, 0.0), (4.0, 1.0, 2.0))
DOOR = Gate("door", "door", "right", (0.5, 1.0, 0.0), (1.2, 1.0, 0.9), "inside", True)
RAMP = Gate("ramp", "ramp", "rear", (4.0, -0.9, 0.0), (4.0, 0.9, 1.0), "inside", True)
PLAY = 1e-3 + 1e-9
"""Boxes that are in each other by no more only touch (m)."""


def strewn(luck: Random, count: int) -> tuple[Block, ...]:
    found = []
    for _ in range(count):
        size = [luck.uniform(0.05, 0.9), luck.uniform(0.05, 0.5), luck.uniform(0.05, 0.9)]
        low = [luck.uniform(end, far - side) for end, far, side in zip(*ROOM, size, strict=True)]
        found.append(box(low, size))
    return tuple(found)


def box(low: list[float], size: list[float]) -> Block:
    x, y, z = low
    return Block((x, y, z), (x + size[0], y + size[1], z + size[2]))


def are_in(one: Block, other: Block, by: float = PLAY) -> bool:
    return all(min(a, b) - max(c, d) > by for a, b, c, d in zip(one.high, other.high, one.low, other.low, strict=True))


def frame_of(gate: Gate) -> Iterator[Block]:
    """Yield the wall around a hole, as four boxes from the face of the room outwards, laid out by hand."""
    low, high = gate.low, gate.high
    if gate.wall == "right":
        yield Block((-9.0, 1.0, -9.0), (low[0], 1.1, 9.0))
        yield Block((high[0], 1.0, -9.0), (9.0, 1.1, 9.0))
        yield Block((-9.0, 1.0, -9.0), (9.0, 1.1, low[2]))
        yield Block((-9.0, 1.0, high[2]), (9.0, 1.1, 9.0))
    else:
        yield Block((4.0, -9.0, -9.0), (4.1, low[1], 9.0))
        yield Block((4.0, high[1], -9.0), (4.1, 9.0, 9.0))
        yield Block((4.0, -9.0, -9.0), (4.1, 9.0, low[2]))
        yield Block((4.0, -9.0, high[2]), (4.1, 9.0, 9.0))


def laid(seed: int, count: int = 12) -> tuple[tuple[Block, ...], tuple[Block, ...]]:
    luck = Random(seed)
    size = [luck.uniform(0.2, 1.9), luck.uniform(0.1, 0.7), luck.uniform(0.1, 1.2)]
    thing = box([luck.uniform(end, far - side) for end, far, side in zip(*ROOM, size, strict=True)], size)
    return (thing,), tuple(one for one in strewn(luck, count) if not are_in(one, thing, 0.0))


@pytest.mark.parametrize("seed", range(150))
def test_what_is_swept_on_a_way_meets_nothing_and_stays_in_room_and_hole(seed: int) -> None:
    blocks, stands = laid(seed)
    lane = way_in(blocks, (DOOR, RAMP), stands, ROOM)
    if lane is None or lane.turned == "aslant":  # what is pushed in aslant is followed elsewhere
        return
    solid = [*stands, *frame_of(lane.gate)]
    assert not [one for one in lane.swept for other in solid if are_in(one, other)]
    last, out = lane.swept[-1], 1 if lane.gate is DOOR else 0
    assert last.high[out] > ROOM.high[out] + max(min(blocks[0].size), 0.1)
    for one in lane.swept:
        for axis in {0, 1, 2} - {out}:
            assert one.low[axis] >= ROOM.low[axis] - PLAY
            assert one.high[axis] <= ROOM.high[axis] + PLAY
        assert one.low[out] >= ROOM.low[out] - PLAY
    for before, after in zip(lane.swept, lane.swept[1:], strict=False):
        assert are_in(before, after, -1e-9)  # one box after the other, without a gap


def test_ways_of_every_kind_are_found_and_there_are_places_without_one() -> None:
    found = [way_in(*_with((DOOR, RAMP), laid(seed)), ROOM) for seed in range(150)]
    words = [lane.turned if lane is not None else None for lane in found]
    assert {word: words.count(word) > 2 for word in ("", "turned", "tilted", None)} == dict.fromkeys(
        ("", "turned", "tilted", None), True
    )


def _with(
    gates: tuple[Gate, ...], what: tuple[tuple[Block, ...], tuple[Block, ...]]
) -> tuple[tuple[Block, ...], tuple[Gate, ...], tuple[Block, ...]]:
    return what[0], gates, what[1]


@pytest.mark.parametrize("seed", range(40))
def test_what_goes_straight_out_is_found_by_the_search_too(seed: int) -> None:
    blocks, stands = laid(seed)
    if straight_out(blocks, (DOOR, RAMP), stands, ROOM) is not None:
        assert way_in(blocks, (DOOR, RAMP), stands, ROOM) is not None


def mirrored(one: Block) -> Block:
    return Block((one.low[0], -one.high[1], one.low[2]), (one.high[0], -one.low[1], one.high[2]))


@pytest.mark.parametrize("seed", range(40))
def test_a_mirrored_room_has_a_way_where_the_room_has_one(seed: int) -> None:
    blocks, stands = laid(seed)
    left = Gate("door", "door", "left", (0.5, -1.0, 0.0), (1.2, -1.0, 0.9), "inside", True)
    here = way_in(blocks, (DOOR,), stands, ROOM)
    there = way_in(tuple(map(mirrored, blocks)), (left,), tuple(map(mirrored, stands)), ROOM)
    # places to turn at are a choice among many, taken from one side
    if here is None or not here.turned:
        assert (here is None) >= (there is None) or (there is not None and bool(there.turned))
    if here is not None and not here.turned:
        assert there is not None


def test_a_long_board_is_turned_only_where_the_square_around_it_is_free() -> None:
    """2.2 m long and 0.1 wide across a room of 2.0: only lengthwise, and by a door at the side only aslant."""
    board = (box([1.5, -0.9, 0.0], [2.2, 0.1, 0.3]),)
    lane = way_in(board, (DOOR,), (), ROOM)
    assert lane is not None and lane.turned == "aslant"
    short = (box([1.5, -0.9, 0.0], [1.9, 0.1, 0.3]),)
    lane = way_in(short, (DOOR,), (), ROOM)
    assert lane is not None and lane.turned == "turned"
    swung = max(lane.swept, key=lambda one: one.size[0] * one.size[1])
    assert swung.size[0] == pytest.approx(hypot(1.9, 0.1)) and swung.size[1] == pytest.approx(hypot(1.9, 0.1))


def test_a_tall_thing_is_tilted_through_a_low_door_and_lowered_from_a_high_place() -> None:
    low = Gate("door", "door", "rear", (4.0, -0.5, 0.0), (4.0, 0.5, 0.8), "inside", True)
    tall = (box([1.0, -0.3, 0.0], [0.5, 0.6, 1.5]),)
    lane = way_in(tall, (low,), (), ROOM)
    assert lane is not None and lane.turned == "tilted"
    high = (box([1.0, -0.3, 1.3], [0.5, 0.6, 0.6]),)  # a cupboard that hangs over the lintel
    assert way_in(high, (low,), (), ROOM) is not None
    shelf = box([0.0, -1.0, 1.2], [4.0, 2.0, 0.1])  # a floor under it, from wall to wall
    assert way_in(high, (low,), (shelf,), ROOM) is None


@pytest.mark.parametrize("size", list(permutations([0.62, 0.5, 0.4])))
def test_a_box_passes_a_hole_held_as_its_two_sides_say(size: tuple[float, float, float]) -> None:
    gate = Gate("door", "door", "rear", (4.0, 0.0, 0.0), (4.0, 0.5, 0.62), "inside", True)
    assert passes(box([0.0, 0.0, 0.0], list(size)), gate) == (size[1] <= 0.5 and size[2] <= 0.62)


def sections(size: tuple[float, float, float], luck: Random, count: int) -> Iterator[list[tuple[float, float]]]:
    """Yield cuts of a box through its middle by planes of any lie, as outlines in the plane, by their corners."""
    half = [side / 2.0 for side in size]
    edges = [
        (tuple(half[i] * s[i] for i in range(3)), tuple(half[i] * t[i] for i in range(3)))
        for s in _signs()
        for t in _signs()
        if sum(p != q for p, q in zip(s, t, strict=True)) == 1
    ]
    for _ in range(count):
        up, turn = luck.uniform(-1.0, 1.0), luck.uniform(0.0, 2.0 * pi)
        flat = (1.0 - up * up) ** 0.5
        normal = (flat * cos(turn), flat * sin(turn), up)
        across = (-sin(turn), cos(turn), 0.0)
        other = (-up * cos(turn), -up * sin(turn), flat)
        points = []
        for a, b in edges:
            fa, fb = dot(normal, a), dot(normal, b)
            if fa * fb < 0.0:
                at = tuple(p + (q - p) * fa / (fa - fb) for p, q in zip(a, b, strict=True))
                points.append((dot(across, at), dot(other, at)))
        yield points


def dot(one: tuple[float, ...], other: tuple[float, ...]) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _signs() -> Iterator[tuple[float, float, float]]:
    return ((x, y, z) for x in (-1.0, 1.0) for y in (-1.0, 1.0) for z in (-1.0, 1.0))


def fits(points: list[tuple[float, float]], width: float, height: float) -> bool:
    """Return whether an outline goes into a rectangle, turned about as one will (each degree)."""
    for degree in range(180):
        turn = degree * pi / 180.0
        across = [x * cos(turn) + y * sin(turn) for x, y in points]
        up = [y * cos(turn) - x * sin(turn) for x, y in points]
        if max(across) - min(across) <= width and max(up) - min(up) <= height:
            return True
    return False


@pytest.mark.parametrize("seed", every_so_many(range(25), 4))
def test_where_it_is_said_to_be_too_large_no_cut_through_its_middle_goes_into_the_hole(seed: int) -> None:
    """By brute force: 400 planes of any lie, each cut turned degree by degree; that is what must pass the hole."""
    luck = Random(seed)
    size = (luck.uniform(0.3, 1.0), luck.uniform(0.3, 1.0), luck.uniform(0.3, 1.0))
    thin, broad, _ = sorted(size)
    hole = Hole("hole", "hole", luck.uniform(0.4, 1.1) * broad, luck.uniform(0.6, 1.2) * thin)
    short = least_short([box([0.0, 0.0, 0.0], list(size))], [hole])
    assert (short is None) == (
        thin <= min(hole.width, hole.height) + PLAY and broad <= hypot(hole.width, hole.height) + PLAY
    )
    if short is not None:
        assert not any(fits(points, hole.width, hole.height) for points in sections(size, luck, 400))


def shortest(thing: list[Block], *holes: Hole) -> tuple[str, float]:
    found = least_short(thing, holes)
    assert found is not None
    return found[1].name, round(found[0], 9)


def test_the_hole_that_falls_short_least_is_told() -> None:
    thing = [box([0.0, 0.0, 0.0], [0.9, 0.8, 0.7])]
    small, smaller = Hole("a", "a", 0.6, 2.0), Hole("b", "b", 0.5, 2.0)
    assert shortest(thing, smaller, small) == ("a", 0.1)
    assert least_short(thing, [smaller, small, Hole("c", "c", 0.7, 0.8)]) is None
    assert least_short(thing, []) is None
    assert shortest(thing, Hole("d", "d", 0.7, 0.35)) == ("d", 0.35)


def rod_lengths(a: float, b: float) -> float:
    """Return the longest rod that is carried level round a right-angled corner between two corridors.

    From the literature on the ladder in a corridor: (a^(2/3) + b^(2/3))^(3/2), for 1 and 1 it is 2 sqrt 2.
    """
    return float((a ** (2.0 / 3.0) + b ** (2.0 / 3.0)) ** 1.5)


@pytest.mark.parametrize(("a", "b"), [(0.5, 0.5), (0.4, 0.9), (0.7, 0.35)])
def test_no_rod_comes_round_a_corner_that_is_longer_than_the_longest_ladder(a: float, b: float) -> None:
    """A corridor of width ``a`` along the left wall, then one of width ``b`` along the rear to a door in the right."""
    assert rod_lengths(1.0, 1.0) == pytest.approx(2.0 * 2.0**0.5)
    corner = Block((0.0, -1.0 + a, 0.0), (4.0 - b, 1.0, 2.0))
    door = Gate("door", "door", "right", (4.0 - b, 1.0, 0.0), (4.0, 1.0, 2.0), "inside", True)
    came = []
    for step in range(1, 30):
        length = 0.1 * step
        rod = (box([0.2, -1.0 + a / 2.0, 0.0], [length, 0.001, 1.99]),)
        if way_in(rod, (door,), (corner,), ROOM) is not None:
            came.append(length)
    assert came and max(came) <= rod_lengths(a, b)
    assert max(came) >= min(a, b) - 0.1  # turned in the corner's own square at least


HEAD = """\
boxwright: 1
rig: Knot
units: {length: in, weight: lb}
countries: [US-NC]
class: cargo
today: {stage: now}
trailer:
  body: {length: 160, width: 80, height: 78}
  outside: {length: 163, width: 84, over_fenders: 101, height: 98, length_overall: 218}
  coupler_x: -52
  axles: {kind: leaf with equaliser, x: [79, 113], gawr: [3500, 3500]}
  gvwr: 7000
  empty: {weight: 1900, tongue: 230, cg_z: 22}
frame:
  studs: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}
openings:
  door: {wall: right, x: 20, width: 28, z: 0, height: 70, cut: yes}
DOORS
parts:
PARTS
stages:
  now: {what: now}
  next: {what: next}
  last: {what: last}
loads:
  road: {cargo: all, for: [tow]}
"""


def brought(parts: str, openings: str = "", today: str = "now", head: str = HEAD) -> tuple[Brought, ...]:
    head = head.replace("today: {stage: now}", f"today: {{stage: {today}}}")
    rig = read_rig(head.replace("PARTS", parts).replace("DOORS\n", openings and f"  {openings}\n")).rig
    bare = shell(rig.frame, rig.trailer, structure.offers(rig.structure.fastened).fixings)
    names = tuple(one.name for one in rig.stages_in_order)

    box = study(rig, date(2026, 5, 2)).slots[0].box
    assert box is not None
    return brought_in(rig.layout, hull_of(bare, box), names, rig.header.stage_today)


WALL = "wall: {x: 60, side: left, z: 0, size: 2 x 80 x 78, weight: 60, stage: STAGE}"
FRIDGE = "fridge: {x: 100, side: left, z: 0, size: 24 x 24 x 60, weight: 90, stage: last}"


def told(parts: list[str], openings: str = "", today: str = "now") -> list[tuple[str, str, str, tuple[str, ...]]]:
    found = brought("\n".join(f"  {part}" for part in parts), openings, today)
    told_of = [one for one in found if one.name != "wall"]  # it is built where it stands
    return [(one.name, one.word, one.before, tuple(name for _, name in one.by)) for one in told_of]


def test_a_wall_that_stands_by_then_is_named_with_the_stage_before_it() -> None:
    assert told([FRIDGE]) == []
    assert told([WALL.replace("STAGE", "next"), FRIDGE]) == [("fridge", "no way", "next", ("wall",))]
    assert told([WALL.replace("STAGE", "last"), FRIDGE]) == []  # of one stage the one that must comes first
    assert told([WALL.replace("STAGE", "now}").replace("}}", ", done: yes}"), FRIDGE]) == [
        ("fridge", "no way", "", ("wall",))
    ]
    assert told([WALL.replace("STAGE", "next, until: next"), FRIDGE]) == []


def test_what_is_in_already_or_loose_or_small_is_not_asked_about() -> None:
    shut = WALL.replace("STAGE", "now, done: yes")
    for loose in ("kind: cargo", "done: yes"):
        assert told([shut, FRIDGE.replace("stage: last", f"stage: last, {loose}")]) == []
    for small, is_told in (("24 x 11.8 x 28", False), ("24 x 11.8 x 29", True), ("24 x 11.9 x 28", True)):
        # through the door in any pose, or too long for that; 300 mm is 11.81 in
        names = [name for name, *_ in told([shut, FRIDGE.replace("24 x 24 x 60", small)])]
        assert names == (["fridge"] if is_told else [])


def test_a_thing_is_not_brought_in_through_what_it_will_stand_on_and_goes_into_what_it_will_be_in() -> None:
    """A stand from wall to wall and up to a foot under the roof: what lies on it comes over it, never through."""
    stand = "stand: {x: 60, side: left, z: 0, size: 60 x 80 x 66, weight: 90, stage: now, done: yes}"
    on_it = "chest: {rides_on: stand, x: +4, side: +4, z: +66, size: 30 x 30 x 10, weight: 20, stage: last}"
    assert told([stand, on_it]) == []  # over the stand, and down before the door
    shelf = "shelf: {x: 50, side: left, z: 30, size: 10 x 80 x 48, weight: 20, stage: now, done: yes}"
    assert told([stand, shelf, on_it]) == [("chest", "no way", "", ("stand",))]  # it would come in under the shelf
    in_it = "tank: {inside: stand, x: +0, side: +4, z: +0, size: 30 x 30 x 10, weight: 20, stage: last}"
    assert told([stand, in_it]) == []


def test_what_is_overdue_comes_in_today_past_what_is_in_already() -> None:
    built = WALL.replace("STAGE", "next, done: yes")
    late = FRIDGE.replace("stage: last", "stage: now")
    assert told([built, late], today="next") == [("fridge", "no way", "", ("wall",))]
    untold = WALL.replace("STAGE", "now")
    assert told([untold, late], today="next") == [("fridge", "doubt", "", ("wall",))]  # it may be in since then
    going = f"{late.removesuffix('}')}, until: last}}"
    assert told([built, going], today="next") == []  # a stand-in is as loose as cargo


@pytest.mark.parametrize(
    ("written", "word"), [("cut: yes", ""), ("cut: no", "doubt"), ("cut: yes, now: boarded up", "doubt")]
)
def test_a_door_that_may_not_open_is_no_sure_way_in(written: str, word: str) -> None:
    door = "door: {wall: right, x: 20, width: 28, z: 0, height: 70, "
    head = HEAD.replace(f"{door}cut: yes}}", f"{door}{written}}}")
    found = brought(f"  {FRIDGE}", head=head)
    assert [(one.word, one.doors) for one in found] == ([(word, (("openings[door]", "door"),))] if word else [])


def test_doubt_of_what_stands_asks_and_is_named() -> None:
    untold = WALL.replace("STAGE", "now")  # today's own stage, not ticked: it can still wait
    assert told([untold, FRIDGE.replace("last", "now")]) == []
    half = WALL.replace("STAGE", "now, done: part")
    assert told([half, FRIDGE.replace("last", "next")]) == [("fridge", "no way", "now", ("wall",))]
    moved = WALL.replace("x: 60", "x: 30..70").replace("STAGE", "next")
    assert told([moved, FRIDGE]) == [("fridge", "doubt", "", ("wall",))]


def test_a_hole_of_unknown_size_leaves_it_open_and_a_high_window_is_no_way_in() -> None:
    large = FRIDGE.replace("24 x 24 x 60", "40 x 40 x 60")
    assert told([large]) == [("fridge", "large", "", ())]
    assert told([large], "rear: {wall: rear, side: centre, width: unknown, z: 0, height: 70}")[0][1] == "no way"
    assert told([large], "rear: {wall: rear, side: centre, width: 41, z: 0, height: 70}") == []
    assert told([large], "rear: {wall: rear, side: centre, width: 41, z: 30, height: 45}")[0][1] == "no way"


def test_an_opening_of_a_later_stage_lets_nothing_in_before_it() -> None:
    large = FRIDGE.replace("24 x 24 x 60", "40 x 40 x 60")
    door = "rear: {wall: rear, side: centre, width: 41, z: 0, height: 70, stage: last}"
    assert told([large], door) == []
    assert told([large.replace("last", "next")], door) == [("fridge", "large", "", ())]


def test_where_the_only_door_is_of_a_later_stage_that_is_named() -> None:
    later = HEAD.replace("height: 70, cut: yes", "height: 70, stage: %s")
    fridge = f"  {FRIDGE.replace('last', 'now')}"

    def told_of(stage: str, head: str = later, parts: str = fridge) -> tuple[str, str]:
        rig = read_rig((head % stage).replace("PARTS", parts).replace("DOORS\n", "")).rig
        found = study(rig, date(2026, 5, 2)).findings("tow")
        ((said, act),) = {(one.says, one.act or "") for one in found if one.code == "layout/brought-in"}
        return said, act

    says, act = told_of("next")
    assert says.endswith("is there at stage now: door goes in at stage next")
    assert act == "Bring fridge in at stage next, or cut door before"
    two = later.replace("DOORS", "  ramp: {wall: rear, side: centre, width: 60, z: 0, height: 70, stage: last}\nDOORS")
    assert told_of("last", two)[1] == "Bring fridge in at stage last, or cut ramp and door before"
    assert told_of("next", two)[1] == "Bring fridge in at stage next, or cut door before"
    assert told_of("unplanned")[1].startswith("Write the doors and the ramp")
    wide = fridge.replace("24 x 24 x 60", "40 x 40 x 60")
    says, act = told_of("last", two.replace("stage: %s", "cut: yes").replace("stage: last", "stage: %s"), wide)
    assert "goes in through no opening however held: door" in says
    assert act.endswith("or bring it in at stage last, through a hole that is in then")


SHEET = (2.44, 1.22, 0.006)


@pytest.mark.parametrize("seed", range(40))
def test_a_sheet_that_comes_in_can_lie_or_stand_somewhere_inside(seed: int) -> None:
    """Looked at the other way round: put where it was found to come in, a thing of its size has a way out again."""
    luck = Random(seed)
    size = (luck.uniform(0.5, 2.2), luck.uniform(0.3, 1.5), luck.uniform(0.01, 0.6))
    stands = strewn(luck, 6)
    places = [
        box([luck.uniform(end, far - side) for end, far, side in zip(*ROOM, held, strict=True)], list(held))
        for held in held_ways(size)
        if all(side < far - end for end, far, side in zip(*ROOM, held, strict=True))
        for _ in range(6)
    ]
    free = [place for place in places if not any(are_in(place, other, 0.0) for other in stands)]
    if any(straight_out((place,), (DOOR, RAMP), stands, ROOM) is not None for place in free):
        assert comes_in(size, (DOOR, RAMP), stands, ROOM)


def test_a_sheet_goes_in_by_a_ramp_or_aslant_by_a_door_and_not_where_neither_lets_it() -> None:
    tall = Gate("door", "door", "right", (0.5, 1.0, 0.0), (1.2, 1.0, 1.8), "inside", True)
    assert comes_in(SHEET, (RAMP,), (), ROOM)  # lying, for the ramp is but 1 m high
    assert comes_in(SHEET, (tall,), (), ROOM)  # on its edge and aslant: the room is 2 m wide
    assert not comes_in(SHEET, (DOOR,), (), ROOM)  # 0.7 x 0.9 is less than its width from corner to corner: 1.14
    short = Block(ROOM.low, (2.2, 0.9, 2.0))
    assert not comes_in(SHEET, (Gate("r", "r", "rear", (2.2, -0.8, 0.0), (2.2, 0.8, 1.9), "inside", True),), (), short)
    full = Block((0.0, -1.0, 0.0), (4.0, 1.0, 1.95))  # nothing but a slit under the ceiling is left
    assert not comes_in(SHEET, (RAMP, tall), (full,), ROOM)


def test_whole_sheets_that_do_not_come_in_are_told_once_with_the_stage_before() -> None:
    walls = """
walls:
  left: {layers: {liner: {of: ply, thick: 1/4, stage: last}, foam: {of: XPS, thick: 1, between: studs, stage: last}}}
  right: {layers: {liner: {of: ply, thick: 1/4, stage: last}, old: {of: ply, thick: 1/4, stage: now, done: yes}}}
"""

    def sheets(wall: str) -> list[tuple[str, str, str, list[str]]]:
        text = HEAD.replace("DOORS\n", "").replace("PARTS\n", wall).replace("openings:", f"{walls.strip()}\nopenings:")
        rig = read_rig(text.replace("height: 70, cut: yes", "height: 74, cut: yes")).rig
        found = study(rig, date(2026, 5, 2)).slots[0].layout
        assert found is not None
        told = [one for one in found.brought if one.word == "sheet"]
        return [(one.of, one.stage, one.before, [of for of, _ in one.others]) for one in told]

    shut = "  wall: {x: 14, side: right, z: 0, size: 40 x 70 x 76, weight: 60, stage: next}\n"
    assert sheets("") == []
    found = sheets(shut)
    assert found == [("walls[left].layers[liner]", "last", "next", ["walls[right].layers[liner]"])]


def test_things_that_are_alike_are_said_once() -> None:
    two = [
        FRIDGE.replace("24 x 24 x 60", "40 x 40 x 60"),
        FRIDGE.replace("24 x 24 x 60", "60 x 40 x 40").replace("fridge", "chest"),
    ]
    (one,) = brought("\n".join(f"  {part}" for part in two))
    assert one.word == "large" and [name for _, name in one.others] == ["chest"]
    assert one.short == pytest.approx(12.0 * 0.0254)
    assert one.stage == "last" and one.tried[0].name == "door"


@pytest.mark.parametrize(
    ("leaf", "word"),
    [
        ("swing: {hinge: front, opens: out, to: 170 deg}", ""),
        ("swing: {hinge: front, opens: out, to: 15 deg}", "no hole"),
        ("swing: {hinge: front, opens: out, to: 58 deg}", "no way"),
        ("swing: {hinge: front, opens: out, to: 60 deg}", "doubt"),
        ("swing: {hinge: both sides, opens: out, to: 60 deg}", "no way"),
        ("slides: {to: front, by: 28, runs: outside}", ""),
        ("slides: {to: front, by: 25, runs: outside}", ""),
        ("slides: {to: rear, by: 20, runs: outside}", "no way"),
        ("slides: {to: front, by: 20..28, runs: outside}", "doubt"),
        ("slides: {to: front, by: 8, runs: outside}", "no hole"),
        ("slides: {to: front, runs: outside}", "doubt"),
    ],
)
def test_a_thing_comes_in_by_no_more_than_the_leaf_leaves_of_the_hole(leaf: str, word: str) -> None:
    """By hand: a fridge of 24 in; beside a leaf at 60 degrees 28 sin 60 = 24.2 in are clear aslant, at 58 only 23.7."""
    text = HEAD.replace("height: 70, cut: yes}", f"height: 70, cut: yes, {leaf}}}")
    rig = read_rig(text.replace("PARTS", f"  {FRIDGE}").replace("DOORS\n", "")).rig
    found = study(rig, date(2026, 5, 2)).slots[0].layout
    assert found is not None
    assert [one.word for one in found.brought] == ([word] if word else [])
