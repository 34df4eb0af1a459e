"""Written keys of heat: the heater on a part, the climate of a place."""

from __future__ import annotations

import re
from datetime import date
from typing import Annotated, Literal

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from boxwright.model.each import Alone
from boxwright.model.entry import Day, Entry, Names, YesNo
from boxwright.model.place import Place
from boxwright.records import dataclass
from boxwright.units import (
    AmpereBandNamed,
    Band,
    HoursBandNamed,
    KelvinBand,
    MetreBand,
    SquareMetreBand,
    Unit,
    WattBand,
)

FuelFlow = Annotated[Band, Unit("m**3/s", "fuel flow", doubtful=True)]
StrokesAMinute = Annotated[Band, Unit("1/s", "strokes", bare="1/min", doubtful=True)]
Millilitres = Annotated[Band, Unit("m**3", "volume", bare="ml", doubtful=True)]
Sun = Annotated[Band, Unit("J/m**2", "irradiation", doubtful=True)]
Speed = Annotated[Band, Unit("m/s", "speed", doubtful=True)]


COLDEST_NIGHT, MILDEST_NIGHT = 218.1, 313.2
"""K: beyond them no night is worked out, for the formulas of moist air end there."""
MILDEST_DAY, HOTTEST_DAY = 273.1, 328.2
"""K: between them lies the hottest hour of a hot day."""
COLDEST_ROOM, WARMEST_ROOM = 273.1, 313.2
"""K: what a heater may be set to."""


def a_night(given: Band) -> Band:
    """Return the temperature of a night after refusing one that nobody camps in."""
    if given.known and not (given.low >= COLDEST_NIGHT and given.high <= MILDEST_NIGHT):
        raise ValueError("no night colder than -55 C or milder than 40 C is worked out; write it as -5 C or 20 F")
    return given


def a_day(given: Band) -> Band:
    """Return how hot a day gets after refusing one that no weather station has read."""
    if given.known and not (given.low >= MILDEST_DAY and given.high <= HOTTEST_DAY):
        raise ValueError("no day whose hottest hour is below 0 C or above 55 C is worked out; write it as 36 C or 97 F")
    return given


def a_room(given: Band) -> Band:
    """Return what a heater is set to after refusing what nobody sleeps in."""
    if given.known and not (given.low >= COLDEST_ROOM and given.high <= WARMEST_ROOM):
        raise ValueError("no room is held below 0 C or above 40 C; write it as 17 C or 62 F")
    return given


def above_the_sea(given: object) -> object:
    """Return a height above the sea as written, after refusing one without a unit: that of walls would be taken."""
    if isinstance(given, str) and re.fullmatch(r"[\d.,\s+-]*[1-9][\d.,\s+-]*", given.removeprefix("about")):
        raise ValueError(f'a height above the sea wants its unit; write it as "{given} m" or "{given} ft"')
    return given


class Burn(Entry):
    """What a heater burns; one value alone is the same at both ends."""

    lowest: FuelFlow | None = Field(None, description="fuel burnt on the lowest setting, such as 0.030 gal/h")
    highest: FuelFlow | None = Field(None, description="fuel burnt on the highest setting, such as 0.065 gal/h")

    @model_validator(mode="before")
    @classmethod
    def _from_text(cls, given: object) -> object:
        return {"lowest": given, "highest": given} if isinstance(given, str) else given


class Counted(Entry):
    """Strokes of the metering pump counted for a minute, and what each moves: a burn that was measured."""

    lowest: StrokesAMinute | None = Field(None, description="strokes in a minute on the lowest setting, such as 47")
    highest: StrokesAMinute | None = Field(None, description="strokes in a minute on the highest setting, such as 104")
    each: Millilitres | None = Field(None, description="what a stroke moves, on the pump's plate, such as 0.04 ml")
    date: Day = Field(None, description="the day they were counted")


LEVEL = re.compile(r"(\d+(?:\.\d+)?)(?:\s*\.\.\s*(\d+(?:\.\d+)?))?\s*dB(?:\s*\(?A\)?)?", re.IGNORECASE)
"""The level of a sound as written: one number, or two with dots between."""


def a_level(given: str) -> str:
    """Return the level of a sound after refusing what is none."""
    if given and given.strip().lower() != "unknown" and LEVEL.fullmatch(given.strip()) is None:
        raise ValueError(f'cannot read the level "{given}"; write it as 52 dB, or 50..55 dB')
    return given


class Noise(Entry):
    """How loud a heater is, and how far those are who sleep."""

    level: Annotated[str, AfterValidator(a_level)] = Field("", description="its level by its leaflet, such as 52 dB")
    at: MetreBand | None = Field(None, description="the distance that level was taken at, such as 40")
    pillow: MetreBand | None = Field(None, description="from the heater or its exhaust to the pillow, such as 80")
    neighbour: MetreBand | None = Field(None, description="from its exhaust to where neighbours sleep, such as 400")


class Pipe(Entry):
    """The exhaust or the combustion air pipe of a heater."""

    out: str = Field("", description="the side it leaves by: left, right, rear, below floor")
    below: str = Field("", description="what it runs below, such as floor")
    length: MetreBand | None = Field(None, description="its length, such as 20")
    x: MetreBand | None = Field(None, description="where its end is, behind the front stud face, such as 46")
    z: MetreBand | None = Field(None, description="how high its end is above the deck, such as -6 for below it")
    falls: YesNo = Field(None, description="does an exhaust fall all the way, or drain at its lowest place: yes or no")
    longest: MetreBand | None = Field(None, description="how long its leaflet lets it be, such as 78")
    clear: MetreBand | None = Field(None, description="how near its hot pipe comes to wood, foam or wire, such as 2")


def pieces_of(given: object) -> object:
    """Return the pieces of a way that is written in one line, with ``>`` or commas between them, as a list."""
    if not isinstance(given, str):
        return given
    return [piece for one in re.split(r"->|→|>|,", given) if (piece := one.strip())]


class Heater(Entry):
    """A heater; its span of operation has two keys, because two dots would mean doubt."""

    of: str = Field("", description="what it burns or runs on: diesel, petrol, propane, wood, electric")
    lowest: WattBand | None = Field(None, description="heat on the lowest setting, such as 900 W")
    highest: WattBand | None = Field(None, description="heat on the highest setting, such as 2000 W")
    burn: Burn | None = Field(None, description="fuel burnt, such as {lowest: 0.030 gal/h, highest: 0.065 gal/h}")
    counted: Counted | None = Field(
        None, description="its pump counted, such as {lowest: 47, highest: 104, each: 0.04 ml, date: 2026-10-03}"
    )
    holds: Annotated[KelvinBand, AfterValidator(a_room)] | None = Field(
        None, description="the room temperature it is set to, such as 62"
    )
    switches: YesNo = Field(None, description="does it go off by itself when the room is warm enough: yes or no")
    lasts: HoursBandNamed | None = Field(None, description="how long a filling is said to last, such as 20 h")
    draw: AmpereBandNamed | None = Field(None, description="current while it runs, such as 1.2 A")
    start: AmpereBandNamed | None = Field(None, description="current while it starts, such as 9 A")
    fed_by: str = Field(
        "", description="what feeds it with electricity where no wire to it is written, such as inlet-30A"
    )
    path: Annotated[Names, BeforeValidator(pieces_of)] = Field(
        (),
        description="the way of the fuel, each piece with where it lies, such as [heater-fuel, valve at tank, filter"
        " below floor, pump below floor z -4 at 30 deg, line 2 mm bore, heater]",
    )
    thickens: KelvinBand | None = Field(
        None, description="the cold at which its diesel thickens, by whoever sells it, such as -20 C"
    )
    reach: YesNo = Field(None, description="does a hand reach valve, filter and pump: yes or no")
    exhaust: Annotated[Pipe, Alone("out")] | None = Field(
        None, description="the exhaust, such as {out: left, below: floor, length: 20}"
    )
    intake: Annotated[Pipe, Alone("out")] | None = Field(
        None, description="the combustion air, such as {out: below floor, x: 46}"
    )
    up_to: MetreBand | None = Field(
        None, description="how high above the sea its leaflet lets it burn as it is set, such as 5000 ft"
    )
    adjusts: YesNo = Field(None, description="does it take less fuel up high by itself: yes or no")
    noise: Noise | None = Field(
        None, description="how loud it is, such as {level: 52 dB, at: 40, pillow: 80, neighbour: 400}"
    )
    plate: KelvinBand | None = Field(
        None, description="how hot what it is screwed to gets at its highest setting, such as 120"
    )


class Month(Entry):
    """The climate of one month."""

    low: KelvinBand | None = Field(None, description="mean of the daily lows, such as 30")
    high: KelvinBand | None = Field(None, description="mean of the daily highs, such as 49")
    sun: Sun | None = Field(None, description="sun on level ground in a day, such as 2.5 kWh/m2")
    wind: Speed | None = Field(None, description="mean wind, such as 18 mph")


class ClimateFacet(Entry):
    """What heat reads of a place."""

    coldest_design: Annotated[KelvinBand, AfterValidator(a_night)] | None = Field(
        None, description="the night the heater is chosen for, such as 18"
    )
    hottest_design: Annotated[KelvinBand, AfterValidator(a_day)] | None = Field(
        None, description="the hottest hour of the hottest day people are in it, such as 97"
    )
    height: Annotated[MetreBand, BeforeValidator(above_the_sea)] | None = Field(
        None, description="how high it lies above the sea, with its unit, such as 890 ft"
    )
    january: Month | None = Field(None, description="such as {low: 30, high: 49, sun: 2.5 kWh/m2}")
    february: Month | None = Field(None, description="as january")
    march: Month | None = Field(None, description="as january")
    april: Month | None = Field(None, description="as january")
    may: Month | None = Field(None, description="as january")
    june: Month | None = Field(None, description="as january")
    july: Month | None = Field(None, description="such as {high: 89, sun: 5.9 kWh/m2}")
    august: Month | None = Field(None, description="as january")
    september: Month | None = Field(None, description="as january")
    october: Month | None = Field(None, description="as january")
    november: Month | None = Field(None, description="as january")
    december: Month | None = Field(None, description="as january")


MONTHS = tuple(name for name, field in ClimateFacet.model_fields.items() if field.annotation == Month | None)
"""The months of a place, as its facet names them, from January on."""


class Cooler(Entry):
    """What makes cold: what it takes out of the room, and where its warm side breathes and its water goes."""

    of: str = Field("", description="window, split, roof or portable: with its warm side outside by itself or not")
    heat: WattBand | None = Field(None, description="what it takes out of the room by its plate, such as 5000 BTU/h")
    draw: AmpereBandNamed | None = Field(None, description="current while it runs, such as 5 A")
    hatch: str = Field("", description="the opening its warm side breathes through, such as hatch-left; or none")
    passes: SquareMetreBand | None = Field(
        None, description="what its warm air passes in all, in and out, mesh and louvres taken off, such as 200 sq in"
    )
    returns: YesNo = Field(None, description="does its warm air come back to where it breathes in: yes or no")
    drains: str = Field("", description="where its water goes, such as below floor")
    fed_by: str = Field(
        "",
        description="what feeds it with electricity, such as inlet-30A or inverter; where it is not written, its wires",
    )


class Facet(Entry):
    """What heat reads of a part."""

    heater: Annotated[Heater, Alone("highest")] | None = Field(
        None, description="its heat, such as {of: diesel, lowest: 900 W, highest: 2000 W}, or 2000 W alone"
    )
    cools: Annotated[Cooler, Alone("heat")] | None = Field(
        None, description="its cold, such as {of: window, heat: 5000 BTU/h, hatch: hatch-left, drains: below floor}"
    )


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}
FACET_OF: dict[str, type[Entry]] = {"places": ClimateFacet}


@dataclass(frozen=True, slots=True)
class PlannedHeater:
    """A part of the plan that gives heat, and its place; whether it stands comes with each slot.

    ``count`` is how many of them its line tells of: what they give is counted once, what they take as often.
    """

    of: str
    name: str
    place: Place
    heater: Heater
    count: int = 1


@dataclass(frozen=True, slots=True)
class PlannedCooler:
    """A part of the plan that makes cold; whether it stands comes with each slot. ``count`` is as of a heater."""

    of: str
    name: str
    cools: Cooler
    count: int = 1


@dataclass(frozen=True, slots=True)
class FuelTank:
    """A tank that stands in one load state: what is in it, how much it holds (m3) and how full it is (0 to 1).

    ``low`` and ``high`` are how high its under and upper side are above the deck, ``where`` the side of the shell.
    """

    of: str
    name: str
    fluid: str
    volume: Band
    fill: Band
    low: Band
    high: Band
    is_certain: bool
    where: Literal["in the room", "outside", "unknown"]


@dataclass(frozen=True, slots=True)
class PlannedSource:
    """A thing of the plan that electricity may come from or pass, by the name wires give it.

    ``rated`` (J) is what a battery holds by its label: None where it is none, not known where its label is not written
    whole; ``made_of`` is the kind of it. ``is_opening`` says that it lies in the shell: a cable from outside comes in.
    ``volts`` and ``most_amps`` are those of its label: its voltage, and the most it gives without a break; None where
    nobody wrote them. ``gives`` (W) is the most an inverter passes on without a break: None where it is none; ``idle``
    (W) what it takes while nothing runs. ``charges`` (A) is what it charges a battery with and ``charged_from`` what
    feeds it then; ``is_panel`` that the sun does. ``joined`` are the names of the others it is one bank with.
    """

    of: str
    name: str
    rated: Band | None = None
    made_of: str = ""
    is_opening: bool = False
    volts: Band | None = None
    most_amps: Band | None = None
    gives: Band | None = None
    idle: Band | None = None
    charges: Band | None = None
    charged_from: str = ""
    is_panel: bool = False
    joined: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlannedLead:
    """A wire of the plan, by the names of what it starts and ends at.

    ``amps`` is what its fuse or breaker lets through: None where it has none, not known where nobody can read it.
    ``volts`` are those written of it; None where they are those of what it comes from.
    """

    of: str
    name: str
    starts: str
    ends: str
    amps: Band | None = None
    volts: Band | None = None


@dataclass(frozen=True, slots=True)
class PlannedJoin:
    """A wire that joins two things of the plan, by their names, and ``how`` as written: series, parallel."""

    of: str
    one: str
    other: str
    how: str


@dataclass(frozen=True, slots=True)
class PlannedDraw:
    """What else takes electricity while people sleep: amperes or watts of each of ``count`` pieces, and for how long.

    ``hours`` (s of a day) and ``duty`` are None where nobody wrote them; ``of`` is the part that has to stand.
    """

    of: str
    name: str
    amps: Band | None
    watts: Band | None
    count: int
    hours: Band | None
    duty: Band | None


@dataclass(frozen=True, slots=True)
class ProvedLoss:
    """A loss (W/K, air counted in) that a logged night told: K inside and outside, what was worked out for it then."""

    of: str
    on: date | None
    log: str
    loss: Band | None
    reckoned: Band | None
    inside: Band | None
    outside: Band | None


@dataclass(frozen=True, slots=True)
class Section:
    """The climates as written, how far north and east each place lies (rad), by its name; what warms and cools.

    ``sources``, ``leads`` and ``draws`` are what may feed a heater and what else takes from it; ``tanks`` the names of
    every tank of the plan; ``joins`` make one bank of batteries; ``proved`` what logged nights told.
    """

    climates: tuple[tuple[str, ClimateFacet], ...] = ()
    heaters: tuple[PlannedHeater, ...] = ()
    latitudes: tuple[tuple[str, float], ...] = ()
    longitudes: tuple[tuple[str, float], ...] = ()
    coolers: tuple[PlannedCooler, ...] = ()
    sources: tuple[PlannedSource, ...] = ()
    leads: tuple[PlannedLead, ...] = ()
    draws: tuple[PlannedDraw, ...] = ()
    joins: tuple[PlannedJoin, ...] = ()
    tanks: tuple[str, ...] = ()
    proved: tuple[ProvedLoss, ...] = ()
