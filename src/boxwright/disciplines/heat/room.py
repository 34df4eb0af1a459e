"""The room as the box through time takes it: the shell's faces gathered by what sky they see, its air, what holds heat.

A night has no sun, so faces that see as much of the sky differ in nothing that is felt: they are one face, their
conductances and capacities added. Ends are of heat loss, as in `as_built`.
"""

from __future__ import annotations

from math import isfinite

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.method import Box, Cold, Faces, Heater, Panes, Room
from boxwright.disciplines.heat.plane import AIR_FILM, AIR_FILMS
from boxwright.disciplines.heat.shell import Face, Shell
from boxwright.exchange import Airflow, ColdPlace
from boxwright.units import Band

ROOM: dict[str, float] = {name: row[0] for name, row in columns("room").items()}
NIGHT: dict[str, Band] = {name: interval(*row) for name, row in columns("a_night").items()}
OUTSIDE_FILM, BY_WIND = ROOM["film still"], ROOM["film wind"]
HEAT_OF_AIR = 1206.0
"""J/(m3 K) of air at the sea."""
DENSITY = 1.2
SEA_LEVEL = 101325.0
NEVER = 400.0
"""A temperature (K) at which nobody opens a window for the warmth: no room gets there."""
LEAST = 1e-6


def at(band: Band, end: End, is_more_for_more: bool = True) -> float:
    """Return a value at an end of heat loss; ``is_more_for_more``: the more of it, the more is lost."""
    if end == "best":
        return band.best
    return band.high if (end == "high") == is_more_for_more else band.low


def room_of(
    shell: Shell, airflow: Airflow, volume: float, height: float, floor: float, end: End, heater: Heater
) -> Box:
    """Return the room at one end of heat loss: what holds heat is least where most is lost.

    ``volume`` in m3, ``height`` in m, ``floor`` in m2. Where most is lost, vents stand open and cracks are wide.
    """
    planes = [one for one in shell.faces if not one.is_window and as_large(one, end) > 0.0]
    windows = [one for one in shell.faces if one.is_window]
    groups = sorted({one.sky for one in planes})
    faces = [_gathered([one for one in planes if one.sky == sky], sky, end) for sky in groups]
    furnishing = at(shell.furnishing, end, False)
    vents, rise = at(airflow.vents, end), at(airflow.rise, end)
    if end == "best" and airflow.likely is not None:
        vents, rise = airflow.likely
    return Box(
        Room(
            volume=volume,
            air=volume * HEAT_OF_AIR,
            furnishing=furnishing,
            coupling=ROOM["coupling"] * floor if furnishing > 0.0 else 0.0,
            to_air=1.0,
            to_furnishing=0.0,
            leak=at(airflow.leak, end),
            stack=ROOM["stack"] * height / ROOM["storey"],
            leak_wind=ROOM["wind"],
            vents=vents,
            rise=rise,
            vent_wind=airflow.wind_share,
            opened=0.0,
            open_above=NEVER,
            pressure=SEA_LEVEL,
            moist=at(NIGHT["moist"], end, False) * volume * DENSITY,
        ),
        Faces(*(tuple(column) for column in zip(*faces, strict=True)))
        if faces
        else Faces(*(() for _ in Faces._fields)),
        Panes(
            tuple(at(one.by_air, end) * as_large(one, end) for one in windows),
            tuple(0.0 for _ in windows),
            tuple(-1 for _ in windows),
        ),
        _cold(shell, end),
        heater,
    )


def _cold(shell: Shell, end: End) -> Cold:
    """Return the cold places: those that are alike get as wet as each other, so they are one, their areas added."""
    areas: dict[tuple[float, float], float] = {}
    for one in cold_places(shell):
        alike = _alike(one, end)
        areas[alike] = areas.get(alike, 0.0) + one.area.best
    return Cold(
        tuple(factor for factor, _ in areas),
        tuple(areas.values()),
        tuple(film for _, film in areas),
        tuple(-1 for _ in areas),
    )


def _alike(place: ColdPlace, end: End) -> tuple[float, float]:
    return min(max(at(place.factor, end, False), 0.0), 1.0), place.film


def shares_of(shell: Shell, end: End) -> tuple[tuple[int, float], ...]:
    """Return of each cold place which of those of `room_of` it is in, and its share of that one's area."""
    cold = _cold(shell, end)
    numbers = {alike: number for number, alike in enumerate(zip(cold.factor, cold.film, strict=True))}
    found = []
    for one in cold_places(shell):
        number = numbers[_alike(one, end)]
        whole = cold.area[number]
        found.append((number, one.area.best / whole if whole > 0.0 else 0.0))
    return tuple(found)


def cold_places(shell: Shell) -> tuple[ColdPlace, ...]:
    """Return the cold places whose water the room's air feels."""
    return tuple(one for one in shell.places if one.reach == "open")


def hidden_places(shell: Shell) -> tuple[ColdPlace, ...]:
    """Return the cold places that damp air reaches through a lining only."""
    return tuple(one for one in shell.places if one.reach != "open")


def as_large(face: Face, end: End) -> float:
    """Return the area of a face (m2) at an end: the larger, the more is lost. One without any bound counts as none."""
    area = at(face.area, end)
    return area if isfinite(area) else 0.0


def _gathered(faces: list[Face], sky: float, end: End) -> tuple[float | int, ...]:
    """Return faces that see as much of the sky as one, in the order of `Faces`."""
    area = sum(as_large(one, end) for one in faces)
    loss = sum(at(one.by_air, end) * as_large(one, end) for one in faces)
    # What lies between mass and air was worked out with the best film; at an end it is that end's.
    inward = sum(as_large(one, end) / (one.inward + AIR_FILMS[end] - AIR_FILM) for one in faces)
    behind = max(1.0 / loss - 1.0 / inward - 1.0 / (OUTSIDE_FILM + BY_WIND * NIGHT["wind"].best) / area, LEAST)
    emittance = sum(at(one.coat.emittance, end) * as_large(one, end) for one in faces) / area
    holds = sum(at(one.capacity, end, False) for one in faces)
    return (area, OUTSIDE_FILM, BY_WIND, behind, inward, holds, 0.0, emittance, sky, -1, 0.0)
