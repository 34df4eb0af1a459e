"""Drawings of heat: none yet."""

from __future__ import annotations

from boxwright.disciplines.heat.solve import Result
from boxwright.units import HeaderUnits


def sheets(result: Result, shown_in: HeaderUnits) -> tuple[()]:
    """Return the drawings of heat."""
    return ()
