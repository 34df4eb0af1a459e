"""The ways out with people asleep inside, for whoever draws the night from a slot of another use."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines import layout, safety, structure
from boxwright.disciplines.frame.shell import shell
from boxwright.disciplines.layout.free_spot import free_spot
from boxwright.disciplines.layout.solve import Hull, bodies_of
from boxwright.disciplines.layout.tonight import beds_tonight
from boxwright.disciplines.layout.ways import is_room, ways_out
from boxwright.disciplines.safety.result import Exit
from boxwright.disciplines.safety.solve import is_shut
from boxwright.exchange import Aisle
from boxwright.rig.rig import Rig
from boxwright.study.hull import heavy_of, hull_of, openings_of, stood_of
from boxwright.study.slots import Slot
from boxwright.study.standing import Standing
from boxwright.study.way_out import aisles_of, left_open
from boxwright.study.worked import kept_standing, openings_standing


def exits_at_night(rig: Rig, slot: Slot, standing: Standing) -> tuple[Exit, ...]:
    """Return the ways out with people asleep inside, whatever the slot is of; ``standing`` is what stands then.

    Where nobody's bed stands they are those of somebody on the floor: what shuts a way shuts it for him too.
    """
    if slot.safety is None or slot.frame is None or slot.box is None:
        return ()
    bare = shell(rig.frame, rig.trailer, structure.offers(rig.structure.fastened).fixings)
    hull = hull_of(bare, slot.box)
    found = slot.safety.exits if slot.use == "sleep" else _asleep(rig, slot.safety, standing, hull)
    if beds_tonight(rig.layout.fitted, {frame.of for frame in standing.frames}, rig.people):
        return found
    from_floor = floor_aisles(rig, standing, hull)
    if from_floor is None:
        return found
    return tuple(_from_floor(one, [way for way in from_floor if way.leads_to == one.way.of]) for one in found)


def floor_aisles(rig: Rig, standing: Standing, hull: Hull) -> tuple[Aisle, ...] | None:
    """Return the ways out of somebody on the floor; none where there is no free floor, None where no room is known."""
    room = rig.layout.room
    if room is None or not is_room(room):
        return None
    bodies = bodies_of(rig.layout, stood_of(standing.frames), hull, "sleep")
    spot = free_spot(bodies, room)
    doors = openings_of(standing.openings)
    exits = tuple(one for one in rig.layout.closed if one.of in doors)
    return ways_out(bodies, (spot,), exits, room) if spot is not None else ()


def _from_floor(one: Exit, ways: list[Aisle]) -> Exit:
    """Return a way out with what shuts the way to it, where every way from the floor is too narrow for anybody."""
    if any(not is_shut(way) for way in ways):
        return one
    return replace(one, way_shut_by=tuple(dict.fromkeys(of for way in ways[:1] for of in way.blocked_by)))


def _asleep(rig: Rig, known: safety.Result, standing: Standing, hull: Hull) -> tuple[Exit, ...]:
    """Return the ways out as safety judges them of a night."""
    there, doors = stood_of(standing.frames), openings_of(standing.openings)
    laid = layout.solve(rig.layout, there, heavy_of(standing.frames, rig.layout), doors, hull, rig.people, "sleep")
    found = safety.solve(
        rig.safety,
        kept_standing(standing.frames, rig.safety),
        openings_standing(standing.openings),
        (),
        (),
        (),
        (),
        aisles_of(rig.layout, rig.safety, there, doors, hull, rig.people, "sleep"),
        left_open(laid, rig.safety),
        tuple(person.name for person in standing.people),
        "sleep",
        rig.header.countries,
        known.judged_on,
    )
    return found.exits
