"""The box through time: air and lining, furnishings, one mass in each face, the heater's logic, and the room's water.

`box_through_time` takes tuples and gives tuples. The loop itself, `_march`, takes lists or arrays and fills rows that
are handed to it, so that the same text runs plain for a night and compiled for a year.
"""

from __future__ import annotations

from math import inf
from typing import NamedTuple

from boxwright.disciplines.heat.method.boxed import (
    DRY_AIR,
    HOUR,
    Box,
    Cold,
    Faces,
    Heater,
    Hours,
    KilogramPerSecond,
    Panes,
    Room,
    WattPerKelvin,
    _felt,
    _flows,
    _gathered,
    _heated,
    _humid_after,
    _opened,
    _relaxed,
    _Work,
)
from boxwright.units import (
    CubicMetrePerSecond,
    Kelvin,
    Kilogram,
    OutOfRange,
    Ratio,
    Second,
    Watt,
)

__all__ = [
    "Box",
    "Cold",
    "Course",
    "Faces",
    "Heater",
    "Hours",
    "KilogramPerSecond",
    "Panes",
    "Room",
    "WattPerKelvin",
    "box_through_time",
]

SAME = 1e-9
HEAT_OF_AIR = 1006.0
"""J per kg and K"""
BANDS = 5
"""How a heater runs: 0 off, 1 cycling below its lowest setting, 2 steady at its lowest, 3 between, 4 at its highest."""
FIXED = 8
"""What stands in a row of an hour before its faces and its cold places."""


class Course(NamedTuple):
    """What came of each hour (means, but humidity and water at its end), and of all of them together.

    ``faces`` has a row for each hour; ``settled`` too, of the water on each cold place. ``banded`` is the time the
    heater spent in each of its bands. ``residual`` is what the energy balance lacks, as a share of what passed.
    """

    air: tuple[Kelvin, ...]
    furnishing: tuple[Kelvin, ...]
    heat: tuple[Watt, ...]
    cooling: tuple[Watt, ...]
    band: tuple[int, ...]
    humidity: tuple[Ratio, ...]
    flow: tuple[CubicMetrePerSecond, ...]
    faces: tuple[tuple[Kelvin, ...], ...]
    settled: tuple[tuple[Kilogram, ...], ...]
    banded: tuple[Second, ...]
    coldest: Kelvin
    warmest: Kelvin
    residual: Ratio


def box_through_time(
    box: Box,
    hours: Hours,
    start: tuple[Kelvin, Ratio],
    substeps: int = 4,
    weight: Ratio = 1.0,
    warm_up: int = 0,
) -> Course:
    """Return how a room goes through hours of weather and use, from a temperature and a humidity ratio at the start.

    ``weight`` 1 looks at the end of each step (backward Euler), 0.5 at its middle (trapezoid). ``warm_up`` hours are
    run from the beginning of the series before anything is kept.

    Satisfies: result.residual; sum(result.banded) - 3600 * len(result.heat)
    Valid: hours that all have the same number of values; one substep an hour or more
    Source: heat-sheet network, hourly; vdi-6007 for the network of two masses
    Departs: each face has one mass, sol-air outside it; heat of settling and drying water is left out of the balance; air brings heat by its density outside
    Assumes: well-mixed air; weather and use steady within an hour; air flow of a substep by the room at its beginning; water hour by hour by the room's mean
    """  # noqa: E501
    box = _counted(Box(Room(*box[0]), Faces(*box[1]), Panes(*box[2]), Cold(*box[3]), Heater(*box[4])))
    hours = Hours(*hours)
    _refuse(box, hours, int(substeps), weight, int(warm_up))
    count, faces, places = len(hours.outside), len(box.faces.inward), len(box.cold.factor)
    work = _Work(*([0.0] * faces for _ in range(7)), *([0.0] * places for _ in range(4)))
    out = [[0.0] * (FIXED + faces + places) for _ in range(count + 1)]
    _march(box, hours, start[0], start[1], weight, int(substeps), int(warm_up), work, out)
    return _course(out, faces)


def _counted(box: Box) -> Box:
    """Return a box whose columns that count are whole numbers, whatever they were written as."""
    return box._replace(
        faces=box.faces._replace(direction=tuple(int(one) for one in box.faces.direction)),
        panes=box.panes._replace(direction=tuple(int(one) for one in box.panes.direction)),
        cold=box.cold._replace(face=tuple(int(one) for one in box.cold.face)),
    )


def _refuse(box: Box, hours: Hours, substeps: int, weight: Ratio, warm_up: int) -> None:
    """Raise OutOfRange for a box or hours that cannot be run."""
    count = len(hours.outside)
    for column in hours:
        OutOfRange.unless_between("hours of one column", float(len(column)), float(count), float(count))
    OutOfRange.unless_positive("hours", float(count))
    OutOfRange.unless_between("substeps", float(substeps), 1.0, inf)
    OutOfRange.unless_between("weight", weight, 0.5, 1.0)
    OutOfRange.unless_between("warm_up", float(warm_up), 0.0, float(count))
    for group in (box.faces, box.panes, box.cold):
        for column in group:
            OutOfRange.unless_between("values of one column", float(len(column)), len(group[0]), len(group[0]))
    for number in (*box.room[1:4], *box.faces.capacity):
        OutOfRange.unless_between("a capacity", number, 0.0, inf)
    for number in (*box.faces.inward, *box.faces.film):
        OutOfRange.unless_positive("a face's conductance", number)
    looked = max((*box.faces.direction, *box.panes.direction), default=-1)
    OutOfRange.unless_between("a direction", float(looked), -1.0, min(len(row) for row in hours.sun) - 1.0)
    OutOfRange.unless_between(
        "a cold place's face", float(max(box.cold.face, default=-1)), -1.0, len(box.faces.area) - 1.0
    )
    OutOfRange.unless_positive("outside", min(hours.outside))
    room = box.room
    shared = room.to_air + room.to_furnishing + sum(box.faces.catches)
    OutOfRange.unless_between("shares of the sun", shared, 1.0 - SAME, 1.0 + SAME)
    if not room.coupling:
        OutOfRange.unless_between("furnishings that nothing warms", room.furnishing + room.to_furnishing, 0.0, 0.0)
    OutOfRange.unless_positive("pressure", box.room.pressure)
    OutOfRange.unless_positive("moist", box.room.moist)


def _course(out: list[list[float]], faces: int) -> Course:
    """Return rows as a course."""
    rows, last = out[:-1], out[-1]
    air, furnishing, heat, cooling, band, humidity, _, flow = list(zip(*rows, strict=True))[:FIXED]
    return Course(
        air,
        furnishing,
        heat,
        cooling,
        tuple(int(one) for one in band),
        humidity,
        flow,
        tuple(tuple(row[FIXED : FIXED + faces]) for row in rows),
        tuple(tuple(row[FIXED + faces :]) for row in rows),
        tuple(last[1 : 1 + BANDS]),
        last[6],
        last[7],
        last[0],
    )


def _march(
    box: Box,
    hours: Hours,
    start: Kelvin,
    humid: Ratio,
    weight: Ratio,
    substeps: int,
    warm_up: int,
    work: _Work,
    out: list[list[float]],
) -> None:
    """Fill ``out`` with a row for each hour and one of totals; ``work`` is room to work in, begun at zero."""
    faces = box.faces
    count, many, places = len(hours.outside), len(faces.inward), len(box.cold.factor)
    air, furnishing, step = start, start, HOUR / substeps
    lacks, passed, coldest, warmest = 0.0, 0.0, inf, -inf
    totals = out[count]
    for turn in range(-warm_up, count):
        hour = turn + warm_up if turn < 0 else turn
        glass, radiant = _felt(faces, box.panes, hours, hour, weight * step, work)
        if turn == -warm_up:
            for number in range(many):
                way, inward = work.way[number], faces.inward[number]
                work.mass[number] = (way * work.felt[number] + inward * start) / (way + inward)
        row = out[max(turn, 0)]
        for column in range(FIXED + many):
            row[column] = 0.0
        for _ in range(substeps):
            air, furnishing, mean, amid, heat, cooling, band, flow, lack, through = _stepped(
                box, hours, hour, weight, step, glass, radiant, air, furnishing, work
            )
            lacks += lack
            passed += through
            row[0] += mean / substeps
            row[1] += amid / substeps
            row[2] += heat / substeps
            row[3] += cooling / substeps
            row[4] = max(row[4], band)
            row[7] += flow / substeps
            for number in range(many):
                row[FIXED + number] += work.mean[number] / substeps
            if turn >= 0:
                totals[1 + int(band)] += step
                coldest, warmest = min(coldest, air), max(warmest, air)
        humid = _humid_after(box.room, box.cold, hours, hour, row[0], row[7], humid, work)
        row[5] = humid
        for number in range(places):
            row[FIXED + many + number] = work.water[number]
    totals[0] = abs(lacks) / passed if passed > 0.0 else abs(lacks)
    totals[6], totals[7] = coldest, warmest


def _stepped(
    box: Box,
    hours: Hours,
    hour: int,
    weight: float,
    step: float,
    glass: float,
    radiant: float,
    air: float,
    furnishing: float,
    work: _Work,
) -> tuple[float, float, float, float, float, float, float, float, float, float]:
    """Return air and furnishings after a step and in its mean, heat, cooling, band, flow, what is lacking, what passed.

    All of it is solved for the mean of the step as an implicit step of ``weight`` times its length, then run on to the
    end, so that every weight keeps what comes in and what is stored exactly equal.
    """
    room, faces, heater = box.room, box.faces, box.heater
    tau, outside = weight * step, hours.outside[hour]
    direct = hours.gains[hour] + radiant * room.to_air
    carries = room.pressure / (DRY_AIR * outside) * HEAT_OF_AIR
    fixed, open_to = _flows(room, hours.fan[hour], air, outside, hours.wind[hour])
    loss, load = _gathered(faces, work, radiant)
    hold = room.furnishing / tau + room.coupling
    kept = room.furnishing / tau * furnishing + radiant * room.to_furnishing
    if hold > 0.0:
        loss += room.coupling - room.coupling * room.coupling / hold
        load += room.coupling * kept / hold
    blown = glass + carries * fixed
    loss += room.air / tau + blown
    load += room.air / tau * air + blown * outside + direct
    heat, band = _heated(heater, room, hours.warm[hour], loss, load, air, weight)
    extra = _opened(room, loss, load + heat, outside, open_to * carries)
    loss, load, blown = loss + extra, load + extra * outside + heat, blown + extra
    mean = load / loss
    top = hours.cool[hour] if room.air <= 0.0 else air + weight * (hours.cool[hour] - air)
    cooling = 0.0
    if mean > top:
        cooling = min(loss * (mean - top), heater.cooling)
        mean -= cooling / loss
    crossed, stored = _relaxed(faces, work, weight, mean, radiant)
    amid = (kept + room.coupling * mean) / hold if hold > 0.0 else mean
    # What has no mass is where its surroundings put it; only the others run on beyond the mean of the step.
    after = furnishing + (amid - furnishing) / weight if room.furnishing > 0.0 else amid
    stored += room.furnishing * (after - furnishing)
    ends = air + (mean - air) / weight if room.air > 0.0 else mean
    stored += room.air * (ends - air)
    left = blown * (outside - mean)
    given = direct + radiant * room.to_furnishing + heat - cooling + left + crossed
    passed = abs(left) + abs(crossed) + heat + cooling + abs(direct)
    flow = fixed + extra / carries
    return ends, after, mean, amid, heat, cooling, band, flow, given * step - stored, passed * step
