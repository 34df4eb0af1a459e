"""Written keys of stages: what a stage needs before it, how long it takes, its steps."""

from __future__ import annotations

from pydantic import Field

from boxwright.model.entry import Entry, Names
from boxwright.records import dataclass
from boxwright.units import HoursBandNamed


class StageFacet(Entry):
    """What this discipline reads of a stage."""

    needs: Names = Field((), description="the stages that come before it, such as [wire, liners]")
    hours: HoursBandNamed | None = Field(None, description="working hours it takes, such as 20 or 12..20")
    weather: str = Field("", description="the weather it wants: dry, above 50 F")
    steps: Names = Field((), description="its steps in order, such as [floor deck, front, ceiling last]")


class Facet(Entry):
    """What this discipline reads of a part: nothing."""


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}
FACET_OF: dict[str, type[Entry]] = {"stages": StageFacet}


@dataclass(frozen=True, slots=True)
class Section:
    """The stages as written, by name."""

    stages: tuple[tuple[str, StageFacet], ...] = ()
