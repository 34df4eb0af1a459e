"""How a number is shown: in the user's own units, rounded for reading. Never used in a calculation.

A quantity of the header (length, mass, temperature, volume, wire, money) is shown in the header's unit. Heat that is
lost, in all and for each degree, goes with the degree that is shown: Btu/h and Btu/h per F, or W and W/K. Any other is
shown in the unit of the trade of the home country: psi or bar, cfm or m3/h, mph or km/h.
"""

from __future__ import annotations

import math
import re
from fractions import Fraction

from boxwright.units.band import Band, HeaderUnits
from boxwright.units.quantity import QUANTITIES, header_unit, quantity_named, scale_of
from boxwright.units.refusal import INCH_COUNTRIES
from boxwright.units.scale import Scale, unit_scale
from boxwright.units.term import READS_LIKE_A_DECIMAL
from boxwright.units.wire import gauge_area, gauge_name, nearest_gauge

CUT = 16
"""Cuts are shown to the nearest sixteenth of an inch."""

_MILE_COUNTRIES = frozenset({"US", "UK"})
_COMMA_COUNTRIES = frozenset({"US", "CA", "UK", "AU", "NZ", "IE"})
_SAME_WIRE = 0.01
"""A cross-section within 1 % of a gauge is that gauge: tables give four figures."""

_OF_SYMBOL = {
    "m": "length", "kg": "mass", "K": "temperature", "m**3": "volume", "m3": "volume", "m**2": "area", "m2": "area",
    "W": "power", "J": "energy", "A": "current", "V": "voltage", "C": "charge", "ohm": "resistance",
    "Pa": "pressure", "m**3/s": "flow", "m3/s": "flow", "rad": "angle", "": "ratio", "s": "time", "m/s": "speed",
    "J/m**2": "irradiation", "J/m2": "irradiation", "W/m**2/K": "transmittance", "W/m2K": "transmittance",
    "W/K": "heat loss", "1/K": "temperature coefficient", "N": "force", "N/m": "stiffness",
    "kg*m**2": "inertia", "kg m2": "inertia", "kg*m": "leverage", "kg m": "leverage",
}  # fmt: skip
"""The quantity behind an SI symbol, for a `Finding`, which carries only the symbol."""

_HERE = {  # quantity: the unit in the United States and Canada, the unit elsewhere
    "power": ("W", "W"),
    "energy": ("Wh", "Wh"),
    "current": ("A", "A"),
    "voltage": ("V", "V"),
    "charge": ("Ah", "Ah"),
    "resistance": ("ohm", "ohm"),
    "resistivity": ("ohm m", "ohm m"),
    "pressure": ("psi", "bar"),
    "flow": ("cfm", "m3/h"),
    "fuel flow": ("gal/h", "l/h"),
    "strokes": ("1/min", "1/min"),
    "area": ("sq in", "cm2"),
    "angle": ("deg", "deg"),
    "ratio": ("%", "%"),
    "time": ("h", "h"),
    "irradiation": ("kWh/m2", "kWh/m2"),
    "insulation": ("ft2 F h/Btu", "m2K/W"),
    "temperature coefficient": ("%/C", "%/C"),
    "force": ("lbf", "N"),
    "stiffness": ("lbf/in", "N/mm"),
    "inertia": ("lb ft2", "kg m2"),
    "leverage": ("lb ft", "kg m"),
}
_AT_HOME = {  # the unit where the header names none
    "length": ("in", "mm"),
    "mass": ("lb", "kg"),
    "temperature": ("F", "C"),
    "volume": ("gal", "l"),
    "wire": ("AWG", "mm2"),
}

_BY_DEGREE = {  # the unit where temperatures are shown in F, the unit where they are in C
    "heat loss": ("Btu/h per F", "W/K"),
    "heat flow": ("Btu/h", "W"),
    "transmittance": ("Btu/h ft2 F", "W/m2K"),
    "conductivity": ("Btu in/h ft2 F", "W/mK"),
}

DIFFERENCE = "temperature difference"
_DIGITS = re.compile(r"[-\d.,/ ]*\d")
"""The number a text begins with; what follows is its unit, in one word or two."""


def show(value: float, quantity: str, header: HeaderUnits, *, cuts: bool = False) -> str:
    """Return an SI number in the user's units: ``63 1/2 in``, ``612 lb``, ``14.2 %``, ``20 F``.

    ``quantity`` is one of `QUANTITIES`, the SI symbol a `Finding` carries ("kg"), or any unit to show it in ("N m");
    a temperature difference is one that no zero is taken off.
    ``cuts`` shows a length as it is cut: inches to the nearest sixteenth, metric to the whole millimetre.
    """
    if not math.isfinite(value):
        return "unknown"
    name = _OF_SYMBOL.get(quantity, quantity)
    if name == "money":
        return f"{_price(value, header)} {header.money or ''}".strip()
    if name == "wire":
        return _shown_wire(value, header)
    if name == DIFFERENCE:
        unit, scale = shown_unit("temperature", header)
        number = scale.difference_from_si(value)
        return f"{_grouped(number, 0 if abs(number) >= 9.95 else 1, header)} {unit}"
    unit, scale = shown_unit(quantity, header)
    number = scale.from_si(value)
    if cuts and name == "length":
        return _shown_cut(value, unit, number)
    return f"{_number(number, name, unit, header)} {unit}".strip()


def show_band(band: Band, quantity: str, header: HeaderUnits, *, cuts: bool = False) -> str:
    """Return a number with its doubt: ``612 lb``, ``612 +- 45 lb``, ``95 to 140 kg``, ``unknown``.

    A sum with an unknown in it has only a lower end, ``at least 3,210 lb``. A number nobody wrote down, taken from
    the kind of thing, says so: ``32 to 48 lb, assumed``.
    """
    low, high = (show(end, quantity, header, cuts=cuts) for end in (band.low, band.high))
    name = _OF_SYMBOL.get(quantity, quantity)
    is_signed = name in QUANTITIES and quantity_named(name).may_be_negative
    if math.isinf(band.high):
        has_low_end = math.isfinite(band.low) and (is_signed or band.low > 0.0)
        return f"at least {low}" if has_low_end else "unknown"
    if math.isinf(band.low):
        return f"at most {high}"
    if low == high:
        return show(band.best, quantity, header, cuts=cuts)
    says = _plus_minus(band, quantity, header) if band.spread == "sigma" else _from_to(low, high)
    return f"{says}, assumed" if band.assumed else says


def shown_unit(quantity: str, header: HeaderUnits) -> tuple[str, Scale]:
    """Return the unit a quantity is shown in, with its scale; a chart labels and scales its axis with them."""
    name = _OF_SYMBOL.get(quantity, quantity)
    here = 0 if header.words in INCH_COUNTRIES else 1
    if name in _AT_HOME:
        unit = header_unit(quantity_named(name), header) or _AT_HOME[name][here]
    elif name in _BY_DEGREE:
        unit = _BY_DEGREE[name][0 if shown_unit("temperature", header)[0] == "F" else 1]
    elif name == "speed":
        unit = "mph" if header.words in _MILE_COUNTRIES else "km/h"
    elif name in _HERE:
        unit = _HERE[name][here]
    else:
        unit = quantity
    scale = unit_scale(unit, header.words)
    return unit, scale if scale else scale_of(unit)


def _number(number: float, name: str, unit: str, header: HeaderUnits) -> str:
    """Return the digits of a number: whole lb and kg, one decimal under 10; three significant digits else."""
    if name == "mass" and unit in ("lb", "kg"):
        return _grouped(number, 1 if abs(number) < 9.95 else 0, header)
    if name == "temperature":
        return _grouped(number, 0 if unit == "F" else 1, header)
    return _grouped(number, _decimals(number), header, comma=name != "length" and unit not in READS_LIKE_A_DECIMAL)


def _decimals(number: float) -> int:
    """Return how many decimals leave three significant digits; digits before the point are never dropped."""
    if number == 0.0:
        return 0
    return max(0, min(9, 2 - math.floor(math.log10(abs(number)))))


def _price(amount: float, header: HeaderUnits) -> str:
    """Return an amount of money, with two decimals unless it is whole."""
    style = "," if header.words in _COMMA_COUNTRIES else ""
    return f"{amount:{style}.{0 if amount == round(amount) else 2}f}"


def _grouped(number: float, decimals: int, header: HeaderUnits, comma: bool = True) -> str:
    style = "," if comma and header.words in _COMMA_COUNTRIES else ""
    text = f"{number:{style}.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _shown_cut(value: float, unit: str, number: float) -> str:
    if unit == "in":
        return f"{_sixteenths(number)} in"
    if unit == "ft":
        sign, inches = ("-" if number < 0.0 else ""), Fraction(round(abs(number) * 12 * CUT), CUT)
        return f"{sign}{inches // 12}' {_sixteenths(float(inches % 12))}\""
    decimals = {"mm": 0, "cm": 1, "m": 3}.get(unit, 3)
    # Rounded before it is shown: of two equal gaps one must not come out as 88 mm and the other as 87.
    figure = round(value / scale_of(unit).up * scale_of(unit).down, decimals + 6)
    return f"{figure:.{decimals}f} {unit}".replace("-0 ", "0 ")


def _sixteenths(inches: float) -> str:
    """Return inches as a whole number and a fraction in lowest terms, to the nearest sixteenth."""
    whole, part = divmod(round(abs(inches) * CUT), CUT)
    sign = "-" if inches < 0.0 and (whole or part) else ""
    if not part:
        return f"{sign}{whole}"
    fraction = Fraction(part, CUT)
    return f"{sign}{f'{whole} ' if whole else ''}{fraction.numerator}/{fraction.denominator}"


def _shown_wire(area: float, header: HeaderUnits) -> str:
    unit = header.wire or _AT_HOME["wire"][0 if header.words in INCH_COUNTRIES else 1]
    if unit.upper() == "AWG" and area > 0.0:
        gauge = nearest_gauge(area)
        if abs(area / gauge_area(gauge) - 1.0) <= _SAME_WIRE:
            return f"{gauge_name(gauge)} AWG"
    return f"{_grouped(area * 1e6, _decimals(area * 1e6), header)} mm2"


def _plus_minus(band: Band, quantity: str, header: HeaderUnits) -> str:
    """Return ``612 +- 45 lb``, the half-width with as many decimals as it needs to be seen."""
    middle = show(band.best, quantity, header)
    half = (band.high - band.low) / 2.0
    name = _OF_SYMBOL.get(quantity, quantity)
    if name in ("wire", "money"):
        width = _price(half, header) if name == "money" else _grouped(half * 1e6, 2, header)
    else:
        unit, scale = shown_unit(quantity, header)
        size = scale.difference_from_si(half)
        width = _number(size, name, unit, header)
        if width == "0":
            width = _grouped(size, _decimals(size), header)
    number, gap, unit = middle.partition(" ")
    return f"{number} +- {width}{gap}{unit}"


def _from_to(low: str, high: str) -> str:
    """Return ``95 to 140 kg``: the unit once, where both ends have the same."""
    number, other = _DIGITS.match(low), _DIGITS.match(high)
    is_same = number and other and low[number.end() :].strip() and low[number.end() :] == high[other.end() :]
    return f"{number[0]} to {high}" if number and is_same else f"{low} to {high}"
