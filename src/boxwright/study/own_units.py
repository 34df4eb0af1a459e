"""The numbers of a formula in the builder's own units: what went in, the formula with them in it, what came out.

A formula is run in SI. With pounds and inches put in it comes to the same where no number in it has a unit of its own;
whether it does is tried, by running it so. Where it does not, the line with the numbers says that they are in SI.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from math import isclose
from typing import get_args, get_type_hints

from boxwright.units import HeaderUnits, Unit, show
from boxwright.units.shown import shown_unit

Number = float | tuple[float, ...]
Method = Callable[..., object]
OF_HEADER = {"m": "length", "kg": "mass", "K": "temperature", "m**3": "volume"}
"""The quantities the header of a rig names a unit for, by their SI unit."""
SHOWN_TOO = frozenset({"rad", "N", "Pa", "m/s", "m**2", "m**3/s", "kg*m"})
"""SI units that formulas stay in, and that are said in the unit of the trade as well."""
APART = frozenset({"difference", "band", "sky_drop"})
"""Arguments in kelvin that are the difference of two temperatures: no zero is taken off them."""
IN_SI = "in SI: "
SAME = 1e-9
"""Share by which a result may differ and be the same: what is lost by converting there and back."""
NOTHING = 1e-12
"""What is left of a nought by adding and taking away."""
_WORD = re.compile(r"[A-Za-z_]\w*")


def own(value: float, unit: str, shown_in: HeaderUnits, name: str = "") -> str:
    """Return a number of a formula with all its figures, in the builder's unit where the header names one for it."""
    if unit in OF_HEADER:
        return f"{_converted(value, unit, shown_in, name):.6g} {_unit_shown(unit, shown_in)}"
    in_si = f"{0.0 if abs(value) < NOTHING else value:.6g} {unit}".strip()
    told = show(value, unit, shown_in) if unit in SHOWN_TOO else in_si
    return in_si if told == in_si or not told else f"{in_si} = {told}"


def put_in(method: Method, formula: str, given: Mapping[str, Number], shown_in: HeaderUnits) -> str:
    """Return a formula with each named number in place of its name, in the units the numbers are shown in."""
    single = {name: value for name, value in given.items() if isinstance(value, (int, float))}
    if not formula or not single:
        return ""
    units = units_of(method)
    told = {name: _converted(value, units.get(name, ""), shown_in, name) for name, value in single.items()}
    if told != single and not _comes_to_the_same(method, given, units, shown_in):
        return IN_SI + _replaced(formula, single)
    return _replaced(formula, told)


def units_of(documented: Method) -> dict[str, str]:
    """Return the SI unit of each argument of a method, and of what it returns: of its parts, where they are several."""
    hints = get_type_hints(documented, include_extras=True)
    found = {name: _unit(hint) for name, hint in hints.items()}
    parts = hints.get("return")
    if isinstance(parts, type) and hasattr(parts, "_fields"):
        found |= {part_named(name): _unit(hint) for name, hint in get_type_hints(parts, include_extras=True).items()}
    return found


def part_named(part: str) -> str:
    """Return under which name `units_of` keeps the unit of one part of a result; of the whole where it has no name."""
    return f"return.{part}" if part else "return"


def _unit(hint: object) -> str:
    for argument in get_args(hint):
        if isinstance(argument, Unit):
            return "" if argument.symbol in {"1", ""} else argument.symbol
        inner = _unit(argument)
        if inner:
            return inner
    return ""


def _unit_shown(unit: str, shown_in: HeaderUnits) -> str:
    return shown_unit(OF_HEADER[unit], shown_in)[0]


def _converted(value: float, unit: str, shown_in: HeaderUnits, name: str) -> float:
    if unit not in OF_HEADER:
        return value
    _, scale = shown_unit(OF_HEADER[unit], shown_in)
    return scale.difference_from_si(value) if name in APART else scale.from_si(value)


def _comes_to_the_same(
    method: Method, given: Mapping[str, Number], units: Mapping[str, str], shown_in: HeaderUnits
) -> bool:
    """Return whether a formula run on the numbers as shown gives its result as shown."""

    def shown(name: str, value: Number) -> Number:
        unit = units.get(name, "")
        if isinstance(value, tuple):
            return tuple(_converted(one, unit, shown_in, name) for one in value)
        return _converted(value, unit, shown_in, name) if unit in OF_HEADER else value

    try:
        in_si = method(**given)
        in_own = method(**{name: shown(name, value) for name, value in given.items()})
    except (TypeError, ValueError, ArithmeticError):
        return False
    if not isinstance(in_si, (int, float)) or not isinstance(in_own, (int, float)):
        return False
    return isclose(_converted(in_si, units.get("return", ""), shown_in, ""), in_own, rel_tol=SAME, abs_tol=SAME)


def _replaced(formula: str, given: Mapping[str, float]) -> str:
    right = formula.partition(" = ")[2]
    return "= " + _WORD.sub(lambda word: f"{given[word[0]]:.6g}" if word[0] in given else word[0], right)
