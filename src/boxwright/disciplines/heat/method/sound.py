"""How loud a thing is at a distance, in the open."""

from __future__ import annotations

from math import log10

from boxwright.units import Metre, OutOfRange, Ratio


def heard_at(level: Ratio, measured_at: Metre, distance: Metre) -> Ratio:
    """Return the level of a sound (dB) at a distance from what makes it.

    Formula: heard = level - 20 * log10(distance / measured_at)
    Units: empirical
    Valid: distances above zero, beyond the size of what makes it
    Source: inverse-square worked example of a machine
    Departs: nothing
    Assumes: nothing between, nothing that throws it back: walls take some off, hard faces add some
    """
    OutOfRange.unless_positive("measured_at", measured_at)
    OutOfRange.unless_positive("distance", distance)
    return level - 20 * log10(distance / measured_at)
