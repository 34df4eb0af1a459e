"""The year of ``boxwright heat RIG --year``: whose weather, how the heater runs, fuel, too cold, too warm, cooling."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from importlib.util import find_spec
from math import isfinite
from pathlib import Path
from statistics import median
from typing import TYPE_CHECKING

from boxwright import HOW_TO_ADD
from boxwright.book.year import beside, still_to_come, years_of
from boxwright.cli.asked import Answered, slot_of
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import Line, aligned, hanging, plain, wrapped
from boxwright.records import dataclass
from boxwright.rig.rig import home_of
from boxwright.rig.weather import WeatherRead, open_weather
from boxwright.units import Band, HeaderUnits, show

if TYPE_CHECKING:
    from boxwright.cli.answers import Json
    from boxwright.disciplines.heat.weather import WeatherHours
    from boxwright.disciplines.heat.year import Year

MISSING = f"no year is at hand; name a file, or add the extra year, which brings three: {HOW_TO_ADD}"
PLAIN = f"Worked out in plain Python; with the extra year it is a hundred times as quick: {HOW_TO_ADD}"
RUNS_AS = ("off", "cycling", "steady at its lowest", "between lowest and flat out", "flat out")
MONTHS: tuple[str, ...] = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
)
MONTHS += ("November", "December")
KILOWATT_HOUR = 3.6e6
FEW_KILOWATT_HOURS = 20 * KILOWATT_HOUR
FEW = 3
"""What is wrong with a file, told at once."""
SHORTEST, A_YEAR = 7 * 24, 8700
"""Hours: the least that is run, and from how many on they are called a year."""


@dataclass(frozen=True, slots=True)
class Worked:
    """The years of a rig in one weather, one for each heater that stands, and how long a run of one took (ms)."""

    years: tuple[Year, ...]
    notes: tuple[str, ...]
    spent: float
    told_of: str


def worked(answer: Answered, which: str, fill: bool = False, fetch: str = "") -> Worked:
    """Return the years asked for: ``which`` is a weather file, or a place of the rig that a shipped one is near to.

    ``fill``: short gaps are filled and told. ``fetch`` is the file that the place's year is asked for on the internet
    for, and written to.
    """
    from boxwright.disciplines import air

    slot = slot_of(answer, answer.use)
    result = slot.heat if slot is not None else None
    if slot is None or result is None or slot.air is None or slot.box is None or not result.volume.known:
        raise NothingAsked(
            "nobody wrote how large the room is: write body: of the trailer, and a year can be worked out"
        )
    read = fetched(answer, which, fetch) if fetch else weather_asked(answer, which, fill)
    if read.hours is None:
        wrong = [f"line {one.line}: {one.says}" for one in read.problems if one.kind == "problem"]
        more = f"; and {len(wrong) - FEW} more" if len(wrong) > FEW else ""
        raise NothingAsked("; ".join(wrong[:FEW]) + more)
    if len(read.hours.outside) < SHORTEST:
        has = f"{read.hours.came_from} has {len(read.hours.outside)} hours"
        raise NothingAsked(f"{has}; a week at least is wanted, a year is better")
    times: list[float] = []
    people = air.offers(answer.reading.rig.air, (), (), 1.0, result.sleepers, "sleep").moisture
    hours, placed = _of_the_only_place(answer, read.hours)
    years = years_of(slot, hours, people, _clock(times))
    missing = still_to_come(answer.reading.rig, slot)
    notes = (*placed, *missing, *(one.says for one in read.problems), *((PLAIN,) if find_spec("numba") is None else ()))
    return Worked(years, notes, median(times), slot.stage)


def _of_the_only_place(answer: Answered, hours: WeatherHours) -> tuple[WeatherHours, tuple[str, ...]]:
    """Return weather that says nothing of its height with that of the only place of the rig, and where it is from."""
    climates = answer.reading.rig.heat.climates
    height = climates[0][1].height if len(climates) == 1 else None
    if hours.altitude is not None or height is None or not height.known or height.low != height.high:
        return hours, ()
    return replace(hours, altitude=height.best), (f"How high it lies is that of {climates[0][0]}.",)


def _clock(times: list[float]) -> Callable[[Callable[[], None]], None]:
    def timed(run: Callable[[], None]) -> None:
        began = time.perf_counter()
        run()
        times.append((time.perf_counter() - began) * 1000.0)

    return timed


def fetched(answer: Answered, which: str, path: str) -> WeatherRead:
    """Return the year of a place of the rig, asked for on the internet and written to a file."""
    from boxwright.rig.weather_fetch import NotFetched, fetched_text

    name, (north, east) = _place_named(answer, which)
    if Path(path).exists():
        raise NothingAsked(f"{path} is there already; name a new file")
    try:
        text = fetched_text(name, north, east)
        with Path(path).open("x", encoding="utf-8", newline="\n") as out:
            out.write(text)
    except NotFetched as why:
        raise NothingAsked(str(why)) from None
    except OSError as error:
        raise NothingAsked(f"{path} cannot be written ({error.strerror})") from None
    return open_weather(Path(path))


def _place_named(answer: Answered, which: str) -> tuple[str, tuple[float, float]]:
    """Return a place of the rig by a word of its name, and where it lies."""
    places = _places(answer)
    name = next((one for one in places if which.lower() in one.lower()), "")
    if not name:
        written = ", ".join(places) or "none"
        raise NothingAsked(f'"{which}" is no weather file and no place of this rig that says where it is ({written})')
    return name, places[name]


def weather_asked(answer: Answered, which: str, fill: bool = False) -> WeatherRead:
    """Return the weather of a file, else of the shipped year whose station is beside a place of the rig."""
    path = Path(which)
    if path.is_file():
        return open_weather(path, fill, home_of(answer.reading.rig.header))
    name, place = _place_named(answer, which)
    found = beside(place)
    if found is None:
        raise NothingAsked(
            f"no year is at hand for {name}: save one as EPW, TMY3 or TMY2 and name its file, or ask for one on the"
            " internet: --fetch FILE.epw"
            if find_spec("pvlib") is not None
            else MISSING
        )
    return found


def _places(answer: Answered) -> dict[str, tuple[float, float]]:
    """Return where each place of the rig is, as it is written (degrees north and east)."""
    tree = answer.reading.document.tree.get("places")
    found: dict[str, tuple[float, float]] = {}
    for name, entry in tree.items() if isinstance(tree, Mapping) else ():
        if isinstance(entry, Mapping):
            try:
                found[str(name)] = (float(str(entry["lat"])), float(str(entry["lon"])))
            except (KeyError, ValueError):
                continue
    return found


def lines(found: Worked, units: HeaderUnits, columns: int) -> list[Line]:
    """Return the lines of the page."""
    told: list[Line] = []
    for year in found.years:
        told += [plain(piece) for piece in wrapped(in_words(year, units), columns)]
        if _hours(year):
            told += [(), plain("HOURS", "head")]
            told += [plain(f"  {one}") for one in aligned(_hours(year), (1,))]
        if year.trips:
            told += [(), plain("HEAT AND FUEL", "head")]
            told += [plain(f"  {one}") for one in aligned(_trips(year, units), (1, 2))]
        if year.heater:
            told += [
                (),
                plain("HEAT BY MONTH", "head"),
                *(plain(f"  {one}") for one in aligned(_months(year, units), (1, 2))),
            ]
        told.append(())
    weather = found.years[0].weather
    station = ", ".join(dict.fromkeys(one for one in (weather.place, weather.came_from) if one))
    said = [
        f"It stands on the weather of {station}: {len(weather.outside):,} hours.",
        *_lacking(weather, units),
        "Each number is followed by its ends: what is not known of shell, cracks, colour and the way the front looks.",
        f"{sum(one.runs for one in found.years)} runs, {found.spent:.1f} ms each.",
        *found.notes,
    ]
    for one in said:
        told += hanging(plain("  "), one, columns, "dim")
    return told


def _lacking(weather: WeatherHours, units: HeaderUnits) -> list[str]:
    """Return what the file does not say, and between which ends it was taken."""
    from boxwright.disciplines.heat.telling import above_sea
    from boxwright.disciplines.heat.weather_ends import UNSAID, left_out

    names = left_out(weather)
    if not names:
        return []
    calm, windy = (show(one, "speed", units) for one in (UNSAID["wind"].low, UNSAID["wind"].high))
    low, high = (above_sea(one, units) for one in (UNSAID["height"].low, UNSAID["height"].high))
    dry = show(UNSAID["dry air"].high, "temperature difference", units)
    taken = {
        "wind": f"wind from {calm} to {windy}",
        "dew point": f"air from damp to as dry as a dew point {dry} under it",
        "cloud": "a sky from clear to overcast",
        "sun": "days from none of it to a clear sky",
        "straight sun": "sun that comes all straight, and all from the sky",
        "height above the sea": f"a height from {low} to {high}; height: of the only place of the rig is taken",
    }
    more = "" if weather.has_sun else " How warm the room gets, and what cooling takes, is not known without sun."
    ends = "; ".join(taken[name] for name in names)
    return [f"It says nothing of {', '.join(names)}. The ends of each number cover {ends}.{more}"]


def in_words(year: Year, units: HeaderUnits) -> str:
    """Return the year in a few sentences."""
    from boxwright.disciplines.heat.year_fuel import difference_in_words
    from boxwright.disciplines.heat.year_room import ROOMS, YEAR

    said: list[str] = []
    if year.heater:
        wanted = show(year.wanted, "temperature", units)
        burns = f" and burns {_amount(year.fuel, 'volume', units)}" if year.fuel is not None else ""
        said.append(
            f"Set to {wanted} on days that are colder than that outside, {year.heater} gives {_energy(year.energy)} in"
            f" {_period(year)}{burns}."
        )
        said += difference_in_words(year.burning, year.energy, units)
        below = show(year.wanted - YEAR["colder than wanted"].best, "temperature", units)
        said.append(f"It leaves the room under {below} for {_count(year.too_cold)}.")
        if year.hot_at_lowest is not None and year.hot_by is not None:
            said.append(_left_at_lowest(year, year.hot_at_lowest, year.hot_by, units))
    else:
        coldest = _amount(year.coldest, "temperature", units)
        said.append(f"Nothing warms the room: it gets as cold as {coldest}.")
    over = show(ROOMS["too warm"], "temperature", units)
    opened = show(ROOMS["opened above"], "temperature", units)
    if not year.warmest.known:
        least = show(year.warmest.low, "temperature", units)
        said.append(
            f"How often it is over {over} is not known: the weather has no sun in it. Without any, opened above"
            f" {opened}, it comes to {least} at the least; with sun it gets warmer."
        )
        return " ".join(said)
    warmest = _amount(year.warmest, "temperature", units)
    said.append(f"Opened above {opened}, it is over {over} for {_count(year.too_warm)}, at most {warmest}.")
    cooled = show(ROOMS["cooled to"], "temperature", units)
    if year.peak.best > 0.0:
        peak = f"{_watt(year.peak.best)} ({_watt(year.peak.low)} to {_watt(year.peak.high)})"
        said.append(
            f"Shut and cooled to {cooled} it takes {peak} at the worst hour and {_energy(year.cooling)} in all."
        )
    return " ".join(said)


def _left_at_lowest(year: Year, hours: Band, by: Band, units: HeaderUnits) -> str:
    """Return how often and by how much the lowest setting is too much; without sun only what it is at the least."""
    count, over = _count(hours), f"by up to {_difference(by, units)}"
    share = f"{hours.best / max(year.season, 1) * 100:.0f} % of them"
    if hours.known and by.best <= 0.0 < hours.high:
        most = f"at the most for {hours.high:,.0f} h, by up to {show(by.high, 'temperature difference', units)}"
        return f"Left shut at its lowest setting it most likely never makes the room warmer than is wanted, {most}."
    if hours.high <= 0.0:
        return f"Left shut at its lowest setting it is never too warm in the {year.season:,} hours it is set."
    if not hours.known and hours.low <= 0.0:
        return "Whether its lowest setting is too much cannot be said: the weather has no sun in it."
    if not hours.known:
        count, over = f"{hours.low:,.0f} h and more", f"by {show(by.low, 'temperature difference', units)} and more"
        share = "the weather having no sun in it"
    return (
        f"Left shut at its lowest setting it makes the room too warm for {count} of the {year.season:,} hours it is"
        f" set, {share}, {over}."
    )


def _period(year: Year) -> str:
    hours = len(year.weather.outside)
    return "the year" if hours >= A_YEAR else f"these {hours / 24:.0f} days"


def _hours(year: Year) -> list[tuple[str, ...]]:
    rows = list(zip([f"heater {one}" for one in RUNS_AS], year.banded, strict=True)) if year.heater else []
    named = [*rows, ("too cold", year.too_cold), ("too warm, opened", year.too_warm)]
    shown = [(name, one) for name, one in named if one.high > 0.0 and isfinite(one.high)]
    return [
        (name, f"{one.best:,.0f} h", f"{one.low:,.0f} to {one.high:,.0f}")
        if one.known
        else (name, "", f"{one.low:,.0f} to {one.high:,.0f} h")
        for name, one in shown
    ]


def _trips(year: Year, units: HeaderUnits) -> list[tuple[str, ...]]:
    """Return the heat and fuel of a day of the season in the mean, of the days that take most, and of all of it."""
    days = max(year.season / 24.0, 1.0)
    rows = [("a day in the mean of the season", _divided(year.energy, days), _divided(year.fuel, days))]
    rows += [(f"the {one.days} days that take most", one.energy, one.fuel) for one in year.trips]
    rows.append((f"the season, {days:.0f} days", year.energy, year.fuel))
    return [
        (name, _kilowatt_hours(heat), _amount(fuel, "volume", units) if fuel is not None else "")
        for name, heat, fuel in rows
        if heat is not None
    ]


def _divided(band: Band | None, by: float) -> Band | None:
    if band is None:
        return None
    return Band(band.best / by, band.low / by, band.high / by, spread="interval")


def _kilowatt_hours(joule: Band) -> str:
    digits = 1 if joule.best < FEW_KILOWATT_HOURS else 0
    best, low, high = (f"{one / KILOWATT_HOUR:,.{digits}f}" for one in (joule.best, joule.low, joule.high))
    return f"{best} kWh ({low} to {high})"


def _difference(band: Band, units: HeaderUnits) -> str:
    best, low, high = (show(one, "temperature difference", units) for one in (band.best, band.low, band.high))
    unit = f" {best.rpartition(' ')[2]}"
    return best if low == high else f"{best} ({low.removesuffix(unit)} to {high.removesuffix(unit)})"


def _months(year: Year, units: HeaderUnits) -> list[tuple[str, ...]]:
    fuels: tuple[Band | None, ...] = year.fuel_by_month or (None,) * len(MONTHS)
    return [
        (name, _kilowatt_hours(heat), _amount(fuel, "volume", units) if fuel is not None else "")
        for name, heat, fuel in zip(MONTHS, year.heat_by_month, fuels, strict=True)
        if heat.high > 0.0
    ]


def _count(hours: Band) -> str:
    """Return hours with their ends; of what nobody can say how likely it is, the ends alone."""
    best, low, high = (f"{one:,.0f}" for one in (hours.best, hours.low, hours.high))
    if not hours.known:
        return f"anything from {low} to {high} h"
    return f"{best} h" if low == high else f"{best} h ({low} to {high})"


def _energy(joule: Band) -> str:
    best, low, high = (f"{one / KILOWATT_HOUR:,.0f}" for one in (joule.best, joule.low, joule.high))
    return f"{best} kWh ({low} to {high})"


def _watt(watt: float) -> str:
    return f"{round(watt / 10.0) * 10:,.0f} W"


def _amount(band: Band, quantity: str, units: HeaderUnits) -> str:
    best, low, high = (show(one, quantity, units) for one in (band.best, band.low, band.high))
    unit = f" {best.rpartition(' ')[2]}"
    return best if low == high else f"{best} ({low.removesuffix(unit)} to {high.removesuffix(unit)})"


def as_json(found: Worked) -> Json:
    """Return the years in SI, for programs."""
    from boxwright.cli.answers import band
    from boxwright.disciplines.heat.weather_ends import left_out

    return [
        {
            "weather": one.weather.came_from,
            "place": one.weather.place,
            "hours": len(one.weather.outside),
            "says_nothing_of": list(left_out(one.weather)),
            "heater": one.heater or None,
            "heater_hours": {name: band(spent) for name, spent in zip(RUNS_AS, one.banded, strict=True)},
            "heat": band(one.energy),
            "fuel": band(one.fuel) if one.fuel is not None else None,
            "too_cold_hours": band(one.too_cold),
            "too_warm_hours": band(one.too_warm),
            "coldest": band(one.coldest),
            "warmest": band(one.warmest),
            "cooling": band(one.cooling),
            "cooling_peak": band(one.peak),
            "heat_by_month": [band(heat) for heat in one.heat_by_month],
            "fuel_by_month": [band(fuel) for fuel in one.fuel_by_month],
            "hours_set": one.season,
            "too_warm_at_lowest_hours": band(one.hot_at_lowest) if one.hot_at_lowest is not None else None,
            "too_warm_at_lowest_by": band(one.hot_by) if one.hot_by is not None else None,
            "trips": [
                {
                    "days": trip.days,
                    "heat": band(trip.energy),
                    "fuel": band(trip.fuel) if trip.fuel is not None else None,
                }
                for trip in one.trips
            ],
        }
        for one in found.years
    ]
