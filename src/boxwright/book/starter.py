"""A starter rig from a few answers: each is read, proved by reading the text it stands in, or refused in a sentence."""

from __future__ import annotations

import re
from collections.abc import Mapping

from boxwright.book.new_text import COLDEST, PLAIN, QUESTIONS, SLEEPERS, UNKNOWN, Asked, text_of
from boxwright.book.numbers import METRIC, US
from boxwright.rig.compose import read_rig
from boxwright.rig.walk import quoted, shortened
from boxwright.units import CannotRead, HeaderUnits, read_band

INCH_COUNTRIES = ("US", "CA")
MOST_AXLES = 4
CLASSES = ("cargo", "camper")
MOST_SLEEPERS = 8
NO_NAMES = frozenset({"yes", "no", "on", "off", "true", "false", "none", "null", "all", "nobody", UNKNOWN})
"""Words that stand for something else in a rig file."""
_PERSON = re.compile(r"[a-z][a-z-]{0,30}")
_COUNTRY = re.compile(r"(US|CA|UK|EU|AU|NZ)(-[A-Z]{2,3})?")


class NotUnderstood(ValueError):
    """An answer that cannot be read, with how to write it; ``asked`` is the word of its question, empty of no one."""

    def __init__(self, says: str, asked: str = "") -> None:
        super().__init__(says)
        self.asked = asked


def starter(name: str, given: Mapping[str, str]) -> str:
    """Return the text of a starter rig; ``given`` maps words to what was typed, left out or empty where not known.

    Every value is proved by reading the text it stands in; one that cannot be read is refused in a sentence.
    """
    countries = countries_in(given.get("country", ""))
    units = units_in(given.get("units", ""), countries)
    known = {one.word: value_of(one, given.get(one.word, ""), units) for one in QUESTIONS if one.word != "axle"}
    known["axle"] = axle_places(given.get("axle", ""), axle_count(given.get("axles", "")), units)
    known[COLDEST.word] = value_of(COLDEST, given.get(COLDEST.word, ""), units)
    sleepers = sleepers_in(given.get(SLEEPERS.word, ""))
    text = text_of(name, countries, class_in(given.get("class", "")), units is US, known, sleepers)
    wrong = [one for one in read_rig(text).problems if one.kind == "problem"]
    if wrong:
        raise NotUnderstood(f"line {wrong[0].line} of it would be: {wrong[0].says}")
    return text


def countries_in(text: str) -> tuple[str, ...]:
    """Return the places in a text with commas between, home first."""
    found = tuple(word.strip().upper() for word in text.split(",") if word.strip())
    for word in found:
        if not _COUNTRY.fullmatch(word):
            says = "write it as US-NC, CA-BC, UK, EU-FR, AU, NZ"
            raise NotUnderstood(f'cannot read the country "{shortened(word)}"; {says}', "country")
    return found


def units_in(word: str, countries: tuple[str, ...]) -> HeaderUnits:
    """Return the units a rig is begun in: as asked, else those of its home."""
    if word not in {"", "us", "metric"}:
        raise NotUnderstood(f'there is no system of units "{shortened(word)}" (us, metric)', "units")
    is_inch = word == "us" or (not word and (not countries or countries[0][:2] in INCH_COUNTRIES))
    return US if is_inch else METRIC


def class_in(text: str) -> str:
    """Return the class of the trailer's papers, empty where nobody knows."""
    word = text.strip().lower()
    if word not in {"", UNKNOWN, *CLASSES}:
        says = f'cannot read the class "{shortened(text.strip())}"; write cargo or camper'
        raise NotUnderstood(says, "class")
    return "" if word == UNKNOWN else word


def sleepers_in(text: str) -> tuple[str, ...]:
    """Return who sleeps in it: as named with commas between, or numbered where only how many is known."""
    typed = text.strip().lower()
    if typed in {"", UNKNOWN}:
        return ()
    if typed.isdecimal() and 1 <= int(typed) <= MOST_SLEEPERS:
        return tuple(f"sleeper-{number}" for number in range(1, int(typed) + 1))
    found = tuple("-".join(one.split()) for one in typed.split(","))
    wrong = [one for one in found if not _PERSON.fullmatch(one) or one in NO_NAMES]
    if wrong or len(set(found)) < len(found) or len(found) > MOST_SLEEPERS:
        read = shortened(wrong[0] if wrong else text.strip())
        says = f"write names with commas between, such as ann, ben, or how many, 1 to {MOST_SLEEPERS}"
        raise NotUnderstood(f'{SLEEPERS.question}: cannot read "{read}"; {says}', SLEEPERS.word)
    return found


def axle_count(text: str) -> int:
    """Return how many axles there are, 0 where nobody knows."""
    if not text.strip() or text.strip() == UNKNOWN:
        return 0
    if not text.strip().isdecimal() or not 1 <= int(text) <= MOST_AXLES:
        raise NotUnderstood(f'cannot read the number of axles "{shortened(text)}"; write 1, 2, 3 or 4', "axles")
    return int(text)


def value_of(asked: Asked, typed: str, units: HeaderUnits) -> str:
    """Return a typed value as it will stand in the file, proved to be one."""
    text = " ".join(typed.split())
    if not text or text == UNKNOWN:
        return UNKNOWN
    try:
        band = read_band(text, asked.quantity, units)
    except CannotRead as reason:
        raise NotUnderstood(f"{asked.question}: {reason}", asked.word) from None
    if band.known and band.low < 0.0:
        says = f'"{shortened(text)}" is below nothing; write how far it is, without a sign'
        raise NotUnderstood(f"{asked.question}: {says}", asked.word)
    return text if PLAIN.fullmatch(text) else quoted(text)


def axle_places(typed: str, count: int, units: HeaderUnits) -> str:
    """Return where each axle is, as typed with commas between; so many places are so many axles."""
    if not typed.strip() or typed.strip() == UNKNOWN:
        return ", ".join([UNKNOWN] * max(count, 1))
    asked = next(one for one in QUESTIONS if one.word == "axle")
    found = [value_of(asked, piece, units) for piece in typed.split(",")]
    if len(found) > MOST_AXLES:
        says = f"these are {len(found)} axles; {MOST_AXLES} is the most that can be worked out"
        raise NotUnderstood(says, asked.word)
    if count and len(found) != count:
        axles, places = ("axle" if count == 1 else "axles"), ("place" if len(found) == 1 else "places")
        says = f"{count} {axles}, but {len(found)} {places}; write one place for each axle, such as 83,117"
        raise NotUnderstood(says, asked.word)
    return ", ".join(found)
