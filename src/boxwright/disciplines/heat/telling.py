"""The words in which heat tells what it found, and where each number of its tables comes from."""

from __future__ import annotations

from functools import cache

from boxwright.disciplines.heat.material import PACKAGE
from boxwright.finding import Use
from boxwright.source import Source, load_sources, load_table
from boxwright.units import Band, HeaderUnits, show

SLEEP: tuple[Use, ...] = ("sleep",)
OWN_RULE = "own-rule"


def source_of(table: str, name: str) -> str:
    """Return the source of one row of a table."""
    return next(row.source for row in load_table(PACKAGE, table).rows if row.cells[0] == name)


@cache
def sources_named() -> dict[str, Source]:
    """Return the sources of the rules and tables by their key, read when the first rule speaks."""
    return load_sources(PACKAGE, with_checks=False)


def warm(kelvin: float, shown_in: HeaderUnits) -> str:
    """Return a temperature in the user's units."""
    return show(kelvin, "temperature", shown_in)


def between(band: Band, shown_in: HeaderUnits) -> str:
    """Return a temperature with its doubt, such as ``58 F (49 to 62)``; alone where there is none to speak of."""
    best, low, high = (warm(one, shown_in) for one in (band.best, band.low, band.high))
    if low == high:
        return best
    unit = best.rpartition(" ")[2]
    return f"{best} ({low.removesuffix(f' {unit}')} to {high.removesuffix(f' {unit}')})"
