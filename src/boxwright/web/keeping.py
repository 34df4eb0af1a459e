"""The rig file on the disk while it is open: read, watched for others, written at once, its past versions kept.

Beside the rig file stands the folder ``.boxwright``: ``past/`` with the texts this session replaced, ``unsaved.yaml``
with a text that could not be written because it does not read as a rig, or because somebody else wrote the file.
"""

from __future__ import annotations

import hashlib
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from boxwright.rig.saving import replaced, written

FOLDER, PAST, UNSAVED = ".boxwright", "past", "unsaved.yaml"
MOST_PAST = 50
MOST_BYTES = 4_000_000
"""A rig file longer than this is not opened: 30 times the greatest demo rig."""


class CannotKeep(Exception):
    """What stands in the way of reading or writing the file, in one sentence."""


class ChangedMeanwhile(Exception):
    """Somebody else wrote the file since it was last read; ``data`` is what stands there now."""

    def __init__(self, data: bytes) -> None:
        super().__init__("the file was changed by somebody else")
        self.data = data


@dataclass(frozen=True, slots=True)
class Seen:
    """The file as it stands: its bytes and their hash; ``data`` None where it is gone or cannot be read."""

    data: bytes | None
    hash: str
    says: str = ""


def hash_of(data: bytes) -> str:
    """Return the name of a text among past ones."""
    return hashlib.sha256(data).hexdigest()[:24]


class Keeper:
    """One rig file on the disk. ``known`` is the hash of what this program last read or wrote there."""

    def __init__(self, path: Path) -> None:
        self.path = path.resolve() if path.is_symlink() else path
        self.known = ""

    def seen(self) -> Seen:
        """Return the file as it stands now; never raises."""
        try:
            if self.path.stat().st_size > MOST_BYTES:
                return Seen(None, "", f"{self.path.name} is longer than {MOST_BYTES // 1_000_000} MB")
            data = self.path.read_bytes()
        except FileNotFoundError:
            return Seen(None, "", f"{self.path.name} is no longer there")
        except OSError as reason:
            words = (reason.strerror or str(reason)).lower()
            return Seen(None, "", f"{self.path.name} cannot be read: {words}")
        return Seen(data, hash_of(data))

    def opened(self) -> bytes:
        """Return the bytes of the file and remember them as known; raises CannotKeep where it cannot be read."""
        seen = self.seen()
        if seen.data is None:
            raise CannotKeep(seen.says)
        self.known = seen.hash
        return seen.data

    def can_write(self) -> bool:
        """Return whether this account may write the file and beside it."""
        import os

        return os.access(self.path if self.path.exists() else self.path.parent, os.W_OK)

    def keep(self, text: str, is_again: bool = False) -> None:
        """Write a text in place of the one that is known; the replaced one is kept among the past.

        ``is_again`` writes a file that has vanished. Raises ChangedMeanwhile, or CannotKeep with the reason.
        """
        data = text.encode("utf-8")
        seen = self.seen()
        if seen.data is None and not is_again:
            raise CannotKeep(seen.says)
        if seen.data is not None and seen.hash != self.known:
            raise ChangedMeanwhile(seen.data)
        try:
            if seen.data is not None:
                self._keep_past(seen.data, seen.hash)
            replaced(self.path, data)
        except OSError as reason:
            words = (reason.strerror or str(reason)).lower()
            raise CannotKeep(f"{self.path.name} could not be written: {words}") from None
        self.known = hash_of(data)
        self.forget_unsaved()

    def set_aside(self, text: str) -> None:
        """Keep a text that cannot be put in place beside the file, so that nothing typed is lost."""
        with suppress(OSError):  # a folder nobody may write in: the page still holds the text
            self._folder().mkdir(exist_ok=True)
            replaced(self._folder() / UNSAVED, text.encode("utf-8"))

    def unsaved(self) -> str | None:
        """Return a text set aside by an earlier session, or None."""
        try:
            data = (self._folder() / UNSAVED).read_bytes()
        except OSError:
            return None
        return data.decode("utf-8", errors="replace") if len(data) <= MOST_BYTES else None

    def forget_unsaved(self) -> None:
        """Take away the text set aside: what stands in the file is newer."""
        with suppress(OSError):
            (self._folder() / UNSAVED).unlink()

    def _folder(self) -> Path:
        return self.path.parent / FOLDER

    def _keep_past(self, data: bytes, name: str) -> None:
        past = self._folder() / PAST
        past.mkdir(parents=True, exist_ok=True)
        kept = past / f"{name}.yaml"
        if kept.exists():
            kept.touch()
        else:
            written(kept, data)
        every = sorted(past.glob("*.yaml"), key=lambda one: one.stat().st_mtime_ns)
        for old in every[: max(len(every) - MOST_PAST, 0)]:
            with suppress(OSError):
                old.unlink()
