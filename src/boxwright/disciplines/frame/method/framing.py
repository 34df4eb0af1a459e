"""Counting, spanning and passing: members under a span, a header's bearings, a thing through a hole, a screw's length.

Whatever is counted forgives a nanometre in a metre, so that a place that is exactly on the edge counts.
"""

from __future__ import annotations

from math import sqrt

from boxwright.units import Metre, Newton, OutOfRange, Ratio


def members_in_span(span: Metre, pitch: Metre, phase: Metre, edge: Metre) -> Ratio:
    """Return how many members at an even pitch a span catches.

    ``phase`` is from the start of the span to the first member's centre; ``edge`` is how far inside the span's ends the
    outermost fastener may stand.

    Formula: count = max(0, ((span - edge - phase) / pitch + 1e-9) // 1 + ((phase - edge) / pitch + 1e-9) // 1 + 1)
    Valid: pitch above zero; phase from zero to the pitch, beyond it members ahead of the first are counted too
    Source: own-arithmetic counting of centres in a closed interval
    Departs: nothing
    Assumes: a member at every pitch, both ways
    """
    OutOfRange.unless_positive("pitch", pitch)
    return max(0.0, ((span - edge - phase) / pitch + 1e-9) // 1 + ((phase - edge) / pitch + 1e-9) // 1 + 1)


def fewest_in_span(span: Metre, pitch: Metre, edge: Metre) -> Ratio:
    """Return the fewest members a span catches at any phase; the most is one more.

    Formula: count = max(0, ((span - 2 * edge) / pitch + 1e-9) // 1)
    Valid: pitch above zero
    Source: own-arithmetic counting of centres in a closed interval
    Departs: nothing
    Assumes: a member at every pitch, both ways
    """
    OutOfRange.unless_positive("pitch", pitch)
    return max(0.0, ((span - 2 * edge) / pitch + 1e-9) // 1)


def first_bearing(span: Metre, loads: tuple[Newton, ...], offsets: tuple[Metre, ...]) -> Newton:
    """Return what the first bearing of a header carries of the loads the cut members brought down on it.

    Formula: force = sum(load * (span - offset) for load, offset in zip(loads, offsets)) / span
    Valid: one offset from the first bearing for each load; span above zero
    Source: own-arithmetic statics of a simple beam
    Departs: nothing
    Assumes: a simple beam on two bearings
    """
    OutOfRange.unless_positive("span", span)
    return sum(load * (span - offset) for load, offset in zip(loads, offsets, strict=True)) / span


def height_for_tilted(long: Metre, short: Metre, width: Metre) -> Metre:
    """Return how high a hole of some width must be for a rectangle longer than that width to pass turned in its plane.

    Formula: height = (2 * long * short * width + (long**2 - short**2) * sqrt(long**2 + short**2 - width**2)) / (long**2
        + short**2)
    Valid: long above width, width above or equal to short
    Source: carver-1957 condition for a rectangle to fit in a rectangle
    Departs: nothing
    Assumes: a rigid rectangle, passed straight through
    """
    OutOfRange.unless_between("long", long, width, float("inf"))
    OutOfRange.unless_between("short", short, 0.0, width)
    root = sqrt(max(0.0, long**2 + short**2 - width**2))
    return (2 * long * short * width + (long**2 - short**2) * root) / (long**2 + short**2)


def edge_distance(shank: Metre, diameters: Ratio) -> Metre:
    """Return how far the middle of a screw must stay from the edge of what it bites into.

    Formula: distance = shank * diameters
    Valid: any screw
    Source: fastener-practice 1.5 diameters in thin steel
    Departs: nothing
    Assumes: nothing
    """
    return shank * diameters


def screw_length(lining: Metre, gauge: Metre, pitch: Metre, threads: Ratio) -> Metre:
    """Return the least length of a screw, under its head, that goes through a lining and holds in a tube's wall.

    Formula: length = lining + gauge + threads * pitch
    Valid: any screw whose threads start behind the point
    Source: fastener-practice lining, tube wall and three threads
    Departs: nothing
    Assumes: the head lies on the finished face
    """
    return lining + gauge + threads * pitch
