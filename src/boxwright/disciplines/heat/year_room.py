"""The room as a year takes it: as by night, but a face for each direction, since the sun is on one side at a time."""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.climate import Facing
from boxwright.disciplines.heat.cold_hours import Inside
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.method import Box, Cold, Faces, Heater, Panes
from boxwright.disciplines.heat.plane import AIR_FILM, AIR_FILMS
from boxwright.disciplines.heat.room import BY_WIND, LEAST, NEVER, OUTSIDE_FILM, as_large, at, room_of
from boxwright.disciplines.heat.shell import Face
from boxwright.exchange import Vector
from boxwright.units import Band

Heading = Literal["north", "east"]
HEADINGS: tuple[Heading, ...] = ("north", "east")
"""Where the front of the trailer looks: nobody writes it, so a year is run for both."""
YEAR: dict[str, Band] = {name: interval(*row) for name, row in columns("year").items()}
ROOMS: dict[str, float] = {name: row[0] for name, row in columns("year_rooms").items()}
NO_COLD = Cold((), (), (), ())


def facing_of(outward: Vector, heading: Heading) -> Facing:
    """Return a direction of the trailer (rearward, right, up) as one of the compass (north, east, up)."""
    rearward, right, up = outward
    return (-rearward, right, up) if heading == "north" else (-right, -rearward, up)


def year_room(
    inside: Inside, heater: Heater, end: End, sun: End, heading: Heading, is_opened: bool
) -> tuple[Box, tuple[Facing, ...]]:
    """Return the room at one end of heat loss and one of the sun it takes, and the directions its sun comes from.

    ``is_opened``: what can be opened is opened as far as needed when it is warm.
    """
    plain = room_of(inside.shell, inside.airflow, inside.volume, inside.height, inside.floor, end, heater)
    there = [one for one in inside.shell.faces if as_large(one, end) > 0.0 or as_large(one, sun) > 0.0]
    ways = tuple(dict.fromkeys(one.outward for one in there))
    planes = [one for one in there if not one.is_window and as_large(one, end) > 0.0]
    rows = [
        _gathered([one for one in planes if one.outward == way], end, sun, ways.index(way))
        for way in dict.fromkeys(one.outward for one in planes)
    ]
    windows = [one for one in there if one.is_window]
    # Where no vent stays open there is no rise between any: a window and a lid have half the room's height.
    rise = plain.room.rise if plain.room.vents > 0.0 else inside.height * YEAR["rise of what is opened"].best
    room = plain.room._replace(
        rise=rise,
        opened=at(inside.airflow.opened, "best") if is_opened else 0.0,
        open_above=ROOMS["opened above"] if is_opened else NEVER,
    )
    # What shines in falls on furnishings where there are any, else the air has it at once.
    shared = 1.0 - YEAR["sun to the air"].best if room.furnishing > 0.0 and room.coupling > 0.0 else 0.0
    return Box(
        room._replace(to_air=1.0 - shared, to_furnishing=shared),
        Faces(*(tuple(column) for column in zip(*rows, strict=True))) if rows else plain.faces,
        Panes(
            tuple(at(one.by_air, end) * as_large(one, end) for one in windows),
            tuple(at(YEAR["through a pane"], sun) * as_large(one, sun) for one in windows),
            tuple(ways.index(one.outward) for one in windows),
        ),
        NO_COLD,
        heater,
    ), tuple(facing_of(one, heading) for one in ways)


def _gathered(faces: list[Face], end: End, sun: End, column: int) -> tuple[float | int, ...]:
    """Return the faces that look one way as one, in the order of `Faces`."""
    area = sum(as_large(one, end) for one in faces)
    loss = sum(at(one.by_air, end) * as_large(one, end) for one in faces)
    inward = sum(as_large(one, end) / (one.inward + AIR_FILMS[end] - AIR_FILM) for one in faces)
    film = 1.0 / ((OUTSIDE_FILM + BY_WIND * 2.0) * area)
    behind = max(1.0 / loss - 1.0 / inward - film, LEAST)
    holds = sum(at(one.capacity, end, False) for one in faces)
    takes = sum(at(one.coat.absorptance, sun) * as_large(one, sun) for one in faces) / area
    # Paint that radiates more is colder by night and cooler by day: it goes with the loss.
    radiates = sum(at(one.coat.emittance, end) * as_large(one, end) for one in faces) / area
    return (area, OUTSIDE_FILM, BY_WIND, behind, inward, holds, takes, radiates, faces[0].sky, column, 0.0)
