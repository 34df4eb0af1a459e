"""Whether a thing goes through a hole: its smallest cross-section, straight or turned in the plane of the hole."""

from __future__ import annotations

from math import acos, atan2, hypot

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.parts import ToCarryIn
from boxwright.disciplines.frame.result import CarriedIn, Hole, Passing
from boxwright.disciplines.frame.sourced import LIMITS
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


def carried(of: str, name: str, size: Vector, hole: tuple[float, float]) -> Passing:
    """Return whether a thing passes a hole by hand, with a little room to move in; ``spare`` is beyond that room."""
    room = LIMITS["hand_room"]
    return passing(of, name, size, (hole[0] - room, hole[1] - room))


def stuck_of(to_carry_in: tuple[ToCarryIn, ...], holes: tuple[Hole, ...]) -> tuple[CarriedIn, ...]:
    """Return the parts that pass no opening of a wall left when they go in, and those that nobody can say it of.

    A hole with a unit in it is no way in, and neither is one in roof or floor. Where no way in is written at all,
    nobody has come to openings yet, and nothing is said.
    """
    ways = {one.of: one for one in holes if _is_way_in(one)}
    found: list[CarriedIn] = []
    for part in to_carry_in if ways else ():
        if min(part.size) <= 0.0:
            found.append(CarriedIn(part.of, part.name, part.size, None, ""))
            continue
        left = [ways[of] for of in part.ways if of in ways]
        sizes = [(one.high - one.low, one.top - one.bottom) for one in left]
        tried = [(passing(part.of, part.name, part.size, size), one) for size, one in zip(sizes, left, strict=True)]
        if tried and not any(one.passes for one, _ in tried):
            best, hole = max(tried, key=lambda pair: pair[0].spare)
            found.append(CarriedIn(part.of, part.name, part.size, best, hole.name))
    return tuple(found)


def _is_way_in(hole: Hole) -> bool:
    size = min(hole.high - hole.low, hole.top - hole.bottom)
    return hole.is_placed and not hole.unit and hole.wall not in ("roof", "floor") and size >= LIMITS["least_way_in"]
