"""The true way of doors, lids and canopies on the plan, and rigs with half of it missing."""

from __future__ import annotations

from datetime import date
from math import hypot, isfinite, radians
from pathlib import Path

import pytest

from boxwright.disciplines.layout.drawn import Thing
from boxwright.disciplines.layout.parts import Facet
from boxwright.disciplines.layout.paths import ways_drawn
from boxwright.drawing import Arc, Line, Shape
from boxwright.drawing.mark import Point
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.layouts import ROOM

TEXT = (Path(__file__).parents[2] / "findings" / "layout" / "rig.yaml").read_text(encoding="utf-8")
DAY = date(2026, 6, 1)
INCH = 0.0254


def thing(name: str, text: str) -> Thing:
    rig = read_rig(text).rig
    frames = study(rig, DAY).slots[0].standing.frames
    item = next(one for one in rig.parts if one.name == name)
    facet = item.facet("layout")
    assert facet is None or isinstance(facet, Facet)
    return Thing(next(one for one in frames if one.of == item.of), (), facet)


def swinging(words: str) -> str:
    return TEXT.replace("size: 14 x 16 x 30,", f"size: 14 x 16 x 30, swing: {words},")


@pytest.mark.parametrize(("hinge", "at"), [("front", 120.0), ("rear", 134.0)])
def test_a_door_of_a_cabinet_turns_into_the_room_about_its_own_edge(hinge: str, at: float) -> None:
    marks = ways_drawn(thing("cabinet", swinging(f"{{hinge: {hinge}, opens: out, to: 120 deg}}")), ROOM)
    (leaf,) = [one for one in marks if isinstance(one, Line)]
    (arc,) = [one for one in marks if isinstance(one, Arc)]
    assert leaf.start[0] == pytest.approx(at * INCH)
    assert leaf.end[1] < leaf.start[1]  # the cabinet stands at the right wall, so its face looks to the left
    assert hypot(leaf.end[0] - leaf.start[0], leaf.end[1] - leaf.start[1]) == pytest.approx(14.0 * INCH)
    assert abs(arc.sweep) == pytest.approx(radians(120.0))


def test_a_lid_is_laid_over_the_ground_it_goes_over() -> None:
    marks = ways_drawn(thing("cabinet", swinging("{hinge: right, opens: up, to: 90 deg}")), ROOM)
    (lid,) = [one for one in marks if isinstance(one, Shape)]
    across = sorted({round(corner[1] / INCH, 6) for corner in lid.points})
    assert across[1] - across[0] == pytest.approx(16.0)


def test_a_canopy_covers_the_ground_to_its_reach() -> None:
    marks = ways_drawn(thing("awning", TEXT), ROOM)
    (sheet,) = [one for one in marks if isinstance(one, Shape)]
    points: tuple[Point, ...] = sheet.points
    assert max(point[1] for point in points) / INCH == pytest.approx(46.0 + 60.0)
    assert {round(point[0] / INCH, 6) for point in points} == {60.0, 120.0}


def test_what_is_not_written_is_not_drawn() -> None:
    assert ways_drawn(thing("lamp", TEXT), ROOM) == []
    assert ways_drawn(thing("cabinet", swinging("{hinge: nowhere, opens: out}")), ROOM) == []
    assert ways_drawn(thing("awning", TEXT.replace("pitch: 10 deg", "pitch: unknown")), ROOM) == []


WRONG = {
    "no body": ("  body: {length: 160, width: 80, height: 78}\n", ""),
    "no width": ("body: {length: 160, width: 80, height: 78}", "body: {length: 160, height: 78}"),
    "a bed of no size": ("size: 70 x 28 x 2,", ""),
    "a bed of no thickness": ("size: 70 x 28 x 2,", "size: 70 x 28 x 0,"),
    "a bed nowhere": ("bed: {x: 30, side: left, z: 27,", "bed: {"),
    "a bed hinged at the front": ("hinge: {edge: left}", "hinge: {edge: front}"),
    "a slide of no way": ("slides: {to: left, by: 12}", "slides: {to: nowhere, by: 12}"),
    "a slide of unknown way": ("slides: {to: left, by: 12}", "slides: {to: left, by: unknown}"),
    "a canopy falling straight down": ("pitch: 10 deg", "pitch: 90 deg"),
    "a canopy rising": ("pitch: 10 deg", "pitch: -10 deg"),
    "a canopy of no reach": ("reach: 60", "reach: 0"),
    "a door of two turns": ("opens: in, to: 90 deg", "opens: in, to: 720 deg"),
    "a door that does not turn": ("opens: in, to: 90 deg", "opens: in, to: 0 deg"),
    "a door hinged in its face": ("hinge: front, opens: in", "hinge: right, opens: in"),
    "room of unknown depth": ("keep_clear: {front: 20, width: 14}", "keep_clear: {front: unknown}"),
    "things on each other in a ring": ("box: {x: 100,", "box: {rides_on: tin, x: 100,"),
    "blocks without a size": ("tin: {x: 26,", "tin: {x: 26, blocks: [{x: 1}],"),
    "no loads": ("  road: {cargo: all, for: [tow]}\n", ""),
}


@pytest.mark.parametrize("name", WRONG)
def test_a_rig_that_is_half_written_or_wrong_is_still_answered(name: str) -> None:
    old, new = WRONG[name]
    assert TEXT.count(old) == 1
    text = TEXT.replace(old, new)
    if "ring" in name:
        text = text.replace("tin: {x: 26,", "tin: {rides_on: box, x: 26,")
    for slot in study(read_rig(text).rig, DAY).slots:
        assert slot.broken == ()
        assert slot.layout is not None
        for one in slot.layout.struck:
            assert isfinite(one.reached)


@pytest.mark.parametrize(
    "name", ["a bed of no size", "a bed nowhere", "a bed hinged at the front", "a slide of no way",
             "a slide of unknown way", "a door hinged in its face", "room of unknown depth", "a bed of no thickness"],
)  # fmt: skip
def test_what_is_missing_is_asked_for_and_never_taken_as_clear(name: str) -> None:
    old, new = WRONG[name]
    found = study(read_rig(TEXT.replace(old, new)).rig, DAY).findings("sleep")
    asked = [one for one in found if one.code in ("layout/opening-unsaid", "layout/place-unknown")]
    assert asked and all(one.kind == "unknown" and one.act for one in asked)
    if "bed" in name:
        assert any(one.could_stop for one in asked)
