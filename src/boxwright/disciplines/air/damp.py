"""What settles on the cold places of a room in the nights that heat has worked out, and how much air keeps it away."""

from __future__ import annotations

from dataclasses import replace
from math import inf
from typing import NamedTuple

from boxwright.disciplines.air import method
from boxwright.disciplines.air.breathing import PRESSURE
from boxwright.disciplines.air.hidden import Damp, is_hidden, less_for_wet, settled_by_hour
from boxwright.disciplines.air.parts import WoodReading
from boxwright.disciplines.air.result import DampNight, DryingAir, Settled, WetPlace, Wood
from boxwright.disciplines.air.sourced import FILM, FROSTY_HUMIDITY, MOULD, WANTED
from boxwright.exchange import ColdPlace, Layup, Moisture, Night, NightEnd

SPECIFIC_HEAT = 1006.0
"""J/kgK of dry air"""
FULL = 1.0
HOTTEST = 333.15
"""K: the curves of moist air are held to no more. A room that a heater nobody turns down would make hotter is taken as
so warm: it holds less water then, so that it is never told to be drier than it would be."""
A_KILOGRAM = 1.0
NIGHT_FROM, NIGHT_HOURS, DAY = 20, 12, 24


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


class Felt(NamedTuple):
    """A night at one end of what is not known: its hours, the air that comes in, the water on each cold place.

    ``given`` is the vapour given off (kg/s).
    """

    end: Damp
    hours: Hours
    flow: tuple[float, ...]
    water: tuple[tuple[float, ...], ...]
    given: float


def hours_of(night: Night | NightEnd) -> Hours:
    """Return what a night is by the hour; where nobody worked out how damp it is outside, that is assumed.

    Outdoor air holds all night what its coldest hour leaves in it, as in heat's own night.
    """
    if isinstance(night, NightEnd):
        dry = method.vapour_pressure(night.outdoors, PRESSURE)
    else:
        dry = FROSTY_HUMIDITY * method.saturation_pressure(min(night.outside)) if night.outside else 0.0
    around = (dry,) * len(night.outside)
    room = tuple(min(one, HOTTEST) for one in night.air)
    return Hours(
        outside=night.outside,
        air=room,
        vapour=tuple(method.vapour_pressure(max(one, 0.0), PRESSURE) for one in night.humidity),
        around=around,
        outdoors=tuple(method.humidity_ratio(one, PRESSURE) for one in around),
        full=tuple(method.saturation_pressure(one) for one in room),
    )


def damp_night(
    night: Night, moisture: tuple[Moisture, ...], layups: tuple[Layup, ...], airy: frozenset[str] = frozenset()
) -> DampNight:
    """Return one night as the air of the room felt it, and what stood wet in it, but for the vents (``airy``).

    Where damp air touches a surface the water is heat's own; what is hidden is reached by vapour through ``layups``.
    """
    planes = {one.of: one for one in layups}

    def given(end: str) -> float:
        return float(sum(getattr(one.kg_per_second, end) * _share_of_night(one) for one in moisture))

    best = _felt_as(night, Felt("best", hours_of(night), night.flow, night.water, given("best")), planes, airy)
    if not night.ends:
        return best
    names: tuple[tuple[Damp, str], ...] = (("dry", "low"), ("wet", "high"))
    ends = tuple(
        _felt_as(night, Felt(end, hours_of(one), one.flow, one.water, given(name)), planes, airy)
        for (end, name), one in zip(names, night.ends, strict=True)
    )
    each = zip(*(one.wet for one in ends), strict=True)
    numbers = [number for number, cold in enumerate(night.cold) if cold.of not in airy]
    wet = tuple(
        replace(place, ends=both, settled=_settled(night, number))
        for place, both, number in zip(best.wet, each, numbers, strict=True)
    )
    return replace(best, wet=wet, ends=ends)


def _settled(night: Night, number: int) -> tuple[Settled, ...]:
    """Return what each value nobody wrote would make of one cold place; nothing of one that damp air does not touch."""
    cold = night.cold[number]
    if is_hidden(cold) or cold.area.best <= 0.0:
        return ()
    found: list[Settled] = []
    for one in night.narrowed:
        if one.key == "cooks" or cold.of in one.of:
            most = max((row[number] for row in one.end.water), default=0.0)
            found.append(Settled(one.key, cold.of if one.key == "U" else one.of[0], most / cold.area.best))
    return tuple(found)


def _share_of_night(one: Moisture) -> float:
    """Return for what share of a night, eight to eight, something gives off vapour."""
    return sum(one.is_on(clock % DAY) for clock in range(NIGHT_FROM, NIGHT_FROM + NIGHT_HOURS)) / NIGHT_HOURS


def _felt_as(night: Night, felt: Felt, planes: dict[str, Layup], airy: frozenset[str]) -> DampNight:
    """Return the night at one end of what is not known."""
    hours, gear = felt.hours, gear_air(felt.hours, felt.flow)
    return DampNight(
        place=night.place,
        heater=night.heater,
        outside=hours.outside,
        air=hours.air,
        humidity=tuple(min(one / full, FULL) for one, full in zip(hours.vapour, hours.full, strict=True)),
        flow=felt.flow,
        dries=dries_in(gear),
        gear=gear,
        wet=tuple(
            _wet(cold, where_written(cold, planes), _water(cold, number, felt, planes), bool(night.heater), felt)
            for number, cold in enumerate(night.cold)
            if cold.of not in airy
        ),
    )


def gear_air(hours: Hours, flow: tuple[float, ...]) -> DryingAir | None:
    """Return the air of a night's mean hour while the room stays as humid as it ought to be; None where none dries."""
    count = len(flow)
    passes = sum(flow) / count if count else 0.0
    if passes <= 0.0:
        return None
    outdoors = sum(hours.outdoors) / count
    gained = method.humidity_ratio(WANTED * sum(hours.full) / count, PRESSURE) - outdoors
    if gained <= 0.0:
        return None
    return DryingAir(passes, method.air_density(sum(hours.air) / count, outdoors, PRESSURE), gained)


def dries_in(gear: DryingAir | None) -> float:
    """Return how long (s) a kilogram of water takes to leave with such air; infinite where it does not."""
    return inf if gear is None else method.dried_after(A_KILOGRAM, gear.flow, gear.density, gear.gained)


def _water(cold: ColdPlace, number: int, felt: Felt, planes: dict[str, Layup]) -> tuple[float, ...]:
    """Return the water (kg) on one place at the end of each hour."""
    if not is_hidden(cold):
        return tuple(row[number] for row in felt.water)
    layup, hours = planes.get(cold.of), felt.hours
    if layup is None:
        return ()
    settled = settled_by_hour(cold, layup, hours.outside, hours.air, hours.vapour, hours.around, felt.end)
    return tuple(one * cold.area.best for one in settled)


def where_written(cold: ColdPlace, planes: dict[str, Layup]) -> str:
    """Return the rig path a cold place is written at: an opening's own, else that of the layers of its plane."""
    if cold.of.startswith("openings["):
        return cold.of
    layup = planes.get(cold.of)
    return layup.layers[0].of.partition(".layers[")[0] if layup is not None and layup.layers else "walls"


def _wet(cold: ColdPlace, where: str, water: tuple[float, ...], is_heated: bool, felt: Felt) -> WetPlace:
    """Return what settled on one place: its water by the hour, and what air would have kept it dry."""
    hours = felt.hours
    factor, area = min(max(less_for_wet(cold.factor, felt.end), 0.0), 1.0), cold.area.best
    surfaces = tuple(outside + factor * (air - outside) for outside, air in zip(hours.outside, hours.air, strict=True))
    holds = tuple(method.saturation_pressure(one) for one in surfaces)
    least = 0.0 if is_hidden(cold) else FILM * area
    most = max(water, default=0.0)
    need, watt, drier = _air_that_dries(holds, is_heated, felt)
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
        drier=drier,
        water=water,
        least=least,
    )


def _air_that_dries(holds: tuple[float, ...], is_heated: bool, felt: Felt) -> tuple[float, float, DryingAir | None]:
    """Return the outdoor air that keeps a surface dry in its worst hour, and the heat it costs beyond what comes in.

    Where no outdoor air keeps it dry, it is infinite.
    """
    hours = felt.hours
    gains = [
        method.humidity_ratio(one, PRESSURE) - outdoors for one, outdoors in zip(holds, hours.outdoors, strict=True)
    ]
    if not gains or felt.given <= 0.0:
        return 0.0, 0.0, None
    worst = min(range(len(gains)), key=gains.__getitem__)
    if gains[worst] <= 0.0:
        return inf, inf if is_heated else 0.0, None
    density = method.air_density(hours.air[worst], hours.outdoors[worst], PRESSURE)
    need = method.air_to_dry(felt.given, density, gains[worst])
    beyond, warmed = max(need - felt.flow[worst], 0.0), max(hours.air[worst] - hours.outside[worst], 0.0)
    watt = density * SPECIFIC_HEAT * beyond * warmed if is_heated else 0.0
    return need, watt, DryingAir(need, density, gains[worst])


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
