"""The words in which air tells what it found, and how a rule of a country counts."""

from __future__ import annotations

from boxwright.disciplines.air.result import Vent
from boxwright.disciplines.air.sourced import UNREAD
from boxwright.finding import Use, listed
from boxwright.source import Rule
from boxwright.units import Band, HeaderUnits, show, show_band
from boxwright.units.quantity import scale_of
from boxwright.units.shown import shown_unit

SLEEP: tuple[Use, ...] = ("sleep",)
LEAVE: tuple[Use, ...] = ("leave",)
WORK: tuple[Use, ...] = ("work",)
OWN_RULE = "own-rule"
PER_MILLION, GRAMS = 1e6, 1e3
TENTHS_BELOW = 9.95
ONLY_RECALLED = ("from memory", "common practice, no source")
"""How a rule was read that nobody read."""


def ppm(share: float) -> str:
    """Return a share of a gas as people say it, to two digits."""
    number = share * PER_MILLION
    step = 100.0 if number >= 1000.0 else 10.0
    return f"{round(number / step) * step:,.0f} ppm"


def ppm_band(band: Band) -> str:
    """Return a share of a gas with its doubt."""
    low, high = ppm(band.low), ppm(band.high)
    return low if low == high else f"{low.removesuffix(' ppm')} to {high}"


def percent(share: float) -> str:
    """Return a share in whole per cent."""
    return f"{share * 100.0:.0f} %"


def flow(band: Band, shown_in: HeaderUnits) -> str:
    """Return a flow of air with its doubt."""
    return show_band(band, "flow", shown_in).removesuffix(", assumed")


def area(band: Band, shown_in: HeaderUnits) -> str:
    """Return a free area; nothing where there is none."""
    return "nothing" if band.high <= 0.0 else show_band(band, "area", shown_in).removesuffix(", assumed")


def grams(kilogram: float) -> str:
    """Return a little water as it is said in the kitchen: whole grams, tenths of the first ten."""
    water = kilogram * GRAMS
    return f"{water:.1f} g" if 0.0 < water < TENTHS_BELOW else f"{water:.0f} g"


def water(kilogram: float, shown_in: HeaderUnits) -> str:
    """Return a little water: grams, or ounces where what lies on a surface is told on a square foot."""
    return f"{scale_of('oz').from_si(kilogram):.0f} oz" if is_over_feet(shown_in) else grams(kilogram)


def water_over(kilogram: float, shown_in: HeaderUnits) -> str:
    """Return the water on so much of a surface (kg/m2): grams on a square metre, ounces on a square foot."""
    if not is_over_feet(shown_in):
        return grams(kilogram)
    return f"{scale_of('oz/ft2').from_si(kilogram):.2g} oz"


def is_over_feet(shown_in: HeaderUnits) -> bool:
    """Return whether what lies on a surface is told on a square foot of it, not on a square metre."""
    return shown_unit("length", shown_in)[0] in ("in", "ft")


def between(band: tuple[float, float, float], shown_in: HeaderUnits) -> str:
    """Return a temperature, most likely and between which, as people say it."""
    return spread(*(show(one, "temperature", shown_in) for one in band))


def spread(best: str, low: str, high: str) -> str:
    """Return a value with what it may be in brackets, such as ``6 h (0 to 11)``; alone where that says no more."""
    if low == high == best:
        return best
    unit = best.rpartition(" ")[2]
    return f"{best} ({low.removesuffix(f' {unit}')} to {high.removesuffix(f' {unit}')})"


def is_read(rule: Rule) -> bool:
    """Return whether somebody read a rule, if only as a quotation: such a one may stop."""
    return rule.read_as not in ONLY_RECALLED


def unread_at(country: str) -> str:
    """Return which document of the home was not read, to stand behind what is said; empty where none is known."""
    document = UNREAD.get({"GB": "UK"}.get(country, country), "")
    return f"; {document} was not read for this, ask for it" if document else ""


def named(vents: tuple[Vent, ...]) -> str:
    """Return the names of some vents as a list."""
    return listed([one.planned.name for one in vents])
