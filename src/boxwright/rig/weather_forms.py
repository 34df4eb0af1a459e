"""The forms weather is written in, each read into rows of one hour; what a form leaves out is None."""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime, timedelta, timezone
from io import StringIO
from math import radians
from typing import NamedTuple

from boxwright.finding import Problem
from boxwright.rig.logger_table import Unlike, number_of, parted_by
from boxwright.rig.logger_times import WRITE, times_of

DAYS = 365
COLUMNS = (
    "outside", "dew_point", "wind", "level_sun", "straight_sun", "sky_light", "cloud", "pressure"
)  # fmt: skip
NOTHING_READ = frozenset({"", "-", "--", "na", "n/a", "nan", "null", "none", "-999", "-999.0", "-9999", "-9999.0"})
"""What loggers write where they read nothing; common practice, no source."""
LEAP = -29
"""The day that stands for a 29 February."""

Values = Mapping[str, float | None]


class Heading(NamedTuple):
    """What a file says of its place; ``typical`` is a year of months out of several years."""

    place: str
    latitude: float
    longitude: float
    altitude: float | None
    ahead: float
    typical: bool


class Row(NamedTuple):
    """One hour: the day of the year from 0 (a 29 February by its own mark), the hour from 0, SI values.

    ``dated`` is its month and day.
    """

    line: int
    day: int
    hour: int
    dated: tuple[int, int]
    values: Values


class Forms(NamedTuple):
    """What a text holds."""

    heading: Heading | None
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]


class Column(NamedTuple):
    """Where a value stands, what marks a missing one (from there up, or exactly), and how it becomes SI."""

    name: str
    place: int
    missing: float
    scale: float
    offset: float = 0.0


EPW = (
    Column("outside", 6, 99.9, 1.0, 273.15), Column("dew_point", 7, 99.9, 1.0, 273.15),
    Column("pressure", 9, 999999.0, 1.0), Column("level_sun", 13, 9999.0, 1.0), Column("straight_sun", 14, 9999.0, 1.0),
    Column("sky_light", 15, 9999.0, 1.0), Column("wind", 21, 999.0, 1.0), Column("cloud", 22, 99.0, 1.0),
)  # fmt: skip
TMY3 = {
    "GHI (W/m^2)": ("level_sun", 1.0, 0.0), "DNI (W/m^2)": ("straight_sun", 1.0, 0.0),
    "DHI (W/m^2)": ("sky_light", 1.0, 0.0), "TotCld (tenths)": ("cloud", 1.0, 0.0),
    "Dry-bulb (C)": ("outside", 1.0, 273.15), "Dew-point (C)": ("dew_point", 1.0, 273.15),
    "Pressure (mbar)": ("pressure", 100.0, 0.0), "Wspd (m/s)": ("wind", 1.0, 0.0),
}  # fmt: skip
TMY2 = (
    ("level_sun", 17, 21, 9999.0, 1.0, 0.0), ("straight_sun", 23, 27, 9999.0, 1.0, 0.0),
    ("sky_light", 29, 33, 9999.0, 1.0, 0.0), ("cloud", 59, 61, 99.0, 1.0, 0.0),
    ("outside", 67, 71, 9999.0, 0.1, 273.15), ("dew_point", 73, 77, 9999.0, 0.1, 273.15),
    ("pressure", 84, 88, 9999.0, 100.0, 0.0), ("wind", 95, 98, 999.0, 0.1, 0.0),
)  # fmt: skip
LOGGED = re.compile(
    r"^\s*(?P<word>time|outside|dew point|wind|sun|pressure)\s*(?:\((?P<unit>[^)]*)\))?\s*$", re.IGNORECASE
)
LOGGED_NAMES = {
    "outside": "outside",
    "dew point": "dew_point",
    "wind": "wind",
    "sun": "level_sun",
    "pressure": "pressure",
}
UNITS = {
    "C": (1.0, 273.15), "F": (5.0 / 9.0, 459.67 * 5.0 / 9.0),
    "m/s": (1.0, 0.0), "mph": (0.44704, 0.0), "km/h": (1.0 / 3.6, 0.0), "W/m2": (1.0, 0.0), "hPa": (100.0, 0.0),
    "mbar": (100.0, 0.0), "Pa": (1.0, 0.0),
}  # fmt: skip
ALIKE = {"outside": "C F", "dew_point": "C F", "wind": "m/s mph km/h", "level_sun": "W/m2", "pressure": "hPa Pa"}


def rows_of(text: str, name: str, home: str) -> Forms:
    """Return the rows of a text by whichever form its first line shows; ``home`` is the country of the rig."""
    lines = text.splitlines()
    first = lines[0] if lines else ""
    if first.upper().startswith("LOCATION,"):
        return _read(lines, 8, _epw_heading, _epw_row, name)
    if re.match(r'^\s*\d{6},"?', first):
        names = next(csv.reader(lines[1:2]), [])
        return _read(lines, 2, _tmy3_heading, lambda line: _tmy3_row(line, names), name)
    if re.match(r"^ ?\d{5} .*[NS] *\d+ +\d+ +[EW] *\d+ +\d+", first):
        return _read(lines, 1, _tmy2_heading, _tmy2_row, name)
    if "time" in first.lower():
        return _logged(text, name, home)
    says = (
        f'{name} begins with "{first[:40]}"; expected an EPW file (LOCATION,...), a TMY3 or TMY2 file, or a table '
        "whose first line names its columns: time,outside (C)"
    )
    return Forms(None, (), (Problem(1, 1, name, says),))


def _read(
    lines: list[str], skipped: int, heading_of: Callable[[str], Heading], row_of: Callable[[str], Row], name: str
) -> Forms:
    """Return a heading and rows; each line that cannot be read is a problem."""
    problems: list[Problem] = []
    try:
        heading = heading_of(lines[0])
    except (Unlike, ValueError, IndexError) as error:
        says = f'the heading "{lines[0][:60]}" cannot be read ({error}); it names the place, its latitude and zone'
        return Forms(None, (), (Problem(1, 1, name, says),))
    rows: list[Row] = []
    for number, line in enumerate(lines[skipped:], skipped + 1):
        if not line.strip():
            continue
        try:
            rows.append(row_of(line)._replace(line=number))
        except (Unlike, ValueError, IndexError) as error:
            says = f'"{line[:30]}" is not an hour of this form: {error}'
            problems.append(Problem(number, 1, name, says))
    return Forms(heading, tuple(rows), tuple(problems))


def _dated(month: int, day: int, hour: int, values: Values) -> Row:
    """Return a row by its date, its hour counted from 1 as the hour's end, as all three forms do."""
    if not 1 <= hour <= 24:
        raise Unlike(f"hour {hour} is not one of 1 to 24")
    of_year = LEAP if (month, day) == (2, 29) else (date(2001, month, day) - date(2001, 1, 1)).days
    return Row(0, of_year, hour - 1, (month, day), values)


def _epw_heading(line: str) -> Heading:
    parts = next(csv.reader([line]))
    latitude, longitude, zone, altitude = (float(parts[place]) for place in (6, 7, 8, 9))
    return Heading(parts[1].strip(), radians(latitude), radians(longitude), altitude, zone * 3600.0, True)


def _epw_row(line: str) -> Row:
    parts = line.split(",")
    if len(parts) < 23:
        raise Unlike(f"it has {len(parts)} columns, not 23 or more")
    values: dict[str, float | None] = {}
    for column in EPW:
        value = float(parts[column.place])
        values[column.name] = None if value >= column.missing else value * column.scale + column.offset
    return _dated(int(parts[1]), int(parts[2]), int(parts[3]), values)


def _tmy3_heading(line: str) -> Heading:
    parts = next(csv.reader([line]))
    zone, latitude, longitude, altitude = (float(part) for part in parts[3:7])
    return Heading(parts[1].strip().title(), radians(latitude), radians(longitude), altitude, zone * 3600.0, True)


def _tmy3_row(line: str, names: list[str]) -> Row:
    parts = line.split(",")
    if len(parts) < len(names):
        raise Unlike(f"it has {len(parts)} columns, its heading {len(names)}")
    by_name = dict(zip(names, parts, strict=False))
    values: dict[str, float | None] = {}
    for column, (name, scale, offset) in TMY3.items():
        value = float(by_name.get(column, "-9900"))  # a column that is left out says nothing in any hour
        values[name] = None if value <= -99.0 else value * scale + offset
    month, day, _ = (int(part) for part in parts[0].split("/"))
    return _dated(month, day, int(parts[1].split(":")[0]), values)


def _tmy2_heading(line: str) -> Heading:
    found = re.match(r"^ ?\d{5} (.{22}) (.{2}) +(-?\d+) ([NS]) *(\d+) +(\d+) ([EW]) *(\d+) +(\d+) +(-?\d+)", line)
    if found is None:
        raise Unlike("expected a number, a place, a zone, N, E or W with degrees and minutes, a height")
    place, state, zone, north, degrees, minutes, east, along, parts, height = found.groups()
    latitude = (int(degrees) + int(minutes) / 60.0) * (1.0 if north == "N" else -1.0)
    longitude = (int(along) + int(parts) / 60.0) * (1.0 if east == "E" else -1.0)
    name = f"{place.strip().title()} {state.strip()}".strip()
    return Heading(name, radians(latitude), radians(longitude), float(height), int(zone) * 3600.0, True)


def _tmy2_row(line: str) -> Row:
    if len(line) < 98:
        raise Unlike(f"it has {len(line)} characters, not 98 or more")
    values: dict[str, float | None] = {}
    for name, start, end, missing, scale, offset in TMY2:
        value = float(line[start:end])
        values[name] = None if value >= missing else value * scale + offset
    return _dated(int(line[3:5]), int(line[5:7]), int(line[7:9]), values)


def _logged(text: str, name: str, home: str) -> Forms:
    """Return the table of a logger as hours: the mean of what it read in each.

    Times have their zones behind them, or none of them has one: then they are those of the clock of the place.
    """
    parted = parted_by(text)
    table = csv.reader(StringIO(text), delimiter=parted)
    columns, problems = _logged_columns(next(table), name)
    if any(one.kind == "problem" for one in problems):
        return Forms(None, (), tuple(problems))
    at = next(place for place, (column, _, _) in columns.items() if column == "time")
    lines = {number: parts for number, parts in enumerate(table, 2) if any(one.strip() for one in parts)}
    times = times_of(((number, parts[at]) for number, parts in lines.items() if len(parts) > at), home)
    problems += [Problem(line, 1, name, says) for line, says in times.wrong]
    zoned = {number for number, when in times.moments.items() if when.tzinfo is not None}
    if not zoned and times.moments:
        says = f"the times of {name} have no zone; they were taken for the clock of the place, all year the same"
        problems.append(Problem(2, 1, name, says, "note"))
    ahead = next((when.utcoffset() for when in times.moments.values() if when.tzinfo is not None), None) or timedelta()
    unread = {line for line, _ in times.wrong}
    read: dict[datetime, tuple[int, list[dict[str, float]]]] = {}
    for number, parts in lines.items():
        if number in unread:
            continue
        try:
            local = _local(times.moments.get(number), number in zoned or not zoned, ahead)
            values = dict(_logged_values(parts, columns, parted))
        except (Unlike, IndexError) as error:
            why = "a column is missing at its end" if isinstance(error, IndexError) else error
            problems.append(Problem(number, 1, name, f'"{parted.join(parts)[:40]}" is not a reading: {why}'))
            continue
        read.setdefault(local.replace(minute=0, second=0, microsecond=0), (number, []))[1].append(values)
    rows = [_mean(hour, number, many) for hour, (number, many) in read.items()]
    return Forms(Heading(name, 0.0, 0.0, None, ahead.total_seconds(), False), tuple(rows), tuple(problems))


def _local(when: datetime | None, is_alike: bool, ahead: timedelta) -> datetime:
    """Return a moment by the clock of the first one's zone, such as one of summer time."""
    if when is None:
        raise Unlike("it has no time")
    if not is_alike:
        raise Unlike(f"its time has no zone, as others have; write {WRITE}-05:00")
    return when if when.tzinfo is None else when.astimezone(timezone(ahead)).replace(tzinfo=None)


def _logged_columns(heads: list[str], name: str) -> tuple[dict[int, tuple[str, float, float]], list[Problem]]:
    """Return what stands in which column of a logger's table, and how it becomes SI."""
    columns: dict[int, tuple[str, float, float]] = {}
    problems: list[Problem] = []
    for place, head in enumerate(heads):
        found = LOGGED.match(head)
        if found is None:
            says = f'the column "{head.strip()}" is not read; columns are time, outside, dew point, wind, sun, pressure'
            problems.append(Problem(1, 1, name, says, "note"))
            continue
        word = found["word"].lower()
        if word == "time":
            columns[place] = ("time", 1.0, 0.0)
            continue
        own, unit = LOGGED_NAMES[word], (found["unit"] or "").strip().removeprefix("°").removeprefix("deg")
        if unit not in ALIKE[own].split():
            says = f'the column "{head.strip()}" has no unit known for it; write {word} ({ALIKE[own].split()[0]})'
            problems.append(Problem(1, 1, name, says))
            continue
        columns[place] = (own, *UNITS[unit])
    if not any(column == "time" for column, _, _ in columns.values()):
        problems.append(Problem(1, 1, name, f"{name} has no column of time; name it: time"))
    return columns, problems


def _logged_values(
    parts: list[str], columns: Mapping[int, tuple[str, float, float]], parted: str
) -> Iterator[tuple[str, float]]:
    for place, (column, scale, offset) in columns.items():
        if column != "time" and parts[place].strip().lower() not in NOTHING_READ:
            yield column, number_of(parts[place], parted) * scale + offset


def _mean(hour: datetime, number: int, many: list[dict[str, float]]) -> Row:
    """Return the readings of an hour as one row."""
    values: dict[str, float | None] = {}
    for column in COLUMNS:
        given = [one[column] for one in many if column in one]
        values[column] = sum(given) / len(given) if given else None
    row = _dated(hour.month, hour.day, hour.hour + 1, values)
    return row._replace(line=number)
