"""The hottest day of a slot for those in it: asleep as they go to bed, at work in the hottest hour.

Of all places the one with the hottest room is told, aired in the best way there is as it stands.
"""

from __future__ import annotations

from functools import lru_cache

from boxwright.disciplines.heat.cold_hours import Inside
from boxwright.disciplines.heat.cooling import cold_of
from boxwright.disciplines.heat.day import Airing, DayRun, Way, day_of, hot_end_of, ways_of
from boxwright.disciplines.heat.hot import HotDay, hot_days
from boxwright.disciplines.heat.parts import Section
from boxwright.disciplines.heat.result import HotHours, StandingCooler
from boxwright.exchange import Moisture
from boxwright.units import Band

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
    there = ways_of(airing)
    aired = next(one for one in AIRED if one in there)
    hot = days[0] if len(days) == 1 else max(days, key=lambda one: _end(inside, one, airing, people, aired, use))
    run = _day(inside, hot, airing, people, aired)
    if "cooled" in there:
        cooled = _day(inside, hot, airing, people, "cooled")
        run = min(run, cooled, key=lambda one: _warm(one, use).high)
    is_plugged_in = any(one.works != "no" and one.feed.ends == "outside" for one in coolers)
    return HotHours(hot, run, _warm(run, use), "work" if use == "work" else "bedtime", is_plugged_in)


def _end(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way, use: str) -> float:
    return _ends(inside, hot, airing, people, way)[1 if use == "work" else 0]


@lru_cache(maxsize=16)
def _ends(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way) -> tuple[float, float]:
    """Return how hot a day may make it; remembered as the days themselves are."""
    return hot_end_of(inside, hot, airing, people, way)


def _warm(run: DayRun, use: str) -> Band:
    return run.warmest if use == "work" else run.bedtime


@lru_cache(maxsize=16)
def _day(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...], way: Way) -> DayRun:
    """Return a day; remembered, because load states that differ in tanks alone have the same days."""
    return day_of(inside, hot, airing, people, way)
