"""What the drawings of people in the room are made from: one pose with its things, ways, people and words."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines.layout.bodies import Block, Body, Pose
from boxwright.disciplines.layout.drawn import Planned
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.people import Fit
from boxwright.disciplines.layout.sweeps import Mover
from boxwright.disciplines.layout.terraces import Bed
from boxwright.exchange import Aisle, Vector
from boxwright.model.place import Surfaces
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits, show

DATUM = "the front stud face; across from the middle"
POSES: dict[Pose, str] = {"travel": "on the road", "night": "at night", "work": "at work"}


@dataclass(frozen=True, slots=True)
class WayOut:
    """An opening one may leave by: its number on the card at the door, and how it opens, in words.

    ``warning`` is why nobody may count on it, in the words of the card; empty where it is a way out.
    """

    number: int
    opening: Closed
    opens: str
    warning: str = ""


@dataclass(frozen=True, slots=True)
class Posed:
    """A pose to be drawn. ``load`` names the load state; ``people`` are those of the rig with their heights (m).

    ``spot`` is the free floor the ways begin on where nobody's bed stands. ``signs`` are the paths of what warns and
    puts out, with what it is called on the plan of the ways out. ``comes_down`` are the ways of beds that fold up.
    """

    pose: Pose
    load: str
    planned: Planned
    bodies: tuple[Body, ...]
    beds: tuple[Bed, ...]
    exits: tuple[WayOut, ...]
    aisles: tuple[Aisle, ...]
    fits: tuple[Fit, ...]
    people: tuple[tuple[str, Band], ...]
    room: Surfaces
    units: HeaderUnits
    spot: Bed | None = None
    signs: tuple[tuple[str, str], ...] = ()
    comes_down: tuple[Mover, ...] = ()

    def length(self, metres: float) -> str:
        """Return a length as it is cut."""
        return show(metres, "length", self.units, cuts=True)

    @property
    def inside(self) -> Block:
        """Return the room as a box."""
        room = self.room
        low: Vector = (room.front, room.left, room.floor)
        return Block(low, (room.rear, room.right, room.ceiling))

    def name_of(self, of: str) -> str:
        """Return the name of a thing by its path."""
        if self.spot is not None and of == self.spot.of:
            return self.spot.name
        return next((one.name for one in self.bodies if one.of == of), of.partition("[")[2].removesuffix("]"))


def named(posed: Posed, paths: Iterable[str]) -> str:
    """Return the names of some things in a row."""
    return ", ".join(posed.name_of(of) for of in paths)
