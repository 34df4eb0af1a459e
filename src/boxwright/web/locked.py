"""A lock on a file that ends with the program that holds it, however that program ends."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from boxwright.book.saving import OWN

if sys.platform == "win32":
    import msvcrt

    def _is_taken(handle: int) -> bool:
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _is_taken(handle: int) -> bool:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        except OSError:
            return True  # a disk that knows no locks: what stands in the file is compared all the same
        return True


class Held(Exception):
    """Somebody else holds the lock."""


@contextmanager
def locked(path: Path, mode: int | None, tries: int, pause: float) -> Iterator[None]:
    """Hold the lock that a file stands for; raises ``Held`` where it is not free after so many tries (pause in s).

    The file itself says nothing and stays, for those whom ``mode`` names: one that was left lying is held by nobody.
    """
    handle = os.open(path, os.O_CREAT | os.O_RDWR, OWN)
    try:
        if mode is not None:
            with suppress(OSError):  # made by another account, that saw to it
                path.chmod(mode)
        for count in range(tries):
            if _is_taken(handle):
                break
            if count + 1 == tries:
                raise Held(path.name)
            time.sleep(pause)
        yield
    finally:
        os.close(handle)
