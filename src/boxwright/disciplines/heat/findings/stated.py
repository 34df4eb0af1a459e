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
    """Say where the hours a filling is said to last and the heat a heater gives contradict each other.

    Asks: the heat in a filling over the hours it is said to last, against the heater's lowest and highest setting
    Limit: between them, with what efficiencies differ by
    Source: fuel-handbook; efficiency by heater-practice
    Lever: lasts of the heater, its settings, a measured burn
    """
    for one in result.heaters:
        facet, fuel = one.planned.heater, fuel_named(one.planned.heater.of)
        said, given = facet.lasts, _given(one, facet.lasts)
        lowest, highest = facet.lowest, facet.highest
        if said is None or given is None or lowest is None or highest is None:
            continue
        if not (lowest.known and highest.known) or (given.high >= lowest.low and given.low <= highest.high):
            continue
        is_more = given.low > highest.high
        name, where = one.planned.name, one.planned.of
        hours = f"{show(said.best, 'time', shown_in)}"
        says = f"a filling of {name} is said to last {hours}: by what is in {fuel} that is"
        says += f" {show(given.best, 'power', shown_in)} of heat, {'more' if is_more else 'less'} than it gives"
        says += f" {'flat out' if is_more else 'at its lowest'}, {_power(one, is_more, shown_in)}"
        lasting = filling_hours(one)
        if lasting is not None:
            says += f"; flat out it lasts {show_band(lasting.flat_out, 'time', shown_in)}, at its lowest"
            says += f" {show_band(lasting.slow, 'time', shown_in)}"
        limit = highest.best if is_more else lowest.best
        yield Finding(
            "heat/stated-hours", where, "advice", says, given.best, limit, -abs(given.best - limit), "W",
            source_of("fuel", fuel), where, act="Fill to a mark, run it for some hours on one setting, fill to the mark"
            " again; look whether all of the tank can be drawn, and whether it is the heater the plate says",
            minutes=240, because=(where,),
        )  # fmt: skip


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


def filling_hours(one: StandingHeater) -> Filling | None:
    """Return how long a filling lasts at both settings: as its pump was counted, else by what is in the fuel.

    None where a number of it is not known.
    """
    facet, fuel, tank = one.planned.heater, fuel_named(one.planned.heater.of), one.tank
    counted = burns_as_counted(facet.counted)
    if counted is not None and tank is not None and tank.volume.known and tank.volume.best > 0.0:
        both = (counted.highest, counted.lowest)
        if both[0] is not None and both[1] is not None:
            return Filling(_drawn(tank.volume, both[0]), _drawn(tank.volume, both[1]))
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


def _power(one: StandingHeater, is_more: bool, shown_in: HeaderUnits) -> str:
    facet = one.planned.heater
    heat = facet.highest if is_more else facet.lowest
    return show(heat.best, "power", shown_in) if heat is not None else ""


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


__all__ = ["Filling", "counted_burn", "filling_hours", "heat_by_hours", "stated_burn", "stated_hours"]
