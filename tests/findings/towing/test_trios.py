"""Every rule of towing by its three cases: an edit that trips it, one just inside, one that lacks the value."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from boxwright.disciplines.towing.findings import OF_A_VEHICLE, OF_THE_TRAILER
from tests.findings.towing.held import said_of

HERE = Path(__file__).parent
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(HERE.glob("*.toml"))}
RULES = ["no-vehicle", *(rule.__name__.replace("_", "-") for rule in (*OF_THE_TRAILER, *OF_A_VEHICLE))]


def kinds(code: str, case: dict[str, Any]) -> set[tuple[str, str]]:
    """Return the kind and place of everything a rule says in one case."""
    return {(one.kind, one.where) for one in said_of(case["set"]) if one.code == f"towing/{code}"}


def test_every_rule_has_its_trio() -> None:
    assert sorted(TRIOS) == sorted(RULES)


def test_the_small_rig_itself_is_fine() -> None:
    assert said_of({}) == ()


@pytest.mark.parametrize("code", TRIOS)
def test_the_rule_trips(code: str) -> None:
    case = TRIOS[code]["trips"]
    found = kinds(code, case)
    assert case["kind"] in {kind for kind, _ in found}
    if "where" in case:
        assert (case["kind"], case["where"]) in found


@pytest.mark.parametrize("code", TRIOS)
def test_the_rule_is_silent_just_inside(code: str) -> None:
    assert kinds(code, TRIOS[code]["inside"]) == set()


@pytest.mark.parametrize("code", TRIOS)
def test_the_rule_asks_for_what_it_lacks(code: str) -> None:
    case = TRIOS[code]["lacks"]
    found = kinds(code, case)
    assert case["kind"] in {kind for kind, _ in found}
    if "where" in case:
        assert (case["kind"], case["where"]) in found
