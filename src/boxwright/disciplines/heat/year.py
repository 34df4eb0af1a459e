"""A year hour by hour in the weather of a file: how the heater runs, what it burns, what is too cold, too warm, cooled.

The same loop as by night, compiled. Ends are of heat loss, as in `as_built`; sun, wind and cold are the file's own.
What the file leaves out is run at both of its ends, with each end of the room.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from math import inf
from typing import NamedTuple, TypeVar

from boxwright.disciplines.heat.as_built import ENDS, End
from boxwright.disciplines.heat.burning import Burning
from boxwright.disciplines.heat.climate import HOURS_OF_DAY, Around, Facing, around
from boxwright.disciplines.heat.cold_hours import OFF, Inside, Warmth, given_by_hour
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import Box, Heater, Hours, pressure_at
from boxwright.disciplines.heat.method.boxed import _Work
from boxwright.disciplines.heat.method.network import BANDS, FIXED, _march
from boxwright.disciplines.heat.room import at
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.weather_ends import at_end, left_out
from boxwright.disciplines.heat.year_fuel import Hourly, fuel_by_hour
from boxwright.disciplines.heat.year_room import HEADINGS, ROOMS, YEAR, Heading, year_room
from boxwright.exchange import Moisture
from boxwright.model.compiled import compiled
from boxwright.records import dataclass
from boxwright.units import Band

SUBSTEPS = 2
NEVER_COOLED = 400.0
TOO_WARM = columns("helps_warm")["over what is wanted"][0]
"""K over what is wanted at which people open a window."""
TRIPS = (3, 7)
"""Days: a long weekend and a week."""
MOST_COOLING = 20_000.0
"""W, more than any room of the kind takes: what it asks for is what is told."""
MONTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_MONTH_OF = tuple(number for number, days in enumerate(MONTHS) for _ in range(days))
"""The month of each day of a year."""
HOUR = 3600.0
Group = TypeVar("Group", bound=tuple[object, ...])
Clock = Callable[[Callable[[], None]], None]
EITHER: tuple[End, End] = ("low", "high")
BEST: tuple[End, End, End] = ("best", "best", "best")
AS_TOLD: tuple[tuple[End, End, End], ...] = (BEST, *((room, sun, "best") for room in EITHER for sun in EITHER))
"""Ends of the room, of sun and people, and of what the weather leaves out, where it leaves nothing out.

A bad shell is the coldest room with a pale skin, and the hottest with a dark one.
"""
APART: tuple[tuple[End, End, End], ...] = (
    BEST,
    *((room, sun, air) for room in EITHER for sun in EITHER for air in EITHER),
)
"""The same where it leaves something out: a bad shell is the coldest in wind, and the hottest without any."""
OTHER: dict[End, End] = {"low": "high", "best": "best", "high": "low"}
Ended = tuple[End, End, End, Heading]
"""Which run it is: the three ends, and where the front looks."""


class Set(NamedTuple):
    """How a run is set: ends of loss, of sun and people, where the front looks, what is opened, what a cooler holds."""

    end: End
    sun: End
    heading: Heading
    is_opened: bool
    cool: float


class Ran(NamedTuple):
    """What a run came to, hour by hour (K, W), the time (s) in each of the heater's bands, what its balance lacks."""

    air: tuple[float, ...]
    heat: tuple[float, ...]
    cooling: tuple[float, ...]
    banded: tuple[float, ...]
    lacks: float


@dataclass(frozen=True, slots=True)
class Trip:
    """So many days in a row that take most of the year: their heat (J) and fuel (m3), None where nothing burns."""

    days: int
    energy: Band
    fuel: Band | None


@dataclass(frozen=True, slots=True)
class Year:
    """A year of one room in one weather: hours, J, W and K, each from the end of least loss to that of most.

    ``banded`` are the hours off, cycling, steady at the lowest setting, between and at the highest; ``fuel`` (m3) is
    None where nothing burns. ``too_cold`` are hours under what the heater is set to while it runs, ``too_warm`` those
    over a warm room though everything is open. ``cooling`` and ``peak`` are a cooler's that holds the room shut.
    ``season`` are the hours the heater is set; ``hot_at_lowest`` those of them in which the room, left shut with the
    heater at its lowest and never off, is warmer than people bear, ``hot_by`` how much over what is wanted it gets (K);
    None for one that goes off by itself. ``trips`` are the days in a row that take most, with their heat and fuel.
    ``heat_by_month`` is the heat (J) of each month, ``fuel_by_month`` what of fuel (m3) it takes, empty where nothing
    burns; ``burning`` is what that was told by. In weather without sun what tells of warmth is not known: its low end
    is what it comes to without any.
    In weather that leaves out wind, sky or sun (``left_out``) hours the heater runs and hours too cold are not known
    but for their ends: gusts and calms make them, and nobody knows when.
    """

    weather: WeatherHours
    heater: str
    wanted: float
    banded: tuple[Band, ...]
    energy: Band
    need: Band
    fuel: Band | None
    too_cold: Band
    too_warm: Band
    coldest: Band
    warmest: Band
    cooling: Band
    peak: Band
    heat_by_month: tuple[Band, ...]
    runs: int
    fuel_by_month: tuple[Band, ...] = ()
    season: int = 0
    hot_at_lowest: Band | None = None
    hot_by: Band | None = None
    trips: tuple[Trip, ...] = ()
    burning: Burning = Burning()


def year_of(
    inside: Inside,
    weather: WeatherHours,
    warmth: Warmth | None,
    burning: Burning,
    moisture: tuple[Moisture, ...],
    clock: Clock | None = None,
    kept_in: str = "",
) -> Year:
    """Return a year of the room, whose heater burns as ``burning`` says.

    ``clock`` is handed each run, so that whoever wants to may time it. Where nothing is installed that compiles, the
    same loop runs plain, a hundred times as long; what was compiled is kept in the folder ``kept_in``.
    """
    spreads = APART if left_out(weather) else AS_TOLD
    airs = {air: at_end(weather, air) for *_, air in spreads}
    room = Runs(inside, airs, moisture, spreads, Run(_loop(kept_in), clock))
    opened = room.each(warmth, True, NEVER_COOLED)
    cooled = room.each(None, False, ROOMS["cooled to"])
    wanted = warmth.wanted if warmth is not None else 0.0
    is_set = _set(weather, wanted)
    cold, warm = wanted - YEAR["colder than wanted"].best, ROOMS["too warm"]

    def each(runs: dict[Ended, Ran], found: Callable[[Ran], float]) -> Band:
        return _band({place: found(run) for place, run in runs.items()})

    heat = _summed({place: tuple(one * HOUR for one in run.heat) for place, run in opened.items()}, weather)
    taken = {place: fuel_by_hour(run.heat, place[0], burning) for place, run in opened.items()}
    burnt = _over_ways(taken, weather)
    low = _at_lowest(warmth)
    left = room.each(low, False, NEVER_COOLED) if low is not None and any(is_set) else {}
    hot_at_lowest, hot_by = _hot(left, is_set, wanted, weather)
    return Year(
        weather=weather,
        heater=warmth.name if warmth is not None else "",
        wanted=wanted,
        banded=tuple(by_ends(each(opened, _hours_in(one)), weather) for one in range(BANDS)),
        energy=heat.whole,
        need=each(opened, lambda run: max(run.heat)),
        fuel=burnt.whole if burnt is not None else None,
        too_cold=by_ends(each(opened, _hours_under(cold, is_set)), weather),
        too_warm=at_least(each(opened, lambda run: sum(air > warm for air in run.air)), weather),
        coldest=each(opened, lambda run: min(run.air)),
        warmest=at_least(each(opened, lambda run: max(run.air)), weather),
        cooling=at_least(each(cooled, lambda run: sum(run.cooling) * HOUR), weather),
        peak=at_least(each(cooled, lambda run: max(run.cooling)), weather),
        heat_by_month=heat.months,
        fuel_by_month=burnt.months if burnt is not None else (),
        runs=len(opened) + len(cooled) + len(left),
        season=sum(is_set),
        hot_at_lowest=hot_at_lowest,
        hot_by=hot_by,
        trips=_trips(heat, burnt) if warmth is not None else (),
        burning=burning,
    )


class Runs(NamedTuple):
    """What all runs of a year share: room, weather at each end of what it leaves out, people, which ends, and how."""

    inside: Inside
    airs: Mapping[End, WeatherHours]
    moisture: tuple[Moisture, ...]
    spreads: tuple[tuple[End, End, End], ...]
    how: Run

    def each(self, warmth: Warmth | None, is_opened: bool, cool: float) -> dict[Ended, Ran]:
        """Return a run at all ends and headings, with a heater or none, opened or shut, cooled to so much (K)."""
        found: dict[Ended, Ran] = {}
        for room, sun, air in self.spreads:
            for heading in HEADINGS:
                ends = Set(room, sun, heading, is_opened, cool)
                ran = _ran(self.inside, self.airs[air], warmth, self.moisture, ends, self.how)
                found[room, sun, air, heading] = ran
        return found


def at_least(found: Band, weather: WeatherHours) -> Band:
    """Return what warmth comes to; in weather without sun that is only the least of it, and the most is not known."""
    return found if weather.has_sun else Band(found.best, found.low, inf, known=False, assumed=True)


def by_ends(found: Band, weather: WeatherHours) -> Band:
    """Return hours of which only the ends are known where the weather leaves something out."""
    return replace(found, known=not left_out(weather) or found.high == found.low)


def _hours_under(cold: float, is_set: tuple[bool, ...]) -> Callable[[Ran], float]:
    """Return what counts the hours a run is colder than that while its heater is set."""
    return lambda run: sum(on and air < cold for air, on in zip(run.air, is_set, strict=True))


def _hot(
    left: dict[Ended, Ran], is_set: tuple[bool, ...], wanted: float, weather: WeatherHours
) -> tuple[Band | None, Band | None]:
    """Return in how many hours the room is too warm while its heater is left at its lowest, and by how much (K)."""
    if not left:
        return None, None
    airs = {place: [air for air, on in zip(run.air, is_set, strict=True) if on] for place, run in left.items()}
    hours = _band({place: float(sum(one > wanted + TOO_WARM for one in air)) for place, air in airs.items()})
    most = _band({place: max(air) - wanted for place, air in airs.items()})
    return at_least(hours, weather), at_least(most, weather)


def _at_lowest(warmth: Warmth | None) -> Warmth | None:
    """Return a heater left at its lowest and never off; None where it goes off by itself, or has no lowest."""
    if warmth is None or warmth.switches is True or not warmth.lowest.known or warmth.lowest.best <= 0.0:
        return None
    return replace(warmth, highest=warmth.lowest, switches=False)


def worst_days(heat: tuple[float, ...], days: int) -> float:
    """Return the largest sum of so many days in a row, each from the hour the weather begins at."""
    each = [sum(heat[begins : begins + HOURS_OF_DAY]) for begins in range(0, len(heat), HOURS_OF_DAY)]
    return max(sum(each[first : first + days]) for first in range(max(len(each) - days + 1, 1)))


def _hours_in(band: int) -> Callable[[Ran], float]:
    """Return what reads the hours a heater spent in one of its bands off a run."""
    return lambda run: run.banded[band] / HOUR


class Run(NamedTuple):
    """How a year is run: the loop compiled, None where nothing compiles, and who times it."""

    loop: Callable[..., None] | None
    clock: Clock | None


def _loop(kept_in: str) -> Callable[..., None] | None:
    try:
        loop: Callable[..., None] = compiled(_march, kept_in)
    except ModuleNotFoundError:
        return None
    return loop


def _ran(
    inside: Inside,
    weather: WeatherHours,
    warmth: Warmth | None,
    moisture: tuple[Moisture, ...],
    how: Set,
    runs: Run,
) -> Ran:
    """Return one run of the room through the weather."""
    heater = OFF if warmth is None else _heater(warmth, how.end)
    heater = heater._replace(cooling=MOST_COOLING if how.cool < NEVER_COOLED else 0.0)
    box, facings = year_room(inside, heater, how.end, how.sun, how.heading, how.is_opened)
    pressure = _pressure(weather)
    box = box._replace(room=box.room._replace(pressure=pressure))
    hours = _hours(weather, facings, warmth, moisture, how, pressure)
    start = warmth.wanted if warmth is not None else max(weather.outside[0], ROOMS["opened above"])
    if runs.loop is None:
        rows = _plain(box, hours, start, runs.clock)
    else:
        rows = _compiled(runs.loop, box, hours, start, runs.clock)
    last = rows.pop()
    air, heat, cooling = (tuple(row[column] for row in rows) for column in (0, 2, 3))
    return Ran(air, heat, cooling, tuple(last[1 : 1 + BANDS]), last[0])


def _plain(box: Box, hours: Hours, start: float, clock: Clock | None) -> list[list[float]]:
    """Return a row for each hour and one of totals, worked out in plain Python."""
    many = len(box.faces.inward)
    work = _Work(*([0.0] * many for _ in range(7)), *([] for _ in range(4)))
    out = [[0.0] * (FIXED + many) for _ in range(len(hours.outside) + 1)]
    _timed(clock, lambda: _march(box, hours, start, hours.humidity[0], 1.0, SUBSTEPS, HOURS_OF_DAY, work, out))
    return out


def _compiled(
    loop: Callable[..., None], box: Box, hours: Hours, start: float, clock: Clock | None
) -> list[list[float]]:
    """Return the same, worked out in machine code."""
    import numpy as np

    room, faces, panes, cold, warms = box
    whole = Box(_arrays(room), _arrays(faces), _arrays(panes), _arrays(cold), _arrays(warms))
    course, many = _arrays(hours), len(box.faces.inward)
    work = _Work(*(np.zeros(many) for _ in range(7)), *(np.zeros(0) for _ in range(4)))
    out = np.zeros((len(hours.outside) + 1, FIXED + many))
    _timed(clock, lambda: loop(whole, course, start, hours.humidity[0], 1.0, SUBSTEPS, HOURS_OF_DAY, work, out))
    rows: list[list[float]] = out.tolist()
    return rows


def _timed(clock: Clock | None, run: Callable[[], None]) -> None:
    if clock is None:
        run()
    else:
        clock(run)


def _heater(warmth: Warmth, end: End) -> Heater:
    """Return the heater; over a year somebody is there to switch it off, whatever it does by itself."""
    highest = at(warmth.highest, end, False)
    return Heater(min(at(warmth.lowest, end, False), highest), highest, warmth.switches is not False, 0.0)


def _hours(
    weather: WeatherHours,
    facings: tuple[tuple[float, float, float], ...],
    warmth: Warmth | None,
    moisture: tuple[Moisture, ...],
    how: Set,
    pressure: float,
) -> Hours:
    """Return the hours of the weather with how the room is used: people are in it from evening to morning."""
    seen = _around(weather, facings, YEAR["ground"].best, pressure)
    count, first = len(weather.outside), weather.begins[1]
    clocks = tuple((first + place) % HOURS_OF_DAY for place in range(count))
    warms, wet = given_by_hour(moisture, clocks, OTHER[how.sun])
    nothing = (0.0,) * count
    wanted = warmth.wanted if warmth is not None else 0.0
    return Hours(
        outside=seen.outside,
        sky=seen.sky,
        wind=seen.wind,
        humidity=seen.humidity,
        sun=seen.sun,
        warm=tuple(wanted if one else 0.0 for one in _set(weather, wanted)),
        cool=(how.cool,) * count,
        gains=warms,
        radiant=nothing,
        fan=nothing,
        vapour=wet,
    )


@lru_cache(maxsize=len(HEADINGS) * len(ENDS))
def _around(weather: WeatherHours, facings: tuple[Facing, ...], ground: float, pressure: float) -> Around:
    """Return what is around the room, worked out once for all runs that look the same way."""
    return around(weather, facings, ground, pressure)


def _set(weather: WeatherHours, wanted: float) -> tuple[bool, ...]:
    """Return the hours the heater is set: those of days that are colder outside, in the mean, than is wanted inside."""
    outside = weather.outside
    found: list[bool] = []
    for begins in range(0, len(outside), HOURS_OF_DAY):
        day = outside[begins : begins + HOURS_OF_DAY]
        found += [sum(day) / len(day) < wanted] * len(day)
    return tuple(found)


def _pressure(weather: WeatherHours) -> float:
    """Return the mean pressure: as the file has it, else that of its height."""
    if weather.pressure:
        return sum(weather.pressure) / len(weather.pressure)
    # Every way a file that says nothing of its height is run has a pressure of its own.
    return pressure_at(weather.altitude or 0.0)


class Summed(NamedTuple):
    """The sums of hours of all runs with their ends: all of them, each month, and the worst days of each `TRIPS`."""

    whole: Band
    months: tuple[Band, ...]
    trips: tuple[Band, ...]


def _summed(hours: dict[Ended, Hourly], weather: WeatherHours) -> Summed:
    months = {place: _by_month(one, weather) for place, one in hours.items()}
    return Summed(
        _band({place: sum(one) for place, one in hours.items()}),
        tuple(_band({place: one[month] for place, one in months.items()}) for month in range(len(MONTHS))),
        tuple(_band({place: worst_days(one, days) for place, one in hours.items()}) for days in TRIPS),
    )


def _over_ways(taken: dict[Ended, tuple[Hourly, ...]], weather: WeatherHours) -> Summed | None:
    """Return the fuel with its ends over all ways to tell it, the first being the likely one; None if there is none."""
    ways = range(len(next(iter(taken.values()))))
    found = [_summed({place: each[way] for place, each in taken.items()}, weather) for way in ways]
    if not found:
        return None
    months, trips = (zip(*(getattr(one, name) for one in found), strict=True) for name in ("months", "trips"))
    return Summed(_widest([one.whole for one in found]), tuple(map(_widest, months)), tuple(map(_widest, trips)))


def _widest(bands: Sequence[Band]) -> Band:
    return replace(bands[0], low=min(one.low for one in bands), high=max(one.high for one in bands))


def _trips(heat: Summed, burnt: Summed | None) -> tuple[Trip, ...]:
    fuels = burnt.trips if burnt is not None else (None,) * len(TRIPS)
    return tuple(Trip(*one) for one in zip(TRIPS, heat.trips, fuels, strict=True))


def _by_month(hours: Hourly, weather: WeatherHours) -> tuple[float, ...]:
    """Return the sum of each month of the year."""
    months = [0.0] * len(MONTHS)
    first = weather.begins[0] * HOURS_OF_DAY + weather.begins[1]
    for place, one in enumerate(hours):
        months[_MONTH_OF[(first + place) // HOURS_OF_DAY % len(_MONTH_OF)]] += one
    return tuple(months)


def _band(found: dict[Ended, float]) -> Band:
    best = sum(found[*BEST, heading] for heading in HEADINGS) / len(HEADINGS)
    return Band(best, min(found.values()), max(found.values()), spread="interval", assumed=True)


def _arrays(group: Group) -> Group:
    """Return a group with its columns as arrays: what is compiled takes no others."""
    import numpy as np

    kinds = [int if name in ("direction", "face") else float for name in group._fields]  # type: ignore[attr-defined]
    made = (np.array(one, kind) if isinstance(one, tuple) else one for one, kind in zip(group, kinds, strict=True))
    return type(group)(*made)  # type: ignore[arg-type]
