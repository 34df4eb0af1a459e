"""An open rig and its file on the disk: when it is written, what happens when somebody else writes it. No clock here.

States: ``step`` text and file are the same; ``dirty`` a change waits to be written; ``broken`` the text does not read
as a whole and is kept beside the file until it does; ``conflict`` both were changed in the same lines; ``gone`` the
file is no longer there; ``read-only`` it cannot be written.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Literal

from boxwright.web.contract import Disk
from boxwright.web.gestures import Refused
from boxwright.web.keeping import CannotKeep, ChangedMeanwhile, Keeper, hash_of
from boxwright.web.merging import joined
from boxwright.web.offsets import as_in, shown_text
from boxwright.web.session import Change, Session

State = Literal["step", "dirty", "broken", "conflict", "gone", "read-only"]
WAIT = 0.4
"""How long (s) after the last change the file is written."""
RETRY = 5.0
"""How long (s) it rests before a file that could not be written is tried again."""
MOST_TEXT = 1_000_000
"""Characters beyond which a text is shown and judged here, but changed in an editor."""


class Desk:
    """One rig file, open. Raises ``CannotKeep`` when it cannot be read at all."""

    def __init__(self, path: Path, today: date) -> None:
        self.keeper = Keeper(path)
        data = self.keeper.opened()
        try:
            text = data.decode("utf-8")
            self._is_ours = self.keeper.can_write()
            self._why = "this account may not write the file"
        except UnicodeDecodeError:
            text, self._is_ours = data.decode("latin-1"), False
            self._why = "the file is not UTF-8; save it as UTF-8 in an editor to work on it here"
        self.session = Session(text, today)
        self._base = text
        """The text the file held when it was last read or written: both sides of a conflict began from it."""
        self.state: State = "step" if self._is_ours else "read-only"
        self._theirs: bytes = data
        self._changed_at = 0.0
        self.left = self.keeper.left(text) if self._is_ours else None
        """What an earlier session could not put into the file, until its owner says what becomes of it."""
        self._looked_at = self._failed_at = -RETRY

    @property
    def can_write(self) -> bool:
        """Return whether changes are taken at all."""
        return self._is_ours

    def must_take(self) -> None:
        """Refuse a change where none can be kept."""
        if not self._is_ours:
            raise Refused(self._why)

    def must_not_grow(self, grown: int) -> None:
        """Refuse what makes a text longer than is followed here; one that is too long may always be made shorter."""
        if grown > 0 and len(self.session.text) + grown > MOST_TEXT:
            raise Refused("a file longer than 1 MB is shown and judged here, but made longer in an editor of text only")

    def touched(self, at: float) -> None:
        """Say that the text was changed."""
        self._changed_at = at
        if self.state in {"step", "dirty", "broken"}:
            self.state = "dirty" if self.session.text != self._base else "step"
        if self.state == "step":
            self.keeper.forget_unsaved()
        else:
            self.keeper.jot(self.session.text)

    def is_due(self, at: float) -> bool:
        """Return whether the file is to be written now."""
        return self.state == "dirty" and at - self._changed_at >= WAIT and at - self._failed_at >= RETRY

    def write(self) -> Disk:
        """Write the text in place of the file, or say why it is not."""
        if self.session.document.is_damaged:
            self.keeper.set_aside(self.session.text)
            self.state = "broken"
            return self.told()
        try:
            self.keeper.keep(self.session.text)
            self._base, self.state = self.session.text, "step"
        except ChangedMeanwhile:
            pass  # the next look at the disk settles it
        except CannotKeep as reason:
            self.keeper.set_aside(self.session.text)
            self._failed_at = self._looked_at
            if self.keeper.seen().data is None:
                self.state = "gone"
            return self.told(str(reason))
        return self.told()

    def look(self, at: float) -> tuple[Disk | None, Change | None]:
        """Look at the file: take over what somebody else wrote, or join it, or say that both cannot stand.

        Returns what is to be told, None where nothing is new, and the change of the text that it brought.
        """
        self._looked_at = at
        seen = self.keeper.seen()
        if seen.data is None:
            if self.state == "gone":
                return None, None
            self.keeper.set_aside(self.session.text)
            self.state = "gone"
            return self.told(seen.says), None
        if seen.hash == self.keeper.known:
            if self.state in {"gone", "conflict"}:  # it is back, or somebody took their change back
                self._calm(at)
                return self.told(), None
            return None, None
        try:
            theirs = seen.data.decode("utf-8")
        except UnicodeDecodeError:
            return self._in_conflict(seen.data), None
        mine = self.session.text
        together = joined(self._base, mine, theirs)
        if together is None:
            return self._in_conflict(seen.data), None
        self.keeper.known, self._base = seen.hash, theirs
        change = self.session.take(together, at)
        self._calm(at)
        return self.told("the file was changed on the disk and taken over" if change else ""), change

    def _calm(self, at: float) -> None:
        """Say that nothing stands against the text any more."""
        self.state = "step"
        if self._is_ours:
            self.touched(at)
        else:
            self.state = "read-only"

    def _in_conflict(self, data: bytes) -> Disk | None:
        if self.state == "conflict" and data == self._theirs:
            return None
        self._theirs, self.state = data, "conflict"
        self.keeper.set_aside(self.session.text)
        return self.told()

    def resolve(self, text: str, answers: str, at: float) -> Change | None:
        """End a conflict with a text; ``answers`` is the hash of the version on disk that was looked at.

        Raises ChangedMeanwhile where that one is no longer there.
        """
        seen = self.keeper.seen()
        if self.state != "conflict" or seen.data is None:
            raise Refused("there is no conflict to end")
        if seen.hash != answers:
            self._theirs = seen.data
            raise ChangedMeanwhile(seen.data)
        change = self.session.take(as_in(self.session.text, text), at)
        self.keeper.known, self._base, self.state = seen.hash, seen.data.decode("utf-8", "replace"), "dirty"
        self.keeper.jot(self.session.text)
        self._changed_at = at - WAIT
        return change

    def recover(self, is_taken: bool, at: float) -> Change | None:
        """Take what an earlier session left as the text, or leave it; either way it is kept among the past."""
        if self.left is None:
            raise Refused("nothing was left by an earlier session")
        change = self.session.take(self.left, at) if is_taken else None
        self.left = None
        self.keeper.put_by()
        self.touched(at)
        return change

    def write_again(self) -> Disk:
        """Write a file that has vanished."""
        try:
            self.keeper.keep(self.session.text, is_again=True)
            self._base, self.state = self.session.text, "step"
        except (CannotKeep, ChangedMeanwhile) as reason:
            return self.told(str(reason))
        return self.told()

    def told(self, says: str = "") -> Disk:
        """Return how the file stands, for the page."""
        name = self.keeper.path.name
        words = {
            "step": f"{name} in step with the disk",
            "dirty": f"{name} is being written",
            "broken": f"{name} does not read as a whole yet; what you typed is kept beside it",
            "conflict": f"{name} was changed on the disk in the same lines; choose which stand",
            "gone": f"{name} is no longer there; what you have is kept here",
            "read-only": self._why,
        }
        is_conflict = self.state == "conflict"
        return Disk(
            t="disk",
            state=self.state,
            says=says or words[self.state],
            hash=hash_of(self._theirs) if is_conflict else self.keeper.known,
            text=shown_text(self._theirs.decode("utf-8", "replace")) if is_conflict else None,
        )
