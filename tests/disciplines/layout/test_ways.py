"""Ways out of a bed in rooms small enough to be worked out by hand."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

import pytest

from boxwright.disciplines.layout import passage
from boxwright.disciplines.layout.aisles import aisle_fits
from boxwright.disciplines.layout.bodies import Block, Body
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import FINENESS
from boxwright.disciplines.layout.terraces import Bed
from boxwright.disciplines.layout.ways import scene_drawn, way_drawn, ways_out
from boxwright.exchange import Aisle, Vector
from boxwright.model.place import Place, Surfaces
from boxwright.units import Band, exactly

# four metres long, two wide, two high; the bed is across the front half of the left side, the door at the rear right
ROOM = Surfaces(0.0, 4.0, -1.0, 1.0, 0.0, 2.0, 0.0, 4.0, -1.0, 1.0, 2.0)
NONE: Vector = (0.0, 0.0, 0.0)


def place(low: Vector, high: Vector) -> Place:
    """Return the place of a box."""
    x, y, z = ((a + b) / 2.0 for a, b in zip(low, high, strict=True))
    size = (high[0] - low[0], high[1] - low[1], high[2] - low[2])
    return Place(exactly(x), exactly(y), exactly(z), size)


BED = Bed("parts[bed]", "bed", place((0.0, -1.0, 0.4), (1.9, 0.0, 0.5)), 0.1, ("one",))
DOOR = Closed("openings[door]", "door", "right", place((3.0, 1.0, 0.0), (3.8, 1.05, 1.8)))
WINDOW = Closed("openings[window]", "window", "left", place((0.5, -1.05, 0.9), (1.0, -1.0, 1.4)))
HATCH = Closed("openings[hatch]", "hatch", "roof", place((2.5, -0.3, 2.0), (3.1, 0.3, 2.05)))
EXITS = (DOOR, WINDOW, HATCH)


def box(name: str, low: Vector, high: Vector, kind: str = "", stands: str = "yes", doubt: Vector = NONE) -> Body:
    """Return a thing of one box."""
    return Body(f"parts[{name}]", name, (Block(low, high),), doubt, True, "perhaps" if stands != "yes" else "yes", kind)


def ways(*bodies: Body, bed: Bed = BED, exits: tuple[Closed, ...] = EXITS, room: Surfaces = ROOM) -> dict[str, Aisle]:
    """Return the first way to each opening by its name."""
    found: dict[str, Aisle] = {}
    for one in ways_out(bodies, (bed,), exits, room):
        found.setdefault(one.leads_to.removeprefix("openings[").removesuffix("]"), one)
    return found


def is_wide(aisle: Aisle, best: float) -> bool:
    """Return whether a way is as wide as worked out, and never wider."""
    return best - FINENESS <= aisle.width.best <= best + 1e-6


def test_an_empty_room_is_left_as_widely_as_its_openings_allow() -> None:
    found = ways()
    assert is_wide(found["door"], 0.8) and is_wide(found["window"], 0.5) and is_wide(found["hatch"], 0.6)
    assert found["door"].height.best == pytest.approx(1.8)
    assert found["window"].height.best == pytest.approx(0.5)
    assert found["hatch"].height.best == pytest.approx(2.0)
    assert all(one.blocked_by == one.over == one.unsure == one.past == () for one in found.values())
    assert found["door"].sleepers == ("one",)


def test_a_hatch_in_the_roof_is_as_wide_as_its_shorter_side() -> None:
    for low, high in (((2.5, -0.3, 2.0), (2.9, 0.3, 2.05)), ((2.5, -0.2, 2.0), (3.1, 0.2, 2.05))):
        assert is_wide(ways(exits=(replace(HATCH, place=place(low, high)),))["hatch"], 0.4)


def test_the_floor_is_as_wide_as_what_stands_on_it_leaves() -> None:
    # from the wall on the right 0.45 m stay free; the bed ends at 1.9, so there is no other way round
    found = ways(box("chest", (2.2, -1.0, 0.0), (2.4, 0.55, 0.6)))
    assert is_wide(found["door"], 0.45) and is_wide(found["hatch"], 0.45) and is_wide(found["window"], 0.5)


def test_what_hangs_over_a_stooping_head_takes_height_only() -> None:
    found = ways(box("shelf", (2.2, -1.0, 1.3), (2.4, 1.0, 1.6)))
    assert is_wide(found["door"], 0.8)
    assert found["door"].height.best == pytest.approx(1.3)
    low = ways(box("shelf", (2.2, -1.0, 1.1), (2.4, 1.0, 1.6)))
    assert low["door"].width.best == 0.0 and low["door"].blocked_by == ("parts[shelf]",)


def test_what_hangs_before_the_top_of_a_door_takes_height_only() -> None:
    """A cupboard over the whole of the door, its underside lower than the top of the hole; the stoop is 1.2 m."""
    for under in (1.21, 1.5, 1.79):
        found = ways(box("cupboard", (2.9, 0.6, under), (3.9, 1.0, 2.0)))
        assert is_wide(found["door"], 0.8)
        assert found["door"].height.best == pytest.approx(under)
    low = ways(box("cupboard", (2.9, 0.6, 1.19), (3.9, 1.0, 2.0)))
    assert low["door"].width.best == 0.0 and low["door"].blocked_by == ("parts[cupboard]",)


def test_before_a_door_lower_than_the_floor_the_stoop_counts_from_the_floor() -> None:
    raised = replace(ROOM, floor=0.1)
    for under, wide in ((1.31, True), (1.29, False)):
        found = ways(box("rail", (2.9, 0.95, under), (3.9, 1.0, 2.0)), room=raised)
        assert (found["door"].width.best > 0.0) is wide


def test_before_a_high_hole_the_stoop_counts_from_its_sill() -> None:
    high = replace(DOOR, place=place((3.0, 1.0, 0.5), (3.8, 1.05, 1.9)))
    found = ways(box("cupboard", (2.9, 0.6, 1.71), (3.9, 1.0, 2.0)), exits=(high,))
    assert is_wide(found["door"], 0.8)
    assert ways(box("cupboard", (2.9, 0.6, 1.69), (3.9, 1.0, 2.0)), exits=(high,))["door"].width.best == 0.0


@pytest.mark.parametrize(("sill", "bed"), [(0.9, 0.6), (0.3, 0.6)])
def test_a_box_for_a_curtain_before_the_top_of_a_window_takes_height_only(sill: float, bed: float) -> None:
    """By hand: one crawls through half a metre, from the sill or from the mattress, whichever is higher."""
    low = max(sill, bed)
    window = replace(WINDOW, place=place((0.5, -1.05, sill), (1.0, -1.0, low + 0.6)))
    for under, best in ((0.5, 0.5), (0.55, 0.55), (0.61, 0.6)):
        found = ways(box("curtain", (0.4, -1.0, low + under), (1.1, -0.9, 1.9)), exits=(window,))
        assert is_wide(found["window"], 0.5)
        assert found["window"].height.best == pytest.approx(best)
    shut = ways(box("curtain", (0.4, -1.0, low + 0.49), (1.1, -0.9, 1.9)), exits=(window,))
    assert shut["window"].width.best == 0.0 and shut["window"].blocked_by == ("parts[curtain]",)


def test_what_stands_beside_the_way_through_a_window_takes_none_of_its_height() -> None:
    lamp = box("lamp", (0.5, -1.0, 1.1), (0.6, -0.9, 1.4))
    found = ways(lamp, exits=(WINDOW,))
    assert is_wide(found["window"], 0.4)
    assert found["window"].height.best == pytest.approx(0.5)


def test_what_is_stepped_over_is_named_and_narrows_nothing() -> None:
    found = ways(box("beam", (2.2, -1.0, 0.0), (2.3, 1.0, 0.15), "cargo"))
    assert is_wide(found["door"], 0.8) and found["door"].over == ("parts[beam]",)
    assert ways(box("beam", (2.2, -1.0, 0.0), (2.3, 0.0, 0.15)))["door"].over == ()


def test_a_bench_across_the_way_is_climbed_and_cargo_is_not() -> None:
    bench = ways_out((box("bench", (2.2, -1.0, 0.0), (2.6, 1.0, 0.5)),), (BED,), (DOOR,), ROOM)
    assert [one.width.best > 0.45 for one in bench] == [False, True]
    assert bench[0].blocked_by == ("parts[bench]",) and bench[1].over == ("parts[bench]",)
    crate = ways_out((box("crate", (2.2, -1.0, 0.0), (2.6, 1.0, 0.5), "cargo"),), (BED,), (DOOR,), ROOM)
    assert [one.width.best for one in crate] == [0.0]


def test_of_several_things_in_the_way_the_fewest_are_named_and_cargo_first() -> None:
    built = box("cabinet", (2.2, -1.0, 0.0), (2.4, 0.2, 1.5))
    crate = box("crate", (2.2, 0.2, 0.0), (2.4, 1.0, 0.7), "cargo")
    aside = box("bag", (0.2, 0.8, 0.0), (0.4, 1.0, 0.7), "cargo")
    assert ways(built, crate, aside)["door"].blocked_by == ("parts[crate]",)


def test_what_lies_over_the_mattress_is_in_the_way_of_leaving_it_and_what_is_under_the_bed_is_not() -> None:
    under = box("drawers", (0.0, -1.0, 0.0), (1.9, -0.1, 0.4))
    assert is_wide(ways(under)["door"], 0.8)
    # a board over the whole bed, 0.3 m over the mattress: nobody rolls out from under it
    over = box("board", (0.0, -1.0, 0.9), (1.9, 0.0, 0.95))
    assert ways(over)["door"].width.best == 0.0
    assert is_wide(ways(box("lamp", (0.0, -1.0, 1.2), (1.9, 0.0, 1.3)))["door"], 0.8)


def test_a_thin_rail_below_a_window_is_leaned_across_and_what_covers_it_is_not() -> None:
    rail = box("rail", (0.0, -1.0, 0.7), (4.0, -0.97, 0.85))
    cover = box("board", (0.0, -1.0, 0.9), (1.0, -0.9, 1.4))
    assert is_wide(ways(rail)["window"], 0.5)
    assert ways(cover)["window"].width.best == 0.0


def test_a_mattress_before_an_opening_takes_from_its_height() -> None:
    low = replace(WINDOW, place=place((0.5, -1.05, 0.3), (1.0, -1.0, 1.4)))
    # the mattress ends 0.6 m up, so 0.8 m of the 1.1 m are left
    assert ways(exits=(low,))["window"].height.best == pytest.approx(0.8)


def test_doubt_makes_a_way_narrower_at_its_low_end_and_wider_at_its_high_end() -> None:
    chest = box("chest", (2.2, -1.0, 0.0), (2.4, 0.55, 0.6), doubt=(0.0, 0.1, 0.0))
    width = ways(chest)["door"].width
    assert width.best == pytest.approx(0.45, abs=2e-4)
    assert width.low == pytest.approx(0.35, abs=2e-4) and width.high == pytest.approx(0.55, abs=2e-4)


def test_doubt_along_the_trailer_counts_too() -> None:
    # a chest from wall to wall ends 0.5 m behind the bed: what is left to the door's near edge is in doubt with it
    chest = box("chest", (2.6, -1.0, 0.0), (4.0, 0.9, 0.6), doubt=(0.2, 0.0, 0.0))
    door = replace(DOOR, place=place((2.0, 1.0, 0.0), (3.0, 1.05, 1.8)))
    width = ways(chest, exits=(door,))["door"].width
    assert width.best == pytest.approx(0.6, abs=2e-4)
    assert width.low == pytest.approx(0.4, abs=2e-4) and width.high == pytest.approx(0.8, abs=2e-4)


def test_what_stands_perhaps_is_in_the_way_except_at_best() -> None:
    width = ways(box("chest", (2.2, -1.0, 0.0), (2.4, 0.55, 0.6), stands="perhaps"))["door"].width
    assert width.low == width.best == pytest.approx(0.45, abs=2e-4)
    assert width.high == pytest.approx(0.8, abs=2e-4)


def test_a_thing_nobody_knows_the_place_of_may_close_the_way() -> None:
    lost = Body("parts[bag]", "bag", (), (float("inf"),) * 3, False, "yes", "cargo")
    found = ways(lost)["door"]
    assert found.width.low == 0.0 and found.width.best > 0.7 and found.unsure == ("parts[bag]",)
    inside = replace(lost, carried_by="parts[chest]", is_inside=True)
    assert ways(inside)["door"].unsure == ()


def test_a_bed_an_opening_or_a_room_without_a_place_gives_no_width() -> None:
    nowhere = Band(0.0, float("-inf"), float("inf"), known=False)
    lost_bed = replace(BED, place=replace(BED.place, x=nowhere))
    lost_door = replace(DOOR, place=replace(DOOR.place, x=nowhere))
    for found in (ways(bed=lost_bed), ways(exits=(lost_door,)), ways(room=replace(ROOM, rear=float("inf")))):
        assert not found["door"].width.known and found["door"].width.low == 0.0


def test_a_bed_that_may_be_off_is_judged_at_its_worst() -> None:
    window = replace(WINDOW, place=place((0.5, -1.05, 0.3), (1.0, -1.0, 1.4)))
    shaky = replace(BED, place=replace(BED.place, z=Band(0.45, 0.35, 0.65, spread="interval")))
    # the mattress ends 0.5 to 0.8 m up under a top of 1.4 m
    height = ways(bed=shaky, exits=(window,))["window"].height
    assert (height.low, height.best, height.high) == pytest.approx((0.6, 0.8, 0.9))
    sure = ways(exits=(window,))["window"].height
    assert sure.low == sure.best == sure.high == pytest.approx(0.8)


def test_a_door_on_the_way_to_another_is_named() -> None:
    far = Closed("openings[far]", "far", "rear", place((4.0, 0.4, 0.0), (4.05, 1.0, 1.8)))
    wall = box("wall", (2.9, -1.0, 0.0), (3.0, 0.4, 1.9))
    crate = box("crate", (3.0, -1.0, 0.0), (4.0, 0.38, 1.0))
    found = ways(wall, crate, exits=(DOOR, far))
    assert found["far"].past == ("openings[door]",) and found["door"].past == ()


def test_a_hole_nobody_gets_through_is_no_way_out() -> None:
    vent = Closed("openings[vent]", "vent", "left", place((3.0, -1.05, 0.1), (3.25, -1.0, 0.2)))
    assert set(ways(exits=(DOOR, vent))) == {"door"}


def test_a_mirrored_room_has_the_same_ways() -> None:
    things = (box("chest", (2.2, -1.0, 0.0), (2.4, 0.55, 0.6)), box("beam", (2.7, -1.0, 0.0), (2.8, 1.0, 0.15)))
    turned = tuple(
        replace(one, blocks=tuple(Block((a[0], -b[1], a[2]), (b[0], -a[1], b[2])) for a, b in one.blocks))
        for one in things
    )
    bed = replace(BED, place=replace(BED.place, y=exactly(-BED.place.y.best)))
    door = replace(DOOR, wall="left", place=replace(DOOR.place, y=exactly(-DOOR.place.y.best)))
    here, there = ways(*things, exits=(DOOR,))["door"], ways(*turned, bed=bed, exits=(door,))["door"]
    assert here.width.best == pytest.approx(there.width.best, abs=FINENESS)
    assert (here.over, here.blocked_by, here.height) == (there.over, there.blocked_by, there.height)


def test_a_floor_that_lies_higher_lifts_everything_with_it() -> None:
    things = (
        box("shelf", (2.2, -1.0, 1.3), (2.4, 1.0, 1.6)),
        box("chest", (2.2, -1.0, 0.0), (2.4, 0.3, 0.6)),
        box("beam", (2.7, -1.0, 0.0), (2.8, 1.0, 0.15)),
    )
    by = 0.3
    lifted = tuple(
        replace(one, blocks=tuple(Block((a[0], a[1], a[2] + by), (b[0], b[1], b[2] + by)) for a, b in one.blocks))
        for one in things
    )
    room = replace(ROOM, floor=by, ceiling=ROOM.ceiling + by)
    bed = replace(BED, place=replace(BED.place, z=exactly(BED.place.z.best + by)))
    door = replace(DOOR, place=replace(DOOR.place, z=exactly(DOOR.place.z.best + by)))
    here, there = ways(*things, exits=(DOOR,))["door"], ways(*lifted, bed=bed, exits=(door,), room=room)["door"]
    assert (there.width, there.over) == (here.width, here.over)
    assert there.height.best == pytest.approx(here.height.best) == pytest.approx(1.3)


def test_the_way_drawn_leads_from_the_bed_to_the_door() -> None:
    chest = box("chest", (2.2, -1.0, 0.0), (2.4, 0.4, 0.6))
    way = way_drawn(scene_drawn((chest,), BED, DOOR, ROOM, False), 0.5)
    assert way[0][0] <= 1.9 and way[-1][1] > 1.0 and len(way) > 2
    assert way_drawn(scene_drawn((chest,), BED, DOOR, ROOM, False), 0.7) == ()


def strewn(count: int, seed: int = 1) -> tuple[Body, ...]:
    """Return a room full of boxes, some of them cargo."""
    luck, found = Random(seed), []
    for number in range(count):
        x, y, z = luck.uniform(0.0, 3.8), luck.uniform(-1.0, 0.8), luck.choice([0.0, 0.0, 0.0, 0.3, 0.9, 1.3])
        far = x + luck.uniform(0.03, 0.3), y + luck.uniform(0.03, 0.3), z + luck.uniform(0.05, 0.6)
        found.append(box(f"t{number:03}", (x, y, z), far, luck.choice(["", "cargo"])))
    return tuple(found)


def test_in_a_crowded_room_few_ways_are_looked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    """One search for each of 200 boxes to be put back, and one for each of them to be stepped over, were 1600."""
    searches, cells = list[int](), passage._cells

    def counted(*given: Any) -> Any:
        searches.append(len(given[0]))
        return cells(*given)

    monkeypatch.setattr(passage, "_cells", counted)
    found = ways_out(strewn(200), (BED,), EXITS, ROOM)
    assert len(found) == 4 and 100 < len(searches) < 230


def test_what_alone_makes_an_aisle_narrow_is_named_if_anything_is() -> None:
    """Held against taking each thing away by itself, in rooms in which none, one or several of them do."""
    several = 0
    for seed in range(60):
        bodies = strewn(14, seed)
        (fit,) = aisle_fits(bodies, (BED,), (DOOR,), ROOM)
        alone = [
            body.of
            for body in bodies
            for less in aisle_fits(tuple(one for one in bodies if one is not body), (BED,), (DOOR,), ROOM)
            if fit.has.best < fit.wants.best <= less.has.best
        ]
        several += len(alone) > 1
        assert fit.under == (alone[0] if alone else ""), seed
    assert several >= 5


@pytest.mark.parametrize("count", [5, 15, 40])
def test_what_is_in_the_way_is_the_least_that_has_to_go_one_after_the_other(count: int) -> None:
    bodies = strewn(count)
    for one in ways_out(bodies, (BED,), EXITS, ROOM):
        gone = set(one.blocked_by)
        if not gone:
            continue
        wanted = min(0.45, {"window": 0.5, "door": 0.8, "hatch": 0.6}[one.leads_to[9:-1]])

        def wide(away: set[str], leads_to: str = one.leads_to, climbs: bool = bool(one.over)) -> float:
            rest = tuple(body for body in bodies if body.of not in away)
            every = [way for way in ways_out(rest, (BED,), EXITS, ROOM) if way.leads_to == leads_to]
            return max(way.width.best for way in (every if climbs else every[:1]))

        assert wide(gone) >= wanted - FINENESS
        if not one.over:
            assert all(wide(gone - {of}) < wanted for of in gone)
