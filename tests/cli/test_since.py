"""``since`` and ``next``: what moved since a day or a ticket, and what to do next, on rigs whose story is known."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from boxwright.cli import main
from boxwright.cli.next_steps import is_done, steps
from boxwright.cli.since import Then, rig_then
from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.slots import study
from tests.study.demo import CLEAN, RIGS, TODAY, clean, demo, slot_of

WHIMBREL = str(RIGS / "whimbrel.yaml")


def shown(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    code = main(words)
    out = capsys.readouterr()
    assert max((len(line) for line in out.out.splitlines()), default=0) <= 80
    return code, " ".join((out.out + out.err).split())


def standing(rig: Rig) -> set[str]:
    """Return what stands as ticked in the first load state of the road."""
    found = study(rig, TODAY, stage=rig.header.stage_today)
    slot = next(slot for slot in found.slots if slot.is_ticked)
    return {frame.name for frame in slot.standing.frames}


def test_on_an_earlier_day_nothing_stood_that_was_ticked_later() -> None:
    now, then = demo("whimbrel"), Then("that day", date(2026, 2, 7), 1, "", ())
    before = standing(rig_then(now, then))
    # Read off the rig file: extinguisher and alarms are ticked 2026-02-07, the tracks the day after.
    assert {"extinguisher", "co-alarm", "smoke-alarm"} <= before
    assert not {"track-left", "track-right", "solar-rails", "ladder"} & before
    assert {"track-left", "solar-rails", "ladder"} <= standing(now)


def test_a_tick_on_the_day_itself_counts() -> None:
    rig = clean("stage: shell, done: yes, alarm: CO", "stage: shell, done: yes 2026-04-20, alarm: CO")
    for day, there in ((date(2026, 4, 20), True), (date(2026, 4, 19), False)):
        assert ("alarm" in standing(rig_then(rig, Then("", day, 0, "", ())))) is there


def test_since_a_ticket_tells_ticks_weighings_and_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    _, said = shown(capsys, "since", WHIMBREL, "ticket-empty")
    assert "Since ticket-empty (2026-01-18, stage measure)" in said
    assert "2026-02-08 track-left, track-right" in said
    assert "2026-03-30 boat-scale (boat)" in said
    assert "read total: 1,960 +- 28 lb" in said  # 1,725 on the axles and 235 on the tongue, as written
    assert "stage measure" in said and "ANSWERS" in said


def test_since_a_day_tells_only_what_came_later(capsys: pytest.CaptureFixture[str]) -> None:
    _, said = shown(capsys, "since", WHIMBREL, "2026-04-20")
    assert "2026-04-21 floor foam, stage foam" in said
    assert "2026-04-20 ceiling foam" not in said and "boat-scale" not in said


@pytest.mark.parametrize(
    ("when", "says"),
    [
        ("2031-01-01", "still to come"),
        ("ticket-emty", 'did you mean "ticket-empty"?'),
        ("2026-13-01", "no day such as"),
        ("\x1b[31mred", "no day such as"),
    ],
)
def test_a_moment_that_is_none_is_refused_in_words(capsys: pytest.CaptureFixture[str], when: str, says: str) -> None:
    code, said = shown(capsys, "since", WHIMBREL, when)
    assert code == 3 and says in said and "\x1b" not in said


def test_what_came_and_what_it_did_is_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "rig.yaml"
    vice = "  vice: {x: 135, side: centre, z: 30, size: 30 x 20 x 20, weight: 990, stage: shell, done: yes 2026-04-20}"
    path.write_text(CLEAN.replace("parts:\n", f"parts:\n{vice}\n"))
    _, said = shown(capsys, "since", str(path), "2026-04-10")
    assert "2026-04-20 vice" in said
    assert "Stop the trailer pulls its coupling up" in said.partition("NEW")[2]


def test_what_betters_an_answer_comes_first() -> None:
    text = CLEAN.replace("weight: 50, stage: shell, kind: cargo", "weight: unknown, stage: shell, kind: cargo")
    acts = steps(study(read_rig(text).rig, TODAY).asked_slots("tow"))
    order = [(not one.protects, -one.betters, -len(one.holds_back)) for one in acts]
    assert any("chest" in one.act for one in acts)
    assert order == sorted(order)


def test_one_unknown_alone_betters_the_answer_and_one_of_two_does_not() -> None:
    slot = slot_of(study(clean(), TODAY), "shell", "road", is_ticked=True)
    chest = Finding("weight/weight-unknown", "parts[chest]", "unknown", "", act="Weigh the chest", uses=("tow",))
    bed = replace(chest, where="parts[bed]", act="Weigh the bed")
    assert [one.betters for one in steps((replace(slot, findings=(chest,)),))] == [1]
    assert [one.betters for one in steps((replace(slot, findings=(chest, bed)),))] == [0, 0]


def test_stages_are_ready_when_what_they_need_is_done(capsys: pytest.CaptureFixture[str]) -> None:
    rig = demo("whimbrel")
    done = {stage.name for stage in rig.stages_in_order if is_done(rig, stage)}
    # Read off the rig file: measure, wire and foam are ticked as a whole; of safe, vent-high is only half done.
    assert done == {"measure", "wire", "foam"}
    _, said = shown(capsys, "next", WHIMBREL)
    assert "safe: exits, alarms, tie-downs" in said
    assert "roof (after safe)" in said and "heat (after power)" in said


def test_next_names_what_nobody_ticked_with_its_line(capsys: pytest.CaptureFixture[str]) -> None:
    _, said = shown(capsys, "next", WHIMBREL)
    text = (RIGS / "whimbrel.yaml").read_text(encoding="utf-8").splitlines()
    line = next(number for number, row in enumerate(text, start=1) if row.strip().startswith("vent-high:"))
    assert f"line {line} opening vent-high" in said
    assert "Weigh launch-wheels with" in said and "by itself it crosses the limit from" in said
