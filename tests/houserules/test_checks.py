"""Rule 4, I8 and I9: every method is run by its checks, procedures come to zero, and a mutated method is noticed.

A check of kind published or independent counts; one of kind hand never does. Methods for which nobody has found a
published case stand in the chapter text of the discipline, and their number may only fall.
"""

from __future__ import annotations

import importlib
import inspect
import pkgutil
import re
import types
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from unittest import mock

import pytest

from boxwright.source import RESULT, Check, load_checks
from tests.houserules.test_docstrings import label
from tests.houserules.test_folders import folders
from tests.houserules.test_formulas import plain_names
from tests.houserules.test_signatures import loaded, own_functions
from tests.houserules.tree import PACKAGE, plant

LISTED_UNDER = "No published case known"
MAY_ONLY_FALL: dict[str, int] = {"air": 8, "frame": 6, "heat": 12, "layout": 1, "weight": 24, "towing": 38}
"""How many methods of a discipline have no published case; lower a number when one is found, never raise it."""

COUNTS = frozenset({"published", "independent"})
MUTATIONS = (-1.0, 2.0)


def method_modules(folder: str) -> list[types.ModuleType]:
    """Return the module ``method`` of a discipline, with what is inside where it is a folder."""
    whole = importlib.import_module(f"boxwright.disciplines.{folder}.method")
    inside = pkgutil.iter_modules(getattr(whole, "__path__", []))
    return [whole, *(importlib.import_module(f"{whole.__name__}.{found.name}") for found in inside)]


def methods(folder: str) -> dict[str, Callable[..., object]]:
    """Return the public functions of a discipline's method by their name."""
    return {one.__name__: one for module in method_modules(folder) for one in own_functions(module)}


def named_results(returned: object) -> dict[str, object]:
    """Return what a method gave under the names a check may expect: the fields of a named tuple, else one result."""
    fields = returned._asdict() if hasattr(returned, "_asdict") else {}
    return {RESULT: returned, **fields}


def misses(check: Check, method: Callable[..., object]) -> tuple[str, ...]:
    """Return what a check does not find met; a method that can no longer answer misses everything."""
    try:
        return check.misses(named_results(method(**check.arguments())))
    except (ValueError, ArithmeticError) as refusal:
        return (f"{check.method} refuses: {refusal}",)


def scaled(value: object, factor: float) -> object:
    """Return a result with every number in it multiplied; truth values and counts stay."""
    if isinstance(value, float):
        return value * factor
    if isinstance(value, tuple):
        pieces = [scaled(piece, factor) for piece in value]
        return type(value)(*pieces) if hasattr(value, "_fields") else tuple(pieces)
    return value


@contextmanager
def mutated(modules: list[types.ModuleType], original: Callable[..., object], factor: float) -> Iterator[None]:
    """Put a mutated method in the place of the original, wherever a module knows it by its name."""

    def mutant(*given: object, **named: object) -> object:
        return scaled(original(*given, **named), factor)

    holding = [module for module in modules if vars(module).get(original.__name__) is original]
    patches = [mock.patch.object(module, original.__name__, mutant) for module in holding]
    for patch in patches:
        patch.start()
    try:
        yield
    finally:
        for patch in patches:
            patch.stop()


def unnoticed(modules: list[types.ModuleType], checks: list[Check], name: str) -> list[float]:
    """Return the mutations of a method that none of its checks notices."""
    original = next(vars(module)[name] for module in modules if name in vars(module))
    silent = []
    for factor in MUTATIONS:
        with mutated(modules, original, factor):
            found = [misses(check, vars(modules[0])[check.method]) for check in checks]
        if not any(found):
            silent.append(factor)
    return silent


def checks_of(folder: str, name: str) -> list[Check]:
    """Return the undisputed checks that run a method, by themselves or on the way."""
    checks = load_checks(f"boxwright.disciplines.{folder}")
    return [check for check in checks if name in (check.method, *check.covers) and not check.disputed]


def listed_without_case(text: str) -> list[str]:
    """Return the methods a chapter text lists as having no published case: the code words of that section."""
    section = re.split(rf"^#+ {LISTED_UNDER}.*$", text, flags=re.MULTILINE)
    return re.findall(r"`(\w+)`", re.split(r"^#+ ", section[1], flags=re.MULTILINE)[0]) if len(section) > 1 else []


def residuals(function: Callable[..., object], given: dict[str, object]) -> dict[str, float]:
    """Return what each residual of a procedure comes to, as a share of the greatest number squared that went in."""
    result = function(**given)
    names = {**plain_names(function), **given, "result": result, "__builtins__": {}}
    scale = 1.0 + max((abs(number) for number in numbers((tuple(given.values()), result))), default=0.0)
    texts = [text.strip() for text in label(inspect.getdoc(function) or "", "Satisfies").split(";")]
    return {text: abs(eval(text, names)) / scale**2 for text in texts}


def numbers(value: object) -> Iterator[float]:
    """Yield every number in nested tuples."""
    if isinstance(value, tuple):
        for piece in value:
            yield from numbers(piece)
    elif isinstance(value, (int, float)):
        yield float(value)


FOLDERS = folders(PACKAGE)
EVERY = [(folder, name) for folder in FOLDERS for name in methods(folder)]
PROCEDURES = [
    (folder, name) for folder, name in EVERY if label(inspect.getdoc(methods(folder)[name]) or "", "Satisfies")
]
CHECKS = [(folder, check) for folder in FOLDERS for check in load_checks(f"boxwright.disciplines.{folder}")]


@pytest.mark.parametrize(("folder", "check"), CHECKS, ids=[f"{folder}-{check.id}" for folder, check in CHECKS])
def test_the_method_gives_what_the_source_says(folder: str, check: Check) -> None:
    assert {check.method, *check.covers} <= set(methods(folder))
    assert bool(misses(check, methods(folder)[check.method])) == bool(check.disputed)


@pytest.mark.parametrize("folder", FOLDERS)
def test_methods_without_a_published_case_are_listed_and_no_more_than_before(folder: str) -> None:
    bare = [name for name in methods(folder) if not {check.kind for check in checks_of(folder, name)} & COUNTS]
    text = (PACKAGE / "disciplines" / folder / "README.md").read_text(encoding="utf-8")
    assert sorted(listed_without_case(text)) == sorted(bare)
    assert len(bare) <= MAY_ONLY_FALL.get(folder, 0)


@pytest.mark.parametrize(("folder", "name"), EVERY)
def test_a_mutated_method_makes_one_of_its_checks_fail(folder: str, name: str) -> None:
    assert unnoticed(method_modules(folder), checks_of(folder, name), name) == []


@pytest.mark.parametrize(("folder", "name"), PROCEDURES)
def test_what_a_procedure_satisfies_comes_to_zero(folder: str, name: str) -> None:
    own = [check for check in checks_of(folder, name) if check.method == name]
    assert own, "no check calls it"
    for check in own:
        assert {
            text: value for text, value in residuals(methods(folder)[name], check.arguments()).items() if value > 1e-9
        } == {}


PLANTED = '''
def inner(a):
    """Satisfies: result - 2 * a; 0 * a"""
    return 2.0 * a
def outer(a):
    """Satisfies: result - a"""
    return abs(inner(a))
'''


def test_a_planted_blind_check_and_a_planted_residual_are_found(tmp_path: Path) -> None:
    from boxwright.source import Expected, Given

    module = loaded(plant(tmp_path, "planted_method.py", PLANTED) / "planted_method.py")
    with mock.patch.dict("sys.modules", {module.__name__: module}):
        check = Check(
            id="x",
            method="outer",
            covers=("inner",),
            source="s",
            place="p",
            kind="published",
            given=(Given("a", "3", 3.0),),
            expect=(Expected(RESULT, "6", 6.0, 0.1),),
            within="0.1",
        )
        assert misses(check, module.outer) == ()
        assert unnoticed([module], [check], "outer") == []
        assert unnoticed([module], [check], "inner") == [-1.0]  # outer takes the sign away, so the check is blind to it
        assert residuals(module.inner, {"a": 3.0}) == {"result - 2 * a": 0.0, "0 * a": 0.0}
        assert residuals(module.outer, {"a": 3.0})["result - a"] > 1e-9
    assert listed_without_case("# A\n## No published case known\n`one` and `two`\n## B\n`three`\n") == ["one", "two"]
    assert listed_without_case("# A\n") == []
