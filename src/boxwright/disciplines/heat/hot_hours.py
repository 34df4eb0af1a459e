"""The hottest day of a slot for those in it: asleep as they go to bed, at work in the hottest hour.

Of all places the one with the hottest room is told, aired in the best way there is as it stands.
"""

from __future__ import annotations

from functools import lru_cache

from boxwright.disciplines.heat.cold_hours import HOURS_OF_DAY, Inside
from boxwright.disciplines.heat.cooling import cold_of
from boxwright.disciplines.heat.day import Airing, Asked, DayRun, Way, day_if_hotter, day_of, hot_end_of, ways_of
from boxwright.disciplines.heat.hot import HotDay, hot_days
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.parts import Section
from boxwright.disciplines.heat.result import HotHours, StandingCooler
from boxwright.exchange import Moisture
from boxwright.units import Band, exactly

NO_FAN_HELPS = columns("too_hot")["no fan helps"][0]
"""K: from here on moving air no longer cools anybody."""
LEFT_TOO_HOT = columns("left_waiting")["no hotter"][0]
"""K: no hotter is it for whoever waits and cannot get out."""
LEFT_TOO_COLD = columns("left_waiting")["no colder"][0]
"""K: no colder."""
WAITING: Band = interval(*columns("waiting")["gives off"])
AIRED: tuple[Way, ...] = ("fans", "opened", "shut")
"""The ways to air it without a door, the best first."""


def hottest_of(
    own: Section, inside: Inside, moisture: tuple[Moisture, ...], coolers: tuple[StandingCooler, ...], use: str
) -> HotHours | None:
    """Return the hottest day of those who sleep or work in it; None with nobody in, or where no place has one.

    A milder day with more sun or less wind may be the worse one: which is, two runs of each tell.
    """
    people = tuple(one for one in moisture if one.of == "people")
    days = hot_days(own)
    if not days or not people or use not in ("sleep", "work"):
        return None
    airing = Airing(inside.airflow, inside.airflow, cold_of(coolers))
    aired = next(one for one in AIRED if one in ways_of(airing))
    ends = [(one, 0.0 if len(days) == 1 else _end(inside, one, airing, people, aired, use)) for one in days]
    days = tuple(one for one, _ in sorted(ends, key=lambda pair: -pair[1]))
    hot, run = days[0], _best_run(inside, days[0], airing, people, use)
    if _warm(run, use).low <= NO_FAN_HELPS < _warm(run, use).high:
        # A day that is surely too hot is told before one that may get hotter.
        others = ((one, _surely_too_hot(inside, one, airing, people, use)) for one in days[1:])
        surely = [(one, its) for one, its in others if its is not None]
        hot, run = max(surely, key=lambda pair: _warm(pair[1], use).low, default=(hot, run))
    is_plugged_in = any(one.works != "no" and one.feed.ends == "outside" for one in coolers)
    return HotHours(hot, run, _warm(run, use), "work" if use == "work" else "bedtime", is_plugged_in)


def hottest_left(own: Section, inside: Inside, waiting: int) -> HotHours | None:
    """Return the hottest day of those who wait in a trailer that is left: shut, for nobody is there to air it.

    What cools it counts for nothing: it may stop, and nobody sees it.
    """
    there, airing = given_by_waiting(waiting), Airing(inside.airflow, inside.airflow)
    runs = [(hot, _day(inside, hot, airing, there, "shut")) for hot in hot_days(own)]
    if not runs:
        return None
    hot, run = max(runs, key=lambda pair: (pair[1].warmest.best > LEFT_TOO_HOT, pair[1].warmest.high))
    return HotHours(hot, run, run.warmest, "left")


def _surely_too_hot(
    inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], use: str
) -> DayRun | None:
    """Return a day aired or cooled in the best way there is, None where any of those ways may keep it cool enough."""
    there, asked = ways_of(airing), _asked(use)
    ways = (next(one for one in AIRED if one in there), *(("cooled",) if "cooled" in there else ()))
    runs: list[DayRun] = []
    for way in ways:
        run = _day_if_too_hot(inside, hot, airing, people, way, asked)
        if run is None:
            return None
        runs.append(run)
    return min(runs, key=lambda one: _warm(one, use).high)


@lru_cache(maxsize=16)
def _day_if_too_hot(
    inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way, asked: Asked
) -> DayRun | None:
    """Return a day that is surely too hot; remembered as the days themselves are."""
    return day_if_hotter(inside, hot, airing, people, way, asked, NO_FAN_HELPS)


def given_by_waiting(waiting: int) -> tuple[Moisture, ...]:
    """Return the warmth of so many who wait in it, all day and night."""
    one, nothing = WAITING, exactly(0.0)
    warm = Band(one.best * waiting, one.low * waiting, one.high * waiting, spread="interval", assumed=True)
    return (Moisture("waiting", nothing, warm, "waiting", 0, HOURS_OF_DAY),)


def _best_run(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], use: str) -> DayRun:
    """Return a day aired or cooled in the best way there is."""
    there = ways_of(airing)
    run = _day(inside, hot, airing, people, next(one for one in AIRED if one in there))
    if "cooled" not in there:
        return run
    return min(run, _day(inside, hot, airing, people, "cooled"), key=lambda one: _warm(one, use).high)


def _end(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way, use: str) -> float:
    return _ends(inside, hot, airing, people, way)[1 if use == "work" else 0]


@lru_cache(maxsize=16)
def _ends(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way) -> tuple[float, float]:
    """Return how hot a day may make it; remembered as the days themselves are."""
    return hot_end_of(inside, hot, airing, people, way)


def _asked(use: str) -> Asked:
    """Return when it is to be cool enough: at work in the hottest hour, asleep as they go to bed."""
    return "warmest" if use == "work" else "bedtime"


def _warm(run: DayRun, use: str) -> Band:
    return run.warmest if _asked(use) == "warmest" else run.bedtime


@lru_cache(maxsize=16)
def _day(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way) -> DayRun:
    """Return a day; remembered, because load states that differ in tanks alone have the same days."""
    return day_of(inside, hot, airing, people, way)
