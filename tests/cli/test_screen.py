"""The screen: what came out of a rig file cannot steer a terminal, and nothing is wider than it."""

from __future__ import annotations

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.cli.screen import (
    Screen,
    Span,
    aligned,
    clean,
    columns_of,
    hanging,
    in_ascii,
    plain,
    text_of,
    wrapped,
)


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    encoding = "utf-8"

    def isatty(self) -> bool:
        return True


class Latin(io.StringIO):
    """A stream that can only write ASCII."""

    encoding = "ascii"


@pytest.mark.parametrize(
    ("hostile", "shown"),
    [
        ("\x1b[31mred", "[31mred"),
        ("\x1b]0;title\x07name", "]0;titlename"),
        ("\x9b2Jgone", "2Jgone"),
        ("two\nlines\tone", "two lines one"),
        ("right\u202eleft", "rightleft"),
        ("half\ud800", "half"),
    ],
)
def test_no_name_can_steer_a_terminal(hostile: str, shown: str) -> None:
    assert clean(hostile) == shown


@given(st.text())
def test_nothing_that_steers_is_left(text: str) -> None:
    left = clean(text)
    assert not any(ord(character) < 32 or 127 <= ord(character) < 160 for character in left)


@given(st.text(), st.integers(min_value=2, max_value=90))
def test_a_wrapped_text_is_never_wider_and_loses_no_word(text: str, columns: int) -> None:
    lines = wrapped(text, columns)
    assert all(columns_of(line) <= columns for line in lines)
    assert "".join("".join(lines).split()) == "".join(clean(text).split())


def test_the_lines_after_the_first_hang_below_the_text() -> None:
    lines = hanging(plain("  Stop     ", "stop"), "one two three four five six", 31)
    assert [text_of(line) for line in lines] == ["  Stop     one two three four", "           five six"]


def test_columns_stand_below_each_other_with_wide_characters() -> None:
    lines = aligned([["船", "1"], ["boat", "20"]], right=[1])
    assert lines == ["船     1", "boat  20"]
    assert columns_of(lines[0]) == columns_of(lines[1])


def test_colour_is_for_a_terminal_only(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")
    line = (Span("NO", "stop"), Span(" not judged"))
    terminal = Terminal()
    Screen(terminal).show([line])
    assert "\x1b[" in terminal.getvalue()
    piped = io.StringIO()
    Screen(piped).show([line])
    assert piped.getvalue() == "NO not judged\n"


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_colour_can_be_refused(monkeypatch: pytest.MonkeyPatch, name: str, value: str) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv(name, value)
    terminal = Terminal()
    Screen(terminal).show([plain("NO", "stop")])
    assert terminal.getvalue() == "NO\n"


def test_markup_of_the_colour_library_in_a_name_is_text() -> None:
    terminal = Terminal()
    screen = Screen(terminal)
    screen.is_coloured = True
    screen.show([plain("[bold]bunk[/bold] :smile:")])
    assert terminal.getvalue() == "[bold]bunk[/bold] :smile:\n"


def test_a_screen_without_the_characters_spells_them() -> None:
    latin = Latin()
    Screen(latin).show([plain("5 \u00b1 1 \u00b0C \u2013 caf\u00e9 \u8239")])
    assert latin.getvalue() == "5 +- 1  deg C - cafe ?\n"
    assert in_ascii("6\u2032 5\u2033") == "6' 5\""
