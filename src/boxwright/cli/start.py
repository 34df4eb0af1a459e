"""What ``boxwright`` alone says, and what a chapter that is not built says."""

from __future__ import annotations

from importlib import import_module

from boxwright.cli.screen import Line, Span, hanging, plain, wrapped

USED = (
    ("check RIG", "may it be towed, slept in, left, worked in; its weights; what was found"),
    ("weight RIG", "what it weighs and where, at every stage in every load state"),
    ("working RIG NUMBER", "how one number came about (gross, tongue, share, axle-1, left ...)"),
    ("explain CODE", "a rule with its source, a method, a chapter"),
    ("check-methods", "the published checks of every method, run here"),
    ("trace RIG", "which steps ran, and for how long"),
    ("schema", "the JSON schema of the rig file, for your editor"),
)
OPTIONS = (
    ("--stage liners", "the plan of a stage; left out: today as ticked"),
    ("--load departure", "a load state of the file"),
    ("--use sleep", "the answer behind the exit code: tow, sleep, leave, work"),
    ("--units metric", "us, metric or file"),
    ("--date 2026-05-02", "judge as of this day"),
    ("--json", "the same for programs, in SI"),
)
EXIT_CODES = "Exit code: 0 go, 1 limits or ask, 2 no, 3 nothing could be read."


def page(columns: int) -> list[Line]:
    """Return the short help: what it is, the commands, the options they share."""
    lines = [
        plain(piece) for piece in wrapped("Boxwright: one rig file in; weights, balance and an answer out.", columns)
    ]
    lines += [(), *_listed(USED, columns, "boxwright "), ()]
    lines += [
        *map(plain, wrapped("RIG is your rig file, or - for what comes through a pipe. With it:", columns)),
        *_listed(OPTIONS, columns, ""),
    ]
    return [*lines, (), *map(plain, wrapped(f"{EXIT_CODES} More on one command: boxwright check --help", columns))]


def _listed(rows: tuple[tuple[str, str], ...], columns: int, before: str) -> list[Line]:
    size = max(len(before + word) for word, _ in rows)
    lines: list[Line] = []
    for word, says in rows:
        lines += hanging((Span(f"  {(before + word).ljust(size)}  ", "head"),), says, columns)
    return lines


def is_built(word: str) -> bool:
    """Return whether a chapter judges anything yet."""
    return bool(import_module(f"boxwright.disciplines.{word}").CHAPTER.judges)


def not_built(word: str) -> str:
    """Return the one line of a chapter that judges nothing yet."""
    chapter = import_module(f"boxwright.disciplines.{word}").CHAPTER
    return (
        f"{word} ({chapter.title.lower()}): not built yet, so nothing is judged; "
        f"`boxwright explain {word}` says what it will answer"
    )
