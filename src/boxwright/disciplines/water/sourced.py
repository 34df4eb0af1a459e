"""The sourced numbers of water: densities of what may be in a tank."""

from __future__ import annotations

from boxwright.source import load_table
from boxwright.units import Band

PACKAGE = "boxwright.disciplines.water"


def _densities() -> dict[str, Band]:
    table = load_table(PACKAGE, "fluids")
    found: dict[str, Band] = {}
    columns = [table.column(name) for name in ("name", "density", "low", "high")]
    for name, best, low, high in zip(*columns, strict=True):
        if isinstance(best, float) and isinstance(low, float) and isinstance(high, float):
            found[str(name)] = Band(best, low, high, spread="interval")
    return found


DENSITY: dict[str, Band] = _densities()
"""Density by the name of the fluid, kg/m3."""

_LOWEST = min(density.low for density in DENSITY.values())
_HIGHEST = max(density.high for density in DENSITY.values())

ANY_FLUID = Band((_LOWEST + _HIGHEST) / 2.0, _LOWEST, _HIGHEST, spread="interval", assumed=True)
"""Density of a fluid nobody named, or one the table does not have: from the lightest in it to the heaviest."""


def density_of(fluid: str) -> Band:
    """Return the density of a fluid; `ANY_FLUID` where its name says nothing."""
    return DENSITY.get(" ".join(fluid.lower().split()), ANY_FLUID)
