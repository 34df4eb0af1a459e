"""The JSON Schema of the rig file, written from the models that read it, so that an editor can help while typing.

Every scalar may be text, number or truth value, because the reader takes all of them as text; what a value must look
like stands in its description and examples.
"""

from __future__ import annotations

import re
from typing import Any, get_args, get_origin

from pydantic.fields import FieldInfo

from boxwright.disciplines.frame.parts import Layer as LayerWords
from boxwright.model.entry import Entry
from boxwright.model.load import LoadWords
from boxwright.model.measured import MeasuredWords
from boxwright.model.part import PartWords
from boxwright.model.trailer import Person, TowVehicle, Trailer
from boxwright.rig.compose import AcceptedWords
from boxwright.rig.head import FORMAT, StageWords
from boxwright.rig.keys import ITEM_SECTIONS, NAMED, PLAIN, WRITTEN, facet_models
from boxwright.rig.sections import PlaceWords
from boxwright.rig.validate import spellings
from boxwright.units import HeaderUnits, Unit

Schema = dict[str, Any]
SCALAR: list[str] = ["string", "number", "boolean"]
EXAMPLES = {
    "length": ["36", "77 3/4", "25 mm", "6' 5 3/4\"", "unknown"],
    "mass": ["47", "12 kg", "45 +-5", "40..55", "about 45", "unknown"],
    "temperature": ["20 F", "-7 C"],
    "volume": ["20 gal", "75 l"],
    "power": ["900 W"],
    "current": ["4.2 A"],
    "voltage": ["12.8"],
    "ratio": ["0.35", "3/4", "40 %"],
    "time": ["6", "2 h/day"],
}
DATUM = "x counts rearward from the front wall's stud face, z up from the deck, sides are named looking forward."


def rig_schema() -> Schema:
    """Return the JSON Schema (draft 2020-12) of a rig file of this format."""
    top: dict[str, Schema] = {
        "boxwright": _scalar("format of the file", [str(FORMAT)]),
        "rig": _scalar("name of the rig", ["Whimbrel"]),
        "demo": _scalar("yes for an invented rig", ["yes"]),
        "units": _object(
            {name: _scalar(f"unit of a bare {name}", []) for name in _unit_keys()}, "units of bare numbers"
        ),
        "words": _scalar("whose words of the trade are shown", ["US", "UK"]),
        "countries": _list("home first, then the road", ["US-NC", "CA-BC"]),
        "class": _scalar("what the papers say: cargo or camper", ["cargo"]),
        "today": _object(
            {"stage": _scalar("the stage under way", []), "date": _scalar("for demos only", [])},
            "where the build stands",
        ),
        "people": _map(_entry([Person]), "who travels and sleeps"),
        "trailer": _entry([Trailer]),
        "tow": _map(_entry([TowVehicle]), "what may pull it"),
        "stages": _map(_entry([StageWords, *facet_models("stages").values()]), "stages in building order"),
        "loads": _map(_entry([LoadWords]), "what is aboard when"),
        "places": _map(_entry([PlaceWords, *facet_models("places").values()]), "places and their climate"),
        "measured": _map(_entry([MeasuredWords]), "readings of scale and tape"),
        "logs": {"description": "files with time, channel, value"},
        "accepted": _map(_entry([AcceptedWords]), "findings the owner accepts"),
    }
    facets = [module.Facet for module in WRITTEN.values()]
    for section in ITEM_SECTIONS:
        own = [] if section == "parts" else [NAMED[section]]
        top[section] = _map(_entry([*own, PartWords, *facets]), f"{section}, by name")
    for key, model in PLAIN.items():
        top[key] = _entry([model])
    for key, model in NAMED.items():
        if key not in top:
            top[key] = _map(_entry([model]), f"{key}, by name")
    layer = _map(_entry([LayerWords, PartWords]), "layers from the skin inwards")
    top["walls"] = _map(_object({"layers": layer}, "one wall, a bay, the ceiling or the floor"), "walls, by name")
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Boxwright rig file",
        "description": DATUM,
        "type": "object",
        "properties": top,
        "additionalProperties": False,
    }


def _unit_keys() -> list[str]:
    return [name for name in HeaderUnits.__dataclass_fields__ if name != "words"]


def _scalar(description: str, examples: list[str]) -> Schema:
    return {"type": SCALAR, "description": description, **({"examples": examples} if examples else {})}


def _list(description: str, examples: list[str]) -> Schema:
    items: Schema = {"type": SCALAR}
    return {
        "description": description,
        "examples": [examples],
        "anyOf": [{"type": SCALAR}, {"type": "array", "items": items}],
    }


def _object(properties: dict[str, Schema], description: str) -> Schema:
    return {"type": "object", "description": description, "properties": properties, "additionalProperties": False}


def _map(inner: Schema, description: str) -> Schema:
    return {"type": ["object", "null"], "description": description, "additionalProperties": inner}


def _entry(models: list[type[Entry]]) -> Schema:
    """Return the schema of an entry whose keys come from several owners; the first owner of a key describes it."""
    properties: dict[str, Schema] = {}
    for model in models:
        for name, choices in spellings(model).items():
            described = _field(model.model_fields[name])
            for key in choices:
                properties.setdefault(key, described)
    return {"type": ["object", "string", "null"], "properties": properties, "additionalProperties": False}


def _field(field: FieldInfo) -> Schema:
    """Return the schema of one key: a scalar, and a map or a list where its owner reads those too."""
    description = field.description or ""
    inner = models_in(field.annotation)
    if not inner and not _is_list(field.annotation):
        return _scalar(description, examples_of(field, description))
    ways: list[Schema] = [{"type": SCALAR}]
    if inner:
        ways.append(_entry(inner) | {"type": "object"})
    if _is_list(field.annotation):
        ways.append({"type": "array", "items": {"type": [*SCALAR, "object", "array"]}})
        ways.append({"type": "object"})
    shown = examples_of(field, description)
    return {"anyOf": ways, "description": description, **({"examples": shown} if shown else {})}


def examples_of(field: FieldInfo, description: str) -> list[str]:
    """Return how a value of a field may be written."""
    told = re.search(r"such as (.+)$", description)
    if told:
        return [told[1]]
    for part in (field.metadata, *(getattr(one, "__metadata__", ()) for one in flat(field.annotation))):
        for one in part:
            if isinstance(one, Unit):
                return EXAMPLES.get(one.quantity, [])
    return []


def flat(annotation: Any) -> list[Any]:
    """Return an annotation and everything inside it."""
    found = [annotation]
    for inner in get_args(annotation):
        found += flat(inner)
    return found


def models_in(annotation: Any) -> list[type[Entry]]:
    """Return the entries an annotation reads."""
    return [one for one in flat(annotation) if isinstance(one, type) and issubclass(one, Entry) and one is not Entry]


def _is_list(annotation: Any) -> bool:
    return any(get_origin(one) is tuple for one in flat(annotation))
