"""``new``: a commented starter rig from a few answers; what nobody knows yet stands there as unknown."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path

from boxwright.cli.new_text import PLAIN, QUESTIONS, UNKNOWN, Asked, text_of
from boxwright.cli.numbers import METRIC, US
from boxwright.cli.rig_file import RIG_ENDINGS, NothingAsked
from boxwright.cli.screen import Line, clean, plain, wrapped
from boxwright.rig.compose import read_rig
from boxwright.rig.walk import quoted
from boxwright.units import CannotRead, HeaderUnits, read_band

INCH_COUNTRIES = ("US", "CA")
MOST_AXLES = 4
MOST_TIMES = 3
"""So often is a question put that was answered with what cannot be read; then it stands as unknown."""
CLASSES = ("cargo", "camper")
_COUNTRY = re.compile(r"(US|CA|UK|EU|AU|NZ)(-[A-Z]{2,3})?")


def starter(name: str, given: Mapping[str, str]) -> str:
    """Return the text of a starter rig; ``given`` maps words to what was typed, left out or empty where not known.

    Every value is proved by reading the text it stands in; one that cannot be read is refused in a sentence.
    """
    countries = _countries(given.get("country", ""))
    units = _units(given.get("units", ""), countries)
    known = {one.word: _value(one, given.get(one.word, ""), units) for one in QUESTIONS if one.word != "axle"}
    known["axle"] = _axle_places(given.get("axle", ""), _count(given.get("axles", "")), units)
    text = text_of(name, countries, _class(given.get("class", "")), units is US, known)
    wrong = [one for one in read_rig(text).problems if one.kind == "problem"]
    if wrong:
        raise NothingAsked(f"line {wrong[0].line} of it would be: {clean(wrong[0].says)}")
    return text


def begun(path: str, given: Mapping[str, str], columns: int, ask: Callable[[str], str]) -> list[Line]:
    """Write a starter rig and return what to do next; asks one by one where a person sits there and gave nothing."""
    answers = dict(given)
    if Path(path).exists() or Path(path).is_symlink():
        raise NothingAsked(f'"{clean(path)}" is there already and stays as it is; choose another name')
    if not any(given.values()) and sys.stdin.isatty() and sys.stdout.isatty():
        answers = _answers(ask)
    where = put_down(path, starter(Path(path).stem, answers))
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
            except NothingAsked as reason:
                says = f"{reason}. Once more: {question}"
        answers[word] = ""

    asked("country", "where it is driven, home first (US-NC, UK, AU ...)", _countries)
    asked("class", "what its papers call it, cargo or camper", _class)
    units = _units("", _countries(answers["country"]))
    bare = {"length": units.length, "mass": units.weight}
    for one in QUESTIONS:
        if one.word == "axle":
            asked("axles", "how many axles", _count)
            count = _count(answers["axles"])
            places = partial(_axle_places, count=count, units=units)
            asked("axle", f"{_where_axles(count)}, in {bare['length']}", places)
        else:
            asked(one.word, f"{one.question}, in {bare[one.quantity]}", partial(_value, one, units=units))
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


def _countries(text: str) -> tuple[str, ...]:
    found = tuple(word.strip().upper() for word in text.split(",") if word.strip())
    for word in found:
        if not _COUNTRY.fullmatch(word):
            raise NothingAsked(f'cannot read the country "{clean(word)}"; write it as US-NC, CA-BC, UK, EU-FR, AU, NZ')
    return found


def _units(word: str, countries: tuple[str, ...]) -> HeaderUnits:
    if word not in {"", "us", "metric"}:
        raise NothingAsked(f'there is no system of units "{clean(word)}" (us, metric)')
    is_inch = word == "us" or (not word and (not countries or countries[0][:2] in INCH_COUNTRIES))
    return US if is_inch else METRIC


def _class(text: str) -> str:
    word = text.strip().lower()
    if word not in {"", UNKNOWN, *CLASSES}:
        raise NothingAsked(f'cannot read the class "{clean(text.strip())}"; write cargo or camper')
    return "" if word == UNKNOWN else word


def _count(text: str) -> int:
    """Return how many axles there are, 0 where nobody knows."""
    if not text.strip() or text.strip() == UNKNOWN:
        return 0
    if not text.strip().isdecimal() or not 1 <= int(text) <= MOST_AXLES:
        raise NothingAsked(f'cannot read the number of axles "{clean(text)}"; write 1, 2, 3 or 4')
    return int(text)


def _value(asked: Asked, typed: str, units: HeaderUnits) -> str:
    """Return a typed value as it will stand in the file, proved to be one."""
    text = " ".join(typed.split())
    if not text or text == UNKNOWN:
        return UNKNOWN
    try:
        band = read_band(text, asked.quantity, units)
    except CannotRead as reason:
        raise NothingAsked(f"{asked.question}: {clean(str(reason))}") from None
    if band.known and band.low < 0.0:
        raise NothingAsked(f'{asked.question}: "{clean(text)}" is below nothing; write how far it is, without a sign')
    return text if PLAIN.fullmatch(text) else quoted(text)


def _axle_places(typed: str, count: int, units: HeaderUnits) -> str:
    """Return where each axle is, as typed with commas between; so many places are so many axles."""
    if not typed.strip() or typed.strip() == UNKNOWN:
        return ", ".join([UNKNOWN] * max(count, 1))
    asked = next(one for one in QUESTIONS if one.word == "axle")
    found = [_value(asked, piece, units) for piece in typed.split(",")]
    if len(found) > MOST_AXLES:
        raise NothingAsked(f"these are {len(found)} axles; {MOST_AXLES} is the most that can be worked out")
    if count and len(found) != count:
        axles, places = ("axle" if count == 1 else "axles"), ("place" if len(found) == 1 else "places")
        raise NothingAsked(f"{count} {axles}, but {len(found)} {places}; write one place for each axle, such as 83,117")
    return ", ".join(found)
