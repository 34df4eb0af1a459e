"""Who sleeps, as three boxes on the bed: legs, trunk and head. Only drawn: what a body needs is asked elsewhere.

The measures are shares of the written height; nobody was measured.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.body_sizes import SHARE
from boxwright.disciplines.layout.terraces import Bed, is_placed
from boxwright.exchange import Vector

THICK = {"legs": 0.08, "trunk": 0.13, "head": 0.12}
"""How thick each lies, as a share of the height (from memory)."""
HEAD_WIDE = 0.09
"""How wide a head is, as a share of the height (from memory)."""


def lying(bed: Bed, heights: dict[str, float]) -> Iterator[tuple[str, tuple[Block, ...]]]:
    """Yield each sleeper of a bed who is no longer than it, side by side on it, the head to the front or the left.

    Of beds of which only one has a place only its sleeper is known to lie there.
    """
    if not is_placed(bed.place) or not bed.place.z.known:
        return
    axis = 0 if bed.place.size[0] >= bed.place.size[1] else 1
    names = bed.sleepers[: 1 if bed.count > 1 else None]
    strip = bed.place.size[1 - axis] / len(names) if names else 0.0
    middle = (bed.place.x.best, bed.place.y.best)
    for number, name in enumerate(names):
        height = heights.get(name, 0.0)
        if not 0.0 < height <= bed.place.size[axis] or not isfinite(height):
            continue
        side = middle[1 - axis] - bed.place.size[1 - axis] / 2.0 + strip * (number + 0.5)
        yield name, tuple(_pieces(middle[axis] - height / 2.0, side, bed.top, height, axis))


def _pieces(crown: float, side: float, level: float, height: float, axis: int) -> Iterator[Block]:
    """Yield head, trunk and legs of somebody on the back, from the crown on along an axis."""
    ends = (1.0, SHARE["chin"], SHARE["hip"], 0.0)
    wide = (HEAD_WIDE, SHARE["shoulder width"], SHARE["hip width"])
    for number, name in enumerate(("head", "trunk", "legs")):
        low, high = ((1.0 - share) * height + crown for share in ends[number : number + 2])
        half = wide[number] * height / 2.0
        corners = ((low, side - half), (high, side + half))
        first, last = (one if axis == 0 else (one[1], one[0]) for one in corners)
        begin: Vector = (first[0], first[1], level)
        yield Block(begin, (last[0], last[1], level + THICK[name] * height))
