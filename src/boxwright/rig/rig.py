"""The rig: one file's whole content as records, one field per discipline for what that discipline alone owns."""

from __future__ import annotations

from datetime import date

from boxwright.disciplines import (
    air,
    cutting,
    frame,
    heat,
    layout,
    power,
    safety,
    stages,
    structure,
    towing,
    water,
    weight,
)
from boxwright.exchange import Measured
from boxwright.model.entry import Entry
from boxwright.model.load import LoadState
from boxwright.model.part import PartWords
from boxwright.model.place import Place, Surfaces
from boxwright.model.stage import Marks, Stage
from boxwright.model.trailer import Person, TowVehicle, Trailer
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits


@dataclass(frozen=True, slots=True)
class Header:
    """The head of the file: what applies to all of it.

    ``stage_today`` is the number of the stage named in ``today:``, or the first one not ticked. ``is_country_assumed``
    says that no country was written. ``format`` is the number after ``boxwright:``.
    """

    format: int
    name: str
    is_demo: bool
    units: HeaderUnits
    countries: tuple[str, ...]
    is_country_assumed: bool
    trailer_class: str
    stage_today: int
    date_today: date | None


def home_of(header: Header) -> str:
    """Return the home country of the rig, such as US; empty where nobody wrote it."""
    return "" if header.is_country_assumed or not header.countries else header.countries[0].partition("-")[0]


@dataclass(frozen=True, slots=True)
class Item:
    """One named thing of the file (a part, an opening, a wire, a strap) with everything known about it.

    ``of`` is its rig path. ``facets`` pairs a folder with what that discipline reads of it. ``folded`` is its place on
    the road where it folds, ``asleep`` its place at night where that differs, ``leaves_at_night`` says that it is put
    outside then. ``mass`` is the weight of the whole line, unknown where nobody wrote it.
    """

    section: str
    name: str
    of: str
    words: PartWords
    marks: Marks
    own: Entry | None
    facets: tuple[tuple[str, Entry], ...]
    place: Place
    mass: Band
    is_in_empty_weight: bool = False
    folded: Place | None = None
    asleep: Place | None = None
    leaves_at_night: bool = False

    def facet(self, folder: str) -> Entry | None:
        """Return what one discipline reads of this thing, or None."""
        for owner, facet in self.facets:  # asked some ten times of every part while a hand drags
            if owner == folder:
                return facet
        return None


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer of a wall, a bay, the ceiling or the floor, with when it goes in and what is there of it today."""

    of: str
    wall: str
    name: str
    marks: Marks
    own: Entry
    now: str = ""


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding the owner has accepted, with the number it had then."""

    of: str
    code: str
    where: str
    note: str
    on: date | None
    number: Band | None


@dataclass(frozen=True, slots=True)
class Rig:
    """One rig file as records. Holds no line number: a new comment line changes nothing here.

    ``troubled`` holds the rig paths where text was dropped, guessed or refused; a verdict that could rest on one of
    them is never better than "ask".
    """

    header: Header
    trailer: Trailer
    tow: tuple[tuple[str, TowVehicle], ...]
    people: tuple[tuple[str, Person], ...]
    stages_in_order: tuple[Stage, ...]
    loads: tuple[LoadState, ...]
    surfaces: Surfaces
    parts: tuple[Item, ...]
    openings: tuple[Item, ...]
    wires: tuple[Item, ...]
    straps: tuple[Item, ...]
    pipes: tuple[Item, ...]
    layers: tuple[Layer, ...]
    measured: tuple[Measured, ...]
    accepted: tuple[Accepted, ...]
    troubled: tuple[str, ...]
    frame: frame.Section
    layout: layout.Section
    structure: structure.Section
    weight: weight.Section
    towing: towing.Section
    heat: heat.Section
    air: air.Section
    power: power.Section
    water: water.Section
    safety: safety.Section
    cutting: cutting.Section
    stages: stages.Section

    def stage_number(self, word: str) -> int | None:
        """Return the number of a stage given by name or number, or None."""
        for stage in self.stages_in_order:
            if stage.name == word or str(stage.index) == word:
                return stage.index
        return None
