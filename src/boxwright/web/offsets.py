"""Where a character stands, as the program counts and as a browser's editor counts.

The editor knows line ends of one character and counts characters beyond the first 65,536 twice. Most rig files hold
neither; then both counts are the same and nothing is gone through.
"""

from __future__ import annotations

FIRST_COUNTED_TWICE = "\U00010000"


def shown_text(text: str) -> str:
    """Return a text as the editor holds it: every line end is one character."""
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text


def is_plain(text: str) -> bool:
    """Return whether both counts are the same."""
    return "\r\n" not in text and (text.isascii() or max(text) < FIRST_COUNTED_TWICE)


def to_text(text: str, offset: int) -> int:
    """Return the offset in a text of an offset in the editor; beyond its end, the end."""
    if is_plain(text):
        return min(max(offset, 0), len(text))
    counted = 0
    at = 0
    while at < len(text) and counted < offset:
        counted += 2 if text[at] >= FIRST_COUNTED_TWICE else 1
        at += 2 if text.startswith("\r\n", at) else 1
    return at


def to_editor(text: str, offset: int) -> int:
    """Return the offset in the editor of an offset in a text."""
    if is_plain(text):
        return offset
    before = text[:offset]
    if before.endswith("\r") and text.startswith("\n", offset):
        before = before[:-1]
    return len(before) - before.count("\r\n") + sum(one >= FIRST_COUNTED_TWICE for one in before)


def as_in(text: str, inserted: str) -> str:
    """Return what was typed with the line ends of the text it goes into."""
    inserted = shown_text(inserted)
    return inserted.replace("\n", "\r\n") if "\r\n" in text else inserted
