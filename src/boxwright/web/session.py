"""One open rig: its text, which is the only state, and everything that follows from it. No socket and no clock here.

Every change of the text is one replaced stretch, so that undo, the editor of another tab and a late edit of a third
all speak of the same thing. A preview changes nothing: it is read, worked out, answered and forgotten.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from boxwright.book.answer import slot_of
from boxwright.finding import Use
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.document import Document
from boxwright.rig.keys import KNOWN_KEYS
from boxwright.rig.read import edited, read_document
from boxwright.study.bench import edited_by
from boxwright.study.moves import Edit
from boxwright.study.once import Once
from boxwright.study.slots import Study, study
from boxwright.web import gestures
from boxwright.web.contract import Slot, TextChange
from boxwright.web.gestures import Refused
from boxwright.web.offsets import as_in, to_editor, to_text

MOST_UNDO = 500
MOST_REMEMBERED = 100
"""How many revisions back an edit may be based on."""
PAUSE = 1.0
"""Typing that rests longer than this (s) is a step of its own to undo."""


@dataclass(frozen=True, slots=True)
class Change:
    """A stretch of text that was replaced: where it began, what stood there, what stands there now."""

    start: int
    old: str
    new: str

    @property
    def inverse(self) -> Change:
        """Return the change that takes this one back."""
        return Change(self.start, self.new, self.old)


@dataclass(slots=True)
class Step:
    """What one undo takes back: one gesture, or typing without a rest. ``at`` is when it last grew (s)."""

    changes: list[Change]
    is_typing: bool
    at: float


@dataclass(frozen=True, slots=True)
class Seen:
    """A study of one revision, as one tab looks at it."""

    reading: Reading
    study: Study
    slot: Slot


class Session:
    """An open rig text with its undo. Methods that change it raise ``Refused`` and then have changed nothing."""

    def __init__(self, text: str, today: date) -> None:
        self.today = today
        self.rev = 0
        self.once = Once()
        self._composer = Composer()
        self.document = read_document(text, known_keys=KNOWN_KEYS)
        self.reading = self._composer.compose(self.document)
        self._undo: deque[Step] = deque(maxlen=MOST_UNDO)
        self._redo: list[Step] = []
        self._past: deque[tuple[int, Change, Document, bool]] = deque(maxlen=MOST_REMEMBERED)
        self._seen: dict[Slot, Study] = {}

    @property
    def text(self) -> str:
        """Return the whole text."""
        return self.document.text

    @property
    def depth(self) -> tuple[int, int]:
        """Return how many steps can be taken back and how many done again."""
        return len(self._undo), len(self._redo)

    # ------------------------------------------------------------------ what follows from the text

    def seen(self, slot: Slot) -> Seen:
        """Return the rig worked out at the stage a tab looks at, in every load state and use."""
        if slot not in self._seen:
            self._seen[slot] = self._studied(self.reading, slot, None)
        return Seen(self.reading, self._seen[slot], slot)

    def turn_to(self, today: date) -> None:
        """Judge by another day from now on."""
        self.today = today
        self._seen.clear()

    def everywhere(self, slot: Slot) -> Study:
        """Return the rig worked out from the first stage on; for what is drawn over the stages."""
        return study(self.reading.rig, self.today, once=self.once, all_stages=True, vehicle=self._vehicle(slot))

    def preview(
        self, of: str, shift: tuple[float, float, float], base: int, slot: Slot, use: Use | None = None
    ) -> Seen:
        """Return the rig as it would be with a thing moved, in the load state looked at; the text stays as it is.

        With a ``use`` it is worked out for that one alone.
        """
        self._must_be_as_at(base, of)
        shown = slot_of(self.seen(slot).study, "tow", slot.load)
        document = gestures.moved(self.document, self.reading.rig, of, shift)
        reading = self._composer.compose(document)
        return Seen(reading, self._studied(reading, slot, slot.load or (shown.load if shown else None), use), slot)

    def _studied(self, reading: Reading, slot: Slot, load: str | None, use: Use | None = None) -> Study:
        rig = reading.rig
        number = rig.stage_number(slot.stage) if slot.stage else None
        stage = rig.header.stage_today if number is None else number
        known = load if load is not None and any(state.name == load for state in rig.loads) else None
        return study(rig, self.today, stage=stage, load=known, use=use, once=self.once, vehicle=self._vehicle(slot),
                     ticked=number is None)  # fmt: skip

    def _vehicle(self, slot: Slot) -> str:
        return slot.vehicle if any(name == slot.vehicle for name, _ in self.reading.rig.tow) else ""

    # ------------------------------------------------------------------ changes

    def move(self, of: str, shift: tuple[float, float, float], base: int, at: float) -> Change:
        """Move a thing for good. Refuses what would then lie where no part of a trailer lies."""
        self._must_be_as_at(base, of)
        document = gestures.moved(self.document, self.reading.rig, of, shift)
        gestures.must_stay_near(self.reading.rig, self._composer.compose(document).rig)
        return self._become(document, at)

    def set(self, path: str, value: str, base: int, at: float) -> Change:
        """Write one value."""
        self._must_be_as_at(base, path)
        return self._become(gestures.written(self.document, path, value), at)

    def add(self, section: str, name: str, entries: dict[str, str], at: float) -> Change:
        """Add a thing."""
        return self._become(gestures.added(self.document, section, name, entries), at)

    def copy(self, of: str, name: str, base: int, at: float) -> Change:
        """Add a thing once more."""
        self._must_be_as_at(base, of)
        return self._become(gestures.copied(self.document, of, name), at)

    def take_out(self, of: str, base: int, at: float) -> Change:
        """Take a thing out."""
        self._must_be_as_at(base, of)
        return self._become(gestures.taken_out(self.document, of), at)

    def rename(self, of: str, name: str, base: int, at: float) -> Change:
        """Give a thing another name, everywhere."""
        self._must_be_as_at(base, of)
        return self._become(gestures.renamed(self.document, of, name), at)

    def turn(self, of: str, base: int, at: float) -> Change:
        """Turn a thing by a quarter."""
        self._must_be_as_at(base, of)
        return self._become(gestures.turned(self.document, of), at)

    def write_all(self, values: Sequence[tuple[str, str]], at: float) -> Change:
        """Write several values as one step: a change that was offered."""
        document = edited_by(self.document, [Edit(*one) for one in values])
        if document is None:
            raise Refused("it cannot be written as it was proved; seek it again")
        return self._become(document, at)

    def accept(self, code: str, where: str, note: str, number: str, at: float) -> Change:
        """Write that the owner accepts a finding."""
        return self._become(gestures.accepted(self.document, code, where, note, number, self.today), at)

    def type(self, changes: Sequence[TextChange], base: int, at: float) -> list[Change]:
        """Take over what was typed in the editor, its places those of the text at ``base``."""
        made: list[Change] = []
        before = self.text_at(base)
        stretches = [(to_text(before, one.start), to_text(before, one.end), as_in(before, one.insert))
                     for one in sorted(changes, key=lambda one: (one.start, one.end))]  # fmt: skip
        edges = [edge for start, end, _ in stretches for edge in (start, end)]
        if edges != sorted(edges):
            raise Refused("what was typed does not fit the text; look at it again")
        moved = [(self._carried(start, end, base), insert) for start, end, insert in reversed(stretches)]
        for (start, end), insert in moved:
            change = Change(start, self.text[start:end], insert)
            self._do(change)
            made.append(change)
        self._remember(Step(made, True, at))
        return made

    def take(self, text: str, at: float) -> Change | None:
        """Become another text as a whole, as one step; None where it is the same."""
        if text == self.text:
            return None
        return self._become(read_document(text, known_keys=KNOWN_KEYS), at, is_foreign=True)

    def become(self, document: Document, at: float) -> Change:
        """Become a document that was made of this one, as one step."""
        return self._become(document, at)

    def undo(self) -> list[Change]:
        """Take back the last step."""
        if not self._undo:
            raise Refused("there is nothing to take back")
        step = self._undo.pop()
        made = [self._do(change.inverse) for change in reversed(step.changes)]
        self._redo.append(step)
        return made

    def redo(self) -> list[Change]:
        """Do again what was last taken back."""
        if not self._redo:
            raise Refused("there is nothing to do again")
        step = self._redo.pop()
        made = [self._do(change) for change in step.changes]
        self._undo.append(step)
        return made

    # ------------------------------------------------------------------ how a change is made

    def _become(self, document: Document, at: float, is_foreign: bool = False) -> Change:
        change = _between(self.text, document.text)
        if change.old == change.new:
            return change  # nothing changed: no step to take back, and no new revision
        self._do(change, document, is_foreign)
        self._remember(Step([change], False, at))
        return change

    def _do(self, change: Change, document: Document | None = None, is_foreign: bool = False) -> Change:
        before = self.document
        if document is None:
            document = edited(before, change.start, change.start + len(change.old), change.new)
        self.document = document
        self.reading = self._composer.compose(document)
        self.rev += 1
        self._past.append((self.rev, change, before, is_foreign))
        self._seen.clear()
        return change

    def _remember(self, step: Step) -> None:
        self._redo.clear()
        last = self._undo[-1] if self._undo else None
        if step.is_typing and last is not None and last.is_typing and step.at - last.at <= PAUSE:
            last.changes += step.changes
            last.at = step.at
        else:
            self._undo.append(step)

    def _must_be_as_at(self, base: int, path: str) -> None:
        """Refuse an edit of a thing that somebody else has changed since the page showed it."""
        if base == self.rev:
            return
        then = self._document_at(base)
        if then.find(path) is not None and self.document.find(path) is None:
            name = path.partition("[")[2].partition("]")[0] or path
            raise Refused(f"{name} was taken out in the meantime")
        now, before = self.document.span(path), then.span(path)
        if self.text[slice(*now)] != then.text[slice(*before)]:
            raise Refused("it was changed in the meantime; look at it again")

    def _document_at(self, base: int) -> Document:
        for rev, _, before, _ in self._past:
            if rev == base + 1:
                return before
        if base == self.rev:
            return self.document
        raise Refused("that is too long ago; look at it again")

    def text_at(self, base: int) -> str:
        """Return the text at an earlier revision; refuses one that is too long ago."""
        return self._document_at(base).text

    def _carried(self, start: int, end: int, base: int) -> tuple[int, int]:
        """Return a stretch of the text at ``base`` as it lies now; refuses one that was changed since.

        What another program wrote into the same line is not joined with what was typed there: a digit before a number
        that has become another one would be neither's.
        """
        for rev, change, before, is_foreign in self._past:
            if rev <= base:
                continue
            grown = len(change.new) - len(change.old)
            if is_foreign and _shares_a_line(before.text, change, start, end):
                raise Refused("that line was changed in the meantime; look at it again")
            if change.start + len(change.old) <= start:
                start, end = start + grown, end + grown
            elif change.start < end or (change.start == start and change.start < end):
                raise Refused("that line was changed in the meantime; look at it again")
        return start, end

    def for_editor(self, changes: Sequence[Change], before: str) -> list[TextChange]:
        """Return changes as an editor counts, each in the text the one before it left; ``before`` is the first."""
        told: list[TextChange] = []
        text = before
        for one in changes:
            start, end = to_editor(text, one.start), to_editor(text, one.start + len(one.old))
            told.append(TextChange(start=start, end=end, insert=one.new.replace("\r\n", "\n")))
            text = text[: one.start] + one.new + text[one.start + len(one.old) :]
        return told


def _shares_a_line(text: str, change: Change, start: int, end: int) -> bool:
    """Return whether a change touches a line of a stretch, both counted in the text before the change."""
    first, last = text.rfind("\n", 0, start) + 1, text.find("\n", end)
    return change.start <= (last if last >= 0 else len(text)) and change.start + len(change.old) >= first


def _between(before: str, after: str) -> Change:
    """Return the shortest stretch whose replacement turns one text into the other."""
    most = min(len(before), len(after))
    start = 0
    while start < most and before[start] == after[start]:
        start += 1
    if start and before[start - 1] == "\r":
        start -= 1  # a line end of two characters is never cut through: an editor knows it as one
    end = 0
    while end < most - start and before[-1 - end] == after[-1 - end]:
        end += 1
    # Nor is one at its other end; any other line end stays outside, so that typing at the end of a line stays in it.
    if end and before[-end] == "\n" and "\r" in (before[-1 - end : -end], after[-1 - end : -end]):
        end -= 1
    return Change(start, before[start : len(before) - end], after[start : len(after) - end])
