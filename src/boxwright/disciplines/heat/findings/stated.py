"""The rule of stated hours: how long a filling is said to last, against what is in it and what the heater gives."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from boxwright.disciplines.heat.burner import FUELS, fuel_named
from boxwright.disciplines.heat.burning import burns_as_counted, burns_of
from boxwright.disciplines.heat.findings.night import MARGINS
from boxwright.disciplines.heat.method import filling_lasts, fuel_burnt, heat_of_filling
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, source_of
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show, show_band

CONTRADICT = MARGINS["contradict"]


def stated_hours(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the hours a filling is said to last contradict the heat a heater gives, or what it is said to burn.

    Asks: the heat in a filling over the hours it is said to last, against the heater's lowest and highest setting; the
        hours a full tank lasts at what is burnt on either, as it was counted or is said
    Limit: between them, with what efficiencies differ by
    Source: fuel-handbook; efficiency by heater-practice
    Lever: lasts of the heater, its settings, a measured burn
    """
    for one in result.heaters:
        told = _apart_by_heat(one, shown_in) or _apart_by_burn(one, shown_in)
        if told is None:
            continue
        fuel, name, where = fuel_named(one.planned.heater.of), one.planned.name, one.planned.of
        says = f"a filling of {name} is said to last {told.says}{_lasting_in_words(one, shown_in)}"
        yield Finding(
            "heat/stated-hours", where, "advice", says, told.given, told.limit, -abs(told.given - told.limit),
            told.unit, source_of("fuel", fuel) if fuel in FUELS else OWN_RULE, where, act="Fill to a mark, run it for"
            " some hours on one setting, fill to the mark again; look whether all of the tank can be drawn, and whether"
            " it is the heater the plate says", minutes=240, because=(where,),
        )  # fmt: skip


class Apart(NamedTuple):
    """What stated hours come to, the limit they are beyond, in what unit, and how that is said."""

    says: str
    given: float
    limit: float
    unit: str


def _apart_by_heat(one: StandingHeater, shown_in: HeaderUnits) -> Apart | None:
    """Return stated hours that ask for more heat than a heater gives flat out, or less than at its lowest."""
    facet, fuel = one.planned.heater, fuel_named(one.planned.heater.of)
    said, given = facet.lasts, _given(one, facet.lasts)
    lowest, highest = facet.lowest, facet.highest
    if said is None or given is None or lowest is None or highest is None:
        return None
    if not (lowest.known and highest.known) or (given.high >= lowest.low and given.low <= highest.high):
        return None
    is_more = given.low > highest.high
    bound = highest if is_more else lowest
    says = f"{show(said.best, 'time', shown_in)}: by what is in {fuel} that is {show(given.best, 'power', shown_in)} of"
    says += f" heat, {'more' if is_more else 'less'} than it gives {'flat out' if is_more else 'at its lowest'},"
    return Apart(f"{says} {show(bound.best, 'power', shown_in)}", given.best, bound.best, "W")


def _apart_by_burn(one: StandingHeater, shown_in: HeaderUnits) -> Apart | None:
    """Return stated hours in which a full tank is not burnt at the lowest setting, or is empty before flat out."""
    said, by_burn = one.planned.heater.lasts, hours_by_burn(one)
    if said is None or not said.known or by_burn is None:
        return None
    flat_out, slow = by_burn
    hours = show(said.best, "time", shown_in)
    if flat_out is not None and said.high < flat_out.low:
        says = f"{hours}, less than its tank lasts flat out at what is burnt then: it was not full, not all of it can"
        return Apart(f"{says} be drawn, or more is burnt", said.best, flat_out.low, "s")
    if slow is not None and said.low > slow.high:
        says = (
            f"{hours}, longer than its tank lasts at its lowest at what is burnt then: less is, or it was off between"
        )
        return Apart(says, said.best, slow.high, "s")
    return None


def _lasting_in_words(one: StandingHeater, shown_in: HeaderUnits) -> str:
    """Return how long a filling lasts by what is in the fuel, and by what is burnt, where both can be worked out."""
    says, lasting, by_burn = "", hours_by_heat(one), hours_by_burn(one)
    if lasting is not None:
        says += f"; by its heat it lasts {show_band(lasting.flat_out, 'time', shown_in)} flat out and"
        says += f" {show_band(lasting.slow, 'time', shown_in)} at its lowest"
    if by_burn is not None:
        both = (("flat out", by_burn.flat_out), ("at its lowest", by_burn.slow))
        told = [f"{show_band(each, 'time', shown_in)} {at}" for at, each in both if each is not None]
        says += f"; by what it is {'counted' if is_counted(one) else 'said'} to burn {' and '.join(told)}"
    return says


def heat_by_hours(one: StandingHeater) -> Band | None:
    """Return the heat (W) the hours a filling is said to last come to; None where a number of it is not known."""
    return _given(one, one.planned.heater.lasts)


def _given(one: StandingHeater, lasts: Band | None) -> Band | None:
    """Return the heat a heater gives if its filling lasts so long (W); None where a number of it is not known."""
    fuel, tank = fuel_named(one.planned.heater.of), one.tank
    if fuel not in FUELS or tank is None or not tank.volume.known or lasts is None or not lasts.known:
        return None
    if tank.volume.low <= 0.0 or lasts.low <= 0.0:
        return None
    content, efficiency, worst, best = FUELS[fuel]
    volume = tank.volume
    return Band(
        heat_of_filling(volume.best, lasts.best, efficiency, content),
        heat_of_filling(volume.low, lasts.high, worst, content),
        heat_of_filling(volume.high, lasts.low, best, content),
        spread="interval",
        assumed=True,
    )


class Filling(NamedTuple):
    """How long a filling lasts (s) at the highest setting and at the lowest."""

    flat_out: Band
    slow: Band


class FillingBurnt(NamedTuple):
    """How long a filling lasts (s) by what is burnt at either setting; None where that is not known."""

    flat_out: Band | None
    slow: Band | None


def filling_hours(one: StandingHeater) -> Filling | None:
    """Return how long a filling lasts at both settings: as its pump was counted, else by what is in the fuel.

    None where a number of it is not known.
    """
    burnt = hours_by_burn(one) if is_counted(one) else None
    if burnt is not None and burnt.flat_out is not None and burnt.slow is not None:
        return Filling(burnt.flat_out, burnt.slow)
    return hours_by_heat(one)


def is_counted(one: StandingHeater) -> bool:
    """Return whether the pump of a heater was counted at both settings."""
    counted = burns_as_counted(one.planned.heater.counted)
    return counted is not None and counted.lowest is not None and counted.highest is not None


def hours_by_burn(one: StandingHeater) -> FillingBurnt | None:
    """Return how long a filling lasts at what is burnt, as it was counted or else is said; None where neither is."""
    burns, tank = burns_of(one.planned.heater), one.tank
    if burns is None or tank is None or not tank.volume.known or tank.volume.best <= 0.0:
        return None
    flat_out, slow = (_drawn(tank.volume, rate) if rate else None for rate in (burns.highest, burns.lowest))
    return FillingBurnt(flat_out, slow) if flat_out or slow else None


def hours_by_heat(one: StandingHeater) -> Filling | None:
    """Return how long a filling lasts at both settings by what is in the fuel; None where a number is not known."""
    facet, fuel, tank = one.planned.heater, fuel_named(one.planned.heater.of), one.tank
    lowest, highest = facet.lowest, facet.highest
    if fuel not in FUELS or tank is None or not tank.volume.known or lowest is None or highest is None:
        return None
    if not (lowest.known and highest.known) or lowest.best <= 0.0 or tank.volume.best <= 0.0:
        return None
    return Filling(_lasting(tank.volume, highest, fuel), _lasting(tank.volume, lowest, fuel))


def _drawn(volume: Band, flow: Band) -> Band:
    """Return how long a volume lasts at a rate: least where it is little and the rate high."""
    ends = ((volume.best, flow.best), (volume.low, flow.high), (volume.high, flow.low))
    likely, least, most = (filling_lasts(litres, rate) if rate > 0.0 else inf for litres, rate in ends)
    return Band(likely, least, most, spread="interval")


def _lasting(volume: Band, heat: Band, fuel: str) -> Band:
    """Return how long so much fuel lasts: least where it is little, the heat much and the heater wastes most."""
    content, efficiency, worst, best = FUELS[fuel]
    ends = (
        (volume.best, heat.best, efficiency),
        (volume.low, heat.high, worst),
        (volume.high, heat.low, best),
    )
    likely, least, most = (
        filling_lasts(litres, fuel_burnt(watt, share, content)) if watt > 0.0 else inf for litres, watt, share in ends
    )
    return Band(likely, least, most, spread="interval")


def stated_burn(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the heat a heater is said to give and the fuel it is said to burn contradict each other.

    Asks: stated heat against stated burn, by the energy of the fuel and the efficiency of such heaters
    Limit: a third, beyond what efficiencies differ by
    Source: fuel-handbook; efficiency by heater-practice
    Lever: burn of the heater; pump strokes counted for a minute, which go before what is said
    """
    for heater in result.heaters:
        facet, fuel = heater.planned.heater, fuel_named(heater.planned.heater.of)
        burns, counted = burns_of(facet), burns_as_counted(facet.counted)
        if burns is None or fuel not in FUELS:
            continue
        energy, _, worst, best = FUELS[fuel]
        pairs = (("lowest", facet.lowest, burns.lowest), ("highest", facet.highest, burns.highest))
        for setting, heat, flow in pairs:
            if heat is None or flow is None or not (heat.known and flow.known) or not heat.best or not flow.best:
                continue
            share = heat.best / (flow.best * energy)
            allowed = (worst * (1.0 - CONTRADICT), best * (1.0 + CONTRADICT))
            if allowed[0] <= share <= allowed[1]:
                continue
            name = heater.planned.name
            is_counted = counted is not None and getattr(counted, setting) is not None
            says = f"{name} is said to give {show(heat.best, 'power', shown_in)} on its {setting} setting and"
            says += " burns, as its pump was counted," if is_counted else " to burn"
            says += f" {show(flow.best, 'fuel flow', shown_in)}, in which there is"
            says += f" {show(flow.best * energy, 'power', shown_in)}: {share * 100:.0f} % of it, where"
            says += f" such heaters give {worst * 100:.0f} to {best * 100:.0f} %"
            yield Finding(
                "heat/stated-burn", heater.planned.of, "advice", says, share, best if share > best else worst,
                None, "1", source_of("fuel", fuel), heater.planned.of,
                act="Fill to a mark, run it for some hours on that setting, fill to the mark again, and write what went"
                " in", minutes=240, because=(heater.planned.of,),
            )  # fmt: skip


def counted_burn(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where what a pump was counted to move and what its heater is said to burn differ.

    Asks: strokes counted for a minute times what a stroke moves, against the stated burn of the same setting
    Limit: a third of what is stated
    Source: heater-practice
    Lever: burn of the heater; what a stroke moves
    """
    for heater in result.heaters:
        facet, name, where = heater.planned.heater, heater.planned.name, heater.planned.of
        counted, said = burns_as_counted(facet.counted), facet.burn
        if facet.counted is not None and counted is None:
            yield Finding(
                "heat/counted-burn", where, "unknown", f"the pump of {name} was counted, and nobody wrote how many"
                " strokes in a minute, or what each moves", source=OWN_RULE, lever=where, act="Read what a stroke moves"
                " on the plate of the pump, and write counted: {lowest: 47, each: 0.04 ml}", minutes=5,
                could_stop=False, could_limit=False, because=(where,),
            )  # fmt: skip
        if counted is None or said is None:
            continue
        pairs = (("lowest", counted.lowest, said.lowest), ("highest", counted.highest, said.highest))
        for setting, moved, burnt in pairs:
            if moved is None or burnt is None or not burnt.known or burnt.best <= 0.0:
                continue
            off = moved.best / burnt.best
            if moved.low <= burnt.high * (1.0 + CONTRADICT) and moved.high >= burnt.low * (1.0 - CONTRADICT):
                continue
            says = f"the pump of {name} moves {show(moved.best, 'fuel flow', shown_in)} on its {setting} setting, as it"
            says += f" was counted, {abs(off - 1.0) * 100:.0f} % {'more' if off > 1.0 else 'less'} than the"
            says += f" {show(burnt.best, 'fuel flow', shown_in)} it is said to burn: what was counted goes first"
            yield Finding(
                "heat/counted-burn", where, "advice", says, moved.best, burnt.best, None, "m**3/s",
                source_of("margins", "contradict"), where, act="Count again for five minutes, read what a stroke moves"
                " on the plate of the pump, and put the counted burn in place of the stated one", minutes=15,
                because=(where,),
            )  # fmt: skip


__all__ = [
    "Filling",
    "counted_burn",
    "filling_hours",
    "heat_by_hours",
    "hours_by_burn",
    "is_counted",
    "stated_burn",
    "stated_hours",
]
