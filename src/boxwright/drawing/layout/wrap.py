"""Words broken into lines, and the room those lines take."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from boxwright.drawing.letters import DEPTH, RISE, printable, text_width
from boxwright.drawing.mark import Point
from boxwright.drawing.page import Belongs, Box, Words
from boxwright.records import dataclass

LEADING = 1.7
"""From baseline to baseline, over the height of a capital letter: enough for an accent under a comma."""

PLAIN_RISE = 1.1
"""How far brackets and fractions of plain English stand above the baseline."""


@lru_cache(maxsize=20_000)
def width_of(text: str, height: float, is_bold: bool = False) -> float:
    """Return how wide a line of text is."""
    return text_width(text, height, is_bold)


@lru_cache(maxsize=20_000)
def cleaned(words: str) -> str:
    """Return words as they are printed: on one line, single spaces, no control characters."""
    return " ".join(printable(words).split())


@dataclass(frozen=True, slots=True)
class Block:
    """Lines of text set under each other, before they have a place: mm."""

    lines: tuple[str, ...]
    height: float
    is_bold: bool
    wide: float
    high: float
    rise: float


@lru_cache(maxsize=20_000)
def block(words: str, height: float, is_bold: bool = False, limit: float = float("inf")) -> Block:
    """Return words set in lines no wider than a limit."""
    return set_in(wrapped(words, height, is_bold, limit), height, is_bold)


@lru_cache(maxsize=20_000)
def set_in(lines: tuple[str, ...], height: float, is_bold: bool = False) -> Block:
    """Return given lines set under each other."""
    rise = (PLAIN_RISE if all(line.isascii() for line in lines) else RISE) * height
    wide = max((width_of(line, height, is_bold) for line in lines), default=0.0)
    high = rise + (max(1, len(lines)) - 1) * LEADING * height + DEPTH * height
    return Block(lines, height, is_bold, wide, high, rise)


@lru_cache(maxsize=20_000)
def wrapped(words: str, height: float, is_bold: bool, limit: float) -> tuple[str, ...]:
    """Return words broken into lines; a word wider than a line is broken too, nothing is left out."""
    text = cleaned(words)
    if width_of(text, height, is_bold) <= limit:
        return (text,)
    lines: list[str] = []
    line = ""
    for word in text.split(" "):
        longer = f"{line} {word}" if line else word
        if width_of(longer, height, is_bold) <= limit:
            line = longer
            continue
        if line:
            lines.append(line)
        *full, line = _broken(word, height, is_bold, limit)
        lines += full
    return (*lines, line)


def _broken(word: str, height: float, is_bold: bool, limit: float) -> list[str]:
    """Return a word cut into pieces that fit, each at least one character long."""
    if width_of(word, height, is_bold) <= limit:
        return [word]
    pieces, piece, wide = [], "", 0.0
    for character in word:
        advance = width_of(character, height, is_bold)
        if piece and wide + advance > limit:
            pieces.append(piece)
            piece, wide = "", 0.0
        piece, wide = piece + character, wide + advance
    return [*pieces, piece]


def balanced(words: str, height: float, is_bold: bool, count: int) -> Block:
    """Return words set in about so many lines of like width, no word broken."""
    text = cleaned(words)
    widest = max((width_of(word, height, is_bold) for word in text.split(" ")), default=0.0)
    return block(words, height, is_bold, max(width_of(text, height, is_bold) / count * 1.1 + height, widest))


def evened(words: str, height: float, limit: float) -> Block:
    """Return words in as few lines as a limit allows, the lines of like width."""
    tight = block(words, height, False, limit)
    count = len(tight.lines)
    even = balanced(words, height, False, count) if count > 1 else tight
    return even if len(even.lines) == count and even.wide <= limit else tight


def words_at(text: Block, left: float, top: float, of: str, belongs: Belongs) -> list[Words]:
    """Return the lines of a block whose box has its left upper corner at a point."""
    set_lines = []
    for number, line in enumerate(text.lines):
        baseline = top + text.rise + number * LEADING * text.height
        wide = width_of(line, text.height, text.is_bold)
        box = Box(left, baseline - text.rise, left + wide, baseline + DEPTH * text.height)
        set_lines.append(Words((left, baseline), line, text.height, of, belongs, box, False, text.is_bold))
    return set_lines


def flush_right(lines: list[Words], right: float) -> list[Words]:
    """Return lines of words moved so that each ends at the same place."""
    return [
        replace(
            one,
            at=(right - one.box.right + one.box.left, one.at[1]),
            box=replace(one.box, left=right - one.box.right + one.box.left, right=right),
        )
        for one in lines
    ]


def words_centred(text: Block, middle: float, top: float, of: str, belongs: Belongs) -> list[Words]:
    """Return the lines of a block, each centred about an upright line."""
    found = []
    for number, line in enumerate(text.lines):
        one = Block((line,), text.height, text.is_bold, width_of(line, text.height, text.is_bold), 0.0, text.rise)
        found += words_at(one, middle - one.wide / 2, top + number * LEADING * text.height, of, belongs)
    return found


def words_turned(text: Block, left: float, bottom: float, of: str, belongs: Belongs) -> list[Words]:
    """Return the lines of a block that reads from below upwards, its box's left lower corner at a point."""
    found = []
    for number, line in enumerate(text.lines):
        baseline = left + text.rise + number * LEADING * text.height
        wide = width_of(line, text.height, text.is_bold)
        start = bottom - (text.wide - wide) / 2
        box = Box(baseline - text.rise, start - wide, baseline + DEPTH * text.height, start)
        found.append(Words((baseline, start), line, text.height, of, belongs, box, True, text.is_bold))
    return found


def grown(box: Box, by: float) -> Box:
    """Return a box with a rim around it."""
    return Box(box.left - by, box.top - by, box.right + by, box.bottom + by)


def around(points: list[Point]) -> Box:
    """Return the smallest box around points."""
    across = [point[0] for point in points]
    down = [point[1] for point in points]
    return Box(min(across), min(down), max(across), max(down))
