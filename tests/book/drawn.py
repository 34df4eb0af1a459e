"""Sheets of a rig as the command line draws them, for tests."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

from boxwright.book.sheets import sheets_of, title_of
from boxwright.disciplines.frame.result import Result
from boxwright.drawing import Sheet
from boxwright.drawing.layout import laid_out
from boxwright.drawing.page import Page
from boxwright.drawing.paper import PAPERS, PaperName, TitleBlock
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

DAY = date(2026, 6, 7)
DEMOS = ("whimbrel", "dunlin")


@cache
def drawn(text: str) -> tuple[tuple[Sheet, ...], TitleBlock, Result | None, tuple[Finding, ...]]:
    """Return the sheets of a rig file's text, the foot of their pages, the frame behind them and all findings."""
    rig = read_rig(text.encode("utf-8")).rig
    found = study(rig, DAY)
    slots = found.asked_slots()
    slot = slots[0] if slots else None
    findings, units = found.findings(), rig.header.units
    sheets = sheets_of(rig, slot, findings, (), "today as ticked", units)
    return sheets, title_of(rig, "today as ticked", "2026-06-07", units), slot.frame if slot else None, findings


def demo(name: str) -> str:
    """Return the text of a demo rig."""
    return Path("rigs", f"{name}.yaml").read_text(encoding="utf-8")


@cache
def pages(text: str, paper: PaperName) -> tuple[tuple[Sheet, tuple[Page, ...]], ...]:
    """Return every sheet with its pages."""
    sheets, title, *_ = drawn(text)
    return tuple((sheet, laid_out(sheet, PAPERS[paper], title)) for sheet in sheets)
