"""Who owns which key of the rig file. Every key has exactly one owner; this is asserted when the module is loaded."""

from __future__ import annotations

from types import ModuleType
from typing import Any

from boxwright.disciplines.air import parts as air
from boxwright.disciplines.cutting import parts as cutting
from boxwright.disciplines.frame import parts as frame
from boxwright.disciplines.heat import parts as heat
from boxwright.disciplines.layout import parts as layout
from boxwright.disciplines.power import parts as power
from boxwright.disciplines.safety import parts as safety
from boxwright.disciplines.stages import parts as stages
from boxwright.disciplines.structure import parts as structure
from boxwright.disciplines.towing import parts as towing
from boxwright.disciplines.water import parts as water
from boxwright.disciplines.weight import parts as weight
from boxwright.model.entry import Entry
from boxwright.model.load import LoadWords
from boxwright.model.measured import MeasuredWords
from boxwright.model.part import MODEL_KEYS
from boxwright.model.trailer import Person, TowVehicle
from boxwright.rig.validate import spellings

WRITTEN: dict[str, ModuleType] = {
    "frame": frame,
    "layout": layout,
    "structure": structure,
    "weight": weight,
    "towing": towing,
    "heat": heat,
    "air": air,
    "power": power,
    "water": water,
    "safety": safety,
    "cutting": cutting,
    "stages": stages,
}
"""The written keys of each discipline, in the order of the book."""

MODEL_SECTIONS = (
    "boxwright rig demo units words countries class today people trailer tow stages loads places measured logs"
    " accepted parts"
).split()
"""The top-level keys that the model owns."""

ITEM_SECTIONS = ("parts", "openings", "wires", "straps", "pipes")
"""Maps of named things that take every discipline's facets."""


def _declared(name: str) -> dict[str, dict[str, Any]]:
    return {folder: getattr(module, name, {}) for folder, module in WRITTEN.items()}


NAMED: dict[str, type[Entry]] = {key: model for named in _declared("NAMED").values() for key, model in named.items()}
PLAIN: dict[str, type[Entry]] = {key: model for plain in _declared("PLAIN").values() for key, model in plain.items()}


def _one_owner_each() -> dict[str, str]:
    owners = dict.fromkeys(MODEL_KEYS, "model")
    for folder, module in WRITTEN.items():
        for choices in spellings(module.Facet).values():
            for key in choices:
                if key in owners:
                    raise AssertionError(f"{key} is owned by {owners[key]} and by {folder}")
                owners[key] = folder
    return owners


def _sections() -> dict[str, str]:
    owners = dict.fromkeys(MODEL_SECTIONS, "model")
    for declared in (_declared("NAMED"), _declared("PLAIN")):
        for folder, models in declared.items():
            for key in models:
                if key in owners:
                    raise AssertionError(f"{key} is owned by {owners[key]} and by {folder}")
                owners[key] = folder
    return owners


OWNER_OF_KEY: dict[str, str] = _one_owner_each()
"""Part key to owner: ``model`` or a folder."""

OWNER_OF_SECTION: dict[str, str] = _sections()
"""Top-level key to owner."""


def facet_models(section: str) -> dict[str, type[Entry]]:
    """Return, per folder, the model of what it reads of the items of a section that the model itself owns."""
    found: dict[str, type[Entry]] = {}
    for folder, module in WRITTEN.items():
        model = getattr(module, "FACET_OF", {}).get(section)
        if model is not None:
            found[folder] = model
    return found


def _all_keys() -> frozenset[str]:
    keys = set(OWNER_OF_KEY) | set(OWNER_OF_SECTION)
    models: list[type[Entry]] = [*NAMED.values(), frame.Layer, Person, TowVehicle, LoadWords, MeasuredWords]
    models += [model for section in ("stages", "places") for model in facet_models(section).values()]
    for model in models:
        keys |= {key for choices in spellings(model).values() for key in choices}
    return frozenset(keys)


KNOWN_KEYS = _all_keys()
"""Every key an item may carry, for cutting a broken one-line item apart."""
