"""The design night: three days as cold as the place gets, without sun, the third night of which is judged.

Each heater that stands is run alone at the three ends of what is not known: "low" as least is lost and the heater
gives most, "high" as most is lost and it gives least. The ends are taken together, not in quadrature: foam that is
thinner than thought is so everywhere, and a window that does not shut lets the wind in on the same night.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from boxwright.disciplines.heat.as_built import ENDS, End
from boxwright.disciplines.heat.cold_hours import (
    ASLEEP_HOURS,
    BEGINS,
    COLDEST_AT,
    DAYS,
    HOURS_OF_DAY,
    OFF,
    Inside,
    Outdoors,
    Warmth,
    hours_of,
)
from boxwright.disciplines.heat.method import (
    Cold,
    Heater,
    box_through_time,
    drifts_to,
    held_outside,
)
from boxwright.disciplines.heat.method.network import Course
from boxwright.disciplines.heat.method.sky import STEFAN_BOLTZMANN
from boxwright.disciplines.heat.night_damp import damp_ends, narrowed, water_of
from boxwright.disciplines.heat.parts import COLDEST_NIGHT
from boxwright.disciplines.heat.room import (
    HEAT_OF_AIR,
    at,
    cold_places,
    hidden_places,
    room_of,
)
from boxwright.exchange import Moisture, Night, NightEnd
from boxwright.records import dataclass
from boxwright.units import Band, exactly

SUBSTEPS, SUBSTEPS_OF_ENDS = 4, 2
"""Steps an hour: the ends are asked for their temperatures alone, which half the steps give within a tenth of a K."""
DRY = Cold((), (), (), ())


@dataclass(frozen=True, slots=True)
class HeldNight:
    """What one heater makes of one place's night; temperatures in K, ``loss`` in W/K with the air that is lost.

    ``shell`` is what of it the planes and holes lose; ``gains`` (W) what people give, less what goes to the clear sky.

    ``coldest`` is the coldest hour inside, ``warmest`` the warmest one. ``at_lowest`` is where the room drifts to at
    the coldest hour outside while the heater runs on its lowest setting and nothing is opened. ``holds_down_to`` is
    the coldest outside at which it just holds what is wanted, ``too_warm_above`` the mildest one at which its lowest
    setting does not yet give more. ``energy`` (J) is its heat of the night. ``banded`` are the night's hours off,
    cycling, steady at the lowest, between and at the highest setting. ``night`` is the best run hour by hour.
    """

    outdoors: Outdoors
    warmth: Warmth | None
    shell: Band
    gains: Band
    loss: Band
    coldest: Band
    warmest: Band
    at_lowest: Band | None
    holds_down_to: Band | None
    too_warm_above: Band | None
    energy: Band
    banded: tuple[int, ...]
    night: Night


@lru_cache(maxsize=64)
def night_of(inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...]) -> HeldNight:
    """Return the night of one place with one heater, or with none.

    It is remembered, because load states that differ in tanks alone have the same nights.
    """
    runs = runs_of(inside, outdoors, warmth, moisture)
    # What warms it as it is coldest outside: dinner is long eaten then.
    by_then = [one for one in moisture if one.is_on(COLDEST_AT)]
    gains = {end: sum(at(one.watt, end, False) for one in by_then) for end in ENDS}
    losses = {end: _loss(inside, runs[end], end) for end in ENDS}
    skies = {end: _to_the_sky(inside, outdoors, warmth, end) for end in ENDS}
    gains = {end: gains[end] - skies[end] for end in ENDS}
    judged = slice(-ASLEEP_HOURS, None)
    coldest = {end: min(run.air[judged]) for end, run in runs.items()}
    alone = _by_the_heater(inside, outdoors, warmth, moisture, runs)
    warmest = {end: max(run.air[judged]) for end, run in alone.items()}
    energy = {end: sum(run.heat[judged]) * 3600.0 for end, run in runs.items()}
    best = runs["best"]
    return HeldNight(
        outdoors=outdoors,
        warmth=warmth,
        shell=inside.shell.by_air,
        gains=_band(gains),
        loss=_band(losses),
        coldest=_band(coldest),
        warmest=_band(warmest),
        at_lowest=_drifts(warmth, outdoors, gains, losses),
        holds_down_to=_outside(warmth, gains, losses, is_highest=True),
        too_warm_above=_outside(warmth, gains, losses, is_highest=False),
        energy=_band(energy),
        banded=tuple(best.band[judged].count(one) for one in range(5)),
        night=replace(
            _night(inside, outdoors, warmth, best, damp_ends(inside, outdoors, warmth, moisture, runs)),
            narrowed=narrowed(inside, outdoors, warmth, moisture, runs["high"]),
        ),
    )


def runs_of(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...]
) -> dict[End, Course]:
    """Return the three days at each end of heat loss; the judged night are their last hours."""
    return dict(zip(ENDS, _runs(inside, outdoors, warmth, moisture), strict=True))


def coldest_at_work(inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...]) -> Band:
    """Return the coldest hour (K) of those who work in it, on the last of three days as cold as a place gets.

    Its heater is lit in good time; the sun counts for nothing.
    """
    working = [one for one in moisture if one.of == "people"]
    last = range((DAYS - 1) * HOURS_OF_DAY, DAYS * HOURS_OF_DAY)
    hours = [hour for hour in last if any(one.is_on((BEGINS + hour) % HOURS_OF_DAY) for one in working)]
    runs = runs_of(inside, outdoors, warmth, moisture)
    return _band({end: min(run.air[hour] for hour in hours) for end, run in runs.items()})


def _by_the_heater(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...], runs: dict[End, Course]
) -> dict[End, Course]:
    """Return the runs in which no dinner warms the evening: how warm it gets is asked of the heater alone."""
    without = tuple(one for one in moisture if one.is_on(COLDEST_AT))
    dinners = [one for one in moisture if one not in without]
    if warmth is None:
        return runs
    # An end at which nothing may be cooked is as it was.
    return {
        end: _alone(inside, outdoors, warmth, without, end) if any(at(one.watt, end, False) for one in dinners) else run
        for end, run in runs.items()
    }


@lru_cache(maxsize=64)
def _alone(inside: Inside, outdoors: Outdoors, warmth: Warmth, moisture: tuple[Moisture, ...], end: End) -> Course:
    """Return three days at one end without the dinner; remembered as the others are."""
    return _run(inside, outdoors, warmth, moisture, end)


@lru_cache(maxsize=64)
def _runs(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...]
) -> tuple[Course, ...]:
    """Return the three ends; remembered for whoever draws what `night_of` made of them."""
    return tuple(_run(inside, outdoors, warmth, moisture, end) for end in ENDS)


def _run(inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...], end: End) -> Course:
    """Return three days at one end; it begins as warm as is wanted, so that what was warmed before is not asked."""
    heater = OFF if warmth is None else _heater(warmth, end)
    room = room_of(inside.shell, inside.airflow, inside.volume, inside.height, inside.floor, end, heater)
    hours = hours_of(outdoors, moisture, warmth, end)
    start = warmth.wanted if warmth is not None else hours.outside[0], hours.humidity[0]
    if end == "best":
        return box_through_time(room, hours, start, SUBSTEPS)
    return box_through_time(room._replace(cold=DRY), hours, start, SUBSTEPS_OF_ENDS)


def _heater(warmth: Warmth, end: End) -> Heater:
    """Return a heater at an end; one that perhaps cannot go off by itself runs on where the room is warmest."""
    highest = at(warmth.highest, end, False)
    lowest = min(at(warmth.lowest, end, False), highest)
    switches = end != "low" if warmth.switches is None else warmth.switches
    return Heater(lowest, highest, switches, 0.0)


def _loss(inside: Inside, run: Course, end: End) -> float:
    """Return what the room loses for each kelvin (W/K) through its shell and with its air, by the judged night."""
    judged = run.flow[-ASLEEP_HOURS:]
    return at(inside.shell.by_air, end) + HEAT_OF_AIR * sum(judged) / len(judged)


def _to_the_sky(inside: Inside, outdoors: Outdoors, warmth: Warmth | None, end: End) -> float:
    """Return the heat (W) that goes to the clear sky at the coldest hour, beyond what the colder air takes."""
    faces = room_of(inside.shell, inside.airflow, inside.volume, inside.height, inside.floor, end, OFF).faces
    hours = hours_of(outdoors, (), warmth, end)
    hour = min(range(len(hours.outside)), key=hours.outside.__getitem__)
    colder = STEFAN_BOLTZMANN * (hours.outside[hour] ** 4 - hours.sky[hour] ** 4)
    lost = 0.0
    for number, area in enumerate(faces.area):
        film = faces.film[number] + faces.film_wind[number] * hours.wind[hour]
        through = 1.0 / (faces.behind[number] + 1.0 / faces.inward[number] + 1.0 / (film * area))
        lost += through * faces.emittance[number] * faces.sky[number] * colder / film
    return lost


def _drifts(
    warmth: Warmth | None, outdoors: Outdoors, gains: dict[End, float], losses: dict[End, float]
) -> Band | None:
    if warmth is None or not warmth.lowest.known:
        return None
    return _band(
        {
            end: drifts_to(at(outdoors.coldest, end, False), at(warmth.lowest, end, False) + gains[end], losses[end])
            for end in ENDS
        }
    )


def _outside(warmth: Warmth | None, gains: dict[End, float], losses: dict[End, float], is_highest: bool) -> Band | None:
    if warmth is None:
        return None
    heat = warmth.highest if is_highest else warmth.lowest
    if not heat.known:
        return None
    # Colder than the coldest night that is worked out nothing is said.
    found = {
        end: max(held_outside(warmth.wanted, at(heat, end, False) + gains[end], losses[end]), COLDEST_NIGHT)
        for end in ENDS
    }
    return _band(found)


def _band(ends: dict[End, float]) -> Band:
    low, high = min(ends.values()), max(ends.values())
    return Band(ends["best"], low, high, spread="interval") if high > low else exactly(ends["best"])


def _night(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, run: Course, ends: tuple[NightEnd, NightEnd]
) -> Night:
    """Return the judged night."""
    judged = slice(-ASLEEP_HOURS, None)
    return Night(
        of=outdoors.of,
        place=outdoors.place,
        heater=warmth.of if warmth is not None else "",
        outside=hours_of(outdoors, (), warmth, "best").outside[judged],
        air=run.air[judged],
        humidity=run.humidity[judged],
        heat=run.heat[judged],
        flow=run.flow[judged],
        cold=(*cold_places(inside.shell), *hidden_places(inside.shell)),
        water=water_of(inside.shell, run.settled[judged], "best"),
        ends=ends,
    )
