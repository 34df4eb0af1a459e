"""Written keys of towing: of a place, what fits into it. The rest it judges are trailer and tow vehicle."""

from __future__ import annotations

from pydantic import Field

from boxwright.model.entry import Entry
from boxwright.records import dataclass
from boxwright.units import MetreBand

FRAMES = True
"""Towing takes every standing part's outline, never another discipline's facet."""


class Facet(Entry):
    """What towing reads of a part beyond its frame: nothing."""


class Fits(Entry):
    """The greatest trailer that fits into a place of the owner: a garage, a ferry, a driveway."""

    width: MetreBand | None = Field(None, description="greatest width that passes, such as 96")
    height: MetreBand | None = Field(None, description="greatest height that passes, such as 84")
    length: MetreBand | None = Field(None, description="greatest length that stands there, such as 240")


class PlaceFacet(Entry):
    """What towing reads of a place."""

    fits: Fits | None = Field(
        None, description="the greatest trailer that fits there, such as {width: 96, height: 84, length: 240}"
    )


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}
FACET_OF: dict[str, type[Entry]] = {"places": PlaceFacet}


@dataclass(frozen=True, slots=True)
class Section:
    """What must be fitted into, by the name of the place."""

    fits: tuple[tuple[str, Fits], ...] = ()
