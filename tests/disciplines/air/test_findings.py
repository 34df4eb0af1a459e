"""Every rule of air on one small rig: an edit that trips it, one just inside, one that takes the value away."""

from __future__ import annotations

import tomllib
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from boxwright.disciplines.air.findings import RULES
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

FOLDER = Path(__file__).parents[2] / "findings" / "air"
RIG = (FOLDER / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


@cache
def worked(text: str, use: str) -> tuple[Finding, ...]:
    """Return what air says of a rig in one use."""
    found = study(read_rig(text).rig, JUDGED_ON).findings(use)
    return tuple(one for one in found if one.code.startswith("air/"))


def edited(*edits: tuple[str, str] | list[str]) -> str:
    """Return the small rig with some pieces of its text replaced."""
    text = RIG
    for old, new in edits:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def said(case: dict[str, Any]) -> tuple[Finding, ...]:
    """Return what air says of the small rig with the edits of a case made."""
    return worked(edited(*case["edits"]), case.get("use", "sleep"))


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert read_rig(RIG).problems == ()
    assert said({"edits": []}) == said({"edits": [], "use": "leave"}) == ()


def test_every_rule_has_its_trio() -> None:
    assert sorted(TRIOS) == sorted(rule.__name__.replace("_", "-") for rule in RULES)
    assert all(trio["code"] == f"air/{name}" for name, trio in TRIOS.items())


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
    assert hit.uses in (("sleep",), ("leave",), ("sleep", "leave"), ("work",))


@pytest.mark.parametrize("name", sorted(TRIOS))
def test_a_number_and_its_limit_give_the_side_the_margin_is_on(name: str) -> None:
    for case in ("trips", "lacks"):
        for one in said(TRIOS[name][case]):
            if one.margin is not None:
                assert one.number is not None and one.limit is not None and one.margin <= 0.0


LOW, HIGH = "free_area: 200 cm2, unit: {weight: 1}}\n  vent-high", "free_area: 200 cm2, unit: {weight: 1}}\nstages"


def kinds(*edits: tuple[str, str]) -> set[tuple[str, str]]:
    """Return kind and code of what air says of a night in the small rig, edited."""
    return {(one.kind, one.code) for one in worked(edited(*edits), "sleep")}


def test_a_vent_that_may_be_a_pinhole_is_asked_for_and_clears_nothing() -> None:
    narrow = [(one, one.replace("200 cm2", "1..20 cm2")) for one in (LOW, HIGH)]
    assert ("unknown", "air/fresh-air") in kinds(*narrow)
    cooker = "cooker: {x: 3000, side: left, z: 800, size: 400 x 400 x 100, stage: shell, done: yes, burns: wood}"
    wide = [(one, one.replace("200 cm2", "15..200 cm2")) for one in (LOW, HIGH)]
    assert ("unknown", "air/air-by-a-flame") in kinds(("# one more", cooker), *wide)
    assert ("advice", "air/air-by-a-flame") in kinds(("# one more", cooker))
    perhaps_none = [(LOW, LOW.replace("200 cm2", "0..200 cm2")), (HIGH, HIGH)]
    assert ("unknown", "air/air-by-a-flame") in kinds(("# one more", cooker), *perhaps_none)


def test_a_vent_larger_than_its_hole_is_asked_about_and_passes_nothing_until_it_is_put_right() -> None:
    """A hole of 200 mm by 100 mm is 200 cm2: no free area in it is more."""
    large = [(one, one.replace("200 cm2", "2000 cm2")) for one in (LOW, HIGH)]
    found = worked(edited(*large), "sleep")
    (asked,) = (one for one in found if one.code == "air/low-and-high")
    assert asked.kind == "unknown" and "2,000 cm2" in asked.says and "200 cm2" in asked.says
    assert any(one.code == "air/fresh-air" and one.kind == "unknown" and one.protects for one in found)
    wide = [(one, one.replace("200 cm2", "100..900 cm2")) for one in (LOW, HIGH)]
    assert ("unknown", "air/low-and-high") not in kinds(*wide)


def test_a_vent_without_a_height_is_asked_for() -> None:
    assert kinds(("z: 100, height: 100", "height: 100")) >= {("unknown", "air/low-and-high")}


def test_a_ticked_vent_with_other_words_for_today_is_asked_about_and_clears_nothing() -> None:
    taped = [(one, one.replace("free_area", 'now: "taped over", free_area')) for one in (LOW, HIGH)]
    found = worked(edited(*taped), "sleep")
    asked = [one for one in found if one.code == "air/vent-not-open"]
    assert [one.kind for one in asked] == ["unknown", "unknown"] and "taped over" in asked[0].says
    (breath,) = (one for one in found if one.code == "air/fresh-air")
    assert breath.kind == "unknown" and breath.protects, "as if none of them passed air"
    cooker = "cooker: {x: 3000, side: left, z: 800, size: 400 x 400 x 100, stage: shell, done: yes, burns: propane}"
    by_flame = [one for one in worked(edited(("# one more", cooker), taped[0]), "sleep") if "flame" in one.code]
    assert by_flame[0].kind != "advice"


def test_a_flame_people_work_by_counts_what_vents_surely_pass() -> None:
    cooker = "cooker: {x: 3000, side: left, z: 800, size: 400 x 400 x 100, stage: shell, done: yes, burns: propane}"
    plain = [("# one more", cooker), ("for: [sleep, leave]", "for: [work]")]
    assert "air/air-by-a-flame" not in {one.code for one in worked(edited(*plain), "work")}
    doubtful = [(one, one.replace("200 cm2", "1..200 cm2")) for one in (LOW, HIGH)]
    (hit,) = (one for one in worked(edited(*plain, *doubtful), "work") if one.code == "air/air-by-a-flame")
    assert hit.kind == "limit" and hit.margin is not None and hit.margin < 0.0


def test_a_flame_is_cleared_by_no_figure_of_another_country() -> None:
    cooker = "cooker: {x: 3000, side: left, z: 800, size: 400 x 400 x 100, stage: shell, done: yes, burns: propane}"
    for country, kind in (("AU-NSW", "advice"), ("US-NC", "limit"), ("UK", "limit")):
        edits = [("# one more", cooker), ("countries: [AU-NSW]", f"countries: [{country}]")]
        (hit,) = (one for one in worked(edited(*edits), "sleep") if one.code == "air/air-by-a-flame")
        assert hit.kind == kind, (country, hit.says)
        assert ("borrowed from an Australian rule" in hit.says and "it clears nothing" in hit.says) == (kind == "limit")
        at_work = worked(edited(*edits, ("for: [sleep, leave]", "for: [work]")), "work")
        assert ("air/air-by-a-flame" in {one.code for one in at_work}) == (kind == "limit")


COOKER = ("# one more", "cooker: {x: 3000, side: left, z: 800, size: 400 x 400 x 100, weight: 8, stage: shell, done: yes, burns: FUEL}")  # fmt: skip  # noqa: E501
UP = ("z: 100, height: 100", "z: 300, height: 100")
LOCKER = "locker: {x: -600, side: centre, z: 0, size: 600 x 400 x 500, weight: 9, stage: shell, done: yes, free_area: AREA}\n  bottle: {inside: locker, x: +50, side: +50, z: +0, size: 300 x 300 x 400, weight: 12, stage: shell, done: yes, tank: {of: propane, volume: 9}}"  # noqa: E501


def drops(*edits: tuple[str, str]) -> list[str]:
    return [one.kind for one in worked(edited(*edits), "sleep") if one.code == "air/gas-drop"]


@pytest.mark.parametrize(("fuel", "kinds"), [("propane", ["advice"]), ("LPG", ["advice"]), ("spirit", [])])
def test_only_what_is_heavier_than_air_falls(fuel: str, kinds: list[str]) -> None:
    assert drops((COOKER[0], COOKER[1].replace("FUEL", fuel)), UP) == kinds


def test_a_heater_on_gas_asks_for_a_drop_though_its_fumes_go_out() -> None:
    heater = "heater: {x: 2600, side: left+100, z: 100, size: 350 x 150 x 150, weight: 4, stage: shell, done: yes, heater: {of: propane, highest: 2000 W, exhaust: {out: right}}}"  # noqa: E501
    assert drops(("# one more", heater), UP) == ["advice"]
    assert drops(("# one more", heater.replace("propane", "diesel")), UP) == []


def test_a_vent_at_the_foot_of_a_wall_lets_gas_out_and_one_that_may_not_stand_is_asked_for() -> None:
    cooker = (COOKER[0], COOKER[1].replace("FUEL", "propane"))
    assert drops(cooker) == []
    unsure = ("z: 100, height: 100, stage: shell, cut: yes, done: yes", "z: 100, height: 100, stage: shell, cut: yes")
    assert drops(cooker, unsure) == ["unknown"]


@pytest.mark.parametrize(
    ("free", "kind"), [("40..47 cm2", "stop"), ("40..55 cm2", "stop"), ("40..60 cm2", "unknown"), ("49..60 cm2", None)]
)
def test_a_locker_is_judged_by_the_worst_of_what_is_not_known(free: str, kind: str | None) -> None:
    home = ("countries: [AU-NSW]", "countries: [US-IN]")
    found = worked(edited(home, ("# one more", LOCKER.replace("AREA", free))), "sleep")
    kinds = [one.kind for one in found if one.code == "air/gas-locker"]
    assert kinds == ([kind] if kind is not None else [])
    told = [one for one in found if one.code == "air/gas-locker"]
    assert all(one.margin == pytest.approx(40e-4 - (one.limit or 0.0)) for one in told)
    assert all(one.number == pytest.approx(40e-4) for one in told)
    assert all(one.protects and one.could_stop for one in found if one.code == "air/gas-locker")


@pytest.mark.parametrize(("passes", "words"), [("50 cm2", "it may come to"), ("0 cm2", "it comes to")])
def test_a_mild_night_that_the_most_air_may_keep_dry_may_be_damp_and_another_is(passes: str, words: str) -> None:
    less = [(one, one.replace("200 cm2", passes)) for one in (LOW, HIGH)]
    (said,) = (one.says for one in worked(edited(*less), "sleep") if one.code == "air/mild-wet")
    assert words in said
