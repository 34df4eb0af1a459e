"""The rule of stated hours: how long a filling is said to last, against what is in it and what the heater gives."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from boxwright.disciplines.heat.burner import FUELS, fuel_named
from boxwright.disciplines.heat.method import filling_lasts, fuel_burnt, heat_of_filling
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import source_of
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show, show_band


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
    """Return how long a filling lasts at both settings; None where a number of it is not known."""
    facet, fuel, tank = one.planned.heater, fuel_named(one.planned.heater.of), one.tank
    lowest, highest = facet.lowest, facet.highest
    if fuel not in FUELS or tank is None or not tank.volume.known or lowest is None or highest is None:
        return None
    if not (lowest.known and highest.known) or lowest.best <= 0.0 or tank.volume.best <= 0.0:
        return None
    return Filling(_lasting(tank.volume, highest, fuel), _lasting(tank.volume, lowest, fuel))


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


__all__ = ["Filling", "filling_hours", "stated_hours"]
