"""Rule 10: the schema that is committed is the one the models give, and the demo rigs pass it as YAML types them."""

from __future__ import annotations

import copy
import json
from pathlib import Path

import jsonschema
import pytest
from ruamel.yaml import YAML

from boxwright.model.entry import Entry
from boxwright.rig.keys import KNOWN_KEYS, OWNER_OF_SECTION, facet_models
from boxwright.rig.schema import rig_schema
from boxwright.rig.validate import spellings
from tests.houserules.tree import ROOT

COMMITTED = ROOT / "docs" / "rig.schema.json"
RIGS = sorted((ROOT / "rigs").glob("*.yaml"))


def test_the_committed_schema_is_current() -> None:
    assert json.loads(COMMITTED.read_text(encoding="utf-8")) == rig_schema(), "run: make docs"


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(rig_schema())


def typed(path: Path) -> object:
    """Return a rig as an editor types it that reads YAML 1.2, where `on` is a word; days become texts."""
    return json.loads(json.dumps(YAML(typ="safe").load(path.read_text(encoding="utf-8")), default=str))


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
def test_a_demo_rig_passes_the_schema(path: Path) -> None:
    errors = jsonschema.Draft202012Validator(rig_schema()).iter_errors(typed(path))
    assert [f"{error.json_path}: {error.message[:200]}" for error in errors] == []


def named_in(schema: object) -> set[str]:
    """Return every key a schema names, at any depth."""
    if isinstance(schema, list):
        return {name for one in schema for name in named_in(one)}
    if not isinstance(schema, dict):
        return set()
    own = set(schema["properties"]) if isinstance(schema.get("properties"), dict) else set()
    return own | {name for inner in schema.values() for name in named_in(inner)}


def entries(model: type[Entry]) -> set[type[Entry]]:
    """Return every kind of entry there is, by what is made of it."""
    return {model} | {found for one in model.__subclasses__() for found in entries(one)}


def test_the_schema_holds_every_key_the_reader_knows() -> None:
    names = named_in(rig_schema())
    assert names >= KNOWN_KEYS | set(OWNER_OF_SECTION), sorted((KNOWN_KEYS | set(OWNER_OF_SECTION)) - names)
    ours = [one for one in entries(Entry) if one is not Entry and one.__module__.startswith("boxwright.")]
    assert len(ours) > 40
    for model in ours:
        keys = {key for choices in spellings(model).values() for key in choices}
        assert keys <= names, (model.__name__, sorted(keys - names))


def test_a_place_and_a_logged_night_have_their_keys_where_they_are_written() -> None:
    sections = rig_schema()["properties"]
    place, reading = (sections[key]["additionalProperties"]["properties"] for key in ("places", "measured"))
    assert {"lat", "lon", "coldest_design", "hottest_design", "height"} <= set(place)
    for model in facet_models("places").values():
        assert {key for choices in spellings(model).values() for key in choices} <= set(place)
    assert {"loses", "reckoned", "inside", "outside", "log"} <= set(reading)


def test_a_planted_key_fails_the_schema() -> None:
    planted = copy.deepcopy(typed(ROOT / "rigs" / "dunlin.yaml"))
    assert isinstance(planted, dict)
    next(iter(planted["parts"].values()))["wieght"] = 12
    assert not jsonschema.Draft202012Validator(rig_schema()).is_valid(planted)
