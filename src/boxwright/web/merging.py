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


def with_hunks_of(before: str, mine: str, theirs: str) -> str:
    """Return a text that has both changes, and where both touch the same lines those of ``theirs`` alone.

    Beside ``mine`` it differs in nothing but what only ``theirs`` would change.
    """
    base = before.splitlines(keepends=True)
    own, other = (_hunks(base, text.splitlines(keepends=True)) for text in (mine, theirs))
    stretches: list[tuple[int, int]] = []
    for start, end in sorted((one.start, one.end) for one in (*own, *other)):
        if stretches and stretches[-1][1] >= start:
            stretches[-1] = stretches[-1][0], max(stretches[-1][1], end)
        else:
            stretches.append((start, end))
    lines = list(base)
    for start, end in reversed(stretches):
        theirs_here = [one for one in other if start <= one.start and one.end <= end]
        here = theirs_here or [one for one in own if start <= one.start and one.end <= end]
        stretch = base[start:end]
        for hunk in reversed(here):
            stretch[hunk.start - start : hunk.end - start] = hunk.lines
        lines[start:end] = stretch
    return "".join(lines)


def _hunks(base: Sequence[str], changed: Sequence[str]) -> list[Hunk]:
    matcher = SequenceMatcher(None, base, changed, autojunk=False)
    return [
        Hunk(low, high, tuple(changed[start:end]))
        for tag, low, high, start, end in matcher.get_opcodes()
        if tag != "equal"
    ]
