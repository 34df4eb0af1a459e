"""The walk round as a sheet: one page on both papers, a box before every line, however much is against it."""

from __future__ import annotations

import pytest

from boxwright.disciplines.towing.findings.walk_round import WalkLine
from boxwright.disciplines.towing.sheets import walk_sheet
from boxwright.disciplines.towing.sourced import WALK
from boxwright.drawing import TO_TICK
from boxwright.drawing.layout import laid_out
from boxwright.drawing.paper import PAPERS, PaperName, TitleBlock

CAUTION = (
    "Computed from what was typed. Check every measure on the trailer before you cut. Local law, the plate and a scale "
    "come first."
)
UNITS = "inches, to a sixteenth"
TITLE = TitleBlock("Whimbrel", "as planned, stage liners", "C", "2026-05-02", UNITS, (CAUTION,), True)
LONG = "the load on the left tyre of the second axle is at least 1,663 lb and its rating 1,820 lb; nobody can say " * 3


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_walk_is_one_page_even_where_everything_is_against_it(paper: PaperName) -> None:
    lines = tuple(WalkLine(name, says, "open", (LONG,) * 12) for name, says, _ in WALK)
    pages = laid_out(walk_sheet(lines, TITLE.subject), PAPERS[paper], TITLE)
    assert len(pages) == 1
    printed = " ".join(one.text for one in pages[0].words)
    assert "Nobody rides in the trailer" in printed
    assert printed.count("Not known: the load") == len(WALK)


def test_every_line_has_a_box_to_tick_and_what_crosses_it_is_a_no() -> None:
    crossed = tuple(WalkLine(name, says, "crossed", ("the plate says 750 kg",)) for name, says, _ in WALK)
    rows = walk_sheet(crossed, "").grids[0].rows
    assert [row[0].startswith(f"{TO_TICK} {name}: ") for row, (name, _, _) in zip(rows, WALK, strict=False)] == [
        True
    ] * len(WALK)
    assert {row[1] for row in rows[: len(WALK)]} == {"NO: the plate says 750 kg"}
