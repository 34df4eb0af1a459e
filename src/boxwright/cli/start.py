"""What ``boxwright`` alone says, and what a chapter that is not built says."""

from __future__ import annotations

from importlib import import_module

from boxwright.cli.screen import Line, Span, hanging, plain, wrapped
from boxwright.cli.words import CHAPTERS, COMMANDS

USED = (
    ("check RIG", "may it be towed, slept in; what was found"),
    ("next RIG", "what to weigh, measure and build next"),
    ("try RIG EDIT", 'what "bunk.x+6in" changes and breaks'),
    ("set RIG EDIT", "the same, written into the file"),
    ("since RIG 2026-03-01", "what changed, which answers moved"),
    ("new NAME.yaml", "a starter rig with its comments"),
    ("open RIG", "the workbench, in the browser"),
    ("draw RIG --to DIR", "the sheets, as files"),
    ("weight RIG", "its weights at every stage and load"),
    ("working RIG NUMBER", "how gross, tongue, axle-1 ... came about"),
    ("explain CODE", "a rule with its source, a chapter"),
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
    lines += [*map(plain, wrapped(_others(), columns)), ()]
    lines += [
        *map(plain, wrapped("RIG is your rig file, or - for what comes through a pipe. With it:", columns)),
        *_listed(OPTIONS, columns, ""),
    ]
    return [*lines, (), *map(plain, wrapped(f"{EXIT_CODES} More on one command: boxwright check --help", columns))]


def _others() -> str:
    listed = {used.split()[0] for used, _ in USED}
    words = [word for word in COMMANDS if word not in listed]
    chapters = [word for word in CHAPTERS if word not in listed]
    return f"Also {', '.join(words)}; and a word for each chapter: {', '.join(chapters)}."


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
