"""Written keys of frame: studs, bows, floor and skin; the layers of the walls; the openings."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated

from pydantic import BeforeValidator, Field

from boxwright.disciplines.frame.ordering import Order, WrittenReply
from boxwright.disciplines.frame.result import UNSAID, Run, Tube
from boxwright.disciplines.frame.tapes import Read
from boxwright.exchange import Vector
from boxwright.model.each import Alone, not_known
from boxwright.model.entry import Day, Entry, YesNo, read_names
from boxwright.model.place import Place
from boxwright.records import dataclass
from boxwright.units import Band, KilogramBand, MetreBand, MoneyBand, Unit

Angle = Annotated[Band, Unit("rad", "angle", bare="deg", doubtful=True)]
_LABEL = re.compile(r"(?i)R[ -]?(?=[\d.])(.*)")


def read_label(given: object) -> object:
    """Return an R value with its unit: ``R 7.5`` and ``R-7.5`` are what a label of the United States means by it."""
    label = _LABEL.fullmatch(given.strip()) if isinstance(given, str) else None
    if label is None:
        return given
    return f"{label[1]} ft2 F h/Btu" if label[1][-1].isdigit() else label[1]


Insulation = Annotated[Band, Unit("m**2*K/W", "insulation", doubtful=True)]
Transmittance = Annotated[Band, Unit("W/m**2/K", "transmittance", bare="W/m2K", doubtful=True)]


def read_numbers(given: object) -> object:
    """Return the numbers of a list such as ``[2, 5]``, or of one alone."""
    words = [str(one).strip() for one in read_names(given)]
    for word in words:
        if not word.isdecimal():
            raise ValueError(f'"{word}" is no number of a member; they are counted from 0, write it as [2, 5]')
    return tuple(int(word) for word in words)


Numbers = Annotated[tuple[int, ...], BeforeValidator(read_numbers)]
Places = Annotated[tuple[MetreBand, ...], BeforeValidator(read_names)]


class WallRow(Entry):
    """Where one wall's studs differ from the row; ``left: 24`` alone is their spacing there."""

    every: MetreBand | None = Field(None, description="spacing of this wall, centre to centre, such as 24")
    first: MetreBand | None = Field(None, description="centre of its first stud, such as 8")
    last: MetreBand | None = Field(None, description="centre of its closing stud, such as 167 1/4")
    removed: Numbers = Field((), description="numbers of studs that are left out, counted from 0, such as [2]")
    doubled: Numbers = Field((), description="numbers of studs that stand double, such as [5]")
    extra: Places = Field((), description="centres of studs beyond the row, such as [41]")


class Row(Entry):
    """A row of studs or roof bows; ``studs: 16`` alone is their spacing."""

    tube: str = Field("", description="the section, such as 1 x 1 1/2 x 16 ga")
    face: MetreBand | None = Field(None, description="width of the face that looks inward, such as 1")
    depth: MetreBand | None = Field(None, description="depth from skin to that face, such as 1 1/2")
    every: MetreBand | None = Field(None, description="spacing, centre to centre, such as 16")
    first: MetreBand | None = Field(None, description="centre of the first behind the front stud face, such as 0")
    left: Annotated[WallRow, Alone("every")] | None = Field(None, description="where the left wall differs")
    right: Annotated[WallRow, Alone("every")] | None = Field(None, description="where the right wall differs")
    front: Annotated[WallRow, Alone("every")] | None = Field(None, description="where the front wall differs")
    rear: Annotated[WallRow, Alone("every")] | None = Field(None, description="where the rear wall differs")


class Bows(Row):
    """The roof bows: a row across the trailer, and the shape of the roof."""

    shape: str = Field("", description="flat, arched, or rounded at the eaves")
    rise: MetreBand | None = Field(None, description="how much higher the middle is than the eaves, such as 3")
    radius: MetreBand | None = Field(None, description="radius of rounded eaves, such as 4")
    removed: Numbers = Field((), description="numbers of bows that are left out, counted from 0, such as [4]")
    extra: Places = Field((), description="centres of bows beyond the row, such as [72]")


class Nose(Entry):
    """A V-nose or a tapered front: the box goes on ahead of the front corners."""

    length: MetreBand | None = Field(None, description="how far it stands ahead of the front corners, such as 24")
    tip: MetreBand | None = Field(None, description="width of its blunt tip, 0 for a sharp one, such as 12")


class Intrusion(Entry):
    """A wheel box, a door surround or a spring housing: what of the shell takes room inside."""

    what: str = Field("", description="wheel box, door surround, spring housing")
    wall: str = Field("", description="the wall it stands against: left, right, front, rear")
    x: MetreBand | None = Field(None, description="its front edge (or left edge at front and rear), such as 72")
    z: MetreBand | None = Field(None, description="its underside above the deck; left out: on the deck")
    length: MetreBand | None = Field(None, description="along the wall, such as 56")
    height: MetreBand | None = Field(None, description="up the wall, such as 9")
    depth: MetreBand | None = Field(None, description="into the room, such as 8")


class FloorFrame(Entry):
    """The trailer's own floor."""

    cross_members: MetreBand | None = Field(None, description="their spacing, centre to centre, such as 16")
    first: MetreBand | None = Field(None, description="centre of the first behind the front stud face, such as 0")
    tube: str = Field("", description="the section of the cross-members, such as channel 1 1/2 x 3 x 11 ga")
    face: MetreBand | None = Field(None, description="width of their face under the deck, such as 2")
    rails: MetreBand | None = Field(None, description="distance of the two main rails, centre to centre, such as 60")
    depth: MetreBand | None = Field(None, description="their depth, such as 3")
    deck: str = Field("", description="what the trailer's own deck is, such as ply 3/4")


def read_named(given: object) -> object:
    """Return the pairs of a map of named things, so that an entry stays hashable."""
    if isinstance(given, Mapping):
        return tuple(given.items())
    if isinstance(given, str):
        raise ValueError(f'cannot read "{given}"; write it by name, as wheel-box-left: {{wall: left, x: 72}}')
    return given


Intrusions = tuple[tuple[str, Intrusion], ...]


class Framing(Entry):
    """The frame of the box as ordered; taped stud places stand under ``measured``."""

    studs: Annotated[Row, Alone("every")] | None = Field(
        None, description="wall studs, such as {tube: 1 x 1 1/2 x 16 ga, face: 1, depth: 1 1/2, every: 16, first: 0}"
    )
    bows: Annotated[Bows, Alone("every")] | None = Field(
        None, description="roof bows, written as studs, with shape, rise and radius of the roof"
    )
    floor: Annotated[FloorFrame, Alone("deck")] | None = Field(
        None, description="such as {cross_members: 16, depth: 3, deck: ply 3/4}"
    )
    skin: str = Field("", description="the outer skin, such as aluminium 0.040")
    nose: Annotated[Nose, Alone("length")] | None = Field(None, description="a V-nose, such as {length: 24, tip: 12}")
    intrusions: Annotated[Intrusions, BeforeValidator(read_named)] = Field(
        (), description="by name: wheel-box-left: {what: wheel box, wall: left, x: 72, length: 56, height: 9, depth: 8}"
    )
    order: Order | None = Field(None, description="what was asked of the trailer's builder, and the reply")


class Layer(Entry):
    """One layer of a wall, from the skin inwards."""

    of: str = Field("", description="what it is made of: XPS, ply, foam tape, rubber")
    thick: MetreBand | None = Field(None, description="thickness, such as 1/4")
    between: str = Field("", description="what it lies between, and so takes no room inside: studs or bows")
    over: str = Field("", description="what it covers only: studs or bows")
    weight: KilogramBand | None = Field(None, description="the whole layer as weighed, such as 60")
    resistance: Annotated[Insulation | None, BeforeValidator(read_label)] = Field(
        None, description="its R value as its label has it, where of says nothing of it, such as R 7.5 or 1.3 m2K/W"
    )


def read_layers(given: object) -> object:
    """Return the pairs of a map of layers, so that an entry stays hashable."""
    if isinstance(given, Mapping):
        return tuple(given.items())
    if isinstance(given, str):
        raise ValueError(f'cannot read the layers "{given}"; write them as layers: {{foam: {{of: XPS, thick: 1}}}}')
    return given


class Wall(Entry):
    """A wall, ``all``, the ceiling, the floor, or a bay between two studs: its layers from the skin inwards."""

    layers: Annotated[tuple[tuple[str, Layer], ...], BeforeValidator(read_layers)] = Field(
        (), description="by name, from the skin inwards, such as foam: {of: XPS, thick: 1 1/2, between: studs}"
    )


_WALL = re.compile(r"left|right|front|rear|ceiling|roof|floor|all|bay (left|right|front|rear) \d+ ?- ?\d+")


def is_wall(name: str) -> bool:
    """Return whether a name under ``walls`` is one of the box's own planes, ``all``, or a bay between two studs."""
    return _WALL.fullmatch(name.strip().lower()) is not None


class Clamps(Entry):
    """The wall thickness a window or a fan clamps; two keys, because two dots would mean doubt."""

    lowest: MetreBand | None = Field(None, description="thinnest wall it fits, such as 1")
    highest: MetreBand | None = Field(None, description="thickest wall it fits, such as 1 3/4")


class Sash(Entry):
    """How the unit itself opens."""

    hinge: str = Field("", description="the edge it is hinged on, such as top")
    opens: str = Field("", description="the way it opens: out or in")
    to: Angle | None = Field(None, description="how far, such as 60 deg")


class OpeningUnit(Entry):
    """The window, fan, vent or inlet that goes into an opening; ``unit: 11`` alone is its weight."""

    weight: KilogramBand | None = Field(None, description="what it weighs, such as 11")
    transmittance: Transmittance | None = Field(None, alias="U", description="heat it lets through, such as 2.8 W/m2K")
    clamps: Clamps | None = Field(None, description="wall thickness it fits, such as {lowest: 1, highest: 1 3/4}")
    swing: Annotated[Sash, not_known("to")] | None = Field(
        None, description="how it opens, such as {hinge: top, opens: out, to: 60 deg}"
    )
    depth: MetreBand | None = Field(None, description="how deep it goes, from the skin inwards, such as 3")
    cost: MoneyBand | None = Field(None, description="what it costs, such as 160")
    paid: MoneyBand | None = Field(None, description="what of that is paid, such as 160")
    have: YesNo = Field(None, description="is it in the garage already: yes or no")


class Sealant(Entry):
    """What keeps the water out; ``sealant: unknown`` says that nobody wrote it down."""

    of: str = Field("", description="butyl, polyurethane, silicone; unknown")
    on: Day = Field(None, description="the day it was laid, such as 2026-03-14")


class Opening(Entry):
    """A hole through the skin: its edges as rough opening, and what goes into it."""

    width: MetreBand | None = Field(None, description="along the wall, rough opening, such as 14 1/4")
    height: MetreBand | None = Field(None, description="up the wall, rough opening, such as 24")
    across: MetreBand | None = Field(None, description="across the trailer, of a hole in roof or floor, such as 14 1/4")
    depth: MetreBand | None = Field(None, description="room it takes inside the wall, such as 3")
    flange: MetreBand | None = Field(None, description="how far its frame covers the skin around it, such as 1 1/2")
    sealant: Annotated[Sealant, Alone("of")] | None = Field(
        None, description="unknown, or what seals it, such as {of: butyl, on: 2026-03-14}"
    )
    cut: YesNo = Field(None, description="has the saw been there: yes or no")
    by: str = Field("", description="who made it, such as trailer builder")
    reply: WrittenReply | None = Field(None, description="the builder's reply: yes, no, or such as {x: 17}")
    unit: Annotated[OpeningUnit, Alone("weight")] | None = Field(
        None, description="what goes into it, such as {weight: 11, U: 2.8 W/m2K}"
    )


class Facet(Entry):
    """What frame reads of a part."""

    recess: MetreBand | None = Field(
        None, description="how deep a socket or a switch goes into its wall, behind the finished face, such as 2"
    )


NAMED: dict[str, type[Entry]] = {"openings": Opening, "walls": Wall}
PLAIN: dict[str, type[Entry]] = {"frame": Framing}


@dataclass(frozen=True, slots=True)
class StandingLayer:
    """A layer that stands, or stands perhaps.

    ``wall`` is its wall as written: left, right, front, rear, ceiling, floor, all, or a bay. ``share`` is exactly 1,
    or 0 to 1 (spread "perhaps") where it stands perhaps.
    """

    of: str
    wall: str
    name: str
    layer: Layer
    share: Band


@dataclass(frozen=True, slots=True)
class StandingOpening:
    """An opening that stands, or stands perhaps, with its place; ``share`` as of a layer.

    ``wall`` is the wall it is written in; ``swing`` the edge it is hinged on and the way it opens, empty where it does
    not.
    """

    of: str
    opening: Opening
    place: Place
    share: Band
    wall: str = ""
    swing: tuple[str, str] = ("", "")


@dataclass(frozen=True, slots=True)
class PlannedBacking:
    """A strip or board behind the lining, as planned: its place and the part it holds screws for."""

    of: str
    name: str
    place: Place
    backs: str


@dataclass(frozen=True, slots=True)
class PlannedRecess:
    """A part that goes into its wall behind the finished face: a socket, a switch. ``at`` are its middles along x."""

    of: str
    name: str
    place: Place
    wall: str
    at: tuple[float, ...]
    depth: Band


@dataclass(frozen=True, slots=True)
class ToCarryIn:
    """A part of the plan that stands inside and is not in yet: its size (m), nothing along an axis nobody wrote.

    ``ways`` are the rig paths of the openings that are there when it goes in.
    """

    of: str
    name: str
    size: Vector
    ways: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """The frame as ordered and as taped, with every layer and opening of the plan; what stands comes with each slot.

    ``skin`` is the outer skin's thickness where it is written, ``deck`` that of the trailer's own floor. ``runs`` are
    wires and pipes wall by wall, ``unrouted`` the names of those whose route nobody wrote.
    """

    framing: Framing | None = None
    stud_tube: Tube = UNSAID
    bow_tube: Tube = UNSAID
    cross_tube: Tube = UNSAID
    skin: Band | None = None
    deck: Band | None = None
    readings: tuple[Read, ...] = ()
    layers: tuple[StandingLayer, ...] = ()
    openings: tuple[StandingOpening, ...] = ()
    backings: tuple[PlannedBacking, ...] = ()
    recesses: tuple[PlannedRecess, ...] = ()
    runs: tuple[Run, ...] = ()
    unrouted: tuple[str, ...] = ()
    to_carry_in: tuple[ToCarryIn, ...] = ()
