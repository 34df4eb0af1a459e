"""Unit symbols and their exact factors to SI: ``in``, ``psi``, ``W/m2K``, ``gal/h``.

Every factor is two whole numbers, so that 1974 mm and 1.974 m give the same float. Sources:

yard 1959     international yard and pound agreement of 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg (from memory)
NIST SP 811   Guide for the Use of the SI, appendix B.8: US gallon = 231 in3, Btu (International Table) =
              1055.05585262 J, lbf = 1 lb * 9.80665 m/s2, horsepower = 550 ft lbf/s, bar = 1e5 Pa (from memory)
UK 1985       Weights and Measures Act 1985, schedule 1: 1 imperial gallon = 4.54609 dm3 (from memory)
BIPM          The International System of Units, 9th edition: minute, hour, day, litre, tonne, degree, Celsius,
              standard gravity of the 3rd General Conference of 1901 (from memory)

The tests compare every factor with an independent unit registry.
"""

from __future__ import annotations

import math
import re
from functools import lru_cache
from typing import NamedTuple

Dimension = tuple[int, int, int, int, int, int]
"""Powers of metre, kilogram, second, kelvin, ampere, radian (an angle is kept apart from a ratio on purpose)."""

NO_DIMENSION: Dimension = (0, 0, 0, 0, 0, 0)


class Scale(NamedTuple):
    """A unit against SI: ``(value + offset) * up / down`` is the SI value; a difference leaves the offset out."""

    up: float
    down: float
    dimension: Dimension
    offset: float = 0.0

    def to_si(self, value: float) -> float:
        """Return a value in this unit as an SI number."""
        return (value + self.offset) * self.up / self.down

    def difference_to_si(self, value: float) -> float:
        """Return a difference (a half-width) in this unit as an SI number."""
        return value * self.up / self.down

    def from_si(self, value: float) -> float:
        """Return an SI number in this unit."""
        return value * self.down / self.up - self.offset

    def difference_from_si(self, value: float) -> float:
        """Return an SI difference in this unit."""
        return value * self.down / self.up


def _base(place: int) -> Scale:
    powers = [0] * 6
    powers[place] = 1
    return Scale(1, 1, (powers[0], powers[1], powers[2], powers[3], powers[4], powers[5]))


_ATOMS: dict[str, Scale] = {name: _base(place) for place, name in enumerate(("m", "kg", "s", "K", "A", "rad"))}
_ATOMS["1"] = Scale(1, 1, NO_DIMENSION)

_DERIVED: tuple[tuple[str, int, int, str, str], ...] = (
    # symbol, up, down, of, source
    ("mm", 1, 1000, "m", "BIPM"),
    ("cm", 1, 100, "m", "BIPM"),
    ("km", 1000, 1, "m", "BIPM"),
    ("in", 254, 10000, "m", "yard 1959: 0.9144 m / 36"),
    ("ft", 3048, 10000, "m", "yard 1959: 0.9144 m / 3"),
    ("yd", 9144, 10000, "m", "yard 1959"),
    ("mi", 1609344, 1000, "m", "yard 1959: 1760 yd"),
    ("g", 1, 1000, "kg", "BIPM"),
    ("t", 1000, 1, "kg", "BIPM"),
    ("lb", 45359237, 100000000, "kg", "yard 1959"),
    ("oz", 1, 16, "lb", "NIST SP 811: avoirdupois"),
    ("ms", 1, 1000, "s", "BIPM"),
    ("min", 60, 1, "s", "BIPM"),
    ("h", 3600, 1, "s", "BIPM"),
    ("day", 86400, 1, "s", "BIPM"),
    ("C", 1, 1, "K", "BIPM, as a difference"),
    ("F", 5, 9, "K", "NIST SP 811, as a difference"),
    ("mA", 1, 1000, "A", "BIPM"),
    ("kA", 1000, 1, "A", "BIPM"),
    ("l", 1, 1000, "m3", "BIPM"),
    ("ml", 1, 1000000, "m3", "BIPM"),
    ("usgal", 231, 1, "in3", "NIST SP 811"),
    ("impgal", 454609, 100000, "l", "UK 1985"),
    ("Hz", 1, 1, "1/s", "BIPM"),
    ("N", 1, 1, "kg m/s2", "BIPM"),
    ("kN", 1000, 1, "N", "BIPM"),
    ("lbf", 980665, 100000, "lb m/s2", "NIST SP 811; standard gravity"),
    ("kgf", 980665, 100000, "N", "standard gravity"),
    ("Pa", 1, 1, "N/m2", "BIPM"),
    ("hPa", 100, 1, "Pa", "BIPM"),
    ("kPa", 1000, 1, "Pa", "BIPM"),
    ("MPa", 1000000, 1, "Pa", "BIPM"),
    ("GPa", 1000000000, 1, "Pa", "BIPM"),
    ("bar", 100000, 1, "Pa", "NIST SP 811"),
    ("mbar", 100, 1, "Pa", "NIST SP 811"),
    ("psi", 1, 1, "lbf/in2", "NIST SP 811"),
    ("psf", 1, 1, "lbf/ft2", "NIST SP 811"),
    ("J", 1, 1, "N m", "BIPM"),
    ("kJ", 1000, 1, "J", "BIPM"),
    ("MJ", 1000000, 1, "J", "BIPM"),
    ("W", 1, 1, "J/s", "BIPM"),
    ("mW", 1, 1000, "W", "BIPM"),
    ("kW", 1000, 1, "W", "BIPM"),
    ("Wh", 3600, 1, "J", "BIPM: watt times hour"),
    ("kWh", 3600000, 1, "J", "BIPM: watt times hour"),
    ("Btu", 105505585262, 100000000, "J", "NIST SP 811: International Table"),
    ("hp", 550, 1, "ft lbf/s", "NIST SP 811: 550 ft lbf/s"),
    ("V", 1, 1, "W/A", "BIPM"),
    ("mV", 1, 1000, "V", "BIPM"),
    ("kV", 1000, 1, "V", "BIPM"),
    ("VA", 1, 1, "V A", "BIPM: apparent power"),
    ("ohm", 1, 1, "V/A", "BIPM"),
    ("mohm", 1, 1000, "ohm", "BIPM"),
    ("Ah", 3600, 1, "A s", "BIPM: ampere times hour"),
    ("mAh", 36, 10, "A s", "BIPM: ampere times hour"),
    ("cfm", 1, 1, "ft3/min", "NIST SP 811"),
    ("mph", 1, 1, "mi/h", "NIST SP 811"),
    ("%", 1, 100, "1", "BIPM"),
)

_SPELLED = {
    "metre": "m", "metres": "m", "meter": "m", "meters": "m", "millimetre": "mm", "millimetres": "mm",
    "millimeter": "mm", "millimeters": "mm", "inch": "in", "inches": "in", "foot": "ft", "feet": "ft",
    "mile": "mi", "miles": "mi", "kilo": "kg", "kilos": "kg", "kgs": "kg", "kilogram": "kg", "kilograms": "kg",
    "gram": "g", "grams": "g", "lbs": "lb", "pound": "lb", "pounds": "lb", "ounce": "oz", "ounces": "oz",
    "tonne": "t", "tonnes": "t", "sec": "s", "secs": "s", "second": "s", "seconds": "s", "mins": "min",
    "minute": "min", "minutes": "min", "hr": "h", "hrs": "h", "hour": "h", "hours": "h", "d": "day", "days": "day",
    "kelvin": "K", "celsius": "C", "fahrenheit": "F", "amp": "A", "amps": "A", "ampere": "A", "amperes": "A",
    "volt": "V", "volts": "V", "watt": "W", "watts": "W", "L": "l", "ltr": "l", "litre": "l", "litres": "l",
    "liter": "l", "liters": "l", "mL": "ml", "cc": "cm3", "newton": "N", "newtons": "N", "ohms": "ohm",
    "btuh": "Btu/h", "kph": "km/h", "kmh": "km/h", "radian": "rad", "radians": "rad", "degree": "deg",
    "degrees": "deg", "percent": "%",
}  # fmt: skip

_EXACT_CASE = frozenset({"MPa", "mW", "mA", "mV", "MJ", "mohm", "mAh", "GPa", "kA", "hPa", "ms", "mbar"})
"""Prefixes a wrong capital would turn into another size: 5 MW is not 5 mW."""

_WORDS = (
    (re.compile(r"\bper\b"), "/"),
    (re.compile(r"(?i)\b(?:u\.?s\.?|american)\s*gal(?:lons?|s)?\b\.?"), "usgal"),
    (re.compile(r"(?i)\b(?:imp(?:erial|\.)?|u\.?k\.?)\s*gal(?:lons?|s)?\b\.?"), "impgal"),
    (re.compile(r"(?i)\bgal(?:lons?|s)?\b\.?"), "gal"),
    (re.compile(r"(?i)\b(?:sq|square)\.?\s*(in|ft|m|mm|cm|inch(?:es)?|feet|foot|metres?|meters?)\b\.?"), r"\g<1>2"),
    (re.compile(r"(?i)\b(?:cu|cubic)\.?\s*(in|ft|m|mm|cm|inch(?:es)?|feet|foot|metres?|meters?)\b\.?"), r"\g<1>3"),
    (re.compile(r"(?i)(?:\bdeg(?:rees?)?|°)\.?\s*([CFK])\b"), r"\1"),
    (re.compile(r"°"), "deg"),
)
_PIECE = re.compile(r"([A-Za-z%]+|1(?![0-9]))(?:(?:\^|\*\*)?(-?[1-6]))?")
_LONGEST_UNIT = 40
_LARGEST_FACTOR = 1e100


def unit_scale(text: str, words: str = "US") -> Scale | None:
    """Return the scale of a unit such as ``W/m2K``, or None if it is none; ``words`` says which gallon ``gal`` is.

    After the first slash everything divides: ``W/m2K`` = ``W/(m2 K)`` = ``W/m2/K``. Symbols stand side by side with
    or without a space (``kg m2``, ``kgm2``). A temperature alone (``F``) has its offset; inside a compound it is a
    difference.
    """
    return _unit_scale(text, words in IMPERIAL_GALLON_COUNTRIES)


IMPERIAL_GALLON_COUNTRIES = frozenset({"UK", "AU", "NZ", "IE"})
"""Where a gallon without a word is the imperial one. In Canada both are met; the rig's gallon is the US one there."""


@lru_cache(maxsize=512)
def _unit_scale(text: str, imperial: bool) -> Scale | None:
    if len(text) > _LONGEST_UNIT:
        return None
    for pattern, becomes in _WORDS:
        text = pattern.sub(becomes, text)
    text = text.strip().removesuffix(".")
    single = {"F": Scale(5, 9, _ATOMS["K"].dimension, 459.67), "C": Scale(1, 1, _ATOMS["K"].dimension, 273.15)}
    name = _symbol(text)
    if name in single:
        return single[name]
    return _compound(text, "impgal" if imperial else "usgal")


def _symbol(text: str) -> str | None:
    """Return the symbol a word stands for, with its own capitals or, where no other unit could be meant, without."""
    if text in _ATOMS:
        return text
    if text in _SPELLED:
        return _SPELLED[text]
    return _ANY_CASE.get(text.lower())


def _compound(text: str, gallon: str) -> Scale | None:
    """Return the product of the symbols of a compound unit."""
    product = _ATOMS["1"]
    is_below = False
    place = 0
    while place < len(text):
        if text[place] in " *.()·":
            place += 1
            continue
        if text[place] == "/":
            is_below = True
            place += 1
            continue
        piece = _PIECE.match(text, place)
        if piece is None:
            return None
        factor = _word(piece[1], gallon, int(piece[2] or 1))
        if factor is None:
            return None
        product = _times(product, factor, -1 if is_below else 1)
        if max(product.up, product.down) > _LARGEST_FACTOR:
            return None
        place = piece.end()
    return product if text.strip(" *.()·/") else None


def _word(word: str, gallon: str, power: int) -> Scale | None:
    """Return one symbol to a power, or several written together (``kgm2``), the power being the last one's."""
    word = gallon if word == "gal" else word
    symbol = _symbol(word)
    if symbol is None:
        return _joined(word, power)
    if symbol in _ATOMS:
        return _times(_ATOMS["1"], _ATOMS[symbol], power)
    spelled = _compound(symbol, gallon)
    return _times(_ATOMS["1"], spelled, power) if spelled else None


def _joined(word: str, power: int) -> Scale | None:
    """Return the product of symbols written together, in their own capitals: ``kgm2``, ``W/mK``.

    A leading ``m`` is a metre only in ``mK``: in ``mJ`` or ``mPa`` it means a thousandth, which is not read here.
    """
    for cut in range(len(word) - 1, 0, -1):
        if word[:cut] not in _ATOMS or (word[0] == "m" and cut == 1 and word != "mK"):
            continue
        rest = word[cut:]
        right = _times(_ATOMS["1"], _ATOMS[rest], power) if rest in _ATOMS else _joined(rest, power)
        if right is not None:
            return _times(right, _ATOMS[word[:cut]], 1)
    return None


def _times(left: Scale, right: Scale, power: int) -> Scale:
    size = abs(power)
    up, down = (right.up**size, right.down**size) if power >= 0 else (right.down**size, right.up**size)
    up, down = left.up * up, left.down * down
    if isinstance(up, int) and isinstance(down, int):
        common = math.gcd(up, down)
        up, down = up // common, down // common
    one, two = left.dimension, right.dimension
    return Scale(up, down, (one[0] + power * two[0], one[1] + power * two[1], one[2] + power * two[2],
                            one[3] + power * two[3], one[4] + power * two[4], one[5] + power * two[5]))  # fmt: skip


def _build() -> dict[str, str]:
    for symbol, up, down, of, _ in _DERIVED:
        unit = _compound(of, "usgal")
        if unit is None:
            raise ValueError(f"unit {symbol}: {of} is not known above it")
        _ATOMS[symbol] = _times(Scale(up, down, NO_DIMENSION), unit, 1)
    _ATOMS["deg"] = Scale(math.pi, 180, _ATOMS["rad"].dimension)  # BIPM
    folded = {name.lower(): name for name in _ATOMS if name not in _EXACT_CASE}
    return folded | {word.lower(): symbol for word, symbol in _SPELLED.items()}


_ANY_CASE: dict[str, str] = {}
_ANY_CASE.update(_build())
