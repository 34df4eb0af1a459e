"""The sheet of towing: the walk round before the road, to be printed and ticked by hand."""

from __future__ import annotations

from boxwright.disciplines.towing.findings.walk_round import WalkLine, walk_round
from boxwright.drawing import TO_TICK, Grid, Sheet
from boxwright.finding import Finding

LONGEST = 66
"""Characters of a sentence on the walk; ``check`` has it whole. Fifteen lines must stay on one page."""

LEADS = {"ticked": "", "by hand": "", "crossed": "NO: ", "open": "Not known: "}

SAFETY = (
    "Look at; tick what you saw or heard yourself. Nobody rides in the trailer.",
    "Against it. NO: do not drive away. Not known: find out first.",
)
"""Heads of the two columns: the words that must be read stand where the hand is."""


def sheets(findings: tuple[Finding, ...], slot: str) -> tuple[Sheet, ...]:
    """Return the sheets of towing; ``findings`` are those of every discipline in one slot, ``slot`` says which."""
    return (walk_sheet(walk_round(findings), slot),)


def walk_sheet(lines: tuple[WalkLine, ...], slot: str) -> Sheet:
    """Return the walk round in walking order, a box to tick before each line, what the rules have against it behind."""
    rows = [(f"{TO_TICK} {line.name}: {line.says}", against(line)) for line in lines]
    rows.append(("Walked by ______________  date __________", "Odometer __________"))
    walk = Grid(slot, SAFETY, tuple(rows), ("",) * len(rows))
    return Sheet("walk-round", "Walk round before the road", grids=(walk,), stands_up=True)


def against(line: WalkLine) -> str:
    """Return what the rules say against a line: the first sentence, and how many more there are."""
    if not line.because:
        return ""
    more = f" (and {len(line.because) - 1} more)" if len(line.because) > 1 else ""
    first = line.because[0]
    short = first if len(first) <= LONGEST else first[: LONGEST - 3].rstrip() + "..."
    return f"{LEADS[line.mark]}{short}{more}"
