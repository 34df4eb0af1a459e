"""Every rule of what is in the way on one small rig: an edit that trips it, one just inside, one without the value."""

from __future__ import annotations

import tomllib
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from boxwright.disciplines.layout.findings import RULES
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

FOLDER = Path(__file__).parents[2] / "findings" / "layout"
RIG = (FOLDER / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)
OWN = {
    f"layout/{rule.__name__.replace('_', '-')}"
    for rule in RULES
    if rule.__module__.rpartition(".")[2] in {"resting", "moving", "bringing", "unsaid"}
}
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
TRIOS = {name: trio for name, trio in TRIOS.items() if trio["code"] in OWN}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


def said(case: dict[str, Any]) -> tuple[Finding, ...]:
    """Return what these rules say of the rig with the edits of a case made, once each."""
    text = RIG
    for old, new in case["edits"]:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    found = study(read_rig(text).rig, JUDGED_ON)
    assert all(slot.broken == () for slot in found.slots)
    own = [one for one in found.findings(case.get("use", "tow")) if one.code in OWN]
    return tuple({(one.code, one.where, one.says): one for one in own}.values())


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert read_rig(RIG).problems == ()
    assert [said({"edits": [], "use": use}) for use in ("tow", "sleep", "leave")] == [(), (), ()]


def test_every_rule_has_its_trio() -> None:
    assert {trio["code"] for trio in TRIOS.values()} == OWN
    assert set(TRIOS) == {code.partition("/")[2] for code in OWN}


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
    assert hit.source and hit.uses
    if hit.kind == "unknown":
        assert hit.act and hit.minutes
    if hit.margin is not None:
        assert hit.margin <= 0.0


def test_only_a_bed_stops_anybody() -> None:
    for trio in TRIOS.values():
        for one in said(trio["trips"]):
            assert one.kind != "stop" or (one.code, one.uses) == ("layout/sleeping-place", ("sleep",))
