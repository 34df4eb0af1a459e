"""Numbers as the builder reads them: in the units asked for, with their doubt, narrow enough for a table."""

from __future__ import annotations

import math

from boxwright.finding import Kind, Use
from boxwright.units import Band, HeaderUnits, show_band, shown_unit

US = HeaderUnits(length="in", weight="lb", temperature="F", volume="gal", wire="AWG", words="US")
METRIC = HeaderUnits(length="mm", weight="kg", temperature="C", volume="l", wire="mm2", words="UK")
UNIT_SYSTEMS = ("us", "metric", "file")

USE_NAMES: dict[Use, str] = {"tow": "TOW", "sleep": "SLEEP", "leave": "LEAVE", "work": "WORK"}
KIND_NAMES: dict[Kind, str] = {
    "stop": "Stop",
    "limit": "Limit",
    "fix": "Fix",
    "unknown": "Unknown",
    "advice": "Advice",
}


def units_asked(word: str, of_file: HeaderUnits) -> HeaderUnits:
    """Return the units to show numbers in: those of the file, or one of the two systems."""
    return {"us": US, "metric": METRIC}.get(word, of_file)


def mass(band: Band, units: HeaderUnits) -> str:
    """Return a mass with its doubt and unit, such as ``343 +- 20 lb``."""
    return show_band(band, "mass", units)


def share(band: Band, units: HeaderUnits) -> str:
    """Return a share with its doubt, such as ``10.4 +- 0.6 %``."""
    return show_band(band, "ratio", units)


def narrow(text: str, unit: str) -> str:
    """Return a number as a table shows it: its unit stands at the head of the table, its words are signs."""
    if text == "unknown":
        return text
    bare = text.removesuffix(", assumed").removesuffix(unit).strip()
    for words, sign in (("at least ", ">="), ("at most ", "<="), (" to ", ".."), (" +- ", "+-")):
        bare = bare.replace(words, sign)
    return bare


def mass_unit(units: HeaderUnits) -> str:
    """Return the unit masses are shown in."""
    return shown_unit("mass", units)[0]


def place(centre: tuple[Band, Band, Band], units: HeaderUnits) -> list[str]:
    """Return the centre of gravity in words, one axis each, from the marks a tape can be held to."""
    x, y, z = centre
    return [
        _at(x, ("behind the front stud face", "ahead of the front stud face"), units),
        _at(y, ("right of the centreline", "left of the centreline"), units),
        _at(z, ("above the deck", "below the deck"), units),
    ]


def _at(band: Band, sides: tuple[str, str], units: HeaderUnits) -> str:
    """Return a distance from a mark and on which side of it: tenths of an inch, whole millimetres."""
    unit, scale = shown_unit("length", units)
    side = sides[0] if band.best >= 0.0 else sides[1]
    if not (math.isfinite(band.low) and math.isfinite(band.high)):
        return "unknown, " + " or ".join(sides)
    digits = {"mm": 0, "in": 1}.get(unit, 2)
    middle, half = abs(scale.from_si(band.best)), scale.difference_from_si(band.high - band.low) / 2.0
    doubt = f" +- {half:.{digits}f}" if round(half, digits) > 0.0 else ""
    return f"{middle:,.{digits}f}{doubt} {unit} {side}"
