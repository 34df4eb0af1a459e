"""Saving a rig file so that a crash loses nothing: written beside, flushed, then put in place; the old text is kept."""

from __future__ import annotations

from pathlib import Path

from boxwright.book.saving import mode_of, replaced, written
from boxwright.cli.rig_file import NothingAsked, read_bytes
from boxwright.cli.screen import clean


def saved(name: str, before: bytes, after: str) -> Path:
    """Put a new text in place of the one that was read, keep that one beside with a tilde, and return its path.

    Nothing is written where the file has changed since it was read, or is not plain UTF-8.
    """
    path = Path(name).resolve() if Path(name).is_symlink() else Path(name)
    new = after.encode("utf-8")
    if read_bytes(name) != before:
        raise NothingAsked(f'"{clean(name)}" has been changed by somebody else in the meantime; ask again')
    kept = path.with_name(path.name + "~")
    try:
        written(kept, before, mode_of(path))
        replaced(path, new)
    except OSError as reason:
        words = (reason.strerror or str(reason)).lower()
        raise NothingAsked(f'"{clean(name)}" could not be written: {clean(words)}; it is as it was') from None
    return kept
