"""A table of sourced numbers: columns with units in the header, rows that each name their source.

    [table.plywood]
    columns = {name = "text", thickness = "mm", mass = "kg/m2"}   # unit of each column, in order; "" has none
    key = ["name"]               # columns that together may not repeat; the first column where left out
    grid = "thickness"           # optional: a column that rises from row to row, to be looked up between rows
    source = "mfr-1998"          # of every row that names no other
    rows = [
      ["ply 9", 9, 5.4],
      {name = "ply 12", thickness = 12, mass = "7.1 kg/m2", source = "mill-2001"},
      ["ply 15", "5/8 in", ""],  # a cell may carry its own unit; "" is a number nobody gave
    ]

Inside, every number is SI. Between two rows of a grid a table is read along a straight line; outside it, never.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Mapping
from functools import lru_cache

from boxwright.records import dataclass
from boxwright.source.cited import Source, SourceError, refuse_uncited, refuse_unknown_keys, text_of
from boxwright.units import CannotRead, read_any, unit_scale, unit_written

Cell = float | str | None

_FIELDS = frozenset({"columns", "key", "grid", "source", "rows", "note"})
WORDS = "text"
"""The unit of a column of words."""


class OutsideTable(ValueError):
    """A value beyond the first or last row of a grid, where the source says nothing."""

    def __init__(self, table: str, column: str, value: float, low: float, high: float) -> None:
        super().__init__(f"{table}: {column} = {value:g} is outside {low:g} to {high:g}")
        self.table, self.column, self.value, self.low, self.high = table, column, value, low, high


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its cells in the order of the columns (SI numbers, words, or None for not given) and its source."""

    cells: tuple[Cell, ...]
    source: str


@dataclass(frozen=True, slots=True)
class Table:
    """A table with the units of its columns as written; ``key`` and ``grid`` name columns."""

    name: str
    columns: tuple[str, ...]
    units: tuple[str, ...]
    key: tuple[str, ...]
    grid: str
    rows: tuple[Row, ...]
    note: str = ""

    def column(self, name: str) -> tuple[Cell, ...]:
        """Return the cells of a column from top to bottom."""
        place = self.columns.index(name)
        return tuple(row.cells[place] for row in self.rows)

    def row(self, *key: Cell) -> Row | None:
        """Return the row with this key, or None."""
        places = [self.columns.index(name) for name in self.key]
        return next((row for row in self.rows if tuple(row.cells[place] for place in places) == key), None)

    def number(self, row: Row, column: str) -> float | None:
        """Return a number of a row, or None where nobody gave one."""
        cell = row.cells[self.columns.index(column)]
        if isinstance(cell, str):
            raise TypeError(f"{self.name}: {column} is a column of words")
        return cell

    def between(self, value: float, column: str) -> float:
        """Return the number of a column at a value of the grid, along a straight line between two rows."""
        grid, numbers = _numbers(self, self.grid), _numbers(self, column)
        if not grid[0] <= value <= grid[-1]:
            raise OutsideTable(self.name, self.grid, value, grid[0], grid[-1])
        above = min(max(bisect_right(grid, value), 1), len(grid) - 1)
        if len(grid) == 1:
            return numbers[0]
        share = (value - grid[above - 1]) / (grid[above] - grid[above - 1])
        return numbers[above - 1] * (1.0 - share) + numbers[above] * share


def _numbers(table: Table, column: str) -> list[float]:
    cells = [cell for cell in table.column(column) if isinstance(cell, float)]
    if len(cells) != len(table.rows):
        raise ValueError(f"{table.name}: {column} is not a column of numbers without a gap")
    return cells


def read_table(name: str, block: object, sources: Mapping[str, Source], file: str) -> Table:
    """Return one ``[table.<name>]`` block as a table, or refuse it."""
    entry = f"table.{name}"
    if not isinstance(block, dict):
        raise SourceError(file, entry, "a table is a block of its own: [table.name]")
    refuse_unknown_keys(block, _FIELDS, file, entry)
    columns = _read_columns(block, file, entry)
    default = text_of(block, "source", file, entry)
    raw = block.get("rows")
    if not isinstance(raw, list) or not raw:
        raise SourceError(file, entry, "has no rows")
    rows = tuple(
        _read_row(given, columns, default, sources, file, f"{entry} row {number}")
        for number, given in enumerate(raw, 1)
    )
    key = block.get("key", [next(iter(columns))])
    grid = text_of(block, "grid", file, entry)
    if not isinstance(key, list) or any(part not in columns for part in [*key, *([grid] if grid else [])]):
        raise SourceError(file, entry, "key and grid name columns of the table: key = [..], grid = ..")
    note = text_of(block, "note", file, entry)
    table = Table(name, tuple(columns), tuple(columns.values()), tuple(key), grid, rows, note)
    _refuse_repeated_keys(table, file, entry)
    _refuse_unordered_grid(table, file, entry)
    return table


def _read_columns(block: Mapping[str, object], file: str, entry: str) -> dict[str, str]:
    columns = block.get("columns")
    if not isinstance(columns, dict) or not columns:
        raise SourceError(file, entry, 'has no columns: columns = {name = "text", thickness = "mm"}')
    for column, unit in columns.items():
        if not isinstance(unit, str) or not is_unit(unit, with_words=True):
            raise SourceError(file, entry, f'column {column} has the unknown unit "{unit}"')
    return columns


def is_unit(unit: str, with_words: bool = False) -> bool:
    """Return whether a header's unit can be read: a unit, ``AWG``, nothing, or (for a column) ``text``."""
    return unit in ("", "AWG") or (with_words and unit == WORDS) or unit_scale(unit) is not None


def _read_row(
    given: object, columns: Mapping[str, str], default: str, sources: Mapping[str, Source], file: str, entry: str
) -> Row:
    if isinstance(given, list):
        if len(given) != len(columns):
            raise SourceError(file, entry, f"has {len(given)} cells for {len(columns)} columns")
        given = dict(zip(columns, given, strict=True))
    if not isinstance(given, dict):
        raise SourceError(file, entry, "is neither a list of cells nor a row of its own")
    refuse_unknown_keys(given, frozenset(columns) | {"source"}, file, entry)
    source = default if "source" in columns else text_of(given, "source", file, entry) or default
    refuse_uncited(source, sources, file, entry)
    cells = tuple(
        _read_cell(given.get(column, ""), unit, file, f"{entry} {column}") for column, unit in columns.items()
    )
    return Row(cells, source)


def _read_cell(given: object, unit: str, file: str, entry: str) -> Cell:
    if given == "":
        return None
    if unit == WORDS:
        if not isinstance(given, str):
            raise SourceError(file, entry, "must be a text in quotes")
        return given
    return read_number(given, unit, file, entry)


def read_number(given: object, unit: str, file: str, entry: str) -> float:
    """Return a TOML number, or a text with its own unit, as an SI float; a bare number has the given unit."""
    if isinstance(given, bool) or not isinstance(given, (int, float, str)):
        raise SourceError(file, entry, f"{given!r} is no number")
    if not isinstance(given, str) and math.isfinite(given) and is_si(unit):
        return float(given)
    try:
        text = given if isinstance(given, str) else repr(given)
        value = read_any(text, unit)
    except CannotRead as error:
        raise SourceError(file, entry, str(error)) from error
    own, named = unit_scale(unit_written(text)), unit_scale("mm2" if unit == "AWG" else unit)
    if isinstance(given, str) and own and named and unit_written(text) and own.dimension != named.dimension:
        raise SourceError(file, entry, f'"{given}" is not in a unit like {unit}')
    return value


@lru_cache(maxsize=256)
def is_si(unit: str) -> bool:
    """Return whether a number in a unit is the SI number itself, so that nobody needs to read it."""
    scale = unit_scale(unit)
    return not unit or (scale is not None and scale.up == scale.down and not scale.offset)


def _refuse_repeated_keys(table: Table, file: str, entry: str) -> None:
    places = [table.columns.index(name) for name in table.key]
    seen: set[tuple[Cell, ...]] = set()
    for number, row in enumerate(table.rows, 1):
        key = tuple(row.cells[place] for place in places)
        if key in seen:
            raise SourceError(file, f"{entry} row {number}", f"the key {key} stands twice")
        seen.add(key)


def _refuse_unordered_grid(table: Table, file: str, entry: str) -> None:
    last = -math.inf
    for number, cell in enumerate(table.column(table.grid) if table.grid else (), 1):
        if not isinstance(cell, float) or cell <= last:
            raise SourceError(file, f"{entry} row {number}", f"{table.grid} does not rise from row to row")
        last = cell
