"""What stands at a stage, in a load state, for a use (DESIGN 5, "What stands")."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.finding import Use
from boxwright.model.load import UNNAMED, LoadState
from boxwright.model.part import Frame
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.standing import PERHAPS, Remembered, Standing, cut, difference, paths, weighed_empty
from boxwright.units import Band, exactly
from tests.study.demo import CLEAN, INCH, POUND, clean, demo, near

PARTS = """\
  rack: {x: 1, side: left, z: 1, size: 2 x 2 x 2, weight: 8, stage: shell, until: shell}
  drawer: {x: 1, side: left, z: 1, size: 2 x 2 x 2, weight: unknown, stage: shell, done: part}
  half: {x: 1, side: left, z: 1, size: 2 x 2 x 2, weight: 40..60, stage: shell, done: part, contents: 10}
  lamp: {inside: later, x: +1, side: +1, z: +1, size: 1 x 1 x 1, weight: 1, stage: shell, done: yes}
  later: {x: 1, side: left, z: 1, size: 2 x 2 x 2, weight: 9, stage: bunks}
  never: {x: 1, side: left, z: 1, size: 2 x 2 x 2, weight: 9, stage: unplanned}
  bags: {x: 60, side: centre, z: 0, size: 9 x 9 x 9, weight: 30, stage: shell, kind: cargo, when_sleeping: out}
  cot: {x: 60, side: left, z: 20, size: 70 x 6 x 10, weight: 12, done: yes, when_sleeping: {x: 20, side: right, z: 0}}
  leaf: {x: 60, side: left, z: 20, size: 70 x 30 x 2, weight: 20, done: yes, folds: up, folded_depth: 3}
  plain: {x: 60, side: left, z: 20, size: 7 x 3 x 2, weight: 20}
"""
RIG = read_rig(CLEAN.replace("loads:\n", f"{PARTS}loads:\n")).rig
ROAD = RIG.loads[0]


def standing(stage: int = 0, ticked: bool = True, load: LoadState = ROAD, use: Use = "tow", rig: Rig = RIG) -> Standing:
    return cut(rig, stage, ticked, load, use)


def frame(name: str, *, stage: int = 0, ticked: bool = True, load: LoadState = ROAD, use: Use = "tow") -> Frame | None:
    return next((one for one in standing(stage, ticked, load, use).frames if one.name == name), None)


def there(name: str, **asked: object) -> Frame:
    found = frame(name, **asked)  # type: ignore[arg-type]
    assert found is not None
    return found


def test_the_text_of_these_tests_is_read_but_for_the_part_without_a_stage() -> None:
    problems = read_rig(CLEAN.replace("loads:\n", f"{PARTS}loads:\n")).problems
    assert [problem.path for problem in problems] == ["parts[plain]"]


def test_a_part_stands_from_its_stage_to_its_last() -> None:
    assert frame("shelf") is None
    assert there("shelf", stage=1, ticked=False).dry == near(exactly(12 * POUND))
    assert there("rack").dry == near(exactly(8 * POUND))
    assert frame("rack", stage=1, ticked=False) is None
    assert frame("never", stage=1, ticked=False) is None


def test_half_a_tick_is_a_weight_between_nothing_and_all_of_it() -> None:
    half = there("half")
    assert half.dry == near(Band(25 * POUND, 0.0, 60 * POUND, spread="perhaps"))
    assert half.contents == near(Band(5 * POUND, 0.0, 10 * POUND, spread="perhaps"))
    assert half.stands == "perhaps"
    assert there("half", ticked=False).dry.spread == "interval"


def test_an_unknown_weight_stays_unknown_even_perhaps() -> None:
    assert not there("drawer").dry.known
    assert there("drawer").dry.high == float("inf")
    assert standing().perhaps == ("parts[drawer]", "parts[half]")


def test_a_thing_that_belongs_to_no_stage_is_there_from_the_start() -> None:
    assert there("plain").stands == "yes"


def test_what_is_in_something_that_is_not_there_yet_is_still_there() -> None:
    assert frame("later") is None
    assert there("lamp").dry == near(exactly(POUND))


def test_cargo_and_contents_follow_the_load_state() -> None:
    bare = LoadState("bare", (), (), (), False, (), ("tow",))
    assert frame("chest", load=bare) is None
    assert there("half", load=bare).contents is None
    some = replace(bare, cargo=("chest",))
    assert there("chest", load=some).dry == near(exactly(50 * POUND))
    assert frame("bags", load=some) is None
    without = LoadState("without", None, ("chest", "half"), (), False, (), ("tow",))
    assert frame("chest", load=without) is None
    assert there("half", load=without).contents is None
    assert there("bags", load=without).dry == near(exactly(30 * POUND))


def test_at_night_things_stand_as_at_night_and_some_are_put_out() -> None:
    assert frame("bags", use="sleep") is None
    assert there("bags", use="leave").dry == near(exactly(30 * POUND))
    assert there("cot", use="sleep").place.x.best > 0.0
    assert abs(there("cot", use="sleep").place.x.best - 55 * INCH) < 1e-12
    assert abs(there("cot").place.x.best - 95 * INCH) < 1e-12


def test_a_leaf_is_folded_up_for_everything_but_sleeping() -> None:
    down, up = there("leaf", use="sleep").place, there("leaf").place
    assert down.size[1] == 30 * INCH
    assert up.size[1:] == pytest.approx((3 * INCH, 30 * INCH))
    assert there("leaf", use="leave").place == up


def test_what_is_in_the_empty_weight_weighs_exactly_nothing() -> None:
    rig = demo("whimbrel")
    frames = {one.name: one for one in cut(rig, 0, False, rig.loads[0], "tow").frames}
    assert {name: frames[name].dry for name in rig.trailer.empty.includes} == dict.fromkeys(
        rig.trailer.empty.includes, exactly(0.0)
    )
    assert len(rig.trailer.empty.includes) == 5


def test_a_tank_the_state_does_not_name_is_named() -> None:
    assert standing().unnamed_tanks == ()
    found = standing(load=replace(ROAD, tanks=()))
    assert found.unnamed_tanks == ("parts[can]",)
    assert [tank.fill for tank in found.tanks] == [UNNAMED]
    assert [tank.fill for tank in standing(load=replace(ROAD, tanks=(), out=("can",))).tanks] == [exactly(0.0)]


def test_people_lie_in_bed_when_sleeping_are_anywhere_else_and_nowhere_when_it_is_left() -> None:
    night = RIG.loads[1]
    (asleep,) = standing(load=night, use="sleep").people
    bed = there("bed", load=night, use="sleep")
    assert asleep.dry == near(exactly(170 * POUND))
    assert asleep.place.x == bed.place.x
    assert abs(asleep.place.z.best - 22 * INCH) < 1e-12
    (working,) = standing(load=night, use="work").people
    assert (working.place.x.low, working.place.x.high) == (0.0, 168 * INCH)
    assert standing(load=night, use="leave").people == ()
    assert standing().people == ()


def test_a_sleeper_whose_bed_is_not_in_yet_is_anywhere_inside() -> None:
    rig = demo("whimbrel")
    night = rig.loads[-1]
    bunk = rig.stage_number("bunk")
    assert bunk is not None
    before = cut(rig, bunk - 1, False, night, "sleep").people
    after = cut(rig, bunk, False, night, "sleep").people
    assert [one.place.x.spread for one in before] == ["interval", "interval"]
    assert [one.place.x.spread for one in after] == ["exact", "exact"]


def test_whimbrel_today_stands_perhaps_where_it_is_half_done() -> None:
    rig = demo("whimbrel")
    today = cut(rig, rig.header.stage_today, True, rig.loads[1], "tow")
    assert "walls[left].layers[liner]" in today.perhaps
    assert "openings[vent-high]" in today.perhaps
    assert "walls[ceiling].layers[liner]" in today.missing
    assert next(one.share for one in today.layers if one.of == "walls[left].layers[liner]") == PERHAPS
    plan = cut(rig, rig.header.stage_today, False, rig.loads[1], "tow")
    assert plan.perhaps == plan.missing == ()
    parts = difference(today, plan)
    assert {"walls[left].layers[liner]", "walls[ceiling].layers[liner]", "parts[solar-1]"} <= set(parts)
    assert "walls[front].layers[liner]" not in parts


def test_what_is_ticked_ahead_of_its_stage_makes_a_difference_too() -> None:
    rig = clean("weight: 12, stage: bunks", "weight: 12, stage: bunks, done: yes")
    today, plan = cut(rig, 0, True, rig.loads[0], "tow"), cut(rig, 0, False, rig.loads[0], "tow")
    assert "parts[shelf]" in paths(today)
    assert difference(today, plan) == ("parts[shelf]",)


def test_a_ticket_that_names_no_load_state_was_weighed_empty() -> None:
    rig = demo("whimbrel")
    found = cut(rig, 1, False, weighed_empty(rig), "tow")
    assert not any(one.kind == "cargo" for one in found.frames)
    assert all(tank.fill == exactly(0.0) for tank in found.tanks)


def test_an_unchanged_part_stays_the_same_object() -> None:
    remembered: Remembered = {}
    first = cut(RIG, 0, True, ROAD, "tow", remembered)
    parts = tuple(replace(one, mass=exactly(1.0)) if one.name == "bed" else one for one in RIG.parts)
    second = cut(replace(RIG, parts=parts), 0, True, ROAD, "tow", remembered)
    assert [a is b for a, b in zip(first.frames, second.frames, strict=True)].count(False) == 1
    assert second == cut(replace(RIG, parts=parts), 0, True, ROAD, "tow")


def test_a_part_named_in_the_empty_weight_is_not_weighed_twice_and_one_that_is_not_named_is_weighed() -> None:
    """Whatever the item says it weighs: the ticket of the bare trailer has it already."""
    parts = tuple(replace(one, is_in_empty_weight=one.name == "bed", mass=exactly(45.0)) for one in RIG.parts)
    frames = {one.name: one.dry for one in standing(ticked=False, rig=replace(RIG, parts=parts)).frames}
    assert frames["bed"] == exactly(0.0)
    assert frames["chest"] == exactly(45.0)


def test_a_sleeper_may_lie_a_quarter_of_the_beds_width_to_either_side_of_its_middle() -> None:
    """The bed is 40 in wide, so 10 in to the left and 10 in to the right: own arithmetic."""
    night = RIG.loads[1]
    (asleep,) = standing(load=night, use="sleep").people
    bed = there("bed", load=night, use="sleep").place.y.best
    assert (asleep.place.y.low, asleep.place.y.best, asleep.place.y.high) == pytest.approx(
        (bed - 10 * INCH, bed, bed + 10 * INCH)
    )
