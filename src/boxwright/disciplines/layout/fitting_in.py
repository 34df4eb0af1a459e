"""How the rig's people fit, all of it: in bed, on their feet, on the way in, along the aisles, with their arms."""

from __future__ import annotations

from boxwright.disciplines.layout.aisles import aisle_fits
from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.hanging import lid_fits
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.people import Fit, fits_of
from boxwright.disciplines.layout.reaching import reach_fits
from boxwright.disciplines.layout.sitting import lit_fits, seat_fits
from boxwright.disciplines.layout.terraces import Bed
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.units import Band


def every_fit(
    bodies: tuple[Body, ...],
    beds: tuple[Bed, ...],
    openings: tuple[Closed, ...],
    people: tuple[tuple[str, Person], ...],
    room: Surfaces,
    deck: Band | None,
    floor: float | None = None,
) -> tuple[Fit, ...]:
    """Return how everybody fits, with things as ``bodies`` say, in bed where there are ``beds``.

    ``floor`` is how high the floor is built up by now, where that is not the finished one.
    """
    return (
        *fits_of(bodies, beds, openings, people, room, deck, floor),
        *lid_fits(openings, people, room),
        *(aisle_fits(bodies, beds, openings, room) if people else ()),
        *reach_fits(bodies, beds, openings, people, room),
        *seat_fits(bodies, people, room),
        *lit_fits(bodies, beds, people, room),
    )
