"""``new``: a commented starter rig from a few answers; what nobody knows yet stands there as unknown."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path

from boxwright.book.new_text import COLDEST, QUESTIONS, SLEEPERS, UNKNOWN
from boxwright.book.starter import (
    NotUnderstood,
    axle_count,
    axle_places,
    class_in,
    countries_in,
    sleepers_in,
    starter,
    units_in,
    value_of,
)
from boxwright.cli.rig_file import RIG_ENDINGS, NothingAsked
from boxwright.cli.screen import Line, clean, plain, wrapped

MOST_TIMES = 3
"""So often is a question put that was answered with what cannot be read; then it stands as unknown."""


def begun(path: str, given: Mapping[str, str], columns: int, ask: Callable[[str], str]) -> list[Line]:
    """Write a starter rig and return what to do next; asks one by one where a person sits there and gave nothing."""
    answers = dict(given)
    if Path(path).exists() or Path(path).is_symlink():
        raise NothingAsked(f'"{clean(path)}" is there already and stays as it is; choose another name')
    if not any(given.values()) and sys.stdin.isatty() and sys.stdout.isatty():
        answers = _answers(ask)
    try:
        text = starter(Path(path).stem, answers)
    except NotUnderstood as reason:
        raise NothingAsked(clean(str(reason))) from None
    where = put_down(path, text)
    open_questions = sum(1 for one in QUESTIONS if answers.get(one.word, "") in {"", UNKNOWN})
    says = f"{clean(str(where))} is begun; {open_questions} of {len(QUESTIONS)} measures stand as unknown, each with "
    says += f"where to read it. Next: boxwright next {clean(str(where))}"
    return [plain(piece) for piece in wrapped(says, columns)]


def _answers(ask: Callable[[str], str]) -> dict[str, str]:
    """Return what a person answers, question by question; one that cannot be read is asked again."""
    answers: dict[str, str] = {}

    def asked(word: str, question: str, read: Callable[[str], object]) -> None:
        says = question
        for _ in range(MOST_TIMES):
            typed = ask(says).strip()
            answers[word] = "" if typed == UNKNOWN else typed
            try:
                read(answers[word])
                return
            except NotUnderstood as reason:
                says = f"{reason}. Once more: {question}"
        answers[word] = ""

    asked("country", "where it is driven, home first (US-NC, UK, AU ...)", countries_in)
    asked("class", "what its papers call it, cargo or camper", class_in)
    units = units_in("", countries_in(answers["country"]))
    bare = {"length": units.length, "mass": units.weight, "temperature": units.temperature}
    asked(SLEEPERS.word, f"{SLEEPERS.question} ({SLEEPERS.read_it})", sleepers_in)
    for one in (COLDEST, *QUESTIONS):
        if one.word == "axle":
            asked("axles", "how many axles", axle_count)
            count = axle_count(answers["axles"])
            places = partial(axle_places, count=count, units=units)
            asked("axle", f"{_where_axles(count)}, in {bare['length']}", places)
        else:
            asked(one.word, f"{one.question}, in {bare[one.quantity]}", partial(value_of, one, units=units))
    return answers


def _where_axles(count: int) -> str:
    if count == 1:
        return "front wall to the axle"
    return f"front wall to each of the {count} axles, with commas" if count else "front wall to each axle, with commas"


def put_down(path: str, text: str) -> Path:
    """Write a new rig file; never over one that is there."""
    where = Path(path)
    if where.suffix.lower() not in RIG_ENDINGS:
        raise NothingAsked(f'a rig file ends in .yaml; write "{clean(path)}.yaml"')
    try:
        with where.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        raise NothingAsked(f'"{clean(path)}" is there already and stays as it is; choose another name') from None
    except (OSError, ValueError) as reason:
        words = (getattr(reason, "strerror", None) or str(reason)).lower()
        raise NothingAsked(f'"{clean(path)}" could not be written: {clean(words)}') from None
    return where
