"""The sourced numbers of a change-over: how long a move takes, what how many hands lift, and how high."""

from __future__ import annotations

from boxwright.source import load_table

PACKAGE = "boxwright.disciplines.layout"


def _numbers(name: str, column: str) -> dict[str, float]:
    table = load_table(PACKAGE, name)
    cells = zip(table.column(table.columns[0]), table.column(column), strict=True)
    return {str(word): number for word, number in cells if isinstance(number, float)}


SECONDS: dict[str, float] = _numbers("move_seconds", "time")
"""How long moves take (s)."""

LIFTED: dict[str, float] = _numbers("lifted_masses", "limit")
"""The heaviest thing (kg) that one person, or two, carry."""

REACHED: dict[str, float] = _numbers("carried_heights", "length")
"""The highest sill (m) a thing is carried over, and how much higher than it stands one or two people carry it."""

PACE: float = _numbers("way_numbers", "number")["pace"]
"""How fast (m/s) somebody half asleep gets along."""

SQUEEZE: float = _numbers("narrow_ways", "length")["squeeze"]
"""Through less (m) nobody gets; from here to what lets one pass somebody may, and has to try."""
