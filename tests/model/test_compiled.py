"""What is compiled is kept in a folder: found again, never taken for another text, never asked of a closed folder."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import FunctionType

import pytest

pytest.importorskip("numba", reason="numba is not installed: nothing is compiled")

from boxwright.model.compiled import _written_as, compiled

BY = 3.0


def thrice(value: float) -> float:
    """Return a value taken by a number from outside."""
    return value * BY


def sum_of(value: float) -> float:
    """Return what calls another."""
    return thrice(value) + 1.0


def changed(function: Callable[[float], float], **outside: object) -> FunctionType:
    """Return the same text with other numbers, or other functions, outside of it."""
    assert isinstance(function, FunctionType)
    return FunctionType(function.__code__, {**function.__globals__, **outside}, function.__name__)


def test_what_was_compiled_is_kept_and_says_the_same(tmp_path: Path) -> None:
    kept = str(tmp_path / "kept")
    assert compiled(sum_of, kept)(2.0) == sum_of(2.0) == 7.0
    files = sorted(one.name for one in Path(kept).rglob("*.nbi"))
    assert len(files) == 2, "the function and what it calls"
    compiled.cache_clear()
    again = compiled(sum_of, kept)
    assert again(2.0) == 7.0
    assert getattr(again, "stats").cache_hits, "it was read, not compiled again"  # noqa: B009
    assert sorted(one.name for one in Path(kept).rglob("*.nbi")) == files


def test_another_text_or_number_is_never_taken_for_the_older_one(tmp_path: Path) -> None:
    kept = str(tmp_path)
    other = changed(sum_of, thrice=changed(thrice, BY=4.0))
    assert _written_as(other) != _written_as(changed(sum_of))
    assert compiled(sum_of, kept)(2.0) == 7.0
    assert compiled(other, kept)(2.0) == 9.0


def test_a_folder_that_cannot_be_written_keeps_nothing(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("no folder")
    assert compiled(sum_of, str(blocked))(2.0) == 7.0
