"""The way of a liquid fuel from tank to burner, piece by piece: where each lies, how high, what runs out when opened.

A piece is written in a few words, such as ``filter below floor z -4`` or ``line 2 mm bore``.
"""

from __future__ import annotations

import re
from math import pi
from typing import Literal

from boxwright.disciplines.heat.burner import fuel_named
from boxwright.disciplines.heat.fuel_piece import Kind, kind_of
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.records import dataclass
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band

Where = Literal["in the room", "outside", "unknown"]
LIQUID = frozenset({"diesel", "petrol", "kerosene"})
_IN = re.compile(r"\b(?:inside|indoors|in the room|in room|in the box|in a locker inside)\b", re.IGNORECASE)
_OUT = re.compile(r"\b(?:below|under|outside|outdoors|on the (?:tongue|drawbar))\b", re.IGNORECASE)
_AT_TANK = re.compile(r"\bat (?:the )?tank\b", re.IGNORECASE)
_BELOW = re.compile(r"\b(?:below|under)(?: the)? (?:floor|deck)\b", re.IGNORECASE)
_LEVEL = re.compile(
    r"\bz\s*(-?\d[^,;]*?)(?=$|\s+(?:at|below|under|inside|outside|indoors|outdoors|in (?:the|a|room))\b)", re.IGNORECASE
)
_BORE = re.compile(r"(\d[\d./ ]*(?:mm|in|\"|inch)?)\s*bore", re.IGNORECASE)
_ANGLE = re.compile(r"(\d+(?:\.\d+)?)\s*(?:deg|degrees|°)", re.IGNORECASE)
NOT_KNOWN = Band(0.0, 0.0, 0.0, known=False)


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of the way as written: what it is, where it lies, how high above the deck (m), its angle and bore.

    ``is_shut_off`` says that a valve stands before it, or that it is one. ``runs`` says that it lies lower than the
    fuel may stand, so that what is opened there runs; None where nobody knows.
    """

    written: str
    kind: Kind
    where: Where
    level: Band
    angle: float | None
    bore: Band | None
    is_shut_off: bool
    runs: bool | None

    @property
    def is_opened(self) -> bool:
        """Return whether it is opened now and then, to clean it or to change it."""
        return self.kind in ("filter", "pump", "joint")


def is_liquid(heater: StandingHeater) -> bool:
    """Return whether what a heater burns runs by itself."""
    return heater.runs == "burns" and fuel_named(heater.planned.heater.of) in LIQUID


def way_of(heater: StandingHeater, units: HeaderUnits) -> tuple[Piece, ...]:
    """Return the pieces between tank and burner, in the order the fuel takes them."""
    tank, own = heater.tank, heater.planned.name
    ends = {own.lower()} | ({tank.name.lower()} if tank is not None else set())
    found: list[Piece] = []
    is_shut_off = False
    for number, written in enumerate(heater.planned.heater.path):
        is_first_tank = number == 0 and tank is None and kind_of(written) == "other"
        if written.lower() in ends or is_first_tank:
            continue
        kind = kind_of(written)
        is_shut_off = is_shut_off or kind == "valve"
        found.append(_piece(written, kind, is_shut_off, heater, units))
    return tuple(found)


def _piece(written: str, kind: Kind, is_shut_off: bool, heater: StandingHeater, units: HeaderUnits) -> Piece:
    level = _level(written, heater, units)
    angle, bore = _ANGLE.search(written), _BORE.search(written)
    return Piece(
        written,
        kind,
        _where(written, heater),
        level,
        float(angle.group(1)) * pi / 180.0 if angle is not None else None,
        _read(bore.group(1), units) if bore is not None else None,
        is_shut_off,
        _runs(level, heater),
    )


def _where(written: str, heater: StandingHeater) -> Where:
    """Return on which side of the shell a piece lies: as written, and at the tank on the tank's own side."""
    if _IN.search(written):
        return "in the room"
    if _OUT.search(written):
        return "outside"
    is_at_tank = _AT_TANK.search(written) is not None
    return heater.tank.where if is_at_tank and heater.tank is not None else "unknown"


def _level(written: str, heater: StandingHeater, units: HeaderUnits) -> Band:
    """Return how high a piece lies: as written, at the foot of the tank, or no higher than the deck."""
    said = _LEVEL.search(written)
    if said is not None:
        return _read(said.group(1), units) or NOT_KNOWN
    if _AT_TANK.search(written) and heater.tank is not None:
        return heater.tank.low
    return NOT_KNOWN


def _read(written: str, units: HeaderUnits) -> Band | None:
    try:
        return read_band(written.strip(), "length", units)
    except CannotRead:
        return None


def _runs(level: Band, heater: StandingHeater) -> bool | None:
    """Return whether fuel runs out of what is opened at a level: the tank may be full, and its line full of fuel."""
    tank = heater.tank
    if tank is None or not tank.high.known or not level.known:
        return None
    if level.low >= tank.high.high:
        return False
    return True if level.high < tank.high.low else None


def is_below_deck(written: str) -> bool:
    """Return whether a piece is written as below the floor."""
    return _BELOW.search(written) is not None


def level_or_deck(piece: Piece) -> Band:
    """Return how high a piece lies; one that is only written as below the floor lies no higher than the deck."""
    if piece.level.known or not is_below_deck(piece.written):
        return piece.level
    # How much lower nobody wrote; no floor is higher over the ground than a pump pushes.
    return exactly(0.0)
