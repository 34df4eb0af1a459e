"""The rules and methods of a chapter as they document themselves: what is asked, the limit, the source, the formula."""

from __future__ import annotations

import inspect
import re
from functools import cache
from importlib import import_module
from types import FunctionType, ModuleType

from boxwright.book.labels import Labelled, taken_apart
from boxwright.source import Source, load_sources
from boxwright.study.rig_findings import EXPLAINED

WORD = re.compile(r"[a-z_0-9]+")


def _functions(module: ModuleType) -> dict[str, FunctionType]:
    """Return the public functions of a module or package that were written in it."""
    return {
        name: found
        for name, found in vars(module).items()
        if isinstance(found, FunctionType) and not name.startswith("_") and found.__module__.startswith(module.__name__)
    }


def rules_of(folder: str) -> dict[str, FunctionType]:
    """Return the rules of a chapter by their codes: the functions that say what they ask."""
    functions = _functions(import_module(f"boxwright.disciplines.{folder}.findings"))
    return {
        f"{folder}/{name.replace('_', '-')}": function
        for name, function in functions.items()
        if taken_apart(function).label("Asks")
    }


def methods_of(folder: str) -> dict[str, FunctionType]:
    """Return the methods of a chapter by their names."""
    return _functions(import_module(f"boxwright.disciplines.{folder}.method"))


@cache
def rule_of(code: str) -> Labelled | None:
    """Return what a rule says of itself, None where no rule goes by that code."""
    folder, _, name = code.partition("/")
    own = EXPLAINED.get(code) or EXPLAINED.get(name)
    if own is not None:
        return Labelled((), (("Asks", own.asks), ("Source", own.source)))
    try:
        rule = rules_of(folder).get(code)
    except ModuleNotFoundError:
        return None
    return taken_apart(rule) if rule is not None else None


@cache
def methods_named(code: str) -> frozenset[str]:
    """Return the methods a rule names, in its text or under ``Methods``."""
    folder = code.partition("/")[0]
    try:
        rule = rules_of(folder).get(code)
    except ModuleNotFoundError:
        return frozenset()
    words = set(WORD.findall(inspect.getsource(rule))) if rule is not None else set()
    return frozenset(words & set(methods_of(folder)))


def sources_named(text: str, folder: str) -> list[str]:
    """Return the sources a text names by their keys, each in full with how it was seen."""
    if folder == "rig":
        return []
    found = load_sources(f"boxwright.disciplines.{folder}")
    return [
        f"{key}: {source_text(source)}"
        for key, source in found.items()
        if re.search(rf"(?<![\w-]){re.escape(key)}(?![\w-])", text)
    ]


def source_text(source: Source) -> str:
    """Return a source in one line: the work, its edition, who published it, how it was seen."""
    pieces = [source.work, source.edition if source.edition != "not shown" else "", source.publisher, source.place]
    return f"{', '.join(piece for piece in pieces if piece)} ({source.seen})"
