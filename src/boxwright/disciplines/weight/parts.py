"""Written keys of weight: none of its own; it sees the frame (place, weight, size) of every part that stands."""

from __future__ import annotations

from boxwright.model.entry import Entry
from boxwright.records import dataclass

FRAMES = True
"""Weight takes every standing part's frame, never another discipline's facet."""


class Facet(Entry):
    """What weight reads of a part beyond its frame: nothing."""


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Section:
    """The settings of weight: none."""
