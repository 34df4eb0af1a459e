"""Edits in words: things added, copied, renamed and dropped from the command line, each with what is refused."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest

from boxwright.cli import main
from boxwright.cli.edits import edited
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.worded import at_the_shell
from boxwright.rig.compose import read_rig
from boxwright.rig.splice import tree_at
from tests.study.demo import CLEAN, RIGS

REFUSED = 3


@pytest.fixture
def rig(tmp_path: Path) -> Path:
    """Return a copy of a demo rig for one test."""
    path = tmp_path / "whimbrel.yaml"
    path.write_bytes((RIGS / "whimbrel.yaml").read_bytes())
    return path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main([str(word) for word in words])
    shown = capsys.readouterr()
    return code, shown.out, " ".join(shown.err.split())


def text_after(*typed: str, text: str = CLEAN) -> str:
    return edited(read_rig(text), typed).reading.document.text


def test_words_are_understood_in_quotes_and_without() -> None:
    quoted = text_after("add parts.stool after chest", "stool.x=30", "stool.note=two, legs")
    assert quoted == text_after("add", "parts.stool", "after", "chest", "stool.x=30", "stool.note=two, legs")
    lines = quoted.splitlines()
    at = next(number for number, line in enumerate(lines) if line.strip().startswith("stool:"))
    assert lines[at].strip() == 'stool: {x: 30, note: "two, legs"}'
    assert lines[at - 1].strip().startswith("chest:")


def test_a_thing_without_a_section_is_a_part() -> None:
    assert tree_at(read_rig(text_after("add stool")).document, "parts[stool]") == {}


def test_what_stays_behind_joins_those_that_do_whether_or_not_there_is_a_list_yet() -> None:
    adding = [f"add {name} to loads[road].out" for name in ("chest", "bed", "can")]
    assert tree_at(read_rig(text_after(*adding)).document, "loads[road].out") == ("chest", "bed", "can")
    assert read_rig(text_after(adding[0])).rig.loads[0].out == ("chest",)


def test_what_lies_between_is_added_too() -> None:
    text = text_after("chest.hinge.edge=left", "frame.order.revision=B")
    document = read_rig(text).document
    assert tree_at(document, "parts[chest].hinge") == {"edge": "left"}
    assert tree_at(document, "frame.order.revision") == "B"


THERE_AND_BACK = [
    ("rename bunk to wall-bed", "rename wall-bed to bunk"),
    ("add outboard to night.out", "drop night.out.outboard"),
    ("copy lantern to lantern-2", "drop lantern-2"),
    ("add parts.stool", "drop stool"),
    ("bunk.note=low", "drop bunk.note"),
]


@pytest.mark.parametrize(("there", "back"), THERE_AND_BACK)
def test_there_and_back_again_leaves_the_text_as_it_was(there: str, back: str) -> None:
    before = (RIGS / "whimbrel.yaml").read_bytes().decode()
    changed = text_after(there, text=before)
    assert changed != before
    assert text_after(back, text=changed) == before


@pytest.mark.parametrize(
    ("there", "back"),
    [pytest.param(*one, marks=[pytest.mark.nightly] if number else []) for number, one in enumerate(THERE_AND_BACK)],
)
def test_there_and_back_again_leaves_the_file_as_it_was(
    there: str, back: str, rig: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = rig.read_bytes()
    _, _, err = run(capsys, "set", str(rig), there)
    assert not err and rig.read_bytes() != before
    _, _, err = run(capsys, "set", str(rig), back)
    assert not err and rig.read_bytes() == before


def test_a_thing_that_is_still_named_stays(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = rig.read_bytes()
    code, out, err = run(capsys, "set", str(rig), "drop anchor-and-line")
    assert code == REFUSED and not out
    assert "loads[boat-out].out[5], loads[night].out[3]" in err
    assert rig.read_bytes() == before
    code, out, _ = run(capsys, "try", str(rig), "drop anchor-and-line")
    assert code != REFUSED and "is still named by" in " ".join(out.split())
    words = ("drop anchor-and-line", "drop boat-out.out.anchor-and-line", "drop night.out.anchor-and-line")
    assert "anchor-and-line" not in text_after(*words, text=before.decode())


def test_a_renamed_thing_is_named_anew_everywhere_and_no_answer_moves(
    rig: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, err = run(capsys, "try", str(rig), "rename heater-fuel to diesel-can")
    assert not err
    assert "parts[heater-fuel]: heater-fuel -> diesel-can, and in 6 places that" in out
    assert all(line.split()[-1] == "before" for line in out.splitlines() if line.startswith(("TOW", "SLEEP", "LEAVE")))


@pytest.mark.parametrize("edit", ["a.x=1", "a.x=16 1/2", "a.x=5' 3\"", "a.note=$5 `x`", "loads[a].out=b", "a.x=it's"])
def test_an_offered_edit_can_be_typed_at_a_shell(edit: str) -> None:
    # Oracle: the standard library's own splitting of a shell's line.
    assert shlex.split(at_the_shell(edit)) == [edit]


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (["rename chest"], "rename bunk to wall-bed"),
        (["copy chest"], "copy bench to bench-2"),
        (["drop chst"], 'did you mean "chest"'),
        (["drop chest.colour"], "to take out"),
        (["rename chst to box"], "nothing named"),
        (["rename chest to can"], "already"),
        (["add chest"], "already"),
        (["add boxes.chest"], "no section"),
        (["add x to chest.weight"], "no list"),
        (["drop parts"], "whole section"),
        (["drop"], "cannot read the edit"),
        (["chest.colour.="], "no new value"),
    ],
)
def test_what_cannot_be_done_is_refused_in_words(typed: list[str], says: str) -> None:
    with pytest.raises(NothingAsked) as caught:
        edited(read_rig(CLEAN), typed)
    assert says in str(caught.value)
