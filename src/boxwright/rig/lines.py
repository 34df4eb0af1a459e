"""The lines of a damaged text and how they are cut into groups by their keys and their indent. A guess."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from boxwright.records import dataclass
from boxwright.rig.document import NAMED, TOP_KEYS

HEAD = re.compile(
    r"""(?:"(?P<double>[^"\r\n]+)"|'(?P<single>[^'\r\n]+)'"""
    r"""|(?P<plain>(?![-?][ \t])[^\s#"'{}\[\],:](?:[^\r\n{}\[\]#]{0,200}?[^\s{}\[\]#])??))[ \t]*:(?=[ \t\r\n{]|\Z)"""
)
NO_COLON = re.compile(r"""([^\s#"'{}\[\],:][^\r\n{}\[\]:,"'#]{0,80}?)[ \t]+(?=\{)""")
WORD = re.compile(r"([a-z_]+)(?:[ \t]*([:=])[ \t]*|[ \t]*(?=#|\Z|[\r\n]))")
CONTENT = re.compile(r"(?:(?<=[\r\n])|\A)([ \t]*)([^\s#][^\r\n]*)")
EMPTY = re.compile(r"\{\s*\}?\s*\Z")
PLACE = re.compile(r"[{(,\s](?:x|inside|at)[ \t]*:")
WEIGHT = re.compile(r"[{(,\s](?:weight|each)[ \t]*:[ \t]*[^\s,}]")
ENDS = re.compile(r"(?:---|\.\.\.)(?=\s|\Z)")


@dataclass(frozen=True, slots=True)
class Line:
    """A line with something on it: where its text starts and ends, its indent, and the key it seems to begin with."""

    start: int
    end: int
    indent: int
    key: str
    value: int
    colon: bool

    def is_head(self) -> bool:
        """Return whether the line seems to begin a thing: it starts with a key."""
        return bool(self.key)


def lines_of(text: str, known_keys: frozenset[str]) -> list[Line]:
    """Return the lines of a text that are neither blank nor comment, up to a line that ends the document."""
    lines: list[Line] = []
    for found in CONTENT.finditer(text):
        start, indent = found.start(2), len(found.group(1))
        if indent == 0 and ENDS.match(text, start):
            if lines:
                break
            continue
        lines.append(_line(text, start, found.end(), indent, known_keys))
    return lines


def _line(text: str, start: int, end: int, indent: int, known_keys: frozenset[str]) -> Line:
    head = HEAD.match(text, start, end)
    if head is not None:
        key = head.group("double") or head.group("single") or head.group("plain")
        return Line(start, end, indent, key, head.end(), True)
    word = WORD.match(text, start, end)
    if word is not None and (word.group(1) in TOP_KEYS or (word.group(2) and word.group(1) in known_keys)):
        return Line(start, end, indent, word.group(1), word.end(), False)
    name = NO_COLON.match(text, start, end)
    if name is not None:
        return Line(start, end, indent, name.group(1), name.end(), False)
    return Line(start, end, indent, "", start, True)


def value_text(text: str, line: Line) -> str:
    """Return what stands after the key of a line, without a comment that makes up all of it."""
    rest = text[line.value : line.end].strip()
    return "" if rest.startswith("#") else rest


def seems_one_of(section: str, written: str) -> bool:
    """Return whether a thing in braces that is not indented seems to belong to the section above it.

    A part must write its place and its weight: anything else may be a key of the file, and would weigh nobody knows
    what.
    """
    if section != "parts":
        return written.startswith("{") and not EMPTY.match(written)
    return written.startswith("{") and bool(PLACE.search(written)) and bool(WEIGHT.search(written))


def not_one_of(section: str, name: str) -> str:
    """Return what is said of a key in braces at the start of a line that was not read as a thing of the section."""
    return f'"{name}" is not indented, so it was not read as one of {section}; if it is one, write two spaces before it'


def top_groups(text: str, lines: Sequence[Line]) -> list[tuple[int, int]]:
    """Return the groups of lines (from, to) that seem to belong to one top-level key each."""
    starts: list[int] = []
    for number, line in enumerate(lines):
        below = lines[number + 1] if number + 1 < len(lines) else None
        if not starts or _starts_top(text, line, lines[starts[-1]], below):
            starts.append(number)
    return list(zip(starts, [*starts[1:], len(lines)], strict=True))


def _starts_top(text: str, line: Line, above: Line, below: Line | None) -> bool:
    if not line.is_head() or (not line.colon and line.key not in TOP_KEYS):
        return False
    if line.indent == 0:
        written = value_text(text, line)
        if line.key in TOP_KEYS or above.key not in NAMED or not written.startswith("{"):
            return True
        # Things that are indented go on below it: they and this one stand under the same section.
        goes_on = below is not None and below.indent > 0 and value_text(text, below).startswith("{") and below.is_head()
        return not goes_on and not seems_one_of(above.key, written)
    return line.indent == 1 and line.key in TOP_KEYS and not value_text(text, line)


def groups(text: str, lines: Sequence[Line], first: int, last: int) -> tuple[int, list[tuple[int, int]]]:
    """Return the indent that things have between two lines, and the groups of lines that seem to be one thing each."""
    if first >= last:
        return 0, []
    heads = [line for line in lines[first:last] if line.is_head()]
    counts = Counter(line.indent for line in heads)
    # A lone line further out than all others is off, unless it is a key with lines of its own under it.
    usual = [line.indent for line in heads if counts[line.indent] > 1 or not value_text(text, line)]
    width = min(usual or counts or [0])
    starts = [number for number in range(first, last) if lines[number].is_head() and lines[number].indent <= width]
    if not starts or starts[0] != first:
        starts.insert(0, first)
    return width, list(zip(starts, [*starts[1:], last], strict=True))
