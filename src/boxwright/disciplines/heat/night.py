"""The design night: three days as cold as the place gets, without sun, the third night of which is judged.

Each heater that stands is run alone at the three ends of what is not known: "low" as least is lost and the heater
gives most, "high" as most is lost and it gives least. The ends are taken together, not in quadrature: foam that is
thinner than thought is so everywhere, and a window that does not shut lets the wind in on the same night.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import cos, pi

from boxwright.disciplines.heat.as_built import ENDS, End
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import (
    Cold,
    Heater,
    Hours,
    box_through_time,
    drifts_to,
    held_outside,
    sky_emittance,
    sky_temperature,
)
from boxwright.disciplines.heat.method.boxed import _damp_through_time, _saturated
from boxwright.disciplines.heat.method.network import Course
from boxwright.disciplines.heat.method.sky import STEFAN_BOLTZMANN
from boxwright.disciplines.heat.parts import COLDEST_NIGHT
from boxwright.disciplines.heat.room import (
    HEAT_OF_AIR,
    NIGHT,
    SEA_LEVEL,
    at,
    cold_places,
    hidden_places,
    room_of,
    shares_of,
)
from boxwright.disciplines.heat.shell import Shell
from boxwright.exchange import Airflow, Moisture, Narrowed, Night, NightEnd
from boxwright.records import dataclass
from boxwright.units import Band, exactly

WANTED = columns("wanted")["asleep"][0]
"""What is wanted inside (K) where nobody wrote what the heater holds."""
DAYS, HOURS_OF_DAY, BEGINS, COLDEST_AT = 3, 24, 8, 6
ASLEEP_HOURS = 12
"""People are inside from `ASLEEP_FROM` to eight in the morning."""
SET_BACK_FROM, SET_BACK_HOURS = 22, 8
"""A heater that is set lower while people sleep is so from ten to six; by eight it should be warm again."""
SUBSTEPS, SUBSTEPS_OF_ENDS = 4, 2
"""Steps an hour: the ends are asked for their temperatures alone, which half the steps give within a tenth of a K."""
DRY = Cold((), (), (), ())
COOL_AT_NOTHING = 400.0
OFF = Heater(0.0, 0.0, True, 0.0)
OUTER: tuple[End, End] = ("low", "high")


@dataclass(frozen=True, slots=True)
class Outdoors:
    """The coldest night of a place: coldest and the swing to its warmest hour (K), wind (m/s).

    ``height`` is how high it lies above the sea (m), None where nobody wrote it.
    """

    of: str
    place: str
    coldest: Band
    swing: Band
    wind: Band
    height: Band | None = None


@dataclass(frozen=True, slots=True)
class Warmth:
    """What warms the room: its lowest and highest heat (W) and what it is set to (K).

    ``switches``: whether it goes off and on by itself below its lowest setting; None where nobody wrote it. A lowest
    heat that nobody wrote is anything up to the highest one. ``set_back`` is how much lower it is set (K) while people
    sleep. ``fed_by`` is the battery that has to be full as the night begins, or as full as ``charge`` says, and
    ``is_plugged_in`` that a cable from outside feeds it.
    """

    of: str
    name: str
    lowest: Band
    highest: Band
    wanted: float
    is_wanted_assumed: bool
    switches: bool | None
    set_back: float = 0.0
    fed_by: str = ""
    is_plugged_in: bool = False
    charge: Band | None = None


@dataclass(frozen=True, slots=True)
class Inside:
    """The room of the night: its shell, air, and measures (m3, m, m2).

    ``unsaid`` are the paths of openings of which nobody wrote how well what fills them keeps heat in.
    """

    shell: Shell
    airflow: Airflow
    volume: float
    height: float
    floor: float
    unsaid: tuple[str, ...] = ()


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
            narrowed=_narrowed(inside, outdoors, warmth, moisture, runs["high"]),
        ),
    )


def runs_of(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...]
) -> dict[End, Course]:
    """Return the three days at each end of heat loss; the judged night are their last hours."""
    return dict(zip(ENDS, _runs(inside, outdoors, warmth, moisture), strict=True))


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


def hours_of(outdoors: Outdoors, moisture: tuple[Moisture, ...], warmth: Warmth | None, end: End) -> Hours:
    """Return the hours of three days; the sky is clear, and as dry as the coldest hour leaves it."""
    coldest = at(outdoors.coldest, end, False)
    swing = at(outdoors.swing, end, False)
    clocks = [(BEGINS + hour) % HOURS_OF_DAY for hour in range(DAYS * HOURS_OF_DAY)]
    outside = tuple(
        coldest + swing / 2.0 * (1.0 - cos(2.0 * pi * (clock - COLDEST_AT) / HOURS_OF_DAY)) for clock in clocks
    )
    humidity = at(NIGHT["humidity"], end, False) * _saturated(coldest, SEA_LEVEL)
    dew = coldest - 2.0
    sky = tuple(sky_temperature(one, min(sky_emittance(dew), 1.0)) for one in outside)
    warmed, wet = given_by_hour(moisture, tuple(clocks), end)
    nothing = (0.0,) * len(clocks)
    return Hours(
        outside=outside,
        sky=sky,
        wind=(at(outdoors.wind, end),) * len(clocks),
        humidity=(humidity,) * len(clocks),
        sun=tuple(() for _ in clocks),
        warm=tuple(_set_to(warmth, clock) for clock in clocks),
        cool=(COOL_AT_NOTHING,) * len(clocks),
        gains=warmed,
        radiant=nothing,
        fan=nothing,
        vapour=wet,
    )


def given_by_hour(
    moisture: tuple[Moisture, ...], clocks: tuple[int, ...], end: End
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the heat (W) and the vapour (kg/s) that people and what they do give off, by hours of the day."""
    each = [(one, at(one.watt, end, False), at(one.kg_per_second, end)) for one in moisture]
    day = [[(watt, wet) for one, watt, wet in each if one.is_on(clock)] for clock in range(HOURS_OF_DAY)]
    sums = [(sum(watt for watt, _ in on), sum(wet for _, wet in on)) for on in day]
    return tuple(sums[clock][0] for clock in clocks), tuple(sums[clock][1] for clock in clocks)


def _set_to(warmth: Warmth | None, clock: int) -> float:
    """Return what the heater is set to (K) in the hour that begins then; nothing where there is none."""
    if warmth is None:
        return 0.0
    is_asleep = (clock - SET_BACK_FROM) % HOURS_OF_DAY < SET_BACK_HOURS
    return warmth.wanted - (warmth.set_back if is_asleep else 0.0)


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


def damp_ends(
    inside: Inside,
    outdoors: Outdoors,
    warmth: Warmth | None,
    moisture: tuple[Moisture, ...],
    runs: dict[End, Course],
) -> tuple[NightEnd, NightEnd]:
    """Return the driest night and the wettest one that it may be."""
    dry, wet = (_damp_end(inside, outdoors, warmth, moisture, runs[end], end) for end in OUTER)
    return dry, wet


def _narrowed(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...], wet: Course
) -> tuple[Narrowed, ...]:
    """Return the wettest night with each thing known that nobody wrote, at its driest: as warm as it is without.

    What fills holes counts as warm on its face alone: that the room loses less then is left out, on the wet side.
    """
    found: list[Narrowed] = []
    cooks = tuple(one.of for one in moisture if one.is_unsaid)
    if cooks:
        without = tuple(
            replace(one, kg_per_second=exactly(one.kg_per_second.low)) if one.is_unsaid else one for one in moisture
        )
        found.append(Narrowed("cooks", cooks, _damp_end(inside, outdoors, warmth, without, wet, "high")))
    if inside.unsaid:
        faces = tuple(
            replace(face, places=tuple(replace(one, factor=exactly(one.factor.high)) for one in face.places))
            if face.of in inside.unsaid
            else face
            for face in inside.shell.faces
        )
        filled = replace(inside, shell=replace(inside.shell, faces=faces))
        found.append(Narrowed("U", inside.unsaid, _damp_end(filled, outdoors, warmth, moisture, wet, "high")))
    return tuple(found)


def _damp_end(
    inside: Inside,
    outdoors: Outdoors,
    warmth: Warmth | None,
    moisture: tuple[Moisture, ...],
    run: Course,
    end: End,
) -> NightEnd:
    """Return the water of a night at one end, by the temperatures of that end of heat loss.

    The coldest room is the wettest where least air comes in from a damp night, so all that has to do with air is taken
    from the other end of heat loss. No one night is all of that at once: what comes of it bounds those that are.
    """
    airflow = inside.airflow
    leak, vents, rise = (exactly(at(one, end, False)) for one in (airflow.leak, airflow.vents, airflow.rise))
    swapped = replace(airflow, leak=leak, vents=vents, rise=rise)
    box = room_of(inside.shell, swapped, inside.volume, inside.height, inside.floor, end, OFF)
    outdoor = at(NIGHT["humidity"], end) * _saturated(at(outdoors.coldest, end, False), SEA_LEVEL)
    hours = hours_of(outdoors, moisture, warmth, end)
    hours = hours._replace(
        humidity=(outdoor,) * len(hours.outside), wind=(at(outdoors.wind, end, False),) * len(hours.outside)
    )
    humidity, flow, settled = _damp_through_time(box.room, box.cold, hours, run.air)
    judged = slice(-ASLEEP_HOURS, None)
    return NightEnd(
        outside=hours.outside[judged],
        air=run.air[judged],
        humidity=humidity[judged],
        outdoors=outdoor,
        flow=flow[judged],
        water=_water(inside.shell, settled[judged], end),
    )


def _water(shell: Shell, settled: tuple[tuple[float, ...], ...], end: End) -> tuple[tuple[float, ...], ...]:
    """Return the water of each place by the hour; on what lies behind a lining heat works out none: air does."""
    shares, hidden = shares_of(shell, end), (0.0,) * len(hidden_places(shell))
    return tuple((*(row[number] * share for number, share in shares), *hidden) for row in settled)


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
        water=_water(inside.shell, run.settled[judged], "best"),
        ends=ends,
    )
