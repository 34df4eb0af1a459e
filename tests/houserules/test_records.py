"""Rule 11 and I11: records are frozen, compared by value, hashable, and hold no line number.

Every module that holds records is read (the decorator) and imported (the types of the fields).
"""

from __future__ import annotations

import ast
import dataclasses
import importlib
import importlib.util
import inspect
import types
import typing
from collections.abc import Iterator
from pathlib import Path

import pytest
from pydantic import BaseModel

from tests.houserules.tree import PACKAGE, Module, classes, modules, plant

WITH_RECORDS = frozenset({"exchange", "finding", "model", "drawing", "disciplines", "source", "units", "study"})
MAY_HOLD_A_LINE = frozenset({"Problem"})
UNHASHABLE = (list, dict, set, bytearray)


def unfrozen(root: Path) -> list[str]:
    """Return the dataclasses that are not frozen or have no slots."""
    found = []
    for module in modules(root):
        if module.layer in WITH_RECORDS:
            for node in classes(module):
                decorators = [ast.unparse(one) for one in node.decorator_list if "dataclass" in ast.unparse(one)]
                found += [
                    f"{module.place}: {node.name}"
                    for text in decorators
                    if not ("frozen=True" in text and "slots=True" in text)
                ]
    return found


def pieces(annotation: object) -> Iterator[object]:
    """Yield every type an annotation is made of."""
    yield typing.get_origin(annotation) or annotation
    for inner in typing.get_args(annotation):
        if not isinstance(inner, str):
            yield from pieces(inner)


def record_types(namespace: types.ModuleType) -> list[type]:
    """Return the dataclasses, named tuples and entries that a module itself defines."""
    own = [one for _, one in inspect.getmembers(namespace, inspect.isclass) if one.__module__ == namespace.__name__]
    return [
        one for one in own if dataclasses.is_dataclass(one) or issubclass(one, BaseModel) or hasattr(one, "_fields")
    ]


def unhashable_fields(namespace: types.ModuleType) -> list[str]:
    """Return the fields of records that could hold something mutable, and those that hold a line number."""
    found = []
    for record in record_types(namespace):
        if issubclass(record, BaseModel) and not record.model_config.get("frozen"):
            found.append(f"{record.__name__} is not frozen")
        own = {name for base in record.__mro__ for name in vars(base).get("__annotations__", {})} - set(vars(BaseModel))
        for name, annotation in typing.get_type_hints(record, include_extras=False).items():
            if name not in own or typing.get_origin(annotation) is typing.ClassVar or name in BaseModel.__annotations__:
                continue
            bad = [one for one in pieces(annotation) if one in UNHASHABLE or one is typing.Any]
            found += [f"{record.__name__}.{name} may hold a {getattr(one, '__name__', one)}" for one in bad]
            is_number = any(one in (int, float) for one in pieces(annotation))  # the kind of a drawn line is a word
            if name in {"line", "column"} and is_number and record.__name__ not in MAY_HOLD_A_LINE:
                found.append(f"{record.__name__}.{name} is a place in the text")
    return found


def importable(module: Module) -> str:
    """Return the dotted name of a module of the package."""
    return "boxwright." + module.place.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def test_every_record_is_frozen_and_slotted() -> None:
    assert unfrozen(PACKAGE) == []


RECORD_MODULES = [importable(module) for module in modules() if module.layer in WITH_RECORDS]


@pytest.mark.parametrize("name", RECORD_MODULES)
def test_every_field_of_a_record_is_hashable(name: str) -> None:
    assert unhashable_fields(importlib.import_module(name)) == []


def test_a_planted_record_is_found(tmp_path: Path) -> None:
    text = (
        "from dataclasses import dataclass\nfrom pydantic import BaseModel\n"
        "@dataclass(frozen=True)\nclass A:\n    x: tuple[list[float], ...]\n    line: int\n"
        "@dataclass(frozen=True, slots=True)\nclass B:\n    x: tuple[float, ...] | None\n"
        "class C(BaseModel):\n    x: dict[str, int]\n"
    )
    plant(tmp_path, "model/a.py", text)
    assert unfrozen(tmp_path) == ["model/a.py: A"]
    spec = importlib.util.spec_from_file_location("planted", tmp_path / "model" / "a.py")
    assert spec is not None and spec.loader is not None
    planted = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(planted)
    assert unhashable_fields(planted) == [
        "A.x may hold a list",
        "A.line is a place in the text",
        "C is not frozen",
        "C.x may hold a dict",
    ]
