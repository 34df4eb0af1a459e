"""Where a part is free to go: inside the finished surfaces, through nobody else's solid box."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import inf, isfinite

from boxwright.model.part import Frame
from boxwright.model.place import Place, Surfaces
from boxwright.records import dataclass

TOUCH = 0.001
"""How far two boxes may go into each other and still only touch (m)."""
NO_SOLID = ("spread", "backing")
"""Kinds of part that fill no room of their own."""
MOST_TRIES = 60

Span = tuple[float, float]
Edges = tuple[Span, Span, Span]


@dataclass(frozen=True, slots=True)
class Room:
    """How far a part with all in and on it may go along one axis.

    ``least`` and ``most`` are the shifts (m) at which it meets a finished surface. ``blocked`` are the open spans of
    shifts at which it would stand in something.
    """

    least: float
    most: float
    blocked: tuple[Span, ...]

    def is_free(self, shift: float) -> bool:
        """Return whether the part may stand there."""
        return self.least - TOUCH <= shift <= self.most + TOUCH and self._stands_in(shift) is None

    def is_lifted(self, shift: float) -> bool:
        """Return whether something stands in the way to a place: the part is lifted past it, it cannot be slid."""
        low, high = min(0.0, shift), max(0.0, shift)
        return any(low - TOUCH <= span[0] + TOUCH < span[1] - TOUCH <= high + TOUCH for span in self.blocked)

    def landing(self, shift: float, rounded: Callable[[float], float]) -> float | None:
        """Return the nearest free shift at least as far as one, rounded outwards; None where there is none."""
        sign = 1.0 if shift > 0.0 else -1.0
        for _ in range(MOST_TRIES):
            shift = rounded(shift)
            hit = self._stands_in(shift)
            if hit is None:
                return shift if self.is_free(shift) else None
            shift = max(hit[1], shift + TOUCH) if sign > 0.0 else min(hit[0], shift - TOUCH)
        return None

    def way(self, sign: float) -> float:
        """Return how far the part may be pushed one way before it meets anything (m, not below zero)."""
        if sign > 0.0:
            return max(0.0, min([self.most, *(low for low, _ in self.blocked if low >= -TOUCH)]))
        return max(0.0, min([-self.least, *(-high for _, high in self.blocked if high <= TOUCH)]))

    def _stands_in(self, shift: float) -> Span | None:
        return next((span for span in self.blocked if span[0] + TOUCH < shift < span[1] - TOUCH), None)


def edges(place: Place) -> Edges | None:
    """Return the box of a place as its ends on each axis, None where it has no place or no size."""
    middles = (place.x, place.y, place.z)
    if not all(one.known and isfinite(one.best) for one in middles) or min(place.size) <= 0.0:
        return None
    x, y, z = ((one.best - size / 2.0, one.best + size / 2.0) for one, size in zip(middles, place.size, strict=True))
    return x, y, z


def solids(frames: Iterable[Frame]) -> dict[tuple[str, Edges], None]:
    """Return the solid boxes of some parts, each once, by path."""
    found: dict[tuple[str, Edges], None] = {}
    for frame in frames:
        box = edges(frame.place) if frame.kind not in NO_SOLID else None
        if box is not None:
            found[frame.of, box] = None
    return found


def is_inside(box: Edges, surfaces: Surfaces) -> bool:
    """Return whether a box stands within the finished surfaces along and across the trailer."""
    limits = ((surfaces.front, surfaces.rear), (surfaces.left, surfaces.right), (surfaces.deck, surfaces.bows))
    return all(low - TOUCH <= box[axis][0] and box[axis][1] <= high + TOUCH for axis, (low, high) in enumerate(limits))


def room_of(family: Iterable[Edges], others: Iterable[Edges], axis: int, surfaces: Surfaces) -> Room:
    """Return how far a family of boxes may go along x (0) or y (1); what it is in already does not stop it."""
    low, high = ((surfaces.front, surfaces.rear), (surfaces.left, surfaces.right))[axis]
    least, most, blocked = -inf, inf, []
    others = tuple(others)
    across = [one for one in (0, 1, 2) if one != axis]
    for box in family:
        least, most = max(least, low - box[axis][0]), min(most, high - box[axis][1])
        for other in others:
            if all(_overlap(box[one], other[one]) for one in across) and not _overlap(box[axis], other[axis]):
                blocked.append((other[axis][0] - box[axis][1], other[axis][1] - box[axis][0]))
    return Room(least, most, tuple(sorted(blocked)))


def meets(one: Edges, other: Edges) -> bool:
    """Return whether two boxes stand in each other."""
    return all(_overlap(mine, theirs) for mine, theirs in zip(one, other, strict=True))


def shifted(box: Edges, shift: tuple[float, float]) -> Edges:
    """Return a box moved along x and to the side."""
    (rear, right), (x, y, z) = shift, box
    return (x[0] + rear, x[1] + rear), (y[0] + right, y[1] + right), z


def _overlap(one: Span, other: Span) -> bool:
    return one[0] < other[1] - TOUCH and other[0] < one[1] - TOUCH
