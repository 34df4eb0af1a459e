"""Drawings of air: none yet."""

from __future__ import annotations

from boxwright.disciplines.air.solve import Result
from boxwright.units import HeaderUnits


def sheets(result: Result, shown_in: HeaderUnits) -> tuple[()]:
    """Return the drawings of air."""
    return ()
