"""``boxwright changeover`` as it is typed: its page, its JSON, its exit codes, what it refuses."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import jsonschema
import pytest

from boxwright.cli import answers
from boxwright.cli.asked import Question
from boxwright.cli.changing_over import answer_of, exit_style, out_style, page
from boxwright.cli.run import main
from boxwright.disciplines.layout.changeover import Freed, Leaving
from tests.book.test_changeover_card import MINI
from tests.disciplines.layout.small_rigs import rig_of
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


def coloured(path: str, stage: str) -> list[tuple[str, str]]:
    """Return each piece of the page that has a colour, with it."""
    told = answer_of(Question(path, stage=stage), "travel", "night", "", date(2026, 5, 2))
    return [(span.text.strip(), span.style) for line in page(told, 100) for span in line if span.style]


def test_the_page_is_coloured_by_how_it_ends_and_by_what_each_step_does_to_the_exits() -> None:
    found = coloured(WHIMBREL, "finish")
    assert [style for text, style in found if "not as it is written" in text] == ["stop"]
    assert [style for text, style in found if text.startswith("Out in two minutes: from bunk")] == ["go"]
    assert {style for text, style in found if text.startswith("ramp BLOCKED")} == {"stop"}
    easy = coloured(DUNLIN, "inside")
    assert [style for text, style in easy if text.startswith("From travel")] == ["go"]


@pytest.mark.parametrize(
    ("before", "after", "style"),
    [
        (("free", "free"), ("free", "blocked"), "stop"),
        (("blocked", "free"), ("blocked", "unknown"), "unknown"),  # what was blocked before is no news
        (("blocked", "shut"), ("free", "tight"), "limit"),
        (("blocked", "shut"), ("free", "shut"), "go"),
        (("free", "free"), ("shut", "free"), "dim"),
    ],
)
def test_a_step_has_the_colour_of_the_gravest_it_changes(
    before: tuple[str, str], after: tuple[str, str], style: str
) -> None:
    def exits(words: tuple[str, str]) -> tuple[Freed, ...]:
        return tuple(Freed(name, name, word) for name, word in zip("ab", words, strict=True))  # type: ignore[arg-type]

    assert exit_style(exits(before), exits(after)) == style


@pytest.mark.parametrize(
    ("word", "seconds", "style"),
    [("found", 120.0, "go"), ("found", 121.0, "stop"), ("blocked", None, "stop"), ("not-found", None, "unknown")],
)
def test_out_in_two_minutes_is_coloured_by_whether_it_is(word: str, seconds: float | None, style: str) -> None:
    assert out_style(Leaving(word, seconds=seconds)) == style  # type: ignore[arg-type]


@pytest.mark.parametrize(("weight", "code"), [("20", 0), ("70", 1)])
def test_what_wants_more_hands_than_sleep_here_is_no_plain_yes(tmp_path: Path, weight: str, code: int) -> None:
    """One carries up to 25 kg, 55 lb: common practice, no source."""
    path = tmp_path / "mini.yaml"
    path.write_text(MINI.replace("16 x 16 x 16, weight: 20", f"16 x 16 x 16, weight: {weight}"), encoding="utf-8")
    assert main(["changeover", str(path), "travel", "night"]) == code


def test_a_night_with_no_exit_free_is_a_no_whatever_can_be_moved_first(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """Two light crates stand before both ways out at night; each can be carried aside by hand."""
    before = "weight: 5, kind: cargo, when_sleeping: "
    text = rig_of(
        parts="c1: {x: 2000, side: right-100, z: 0, size: 400 x 600 x 1000, "
        f"{before}{{x: 2700, side: right-20, z: 0}}}}\n"
        f"  c2: {{x: 2450, side: right-100, z: 0, size: 300 x 1500 x 1000, {before}{{x: 3650, side: centre, z: 0}}}}\n",
        door="swing: {hinge: front, opens: out, to: 90 deg}",
    )
    path = tmp_path / "both.yaml"
    path.write_text(text, encoding="utf-8")
    code, out, _ = typed(capsys, str(path), "travel", "night")
    assert "door BLOCKED by c1" in out and "ramp BLOCKED by c2" in out
    assert code == 2
