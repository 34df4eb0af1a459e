"""What a layer is made of, read from the words an owner writes: tolerant of spelling, never guessed."""

from __future__ import annotations

import re
from functools import lru_cache

from boxwright.records import dataclass
from boxwright.source import load_table
from boxwright.units import Band, exactly

PACKAGE = "boxwright.disciplines.heat"
_WORDS = re.compile(r"[a-z]+(?:'s)?")
_AIR = frozenset({"air", "gap", "airgap", "void", "empty"})
_NO_MATERIAL = frozenset({"in", "inch", "inches", "mm", "cm", "ft", "ga", "gauge", "thick", "and", "of", "the", "a"})


@dataclass(frozen=True, slots=True)
class Material:
    """A material: W/mK, kg/m3, J/kgK, and how many times as hard as air it is for vapour to pass (no unit).

    ``kind``: foam, wool, board, sheet, metal or air. ``name`` is the row, or rows, of the table it was read as.
    """

    name: str
    kind: str
    conductivity: Band
    density: float
    capacity: float
    vapour: Band
    source: str


def interval(best: float, low: float, high: float) -> Band:
    """Return what a table takes a thing to be: nothing known between its ends."""
    return Band(best, low, high, spread="interval", assumed=True) if high > low else exactly(best)


def _rows() -> dict[tuple[str, ...], Material]:
    found: dict[tuple[str, ...], Material] = {}
    for row in load_table(PACKAGE, "heat_materials").rows:
        name, kind = str(row.cells[0]), str(row.cells[9])
        through, low, high, dense, holds, vapour, least, most = (float(str(cell)) for cell in row.cells[1:9])
        found[tuple(_WORDS.findall(name))] = Material(
            name, kind, interval(through, low, high), dense, holds, interval(vapour, least, most), row.source
        )
    return found


def columns(table: str) -> dict[str, tuple[float, ...]]:
    """Return the numbers of a table's rows by their names."""
    return {
        str(row.cells[0]): tuple(cell for cell in row.cells[1:] if isinstance(cell, float))
        for row in load_table(PACKAGE, table).rows
    }


MATERIALS = _rows()
GAPS: dict[str, Band] = {name: interval(*row) for name, row in columns("heat_gaps").items()}
"""What a layer of shut-in air resists, m2K/W."""
MOST_WORDS = max(len(name) for name in MATERIALS)
GENERAL = frozenset({"foam", "wool", "wood", "timber", "plastic"})
"""Names of a whole kind."""
AIR = Material("air", "air", exactly(0.0), 1.2, 1006.0, exactly(1.0), "material-memory")


@lru_cache(maxsize=256)
def read_material(written: str, name: str = "") -> Material | None:
    """Return the material of a layer by what it is made of, else by its name; None where neither is known.

    The longest name that stands in the text counts. Of several that do not overlap, such as vinyl on ply, the last is
    the best guess and the band covers all of them.
    """
    for text in (written, name):
        words = tuple(one for one in _WORDS.findall(text.lower()) if one not in _NO_MATERIAL)
        if words and set(words) <= _AIR:
            return AIR
        found = _found(words)
        if found:
            return _joined(found)
        if written.strip():
            break
    return None


def _found(words: tuple[str, ...]) -> list[Material]:
    found: list[Material] = []
    at = 0
    while at < len(words):
        for count in range(min(MOST_WORDS, len(words) - at), 0, -1):
            row = MATERIALS.get(words[at : at + count]) or MATERIALS.get(_singular(words[at : at + count]))
            if row is not None:
                found.append(row)
                at += count - 1
                break
        at += 1
    return found


def _singular(words: tuple[str, ...]) -> tuple[str, ...]:
    return (*words[:-1], words[-1].removesuffix("s"))


def _joined(found: list[Material]) -> Material:
    # Foam of "EPS foam" says no more than EPS does.
    special = [one for one in found if one.name not in GENERAL]
    found = [one for one in found if one.name not in GENERAL or one.kind not in {each.kind for each in special}]
    last = found[-1]
    names = tuple(dict.fromkeys(one.name for one in found))
    if len(names) == 1:
        return last
    return Material(
        " and ".join(names),
        last.kind,
        _over([one.conductivity for one in found], last.conductivity.best),
        last.density,
        last.capacity,
        _over([one.vapour for one in found], last.vapour.best),
        last.source,
    )


def _over(bands: list[Band], best: float) -> Band:
    return interval(best, min(one.low for one in bands), max(one.high for one in bands))
