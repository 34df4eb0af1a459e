"""The JSON contract: keys that are promised, numbers that JSON can carry, a schema that says so."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import jsonschema
import pytest

from boxwright.cli import answers
from boxwright.units import Band
from tests.cli.by_hand import CHECKED, STATE, WEIGHED

SCHEMA = json.loads(answers.answer_schema())


def conforms(answer: Any) -> None:
    jsonschema.Draft202012Validator(SCHEMA, format_checker=jsonschema.FormatChecker()).validate(answer)


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_check_has_the_promised_keys() -> None:
    answer = json.loads(answers.as_text(answers.check(CHECKED)))
    conforms(answer)
    assert {"boxwright", "rig", "stage", "load", "date", "problems", "findings", "verdicts"} <= set(answer)
    assert set(answer["problems"][0]) >= {"line", "column", "says"}
    promised = "code kind where line number limit margin unit stage load use source says remedy".split()
    assert set(answer["findings"][0]) >= set(promised)
    assert set(answer["verdicts"]) == {"tow", "sleep", "leave", "work"}
    assert set(answer["verdicts"]["tow"]) >= {"answer", "because", "act"}
    assert answer["findings"][0]["line"] == 143


def test_weight_has_the_promised_keys() -> None:
    answer = json.loads(answers.as_text(answers.weight(WEIGHED)))
    conforms(answer)
    promised = "stage load gross_kg tongue_kg tongue_share on_wheels_kg axles_kg left_kg right_kg cg_m unlisted".split()
    assert set(answer["states"][0]) == set(promised)
    assert len(answer["states"]) == 3 and len(answer["as_ticked"]) == 1
    assert set(answer["states"][0]["gross_kg"]) == {"best", "low", "high", "known"}


def test_an_open_end_is_null() -> None:
    state = replace(STATE, gross=Band(0.0, 0.0, float("inf"), known=False))
    assert answers.state(state)["gross_kg"] == {"best": 0.0, "low": 0.0, "high": None, "known": False}


def test_json_is_ascii_so_that_no_name_can_steer_a_terminal() -> None:
    text = answers.as_text(answers.check(replace(CHECKED, rig="caf\u00e9 \x1b[31m \x9b2J")))
    assert text.isascii() and "\x1b" not in text
    assert json.loads(text)["rig"] == "caf\u00e9 \x1b[31m \x9b2J"


@pytest.mark.parametrize("key", ["findings", "verdicts", "problems", "date"])
def test_the_schema_misses_a_key_that_is_gone(key: str) -> None:
    answer = dict(answers.check(CHECKED))
    del answer[key]
    with pytest.raises(jsonschema.ValidationError):
        conforms(answer)


def test_the_schema_refuses_an_answer_of_another_word() -> None:
    answer = json.loads(answers.as_text(answers.check(CHECKED)))
    answer["verdicts"]["tow"]["answer"] = "perhaps"
    with pytest.raises(jsonschema.ValidationError):
        conforms(answer)
