"""How a rig file is written: the lines around a place, a value as text, the manner a section writes its things in."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping

from boxwright.records import dataclass
from boxwright.rig.document import Document, Extent, Piece, Tree
from boxwright.rig.read import read_document
from boxwright.rig.walk import quoted

NEIGHBOURS = 12
"""How many things around a place are looked at to see in which columns they are written."""

FARTHEST = 40
"""How many blanks at most lead up to a comment that is put in the column of others."""

_COMMENT = re.compile(r"(?:(?<=[ \t])|(?<=^))#[^\r\n]*", re.MULTILINE)


def line_start(text: str, at: int) -> int:
    """Return where the line of an offset begins, behind a byte order mark."""
    start = max(text.rfind("\n", 0, at), text.rfind("\r", 0, at)) + 1
    return start + 1 if start == 0 and text.startswith("\ufeff") and at > 0 else start


def line_end(text: str, at: int) -> int:
    """Return where the line of an offset ends, before its line break."""
    found = re.compile(r"[\r\n]").search(text, at)
    return found.start() if found else len(text)


def next_line(text: str, at: int) -> int:
    """Return where the line after that of an offset begins, or the end of the text."""
    end = line_end(text, at)
    return end + (2 if text.startswith("\r\n", end) else 1 if end < len(text) else 0)


def line_break(text: str) -> str:
    """Return the line break a text uses."""
    return "\r\n" if "\r\n" in text else "\r" if "\r" in text and "\n" not in text else "\n"


def is_blank(text: str) -> bool:
    """Return whether a stretch holds blanks only."""
    return not text.strip(" \t")


def is_remark(text: str) -> bool:
    """Return whether a stretch of one line holds blanks only, or blanks and a comment."""
    return is_blank(text) or re.fullmatch(r"[ \t]+#.*", text) is not None


def key_written(key: str) -> str:
    """Return a key as it is written: bare if it is a plain word, else in quotes."""
    is_plain = all(letter.isalnum() or letter in "_- " for letter in key) and key[:1].isalnum() and key == key.strip()
    return key if is_plain else quoted(key)


def written(tree: Tree, is_block: bool = False) -> str:
    """Return a value as text on one line: bare where it reads back as itself, else in quotes.

    ``is_block`` says that it will stand behind its key on a line of its own, not inside braces.
    """
    if isinstance(tree, Mapping):
        pairs = [f"{key_written(key)}: {written(value)}".rstrip() for key, value in tree.items()]
        return "{" + ", ".join(pairs) + "}"
    if isinstance(tree, tuple):
        return "[" + ", ".join(written(value) for value in tree) + "]"
    if tree is None:
        return ""
    return tree if _reads_back(tree, is_block) else quoted(tree)


def _reads_back(text: str, is_block: bool) -> bool:
    """Return whether a text without quotes is read as exactly itself, nothing said; a tab is read so by few readers."""
    if "\t" in text:
        return False
    if is_block:
        found = read_document(f"parts:\n  a:\n    k: {text}\n    z: 1\n")
    else:
        found = read_document(f"parts:\n  a: {{k: {text}, l: [{text}, 1], z: 1}}\n")
    tree: dict[str, Tree] = {"k": text, "z": "1"} if is_block else {"k": text, "l": (text, "1"), "z": "1"}
    return not found.problems and found.tree == {"parts": {"a": tree}}


def key_end(text: str, at: int, key: str) -> int | None:
    """Return where a written key ends, or None where it is written in a way that is not followed."""
    if text.startswith(key, at) and re.compile(r"[ \t]*:(?:[\s,}\]]|$)").match(text, at + len(key)):
        return at + len(key)
    found = re.compile(r"""(?:"(?:[^"\\\r\n]|\\.)*"|'(?:[^'\r\n]|'')*')(?=[ \t]*:)""").match(text, at)
    return found.end() if found else None


@dataclass(frozen=True, slots=True)
class Manner:
    """How the things of a section are written: what stands before a name, whether in braces on one line or line by
    line (then ``inner`` stands before each key), and the columns their values and comments begin in, 0 for none.
    """

    indent: str
    is_block: bool
    inner: str
    value_column: int
    comment_column: int


def manner(document: Document, section: str, near: int | None) -> Manner:
    """Return the manner of a section around the thing with a number; of a section without things, that of the file."""
    text = document.text
    numbers = [number for number, piece in enumerate(document.pieces) if piece.section == section]
    if near is not None:
        numbers = sorted(sorted(numbers, key=lambda number: abs(number - near))[:NEIGHBOURS])
    own = [number for number in numbers if document.pieces[number].column > 0] or numbers
    others = [number for number, piece in enumerate(document.pieces) if piece.section and piece.column > 0]
    indents = [found for number in own or others if is_blank(found := _before(text, document.starts[number]))]
    indent = _most(indents) or "  "
    blocks = [number for number in own if _is_block(text, document.pieces[number], document.starts[number])]
    flows = [number for number in own if _extent(document, number) is not None and number not in blocks]
    inner = indent * 2
    for number in blocks:
        inside = [extent.key for path, extent in document.pieces[number].extents.items() if path.count(".") == 1]
        prefix = _before(text, document.starts[number] + min(inside)) if inside else ""
        inner = prefix if is_blank(prefix) and prefix else inner
    columns = [column for number in flows if (column := _value_column(document, number)) is not None]
    comments = [column for number in own if (column := _comment_column(document, number)) is not None]
    return Manner(indent, len(blocks) > len(flows), inner, _shared(columns), _shared(comments, least=2))


def entry(how: Manner, name: str, value: str, breaks: str, comment: str = "") -> str:
    """Return the line of a new thing without its indent; ``value`` is its text behind the colon."""
    line = f"{key_written(name)}:"
    if value:
        blanks = 0 if value[0] in "\r\n" else max(1, how.value_column - len(how.indent) - len(line))
        line += " " * blanks + value
    if comment:
        last = line.rpartition(breaks)[2]
        blanks = how.comment_column - len(how.indent) - len(last)
        line += " " * (blanks if 2 <= blanks <= FARTHEST else 2) + f"# {comment}"
    return line


def comments_of(text: str) -> list[tuple[int, str]]:
    """Return what looks like a comment in a text, each with the offset of its ``#``."""
    return [(found.start(), found[0]) for found in _COMMENT.finditer(text)]


def _before(text: str, at: int) -> str:
    return text[line_start(text, at) : at]


def _most(texts: list[str]) -> str:
    return Counter(texts).most_common(1)[0][0] if texts else ""


def _shared(columns: list[tuple[int, int]], least: int = 1) -> int:
    """Return the column most share (``least`` of them), 0 for none; each is paired with the blanks that lead up to it.

    Where nobody ever wrote more than the one blank that must be, no column is kept.
    """
    if not columns:
        return 0
    column, count = Counter(column for column, _ in columns).most_common(1)[0]
    return column if count >= least and any(blanks > 1 for one, blanks in columns if one == column) else 0


def _is_block(text: str, piece: Piece, start: int) -> bool:
    """Return whether a thing is written key by key on lines of its own."""
    extent = piece.extents.get("")
    return extent is not None and isinstance(piece.tree, Mapping) and not text.startswith("{", start + extent.value)


def _extent(document: Document, number: int) -> Extent | None:
    """Return the offsets of a thing whose value is written in braces."""
    extent, start = document.pieces[number].extents.get(""), document.starts[number]
    if extent is None or not document.text.startswith("{", start + extent.value):
        return None
    return Extent(extent.key + start, extent.value + start, extent.end + start)


def _value_column(document: Document, number: int) -> tuple[int, int] | None:
    """Return the column a value begins in and the blanks before it; None where it is not on the line of its name."""
    extent, text = _extent(document, number), document.text
    if extent is None or line_start(text, extent.key) != line_start(text, extent.value):
        return None
    before = text[extent.key : extent.value]
    return extent.value - line_start(text, extent.key), len(before) - len(before.rstrip(" "))


def _comment_column(document: Document, number: int) -> tuple[int, int] | None:
    """Return the column of the comment behind a thing and the blanks before it; None where there is none."""
    start, extent, text = document.starts[number], document.pieces[number].extents.get(""), document.text
    if extent is None:
        return None
    end = start + extent.end
    rest = text[end : line_end(text, end)]
    if "#" not in rest or not is_remark(rest):
        return None
    return end + rest.index("#") - line_start(text, end), rest.index("#") - 1
