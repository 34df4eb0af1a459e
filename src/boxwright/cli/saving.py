"""Saving a rig file so that a crash loses nothing: written beside, flushed, then put in place; the old text is kept."""

from __future__ import annotations

import os
import time
from pathlib import Path

from boxwright.cli.rig_file import NothingAsked, read_bytes
from boxwright.cli.screen import clean

TRIES, PAUSE = 10, 0.05
"""How often a file that somebody has open is tried again, and how long between (s)."""


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
        _written(kept, before)
        beside = path.with_name(path.name + ".new")
        _written(beside, new)
        beside.chmod(path.stat().st_mode & 0o777)
        _in_place(beside, path)
    except OSError as reason:
        words = (reason.strerror or str(reason)).lower()
        raise NothingAsked(f'"{clean(name)}" could not be written: {clean(words)}; it is as it was') from None
    return kept


def _written(path: Path, data: bytes) -> None:
    """Write a whole file and have it on the disk before going on."""
    with path.open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _in_place(beside: Path, path: Path) -> None:
    """Put a file in place of another at once; tried again while something else has the other one open."""
    for count in range(TRIES):
        try:
            os.replace(beside, path)
            return
        except PermissionError:
            if count + 1 == TRIES:
                raise
            time.sleep(PAUSE)
