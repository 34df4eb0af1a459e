"""What is to be done first: what ends a definite no, before any question; and the worst load state speaks."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from boxwright.cli.check import first_steps
from boxwright.cli.commands import app
from boxwright.finding import Verdict
from tests.study.test_remedy_carried import UNBRAKED

ROOT = Path(__file__).parents[2]
DUNLIN = str(ROOT / "rigs" / "dunlin.yaml")
LADEN_LAST = UNBRAKED.replace("empty: {}", "empty: {cargo: none}")


def said(*words: str) -> str:
    """Return a page with all its spaces made one."""
    return " ".join(CliRunner().invoke(app, list(words)).output.split())


@pytest.fixture
def rig(tmp_path: Path) -> str:
    path = tmp_path / "rig.yaml"
    path.write_text(LADEN_LAST, encoding="utf-8")
    return str(path)


def test_what_ends_a_no_comes_before_the_questions() -> None:
    verdict = Verdict("tow", "away", "built", "no", (), "Carry less", ("Weigh it (30 min)", "Read the plate"))
    assert first_steps(verdict) == ("Carry less", "Weigh it (30 min)", "Read the plate")


def test_a_question_that_is_the_first_thing_to_do_is_said_once() -> None:
    questions = ("Weigh it (30 min)", "Read the plate")
    assert first_steps(Verdict("tow", "", "", "ask", (), "Weigh it", questions)) == questions
    assert first_steps(Verdict("tow", "", "", "ask", (), "", questions)) == questions


def test_a_demo_that_is_too_heavy_is_told_to_leave_things_behind_first() -> None:
    page = said("check", DUNLIN, "--load", "home-poor")
    assert "first: 1 Leave lathe" in page
    assert page.index("first: 1 Leave lathe") < page.index("2 Weigh the loaded trailer")


def test_next_begins_with_what_no_measurement_ends() -> None:
    page = said("next", DUNLIN, "--load", "home-poor")
    stop = page.index("- Carry less, fit brakes, or use a vehicle rated for more: the gross weight")
    assert page.index("PUT RIGHT FIRST") < stop < page.index("WEIGH, MEASURE, LOOK")
    assert "PUT RIGHT FIRST" not in said("next", DUNLIN, "--load", "empty")


@pytest.mark.parametrize("words", [("check",), ("towing",)])
def test_the_laden_state_speaks_though_the_empty_one_is_written_first(rig: str, words: tuple[str, ...]) -> None:
    page = said(*words, rig)
    assert "load away" in page and "673 kg, over what estate may pull unbraked" in page
    assert "Worse with" not in page


def test_who_asks_about_the_empty_trailer_is_told_that_the_laden_one_is_worse(rig: str) -> None:
    page = said("check", rig, "--load", "empty")
    assert "Worse with load away: TOW NO, the gross weight, without brakes, is 673 kg" in page
    assert "Worse with" not in said("check", rig, "--load", "away")


def test_where_no_load_state_is_of_the_use_asked_for_none_is_named() -> None:
    assert "today as ticked, stage s06; judged on" in said("check", "rigs/gannet.yaml", "--use", "sleep")


def test_one_stop_is_more_than_many_questions(tmp_path: Path) -> None:
    """Empty, its tank is not named and so all is in question; laden, a rating is broken."""
    tank = "  tank:    {x: 1300, side: left, z: 900, size: 400 x 400 x 200, weight: 5, stage: built, done: yes, "
    tank += "tank: {volume: 20 L, of: water}}\nloads:"
    text = LADEN_LAST.replace("loads:", tank).replace("away: {cargo: all}", "away: {cargo: all, tanks: {tank: empty}}")
    path = tmp_path / "rig.yaml"
    path.write_text(text, encoding="utf-8")
    assert "load away; judged on" in said("check", str(path))


def test_what_is_left_out_is_led_to_by_a_command_that_can_be_typed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("boxwright.cli.next_steps.MOST_STOPS", 0)
    assert f"more: boxwright check {DUNLIN}" in said("next", DUNLIN, "--load", "home-poor")
