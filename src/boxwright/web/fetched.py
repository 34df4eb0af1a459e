"""What a page fetches by address: a screen with its pictures, charts, tables and pages, and one thing in hand."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boxwright.web.sent import Message

Kind = Literal["stop", "limit", "fix", "unknown", "advice"]
Axis = Literal["x", "y", "z"]
Along = Literal["+x", "-x", "+y", "-y"]
Upward = Literal["+y", "+z"]


class Choice(Message):
    """One thing that can be chosen; ``name`` goes into the message, ``label`` on the screen."""

    name: str
    label: str


class Snap(Message):
    """A line a dragged thing catches on: a stud, a wall's face, the edge of a neighbour, whose path is ``of``."""

    axis: Axis
    mm: float
    label: str
    of: str = ""


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
    """A table; ``of`` is the rig path each row is about, ``names`` the path of each thing by the words said of it."""

    title: str
    columns: list[str]
    rows: list[list[str]]
    of: list[str]
    names: dict[str, str] = Field(default_factory=dict)


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
    """A chart with its numbers. ``form`` is ``through`` (a line through the states) or ``fall`` (a waterfall).

    It is drawn from ``low`` to ``high``, a number at its axis each ``step``; ``share`` is how high it is among charts.
    """

    name: str
    title: str
    form: Literal["through", "fall"]
    unit: str
    labels: list[str]
    series: list[Series]
    limits: list[Limit]
    of: list[str]
    says: str
    low: float
    high: float
    step: float
    share: float


class Page(Message):
    """A printed sheet as SVG text on paper."""

    name: str
    title: str
    svg: str


class Screen(Message):
    """Everything of one screen. ``empty`` is the one sentence that teaches where there is nothing yet, ``act`` the one
    thing to do; ``notes`` are what stands under the sheets, ``words`` what the words of the trade on it mean."""

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
    notes: list[str] = Field(default_factory=list)
    findings: list[str]
    words: list[Labelled] = Field(default_factory=list)


class ThingField(Message):
    """One field of the thing in hand: its key, text as written, what it means; ``wrong`` is why it was not read."""

    path: str
    label: str
    text: str
    explains: str
    is_length: bool = False
    wrong: str = ""


class Thing(Message):
    """What is known of one part or opening, for its number boxes; ``of_a_copy`` is the free name a copy takes."""

    of: str
    name: str
    line: int | None
    fields: list[ThingField]
    says: list[str]
    of_a_copy: str = ""


class LeftText(Message):
    """What taking up what an earlier session left comes to; ``is_sure`` where it undoes nothing that was done since."""

    text: str
    is_sure: bool
    rev: int


class EarlierText(Message):
    """An earlier text of the file: until when it stood, and what was changed then."""

    name: str
    until: str
    says: str
    size: str


class DifferentLine(Message):
    """A line of an earlier text (``then``), of the text as it is (``now``), of both, or a word on lines left out.

    It comes in three pieces: ``before`` and ``after`` are in the other text too, ``text`` is what is not.
    """

    side: Literal["then", "now", "both", "gap"]
    line: int
    text: str
    before: str = ""
    after: str = ""


class Difference(Message):
    """How an earlier text differs from the text as it is; without lines it is the same."""

    name: str
    lines: list[DifferentLine]


class FormField(Message):
    """One question of a form: one of its ``options`` if there are some, else typed; ``text`` stands there already."""

    name: str
    label: str
    explains: str
    text: str = ""
    options: list[Choice] = Field(default_factory=list)
    is_needed: bool = False


class Form(Message):
    """Questions that are answered together."""

    name: str
    label: str
    explains: str
    fields: list[FormField]


class PutIn(Message):
    """A number that went into a working, as it is shown, and where it is written where that is known."""

    name: str
    text: str
    path: str = ""
    line: int | None = None


class Labelled(Message):
    """A text under its label: what a rule asks, a number, its limit."""

    label: str
    text: str


class Worked(Message):
    """One formula with the numbers it was run on; ``checks`` are the published cases its method is held against."""

    formula: str
    given: list[PutIn]
    with_numbers: str
    result: str
    source: str
    checks: list[str]


class Reason(Message):
    """How a finding was reached: its rule, number and limit, what is written of the things it is about, formulas."""

    rule: list[Labelled]
    compared: list[Labelled]
    written: list[PutIn]
    steps: list[Worked]
    sources: list[str]
