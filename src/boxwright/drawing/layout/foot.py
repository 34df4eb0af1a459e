"""The rim of a page: its frame, the title block at the foot, the bars that prove the printing is at 100 %."""

from __future__ import annotations

from functools import lru_cache

from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.wrap import Block, block, cleaned, set_in, words_at
from boxwright.drawing.page import Box
from boxwright.drawing.paper import BINDING_EDGE, EDGE, NORMAL, SMALL, SMALLEST, Paper, TitleBlock, scale_words
from boxwright.records import dataclass

PAD = 1.8
INSIDE = 4.0
"""White between the frame and what is drawn in it."""
INCH = 25.4
FEET = 304.8
BARS = (("100 mm", 10.0, 10), ("4 in", INCH, 4))
"""The bars that prove the printing: what is written at each, its step (mm), its count of steps."""
BARS_WIDE, BARS_HIGH = 119.0, 10.2
"""Room for the bars of 100 mm and 4 in with their words."""
SCALE_BAR = 26.0
BAR_WORDS = 16.0
"""What the words at both ends of the scale bar take, and the white around them."""
MOST_LINES = 3
"""A title with more lines than this is printed in full among the notes."""
MOST_CAUTIONS = 12
"""Cautions of more lines than this are printed among the notes."""

CELLS = ("rig", "sheet", "scale", "revision", "date", "page")
FIXED = {"scale": 50.0, "revision": 14.5, "date": 24.5, "page": 20.5}
"""Widths of the cells whose words are known beforehand: mm. The rig takes 45 parts of what is left, the sheet 55."""
RIG_SHARE = 0.45
CUT = "…"
PROOF = "Lay a rule on the bars: if they are off, print again at 100 %."
ELSEWHERE = "The cautions stand in the notes."


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
    limit = wide - BARS_WIDE - 2 * PAD
    cautions = block(" ".join((PROOF, *title.cautions)), SMALLEST, False, limit)
    is_cut = len(cautions.lines) > MOST_CAUTIONS
    if is_cut:
        cautions = block(f"{PROOF} {ELSEWHERE}", SMALLEST, False, limit)
    cells = _cells(title, name, "1:100", "00 of 00", wide)
    first_row = max(_high(cell) for cell in cells)
    is_cut = is_cut or any(line.endswith(CUT) for cell in cells for one in cell for line in one.lines)
    high = first_row + max(BARS_HIGH, cautions.high + 2.0)
    return Foot(wide, high, first_row, cautions, title, name, is_cut)


def _widths(wide: float) -> tuple[float, ...]:
    """Return the widths of the cells of the title block."""
    left = wide - sum(FIXED.values())
    shares = {"rig": left * RIG_SHARE, "sheet": left * (1.0 - RIG_SHARE), **FIXED}
    return tuple(shares[one] for one in CELLS)


def _cells(title: TitleBlock, name: str, scale: str, page: str, wide: float) -> list[list[Block]]:
    """Return the words of each cell of the title block, its label first; rig and sheet need none."""
    values: dict[str, list[tuple[str, tuple[float, ...], bool]]] = {
        "rig": [(title.rig, (NORMAL, SMALL), True), (title.subject, (SMALL,), False)],
        "sheet": [(name, (NORMAL, SMALL), True)],
        "scale": [(scale, (SMALL,), False), (title.units, (SMALL, SMALLEST), False)],
        "revision": [(title.revision, (NORMAL, SMALL), True)],
        "date": [(title.on, (SMALL, SMALLEST), False)],
        "page": [(page, (SMALL, SMALLEST), False)],
    }
    cells = []
    for label, width in zip(CELLS, _widths(wide), strict=True):
        shown = [_shrunk(*value, width - 2 * PAD) for value in values[label] if cleaned(value[0])]
        cells.append(([block(label, SMALLEST)] if label in FIXED else []) + shown)
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
    return 1.0 + sum(one.high + 0.6 for one in cell) + 0.6


def draw_foot(foot: Foot, frame: Box, scale: float, number: int, count: int, ink: Ink) -> None:
    """Draw the frame and the title block of one page."""
    ink.rectangle(frame, "cut", "", "border")
    top = frame.bottom - foot.high
    ink.line((frame.left, top), (frame.right, top), "visible", "", "border")
    words = scale_words(scale) if scale else ""
    left = frame.left
    cells = _cells(foot.title, foot.name, words, f"{number} of {count}", foot.wide)
    for label, cell, width in zip(CELLS, cells, _widths(foot.wide), strict=True):
        if left > frame.left:
            ink.line((left, top), (left, top + foot.first_row), "dimension", "", "border")
        here = top + 1.0
        for one in cell:
            ink.words += words_at(one, left + PAD, here, "", "border")
            here += one.high + 0.6
        left += width
        if label == "scale" and scale:
            # The bar stands behind the scale itself, with its length at both ends.
            longest = min(SCALE_BAR, width - 2 * PAD - cell[1].wide - BAR_WORDS)
            _scale_bar(left - PAD, top + 4.6, scale, foot.title.is_imperial, longest, ink)
    bars = top + foot.first_row
    ink.line((frame.left, bars), (frame.right, bars), "dimension", "", "border")
    ink.add(_check_bars(frame.left + PAD, bars + 3.2))
    ink.words += words_at(foot.cautions, frame.left + BARS_WIDE, bars + 1.0, "", "border")


@lru_cache(maxsize=16)
def _check_bars(left: float, line: float) -> Ink:
    """Return the bars of 100 mm and 4 in, the same on every page: whoever prints can lay a rule on them."""
    ink = Ink()
    for place, (words, step, count) in enumerate(BARS):
        at = line + 4.9 * place
        ink.line((left, at), (left + step * count, at), "visible", "", "border")
        for one in range(count + 1):
            high = 1.6 if one in (0, count) or 2 * one == count else 1.0
            ink.line((left + one * step, at - high), (left + one * step, at), "visible", "", "border")
        ink.words += words_at(block(words, SMALLEST), left + 104.0, at - 2.1, "", "border")
    return ink


def _scale_bar(right: float, top: float, scale: float, is_imperial: bool, longest: float, ink: Ink) -> None:
    """Draw a bar of real length at the scale of the page: black and white pieces, its length written at both ends."""
    unit, name = (FEET, "ft") if is_imperial else (1000.0, "m")
    if longest / (scale * unit) < 1.0:
        unit, name = (INCH, "in") if is_imperial else (1.0, "mm")
    length = _round_length(longest / (scale * unit))
    wide = length * unit * scale
    text, zero = block(f"{length:g} {name}", SMALLEST), block("0", SMALLEST)
    start = right - text.wide - 1.2 - wide
    for piece in range(4):
        box = Box(start + piece * wide / 4, top + 0.4, start + (piece + 1) * wide / 4, top + 2.0)
        ink.rectangle(box, "dimension", "", "border", "none" if piece % 2 else "ink")
    ink.words += words_at(text, right - text.wide, top, "", "border")
    ink.words += words_at(zero, start - zero.wide - 1.0, top, "", "border")


def _round_length(most: float) -> float:
    """Return the largest of 1, 2, 5 times a power of ten that is not above a length."""
    power = 10.0 ** len(str(int(most))) / 10.0 if most >= 1.0 else 1.0
    while power > most:
        power /= 10.0
    return max(step * power for step in (1.0, 2.0, 5.0) if step * power <= most * (1.0 + 1e-9))


def body_of(frame: Box, foot: Foot) -> Box:
    """Return the part of a page that views and tables may use."""
    return Box(frame.left + INSIDE, frame.top + INSIDE, frame.right - INSIDE, frame.bottom - foot.high - INSIDE)
