"""What a slot comes to, as records, and the small steps that pick what one discipline hands to another."""

from __future__ import annotations

from boxwright.disciplines import air, frame, heat, layout, safety, structure, towing, water, weight
from boxwright.disciplines.frame.parts import PlannedBacking, PlannedRecess, StandingOpening
from boxwright.disciplines.safety.parts import Half, Stood, Store, Strung, There
from boxwright.disciplines.safety.telling import name_of
from boxwright.disciplines.structure.parts import Fastened
from boxwright.disciplines.water.parts import StandingTank
from boxwright.disciplines.weight.result import Output
from boxwright.exchange import Box, Fixing, Mass
from boxwright.finding import Finding
from boxwright.model.part import Frame
from boxwright.records import dataclass
from boxwright.study.once import Failed

Tongues = tuple[tuple[str, Output], ...]


@dataclass(frozen=True, slots=True)
class Weighed:
    """What one slot weighs and where its weight goes."""

    box: Box | Failed
    masses: tuple[Mass, ...] | Failed
    weight: weight.Result | Failed


@dataclass(frozen=True, slots=True)
class Worked:
    """What one slot came to beyond its weight, and all that is said. `Failed` where a calculation broke off."""

    frame: frame.Result | Failed
    layout: layout.Result | Failed
    towing: towing.Result | Failed
    heat: heat.Result | Failed
    air: air.Result | Failed
    safety: safety.Result | Failed
    said: tuple[tuple[Finding, ...] | Failed, ...]


def pooled(*offered: frame.Offers | water.Offers | weight.Offers) -> tuple[Mass, ...]:
    """Return the masses of all who offer some."""
    return tuple(mass for offers in offered for mass in offers.masses)


def box_of(offered: frame.Offers) -> Box:
    """Return the trailer as a body on wheels."""
    return offered.box


def fixings_of(offered: structure.Offers) -> tuple[Fixing, ...]:
    """Return where hinges and screws bite."""
    return offered.fixings


def standing_of(
    frames: tuple[Frame, ...],
    backings: tuple[PlannedBacking, ...],
    fastened: tuple[Fastened, ...],
    recesses: tuple[PlannedRecess, ...],
) -> tuple[tuple[str, str], ...]:
    """Return how all that hangs on the frame or behind it stands, so that no new weight makes the frame new."""
    wanted = {one.of for one in backings} | {one.of for one in fastened} | {one.of for one in recesses}
    return tuple((one.of, one.stands) for one in frames if one.of in wanted)


def kept_standing(frames: tuple[Frame, ...], own: safety.Section) -> tuple[Stood, ...]:
    """Return where what safety judges stands, without what it weighs, so that no new weight makes it new.

    What rides on a thing that is not surely there is not surely there itself.
    """
    there = {one.name for one in frames if one.stands == "yes"}
    loose = {one.of for one in own.kept if one.rides_on and one.rides_on not in there}
    wanted = {one.of for one in own.kept} | set(own.beds)
    names = {one.bed for one in own.sleepers if one.bed}
    return tuple(
        Stood(one.of, one.name, one.place, one.stands == "yes" and one.of not in loose)
        for one in frames
        if one.of in wanted or one.name in names
    )


def openings_standing(openings: tuple[StandingOpening, ...]) -> tuple[tuple[str, bool], ...]:
    """Return the openings that stand, each with whether it does so for certain."""
    return tuple((one.of, one.share.low == one.share.high) for one in openings)


def strung_of(
    wires: tuple[tuple[str, bool], ...],
    frames: tuple[Frame, ...],
    openings: tuple[StandingOpening, ...],
    own: safety.Section,
) -> tuple[Strung, ...]:
    """Return the wires that stand, each with whether what feeds it and what it feeds stand too."""
    there: dict[str, There] = {one.name: one.stands for one in frames}
    there |= {name_of(of): "yes" if is_sure else "perhaps" for of, is_sure in openings_standing(openings)}
    strung = dict(wires)
    return tuple(
        Strung(
            lead,
            strung[lead.of],
            there.get(lead.starts, "no") if lead.starts else "perhaps",
            there.get(lead.ends, "no"),
        )
        for lead in own.leads
        if lead.of in strung
    )


def halves_of(perhaps: tuple[str, ...], own: safety.Section) -> tuple[Half, ...]:
    """Return what is there in part."""
    return tuple(one for one in own.halves if one.of in perhaps)


def stores_of(tanks: tuple[StandingTank, ...]) -> tuple[Store, ...]:
    """Return every tank with what is in it and where it stands."""
    return tuple(
        Store(one.of, one.name, one.tank.of, one.place, one.fill, one.share.low == one.share.high) for one in tanks
    )
