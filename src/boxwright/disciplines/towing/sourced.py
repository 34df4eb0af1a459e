"""The sourced numbers of towing that no plate and no law gives: what practice compares with, tyre tables, lamp sets."""

from __future__ import annotations

from boxwright.source import Row, Table, load_table
from boxwright.units import read_any

PACKAGE = "boxwright.disciplines.towing"
INCH_COUNTRIES = ("US", "CA")
"""Where trailers are built in inches and pounds; practice on the ball and the proportions of ratings are their own."""


def _numbers(name: str, column: str) -> dict[str, float]:
    """Return the numbers of a column by the words in the first."""
    table = load_table(PACKAGE, name)
    return {_word(table, row): _number(table, row, column) for row in table.rows}


def _words(name: str, column: str) -> dict[str, tuple[str, ...]]:
    """Return the comma-separated words of a column by the words in the first."""
    table = load_table(PACKAGE, name)
    place = table.columns.index(column)
    return {_word(table, row): _split(str(row.cells[place] or "")) for row in table.rows}


def _word(table: Table, row: Row) -> str:
    return str(row.cells[0])


def _number(table: Table, row: Row, column: str) -> float:
    number = table.number(row, column)
    if number is None:
        raise ValueError(f"{table.name}: {column} has a gap")
    return number


def _split(text: str) -> tuple[str, ...]:
    return tuple(word.strip() for word in text.split(",") if word.strip())


SHARES: dict[str, float] = _numbers("shares", "limit")
PAIRS: dict[str, tuple[float, float, float]] = {
    name: (least, _numbers("pairs", "strange")[name], _numbers("pairs", "most")[name])
    for name, least in _numbers("pairs", "least").items()
}
"""Least, strange and greatest share of two figures that belong together."""
STAMP_STEP: float = _numbers("stamps", "step")["round"]
"""In kilograms."""
POUND: float = read_any("1 lb")
"""In kilograms."""
PRESSURES: dict[str, float] = _numbers("pressures", "limit")
"""In pascals."""
MASSES: dict[str, float] = _numbers("masses", "limit")
"""In kilograms."""
LENGTHS: dict[str, float] = _numbers("lengths", "limit")
WINDS: dict[str, float] = _numbers("winds", "limit")
AGES: dict[str, float] = _numbers("ages", "limit")
"""In seconds."""
ASSUMED: dict[str, float] = _numbers("assumed", "value")
AIR_DENSITY: float = _numbers("air", "density")["air"]
YARDSTICK_SPEED: float = _numbers("stopping", "speed")["yardstick"]
YARDSTICK_DISTANCE: float = _numbers("stopping", "distance")["yardstick"]
BALLS: tuple[tuple[float, float], ...] = tuple(
    zip(_numbers("balls", "size").values(), _numbers("balls", "most").values(), strict=True)
)
"""Ball size (m) and the greatest rating met with it (kg)."""
LAMPS: dict[str, tuple[str, ...]] = _words("lamps", "lamps")
"""The lamps asked for, by what calls for them and the country: ``width US``."""
LAMP_WORDS: dict[str, tuple[str, ...]] = _words("lamp_words", "lamps")
"""Other words for lamps, without their plural s, and the lamps they mean; none for a lamp no rule asks for."""
LOAD_OF_INDEX: dict[int, float] = {int(float(index)): load for index, load in _numbers("load_index", "load").items()}
SPEED_OF_SYMBOL: dict[str, float] = _numbers("speed_symbol", "speed")
WALK: tuple[tuple[str, str, tuple[str, ...]], ...] = tuple(
    (str(row.cells[0]), str(row.cells[1]), _split(str(row.cells[2] or "")))
    for row in load_table(PACKAGE, "walk_round").rows
)
"""The lines of the walk round: name, what is looked at, the findings that decide it."""
