"""``new``: a commented starter rig from a few answers; what nobody knows yet stands there as unknown."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import NamedTuple

from boxwright.book.numbers import METRIC, US
from boxwright.cli.rig_file import RIG_ENDINGS, NothingAsked
from boxwright.cli.screen import Line, clean, plain, wrapped
from boxwright.rig.compose import read_rig
from boxwright.rig.walk import quoted
from boxwright.units import CannotRead, HeaderUnits, read_band

UNKNOWN = "unknown"
INCH_COUNTRIES = ("US", "CA")
MOST_AXLES = 4
_PLAIN = re.compile(r"[A-Za-z0-9.+\-][A-Za-z0-9 .+/'\-]*")
_COUNTRY = re.compile(r"(US|CA|UK|EU|AU|NZ)(-[A-Z]{2,3})?")


class Asked(NamedTuple):
    """One thing a starter rig asks: its word, what is measured, how it is asked, and where it is read."""

    word: str
    quantity: str
    question: str
    read_it: str


QUESTIONS = (
    Asked("length", "length", "inside length of the box, stud face to stud face", "tape, front stud face to rear"),
    Asked("width", "length", "inside width, stud face to stud face", "tape, left stud face to right"),
    Asked("height", "length", "inside height, deck to roof bows", "tape, deck to the underside of a bow"),
    Asked("coupler", "length", "ball centre to the front wall", "tape, along the tongue"),
    Asked("axle", "length", "front wall to the axle, or to each axle with a comma", "tape, along the floor"),
    Asked("gvwr", "mass", "greatest mass on the plate", "the trailer's plate"),
    Asked("gawr", "mass", "rating of one axle", "the plate of the axle"),
    Asked("empty", "mass", "weight of the empty trailer", "a public scale, unhitched"),
    Asked("tongue", "mass", "weight on the ball, empty", "a bathroom scale under the coupler, trailer level"),
)
"""What is asked, in the order it is asked."""


def starter(name: str, given: Mapping[str, str]) -> str:
    """Return the text of a starter rig; ``given`` maps words to what was typed, left out or empty where not known.

    Every value is proved by reading the text it stands in; one that cannot be read is refused in a sentence.
    """
    countries = _countries(given.get("country", ""))
    units = _units(given.get("units", ""), countries)
    axles = _count(given.get("axles", ""))
    known = {one.word: _value(one, given.get(one.word, ""), units) for one in QUESTIONS if one.word != "axle"}
    known["axle"] = _axle_places(given.get("axle", ""), axles, units)
    text = _text(name, countries, units, axles, known)
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
        answers["country"] = ask("where it is driven, home first (US-NC, UK, AU ...)").removeprefix(UNKNOWN)
        answers["axles"] = ask("how many axles")
        answers |= {one.word: ask(one.question) for one in QUESTIONS}
    where = put_down(path, starter(Path(path).stem, answers))
    open_questions = sum(1 for one in QUESTIONS if answers.get(one.word, "") in {"", UNKNOWN})
    says = f"{clean(str(where))} is begun; {open_questions} of {len(QUESTIONS)} measures stand as unknown, each with "
    says += f"where to read it. Next: boxwright next {clean(str(where))}"
    return [plain(piece) for piece in wrapped(says, columns)]


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


def _count(text: str) -> int:
    if not text.strip() or text.strip() == UNKNOWN:
        return 1
    if not text.strip().isdecimal() or not 1 <= int(text) <= MOST_AXLES:
        raise NothingAsked(f'cannot read the number of axles "{clean(text)}"; write 1, 2 or 3')
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
    return text if _PLAIN.fullmatch(text) else quoted(text)


def _ahead(value: str) -> str:
    """Return a distance ahead of the front wall as a place, which counts rearward."""
    return value if value == UNKNOWN else f'"-{value[1:]}' if value.startswith('"') else f"-{value}"


def _axle_places(typed: str, count: int, units: HeaderUnits) -> str:
    """Return where each axle is, as typed with commas between."""
    if not typed.strip() or typed.strip() == UNKNOWN:
        return ", ".join([UNKNOWN] * count)
    asked = next(one for one in QUESTIONS if one.word == "axle")
    found = [_value(asked, piece, units) for piece in typed.split(",")]
    if len(found) != count:
        raise NothingAsked(f"{count} axles need {count} places; write --axle 83,117 for two, or leave it out")
    return ", ".join(found)


def _line(text: str, value: str, asked: Asked) -> str:
    """Return a line with its comment: what is not known yet says where it is read."""
    comment = f"{asked.question}; read it: {asked.read_it}" if value == UNKNOWN else asked.question
    return f"{text:<34}# {comment}"


def _text(name: str, countries: tuple[str, ...], units: HeaderUnits, axles: int, known: Mapping[str, str]) -> str:
    ask = {one.word: one for one in QUESTIONS}
    is_inch = units is US
    title = name if _PLAIN.fullmatch(name) and name[0].isalpha() and name.strip() == name else quoted(name)
    country = f"countries: [{', '.join(countries)}]" if countries else "# countries: [US-NC, CA-BC]"
    head = [
        "# How to read a rig file: bare numbers use the units below; any value may carry its own (25 mm, 12 kg, 6' 5).",
        "# Not sure? unknown, 40..55, 45 +-5, about 45: the doubt is carried along. What stands after # is yours.",
        "# x = behind the front wall's stud face; z = above the trailer's own deck; side: left+6, centre, right-6.",
        "boxwright: 1",
        f"rig: {title}",
        "units: {length: in, weight: lb, temperature: F, volume: gal, wire: AWG}"
        if is_inch
        else "units: {length: mm, weight: kg, temperature: C, volume: l, wire: mm2}",
        f"{country:<34}# where it is driven, home first",
        f"{'class: cargo':<34}# what the papers say: cargo or camper",
        "today: {stage: measure}",
        "",
        "trailer:",
        "  body:",
        *(_line(f"    {word}: {known[word]}", known[word], ask[word]) for word in ("length", "width", "height")),
        f"{'  deck_height: unknown':<34}# ground to the top of the deck, trailer level",
        _line(f"  coupler_x: {_ahead(known['coupler'])}", known["coupler"], ask["coupler"]) + " (minus: ahead of it)",
        "  axles:",
        *_axle_lines(axles, known, ask),
        _line(f"  gvwr: {known['gvwr']}", known["gvwr"], ask["gvwr"]),
        "  empty:",
        _line(f"    weight: {known['empty']}", known["empty"], ask["empty"]),
        _line(f"    tongue: {known['tongue']}", known["tongue"], ask["tongue"]),
        f"{'  coupler: {rating: unknown}':<34}# stamped on the coupler, with the ball size",
        f"{'  tyres: {load: unknown}':<34}# on the sidewall: load of one tyre, write 1820 each",
        "",
        "tow:",
        f"{'  vehicle: {rating: unknown, tongue: unknown, payload: unknown, ball_height: unknown}':<34}"
        "  # its papers; the door jamb",
        "",
    ]
    return "\n".join([*head, *STAGES, *(INCH_PARTS if is_inch else METRIC_PARTS), *LOADS, ""])


def _axle_lines(count: int, known: Mapping[str, str], ask: Mapping[str, Asked]) -> list[str]:
    is_known = UNKNOWN not in known["axle"]
    gawr = ", ".join([known["gawr"]] * count)
    kind = (
        [f"{'    kind: unknown':<34}# leaf with equaliser, or rubber torsion; look under the floor"]
        if count > 1
        else []
    )
    return [
        *kind,
        _line(f"    x: [{known['axle']}]", "known" if is_known else UNKNOWN, ask["axle"]),
        _line(f"    gawr: [{gawr}]", known["gawr"], ask["gawr"]),
    ]


STAGES = (
    "stages:                           # in this order; done: yes DATE once it is",
    "  measure: {what: receive and measure}",
    '  safe:    {what: "exits, alarms, tie-downs", needs: [measure]}',
    "  shell:   {what: roof and openings, needs: [safe], weather: dry}",
    "  wire:    {what: backing and wire, needs: [shell]}",
    "  close:   {what: insulation and liners, needs: [wire]}",
    '  inside:  {what: "bed, cabinets, power", needs: [close]}',
    "  finish:  {what: trim and shakedown, needs: [inside]}",
    "",
    "parts:                            # a part is a thing in a place at a stage, written once; such as:",
)
INCH_PARTS = (
    "  # extinguisher: {x: 50, wall: right, z: 40, size: 5 x 5 x 16, weight: 6, stage: safe, done: no}",
    "  # co-alarm: {x: 70, wall: left, z: 60, size: 5 x 2 x 5, weight: 0.6, stage: safe, done: no, alarm: CO}",
    "  # bed: {x: 80, side: left, z: floor+20, size: 75 x 48 x 6, weight: about 90, stage: inside}",
    "  # tools: {x: 20, side: centre, z: floor, size: 22 x 18 x 14, weight: unknown, stage: safe, kind: cargo}",
)
METRIC_PARTS = (
    "  # extinguisher: {x: 1270, wall: right, z: 1000, size: 120 x 120 x 400, weight: 2.7, stage: safe, done: no}",
    "  # co-alarm: {x: 1780, wall: left, z: 1500, size: 120 x 50 x 120, weight: 0.3, stage: safe, done: no, alarm: CO}",
    "  # bed: {x: 400, side: left, z: floor+500, size: 1900 x 1200 x 150, weight: about 40, stage: inside}",
    "  # tools: {x: 500, side: centre, z: floor, size: 560 x 460 x 360, weight: unknown, stage: safe, kind: cargo}",
)
LOADS = (
    "",
    "loads:                            # what is aboard, and what it is judged for",
    "  empty: {cargo: none, for: [tow]}",
    "  road:  {cargo: all, for: [tow]}",
    "  night: {cargo: all, parked: yes, for: [sleep, leave, work]}",
)
