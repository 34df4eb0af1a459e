"""Bytes to text, and text to what the YAML parser can take: no control characters, no tabs in the indentation."""

from __future__ import annotations

import codecs
import re
from bisect import bisect_right
from collections import Counter

from boxwright.records import dataclass
from boxwright.rig.document import Trouble

UNREADABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
"""Written as what it is, not as what it is not: the turned-round set takes ten times as long to make at each start."""
TABBED = re.compile(r"(?:(?<=[\r\n])|\A)( *\t[ \t]*)([^\s#])?")
INDENT = re.compile(r"[\r\n]( +)[^\s#]")


@dataclass(frozen=True, slots=True)
class Readable:
    """A text made fit for the parser. ``at`` and ``to`` pair its offsets with those of the text as written."""

    text: str
    at: tuple[int, ...] = ()
    to: tuple[int, ...] = ()
    troubles: tuple[Trouble, ...] = ()

    def written(self, offset: int) -> int:
        """Return the offset in the text as written."""
        number = bisect_right(self.at, offset) - 1
        if number < 0:
            return offset
        here = self.to[number] + offset - self.at[number]
        return here if number + 1 >= len(self.to) else min(here, self.to[number + 1])


def decoded(data: bytes) -> tuple[str, tuple[Trouble, ...]]:
    """Return the text of a file and where it was not plain UTF-8; a byte order mark stays its first character."""
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        says = "the file is written in UTF-16; it was read so; save it as UTF-8"
        return data.decode("utf-16", errors="replace"), (Trouble(0, "", says, troubled=False, kind="note"),)
    try:
        return data.decode("utf-8"), ()
    except UnicodeDecodeError as error:
        says = f"the byte {data[error.start]:#04x} here is not UTF-8; the file was read as Latin-1"
        # Latin-1 gives one character to every byte, so the offset of the byte is that of the character.
        text, at = data.decode("latin-1"), error.start
        if data.startswith(codecs.BOM_UTF8):
            text, at = "\ufeff" + text[3:], at - 2
        return text, (Trouble(at, "", f"{says}; save it as UTF-8"),)


def readable(text: str) -> Readable:
    """Return the text as the parser can take it, with the problems of what had to be replaced for reading."""
    troubles: list[Trouble] = []
    start = 1 if text.startswith("\ufeff") else 0
    first = UNREADABLE.search(text, start)
    if first is not None:
        count = sum(1 for _ in UNREADABLE.finditer(text, start))
        what = f"a character that cannot be shown (number {ord(first.group())})"
        more = f", and {count - 1} more after it" if count > 1 else ""
        troubles.append(Trouble(first.start(), "", f"{what} stands here{more}; read as a space; delete it"))
        text = text[:start] + UNREADABLE.sub(" ", text[start:])
    if "\t" in text and TABBED.search(text):
        return _without_tabs(text, troubles)
    return Readable(text, troubles=tuple(troubles))


def _without_tabs(text: str, troubles: list[Trouble]) -> Readable:
    """Replace the tabs of the indentation by as many spaces as the file's smallest indentation has, or by two."""
    widths = Counter(len(found.group(1)) for found in INDENT.finditer(text))
    width = min(widths) if widths else 2
    pieces, at, to, done, length, count, first = [], [], [], 0, 0, 0, -1
    for found in TABBED.finditer(text):
        indent = found.group(1).replace("\t", " " * width)
        pieces += [text[done : found.start(1)], indent]
        length += found.start(1) - done + len(indent)
        done = found.end(1)
        at.append(length)
        to.append(done)
        if found.group(2):
            count += 1
            first = found.start(1) if first < 0 else first
    if count:
        lines = "this line is" if count == 1 else f"this line and {count - 1} more are"
        says = f"{lines} indented with tabs; each tab was read as {width} spaces; write spaces"
        troubles.append(Trouble(first, "", says))
    return Readable("".join([*pieces, text[done:]]), tuple(at), tuple(to), tuple(troubles))
