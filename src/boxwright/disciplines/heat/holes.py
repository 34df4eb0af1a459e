"""What fills a hole in the shell loses: as it is written of the unit, else by its kind."""

from __future__ import annotations

import re
from typing import Literal

from boxwright.disciplines.heat.material import columns, interval
from boxwright.exchange import Opening
from boxwright.records import dataclass
from boxwright.units import Band

UNITS: dict[str, tuple[float, ...]] = columns("units_in_holes")
Kind = Literal["window", "lid", "door", "plug", "nothing"]
_KINDS: tuple[tuple[Kind, str], ...] = (
    ("window", r"window|glass|pane|porthole|skylight"),
    ("lid", r"fan|hatch|lid|roof-?vent|scuttle"),
)


@dataclass(frozen=True, slots=True)
class Filled:
    """What fills a hole, and what it lets through (W/m2K); ``is_written`` where the rig says so."""

    kind: Kind
    transmittance: Band
    is_written: bool


def filled(opening: Opening) -> Filled:
    """Return what fills a hole. A number that is nothing or less is none."""
    kind = _kind(opening)
    written = opening.transmittance
    if written is not None and written.known and written.low > 0.0 and not opening.is_open:
        return Filled(kind, written, True)
    best, low, high = UNITS[kind]
    return Filled(kind, interval(best, low, high), False)


def _kind(opening: Opening) -> Kind:
    if opening.is_open:
        return "nothing"
    if opening.is_leaf:
        return "door"
    name = opening.name.lower()
    found: Kind | None = next((kind for kind, words in _KINDS if re.search(words, name)), None)
    return found or "plug"
