"""The ways out of each bed somebody sleeps on, for whoever judges them: layout measures, safety judges."""

from __future__ import annotations

from boxwright.disciplines import layout, safety
from boxwright.disciplines.layout.bodies import Standing
from boxwright.disciplines.layout.solve import Hull, bodies_of
from boxwright.disciplines.layout.tonight import beds_tonight
from boxwright.disciplines.layout.ways import ways_out
from boxwright.exchange import Aisle
from boxwright.model.trailer import Person


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
