"""The hot day through the room: how hot by which hour, shut, opened, with fans, with doors open, cooled.

Each way is run at the ends of what is not known: of the shell and of the day apart, for who loses much by night takes
in much by day, and with the front looking north and east, since nobody writes where it looks.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import product
from typing import Literal, NamedTuple

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.climate import HOURS_OF_DAY, SECONDS_OF_HOUR, Around, Facing, around
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, COOL_AT_NOTHING, OFF, Inside
from boxwright.disciplines.heat.hot import BEGINS, HOT, HotDay, weather_of
from boxwright.disciplines.heat.method import Box, Hours, box_through_time
from boxwright.disciplines.heat.method.network import Course
from boxwright.disciplines.heat.room import NEVER, SEA_LEVEL, at
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.year_room import HEADINGS, ROOMS, YEAR, Heading, year_room
from boxwright.exchange import ASLEEP_FROM, Airflow, Moisture
from boxwright.records import dataclass
from boxwright.units import Band, exactly

Way = Literal["shut", "opened", "fans", "doors", "cooled"]
Asked = Literal["warmest", "bedtime"]
WAYS: tuple[Way, ...] = ("shut", "opened", "fans", "doors", "cooled")
SUBSTEPS = 1
"""Steps an hour: half of them give the hottest hour within a fifth of a K, and bedtime too."""
MOST_COOLING = 20_000.0
"""W, more than any room of the kind takes: what it asks for is what is told."""
BEDTIME = 22
"""The hour of the evening whose temperature is told for those who sleep."""
SPREADS: tuple[tuple[End, End], ...] = (
    ("best", "best"), ("low", "low"), ("high", "low"), ("low", "high"), ("high", "high")
)  # fmt: skip
"""Ends of the shell's loss, each with an end of the day and of what the skin takes of it."""


@dataclass(frozen=True, slots=True)
class Airing:
    """What can be done about the air: with windows and lids, and with doors as well; cold (W) that is made."""

    windows: Airflow
    doors: Airflow
    cold: Band | None = None


@dataclass(frozen=True, slots=True)
class DayRun:
    """A hot day of the room with one way to air or cool it: K, hours of the day, W, m3/s.

    ``air`` is the best run hour by hour from six to six, ``low`` and ``high`` its ends. ``warmest`` is the hottest hour
    and ``at`` when it begins; ``too_warm`` the hours over what counts as a warm room; ``bedtime`` the temperature as
    people go to bed. ``cooling`` is the most cold that is made in an hour, ``flow`` the mean of what comes in by then;
    ``runs_for`` how long (s) what cools runs in the day, at its full cold.
    """

    way: Way
    air: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]
    warmest: Band
    at: int
    too_warm: Band
    bedtime: Band
    cooling: Band
    flow: Band
    runs_for: Band


class _Set(NamedTuple):
    """How one run is set: its ends of loss and of the day, where the front looks."""

    loss: End
    day: End
    heading: Heading


SETS = tuple(_Set(*ends, heading) for ends, heading in product(SPREADS, HEADINGS))
"""The runs of a day."""


def day_of(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way) -> DayRun:
    """Return a hot day of the room; ``people`` are who is in it, as they are by night."""
    return _told(way, airing, {one: _ran(inside, hot, airing, people, way, one) for one in SETS})


def day_if_hotter(
    inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way, asked: Asked, than: float
) -> DayRun | None:
    """Return a hot day of the room, None where any of its runs is no hotter than a limit (K) when it is asked about.

    The runs of a mild day come first: most days that may be cool enough are told by one run of the fifteen.
    """
    runs: dict[_Set, Course] = {}
    for one in sorted(SETS, key=lambda one: one.day != "low"):
        runs[one] = _ran(inside, hot, airing, people, way, one)
        air = runs[one].air[-HOURS_OF_DAY:]
        if (max(air) if asked == "warmest" else air[BEDTIME - BEGINS]) <= than:
            return None
    return _told(way, airing, {one: runs[one] for one in SETS})


def _told(way: Way, airing: Airing, runs: dict[_Set, Course]) -> DayRun:
    hours = {one: run.air[-HOURS_OF_DAY:] for one, run in runs.items()}
    best = tuple(
        sum(values) / len(values) for values in zip(*(air for one, air in hours.items() if _is_best(one)), strict=True)
    )
    ends = list(zip(*hours.values(), strict=True))
    over = ROOMS["too warm"]
    warmest = _band({one: max(air) for one, air in hours.items()})
    return DayRun(
        way=way,
        air=best,
        low=tuple(min(values) for values in ends),
        high=tuple(max(values) for values in ends),
        warmest=warmest,
        at=(BEGINS + best.index(max(best))) % HOURS_OF_DAY,
        too_warm=_band({one: float(sum(value > over for value in air)) for one, air in hours.items()}),
        bedtime=_band({one: air[BEDTIME - BEGINS] for one, air in hours.items()}),
        cooling=_band({one: max(run.cooling[-HOURS_OF_DAY:]) for one, run in runs.items()}),
        flow=_band({one: sum(run.flow[-HOURS_OF_DAY:]) / HOURS_OF_DAY for one, run in runs.items()}),
        runs_for=_band({one: _runs_for(run, airing.cold, one.day) for one, run in runs.items()}),
    )


def _runs_for(run: Course, cold: Band | None, day: End) -> float:
    """Return how long (s) what cools runs in the day at its full cold; all day where it is too weak to tell."""
    most = at(cold, day, False) if cold is not None else 0.0
    made = sum(run.cooling[-HOURS_OF_DAY:])
    return min(made / most, HOURS_OF_DAY) * SECONDS_OF_HOUR if most > 0.0 else HOURS_OF_DAY * SECONDS_OF_HOUR


def hot_end_of(
    inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way
) -> tuple[float, float]:
    """Return how hot (K) it may be as people go to bed and at the hottest hour, with the front looking one way.

    Two runs of the fifteen of a day: enough to tell which of several days is the hottest in the room.
    """
    runs = [
        _ran(inside, hot, airing, people, way, _Set(loss, day, HEADINGS[0])) for loss, day in SPREADS if day == "high"
    ]
    hours = [run.air[-HOURS_OF_DAY:] for run in runs]
    return max(air[BEDTIME - BEGINS] for air in hours), max(max(air) for air in hours)


def ways_of(airing: Airing) -> tuple[Way, ...]:
    """Return the ways there are to air or cool the room as it stands."""
    has_fan = airing.windows.fan.known and airing.windows.fan.high > 0.0
    there: dict[Way, bool] = {
        "shut": True,
        "opened": airing.windows.opened.high > 0.0,
        "fans": has_fan,
        "doors": airing.doors.opened.high > airing.windows.opened.high,
        "cooled": airing.cold is not None and airing.cold.known,
    }
    return tuple(way for way in WAYS if there[way])


def cold_asked(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...]) -> DayRun:
    """Return the day of a cooler that is as strong as it takes, in the room shut."""
    return day_of(inside, hot, replace(airing, cold=exactly(MOST_COOLING)), people, "cooled")


def _ran(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way, one: _Set) -> Course:
    weather = weather_of(hot, one.day)
    box, facings = year_room(_aired(inside, airing, way), OFF, one.loss, one.day, one.heading, way != "shut")
    box = _opened(box, inside, airing, way, one.day)
    seen = _around(weather, facings)
    count = len(weather.outside)
    nothing = (0.0,) * count
    is_in = _is_in(one.day, count)
    watt = sum(at(each.watt, one.day) for each in people if each.lasts < HOURS_OF_DAY)
    always = sum(at(each.watt, one.day) for each in people if each.lasts >= HOURS_OF_DAY)
    hours = Hours(
        outside=seen.outside,
        sky=seen.sky,
        wind=seen.wind,
        humidity=seen.humidity,
        sun=seen.sun,
        warm=nothing,
        cool=(ROOMS["cooled to"] if way == "cooled" else COOL_AT_NOTHING,) * count,
        gains=tuple(always + (watt if here else 0.0) for here in is_in),
        radiant=nothing,
        fan=nothing,
        vapour=nothing,
    )
    start = sum(seen.outside) / count, seen.humidity[0]
    run = box_through_time(box, hours, start, SUBSTEPS)
    flow = _fan(airing.windows.fan, one.day) if way in ("fans", "doors") else 0.0
    if flow <= 0.0:
        return run
    # Nobody blows in air that is hotter than the room: the fan runs in the hours the room would be the hotter one.
    blown = tuple(flow if air > out else 0.0 for air, out in zip(run.air, seen.outside, strict=True))
    return box_through_time(box, hours._replace(fan=blown), start, SUBSTEPS)


@lru_cache(maxsize=16)
def _around(weather: WeatherHours, facings: tuple[Facing, ...]) -> Around:
    """Return what is around the room: the same for every way to air it, and while its walls are changed."""
    return around(weather, facings, YEAR["ground"].best, SEA_LEVEL)


def _aired(inside: Inside, airing: Airing, way: Way) -> Inside:
    return replace(inside, airflow=airing.doors if way == "doors" else airing.windows)


def _opened(box: Box, inside: Inside, airing: Airing, way: Way, day: End) -> Box:
    """Return the room with what is opened at the end of the day: a hot end opens the least of it."""
    if way in ("shut", "cooled"):
        room = box.room._replace(opened=0.0, open_above=NEVER)
    else:
        flow = airing.doors if way == "doors" else airing.windows
        room = box.room._replace(opened=at(flow.opened, day, False))
    cold = airing.cold if way == "cooled" else None
    heater = box.heater._replace(cooling=at(cold, day, False) if cold is not None else 0.0)
    return box._replace(room=room, heater=heater)


def _fan(written: Band, day: End) -> float:
    """Return what of a fan's written flow passes: the least of it at the hot end."""
    return at(written, day, False) * at(HOT["a fan"], day, False) if written.known else 0.0


def _is_in(day: End, count: int) -> tuple[bool, ...]:
    """Return the hours people are in the room: all of them at the hot end, the evening and the night at best."""
    if day == "high":
        return (True,) * count
    clocks = ((BEGINS + hour) % HOURS_OF_DAY for hour in range(count))
    return tuple((clock - ASLEEP_FROM) % HOURS_OF_DAY < ASLEEP_HOURS for clock in clocks)


def _is_best(one: _Set) -> bool:
    return one.loss == one.day == "best"


def _band(found: dict[_Set, float]) -> Band:
    best = [value for one, value in found.items() if _is_best(one)]
    middle, low, high = sum(best) / len(best), min(found.values()), max(found.values())
    return Band(middle, low, high, spread="interval", assumed=True) if high > low else exactly(middle)
