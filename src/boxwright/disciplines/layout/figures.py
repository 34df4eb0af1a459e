"""People drawn to scale: standing, sitting up and lying, seen from the side and from the end.

A figure is an outline and a head. Its measures are shares of the height (`body_sizes`); its curves are only drawn.
"""

from __future__ import annotations

from itertools import pairwise
from math import pi

from boxwright.disciplines.layout.body_sizes import SHARE
from boxwright.drawing import Arc, Mark, Shape
from boxwright.drawing.mark import Point

HEAD = 0.065
"""Half the height of a head, as a share of the height: what is left over the chin, halved."""
SHOULDER, HIP, KNEE, CHIN = SHARE["shoulder"], SHARE["hip"], SHARE["knee"], SHARE["chin"]
WIDE, HIPS = SHARE["shoulder width"] / 2.0, SHARE["hip width"] / 2.0
STANDING_FRONT: tuple[Point, ...] = (
    (0.03, CHIN), (0.035, 0.845), (WIDE * 0.85, SHOULDER + 0.01), (WIDE, SHOULDER - 0.03), (WIDE + 0.025, 0.62),
    (WIDE + 0.03, 0.42), (WIDE, 0.40), (WIDE - 0.01, 0.62), (HIPS + 0.01, 0.72), (HIPS - 0.012, 0.63),
    (HIPS, HIP), (0.075, KNEE), (0.055, 0.05), (0.08, 0.0), (0.015, 0.0), (0.015, KNEE), (0.0, HIP - 0.05),
)  # fmt: skip
"""The right half of somebody who stands, seen from the front; the other half is its mirror."""
STANDING_SIDE: tuple[Point, ...] = (
    (-0.02, CHIN), (0.03, 0.86), (0.065, 0.75), (0.06, 0.62), (0.065, 0.47), (0.05, KNEE), (0.03, 0.06),
    (0.095, 0.02), (0.095, 0.0), (-0.05, 0.0), (-0.035, 0.06), (-0.06, 0.2), (-0.035, KNEE), (-0.075, HIP - 0.02),
    (-0.05, 0.63), (-0.075, 0.76), (-0.05, 0.84),
)  # fmt: skip
"""Somebody who stands, seen from the side, looking to the right."""
SITTING_FRONT: tuple[Point, ...] = (
    (0.03, 0.39), (0.035, 0.365), (WIDE * 0.85, 0.345), (WIDE, 0.31), (WIDE + 0.02, 0.08), (WIDE - 0.02, 0.06),
    (HIPS, 0.2), (HIPS + 0.02, 0.0),
)  # fmt: skip


def standing_front(at: Point, height: float, of: str) -> list[Mark]:
    """Return somebody who stands, seen from the front; ``at`` is between the feet."""
    return _figure(_mirrored(STANDING_FRONT), (0.0, 1.0 - HEAD), at, height, 1.0, of)


def standing_side(at: Point, height: float, of: str, faces: float = 1.0) -> list[Mark]:
    """Return somebody who stands, seen from the side, looking to the right (1) or to the left (-1)."""
    return _figure(STANDING_SIDE, (0.0, 1.0 - HEAD), at, height, faces, of)


def sitting_front(at: Point, height: float, of: str) -> list[Mark]:
    """Return somebody who sits up in bed, seen from the feet."""
    return _figure(_mirrored(SITTING_FRONT), (0.0, SHARE["sitting"] - HEAD), at, height, 1.0, of)


def lying_side(at: Point, height: float, of: str, faces: float = 1.0) -> list[Mark]:
    """Return somebody who lies on the back, seen from the side; the feet are at ``at``, the head towards ``faces``."""
    turned = tuple((up, 0.08 + across) for across, up in STANDING_SIDE)
    return _figure(turned, (1.0 - HEAD, 0.08), at, height, faces, of)


def lying_end(at: Point, height: float, of: str) -> list[Mark]:
    """Return somebody who lies on the back, seen from the head; ``at`` is on the mattress, in the middle."""
    thick = 0.11
    round_ends = (
        (WIDE, 0.0), (WIDE + 0.01, thick * 0.5), (WIDE * 0.75, thick), (-WIDE * 0.75, thick),
        (-WIDE - 0.01, thick * 0.5), (-WIDE, 0.0),
    )  # fmt: skip
    return _figure(round_ends, (0.0, HEAD + 0.02), at, height, 1.0, of)


def _mirrored(half: tuple[Point, ...]) -> tuple[Point, ...]:
    return (*half, *((-x, y) for x, y in reversed(half)))


def _rounded(outline: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return an outline with its corners cut off, a quarter of each edge."""
    found: list[Point] = []
    for (x, y), (to_x, to_y) in pairwise((*outline, outline[0])):
        found += [(x + (to_x - x) * share, y + (to_y - y) * share) for share in (0.25, 0.75)]
    return tuple(found)


def _figure(outline: tuple[Point, ...], head: Point, at: Point, height: float, faces: float, of: str) -> list[Mark]:
    def put(point: Point) -> Point:
        return at[0] + faces * point[0] * height, at[1] + point[1] * height

    return [
        Shape(tuple(put(point) for point in _rounded(_rounded(outline))), "cut", of),
        Arc(put(head), HEAD * height, 0.0, 2.0 * pi, "cut", of),
    ]
