"""What `check` offers, `try` shows: every offered command, typed as it is printed, names the findings it clears."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest

from boxwright.cli import main
from boxwright.cli.asked import Question, answered
from boxwright.cli.fixes import sought, tried_as
from boxwright.rig.compose import read_rig
from tests.study.demo import RIGS, TODAY

AT_LEAST = {"whimbrel": 1, "dunlin": 4, "gannet": 0}
"""How many changes are offered at the last stage behind the last vehicle; Gannet has none that is moved or left."""


def asked_of(name: str) -> list[Question]:
    """Return the questions about a demo rig: at each stage, today's first, behind each vehicle, in each load towed."""
    path = str(RIGS / f"{name}.yaml")
    rig = read_rig(Path(path).read_bytes()).rig
    return [
        Question(path, stage=stage, load=state.name, vehicle=vehicle, on=TODAY.isoformat())
        for stage in ("", *(one.name for one in rig.stages_in_order))
        for vehicle in [name for name, _ in rig.tow] or [""]
        for state in rig.loads
        if "tow" in state.uses
    ]


def shown(capsys: pytest.CaptureFixture[str], command: str) -> str:
    """Return what a printed command prints, on one line."""
    program, *words = shlex.split(command)
    assert program == "boxwright"
    assert main(words) <= 2
    return " ".join(capsys.readouterr().out.split())


def each_is_shown(capsys: pytest.CaptureFixture[str], question: Question) -> int:
    """Return how many commands are offered for a question; each must show every finding it is said to clear as gone."""
    answer = answered(question, TODAY)
    said = {(one.code, one.where, slot.load): one.says for slot in answer.study.asked_slots() for one in slot.findings}
    fixes = sought(answer, "first", TODAY).fixes
    for fix in fixes:
        page = shown(capsys, tried_as(fix, question))
        gone = page.partition(" GONE ")[2].partition(" NEW ")[0]
        for code, where, _ in fix.clears:
            # What is said in several load states stands once, in the words of one, with the count of the others.
            ways = [says for mark, says in said.items() if mark[:2] == (code, where)]
            assert any(" ".join(says.split()) in gone for says in ways), (question, code, where)
        assert "No finding comes or goes" not in page
    return len(fixes)


@pytest.mark.parametrize("name", AT_LEAST)
def test_an_offered_change_shows_the_finding_it_clears(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    every = asked_of(name)
    last = [one for one in every if (one.stage, one.vehicle) == (every[-1].stage, every[-1].vehicle)]
    assert sum(each_is_shown(capsys, one) for one in (every[0], *last)) >= AT_LEAST[name]


@pytest.mark.nightly
@pytest.mark.parametrize("name", AT_LEAST)
def test_at_every_stage_an_offered_change_shows_the_finding_it_clears(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert sum(each_is_shown(capsys, one) for one in asked_of(name)) >= AT_LEAST[name]
