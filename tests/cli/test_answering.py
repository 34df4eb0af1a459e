"""Whole commands on the demo rigs: exit codes, JSON, the pipe, the terminal, and what is not imported."""

from __future__ import annotations

import json
import os
import pty
import re
import select
import subprocess
import sys
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from typer.testing import CliRunner

from boxwright.cli import answers, main
from boxwright.cli.check_methods import page as check_methods_page
from boxwright.cli.check_methods import ran
from boxwright.cli.commands import app
from boxwright.source import load_checks, load_sources
from tests.study.demo import CLEAN

ROOT = Path(__file__).resolve().parents[2]
RIGS = sorted((ROOT / "rigs").glob("*.yaml"))
WHIMBREL, DUNLIN = ROOT / "rigs" / "whimbrel.yaml", ROOT / "rigs" / "dunlin.yaml"
SCHEMA = json.loads(answers.answer_schema())
HEAVY = "numba scipy pvlib pandas matplotlib ortools trimesh ezdxf numpy".split()
EXIT_CODES = {"go": 0, "limits": 1, "ask": 1, "no": 2}
RUNNER = CliRunner()


@cache
def by_json(*words: str) -> tuple[dict[str, Any], int]:
    """Return an answer and its exit code; worked out once for all tests that ask the same, and changed by none."""
    came = RUNNER.invoke(app, [*words, "--json"])
    return json.loads(came.stdout), came.exit_code


def program(*words: str, text: str = "", **environment: str) -> subprocess.CompletedProcess[str]:
    """Run the program on its own, piped; an empty value takes a name out of its environment."""
    own = {name: value for name, value in {**os.environ, **environment}.items() if value}
    command = [sys.executable, "-m", "boxwright", *words]
    return subprocess.run(command, input=text, env=own, capture_output=True, text=True, encoding="utf-8", check=False)


def on_a_terminal(*words: str, **environment: str) -> str:
    """Return what the program writes where its output is a terminal."""
    front, back = pty.openpty()
    own = {name: value for name, value in {**os.environ, **environment}.items() if value}
    command = [sys.executable, "-m", "boxwright", *words]
    with subprocess.Popen(command, stdout=back, stderr=subprocess.DEVNULL, env=own) as writer:
        os.close(back)
        pieces: list[bytes] = []
        while select.select([front], [], [], 60.0)[0]:
            try:
                piece = os.read(front, 65536)
            except OSError:  # so a closed terminal ends on this system
                break
            if not piece:
                break
            pieces.append(piece)
        writer.wait()
    os.close(front)
    return b"".join(pieces).decode("utf-8")


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
@pytest.mark.parametrize("use", ["tow", "sleep", "leave", "work"])
def test_the_exit_code_is_that_of_the_use_asked_for(path: Path, use: str) -> None:
    answer, code = by_json("check", str(path), "--use", use)
    assert code == EXIT_CODES[answer["verdicts"][use]["answer"]]


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
@pytest.mark.parametrize("word", ["check", "weight"])
def test_answers_keep_the_contract(path: Path, word: str) -> None:
    answer, code = by_json(word, str(path))
    jsonschema.Draft202012Validator(SCHEMA, format_checker=jsonschema.FormatChecker()).validate(answer)
    assert code in (0, 1, 2)
    if word == "weight":
        assert answer["states"] and answer["as_ticked"]


def test_every_number_of_a_state_has_its_ends_in_order() -> None:
    answer, _ = by_json("weight", str(WHIMBREL))
    for state in (*answer["states"], *answer["as_ticked"]):
        for key in ("gross_kg", "tongue_kg", "tongue_share", "on_wheels_kg", "left_kg", "right_kg"):
            number = state[key]
            assert number["low"] is None or number["low"] <= number["best"] + 1e-9
            assert number["high"] is None or number["best"] <= number["high"] + 1e-9


def test_the_table_has_every_stage_in_every_load_state() -> None:
    answer, _ = by_json("weight", str(WHIMBREL))
    planned = [(state["stage"], state["load"]) for state in answer["states"]]
    stages, loads = {stage for stage, _ in planned}, {load for _, load in planned}
    assert len(planned) == len(set(planned)) == len(stages) * len(loads)
    assert len(stages) == 11  # counted in the file: the stages Whimbrel is built in
    assert {state["stage"] for state in answer["as_ticked"]} == {answer["stage"]} == {"liners"}


def test_a_finding_stands_on_the_line_of_the_text_it_is_about() -> None:
    answer, _ = by_json("check", str(WHIMBREL))
    lines = WHIMBREL.read_text("utf-8").splitlines()
    found = 0
    for finding in answer["findings"]:
        named = re.fullmatch(r"\w+\[([^\]]+)\]", finding["where"])
        if named:
            assert named[1] in lines[finding["line"] - 1]
            found += 1
    assert found > 3


@pytest.mark.parametrize("word", ["check", "weight", "trace"])
@pytest.mark.parametrize("columns", ["80", "120"])
def test_a_pipe_gets_plain_text_of_its_width(
    word: str, columns: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    assert main([word, str(DUNLIN)]) in (0, 1, 2)
    must_be_plain(*capsys.readouterr(), int(columns))


def test_a_pipe_of_a_process_gets_the_same() -> None:
    came = program("check", str(WHIMBREL), COLUMNS="80")
    assert came.returncode in (0, 1, 2)
    must_be_plain(came.stdout, came.stderr, 80)


def must_be_plain(said: str, failed: str, columns: int) -> None:
    """Hold a page against its width, and against all that only a terminal understands."""
    assert failed == "" and max(len(line) for line in said.splitlines()) <= columns
    assert "\x1b" not in said and not re.search("[\u2500-\u259f]", said)


def test_a_terminal_gets_colours_and_the_same_words() -> None:
    shown = on_a_terminal("check", str(WHIMBREL), TERM="xterm-256color", NO_COLOR="", COLUMNS="80")
    assert "\x1b[1;31mNO" in shown
    bare = re.sub(r"\x1b\[[0-9;]*m", "", shown).replace("\r\n", "\n")
    piped = program("check", str(WHIMBREL), COLUMNS="80").stdout
    assert [line.rstrip() for line in bare.splitlines()] == piped.splitlines()


@pytest.mark.parametrize("environment", [{"NO_COLOR": "1", "TERM": "xterm"}, {"NO_COLOR": "", "TERM": "dumb"}])
def test_a_terminal_that_wants_no_colours_gets_none(environment: dict[str, str]) -> None:
    assert "\x1b" not in on_a_terminal("check", str(WHIMBREL), COLUMNS="80", **environment)


def test_the_rig_file_may_come_through_a_pipe() -> None:
    piped = program("check", "-", "--json", text=WHIMBREL.read_text("utf-8"))
    named = program("check", str(WHIMBREL), "--json")
    assert json.loads(piped.stdout) == json.loads(named.stdout) and piped.returncode == named.returncode


def test_hostile_names_in_a_rig_file_reach_no_terminal(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    evil = "boat\\e]0;owned\\a\\e[2J"
    text = CLEAN.replace("rig: Clean", f'rig: "{evil}"')
    named = f'  "{evil}": {{x: 4, side: left, z: 0, size: 1 x 1 x 1, weight: unknown}}'
    text = text.replace("\n  shelf: ", f"\n{named}\n  shelf: ")
    path = tmp_path / "evil.yaml"
    path.write_text(text, "utf-8")
    for words in (["check", "--all"], ["weight"]):
        main([*words, str(path)])
        said, failed = capsys.readouterr()
        assert said.count("owned") > 1, "the name of the rig and that of the thing"
        assert not re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f]", said + failed)


@pytest.mark.parametrize(
    ("text", "code"),
    [("", 3), ("\0\0", 3), ("a: [", 3), ("just words", 3), ("- 1\n- 2\n", 3), ("boxwright: 99\n", 2), ("&a [*a]", 3)],
)
def test_whatever_is_in_the_file_there_is_an_answer(text: str, code: int) -> None:
    for word in ("check", "weight"):
        came = RUNNER.invoke(app, [word, "-"], input=text)
        assert (came.exit_code, came.stderr) == (code, "")
    answer = json.loads(RUNNER.invoke(app, ["check", "-", "--json"], input=text).stdout)
    jsonschema.Draft202012Validator(SCHEMA).validate(answer)
    assert {one["answer"] for one in answer["verdicts"].values()} == {"no"}


def test_a_process_answers_whatever_is_piped_into_it() -> None:
    came = program("check", "-", text="a: [")
    assert (came.returncode, came.stderr) == (3, "") and came.stdout


def test_check_imports_nothing_heavy_and_piped_not_even_what_colours_need() -> None:
    watch = (
        "import sys\nfrom boxwright.cli import main\n"
        f"for path in {[str(path) for path in RIGS]!r}:\n"
        "    main(['check', path])\n"
        f"sys.stderr.write(' '.join(sorted({{*{HEAVY!r}, 'rich'}} & set(sys.modules))))\n"
    )
    came = subprocess.run([sys.executable, "-c", watch], capture_output=True, text=True, check=True)
    assert came.stderr == "" and came.stdout


def test_a_stage_is_asked_for_by_name_or_number() -> None:
    by_name, _ = by_json("check", str(WHIMBREL), "--stage", "bunk")
    number = [state["stage"] for state in by_json("weight", str(WHIMBREL), "--load", "departure")[0]["states"]].index(
        "bunk"
    )
    by_number, _ = by_json("check", str(WHIMBREL), "--stage", str(number))
    assert by_name == by_number and by_name["stage"] == "bunk" and by_name["is_ticked"] is False


def test_an_empty_trailer_never_speaks_for_a_laden_one() -> None:
    answer, _ = by_json("check", str(DUNLIN))
    states = by_json("weight", str(DUNLIN))[0]["as_ticked"]
    shown = next(state for state in answer["states"] if state["is_ticked"])
    alike = [state for state in states if state["load"] in ("empty", "to-market", "home-sold", "home-poor")]
    assert len(alike) == 4
    assert shown["gross_kg"]["best"] > min(state["gross_kg"]["best"] for state in alike)


def test_a_day_is_asked_for() -> None:
    assert by_json("check", str(WHIMBREL), "--date", "2027-01-31")[0]["date"] == "2027-01-31"


@pytest.mark.parametrize(
    ("option", "typed", "says"),
    [
        ("--stage", "linners", 'did you mean "liners"?'),
        ("--load", "departue", 'did you mean "departure"?'),
        ("--use", "slep", 'did you mean "sleep"?'),
        ("--units", "metrics", 'did you mean "metric"?'),
        ("--date", "2nd of May", "write it as 2026-05-02"),
    ],
)
def test_a_mistyped_option_is_answered_in_one_sentence(
    capsys: pytest.CaptureFixture[str], option: str, typed: str, says: str
) -> None:
    assert main(["check", str(WHIMBREL), option, typed]) == 3
    shown = capsys.readouterr()
    assert not shown.out and says in " ".join(shown.err.split())


def test_units_change_what_is_shown_and_not_what_is_answered() -> None:
    us, metric = (RUNNER.invoke(app, ["check", str(WHIMBREL), "--units", units]) for units in ("us", "metric"))
    assert " lb" in us.stdout and " kg" in metric.stdout and " lb" not in metric.stdout
    assert us.exit_code == metric.exit_code


@pytest.mark.parametrize("number", ["gross", "tongue", "share", "on-wheels", "axle-1", "left", "right", "cg-x"])
def test_the_working_of_a_number_shows_formula_and_source(number: str) -> None:
    came = RUNNER.invoke(app, ["working", str(WHIMBREL), number])
    assert came.exit_code == 0 and " = " in came.output
    assert "(" in came.output.splitlines()[-1] and "section" in came.output.splitlines()[-1]


def test_the_working_of_no_number_is_answered_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["working", str(WHIMBREL), "tonge"]) == 3
    assert 'did you mean "tongue"?' in " ".join(capsys.readouterr().err.split())


NIGHT = ("room-at-coldest", "held-down-to", "fuel", "electricity", "carbon-dioxide", "humidity")


@pytest.mark.parametrize("number", [*NIGHT, "heat/held"])
def test_the_working_of_a_night_is_found_without_saying_that_it_is_for_sleeping(number: str) -> None:
    """The answer for towing, which is the default, has none of them; each place has its own."""
    came = RUNNER.invoke(app, ["working", str(WHIMBREL), number, "--stage", "heat"])
    assert came.exit_code == 0 and f"{number}: Whimbrel, as planned, stage heat, load night" in came.output
    places = {"carbon-dioxide": 0, "heat/held": 0}.get(number, 1)
    assert [came.output.count(f"\n{number} {place}") for place in ("Greensboro NC", "Sand Point AK")] == [places] * 2


def test_the_working_of_one_place_is_of_that_place_alone() -> None:
    came = RUNNER.invoke(app, ["working", str(WHIMBREL), "fuel Sand Point AK", "--stage", "heat"])
    assert came.exit_code == 0 and "Greensboro" not in came.output


def test_the_trace_lists_the_steps_that_ran() -> None:
    came = RUNNER.invoke(app, ["trace", str(WHIMBREL)])
    assert came.exit_code == 0 and "weight.solve" in came.output


def test_check_methods_runs_every_check_and_none_fails() -> None:
    came = RUNNER.invoke(app, ["check-methods"])
    assert came.exit_code == 0 and "0 fail" in came.output and "published" in came.output


def test_each_wheel_and_the_inertia_stand_on_the_weight_page() -> None:
    page = RUNNER.invoke(app, ["weight", str(DUNLIN), "--load", "to-market"]).stdout
    assert "EACH WHEEL, AND INERTIA" in page
    assert re.search(r"axle 1, load to-market: left [\d,]+ \+- [\d,.]+ kg, right [\d,]+ \+- [\d,.]+ kg", page), page
    assert re.search(r"yaw [\d,]+ kg m2", page)


def test_a_check_whose_library_is_not_installed_is_said_not_to_have_run() -> None:
    def method(**given: float) -> float:
        raise ModuleNotFoundError("No module named 'skfem'", name="skfem")

    check = next(one for one in load_checks("boxwright.disciplines.water"))
    outcome = ran("water", check, load_sources("boxwright.disciplines.water")[check.source], method)
    text = "\n".join("".join(span.text for span in line) for line in check_methods_page([outcome], 78))
    assert "not run, for skfem is not installed" in text
    assert "0 hold, 0 fail, 1 not run" in text and not outcome.is_failed
