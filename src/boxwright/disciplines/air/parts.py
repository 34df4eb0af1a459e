"""Written keys of air: the free area of a vent, the flow of a fan."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from boxwright.model.each import Alone
from boxwright.model.entry import Entry
from boxwright.model.place import Place
from boxwright.units import CubicMetrePerSecondBand, SquareMetreBand


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


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class PlannedVent:
    """A part or an opening of the plan that lets air through or moves it; whether it stands comes with each slot."""

    of: str
    name: str
    place: Place
    facet: Facet


@dataclass(frozen=True, slots=True)
class Section:
    """Every vent and fan of the plan."""

    vents: tuple[PlannedVent, ...] = ()
