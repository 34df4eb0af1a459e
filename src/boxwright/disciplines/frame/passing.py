"""Whether a thing goes through a hole: its smallest cross-section, straight or turned in the plane of the hole."""

from __future__ import annotations

from math import acos, atan2, hypot

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.result import Passing
from boxwright.exchange import Vector


def passing(of: str, name: str, size: Vector, hole: tuple[float, float]) -> Passing:
    """Return whether a thing of a size passes a hole of width and height (m), carried lengthways."""
    thin, wide, _ = sorted(size)
    short, long = sorted(hole)
    spare = min(long - wide, short - thin)
    if spare >= 0.0 or wide <= long or thin > short:
        return Passing(of, name, size, spare >= 0.0, 0.0, spare)
    needed = method.height_for_tilted(wide, thin, long)
    tilt = atan2(thin, wide) + acos(min(1.0, long / hypot(wide, thin)))
    return Passing(of, name, size, short >= needed, tilt if short >= needed else 0.0, short - needed)
