"""A section across a member as a field of temperature: worked out only when asked for, and its lines."""

from __future__ import annotations

from bisect import bisect_left

from boxwright.disciplines.heat import method
from boxwright.disciplines.heat.across import Across, ByHand, by_hand, laid_out
from boxwright.disciplines.heat.stored import TABLE, is_stored, look_up, transmittance
from boxwright.drawing.mark import Point
from boxwright.records import dataclass

INSIDE, OUTSIDE = 293.15, 273.15
"""What a section is drawn between (K): a warm room and frost."""
FINEST = 0.0004


@dataclass(frozen=True, slots=True)
class Solved:
    """A section with its field, and what the rules of the hand and the stored sections make of it (W/m2K)."""

    across: Across
    field: method.SectionField
    hand: ByHand
    stored: float | None


class NoField(Exception):
    """The library that works out fields is not installed."""


def solved(across: Across) -> Solved:
    """Return a section with its field; raises `NoField` where nothing here can work one out."""
    laid = laid_out(across)
    try:
        field = method.section_field(
            laid.widths,
            laid.depths,
            laid.rows,
            (OUTSIDE, across.outside_film),
            (INSIDE, across.inside_film),
            finest=FINEST,
        )
    except ImportError as missing:
        raise NoField(missing.name or "") from missing
    found = transmittance(across, look_up(across, TABLE)) if is_stored(across, TABLE) else None
    return Solved(across, field, by_hand(across), found)


def coldest_inside(field: method.SectionField) -> Point:
    """Return the place on the inside face where it is coldest: from the middle of the member, from outside (m)."""
    inside = field.temperatures[-1]
    return field.x[inside.index(min(inside))], field.y[-1]


def isotherm(field: method.SectionField, level: float) -> tuple[tuple[Point, Point], ...]:
    """Return a line of one temperature (K) as short pieces, cell by cell."""
    pieces: list[tuple[Point, Point]] = []
    for row in range(len(field.y) - 1):
        lower, upper = field.temperatures[row], field.temperatures[row + 1]
        low, high = field.y[row], field.y[row + 1]
        # Few cells are crossed: those all of whose corners lie on one side are passed by.
        below = [(one < level) + (other < level) for one, other in zip(lower, upper, strict=True)]
        for column in range(len(field.x) - 1):
            if below[column] + below[column + 1] in (0, 4):
                continue
            left, right = field.x[column], field.x[column + 1]
            corners = (
                (left, low, lower[column]),
                (right, low, lower[column + 1]),
                (right, high, upper[column + 1]),
                (left, high, upper[column]),
            )
            crossed = [
                _crossing(one, other, level)
                for one, other in zip(corners, (*corners[1:], corners[0]), strict=True)
                if (one[2] < level) != (other[2] < level)
            ]
            pieces += zip(crossed[::2], crossed[1::2], strict=False)
    return tuple(pieces)


def temperature_at(field: method.SectionField, across: float, deep: float) -> float:
    """Return the temperature (K) at the crossing of lines nearest beyond a place."""
    column = min(bisect_left(field.x, across), len(field.x) - 1)
    row = min(bisect_left(field.y, deep), len(field.y) - 1)
    return field.temperatures[row][column]


def _crossing(one: tuple[float, float, float], other: tuple[float, float, float], level: float) -> Point:
    share = (level - one[2]) / (other[2] - one[2])
    return one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share
