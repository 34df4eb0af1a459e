"""The ways out of each bed somebody sleeps on, for whoever judges them: layout measures, safety judges."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi

from boxwright.disciplines import layout, safety
from boxwright.disciplines.layout.bodies import Body, Standing
from boxwright.disciplines.layout.solve import Hull, bodies_of
from boxwright.disciplines.layout.tonight import beds_tonight
from boxwright.disciplines.layout.ways import ways_out
from boxwright.disciplines.safety.parts import Way
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.exchange import Aisle, Clearance
from boxwright.model.trailer import Person
from boxwright.units import Band


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

    A leaf that has turned by an angle still covers the hole by as much as it is seen straight on. Of two leaves one may
    open. Where it is not sure that it strikes, it may leave all of the hole.
    """
    ways = {one.of: one for one in own.ways}
    found: list[Clearance] = []
    for one in laid.struck:
        way = ways.get(one.of)
        if way is None or not one.turns or one.what != "leaf" or one.sure == "grazes":
            continue
        is_level = any(word in way.turns for word in ("top", "bottom"))
        span = way.height if is_level else way.width
        if span is None or not span.known:
            continue
        leaf = span.best / 2.0 if "both" in way.turns else span.best
        left = span.best - leaf * cos(min(one.reached, pi / 2.0))
        most = left if one.sure == "sure" else span.best
        found.append(Clearance(one.of, one.hits[0], Band(left, left, most), "night"))
    room = own.room
    if room is not None:
        for way in own.ways:
            if way.wall == "roof":
                found += _over_or_under(way, laid.bodies, room.ceiling - LENGTHS["under hatch"])
    return tuple(found)


def _over_or_under(way: Way, bodies: tuple[Body, ...], lowest: float) -> Iterator[Clearance]:
    """Yield what each thing over a hatch, or close under it, leaves of its hole: the wider of the strips beside it."""
    middle, size = (way.place.x, way.place.y), way.place.size[:2]
    if not all(one.known for one in middle):
        return
    hole = [(one.best - span / 2.0, one.best + span / 2.0) for one, span in zip(middle, size, strict=True)]
    for body in bodies:
        for block in body.blocks:
            sides = list(zip(hole, block.low[:2], block.high[:2], strict=True))
            if block.high[2] <= lowest or any(high <= ends[0] or low >= ends[1] for ends, low, high in sides):
                continue
            left = max(max(low - ends[0], ends[1] - high, 0.0) for ends, low, high in sides)
            whole = min(ends[1] - ends[0] for ends in hole)
            most = left if body.is_sure and body.stands == "yes" else max(left, whole)
            yield Clearance(way.of, body.of, Band(left, left, most), "night")
