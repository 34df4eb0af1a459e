"""Written keys of safety: alarms, expiry dates, ways out and what opens them from inside."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from boxwright.model.entry import Day, Entry, Names
from boxwright.model.place import Place, Surfaces
from boxwright.records import dataclass
from boxwright.units import Band, CannotRead, MetreBand

There = Literal["yes", "perhaps", "no"]

ALARMS = frozenset({"CO", "smoke", "gas"})
EGRESS = {"wanted": "wanted", "yes": "yes", "true": "yes", "no": "no", "false": "no", "none": "no"}
EGRESS |= {"unknown": "unknown", "?": "unknown"}
GENERATOR = {"yes": "yes", "true": "yes", "no": "no", "false": "no", "unknown": "unknown", "?": "unknown"}
FIRES = {"solids": "solids", "a": "solids", "liquids": "liquids", "b": "liquids"}
FIRES |= {"electric": "electric", "c": "electric", "e": "electric", "fat": "fat", "f": "fat", "k": "fat"}
FIRES |= {"abc": "solids, liquids, electric", "ab": "solids, liquids", "bc": "liquids, electric"}
"""What an extinguisher puts out, by word or by the letters on its label. The letter of electric fire is C in North
America; elsewhere C is gas, of which nothing is asked here."""


def read_alarms(given: object) -> object:
    """Return what an alarm warns of, each in its one spelling."""
    words = given if isinstance(given, (list, tuple)) else str(given).replace("+", ",").split(",")
    found = []
    for word in (str(each).strip() for each in words):
        name = next((alarm for alarm in ALARMS if alarm.lower() == word.lower()), None)
        if name is None:
            raise CannotRead(word, "what the alarm warns of", "CO, smoke, gas or [CO, smoke]")
        found.append(name)
    return tuple(found)


def read_egress(given: object) -> object:
    """Return whether an opening is meant as a way out: wanted, yes, no or unknown."""
    word = str(given).strip().lower()
    if word not in EGRESS:
        raise CannotRead(str(given), "the way out", "wanted, yes, no or unknown")
    return EGRESS[word]


def read_generator(given: object) -> object:
    """Return whether a thing is a generator: yes, no or unknown."""
    word = str(given).strip().lower()
    if word not in GENERATOR:
        raise CannotRead(str(given), "whether it is a generator", "yes, no or unknown")
    return GENERATOR[word]


def read_fires(given: object) -> object:
    """Return what an extinguisher puts out, from words or from the letters on its label."""
    words = given if isinstance(given, (list, tuple)) else str(given).replace("+", ",").split(",")
    found: list[str] = []
    for word in (str(each).strip().lower() for each in words):
        if word not in FIRES:
            raise CannotRead(word, "what it puts out", "solids, liquids, electric, fat, or the letters of its label")
        found += FIRES[word].split(", ")
    return tuple(dict.fromkeys(found))


class Clear(Entry):
    """What is left of an opening to get through, its unit opened as far as it goes: measured, not reckoned."""

    width: MetreBand | None = Field(None, description="clear width with the unit open, such as 22")
    height: MetreBand | None = Field(None, description="clear height with the unit open, such as 16 1/2")


class Facet(Entry):
    """What safety reads of a part or an opening."""

    expires: Day = Field(None, description="the day or month it is out of date, such as 2031-02")
    alarm: Annotated[Names, BeforeValidator(read_alarms)] = Field(
        (), description="what it warns of: CO, smoke, gas, or [CO, smoke]"
    )
    release: str = Field(
        "",
        description="an opening: inside, key, tool or none, what opens it from inside while it is barred outside; "
        "a part: the opening it releases, such as ramp",
    )
    egress: Annotated[str, BeforeValidator(read_egress)] = Field(
        "", description="is it meant as a way out: wanted, yes, no"
    )
    clear: Clear | None = Field(
        None, description="what one gets through with the unit open, measured: {width: 22, height: 16 1/2}"
    )
    puts_out: Annotated[Names, BeforeValidator(read_fires)] = Field(
        (), description="an extinguisher: solids, liquids, electric, fat, or the letters of its label, such as ABC"
    )
    burns: str = Field("", description="what it burns with a flame: propane, butane, spirit, wood; nothing")
    generator: Annotated[str, BeforeValidator(read_generator)] = Field(
        "", description="does an engine in it make electricity, so that its exhaust kills: yes, no, unknown"
    )
    shuts: str = Field("", description="what it shuts off: gas, fuel, battery or shore")


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Way:
    """An opening somebody could leave by, as planned.

    ``width`` and ``height`` are those of the hole. ``turns`` says how its leaf or its unit opens, in words.
    ``has_unit`` is True where a frame stands in the hole, so that less is left of it. ``goes`` is the angle its leaf
    opens to, None where nobody wrote how it opens. ``slid`` is how far its leaf slides, None where it does not
    or nobody wrote it; ``is_level`` that it uncovers the height of the hole and not its width. ``is_fixed`` says that
    it is written not to open at all. ``said_otherwise`` is what is written that does not go with its being there,
    such as now: screwed shut; empty where nothing is.
    """

    of: str
    name: str
    wall: str
    place: Place
    width: Band | None
    height: Band | None
    turns: str
    has_unit: bool
    is_cut: bool | None
    goes: Band | None
    slid: Band | None
    is_level: bool
    facet: Facet
    is_fixed: bool = False
    said_otherwise: str = ""


@dataclass(frozen=True, slots=True)
class Hole:
    """An opening of any kind: where it is, and what is in it today in the builder's words."""

    of: str
    name: str
    place: Place
    now: str
    wall: str = ""


@dataclass(frozen=True, slots=True)
class Kept:
    """A part as one thing safety judges: it warns, puts out, lets out, burns, runs an engine or holds fuel.

    ``burns`` is the fuel of its flame: empty where it has none, ``unknown`` where nobody wrote it. ``stage`` is when it
    goes in, in words; empty for one that never does. ``is_shut_in`` says that it is kept inside another thing.
    ``wants`` is the room its leaflet wants kept clear all round, None where nobody wrote it. ``rides_on`` is the name
    of what carries it: where that is away, nobody knows whether it still hangs. ``middles`` are the places along the
    trailer (m) of one line that stands for several, empty where it stands for one.
    """

    of: str
    name: str
    what: str
    facet: Facet
    burns: str = ""
    stage: str = ""
    is_planned: bool = True
    is_shut_in: bool = False
    wants: Band | None = None
    rides_on: str = ""
    middles: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Lead:
    """A wire, as planned: from what feeds it to what, by the names of things of the file; empty where it is none of it.

    ``is_plugged`` says that it is fed from outside by a cable, and so dead while nothing is plugged in; ``is_fused``
    that it has a fuse to take out; ``is_mains`` that it carries what comes from outside.
    """

    of: str
    name: str
    starts: str
    ends: str
    is_plugged: bool
    is_fused: bool
    is_mains: bool
    is_capped: bool
    now: str


@dataclass(frozen=True, slots=True)
class Strung:
    """A wire in one slot: whether it stands for certain, and whether what feeds it and what it feeds does."""

    lead: Lead
    is_there: bool
    fed: There
    reaches: There


@dataclass(frozen=True, slots=True)
class Half:
    """A thing that is ticked as done in part, with what is there in the builder's words; ``is_sheet`` of a wall."""

    of: str
    name: str
    is_sheet: bool
    now: str


@dataclass(frozen=True, slots=True)
class Store:
    """A tank or a can with what is in it, in one slot: how full (0 to 1) and how sure it is that it stands."""

    of: str
    name: str
    fluid: str
    place: Place
    fill: Band
    is_there: bool


@dataclass(frozen=True, slots=True)
class Stood:
    """Where a part is in one slot, and whether it stands for certain."""

    of: str
    name: str
    place: Place
    is_there: bool


@dataclass(frozen=True, slots=True)
class Sleeper:
    """Somebody who sleeps in the trailer, and on which part; ``bed`` is empty where nobody wrote it."""

    name: str
    bed: str


@dataclass(frozen=True, slots=True)
class ShutOff:
    """What is turned off in an emergency, where, in words for the card at the door."""

    what: str
    words: str
    of: str


@dataclass(frozen=True, slots=True)
class Section:
    """What safety sees of the rig, whatever stands. ``beds`` are the parts somebody may lie on for a while instead.

    ``counted`` are the parts slept on that are several pieces in one line, and so in one place, and how many;
    ``padded`` those with a mattress, and how thick that is (m); ``folding`` the parts that fold up.
    """

    ways: tuple[Way, ...] = ()
    holes: tuple[Hole, ...] = ()
    kept: tuple[Kept, ...] = ()
    beds: tuple[str, ...] = ()
    counted: tuple[tuple[str, int], ...] = ()
    sleepers: tuple[Sleeper, ...] = ()
    shut_offs: tuple[ShutOff, ...] = ()
    leads: tuple[Lead, ...] = ()
    halves: tuple[Half, ...] = ()
    room: Surfaces | None = None
    padded: tuple[tuple[str, float], ...] = ()
    folding: tuple[str, ...] = ()
