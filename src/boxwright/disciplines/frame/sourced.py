"""The sourced numbers of the frame: densities of layers, measures assumed of a trailer."""

from __future__ import annotations

from boxwright.source import load_table
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


DENSITY: dict[str, Band] = _bands("stock", "density")
"""Density by the name of the stock, kg/m3."""

ASSUMED: dict[str, Band] = {**_bands("assumed_lengths", "best"), **_bands("assumed_shares", "best")}
"""Measures of the trailer taken from its kind, in SI."""


def density_of(stock: str) -> Band | None:
    """Return the density of a layer's material; ``lauan ply`` is any ply; None where the table has nothing like it."""
    name = " ".join(stock.lower().split())
    return DENSITY.get(name) or DENSITY.get(name.rpartition(" ")[2])
