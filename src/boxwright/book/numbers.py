"""Numbers as the builder reads them: in the units asked for, with their doubt, narrow enough for a table."""

from __future__ import annotations

import math
from collections.abc import Callable

from boxwright.finding import Kind, Use
from boxwright.study.spoken import named as named
from boxwright.units import Band, HeaderUnits, show, shown_unit

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
    """Return a mass with its doubt: ``343 +- 20 lb``, ``343 lb (320 to 366)``, ``320 lb + ? (at least 295)``.

    The question mark stands for what has no number, where that can only add: the amount before it is without that.
    Where it may take away no amount without it is told, only its ends: ``at most 345 lb``, ``295 to 345 lb``.
    """
    return _amount(band, lambda value: show(value, "mass", units), mass_unit(units))


def share(band: Band, units: HeaderUnits) -> str:
    """Return a share with its doubt, in tenths of a per cent, such as ``10.4 +- 0.6 %``."""
    return _amount(band, lambda value: f"{_tenths(value * 100.0)} %", "%")


def _tenths(value: float) -> str:
    return f"{value:.1f}".replace("-0.0", "0.0")


def _amount(band: Band, shown: Callable[[float], str], unit: str) -> str:
    """Return the best value, then how far it may be off: to both sides alike, or by its two ends."""
    low, high = (shown(end).removesuffix(unit).strip() for end in (band.low, band.high))
    middle = shown(band.best)
    if not (math.isfinite(band.low) or math.isfinite(band.high)):
        return "unknown"
    if band.known and band.low == band.high:
        return middle
    if band.known and band.spread == "sigma":
        half = shown((band.high - band.low) / 2.0).removesuffix(unit).strip()
        return f"{middle.removesuffix(unit).strip()} +- {half} {unit}"
    if not math.isfinite(band.high):
        return f"{middle}{'' if band.known else ' + ?'} (at least {low})"
    ends = f"{low} to {high}" if math.isfinite(band.low) else f"at most {high}"
    return f"{middle} ({ends})" if band.known else f"{ends} {unit}"


def narrow(text: str) -> str:
    """Return an amount as a table shows it: ``343+-20``, ``320..366``, ``320+?``, ``<=345``; its unit is the head's."""
    best, _, ends = text.removesuffix(")").partition(" (")
    if " to " in text:
        return (ends or best.rpartition(" ")[0]).replace(" to ", "..")
    if best.startswith("at most "):
        return f"<={best.split()[2]}"
    pieces = [piece for piece in best.split() if piece[0] in "+-?0123456789."]
    return "".join(pieces) if pieces else best


def mass_unit(units: HeaderUnits) -> str:
    """Return the unit masses are shown in."""
    return shown_unit("mass", units)[0]


SIDES = (
    ("behind", "ahead of", "the front stud face"),
    ("right of", "left of", "the centreline"),
    ("above", "below", "the deck"),
)
"""On which side of which mark a place is, along x, y and z: the word for plus, the word for minus, the mark."""


BEYOND = 14.0
"""Farther (m) than any such trailer reaches: an end out there says that nobody knows, not where a thing may be."""


def place(centre: tuple[Band, Band, Band], units: HeaderUnits) -> list[str]:
    """Return the centre of gravity in words, one axis each, from the marks a tape can be held to."""
    return [_at(band, sides, units) for band, sides in zip(centre, SIDES, strict=True)]


def _at(band: Band, sides: tuple[str, str, str], units: HeaderUnits) -> str:
    """Return a distance from a mark and on which side of it: tenths of an inch, whole millimetres."""
    unit, scale = shown_unit("length", units)
    digits = {"mm": 0, "in": 1}.get(unit, 2)
    if not (math.isfinite(band.low) and math.isfinite(band.high)) or max(-band.low, band.high) >= BEYOND:
        return f"unknown how far {sides[0]} or {sides[1]} {sides[2]}"

    def far(value: float) -> str:
        return f"{abs(scale.from_si(value)):.{digits}f}"  # no comma: 1,707 mm reads as a decimal

    side = sides[band.best < 0.0]
    half = far((band.high - band.low) / 2.0)
    if band.known and (band.spread == "sigma" or band.low == band.high):
        doubt = f" +- {half}" if band.low < band.high else ""
        return f"{far(band.best)}{doubt} {unit} {side} {sides[2]}"
    nearest, farthest = sorted((band.low, band.high), key=abs)
    is_across = nearest * farthest < 0.0
    if not band.known:  # what has no weight may lie to either side of what has one
        first = f"{far(nearest)} {unit} {sides[nearest < 0.0]} {sides[2]}" if is_across else far(nearest)
        return f"{first} to {far(farthest)} {unit} {sides[farthest < 0.0]} {'it' if is_across else sides[2]}"
    if is_across:
        ends = f"{far(nearest)} {sides[nearest < 0.0]} to {far(farthest)} {sides[farthest < 0.0]} it"
    else:
        ends = f"{far(nearest)} to {far(farthest)}"
    return f"{far(band.best)} {unit} {side} {sides[2]} ({ends})"
