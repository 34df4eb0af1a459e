"""Every finding shows how it was reached: its rule, its numbers, what is written, the formulas that ran."""

from __future__ import annotations

import re
from math import isclose, isfinite

import pytest

from boxwright.book.reasons import in_print, reason_of
from boxwright.book.traced import Call, calls_of
from boxwright.cli.run import main
from boxwright.disciplines.towing import method as towing
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.rig.spelled import as_written
from boxwright.study.slots import study
from boxwright.units import show
from tests.book.reasoned import DAY, DEMOS, every_reason, last_stage, reading_of
from tests.web.live import ROOT

AMOUNT = re.compile(r"-?\d[\d,]*(?:\.\d+)?(?: \d+/\d+|/\d+)? (?=(?:lb|kg|in|mm|%|mph|deg)\b)")
IN_PASSING = {
    "safety/alarm-place": "the other end of its limit, which its Limit names in metres",
    "heat/fuel-reach": "the angle of a pump, quoted from the way of the fuel as it is written",
}
"""Rules whose sentence names an amount that no working shows, each with why."""


def must_show_its_numbers(demo: str, *stages: int) -> None:
    reading = reading_of(demo)
    units, count = reading.rig.header.units, 0
    for finding, _, reason in every_reason(demo, *stages):
        count += 1
        labels, text = dict(reason.rule), "\n".join(in_print(reason))
        assert labels["Asks"] and labels["Source"], finding.code
        assert "Lever" not in labels, "a word of ours"
        assert finding.code.startswith("rig/") or labels["What clears it"], finding.code
        apart = "temperature difference" if finding.unit == "K" else finding.unit
        for value, unit in ((finding.number, finding.unit), (finding.limit, finding.unit), (finding.margin, apart)):
            if value is not None and isfinite(value):
                said = {show(abs(value), unit, units, cuts=is_cut) for is_cut in (False, True)}
                said |= {show(value, unit, units, cuts=is_cut) for is_cut in (False, True)}
                assert any(one in text for one in said), (finding.code, value)
        margin = dict(reason.compared).get("Margin", "")
        if margin and finding.margin is not None:
            side = "inside" if finding.margin > 0.0 else "over" if finding.margin < 0.0 else "on the limit"
            assert margin.endswith(side), (finding.code, margin)
        if finding.where:
            where = as_written(reading.document, finding.where)
            assert any(one.path.startswith(where) for one in reason.written), finding.code
        for one in reason.written:
            assert one.text and (one.line is None or 0 < one.line <= reading.document.text.count("\n") + 1)
        if finding.code not in IN_PASSING:
            assert [one for one in AMOUNT.findall(finding.says) if one.strip() not in text] == [], (finding.says, text)
        for step in reason.steps:
            assert step.formula and step.result and step.source.count(": ") >= 1
    assert count > 20


@pytest.mark.parametrize("demo", DEMOS)
def test_every_finding_of_today_and_of_the_end_shows_how_it_was_reached(demo: str) -> None:
    must_show_its_numbers(demo, reading_of(demo).rig.header.stage_today, last_stage(demo))


@pytest.mark.nightly
@pytest.mark.parametrize("demo", DEMOS)
def test_every_finding_of_every_stage_shows_how_it_was_reached(demo: str) -> None:
    must_show_its_numbers(demo, *range(last_stage(demo) + 1))


def test_what_is_written_is_shown_as_written_with_its_line() -> None:
    text = reading_of("whimbrel").document.text.splitlines()
    for finding, _, reason in every_reason("whimbrel", last_stage("whimbrel")):
        for one in reason.written:
            if not one.text.endswith(" written") and not one.text.startswith("["):
                assert one.line is not None and one.text in text[one.line - 1], (finding.code, one)


def test_a_formula_is_shown_with_the_numbers_it_was_run_on() -> None:
    found = [(slot, reason) for finding, slot, reason in every_reason("dunlin", 3) if finding.code == "towing/stopping"]
    assert found
    for _, reason in found:
        step = next(one for one in reason.steps if one.source.startswith("deceleration:"))
        given = {one.name: float(one.text.split()[0]) for one in step.given}
        assert isclose(towing.deceleration(**given), float(step.result.split()[0]), rel_tol=1e-4)
        assert step.checks, "the method has published checks"


def run_again(call: Call) -> float:
    return towing.combination_mass(**{name: value for name, value in call.given if isinstance(value, float)})


def test_calls_are_those_of_the_slot_and_each_is_true() -> None:
    reading = reading_of("dunlin")
    slot = study(reading.rig, DAY).asked_slots("tow")[0]
    calls = calls_of(reading.rig, DAY, slot)
    again = [one for one in calls if one.name == "combination_mass"]
    assert again and all(isclose(run_again(one), one.gave[0][1]) for one in again)
    assert {one.rule for one in calls if one.name == "mean_deceleration"} == {"stopping"}
    assert calls == calls_of(reading.rig, DAY, slot)


def test_a_number_that_only_looks_like_another_is_not_taken_for_it() -> None:
    """A tape 3/8 in beside the plan has nothing to do with the 3/8 in edge distance of a 1/4 in screw."""
    for finding, _, reason in every_reason("whimbrel", last_stage("whimbrel")):
        if finding.code == "frame/built-beside-plan":
            assert not any("edge_distance" in one.source for one in reason.steps)
            return
    raise AssertionError("the seeded tape is gone")


def test_a_limit_is_found_where_it_is_written_and_nowhere_else() -> None:
    plain = "units: {weight: kg}\ntrailer:\n  gvwr: 700\n  gtm: 650\n"
    reading = read_rig(plain)
    slot = study(reading_of("dunlin").rig, DAY).asked_slots("tow")[0]
    units = reading.rig.header.units

    def limit_of(limit: float, where: str) -> str:
        one = Finding("towing/gross-over-plate", where, "stop", "", 800.0, limit, limit - 800.0, "kg")
        return dict(reason_of(one, slot, reading.document, (), units, units).compared)["Limit here"]

    assert limit_of(700.0, "trailer.gvwr").endswith("as written at trailer.gvwr, line 3: 700")
    assert limit_of(700.0, "trailer").endswith("as written at trailer.gvwr, line 3: 700")
    assert limit_of(650.0, "trailer.gvwr") == "650 kg"


def test_another_rules_formula_is_not_shown() -> None:
    reading = reading_of("dunlin")
    slot = study(reading.rig, DAY).asked_slots("tow")[0]
    one = Finding("towing/gross-over-plate", "trailer.gvwr", "stop", "", 12.345678, 750.0, 1.0, "kg")
    other = Call("towing", "deceleration", (("tow_mass", 1.0),), (("", 12.345678),), "stopping")
    units = reading.rig.header.units
    steps = reason_of(one, slot, reading.document, (other,), units, units).steps
    assert not any("deceleration" in step.source for step in steps)


def test_the_command_line_tells_how_a_finding_was_reached(capsys: pytest.CaptureFixture[str]) -> None:
    path = str(ROOT / "rigs" / "dunlin.yaml")
    assert main(["working", path, "towing/gross-over-plate", "--load", "home-poor"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "Asks: is the gross weight within the greatest mass" in told
    assert "as written at trailer.mam, line" in told and "mass = sum(masses)" in told
    assert main(["working", path, "towing/gros-over-plate", "--load", "home-poor"]) == 3
    assert 'did you mean "towing/gross-over-plate"?' in " ".join(capsys.readouterr().err.split())
