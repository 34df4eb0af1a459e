"""The sheet of towing: the walk round before the road, to be printed and ticked by hand."""

from __future__ import annotations

import re
from math import ceil
from typing import TYPE_CHECKING

from boxwright.disciplines.towing.findings.walk_round import WalkLine, walk_round
from boxwright.finding import Finding

if TYPE_CHECKING:
    from boxwright.drawing import Sheet

MOST_LINES = 43
"""Printed lines of all fifteen rows together that are sure to stay on one page of either paper."""

A_LINE = 42
"""Letters that are sure to stand on one printed line of either column."""

ELSEWHERE = "read it first: boxwright towing"
"""Stands for a statement where all of them together would not stay on one page: none is ever cut in two."""

_ASIDE = re.compile(r"\s*\([^()]*\)")

LEADS = {"ticked": "", "by hand": "", "crossed": "NO: ", "open": "Not known: "}

SAFETY = (
    "Look at; tick what you saw or heard yourself. Nobody rides in the trailer.",
    "Against it, in short. NO: do not drive away. Not known: find out first.",
)
"""Heads of the two columns: the words that must be read stand where the hand is."""


def sheets(findings: tuple[Finding, ...], slot: str) -> tuple[Sheet, ...]:
    """Return the sheets of towing; ``findings`` are those of every discipline in one slot, ``slot`` says which."""
    return (walk_sheet(walk_round(findings), slot),)


def walk_sheet(lines: tuple[WalkLine, ...], slot: str) -> Sheet:
    """Return the walk round in walking order, a box to tick before each line, what the rules have against it behind."""
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.drawing import TO_TICK, Grid, Sheet

    rows = [(f"{TO_TICK} {line.says}", says) for line, says in zip(lines, all_against(lines), strict=True)]
    rows.append(("Walked by ______________  date __________", "Odometer __________"))
    walk = Grid(slot, SAFETY, tuple(rows), ("",) * len(rows))
    return Sheet("walk-round", "Walk round before the road", grids=(walk,), stands_up=True)


def all_against(lines: tuple[WalkLine, ...]) -> list[str]:
    """Return what stands against each line; the longest are left to the command line until the page holds the rest."""
    in_full = [against(line) for line in lines]
    said = list(in_full)
    for longest in sorted(range(len(lines)), key=lambda number: -len(in_full[number])):
        rows = zip(lines, said, strict=True)
        if sum(max(_printed(line.says), _printed(words)) for line, words in rows) <= MOST_LINES:
            break
        if lines[longest].because:
            said[longest] = _with_lead(lines[longest], ELSEWHERE)
    return said


def against(line: WalkLine) -> str:
    """Return what the rules say against a line: the first statement, and how many more there are."""
    return _with_lead(line, in_short(line.because[0])) if line.because else ""


def in_short(says: str) -> str:
    """Return what a sentence states, whole, without its source and what to do: ``check`` has those."""
    return _ASIDE.sub("", says).split("; ")[0]


def _with_lead(line: WalkLine, says: str) -> str:
    more = f" (and {len(line.because) - 1} more)" if len(line.because) > 1 else ""
    return f"{LEADS[line.mark]}{says}{more}"


def _printed(text: str) -> int:
    """Return the lines a text takes in its column, as far as its letters tell."""
    return ceil(len(text) / A_LINE)
