"""The sections: deck and layers of the floor, named bays, and the whole trailer cut across with its inside measured."""

from __future__ import annotations

from math import hypot

import pytest

from boxwright.drawing import Sheet, View
from boxwright.drawing.mark import Dimension, Leader, Shape
from tests.book.drawn import DEMOS, demo, drawn, pages
from tests.book.test_end_walls import BODY, LOADS

INCH = 0.0254
BOWS = {
    "flat": "  bows: {every: 500}\n",
    "arched": "  bows: {tube: 25 x 25 x 1.5, every: 500, shape: arched, rise: 80}\n",
    "rounded": "  bows: {tube: 25 x 25 x 1.5, every: 500, shape: rounded, radius: 120}\n",
}
LAYERS = (
    "  floor: {cross_members: 400, depth: 60, deck: ply 15}\n  skin: aluminium 1\n"
    "walls:\n  all:\n    layers:\n      liner: {of: ply, thick: 6}\n"
    "  floor:\n    layers:\n      mat: {of: rubber, thick: 5}\n"
)


def sheet_of(text: str, name: str) -> Sheet:
    return next(one for one in drawn(text)[0] if one.name == name)


def words(view: View, kind: type[Dimension] | type[Leader]) -> list[str]:
    return [mark.words for mark in view.marks if isinstance(mark, kind)]


def heights(view: View, of: str) -> tuple[float, float]:
    """Return the lowest and the highest point of what is drawn of a thing."""
    found = [y for mark in view.marks if isinstance(mark, Shape) and mark.of == of for _, y in mark.points]
    return min(found), max(found)


def test_the_deck_lies_between_the_cross_members_and_the_layers_of_the_floor() -> None:
    view = next(one for one in sheet_of(demo("whimbrel"), "sections").views if one.name == "Floor")
    foot, top = heights(view, "frame.floor.deck")
    # By hand: 3/4 in of deck on members 3 in deep; 1 in of foam on it, then 1/2 in of ply.
    assert (foot / INCH, (top - foot) / INCH) == pytest.approx((3.0, 0.75))
    assert heights(view, "walls[floor].layers[foam]") == pytest.approx((top, top + INCH))
    assert heights(view, "walls[floor].layers[deck]") == pytest.approx((top + INCH, top + 1.5 * INCH))
    assert "deck ply 3/4 in" in words(view, Leader)


def test_a_bay_that_is_built_otherwise_has_a_section_of_its_own_in_the_order_from_the_skin() -> None:
    views = {one.name: one for one in sheet_of(demo("whimbrel"), "sections").views}
    assert "foam XPS 1 in" in words(views["Left wall, bay 4-5"], Leader)
    assert "foam XPS 1 1/2 in" in words(views["Left wall"], Leader)
    frame = drawn(demo("whimbrel"))[2]
    assert frame is not None
    bay = next(one for one in frame.buildups if one.bay)
    assert [one.name for one in bay.layers] == ["foam", "strip", "liner"]
    page = sheet_of(demo("whimbrel"), "left-inside")
    assert [row[0] for row in next(one for one in page.grids if one.title == "Bay left 4-5").rows] == [
        "skin", "foam", "strip", "liner", "all",
    ]  # fmt: skip


@pytest.mark.parametrize("name", DEMOS)
def test_walls_that_are_built_alike_share_a_section_and_none_is_missing(name: str) -> None:
    frame, sheet = drawn(demo(name))[2], sheet_of(demo(name), "sections")
    assert frame is not None
    named = " ".join(view.name.lower() for view in sheet.views)
    assert [one.name for one in frame.walls if one.name not in named] == []
    assert len({view.marks for view in sheet.views}) == len(sheet.views)


@pytest.mark.parametrize("shape", sorted(BOWS))
def test_the_trailer_is_cut_across_with_its_inside_bare_and_finished(shape: str) -> None:
    text = BODY + BOWS[shape] + LAYERS + LOADS
    view = sheet_of(text, "cross-section").views[0]
    said = words(view, Dimension)
    # By hand: 1300 less twice 6; 1650 less 6 above and 5 below.
    assert {"1288 mm finished", "1300 mm stud to stud", "1639 mm finished", "1650 mm deck to bows"} <= set(said)
    eaves = [one for one in said if one.endswith("at the eaves")]
    assert eaves == {"flat": [], "arched": ["1570 mm at the eaves"], "rounded": ["1530 mm at the eaves"]}[shape]
    assert "deck ply 15 mm" in words(view, Leader)
    foot, top = heights(view, "frame.floor.deck")
    assert (foot, top) == pytest.approx((-0.015, 0.0))
    assert heights(view, "walls[floor].layers[mat]") == pytest.approx((0.0, 0.005))
    assert heights(view, "frame.bows")[1] == pytest.approx(1.675)


def test_the_skin_keeps_its_distance_from_a_rounded_eave() -> None:
    view = sheet_of(BODY + BOWS["rounded"] + LAYERS + LOADS, "cross-section").views[0]
    bow = next(mark for mark in view.marks if isinstance(mark, Shape) and mark.of == "frame.bows")
    inner, outer = bow.points[: len(bow.points) // 2], bow.points[len(bow.points) // 2 :][::-1]
    apart = [hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in zip(inner, outer, strict=True)]
    assert apart == pytest.approx([0.025] * len(apart))


@pytest.mark.parametrize("name", DEMOS)
def test_the_cross_section_takes_one_page_without_a_key(name: str) -> None:
    printed = next(found for sheet, found in pages(demo(name), "letter") if sheet.name == "cross-section")
    assert len(printed) == 1
    assert not any(one.text.startswith("Key to") for one in printed[0].words)
