"""A hot day of the room whole: every way to air or cool it, the cold it asks for, what paint and shade make of it."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from boxwright.disciplines.heat.coating import COLOURS, Coat
from boxwright.disciplines.heat.cold_hours import Inside
from boxwright.disciplines.heat.day import Airing, DayRun, cold_asked, day_of, ways_of
from boxwright.disciplines.heat.hot import HOT, HotDay
from boxwright.disciplines.heat.material import interval
from boxwright.disciplines.heat.shell import Face, times
from boxwright.exchange import Moisture
from boxwright.records import dataclass

What = Literal["white roof", "white all over", "shade"]
WHATS: tuple[What, ...] = ("white roof", "white all over", "shade")
_ROW = COLOURS["white",]
WHITE = Coat("white", interval(*_ROW[:3]), interval(*_ROW[3:]))


@dataclass(frozen=True, slots=True)
class Tried:
    """A change and the days it makes: of the room shut, and aired in the best way there is."""

    what: What
    shut: DayRun
    aired: DayRun


@dataclass(frozen=True, slots=True)
class HotRoom:
    """A hot day of the room: its runs, the one aired best, the cold that would hold it, and what was tried."""

    hot: HotDay
    runs: tuple[DayRun, ...]
    aired: DayRun
    asked: DayRun
    tried: tuple[Tried, ...]


def hot_room(inside: Inside, hot: HotDay, airing: Airing, people: tuple[Moisture, ...]) -> HotRoom:
    """Return a hot day of the room with everything that was tried, each change run as a day of its own."""
    runs = tuple(day_of(inside, hot, airing, people, way) for way in ways_of(airing))
    # Nobody leaves or sleeps with the doors open; where nothing can be opened, shut is the best there is.
    aired = min((one for one in runs if one.way not in ("doors", "cooled")), key=lambda one: one.warmest.best)
    tried = []
    for what in WHATS:
        changed = _changed(inside, what)
        if changed is not None:
            days = [day_of(changed, hot, airing, people, way) for way in ("shut", aired.way)]
            tried.append(Tried(what, *days))
    return HotRoom(hot, runs, aired, cold_asked(inside, hot, airing, people), tuple(tried))


def _changed(inside: Inside, what: What) -> Inside | None:
    """Return the room with a change of its skin; None where there is nothing to change."""
    faces = inside.shell.faces
    there = [one for one in faces if _is_roof(one) or (what == "white all over" and _is_side(one))]
    if what != "shade":
        there = [one for one in there if one.coat.colour != WHITE.colour]
    # A white roof alone is told; "all over" only where walls change as well.
    if not there or (what == "white all over" and not any(_is_side(one) for one in there)):
        return None
    new = tuple(_with(one, what) if one in there else one for one in faces)
    return replace(inside, shell=replace(inside.shell, faces=new))


def _is_roof(face: Face) -> bool:
    return face.outward[2] > 0.0 and not face.is_window


def _is_side(face: Face) -> bool:
    return face.outward[2] == 0.0 and not face.is_window


def _with(face: Face, what: What) -> Face:
    return _shaded(face) if what == "shade" else replace(face, coat=WHITE)


def _shaded(face: Face) -> Face:
    """Return a face below a shade: little sun, and no sky to cool by."""
    coat = Coat(face.coat.colour, times(face.coat.absorptance, HOT["under a shade"]), face.coat.emittance)
    return replace(face, coat=coat, sky=0.0)
