"""What safety knows of one slot, as records: ways out, alarms, extinguishers, flames and stores, each as it stands."""

from __future__ import annotations

from datetime import date
from typing import Literal

from boxwright.disciplines.safety.parts import Half, Hole, Kept, Sleeper, Store, Strung, There, Way
from boxwright.disciplines.safety.sourced import LENGTHS, Law
from boxwright.exchange import Aisle, Clearance
from boxwright.records import dataclass
from boxwright.units import Band

Opens = Literal["inside", "key", "tool", "none", "unknown"]


@dataclass(frozen=True, slots=True)
class Exit:
    """One way out in one slot, with its number on the card at the door.

    ``opens`` is what opens it from inside while it is barred outside; ``released_by`` the part that does, empty where
    it needs none. ``clear`` are the clear width and height, None where nobody measured them and a frame takes its
    share. ``sill`` is how high its lower edge is over the finished floor. ``is_too_small`` says that nobody gets
    through what is clear of it. ``struck`` is what its leaf strikes as it opens, and what is left of the hole then.
    ``left`` is what is clear of it as far as its leaf opens before it strikes something; ``sill`` counts that in.
    ``way_shut_by`` is what shuts the way to it from every bed, None where there is one, or nobody sleeps; ``not_from``
    are the names of the beds from which it is shut, where it is not from another. ``at_most`` is what its leaf may
    leave of the width and the height of its hole, whatever is written to be clear.
    """

    number: int
    way: Way
    there: There
    opens: Opens
    released_by: str
    clear: tuple[Band, Band] | None
    sill: Band | None
    is_too_small: bool = False
    struck: Clearance | None = None
    left: tuple[Band, Band] | None = None
    way_shut_by: tuple[str, ...] | None = None
    not_from: tuple[str, ...] = ()
    at_most: tuple[Band | None, Band | None] = (None, None)

    @property
    def is_held_shut(self) -> bool:
        """Return whether its leaf strikes something before anybody gets through."""
        return self.struck is not None and self.struck.metre.high < LENGTHS["squeeze"]

    @property
    def is_to_count(self) -> bool:
        """Return whether it stands and its release lets somebody out, whatever is in its way."""
        return self.there == "yes" and self.opens in ("inside", "unknown") and not self.way.is_fixed

    @property
    def may_be_held_shut(self) -> bool:
        """Return whether its leaf may strike something before everybody gets through, so that it is to be tried."""
        return self.struck is not None and self.struck.metre.low < LENGTHS["pass"]

    @property
    def may_be_too_small(self) -> bool:
        """Return whether what is clear of it may be too little: what was measured was tried, what is reckoned not."""
        least = LENGTHS["squeeze" if self.way.facet.clear is not None else "pass"]
        return self.clear is not None and min(one.low if one.known else least for one in self.clear) < least

    @property
    def as_it_opens(self) -> tuple[Band, Band] | None:
        """Return what is clear of it as it opens now; what may leave too little is asked about elsewhere."""
        return self.clear if self.left is None or self.may_be_held_shut else self.left

    @property
    def counts(self) -> bool:
        """Return whether it may be one of the ways out: it stands, and nothing is known that keeps it shut."""
        return self.is_to_count and not self.is_too_small and not self.is_held_shut

    @property
    def is_measured(self) -> bool:
        """Return whether it is known that somebody gets through what is clear of it."""
        return self.clear is not None and all(one.known and one.low >= LENGTHS["squeeze"] for one in self.clear)


@dataclass(frozen=True, slots=True)
class Device:
    """An alarm, an extinguisher or a release as it stands in one slot.

    ``at`` are the ends of its box along the trailer, across it and up, None where nobody knows its place.
    ``is_away`` says that it stands outside the room, or shut in another thing: there it warns and helps nobody;
    ``is_here`` that it surely stands in the room; ``is_out_of_hand`` that it is beyond the walls of the room.
    ``up`` is the height of its middle (m), None where nobody knows it.
    """

    kept: Kept
    there: There
    at: tuple[Band, Band, Band] | None
    is_away: bool = False
    is_here: bool = True
    is_out_of_hand: bool = False
    up: Band | None = None

    @property
    def helps(self) -> There:
        """Return whether it stands where it helps whoever sleeps inside."""
        if self.is_away or self.there == "no":
            return "no"
        return self.there if self.is_here else "perhaps"


@dataclass(frozen=True, slots=True)
class Flame:
    """What burns with a flame, or an engine, as it stands in one slot; ``is_inside`` is None where nobody knows."""

    kept: Kept
    there: There
    at: tuple[Band, Band, Band] | None
    is_inside: bool | None


@dataclass(frozen=True, slots=True)
class Fuelled:
    """A tank of fuel in one slot; ``is_inside`` is None where nobody knows its place; ``is_empty`` as it is said."""

    store: Store
    fumes: bool | None
    kind: str
    is_inside: bool | None
    at: tuple[Band, Band, Band] | None
    is_empty: bool = False


@dataclass(frozen=True, slots=True)
class Bed:
    """A place somebody sleeps at in one slot, with the ends of its box; ``of`` is the path of the part.

    ``pieces`` is how many of it one line stands for; only one of them has a place. ``is_there`` is False where it
    stands perhaps. ``surely`` are both ends along the trailer and across it of what it surely covers, and the least
    height of what one stands on, None where nobody knows.
    """

    of: str
    name: str
    sleepers: tuple[str, ...]
    at: tuple[Band, Band, Band] | None
    pieces: int = 1
    is_there: bool = True
    surely: tuple[tuple[float, float], tuple[float, float], float] | None = None


@dataclass(frozen=True, slots=True)
class Result:
    """What safety knows of one slot. ``use`` is sleep, leave or work; of any other nothing is judged.

    ``aisles`` are the ways from each bed to each opening, None where no chapter has worked any out. ``bedless`` sleep
    on something that does not stand, or that nobody wrote. ``openings`` are all that stand, perhaps or not. ``hot`` is
    what gets hot and may be inside, whatever it runs on; ``strung`` the wires; ``halves`` what is done in part;
    ``folding`` the beds that fold up; ``unsaid`` what holds fuel by its name, where no tank says what is in it.
    """

    of: str
    use: str
    law: Law
    judged_on: date
    exits: tuple[Exit, ...]
    has_openings: bool
    releases: tuple[Device, ...]
    alarms: tuple[Device, ...]
    extinguishers: tuple[Device, ...]
    flames: tuple[Flame, ...]
    generators: tuple[Flame, ...]
    stores: tuple[Fuelled, ...]
    beds: tuple[Bed, ...]
    bedless: tuple[Sleeper, ...]
    aisles: tuple[Aisle, ...] | None
    openings: tuple[Hole, ...]
    open_holes: tuple[Hole, ...]
    hot: tuple[Flame, ...]
    strung: tuple[Strung, ...]
    halves: tuple[Half, ...]
    ceiling: float
    floor: float
    folding: tuple[str, ...] = ()
    unsaid: tuple[Flame, ...] = ()

    def aisle(self, bed: str, exit_of: str) -> Aisle | None:
        """Return the way from a bed to an opening."""
        return next((one for one in self.aisles or () if (one.of, one.leads_to) == (bed, exit_of)), None)
