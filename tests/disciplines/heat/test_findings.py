"""Every rule of heat on one small rig: an edit that trips it, one just inside, one that takes the value away."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from boxwright.disciplines.heat.bearing import holds
from boxwright.disciplines.heat.findings import RULES
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import Study, study
from boxwright.units import Band
from tests.disciplines.heat.headlines import against, headlines

FOLDER = Path(__file__).parents[2] / "findings" / "heat"
RIG = (FOLDER / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


@cache
def studied(text: str) -> Study:
    """Return a rig studied, once for all that is asked of it."""
    return study(read_rig(text).rig, JUDGED_ON)


@cache
def worked(text: str, use: str) -> tuple[Finding, ...]:
    """Return what heat says of a rig in one use."""
    found = studied(text).findings(use)
    return tuple(one for one in found if one.code.startswith("heat/"))


def edited(*edits: tuple[str, str] | list[str]) -> str:
    """Return the small rig with some pieces of its text replaced."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def said(case: dict[str, Any]) -> tuple[Finding, ...]:
    """Return what heat says of the small rig with the edits of a case made."""
    return worked(edited(*case["edits"]), case.get("use", "sleep"))


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert read_rig(RIG).problems == ()
    assert said({"edits": []}) == said({"edits": [], "use": "leave"}) == ()


def test_every_rule_has_its_trio() -> None:
    assert sorted(TRIOS) == sorted(rule.__name__.replace("_", "-") for rule in RULES)
    assert all(trio["code"] == f"heat/{name}" for name, trio in TRIOS.items())


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
    assert hit.uses in ((), ("sleep",), ("leave",), ("work",), ("sleep", "work"))


@pytest.mark.parametrize("name", sorted(TRIOS))
def test_a_number_and_its_limit_give_the_side_the_margin_is_on(name: str) -> None:
    for case in ("trips", "lacks"):
        for one in said(TRIOS[name][case]):
            if one.margin is not None:
                assert one.number is not None and one.limit is not None and one.margin <= 0.0


@pytest.mark.parametrize(("name", "case"), CASES)
def test_no_headline_is_better_than_what_is_found_against_it(name: str, case: str) -> None:
    found = studied(edited(*TRIOS[name][case]["edits"]))
    nights = 0
    for slot in found.slots:
        for said_of_it, word in headlines(slot) if slot.use == "sleep" else ():
            nights += 1
            assert (" holds " in said_of_it) <= (not against(slot)), (said_of_it, [one.code for one in against(slot)])
            assert (word == "yes") <= (not against(slot))
            stops = [one for one in against(slot) if one.kind == "stop"]
            assert ("must not run" in said_of_it) == bool(stops) or "warms nothing" in said_of_it
    assert nights or name in ("night-not-known", "room-not-known", "unvented", "frost")


def asleep(found: Study) -> set[tuple[str, str]]:
    """Return the headlines of a rig's nights as it stands today."""
    return {each for slot in found.asked_slots("sleep", "night") for each in headlines(slot)}


def test_a_headline_says_which_findings_it_waits_for() -> None:
    one = studied(RIG.replace("{fuel: full}, parked", "{fuel: empty}, parked"))
    ((said_of_it, word),) = asleep(one)
    assert "heater would hold" in said_of_it and "But not as it stands, see fuel-for-the-night below" in said_of_it
    assert word == "perhaps"
    two = studied(RIG.replace("{fuel: full}, parked", "{}, parked").replace("falls: yes, ", ""))
    ((said_of_it, word),) = asleep(two)
    assert "Not settled, see exhaust-falls and fuel-for-the-night below" in said_of_it
    ((said_of_it, word),) = asleep(studied(RIG))
    assert "heater holds 63 F with battery full as it gets dark" in said_of_it and "settled" not in said_of_it
    assert word == "yes"


def test_what_stands_against_one_place_undoes_nothing_at_another() -> None:
    two = "meadow: {coldest_design: -5 C, height: 0 m, hottest_design: 22 C}\n  pass: {coldest_design: -5 C}"
    found = studied(edited(("meadow: {coldest_design: -5 C, height: 0 m, hottest_design: 22 C}", two)))
    told = dict(sorted((said_of_it.partition(",")[0], word) for said_of_it, word in asleep(found)))
    assert told == {"meadow": "yes", "pass": "perhaps"}


def test_a_night_that_is_held_most_likely_alone_is_held_perhaps() -> None:
    (slot, *_) = studied(RIG).asked_slots("sleep", "night")
    assert slot.heat is not None
    (night,) = slot.heat.held
    assert night.warmth is not None and holds(night, ()) == "yes"
    wanted = night.warmth.wanted
    assert holds(replace(night, coldest=Band(wanted, wanted - 3.0, wanted)), ()) == "perhaps"
    assert holds(replace(night, coldest=Band(wanted - 3.0, wanted - 4.0, wanted)), ()) == "no"


@pytest.mark.parametrize(("volume", "kind"), [("1.0", "limit"), ("1.5", "unknown"), ("2.2", "advice"), ("2.6", "")])
def test_a_full_tank_is_short_perhaps_short_scarce_or_enough(volume: str, kind: str) -> None:
    """The night takes 0.72 to 2.06 l, 1.13 most likely."""
    found = [one for one in worked(edited(("volume: 10}", f"volume: {volume}}}")), "sleep")
             if one.code == "heat/fuel-for-the-night"]  # fmt: skip
    assert [one.kind for one in found] == ([kind] if kind else [])


def test_no_night_is_surely_held_with_a_door_that_may_stand_open() -> None:
    door = "height: 1800, stage: shell, cut: yes, done: yes"
    answers = []
    for now in ("", ", now: shut", ", now: stands open"):
        told = studied(edited((door, f"{door}{now}")))
        (slot,) = [one for one in told.asked_slots("sleep", "night") if one.heat is not None and one.heat.held][:1]
        assert slot.heat is not None
        answers.append(holds(slot.heat.held[0], slot.findings))
    assert answers == ["yes", "yes", "perhaps"]
