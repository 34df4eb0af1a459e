"""Written keys of water: tanks on parts, pipes between them."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from boxwright.model.each import Alone
from boxwright.model.entry import Entry
from boxwright.model.place import Place
from boxwright.records import dataclass
from boxwright.units import Band, CubicMetreBand, MetreBand


class Tank(Entry):
    """What a tank holds when full; ``tank: 20`` alone is its volume. How full it is says the load state."""

    of: str = Field("", description="what is in it: water, grey water, diesel, petrol, propane")
    volume: CubicMetreBand | None = Field(None, description="what it holds when full, such as 20 or 75 l")


class Facet(Entry):
    """What water reads of a part."""

    tank: Annotated[Tank, Alone("volume")] | None = Field(
        None, description="what it holds, such as {of: water, volume: 20}"
    )


class Pipe(Entry):
    """One pipe or hose."""

    from_: str = Field("", alias="from", description="where it starts, such as fresh")
    to: str = Field("", description="where it ends, such as pump")
    bore: MetreBand | None = Field(None, description="inside diameter, such as 1/2")
    length: MetreBand | None = Field(None, description="measured with string; else it comes from route")
    route: str = Field("", description="its way, such as right z3 > floor x80 > left z26")
    drain: str = Field("", description="where it is drained: lowest, none, or the name of a drain")


NAMED: dict[str, type[Entry]] = {"pipes": Pipe}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class StandingTank:
    """A tank that stands, or stands perhaps, in one load state.

    ``place`` is that of its part. ``fill`` runs from 0 to 1 (spread "fill" where the state leaves it open). ``share``
    is exactly 1, or 0 to 1 (spread "perhaps") where the tank stands perhaps.
    """

    of: str
    name: str
    place: Place
    tank: Tank
    fill: Band
    share: Band


@dataclass(frozen=True, slots=True)
class Section:
    """The pipes as written, by name."""

    pipes: tuple[tuple[str, Pipe], ...] = ()
