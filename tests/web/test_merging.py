"""Two changes of one text: joined where they touch different lines, never mixed where they touch the same."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.web.merging import joined, with_hunks_of

LINES = [f"line {number}\n" for number in range(12)]


def with_lines(*changes: tuple[int, str | None]) -> str:
    lines: list[str] = list(LINES)
    for at, new in changes:
        lines[at] = new if new is not None else ""
    return "".join(lines)


@pytest.mark.parametrize(
    ("mine", "theirs", "both"),
    [
        ((), (), ()),
        (((1, "a\n"),), (), ((1, "a\n"),)),
        ((), ((1, "a\n"),), ((1, "a\n"),)),
        (((1, "a\n"),), ((1, "a\n"),), ((1, "a\n"),)),
        (((1, "a\n"),), ((8, "b\n"),), ((1, "a\n"), (8, "b\n"))),
        (((8, None),), ((1, "b\nc\n"),), ((8, None), (1, "b\nc\n"))),
        (((1, "a\n"), (8, "x\n")), ((1, "a\n"), (5, "y\n")), ((1, "a\n"), (8, "x\n"), (5, "y\n"))),
    ],
)
def test_changes_of_different_lines_are_joined(mine: tuple, theirs: tuple, both: tuple) -> None:  # type: ignore[type-arg]
    assert joined("".join(LINES), with_lines(*mine), with_lines(*theirs)) == with_lines(*both)


@pytest.mark.parametrize(
    ("mine", "theirs"),
    [
        (((3, "a\n"),), ((3, "b\n"),)),
        (((3, None),), ((3, "b\n"),)),
        (((3, "a\n"),), ((4, "b\n"),)),
        (((3, "line 3\nmore\n"),), ((3, "line 3\nother\n"),)),
        (((2, None), (3, None), (4, None)), ((3, "b\n"),)),
        (((11, "line 11\nmine\n"),), ((11, "line 11\ntheirs\n"),)),
    ],
)
def test_changes_of_the_same_lines_or_beside_each_other_are_not(mine: tuple, theirs: tuple) -> None:  # type: ignore[type-arg]
    assert joined("".join(LINES), with_lines(*mine), with_lines(*theirs)) is None


CHANGED = st.lists(st.sampled_from(["a\n", "b\n", "c\n", "d\n"]), min_size=0, max_size=10)


@given(CHANGED, CHANGED, CHANGED)
def test_joining_does_not_ask_who_came_first(before: list[str], mine: list[str], theirs: list[str]) -> None:
    texts = ["".join(one) for one in (before, mine, theirs)]
    assert joined(texts[0], texts[1], texts[2]) == joined(texts[0], texts[2], texts[1])


@pytest.mark.skipif(shutil.which("git") is None, reason="git merges the same texts to compare, and is not here")
@given(st.lists(st.tuples(st.integers(0, 11), st.sampled_from(["x\n", "y\n", None])), max_size=3),
       st.lists(st.tuples(st.integers(0, 11), st.sampled_from(["x\n", "z\n", None])), max_size=3))  # fmt: skip
def test_what_is_joined_is_what_another_merge_makes_of_it(
    tmp_path_factory: pytest.TempPathFactory, mine: list[tuple[int, str | None]], theirs: list[tuple[int, str | None]]
) -> None:
    folder: Path = tmp_path_factory.mktemp("merge")
    texts = {"base": "".join(LINES), "mine": with_lines(*mine), "theirs": with_lines(*theirs)}
    for name, text in texts.items():
        (folder / name).write_text(text)
    together = joined(texts["base"], texts["mine"], texts["theirs"])
    command = ["git", "merge-file", "-p", "mine", "base", "theirs"]
    came = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    if together is not None:
        assert came.returncode == 0
        assert came.stdout == together


@pytest.mark.parametrize(
    ("mine", "theirs", "both"),
    [
        ("a\nb\nc\nd\n", "A\nb\nc\nd\n", "A\nb\nc\nd\n"),
        ("a\nb\nc\nD\n", "A\nb\nc\nd\n", "A\nb\nc\nD\n"),
        ("M\nb\nc\nD\n", "A\nb\nc\nd\n", "A\nb\nc\nD\n"),
        ("a\nc\nd\n", "a\nB\nc\nd\n", "a\nB\nc\nd\n"),
        ("a\nM\nN\nc\nd\nmore\n", "a\nB\nc\nd\n", "a\nB\nc\nd\nmore\n"),
        ("a\nb\nc\nD\n", "a\nb\nc\nd\n", "a\nb\nc\nD\n"),
    ],
)
def test_of_two_changes_of_the_same_lines_one_is_taken_and_all_else_stays(mine: str, theirs: str, both: str) -> None:
    assert with_hunks_of("a\nb\nc\nd\n", mine, theirs) == both
