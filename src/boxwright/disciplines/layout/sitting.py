"""How people fit where they sit, and what they reach from bed: headroom over each seat, a light for each sleeper."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import hypot, isfinite

from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import LIT_BY, ROOM, SEATS, SHARE
from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.people import UNKNOWN, Fit, free_over, needs, share_of
from boxwright.disciplines.layout.stopping import is_in_room
from boxwright.disciplines.layout.terraces import Bed, bed_rect_of, is_placed, outline_of
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.units import exactly


def seats_of(bodies: Iterable[Body], room: Surfaces) -> list[Body]:
    """Return what is sat on: so named, in the room, and of the height of a seat as it stands in this pose."""
    return [
        one
        for one in bodies
        if _words(one) & SEATS
        and one.is_sure
        and one.blocks
        and not one.is_inside
        and ROOM["step over"] <= one.around.high[2] - room.floor <= ROOM["climb"]
    ]


def seat_fits(bodies: tuple[Body, ...], people: Iterable[tuple[str, Person]], room: Surfaces) -> Iterator[Fit]:
    """Yield how much is free over each seat for each of the people, at the best place of it."""
    people = tuple(people)
    if not (isfinite(room.ceiling) and isfinite(room.floor)):
        return
    for seat in seats_of(bodies, room):
        around = seat.around
        others = [one for one in bodies if seat.of not in (one.of, one.carried_by)]
        side = min(ROOM["sit square"], *around.size[:2])
        over = free_over(others, outline_of(around), around.high[2], side, room.ceiling)
        for name, person in people:
            height = person.height if person.height is not None else UNKNOWN
            yield Fit(f"people[{name}]", name, "seat", seat.of, seat.name, exactly(over.height),
                      needs("sit", height), over.under)  # fmt: skip


def lit_fits(
    bodies: Iterable[Body], beds: Iterable[Bed], people: Iterable[tuple[str, Person]], room: Surfaces
) -> Iterator[Fit]:
    """Yield how far the nearest switch or light is from each sleeper who sits up in bed, and how long the arm is.

    Where nothing of the kind is written nobody asks. ``wants`` is the distance, at least the arm, as of what is reached
    standing.
    """
    lights = [one for one in bodies if _words(one) & LIT_BY and one.is_sure and is_in_room(one, room)]
    heights = dict(people)
    for bed in beds:
        if not is_placed(bed.place) or not lights:
            continue
        for name in bed.sleepers:
            height = heights[name].height
            if height is None or not height.known:
                continue
            arm = share_of(height, SHARE["arm"])
            far, _, nearest = min((_distance(one, bed, height.best), one.of, one) for one in lights)
            wants = exactly(max(far, arm.best))
            yield Fit(f"people[{name}]", name, "lit", nearest.of, nearest.name, arm, wants, bed.of)


def seated_shoulder(height: float) -> float:
    """Return how high the shoulder of somebody who sits is over what they sit on (m)."""
    return (SHARE["sitting"] - 1.0 + SHARE["shoulder"]) * height


def _words(one: Body) -> frozenset[str]:
    return frozenset(one.name.lower().replace("_", "-").split("-"))


def _distance(one: Body, bed: Bed, height: float) -> float:
    """Return how far a thing is at least from the shoulder of somebody who lies or sits anywhere on a bed."""
    shoulder, rect = bed.top + seated_shoulder(height), bed_rect_of(bed)
    return min(
        hypot(_apart(outline_of(block), rect), max((block.low[2] + block.high[2]) / 2.0 - shoulder, 0.0))
        for block in one.blocks
    )


def _apart(one: Rect, other: Rect) -> float:
    along = max(one[0] - other[2], other[0] - one[2], 0.0)
    return hypot(along, max(one[1] - other[3], other[1] - one[3], 0.0))
