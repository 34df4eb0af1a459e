"""The first measures of a trailer: which of them are still asked, and writing them where they stand in the rig text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from boxwright.book.new_text import QUESTIONS, UNKNOWN, Asked, ahead
from boxwright.book.starter import NotUnderstood, axle_places, countries_in, units_in, value_of
from boxwright.finding import Problem
from boxwright.rig.add import add_value
from boxwright.rig.document import Document, Tree
from boxwright.rig.rig import Rig
from boxwright.rig.splice import apply, splice, tree_at

PLACES = {
    "length": "trailer.body.length",
    "width": "trailer.body.width",
    "height": "trailer.body.height",
    "coupler": "trailer.coupler_x",
    "axle": "trailer.axles.x",
    "gvwr": "trailer.gvwr",
    "gawr": "trailer.axles.gawr",
    "empty": "trailer.empty.weight",
    "tongue": "trailer.empty.tongue",
    "studs": "frame.studs.every",
}
"""Where each measure stands in the rig text."""
OTHER_PLACES = {"studs": ("frame.studs",)}
"""Where else it may stand: alone in place of what it belongs to."""
UNITS = {
    "in": "{length: in, weight: lb, temperature: F, volume: gal, wire: AWG}",
    "mm": "{length: mm, weight: kg, temperature: C, volume: l, wire: mm2}",
}


class Open(NamedTuple):
    """A measure that is still asked: its question, and what stands in its place now."""

    asked: Asked
    text: str


def still_asked(document: Document) -> tuple[Open, ...]:
    """Return the measures that nobody has written yet, in the order they are asked."""
    return tuple(Open(one, UNKNOWN) for one in QUESTIONS if not _is_written(document, one.word))


def needs_units(document: Document) -> bool:
    """Return whether the file says in no place what a bare number is in."""
    return tree_at(document, "units") is None


def _is_written(document: Document, word: str) -> bool:
    found = [tree_at(document, path) for path in (PLACES[word], *OTHER_PLACES.get(word, ()))]
    texts = [text for tree in found for text in _texts(tree)]
    return any(text not in {"", UNKNOWN} for text in texts)


def _texts(tree: Tree | None) -> Iterator[str]:
    if isinstance(tree, str):
        yield tree.strip()
    elif isinstance(tree, tuple):
        for one in tree:
            yield from _texts(one)


def with_measures(document: Document, rig: Rig, given: Mapping[str, str]) -> Document:
    """Return the document with the measures that were given, each proved to be one."""
    home = countries_in(given.get("country", ""))
    units = rig.header.units
    if needs_units(document):
        units = units_in(given.get("units", ""), home or rig.header.countries)
        document = _added(document, "units", dict(_units_of("in" if units.length == "in" else "mm")))
    if home and tree_at(document, "countries") is None:
        document = _added(document, "countries", home)
    for one in QUESTIONS:
        typed = given.get(one.word, "")
        if not typed.strip() or typed.strip() == UNKNOWN:
            continue
        if one.word == "axle":
            axle_places(typed, 0, units)
            document = _listed(document, PLACES["axle"], [" ".join(piece.split()) for piece in typed.split(",")])
            continue
        value_of(one, typed, units)
        text = " ".join(typed.split())
        if one.word == "gawr":
            axles = tree_at(document, PLACES["axle"])
            document = _listed(document, PLACES["gawr"], [text] * (len(axles) if isinstance(axles, tuple) else 1))
        else:
            document = _put(document, one.word, ahead(text) if one.word == "coupler" else text)
    return document


def _units_of(length: str) -> Iterator[tuple[str, str]]:
    for pair in UNITS[length].strip("{}").split(","):
        key, _, value = pair.partition(":")
        yield key.strip(), value.strip()


def _put(document: Document, word: str, text: str) -> Document:
    for path in OTHER_PLACES.get(word, ()):
        if isinstance(tree_at(document, path), str):
            return _spliced(document, path, text)
    path = PLACES[word]
    return _added(document, path, text) if tree_at(document, path) is None else _spliced(document, path, text)


def _listed(document: Document, path: str, values: list[str]) -> Document:
    """Write a list over a list: what is there is written anew, what is more is put behind."""
    found = tree_at(document, path)
    if found is None:
        return _added(document, path, tuple(values))
    if isinstance(found, str) and len(values) == 1:
        return _spliced(document, path, values[0])
    count = len(found) if isinstance(found, tuple) else 1
    if len(values) < count or not isinstance(found, tuple):
        given = "1 was given" if len(values) == 1 else f"{len(values)} were given"
        had = "1 value" if count == 1 else f"{count} values"
        raise NotUnderstood(f"{path} has {had}, and {given}; change it in the Rig file")
    for index, text in enumerate(values):
        one = f"{path}[{index}]"
        document = _spliced(document, one, text) if index < count else _added(document, one, text)
    return document


def _added(document: Document, path: str, value: Tree) -> Document:
    made = add_value(document, path, value)
    if isinstance(made, Problem):
        raise NotUnderstood(made.says)
    return made.document


def _spliced(document: Document, path: str, text: str) -> Document:
    made = splice(document, path, text)
    if isinstance(made, Problem):
        raise NotUnderstood(made.says)
    return apply(document, [made])
