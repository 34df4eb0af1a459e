"""The way of a liquid fuel from tank to burner, piece by piece: where each lies, how high, what runs out when opened.

A piece is written in a few words, such as ``filter below floor z -4`` or ``line 2 mm bore``.
"""

from __future__ import annotations

import re
from dataclasses import replace

from boxwright.disciplines.heat.burner import fuel_named, gas_named
from boxwright.disciplines.heat.fuel_piece import (
    Kind,
    Where,
    has_no_valve,
    is_below_deck,
    is_in_doubt,
    is_store,
    kind_of,
    shuts_itself_off,
    shuts_off,
    where_of,
)
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.records import dataclass
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band

LIQUID = frozenset({"diesel", "petrol", "kerosene", "alcohol", "methanol"})
_AT_TANK = r"\bat (?:the )?tank\b"
_LEVEL = (
    r"\bz\s*((?:about )?-?\d[^,;]*?)"
    r"(?=$|\s+(?:at|below|under|inside|outside|indoors|outdoors|in (?:the|a|room)|on (?:the|tongue))\b)"
)
_NUMBER = r"(?<![\d.,/-])(?:about\s+)?-?\d"
_SPAN = r"(?<=\d)\s*(mm|cm|in|inch|\")?\s*(?:-|–|\bor\b|\band\b)\s*(?=\d+(?![\d/]))"
"""How a span is written of what is never below nothing: 1-3, 1 or 3."""
NOT_KNOWN = Band(0.0, 0.0, 0.0, known=False)


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of the way as written: what it is, where it lies, how high above the deck (m), its angle and bore.

    ``is_shut_off`` says that a valve stands before it, or that it is one. ``runs`` says that it lies lower than the
    fuel may stand, so that what is opened there runs; None where nobody knows. ``angle`` (rad) and ``bore`` are None
    where none is written, not known where nobody can read it.
    """

    written: str
    kind: Kind
    where: Where
    level: Band
    angle: Band | None
    bore: Band | None
    is_shut_off: bool
    runs: bool | None

    @property
    def is_opened(self) -> bool:
        """Return whether it is opened now and then, to clean it or to change it; what nobody here knows may be."""
        return self.kind in ("filter", "pump", "joint", "other")


def is_liquid(heater: StandingHeater) -> bool:
    """Return whether what a heater burns runs by itself; where nobody wrote what, it may if a way of it is written."""
    if heater.runs == "unknown":
        return bool(heater.planned.heater.path)
    return heater.runs == "burns" and fuel_named(heater.planned.heater.of) in LIQUID


def is_gas(heater: StandingHeater) -> bool:
    """Return whether a heater burns a gas of bottles."""
    return gas_named(heater.planned.heater.of) != ""


def way_of(heater: StandingHeater, units: HeaderUnits) -> tuple[Piece, ...]:
    """Return the pieces between tank and burner, in the order the fuel takes them."""
    found: list[Piece] = []
    is_shut_off = False
    path = heater.planned.heater.path
    for number, written in enumerate(path):
        kind = kind_of(written)
        is_end = _is_end(written, kind, number in (0, len(path) - 1), heater)
        if is_end or (kind == "other" and has_no_valve(written)):
            continue
        kind = "other" if kind == "end" else kind
        found.append(_piece(written, kind, is_shut_off or shuts_itself_off(written), heater, units))
        is_shut_off = is_shut_off or shuts_off(written)
    return tuple(found)


def side_of_tank(heater: StandingHeater) -> Where:
    """Return on which side of the shell the tank of a heater stands; one of its own stands where the heater does."""
    first = heater.planned.heater.path[0] if heater.planned.heater.path else ""
    if has_own_tank(heater):
        return heater.where
    return heater.tank.where if heater.tank is not None else where_of(first) if is_store(first) else "unknown"


def has_own_tank(heater: StandingHeater) -> bool:
    """Return whether a heater is written to burn from a tank of its own."""
    return any(re.match(r"(?:its )?(?:own|built-?in) (?:tank|can|reservoir)\b", one, re.IGNORECASE)
               for one in heater.planned.heater.path[:1])  # fmt: skip


def is_told_valveless(heater: StandingHeater) -> bool:
    """Return whether the way of a fuel is written as one without any valve."""
    path = heater.planned.heater.path
    return any(has_no_valve(one) for one in path) and not any(shuts_off(one) or is_in_doubt(one) for one in path)


def _is_end(written: str, kind: Kind, is_first_or_last: bool, heater: StandingHeater) -> bool:
    """Return whether a piece is the tank or the burner; a tank on the way is none of both."""
    tank = heater.tank
    if written.lower() in {heater.planned.name.lower(), tank.name.lower() if tank is not None else ""}:
        return True
    if is_first_or_last and where_of(written) == "unknown" and not is_in_doubt(written):
        return kind in ("end", "other")
    return kind == "end" and (is_first_or_last or not is_store(written))


def _piece(written: str, kind: Kind, is_shut_off: bool, heater: StandingHeater, units: HeaderUnits) -> Piece:
    level = _level(written, heater, units)
    where = where_of(written)
    if where == "unknown" and _is_at_tank(written) and heater.tank is not None:
        where = heater.tank.where
    # A tank on the way runs out by itself, however high it is.
    runs = True if kind == "other" and is_store(written) else _runs(level, heater)
    bore = _bore(written, units)
    return Piece(written, kind, where, level, _angle(written), bore, is_shut_off, runs)


def _angle(written: str) -> Band | None:
    """Return the angle written beside a piece; below nothing where its outlet is down."""
    said = re.search(r"(.*\d)\s*(?:deg|degrees|°)", written, re.IGNORECASE)
    if said is None:
        return None
    angle = _last_of(said.group(1), " deg", "angle", HeaderUnits())
    is_down = re.search(r"\b(?:outlet|end) down\b", written, re.IGNORECASE) is not None
    return replace(angle, best=-angle.best, low=-angle.high, high=-angle.low) if is_down and angle.known else angle


def _bore(written: str, units: HeaderUnits) -> Band | None:
    """Return the bore written before the word, or behind it."""
    head, word, rest = re.sub("(?i)bore", "bore", written).partition("bore")
    if not word:
        return None
    bore = _last_of(head, "", "length", units)
    return bore if bore.known else _last_of(rest, "", "length", units)


def _last_of(written: str, unit: str, quantity: str, units: HeaderUnits) -> Band:
    """Return the longest end of a text that can be read as a measure; a span in it stays a span."""
    text = re.sub(_SPAN, r"\1..", written.strip())
    for found in re.finditer(_NUMBER, text, re.IGNORECASE):
        band = _read(text[found.start() :] + unit, quantity, units)
        if band is not None:
            return band
    return NOT_KNOWN


def _level(written: str, heater: StandingHeater, units: HeaderUnits) -> Band:
    """Return how high a piece lies: as written, at the foot of the tank, else not known."""
    said = re.search(_LEVEL, written, re.IGNORECASE)
    if said is not None:
        return _read(said.group(1), "length", units) or NOT_KNOWN
    return heater.tank.low if _is_at_tank(written) and heater.tank is not None else NOT_KNOWN


def _is_at_tank(written: str) -> bool:
    return re.search(_AT_TANK, written, re.IGNORECASE) is not None


def _read(written: str, quantity: str, units: HeaderUnits) -> Band | None:
    try:
        return read_band(written.strip(), quantity, units)
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


def level_or_deck(piece: Piece) -> Band:
    """Return how high a piece lies; one that is only written as below the floor lies no higher than the deck."""
    if piece.level.known or not is_below_deck(piece.written):
        return piece.level
    # How much lower nobody wrote; no floor is higher over the ground than a pump pushes.
    return exactly(0.0)
