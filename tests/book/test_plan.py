"""The plan and the walls: every thing where its line says, drawn by where it lies, and every mark about a line."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import isclose, pi
from pathlib import Path

import pytest

from boxwright.book.answer import slot_of
from boxwright.book.plan import ASIDE, LAYERS, Layered, plan, plan_sheets, with_things
from boxwright.drawing import Arc, Line, Shape, Text, View
from boxwright.drawing.layout import laid_out
from boxwright.drawing.paper import LETTER
from boxwright.rig.compose import Reading, read_rig
from boxwright.study.slots import Slot, study
from tests.drawing.sample import TITLE

ROOT = Path(__file__).resolve().parents[2]
INCH = 0.0254
DAY = date(2026, 5, 2)
HEAD = """\
boxwright: 1
rig: Plan
units: {length: in, weight: lb}
trailer:
  body: {length: 168, width: 80, height: 78}
  coupler_x: -52
  axles: {x: [83, 117], gawr: [3500, 3500]}
  tyre: {size: ST205/75R15}
frame: {studs: {every: 16, first: 0}}
stages: {all: {what: everything}}
"""


def worked(text: str, stage: int | None = None, load: str = "") -> tuple[Reading, Slot]:
    reading = read_rig(text)
    found = slot_of(study(reading.rig, DAY, stage=stage), "tow", load)
    assert found is not None
    return reading, found


def plan_of(text: str, stage: int | None = None, load: str = "") -> Layered:
    reading, slot = worked(text, stage, load)
    found = plan(reading.rig, slot, reading.rig.header.units)
    assert found is not None
    return found


def written(name: str) -> str:
    return (ROOT / "rigs" / f"{name}.yaml").read_text(encoding="utf-8")


def shape(layered: Layered, of: str) -> Shape:
    return next(mark for mark in layered.view.marks if mark.of == of and isinstance(mark, Shape))


def ends(one: Shape) -> tuple[float, float, float, float]:
    """Return from where to where a shape reaches along and across, in inches."""
    x, y = [point[0] / INCH for point in one.points], [point[1] / INCH for point in one.points]
    return min(x), max(x), min(y), max(y)


def part(line: str) -> Shape:
    return shape(plan_of(f"{HEAD}parts:\n  box: {{{line}, weight: 10}}\n"), "parts[box]")


@pytest.mark.parametrize(
    ("line", "along", "across"),  # own arithmetic: the studs' faces stand 40 in left and right of the middle
    [
        ("x: 54, side: right-1, z: 0, size: 25 x 16 x 18", (54, 79), (23, 39)),
        ("x: 0, side: left, z: 0, size: 10 x 12 x 5", (0, 10), (-40, -28)),
        ("x: rear-20, side: centre+6, z: 0, size: 12 x 8 x 5", (148, 160), (2, 10)),
        ("x: mid 80, side: centre, z: 0, size: 4 x 6 x 5", (78, 82), (-3, 3)),
    ],
)
def test_a_thing_is_drawn_where_its_line_says(line: str, along: tuple[int, int], across: tuple[int, int]) -> None:
    assert ends(part(line)) == pytest.approx((*along, *across))


def test_what_lies_under_the_deck_overhead_or_inside_is_not_drawn_as_standing() -> None:
    assert (part("x: 9, side: left, z: 0, size: 9 x 9 x 9").line, "wood") == ("visible", "wood")
    under = part("x: 9, side: left, z: -9, size: 9 x 9 x 9")
    over = part("x: 9, side: left, z: 60, size: 9 x 9 x 9")
    assert (under.line, under.fill, over.line, over.fill) == ("hidden", "none", "phantom", "none")
    text = f"""{HEAD}parts:
  bench: {{x: 20, side: left, z: 0, size: 40 x 20 x 18, weight: 30}}
  tank: {{inside: bench, x: +2, side: +2, z: +1, size: 20 x 10 x 10, weight: 5}}
  lamp: {{rides_on: bench, x: +2, side: +2, z: +18, size: 5 x 5 x 5, weight: 5}}
"""
    found = plan_of(text)
    assert (shape(found, "parts[tank]").line, shape(found, "parts[tank]").fill) == ("hidden", "none")
    assert (shape(found, "parts[lamp]").line, shape(found, "parts[lamp]").fill) == ("visible", "wood")
    order = [mark.of for mark in found.view.marks if isinstance(mark, Shape)]
    assert order.index("parts[bench]") < order.index("parts[lamp]") < order.index("parts[tank]")


def test_two_things_in_one_place_are_both_seen() -> None:
    line = "{x: 20, side: left, z: 0, size: 40 x 20 x 18, weight: 30}"
    found = plan_of(f"{HEAD}parts:\n  one: {line}\n  two: {line}\n")
    assert sorted((shape(found, of).fill) for of in ("parts[one]", "parts[two]")) == ["none", "wood"]


def test_a_thing_without_a_place_or_spread_over_others_is_not_drawn_somewhere() -> None:
    text = f"""{HEAD}parts:
  lost: {{weight: 10}}
  screws: {{weight: 22, x: 0, side: centre, z: 30, size: 168 x 79 x 10, kind: spread}}
"""
    assert not [mark for mark in plan_of(text).view.marks if mark.of.startswith("parts[")]


def test_a_bunk_folded_for_the_road_shows_where_it_comes_down() -> None:
    found = plan_of(written("whimbrel"), stage=7, load="departure")
    up, down = ends(shape(found, "parts[bunk]")), ends(shape(found, "parts[bunk].down"))
    assert up[3] - up[2] == pytest.approx(9.0), "folded_depth"
    assert down[3] - down[2] == pytest.approx(48.0), "its width"
    assert shape(found, "parts[bunk].down").line == "phantom"
    assert found.layers["parts[bunk].down"] == "elsewhere"


def test_a_door_swings_out_of_the_wall_about_the_edge_it_is_hinged_on() -> None:
    found = plan_of(written("whimbrel"))
    leaf = next(mark for mark in found.view.marks if mark.of == "openings[side-door].swing" and isinstance(mark, Line))
    arc = next(mark for mark in found.view.marks if mark.of == "openings[side-door].swing" and isinstance(mark, Arc))
    low = min(shape(found, "openings[side-door]").points)[0]
    assert isclose(leaf.start[0], low), "hinged in front"
    assert leaf.end[1] > leaf.start[1] > 40 * INCH, "to the right, outside"
    assert isclose(abs(arc.sweep), 170.0 / 180.0 * pi, rel_tol=1e-6), "as far as it is written"


@pytest.mark.parametrize("name", ["whimbrel", "dunlin", "gannet"])
def test_every_mark_of_the_plan_is_about_a_line_of_the_file(name: str) -> None:
    reading, slot = worked(written(name))
    found = plan(reading.rig, slot, reading.rig.header.units)
    assert found is not None
    nowhere = {mark.of for mark in found.view.marks if reading.document.span(mark.of) == (0, 0)}
    assert not nowhere
    assert reading.document.span("studs") == (0, 0), "and a path that leads nowhere would be seen"
    assert set(found.layers.values()) <= set(LAYERS) and set(LAYERS) >= ASIDE


def test_studs_carry_their_numbers_and_are_a_layer() -> None:
    found = plan_of(written("whimbrel"))
    numbers = [mark.words for mark in found.view.marks if isinstance(mark, Text) and mark.of == "frame.studs"]
    assert numbers.count("4") == 2 and numbers.count("2") == 1, "the door took stud 2 of the right wall out"
    assert found.layers["frame.studs"] == "studs"


def test_wires_run_within_the_walls_and_wait_to_be_asked_for() -> None:
    found = plan_of(written("whimbrel"))
    runs = [mark for mark in found.view.marks if mark.of == "wires[pump]" and isinstance(mark, Line)]
    assert runs and found.layers["wires[pump]"] == "wires" and "wires" in ASIDE
    for run in runs:
        for x, y in (run.start, run.end):
            assert x < 0.0 or abs(y) > 40 * INCH - 1e-9, "between stud face and skin"


def test_the_printed_plan_has_no_flaps_so_that_its_scale_is_larger() -> None:
    reading, slot = worked(written("whimbrel"))
    (sheet,) = plan_sheets(reading.rig, slot, reading.rig.header.units)
    assert (sheet.name, len(sheet.views)) == ("plan", 1)
    assert not [mark for mark in sheet.views[0].marks if mark.of.endswith((".open", ".slides", ".keep_clear"))]
    assert not [mark for mark in sheet.views[0].marks if mark.of.startswith("wires[")]


def test_a_body_without_measures_has_no_plan() -> None:
    reading = read_rig("boxwright: 1\nrig: Nothing\nstages: {all: {what: everything}}\n")
    slot = slot_of(study(reading.rig, DAY), "tow", "")
    if slot is not None:
        assert plan(reading.rig, slot, reading.rig.header.units) is None
        assert plan_sheets(reading.rig, slot, reading.rig.header.units) == ()


# ---------------------------------------------------------------------- walls


def against(parts: str, wall: str, is_inside: bool) -> list[Shape]:
    reading, slot = worked(f"{HEAD}parts:\n{parts}")
    empty = View(wall, "", ())
    return [
        mark for mark in with_things(reading.rig, slot, empty, wall, is_inside).view.marks if isinstance(mark, Shape)
    ]


@pytest.mark.parametrize(
    ("wall", "line", "inside", "outside"),
    [
        ("left", "x: 20, side: left, z: 5, size: 10 x 4 x 8", (-30, -20), None),
        ("right", "x: 20, side: right, z: 5, size: 10 x 4 x 8", (20, 30), None),
        ("front", "x: front, side: centre+10, z: 5, size: 4 x 6 x 8", (7, 13), None),
        ("rear", "x: rear-4, side: centre+10, z: 5, size: 4 x 6 x 8", (-13, -7), None),
        ("left", "x: 20, side: left-8, z: 5, size: 10 x 4 x 8", None, (20, 30)),
        ("right", "x: 20, side: right+8, z: 5, size: 10 x 4 x 8", None, (-30, -20)),
        ("left", "x: 20, side: centre, z: 5, size: 10 x 4 x 8", None, None),
    ],
)
def test_a_thing_is_drawn_on_the_side_of_the_wall_it_stands_against(
    wall: str, line: str, inside: tuple[int, int] | None, outside: tuple[int, int] | None
) -> None:
    parts = f"  box: {{{line}, weight: 10}}\n"
    for is_inside, wanted in ((True, inside), (False, outside)):
        found = against(parts, wall, is_inside)
        assert [one.of for one in found] == (["parts[box]"] if wanted else [])
        if wanted:
            assert ends(found[0]) == pytest.approx((*wanted, 5.0, 13.0))


def test_of_two_things_the_one_nearer_to_the_eye_is_drawn_last() -> None:
    deep = "  deep: {x: 20, side: left, z: 5, size: 10 x 20 x 8, weight: 10}\n"
    flat = "  flat: {x: 20, side: left, z: 5, size: 10 x 4 x 8, weight: 10}\n"
    assert [one.of for one in against(deep + flat, "left", True)] == ["parts[flat]", "parts[deep]"]


def test_most_things_in_the_key_of_a_full_plan_have_a_number_in_it() -> None:
    """Numbers are led out to the white beside the plan; of the 39 names in its key 8 have none."""
    reading, slot = worked(written("whimbrel"), 10)
    (sheet,) = plan_sheets(reading.rig, slot, reading.rig.header.units)
    pages = laid_out(replace(sheet, notes=()), LETTER, TITLE)
    cells = [one.text for page in pages for one in page.words if one.belongs == "grid" and not one.is_bold]
    rings = [one.text for one in pages[0].words if one.belongs == "note"]
    assert {one for one in cells if one.isdigit()} == set(rings)
    assert len(rings) > 25
    assert cells.count("\N{EN DASH}") < len(rings) / 3, "things of the key that cannot be found in the plan"
