"""A wall, the roof or the floor as a plane in space, and how plates and bars of it become solids.

``out`` runs outward from the stud face: to the skin of a wall, up on the roof, down through the deck on the floor.
"""

from __future__ import annotations

from math import hypot
from typing import NamedTuple

from boxwright.disciplines.frame.result import Member, Wall
from boxwright.disciplines.frame.sourced import ASSUMED
from boxwright.disciplines.frame.walls import top_at
from boxwright.drawing.mark import Point
from boxwright.drawing.solid import Prism, Stuff, Way, crossed, oblong, shifted
from boxwright.records import dataclass

ARC = 24
"""Into how many straight pieces a round roof is cut; the best of its chords is off by less than a millimetre."""


STUFFS: tuple[tuple[str, Stuff], ...] = (
    *((one, "rubber") for one in ("tape", "rubber", "vinyl", "felt", "butyl")),
    *((one, "foam") for one in ("xps", "eps", "pir", "foam", "wool", "polyiso", "batt")),
    *((one, "skin") for one in ("alumin", "steel", "frp", "grp")),
)
"""What a layer is shown as, by a word of its material; what is none of these is shown as wood."""


class Stretch(NamedTuple):
    """An upright rectangle of a wall, in its own coordinates (m)."""

    low: float
    high: float
    foot: float
    top: float


@dataclass(frozen=True, slots=True)
class Plane:
    """Where a wall's own coordinates lie in space: ``origin`` is where along, up and out are nothing."""

    wall: Wall
    origin: Way
    along: Way
    up: Way
    out: Way
    half: float

    def slab(
        self, outline: tuple[Point, ...], inner: float, outer: float, holes: tuple[tuple[Point, ...], ...] = ()
    ) -> Prism:
        """Return a plate of the wall: its outline along and up, from ``inner`` to ``outer`` outward (m)."""
        start = inner if _runs_with(crossed(self.along, self.up), self.out) else outer
        return Prism(shifted(self.origin, self.out, start), self.along, self.up, outline, outer - inner, holes)

    def post(self, section: tuple[Point, ...], low: float, high: float, hole: tuple[Point, ...] = ()) -> Prism:
        """Return a bar that stands up the wall: its section along and out, from ``low`` to ``high``."""
        start = low if _runs_with(crossed(self.along, self.out), self.up) else high
        return Prism(
            shifted(self.origin, self.up, start), self.along, self.out, section, high - low, (hole,) if hole else ()
        )

    def rail(self, section: tuple[Point, ...], low: float, high: float, hole: tuple[Point, ...] = ()) -> Prism:
        """Return a bar that lies along the wall: its section up and out, from ``low`` to ``high``."""
        start = low if _runs_with(crossed(self.up, self.out), self.along) else high
        return Prism(
            shifted(self.origin, self.along, start), self.up, self.out, section, high - low, (hole,) if hole else ()
        )

    def top(self, along: float) -> float:
        """Return how high the wall is at a place along it."""
        if self.wall.name in ("front", "rear") and self.wall.roof.shape != "flat":
            return min(self.wall.top, top_at(self.wall.roof, self.half, along))
        return self.wall.top

    def plate(self, box: Stretch, inner: float, outer: float) -> Prism:
        """Return a plate over a stretch of the wall, as high as the roof lets it be and as round as that is."""
        if self.wall.name == "roof" and self.wall.roof.shape != "flat":
            return self.arch((box.low, box.high), (box.foot, box.top), inner, outer)
        return self.slab(self.face(box), inner, outer)

    def face(self, box: Stretch) -> tuple[Point, ...]:
        """Return the outline of a stretch of the wall; one that reaches the top of an end wall follows the roof."""
        over = box.top - self.wall.top
        if self.wall.name not in ("front", "rear") or self.wall.roof.shape == "flat":
            return oblong((box.low, box.foot), (box.high, box.top))
        steps = [box.high + (box.low - box.high) * step / ARC for step in range(ARC + 1)]
        tops = [(at, min(box.top, self.top(at) + max(over, 0.0))) for at in steps]
        return ((box.low, box.foot), (box.high, box.foot), *tops) if min(top for _, top in tops) > box.foot else ()

    def arch(self, along: Point, across: Point, inner: float, outer: float) -> Prism:
        """Return a strip that follows the round of the roof from side to side, from ``inner`` to ``outer`` over it."""
        low, high = across
        places = [low + (high - low) * step / ARC for step in range(ARC + 1)]
        heights = [(y, top_at(self.wall.roof, self.half, y)) for y in places]
        outline = [(y, z + inner) for y, z in heights] + [(y, z + outer) for y, z in reversed(heights)]
        return Prism((along[0], 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), tuple(outline), along[1] - along[0])


def plane_of(wall: Wall, half: float) -> Plane:
    """Return a wall as a plane in space; ``half`` is half the width of the body."""
    if wall.name in ("roof", "floor"):
        height = wall.roof.height if wall.name == "roof" else 0.0
        out = (0.0, 0.0, 1.0 if wall.name == "roof" else -1.0)
        return Plane(wall, (0.0, 0.0, height), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), out, half)
    run = wall.end[0] - wall.start[0], wall.end[1] - wall.start[1]
    length = hypot(*run)
    along = (run[0] / length, run[1] / length, 0.0)
    origin = shifted((*wall.start, 0.0), along, -wall.low)
    return Plane(wall, origin, along, (0.0, 0.0, 1.0), (-wall.inward[0], -wall.inward[1], 0.0), half)


def depth_of(members: tuple[Member, ...], wall: str) -> float:
    """Return how far a wall's members reach outward of the stud face; what is usual where nobody wrote it."""
    found = [one.depth.best for one in members if one.wall == wall and one.depth is not None and one.depth.known]
    return max(found, default=ASSUMED["stud depth"].best)


def is_depth_written(members: tuple[Member, ...], wall: str) -> bool:
    """Return whether anybody wrote how deep a wall's members are."""
    return any(one.wall == wall and one.depth is not None and one.depth.known for one in members)


def stuff_of(material: str) -> Stuff:
    """Return what a layer is shown as, by what it is made of."""
    word = material.lower()
    return next((stuff for key, stuff in STUFFS if key in word), "wood")


def _runs_with(one: Way, other: Way) -> bool:
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2] > 0.0
