"""What the frame's sheets are drawn from, and how a measure is written on them."""

from __future__ import annotations

from datetime import date
from typing import Literal

from boxwright.disciplines.frame.ordering import Order, OrderLine
from boxwright.disciplines.frame.receiving import Expected
from boxwright.disciplines.frame.result import Buildup, Hole, Member, Result, There, Wall
from boxwright.drawing import Mark
from boxwright.drawing.mark import Point, Side
from boxwright.exchange import Box
from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits, show

THERE: dict[There, str] = {"yes": "in", "perhaps": "not ticked", "later": "planned"}
THIN = 0.003
"""Below this (m) a thickness is not told by sixteenths or whole millimetres."""
UNSAID = "?"
"""Stands where nobody wrote a size: a mark to be filled in by hand, never a made-up figure."""


@dataclass(frozen=True, slots=True)
class CardLine:
    """A line that another chapter adds to the card of a bay: what kind of thing, and what is done or kept clear."""

    bay: str
    kind: str
    words: str
    of: str
    is_in: bool = False


@dataclass(frozen=True, slots=True)
class Drawn:
    """What the sheets of the frame are made from; ``slot`` says in words which stage and day they show.

    ``deck`` is what is written of the trailer's own."""

    slot: str
    frame: Result
    box: Box
    units: HeaderUnits
    findings: tuple[Finding, ...] = ()
    order: Order | None = None
    lines: tuple[OrderLine, ...] = ()
    expected: tuple[Expected, ...] = ()
    cards: tuple[CardLine, ...] = ()
    deck: str = ""

    @property
    def ruler(self) -> Ruler:
        """Return how measures are written on these sheets."""
        return Ruler(self.units)

    def faults(self) -> tuple[tuple[int, Finding], ...]:
        """Return what the frame has found wrong or open, numbered as on every sheet."""
        found = dict.fromkeys(one for one in self.findings if one.code.startswith("frame/"))
        apart = {(one.code, one.where, one.says): one for one in found}
        return tuple(enumerate(apart.values(), start=1))

    def holes_of(self, wall: str) -> tuple[Hole, ...]:
        """Return the openings of a wall that have a place."""
        return tuple(one for one in self.frame.holes if one.wall == wall and one.is_placed)

    def buildup(self, wall: str, place: Literal["bay", "member"], bay: str = "") -> Buildup | None:
        """Return what is behind what at one kind of place of a wall."""
        found = (one for one in self.frame.buildups if (one.wall, one.place, one.bay) == (wall, place, bay))
        return next(found, None)


@dataclass(frozen=True, slots=True)
class Ruler:
    """Measures as they are written on a drawing: to a sixteenth of an inch or a millimetre, the unit said once."""

    units: HeaderUnits

    def mark(self, metres: float) -> str:
        """Return a measure without its unit, as it stands beside a line."""
        written = show(metres, "length", self.units, cuts=True)
        number, _, unit = written.rpartition(" ")
        return number if number and unit.isalpha() else written

    def full(self, metres: float) -> str:
        """Return a measure with its unit."""
        return show(metres, "length", self.units, cuts=True)

    def both(self, metres: float) -> str:
        """Return a measure in inches and in millimetres, the rig's own first."""
        other = HeaderUnits(words=self.units.words, length="mm" if self.is_imperial else "in")
        return f"{self.full(metres)} ({show(metres, 'length', other, cuts=True)})"

    def thickness(self, band: Band | None) -> str:
        """Return a measure with its doubt, or the sign of one that nobody wrote."""
        if band is None or not band.known:
            return UNSAID
        low, high = self.thin(band.low), self.thin(band.high)
        return low if low == high else f"{low} to {high}"

    def span(self, band: Band | None) -> str:
        """Return what is clear between two things with its doubt, always as a tape reads it."""
        if band is None or not band.known:
            return UNSAID
        low, high = self.full(band.low), self.full(band.high)
        return low if low == high else f"{low} to {high}"

    def thin(self, metres: float) -> str:
        """Return a measure with its unit; one of a sheet of metal by its decimals, since no fraction is near it."""
        return show(metres, "length", self.units, cuts=not 0.0 < abs(metres) < THIN)

    def mass(self, band: Band | None) -> str:
        """Return a weight, nothing where nobody wrote it."""
        return show(band.best, "mass", self.units) if band is not None and band.known else ""

    def price(self, band: Band | None) -> str:
        """Return a price, nothing where nobody wrote it."""
        return show(band.best, "money", self.units) if band is not None and band.known else ""

    @property
    def is_imperial(self) -> bool:
        """Return whether lengths are written in inches or feet."""
        return self.full(1.0).endswith(("in", '"'))


@dataclass(frozen=True, slots=True)
class Eye:
    """One look at a wall, as somebody sees it who stands before it: ``is_inside`` in the room, else outside.

    Nothing is ever mirrored: what lies to the left on paper lies to the left of the eye.
    """

    wall: Wall
    is_inside: bool

    @property
    def turn(self) -> float:
        """Return 1 where the wall's own coordinate runs to the right as one looks, -1 where to the left."""
        runs_right_outside = self.wall.name in ("left", "rear", "nose-right", "roof", "floor")
        return 1.0 if runs_right_outside != self.is_inside or self.wall.name in ("roof", "floor") else -1.0

    def at(self, along: float, up: float) -> Point:
        """Return a point of the wall on the plane of the view."""
        return self.turn * along, up

    @property
    def front(self) -> Side | None:
        """Return where the front of the trailer is; None for a wall that runs across it."""
        if self.wall.name in ("front", "rear"):
            return None
        runs_forward = self.wall.name in ("nose-left", "nose-right")
        return "right" if (self.turn < 0.0) != runs_forward else "left"

    @property
    def zero(self) -> float:
        """Return the place along the wall that measures start from: the front stud face, the left one, the corner."""
        return self.wall.low if self.wall.name in ("front", "rear") else 0.0

    @property
    def looks(self) -> str:
        """Return from where one looks, in trade words."""
        where = "seen from inside" if self.is_inside else "seen from outside"
        if self.wall.name not in ("front", "rear"):
            return f"{where}, the front to your {self.front}"
        ahead = "forward" if (self.wall.name == "front") == self.is_inside else "to the rear"
        return f"{where}, looking {ahead}"

    @property
    def datum(self) -> str:
        """Return what measures along the wall start from, in words."""
        if self.wall.name in ("front", "rear"):
            return "the left wall's stud face; heights from the deck"
        if self.wall.name in ("roof", "floor"):
            return "the front stud face (scribed 0); across from the left wall's stud face"
        if self.wall.name in ("nose-left", "nose-right"):
            return "the corner of the body; heights from the deck"
        return "the front stud face (scribed 0); heights from the deck"


def line_of(member: Member) -> Literal["visible", "hidden", "phantom"]:
    """Return how a member is drawn: solid as taped, dashed as ordered only, dash and dots where it was taken out."""
    return "phantom" if member.is_removed else "visible" if member.is_built else "hidden"


def half_face(member: Member) -> float:
    """Return half of the width of a member in its wall's plane, twice that where two stand together."""
    return member.face.best / 2.0 * (2.0 if member.is_doubled else 1.0)


def said(day: date | None) -> str:
    """Return a day as written everywhere, or nothing."""
    return day.isoformat() if day is not None else ""


Marks = list[Mark]
