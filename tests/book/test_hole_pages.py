"""What stands on the page of a hole: header, layers of its bay, wires and pipes; and how many pages it takes."""

from __future__ import annotations

import re

import pytest

from boxwright.drawing import Dimension, Sheet
from boxwright.drawing.paper import PAPERS, PaperName
from tests.book.drawn import DEMOS, demo, drawn, pages
from tests.book.test_end_walls import BODY, LOADS

BOTH = pytest.mark.parametrize("paper", sorted(PAPERS))
MORE = {"hole-inlet-16A"}
"""Its template, 110 mm full size, takes a page of its own, and says so."""


def facts(text: str, hole: str) -> dict[str, str]:
    """Return the lines of the table of a hole's page."""
    sheet = next(one for one in drawn(text)[0] if one.name == f"hole-{hole}")
    return {row[0]: row[1] for row in sheet.grids[0].rows}


def sheet_of(text: str, name: str) -> Sheet:
    return next(one for one in drawn(text)[0] if one.name == name)


@pytest.mark.parametrize("name", DEMOS)
@BOTH
def test_a_hole_takes_one_page_or_says_why_not(name: str, paper: PaperName) -> None:
    many = {sheet.name for sheet, printed in pages(demo(name), paper)
            if sheet.name.startswith("hole-") and len(printed) > 1}  # fmt: skip
    assert many <= MORE
    for one in many:
        assert any("a page of its own" in note for note in sheet_of(demo(name), one).notes)


def test_the_header_stands_with_its_span_and_its_shares() -> None:
    said = facts(demo("whimbrel"), "window-right")["Cuts; header"]
    # By hand: R6 at 96, R7 at 112, R8 at 128: 32 between, half to each.
    assert said.startswith("R7; header needed from R6 to R8, 32 in between their middles")
    assert "bears 1 stud: the load of 0.5 on R6, of 0.5 on R8" in said
    # By hand: 1200 from L1 at 400 to L4 at 1600, L2 and L3 a third and two thirds along.
    said = facts(demo("dunlin"), "side-hatch")["Cuts; header"]
    assert "1200 mm between" in said and "bears 2 studs: the load of 1.0 on L1, of 1.0 on L4" in said
    assert facts(demo("whimbrel"), "vent-low")["Cuts; header"] == "none; no header is needed"


def test_what_runs_behind_a_hole_by_its_route_stands_on_its_page() -> None:
    text = demo("whimbrel")
    # later-rear runs along the left wall to x150 at z 50: behind window-left, 97 to 111 along and 36 to 60 up.
    assert facts(text, "window-left")["Wires, pipes"].startswith("wire later-rear at 50 in")
    # shore runs at z 22, to x150, where the inlet of 150 to 153 and 20 to 23 begins; usb at 20 ends at 140.
    near = facts(text, "inlet-30A")["Wires, pipes"]
    assert near.startswith("perhaps ") and "wire shore at 22 in" in near and "usb" not in near
    assert facts(text, "vent-low")["Wires, pipes"].startswith("none by the written routes")
    assert "no route of" in facts(text, "vent-low")["Wires, pipes"]


def test_a_card_of_a_bay_says_where_not_to_screw() -> None:
    grids = {grid.title.partition(":")[0]: grid for grid in sheet_of(demo("whimbrel"), "bay-cards").grids}
    out = {name: ", ".join(row[2] for row in grid.rows if row[1] == "Keep out") for name, grid in grids.items()}
    assert "z 30 pump," in out["Bay left 1-2"] and "z 8 heater," in out["Bay left 1-2"]
    assert "heater" not in out["Bay left 8-9"] and "z 20 usb," in out["Bay left 7-8"]
    # Three wires run up the left wall at 74 by routes that do not say how far.
    assert re.search(r"z 74 fan\?, lights\?, camera\?", out["Bay left 8-9"])
    assert all(one.endswith("found z ______") for one in out.values())
    # No line of a card begins with a name whose height stands on the line before.
    begun = [row[2] for grid in grids.values() for row in grid.rows if row[1] == "Keep out"]
    assert all(one.startswith(("z ", "found z ")) for one in begun)
    assert max(len(pages(demo("whimbrel"), paper)[-2][1]) for paper in PAPERS) <= 9


def test_a_hole_that_cannot_be_placed_tells_its_faults_all_the_same() -> None:
    text = BODY + "openings:\n  slit: {wall: left, x: 500, z: 100}\n" + LOADS
    sheet = sheet_of(text, "hole-slit")
    assert sheet.views == () and any(note.startswith("Fault ") and "slit" in note for note in sheet.notes)


def test_an_opening_its_builder_frames_stands_between_its_jambs_and_cuts_nothing_beyond_them() -> None:
    ramp = facts(demo("whimbrel"), "ramp")
    # By hand: 3 to 77, jambs of 1 in outside of it.
    assert ramp["Members beside"] == "left jamb, middle 2 1/2; right jamb, middle 77 1/2"
    assert ramp["Cuts; header"].startswith("B1, B2, B3, B4; header")
    door = facts(demo("whimbrel"), "side-door")
    assert door["Members beside"] == "R1 as jamb, middle 16; R3 as jamb, middle 48"
    assert door["Cuts; header"].startswith("none; header from R1 to R3, 32 in between")
    for name in DEMOS:
        for wall in ("rear-outside", "right-outside"):
            for grid in sheet_of(demo(name), wall).grids:
                assert not any("perhaps B0" in cell or cell.startswith("B0 -") for row in grid.rows for cell in row)


def test_what_is_clear_beside_a_hole_is_told_as_a_tape_reads_it() -> None:
    for name in DEMOS:
        for sheet in drawn(demo(name))[0]:
            for grid in sheet.grids:
                for row in grid.rows:
                    for cell in row:
                        assert not re.search(r"(bow|member|[LRFB]\d+) \S* ?-?0\.\d", cell), (sheet.name, cell)
    assert "bow 5 0 in to 1/2 in" in facts(demo("whimbrel"), "gland")["Members beside"]


def test_what_is_clear_runs_to_a_member_that_is_drawn_even_at_the_end_of_the_wall() -> None:
    view = sheet_of(demo("dunlin"), "hole-vents").views[0]
    words = [mark.words for mark in view.marks if isinstance(mark, Dimension)]
    assert "L0 = 0" in words and "L1 = 400" in words


@pytest.mark.parametrize("name", DEMOS)
@BOTH
def test_the_word_front_stands_clear_of_the_opening(name: str, paper: PaperName) -> None:
    seen = 0
    for sheet, printed in pages(demo(name), paper):
        if not sheet.name.startswith("hole-"):
            continue
        page = printed[0]
        words = [one.box for one in page.words if one.text == "FRONT"]
        holes = [one.points for one in page.strokes if one.belongs == "view" and one.of.startswith("openings[")
                 and len(one.points) == 4]  # fmt: skip
        seen += len(holes)
        for word in words:
            for points in holes:
                xs, ys = [x for x, _ in points], [y for _, y in points]
                is_apart = word.right < min(xs) or word.left > max(xs) or word.bottom < min(ys) or word.top > max(ys)
                assert is_apart, (sheet.name, word)
    assert seen > 3
