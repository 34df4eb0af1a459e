"""Putting a whole file in place at once, so that a crash leaves the old text or the new one and never a half."""

from __future__ import annotations

import os
import time
from pathlib import Path

TRIES, PAUSE = 10, 0.05
"""How often a file that somebody has open is tried again, and how long between (s)."""
OWN = 0o600
"""Who may read a file while it is being written: nobody but its owner, whatever is allowed afterwards."""


def written(path: Path, data: bytes, mode: int | None = None, is_on_disk: bool = True) -> None:
    """Write a whole file and have it on the disk before going on; with ``mode`` it has those permissions throughout."""
    opening = None if mode is None else lambda name, flags: os.open(name, flags, OWN)
    with open(path, "wb", opener=opening) as file:
        if mode is not None:
            path.chmod(mode)
        file.write(data)
        file.flush()
        if is_on_disk:
            os.fsync(file.fileno())


def mode_of(path: Path) -> int | None:
    """Return the permissions of a file, None where it is not there."""
    try:
        return path.stat().st_mode & 0o777
    except OSError:
        return None


def in_place(beside: Path, path: Path) -> None:
    """Put a file in place of another at once; tried again while something else has the other one open."""
    for count in range(TRIES):
        try:
            os.replace(beside, path)
            return
        except PermissionError:
            if count + 1 == TRIES:
                raise
            time.sleep(PAUSE)


def replaced(path: Path, data: bytes, mode: int | None = None) -> None:
    """Give a file another text at once, with the permissions it had, else ``mode``; raises OSError and leaves it."""
    beside = path.with_name(path.name + ".new")
    had = mode_of(path)
    written(beside, data, mode if had is None else had)
    in_place(beside, path)
