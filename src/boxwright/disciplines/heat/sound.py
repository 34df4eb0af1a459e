"""How loud a heater is where people sleep, by the level its leaflet gives; a comparison, no judgement."""

from __future__ import annotations

from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import heard_at
from boxwright.disciplines.heat.parts import LEVEL, Noise
from boxwright.units import Band, exactly

QUIET: dict[str, float] = {name: row[0] for name, row in columns("quiet").items()}
"""Levels (dB) that leave people asleep, by who sleeps."""


def level_of(written: str) -> Band | None:
    """Return a level as written, such as ``52 dB`` or ``50..55 dB``; None where it is none."""
    found = LEVEL.fullmatch(written.strip())
    if found is None:
        return None
    first = float(found.group(1))
    if found.group(2) is None:
        return exactly(first)
    low, high = sorted((first, float(found.group(2))))
    return Band((low + high) / 2.0, low, high)


def heard(noise: Noise, distance: Band | None) -> Band | None:
    """Return how loud it is at a distance (dB), nothing between; None where level or a distance is not known."""
    level, at = level_of(noise.level), noise.at
    if level is None or at is None or distance is None or not (at.known and distance.known):
        return None
    if min(at.low, distance.low) <= 0.0:
        return None
    ends = (
        (level.best, at.best, distance.best),
        (level.low, at.low, distance.high),
        (level.high, at.high, distance.low),
    )
    best, low, high = (heard_at(*end) for end in ends)
    return Band(best, low, high, spread="interval") if high > low else exactly(best)
