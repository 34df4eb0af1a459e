"""Rule 10: the schema that is committed is the one the models give, and the demo rigs pass it as YAML types them."""

from __future__ import annotations

import copy
import json
from pathlib import Path

import jsonschema
import pytest
from ruamel.yaml import YAML

from boxwright.rig.schema import rig_schema
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


def test_a_planted_key_fails_the_schema() -> None:
    planted = copy.deepcopy(typed(ROOT / "rigs" / "dunlin.yaml"))
    assert isinstance(planted, dict)
    next(iter(planted["parts"].values()))["wieght"] = 12
    assert not jsonschema.Draft202012Validator(rig_schema()).is_valid(planted)
