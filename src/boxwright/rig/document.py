"""The rig text as it was read: its tree, where each value stands, and what could not be read. An immutable snapshot."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal, NamedTuple, TypeAlias

from boxwright.finding import Problem

Tree: TypeAlias = "str | tuple[Tree, ...] | Mapping[str, Tree] | None"
"""A value of the rig text: a text, a key without a value, a list, or keys with values. Every scalar is its text."""

NAMED = frozenset(
    "parts openings wires straps stages loads places measured tow people walls pipes habits accepted".split()
)
"""The top-level keys that hold named things, each thing with a span of its own."""

TOP_KEYS = NAMED | frozenset("boxwright rig demo units words countries class today trailer frame logs".split())
"""All top-level keys: at these a damaged text is cut, and any other key in braces may be a thing not indented."""

MOST_PROBLEMS = 200


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in the text; line and column count from 1."""

    line: int
    column: int


class Extent(NamedTuple):
    """Where a key starts, and where its value starts and ends: character offsets, relative to the item's start."""

    key: int
    value: int
    end: int


@dataclass(frozen=True, slots=True)
class Trouble:
    """A problem whose place is still an offset; relative to the piece, as its path is, if it belongs to one.

    ``troubled`` says that text was dropped, guessed or read again there.
    """

    at: int
    path: str
    says: str
    troubled: bool = True
    kind: Literal["problem", "note"] = "problem"


@dataclass(frozen=True, slots=True)
class Piece:
    """One named thing (or one whole top-level key, ``section`` empty) as read, with places relative to its key.

    ``written`` is its key in the text; ``name`` differs where the key was written twice. ``alone`` says that the item
    may be read again by itself: it starts its own line, nothing follows it on its last line, no block text is in it.
    """

    section: str
    written: str
    name: str
    tree: Tree
    extents: Mapping[str, Extent]
    troubles: tuple[Trouble, ...]
    column: int
    length: int
    alone: bool

    @property
    def path(self) -> str:
        """Return the rig path of the item."""
        return f"{self.section}[{self.name}]" if self.section else self.name


def parents(suffix: str) -> list[str]:
    """Return a path suffix and every parent of it, nearest first, down to the empty one."""
    found = [suffix]
    while suffix:
        suffix = suffix[: max(suffix.rfind("."), suffix.rfind("["), 0)]
        found.append(suffix)
    return found


@dataclass(frozen=True)
class Document:
    """A rig text and all that reading it gave. Made by `read_document` and `edited`; never changed."""

    text: str
    tree: Mapping[str, Tree]
    pieces: tuple[Piece, ...]
    starts: tuple[int, ...]
    sections: Mapping[str, Extent]
    numbers: Mapping[tuple[str, str], int]
    troubles: tuple[Trouble, ...]
    shaky: frozenset[int]
    known_keys: frozenset[str]
    pieces_read: int
    is_damaged: bool

    @cached_property
    def problems(self) -> tuple[Problem, ...]:
        """Return what could not be read as it stands, in the order of the text, at most 200 of it."""
        found = list(self.troubles)
        for number in self.shaky:
            start, path = self.starts[number], self.pieces[number].path
            found += [
                replace(trouble, at=trouble.at + start, path=path + trouble.path)
                for trouble in self.pieces[number].troubles
            ]
        found.sort(key=lambda trouble: (trouble.at, trouble.path, trouble.says))
        lines = _Lines(self.text)
        problems = []
        for trouble in found[:MOST_PROBLEMS]:
            spot = lines.spot(trouble.at)
            problems.append(Problem(spot.line, spot.column, trouble.path, trouble.says, trouble.kind))
        if len(found) > MOST_PROBLEMS:
            spot = lines.spot(found[MOST_PROBLEMS].at)
            says = f"there are {len(found) - MOST_PROBLEMS} more problems from here on; put the first ones right first"
            problems.append(Problem(spot.line, spot.column, "", says))
        return tuple(problems)

    @cached_property
    def troubled(self) -> frozenset[str]:
        """Return the rig paths where text was dropped, guessed or read again; "" stands for the whole file."""
        found = {trouble.path for trouble in self.troubles if trouble.troubled}
        for number in self.shaky:
            if any(trouble.troubled for trouble in self.pieces[number].troubles):
                found.add(self.pieces[number].path)
        return frozenset(found)

    def spot(self, path: str) -> Spot:
        """Return where the value at a rig path starts; of its nearest parent if it is not written; else line 1.

        A value that begins below its key, as a wall's layers do, is found at its key.
        """
        extent = self.extent(path)
        if extent is None:
            return Spot(1, 1)
        is_below = any(end in self.text[extent.key : extent.value] for end in "\r\n")
        return _Lines(self.text).spot(extent.key if is_below else extent.value)

    def key_spot(self, path: str) -> Spot:
        """Return where the key at a rig path starts; of its nearest parent if it is not written; else line 1."""
        extent = self.extent(path)
        return Spot(1, 1) if extent is None else _Lines(self.text).spot(extent.key)

    def span(self, path: str) -> tuple[int, int]:
        """Return the offsets of the item a path leads into: from its key to the end of the line its value ends on."""
        found = self.find(path)
        if found is None:
            extent = self.sections.get(path)
            return (0, 0) if extent is None else (extent.key, extent.end)
        number, _ = found
        return self.starts[number], self.starts[number] + self.pieces[number].length

    def piece(self, section: str, name: str) -> Tree:
        """Return the tree of one item; the same object as before an edit that left it alone."""
        number = self.numbers.get((section, name))
        return None if number is None else self.pieces[number].tree

    def extent(self, path: str, exact: bool = False) -> Extent | None:
        """Return the offsets of the key and the value at a rig path, or (unless ``exact``) of its nearest parent."""
        found = self.find(path)
        if found is not None:
            number, suffix = found
            extents, start = self.pieces[number].extents, self.starts[number]
            for parent in [suffix] if exact else parents(suffix):
                if parent in extents:
                    extent = extents[parent]
                    return Extent(extent.key + start, extent.value + start, extent.end + start)
            return None
        if exact:
            return self.sections.get(path)
        return next((self.sections[parent] for parent in parents(path) if parent in self.sections), None)

    def find(self, path: str) -> tuple[int, str] | None:
        """Return the number of the item a rig path leads into and the rest of the path, or None."""
        section, bracket, rest = path.partition("[")
        if bracket and section in NAMED:
            end = rest.find("]")
            while end >= 0:
                number = self.numbers.get((section, rest[:end]))
                if number is not None:
                    return number, rest[end + 1 :]
                end = rest.find("]", end + 1)
            return None
        for parent in parents(path):
            number = self.numbers.get(("", parent))
            if number is not None and parent:
                return number, path[len(parent) :]
        return None


class _Lines:
    """Counts lines up to offsets that are asked for in rising order, so that the text is gone through once."""

    def __init__(self, text: str) -> None:
        self.text, self.line, self.at = text, 1, 0

    def spot(self, offset: int) -> Spot:
        """Return the line and column of an offset; a byte order mark takes no column."""
        text = self.text
        offset = min(offset, len(text))
        if 0 < offset < len(text) and text[offset - 1] == "\r" and text[offset] == "\n":
            offset -= 1
        self.line += text.count("\n", self.at, offset)
        lone = text.count("\r", self.at, offset)
        if lone:
            self.line += lone - text.count("\r\n", self.at, offset + 1)
        self.at = offset
        start = max(text.rfind("\n", 0, offset), text.rfind("\r", 0, offset)) + 1
        if start == 0 and text.startswith("\ufeff"):
            start = 1
        return Spot(self.line, max(offset - start, 0) + 1)


def piece_around(document: Document, start: int, end: int) -> int | None:
    """Return the number of the item whose span holds both offsets, or None."""
    number = bisect_right(document.starts, start) - 1
    if number < 0 or end > document.starts[number] + document.pieces[number].length:
        return None
    return number
