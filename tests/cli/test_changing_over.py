"""``boxwright changeover`` as it is typed: its page, its JSON, its exit codes, what it refuses."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from boxwright.cli import answers
from boxwright.cli.run import main
from tests.houserules.tree import ROOT

WHIMBREL, GANNET = str(ROOT / "rigs" / "whimbrel.yaml"), str(ROOT / "rigs" / "gannet.yaml")
DUNLIN = str(ROOT / "rigs" / "dunlin.yaml")


def typed(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    """Return the exit code and what was printed for a command line."""
    code = main(["changeover", *words])
    out, err = capsys.readouterr()
    return code, " ".join(out.split()), " ".join(err.split())


def test_what_cannot_be_done_as_written_is_a_no_with_its_reason(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = typed(capsys, WHIMBREL, "travel", "night", "--stage", "finish")
    assert code == 2
    assert "not as it is written. With outboard and outboard-stand left outside as well" in out
    assert "bunk meets outboard and outboard-stand." in out
    assert "Out in two minutes: from bunk by side-door" in out
    assert "ramp BLOCKED by outboard" in out


def test_the_answer_for_programs_keeps_its_contract(capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["changeover", DUNLIN, "travel", "night", "--json"])
    answer = json.loads(capsys.readouterr().out)
    jsonschema.Draft202012Validator(json.loads(answers.answer_schema())).validate(answer)
    assert code in (0, 1)
    assert [step["where"] for step in answer["there"]["steps"]] == [
        "openings[rear]", "parts[tables]", "parts[gazebo]", "openings[rear]",
    ]  # fmt: skip
    assert answer["there"]["stands"] == {"tables": "outside", "gazebo": "outside"}
    assert answer["there"]["hand_seconds"] == answer["back"]["hand_seconds"] == 10 + 40 + 2 * 40 + 10


def test_ends_may_be_load_states_and_the_other_way_round(capsys: pytest.CaptureFixture[str]) -> None:
    _, there, _ = typed(capsys, DUNLIN, "to-market", "fair-night")
    _, back, _ = typed(capsys, DUNLIN, "night", "travel")
    assert "From to-market to fair-night: 4 moves" in there
    assert "From night (fair-night) to travel (to-market): 4 moves" in back
    _, poor, _ = typed(capsys, DUNLIN, "travel", "night", "--load", "home-poor")
    assert "From travel (home-poor) to night" in poor and "timber-bought" in poor


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ((GANNET, "travel", "night"), "no load state is for sleep; write one"),
        ((DUNLIN, "travel", "to-market"), "the same load state; nothing changes"),
        ((DUNLIN, "travel", "nihgt"), "night"),
        ((DUNLIN, "travel", "night", "--load", "home-por"), "home-poor"),
    ],
)
def test_what_cannot_be_asked_is_refused_in_one_sentence(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str
) -> None:
    code, out, err = typed(capsys, *words)
    assert (code, out) == (3, "")
    assert says in err


def test_a_rig_without_a_room_is_asked_for_its_body(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = "boxwright: 1\nloads:\n  road: {cargo: all, for: [tow]}\n  bed: {cargo: all, for: [sleep]}\n"
    path = tmp_path / "bare.yaml"
    path.write_text(text, encoding="utf-8")
    code, out, err = typed(capsys, str(path), "travel", "night")
    assert (code, out) == (3, "")
    assert "write trailer: {body:" in err
