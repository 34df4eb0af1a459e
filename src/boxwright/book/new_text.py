"""The text that ``new`` writes: what it asks, the lines of a starter rig, and beside each how to find it out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NamedTuple

from boxwright.rig.walk import quoted

UNKNOWN = "unknown"
PLAIN = re.compile(r"[A-Za-z0-9.+\-][A-Za-z0-9 .+/'\-]*")
"""A text that needs no quotes."""
BESIDE = 34
"""Column of the comments."""


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
    Asked("studs", "length", "stud spacing, middle to middle", "tape, one stud of a side wall to the next"),
)
"""What is asked, in the order it is asked."""

SLEEPERS = Asked("sleepers", "", "who sleeps in it", "names with commas, such as ann, ben; or how many")
COLDEST = Asked(
    "coldest",
    "temperature",
    "coldest night it is slept in",
    "the lowest of a hard winter where you go, such as 18 F or -8 C",
)
"""What is asked of nights: safety goes by the one, heat by the other. Not measures, so never asked beside a sheet."""
COLDEST_PLACE = "the coldest place"

NOT_YET = "I do not know yet"
"""Begins the comment of a line that waits: without its first sign it is read, as an example of how it is written."""


def _beside(text: str, comment: str) -> str:
    return f"{text:<{BESIDE - 2}}  # {comment}"


def _line(text: str, value: str, asked: Asked) -> str:
    """Return a line with its comment: what is not known yet says where it is read."""
    return _beside(text, f"{asked.question}; read it: {asked.read_it}" if value == UNKNOWN else asked.question)


def _waiting(indent: int, text: str, find_it: str) -> str:
    """Return a line that is not read yet, and teaches how it is written and found out."""
    return _beside(f"{' ' * indent}# {text}", f"{NOT_YET}; {find_it}")


def text_of(
    name: str,
    countries: tuple[str, ...],
    trailer_class: str,
    is_inch: bool,
    known: Mapping[str, str],
    sleepers: tuple[str, ...] = (),
) -> str:
    """Return the whole text of a starter rig; ``known`` has a value or ``unknown`` for each word that is asked."""
    title = name if PLAIN.fullmatch(name) and name[0].isalpha() and name.strip() == name else quoted(name)
    country = "US-NC, CA-BC" if is_inch else "UK, EU-FR"
    lines = [
        "# How to read a rig file: bare numbers use the units below; any value may carry its own (25 mm, 12 kg, 6' 5).",
        "# Not sure? unknown, 40..55, 45 +-5, about 45: the doubt is carried along. What stands after # is yours.",
        f'# A line that begins with # is not read. Where it says "{NOT_YET}": find it out, write yours, take the #',
        "# away. What stands there already is an example, not a guess at yours.",
        "# x = behind the front wall's stud face; z = above the trailer's own deck; side: left+6, centre, right-6.",
        "boxwright: 1",
        f"rig: {title}",
        "units: {length: in, weight: lb, temperature: F, volume: gal, wire: AWG}"
        if is_inch
        else "units: {length: mm, weight: kg, temperature: C, volume: l, wire: mm2}",
        _beside(f"countries: [{', '.join(countries)}]", "where it is driven, home first")
        if countries
        else _waiting(0, f"countries: [{country}]", "where it is driven, home first: its rules are looked up"),
        _beside(f"class: {trailer_class}", "what its papers call it")
        if trailer_class
        else _waiting(0, "class: cargo", "title or registration: a goods trailer is cargo, one to live in is camper"),
        "today: {stage: measure}",
        "",
        "people:                           # who travels; where they sleep is the name of a part",
        *_people(is_inch, sleepers),
        "",
        "places:                           # where it is slept in",
        _coldest(is_inch, known[COLDEST.word]),
        "",
        *_trailer(is_inch, known),
        "",
        *_frame(is_inch, known["studs"]),
        "",
        *_tow(is_inch),
        "",
    ]
    return "\n".join([*lines, *STAGES, *(INCH_PARTS if is_inch else METRIC_PARTS), *LOADS, ""])


def _people(is_inch: bool, sleepers: tuple[str, ...]) -> list[str]:
    find_it = "step on a scale in the clothes you travel in"
    if not sleepers:
        return [_waiting(2, f"me: {{weight: {'180' if is_inch else '80'}}}", find_it)]
    return [_beside(f"  {one}: {{weight: unknown}}", f"{find_it}; with a bed: sleeps: bed") for one in sleepers]


def _coldest(is_inch: bool, value: str) -> str:
    if value == UNKNOWN:
        example = f"{COLDEST_PLACE}: {{coldest_design: {'18' if is_inch else '-8'}}}"
        return _waiting(2, example, f"{COLDEST.question}: {COLDEST.read_it}")
    return _beside(f"  {COLDEST_PLACE}: {{coldest_design: {value}}}", COLDEST.question)


def _trailer(is_inch: bool, known: Mapping[str, str]) -> list[str]:
    ask = {one.word: one for one in QUESTIONS}
    load, brakes = ("1820", "electric") if is_inch else ("450", "overrun")
    lamps = "tail, stop, turn, plate" + (", side" if is_inch else ", reflectors triangular")
    chains = "chains: {count: 2, rating: 5000 each}" if is_inch else "secondary: {kind: cable, fitted: yes}"
    find_chains = "stamped on a link" if is_inch else "look at the nose: a cable, or chains: {count: 2}"
    return [
        "trailer:",
        "  body:",
        *(_line(f"    {word}: {known[word]}", known[word], ask[word]) for word in ("length", "width", "height")),
        _beside("  deck_height: unknown", "ground to the top of the deck, trailer level; read it: tape"),
        _line(f"  coupler_x: {ahead(known['coupler'])}", known["coupler"], ask["coupler"]) + " (minus: ahead of it)",
        _beside("  coupler_height: unknown", "ground to the ball centre, trailer level; read it: tape"),
        "  axles:",
        *_axle_lines(known, ask),
        _line(f"  gvwr: {known['gvwr']}", known["gvwr"], ask["gvwr"]),
        "  empty:",
        _line(f"    weight: {known['empty']}", known["empty"], ask["empty"]),
        _line(f"    tongue: {known['tongue']}", known["tongue"], ask["tongue"]),
        _beside("  coupler: {rating: unknown}", "stamped on the coupler; with it the ball: 2 in, or 50 mm"),
        _beside("  tyres: {load: unknown}", f"on the sidewall: load of one tyre, written {load} each"),
        _waiting(2, f"brakes: {{kind: {brakes}, axles: 1}}", "wires or rods behind a wheel; without any: brakes: none"),
        _waiting(2, chains, find_chains),
        _waiting(2, f"lamps: [{lamps}]", "switch all on and walk round it"),
    ]


def _axle_lines(known: Mapping[str, str], ask: Mapping[str, Asked]) -> list[str]:
    is_known = UNKNOWN not in known["axle"]
    count = known["axle"].count(",") + 1
    gawr = ", ".join([known["gawr"]] * count)
    kind = "leaf with equaliser, or rubber torsion; look under the floor"
    return [
        *([_beside("    kind: unknown", kind)] if count > 1 else []),
        _line(f"    x: [{known['axle']}]", "known" if is_known else UNKNOWN, ask["axle"]),
        _line(f"    gawr: [{gawr}]", known["gawr"], ask["gawr"]),
        _beside("    track: unknown", "tyre middle to tyre middle across one axle; read it: tape"),
    ]


def _frame(is_inch: bool, studs: str) -> list[str]:
    asked = next(one for one in QUESTIONS if one.word == "studs")
    face, depth = ("1", "1 1/2") if is_inch else ("25", "38")
    return [
        "frame:",
        "  studs:",
        _line(f"    every: {studs}", studs, asked),
        _waiting(4, f"face: {face}", "tape: width of the face a screw goes into"),
        _waiting(4, f"depth: {depth}", "tape: skin to that face"),
    ]


def _tow(is_inch: bool) -> list[str]:
    kerb, gcwr, gear = ("5100", "14500", "400") if is_inch else ("1600", "3300", "150")
    unbraked = [] if is_inch else [_waiting(4, "unbraked: 650", "its papers: what it may pull without brakes")]
    return [
        "tow:",
        "  vehicle:                        # any name; a second one goes below it",
        _beside("    rating: unknown", "what it may pull, braked; read it: its papers or handbook"),
        *unbraked,
        _beside("    tongue: unknown", "most on its ball; read it: stamped on the hitch, and its handbook"),
        _beside("    payload: unknown", "read it: the sticker in the driver's door, or its papers"),
        _beside("    ball_height: unknown", "ground to the ball centre, loaded; read it: tape"),
        _waiting(4, f"kerb: {kerb}", "its own weight, full tank, nobody in it: its papers, or a public scale"),
        _waiting(4, f"gcwr: {gcwr}", "vehicle and trailer together: its handbook"),
        _waiting(4, f"people_and_gear: {gear}", "all that rides in it: add it up"),
    ]


def ahead(value: str) -> str:
    """Return a distance ahead of the front wall as a place, which counts rearward."""
    return value if value == UNKNOWN else f'"-{value[1:]}' if value.startswith('"') else f"-{value}"


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
