"""The numbers layout compares with where the rig file says nothing, each with its source in ``tables/room.toml``."""

from __future__ import annotations

from boxwright.source import load_table

PACKAGE = "boxwright.disciplines.layout"


def _numbers(name: str) -> dict[str, float]:
    table = load_table(PACKAGE, name)
    found: dict[str, float] = {}
    for row in table.rows:
        number = table.number(row, "limit")
        if number is None:
            raise ValueError(f"{name}: {row.cells[0]} has no limit")
        found[str(row.cells[0])] = number
    return found


LENGTHS: dict[str, float] = _numbers("lengths")
SHEET: dict[str, float] = _numbers("sheet")
MASSES: dict[str, float] = _numbers("masses")
SHARES: dict[str, float] = _numbers("shares")
