"""Every rule of the frame on one small rig: an edit that trips it, one just inside, one that takes the value away."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.houserules.test_docstrings import is_rule
from tests.houserules.tree import PACKAGE, functions, modules

FOLDER = Path(__file__).parents[2] / "findings" / "frame"
RIG = (FOLDER / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


def edited(case: dict[str, Any]) -> str:
    """Return the rig with the edits of a case made."""
    text = RIG
    for old, new in case["edits"]:
        old, new = old.replace("\\n", "\n"), new.replace("\\n", "\n")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def said(case: dict[str, Any]) -> tuple[Finding, ...]:
    """Return what the frame says of the rig with the edits of a case made, once each."""
    found = study(read_rig(edited(case)).rig, JUDGED_ON).findings(case.get("use", "tow"))
    frame = [one for one in found if one.code.startswith("frame/")]
    return tuple({(one.code, one.where, one.says): one for one in frame}.values())


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert read_rig(RIG).problems == ()
    assert [said({"edits": [], "use": use}) for use in ("tow", "sleep", "leave")] == [(), (), ()]


def test_every_rule_has_its_trio() -> None:
    rules = {
        name.replace("_", "-")
        for module in modules(PACKAGE)
        if module.place.startswith("disciplines/frame/") and module.part_of_slice == "findings"
        for name, node in functions(module)
        if is_rule(node)
    }
    assert set(TRIOS) == rules
    assert {trio["code"] for trio in TRIOS.values()} == {f"frame/{name}" for name in rules}


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
    assert hit.source and hit.lever and hit.act
    if hit.kind == "unknown":
        assert hit.because and hit.minutes


@pytest.mark.parametrize("name", sorted(TRIOS))
def test_a_number_beyond_its_limit_has_its_margin_below_zero(name: str) -> None:
    for case in ("trips", "lacks"):
        for one in said(TRIOS[name][case]):
            if one.margin is not None:
                assert one.number is not None and one.limit is not None and one.margin <= 0.0


@pytest.mark.parametrize(("name", "case"), CASES)
def test_the_frame_stops_nobody(name: str, case: str) -> None:
    """What the frame finds is put right before the next stage closes over it; it bars no journey."""
    read = read_rig(edited(TRIOS[name][case]))
    for slot in study(read.rig, JUDGED_ON).slots:
        assert slot.broken == ()
        assert not any(one.kind in ("stop", "limit") for one in slot.findings if one.code.startswith("frame/"))


@pytest.mark.parametrize(("name", "case"), CASES)
def test_a_question_of_the_frame_keeps_no_answer_back(name: str, case: str) -> None:
    for one in said(TRIOS[name][case]):
        assert not (one.could_stop or one.could_limit or one.protects) or one.kind != "unknown"
