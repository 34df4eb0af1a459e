"""What a box through time is made of, and the steps its loop takes: plain floats and rows, so that it compiles."""

from __future__ import annotations

from math import exp, sqrt
from typing import Annotated, NamedTuple, Protocol

from boxwright.disciplines.heat.method.sky import STEFAN_BOLTZMANN, WattPerSquareMetre
from boxwright.units import (
    CubicMetre,
    CubicMetrePerSecond,
    Kelvin,
    Kilogram,
    Metre,
    MetrePerSecond,
    Pascal,
    Ratio,
    SquareMetre,
    Unit,
    Watt,
    WattPerSquareMetreKelvin,
)

HOUR = 3600.0
DRY_AIR = 287.042
"""J per kg and K: the gas constant of air."""

WattPerKelvin = Annotated[float, Unit("W/K", "heat loss")]
KelvinPerWatt = Annotated[float, Unit("K/W", "resistance to heat")]
JoulePerKelvin = Annotated[float, Unit("J/K", "heat capacity")]
KilogramPerSecond = Annotated[float, Unit("kg/s", "mass flow")]
FilmByWind = Annotated[float, Unit("W*s/(m**3*K)", "film by wind")]
StackCoefficient = Annotated[float, Unit("m**2/s**2/K", "stack coefficient")]


class Room(NamedTuple):
    """The room itself: what holds heat in it, and where air passes.

    ``leak`` is the area of its cracks at 4 Pa with its two coefficients; ``vents`` the free area that is always open, by
    the height ``rise`` between low and high and the share ``vent_wind`` of the wind's pressure; ``opened`` what is opened as
    far as needed above ``open_above``. ``moist`` is the mass of air whose water counts, with what linings take up as air.
    ``to_air`` and ``to_furnishing`` are their shares of what shines in.
    """  # noqa: E501

    volume: CubicMetre
    air: JoulePerKelvin
    furnishing: JoulePerKelvin
    coupling: WattPerKelvin
    to_air: Ratio
    to_furnishing: Ratio
    leak: SquareMetre
    stack: StackCoefficient
    leak_wind: Ratio
    vents: SquareMetre
    rise: Metre
    vent_wind: Ratio
    opened: SquareMetre
    open_above: Kelvin
    pressure: Pascal
    moist: Kilogram


class Faces(NamedTuple):
    """The faces, a value for each: area, film (and more of it by wind), the way from skin to mass and on to the air.

    ``behind`` is the resistance from the skin to the mass, ``inward`` the conductance from the mass to the air, films
    counted in. ``direction`` is the column of sun it looks at, -1 where none shines. ``catches`` is the share of what
    shines into the room that falls on the mass of this face.
    """

    area: tuple[SquareMetre, ...]
    film: tuple[WattPerSquareMetreKelvin, ...]
    film_wind: tuple[FilmByWind, ...]
    behind: tuple[KelvinPerWatt, ...]
    inward: tuple[WattPerKelvin, ...]
    capacity: tuple[JoulePerKelvin, ...]
    absorptance: tuple[Ratio, ...]
    emittance: tuple[Ratio, ...]
    sky: tuple[Ratio, ...]
    direction: tuple[int, ...]
    catches: tuple[Ratio, ...]


class Panes(NamedTuple):
    """The windows: their conductance, the area that lets all sun through which as much comes in by, and where to."""

    conductance: tuple[WattPerKelvin, ...]
    gain: tuple[SquareMetre, ...]
    direction: tuple[int, ...]


class Cold(NamedTuple):
    """The cold places of the room: temperature factor, area, film of the air on it, the face it is on (-1: none)."""

    factor: tuple[Ratio, ...]
    area: tuple[SquareMetre, ...]
    film: tuple[WattPerSquareMetreKelvin, ...]
    face: tuple[int, ...]


class Heater(NamedTuple):
    """The heater's settings, whether it may switch off and on below its lowest, and what a cooler takes out at most."""

    lowest: Watt
    highest: Watt
    switches: bool
    cooling: Watt


class Box(NamedTuple):
    """A room with what is around and in it."""

    room: Room
    faces: Faces
    panes: Panes
    cold: Cold
    heater: Heater


class Hours(NamedTuple):
    """Weather and use, a value for each hour; ``sun`` has a row for each hour, a value for each direction.

    ``warm`` is what the heater is set to (0: it is off), ``cool`` what the cooler is. ``gains`` go to the air at once,
    ``radiant`` as the sun through glass does. ``fan`` is the air a fan moves, ``vapour`` the water given off.
    """

    outside: tuple[Kelvin, ...]
    sky: tuple[Kelvin, ...]
    wind: tuple[MetrePerSecond, ...]
    humidity: tuple[Ratio, ...]
    sun: tuple[tuple[WattPerSquareMetre, ...], ...]
    warm: tuple[Kelvin, ...]
    cool: tuple[Kelvin, ...]
    gains: tuple[Watt, ...]
    radiant: tuple[Watt, ...]
    fan: tuple[CubicMetrePerSecond, ...]
    vapour: tuple[KilogramPerSecond, ...]


class _Row(Protocol):
    """A row that can be written in: a list, or an array where the loop is compiled."""

    def __len__(self) -> int: ...
    def __getitem__(self, place: int, /) -> float: ...
    def __setitem__(self, place: int, value: float, /) -> None: ...


class _Work(NamedTuple):
    """Room to work in, begun at zero: rows for the faces, then for the cold places."""

    mass: _Row
    felt: _Row
    way: _Row
    rate: _Row
    share: _Row
    kept: _Row
    mean: _Row
    water: _Row
    limit: _Row
    takes: _Row
    taking: _Row


def _felt(faces: Faces, panes: Panes, hours: Hours, hour: int, tau: float, work: _Work) -> tuple[float, float]:
    """Put what holds for an hour into ``work``; return the windows' conductance and what shines in.

    Of each face: what it feels, its way out, how fast its mass would change, and the share of a load it gives on.
    """
    outside, sky, wind, sun = hours.outside[hour], hours.sky[hour], hours.wind[hour], hours.sun[hour]
    colder = STEFAN_BOLTZMANN * (outside**4 - sky**4)
    for number in range(len(faces.inward)):
        film = faces.film[number] + faces.film_wind[number] * wind
        shone = sun[faces.direction[number]] if faces.direction[number] >= 0 else 0.0
        taken = faces.absorptance[number] * shone - faces.emittance[number] * faces.sky[number] * colder
        work.felt[number] = outside + taken / film
        way = 1.0 / (faces.behind[number] + 1.0 / (film * faces.area[number]))
        rate = faces.capacity[number] / tau
        work.way[number], work.rate[number] = way, rate
        work.share[number] = faces.inward[number] / (rate + way + faces.inward[number])
    glass, radiant = 0.0, hours.radiant[hour]
    for number in range(len(panes.gain)):
        glass += panes.conductance[number]
        if panes.direction[number] >= 0:
            radiant += panes.gain[number] * sun[panes.direction[number]]
    return glass, radiant


def _flows(room: Room, fan: float, inside: float, outside: float, wind: float) -> tuple[float, float]:
    """Return the air that comes in anyway, and what would come in besides with everything opened."""
    difference = abs(inside - outside)
    cracks = room.leak * sqrt(room.stack * difference + room.leak_wind * wind * wind)
    # Cracks and vents feel the same pressure, so their flows add; a fan's adds in squares.
    driven = sqrt(2.0 * 9.80665 * room.rise * difference / max(inside, outside) + room.vent_wind * wind * wind)
    natural = cracks + 0.65 * room.vents * driven
    return sqrt(natural * natural + fan * fan), 0.65 * room.opened * driven


def _gathered(faces: Faces, work: _Work, radiant: float) -> tuple[float, float]:
    """Return what all faces add to the loss of the air and to its load, their masses eliminated."""
    loss, load = 0.0, 0.0
    for number in range(len(faces.inward)):
        kept = work.rate[number] * work.mass[number] + work.way[number] * work.felt[number]
        kept += radiant * faces.catches[number]
        work.kept[number] = kept
        loss += faces.inward[number] * (1.0 - work.share[number])
        load += work.share[number] * kept
    return loss, load


def _heated(
    heater: Heater, room: Room, warm: float, loss: float, load: float, air: float, weight: float
) -> tuple[float, float]:
    """Return the heat of a step and the band the heater is in."""
    if warm <= 0.0 or heater.highest <= 0.0:
        return 0.0, 0.0
    target = warm if room.air <= 0.0 else air + weight * (warm - air)
    need = loss * target - load
    if need >= heater.highest:
        return heater.highest, 4.0
    if need >= heater.lowest and need > 0.0:
        return need, 3.0
    if not heater.switches:
        return heater.lowest, 2.0
    if need > 0.0:
        return need, 1.0
    return 0.0, 0.0


def _opened(room: Room, loss: float, load: float, outside: float, most: float) -> float:
    """Return the conductance of what is opened so far that the room gets no warmer than that, or of all there is.

    On a day hotter than that all of it stands open while the room is hotter still.
    """
    excess = load - loss * max(room.open_above, outside)
    if most <= 0.0 or excess <= 0.0:
        return 0.0
    if outside >= room.open_above:
        return most
    return min(excess / (room.open_above - outside), most)


def _relaxed(faces: Faces, work: _Work, weight: float, air: float, radiant: float) -> tuple[float, float]:
    """Move the mass of each face on; return the heat that came in from outside and what the masses took up."""
    crossed, stored = 0.0, 0.0
    for number in range(len(faces.inward)):
        mean = (work.kept[number] / faces.inward[number] + air) * work.share[number]
        moved = mean - work.mass[number]
        # Only what has mass runs on beyond the middle of a step; what has none is where its surroundings put it.
        if faces.capacity[number] > 0.0:
            moved /= weight
        work.mass[number] += moved
        work.mean[number] = mean
        crossed += work.way[number] * (work.felt[number] - mean) + radiant * faces.catches[number]
        stored += faces.capacity[number] * moved
    return crossed, stored


def _saturated(temperature: float, pressure: float) -> float:
    """Return the humidity ratio of air over water or ice, by the short curve of ISO 13788."""
    celsius = temperature - 273.15
    if celsius >= 0.0:
        vapour = 610.5 * exp(17.269 * celsius / (237.3 + celsius))
    else:
        vapour = 610.5 * exp(21.875 * celsius / (265.5 + celsius))
    return 0.621945 * vapour / (pressure - vapour)


def _dampened(
    cold: Cold, work: _Work, outside: float, air: float, pressure: float, came: float, carries: float
) -> float:
    """Return the humidity ratio after an hour; water settles on cold places, and dries or thaws off while it lasts.

    ``came`` and ``carries`` are the load and the loss of water without them (kg/s). A place takes part while air would
    leave water on it or water lies on it; one that would give off more than it has gives off just that. Which do is
    found by looking again, once for each place and twice more.
    """
    store, limit, rate, taking = work.water, work.limit, work.takes, work.taking
    face, factor, film, area, felt = cold.face, cold.factor, cold.film, cold.area, work.felt
    places, wets = len(store), False
    after = came / carries
    for number in range(places):
        around = felt[face[number]] if face[number] >= 0 else outside
        limit[number] = _saturated(around + factor[number] * (air - around), pressure)
        # Lewis: what carries heat across the film carries water as a mass of air of the same capacity.
        rate[number] = film[number] * area[number] / 1006.0
        taking[number] = 1.0 if store[number] > 0.0 else 0.0
        wets = wets or store[number] > 0.0 or after > limit[number]
    if not wets:
        return after
    for _ in range(places + 2):
        load, loss = came, carries
        for number in range(places):
            if taking[number] == 1.0:
                load += rate[number] * limit[number]
                loss += rate[number]
            elif taking[number] == 2.0:
                load += store[number] / HOUR
        after = load / loss
        again = False
        for number in range(places):
            wanted = taking[number]
            if after > limit[number]:
                wanted = 1.0
            elif store[number] + rate[number] * (after - limit[number]) * HOUR < 0.0:
                wanted = 2.0 if store[number] > 0.0 else 0.0
            again = again or wanted != taking[number]
            taking[number] = wanted
        if not again:
            break
    for number in range(places):
        if taking[number] == 1.0:
            store[number] = max(store[number] + rate[number] * (after - limit[number]) * HOUR, 0.0)
        elif taking[number] == 2.0:
            store[number] = 0.0
    return after


def _humid_after(
    room: Room, cold: Cold, hours: Hours, hour: int, air: float, flow: float, humid: float, work: _Work
) -> float:
    """Return the humidity ratio after an hour in which so much air came in, and let water settle and dry."""
    outside = hours.outside[hour]
    fresh, held = flow * room.pressure / (DRY_AIR * outside), room.moist / HOUR
    came = held * humid + fresh * hours.humidity[hour] + hours.vapour[hour]
    return _dampened(cold, work, outside, air, room.pressure, came, held + fresh)


class _Dampness(NamedTuple):
    """Humidity ratio and water on each cold place at the end of each hour, and the air that came in."""

    humidity: tuple[Ratio, ...]
    flow: tuple[CubicMetrePerSecond, ...]
    settled: tuple[tuple[Kilogram, ...], ...]


def _damp_through_time(room: Room, cold: Cold, hours: Hours, air: tuple[Kelvin, ...]) -> _Dampness:
    """Return how damp a room gets of which it is known how warm it is by the hour: the water of a box through time."""
    places = len(cold.factor)
    work = _Work(*([0.0] * places for _ in _Work._fields))
    humid, humidity, flows = hours.humidity[0], list[float](), list[float]()
    settled = list[tuple[float, ...]]()
    for hour, inside in enumerate(air):
        flow, _ = _flows(room, hours.fan[hour], inside, hours.outside[hour], hours.wind[hour])
        humid = _humid_after(room, cold, hours, hour, inside, flow, humid, work)
        humidity.append(humid)
        flows.append(flow)
        settled.append(tuple(work.water[number] for number in range(places)))
    return _Dampness(tuple(humidity), tuple(flows), tuple(settled))
