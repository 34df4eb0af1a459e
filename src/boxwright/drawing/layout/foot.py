"""The rim of a page: its frame, the title block at the foot, the bars that prove the printing is at 100 %."""

from __future__ import annotations

from dataclasses import dataclass

from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.wrap import Block, block, cleaned, set_in, words_at
from boxwright.drawing.page import Box
from boxwright.drawing.paper import BINDING_EDGE, EDGE, NORMAL, SMALL, SMALLEST, Paper, TitleBlock, scale_words

PAD = 1.8
INSIDE = 4.0
"""White between the frame and what is drawn in it."""
CHECK = 100.0
INCH = 25.4
FEET = 304.8
BAR_ROW = 11.0
MOST_LINES = 3
"""A title with more lines than this is printed in full among the notes."""

COLUMNS = (("rig", 0.29), ("sheet", 0.33), ("scale", 0.145), ("revision", 0.075), ("date", 0.095), ("page", 0.065))


@dataclass(frozen=True, slots=True)
class Foot:
    """The title block of one sheet, before scale and page number are known."""

    wide: float
    high: float
    first_row: float
    cautions: Block
    title: TitleBlock
    name: str
    is_cut: bool


def frame_of(paper: Paper, stands_up: bool) -> tuple[float, float, Box]:
    """Return the width and height of a page, and its frame."""
    wide, high = (paper.height, paper.width) if stands_up else (paper.width, paper.height)
    return wide, high, Box(BINDING_EDGE, EDGE, wide - EDGE, high - EDGE)


def foot_of(frame: Box, title: TitleBlock, name: str) -> Foot:
    """Return the title block of a sheet: as high as its words need."""
    wide = frame.right - frame.left
    cautions = block(" ".join(title.cautions), SMALLEST, False, wide - 2 * PAD)
    cells = _cells(title, name, "1:0", "000 of 000", wide)
    first_row = max(_high(cell) for cell in cells)
    caution_row = cautions.high + 2 * 1.2 if any(cautions.lines) else 0.0
    is_cut = any(line.endswith(CUT) for cell in cells for line in cell[-1].lines)
    return Foot(wide, first_row + BAR_ROW + caution_row, first_row, cautions, title, name, is_cut)


CUT = "…"


def _cells(title: TitleBlock, name: str, scale: str, page: str, wide: float) -> list[list[Block]]:
    """Return the words of each cell of the title block, its label first."""
    values: dict[str, list[tuple[str, tuple[float, ...], bool]]] = {
        "rig": [(title.rig, (NORMAL, SMALL), True), (title.subject, (SMALL,), False)],
        "sheet": [(name, (NORMAL, SMALL), True)],
        "scale": [(scale, (SMALL,), False), (title.units, (SMALL, SMALLEST), False)],
        "revision": [(title.revision, (NORMAL, SMALL), True)],
        "date": [(title.on, (SMALL, SMALLEST), False)],
        "page": [(page, (SMALL, SMALLEST), False)],
    }
    cells = []
    for label, share in COLUMNS:
        limit = wide * share - 2 * PAD
        shown = [_shrunk(*value, limit) for value in values[label] if cleaned(value[0])]
        cells.append([block(label, SMALLEST), *shown])
    return cells


def _shrunk(words: str, heights: tuple[float, ...], is_bold: bool, limit: float) -> Block:
    """Return words in the largest letters that need one line, else two or three; past that they are cut."""
    for lines in range(1, MOST_LINES + 1):
        for height in heights:
            tried = block(words, height, is_bold, limit)
            is_broken = sum(len(line.split()) for line in tried.lines) > len(words.split())
            if len(tried.lines) <= lines and not (is_broken and lines < MOST_LINES):
                return tried
    tried = block(words, heights[-1], is_bold, limit)
    last = tried.lines[MOST_LINES - 1]
    while last and block(last + CUT, heights[-1], is_bold).wide > limit:
        last = last[:-1]
    return set_in((*tried.lines[: MOST_LINES - 1], last + CUT), heights[-1], is_bold)


def _high(cell: list[Block]) -> float:
    return 1.0 + sum(one.high + 0.8 for one in cell) + 0.4


def draw_foot(foot: Foot, frame: Box, scale: float, number: int, count: int, ink: Ink) -> None:
    """Draw the frame and the title block of one page."""
    ink.rectangle(frame, "cut", "", "border")
    top = frame.bottom - foot.high
    ink.line((frame.left, top), (frame.right, top), "visible", "", "border")
    words = scale_words(scale) if scale else "none"
    left = frame.left
    cells = _cells(foot.title, foot.name, words, f"{number} of {count}", foot.wide)
    for cell, (_, share) in zip(cells, COLUMNS, strict=True):
        if left > frame.left:
            ink.line((left, top), (left, top + foot.first_row), "dimension", "", "border")
        here = top + 1.0
        for one in cell:
            ink.words += words_at(one, left + PAD, here, "", "border")
            here += one.high + 0.8
        left += foot.wide * share
    bars = top + foot.first_row
    ink.line((frame.left, bars), (frame.right, bars), "dimension", "", "border")
    _check_bars(frame.left + PAD, bars + 3.4, ink)
    if scale:
        _scale_bar(frame.right - PAD, bars + 3.4, scale, foot.title.is_imperial, ink)
    if any(foot.cautions.lines):
        below = bars + BAR_ROW
        ink.line((frame.left, below), (frame.right, below), "dimension", "", "border")
        ink.words += words_at(foot.cautions, frame.left + PAD, below + 1.2, "", "border")


def _check_bars(left: float, line: float, ink: Ink) -> None:
    """Draw the bars of 100 mm and 4 in: whoever prints can lay a rule on them."""
    for step, count, at, words in ((10.0, 10, line, "100 mm"), (INCH, 4, line + 5.2, "4 in")):
        ink.line((left, at), (left + step * count, at), "visible", "", "border")
        for one in range(count + 1):
            high = 1.6 if one % 5 == 0 or step > 10.0 else 1.0
            ink.line((left + one * step, at - high), (left + one * step, at), "visible", "", "border")
        ink.words += words_at(block(words, SMALLEST), left + 104.0, at - 2.1, "", "border")
    note = block("lay a rule on the bars: if they are off, print again at 100 %", SMALLEST, False, 42.0)
    ink.words += words_at(note, left + 117.0, line - 2.1, "", "border")


def _scale_bar(right: float, line: float, scale: float, is_imperial: bool, ink: Ink) -> None:
    """Draw a bar of real length at the scale of the page: black and white pieces, its length written at both ends."""
    unit, name = (FEET, "ft") if is_imperial else (1000.0, "m")
    if is_imperial and 12.0 * scale * INCH > 40.0:
        unit, name = INCH, "in"
    elif not is_imperial and scale * 1000.0 > 60.0:
        unit, name = 1.0, "mm"
    length = _round_length(34.0 / (scale * unit))
    wide = length * unit * scale
    text = block(f"{length:g} {name}", SMALLEST)
    start = right - wide - text.wide - 1.5
    for piece in range(4):
        box = Box(start + piece * wide / 4, line + 1.0, start + (piece + 1) * wide / 4, line + 2.8)
        ink.rectangle(box, "dimension", "", "border", "none" if piece % 2 else "ink")
    ink.words += words_at(text, start + wide + 1.5, line + 0.7, "", "border")
    zero = block("0", SMALLEST)
    ink.words += words_at(zero, start - zero.wide - 1.2, line + 0.7, "", "border")


def _round_length(most: float) -> float:
    """Return the largest of 1, 2, 5 times a power of ten that is not above a length."""
    power = 10.0 ** len(str(int(most))) / 10.0 if most >= 1.0 else 1.0
    while power > most:
        power /= 10.0
    return max(step * power for step in (1.0, 2.0, 5.0) if step * power <= most * (1.0 + 1e-9))


def body_of(frame: Box, foot: Foot) -> Box:
    """Return the part of a page that views and tables may use."""
    return Box(frame.left + INSIDE, frame.top + INSIDE, frame.right - INSIDE, frame.bottom - foot.high - INSIDE)
