"""What settles on the cold places of a room in the nights that heat has worked out, and how much air keeps it away."""

from __future__ import annotations

from math import inf

from boxwright.disciplines.air import method
from boxwright.disciplines.air.breathing import PRESSURE
from boxwright.disciplines.air.hidden import is_hidden, settled_by_hour
from boxwright.disciplines.air.parts import WoodReading
from boxwright.disciplines.air.result import DampNight, WetPlace, Wood
from boxwright.disciplines.air.sourced import FILM, FROSTY_HUMIDITY, MOULD
from boxwright.exchange import ColdPlace, Layup, Moisture, Night

SPECIFIC_HEAT = 1006.0
"""J/kgK of dry air"""
FULL = 1.0


def damp_night(
    night: Night, moisture: tuple[Moisture, ...], layups: tuple[Layup, ...], airy: frozenset[str] = frozenset()
) -> DampNight:
    """Return one night as the air of the room felt it, and what stood wet in it, but for the vents (``airy``).

    Where damp air touches a surface the water is heat's own; on the skin behind foam it is vapour through ``layups``.
    """
    planes = {one.of: one for one in layups}
    vapour = tuple(method.vapour_pressure(max(one, 0.0), PRESSURE) for one in night.humidity)
    given = sum(one.kg_per_second.best for one in moisture)
    return DampNight(
        place=night.place,
        heater=night.heater,
        outside=night.outside,
        air=night.air,
        humidity=tuple(
            min(pressure / method.saturation_pressure(air), FULL)
            for pressure, air in zip(vapour, night.air, strict=True)
        ),
        dew_point=tuple(method.dew_point(one) if one > 0.0 else 0.0 for one in vapour),
        flow=night.flow,
        wet=tuple(
            _wet(cold, _water(night, number, vapour, planes), night, vapour, given)
            for number, cold in enumerate(night.cold)
            if cold.of not in airy
        ),
    )


def _water(night: Night, number: int, vapour: tuple[float, ...], planes: dict[str, Layup]) -> tuple[float, ...]:
    """Return the water (kg) on one place at the end of each hour."""
    cold = night.cold[number]
    if not is_hidden(cold):
        return tuple(row[number] for row in night.water)
    layup = planes.get(cold.of)
    if layup is None:
        return ()
    around = tuple(FROSTY_HUMIDITY * method.saturation_pressure(one) for one in night.outside)
    return tuple(one * cold.area.best for one in settled_by_hour(cold, layup, night.outside, night.air, vapour, around))


def _wet(cold: ColdPlace, water: tuple[float, ...], night: Night, vapour: tuple[float, ...], given: float) -> WetPlace:
    """Return what settled on one place: its water by the hour, and what air would have kept it dry."""
    factor = min(max(cold.factor.best, 0.0), 1.0)
    surfaces = tuple(outside + factor * (air - outside) for outside, air in zip(night.outside, night.air, strict=True))
    area = cold.area.best
    least = 0.0 if is_hidden(cold) else FILM * area
    limits = [
        min(method.saturation_pressure(surface) / method.saturation_pressure(air), FULL)
        for surface, air in zip(surfaces, night.air, strict=True)
    ]
    asked = [
        _air_to_keep_dry(surface, outside, air, given)
        for surface, outside, air in zip(surfaces, night.outside, night.air, strict=True)
    ]
    most = max(water, default=0.0)
    worst = max(range(len(asked)), key=asked.__getitem__, default=0)
    need = asked[worst] if asked else 0.0
    beyond = max(need - night.flow[worst], 0.0) if asked else 0.0
    density = method.air_density(night.air[worst], 0.0, PRESSURE) if asked else 0.0
    warmed = night.air[worst] - night.outside[worst] if asked else 0.0
    return WetPlace(
        cold=cold,
        hours=sum(1 for one in water if one > least and area > 0.0),
        most=most,
        over=most / area if area > 0.0 else 0.0,
        coldest=min(surfaces, default=inf),
        limit=min(limits, default=FULL),
        damp_hours=sum(
            1
            for surface, pressure in zip(surfaces, vapour, strict=True)
            if pressure > MOULD * method.saturation_pressure(surface)
        ),
        air=need,
        watt=density * SPECIFIC_HEAT * beyond * max(warmed, 0.0) if night.heater else 0.0,
    )


def _air_to_keep_dry(surface: float, outside: float, air: float, given: float) -> float:
    """Return the outdoor air that keeps a surface just dry while so much vapour is given off; infinite where none."""
    if given <= 0.0:
        return 0.0
    outdoors = method.humidity_ratio(FROSTY_HUMIDITY * method.saturation_pressure(outside), PRESSURE)
    gained = method.humidity_ratio(method.saturation_pressure(surface), PRESSURE) - outdoors
    return method.air_to_dry(given, method.air_density(air, outdoors, PRESSURE), gained) if gained > 0.0 else inf


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
