"""The sheets with people in them: each demo's plans, ways out, headroom and things to tape out say what is written."""

from __future__ import annotations

import re
from datetime import date
from functools import cache
from math import cos, hypot, inf, sin
from pathlib import Path

import pytest

from boxwright.book.answer import slot_of
from boxwright.book.poses import pose_sheets
from boxwright.disciplines.layout.body_sizes import SHARE
from boxwright.disciplines.layout.exit_plan import short_of
from boxwright.disciplines.layout.figures import lying_end, lying_side, sitting_front, standing_front, standing_side
from boxwright.drawing import Arc, Dimension, Grid, Leader, Line, Mark, Shape, Sheet, Text
from boxwright.finding import Use
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import HeaderUnits, read_exact

ROOT = Path(__file__).resolve().parents[2]
DAY = date(2026, 5, 2)
NAMES = ("plan-travel", "plan-night", "plan-work", "headroom", "exits", "tape-things")
STAGES = [("whimbrel", 10), ("whimbrel", 5), ("whimbrel", 0), ("dunlin", 5), ("dunlin", 0), ("gannet", 3)]


@cache
def drawn(name: str, stage: int, use: Use = "sleep") -> dict[str, Sheet]:
    """Return the sheets of a demo at a stage, by name."""
    rig = read_rig((ROOT / "rigs" / f"{name}.yaml").read_text(encoding="utf-8")).rig
    found = study(rig, DAY, stage=stage)
    slot = slot_of(found, use, "") or slot_of(found, "tow", "")
    assert slot is not None
    return {sheet.name: sheet for sheet in pose_sheets(rig, slot, rig.header.units)}


def marks(sheet: Sheet) -> list[Mark]:
    return [mark for view in sheet.views for mark in view.marks]


def words(sheet: Sheet) -> list[str]:
    return [mark.words for mark in marks(sheet) if isinstance(mark, Text)]


def grid(sheet: Sheet) -> list[dict[str, str]]:
    """Return the rows of a sheet's only table by the heads of its columns."""
    (only,) = sheet.grids
    assert isinstance(only, Grid)
    return [dict(zip(only.columns, row, strict=True)) for row in only.rows]


@pytest.mark.parametrize(("name", "stage"), STAGES)
def test_every_sheet_is_there_and_every_mark_is_about_a_line(name: str, stage: int) -> None:
    found = drawn(name, stage)
    assert set(found) - {"bringing-in", "reach"} | {"tape-things"} == set(NAMES)
    assert ("bringing-in" in found) == ((name, stage) == ("whimbrel", 5))  # its sheets of lining
    assert ("tape-things" in found) == (stage > 0)  # an empty trailer has nothing to lay out
    for sheet in found.values():
        assert marks(sheet)
        assert all(mark.of for mark in marks(sheet))
        for one in sheet.grids:
            assert len(one.of) == len(one.rows) and all(len(row) == len(one.columns) for row in one.rows)


def test_each_pose_shows_its_things_where_they_are_then() -> None:
    found = drawn("whimbrel", 10)
    at = {name: {row["Thing"]: row for row in grid(found[name])} for name in NAMES[:3]}
    assert at["plan-travel"]["bunk"]["Size"].startswith("76 in x 9 in")  # folded up, as deep as it is written
    assert at["plan-night"]["bunk"]["Size"].startswith("76 in x 48 in")
    assert "boat" in at["plan-travel"] and "boat" not in at["plan-night"]
    assert "duffels" in at["plan-work"] and "duffels" not in at["plan-night"]


def test_the_free_way_is_drawn_with_its_width_and_by_hand_dunlins_is_what_the_crates_leave() -> None:
    # the rear opening begins 50 mm inside the studs on the left, the crates begin 300 mm inside them
    assert "250 mm to rear: WAY SHUT BY bowls-crates" in words(drawn("dunlin", 5)["plan-night"])
    # Asleep nobody opens the ramp: no way to it is promised, nor drawn as one.
    night = drawn("whimbrel", 10)["plan-night"]
    assert any("to ramp: NOT FROM INSIDE" in one for one in words(night))
    assert not any("free to ramp" in one for one in words(night))
    assert any("free to side-door" in one for one in words(drawn("whimbrel", 10)["plan-night"]))
    # Loaded for the road nobody gets past the boat; at work one does.
    assert any(one.endswith(" only, to ramp") for one in words(drawn("whimbrel", 10)["plan-travel"]))


def test_a_way_to_the_end_without_a_door_ends_at_its_wall_and_one_too_narrow_is_none() -> None:
    """One door at the rear: past the crates 250 mm are left, and the front wall has no opening to go out through."""
    sheet = drawn("dunlin", 5)["plan-work"]
    way = [mark for mark in marks(sheet) if isinstance(mark, Line) and mark.of == "openings[rear].way"]
    way = [mark for mark in way if mark.line in {"hidden", "centre"} and mark.start[0] < 2.5]
    assert way and min(min(one.start[0], one.end[0]) for one in way) == pytest.approx(0.0055, abs=0.011)
    assert {mark.line for mark in way} == {"hidden"}
    assert any(one.endswith(" only, to the front") for one in words(sheet))
    wide = drawn("whimbrel", 10)["plan-work"]
    assert any(one.endswith("free to ramp") for one in words(wide))


def test_ways_out_are_numbered_and_told_with_what_is_in_them() -> None:
    rows = grid(drawn("whimbrel", 10)["exits"])
    assert [(row["No."], row["Way out"]) for row in rows] == [
        ("1", "side-door"), ("2", "ramp"), ("3", "window-right"), ("3", "window-right, climbing"),
    ]  # fmt: skip
    assert rows[0]["Opens"].endswith("from inside") and rows[1]["Opens"].endswith("NOT FROM INSIDE")
    assert rows[2]["In the way"] == "bench-right" and rows[3]["Over"] == "bench-right"
    (blocked,) = [row for row in grid(drawn("dunlin", 5)["exits"]) if row["Way out"] == "rear"]
    assert blocked["Wide"] == "250 mm" and blocked["In the way"] == "bowls-crates"
    assert {"1: WAY SHUT BY bowls-crates", "250 mm only"} <= set(words(drawn("dunlin", 5)["exits"]))


@pytest.mark.parametrize("use", ["sleep", "tow"])
def test_a_way_that_does_not_count_is_crossed_out_in_the_words_of_the_card_whatever_is_drawn_for(use: Use) -> None:
    sheet = drawn("whimbrel", 10, use)["exits"]
    assert {"2: NOT FROM INSIDE", "3: NOT TRIED YET"} <= set(words(sheet)) and "1" in words(sheet)
    crossed = {mark.of for mark in marks(sheet) if isinstance(mark, Line) and mark.line == "cut" and _is_outside(mark)}
    assert crossed == {"openings[ramp]", "openings[window-right]"}
    dashed = {mark.of for mark in marks(sheet) if isinstance(mark, Line) and mark.line == "hidden"}
    assert {"openings[ramp]", "openings[window-right]"} <= dashed and "openings[side-door]" not in dashed
    # Nothing measured is promised of a way that does not count.
    assert not any(isinstance(mark, Line) and mark.line == "centre" and mark.of in crossed for mark in marks(sheet))


def _is_outside(mark: Line) -> bool:
    """Return whether a line lies outside the walls of Whimbrel, where the numbers stand."""
    (x, y), (to_x, to_y) = mark.start, mark.end
    return min(abs(y), abs(to_y)) > 1.1 or min(x, to_x) > 4.4


def test_without_a_bed_the_ways_out_are_those_of_somebody_on_the_floor() -> None:
    stand_in = grid(drawn("whimbrel", 5)["exits"])
    assert {row["From"] for row in stand_in} == {"cots"}
    sheet = drawn("dunlin", 3)["exits"]
    assert "Nobody's bed stands yet" in sheet.notes[0] and sheet.title == "Ways out"
    rows = {row["Way out"]: row for row in grid(sheet)}
    assert {row["From"] for row in rows.values()} == {"the floor"}
    assert rows["rear"]["In the way"] == "bowls-crates" and rows["rear"]["Opens"].endswith("WAY SHUT BY bowls-crates")
    assert rows["side-hatch"]["Opens"].endswith("NOT MEASURED")
    assert "1: WAY SHUT BY bowls-crates" in words(sheet)
    gannet = drawn("gannet", 3)["exits"]
    assert gannet.grids == () and "NO WAY OUT IS WRITTEN" in words(gannet)


@pytest.mark.parametrize(
    ("name", "stage", "signs"),
    [
        ("whimbrel", 5, {"co-alarm": "CO alarm", "smoke-alarm": "smoke alarm", "extinguisher": "extinguisher"}),
        ("dunlin", 3, {"co-alarm": "CO alarm", "smoke-alarm": "smoke alarm", "extinguisher": "extinguisher"}),
        ("dunlin", 0, {}),
    ],
)
def test_what_warns_and_what_puts_out_is_named_where_it_hangs(name: str, stage: int, signs: dict[str, str]) -> None:
    sheet = drawn(name, stage)["exits"]
    found = {mark.of: mark for mark in marks(sheet) if isinstance(mark, Leader) and mark.of.startswith("parts[")}
    assert {of.removeprefix("parts[").removesuffix("]"): one.words for of, one in found.items()} == signs
    if name == "dunlin" and signs:  # by hand: 1300 to 1420 mm behind the front, on the right wall
        assert found["parts[co-alarm]"].at == pytest.approx((1.36, 0.65 - 0.0055 - 0.02), abs=0.03)


def test_the_two_tapes_and_the_two_ordinates_of_a_corner_agree() -> None:
    for name, units, width in (("whimbrel", HeaderUnits(length="in"), "80 in"), ("dunlin", HeaderUnits(), "1300 mm")):
        wide = read_exact(width, "length", units)
        rows = grid(drawn(name, 10 if name == "whimbrel" else 5)["tape-things"])
        assert len(rows) >= 20
        for row in rows:
            x, y, a, b = (
                read_exact(row[key], "length", units) for key in ("Rearward", "From the left", "From A", "From B")
            )
            assert hypot(x, y) == pytest.approx(a, abs=2.5e-3)
            assert hypot(x, wide - y) == pytest.approx(b, abs=2.5e-3)


def test_by_hand_the_corners_of_a_written_thing() -> None:
    # galley: x 50, its left edge at the finished left wall, 1/4 in strip and 1/4 in liner inside the studs; 26 x 20
    rows = [row for row in grid(drawn("whimbrel", 10)["tape-things"]) if row["Thing"] == "galley"]
    assert [(row["Corner"], row["Rearward"], row["From the left"]) for row in rows] == [
        ("1", "50 in", "1/2 in"),
        ("2", "76 in", "20 1/2 in"),
    ]
    assert rows[0]["Size"] == "26 in x 20 in"


def test_beside_the_road_the_night_is_laid_out_with_tape_too() -> None:
    """Who lies down on a garage floor wants the bed as it is at night: 76 x 48 in, not the 9 in of it folded up."""
    road, night = (drawn("whimbrel", 10, "tow")[name] for name in ("tape-things", "tape-night"))
    first = [next(row["Size"] for row in grid(one) if row["Thing"] == "bunk") for one in (road, night)]
    assert first == ["76 in x 9 in", "76 in x 48 in"]
    assert "tape-night" in road.notes[-1] and "lie down, sit up" in night.notes[-1]
    assert "tape-night" not in drawn("gannet", 3)  # nobody sleeps in it
    assert "tape-night" not in drawn("whimbrel", 10, "sleep")  # there it is the only one


def test_headroom_shows_who_lies_sits_and_stands_and_over_which_height() -> None:
    sheet = drawn("dunlin", 5)["headroom"]
    along, across = sheet.views
    # the bed's mattress ends 530 mm over the deck, the ceiling is 1644.5 mm over it
    for view in (along, across):
        about_bed = [mark.words for mark in view.marks if isinstance(mark, Dimension) and mark.of == "parts[bench-bed]"]
        assert "over bed 1114 mm" in about_bed
    # the turner is 1780 mm tall, and the table has 1610 mm over the floor where one stands best, under the lights
    assert [row["There is"] for row in grid(sheet) if row["What"] == "stands in the room"] == ["1610 mm"]
    assert any("stoops by 170 mm" in one for one in words(sheet))
    heads = [mark for mark in across.marks if isinstance(mark, Arc) and mark.of == "people[turner]"]
    assert len(heads) == 2
    said = {row["What"]: row["Comes out"] for row in grid(sheet)}
    assert said["stands in the room"] == "short" and said["sits up in bench-bed"] == "enough"
    assert [mark.words for mark in across.marks if isinstance(mark, Dimension)][-1] == "1640 mm"


@pytest.mark.parametrize(
    ("name", "stage", "bed", "wide", "thick", "unit"),
    [("dunlin", 5, "bench-bed", 620.0, 40.0, 1e-3), ("whimbrel", 10, "bunk", 48.0, 4.0, 0.0254)],
)
def test_the_way_of_a_bed_that_comes_down_is_drawn_across(
    name: str, stage: int, bed: str, wide: float, thick: float, unit: float
) -> None:
    """By Pythagoras: its farthest edge is the upper one, as far from the hinge as leaf and thickness together."""
    (view,) = [one for one in drawn(name, stage)["headroom"].views if one.name.startswith("Across")]
    (arc,) = [mark for mark in view.marks if isinstance(mark, Arc) and mark.of == f"parts[{bed}].folds"]
    leaf = next(mark for mark in view.marks if isinstance(mark, Shape) and mark.of == f"parts[{bed}]")
    ys, zs = [y for y, _ in leaf.points], [z for _, z in leaf.points]
    at_left = sum(ys) < 0.0
    assert arc.radius == pytest.approx(hypot(wide, thick) * unit)
    assert arc.centre == pytest.approx((min(ys) if at_left else max(ys), min(zs)))
    ends = [
        (arc.centre[0] + arc.radius * cos(angle), arc.centre[1] + arc.radius * sin(angle))
        for angle in (arc.start, arc.start + arc.sweep)
    ]
    down, up = sorted(ends, key=lambda end: end[1])
    assert down == pytest.approx((max(ys) if at_left else min(ys), min(zs) + thick * unit))
    assert up == pytest.approx((arc.centre[0], min(zs) + arc.radius))
    (folded,) = [mark for mark in view.marks if isinstance(mark, Shape) and mark.of == f"parts[{bed}].folds"]
    assert max(z for _, z in folded.points) == pytest.approx(min(zs) + wide * unit)


def test_somebody_whose_height_nobody_wrote_is_said_to_be_drawn_without_it() -> None:
    text = (ROOT / "rigs" / "dunlin.yaml").read_text(encoding="utf-8").replace("height: 1780, ", "")
    rig = read_rig(text).rig
    slot = slot_of(study(rig, DAY, stage=5), "sleep", "")
    assert slot is not None
    (sheet,) = [one for one in pose_sheets(rig, slot, rig.header.units) if one.name == "headroom"]
    assert sheet.notes[0] == "Not to scale, for nobody wrote how tall: turner."
    rows = [row for row in grid(sheet) if row["Who"] == "turner"]
    by_height = [row for row in rows if not any(cell.startswith("width each in") for cell in row.values())]
    assert {row["Comes out"] for row in by_height} == {"not known"}
    assert len(rows) == len(by_height) + 1, "how wide a bed is wanted is the same whoever lies there"


def reach(figure: list[Mark]) -> tuple[float, float, float, float]:
    """Return the least and greatest places of a figure, across and up."""
    xs, ys = [], []
    for mark in figure:
        if isinstance(mark, Shape):
            xs += [x for x, _ in mark.points]
            ys += [y for _, y in mark.points]
        elif isinstance(mark, Arc):
            xs += [mark.centre[0] - mark.radius, mark.centre[0] + mark.radius]
            ys += [mark.centre[1] - mark.radius, mark.centre[1] + mark.radius]
    return min(xs, default=inf), max(xs, default=inf), min(ys, default=inf), max(ys, default=inf)


@pytest.mark.parametrize("height", [1.5, 2.0])
def test_figures_are_as_tall_as_they_are_written(height: float) -> None:
    for figure in (standing_front((1.0, 0.5), height, "a"), standing_side((1.0, 0.5), height, "a", -1.0)):
        _, _, low, high = reach(figure)
        assert low == pytest.approx(0.5, abs=0.01) and high == pytest.approx(0.5 + height)
    low, high, _, _ = reach(lying_side((1.0, 0.5), height, "a"))
    assert high - low == pytest.approx(height, abs=0.01)
    left, right, low, high = reach(sitting_front((1.0, 0.5), height, "a"))
    assert high - low == pytest.approx(SHARE["sitting"] * height, abs=0.01) and left + right == pytest.approx(2.0)
    _, _, low, _ = reach(lying_end((1.0, 0.5), height, "a"))
    assert low == pytest.approx(0.5, abs=0.01)


def test_a_way_ends_beyond_its_opening() -> None:
    lines = [mark for mark in marks(drawn("whimbrel", 10)["exits"]) if isinstance(mark, Line) and mark.line == "centre"]
    door = [mark for mark in lines if mark.of == "openings[side-door]"]
    assert door[-1].end[1] > 40 * 0.0254 and not re.search("inf|nan", repr(door))


@pytest.mark.parametrize(("name", "stage"), [("whimbrel", 3), ("whimbrel", 10), ("dunlin", 5)])
def test_no_way_goes_on_through_the_number_of_its_way_out(name: str, stage: int) -> None:
    """A number is in a square of 0.22 m; each line of a way is looked at in a hundred places."""
    drawn_marks = marks(drawn(name, stage)["exits"])
    ways = [one for one in drawn_marks if isinstance(one, Line) and one.line in {"centre", "hidden"}]
    squares = [one for one in drawn_marks if isinstance(one, Shape) and one.line == "cut" and len(one.points) == 4]
    squares = [one for one in squares if one.of.startswith("openings[")]
    assert ways and squares
    for way in ways:
        for share in range(101):
            x, y = (a + (b - a) * share / 100.0 for a, b in zip(way.start, way.end, strict=True))
            for square in squares:
                (x0, y0), (x1, y1) = square.points[0], square.points[2]
                assert not (x0 < x < x1 and y0 < y < y1), (way.of, square.of)


def test_a_way_ends_where_the_square_of_its_number_begins() -> None:
    line = ((0.0, 0.0), (1.0, 0.0), (3.0, 0.0))
    assert short_of(line, (2.0, -0.5, 2.5, 0.5)) == ((0.0, 0.0), (1.0, 0.0), (pytest.approx(2.001), 0.0))
    assert short_of(line, (2.0, 0.5, 2.5, 1.0)) == line
    assert short_of(line, None) == line
