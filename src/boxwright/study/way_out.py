"""The ways out of each bed somebody sleeps on, for whoever judges them: layout measures, safety judges."""

from __future__ import annotations

from collections.abc import Container

from boxwright.disciplines import layout, safety
from boxwright.disciplines.layout.bodies import Standing
from boxwright.disciplines.layout.solve import Hull, bodies_of
from boxwright.disciplines.layout.terraces import Bed
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
    beds = beds_tonight(section, own, there, people)
    doors = tuple(one for one in section.closed if one.of in openings and one.of in ways)
    bodies = bodies_of(section, stood, hull, use)
    return ways_out(bodies, beds, doors, section.room) if beds else ()


def beds_tonight(
    section: layout.Section, own: safety.Section, there: Container[str], people: tuple[tuple[str, Person], ...]
) -> tuple[Bed, ...]:
    """Return what people sleep on of what is there; who has no bed that stands lies on the first stand-in."""
    fitted = tuple(one for one in section.fitted if one.of in there)
    names = {one.name for one in fitted}
    bedless = tuple(name for name, person in people if person.sleeps not in names)
    meanwhile = next((one.of for one in fitted if one.of in own.beds), "") if bedless else ""
    found = []
    for one in fitted:
        sleepers = tuple(name for name, person in people if person.sleeps == one.name)
        sleepers += bedless if one.of == meanwhile else ()
        if sleepers:
            mattress = one.facet.mattress if one.facet is not None else None
            thick, lies_on = (mattress[2], mattress[:2]) if mattress is not None else (0.0, None)
            found.append(Bed(one.of, one.name, one.asleep or one.place, thick, sleepers, lies_on))
    return tuple(found)
