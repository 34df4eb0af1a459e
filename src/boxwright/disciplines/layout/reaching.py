"""What a person can reach from floor, bed, seat and door: switches and panels, the extinguisher, what is stored high.

The arm turns about the shoulder, which is bent down to what hangs lower. It is the shortest whose height is written.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import hypot, inf, isfinite, sqrt
from typing import NamedTuple

from boxwright.disciplines.layout.aisles import is_walked_through
from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import REACHED, ROOM, SHARE
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import Rect, reach, within
from boxwright.disciplines.layout.people import Fit, outline_of_hole, share_of, walled
from boxwright.disciplines.layout.sitting import seated_shoulder, seats_of
from boxwright.disciplines.layout.terraces import Bed, bed_rect_of, is_placed, outline_of
from boxwright.disciplines.layout.ways import is_room
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.units import exactly

FINE = 0.005
"""How finely (m) a distance is sought that is too far to reach."""
ASLANT = sqrt(0.5)


def reach_fits(
    bodies: tuple[Body, ...],
    beds: Iterable[Bed],
    openings: Iterable[Closed],
    people: Iterable[tuple[str, Person]],
    room: Surfaces,
) -> Iterator[Fit]:
    """Yield how far each thing that is reached for is from the nearest shoulder, and how long an arm is.

    ``has`` is the arm and ``wants`` the distance: what is too far is wanted longer than it is had.
    Within reach no more than the arm is told.
    """
    known = [(one.height, name) for name, one in people if one.height is not None and one.height.known]
    if not known or not is_room(room):
        return
    height, name = min(known, key=lambda one: one[0].best)
    arm, shoulder = SHARE["arm"] * height.best, SHARE["shoulder"] * height.best
    floor = (room.front, room.left, room.rear, room.right)
    closed: list[Rect] | None = None
    seats = [(outline_of(seat.around), seat.around.high[2]) for seat in seats_of(bodies, room)]
    doors = tuple(outline_of_hole(one) for one in openings if is_walked_through(one, room))
    for one in bodies:
        goal = _goal(one, room, shoulder)
        if goal is None:
            continue
        target, at = goal
        if any(_is_by_bed(target, at + room.floor, bed, height.best) for bed in beds):
            continue
        if any(_is_by(target, at + room.floor, rect, top, height.best) for rect, top in seats):
            continue
        if closed is None:
            closed = list(_in_the_way(bodies, room))
        up = max(at - shoulder, 0.0)
        if up < arm and any(within(one, door) for one in _near(target, sqrt(arm * arm - up * up)) for door in doors):
            continue
        far = _distance(closed, floor, target, arm, up)
        if not isfinite(far):
            return  # there is nowhere to stand at all, which is told of standing
        of = f"people[{name}]"
        yield Fit(of, name, "reach", one.of, one.name, share_of(height, SHARE["arm"]), exactly(far))


class Reached(NamedTuple):
    """A thing that is reached for: how high over the floor (m), how far from where one stands nearest, and from a bed.

    ``standing`` is infinite where one can stand nowhere; ``sitting`` where there is no bed.
    """

    of: str
    name: str
    at: float
    standing: float
    sitting: float


def reached_for(bodies: tuple[Body, ...], bed: Bed | None, height: float, room: Surfaces) -> Iterator[Reached]:
    """Yield what is reached for, with how far it is level from where one stands nearest, and from a bed."""
    floor = (room.front, room.left, room.rear, room.right)
    walls = [*walled(floor), *_in_the_way(bodies, room)]
    for one in bodies:
        goal = _goal(one, room, SHARE["shoulder"] * height)
        if goal is None:
            continue
        target, at = goal
        low, high = 0.0, max(floor[2] - floor[0], floor[3] - floor[1])
        far = high if _stands(walls, floor, target, high) else inf
        while isfinite(far) and high - low > FINE:
            middle = (low + high) / 2.0
            low, high = (low, middle) if _stands(walls, floor, target, middle) else (middle, high)
            far = high
        yield Reached(one.of, one.name, at, far, _apart(target, bed_rect_of(bed)) if bed is not None else inf)


def _apart(one: Rect, other: Rect) -> float:
    """Return how far two rectangles are from each other; 0 where they meet."""
    gaps = (max(one[axis] - other[axis + 2], other[axis] - one[axis + 2], 0.0) for axis in (0, 1))
    return hypot(*gaps)


def _goal(one: Body, room: Surfaces, shoulder: float) -> tuple[Rect, float] | None:
    """Return what of a thing is reached for, seen from above, and how high over the floor; None where it is not."""
    how = _how(one)
    if not how or not one.is_sure or not one.blocks:
        return None
    box = one.around
    low, high = box.low[2] - room.floor, box.high[2] - room.floor
    target = within(outline_of(box), (room.front, room.left, room.rear, room.right))
    if target is None or high <= 0.0 or low >= room.ceiling - room.floor or (how == "stored" and low <= shoulder):
        return None
    return target, low if how == "stored" else (low + high) / 2.0


def _how(one: Body) -> str:
    """Return how a thing is reached for, by the words of its name; empty where it is not, or goes with another."""
    if one.is_inside:
        return ""
    words = one.name.lower().replace("_", "-").split("-")
    return next((REACHED[word] for word in words if word in REACHED), "stored" if one.kind == "cargo" else "")


def _in_the_way(bodies: Iterable[Body], room: Surfaces) -> Iterator[Rect]:
    """Yield what one cannot stand in: what is between a step and a stooping head over the floor."""
    low, high = room.floor + ROOM["step over"], min(room.floor + ROOM["stoop"], room.ceiling)
    for one in bodies:
        if not one.is_inside:
            for block in one.blocks:
                if block.high[2] > low and block.low[2] < high:
                    yield outline_of(block)


def _distance(closed: list[Rect], floor: Rect, target: Rect, arm: float, up: float) -> float:
    """Return how far a thing is from a shoulder; of what is within reach no more than the arm is told."""
    walls = [*walled(floor), *closed]
    if up < arm and _stands(walls, floor, target, sqrt(arm * arm - up * up)):
        return arm
    low, high = 0.0, max(floor[2] - floor[0], floor[3] - floor[1])
    if not _stands(walls, floor, target, high):
        return inf
    while high - low > FINE:
        middle = (low + high) / 2.0
        low, high = (low, middle) if _stands(walls, floor, target, middle) else (middle, high)
    return max(sqrt(high * high + up * up), arm)


def _is_by_bed(target: Rect, at: float, bed: Bed, height: float) -> bool:
    """Return whether somebody who lies or sits in bed can reach a place at some height over the deck."""
    if not is_placed(bed.place):
        return False
    return _is_by(target, at, bed_rect_of(bed), bed.top, height)


def _is_by(target: Rect, at: float, rect: Rect, top: float, height: float) -> bool:
    """Return whether somebody who sits on a rectangle that high reaches a place at some height over the deck."""
    arm = SHARE["arm"] * height
    up = max(at - top - seated_shoulder(height), 0.0)
    if up >= arm:
        return False
    return any(within(one, rect) is not None for one in _near(target, sqrt(arm * arm - up * up)))


def _near(target: Rect, far: float) -> tuple[Rect, ...]:
    """Return rectangles that fill nearly all that is no farther than so from another one, and nothing beyond it."""
    x0, y0, x1, y1 = target
    aslant = far * ASLANT
    return (
        (x0 - far, y0, x1 + far, y1),
        (x0, y0 - far, x1, y1 + far),
        (x0 - aslant, y0 - aslant, x1 + aslant, y1 + aslant),
    )


def _stands(walls: list[Rect], floor: Rect, target: Rect, far: float) -> bool:
    """Return whether one can stand somewhere on the floor no farther than so from a thing, seen from above."""
    for one in _near(target, far):
        spot = within(one, floor)
        if spot is not None and reach(walls, spot, (spot,), ROOM["stand square"])[0]:
            return True
    return False
