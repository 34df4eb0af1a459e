"""What a person can reach from floor, bed, seat and door: switches and panels, the extinguisher, what is stored high.

The arm turns about the shoulder, which is bent down to what hangs lower. It is the shortest whose height is written.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import product
from math import hypot, inf, isfinite, sqrt
from typing import NamedTuple

from boxwright.disciplines.layout.aisles import is_walked_through
from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.body_sizes import REACHED, ROOM, SHARE
from boxwright.disciplines.layout.meeting import TOUCH
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import Rect, reach, within
from boxwright.disciplines.layout.people import Fit, outline_of_hole, share_of, walled
from boxwright.disciplines.layout.sitting import seated_shoulder, seats_of
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.terraces import Bed, bed_rect_of, is_placed, outline_of
from boxwright.disciplines.layout.ways import is_room
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.units import exactly

FINE = 0.005
"""How finely (m) a distance is sought that is too far to reach."""
ASLANT = sqrt(0.5)
SPACED = 0.1
"""How far apart (m) the places are from which it is tried whether an arm goes past what stands before a thing."""
FARTHEST = 1.5
"""How far (m) from a thing these are sought: farther than anybody reaches over what is no higher than a shoulder."""


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
        if closed is None:
            closed = list(_in_the_way(bodies, room))
        of = f"people[{name}]"
        if before := _before(one, target, at + room.floor, bodies, arm):
            rests = [*(bed_rect_of(bed) for bed in beds if is_placed(bed.place)), *(rect for rect, _ in seats), *doors]
            over = _reached_over(target, at, before, [*walled(floor), *closed], rests, shoulder, room.floor)
            if arm < over.far < inf:
                has, wants = share_of(height, SHARE["arm"]), exactly(over.far)
                yield Fit(of, name, "reach", one.of, one.name, has, wants, over.of)
                continue
        if any(_is_by_bed(target, at + room.floor, bed, height.best) for bed in beds):
            continue
        if any(_is_by(target, at + room.floor, rect, top, height.best) for rect, top in seats):
            continue
        up = max(at - shoulder, 0.0)
        if up < arm and any(within(one, door) for one in _near(target, sqrt(arm * arm - up * up)) for door in doors):
            continue
        far = _distance(closed, floor, target, arm, up)
        if not isfinite(far):
            return  # there is nowhere to stand at all, which is told of standing
        yield Fit(of, name, "reach", one.of, one.name, share_of(height, SHARE["arm"]), exactly(far))


class Before(NamedTuple):
    """A box that may stand between an arm and what it reaches for: of what, seen from above, and its top (m)."""

    of: str
    rect: Rect
    top: float


class Over(NamedTuple):
    """How far an arm goes to a thing (m), and the path of what it goes over, empty where it goes straight there."""

    far: float
    of: str


def _before(one: Body, target: Rect, level: float, bodies: Iterable[Body], arm: float) -> list[Before]:
    """Return what stands about a thing that is used, within an arm of it and as high as it: no arm goes through it."""
    if _how(one) != "used":
        return []
    x0, y0, x1, y1 = target
    around, play = (x0 - arm, y0 - arm, x1 + arm, y1 + arm), LENGTHS["play"]
    core = x0 + TOUCH, y0 + TOUCH, x1 - TOUCH, y1 - TOUCH
    return [
        Before(other.of, outline_of(block), block.high[2])
        for other in bodies
        if other.of not in (one.of, one.carried_by) and other.carried_by != one.of and not other.is_inside
        for block in other.blocks
        if block.low[2] + play < level < block.high[2] - play
        and within(outline_of(block), around) is not None
        and within(outline_of(block), core) is None
    ]


def _reached_over(
    target: Rect, at: float, before: list[Before], walls: list[Rect], rests: list[Rect], shoulder: float, floor: float
) -> Over:
    """Return the shortest way of an arm to a thing, past or over what stands before it.

    It is looked for from free floor all about, and from beds, seats and doors as though one stood there. The shoulder
    bends down to the top of what the arm goes over.
    """
    (x0, y0, x1, y1), far, side = target, FARTHEST, ROOM["stand square"]
    close = [(one[axis] - side / 2.0, one[axis + 2] + side / 2.0) for one in walls for axis in (0, 1)]
    close += [(x0, x1), (y0, y1)]
    around = _grid((x0 - far, y0 - far, x1 + far, y1 + far), close[::2], close[1::2])
    free = [spot for spot in around if _is_free(spot, walls, side)]
    free += [spot for rest in rests for spot in _grid(rest)]
    ways = (_way_of_arm(spot, target, at + floor, before, shoulder + floor) for spot in free)
    return min(ways, key=lambda one: one.far, default=Over(inf, ""))


Ends = list[tuple[float, float]]


def _grid(rect: Rect, close_x: Ends | None = None, close_y: Ends | None = None) -> Iterator[tuple[float, float]]:
    """Yield places all over a rectangle, and those in it that are close beside something along either axis."""
    x0, y0, x1, y1 = rect
    return product(_marks(x0, x1, close_x or []), _marks(y0, y1, close_y or []))


def _marks(low: float, high: float, close: Ends) -> list[float]:
    count = max(round((high - low) / SPACED), 1)
    marks = {low + (high - low) * number / count for number in range(count + 1)}
    return sorted(marks | {one for pair in close for one in pair if low < one < high})


def _is_free(spot: tuple[float, float], walls: Iterable[Rect], side: float) -> bool:
    (x, y), half = spot, side / 2.0 - TOUCH
    stood = (x - half, y - half, x + half, y + half)
    return not any(within(wall, stood) is not None for wall in walls)


def _way_of_arm(spot: tuple[float, float], target: Rect, at: float, before: list[Before], shoulder: float) -> Over:
    """Return how far an arm goes from a place to a thing: straight, or over what is between and down behind it."""
    x, y = spot
    end = min(max(x, target[0]), target[2]), min(max(y, target[1]), target[3])
    level = hypot(x - end[0], y - end[1])
    crossed = [one for one in before if crossed_at(spot, end, one.rect) is not None]
    if not crossed:
        return Over(hypot(level, max(at - shoulder, 0.0)), "")
    highest = max(crossed, key=lambda one: (one.top, one.of))
    behind = min(_apart((*end, *end), one.rect) for one in crossed)
    up = max(highest.top - shoulder, 0.0)
    return Over(hypot(max(level - behind, 0.0), up) + hypot(behind, highest.top - at), highest.of)


def crossed_at(start: tuple[float, float], end: tuple[float, float], rect: Rect) -> float | None:
    """Return where a straight line goes into a rectangle by more than a touch, as a share of it; None for nowhere."""
    first, last = 0.0, 1.0
    for axis in (0, 1):
        low, high, by = rect[axis] + TOUCH, rect[axis + 2] - TOUCH, end[axis] - start[axis]
        if abs(by) < TOUCH:
            if not low < start[axis] < high:
                return None
            continue
        ends = sorted(((low - start[axis]) / by, (high - start[axis]) / by))
        first, last = max(first, ends[0]), min(last, ends[1])
    return first if first < last else None


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
