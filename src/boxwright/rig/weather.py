"""Weather files: typical years as three public forms write them, and the table of a logger, read into hours.

Reading never fails: what is wrong is a problem with its line. Hours that are missing are filled only where that is
asked, and then they are named.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.finding import Problem
from boxwright.rig.logger_table import decoded
from boxwright.rig.logger_times import day_named
from boxwright.rig.weather_forms import COLUMNS, DAYS, LEAP, Forms, Heading, Row, rows_of

LARGEST = 32_000_000
"""Bytes; a year of hours has a twentieth of that, a logger's year by the minute about all."""
LONGEST_GAP = 6
"""Hours that may be filled between two neighbours; over a longer gap a day would be made up."""
HOTTEST, COLDEST = 333.15, 183.15
"""No weather station has read beyond these (K): a column that does is in another unit."""
SHOWN = 12


class WeatherRead(NamedTuple):
    """The hours of a file, None where it does not give them, and what is wrong with it or was taken note of."""

    hours: WeatherHours | None
    problems: tuple[Problem, ...]


def open_weather(path: Path, fill: bool = False, home: str = "") -> WeatherRead:
    """Return the weather of a file; one too large to be weather is not read at all."""
    try:
        size = path.stat().st_size
        if size > LARGEST:
            says = f"{path.name} has {size // 1_000_000} MB; a year of hours has 2, so write out the hours alone"
            return WeatherRead(None, (Problem(1, 1, path.name, says),))
        return read_weather(path.read_bytes(), path.name, fill, home)
    except OSError as error:
        says = f"{path.name} cannot be opened ({error.strerror}); write the path from the folder of the rig file"
        return WeatherRead(None, (Problem(1, 1, path.name, says),))


def read_weather(content: bytes, name: str, fill: bool = False, home: str = "") -> WeatherRead:
    """Return the weather of what a file holds; ``home`` is the country of the rig, where days are read and said so."""
    text, problems = decoded(content, name)
    forms = rows_of(text, name, home)
    problems.extend(forms.problems)
    if forms.heading is None or not forms.rows:
        if not any(one.kind == "problem" for one in problems):
            problems.append(Problem(1, 1, name, f"{name} has no hours; expected a line for each hour"))
        return WeatherRead(None, tuple(_few(problems, name)))
    hours = _in_order(forms, name, fill, home, problems)
    return WeatherRead(hours, tuple(_few(problems, name)))


def _few(problems: list[Problem], name: str) -> list[Problem]:
    """Return problems, the many after the first dozen as one."""
    if len(problems) <= SHOWN + 1:
        return problems
    more = len(problems) - SHOWN
    return [*problems[:SHOWN], Problem(problems[SHOWN].line, 1, name, f"{more} more like these; mend the first ones")]


def _said(row: Row, home: str) -> str:
    """Return an hour in words."""
    return f"hour {row.hour + 1} of {day_named(*row.dated, home)}"


def _in_order(forms: Forms, name: str, fill: bool, home: str, problems: list[Problem]) -> WeatherHours | None:
    """Return rows as hours that follow each other, or None where they do not."""
    assert forms.heading is not None
    leap = [row for row in forms.rows if row.day == LEAP]
    if leap:
        says = f"{name} has a 29 February ({len(leap)} hours); years here have 365 days, so it was left out"
        problems.append(Problem(leap[0].line, 1, name, says, "note"))
    rows = [row for row in forms.rows if row.day != LEAP]
    first, at = rows[0], -1
    found: dict[int, Row] = {}
    if forms.heading.typical and (first.day, first.hour) != (0, 0):
        says = f"{name} begins with {_said(first, home)}; a typical year begins with the first hour of 1 January"
        problems.append(Problem(first.line, 1, name, says))
    for row in rows:
        place = row.day * 24 + row.hour - first.day * 24 - first.hour
        # A record may run over New Year; a typical year never does.
        place += DAYS * 24 if place < 0 and not forms.heading.typical else 0
        if place <= at:
            says = f"{_said(row, home)} comes after a later hour, or twice; put the hours in order, each once"
            problems.append(Problem(row.line, 1, name, says))
            continue
        at = place
        found[place] = row
    count = DAYS * 24 if forms.heading.typical else at + 1
    if forms.heading.typical and at < count - 1:
        says = f"{name} ends after {at + 1} of {count} hours; it is cut short"
        problems.append(Problem(rows[-1].line, 1, name, says))
    if any(one.kind == "problem" for one in problems):
        return None
    return _columns(forms.heading, found, count, (first.day, first.hour), name, fill, home, problems)


def _columns(
    heading: Heading, found: dict[int, Row], count: int, begins: tuple[int, int], name: str, fill: bool, home: str,
    problems: list[Problem],
) -> WeatherHours | None:  # fmt: skip
    """Return the hours column by column, with gaps filled where that was asked and they are short."""
    columns: dict[str, tuple[float, ...]] = {}
    filled: set[int] = set()
    for column in COLUMNS:
        given = [found[place].values.get(column) if place in found else None for place in range(count)]
        if all(one is None for one in given):
            if column == "outside":
                says = f"{name} has no temperature outside; it needs a column of it, such as outside (C)"
                problems.append(Problem(1, 1, name, says))
            continue
        _refuse_unlikely(column, given, found, name, home, problems)
        for start, end in _gaps(given):
            line = found[max(place for place in found if place <= max(start - 1, 0))].line
            long, edge = end - start > LONGEST_GAP, start == 0 or end == count
            if not fill or long or edge:
                # An hour that is not there at all lacks every column: it is told once.
                is_whole = not any(place in found for place in range(start, end))
                what = "the weather" if is_whole else column.replace("_", " ")
                why = "it is too long to be filled" if fill else "ask for it to be filled, or put them in"
                many = f"{end - start} hours" if end - start > 1 else "an hour"
                one = Problem(line, 1, name, f"{what} is missing for {many} after hour {start}; {why}")
                problems += [one] if one not in problems else []
                continue
            before, after = given[start - 1], given[end]
            assert before is not None and after is not None
            for place in range(start, end):
                given[place] = before + (after - before) * (place - start + 1) / (end - start + 1)
                filled.add(place)
        columns[column] = tuple(one for one in given if one is not None)
    if any(one.kind == "problem" for one in problems):
        return None
    if filled:
        says = f"{len(filled)} hours of {name} were missing and stand between their neighbours now"
        problems.append(Problem(1, 1, name, says, "note"))
    return WeatherHours(
        heading.place, name, heading.latitude, heading.longitude, heading.altitude, heading.ahead, begins,
        filled=tuple(sorted(filled)), **columns,
    )  # fmt: skip


def _refuse_unlikely(
    column: str, given: list[float | None], found: dict[int, Row], name: str, home: str, problems: list[Problem]
) -> None:
    """Say where a temperature cannot be one in the unit it was read in."""
    if column not in ("outside", "dew_point"):
        return
    for place, value in enumerate(given):
        if value is not None and not COLDEST <= value <= HOTTEST:
            says = f"{value - 273.15:.0f} C in {_said(found[place], home)}"
            says += "; if it is Fahrenheit, say so in the heading: (F)"
            problems.append(Problem(found[place].line, 1, name, says))
            return


def _gaps(given: list[float | None]) -> list[tuple[int, int]]:
    """Return where values are missing: each gap's first place and the one after it."""
    gaps: list[tuple[int, int]] = []
    for place, value in enumerate(given):
        if value is not None:
            continue
        if gaps and gaps[-1][1] == place:
            gaps[-1] = (gaps[-1][0], place + 1)
        else:
            gaps.append((place, place + 1))
    return gaps
