"""The ways out of each bed somebody sleeps on, for whoever judges them: layout measures, safety judges."""

from __future__ import annotations

from boxwright.disciplines import layout, safety
from boxwright.disciplines.layout.bodies import Standing
from boxwright.disciplines.layout.free_spot import free_spot
from boxwright.disciplines.layout.hole_left import covered, left_of
from boxwright.disciplines.layout.result import Struck
from boxwright.disciplines.layout.solve import Hull, bodies_of
from boxwright.disciplines.layout.tonight import beds_tonight, up_or_down
from boxwright.disciplines.layout.ways import is_exit, is_room, ways_out
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.exchange import FLOOR, Aisle, Clearance
from boxwright.model.trailer import Person
from boxwright.units import Band, exactly

NONE = exactly(0.0)


def aisles_of(
    section: layout.Section,
    own: safety.Section,
    stood: tuple[Standing, ...],
    openings: tuple[str, ...],
    hull: Hull,
    people: tuple[tuple[str, Person], ...],
    use: str,
) -> tuple[Aisle, ...]:
    """Return the widest way to each way out that stands, from each bed at night; none where nobody is inside.

    Where no bed stands, and at work, it begins on the free floor nearest to the middle of the room.
    """
    room = section.room
    if use not in {"sleep", "work"} or room is None:
        return ()
    there, ways = {of for of, _ in stood}, {one.of for one in own.ways}
    beds = beds_tonight(section.fitted, there, people) if use == "sleep" else ()
    doors = tuple(one for one in section.closed if one.of in openings and one.of in ways)
    bodies = bodies_of(section, stood, hull, use)
    if beds:
        return ways_out(up_or_down(bodies, section.fitted, beds, people), beds, doors, room)
    if not is_room(room):
        return ()
    spot = free_spot(bodies, room)
    if spot is not None:
        return ways_out(bodies, (spot,), doors, room)
    if use == "work":  # where nobody can stand nobody works
        return ()
    return tuple(Aisle(FLOOR, one.of, NONE, NONE, (), (), (), (), ()) for one in doors if is_exit(one))


def left_open(laid: layout.Result, own: safety.Section) -> tuple[Clearance, ...]:
    """Return what a leaf that strikes something leaves of the hole of a way out (m), by what it strikes.

    Beside a leaf that has turned by an angle one gets out between it and the edge it shuts against, and one that has
    slid covers all but so much of the hole. Of two leaves the other may open, or not. Where it is not sure that it
    strikes, it may leave all of the hole; where it is not sure how far it gets, it leaves something between both ends.
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
        is_sure, kind = one.sure == "sure", ("both" in way.turns, "bottom" in way.turns)
        ends = (one.between if isinstance(one, Struck) else None) or (one.reached, one.reached)
        best, _ = left_of(one.reached, one.turns, is_sure, span.best, *kind)
        least, _ = left_of(ends[0], one.turns, is_sure, span.low, *kind)
        _, most = left_of(ends[1], one.turns, is_sure, span.high, *kind)
        found.append(Clearance(one.of, by, Band(best, least, most), "night", "height" if way.is_level else "width"))
    # Whoever leaves by a hatch stands on the bed under it.
    beds = {f"parts[{one.bed}]" for one in own.sleepers if one.bed} | set(own.beds)
    if own.room is not None:
        for way in own.ways:
            set_out = {one.of: one for one in laid.set_out}
            bodies = {**{one.of: one for one in laid.bodies}, **set_out}.values()
            there = [one for one in bodies if not {one.of, one.carried_by} & beds]
            lost = covered(way.wall, way.place, there, own.room, LENGTHS["before hole"])
            found += [Clearance(way.of, lost[0].of, lost[1], "night")] if lost is not None else []
    return tuple(found)
