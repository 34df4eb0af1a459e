"""Rule 10: the schema that is committed is the one the models give, and the demo rigs pass it as YAML types them."""

from __future__ import annotations

import copy
import json

import jsonschema
import pytest
import yaml

from boxwright.rig.schema import rig_schema
from tests.houserules.tree import ROOT

COMMITTED = ROOT / "docs" / "rig.schema.json"
RIGS = sorted((ROOT / "rigs").glob("*.yaml"))


def test_the_committed_schema_is_current() -> None:
    assert json.loads(COMMITTED.read_text(encoding="utf-8")) == rig_schema(), "run: make docs"


def test_the_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(rig_schema())


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
def test_a_demo_rig_passes_the_schema(path: object) -> None:
    tree = json.loads(json.dumps(yaml.safe_load(path.read_text(encoding="utf-8")), default=str))  # type: ignore[attr-defined]
    errors = jsonschema.Draft202012Validator(rig_schema()).iter_errors(tree)
    assert [f"{error.json_path}: {error.message[:200]}" for error in errors] == []


def test_a_planted_key_fails_the_schema() -> None:
    tree = yaml.safe_load(RIGS[0].read_text(encoding="utf-8"))
    planted = copy.deepcopy(tree)
    next(iter(planted["parts"].values()))["wieght"] = 12
    validator = jsonschema.Draft202012Validator(rig_schema())
    assert not validator.is_valid(json.loads(json.dumps(planted, default=str)))
