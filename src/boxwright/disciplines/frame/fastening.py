"""Hinges and screws against the members and backings of their wall: what each point catches, and where it would."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from math import ceil, inf, isfinite
from typing import Literal

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.bands import SMALL, UNKNOWN, above_nothing, known, together
from boxwright.disciplines.frame.holes import wall_name
from boxwright.disciplines.frame.layering import buildup_at
from boxwright.disciplines.frame.members import Planned, has_metal_at, sides, standing
from boxwright.disciplines.frame.parts import PlannedBacking
from boxwright.disciplines.frame.result import (
    Backing,
    Buildup,
    Fastening,
    Intrusion,
    LayerPiece,
    Member,
    Point,
    ScrewReach,
    There,
    Wall,
)
from boxwright.disciplines.frame.shifting import is_backed, moved_of, slides_of
from boxwright.disciplines.frame.sourced import ASSUMED, LIMITS, thread_pitch
from boxwright.disciplines.frame.walls import against, spanned
from boxwright.exchange import Fixing
from boxwright.units import Band, exactly

MEMBERS = {"stud": "stud", "bow": "bow", "frame": "", "cross-member": "cross-member", "crossmember": "cross-member"}
"""Words for members after ``into``, in the singular, and the kind they mean; any kind where empty."""


def backings_of(planned: tuple[PlannedBacking, ...], walls: tuple[Wall, ...]) -> tuple[Backing, ...]:
    """Return every strip or board behind a lining on the wall it lies nearest to; one without a place is left out."""
    found: list[Backing] = []
    for one in planned:
        corners = _corners(one)
        if corners is None:
            continue
        low, high = corners
        wall = _nearest_wall(low, high, walls, inf)
        if wall is None:
            continue
        axis, up = _axes(wall)
        across = min(range(3), key=lambda index: high[index] - low[index])
        found.append(
            Backing(
                one.of,
                one.name,
                wall.name,
                low[axis],
                high[axis],
                low[up],
                high[up],
                high[across] - low[across],
                one.backs,
                "later",
            )
        )
    return tuple(found)


def _corners(one: PlannedBacking) -> tuple[tuple[float, ...], tuple[float, ...]] | None:
    bands = (one.place.x, one.place.y, one.place.z)
    if not all(band.known and isfinite(band.low) for band in bands):
        return None
    sizes = one.place.size
    low = tuple(band.best - size / 2.0 for band, size in zip(bands, sizes, strict=True))
    return low, tuple(band.best + size / 2.0 for band, size in zip(bands, sizes, strict=True))


def _axes(wall: Wall) -> tuple[int, int]:
    """Return which of x, y, z runs along a wall and which up it."""
    if wall.name in ("roof", "floor"):
        return 0, 1
    return (0, 2) if wall.name in ("left", "right") else (1, 2)


def _nearest_wall(low: tuple[float, ...], high: tuple[float, ...], walls: tuple[Wall, ...], most: float) -> Wall | None:
    """Return the wall a thing hangs on: the nearest upright one, within ``most``."""
    away = [(_away(low, high, wall), wall) for wall in walls if wall.name in ("left", "right", "front", "rear")]
    near = min(away, key=lambda pair: pair[0], default=None)
    return near[1] if near is not None and near[0] <= most else None


def _away(low: tuple[float, ...], high: tuple[float, ...], wall: Wall) -> float:
    axis = 1 if wall.name in ("left", "right") else 0
    plane = wall.start[1] if axis == 1 else wall.start[0]
    if low[axis] <= plane <= high[axis]:
        return 0.0
    return min(abs(low[axis] - plane), abs(high[axis] - plane))


def fastenings_of(
    fixings: tuple[Fixing, ...],
    walls: tuple[Wall, ...],
    members: tuple[Member, ...],
    backings: tuple[Backing, ...],
    rows: tuple[Planned | None, ...],
) -> tuple[Fastening, ...]:
    """Return every hinge and every screwed part against its wall; its reach through the lining comes with the slot."""
    found: list[Fastening] = []
    for fixing in fixings:
        wall = _wall_of(fixing, walls)
        if wall is not None:
            found.append(_fastening(fixing, walls, wall, members, backings, rows[walls.index(wall)]))
    return tuple(found)


def blocked(one: Fastening, walls: tuple[Wall, ...], intrusions: tuple[Intrusion, ...]) -> Fastening:
    """Return a fastening with those of its places that a wheel box or a housing stands before, seen from inside."""
    wall = next(wall for wall in walls if wall.name == one.wall)
    found: list[tuple[float, str]] = []
    for intrusion in intrusions if not one.is_outside else ():
        if not against(intrusion, wall):
            continue
        low, high, foot, top = spanned(intrusion, wall)
        found += [
            (point.at, intrusion.name)
            for point in one.points
            if low < point.at < high and (point.up is None or foot < point.up < top)
        ]
    return replace(one, blocked=tuple(found))


def unwalled(fixings: tuple[Fixing, ...], walls: tuple[Wall, ...]) -> tuple[str, ...]:
    """Return the hinges and screws of which nobody can say on which wall they are."""
    return tuple(f"{one.of}.{one.what}" for one in fixings if _wall_of(one, walls) is None)


def _wall_of(fixing: Fixing, walls: tuple[Wall, ...]) -> Wall | None:
    kind = _member_kind(fixing.into)
    name = wall_name(fixing.wall) or {"bow": "roof", "cross-member": "floor"}.get(kind or "") or wall_name(fixing.into)
    if name is not None:
        return next((one for one in walls if one.name == name), None)
    if not all(isfinite(one) for one in (*fixing.low, *fixing.high)):
        return None
    return _nearest_wall(fixing.low, fixing.high, walls, LIMITS["mounted"])


def _member_kind(into: str) -> str | None:
    """Return the kind of member a word means, an empty text for any, None where it is the name of a backing."""
    word = into.strip().lower()
    return "" if not word or wall_name(word) is not None else MEMBERS.get(word.removesuffix("s"))


def _fastening(
    fixing: Fixing,
    walls: tuple[Wall, ...],
    wall: Wall,
    members: tuple[Member, ...],
    backings: tuple[Backing, ...],
    row: Planned | None,
) -> Fastening:
    """Return a hinge or a set of screws against the members and the backings of its wall."""
    axis, up_axis = _axes(wall)
    shank = above_nothing(fixing.shank) or ASSUMED["shank"]
    ends = [method.edge_distance(one, LIMITS["edge_diameters"]) for one in (shank.best, shank.low, shank.high)]
    distance = Band(ends[0], ends[1], ends[2], True, "interval", above_nothing(fixing.shank) is None)
    kind = _member_kind(fixing.into)
    up = _up(fixing, wall, up_axis)
    mine = _metal_at(standing(members, wall.name), kind, up, distance)
    behind = [
        one
        for one in backings
        if one.wall == wall.name and (one.name == fixing.into.strip() or (not fixing.into and one.backs == fixing.part))
    ]
    zero = wall.low if wall.name in ("front", "rear") else 0.0
    doubts = fixing.doubts or (0.0,) * len(fixing.points)
    points = tuple(
        _point(zero + at, up, mine, behind, distance, within) for at, within in zip(fixing.points, doubts, strict=True)
    )
    low, high = (-inf, inf) if wall.name.startswith("nose") else (fixing.low[axis], fixing.high[axis])
    span = high - low if isfinite(low) and isfinite(high) else 0.0
    bare = [point for point in points if not point.catches]
    spare = next(
        (one for one in backings if one.wall == wall.name and one.backs == fixing.part and bare
         and all(is_backed(one, point.at, up, distance) for point in bare)),
        None,
    )  # fmt: skip
    caught = sum(low + distance.best - SMALL <= one.at.best <= high - distance.best + SMALL for one in mine)
    fewest, most = _at_any_phase(span, row, distance.best)
    return Fastening(
        of=fixing.of,
        name=fixing.part,
        part=fixing.part,
        what=fixing.what,
        wall=wall.name,
        edge_distance=distance,
        shank=above_nothing(fixing.shank),
        points=points,
        moved=moved_of(points, mine, behind, distance, (low, high)),
        slides=slides_of(points, mine, behind, distance, wall),
        span=span,
        caught=caught,
        caught_low=fewest,
        caught_high=most,
        backing=next((one.name for one in behind), spare.name if spare is not None else ""),
        reach=None,
        there="later",
        asks=_asked(fixing, behind, (low, high), kind is not None, bool(points)),
        holds_in=next((one.thick for one in behind), None),
        is_outside=_is_outside(fixing, wall, walls),
    )


def _metal_at(members: tuple[Member, ...], kind: str | None, up: float | None, distance: Band) -> list[Member]:
    """Return the members of a kind that no opening has taken away at a height."""
    meant = [one for one in members if kind is not None and kind in ("", one.kind, "stud")]
    return [one for one in meant if has_metal_at(one, up, distance.best)]


def _is_outside(fixing: Fixing, wall: Wall, walls: tuple[Wall, ...]) -> bool:
    """Return whether a part hangs on the outside of its wall: its middle lies beyond the stud face."""
    middle = [(low + high) / 2.0 for low, high in zip(fixing.low, fixing.high, strict=True)]
    if wall.name == "roof":
        return middle[2] > max(one.top for one in walls if one.name not in ("roof", "floor"))
    if wall.name == "floor":
        return middle[2] < 0.0
    return (middle[0] - wall.start[0]) * wall.inward[0] + (middle[1] - wall.start[1]) * wall.inward[1] < -SMALL


def _up(fixing: Fixing, wall: Wall, axis: int) -> float | None:
    """Return the height of a line of fasteners: the underside of a hinged leaf, the middle of what is screwed on."""
    low, high = fixing.low[axis], fixing.high[axis]
    if not (isfinite(low) and isfinite(high)):
        return None
    return low if fixing.what == "hinge" else (low + high) / 2.0


def _asked(fixing: Fixing, behind: list[Backing], ends: tuple[float, float], knows_into: bool, is_placed: bool) -> str:
    """Return what must be written before anything can be said: empty where a backing lies behind the whole part."""
    if not knows_into and not behind:
        return "into"
    if is_placed:
        return ""
    if behind and all(isfinite(one) for one in ends):
        covers = any(one.low - SMALL <= ends[0] and ends[1] <= one.high + SMALL for one in behind)
        return "" if covers else "backing too short"
    return "at"


def _point(
    at: float,
    up: float | None,
    members: Iterable[Member],
    backings: list[Backing],
    distance: Band,
    within: float,
) -> Point:
    """Return what a fastener meets: a member within its edge distance, else a backing, else nothing.

    ``within`` is how far its place may be off as it is written.
    """
    listed = list(members)
    nearest = min(listed, key=lambda one: abs(one.at.best - at), default=None)
    room, off, is_certain = -inf, inf, True
    if nearest is not None:
        off = at - nearest.at.best
        first, last = sides(nearest)
        room = min(at - first, last - at) - distance.best
        doubt = max(nearest.at.high - nearest.at.best, nearest.at.best - nearest.at.low)
        is_certain = abs(room) > doubt + within
    catches = nearest.name if nearest is not None and room >= -SMALL else ""
    if not catches:
        for one in backings:
            if is_backed(one, at, up, distance):
                room = min(at - one.low, one.high - at) - distance.best
                return Point(at, up, one.name, nearest.name if nearest is not None else "", off, room, room >= within)
    return Point(at, up, catches, nearest.name if nearest is not None else "", off, room, is_certain)


def _at_any_phase(span: float, row: Planned | None, edge: float) -> tuple[int, int]:
    """Return the fewest and the most members a span can catch wherever its row begins."""
    if row is None or span <= 0.0:
        return 0, 0
    fewest = int(method.fewest_in_span(span, row.every, edge))
    usable = max(span - 2.0 * edge, 0.0) / row.every
    return fewest, max(fewest, ceil(usable + SMALL)) if usable > 0.0 else fewest


def reach_of(
    fastening: Fastening, written: Band | None, wall: Wall, buildups: tuple[Buildup, ...], depth: Band | None
) -> ScrewReach | None:
    """Return how long a screw must be to hold and may be at most; None where nothing is written of its screws.

    Through the lining it must hold in the tube's wall, or go through the backing it is meant for, and stay off the
    skin. From outside it goes through the skin, and stays behind the finished face.
    """
    over = buildup_at(buildups, wall.name, "", True)
    if over is None or (fastening.shank is None and written is None):
        return None
    through: tuple[LayerPiece, ...] = tuple(one for one in over.layers if one.where != "bays")
    gauge = known(wall.tube.gauge) or UNKNOWN
    threads = _threads(fastening.shank or ASSUMED["shank"])
    if fastening.is_outside:
        least, most, through = together((wall.skin or UNKNOWN, gauge, threads)), over.finished, ()
    else:
        grip = (exactly(fastening.holds_in),) if fastening.holds_in is not None else (gauge, threads)
        least = together((over.liner, *grip))
        clear = LIMITS["skin_clear"]
        deep = together((over.liner, depth if depth is not None else UNKNOWN))
        most = Band(deep.best - clear, deep.low - clear, deep.high - clear, deep.known, deep.spread, deep.assumed)
    return ScrewReach(least, most, written, through, _reaches(least, most, known(written)))


def _threads(shank: Band) -> Band:
    best, low, high = (LIMITS["threads"] * thread_pitch(one) for one in (shank.best, shank.low, shank.high))
    return Band(best, low, high, True, "interval" if high > low else "exact", True)


def _reaches(
    least: Band, most: Band, written: Band | None
) -> Literal["fits", "too short", "too long", "no length suits", "unknown"]:
    if least.known and most.known and least.best > most.best:
        return "no length suits"
    if written is None:
        return "unknown"
    if least.known and written.best < least.best - SMALL:
        return "too short"
    if most.known and written.best > most.best + SMALL:
        return "too long"
    return "fits" if least.known and most.known else "unknown"


def there_in(of: str, standing_paths: tuple[tuple[str, str], ...]) -> There:
    """Return whether a part stands in a slot, by what was found standing there."""
    stands = next((how for path, how in standing_paths if path == of), None)
    return "later" if stands is None else "perhaps" if stands == "perhaps" else "yes"
