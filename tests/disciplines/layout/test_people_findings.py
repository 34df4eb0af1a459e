"""Every rule of people on one small rig: an edit that trips it, one just inside, one without the value."""

from __future__ import annotations

import tomllib

import pytest

from boxwright.disciplines.layout.findings import RULES
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.small_rigs import rig_of
from tests.disciplines.layout.small_rigs import told as told_of
from tests.disciplines.layout.test_clash_findings import FOLDER, JUDGED_ON, RIG

OWN = {
    f"layout/{rule.__name__.replace('_', '-')}"
    for rule in RULES
    if rule.__module__.rpartition(".")[2] in {"people", "reaching"}
}
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
TRIOS = {name: trio for name, trio in TRIOS.items() if trio["code"] in OWN}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


def said(edits: list[list[str]], use: str = "sleep") -> tuple[Finding, ...]:
    """Return what layout says of the rig with some edits made, once each."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    found = study(read_rig(text).rig, JUDGED_ON)
    assert all(slot.broken == () for slot in found.slots)
    own = [one for one in found.findings(use) if one.code.startswith("layout/")]
    return tuple({(one.code, one.where, one.says): one for one in own}.values())


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert [one for use in ("tow", "sleep", "leave") for one in said([], use) if one.code in OWN] == []


def test_every_rule_of_people_has_its_trio() -> None:
    assert {trio["code"] for trio in TRIOS.values()} == OWN


@pytest.mark.parametrize(("name", "case"), CASES)
def test_a_rule_of_people_speaks_when_it_should_and_only_then(name: str, case: str) -> None:
    wanted, code = TRIOS[name][case], TRIOS[name]["code"]
    found = said(wanted["edits"], wanted.get("use", "sleep"))
    if case == "inside":
        assert [one for one in found if one.code == code] == []
        return
    hits = [one for one in found if one.code == wanted.get("code", code) and one.where == wanted["where"]]
    assert len(hits) == 1, [(one.code, one.where, one.says) for one in found]
    (hit,) = hits
    assert hit.kind == wanted["kind"] and wanted["says"] in hit.says
    assert hit.source and hit.uses and hit.act
    assert hit.kind != "unknown" or hit.minutes
    assert hit.margin is None or hit.margin <= 0.0


@pytest.mark.parametrize(("height", "kinds"), [("1800", set()), ("1801", {"advice"}), ("1.8 m", set())])
def test_a_bed_just_as_long_as_its_sleeper_wants_is_long_enough(height: str, kinds: set[str]) -> None:
    """The bunk is 1900 long, and 100 are wanted at the feet: the sum of these is a little over 1.9 in a computer."""
    text = rig_of().replace("height: 1650", f"height: {height}")
    assert {kind for kind, code, _ in told_of(text, "sleep") if code == "bed-short"} == kinds
