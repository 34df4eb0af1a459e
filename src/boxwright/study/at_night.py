"""The ways out with people asleep inside, for whoever draws the night from a slot of another use."""

from __future__ import annotations

from boxwright.disciplines import layout, safety, structure
from boxwright.disciplines.frame.shell import shell
from boxwright.disciplines.layout.solve import Hull
from boxwright.disciplines.safety.result import Exit
from boxwright.exchange import Box
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
    return slot.safety.exits if slot.use == "sleep" else _asleep(rig, slot.safety, standing, walls_of(rig, slot.box))


def walls_of(rig: Rig, box: Box) -> Hull:
    """Return the shell round the room with all that lies in its walls, as whatever moves in them meets it."""
    bare = shell(rig.frame, rig.trailer, structure.offers(rig.structure.fastened).fixings)
    return hull_of(bare, box, rig.frame.runs, rig.frame.unrouted)


def _asleep(rig: Rig, known: safety.Result, standing: Standing, hull: Hull) -> tuple[Exit, ...]:
    """Return the ways out as safety judges them of a night."""
    there, doors = stood_of(standing.frames), openings_of(standing.openings)
    laid = layout.solve(rig.layout, there, heavy_of(standing.frames, rig.layout), doors, hull, standing.inside, "sleep")
    found = safety.solve(
        rig.safety,
        kept_standing(standing.frames, rig.safety),
        openings_standing(standing.openings),
        (),
        (),
        (),
        (),
        aisles_of(rig.layout, rig.safety, there, doors, hull, standing.inside, "sleep"),
        left_open(laid, rig.safety),
        tuple(person.name for person in standing.people),
        "sleep",
        rig.header.countries,
        known.judged_on,
    )
    return found.exits
