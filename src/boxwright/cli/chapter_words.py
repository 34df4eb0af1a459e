"""The words of the chapters that have no page of their own: each shows what its chapter found."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

import typer

from boxwright.cli.fresh_air import add_air
from boxwright.cli.options import AsJson, Load, OnDate, Rig, Stage, Units, UseWord, Vehicle
from boxwright.cli.warm import add_heat

NO_ANSWER = 2
"""Exit code of a chapter that is not built: nothing is judged, and that is a no."""


def add_chapters(app: typer.Typer, words: Iterable[str]) -> None:
    """Give each chapter its word: those with a page of their own theirs, the others what they found."""
    own_pages = {"air": add_air, "heat": add_heat}
    for word in words:
        if word in own_pages:
            own_pages[word](app)
        else:
            _add_chapter(app, word)


def _add_chapter(app: typer.Typer, word: str) -> None:
    """Give a chapter without a page of its own its word: what it found, or that it is not built."""

    def chapter(
        rig: Rig,
        stage: Stage = "",
        load: Load = "",
        use: UseWord = "tow",
        units: Units = "file",
        as_json: AsJson = False,
        on: OnDate = "",
        vehicle: Vehicle = "",
    ) -> None:
        from boxwright.cli.screen import Screen, plain, wrapped
        from boxwright.cli.start import is_built, not_built

        screen = Screen()
        if not is_built(word):
            screen.show(plain(piece) for piece in wrapped(not_built(word), screen.columns))
            raise typer.Exit(NO_ANSWER)
        from boxwright.cli import answers
        from boxwright.cli.asked import Question, answered, exit_code
        from boxwright.cli.fixes import chapter_with_fixes

        answer = answered(Question(rig, stage, load, use, units, on, vehicle), date.today())
        shown, lines = chapter_with_fixes(answer, word, screen.columns, date.today())
        if as_json:
            screen.show_raw(answers.as_text(answers.check(shown)))
        else:
            screen.show(lines)
        raise typer.Exit(exit_code(answer))

    app.command(word, help=f"Show what the chapter {word} found.")(chapter)
