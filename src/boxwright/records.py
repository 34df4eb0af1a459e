"""``dataclass`` for frozen records with slots, as the standard library's and several times as quick to define.

A cold answer on the command line defines three hundred records. The standard library compiles six functions for each
of them at once, which was close to half of what such an answer took; here three are, when a first record of the kind
is made or compared. What a record is, can and refuses stays the same: fields, defaults, equality, hash, repr,
``replace``, pickling.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from inspect import get_annotations
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass  # for whoever reads types it is the standard one
else:

    def dataclass(*, frozen: bool, slots: bool) -> Callable[[type], type]:
        """Return what makes a class a frozen record with slots; there is no other kind here."""
        assert frozen and slots
        return _record


Fields = tuple[dataclasses.Field[Any], ...]
COMPILED = ("__init__", "__eq__", "__hash__")


def _record(given: type) -> type:
    """Return the class anew, with slots and with all that makes it a record."""
    bare: Any = dataclasses.dataclass(init=False, repr=False, eq=False)(given)
    fields = dataclasses.fields(bare)
    every = {one.name for one in fields}
    own = [name for name in get_annotations(given) if name in every]
    body = {name: value for name, value in bare.__dict__.items() if name not in (*own, "__dict__", "__weakref__")}
    body["__slots__"] = tuple(own)
    made: Any = type(given)(bare.__name__, bare.__bases__, body)
    made.__qualname__ = bare.__qualname__
    later = {name: _compiled_later(made, name, fields) for name in COMPILED}
    for name, method in (later | _plain_methods(fields)).items():
        if name not in given.__dict__:
            setattr(made, name, method)
    record: type = made
    return record


def _compiled_later(made: Any, name: str, fields: Fields) -> Callable[..., Any]:
    """Return what stands in for a function until it is first called; then it is compiled in its place."""

    def first(*given: Any, **named: Any) -> Any:
        function = _compiled(made, name, fields)
        setattr(made, name, function)
        return function(*given, **named)

    return first


def _plain_methods(fields: Fields) -> dict[str, Callable[..., Any]]:
    """Return what is called seldom enough not to be compiled for each kind of record."""
    names, shown = (tuple(one.name for one in fields), tuple(one.name for one in fields if one.repr))

    def __repr__(self: Any) -> str:
        return f"{type(self).__qualname__}({', '.join(f'{name}={getattr(self, name)!r}' for name in shown)})"

    def __setattr__(self: Any, name: str, value: object) -> None:
        raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")

    def __delattr__(self: Any, name: str) -> None:
        raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")

    def __getstate__(self: Any) -> list[Any]:
        return [getattr(self, name) for name in names]

    def __setstate__(self: Any, state: list[Any]) -> None:
        for name, value in zip(names, state, strict=True):
            object.__setattr__(self, name, value)

    return {one.__name__: one for one in (__repr__, __setattr__, __delattr__, __getstate__, __setstate__)}


def _compiled(made: Any, name: str, fields: Fields) -> Callable[..., Any]:
    """Return one function of a kind of record, compiled as the standard library does it."""
    known: dict[str, Any] = {"MISSING": dataclasses.MISSING}
    if name == "__init__":
        lines = _filling(made, fields, known)
    else:
        is_hash = name == "__hash__"
        taking = [one.name for one in fields if (one.hash if is_hash and one.hash is not None else one.compare)]
        mine, other = (f"({''.join(f'{whose}.{field}, ' for field in taking)})" for whose in ("self", "other"))
        compare = f" return {mine} == {other} if other.__class__ is self.__class__ else NotImplemented"
        lines = ["def __hash__(self):", f" return hash({mine})"] if is_hash else ["def __eq__(self, other):", compare]
    exec("\n".join(lines), known)
    function: Callable[..., Any] = known[name]
    function.__qualname__ = f"{made.__qualname__}.{name}"
    return function


def _filling(made: Any, fields: Fields, known: dict[str, Any]) -> list[str]:
    """Return the lines of what fills a new record; ``known`` is told what they name."""
    asked, lines = ["self"], list[str]()
    for number, one in enumerate(fields):
        known |= {f"put_{number}": getattr(made, one.name).__set__, f"default_{number}": one.default}
        known[f"make_{number}"] = one.default_factory
        is_made, has_default = one.default_factory is not dataclasses.MISSING, one.default is not dataclasses.MISSING
        asked.append(f"{one.name}=MISSING" if is_made else one.name + f"=default_{number}" * has_default)
        value = f"make_{number}() if {one.name} is MISSING else {one.name}" if is_made else one.name
        lines.append(f" put_{number}(self, {value})")
    return [f"def __init__({', '.join(asked)}):", *(lines or [" pass"])]
