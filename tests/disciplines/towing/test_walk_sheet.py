"""The walk round as a sheet: one page on both papers, a box before every line, however much is against it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.disciplines.towing.findings.walk_round import WalkLine, walk_round
from boxwright.disciplines.towing.sheets import ELSEWHERE, all_against, in_short, walk_sheet
from boxwright.disciplines.towing.sourced import WALK
from boxwright.drawing import TO_TICK
from boxwright.drawing.layout import laid_out
from boxwright.drawing.paper import PAPERS, PaperName, TitleBlock
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

RIGS = sorted((Path(__file__).resolve().parents[3] / "rigs").glob("*.yaml"))
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
    assert printed.count("Not known: ") == len(WALK) + 1, "each line, and the head of the column"
    assert "..." not in printed and ELSEWHERE in printed


def test_a_statement_stands_whole_and_only_the_longest_give_way() -> None:
    statement = "without brakes EU-FR allows a cargo trailer with 0.50 of the tow vehicle's own weight"
    says = f"{statement} (a source; seen); read the rule before you rely on it"
    assert in_short(says) == statement
    lines = tuple(WalkLine(name, words, "open", ("short",)) for name, words, _ in WALK)
    one_long = (*lines[:3], WalkLine("x", lines[3].says, "open", (statement * 20,)), *lines[4:])
    said = all_against(one_long)
    assert [number for number, words in enumerate(said) if ELSEWHERE in words] == [3]
    assert all_against(lines) == ["Not known: short"] * len(WALK)


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
def test_no_demo_rig_has_a_statement_cut_or_a_second_page(path: Path) -> None:
    reading = read_rig(path.read_bytes())
    for stage in (None, len(reading.rig.stages_in_order) - 1):
        result = study(reading.rig, date(2026, 11, 28), stage=stage)
        for slot in result.slots:
            walk = walk_round(slot.findings)
            for paper in PAPERS.values():
                pages = laid_out(walk_sheet(walk, slot.load), paper, TITLE)
                assert len(pages) == 1
                printed = " ".join(one.text for one in pages[0].words)
                assert "..." not in printed and "\u2026" not in printed and ELSEWHERE not in printed


def test_every_line_has_a_box_to_tick_and_what_crosses_it_is_a_no() -> None:
    crossed = tuple(WalkLine(name, says, "crossed", ("the plate says 750 kg",)) for name, says, _ in WALK)
    rows = walk_sheet(crossed, "").grids[0].rows
    assert [row[0] == f"{TO_TICK} {says}" for row, (_, says, _) in zip(rows, WALK, strict=False)] == [True] * len(WALK)
    assert {row[1] for row in rows[: len(WALK)]} == {"NO: the plate says 750 kg"}
