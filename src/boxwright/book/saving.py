"""Putting a whole file in place at once, so that a crash leaves the old text or the new one and never a half."""

from __future__ import annotations

import os
import time
from pathlib import Path

TRIES, PAUSE = 10, 0.05
"""How often a file that somebody has open is tried again, and how long between (s)."""


def written(path: Path, data: bytes) -> None:
    """Write a whole file and have it on the disk before going on."""
    with path.open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


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


def replaced(path: Path, data: bytes) -> None:
    """Give a file another text at once, with the permissions it had; raises OSError and leaves it as it was."""
    beside = path.with_name(path.name + ".new")
    written(beside, data)
    if path.exists():
        beside.chmod(path.stat().st_mode & 0o777)
    in_place(beside, path)
