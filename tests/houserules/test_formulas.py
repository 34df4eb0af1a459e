"""I8: the `Formula:` of every method is executed against its code, and its dimensions are proved.

Arguments are drawn from one fixed seed. A draw that the method refuses as out of range is drawn again; a method that
refuses nearly all of them fails here, since then nothing has been compared.
"""

from __future__ import annotations

import importlib
import inspect
import math
import random
import types
import typing
from collections.abc import Callable
from pathlib import Path

import pint
import pytest

from boxwright.units import Unit
from tests.houserules.test_docstrings import label
from tests.houserules.test_signatures import METHODS, loaded, own_functions
from tests.houserules.tree import plant

WANTED, DRAWS, LENGTH = 20, 2_000, 3
PLAIN = {"sum": sum, "min": min, "max": max, "abs": abs, "zip": zip, "len": len, "range": range, "enumerate": enumerate}
UNITS = pint.UnitRegistry()


def formula(function: Callable[..., object]) -> str:
    """Return the right side of a method's formula; empty where it is a procedure."""
    return label(inspect.getdoc(function) or "", "Formula").partition(" = ")[2]


def unit_of(annotation: object) -> str:
    """Return the unit symbol of an annotated number."""
    metadata = getattr(annotation, "__metadata__", ())
    return next((one.symbol for one in metadata if isinstance(one, Unit)), "")


def drawn(annotation: object, luck: random.Random) -> object:
    """Return a value for an argument: shares under a half, angles under 17 degrees, places on both sides of zero.

    Temperatures are those a trailer sees, in kelvin.
    """
    if typing.get_origin(annotation) is tuple:
        inner = typing.get_args(annotation)
        kinds = inner[:1] * LENGTH if inner[-1] is Ellipsis else inner
        return tuple(drawn(kind, luck) for kind in kinds)
    if annotation is int:
        return luck.randint(1, 4)
    if annotation is bool:
        return luck.random() < 0.5
    ends = {"": (0.05, 0.45), "rad": (0.04, 0.3), "K": (240.0, 320.0)}.get(unit_of(annotation), (0.5, 10.0))
    return luck.uniform(*ends) * (-1.0 if unit_of(annotation) == "m" and luck.random() < 0.2 else 1.0)


def quantities(annotation: object, value: object) -> object:
    """Return a drawn value with its unit."""
    if isinstance(value, tuple):
        inner = typing.get_args(annotation)
        kinds = inner[:1] * len(value) if inner[-1] is Ellipsis else inner
        return tuple(quantities(kind, one) for kind, one in zip(kinds, value, strict=True))
    symbol = unit_of(annotation)
    return UNITS.Quantity(value, symbol) if symbol and isinstance(value, float) else value


def plain_names(function: Callable[..., object]) -> dict[str, object]:
    """Return what a formula may name: mathematics, and the constants and functions of its own module."""
    own = vars(inspect.getmodule(function))
    mathematics = {name: one for name, one in vars(math).items() if not name.startswith("_")}
    return {**mathematics, **{name: one for name, one in own.items() if not name.startswith("_")}, **PLAIN}


def measured_names(function: Callable[..., object]) -> dict[str, object]:
    """Return the same names for numbers with units; a function of the module is replaced by its own formula."""

    def number(value: object) -> float:
        return float(value.to("").magnitude) if isinstance(value, UNITS.Quantity) else float(value)  # type: ignore[arg-type]

    names = plain_names(function)
    for plain in (math.sin, math.cos, math.tan, math.asin, math.acos, math.atan, math.log, math.log10, math.exp):
        names[plain.__name__] = lambda value, plain=plain: plain(number(value))
    names["sqrt"] = lambda value: value**0.5
    names["hypot"] = lambda *sides: sum(side**2 for side in sides) ** 0.5
    names["atan2"] = lambda up, along: math.atan(number(up / along))
    for other in own_functions(typing.cast(types.ModuleType, inspect.getmodule(function))):
        if formula(other) and other is not function:
            names[other.__name__] = lambda *given, other=other: evaluated(
                other, dict(zip(inspect.signature(other).parameters, given, strict=True)), measured_names(other)
            )
    return names


def evaluated(function: Callable[..., object], given: dict[str, object], names: dict[str, object]) -> object:
    """Return what a method's formula comes to."""
    return eval(formula(function), {**names, **given, "__builtins__": {}})


def draws(function: Callable[..., object]) -> list[tuple[dict[str, object], object]]:
    """Return arguments a method accepts, each with what it returns for them."""
    hints = {name: one for name, one in hints_of(function).items() if name != "return"}
    luck = random.Random(1)
    accepted: list[tuple[dict[str, object], object]] = []
    for _ in range(DRAWS):
        given = {name: drawn(annotation, luck) for name, annotation in hints.items()}
        try:
            accepted.append((given, function(**given)))
        except ValueError as refusal:
            if type(refusal).__name__ != "OutOfRange":
                raise
        if len(accepted) == WANTED:
            break
    return accepted


def hints_of(function: Callable[..., object]) -> dict[str, object]:
    """Return the annotations of a method with their units."""
    return typing.get_type_hints(function, include_extras=True)


def differs(function: Callable[..., object]) -> str:
    """Return how a method's formula and its code differ; empty where they agree on every draw."""
    accepted = draws(function)
    if len(accepted) < WANTED:
        return f"{function.__name__} accepted {len(accepted)} of {DRAWS} draws"
    for given, returned in accepted:
        by_formula = evaluated(function, given, plain_names(function))
        if not agree(by_formula, returned):
            return f"{function.__name__}{given}: formula {by_formula}, code {returned}"
    return ""


def agree(first: object, second: object) -> bool:
    """Return whether two numbers, or two tuples of them, agree to 1e-12."""
    if isinstance(first, tuple) and isinstance(second, tuple):
        return len(first) == len(second) and all(agree(a, b) for a, b in zip(first, second, strict=True))
    return math.isclose(float(first), float(second), rel_tol=1e-12, abs_tol=1e-12)  # type: ignore[arg-type]


def dimension_wrong(function: Callable[..., object]) -> str:
    """Return how the dimensions of a formula differ from the unit of what it returns; empty where they agree."""
    hints = hints_of(function)
    for given, _ in draws(function)[:1]:
        with_units = {name: quantities(hints[name], value) for name, value in given.items()}
        try:
            came = UNITS.Quantity(1.0) * evaluated(function, with_units, measured_names(function))  # type: ignore[operator]
        except pint.DimensionalityError as error:
            return f"{function.__name__}: {error}"
        if came.dimensionality != UNITS.Quantity(1.0, unit_of(hints["return"])).dimensionality:
            return f"{function.__name__}: {came.units} for {unit_of(hints['return']) or 'a plain number'}"
    return ""


FORMULAS = [one for name in METHODS for one in own_functions(importlib.import_module(name)) if formula(one)]


@pytest.mark.parametrize("function", FORMULAS, ids=lambda one: one.__name__)
def test_the_formula_is_what_the_code_does(function: Callable[..., object]) -> None:
    assert differs(function) == ""


@pytest.mark.parametrize("function", FORMULAS, ids=lambda one: one.__name__)
def test_the_dimensions_of_the_formula_come_out(function: Callable[..., object]) -> None:
    if label(inspect.getdoc(function) or "", "Units") == "empirical":
        pytest.skip("its constants carry dimensions, and it says so")
    assert dimension_wrong(function) == ""


PLANTED = '''
from boxwright.units import Kilogram, Metre, Ratio
class OutOfRange(ValueError): ...
def right(mass: Kilogram, arms: tuple[Metre, ...]) -> Metre:
    """Return it at once.

    Formula: place = sum(mass * arm for arm in arms) /
        (3 * mass)
    """
    return sum(mass * arm for arm in arms) / (3 * mass)
def wrong_constant(mass: Kilogram) -> Kilogram:
    """Formula: twice = 2 * mass"""
    return 2.1 * mass
def wrong_dimension(mass: Kilogram, arm: Metre) -> Metre:
    """Formula: arm = mass * arm"""
    return mass * arm
def mixed_sum(mass: Kilogram, arm: Metre) -> Metre:
    """Formula: arm = mass + arm"""
    return mass + arm
def never(mass: Kilogram) -> Kilogram:
    """Formula: mass = mass"""
    raise OutOfRange
'''


def test_planted_wrong_formulas_are_found(tmp_path: Path) -> None:
    module = loaded(plant(tmp_path, "method.py", PLANTED) / "method.py")
    importlib.sys.modules[module.__name__] = module  # type: ignore[attr-defined]
    assert differs(module.right) == "" and dimension_wrong(module.right) == ""
    assert differs(module.wrong_constant).startswith("wrong_constant{")
    assert dimension_wrong(module.wrong_dimension) == "wrong_dimension: kilogram * meter for m"
    assert dimension_wrong(module.mixed_sum).startswith("mixed_sum: Cannot convert")
    assert differs(module.never) == "never accepted 0 of 2000 draws"
