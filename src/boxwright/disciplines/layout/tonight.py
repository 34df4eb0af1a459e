"""What people sleep on tonight: their own bed, or what stands in for it until it is built."""

from __future__ import annotations

from collections.abc import Container, Iterable

from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.terraces import Bed
from boxwright.model.trailer import Person


def beds_tonight(
    fitted: Iterable[Fitted], there: Container[str], people: tuple[tuple[str, Person], ...]
) -> tuple[Bed, ...]:
    """Return what people sleep on of what is there; who has no bed that stands lies on the first stand-in."""
    standing = tuple(one for one in fitted if one.of in there)
    names = {one.name for one in standing}
    bedless = tuple(name for name, person in people if person.sleeps not in names)
    meanwhile = next((one.of for one in standing if one.is_stand_in), "") if bedless else ""
    found = []
    for one in standing:
        sleepers = tuple(name for name, person in people if person.sleeps == one.name)
        sleepers += bedless if one.of == meanwhile else ()
        if sleepers:
            mattress = one.facet.mattress if one.facet is not None else None
            thick, lies_on = (mattress[2], mattress[:2]) if mattress is not None else (0.0, None)
            found.append(Bed(one.of, one.name, one.asleep or one.place, thick, sleepers, lies_on, one.count))
    return tuple(found)
