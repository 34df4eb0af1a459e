"""The walk round before the road, on one page: each line to be ticked by hand, with what the rules say against it."""

from __future__ import annotations

from boxwright.cli.check import CLOSING, page_title
from boxwright.cli.screen import Line, Span, Style, hanging, plain, wrapped
from boxwright.cli.shown import Checked
from boxwright.disciplines.towing.findings import WalkLine, walk_round

WORDS = {"ticked": "", "by hand": "", "crossed": "NO: ", "open": "not known: "}
LONGEST = 150
"""Characters of a sentence on the walk; ``check`` has it whole. Fifteen lines must stay on one sheet."""


def walk_page(checked: Checked, columns: int) -> list[Line]:
    """Return the lines of the walk in walking order; what no rule crosses has an empty box all the same."""
    lines = [plain("WALK ROUND BEFORE THE ROAD", "head"), *page_title(checked, columns)]
    for number, line in enumerate(walk_round(checked.findings), start=1):
        lead = (Span(f"{number:>2} [ ] "), Span(line.name.ljust(10), "head"))
        lines += hanging(lead, line.says, columns)
        lines += _against(line, columns)
    lines += [(), plain("Walked by ____________________   date __________   odometer __________")]
    return [*lines, (), *(plain(piece, "dim") for piece in wrapped(CLOSING, columns))]


def _against(line: WalkLine, columns: int) -> list[Line]:
    """Return what the rules say against a line: the first sentence, and how many more there are."""
    if not line.because:
        return []
    more = f" (and {len(line.because) - 1} more)" if len(line.because) > 1 else ""
    first = line.because[0]
    short = first if len(first) <= LONGEST else first[: LONGEST - 3].rstrip() + "..."
    style: Style = "stop" if line.mark == "crossed" else "unknown"
    return hanging((Span(" " * 17), Span(WORDS[line.mark], style)), short + more, columns)
