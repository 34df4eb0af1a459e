"""What reaches the terminal: plain lines no wider than it is, coloured only where somebody looks at colours.

Everything that came out of a rig file passes through `clean` on its way here, so that a name with an escape sequence
in it cannot move the cursor, set a colour or rename the window.
"""

from __future__ import annotations

import os
import shutil
import sys
import unicodedata
from collections.abc import Iterable, Sequence
from typing import Literal, TextIO

from boxwright.records import dataclass

Style = Literal["", "head", "dim", "stop", "limit", "fix", "unknown", "advice", "go"]

NARROWEST, PIPED, WIDEST = 60, 80, 120
"""Columns: below the first nothing is squeezed, the second is used where there is no terminal, the third at most."""

COLOURS: dict[Style, str] = {
    "": "",
    "head": "bold",
    "dim": "dim",
    "stop": "bold red",
    "limit": "bold yellow",
    "fix": "bold magenta",
    "unknown": "bold cyan",
    "advice": "blue",
    "go": "bold green",
}

ASCII_FOR = {
    "\u2013": "-",
    "\u2014": "-",
    "\u2212": "-",
    "\u00b1": "+-",
    "\u00d7": "x",
    "\u00b0": " deg ",
    "\u2018": "'",
    "\u2019": "'",
    "\u201c": '"',
    "\u201d": '"',
    "\u2032": "'",
    "\u2033": '"',
    "\u2026": "...",
}
"""How a character is spelled on a terminal that has only ASCII; others lose their accent or become a question mark."""


@dataclass(frozen=True, slots=True)
class Span:
    """A piece of a line in one style."""

    text: str
    style: Style = ""


Line = tuple[Span, ...]


def plain(text: str, style: Style = "") -> Line:
    """Return a line of one piece."""
    return (Span(text, style),)


def text_of(line: Line) -> str:
    """Return a line as text, clean, without its styles and without spaces at its end."""
    return clean("".join(span.text for span in line)).rstrip()


def clean(text: str) -> str:
    """Return a text without control characters, line ends or marks that turn the direction of writing."""
    if text.isascii() and text.isprintable():
        return text
    spaced = "".join(" " if character in "\t\n\r\v\f\x85\u2028\u2029" else character for character in text)
    return "".join(character for character in spaced if unicodedata.category(character) not in ("Cc", "Cf", "Cs"))


def columns_of(text: str) -> int:
    """Return how many columns a text takes: two for a wide character, none for a mark that sits on another."""
    if text.isascii():
        return len(text)
    return sum(
        0 if unicodedata.combining(character) else 2 if unicodedata.east_asian_width(character) in "WF" else 1
        for character in text
    )


def padded(text: str, columns: int, to_the_right: bool = False) -> str:
    """Return a text filled up with spaces to a number of columns, left or right aligned."""
    space = " " * max(0, columns - columns_of(text))
    return space + text if to_the_right else text + space


def wrapped(text: str, columns: int) -> list[str]:
    """Return a text cut at its spaces into lines of at most ``columns``; a longer word is cut where it must be."""
    lines: list[str] = []
    line = ""
    for word in clean(text).split():
        if line and columns_of(line) + 1 + columns_of(word) <= columns:
            line += " " + word
            continue
        if line:
            lines.append(line)
        while columns_of(word) > columns:
            at = _fits(word, columns)
            lines.append(word[:at])
            word = word[at:]
        line = word
    return [*lines, line] if line or not lines else lines


def _fits(word: str, columns: int) -> int:
    """Return how many characters of a word fit, at least one."""
    at, used = 0, 0
    while at < len(word) and used + columns_of(word[at]) <= columns:
        used += columns_of(word[at])
        at += 1
    return max(at, 1)


def hanging(lead: Line, text: str, columns: int, style: Style = "") -> list[Line]:
    """Return a lead followed by a text whose further lines start below the text, not below the lead."""
    indent = sum(columns_of(span.text) for span in lead)
    pieces = wrapped(text, max(columns - indent, NARROWEST // 3))
    first: Line = (*lead, Span(pieces[0], style))
    return [first, *((Span(" " * indent), Span(piece, style)) for piece in pieces[1:])]


def aligned(rows: Sequence[Sequence[str]], right: Iterable[int] = (), gap: int = 2) -> list[str]:
    """Return rows of cells as lines with their columns below each other; the columns in ``right`` end together."""
    if not rows:
        return []
    ends = frozenset(right)
    count = max(len(row) for row in rows)
    full = [[clean(cell) for cell in row] + [""] * (count - len(row)) for row in rows]
    sizes = [max(columns_of(row[index]) for row in full) for index in range(count)]
    return [
        (" " * gap).join(padded(cell, sizes[index], index in ends) for index, cell in enumerate(row)).rstrip()
        for row in full
    ]


class Screen:
    """Where lines go, how wide it is, and whether it shows colours and more than ASCII."""

    def __init__(self, stream: TextIO | None = None) -> None:
        self.stream = sys.stdout if stream is None else stream
        is_terminal = self.stream.isatty()
        found = shutil.get_terminal_size((PIPED, 24)).columns
        self.columns = max(NARROWEST, min(found, WIDEST))
        self.is_coloured = is_terminal and os.environ.get("TERM") != "dumb" and not os.environ.get("NO_COLOR")

    def show(self, lines: Iterable[Line]) -> None:
        """Write lines, coloured if this screen shows colours."""
        if self.is_coloured:
            self._show_coloured(lines)
            return
        for line in lines:
            self.stream.write(self._written(text_of(line)) + "\n")

    def show_raw(self, text: str) -> None:
        """Write a text that a program reads (JSON), exactly as it is."""
        self.stream.write(text + "\n")

    def _show_coloured(self, lines: Iterable[Line]) -> None:
        from rich.console import Console
        from rich.text import Text

        console = Console(file=self.stream, highlight=False, markup=False, emoji=False, width=10_000)
        for line in lines:
            pieces = [(self._written(span.text), COLOURS[span.style]) for span in line]
            console.print(Text.assemble(*pieces), soft_wrap=True)

    def _written(self, text: str) -> str:
        """Return a text as this screen can write it, with nothing in it that could steer a terminal."""
        text = clean(text)
        encoding = getattr(self.stream, "encoding", None) or "ascii"
        try:
            text.encode(encoding)
        except (UnicodeEncodeError, LookupError):
            return in_ascii(text)
        return text


def in_ascii(text: str) -> str:
    """Return a text in ASCII: dashes and marks spelled, accents dropped, the rest as question marks."""
    spelled = "".join(ASCII_FOR.get(character, character) for character in text)
    bare = "".join(c for c in unicodedata.normalize("NFKD", spelled) if not unicodedata.combining(c))
    return bare.encode("ascii", "replace").decode("ascii")
