"""The layers of a wall as solids: foam in each bay, strips over the members, liner over all, each with its holes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.members import sides, standing
from boxwright.disciplines.frame.result import Buildup, LayerPiece, Result
from boxwright.disciplines.frame.solid_plane import Plane, Stretch, depth_of, stuff_of
from boxwright.disciplines.frame.sourced import density_of
from boxwright.drawing.solid import Prism, Solid
from boxwright.records import dataclass

NO_STUDS = "where the members of this wall stand is not known; drawn without them"


@dataclass(frozen=True, slots=True)
class Region:
    """A stretch along a wall whose layers are written of it alone, from middle to middle of its members."""

    low: float
    high: float
    buildup: Buildup


@dataclass(frozen=True, slots=True)
class Laid:
    """A layer of a build-up: from where to where it lies, outward of the stud face (m)."""

    piece: LayerPiece
    inner: float
    outer: float


def layer_solids(plane: Plane, frame: Result, holes: tuple[Prism, ...]) -> Iterator[Solid]:
    """Yield every layer of a wall whose thickness is known; what a bay says of its own is there in place of it."""
    wall = plane.wall
    own = next((one for one in frame.buildups if one.wall == wall.name and one.place == "bay" and not one.bay), None)
    if own is None:
        return
    depth = depth_of(frame.members, wall.name)
    regions = tuple(_regions(frame, wall.name))
    for laid in stacked(own, depth):
        free = [(wall.low, wall.high)]
        for region in regions:
            if all(one.of != laid.piece.of for one in region.buildup.layers):
                free = [part for low, high in free for part in _without(low, high, region)]
        yield from _solid(plane, frame, laid, free, holes)
    of_wall = {one.of for one in own.layers}
    for region in regions:
        for laid in stacked(region.buildup, depth):
            if laid.piece.of not in of_wall:
                yield from _solid(plane, frame, laid, [(region.low, region.high)], holes)


def stacked(buildup: Buildup, depth: float) -> list[Laid]:
    """Return where each layer lies: from the skin inwards between the members, the others from their face inwards.

    What lies between the members and is thicker than they are deep carries the others farther into the room.
    """
    found: list[Laid] = []
    at = depth
    for piece in buildup.layers:
        if piece.where == "bays" and piece.thick is not None:
            found.append(Laid(piece, at - piece.thick.best, at))
            at -= piece.thick.best
    at = min(at, 0.0) if found else 0.0
    for piece in buildup.layers:
        if piece.where != "bays" and piece.thick is not None:
            found.append(Laid(piece, at - piece.thick.best, at))
            at -= piece.thick.best
    return found


def reach_of(frame: Result, wall: str) -> float:
    """Return how far the layers of a wall stand into the room from the stud face (m)."""
    depth = depth_of(frame.members, wall)
    return max((-laid.inner for one in frame.buildups if one.wall == wall for laid in stacked(one, depth)), default=0.0)


def _solid(
    plane: Plane, frame: Result, laid: Laid, free: list[tuple[float, float]], holes: tuple[Prism, ...]
) -> Iterator[Solid]:
    where = laid.piece.where
    rects = list(_rects(plane, frame, where))
    clipped = [
        Stretch(max(rect.low, low), min(rect.high, high), rect.foot, rect.top)
        for rect in rects
        for low, high in free
        if min(rect.high, high) - max(rect.low, low) > SMALL
    ]
    pieces = [plane.plate(rect, laid.inner, laid.outer) for rect in clipped if rect.top - rect.foot > SMALL]
    pieces = [one for one in pieces if one.outline and one.deep > SMALL]
    density = density_of(laid.piece.material) if laid.piece.material else None
    is_bare = where == "bays" and not standing(frame.members, plane.wall.name)
    if pieces:
        yield Solid(
            of=laid.piece.of,
            name=f"{laid.piece.name} {plane.wall.name}",
            stuff=stuff_of(laid.piece.material),
            pieces=tuple(pieces),
            cut=holes,
            outward=plane.out,
            density=(density.best, density.low, density.high) if density is not None else None,
            taken=NO_STUDS if is_bare else "",
        )


def _rects(plane: Plane, frame: Result, where: str) -> Iterator[Stretch]:
    """Yield the stretches of a wall that a layer covers: all of it, between its members, or their faces only."""
    wall = plane.wall
    members = standing(frame.members, wall.name)
    if where == "members":
        for member in members:
            low, high = sides(member)
            for foot, top in member.pieces:
                yield Stretch(max(low, wall.low), min(high, wall.high), foot, top)
        return
    if where == "all" or not members:
        yield Stretch(wall.low, wall.high, wall.foot, wall.top)
        return
    edges = [(wall.low, wall.low), *(sides(one) for one in members), (wall.high, wall.high)]
    for (_, low), (high, _) in pairwise(edges):
        if high - low > SMALL:
            yield Stretch(low, high, wall.foot, wall.top)


def _regions(frame: Result, wall: str) -> Iterator[Region]:
    """Yield the bays whose layers are written of them alone, as far as their two members are known."""
    places = {str(one.number): one.at.best for one in standing(frame.members, wall) if one.number is not None}
    for buildup in frame.buildups:
        if buildup.wall == wall and buildup.bay:
            first, _, last = buildup.bay.partition(" ")[2].partition("-")
            if first in places and last in places:
                yield Region(places[first], places[last], buildup)


def _without(low: float, high: float, region: Region) -> list[tuple[float, float]]:
    left = ((low, min(high, region.low)), (max(low, region.high), high))
    return [(start, end) for start, end in left if end - start > SMALL]
