"""Every key of the demo rigs has one owner, and its owner reads it."""

from __future__ import annotations

import importlib
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
import yaml
from pydantic import AliasChoices

from boxwright.disciplines.frame.parts import Layer
from boxwright.model.entry import Entry
from boxwright.model.part import MODEL_KEYS
from boxwright.units import HeaderUnits

RIGS = Path(__file__).resolve().parents[2] / "rigs"
FOLDERS = "frame layout structure towing heat air power water safety cutting stages".split()
PARTS: dict[str, ModuleType] = {
    folder: importlib.import_module(f"boxwright.disciplines.{folder}.parts") for folder in FOLDERS
}
IMPERIAL = HeaderUnits("in", "lb", "F", "gal", "AWG", "USD", "US")
METRIC = HeaderUnits("mm", "kg", "C", "l", "mm2", "GBP", "UK")
DEMOS = {"whimbrel": IMPERIAL, "dunlin": METRIC, "gannet": IMPERIAL}
TAKES_FACETS = ("parts", "openings", "wires", "straps")
MODEL_SECTIONS = set(
    "boxwright rig demo units words countries class today people trailer tow stages loads places measured logs"
    " accepted parts".split()
)
MODEL_OF = {"stages": {"what", "done", "now", "note"}, "places": {"lat", "lon", "note"}}


def keys_of(model: type[Entry]) -> set[str]:
    found: set[str] = set()
    for name, field in model.model_fields.items():
        alias = field.validation_alias
        found |= {str(one) for one in alias.choices} if isinstance(alias, AliasChoices) else {field.alias or name}
    return found


FACET_OWNERS = {key: folder for folder, module in PARTS.items() for key in keys_of(module.Facet)}
NAMED = {section: model for module in PARTS.values() for section, model in module.NAMED.items()}
PLAIN = {section: model for module in PARTS.values() for section, model in module.PLAIN.items()}


def demo(name: str) -> dict[str, Any]:
    path = RIGS / f"{name}.yaml"
    loaded: dict[str, Any] = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    return loaded


def read(model: type[Entry], tree: Any, header: HeaderUnits) -> Entry:
    return model.model_validate(tree, context={"header": header})


def test_no_key_has_two_owners() -> None:
    for folder, module in PARTS.items():
        for other, also in PARTS.items():
            if folder < other:
                assert not keys_of(module.Facet) & keys_of(also.Facet), (folder, other)
                assert not {*module.NAMED, *module.PLAIN} & {*also.NAMED, *also.PLAIN}, (folder, other)
        assert not keys_of(module.Facet) & MODEL_KEYS, folder
        assert not {*module.NAMED, *module.PLAIN} & MODEL_SECTIONS, folder


def test_the_owners_are_those_of_the_architecture() -> None:
    """The table of DESIGN 5, with keys that came since: blocks, recess, clear, puts_out, burns, generator, shuts."""
    expected = {
        "structure": "hinge legs screws tie wll backs",
        "layout": "swing slides keep_clear sees out mattress blocks",
        "cutting": "carcass sheets bars",
        "safety": "expires alarm release egress clear puts_out burns generator shuts",
        "power": "draw hours duty battery panel charger inverter rcd",
        "water": "tank",
        "heat": "heater cools",
        "air": "free_area fan cooks wet",
        "frame": "recess",
        "towing": "",
        "stages": "",
    }
    assert {folder: keys_of(module.Facet) for folder, module in PARTS.items()} == {
        folder: set(keys.split()) for folder, keys in expected.items()
    }


@pytest.mark.parametrize("name", DEMOS)
def test_every_section_of_a_demo_has_an_owner(name: str) -> None:
    assert set(demo(name)) <= MODEL_SECTIONS | set(NAMED) | set(PLAIN)


@pytest.mark.parametrize("name", DEMOS)
def test_every_item_of_a_demo_is_read_by_the_owners_of_its_keys(name: str) -> None:
    header, tree, read_facets = DEMOS[name], demo(name), 0
    for section in TAKES_FACETS:
        own = keys_of(NAMED[section]) if section in NAMED else set()
        for item, keys in tree.get(section, {}).items():
            shares: dict[str, dict[str, Any]] = {}
            for key, value in keys.items():
                owner = "own" if key in own else "model" if key in MODEL_KEYS else FACET_OWNERS.get(key)
                assert owner is not None, f"{section}[{item}].{key} has no owner"
                shares.setdefault(owner, {})[key] = value
            if section in NAMED:
                hash(read(NAMED[section], shares.get("own", {}), header))
            for folder in FOLDERS:
                if folder in shares:
                    facet = read(PARTS[folder].Facet, shares[folder], header)
                    hash(facet)
                    assert len(facet.model_fields_set) == len(shares[folder]), f"{section}[{item}]"
                    read_facets += 1
    assert read_facets > 0


@pytest.mark.parametrize("name", DEMOS)
def test_the_other_sections_of_a_demo_are_read(name: str) -> None:
    header, tree = DEMOS[name], demo(name)
    for section, model in PLAIN.items():
        if section in tree:
            hash(read(model, tree[section], header))
    for section in ("habits", "pipes"):
        for keys in tree.get(section, {}).values():
            own = {key: value for key, value in keys.items() if key in keys_of(NAMED[section])}
            assert set(keys) - set(own) <= MODEL_KEYS
            hash(read(NAMED[section], own, header))
    for wall in tree.get("walls", {}).values():
        assert set(wall) == {"layers"}
        for keys in wall["layers"].values():
            own = {key: value for key, value in keys.items() if key in keys_of(Layer)}
            assert set(keys) - set(own) <= MODEL_KEYS
            hash(read(Layer, own, header))


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("section", ["stages", "places"])
def test_the_facets_of_stages_and_places_are_read(name: str, section: str) -> None:
    models = [module.FACET_OF[section] for module in PARTS.values() if section in getattr(module, "FACET_OF", {})]
    assert models
    for keys in demo(name).get(section, {}).values():
        taken = set(MODEL_OF[section])
        for model in models:
            own = {key: value for key, value in keys.items() if key in keys_of(model)}
            hash(read(model, own, DEMOS[name]))
            taken |= set(own)
        assert set(keys) <= taken


def test_every_field_is_described() -> None:
    for folder, module in PARTS.items():
        for model in vars(module).values():
            if isinstance(model, type) and issubclass(model, Entry) and model.__module__ == module.__name__:
                for name, field in model.model_fields.items():
                    if (model.__name__, name) not in {("Draw", "amps"), ("Draw", "watts"), ("Draw", "is_each")}:
                        assert field.description, f"{folder}: {model.__name__}.{name}"
