"""What a key of the rig file means, by its path: what stands there, in which unit, how it may be written."""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

from pydantic import BeforeValidator
from pydantic.fields import FieldInfo

from boxwright.disciplines.frame.parts import Layer
from boxwright.model.entry import Entry
from boxwright.model.load import LoadWords
from boxwright.model.measured import MeasuredWords
from boxwright.model.part import PartWords
from boxwright.model.trailer import Person, TowVehicle, Trailer
from boxwright.rig.head import StageWords
from boxwright.rig.keys import ITEM_SECTIONS, NAMED, PLAIN, WRITTEN
from boxwright.rig.schema import examples_of, flat, models_in
from boxwright.rig.validate import spellings
from boxwright.units import Unit

_STEP = re.compile(r"\[[^\]]*\]|[^.\[\]]+")
_OWN: dict[str, tuple[type[Entry], ...]] = {
    "trailer": (Trailer,),
    "tow": (TowVehicle,),
    "people": (Person,),
    "loads": (LoadWords,),
    "stages": (StageWords,),
    "measured": (MeasuredWords,),
}
BY_NAME = frozenset({"tow", "people", "loads", "stages", "measured", "places", "accepted", *NAMED, *ITEM_SECTIONS})
"""Sections of named things: behind them a path has a name in brackets."""


class Described(NamedTuple):
    """One key: its word, what it means, the quantity it is measured in (empty for words), how it may be written."""

    key: str
    says: str
    quantity: str
    examples: tuple[str, ...]


@cache
def described(path: str) -> Described | None:
    """Return what stands at a path that holds one value; None for a section, a thing, a path that leads nowhere.

    A key that does not say what it means is nothing to ask anybody.
    """
    section, *steps = _STEP.findall(path) or [""]
    models = _of_section(section)
    if section in BY_NAME:
        if not steps or not steps[0].startswith("["):
            return None
        steps = steps[1:]
    if section == "walls" and steps[:1] == ["layers"]:
        models, steps = (Layer, PartWords), steps[2:]
    found, inner = _led_to(models, steps)
    says = found.description or "" if found is not None else ""
    if found is None or not says or (inner and not _reads_text(found)):
        return None
    key = next(step for step in reversed(steps) if not step.startswith("["))
    return Described(key, says, _quantity(found), tuple(examples_of(found, says)))


@cache
def keys_below(path: str) -> tuple[str, ...]:
    """Return the paths of the values an entry holds where a path leads to an entry, such as that of the brakes."""
    section, *steps = _STEP.findall(path) or [""]
    found, inner = _led_to(_of_section(section), steps[1:] if section in BY_NAME else steps)
    below = (f"{path}.{words[0]}" for model in inner for words in spellings(model).values())
    return tuple(one for one in below if described(one) is not None) if found is not None else ()


def _led_to(models: tuple[type[Entry], ...], steps: list[str]) -> tuple[FieldInfo | None, tuple[type[Entry], ...]]:
    """Return the field some keys lead to, and the entries it reads; one of a list means what the list means."""
    found: FieldInfo | None = None
    for step in steps:
        if step.startswith("["):
            continue
        found = _field(models, step)
        if found is None:
            return None, ()
        models = tuple(models_in(found.annotation))
    return found, models if found is not None else ()


def _reads_text(field: FieldInfo) -> bool:
    """Return whether an entry is mostly written as one text, such as a weight."""
    parts = (field.metadata, *(getattr(one, "__metadata__", ()) for one in flat(field.annotation)))
    return bool(field.description) and any(isinstance(one, BeforeValidator) for part in parts for one in part)


def _of_section(section: str) -> tuple[type[Entry], ...]:
    if section in ITEM_SECTIONS:
        own = () if section == "parts" else (NAMED[section],)
        return (*own, PartWords, *(module.Facet for module in WRITTEN.values()))
    if section in _OWN:
        return _OWN[section]
    model = PLAIN.get(section) or NAMED.get(section)
    return (model,) if model is not None else ()


def _field(models: tuple[type[Entry], ...], key: str) -> FieldInfo | None:
    for model in models:
        for name, words in spellings(model).items():
            if key in words:
                return model.model_fields[name]
    return None


def _quantity(field: FieldInfo) -> str:
    for part in (field.metadata, *(getattr(one, "__metadata__", ()) for one in flat(field.annotation))):
        for one in part:
            if isinstance(one, Unit):
                return one.quantity
    inner = (_quantity(one) for model in models_in(field.annotation) for one in model.model_fields.values())
    return next((one for one in inner if one), "")
