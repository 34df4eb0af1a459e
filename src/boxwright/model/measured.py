"""Readings as the builder types them: tickets, scales, planks, tapes."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import AliasChoices, BeforeValidator, Field, ValidationInfo

from boxwright.model.entry import Day, Entry, read_names, read_pairs
from boxwright.model.trailer import EachKilogram, Masses
from boxwright.units import (
    Band,
    HeaderUnits,
    KelvinBand,
    KilogramBand,
    MetreBand,
    RatioBand,
    WattPerKelvinBand,
    read_band,
)

LENGTH_KEYS = ("studs", "bows", "cross_members", "opening", "body")
"""The keys that say that lengths were read."""


def read_within(given: Any, info: ValidationInfo) -> Any:
    """Return how far a reading may be off: a length (m) where lengths were read, else a mass (kg)."""
    if given is None or isinstance(given, Band):
        return given
    is_length = any(info.data.get(key) for key in LENGTH_KEYS)
    header = (info.context or {}).get("header", HeaderUnits())
    return read_band(str(given), "length" if is_length else "mass", header)


class Plank(Entry):
    """A tongue reading by bathroom scale and plank: the plank rests on a brick and on the scale, the coupler between.

    ``reading`` is what the scale shows with the coupler down on the plank, ``bare`` what it shows under the plank
    alone. ``to_scale`` and ``to_ball`` are the distances from the brick.
    """

    reading: KilogramBand
    bare: KilogramBand | None = Field(None, description="what the scale shows under the plank alone")
    to_scale: MetreBand = Field(description="brick to scale, such as 48")
    to_ball: MetreBand = Field(description="brick to the middle of the coupler, such as 12")


class MeasuredWords(Entry):
    """One named reading. ``what`` is its kind: ticket, weighbridge, scale, plank, tape, seen, moisture, logged, ..."""

    what: str = Field("", description="ticket, weighbridge, scale, plank, tape, seen, moisture, logged")
    date: Day = Field(None, description="the day it was read")
    with_: str = Field("", alias="with", description="the instrument, such as public scale or luggage scale")
    how: str = ""
    stage: str = Field("", description="the stage the rig was in")
    load: str = Field("", description="the load state it was in; left out: nothing aboard, tanks empty")
    axles: Masses | None = Field(
        None, validation_alias=AliasChoices("axles", "wheels"), description="what the axles carry: one sum, or each"
    )
    tongue: KilogramBand | None = Field(None, validation_alias=AliasChoices("tongue", "nose"))
    total: KilogramBand | None = Field(None, description="the whole trailer, unhitched")
    left: KilogramBand | None = Field(None, description="the wheels of the left side")
    right: KilogramBand | None = Field(None, description="the wheels of the right side")
    hitched: Masses | None = Field(None, description="scale pads while hitched: steer axle, drive axle, trailer axles")
    alone: Masses | None = Field(None, description="the tow vehicle alone: steer axle, drive axle")
    plank: Plank | None = Field(None, description="{reading: 62, to_scale: 48, to_ball: 12}")
    part: str = Field("", description="the part that was weighed")
    weight: EachKilogram | None = Field(None, description="what the part weighs")
    studs: str = Field("", description="the wall whose studs were measured")
    bows: str = Field("", description="roof, where its bows were measured")
    cross_members: str = Field("", description="floor, where its cross-members were measured")
    opening: str = Field("", description="the opening whose edges were measured")
    body: str = Field("", description="inside or outside, where the box itself was measured")
    values: Annotated[tuple[tuple[str, str], ...], BeforeValidator(read_pairs)] = Field(
        (),
        description="stud number and place; of an opening its edges, front and rear behind the front wall, left and"
        " right from the left wall's stud face, bottom and top above the deck; such as {3: 48 1/8} or {front: 16 5/8}",
    )
    within: Annotated[KilogramBand | MetreBand | None, BeforeValidator(read_within)] = Field(
        None, description="how far scale or tape may be off, +- at 95 %, such as 1/8 in"
    )
    at: str = ""
    loses: WattPerKelvinBand | None = Field(
        None, description="what the room loses, air counted in, by a logged night, such as 48..61 W/K"
    )
    reckoned: WattPerKelvinBand | None = Field(None, description="what was worked out for that night, 52 W/K")
    inside: KelvinBand | None = Field(None, description="the mean inside through that night, 62 F")
    outside: KelvinBand | None = Field(None, description="the mean outside through that night, 30 F")
    log: str = Field("", description="the file of the logger, such as night.csv")
    wood: RatioBand | None = Field(None, description="moisture of the wood, 19 %")
    photo: Annotated[tuple[str, ...], BeforeValidator(read_names)] = ()
    note: str = ""
