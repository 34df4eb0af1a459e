"""Workings of what takes seconds: a hot day and a trip. Each is worked out only when it is asked for by its name."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from boxwright.book.hot_day import hot_rooms, people_of
from boxwright.book.year import beside, places_of, years_of
from boxwright.disciplines.heat.burner import FUELS
from boxwright.disciplines.heat.day_sheet import in_words
from boxwright.disciplines.heat.hot import HotDay, hot_days
from boxwright.disciplines.heat.telling import IN_WORDS, between, source_of
from boxwright.disciplines.heat.year import Trip, Year
from boxwright.disciplines.heat.year_fuel import BURNT, difference_in_words
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.units import Band, HeaderUnits, show

Told = Callable[[HeaderUnits], tuple[str, ...]]
KILOWATT_HOUR = 3.6e6


def slow_workings(rig: Rig, slot: Slot) -> dict[str, Told]:
    """Return what tells the working of each hot day, and of the trips at each place."""
    if slot.heat is None or not slot.heat.volume.known:
        return {}
    found: dict[str, Told] = {f"hot-day {hot.place}": partial(_day, rig, slot, hot) for hot in hot_days(rig.heat)}
    if any(one.vented != "in the room" for one in slot.heat.heaters):
        lies = places_of(rig)
        found |= {f"trip {name}": partial(_trips, rig, slot, name, lies.get(name)) for name, _ in rig.heat.climates}
    return found


def _day(rig: Rig, slot: Slot, hot: HotDay, units: HeaderUnits) -> tuple[str, ...]:
    lines = [
        "hottest hour inside = highest of the last of three days alike, hour by hour, each way at the ends of shell and"
        " day, with the front to the north and to the east",
        f"  {in_words(hot, units)}",
    ]
    for room in hot_rooms(slot, (hot,), people_of(rig)):
        for one in room.runs:
            air = f"; {show(one.flow.best, 'flow', units)} of outdoor air in the mean" if one.flow.best > 0.0 else ""
            lines.append(f"  {IN_WORDS[one.way]}: {between(one.warmest, units)} in the hour from {one.at} h{air}")
    source = source_of("a_hot_day", "swing")
    return (*lines, f"  (box_through_time: heat-sheet network, hourly; clear_sun: haurwitz-1946; the day: {source})")


def _trips(rig: Rig, slot: Slot, name: str, where: tuple[float, float] | None, units: HeaderUnits) -> tuple[str, ...]:
    read = beside(where) if where is not None else None
    if read is None or read.hours is None:
        return _without_a_year(name, where)
    lines: list[str] = []
    for year in years_of(slot, read.hours, people_of(rig)):
        for trip in year.trips:
            lines += _one_trip(year, trip, units)
    return (*lines, f"  (box_through_time: heat-sheet network, over {read.hours.came_from})")


def _without_a_year(name: str, where: tuple[float, float] | None) -> tuple[str, ...]:
    """Return what has to be named for a trip at a place no year is at hand for."""
    why = f"no year is at hand for {name}"
    fetched = f'boxwright heat RIG --year "{name}" --fetch FILE asks a public service for one'
    if where is None:
        why = f"nobody wrote where {name} lies (lat: and lon: of the place), so no year can be looked for"
        fetched = f"with both written, {fetched}"
    return (
        "trip = so many days in a row that take most of a year's hours",
        f"  {why}",
        "  name a file of its hours: boxwright heat RIG --year FILE, an EPW, TMY3 or TMY2 file or a table of a logger",
        f"  {fetched}",
        "  (box_through_time over the hours of a file)",
    )


def _one_trip(year: Year, trip: Trip, units: HeaderUnits) -> list[str]:
    lines = [
        f"{trip.days} days with {year.heater} = the largest sum of so many days in a row of the year",
        f"  heat {_kilowatt_hours(trip.energy)}",
    ]
    burning, fuel = year.burning, trip.fuel
    if fuel is None:
        return lines
    ends = (
        f"{show(fuel.best, 'volume', units)} ({show(fuel.low, 'volume', units)} to {show(fuel.high, 'volume', units)})"
    )
    if burning.is_counted or burning.fuel not in FUELS:
        told = f"what {' and '.join(BURNT[one.whence] for one in burning.rates)}"
        lines.append(f"  fuel = {told}, hour by hour by the heat of each = {ends}")
    else:
        content, efficiency, *_ = FUELS[burning.fuel]
        lines.append(
            f"  fuel = heat / efficiency / content = {trip.energy.best:.4g} J / {efficiency:.3g} / {content:.4g} J/m3"
            f" = {ends}, {source_of('fuel', burning.fuel)}"
        )
    lines += [f"  {one}" for one in difference_in_words(burning, trip.energy, units)]
    return lines


def _kilowatt_hours(joule: Band) -> str:
    best, low, high = (f"{one / KILOWATT_HOUR:.3g}" for one in (joule.best, joule.low, joule.high))
    return f"{best} kWh ({low} to {high})"
