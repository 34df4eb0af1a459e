"""Where fasteners that miss would catch: each moved to metal beside it, or the whole pattern slid as one."""

from __future__ import annotations

from bisect import bisect_right
from math import inf

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.members import sides
from boxwright.disciplines.frame.result import Backing, Member, Point, Slid, Wall
from boxwright.disciplines.frame.sourced import LIMITS
from boxwright.units import Band


def is_backed(backing: Backing, at: float, up: float | None, distance: Band) -> bool:
    """Return whether a backing lies behind a place, its edge distance in from its ends."""
    is_high = up is None or backing.bottom - SMALL <= up <= backing.top + SMALL
    return is_high and min(at - backing.low, backing.high - at) >= distance.best - SMALL


def moved_of(
    points: tuple[Point, ...],
    members: list[Member],
    backings: list[Backing],
    distance: Band,
    ends: tuple[float, float],
) -> tuple[float, ...]:
    """Return, point by point, where a fastener would catch; itself where it does, or where nothing free is near.

    A member is met in its middle, by one fastener, within the ends of the part. As many as can catch do, none goes
    farther than a pattern bears, they keep their order, and together they go the shortest way.
    """
    taken = {one.catches for one in points}
    free = [
        one.at.best
        for one in members
        if one.name not in taken and not one.is_contested and ends[0] - SMALL <= one.at.best <= ends[1] + SMALL
        and sides(one)[1] - sides(one)[0] >= 2.0 * distance.best - SMALL
    ]  # fmt: skip
    order = sorted(range(len(points)), key=lambda index: points[index].at)
    # By the last place that is used: how many stay without metal, how far the others go, and where all of them are.
    ways: dict[float, tuple[int, float, tuple[float, ...]]] = {-inf: (0, 0.0, ())}
    for index in order:
        point = points[index]
        places = () if point.catches else _places(point, free, backings, distance)
        longer: dict[float, tuple[int, float, tuple[float, ...]]] = {}
        for last, (stay, gone, used) in ways.items():
            found = [(max(last, point.at), (stay + (not point.catches), gone, (*used, point.at)))]
            if point.at < last - SMALL:
                found = []
            found += [
                (place, (stay, gone + abs(place - point.at), (*used, place)))
                for place in places
                if place > last + SMALL
            ]
            for place, way in found:
                longer[place] = min(longer.get(place, way), way)
        ways = longer
    best = min(ways.values())
    by_index = dict(zip(order, best[2], strict=True))
    return tuple(by_index[index] for index in range(len(points)))


def _places(point: Point, free: list[float], backings: list[Backing], distance: Band) -> list[float]:
    """Return where a fastener may be moved to: the middle of a free member, or along a backing, not too far."""
    found = list(free)
    for one in backings:
        if one.high - one.low >= 2.0 * distance.best:
            place = min(max(point.at, one.low + distance.best), one.high - distance.best)
            if is_backed(one, place, point.up, distance):
                found.append(place)
    return [place for place in found if abs(place - point.at) <= LIMITS["point_moves"] + SMALL]


def slides_of(
    points: tuple[Point, ...], members: list[Member], backings: list[Backing], distance: Band, wall: Wall
) -> tuple[Slid, ...]:
    """Return the smallest slides of the whole pattern, forward and rearward, with which most of it catches.

    It slides no farther than one fastener alone would be moved.

    Counting changes only where a point enters or leaves a member, so the best slide is one that brings a point to an
    edge of a member, or to its middle.
    """
    if not points or all(point.catches for point in points):
        return ()
    metal = _metal(members, distance)
    places = [place for low, high in metal for place in (low, high, (low + high) / 2.0)]
    ends = min(point.at for point in points), max(point.at for point in points)
    moves = {place - point.at for point in points for place in places}
    moves = {
        by
        for by in moves
        if abs(by) <= LIMITS["point_moves"] + SMALL and wall.low <= ends[0] + by and ends[1] + by <= wall.high
    }
    starts = [low for low, _ in metal]
    counted = [
        Slid(by, sum(_is_caught(point, point.at + by, metal, starts, backings, distance) for point in points))
        for by in sorted(moves, key=abs)
    ]
    now = sum(bool(point.catches) for point in points)
    found: list[Slid] = []
    for way in (-1.0, 1.0):
        mine = [one for one in counted if one.by * way > SMALL and one.catches > now]
        if mine:
            best = max(one.catches for one in mine)
            found.append(next(one for one in mine if one.catches == best))
    return tuple(found)


def _metal(members: list[Member], distance: Band) -> list[tuple[float, float]]:
    """Return where along a wall a fastener's middle is far enough from both edges of a member, in order.

    A member that two tapes put in two places is no metal to slide to.
    """
    found = []
    for member in members:
        if member.is_contested:
            continue
        first, last = sides(member)
        low, high = first + distance.best, last - distance.best
        if low <= high + SMALL:
            found.append((low, high))
    return sorted(found)


def _is_caught(
    point: Point,
    at: float,
    metal: list[tuple[float, float]],
    starts: list[float],
    backings: list[Backing],
    distance: Band,
) -> bool:
    """Return whether a point would catch at another place of its wall."""
    index = bisect_right(starts, at + SMALL) - 1
    if index >= 0 and at <= metal[index][1] + SMALL:
        return True
    return any(is_backed(one, at, point.up, distance) for one in backings)
