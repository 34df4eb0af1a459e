"""How a path of the rig is spelled in a file: paths use the first word of a key, a file may use another it means."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import get_args

from pydantic import BaseModel

from boxwright.disciplines.frame.parts import Layer
from boxwright.model.load import LoadWords
from boxwright.model.measured import MeasuredWords
from boxwright.model.trailer import Person, TowVehicle, Trailer
from boxwright.rig.document import Document
from boxwright.rig.keys import NAMED, PLAIN, WRITTEN
from boxwright.rig.validate import spellings

_STEP = re.compile(r"\[[^\]]*\]|[^.\[]+|\.")


def as_written(document: Document, path: str) -> str:
    """Return a rig path as the file spells it: ``trailer.mam`` for ``trailer.gvwr`` where that is what is written.

    A path that leads to nothing written comes back with as much of it as is.
    """
    if not path or document.extent(path, exact=True) is not None:
        return path
    found = ""
    for step in _STEP.findall(path):
        others = (found + other for other in _others().get(step, ()))
        is_there = step == "." or document.extent(found + step, exact=True) is not None
        written = None if is_there else next((one for one in others if document.extent(one, exact=True)), None)
        found = written or found + step
    return found


@cache
def _others() -> dict[str, tuple[str, ...]]:
    """Return, for each key that has other words, all its words."""
    found: dict[str, tuple[str, ...]] = {}
    seen: set[type[BaseModel]] = set()
    owned = [model for module in WRITTEN.values() for model in (module.Facet, module.Section)]
    todo = [Trailer, TowVehicle, Person, LoadWords, MeasuredWords, Layer, *NAMED.values(), *PLAIN.values(), *owned]
    while todo:
        model = todo.pop()
        if model in seen or not (isinstance(model, type) and issubclass(model, BaseModel)):
            continue
        seen.add(model)
        for words in spellings(model).values():
            for word in words if len(words) > 1 else ():
                found[word] = tuple(dict.fromkeys((*found.get(word, ()), *words)))
        todo += [inner for field in model.model_fields.values() for inner in _models(field.annotation)]
    return found


def _models(hint: object) -> Iterator[type[BaseModel]]:
    if isinstance(hint, type) and issubclass(hint, BaseModel):
        yield hint
    for inner in get_args(hint):
        yield from _models(inner)
