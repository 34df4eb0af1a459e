"""Whether somebody gets up to a way out in the roof."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from boxwright.disciplines.safety.result import Bed, Exit, Result
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.disciplines.safety.telling import length, question
from boxwright.finding import Finding
from boxwright.units import HeaderUnits


def hatch_out_of_reach(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how somebody gets up to a way out in the roof, where no bed is under it and near it.

    Asks: from a bed under the hole, is the roof so near that who stands on it has the shoulders outside
    Limit: 1.2 m from the top of a bed to the ceiling, and 300 mm (12 in) of the hole over it both ways (practice); what
        else is climbed on nobody can judge
    Source: practice
    Lever: a bed or a step under the hatch
    """
    if result.use != "sleep":
        return
    for one in result.exits:
        if not one.is_to_count or one.way.wall != "roof" or any(_is_under(bed, one, result) for bed in result.beds):
            continue
        near = length(LENGTHS["up to a hatch"], shown_in)
        says = f"{one.way.name} is in the roof, and no bed surely lies under it within {near} of the ceiling: nobody"
        says += " can say how somebody gets up and out"
        act = f"Climb out by {one.way.name} in the dark with everything in its place for the night"
        yield question("safety/hatch-out-of-reach", one.way.of, says, act, 10, f"{one.way.of}.x", "practice")


def _is_under(bed: Bed, one: Exit, result: Result) -> bool:
    """Return whether a bed surely lies under enough of a hole to get through there, and near enough to the ceiling."""
    if bed.surely is None or not bed.is_there:
        return False
    *sides, top = bed.surely
    up = result.ceiling - top
    if not isfinite(up) or up > LENGTHS["up to a hatch"]:
        return False
    place = one.way.place
    return all(
        middle.known and min(_over(at, size, ends) for at in (middle.low, middle.high)) >= min(LENGTHS["squeeze"], size)
        for middle, size, ends in zip((place.x, place.y), place.size, sides, strict=False)
    )


def _over(middle: float, size: float, ends: tuple[float, float]) -> float:
    """Return how much of a hole is over a bed along one axis (m), below zero where none is."""
    return min(middle + size / 2.0, ends[1]) - max(middle - size / 2.0, ends[0])


__all__ = ["hatch_out_of_reach"]
