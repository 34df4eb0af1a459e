"""The sourced numbers of layout about people: how much room they take, as lengths and as shares of their height."""

from __future__ import annotations

from boxwright.source import load_table

PACKAGE = "boxwright.disciplines.layout"


def _numbers(table_name: str, column: str) -> dict[str, float]:
    table = load_table(PACKAGE, table_name)
    cells = zip(table.column(table.columns[0]), table.column(column), strict=True)
    return {str(name): number for name, number in cells if isinstance(number, float)}


ROOM: dict[str, float] = _numbers("room_of_people", "least")
"""Room that people want, and what they step over, stoop under and climb on (m)."""

SHARE: dict[str, float] = _numbers("shares_of_people", "share")
"""Measures of a grown body as shares of the standing height."""

BEDDING: frozenset[str] = frozenset(str(row.cells[0]) for row in load_table(PACKAGE, "bedding").rows)
"""Words in the name of a thing that one lies on or under."""

SEATS: frozenset[str] = frozenset(str(row.cells[0]) for row in load_table(PACKAGE, "seats").rows)
"""Words in the name of a thing that one sits on."""

LIT_BY: frozenset[str] = frozenset(str(row.cells[0]) for row in load_table(PACKAGE, "lit_by").rows)
"""Words in the name of what one puts a light on by from bed."""

REACHED: dict[str, str] = {
    str(word): str(how) for word, how in (row.cells for row in load_table(PACKAGE, "things_reached").rows)
}
"""Words in the name of a thing that one reaches for, and whether it is used or things are stored in it."""
