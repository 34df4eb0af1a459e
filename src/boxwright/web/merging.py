"""Two changes of one text made at the same time: joined where they touch different lines, else told apart in blocks."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import SequenceMatcher
from itertools import pairwise
from typing import NamedTuple


class Hunk(NamedTuple):
    """Lines ``start`` to ``end`` of the common text give way to ``lines``."""

    start: int
    end: int
    lines: tuple[str, ...]


def joined(before: str, mine: str, theirs: str) -> str | None:
    """Return the text with both changes, or None where both touch the same line or lines beside each other."""
    if mine in {theirs, before}:
        return theirs
    if theirs == before:
        return mine
    base = before.splitlines(keepends=True)
    hunks = [*_hunks(base, mine.splitlines(keepends=True)), *_hunks(base, theirs.splitlines(keepends=True))]
    ordered = sorted(dict.fromkeys(hunks))
    if any(first.end >= second.start for first, second in pairwise(ordered)):
        return None
    lines = list(base)
    for hunk in reversed(ordered):
        lines[hunk.start : hunk.end] = hunk.lines
    return "".join(lines)


def _hunks(base: Sequence[str], changed: Sequence[str]) -> list[Hunk]:
    matcher = SequenceMatcher(None, base, changed, autojunk=False)
    return [
        Hunk(low, high, tuple(changed[start:end]))
        for tag, low, high, start, end in matcher.get_opcodes()
        if tag != "equal"
    ]
