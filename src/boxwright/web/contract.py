"""What page and program say to each other over the one socket: closed messages, told apart by ``t``.

Lengths go up and down in millimetres, in the rig's own axes (x rearward, y to the right, z up). Everything that is
shown comes ready as text in the units of the rig file: the page converts nothing and words nothing of its own about
the rig. ``rev`` counts the accepted edits of a session, ``seq`` those of one tab.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from boxwright.web.fetched import (
    Along as Along,
)
from boxwright.web.fetched import (
    Axis as Axis,
)
from boxwright.web.fetched import (
    Chart as Chart,
)
from boxwright.web.fetched import (
    Choice as Choice,
)
from boxwright.web.fetched import (
    Difference as Difference,
)
from boxwright.web.fetched import (
    DifferentLine as DifferentLine,
)
from boxwright.web.fetched import (
    EarlierText as EarlierText,
)
from boxwright.web.fetched import (
    Form as Form,
)
from boxwright.web.fetched import (
    FormField as FormField,
)
from boxwright.web.fetched import (
    Kind as Kind,
)
from boxwright.web.fetched import (
    Labelled as Labelled,
)
from boxwright.web.fetched import (
    LeftText as LeftText,
)
from boxwright.web.fetched import (
    Limit as Limit,
)
from boxwright.web.fetched import (
    Page as Page,
)
from boxwright.web.fetched import (
    Picture as Picture,
)
from boxwright.web.fetched import (
    PutIn as PutIn,
)
from boxwright.web.fetched import (
    Reason as Reason,
)
from boxwright.web.fetched import (
    Screen as Screen,
)
from boxwright.web.fetched import (
    Series as Series,
)
from boxwright.web.fetched import (
    Snap as Snap,
)
from boxwright.web.fetched import (
    Table as Table,
)
from boxwright.web.fetched import (
    Thing as Thing,
)
from boxwright.web.fetched import (
    ThingField as ThingField,
)
from boxwright.web.fetched import (
    Upward as Upward,
)
from boxwright.web.fetched import (
    Worked as Worked,
)
from boxwright.web.sent import (
    Accept as Accept,
)
from boxwright.web.sent import (
    Add as Add,
)
from boxwright.web.sent import (
    Apply as Apply,
)
from boxwright.web.sent import (
    Begin as Begin,
)
from boxwright.web.sent import (
    BringBack as BringBack,
)
from boxwright.web.sent import (
    Cancel as Cancel,
)
from boxwright.web.sent import (
    Copy as Copy,
)
from boxwright.web.sent import (
    Drop as Drop,
)
from boxwright.web.sent import (
    EnterReading as EnterReading,
)
from boxwright.web.sent import (
    Hello as Hello,
)
from boxwright.web.sent import (
    KeepWriting as KeepWriting,
)
from boxwright.web.sent import (
    Leaving as Leaving,
)
from boxwright.web.sent import (
    Look as Look,
)
from boxwright.web.sent import (
    Message as Message,
)
from boxwright.web.sent import (
    Move as Move,
)
from boxwright.web.sent import (
    Recover as Recover,
)
from boxwright.web.sent import (
    Redo as Redo,
)
from boxwright.web.sent import (
    Rejoin as Rejoin,
)
from boxwright.web.sent import (
    Rename as Rename,
)
from boxwright.web.sent import (
    Resolve as Resolve,
)
from boxwright.web.sent import (
    Seek as Seek,
)
from boxwright.web.sent import (
    Sent as Sent,
)
from boxwright.web.sent import (
    Set as Set,
)
from boxwright.web.sent import (
    Slot as Slot,
)
from boxwright.web.sent import (
    TakeOut as TakeOut,
)
from boxwright.web.sent import (
    TextChange as TextChange,
)
from boxwright.web.sent import (
    TextEdit as TextEdit,
)
from boxwright.web.sent import (
    Turn as Turn,
)
from boxwright.web.sent import (
    Typed as Typed,
)
from boxwright.web.sent import (
    Undo as Undo,
)
from boxwright.web.sent import (
    Up as Up,
)
from boxwright.web.sent import (
    WriteMeasures as WriteMeasures,
)

CONTRACT = 3
"""Raised whenever a message changes: a page from before is told to load itself again."""

Group = Literal["draw", "work-out", "on-file"]
AnswerWord = Literal["go", "limits", "ask", "no"]


class Ask(Message):
    """One question of the first page, whose answer may be left out; or a demo rig it offers."""

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

    ``left`` says that an earlier session left a text that is not in the file; ``recover`` answers it. ``terms`` has one
    line for each choice and drawing beside the screens. ``program`` is another each time the program is started,
    ``place`` stands for the path of the file. ``heard`` is the number of the last message of this page that was handled
    before its hello, by this program; below 0 where it has not said hello.
    """

    t: Literal["state"]
    program: str
    place: str
    heard: int
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
    demos: list[Ask] = Field(default_factory=list)
    asks: list[Ask] = Field(default_factory=list)
    left: str = ""
    terms: dict[str, str] = Field(default_factory=dict)


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
    """The answer for one use, in words; ``explains`` says what is asked and what the word means."""

    use: str
    label: str
    word: AnswerWord
    says: list[str]
    act: str
    questions: list[str] = Field(default_factory=list)
    explains: str = ""


class Working(Message):
    """How a number comes about: formula, numbers put in, result, source, and published checks of the method."""

    formula: str
    put_in: str
    result: str
    source: str
    checks: list[str] = Field(default_factory=list)


class Blank(Message):
    """A value that nobody wrote and a finding asks for: its place in the file, its unit, how it may look.

    ``text`` is what is written there now, ``wrong`` why that could not be read.
    """

    path: str
    label: str
    text: str
    unit: str
    explains: str
    example: str
    line: int | None
    wrong: str = ""


class ShownFinding(Message):
    """A finding as it is shown. ``screen`` is where its thing is drawn, ``remedy`` the change proved for it,
    ``explains`` what its kind means, ``blanks`` what it asks to be written. ``key`` tells it from all others, at
    other stages, in other load states and behind other tow vehicles too."""

    key: str
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
    load: str = ""
    blanks: list[Blank] = Field(default_factory=list)
    explains: str = ""


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
    """What follows from the text, or from what the hand holds (``preview``), at the stage, in the load state and behind
    the vehicle of ``slot``. ``of`` says whose numbers they are where no load state was chosen; ``stale`` names what is
    still of an earlier revision. ``night`` is None while a hand moves: it follows as `NightIs` once the hand rests."""

    t: Literal["numbers"]
    seq: int
    rev: int
    preview: bool
    slot: Slot
    of: str
    answers: list[Answer]
    figures: list[Figure]
    balance: Balance | None
    findings: list[ShownFinding] | None
    accepted: list[ShownFinding] | None = None
    problems: list[ShownProblem] | None = None
    held: list[Figure] = Field(default_factory=list)
    night: list[Figure] | None = None
    stale: list[str] = Field(default_factory=list)


class NightIs(Message):
    """The night of what a resting hand holds, of its move ``seq``."""

    t: Literal["night"]
    seq: int
    rev: int
    slot: Slot
    figures: list[Figure]


class Patch(Message):
    """Groups of a sheet drawn anew, by their rig path, with the lines their edges catch on now; ``whole`` tells the
    page to fetch the screen again."""

    t: Literal["patch"]
    rev: int
    screen: str
    sheet: str
    groups: dict[str, str] = Field(default_factory=dict)
    gone: list[str] = Field(default_factory=list)
    snaps: list[Snap] = Field(default_factory=list)
    whole: bool = False


class TextIs(Message):
    """An edit made elsewhere, for the editor; with ``text`` the whole text instead.

    ``length`` is that of the whole text as an editor counts, so that a page that lost step notices. ``by_another``:
    another program wrote it, so that what is typed into the same lines is not joined with it.
    """

    t: Literal["text"]
    rev: int
    length: int
    by_another: bool = False
    changes: list[TextChange] = Field(default_factory=list)
    text: str | None = None


class Disk(Message):
    """How the file stands: ``step`` in step, ``dirty`` not yet written, ``stuck`` it cannot be, ``broken`` text that
    does not parse is kept beside it, ``conflict`` and ``gone``."""

    t: Literal["disk"]
    state: Literal["step", "dirty", "stuck", "broken", "conflict", "gone", "read-only"]
    says: str
    hash: str = ""
    text: str | None = None


class No(Message):
    """An edit refused, with why: the page puts things back where they stand.

    ``asked`` is the question of the first page whose answer could not be read.
    """

    t: Literal["no"]
    seq: int
    why: str
    asked: str = ""


class Offered(Message):
    """The change found for the finding of a ``key`` in the text of ``rev``: what it writes; ``remedy`` empty where none
    was found.

    ``is_of_the_built``: it writes that something is built, so that it is for the owner to say once it is.
    """

    t: Literal["offered"]
    seq: int
    rev: int
    key: str
    remedy: str
    says: str
    is_of_the_built: bool = False


class Reload(Message):
    """The page is older than the program: load it again."""

    t: Literal["reload"]


Down = Annotated[
    State | Numbers | NightIs | Patch | TextIs | Disk | No | Offered | Reload,
    Field(discriminator="t"),
]


class Wire(Message):
    """The whole contract, for the schema the page's types are written from."""

    up: Up
    down: Down
    screen: Screen
    thing: Thing
    reason: Reason
    working: Working
    leaving: Leaving
    earlier: EarlierText
    left: LeftText
    difference: Difference
    form: Form
