"""Written keys of layout: how a thing moves, what room it wants around it, what it sees."""

from __future__ import annotations

from math import tau
from typing import Annotated, Literal

from pydantic import AfterValidator, BeforeValidator, Field, ValidationInfo

from boxwright.exchange import Vector
from boxwright.model.each import Alone, not_known
from boxwright.model.entry import Entry, read_names
from boxwright.model.place import Place, Surfaces
from boxwright.model.stage import Marks
from boxwright.records import dataclass
from boxwright.units import Band, CannotRead, HeaderUnits, Metre, MetreBand, Unit, read_size

Angle = Annotated[Band, Unit("rad", "angle", bare="deg", doubtful=True)]


def a_turn(given: Band) -> Band:
    """Return an angle a leaf can turn by; one the other way round, or more than all round, is a mistake."""
    if given.known and not 0.0 <= given.low <= given.high <= tau:
        raise ValueError("a leaf turns by 0 to 360 deg, and opens: says which way; write it as to: 90 deg")
    return given


def no_less_than_nothing(given: Band) -> Band:
    """Return a length that can be left free or pulled out by; less than nothing is a mistake."""
    if given.known and not 0.0 <= given.low <= given.high:
        raise ValueError("this is a length of nothing or more, and which way it goes is not told by its sign")
    return given


def a_fall(given: Band) -> Band:
    """Return how steeply a canopy falls away; one that rises, or hangs straight down, is a mistake."""
    if given.known and not 0.0 <= given.low <= given.high < tau / 4.0:
        raise ValueError("a canopy falls away by 0 to 90 deg; write it as pitch: 12 deg")
    return given


Free = Annotated[MetreBand, AfterValidator(no_less_than_nothing)]
Places = Annotated[tuple[MetreBand, ...], BeforeValidator(read_names)]


def read_extents(given: object, info: ValidationInfo) -> object:
    """Return length, width and height (m) of a size written as ``75 x 47 x 4``."""
    if not isinstance(given, str):
        return given
    header = (info.context or {}).get("header", HeaderUnits())
    return read_size(given, header)


Extents = Annotated[tuple[Metre, Metre, Metre], BeforeValidator(read_extents)]


class Swing(Entry):
    """How a leaf, a lid or a door turns on its hinge."""

    hinge: str = Field("", description="the edge it is hinged on: front, rear, top, bottom, left, right, both sides")
    opens: str = Field("", description="the way it opens: out, in, up, down")
    to: Annotated[Angle, AfterValidator(a_turn)] | None = Field(None, description="how far it opens, such as 170 deg")


class Slide(Entry):
    """How a drawer, a step or a fridge slide pulls out."""

    to: str = Field("", description="the way it pulls out: left, right, front, rear, down")
    by: Free | None = Field(None, description="how far it pulls out, such as 20")
    runs: str = Field("", description="of a leaf that slides along its wall: inside, outside or in the wall")


class KeepClear(Entry):
    """Room a thing wants around it; ``keep_clear: 2`` alone is that much on every side."""

    all_round: Free | None = Field(None, description="room on every side, such as 2")
    front: Free | None = Field(None, description="room before its face, where one stands to work on it, such as 30")
    width: Free | None = Field(None, description="width of that room, such as 24")
    above: Free | None = Field(None, description="room over it, such as 12")


class Sees(Entry):
    """What a camera or a lamp looks at from outside the shell, as one drives."""

    toward: str = Field("", description="the way it looks: rear, front, left, right")
    angle: Angle | None = Field(None, description="how wide it sees, such as 120 deg; unwritten it is straight ahead")


FEET = {"ground": "ground", "wall": "wall", "both": "both", "unknown": "", "?": ""}


def read_feet(given: object) -> object:
    """Return where the arms of a canopy have their feet: ground, wall or both; empty where nobody knows."""
    word = str(given).strip().lower()
    if word not in FEET:
        raise CannotRead(str(given), "where its arms stand", "ground, wall, both or unknown")
    return FEET[word]


class Reach(Entry):
    """How far an awning or a shelf comes out of the trailer; ``out: 78`` alone is its reach."""

    reach: Free | None = Field(None, description="how far it comes out, such as 78")
    pitch: Annotated[Angle, AfterValidator(a_fall)] | None = Field(
        None, description="how steeply it falls away, such as 12 deg"
    )
    arms: Places = Field((), description="places of its arms along the trailer, such as [54, 124]")
    feet: Annotated[str, BeforeValidator(read_feet)] = Field(
        "", description="where its arms have their feet: ground, wall, or both, now one and now the other"
    )
    height: MetreBand | None = Field(None, description="height of its outer edge over the ground, such as 80")


class BlockWords(Entry):
    """One of the boxes a thing is made up of, from the thing's own front, left and under edge."""

    x: MetreBand | None = Field(
        None, description="behind the thing's own front edge; 0 where it is not written, such as 4"
    )
    side: MetreBand | None = Field(None, description="to the right of the thing's own left edge, such as 6")
    z: MetreBand | None = Field(None, description="above the thing's own underside, such as 12")
    size: Extents = Field(description="length x width x height of this box, such as 18 x 15 x 12")


class Facet(Entry):
    """What layout reads of a part or an opening."""

    swing: Annotated[Swing, not_known("to")] | None = Field(
        None, description="how it turns, such as {hinge: front, opens: out, to: 170 deg}"
    )
    slides: Annotated[Slide, not_known("by")] | None = Field(
        None, description="how it pulls out, such as {to: left, by: 20}"
    )
    keep_clear: Annotated[KeepClear, Alone("all_round")] | None = Field(
        None, description="room it wants: 2 on every side, or {front: 30, width: 24} to stand and work"
    )
    sees: Annotated[Sees, not_known("angle")] | None = Field(
        None, description="what it looks at, such as {toward: rear, angle: 120 deg}"
    )
    out: Annotated[Reach, Alone("reach")] | None = Field(
        None, description="how far it comes out when set up, such as {reach: 78, pitch: 12 deg}"
    )
    mattress: Extents | None = Field(
        None, description="length x width x thickness of the mattress, such as 75 x 47 x 4"
    )
    blocks: tuple[BlockWords, ...] = Field(
        (), description="the boxes it fills, where one box is too much: [{x: 4, side: 6, z: 12, size: 18 x 15 x 12}]"
    )


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Piece:
    """One box of a thing, from the thing's own front left under corner (m)."""

    low: Vector
    size: Vector


Hazard = Literal["", "hot", "flame", "panel"]


@dataclass(frozen=True, slots=True)
class Fitted:
    """A part as layout sees it, whatever stands: where it is written, folded up, at night, and how it moves.

    ``along`` are the middles of a counted part along the trailer; ``count`` is how many pieces lie somewhere in its one
    box, where their places are not written. ``inside`` and ``rides_on`` are paths. ``legs`` are
    the two corners of each leg as it stands when the part is down. ``is_sized`` is False where no size is known.
    ``wall`` is the wall it hangs on and ``hinge`` the edge it turns about, in plain words; empty where not written.
    ``recess`` is how deep it is let into its wall behind the finished face. ``drawers`` are the heights of its drawer
    fronts from the top, ``doors`` how many doors its carcass has and ``has_lid`` whether its top lifts; ``ply`` and
    ``back`` are how thick its boards and its back are (m), 0 where nobody wrote it, and ``shelves`` how many it has.
    ``marks`` say from which stage on it is there, and what is ticked. ``hazard`` is what makes it want room round it
    though nobody wrote how much: it gets hot, burns with a flame, or is a panel of the mains one works at.
    """

    of: str
    name: str
    kind: str
    place: Place
    is_sized: bool
    folded: Place | None = None
    asleep: Place | None = None
    leaves_at_night: bool = False
    along: tuple[float, ...] = ()
    count: int = 1
    inside: str = ""
    rides_on: str = ""
    folds: str = ""
    folded_depth: Band | None = None
    wall: str = ""
    recess: Band | None = None
    hinge: str = ""
    legs: tuple[tuple[Vector, Vector], ...] = ()
    pieces: tuple[Piece, ...] = ()
    drawers: tuple[float, ...] = ()
    doors: int = 0
    has_lid: bool = False
    ply: float = 0.0
    back: float = 0.0
    shelves: int = 0
    facet: Facet | None = None
    marks: Marks | None = None
    hazard: Hazard = ""

    @property
    def is_stand_in(self) -> bool:
        """Return whether it is slept on for a while: it leaves at some stage and has a place of its own at night."""
        return self.marks is not None and self.marks.until is not None and self.asleep is not None


@dataclass(frozen=True, slots=True)
class Closed:
    """An opening of the shell: the box of the hole in its wall (m), how what closes it swings, and since when.

    ``is_unit`` says that what closes it came in a frame of its own; ``off`` is how far its sides may be other (m);
    ``is_doubted`` that it counts as there, and is written as not cut or as something that may keep it shut.
    """

    of: str
    name: str
    wall: str
    place: Place
    facet: Facet | None = None
    marks: Marks | None = None
    is_unit: bool = False
    off: Vector = (0.0, 0.0, 0.0)
    is_doubted: bool = False


@dataclass(frozen=True, slots=True)
class Lining:
    """A layer of stiff board that is fitted in sheets: its wall and name in words, how thick it is (m), since when."""

    of: str
    name: str
    thick: float
    marks: Marks


@dataclass(frozen=True, slots=True)
class Section:
    """What layout sees of the rig, whatever stands: every part and opening, and the faces of the finished room."""

    fitted: tuple[Fitted, ...] = ()
    closed: tuple[Closed, ...] = ()
    room: Surfaces | None = None
