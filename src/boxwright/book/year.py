"""The year of a room, worked out only where it is asked for: in the weather of a station beside a place of the rig."""

from __future__ import annotations

import os
import sys
from dataclasses import replace
from importlib.util import find_spec
from math import degrees, hypot
from pathlib import Path

from boxwright import HOW_TO_ADD
from boxwright.book.hot_day import people_of
from boxwright.disciplines.heat.burner import warmth_of
from boxwright.disciplines.heat.burning import Burning, burning_of
from boxwright.disciplines.heat.cold_hours import Warmth
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.weather_ends import UNSAID
from boxwright.disciplines.heat.year import Clock, Year, year_of
from boxwright.disciplines.heat.year_sheet import NAME, TITLE, year_sheet
from boxwright.drawing import Sheet
from boxwright.exchange import Moisture
from boxwright.rig.rig import Rig
from boxwright.rig.weather import WeatherRead, open_weather
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits, exactly

__all__ = ["NAME", "TITLE", "beside", "cache_folder", "still_to_come", "year_sheets", "years_of"]

SHIPPED = ("723170TYA.CSV", "703165TY.csv", "12839.tm2")
"""Typical years that come with pvlib."""
BESIDE = 0.5
"""Degrees from a place within which a station stands for it."""
NO_ROOM = "Nobody wrote how large the room is: write body: of the trailer, and a year can be worked out."
NO_PLACE = "No place of this rig says where it is. Write lat: and lon: under a place."
NO_WEATHER = (
    "No year is at hand for a place of this rig. Save one as EPW, TMY3 or TMY2, and type:"
    " boxwright heat RIG --year FILE"
)
NO_EXTRA = f"The years at hand come with an extra; {HOW_TO_ADD}"


def year_sheets(rig: Rig, slot: Slot | None, units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the sheet of a year at the first place a station is beside; a sheet that says why where there is none."""
    if slot is None or slot.heat is None or slot.air is None or not slot.heat.volume.known:
        return (Sheet(NAME, TITLE, notes=(NO_ROOM,)),)
    places = places_of(rig)
    found = next((one for place in places.values() if (one := beside(place)) is not None), None)
    if found is None or found.hours is None:
        why = NO_PLACE if not places else NO_EXTRA if find_spec("pvlib") is None else NO_WEATHER
        return (Sheet(NAME, TITLE, notes=(why,)),)
    sheet = year_sheet(years_of(slot, found.hours, people_of(rig)), units)
    return (replace(sheet, notes=(*still_to_come(rig, slot), *sheet.notes)),)


def still_to_come(rig: Rig, slot: Slot) -> tuple[str, ...]:
    """Return that a year without a heater is not that of the plan, where the plan has one at a later stage."""
    if slot.heat is None or slot.heat.heaters:
        return ()
    planned = {one.of: one.name for one in rig.heat.heaters}
    marks = [(item.marks, item.of) for item in rig.parts if item.of in planned and item.marks.planned]
    later = sorted((one.stage, of) for one, of in marks if one.stage is not None and one.stage > slot.number)
    if not later:
        return ()
    stage, of = later[0]
    heater = planned[of]
    name = next(one.name for one in rig.stages_in_order if one.index == stage)
    return (f"No heater stands at stage {slot.stage}. The plan has {heater} at stage {name}: ask with --stage {name}.",)


def places_of(rig: Rig) -> dict[str, tuple[float, float]]:
    """Return where each place lies (degrees north and east), of those that say both."""
    east = dict(rig.heat.longitudes)
    return {name: (degrees(north), degrees(east[name])) for name, north in rig.heat.latitudes if name in east}


def years_of(
    slot: Slot, weather: WeatherHours, people: tuple[Moisture, ...], clock: Clock | None = None
) -> tuple[Year, ...]:
    """Return the year of each heater that may run with somebody asleep, or one without.

    What burns gives as much less as the air is thinner at the height the weather's file says, else at any there may be.
    """
    result = slot.heat
    if result is None:
        return ()
    burning = [one for one in result.heaters if one.vented != "in the room"]
    heaters: list[tuple[Warmth | None, Burning]]
    height = exactly(max(weather.altitude, 0.0)) if weather.altitude is not None else UNSAID["height"]
    heaters = [(warmth, burning_of(one, warmth)) for one in burning for warmth in (warmth_of(one, height),)]
    return tuple(
        year_of(result.inside, weather, warmth, burns, people, clock, cache_folder())
        for warmth, burns in heaters or [(None, Burning())]
    )


def beside(place: tuple[float, float]) -> WeatherRead | None:
    """Return the shipped year whose station is beside a place (degrees north and east); None where none is."""
    package = find_spec("pvlib")
    folders = package.submodule_search_locations if package is not None else None
    for name in SHIPPED:
        path = Path(next(iter(folders or ()), "")) / "data" / name
        read = open_weather(path) if path.is_file() else WeatherRead(None, ())
        if read.hours is not None and _apart(read.hours, place) < BESIDE:
            return read
    return None


def _apart(hours: WeatherHours, place: tuple[float, float]) -> float:
    return hypot(degrees(hours.latitude) - place[0], degrees(hours.longitude) - place[1])


def cache_folder() -> str:
    """Return the user's folder for what can be made again; a file there may be deleted at any time."""
    home = str(Path.home())
    kept = {"darwin": f"{home}/Library/Caches", "win32": os.environ.get("LOCALAPPDATA", home)}
    base = os.environ.get("XDG_CACHE_HOME") or kept.get(sys.platform, f"{home}/.cache")
    return f"{base}/boxwright/compiled"
