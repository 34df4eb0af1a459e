"""What settles on the cold places of a room in the nights that heat has worked out, and how much air keeps it away."""

from __future__ import annotations

from math import inf
from typing import NamedTuple

from boxwright.disciplines.air import method
from boxwright.disciplines.air.breathing import PRESSURE
from boxwright.disciplines.air.hidden import is_hidden, settled_by_hour
from boxwright.disciplines.air.parts import WoodReading
from boxwright.disciplines.air.result import DampNight, WetPlace, Wood
from boxwright.disciplines.air.sourced import FILM, FROSTY_HUMIDITY, MOULD, WANTED
from boxwright.exchange import ColdPlace, Layup, Moisture, Night

SPECIFIC_HEAT = 1006.0
"""J/kgK of dry air"""
FULL = 1.0
A_KILOGRAM = 1.0


class Hours(NamedTuple):
    """What a night is by the hour, the same for every cold place of it: K, Pa, kg per kg of dry air.

    ``vapour`` is that of the room, ``around`` that outside, ``full`` what the air of the room can hold.
    """

    outside: tuple[float, ...]
    air: tuple[float, ...]
    vapour: tuple[float, ...]
    around: tuple[float, ...]
    outdoors: tuple[float, ...]
    full: tuple[float, ...]


def hours_of(night: Night) -> Hours:
    """Return what a night is by the hour; nobody wrote how damp it is outside, so that is assumed.

    Outdoor air holds all night what its coldest hour leaves in it, as in heat's own night.
    """
    dry = FROSTY_HUMIDITY * method.saturation_pressure(min(night.outside)) if night.outside else 0.0
    around = (dry,) * len(night.outside)
    return Hours(
        outside=night.outside,
        air=night.air,
        vapour=tuple(method.vapour_pressure(max(one, 0.0), PRESSURE) for one in night.humidity),
        around=around,
        outdoors=tuple(method.humidity_ratio(one, PRESSURE) for one in around),
        full=tuple(method.saturation_pressure(one) for one in night.air),
    )


def damp_night(
    night: Night, moisture: tuple[Moisture, ...], layups: tuple[Layup, ...], airy: frozenset[str] = frozenset()
) -> DampNight:
    """Return one night as the air of the room felt it, and what stood wet in it, but for the vents (``airy``).

    Where damp air touches a surface the water is heat's own; what is hidden is reached by vapour through ``layups``.
    """
    planes = {one.of: one for one in layups}
    hours = hours_of(night)
    given = sum(one.kg_per_second.best for one in moisture)
    return DampNight(
        place=night.place,
        heater=night.heater,
        outside=night.outside,
        air=night.air,
        humidity=tuple(min(one / full, FULL) for one, full in zip(hours.vapour, hours.full, strict=True)),
        flow=night.flow,
        dries=dries_in(hours, night.flow),
        wet=tuple(
            _wet(cold, where_written(cold, planes), _water(night, number, hours, planes), night, hours, given)
            for number, cold in enumerate(night.cold)
            if cold.of not in airy
        ),
    )


def dries_in(hours: Hours, flow: tuple[float, ...]) -> float:
    """Return how long (s) a kilogram of water takes to leave while the room stays at the humidity it ought to have."""
    count = len(flow)
    passes = sum(flow) / count if count else 0.0
    if passes <= 0.0:
        return inf
    outdoors = sum(hours.outdoors) / count
    gained = method.humidity_ratio(WANTED * sum(hours.full) / count, PRESSURE) - outdoors
    if gained <= 0.0:
        return inf
    density = method.air_density(sum(hours.air) / count, outdoors, PRESSURE)
    return method.dried_after(A_KILOGRAM, passes, density, gained)


def _water(night: Night, number: int, hours: Hours, planes: dict[str, Layup]) -> tuple[float, ...]:
    """Return the water (kg) on one place at the end of each hour."""
    cold = night.cold[number]
    if not is_hidden(cold):
        return tuple(row[number] for row in night.water)
    layup = planes.get(cold.of)
    if layup is None:
        return ()
    settled = settled_by_hour(cold, layup, hours.outside, hours.air, hours.vapour, hours.around)
    return tuple(one * cold.area.best for one in settled)


def where_written(cold: ColdPlace, planes: dict[str, Layup]) -> str:
    """Return the rig path a cold place is written at: an opening's own, else that of the layers of its plane."""
    if cold.of.startswith("openings["):
        return cold.of
    layup = planes.get(cold.of)
    return layup.layers[0].of.partition(".layers[")[0] if layup is not None and layup.layers else "walls"


def _wet(cold: ColdPlace, where: str, water: tuple[float, ...], night: Night, hours: Hours, given: float) -> WetPlace:
    """Return what settled on one place: its water by the hour, and what air would have kept it dry."""
    factor, area = min(max(cold.factor.best, 0.0), 1.0), cold.area.best
    surfaces = tuple(outside + factor * (air - outside) for outside, air in zip(hours.outside, hours.air, strict=True))
    holds = tuple(method.saturation_pressure(one) for one in surfaces)
    least = 0.0 if is_hidden(cold) else FILM * area
    most = max(water, default=0.0)
    need, watt = _air_that_dries(holds, night, hours, given)
    return WetPlace(
        cold=cold,
        where=where,
        hours=sum(1 for one in water if one > least and area > 0.0),
        most=most,
        over=most / area if area > 0.0 else 0.0,
        coldest=min(surfaces, default=inf),
        limit=min((min(one / full, FULL) for one, full in zip(holds, hours.full, strict=True)), default=FULL),
        damp_hours=sum(1 for one, vapour in zip(holds, hours.vapour, strict=True) if vapour > MOULD * one),
        air=need,
        watt=watt,
    )


def _air_that_dries(holds: tuple[float, ...], night: Night, hours: Hours, given: float) -> tuple[float, float]:
    """Return the outdoor air that keeps a surface dry in its worst hour, and the heat it costs beyond what comes in.

    ``given`` is the vapour given off. Where no outdoor air keeps it dry, it is infinite.
    """
    gains = [
        method.humidity_ratio(one, PRESSURE) - outdoors for one, outdoors in zip(holds, hours.outdoors, strict=True)
    ]
    if not gains or given <= 0.0:
        return 0.0, 0.0
    worst = min(range(len(gains)), key=gains.__getitem__)
    if gains[worst] <= 0.0:
        return inf, inf if night.heater else 0.0
    density = method.air_density(hours.air[worst], hours.outdoors[worst], PRESSURE)
    need = method.air_to_dry(given, density, gains[worst])
    beyond, warmed = max(need - night.flow[worst], 0.0), max(hours.air[worst] - hours.outside[worst], 0.0)
    return need, density * SPECIFIC_HEAT * beyond * warmed if night.heater else 0.0


def wood_by_place(readings: tuple[WoodReading, ...]) -> tuple[Wood, ...]:
    """Return the newest reading of wood at each place beside the one before it; without a day the order written."""
    places: dict[str, list[WoodReading]] = {}
    for one in readings:
        places.setdefault(one.at.lower(), []).append(one)
    found: list[Wood] = []
    for at in places.values():
        dated = sorted(at, key=lambda one: one.on.toordinal() if one.on is not None else 0)
        earlier = [one for one in dated[:-1] if one.wood.known]
        found.append(Wood(dated[-1], earlier[-1] if earlier else None))
    return tuple(found)
