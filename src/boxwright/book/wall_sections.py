"""Sections of the walls with their lines of temperature: worked out only where one is asked for by name."""

from __future__ import annotations

from boxwright import HOW_TO_ADD
from boxwright.disciplines.heat.across_field import NoField, solved
from boxwright.disciplines.heat.section_sheet import bare_sheet, section_name, section_sheet, section_shown
from boxwright.drawing import Sheet
from boxwright.exchange import Layup
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.study.warmth import layups_of
from boxwright.units import HeaderUnits

WALLS = ("left", "right", "front", "rear", "nose-left", "nose-right", "roof", "floor")
NAMES = tuple(f"section-{wall}" for wall in WALLS)
NO_FIELD = f"No field of temperature can be worked out without an extra; {HOW_TO_ADD}"


def wall_section(name: str, rig: Rig, slot: Slot | None, units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the section of a wall as it stands; a sheet that says why where there is none."""
    layup = plane_named(name.removeprefix("section-"), rig, slot)
    if layup is None:
        return ()
    across = section_shown(layup)
    if across is None:
        return (bare_sheet(layup, units),)
    try:
        return (section_sheet(layup, solved(across), units),)
    except NoField:
        return (Sheet(section_name(layup), f"Section: {layup.wall}", notes=(NO_FIELD,)),)


def plane_named(wall: str, rig: Rig, slot: Slot | None) -> Layup | None:
    """Return a plane of the box as it stands in a slot."""
    if slot is None or slot.frame is None:
        return None
    return next((one for one in layups_of(slot.frame, rig.frame) if one.wall == wall and not one.bay), None)
