"""One hour of a night taken apart: the heat and the water that came into the room and left it, for whoever asks why.

Both are of the run the night was judged by, at its best values, so that what came in and what left are as much.
"""

from __future__ import annotations

from typing import NamedTuple

from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, BEGINS, HOURS_OF_DAY, OFF, Inside, hours_of
from boxwright.disciplines.heat.method import Box, Faces, Hours
from boxwright.disciplines.heat.method.boxed import DRY_AIR, HOUR
from boxwright.disciplines.heat.method.network import HEAT_OF_AIR, Course
from boxwright.disciplines.heat.method.sky import STEFAN_BOLTZMANN
from boxwright.disciplines.heat.night import HeldNight, runs_of
from boxwright.disciplines.heat.room import room_of
from boxwright.exchange import Moisture


class HourOfHeat(NamedTuple):
    """The heat of an hour (W): when it begins (o'clock), how cold it is outside (K), the air that comes in (m3/s).

    ``given_back`` is what linings, furnishings and the air held before, less than nothing where they take it up.
    ``planes`` is what leaves as if the sky were no colder than the air, ``sky`` what leaves besides.
    """

    clock: int
    outside: float
    flow: float
    heater: float
    people: float
    given_back: float
    planes: float
    sky: float
    windows: float
    air: float


class HourOfWater(NamedTuple):
    """The water of an hour (kg): breathed and cooked, brought by the air and carried off, settled, kept in the air.

    ``settled`` is on cold places, less than nothing where they dry; ``kept`` in the air and in what takes it up as air
    does. ``before`` and ``after`` are how damp the air was (kg a kg of dry air).
    """

    clock: int
    given_off: float
    brought: float
    carried_off: float
    settled: float
    kept: float
    before: float
    after: float


class _Run(NamedTuple):
    box: Box
    hours: Hours
    course: Course


def coldest_hour(one: HeldNight, inside: Inside, moisture: tuple[Moisture, ...]) -> HourOfHeat:
    """Return the heat of the hour of the judged night in which the room is coldest."""
    run = _run(one, inside, moisture)
    box, hours, course = run
    hour = min(range(len(course.air) - ASLEEP_HOURS, len(course.air)), key=course.air.__getitem__)
    air, outside, flow = course.air[hour], hours.outside[hour], course.flow[hour]
    planes, sky, back = _of_the_planes(box.faces, hours, course, hour)
    back += box.room.coupling * (course.furnishing[hour] - air)
    return HourOfHeat(
        clock=(BEGINS + hour) % HOURS_OF_DAY,
        outside=outside,
        flow=flow,
        heater=course.heat[hour],
        people=hours.gains[hour],
        given_back=back - box.room.air * _warmed(course.air, hour) / HOUR,
        planes=planes,
        sky=sky,
        windows=sum(box.panes.conductance) * (air - outside),
        air=box.room.pressure / (DRY_AIR * outside) * HEAT_OF_AIR * flow * (air - outside),
    )


def last_hour_of_water(one: HeldNight, inside: Inside, moisture: tuple[Moisture, ...]) -> HourOfWater:
    """Return the water of the last hour of the judged night."""
    box, hours, course = _run(one, inside, moisture)
    before, after = course.humidity[-2:]
    fresh = course.flow[-1] * box.room.pressure / (DRY_AIR * hours.outside[-1]) * HOUR
    return HourOfWater(
        clock=(BEGINS - 1) % HOURS_OF_DAY,
        given_off=hours.vapour[-1] * HOUR,
        brought=fresh * hours.humidity[-1],
        carried_off=fresh * after,
        settled=sum(course.settled[-1]) - sum(course.settled[-2]),
        kept=box.room.moist * (after - before),
        before=before,
        after=after,
    )


def _run(one: HeldNight, inside: Inside, moisture: tuple[Moisture, ...]) -> _Run:
    """Return the best run of a night, which is remembered, with the room and the hours it was run on."""
    box = room_of(inside.shell, inside.airflow, inside.volume, inside.height, inside.floor, "best", OFF)
    hours = hours_of(one.outdoors, moisture, one.warmth, "best")
    return _Run(box, hours, runs_of(inside, one.outdoors, one.warmth, moisture)["best"])


def _of_the_planes(faces: Faces, hours: Hours, course: Course, hour: int) -> tuple[float, float, float]:
    """Return what left through the planes, to the sky besides, and what their linings gave back (W)."""
    outside, air = hours.outside[hour], course.air[hour]
    through, sky, back = 0.0, 0.0, 0.0
    for number, mass in enumerate(course.faces[hour]):
        film = faces.film[number] + faces.film_wind[number] * hours.wind[hour]
        colder = STEFAN_BOLTZMANN * (outside**4 - hours.sky[hour] ** 4)
        felt = outside - faces.emittance[number] * faces.sky[number] * colder / film
        way = 1.0 / (faces.behind[number] + 1.0 / (film * faces.area[number]))
        through += way * (mass - outside)
        sky += way * (outside - felt)
        back += way * (mass - felt) - faces.inward[number] * (air - mass)
    return through, sky, back


def _warmed(air: tuple[float, ...], hour: int) -> float:
    """Return how much warmer the air got in an hour (K), by the means of the hours beside it."""
    later = min(hour + 1, len(air) - 1)
    return (air[later] - air[hour - 1]) / (later - hour + 1)
