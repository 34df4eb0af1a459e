"""One number with its unit, as written: ``5ft 3-1/2in``, ``63-1/2"``, ``1.974 m``, ``20 degF``, ``$160``."""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from boxwright.units.band import CannotRead, HeaderUnits
from boxwright.units.numeral import DECIMAL, NUMERAL, read_numeral
from boxwright.units.quantity import DIMENSIONS, Quantity, header_unit
from boxwright.units.refusal import offered_at_home, refused
from boxwright.units.scale import Scale, unit_scale
from boxwright.units.wire import read_wire


class Term(NamedTuple):
    """A signed number and the unit written behind it; ``otherwise`` is its reading with a decimal comma."""

    value: float
    unit: str
    otherwise: float | None = None


_NUMBER = re.compile(rf"([+-]?)\s*({NUMERAL})\s*(1/.*|[^0-9].*)?", re.S)
_FEET_INCHES_FRACTION = re.compile(r"([+-]?)\s*([0-9]+)-([0-9]+)-([0-9]+/[0-9]+)\s*(?:in\.?|inch(?:es)?|\")?", re.I)


class _Pair(NamedTuple):
    pattern: re.Pattern[str]
    parts: float
    unit: str


def _pair(large: str, small: str, parts: float, unit: str) -> _Pair:
    text = rf"([+-]?)\s*({DECIMAL})\s*{large}\s*[,-]?\s*({NUMERAL})\s*{small}"
    return _Pair(re.compile(text, re.I), parts, unit)


_PAIRS = {
    "length": _pair(r"(?:ft\.?|feet|foot|')", r"(?:in\.?|inch(?:es)?|\")?", 12.0, "in"),
    "mass": _pair(r"(?:lbs?\.?|pounds?|#)", r"(?:oz\.?|ounces?)", 16.0, "oz"),
    "time": _pair(r"(?:h|hrs?|hours?)", r"(?:min|mins|minutes?|m)", 60.0, "min"),
}
_MARKS = {"length": {"'": "ft", '"': "in"}, "mass": {"#": "lb"}}
_A_DAY = re.compile(r"\s*(?:/|\bper\b|\ba\b)\s*(?:day|d)$", re.I)
_CURRENCY_FIRST = re.compile(r"([+-]?)\s*([A-Z]{0,3}[$\u00a3\u20ac]|[A-Z]{3})\s*([+-]?[0-9.,].*)", re.I | re.S)
_CURRENCIES = {
    "$": ("USD", "CAD", "AUD", "NZD"), "US$": ("USD",), "C$": ("CAD",), "CA$": ("CAD",), "A$": ("AUD",),
    "AU$": ("AUD",), "NZ$": ("NZD",), "\u00a3": ("GBP",), "\u20ac": ("EUR",),
    "DOLLAR": ("USD", "CAD", "AUD", "NZD"), "DOLLARS": ("USD", "CAD", "AUD", "NZD"), "POUNDS": ("GBP",),
    "EURO": ("EUR",), "EUROS": ("EUR",),
}  # fmt: skip
_CURRENCY_CODE = re.compile(r"[A-Z]{3}")

_DECIMAL_POINT_COUNTRIES = frozenset({"US", "UK", "CA", "AU", "NZ", "IE"})
READS_LIKE_A_DECIMAL = frozenset({"m", "t", "l", "m2", "m3", "bar"})
"""Units in which 1,725 is hardly one thousand seven hundred and twenty-five."""


def read_term(text: str, kind: Quantity) -> Term | None:
    """Return the number and unit a tidied text stands for, or None where it is no number with a unit."""
    if kind.name == "money":
        first = _CURRENCY_FIRST.fullmatch(text)
        text = f"{first[1]}{first[3]} {first[2]}" if first else text
    if kind.name == "length":
        groups = _FEET_INCHES_FRACTION.fullmatch(text)
        if groups:
            return _summed(groups[1], groups[2], f"{groups[3]} {groups[4]}", 12.0, "in")
    pair = _PAIRS.get(kind.name)
    found = pair.pattern.fullmatch(text) if pair else None
    if pair and found:
        return _summed(found[1], found[2], found[3], pair.parts, pair.unit)
    number = _NUMBER.fullmatch(text)
    numeral = read_numeral(number[2]) if number else None
    if number is None or numeral is None:
        return None
    sign = -1.0 if number[1] == "-" else 1.0
    otherwise = None if numeral.otherwise is None else sign * numeral.otherwise
    return Term(sign * numeral.value, (number[3] or "").strip(), otherwise)


def _summed(sign: str, large: str, small: str, parts: float, unit: str) -> Term | None:
    whole, rest = read_numeral(large), read_numeral(small)
    if whole is None or rest is None or whole.otherwise or rest.otherwise:
        return None
    value = whole.value * parts + rest.value
    return Term(-value if sign == "-" else value, unit)


def term_scale(unit: str, kind: Quantity, words: str) -> Scale | None:
    """Return the scale of a unit written for a quantity, or None where it measures something else."""
    if kind.name in ("time", "irradiation"):
        unit = _A_DAY.sub("", unit)
    unit = _MARKS.get(kind.name, {}).get(unit, unit)
    scale = unit_scale(unit, words)
    return scale if scale and scale.dimension == DIMENSIONS[kind.name] else None


def unit_of(term: Term, kind: Quantity, header: HeaderUnits, bare: str | None) -> str:
    """Return the unit of a term: its own, the one its key names, the header's, or none."""
    return term.unit or bare or header_unit(kind, header) or kind.bare or ""


def settled(term: Term, unit: str, text: str, kind: Quantity, header: HeaderUnits) -> float:
    """Return the number of a term, refusing a comma that could be a thousands or a decimal comma."""
    if term.otherwise is None:
        return term.value
    if header.words in _DECIMAL_POINT_COUNTRIES and unit not in READS_LIKE_A_DECIMAL:
        return term.value
    raise refused(text, kind, header, f'"{term.value:g} {unit}" or "{term.otherwise:g} {unit}"')


def read_one(text: str, kind: Quantity, header: HeaderUnits, bare: str | None) -> float:
    """Return one tidied number with its unit as an SI float."""
    if kind.name == "wire":
        return read_wire(text, header, bare)
    term = read_term(text, kind)
    if term is None:
        raise refused(text, kind, header)
    unit = unit_of(term, kind, header, bare)
    value = settled(term, unit, text, kind, header)
    if kind.name == "money":
        _check_currency(text, unit, kind, header)
        return _checked(value, text, kind, header)
    if not unit:
        also = f", or give {kind.header}: {offered_at_home(kind, header)[0]} in the units line" if kind.header else ""
        raise refused(text, kind, header, also=also)
    scale = term_scale(unit, kind, header.words)
    if scale is None:
        raise refused(text, kind, header)
    return _checked(scale.to_si(value), text, kind, header)


def _checked(value: float, text: str, kind: Quantity, header: HeaderUnits) -> float:
    """Return a value that can be: finite, and not below zero where nothing is."""
    if not math.isfinite(value):
        raise refused(text, kind, header, "a number of a sensible size")
    if value < 0.0 and kind.name == "temperature":
        raise refused(text, kind, header, 'a temperature above absolute zero, such as "20 F" or "-7 C"')
    if value < 0.0 and not kind.may_be_negative:
        raise refused(text, kind, header, "a number that is not below zero")
    return value


def _check_currency(text: str, unit: str, kind: Quantity, header: HeaderUnits) -> None:
    if not unit:
        raise refused(text, kind, header, also=", or give money: USD in the units line")
    folded = unit.upper()
    names = _CURRENCIES.get(folded, (folded,) if _CURRENCY_CODE.fullmatch(folded) else ())
    home = (header.money or "").upper()
    if not names or (home and home not in names and home != folded):
        raise CannotRead(text, kind.said, f"an amount in {home or 'one currency'}, such as {home or 'USD'} 160")
