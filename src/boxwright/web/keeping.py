"""The rig file on the disk while it is open: read, watched for others, written at once, its past versions kept.

Beside the rig file stands the folder ``.boxwright``: in ``past/`` the earlier texts (`past` says which), and under the
rig's own name the text that is not in the file yet (``NAME.unsaved``): the last change before it is written,
one that does not read as a rig, or one that somebody else's change stood against. What a session that ended at once
left there is put by as ``NAME.left`` until its owner says what becomes of it.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from boxwright.book.saving import in_place, mode_of, replaced, written
from boxwright.records import dataclass
from boxwright.web.locked import Held, locked
from boxwright.web.past import Past

FOLDER, PAST, UNSAVED, LEFT, LOCK = ".boxwright", "past", "unsaved", "left", "lock"
OF = ".of"
"""Ends the name of what says of which text of the file a text set aside was made: its hash."""
MOST_BYTES = 4_000_000
"""A rig file longer than this is not opened: 30 times the greatest demo rig."""
LOCK_TRIES, LOCK_PAUSE = 20, 0.02
"""How often a lock somebody holds is tried, and how long between (s)."""


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
        self.place = hash_of(os.fsencode(self.path.resolve()))
        """What stands for the whole path, where the path itself is nobody's business."""
        self.known = ""
        self.past = Past(self._folder() / PAST, self.path.name)
        self._had = mode_of(self.path)
        self._aside_of = ""

    def seen(self) -> Seen:
        """Return the file as it stands now; never raises."""
        try:
            if self.path.exists() and not self.path.is_file():
                return Seen(None, "", f"{self.path.name} is no plain file")
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
        return os.access(self.path, os.W_OK) and os.access(self.path.parent, os.W_OK)

    def keep(self, text: str, is_again: bool = False) -> None:
        """Write a text in place of the one that is known; the replaced one is kept among the past.

        ``is_again`` writes a file that has vanished. Raises ChangedMeanwhile, or CannotKeep with the reason.
        """
        data = text.encode("utf-8")
        try:
            with self._locked():
                seen = self.seen()
                is_there = self.path.exists()
                if seen.data is None and not (is_again and not is_there):
                    how = " and is not written over: move it away first, then write it again" if is_again else ""
                    raise CannotKeep(f"{seen.says}{how}")
                if seen.data is not None and seen.hash != self.known:
                    raise ChangedMeanwhile(seen.data)
                if seen.data is not None:
                    self.past.keep(seen.data, self._mode())
                replaced(self.path, data, self._mode())
        except OSError as reason:
            words = (reason.strerror or str(reason)).lower()
            raise CannotKeep(f"{self.path.name} could not be written: {words}") from None
        self.known = hash_of(data)

    @contextmanager
    def _locked(self) -> Iterator[None]:
        """Keep a second session of the same file from writing between our look at it and our writing.

        The lock ends with the program that holds it: one that was killed stands in nobody's way.
        """
        self._folder().mkdir(exist_ok=True)
        try:
            with locked(self._beside(LOCK), self._mode(), LOCK_TRIES, LOCK_PAUSE):
                yield
        except Held:
            raise CannotKeep(f"another session is writing {self.path.name}; it is tried again") from None

    # ------------------------------------------------------------------ what is not in the file

    def jot(self, text: str) -> bool:
        """Put down a text that is not in the file yet, at once and without waiting for the disk; False where it fails.

        It outlives this program but not the computer; the file itself follows within a second.
        """
        return self._is_aside(text, is_on_disk=False)

    def set_aside(self, text: str) -> bool:
        """Keep a text that cannot be put in place beside the file; False where nothing can be written there either."""
        return self._is_aside(text, is_on_disk=True)

    def _is_aside(self, text: str, *, is_on_disk: bool) -> bool:
        try:
            self._put_aside(UNSAVED, text, is_on_disk=is_on_disk)
            if self._aside_of != self.known:
                self._put_aside(UNSAVED + OF, self.known, is_on_disk=is_on_disk)
                self._aside_of = self.known
        except OSError:
            return False
        return True

    def forget_unsaved(self) -> None:
        """Take away the text set aside: what stands in the file is newer."""
        with suppress(OSError):
            self._beside(UNSAVED).unlink()
            self._aside_of = ""
            self._beside(UNSAVED + OF).unlink()

    def left(self, text: str) -> str | None:
        """Return what an earlier session could not put into the file, None where nothing; ``text`` is the file's."""
        with suppress(OSError):
            if self._read(self._beside(UNSAVED)) not in {None, text}:
                self._to_past(self._beside(LEFT))
                os.replace(self._beside(UNSAVED), self._beside(LEFT))
                with suppress(OSError):
                    os.replace(self._beside(UNSAVED + OF), self._beside(LEFT + OF))
        found = self._read(self._beside(LEFT))
        return found if found != text else None

    def is_left_of(self, text: str) -> bool:
        """Return whether what an earlier session left was made of this text of the file."""
        return self._read(self._beside(LEFT + OF)) == hash_of(text.encode("utf-8"))

    def leave(self, text: str, of: str) -> None:
        """Put down what could not be joined with the text, for its owner to say; what was left before is put by.

        ``of`` is the text it was made of.
        """
        with suppress(OSError):
            self._to_past(self._beside(LEFT))
            self._put_aside(LEFT, text, is_on_disk=False)
            self._put_aside(LEFT + OF, hash_of(of.encode("utf-8")), is_on_disk=False)

    def put_by(self) -> None:
        """Put what an earlier session left among the past: its owner has said what becomes of it."""
        with suppress(OSError):
            self._to_past(self._beside(LEFT))
            self._beside(LEFT + OF).unlink()

    def _read(self, path: Path) -> str | None:
        try:
            return path.read_bytes().decode("utf-8", errors="replace") if path.stat().st_size <= MOST_BYTES else None
        except OSError:
            return None

    def _put_aside(self, what: str, text: str, *, is_on_disk: bool) -> None:
        """Write a text beside the rig file, for nobody's eyes that may not read the file itself."""
        self._folder().mkdir(exist_ok=True)
        aside = self._beside(what)
        beside = aside.with_name(f"{aside.name}.{'new' if is_on_disk else 'jot'}")
        written(beside, text.encode("utf-8"), self._mode(), is_on_disk)
        in_place(beside, aside)

    def _mode(self) -> int | None:
        """Return who may read the rig file, or might while it was there: what is kept beside it is for the same."""
        mode = mode_of(self.path)
        self._had = self._had if mode is None else mode
        return self._had

    def _to_past(self, path: Path) -> None:
        data = self._read(path)
        if data is not None:
            self.past.keep(data.encode("utf-8"), self._mode())
            path.unlink()

    def _folder(self) -> Path:
        return self.path.parent / FOLDER

    def _beside(self, what: str) -> Path:
        return self._folder() / f"{self.path.name}.{what}"
