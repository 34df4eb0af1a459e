"""Zones, slides, what a bed carries, and lanes to roll in by: each box reckoned by hand, in metres, both ways round."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.meeting import roots_of
from boxwright.disciplines.layout.parts import Closed, Facet, Fitted, KeepClear, Slide
from boxwright.disciplines.layout.rolling import blocked_ways
from boxwright.disciplines.layout.sweeps import Slip, moving_part
from boxwright.disciplines.layout.ways import in_the_room
from boxwright.disciplines.layout.zones import Zone, zones_of
from boxwright.model.place import Place
from boxwright.units import Band, exactly
from tests.disciplines.layout.layouts import ROOM, body
from tests.disciplines.layout.test_ways import BED, box, is_wide, ways
from tests.disciplines.layout.test_ways import ROOM as SMALL

SPAN = Band(0.5, 0.2, 0.8)


def fitted(facet: Facet, low: tuple[float, float, float], size: tuple[float, float, float]) -> tuple[Fitted, Body]:
    middles = (exactly(low[axis] + size[axis] / 2.0) for axis in range(3))
    x, y, z = middles
    return Fitted("parts[box]", "box", "", Place(x, y, z, size), True, facet=facet), body("box", low, size)


def zone(**clear: Band) -> Zone:
    one, own = fitted(Facet(keep_clear=KeepClear(**clear)), (2.0, -1.2, 0.5), (0.4, 0.2, 0.6))
    (found,) = zones_of(one, own, (own,), ROOM)
    return found


def test_room_in_doubt_is_wanted_at_its_most_and_surely_at_its_least() -> None:
    found = zone(all_round=SPAN)
    assert (found.wanted, found.least) == (0.8, 0.2)
    assert found.choices[0].low == pytest.approx((1.2, -2.0, -0.3)) and found.surely[0].high == pytest.approx(
        (2.6, -0.8, 1.3)
    )
    over = zone(above=SPAN)
    assert (over.wanted, over.least) == (0.8, 0.2)
    assert (*over.choices[0].low, *over.choices[0].high) == pytest.approx((2.0, -1.2, 1.1, 2.4, -1.0, 1.9))
    assert over.surely[0].high[2] == pytest.approx(1.3)


def test_room_before_a_face_is_as_deep_and_as_wide_as_it_may_have_to_be() -> None:
    found = zone(front=SPAN, width=Band(1.0, 0.6, 1.4))
    assert (found.wanted, found.least, found.width, found.face) == (0.8, 0.2, 1.4, (1, 1.0))
    choice, surely = found.choices[0], found.surely[0]
    assert (choice.high[0] - choice.low[0], choice.low[1], choice.high[1]) == pytest.approx((1.4, -1.0, -0.2))
    # what is wanted at least lies anywhere before the face, so only the face itself is sure
    assert (surely.low[0], surely.high[0], surely.high[1]) == pytest.approx((2.0, 2.4, -0.8))


@pytest.mark.parametrize(
    ("to", "axis", "way"),
    [("front", 0, -1.0), ("rear", 0, 1.0), ("left", 1, -1.0), ("right", 1, 1.0), ("down", 2, -1.0), ("up", 2, 1.0)],
)
def test_a_slide_goes_its_way_by_its_best_and_by_its_most(to: str, axis: int, way: float) -> None:
    one, own = fitted(Facet(slides=Slide(to=to, by=SPAN)), (2.0, -0.2, 0.5), (0.4, 0.4, 0.4))
    doubtful = replace(own, doubt=(0.1, 0.2, 0.3))
    (found,), lacks = moving_part(one, doubtful, ROOM)
    (slip,) = found.ways
    assert isinstance(slip, Slip) and lacks is None and found.what == "slide" and found.doubt == (0.1, 0.2, 0.3)
    assert (slip.axis, slip.by, slip.most, found.whole) == (axis, way * 0.5, way * 0.8, 0.5)
    near, far = (slip.start.low[axis] - 0.8, slip.start.high[axis]) if way < 0 else (
        slip.start.low[axis], slip.start.high[axis] + 0.8
    )  # fmt: skip
    assert (slip.hold.low[axis], slip.hold.high[axis]) == pytest.approx((near, far))


@pytest.mark.parametrize("slides", [Slide(to="sideways", by=SPAN), Slide(to="left"), Slide(to="left", by=Band(
    0.0, 0.0, 9.0, known=False))])  # fmt: skip
def test_a_slide_that_is_half_written_is_open(slides: Slide) -> None:
    one, own = fitted(Facet(slides=slides), (2.0, -0.2, 0.5), (0.4, 0.4, 0.4))
    assert moving_part(one, own, ROOM) == ([], "slide")


# ------------------------------------------------------------------ what lies on a bed, or in another thing


def test_what_lies_on_the_bed_or_inside_a_thing_stands_in_nobodys_way_out_and_what_rides_elsewhere_does() -> None:
    """A board over the whole bed 0.3 m over the mattress lets nobody out, unless it is what the bed carries."""
    board = box("board", (0.0, -1.0, 0.9), (1.9, 0.0, 0.95))
    assert is_wide(ways(replace(board, carried_by="parts[bed]"))["door"], 0.8)
    assert ways(replace(board, carried_by="parts[shelf]"))["door"].width.best == 0.0
    assert is_wide(ways(replace(board, carried_by="parts[shelf]", is_inside=True))["door"], 0.8)
    there = (board, box("bed", (0.0, -1.0, 0.4), (1.9, 0.0, 0.5)), box("roof", (0.0, 0.0, 2.0), (1.0, 1.0, 2.2)))
    assert in_the_room(there, BED, SMALL) == (board,)


# ------------------------------------------------------------------ rolled in


def door(width: float, high: float = 1.9, low: float = 0.0, y: float = 0.0) -> Closed:
    middle = exactly((high + low) / 2.0)
    return Closed("openings[ramp]", "ramp", "rear", Place(exactly(6.0), exactly(y), middle, (0.0, width, high - low)))


def rolled(*fixed: Body, heavy: bool = True, opening: Closed | None = None, crate: Body | None = None) -> list[str]:
    """Return what bars the way of a crate of 1.0 x 0.6 x 0.8 at the left wall, from 2 m on."""
    crate = crate if crate is not None else body("crate", (2.0, -1.2, 0.0), (1.0, 0.6, 0.8))
    bodies = (crate, *(replace(one, kind="") for one in fixed))
    doors = [door(1.8) if opening is None else opening]
    names = frozenset({"parts[crate]"}) if heavy else frozenset()
    found = list(blocked_ways(bodies, roots_of(bodies), names, doors, ROOM))
    return [name for one in found for name in (*one.names, one.hole) if name]


BEHIND = body("chest", (4.0, -1.2, 0.0), (0.5, 0.6, 0.5))
BESIDE = body("galley", (2.5, -0.55, 0.0), (3.4, 0.2, 0.5))


def mirrored(one: Body) -> Body:
    (low, high), *_ = one.blocks
    return replace(one, blocks=(Block((low[0], -high[1], low[2]), (high[0], -low[1], high[2])),))


@pytest.mark.parametrize("turn", [lambda one: one, mirrored])
def test_what_is_heavy_is_rolled_in_along_and_then_to_the_side_or_barred(turn) -> None:  # type: ignore[no-untyped-def]
    crate = turn(body("crate", (2.0, -1.2, 0.0), (1.0, 0.6, 0.8)))
    chest, galley = turn(BEHIND), turn(BESIDE)
    assert rolled(crate=crate) == [] == rolled(chest, crate=crate), "round the chest"
    assert rolled(chest, galley, crate=crate) == ["galley"], "round the chest, so that fewest are named"
    assert rolled(chest, galley, crate=crate, opening=door(2.4)) == ["chest"], "straight in, so that the chest alone is"
    assert rolled(chest, galley, heavy=False, crate=crate) == [], "it is lifted over"
    assert rolled(galley, crate=crate, opening=door(2.4)) == [], "straight in along the wall"
    assert rolled(galley, crate=crate) == ["galley"], "the opening ends 0.3 m before the wall"


def test_what_is_no_bar_to_what_is_rolled_in() -> None:
    over = body("rack", (4.0, -1.2, 0.8), (0.5, 2.4, 0.3))
    assert rolled(over) == []
    assert rolled(body("beam", (4.0, -1.2, 0.5), (0.5, 2.4, 0.3))) == ["beam"]
    stand = body("stand", (2.2, -1.0, 0.0), (0.4, 0.4, 0.4))
    assert rolled(stand) == [], "that is in it where it stands is told elsewhere"
    assert rolled(BEHIND, BESIDE, crate=body("crate", (2.0, -1.2, 0.5), (1.0, 0.6, 0.8))) == [], "not on the floor"
    outside = body("crate", (5.5, -1.2, 0.0), (1.0, 0.6, 0.8))
    assert rolled(BEHIND, BESIDE, crate=outside) == [], "partly outside"


@pytest.mark.parametrize(
    ("opening", "found"),
    [
        (door(0.6), []),
        (door(0.59), ["openings[ramp]"]),
        (door(1.8, 0.8), []),
        (door(1.8, 0.79), ["openings[ramp]"]),
        (door(1.8, 1.9, 0.2), []),
        (door(0.5, 1.9, 0.3), []),  # a window: it comes in another way
    ],
)
def test_an_opening_just_large_enough_lets_it_in(opening: Closed, found: list[str]) -> None:
    assert rolled(opening=opening) == found
