"""The table of a logger of one night: time, inside, outside, heat. Reading never fails; each mistake has its line."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from datetime import datetime
from io import StringIO
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

from boxwright.disciplines.heat.logged import HOURS, SHARES, LoggedNight
from boxwright.finding import Problem
from boxwright.rig.logger_table import Unlike, decoded, number_of, parted_by
from boxwright.rig.logger_times import times_of
from boxwright.rig.weather import COLDEST, HOTTEST, LARGEST
from boxwright.rig.weather_forms import UNITS
from boxwright.units import Band

HEAD = re.compile(r"^\s*(?P<word>time|inside|outside|heat)\s*(?:\((?P<unit>[^)]*)\))?\s*$", re.IGNORECASE)
WRITE = "time,inside (F),outside (F),heat (W)"
DEGREES = ("C", "F")
FEWEST = 12
SHOWN = 6


class LoggedRead(NamedTuple):
    """The readings of a file, None where it does not give them, and what is wrong with it or was taken note of."""

    night: LoggedNight | None
    problems: tuple[Problem, ...]


class _Read(NamedTuple):
    """One reading: its line, when, and K, K and W (None where the file has no column of heat)."""

    line: int
    when: datetime
    inside: float
    outside: float
    heat: float | None


def open_logged(path: Path, heat: Band | None, home: str = "") -> LoggedRead:
    """Return the night of a file; ``heat`` (W) is what ran all night where the file has no column of it."""
    try:
        size = path.stat().st_size
        if size > LARGEST:
            return _lost(path.name, 1, f"{path.name} has {size // 1_000_000} MB; one night of readings has less than 1")
        return read_logged(path.read_bytes(), path.name, heat, home)
    except OSError as error:
        return _lost(path.name, 1, f"{path.name} cannot be opened ({error.strerror})")


def _lost(name: str, line: int, says: str) -> LoggedRead:
    return LoggedRead(None, (Problem(line, 1, name, says),))


def read_logged(content: bytes, name: str, heat: Band | None, home: str = "") -> LoggedRead:
    """Return the night of what a file holds; ``home`` is the country of the rig."""
    text, problems = decoded(content, name)
    parted = parted_by(text)
    table = csv.reader(StringIO(text), delimiter=parted)
    try:
        columns = _columns(next(table, []), name, heat, problems)
        rows = _rows(table, columns, parted, home, name, problems) if columns else []
    except csv.Error as error:
        return _lost(name, table.line_num, f"line {table.line_num} is no line of a table ({error}); expected {WRITE}")
    if columns and len(rows) < FEWEST and not problems:
        says = f"{name} has {len(rows)} readings; a night has dozens, one in ten minutes or so"
        problems.append(Problem(1, 1, name, says))
    problems += _out_of_order(rows, name)
    if not columns or any(one.kind == "problem" for one in problems):
        few = problems[:SHOWN]
        if len(problems) > SHOWN:
            few.append(Problem(problems[SHOWN].line, 1, name, f"{len(problems) - SHOWN} more like these"))
        return LoggedRead(None, tuple(few))
    return LoggedRead(_night(rows, name, heat), tuple(problems))


def _night(rows: list[_Read], name: str, heat: Band | None) -> LoggedNight:
    begin = rows[0].when
    typed = heat.best if heat is not None else 0.0
    doubt = SHARES["heat by a plug meter"]
    if heat is not None and heat.high > heat.low and typed > 0.0:
        doubt = max(heat.high - typed, typed - heat.low) / typed
    return LoggedNight(
        came_from=name,
        times=tuple((one.when - begin).total_seconds() for one in rows),
        inside=tuple(one.inside for one in rows),
        outside=tuple(one.outside for one in rows),
        heat=tuple(one.heat if one.heat is not None else typed for one in rows),
        doubt=doubt,
    )


def _columns(
    heads: list[str], name: str, heat: Band | None, problems: list[Problem]
) -> dict[str, tuple[int, float, float]]:
    """Return where each column stands and how it becomes SI; nothing where one is missing."""
    found: dict[str, tuple[int, float, float]] = {}
    for place, head in enumerate(heads):
        read = HEAD.match(head)
        if read is None:
            says = f'the column "{head.strip()}" is not read; columns are {WRITE}'
            problems.append(Problem(1, 1, name, says, "note"))
            continue
        word, unit = read["word"].lower(), (read["unit"] or "").strip().removeprefix("°").removeprefix("deg")
        wanted = {"time": ("",), "heat": ("W",)}.get(word, DEGREES)
        if unit not in wanted:
            says = f'the column "{head.strip()}" has no unit known for it; write {word} ({wanted[0]})'
            problems.append(Problem(1, 1, name, says))
            continue
        found[word] = (place, *UNITS.get(unit, (1.0, 0.0)))
    missing = [word for word in ("time", "inside", "outside") if word not in found]
    if "heat" not in found and heat is None:
        says = f"{name} does not say what heat ran: a column heat (W), or type what ran all night: --heat 1000W"
        problems.append(Problem(1, 1, name, f"{says}; --heat 0W where none did"))
    if missing:
        says = f"{name} has no column of {' and '.join(missing)}; its first line names them: {WRITE}"
        problems.append(Problem(1, 1, name, says))
    return {} if any(one.kind == "problem" for one in problems) else found


def _rows(
    table: Iterator[list[str]], columns: dict[str, tuple[int, float, float]], parted: str, home: str, name: str,
    problems: list[Problem],
) -> list[_Read]:  # fmt: skip
    """Return the readings; each line that is none is a problem."""
    at = columns["time"][0]
    lines = {number: parts for number, parts in enumerate(table, 2) if "".join(parts).strip()}
    times = times_of(((number, parts[at]) for number, parts in lines.items() if len(parts) > at), home)
    rows: list[_Read] = []
    wrong = dict(times.wrong)
    for number, parts in lines.items():
        when = times.moments.get(number)
        try:
            if when is None and number not in wrong and times.wrong:
                continue
            if when is None:
                raise Unlike(wrong.get(number, "it has no time"))
            rows.append(_reading(number, when, parts, columns, parted))
        except (Unlike, IndexError) as error:
            why = "a column is missing at its end" if isinstance(error, IndexError) else error
            shown = parted.join(parts)[:40]
            problems.append(Problem(number, 1, name, f'"{shown}" is not a reading: {why}; expected {WRITE}'))
    return rows


def _reading(
    number: int, when: datetime, parts: list[str], columns: dict[str, tuple[int, float, float]], parted: str
) -> _Read:
    values: dict[str, float] = {}
    for word in ("inside", "outside", "heat"):
        if word in columns:
            place, scale, offset = columns[word]
            values[word] = number_of(parts[place], parted) * scale + offset
    for word in ("inside", "outside"):
        if not COLDEST <= values[word] <= HOTTEST:
            raise Unlike(f"{values[word] - 273.15:.0f} C {word}; if it is Fahrenheit, say so in the heading: (F)")
    if not 0.0 <= values.get("heat", 0.0) < float("inf"):
        raise Unlike("a heat is 0 or more watts")
    return _Read(number, when, values["inside"], values["outside"], values.get("heat"))


def _out_of_order(rows: list[_Read], name: str) -> list[Problem]:
    """Return what is wrong with the order of the readings: zones mixed, a time before the last one, a gap."""
    if len({one.when.tzinfo is None for one in rows}) > 1:
        line = next(one.line for one in rows if (one.when.tzinfo is None) != (rows[0].when.tzinfo is None))
        return [Problem(line, 1, name, "some times have a zone and some have none; write all of them alike")]
    for before, after in pairwise(rows):
        apart = (after.when - before.when).total_seconds()
        if apart <= 0.0:
            says = f"{after.when.isoformat(' ')} comes after a later time, or twice; put the readings in order"
            return [Problem(after.line, 1, name, says)]
        if apart > HOURS["gap"]:
            says = f"{apart / 3600.0:.1f} hours are missing before {after.when.isoformat(' ')}; what is missing is"
            return [Problem(after.line, 1, name, f"{says} not made up: take the readings on one side of it")]
    return []
