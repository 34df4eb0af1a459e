"""What a cold night is given: its place, what warms the room, the room itself, and all of it hour by hour."""

from __future__ import annotations

from math import cos, pi

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import Heater, Hours, sky_emittance, sky_temperature
from boxwright.disciplines.heat.method.boxed import _saturated
from boxwright.disciplines.heat.room import NIGHT, SEA_LEVEL, at
from boxwright.disciplines.heat.shell import Shell
from boxwright.exchange import Airflow, Moisture
from boxwright.records import dataclass
from boxwright.units import Band

WANTED = columns("wanted")["asleep"][0]
"""What is wanted inside (K) where nobody wrote what the heater holds."""
DAYS, HOURS_OF_DAY, BEGINS, COLDEST_AT = 3, 24, 8, 6
ASLEEP_HOURS = 12
"""People are inside from `ASLEEP_FROM` to eight in the morning."""
SET_BACK_FROM, SET_BACK_HOURS = 22, 8
"""A heater that is set lower while people sleep is so from ten to six; by eight it should be warm again."""
COOL_AT_NOTHING = 400.0
OFF = Heater(0.0, 0.0, True, 0.0)


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
