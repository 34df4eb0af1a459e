"""An open rig and its file on the disk: when it is written, what happens when somebody else writes it. No clock here.

States: ``step`` text and file are the same; ``dirty`` a change waits to be written; ``broken`` the text does not read
as a whole and is kept beside the file until it does; ``conflict`` both were changed in the same lines; ``gone`` the
file is no longer there; ``read-only`` it cannot be written.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Literal

from boxwright.records import dataclass
from boxwright.web.contract import Disk, TextChange, Typed
from boxwright.web.gestures import Refused
from boxwright.web.keeping import CannotKeep, ChangedMeanwhile, Keeper, hash_of
from boxwright.web.merging import joined, with_hunks_of
from boxwright.web.offsets import as_in, shown_text, to_text
from boxwright.web.session import Change, Session

State = Literal["step", "dirty", "broken", "conflict", "gone", "read-only"]
WAIT = 0.4
"""How long (s) after the last change the file is written."""
RETRY = 5.0
"""How long (s) it rests before a file that could not be written is tried again."""
MOST_TEXT = 1_000_000
"""Characters beyond which a text is shown and judged here, but changed in an editor."""


@dataclass(frozen=True, slots=True)
class Put:
    """A text on its way to the disk; ``is_damaged`` is kept beside the file, ``is_again`` may make the file anew."""

    text: str
    is_damaged: bool
    is_again: bool


@dataclass(frozen=True, slots=True)
class Failed:
    """Why a text did not get to the disk; ``is_gone`` where the file is not there, empty words where it was changed.

    ``is_aside`` tells whether it stands beside the file instead.
    """

    says: str = ""
    is_gone: bool = False
    is_aside: bool = True


@dataclass(frozen=True, slots=True)
class Left:
    """What taking up what was left comes to: the text, whether nothing done since is undone by it, the revision."""

    text: str
    is_sure: bool
    rev: int


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
        """What could not be put into the file, until its owner says what becomes of it."""
        self._left_of = text if self.left is not None and self.keeper.is_left_of(text) else None
        """The text that what is left was made of, None where nobody knows."""
        self._left_by = "an earlier session left changes"
        self._looked_at = self._failed_at = -RETRY
        self._gone = ""
        """What became of the file, while it cannot be read."""
        self._stuck = ""
        """Why the text cannot be put down, while that is so."""
        self.is_putting = False
        """Whether a text is on its way to the disk: what the file holds is then for nobody to judge."""

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
        if self.state == "step" and not self.is_putting:
            self._stuck = ""
            self.keeper.forget_unsaved()
        else:
            self.keeper.jot(self.session.text)

    def is_due(self, at: float) -> bool:
        """Return whether the file is to be written now."""
        rested = at - self._changed_at >= WAIT and at - self._failed_at >= RETRY
        return self.state == "dirty" and rested and not self.is_putting

    def write(self, is_again: bool = False) -> Disk:
        """Write the text in place of the file, or say why it is not."""
        put = self.begun(is_again)
        return self.ended(put, self.put(put))

    def begun(self, is_again: bool = False) -> Put:
        """Return the text as it is now, to be put on the disk; until that has ended nobody looks there."""
        self.is_putting = True
        return Put(self.session.text, self.session.document.is_damaged and not is_again, is_again)

    def put(self, put: Put) -> Failed | None:
        """Put a text on the disk and return why it did not get there. May run beside everything else."""
        if put.is_damaged:
            self.keeper.set_aside(put.text)
            return None
        try:
            self.keeper.keep(put.text, put.is_again)
        except ChangedMeanwhile:
            return Failed()  # the next look at the disk settles it
        except CannotKeep as reason:
            is_aside = self.keeper.set_aside(put.text)
            return Failed(str(reason), self.keeper.seen().data is None, is_aside)
        return None

    def ended(self, put: Put, failed: Failed | None) -> Disk:
        """Take note that a text is on the disk, or why not; it may have been changed again meanwhile."""
        self.is_putting = False
        is_newest = self.session.text == put.text
        if not is_newest:
            self.keeper.jot(self.session.text)  # an older one may just have been kept in its place
        if failed is not None:
            self._failed_at = self._looked_at if failed.says else self._failed_at
            if failed.is_gone:
                self.state, self._gone = "gone", failed.says
            where = "beside the file" if failed.is_aside else "in this page and its program only: save a copy elsewhere"
            self._stuck = f"{failed.says}. It is tried again; what you have is kept {where}" if failed.says else ""
            return self.told()
        self._stuck = ""
        if put.is_damaged:
            self.state = "broken" if is_newest else self.state
            return self.told()
        self._base, self.state = put.text, "step" if is_newest else "dirty"
        if is_newest:
            self.keeper.forget_unsaved()
        return self.told()

    def look(self, at: float) -> tuple[Disk | None, Change | None]:
        """Look at the file: take over what somebody else wrote, or join it, or say that both cannot stand.

        Returns what is to be told, None where nothing is new, and the change of the text that it brought.
        """
        if self.is_putting:
            return None, None
        self._looked_at = at
        seen = self.keeper.seen()
        if seen.data is None:
            if self.state == "gone" and self._gone.startswith(seen.says):
                return None, None
            self.keeper.jot(self.session.text)
            self.state, self._gone = "gone", seen.says
            return self.told(), None
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
        self.keeper.jot(self.session.text)
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

    def offered(self) -> Left:
        """Return what taking up what was left comes to; sure where it undoes nothing that was done since."""
        if self.left is None:
            raise Refused("nothing is left to take up")
        now = self.session.text
        together = joined(self._left_of, now, self.left) if self._left_of is not None else None
        if together is not None:
            return Left(together, True, self.session.rev)
        beside = with_hunks_of(self._left_of, now, self.left) if self._left_of is not None else self.left
        return Left(beside, beside == now, self.session.rev)

    def recover(self, is_taken: bool, at: float, chosen: str | None = None, rev: int = -1) -> Change | None:
        """Take up what was left, or leave it; either way it is kept among the past.

        ``chosen`` is the text its owner put together of both, looking at revision ``rev``. Raises Refused where both
        were to be looked at first, or the text was changed since.
        """
        offered = self.offered()
        if is_taken and chosen is None and not offered.is_sure:
            raise Refused("other changes were made since; look at both first")
        if is_taken and chosen is not None and rev != offered.rev:
            raise Refused("the text was changed in the meantime; look at both again")
        taken = offered.text if chosen is None else as_in(self.session.text, chosen)
        change = self.session.take(taken, at) if is_taken else None
        self.left = None
        self.keeper.put_by()
        self.touched(at)
        return change

    def rejoined(self, typed: Typed, at: float) -> Change | None:
        """Take up what was typed into an earlier text; where both cannot stand it is kept for its owner to say.

        Both texts are those an editor holds; what was sent may have come in already, or not.
        """
        known = typed.known if typed.known is not None else shown_text(self.session.text_at(typed.base))
        sent = _typed_into(known, typed.under)
        mine, now = _typed_into(sent, typed.waits), shown_text(self.session.text)
        if self.left is not None and shown_text(self.left) in {known, sent} and self.left != self.session.text:
            self._leave(mine, shown_text(self._left_of) if self._left_of is not None else known)  # it goes on from that
            return None
        text = mine if now in {known, sent} else joined(known, mine, now)
        if text is None or len(text) > max(MOST_TEXT, len(now)):
            self._leave(mine, known)
            return None
        change = self.session.take(as_in(self.session.text, text), at)
        if change is not None:
            self.touched(at)
        return change

    @property
    def left_says(self) -> str:
        """Return what was left, in words; empty where nothing was."""
        return f"{self._left_by} that are not in {self.keeper.path.name}" if self.left is not None else ""

    def _leave(self, text: str, of: str) -> None:
        self._left_by = "what was typed meets changes of the same lines; it is kept as changes"
        self.left, self._left_of = as_in(self.session.text, text), as_in(self.session.text, of)
        self.keeper.leave(self.left, self._left_of)

    def bring_back(self, name: str, at: float) -> Change | None:
        """Make an earlier text of the file the text, as one step."""
        data = self.keeper.past.read(name)
        if data is None:
            raise Refused("that text is not kept any more; look at the list again")
        return self.session.take(data.decode("utf-8", "replace"), at)

    def told(self, says: str = "") -> Disk:
        """Return how the file stands, for the page."""
        name = self.keeper.path.name
        words = {
            "step": f"{name} in step with the disk",
            "dirty": f"{name} is being written",
            "broken": f"{name} does not read as a whole yet; what you typed is kept beside it",
            "conflict": f"{name} was changed on the disk in the same lines; choose which stand",
            "gone": f"{self._gone or f'{name} is no longer there'}; what you have is kept here",
            "read-only": self._why,
        }
        is_conflict = self.state == "conflict"
        is_stuck = self.state == "dirty" and self._stuck != ""
        return Disk(
            t="disk",
            state="stuck" if is_stuck else self.state,
            says=says or (self._stuck if is_stuck else words[self.state]),
            hash=hash_of(self._theirs) if is_conflict else self.keeper.known,
            text=shown_text(self._theirs.decode("utf-8", "replace")) if is_conflict else None,
        )


def _typed_into(text: str, changes: Sequence[TextChange]) -> str:
    """Return a text with what was typed into it, the places all those of the text before."""
    for one in sorted(changes, key=lambda one: (one.start, one.end), reverse=True):
        text = text[: to_text(text, one.start)] + shown_text(one.insert) + text[to_text(text, one.end) :]
    return text
