"""The hot day of the room, worked out only where it is asked for: what stands, its air by day, and the sheet of it."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines import air
from boxwright.disciplines.air.vents import summed
from boxwright.disciplines.heat.cooling import cold_of
from boxwright.disciplines.heat.day import Airing
from boxwright.disciplines.heat.day_sheet import NAME, TITLE, day_sheet
from boxwright.disciplines.heat.hot import HotDay, hot_days
from boxwright.disciplines.heat.hot_room import HotRoom, hot_room
from boxwright.drawing import Sheet
from boxwright.exchange import Moisture
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits

__all__ = ["NAME", "TITLE", "hot_day_sheets", "hot_rooms"]

NO_ROOM = "Nobody wrote how large the room is: write body: of the trailer, and a hot day can be worked out."
NO_DAY = "No place says how hot it gets. Write hottest_design: 97 F, or july: {high: 89 F}, under a place."


def hot_day_sheets(rig: Rig, slot: Slot | None, units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the sheet of the hot days of every place; a sheet that says why where there is none."""
    if slot is None or slot.heat is None or not slot.heat.volume.known:
        return (Sheet(NAME, TITLE, notes=(NO_ROOM,)),)
    rooms = hot_rooms(slot, hot_days(rig.heat), people_of(rig))
    return (day_sheet(rooms, units),) if rooms else (Sheet(NAME, TITLE, notes=(NO_DAY,)),)


def hot_rooms(slot: Slot, days: tuple[HotDay, ...], people: tuple[Moisture, ...]) -> tuple[HotRoom, ...]:
    """Return the hot days of the room as it stands in a slot."""
    warm, aired = slot.heat, slot.air
    if warm is None or aired is None or not warm.volume.known:
        return ()
    # A door that leads out is shut by night and may stand open by day.
    leaves = tuple(one for one in aired.vents if not one.stays_open)
    lids = tuple(one for one in leaves if one.planned.kind != "door")
    airing = Airing(
        replace(aired.airflow, opened=summed(lids)),
        replace(aired.airflow, opened=summed(leaves)),
        cold_of(warm.coolers),
    )
    inside = replace(warm.inside, airflow=airing.windows)
    return tuple(hot_room(inside, one, airing, people) for one in days)


def people_of(rig: Rig) -> tuple[Moisture, ...]:
    """Return the heat and the water of everybody who sleeps in it, whatever the load state."""
    sleepers = sum(1 for _, one in rig.people if one.sleeps)
    return air.offers(rig.air, (), (), 1.0, sleepers, "sleep").moisture
