"""A reading as it is typed: ``studs left 7=112 3/8``, ``ticket axles=1725 tongue=235``; each value proved to be one."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping, Sequence
from dataclasses import field, replace

from boxwright.book.starter import NotUnderstood
from boxwright.finding import Problem
from boxwright.records import dataclass
from boxwright.rig.add import add_thing
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.document import Document, Tree
from boxwright.rig.rig import Rig
from boxwright.units import CannotRead, HeaderUnits, read_band

WEIGHT_KEYS = ("axles", "wheels", "tongue", "nose", "total", "left", "right", "hitched", "alone")
PLANK_KEYS = ("reading", "bare", "to_scale", "to_ball")
EDGES = ("front", "rear", "left", "right", "bottom", "top", "width", "height", "across")
MEASURES = ("length", "width", "height", "diagonal")
WHERES = ("front", "mid", "rear", "left", "right", "floor", "roof", "top", "bottom", "1", "2", "3", "4")
WALLS = ("left", "right", "front", "rear", "nose-left", "nose-right")
SEEN = ("removed", "doubled", "cut", "bent")
"""What may be said of a stud in place of its place."""

STAGED = ("ticket", "weighbridge", "scale", "plank")
"""Readings that are of the trailer as it stood at a stage."""
EXAMPLES = {
    "ticket": "ticket axles=1725 tongue=235 --stage measure",
    "weighbridge": "weighbridge axles=1310 tongue=95 --stage measure",
    "scale": 'scale tongue=235 --with "bathroom scale" --stage measure',
    "plank": "plank reading=62 to_scale=48 to_ball=12 --stage measure",
    "part": 'part boat=112 --with "luggage scale"',
    "studs": "studs left 7=112 3/8 8=128 1/16",
    "bows": "bows 0=0 1=16 1/8",
    "cross-members": "cross-members 0=2 1=18",
    "opening": "opening side-door front=16 5/8 rear=47 5/8",
    "body": "body length=168 width-front=79 7/8 diagonal-1=186 diagonal-2=186 1/4",
    "moisture": 'moisture at="floor x160 right" wood="19 %"',
}
"""Every kind of reading, with how it is typed."""


@dataclass(frozen=True, slots=True)
class Typed:
    """One reading: what its entry is to be called, its keys, and what it is of, ``values`` key by key as typed."""

    kind: str
    name: str
    keys: Mapping[str, Tree] = field(hash=False)
    subject: str = ""
    values: tuple[tuple[str, str], ...] = ()


def _nearest(word: str, known: Sequence[str]) -> str:
    found = difflib.get_close_matches(word.lower(), known, n=1, cutoff=0.5)
    return found[0] if found else ""


def _must_be_one_of(word: str, known: Sequence[str], what: str) -> str:
    """Return the word if it is known; otherwise say which are."""
    if word in known:
        return word
    guess = _nearest(word, known)
    meant = f'; did you mean "{guess}"?' if guess else ""
    listed = f"{meant} ({', '.join(known)})"
    raise NotUnderstood(f'there is no {what} "{word}"{listed}' if known else f"there is no {what} here")


def typed_readings(words: Sequence[str], rig: Rig) -> tuple[Typed, ...]:
    """Return the readings of one command line; says in one sentence what cannot be read and how to write it."""
    lead, pairs = _apart(words)
    if not lead or lead[0] not in EXAMPLES:
        raise NotUnderstood(_no_kind(lead[0] if lead else ""))
    kind, subject = lead[0], " ".join(lead[1:])
    if not pairs:
        raise NotUnderstood(f"the reading says no value; write it as {EXAMPLES[kind]}")
    if kind in ("ticket", "weighbridge", "scale"):
        return (_weighing(kind, subject, pairs, rig.header.units),)
    if kind == "plank":
        return (_plank(subject, pairs, rig.header.units),)
    if kind == "part":
        return _weighed_parts(subject, pairs, rig)
    if kind == "moisture":
        return (_moisture(subject, pairs),)
    if kind == "opening":
        _must_be_one_of(subject, [item.name for item in rig.openings], "opening")
        return (_taped(kind, subject, pairs, EDGES, rig.header.units),)
    if kind == "body":
        subject = _must_be_one_of(subject or "inside", ["inside", "outside"], "side of the box")
        return (_taped(kind, subject, pairs, (), rig.header.units),)
    return _row(kind, subject, pairs, rig.header.units)


def _apart(words: Sequence[str]) -> tuple[list[str], list[tuple[str, str]]]:
    """Return the words before the first value, and the values by key; a word without ``=`` goes on with a value."""
    lead: list[str] = []
    pairs: list[tuple[str, str]] = []
    for word in words:
        key, equals, value = word.partition("=")
        if equals and key.strip():
            pairs.append((key.strip(), value.strip()))
        elif pairs:
            pairs[-1] = (pairs[-1][0], f"{pairs[-1][1]} {word.strip()}".strip())
        else:
            lead += word.split()
    for key, value in pairs:
        if not value:
            raise NotUnderstood(f'"{key}=" says no value; write the number behind it, such as {key}=112')
        if sum(key == other for other, _ in pairs) > 1:
            raise NotUnderstood(f'"{key}" is typed twice; write it once')
    return lead, pairs


def _no_kind(word: str) -> str:
    listed = "; ".join(EXAMPLES[kind] for kind in ("studs", "ticket", "part", "opening", "body"))
    guess = _nearest(word, list(EXAMPLES)) if word else ""
    if guess:
        return f'no reading "{word}" is known; did you mean "{guess}"? Write it as {EXAMPLES[guess]}'
    said = f'no reading "{word}" is known' if word else "it is not said what was read"
    return f"{said}; write one of {', '.join(EXAMPLES)}, such as {listed}"


def _number(key: str, text: str, quantity: str, units: HeaderUnits, how: str) -> str:
    """Return a typed number as it stands, proved to be one of a quantity."""
    try:
        band = read_band(text.removesuffix(" each"), quantity, units)
    except CannotRead as reason:
        raise NotUnderstood(f"{key}: {reason}") from None
    if not band.known:
        raise NotUnderstood(f'{key}: "{text}" is no reading; leave it out, or write {how}')
    return text


def _known(key: str, known: Sequence[str], kind: str) -> None:
    if key not in known:
        guess = _nearest(key, list(known))
        meant = f'; did you mean "{guess}"?' if guess else f" ({', '.join(known)})"
        raise NotUnderstood(f'no "{key}" belongs to {kind}{meant}; write it as {EXAMPLES[kind]}')


def _no_subject(kind: str, subject: str) -> None:
    if subject:
        raise NotUnderstood(f'"{subject}" stands between; write it as {EXAMPLES[kind]}')


def _weighing(kind: str, subject: str, pairs: list[tuple[str, str]], units: HeaderUnits) -> Typed:
    _no_subject(kind, subject)
    keys: dict[str, Tree] = {}
    for key, text in pairs:
        _known(key, WEIGHT_KEYS, kind)
        pieces = [piece.strip() for piece in text.strip("[]").split(",")]
        for piece in pieces:
            _number(key, piece, "mass", units, EXAMPLES[kind])
        keys[key] = pieces[0] if len(pieces) == 1 else tuple(pieces)
    return Typed(kind, kind, {"what": kind, **keys}, "", tuple(pairs))


def _plank(subject: str, pairs: list[tuple[str, str]], units: HeaderUnits) -> Typed:
    _no_subject("plank", subject)
    for key, text in pairs:
        _known(key, PLANK_KEYS, "plank")
        _number(key, text, "length" if key.startswith("to_") else "mass", units, EXAMPLES["plank"])
    missing = [key for key in ("reading", "to_scale", "to_ball") if key not in dict(pairs)]
    if missing:
        raise NotUnderstood(f"the plank lacks {', '.join(missing)}; write it as {EXAMPLES['plank']}")
    return Typed("plank", "tongue-plank", {"what": "plank", "plank": dict(pairs)}, "", tuple(pairs))


def _weighed_parts(subject: str, pairs: list[tuple[str, str]], rig: Rig) -> tuple[Typed, ...]:
    _no_subject("part", subject)
    found = []
    for name, text in pairs:
        _must_be_one_of(name, [item.name for item in rig.parts], "part")
        weight = _number(name, text, "mass", rig.header.units, EXAMPLES["part"])
        found.append(Typed("part", f"{name}-scale", {"what": "scale", "part": name, "weight": weight}, name,
                           ((name, text),)))  # fmt: skip
    return tuple(found)


def _moisture(subject: str, pairs: list[tuple[str, str]]) -> Typed:
    _no_subject("moisture", subject)
    for key, text in pairs:
        _known(key, ("at", "wood"), "moisture")
        if key == "wood":
            _number(key, text, "ratio", HeaderUnits(), EXAMPLES["moisture"])
    if {key for key, _ in pairs} != {"at", "wood"}:
        raise NotUnderstood(f"say where and how wet: {EXAMPLES['moisture']}")
    return Typed("moisture", "moisture", {"what": "moisture", **dict(pairs)}, "", tuple(pairs))


def _taped(kind: str, subject: str, pairs: list[tuple[str, str]], known: Sequence[str], units: HeaderUnits) -> Typed:
    """Return the edges of an opening, or the measures of the box."""
    for key, text in pairs:
        if known:
            _known(key, known, kind)
        else:
            measure, _, where = key.partition("-")
            _known(measure, MEASURES, kind)
            if where:
                _must_be_one_of(where, list(WHERES), f"place of the {measure}")
        _number(key, text, "length", units, EXAMPLES[kind])
    name = f"{subject}-tape" if kind == "opening" else f"box-{subject}"
    return Typed(kind, name, {"what": "tape", kind: subject, "values": dict(pairs)}, subject, tuple(pairs))


def _row(kind: str, subject: str, pairs: list[tuple[str, str]], units: HeaderUnits) -> tuple[Typed, ...]:
    """Return the places of studs, bows or cross-members by number; what was only seen is an entry of its own."""
    if kind == "studs":
        _must_be_one_of(subject, list(WALLS), "wall")
    else:
        _no_subject(kind, subject)
        subject = "roof" if kind == "bows" else "floor"
    taped: dict[str, str] = {}
    seen: dict[str, str] = {}
    for key, text in pairs:
        number = key.removeprefix("L").removeprefix("R") if kind == "studs" else key
        if not re.fullmatch(r"\d{1,3}", number):
            raise NotUnderstood(f'"{key}" is no number of {kind}; count from 0 at the front: {EXAMPLES[kind]}')
        if text.lower() in SEEN:
            seen[number] = text.lower()
        else:
            taped[number] = _number(key, text, "length", units, EXAMPLES[kind])
    found = []
    word = kind.replace("-", "_")
    for what, values, ending in (("tape", taped, ""), ("seen", seen, "-seen")):
        if values:
            name = f"{kind}-{subject}{ending}" if kind == "studs" else f"{kind}{ending}"
            keys: dict[str, Tree] = {"what": what, word: subject, "values": dict(values)}
            found.append(Typed(kind, name, keys, subject, tuple(values.items())))
    return tuple(found)


def with_rest(one: Typed, rest: Mapping[str, str]) -> Typed:
    """Return a reading with its day first and the rest of what is known of it behind: instrument, stage, note."""
    first = {"date": rest["date"], "what": one.keys["what"]}
    is_seen = one.keys["what"] == "seen"
    middle = {key: rest[key] for key in ("with", "stage", "load") if rest.get(key) and rest[key] != one.keys["what"]}
    own = {key: value for key, value in one.keys.items() if key != "what"}
    last = {key: rest[key] for key in ("within", "photo", "note") if rest.get(key)}
    if is_seen:
        middle, last = {}, {key: value for key, value in last.items() if key != "within"}
    return replace(one, keys={**first, **middle, **own, **last})


def put_down(reading: Reading, entries: Sequence[Typed]) -> tuple[Reading, tuple[str, ...]]:
    """Return the rig with new entries under ``measured``, and their paths; what is entered already stays as it is."""
    document, paths = reading.document, []
    for one in entries:
        name = _free_name(document, one.name)
        made = add_thing(document, "measured", name, one.keys)
        if isinstance(made, Problem):
            raise NotUnderstood(f"line {made.line}: {made.says}")
        document = made.document
        paths.append(f"measured[{name}]")
    after = Composer().compose(document)
    for problem in after.problems:
        if problem.kind == "problem" and problem.path.startswith(tuple(paths)):
            raise NotUnderstood(f"nothing was entered: {problem.says}")
    return after, tuple(paths)


def _free_name(document: Document, name: str) -> str:
    """Return the name, or the first of name-2, name-3 ... that no entry has."""
    number, free = 2, name
    while ("measured", free) in document.numbers:
        free, number = f"{name}-{number}", number + 1
    return free
