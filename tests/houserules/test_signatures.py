"""Rule 8 and I4: a number in the signature of a method, and in an entry of the rig file, says its unit."""

from __future__ import annotations

import importlib
import importlib.util
import inspect
import types
import typing
from collections.abc import Iterator
from pathlib import Path

import pytest
from pydantic import BaseModel

from boxwright.units import Band, Unit
from tests.houserules.test_records import importable
from tests.houserules.tree import PACKAGE, modules, plant


def numbers_without_unit(annotation: object) -> Iterator[object]:
    """Yield the floats and bands in an annotation that carry no unit; a whole number counts things and needs none."""
    if annotation is float or annotation is Band:
        yield annotation
    if typing.get_origin(annotation) is typing.Annotated and any(
        isinstance(one, Unit)
        for one in annotation.__metadata__  # type: ignore[attr-defined]
    ):
        return
    for inner in typing.get_args(annotation):
        yield from numbers_without_unit(inner)
    if hasattr(annotation, "_fields"):
        for field in typing.get_type_hints(annotation, include_extras=True).values():
            yield from numbers_without_unit(field)


def own_functions(namespace: types.ModuleType) -> list[types.FunctionType]:
    """Return the public functions that a module itself defines."""
    found = [one for name, one in inspect.getmembers(namespace, inspect.isfunction) if not name.startswith("_")]
    return [one for one in found if one.__module__ == namespace.__name__]


def signatures_without_unit(namespace: types.ModuleType) -> list[str]:
    """Return the arguments and results of a method's public functions that are numbers without a unit."""
    return [
        f"{function.__name__}: {name}"
        for function in own_functions(namespace)
        for name, annotation in typing.get_type_hints(function, include_extras=True).items()
        if list(numbers_without_unit(annotation))
    ]


def fields_without_unit(namespace: types.ModuleType) -> list[str]:
    """Return the fields of a module's entries that are numbers without a unit."""
    entries = [one for _, one in inspect.getmembers(namespace, inspect.isclass) if issubclass(one, BaseModel)]
    return [
        f"{entry.__name__}.{name}"
        for entry in entries
        if entry.__module__ == namespace.__name__
        for name, annotation in typing.get_type_hints(entry, include_extras=True).items()
        if name in entry.model_fields and list(numbers_without_unit(annotation))
    ]


def loaded(path: Path) -> types.ModuleType:
    """Return a module that a test has planted, imported from its file."""
    spec = importlib.util.spec_from_file_location(f"planted_{path.stem}", path)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


METHODS = [importable(module) for module in modules(PACKAGE) if module.part_of_slice == "method"]
ENTRIES = [importable(m) for m in modules(PACKAGE) if m.part_of_slice == "parts" or m.layer == "model"]


@pytest.mark.parametrize("name", METHODS)
def test_every_number_of_a_method_has_a_unit(name: str) -> None:
    assert signatures_without_unit(importlib.import_module(name)) == []


@pytest.mark.parametrize("name", ENTRIES)
def test_every_number_of_the_rig_file_has_a_unit(name: str) -> None:
    assert fields_without_unit(importlib.import_module(name)) == []


def test_a_planted_number_without_unit_is_found(tmp_path: Path) -> None:
    text = (
        "from typing import Annotated, NamedTuple\nfrom pydantic import BaseModel\n"
        "from boxwright.units import Band, Metre, MetreBand\n"
        "class Two(NamedTuple):\n    a: Metre\n    b: float\n"
        "class Entry(BaseModel):\n    a: MetreBand | None = None\n    b: tuple[float, ...] = ()\n"
        "def f(a: Metre, b: tuple[float, ...], c: int) -> Metre: ...\n"
        "def g(a: tuple[Metre, ...]) -> Two: ...\n"
        "def _h(a: float) -> float: ...\n"
    )
    planted = loaded(plant(tmp_path, "method.py", text) / "method.py")
    assert signatures_without_unit(planted) == ["f: b", "g: return"]
    assert fields_without_unit(planted) == ["Entry.b"]
