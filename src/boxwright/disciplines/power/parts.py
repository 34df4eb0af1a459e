"""Written keys of power: what draws, what stores and charges, the wires between them and the habits of use."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated

from pydantic import AfterValidator, AliasChoices, Field, model_validator

from boxwright.model.each import Alone, split_each
from boxwright.model.entry import Entry, YesNo
from boxwright.records import dataclass
from boxwright.units import (
    AmpereBand,
    AmpereBandNamed,
    AmpereHourBandNamed,
    Band,
    CannotRead,
    HoursBandNamed,
    KelvinBand,
    MetreBand,
    RatioBand,
    Unit,
    VoltBandNamed,
    WattBand,
    WattBandNamed,
    WireAreaBand,
)

PerKelvinBand = Annotated[Band, Unit("1/K", "temperature coefficient", doubtful=True)]

SMALLEST_PROTECTION, LARGEST_PROTECTION = 0.5, 400.0
"""Amperes between which a fuse or a breaker of a trailer lies; outside it is a slip (common practice, no source)."""


def sane_protection(amps: Band) -> Band:
    """Return a fuse's rating after refusing one that no trailer has."""
    if amps.known and not SMALLEST_PROTECTION <= amps.best <= LARGEST_PROTECTION:
        other = f"{amps.best / 1000:g} A for {amps.best:g} mA" if amps.best > LARGEST_PROTECTION else "1 A"
        raise CannotRead(f"{amps.best:g} A", "the fuse", f"15 A (from 0.5 A to 400 A), or as {other}")
    return amps


class Draw(Entry):
    """What a thing takes while it is on: amperes of its own bus, or watts; ``is_each`` where it is per piece."""

    amps: AmpereBand | None = None
    watts: WattBand | None = None
    is_each: bool = False

    @model_validator(mode="before")
    @classmethod
    def _from_text(cls, given: object) -> object:
        if isinstance(given, (Mapping, cls)):
            return given
        text, is_each = split_each(str(given))
        if re.search(r"[wW](atts?)?\b|hp\b", text):
            return {"watts": text, "is_each": is_each}
        if re.fullmatch(r"[-+~.0-9 ]*", text.removeprefix("about ")) and re.search(r"\d", text):
            raise CannotRead(str(given), "the draw", f'"{text} A" or "{text} W"')
        return {"amps": text, "is_each": is_each}


class Battery(Entry):
    """A battery as its label says it."""

    kind: str = Field("", description="LiFePO4, AGM, gel, flooded")
    volts: VoltBandNamed | None = Field(None, description="nominal voltage, such as 12.8")
    amp_hours: AmpereHourBandNamed | None = Field(None, alias="Ah", description="rated charge, such as 200")
    max_amps: AmpereBandNamed | None = Field(None, description="the most it gives without a break, such as 150")
    charge_above: KelvinBand | None = Field(None, description="coldest cell it may be charged at, such as 32 F")


class Panel(Entry):
    """A solar panel as its label says it."""

    watts: WattBandNamed | None = Field(None, description="rated power, such as 200")
    open_circuit_volts: VoltBandNamed | None = Field(
        None, alias="Voc", description="open circuit voltage, such as 24.3"
    )
    short_circuit_amps: AmpereBandNamed | None = Field(
        None, alias="Isc", description="short circuit current, such as 10.4"
    )
    voltage_coefficient: PerKelvinBand | None = Field(
        None, alias="Voc_coeff", description="change of Voc with warmth, such as -0.28 %/C"
    )


class Charger(Entry):
    """A charger: from the mains, from the tow vehicle, or a solar controller."""

    from_: str = Field("", alias="from", description="what feeds it: inlet-30A, tow-socket, solar-2")
    volts_in: VoltBandNamed | None = Field(None, description="voltage that feeds it, such as 120")
    max_volts: VoltBandNamed | None = Field(None, description="the most it stands at its input, such as 100")
    amps: AmpereBandNamed | None = Field(None, description="charging current, such as 45")


class Inverter(Entry):
    """An inverter; ``inverter: 1000 W`` alone is its rated power."""

    watts: WattBandNamed | None = Field(None, description="power it gives without a break, such as 1000")
    idle: WattBandNamed | None = Field(None, description="what it takes while nothing is plugged in, such as 8 W")


class Facet(Entry):
    """What power reads of a part or an opening."""

    draw: Draw | None = Field(None, description="what it takes while on: 60 W, 0.25 A each, or such as 4.2 A")
    hours: HoursBandNamed | None = Field(None, description="how long it is on in a day, such as 4 or 30 min")
    duty: RatioBand | None = Field(None, description="share of that time it really draws, such as 0.35 or 35 %")
    battery: Battery | None = Field(None, description="such as {kind: LiFePO4, volts: 12.8, Ah: 200}")
    panel: Annotated[Panel, Alone("watts")] | None = Field(
        None, description="such as {watts: 200, Voc: 24.3, Isc: 10.4, Voc_coeff: -0.28 %/C}"
    )
    charger: Annotated[Charger, Alone("amps")] | None = Field(
        None, description="such as {from: inlet-30A, volts_in: 120, amps: 45}"
    )
    inverter: Annotated[Inverter, Alone("watts")] | None = Field(None, description="such as {watts: 1000, idle: 8 W}")
    rcd: YesNo = Field(None, description="is there a residual current device (GFCI) in it: yes, no, unknown")


class Protection(Entry):
    """A fuse or a breaker; ``fuse: 15 A`` alone is its rating, ``fuse: none`` says that there is none."""

    amps: Annotated[AmpereBandNamed, AfterValidator(sane_protection)] | None = Field(
        None, description="rating, such as 15 A"
    )
    kind: str = Field("", description="blade, class T, MEGA, ...; none where the wire has none")
    at: str = Field("", description="where it sits, such as battery")

    @model_validator(mode="before")
    @classmethod
    def _none(cls, given: object) -> object:
        if isinstance(given, Mapping) and str(given.get("amps", "")).strip().lower() in {"none", "no"}:
            return {"kind": "none", **{key: value for key, value in given.items() if key != "amps"}}
        return given


class Wire(Entry):
    """One wire or pair, from source to load; its current comes from what it feeds."""

    from_: str = Field("", alias="from", description="where it starts, such as fuse-panel")
    to: str = Field("", description="where it ends, such as fridge, or a place such as left x150 z50")
    route: str = Field("", description="its way, such as front z24 > left z74 > ceiling x72")
    length: MetreBand | None = Field(None, description="one way, measured with string; else it comes from route, 14'")
    gauge: WireAreaBand | None = Field(
        None, validation_alias=AliasChoices("gauge", "size"), description="size of one conductor: 12, 2/0, 2.5 mm2"
    )
    fuse: Annotated[Protection, Alone("amps")] | None = Field(
        None, description="15 A, or {amps: 100, kind: class T, at: battery}; none; unknown"
    )
    breaker: Annotated[Protection, Alone("amps")] | None = Field(None, description="as fuse, such as 30 A")
    volts: VoltBandNamed | None = Field(None, description="its voltage where it is not the battery's, such as 120")
    bundle: int | None = Field(None, ge=1, le=100, description="how many loaded wires share its loom, such as 4")
    ends: str = Field("", description="how its ends are left: capped, taped, live")
    joins: str = Field("", description="how it joins two panels or batteries: series, parallel")
    by: str = Field("", description="who pulled it, such as trailer builder")


class Habit(Entry):
    """Something done often that draws current from a part."""

    at: str = Field("", description="the part it draws from, such as sockets")
    draw: Draw | None = Field(None, description="what it takes while it lasts, such as 5 A or 60 W")
    hours: HoursBandNamed | None = Field(None, description="how long in a day, such as 4")


NAMED: dict[str, type[Entry]] = {"wires": Wire, "habits": Habit}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Section:
    """The wires and habits as written, by name."""

    wires: tuple[tuple[str, Wire], ...] = ()
    habits: tuple[tuple[str, Habit], ...] = ()
