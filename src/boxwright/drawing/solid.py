"""A solid: what of the rig takes up room, in words that any writer of solids can build. Nothing here is cut up yet.

Metres in the rig's datum: x rearward, y to the right of the middle, z above the deck. An upright box, a tube, a plate
with a hole and a wheel are all one thing: an outline drawn out along a straight way.
"""

from __future__ import annotations

from math import cos, pi, sin
from typing import Literal

from boxwright.drawing.mark import Point
from boxwright.records import dataclass
from boxwright.units import Band

Way = tuple[float, float, float]
"""A place (m) or a direction: x, y, z."""

Stuff = Literal["metal", "skin", "wood", "foam", "rubber", "glass", "thing", "water", "heat", "wire", "cargo", "gear"]
"""What a solid is shown as; only its colour hangs on it."""


@dataclass(frozen=True, slots=True)
class Prism:
    """An outline in the plane of ``across`` and ``up`` through ``origin``, drawn out by ``deep`` along across x up.

    ``across`` and ``up`` are of length one and square to each other. ``outline`` runs anticlockwise or clockwise;
    ``holes`` go through all of it.
    """

    origin: Way
    across: Way
    up: Way
    outline: tuple[Point, ...]
    deep: float
    holes: tuple[tuple[Point, ...], ...] = ()

    @property
    def along(self) -> Way:
        """Return the way it is drawn out, of length one."""
        return crossed(self.across, self.up)


@dataclass(frozen=True, slots=True)
class Solid:
    """One piece of the rig as a body that encloses what it is made of.

    ``of`` is the rig path it is about, ``name`` tells it from the others of that path. ``pieces`` together are it, less
    ``cut``. ``outward`` is the way out of the wall it belongs to, None for what stands free. It stands from stage
    ``stage`` to stage ``until`` (its number, None for the last); ``stands``: whether it is there in the slot asked for.
    ``density`` (kg/m3) by the stock it is named as: best, low, high; None where nobody can say. ``kg`` is what weight
    says of the whole path, None where nothing is said of it alone. ``taken`` says what of its sizes nobody wrote.
    """

    of: str
    name: str
    stuff: Stuff
    pieces: tuple[Prism, ...]
    cut: tuple[Prism, ...] = ()
    outward: Way | None = None
    density: tuple[float, float, float] | None = None
    kg: Band | None = None
    taken: str = ""
    stage: int = 0
    until: int | None = None
    stands: Literal["yes", "perhaps", "no"] = "yes"


def upright(low: Way, high: Way) -> Prism:
    """Return an upright box by its two corners."""
    length, width, height = (top - bottom for bottom, top in zip(low, high, strict=True))
    return Prism(low, (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), oblong((0.0, 0.0), (length, width)), height)


def oblong(low: Point, high: Point) -> tuple[Point, ...]:
    """Return the outline of a rectangle by its two corners, anticlockwise."""
    return low, (high[0], low[1]), high, (low[0], high[1])


def disc(middle: Point, radius: float, corners: int) -> tuple[Point, ...]:
    """Return the outline of a disc as a regular polygon of the same area."""
    step = 2.0 * pi / corners
    reach = radius * (step / sin(step)) ** 0.5
    return tuple(
        (middle[0] + reach * cos(step * place), middle[1] + reach * sin(step * place)) for place in range(corners)
    )


def crossed(one: Way, other: Way) -> Way:
    """Return the vector product of two directions."""
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def shifted(at: Way, way: Way, by: float) -> Way:
    """Return a place moved along a direction."""
    return at[0] + way[0] * by, at[1] + way[1] * by, at[2] + way[2] * by
