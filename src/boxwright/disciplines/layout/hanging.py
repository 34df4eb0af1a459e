"""How people stand under a lid of the roof that opens down into the room."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import isfinite, sin

from boxwright.disciplines.layout.leaves import FLAT, leaf_of
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.people import UNKNOWN, Fit, needs
from boxwright.disciplines.layout.sweeps import QUARTER, Turn
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.units import Band


def lid_fits(openings: Iterable[Closed], people: Iterable[tuple[str, Person]], room: Surfaces) -> Iterator[Fit]:
    """Yield how everybody stands under each lid of the roof that hangs down into the room while it is open."""
    people = tuple(people)
    for one in openings:
        swing = one.facet.swing if one.facet is not None else None
        if swing is None or one.wall not in FLAT or one.wall == "floor" or not isfinite(room.floor):
            continue
        lid = leaf_of(one, swing, None, room)
        if lid is None or lid.outside:
            continue
        ways = [way for way in lid.ways if isinstance(way, Turn)]
        hangs = [max(way.radius * sin(min(turn, QUARTER)) for way in ways)
                 for turn in (ways[0].turn, ways[0].at_most)]  # fmt: skip
        best, low = (room.ceiling - room.floor - deep for deep in hangs)
        for name, person in people:
            height = person.height if person.height is not None else UNKNOWN
            at = f"the room where {one.name} hangs open"
            yield Fit(f"people[{name}]", name, "stand", one.of, at, Band(best, low, best), needs("stand", height))
