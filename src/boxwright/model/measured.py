"""Readings as the builder types them: tickets, scales, planks, tapes."""

from __future__ import annotations

from typing import Annotated

from pydantic import AliasChoices, BeforeValidator, Field

from boxwright.model.entry import Day, Entry, read_names, read_pairs
from boxwright.model.trailer import EachKilogram, Masses
from boxwright.units import KilogramBand, MetreBand, RatioBand


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
    """One named reading. ``what`` is its kind: ticket, weighbridge, scale, plank, tape, seen, moisture, ..."""

    what: str = Field("", description="ticket, weighbridge, scale, plank, tape, seen, moisture")
    date: Day = Field(None, description="the day it was read")
    with_: str = Field("", alias="with", description="the instrument, such as public scale or luggage scale")
    how: str = ""
    stage: str = Field("", description="the stage the rig was in")
    load: str = Field("", description="the load state it was in; left out: nothing aboard, tanks empty")
    within: KilogramBand | None = Field(None, description="how far the scale may be off, +- at 95 %")
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
    bows: str = ""
    values: Annotated[tuple[tuple[str, str], ...], BeforeValidator(read_pairs)] = Field(
        (), description="stud number and place, such as {3: 48 1/8}"
    )
    at: str = ""
    wood: RatioBand | None = Field(None, description="moisture of the wood, 19 %")
    photo: Annotated[tuple[str, ...], BeforeValidator(read_names)] = ()
    note: str = ""
