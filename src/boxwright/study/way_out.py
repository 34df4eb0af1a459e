"""The ways out of each bed somebody sleeps on, for whoever judges them: layout measures, safety judges."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, inf, pi

from boxwright.disciplines import layout, safety
from boxwright.disciplines.layout.bodies import Body, Standing
from boxwright.disciplines.layout.result import Stopped, Struck
from boxwright.disciplines.layout.solve import Hull, bodies_of
from boxwright.disciplines.layout.tonight import beds_tonight
from boxwright.disciplines.layout.ways import ways_out
from boxwright.disciplines.safety.parts import Way
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.exchange import Aisle, Clearance
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.units import Band

Rect = tuple[tuple[float, float], tuple[float, float]]
"""Both ends along two axes."""
OUTWARD = {"left": (1, -1.0), "right": (1, 1.0), "front": (0, -1.0), "rear": (0, 1.0), "roof": (2, 1.0)}
"""Along which axis, and which way, one leaves by an opening of a wall."""


def aisles_of(
    section: layout.Section,
    own: safety.Section,
    stood: tuple[Standing, ...],
    openings: tuple[str, ...],
    hull: Hull,
    people: tuple[tuple[str, Person], ...],
    use: str,
) -> tuple[Aisle, ...]:
    """Return the widest way from each bed to each way out that stands; none where nobody sleeps."""
    if use != "sleep" or section.room is None:
        return ()
    there, ways = {of for of, _ in stood}, {one.of for one in own.ways}
    beds = beds_tonight(section.fitted, there, people)
    doors = tuple(one for one in section.closed if one.of in openings and one.of in ways)
    bodies = bodies_of(section, stood, hull, use)
    return ways_out(bodies, beds, doors, section.room) if beds else ()


def left_open(laid: layout.Result, own: safety.Section) -> tuple[Clearance, ...]:
    """Return what a leaf that strikes something leaves of the hole of a way out (m), by what it strikes.

    A leaf that has turned by an angle still covers the hole by as much as it is seen straight on, and one that has
    slid all but so much of it. Of two leaves the other may open, or not. Where it is not sure that it strikes, it may
    leave all of the hole.
    """
    ways = {one.of: one for one in own.ways}
    found: list[Clearance] = []
    stops = [(one, one.hits[0]) for one in laid.struck] + [(one, one.face) for one in laid.stopped]
    for one, by in stops:
        way = ways.get(one.of)
        if way is None or one.what not in {"leaf", "sash"} or one.sure == "grazes":
            continue
        span = way.height if way.is_level else way.width
        if span is None or not span.known:
            continue
        left, most = left_of(one, span.best, "both" in way.turns)
        found.append(Clearance(one.of, by, Band(left, left, most), "night"))
    # Whoever leaves by a hatch stands on the bed under it.
    beds = {f"parts[{one.bed}]" for one in own.sleepers if one.bed} | set(own.beds)
    if own.room is not None:
        for way in own.ways:
            found += _covered(way, [one for one in laid.bodies if not {one.of, one.carried_by} & beds], own.room)
    return tuple(found)


def left_of(one: Struck | Stopped, span: float, is_pair: bool) -> tuple[float, float]:
    """Return the least and the most (m) that a leaf which strikes something, or is stopped, leaves of a span."""
    covered = span * cos(min(one.reached, pi / 2.0)) if one.turns else max(span - one.reached, 0.0)
    most = span - (covered / 2.0 if is_pair else covered) if one.sure == "sure" else span
    return span - covered, most


def _covered(way: Way, bodies: list[Body], room: Surfaces) -> Iterator[Clearance]:
    """Yield what the things before the hole of a way out leave of it: over a hatch, close under it, close outside.

    What stands inside before an upright hole is in the way to it, and is found there.
    """
    if way.wall not in OUTWARD:
        return
    normal, out = OUTWARD[way.wall]
    axes = [axis for axis in range(3) if axis != normal]
    at = (way.place.x, way.place.y, way.place.z)
    if not all(at[axis].known and way.place.size[axis] > 0.0 for axis in axes):
        return
    doubt = [max(at[axis].high - at[axis].best, at[axis].best - at[axis].low) for axis in axes]
    ends = [(at[axis].best - way.place.size[axis] / 2.0, at[axis].best + way.place.size[axis] / 2.0) for axis in axes]
    hole = ends[0], ends[1]
    certain: list[Rect] = []
    possible: list[tuple[Rect, str]] = []
    for body in bodies:
        for block in body.blocks:
            off = body.doubt[normal]
            outward = (
                block.high[normal] if way.wall == "roof" else min(block.low[normal] * out, block.high[normal] * out)
            )
            start, end = _before(way.wall, room)
            more = [body.doubt[axis] + by for axis, by in zip(axes, doubt, strict=True)]
            grown, shrunk = (
                [(block.low[axis] - by, block.high[axis] + by) for axis, by in zip(axes, bys, strict=True)]
                for bys in (more, [-by for by in more])
            )
            is_beside = any(low >= end[1] or high <= end[0] for (low, high), end in zip(grown, hole, strict=True))
            if is_beside or outward + off < start or outward - off >= end:
                continue
            possible.append(((grown[0], grown[1]), body.of))
            is_before = outward - off >= start and outward + off < end and all(low < high for low, high in shrunk)
            if body.is_sure and body.stands == "yes" and is_before:
                certain.append((shrunk[0], shrunk[1]))
    if possible:
        least = widest_left(hole, [rect for rect, _ in possible])
        most = widest_left(hole, certain)
        first = min(possible, key=lambda one: widest_left(hole, [one[0]]))
        yield Clearance(way.of, first[1], Band(least, least, most), "night")


def _before(wall: str, room: Surfaces) -> tuple[float, float]:
    """Return between where outward the top of a thing is over or close under a hatch, or a thing begins outside."""
    reach = LENGTHS["before hole"]
    if wall == "roof":
        return room.ceiling - reach, inf
    face = {"left": -room.left, "right": room.right, "front": -room.front, "rear": room.rear}[wall]
    return face, face + reach


def widest_left(hole: Rect, things: list[Rect]) -> float:
    """Return the lesser side of the free rectangle of a hole that lets most through."""
    (left, right), up = hole
    edges = sorted({left, right, *(min(max(edge, left), right) for along, _ in things for edge in along)})
    best = 0.0
    for index, start in enumerate(edges):
        for end in edges[index + 1 :]:
            if end - start <= best:
                continue
            across = sorted(other for along, other in things if along[0] < end and along[1] > start)
            free, low = 0.0, up[0]
            for begins, ends in across:
                free, low = max(free, min(begins, up[1]) - low), max(low, ends)
            best = max(best, min(end - start, max(free, up[1] - low)))
    return best
