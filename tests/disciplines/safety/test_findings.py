"""Every rule of safety on one small rig: an edit that trips it, one just inside, one that takes the value away."""

from __future__ import annotations

import tomllib
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from boxwright.disciplines.safety.findings import RULES
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

FOLDER = Path(__file__).parents[2] / "findings" / "safety"
RIG = (FOLDER / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


@cache
def worked(text: str, use: str) -> tuple[Finding, ...]:
    """Return what safety says of a rig in one use."""
    found = study(read_rig(text).rig, JUDGED_ON).findings(use)
    return tuple(one for one in found if one.code.startswith("safety/"))


def edited(*edits: tuple[str, str] | list[str]) -> str:
    """Return the small rig with some pieces of its text replaced."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def said(case: dict[str, Any]) -> tuple[Finding, ...]:
    """Return what safety says of the small rig with the edits of a case made."""
    return worked(edited(*case["edits"]), case.get("use", "sleep"))


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert read_rig(RIG).problems == ()
    assert said({"edits": []}) == said({"edits": [], "use": "leave"}) == ()


def test_every_rule_has_its_trio() -> None:
    assert sorted(TRIOS) == sorted(rule.__name__.replace("_", "-") for rule in RULES)
    assert all(trio["code"] == f"safety/{name}" for name, trio in TRIOS.items())


@pytest.mark.parametrize(("name", "case"), CASES)
def test_a_rule_speaks_when_it_should_and_only_then(name: str, case: str) -> None:
    wanted, code = TRIOS[name][case], TRIOS[name]["code"]
    found = said(wanted)
    if case == "inside":
        assert [one for one in found if one.code == code] == []
        return
    hits = [one for one in found if one.code == wanted.get("code", code) and one.where == wanted["where"]]
    assert len(hits) == 1, [(one.code, one.where, one.says) for one in found]
    (hit,) = hits
    assert hit.kind == wanted["kind"]
    assert wanted["says"] in hit.says
    assert hit.source and hit.lever and hit.act and hit.because
    assert hit.minutes is not None and hit.minutes > 0
    assert hit.uses in (("sleep",), ("leave",), ("work",))


@pytest.mark.parametrize("name", sorted(TRIOS))
def test_a_number_and_its_limit_give_the_side_the_margin_is_on(name: str) -> None:
    for case in ("trips", "lacks"):
        for one in said(TRIOS[name][case]):
            if one.margin is not None:
                assert one.number is not None and one.limit is not None and one.margin <= 0.0
