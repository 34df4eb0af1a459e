"""Where a wire runs, from its route as written: ``front z24 > left z74 > x40``."""

from __future__ import annotations

import re
from math import inf

from boxwright.records import dataclass
from boxwright.units import CannotRead, HeaderUnits, read_exact

WALLS = ("left", "right", "front", "rear", "roof", "ceiling", "floor")
_PLACE = re.compile(r"\b([xz])\s*(-?[^\s>]+(?:\s+\d+/\d+)?)")


@dataclass(frozen=True, slots=True)
class Leg:
    """A stretch of a wire on one wall (m): from where to where along it, and at which height, None where not written.

    Where a route does not say how far a wire runs, the leg covers the whole wall: it may be anywhere on it.
    """

    wall: str
    low: float
    high: float
    up: float | None


def legs_of(route: str, units: HeaderUnits) -> tuple[Leg, ...]:
    """Return the stretches of a route in order; what is no wall (tongue, inside front-cabinet) has none."""
    stops: list[tuple[str, float | None, float | None]] = []
    wall = ""
    for text in route.split(">"):
        words = text.split()
        if not words:
            continue
        if words[0].lower() in WALLS:
            wall = "roof" if words[0].lower() == "ceiling" else words[0].lower()
        elif not _PLACE.match(text.strip()):
            wall = ""
        found = {key: _length(number, units) for key, number in _PLACE.findall(text)}
        stops.append((wall, found.get("x"), found.get("z")))
    return _joined(stops)


def _joined(stops: list[tuple[str, float | None, float | None]]) -> tuple[Leg, ...]:
    legs: list[Leg] = []
    index = 0
    while index < len(stops):
        wall = stops[index][0]
        end = index
        while end + 1 < len(stops) and stops[end + 1][0] == wall:
            end += 1
        if wall:
            places = [x for _, x, _ in stops[index : end + 1] if x is not None]
            if _is_front(stops, index - 1) or _is_front(stops, end + 1):
                places.append(0.0)
            height = next((z for _, _, z in stops[index : end + 1] if z is not None), None)
            whole = len(places) < 2 or wall in ("front", "rear")
            legs.append(Leg(wall, -inf if whole else min(places), inf if whole else max(places), height))
        index = end + 1
    return tuple(legs)


def _is_front(stops: list[tuple[str, float | None, float | None]], index: int) -> bool:
    return 0 <= index < len(stops) and stops[index][0] == "front"


def _length(text: str, units: HeaderUnits) -> float | None:
    try:
        return read_exact(text, "length", units)
    except CannotRead:
        return None
