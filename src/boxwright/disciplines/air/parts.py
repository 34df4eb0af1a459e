"""Written keys of air: the free area of a vent, the flow of a fan; and what air sees of the plan."""

from __future__ import annotations

from datetime import date
from math import inf
from typing import Annotated, Literal

from pydantic import Field

from boxwright.model.each import Alone
from boxwright.model.entry import Entry
from boxwright.model.place import Place
from boxwright.model.stage import is_as_ticked
from boxwright.records import dataclass
from boxwright.units import Band, CubicMetrePerSecondBand, HoursBandNamed, KilogramBand, SquareMetreBand

VentKind = Literal["vent", "fan", "window", "door"]


class Fan(Entry):
    """A fan; ``fan: 500 cfm`` alone is its flow."""

    flow: CubicMetrePerSecondBand | None = Field(
        None, description="air it moves at full speed, such as 500 cfm or 90 m3/h"
    )
    lid: str = Field("", description="how its lid opens: by hand, by itself, none")


class Facet(Entry):
    """What air reads of a part or an opening."""

    free_area: SquareMetreBand | None = Field(
        None, description="area the air really passes through, mesh and louvres taken off, such as 18 sq in"
    )
    fan: Annotated[Fan, Alone("flow")] | None = Field(
        None, description="its fan, such as {flow: 500 cfm, lid: by hand}"
    )
    cooks: HoursBandNamed | None = Field(None, description="how long it cooks in the room of an evening, such as 0.5 h")
    wet: KilogramBand | None = Field(None, description="water that hangs in it as it comes in, such as 2 lb")


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}
NOTHING_SAID = Facet()
SHUT = frozenset({"shut", "closed", "locked"})
"""What is written of a leaf that is shut today."""
UNKNOWN = Band(0.0, 0.0, inf, known=False)


@dataclass(frozen=True, slots=True)
class PlannedVent:
    """A part or an opening of the plan that lets air through or moves it; whether it stands comes with each slot.

    ``kind``: "vent" stays open, "fan" has a lid, "window" opens, "door" is a leaf in the hole itself. ``is_hole`` says
    that it is an opening of the shell; ``now`` is what is there of it today, as written, ``is_done`` that it is ticked.
    ``holds`` is the gas cylinder that stands inside a part: its free area vents that locker, and nothing of the room.
    """

    of: str
    name: str
    place: Place
    facet: Facet = NOTHING_SAID
    kind: VentKind = "vent"
    is_hole: bool = True
    now: str = ""
    holds: str = ""
    is_done: bool = False

    @property
    def is_contradicted(self) -> bool:
        """Return whether it is ticked while words say what is there today: they may say that it is covered."""
        return self.is_done and not is_as_ticked(self.now)

    @property
    def may_stand_open(self) -> bool:
        """Return whether it is a door or a window that is ticked while words say else than that it is shut."""
        return self.kind in ("door", "window") and self.is_contradicted and self.now.strip().lower() not in SHUT


@dataclass(frozen=True, slots=True)
class PlannedFlame:
    """A part of the plan that burns with a flame in the room, and what it burns, as written; heaters are heat's."""

    of: str
    name: str
    burns: str


@dataclass(frozen=True, slots=True)
class PlannedDamp:
    """A part of the plan that makes the room damp: it cooks, or comes in wet (kg).

    ``cooks`` is how long of an evening (s), not known where it burns in the room and nobody wrote it; None where it
    does not cook.
    """

    of: str
    name: str
    cooks: Band | None
    is_flame: bool
    wet: Band | None


@dataclass(frozen=True, slots=True)
class WoodReading:
    """How wet wood was somewhere on a day, as a share of its dry mass."""

    of: str
    at: str
    on: date | None
    wood: Band


@dataclass(frozen=True, slots=True)
class Section:
    """Every vent, fan and flame of the plan, how wet wood was found, and the room: its volume (m3) and height (m).

    ``on_gas`` is what a gas pipe runs to, heaters too; ``damp`` what else than people gives off vapour.
    """

    vents: tuple[PlannedVent, ...] = ()
    flames: tuple[PlannedFlame, ...] = ()
    on_gas: tuple[PlannedFlame, ...] = ()
    damp: tuple[PlannedDamp, ...] = ()
    wood: tuple[WoodReading, ...] = ()
    volume: Band = UNKNOWN
    height: Band = UNKNOWN
