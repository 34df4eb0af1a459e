"""From which bed one gets up to a hatch during a change-over: near enough, under enough of the hole, wherever both are.

By hand, in metres: the ceiling is at 2.0; the bed is 1.9 by 0.8 by 0.1 about x = 1.45, y = 0; the hole is 0.6 square.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.layout.changeover import Setting
from boxwright.disciplines.layout.changeover_exits import gets_up_from
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.terraces import Bed
from boxwright.model.place import Place, Surfaces
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band, exactly
from tests.disciplines.layout.small_rigs import TODAY, rig_of

ROOM = Surfaces(0.0, 4.0, -1.0, 1.0, 0.0, 2.0, 0.0, 4.0, -1.0, 1.0, 2.0)
SETTING = Setting(ROOM, (), (), (), (), (), ())
BED = Bed("parts[bed]", "bed", Place(exactly(1.45), exactly(0.0), exactly(0.75), (1.9, 0.8, 0.1)), 0.0, ("owner",))
HATCH = Closed("openings[h]", "h", "roof", Place(exactly(1.0), exactly(0.0), exactly(2.0), (0.6, 0.6, 0.0)))


def between(low: float, high: float) -> Band:
    return Band((low + high) / 2.0, low, high, spread="interval")


def moved(place: Place, to: dict[str, Band]) -> Place:
    return Place(to.get("x", place.x), to.get("y", place.y), to.get("z", place.z), place.size)


@pytest.mark.parametrize(
    ("bed", "hole", "mattress", "is_up"),
    [
        ({}, {}, 0.0, True),  # the top is at 0.8
        ({"z": exactly(0.74)}, {}, 0.0, False),
        ({"z": exactly(0.65)}, {}, 0.1, True),
        ({"z": between(0.7, 0.9)}, {}, 0.0, False),
        ({"z": between(0.76, 0.9)}, {}, 0.0, True),
        ({}, {"x": exactly(2.39)}, 0.0, True),  # the bed ends at 2.4: 0.31 of the hole
        ({}, {"x": exactly(2.41)}, 0.0, False),
        ({}, {"x": between(1.0, 2.41)}, 0.0, False),
        ({"x": between(1.45, 2.0)}, {}, 0.0, False),  # at worst it begins at 1.05: 0.25 of the hole to 1.3
        ({"x": between(1.45, 1.9)}, {}, 0.0, True),
        ({}, {"y": exactly(0.39)}, 0.0, True),
        ({}, {"y": exactly(0.41)}, 0.0, False),
    ],
)
def test_a_bed_is_under_a_hatch_only_wherever_both_may_be(
    bed: dict[str, Band], hole: dict[str, Band], mattress: float, is_up: bool
) -> None:
    lies = replace(BED, place=moved(BED.place, bed), mattress=mattress)
    opening = replace(HATCH, place=moved(HATCH.place, hole))
    assert gets_up_from(lies, opening, SETTING) is is_up


def test_of_a_hole_narrower_than_that_all_is_over_the_bed() -> None:
    narrow = replace(HATCH, place=replace(HATCH.place, size=(0.28, 0.6, 0.0)))
    assert gets_up_from(BED, narrow, SETTING)
    aside = replace(narrow, place=replace(narrow.place, x=exactly(2.3)))  # to 2.44, and the bed ends at 2.4
    assert not gets_up_from(BED, aside, SETTING)


@pytest.mark.parametrize("mattress", [0, 60])
@pytest.mark.parametrize(
    ("x", "z", "hatch"),
    [
        ("100", "750", "200"),
        ("100", "720..800", "200"),
        ("100", "unknown", "200"),
        ("100", "700", "200"),
        ("100..500", "750", "1500"),
        ("100", "750", "1710"),
        ("100", "750", "1690..1710"),
        ("1200", "750", "200"),
        ("unknown", "750", "200"),
        ("100", "750", "unknown"),
    ],
)
def test_a_change_over_and_safety_judge_alike_who_gets_up_to_a_hatch(x: str, z: str, hatch: str, mattress: int) -> None:
    """Neither may import the other, so that each has its own."""
    hole = (
        f"hatch: {{wall: roof, x: {hatch}, side: left+100, width: 600, across: 600, cut: yes, done: yes, stage: all, "
    )
    hole += "egress: wanted, release: inside, swing: {hinge: front, opens: up, to: 90 deg}}"
    text = rig_of(openings=hole, bunk=f"mattress: 1900 x 700 x {mattress}" if mattress else "kind: bed")
    rig = read_rig(text.replace("bunk: {x: 100, side: left, z: 600", f"bunk: {{x: {x}, side: left, z: {z}")).rig
    (bunk,) = [one for one in rig.layout.fitted if one.name == "bunk"]
    (opening,) = [one for one in rig.layout.closed if one.name == "hatch"]
    assert rig.layout.room is not None
    bed = Bed(bunk.of, bunk.name, bunk.place, mattress / 1000.0, ("owner",))
    is_up = gets_up_from(bed, opening, Setting(rig.layout.room, (), (), (), (), (), ()))
    codes = {one.code for one in study(rig, TODAY).findings("sleep")}
    assert ("safety/hatch-out-of-reach" in codes) != is_up
