"""Sockets, switches and lamps let into a wall: is it deep enough behind its finished face, and is no member there."""

from __future__ import annotations

from math import isfinite

from boxwright.disciplines.frame.bands import SMALL, UNKNOWN, known, less
from boxwright.disciplines.frame.holes import wall_name
from boxwright.disciplines.frame.layering import buildup_at
from boxwright.disciplines.frame.members import edges, standing
from boxwright.disciplines.frame.parts import PlannedRecess
from boxwright.disciplines.frame.result import Bay, Buildup, Member, Recess, There, Wall
from boxwright.units import Band


def recesses_of(
    planned: tuple[PlannedRecess, ...], walls: tuple[Wall, ...], members: tuple[Member, ...]
) -> tuple[Recess, ...]:
    """Return every recessed part on its wall with the members in its way; the wall's depth comes with the slot."""
    found: list[Recess] = []
    for one in planned:
        name = wall_name(one.wall)
        wall = next((wall for wall in walls if wall.name == name), None)
        if wall is None:
            continue
        axis = 0 if wall.name in ("left", "right", "roof", "floor") else 1
        middle, half = (one.place.x, one.place.y)[axis], one.place.size[axis] / 2.0
        at = one.at if one.at and axis == 0 else (middle.best,) if middle.known and isfinite(middle.best) else ()
        hits = tuple(
            (member.name, place)
            for place in at
            for member in standing(members, wall.name)
            if edges(member)[0].best < place + half - SMALL and edges(member)[1].best > place - half + SMALL
        )
        found.append(Recess(one.of, one.name, wall.name, at, one.depth, UNKNOWN, hits, "unknown", "later"))
    return tuple(found)


def without_wall(planned: tuple[PlannedRecess, ...], walls: tuple[Wall, ...]) -> tuple[str, ...]:
    """Return the recessed parts of which nobody wrote the wall."""
    names = {wall.name for wall in walls}
    return tuple(f"{one.of}.recess" for one in planned if wall_name(one.wall) not in names)


def with_room(recess: Recess, wall: Wall, buildups: tuple[Buildup, ...], bays: tuple[Bay, ...]) -> tuple[Band, str]:
    """Return how deep the finished wall is behind its face, to the skin, at the shallowest place of a recess."""
    rooms: list[Band] = []
    for place in recess.at:
        bay = next((one.name for one in bays if one.wall == wall.name and one.low.best <= place <= one.high.best), "")
        built = buildup_at(buildups, wall.name, bay, False)
        if built is not None and built.finished.known and wall.skin is not None:
            rooms.append(less(built.finished, wall.skin))
    if not rooms or len(rooms) < len(recess.at):
        return UNKNOWN, "unknown"
    room = min(rooms, key=lambda one: one.best)
    depth = known(recess.depth)
    if depth is None:
        return room, "unknown"
    if depth.best > room.best + SMALL:
        return room, "no"
    return room, "yes" if depth.high <= room.low + SMALL else "unknown"


def in_slot(recess: Recess, wall: Wall, buildups: tuple[Buildup, ...], bays: tuple[Bay, ...], there: There) -> Recess:
    """Return a recessed part as it is in one slot: whether it stands, and whether the wall is deep enough."""
    room, fits = with_room(recess, wall, buildups, bays)
    return Recess(
        recess.of, recess.name, recess.wall, recess.at, recess.depth, room, recess.hits,
        "yes" if fits == "yes" else "no" if fits == "no" else "unknown", there,
    )  # fmt: skip
