"""Words of the command line: what is there, what is not, and one plain sentence for every mistake."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from importlib import resources
from pathlib import Path

import pytest
from typer.testing import CliRunner

import boxwright
from boxwright.cli import main
from boxwright.cli.commands import app
from boxwright.cli.words import CHAPTERS, COMMANDS, WORDS
from boxwright.study.verdict import CHAPTERS as STUDIED

NOT_BUILT = [chapter.word for chapter in STUDIED if not chapter.judges]


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main(words)
    shown = capsys.readouterr()
    return code, shown.out, shown.err


def test_there_is_one_word_for_each_chapter_in_the_order_of_the_book() -> None:
    assert tuple(chapter.word for chapter in STUDIED) == CHAPTERS
    folders = {entry.name for entry in resources.files("boxwright.disciplines").iterdir() if entry.is_dir()}
    assert folders - {"__pycache__"} == set(CHAPTERS)


def test_the_readme_lists_exactly_the_other_words() -> None:
    text = resources.files("boxwright.cli").joinpath("README.md").read_text("utf-8")
    table = re.findall(r"^\| `([a-z-]+)", text, re.MULTILINE)
    assert tuple(table) == COMMANDS
    registered = [command.name or command.callback.__name__ for command in app.registered_commands if command.callback]
    assert sorted(registered) == sorted(WORDS)


def test_the_word_alone_shows_a_short_help(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys)
    assert code == 0 and "boxwright check RIG" in out and not err
    assert len(out.splitlines()) < 30
    assert set(WORDS) <= set(re.findall(r"[a-z-]+", out)), "a mistyped word is told that this lists them"


def test_the_long_help_hides_no_word() -> None:
    shown = CliRunner().invoke(app, ["--help"])
    assert set(re.findall(r"^  ([a-z][a-z-]+) ", shown.output, re.MULTILINE)) == set(WORDS)


def test_the_version_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "--version") == (0, f"boxwright {boxwright.__version__}\n", "")


def test_help_on_a_command_has_no_boxes() -> None:
    shown = CliRunner().invoke(app, ["check", "--help"])
    assert shown.exit_code == 0 and "--stage" in shown.output and shown.output.isascii()


@pytest.mark.parametrize(
    ("typed", "meant"), [("chek", "check"), ("wieght", "weight"), ("check-method", "check-methods")]
)
def test_a_mistyped_word_is_answered_with_the_nearest(
    capsys: pytest.CaptureFixture[str], typed: str, meant: str
) -> None:
    code, out, err = run(capsys, typed, "rig.yaml")
    assert code == 3 and not out and f'did you mean "boxwright {meant}"?' in " ".join(err.split())


@pytest.mark.parametrize("words", [("check",), ("check", "a", "b"), ("check", "--jsn", "a"), ("--nothing",)])
def test_a_command_line_that_cannot_be_understood_is_one_sentence(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...]
) -> None:
    code, out, err = run(capsys, *words)
    assert code == 3 and not out and err.startswith("boxwright: ") and "Traceback" not in err


@pytest.mark.parametrize("word", NOT_BUILT)
def test_a_chapter_that_is_not_built_says_so_and_judges_nothing(capsys: pytest.CaptureFixture[str], word: str) -> None:
    code, out, _ = run(capsys, word, "rig.yaml")
    assert code == 2 and "not built yet, so nothing is judged" in " ".join(out.split())


def test_a_file_that_is_not_there_is_one_sentence_with_a_guess(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "whimbrel.yaml").write_text("rig: W\n")
    code, out, err = run(capsys, "check", str(tmp_path / "wimbrel.yaml"))
    assert code == 3 and not out
    joined = "".join(err.split())
    assert "thereisnofile" in joined and "didyoumean" in joined and "whimbrel.yaml" in joined


def test_a_folder_is_one_sentence_with_the_files_in_it(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    (tmp_path / "dunlin.yaml").write_text("rig: D\n")
    code, _, err = run(capsys, "check", str(tmp_path))
    assert code == 3 and "isafolder" in "".join(err.split()) and "dunlin.yaml" in "".join(err.split())


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="everything may be read by this account")
def test_a_file_one_may_not_read_is_one_sentence(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "rig.yaml"
    path.write_text("rig: R\n")
    path.chmod(0)
    code, _, err = run(capsys, "check", str(path))
    assert code == 3 and "may not read it" in " ".join(err.split())


def test_a_name_no_file_can_have_is_one_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "check", "rig\0.yaml")
    assert code == 3 and "could not be read" in " ".join(err.split())


def test_schemas_are_printed(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "schema")
    assert code == 0 and '"$schema"' in out
    code, out, _ = run(capsys, "schema", "--answers")
    assert code == 0 and '"tongue_share"' in out


def test_a_reader_that_has_gone_is_no_trouble() -> None:
    program = [sys.executable, "-m", "boxwright", "schema"]
    with subprocess.Popen(program, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as writer:
        assert writer.stdout is not None and writer.stderr is not None
        writer.stdout.close()
        assert writer.stderr.read() == b""
        assert writer.wait() == 141
