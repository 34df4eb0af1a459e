"""What is at one place of a wall: metal or not, which layers, where a tape is hooked to find it, what is near."""

from __future__ import annotations

from dataclasses import replace
from math import inf, isfinite

from boxwright.disciplines.frame.bands import SMALL, moved
from boxwright.disciplines.frame.layering import buildup_at
from boxwright.disciplines.frame.looked import ComparedHole, Comparison, Near, Reached, Spot, SpotPart
from boxwright.disciplines.frame.members import edges, standing
from boxwright.disciplines.frame.passing import carried
from boxwright.disciplines.frame.result import Buildup, Hole, Intrusion, Member, Passing, Result, There, Wall
from boxwright.disciplines.frame.sourced import LIMITS
from boxwright.disciplines.frame.walls import against, spanned, top_at
from boxwright.exchange import Vector
from boxwright.model.part import Frame
from boxwright.model.place import Surfaces
from boxwright.units import Band

NOT_LOOKED_AT = ("lamp and brake wires, lines and hoses that are not in the file",)
SIDES = ("left", "right", "roof", "floor")


def spot(result: Result, wall: Wall, along: float, up: float, surfaces: Surfaces, parts: tuple[Frame, ...]) -> Spot:
    """Return what is at a place of a wall; ``along`` and ``up`` in m as the wall counts them."""
    mine = standing(result.members, wall.name)
    hole = next((one for one in result.holes if one.wall == wall.name and _is_in(one, along, up)), None)
    lying = [one for one in result.members if one.wall == wall.name and one.runs == "along"]
    metal = next((one for one in (*mine, *lying) if _covers(one, along, up)), None)
    edge = next((one for one in (*mine, *lying) if _may_cover(one, along, up)), None)
    bay = next((one for one in result.bays if one.wall == wall.name and one.low.best <= along <= one.high.best), None)
    is_outside = not (wall.low <= along <= wall.high and wall.foot <= up <= _top(result, wall, along))
    before = [one for one in mine if one.at.best <= along]
    after = [one for one in mine if one.at.best > along]
    there = metal or edge
    backing = next(
        (
            one.name
            for one in result.backings
            if one.wall == wall.name and one.low <= along <= one.high and one.bottom <= up <= one.top
        ),
        "",
    )
    what, name, of = "bay", bay.name if bay is not None else "", bay.of if bay is not None else wall.of
    if is_outside:
        what, name, of = "outside", "", wall.of
    elif hole is not None and hole.there != "later" and hole.is_cut is not False:
        what, name, of = "opening", hole.name, hole.of
    elif metal is not None:
        what, name, of = "member", metal.name, metal.of
    elif edge is not None:
        what, name, of = "edge", edge.name, edge.of
    return Spot(
        wall=wall.name,
        along=along,
        up=up,
        what=what,  # type: ignore[arg-type]
        name=name,
        of=of,
        buildup=_behind(result, wall, bay.name if bay is not None else "", metal is not None),
        before=_near(before[-1], along) if before else None,
        behind=_near(after[0], along) if after else None,
        reached_along=_reached(result, wall, along, surfaces),
        reached_up=_reached_up(wall, up, surfaces),
        backing=backing,
        parts=_parts(wall, along, up, parts, surfaces.bows),
        is_built=there.is_built if there is not None else bool(bay is not None and bay.is_built),
        not_looked_at=NOT_LOOKED_AT,
        intrusions=tuple(one.name for one in result.intrusions if _stands_before(one, wall, along, up)),
    )


def _behind(result: Result, wall: Wall, bay: str, is_member: bool) -> Buildup | None:
    """Return the layers at a spot: in an open bay without those that cover the members only."""
    found = buildup_at(result.buildups, wall.name, bay, is_member)
    if found is None or is_member:
        return found
    return replace(found, layers=tuple(one for one in found.layers if one.where != "members"))


def _top(result: Result, wall: Wall, along: float) -> float:
    """Return how high a wall is at a place: an end wall ends under its bow."""
    rear = result.wall("rear")
    if wall.name not in ("front", "rear") or rear is None:
        return wall.top
    return top_at(wall.roof, (rear.high - rear.low) / 2.0, along)


def _stands_before(intrusion: Intrusion, wall: Wall, along: float, up: float) -> bool:
    if not against(intrusion, wall):
        return False
    low, high, foot, top = spanned(intrusion, wall)
    return low <= along <= high and foot <= up <= top


def _is_in(hole: Hole, along: float, up: float) -> bool:
    return hole.is_placed and hole.low <= along <= hole.high and hole.bottom <= up <= hole.top


def _covers(member: Member, along: float, up: float) -> bool:
    """Return whether a member is certainly there: inside its face even at the doubt of its place, and not cut away."""
    first, last = edges(member)
    across, lengthways = (along, up) if member.runs == "up" else (up, along)
    is_across = first.high <= across <= last.low
    return is_across and any(low - SMALL <= lengthways <= high + SMALL for low, high in member.pieces)


def _may_cover(member: Member, along: float, up: float) -> bool:
    first, last = edges(member)
    if member.runs == "along":
        return first.low <= up <= last.high and member.low - SMALL <= along <= member.high + SMALL
    return first.low <= along <= last.high


def _near(member: Member, along: float) -> Near:
    return Near(member.name, member.kind, moved(member.at, -along), member.is_built)


def _reached(result: Result, wall: Wall, along: float, surfaces: Surfaces) -> tuple[Reached, ...]:
    """Return where a tape can be hooked along a wall, the nearest first: a corner inside, or the jamb of an opening."""
    ends: list[tuple[str, float]] = []
    tip = result.nose is not None
    if wall.name.startswith("nose"):
        ends += [("its corner of the body", wall.low), ("its corner at the tip", wall.high)]
    elif wall.name in SIDES:
        front = ("the corner where the nose begins", 0.0) if tip else ("the finished front wall", surfaces.front)
        ends += [front, ("the finished rear wall", surfaces.rear)]
    elif wall.name == "front" and tip:
        ends += [("the left corner of the tip", wall.low), ("the right corner of the tip", wall.high)]
    else:
        ends += [("the finished left wall", surfaces.left), ("the finished right wall", surfaces.right)]
    for hole in result.holes:
        if hole.wall == wall.name and hole.is_placed and hole.there == "yes":
            words = ("front", "rear") if wall.name in SIDES else ("left", "right")
            ends.append((f"the {words[0]} edge of {hole.name}", hole.low))
            ends.append((f"the {words[1]} edge of {hole.name}", hole.high))
    found = [Reached(words, _exact(along - at)) for words, at in ends if isfinite(at)]
    nearest = sorted(found, key=lambda one: abs(one.distance.best))
    within = [one for one in nearest if abs(one.distance.best) <= LIMITS["reach"]]
    return tuple((within or nearest)[:2])


def _reached_up(wall: Wall, up: float, surfaces: Surfaces) -> Reached | None:
    if wall.name in ("roof", "floor"):
        return Reached("the finished left wall", _exact(up - surfaces.left)) if isfinite(surfaces.left) else None
    return Reached("the finished floor", _exact(up - surfaces.floor)) if isfinite(surfaces.floor) else None


def _exact(value: float) -> Band:
    return Band(value, value, value)


def _parts(wall: Wall, along: float, up: float, parts: tuple[Frame, ...], bows: float) -> tuple[SpotPart, ...]:
    """Return the parts that cover a place: behind the lining, on the wall, or standing before it."""
    axes = {"left": (0, 2, 1), "right": (0, 2, 1), "front": (1, 2, 0), "rear": (1, 2, 0)}.get(wall.name, (0, 1, 2))
    found: list[SpotPart] = []
    for part in parts:
        corners = _corners(part)
        if corners is None or part.kind == "spread":
            continue
        low, high = corners
        if not (low[axes[0]] <= along <= high[axes[0]] and low[axes[1]] <= up <= high[axes[1]]):
            continue
        gap = _gap(wall, low[axes[2]], high[axes[2]], bows)
        if gap <= LIMITS["reach"]:
            how = "behind" if part.kind == "backing" else "on" if gap <= LIMITS["mounted"] else "before"
            there: There = "perhaps" if part.stands == "perhaps" else "yes"
            found.append(SpotPart(part.of, part.name, how, gap, there))  # type: ignore[arg-type]
    return tuple(sorted(found, key=lambda one: one.gap))


def _corners(part: Frame) -> tuple[tuple[float, ...], tuple[float, ...]] | None:
    bands = (part.place.x, part.place.y, part.place.z)
    if not all(band.known for band in bands):
        return None
    sizes = part.place.size
    low = tuple(band.best - size / 2.0 for band, size in zip(bands, sizes, strict=True))
    return low, tuple(band.best + size / 2.0 for band, size in zip(bands, sizes, strict=True))


def _gap(wall: Wall, low: float, high: float, bows: float) -> float:
    """Return how far a part stands off a wall's stud face, into the room."""
    plane = {
        "left": wall.start[1], "right": wall.start[1], "front": wall.start[0], "rear": wall.start[0],
        "roof": bows, "floor": 0.0,
    }.get(wall.name, inf)  # fmt: skip
    if low <= plane <= high:
        return 0.0
    return max(0.0, low - plane) if plane < high else max(0.0, plane - high)


def compared(
    first: tuple[Result, Hole], second: tuple[Result, Hole], bulky: tuple[tuple[str, Vector], ...]
) -> Comparison:
    """Return two openings side by side; ``bulky`` are things still to be carried in, beside those of the table."""
    one, other = _one(*first, bulky), _one(*second, bulky)
    passes = {thing.name for thing in one.passing if thing.passes}
    still = {thing.name for thing in other.passing if thing.passes}
    return Comparison(one, other, tuple(sorted(passes - still)), tuple(sorted(still - passes)))


def _one(result: Result, hole: Hole, bulky: tuple[tuple[str, Vector], ...]) -> ComparedHole:
    wall = result.wall(hole.wall)
    length = wall.high - wall.low if wall is not None else 0.0
    taken = sum(
        max(0.0, one.high - one.low)
        for one in result.holes
        if one.wall == hole.wall and one.is_placed and one.bottom < hole.top and one.top > hole.bottom
    )
    lost = tuple(
        bay.name
        for bay in result.bays
        if bay.wall == hole.wall and bay.low.best < hole.high - SMALL and bay.high.best > hole.low + SMALL
    )
    size = (hole.high - hole.low, hole.top - hole.bottom)
    more: tuple[Passing, ...] = tuple(carried(hole.of, name, thing, size) for name, thing in bulky)
    return ComparedHole(
        name=hole.name,
        wall=hole.wall,
        low=hole.low,
        high=hole.high,
        bottom=hole.bottom,
        top=hole.top,
        wall_left=length - taken,
        bays_lost=lost,
        members_cut=tuple(one.name for one in hole.members_cut if one.overlap.best > SMALL),
        passing=(*hole.passing, *more),
        weight=hole.unit_weight,
        cost=hole.cost,
    )
