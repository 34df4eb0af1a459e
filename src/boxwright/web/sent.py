"""What a page sends: closed messages, told apart by ``t``. `contract` tells what they have in common."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

Shift = Annotated[float, Field(ge=-100_000.0, le=100_000.0, allow_inf_nan=False)]
"""How far a hand moved something (mm): no hand moves it farther than a hundred metres."""


class Message(BaseModel):
    """A closed message: a field that nobody named is refused."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class Slot(Message):
    """What a tab looks at. ``stage`` empty is today as ticked, else a stage as planned; ``load`` and ``vehicle`` empty
    take the first."""

    stage: str = ""
    load: str = ""
    vehicle: str = ""


class Sent(Message):
    """Anything a page sends. ``base`` is the revision it showed when the hand moved, ``seq`` its own count."""

    seq: int
    base: int


class Hello(Sent):
    """The first word of a page; ``page`` is a name it made up, by which its last word is told to be its own."""

    t: Literal["hello"]
    page: str = Field(default="", max_length=40)
    contract: int
    screen: str
    slot: Slot
    locale: str = "en"


class Look(Sent):
    """Another screen, or another slot: answered by ``numbers``; the page fetches the screen by its address."""

    t: Literal["look"]
    screen: str
    slot: Slot


class Move(Sent):
    """A preview: how far the thing is from where it stands at ``base``. Stored nowhere; the newest replaces older."""

    t: Literal["move"]
    of: str
    x_mm: Shift = 0.0
    y_mm: Shift = 0.0
    z_mm: Shift = 0.0


class Cancel(Sent):
    """The preview is over; nothing was changed."""

    t: Literal["cancel"]


class Drop(Sent):
    """The end of a drag, or a nudge: one edit, never coalesced."""

    t: Literal["drop"]
    of: str
    x_mm: Shift = 0.0
    y_mm: Shift = 0.0
    z_mm: Shift = 0.0


class Set(Sent):
    """One field written, or written anew; an empty value is refused."""

    t: Literal["set"]
    path: str
    value: str


class Add(Sent):
    """A new thing with its first entries."""

    t: Literal["add"]
    section: str
    name: str
    entries: dict[str, str] = Field(default_factory=dict)


class Copy(Sent):
    """A thing once more, beside itself, under a free name that the program finds where ``name`` is empty."""

    t: Literal["copy"]
    of: str
    name: str = ""


class TakeOut(Sent):
    """A thing taken out."""

    t: Literal["take-out"]
    of: str


class Rename(Sent):
    """Another name for a thing, everywhere."""

    t: Literal["rename"]
    of: str
    name: str


class Turn(Sent):
    """A quarter turn about the upright axis: length and width of the thing change places, the placed
    corner stays."""

    t: Literal["turn"]
    of: str


class Seek(Sent):
    """Look for the smallest proved change that clears a finding in its load state and use; answered by ``offered``."""

    t: Literal["seek"]
    code: str
    where: str
    load: str
    use: str


class Apply(Sent):
    """Make the change that was offered for a finding, as one step that can be undone.

    ``load`` and ``use`` are those of the finding; stage and tow vehicle are those the page looks at.
    """

    t: Literal["apply"]
    code: str
    where: str
    load: str
    use: str


class Accept(Sent):
    """The owner has seen a finding and lives with it; refused for a stop."""

    t: Literal["accept"]
    code: str
    where: str
    note: str


class TextChange(Message):
    """Characters ``start`` to ``end`` of the text at ``base`` give way to ``insert``. Counted in UTF-16 units, as the
    browser counts."""

    start: int
    end: int
    insert: str


class TextEdit(Sent):
    """What was typed in the editor."""

    t: Literal["text"]
    changes: list[TextChange]


class Typed(Message):
    """What was typed and not answered: sent (``under``), then not sent yet (``waits``, in places of the text after it).

    The text it was typed into is ``known``, or that of revision ``base``.
    """

    base: int = 0
    known: str | None = None
    under: list[TextChange]
    waits: list[TextChange]


class Rejoin(Sent):
    """What was typed while the line was lost, or refused: joined with the text as it is now, or kept for its owner."""

    t: Literal["rejoin"]
    typed: Typed


class BringBack(Sent):
    """Make an earlier text of the file the text, as one step that can be undone."""

    t: Literal["bring-back"]
    name: str


class EnterReading(Sent):
    """Something that was weighed, taped or measured, put down as an entry of its own."""

    t: Literal["enter-reading"]
    kind: str
    values: dict[str, str]


class WriteMeasures(Sent):
    """The first measures of the trailer, as they were typed into their form: one step."""

    t: Literal["write-measures"]
    values: dict[str, str]


class Undo(Sent):
    """Take back the last step."""

    t: Literal["undo"]


class Redo(Sent):
    """Do again what was taken back."""

    t: Literal["redo"]


class Resolve(Sent):
    """The end of a conflict: the whole text wanted, and the version on disk that it answers."""

    t: Literal["resolve"]
    disk_hash: str
    text: str


class KeepWriting(Sent):
    """The file is gone and the text shall be written again under its name."""

    t: Literal["write-again"]


class Begin(Sent):
    """On the first page: open a demo as a copy of one's own, or a starter from a few answers."""

    t: Literal["begin"]
    demo: str = ""
    answers: dict[str, str] = Field(default_factory=dict)


class Recover(Sent):
    """What becomes of the text an earlier session left: ``take`` makes it the text as one step, else it is put by.

    ``text`` is what was put together of both, looking at revision ``rev``.
    """

    t: Literal["recover"]
    take: bool
    text: str | None = None
    rev: int = -1


Up = Annotated[
    Hello
    | Look
    | Move
    | Cancel
    | Drop
    | Set
    | Add
    | Copy
    | TakeOut
    | Rename
    | Turn
    | Seek
    | Apply
    | Accept
    | TextEdit
    | Rejoin
    | BringBack
    | EnterReading
    | WriteMeasures
    | Undo
    | Redo
    | Resolve
    | KeepWriting
    | Recover
    | Begin,
    Field(discriminator="t"),
]


class Leaving(Message):
    """The last word of a page that is closed: what it was not answered yet, in the order it was done."""

    page: str = Field(max_length=40)
    edits: list[Up] = Field(max_length=200)
    typed: Typed | None = None
