"""What page and program say to each other over the one socket: closed messages, told apart by ``t``.

Lengths go up and down in millimetres, in the rig's own axes (x rearward, y to the right, z up). Everything that is
shown comes ready as text in the units of the rig file: the page converts nothing and words nothing of its own about
the rig. ``rev`` counts the accepted edits of a session, ``seq`` those of one tab.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

CONTRACT = 1
"""Raised whenever a message changes: a page from before is told to load itself again."""

Group = Literal["draw", "work-out", "on-file"]
Kind = Literal["stop", "limit", "fix", "unknown", "advice"]
AnswerWord = Literal["go", "limits", "ask", "no"]
Axis = Literal["x", "y", "z"]
Along = Literal["+x", "-x", "+y", "-y"]
Upward = Literal["+y", "+z"]


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


# ---------------------------------------------------------------- from the page


class Sent(Message):
    """Anything a page sends. ``base`` is the revision it showed when the hand moved, ``seq`` its own count."""

    seq: int
    base: int


class Hello(Sent):
    """The first word of a page."""

    t: Literal["hello"]
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
    """Look for the smallest proved change that clears a finding; answered by ``offered``."""

    t: Literal["seek"]
    code: str
    where: str


class Apply(Sent):
    """Make the change that was offered for a finding, as one step that can be undone."""

    t: Literal["apply"]
    code: str
    where: str


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
    """What becomes of the text an earlier session left: ``take`` makes it the text as one step, else it is put by."""

    t: Literal["recover"]
    take: bool


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
    | Undo
    | Redo
    | Resolve
    | KeepWriting
    | Recover
    | Begin,
    Field(discriminator="t"),
]

# ---------------------------------------------------------------- from the program


class Choice(Message):
    """One thing that can be chosen; ``name`` goes into the message, ``label`` on the screen."""

    name: str
    label: str


class Ask(Message):
    """One question of the first page; every answer may be left out."""

    name: str
    label: str
    explains: str


class ScreenName(Message):
    """A screen of the rail."""

    name: str
    label: str
    group: Group
    explains: str = ""


class State(Message):
    """On hello, after a reconnect, and whenever one of these changes. ``has_file`` False shows the first page.

    ``left`` says that an earlier session left a text that is not in the file; ``recover`` answers it.
    """

    t: Literal["state"]
    rev: int
    has_file: bool
    file: str
    rig: str
    undo: int
    redo: int
    can_write: bool
    stages: list[Choice]
    loads: list[Choice]
    vehicles: list[Choice]
    slot: Slot
    screens: list[ScreenName]
    demos: list[Choice] = Field(default_factory=list)
    asks: list[Ask] = Field(default_factory=list)
    left: str = ""


class Figure(Message):
    """A number as it is shown. ``text`` carries number and band, ``unit`` the word after it; ``kind`` that of the
    gravest finding about it. ``path`` opens its working."""

    key: str
    label: str
    text: str
    unit: str
    band: str = ""
    kind: Kind | None = None
    path: str = ""
    explains: str = ""


class Reaction(Message):
    """A force of the balance drawing: where it stands (mm from the front wall) and how heavy, for the length of its
    bar (kg), with its text."""

    label: str
    x_mm: float
    kg: float
    text: str
    is_down: bool = False


class Balance(Message):
    """The trailer as a beam: the box from ``front_mm`` to ``rear_mm``, weights down, reactions up, one scale."""

    front_mm: float
    rear_mm: float
    coupler_mm: float
    reactions: list[Reaction]
    says: str


class Answer(Message):
    """The answer for one use, in words."""

    use: str
    label: str
    word: AnswerWord
    says: list[str]
    act: str
    questions: list[str] = Field(default_factory=list)


class Working(Message):
    """How a number comes about: formula, numbers put in, result, source, and published checks of the method."""

    formula: str
    put_in: str
    result: str
    source: str
    checks: list[str] = Field(default_factory=list)


class ShownFinding(Message):
    """A finding as it is shown. ``screen`` is where its thing is drawn, ``remedy`` the change proved for it."""

    code: str
    where: str
    use: str
    kind: Kind
    word: str
    says: str
    act: str
    source: str
    line: int | None
    column: int | None
    screen: str
    remedy: str = ""
    may_seek: bool = False
    may_accept: bool = False
    working: list[Working] = Field(default_factory=list)


class ShownProblem(Message):
    """What could not be read, with its stretch of text."""

    line: int
    column: int
    end_line: int
    end_column: int
    path: str
    says: str
    kind: Literal["problem", "note"]


class Numbers(Message):
    """What follows from the text, or from what the hand holds (``preview``). ``stale`` names what is still of an
    earlier revision."""

    t: Literal["numbers"]
    seq: int
    rev: int
    preview: bool
    answers: list[Answer]
    figures: list[Figure]
    balance: Balance | None
    findings: list[ShownFinding] | None
    accepted: list[ShownFinding] | None = None
    problems: list[ShownProblem] | None = None
    held: list[Figure] = Field(default_factory=list)
    stale: list[str] = Field(default_factory=list)


class Patch(Message):
    """Groups of a sheet drawn anew, by their rig path; ``whole`` tells the page to fetch the screen again."""

    t: Literal["patch"]
    rev: int
    screen: str
    sheet: str
    groups: dict[str, str] = Field(default_factory=dict)
    gone: list[str] = Field(default_factory=list)
    whole: bool = False


class TextIs(Message):
    """An edit made elsewhere, for the editor; with ``text`` the whole text instead.

    ``length`` is that of the whole text as an editor counts, so that a page that lost step notices.
    """

    t: Literal["text"]
    rev: int
    length: int
    changes: list[TextChange] = Field(default_factory=list)
    text: str | None = None


class Disk(Message):
    """How the file stands: ``step`` in step, ``dirty`` not yet written, ``broken`` text that does not parse is kept
    beside it, ``conflict`` and ``gone``."""

    t: Literal["disk"]
    state: Literal["step", "dirty", "broken", "conflict", "gone", "read-only"]
    says: str
    hash: str = ""
    text: str | None = None


class Slow(Message):
    """How far something is that takes longer."""

    t: Literal["slow"]
    job: str
    done: float
    rev: int


class No(Message):
    """An edit refused, with why: the page puts things back where they stand."""

    t: Literal["no"]
    seq: int
    why: str


class Offered(Message):
    """The change found for a finding: what it writes, what it clears; ``remedy`` empty where none was found."""

    t: Literal["offered"]
    seq: int
    code: str
    where: str
    remedy: str
    says: str


class Reload(Message):
    """The page is older than the program: load it again."""

    t: Literal["reload"]


Down = Annotated[
    State | Numbers | Patch | TextIs | Disk | Slow | No | Offered | Reload,
    Field(discriminator="t"),
]

# ---------------------------------------------------------------- fetched by address


class Snap(Message):
    """A line a dragged thing catches on: a stud, a wall's face, the edge of a neighbour."""

    axis: Axis
    mm: float
    label: str


class Picture(Message):
    """One view as SVG text, in millimetres of the rig. ``right`` and ``up`` say which axis of the rig runs along the
    picture's, with its sign. ``movable`` lists the rig paths whose groups (``data-of``) may be dragged, ``off`` the
    layers that are shown on demand only."""

    name: str
    title: str
    svg: str
    view: tuple[float, float, float, float]
    right: Along
    up: Upward
    movable: list[str]
    snaps: list[Snap]
    layers: list[Choice] = Field(default_factory=list)
    off: list[str] = Field(default_factory=list)


class Table(Message):
    """A table; ``of`` is the rig path each row is about."""

    title: str
    columns: list[str]
    rows: list[list[str]]
    of: list[str]


class Series(Message):
    """One line of a chart, or its steps; ``low`` and ``high`` its band."""

    label: str
    y: list[float | None]
    low: list[float | None] = Field(default_factory=list)
    high: list[float | None] = Field(default_factory=list)
    texts: list[str] = Field(default_factory=list)


class Limit(Message):
    """A line that must not be crossed."""

    label: str
    y: float
    kind: Kind


class Chart(Message):
    """A chart with its numbers. ``form`` is ``through`` (a line through the states) or ``fall`` (a waterfall)."""

    name: str
    title: str
    form: Literal["through", "fall"]
    unit: str
    labels: list[str]
    series: list[Series]
    limits: list[Limit]
    of: list[str]
    says: str


class Page(Message):
    """A printed sheet as SVG text on paper."""

    name: str
    title: str
    svg: str


class Screen(Message):
    """Everything of one screen. ``empty`` is the one sentence that teaches where there is nothing yet, ``act`` the one
    thing to do."""

    name: str
    title: str
    explains: str
    rev: int
    empty: str
    act: str
    pictures: list[Picture]
    charts: list[Chart]
    tables: list[Table]
    pages: list[Page]
    findings: list[str]


class ThingField(Message):
    """One field of the thing in hand: its key, text as written, and what it means."""

    path: str
    label: str
    text: str
    explains: str
    is_length: bool = False


class Thing(Message):
    """What is known of one part or opening, for its number boxes."""

    of: str
    name: str
    line: int | None
    fields: list[ThingField]
    says: list[str]


class Wire(Message):
    """The whole contract, for the schema the page's types are written from."""

    up: Up
    down: Down
    screen: Screen
    thing: Thing
