"""The sourced numbers of weight: what a scale may be off, what is assumed of a trailer, what the rules compare with."""

from __future__ import annotations

from boxwright.source import Table, load_table
from boxwright.units import Band

PACKAGE = "boxwright.disciplines.weight"


def _numbers(table: Table, column: str) -> dict[str, float]:
    """Return the numbers of a column by the names in the first."""
    cells = zip(table.column(table.columns[0]), table.column(column), strict=True)
    return {str(name or ""): number for name, number in cells if isinstance(number, float)}


def _bands(name: str) -> dict[str, Band]:
    table = load_table(PACKAGE, name)
    low, best, high = (_numbers(table, column) for column in ("low", "best", "high"))
    return {key: Band(best[key], low[key], high[key], spread="interval", assumed=True) for key in best}


ASSUMED: dict[str, Band] = {
    **_bands("assumed_lengths"),
    **_bands("assumed_rates"),
    **_bands("assumed_shares"),
}
"""Measures of the trailer taken from its kind, in SI."""

WITHIN: dict[str, float] = _numbers(load_table(PACKAGE, "instruments"), "within")
WITHIN_SHARE: dict[str, float] = _numbers(load_table(PACKAGE, "instruments"), "share")
"""What a scale may be off by its name: kg, and share of the reading; the empty name is for any other."""

LENGTH_WITHIN: dict[str, float] = _numbers(load_table(PACKAGE, "lengths_read"), "within")
"""What a length may be off by what it was read with, in m."""

LIMITS: dict[str, float] = _numbers(load_table(PACKAGE, "limits"), "limit")
"""What the rules compare with."""
