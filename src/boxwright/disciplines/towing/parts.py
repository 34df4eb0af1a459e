"""Written keys of towing: none of its own; it judges the trailer's and the tow vehicle's plates."""

from __future__ import annotations

from dataclasses import dataclass

from boxwright.model.entry import Entry

FRAMES = True
"""Towing takes every standing part's outline, never another discipline's facet."""


class Facet(Entry):
    """What towing reads of a part beyond its frame: nothing."""


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Section:
    """The settings of towing: none."""
