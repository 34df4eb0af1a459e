"""Every rule of weight on one small rig: an edit that trips it, one just inside, one that takes the value away."""

from __future__ import annotations

import tomllib
from datetime import date
from math import inf
from pathlib import Path
from typing import Any

import pytest

from boxwright.disciplines.towing.telling import name_of
from boxwright.disciplines.weight.result import Output
from boxwright.disciplines.weight.telling import above_zero, weighing
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.units import Band
from tests.houserules.test_docstrings import is_rule
from tests.houserules.tree import PACKAGE, functions, modules

FOLDER = Path(__file__).parents[2] / "findings" / "weight"
RIG = (FOLDER / "rig.yaml").read_text(encoding="utf-8")
JUDGED_ON = date(2026, 6, 1)
TRIOS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(FOLDER.glob("*.toml"))}
CASES = [(name, case) for name in TRIOS for case in ("trips", "inside", "lacks")]


def said(case: dict[str, Any]) -> tuple[Finding, ...]:
    """Return what weight says of the rig with the edits of a case made."""
    text = RIG
    for old, new in case["edits"]:
        old = old.replace("\\n", "\n")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    read = read_rig(text)
    found = study(read.rig, JUDGED_ON).findings(case.get("use", "tow"))
    return tuple(one for one in found if one.code.startswith("weight/"))


def test_the_rig_as_it_is_has_nothing_against_it() -> None:
    assert read_rig(RIG).problems == ()
    assert said({"edits": []}) == said({"edits": [], "use": "sleep"}) == ()


def test_every_rule_has_its_trio() -> None:
    files = [module for module in modules(PACKAGE) if module.place == "disciplines/weight/findings.py"]
    rules = {name.replace("_", "-") for module in files for name, node in functions(module) if is_rule(node)}
    assert set(TRIOS) == rules
    assert {trio["code"] for trio in TRIOS.values()} == {f"weight/{name}" for name in rules}


@pytest.mark.parametrize(("name", "case"), CASES)
def test_a_rule_speaks_when_it_should_and_only_then(name: str, case: str) -> None:
    wanted, code = TRIOS[name][case], TRIOS[name]["code"]
    found = said(wanted)
    if case == "inside" or code in wanted.get("silent", ()):
        assert [one for one in found if one.code == code] == []
        return
    hits = [one for one in found if one.code == wanted.get("code", code) and one.where == wanted["where"]]
    assert len(hits) == 1, [(one.code, one.where, one.says) for one in found]
    (hit,) = hits
    assert hit.kind == wanted["kind"]
    assert wanted.get("says", "") in hit.says
    assert hit.source and hit.lever and hit.act
    assert hit.minutes is not None and hit.minutes > 0
    if hit.kind == "unknown":
        assert hit.because


@pytest.mark.parametrize("name", sorted(TRIOS))
def test_a_number_and_its_limit_give_the_side_the_margin_is_on(name: str) -> None:
    for case in ("trips", "lacks"):
        for one in said(TRIOS[name][case]):
            if one.margin is not None:
                assert one.number is not None and one.limit is not None and one.margin <= 0.0


def bare(best: float, low: float, permitted_low: float, high: float, unknown: tuple[str, ...] = ()) -> Output:
    return Output(
        "trailer", "tongue", "kg", Band(best, low, high, known=not unknown), 1.0, permitted_low, high, unknown
    )


@pytest.mark.parametrize(
    ("output", "kind"),
    [
        (bare(50.0, 10.0, 20.0, 90.0), None),
        (bare(50.0, -10.0, 20.0, 90.0), "unknown"),
        (bare(50.0, -10.0, -5.0, 90.0), "stop"),
        (bare(-1.0, -10.0, -5.0, 90.0), "stop"),
        (bare(0.0, -10.0, 0.0, 90.0), "stop"),
        (bare(-1.0, -10.0, -5.0, inf, ("parts[lost]",)), "unknown"),
        (bare(-20.0, -inf, -25.0, -1.0, ("parts[lost]",)), "stop"),
        (bare(50.0, -inf, 20.0, 90.0, ("parts[lost]",)), "unknown"),
    ],
)
def test_the_bad_end_of_the_band_decides(output: Output, kind: str | None) -> None:
    assert above_zero(output) == kind


def test_a_coupled_trailer_is_held_by_its_ball() -> None:
    trips = TRIOS["tips-up"]["trips"]
    coupled = {**trips, "edits": [["coupled: no, legs: down", "coupled: yes, legs: up"], trips["edits"][1]]}
    assert said(coupled) == ()


NO_TONGUE = ["weight: 900, tongue: 90,", "weight: 900, tongue: unknown,"]
NO_WEIGHT = ["weight: 900, tongue: 90,", "weight: unknown, tongue: unknown,"]
NO_TICKET = ["measured:\n  ticket: {date: 2026-05-20, what: ticket, with: public scale, stage: shell, load: road, "
             "total: 1065, within: 10}", "measured:"]  # fmt: skip


def test_the_bare_trailer_is_put_on_a_scale_and_never_looked_for_with_a_tape() -> None:
    (found,) = (one for one in said({"edits": [NO_TONGUE]}) if one.code == "weight/place-unknown")
    assert found.lever == "trailer.empty.tongue" and found.act is not None and "Weigh the tongue" in found.act


def test_a_bare_trailer_of_no_weight_is_asked_for_once() -> None:
    found = [one for one in said({"edits": [NO_WEIGHT, NO_TICKET]}) if one.where == "trailer.empty"]
    assert [one.code for one in found] == ["weight/weight-unknown"]
    assert found[0].act == "Weigh the empty trailer and its tongue on a public scale"


LAYERS = ["walls[left].layers[foam].structure", "walls[right].layers[foam].structure"]


def test_a_lining_is_not_put_on_a_luggage_scale() -> None:
    assert weighing(LAYERS[:1]) == "Write of what left foam is and how thick, or weigh a whole sheet of it"
    assert weighing(["parts[bed]", *LAYERS]) == (
        "Weigh bed with a bathroom or luggage scale; write of what left foam and right foam are and how thick, or "
        "weigh a whole sheet of each"
    )


def test_two_linings_of_one_name_are_told_apart() -> None:
    assert [name_of(one) for one in (*LAYERS, "parts[bed]", "tow[van].tongue")] == [
        "left foam", "right foam", "bed", "van"]  # fmt: skip


def test_a_number_that_is_wholly_open_is_not_called_open_unknown() -> None:
    edits = [["{x: 500, side: centre, z: 300, size: 1900 x 800 x 300, weight: 60", "{weight: unknown"]]
    (found,) = (one for one in said({"edits": edits}) if one.code == "weight/tongue-lifts")
    assert "open unknown" not in found.says and "nobody can say how far the rest moves it" in found.says
