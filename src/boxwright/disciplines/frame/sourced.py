"""The sourced numbers of the frame: densities, gauges, tolerances, what is assumed, and what passes through a hole."""

from __future__ import annotations

from boxwright.source import Table, load_table
from boxwright.units import Band

PACKAGE = "boxwright.disciplines.frame"


def _bands(table_name: str, best_column: str) -> dict[str, Band]:
    table = load_table(PACKAGE, table_name)
    found: dict[str, Band] = {}
    columns = [table.column(name) for name in (table.columns[0], best_column, "low", "high")]
    for name, best, low, high in zip(*columns, strict=True):
        if isinstance(best, float) and isinstance(low, float) and isinstance(high, float):
            found[str(name)] = Band(best, low, high, spread="interval", assumed=True)
    return found


def _numbers(table_name: str, column: str) -> dict[str, float]:
    table = load_table(PACKAGE, table_name)
    cells = zip(table.column(table.columns[0]), table.column(column), strict=True)
    return {str(name): number for name, number in cells if isinstance(number, float)}


def _sizes(table_name: str) -> tuple[tuple[str, tuple[float, float, float]], ...]:
    columns = [_numbers(table_name, column) for column in ("long", "wide", "thick")]
    return tuple((name, (columns[0][name], columns[1][name], columns[2][name])) for name in columns[0])


DENSITY: dict[str, Band] = _bands("stock", "density")
"""Density by the name of the stock, kg/m3."""

ASSUMED: dict[str, Band] = {
    **_bands("assumed_lengths", "best"),
    **_bands("assumed_shares", "best"),
    **_bands("assumed_members", "best"),
}
"""Measures of the trailer and of its members taken from their kind, in SI."""

WITHIN: dict[str, float] = _numbers("tolerances", "within")
"""How far a thing may be from where it was ordered, or a reading from what is so, in m."""

LIMITS: dict[str, float] = {**_numbers("frame_limits", "limit"), **_numbers("frame_lengths", "limit")}
"""What the frame compares with: plain numbers, and lengths in m."""

GAUGE: dict[str, float] = _numbers("gauges", "thick")
"""Thickness of a steel sheet by its gauge, in m."""

PASSING: tuple[tuple[str, tuple[float, float, float]], ...] = _sizes("passing")
"""What somebody may want to carry through an opening: name; length, width and thickness in m."""

_THREADS: Table = load_table(PACKAGE, "threads")


def thread_pitch(shank: float) -> float:
    """Return the pitch of a screw's thread; beyond the table that of its first or last row."""
    shanks = [cell for cell in _THREADS.column("shank") if isinstance(cell, float)]
    return _THREADS.between(min(max(shank, shanks[0]), shanks[-1]), "pitch")


def density_of(stock: str) -> Band | None:
    """Return the density of a layer's material; ``lauan ply`` is any ply; None where the table has nothing like it."""
    name = " ".join(stock.lower().split())
    return DENSITY.get(name) or DENSITY.get(name.rpartition(" ")[2])
