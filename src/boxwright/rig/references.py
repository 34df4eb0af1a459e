"""Where a rig text names a thing by its name: the keys that do, and the exact characters."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from boxwright.records import dataclass
from boxwright.rig.document import Document, Piece, Tree

TARGETS: dict[tuple[str, str], tuple[str, ...]] = {
    ("parts", "inside"): ("parts",),
    ("parts", "rides_on"): ("parts",),
    ("parts", "backs"): ("parts",),
    ("parts", "screws.into"): ("parts",),
    ("parts", "charger.from"): ("parts", "openings"),
    ("parts", "heater.path"): ("parts",),
    ("parts", "heater.fed_by"): ("parts", "openings"),
    ("parts", "cools.hatch"): ("openings",),
    ("parts", "cools.fed_by"): ("parts", "openings"),
    ("parts", "release"): ("openings",),
    ("openings", "inside"): ("parts",),
    ("openings", "rides_on"): ("parts",),
    ("openings", "screws.into"): ("parts",),
    ("wires", "from"): ("parts", "openings"),
    ("wires", "to"): ("parts", "openings"),
    ("wires", "fuse.at"): ("parts", "openings"),
    ("straps", "over"): ("parts",),
    ("straps", "to"): ("parts",),
    ("pipes", "from"): ("parts", "openings"),
    ("pipes", "to"): ("parts", "openings"),
    ("habits", "at"): ("parts", "openings"),
    ("people", "sleeps"): ("parts",),
    ("loads", "cargo"): ("parts",),
    ("loads", "out"): ("parts",),
    ("loads", "people"): ("people",),
    ("measured", "part"): ("parts",),
    ("measured", "opening"): ("openings",),
    ("measured", "load"): ("loads",),
    ("measured", "stage"): ("stages",),
    ("stages", "needs"): ("stages",),
    ("trailer", "empty.includes"): ("parts",),
    ("today", "stage"): ("stages",),
}
"""Which things a key may name: the section it stands in (or its top-level key) and the keys down to it."""

KEYS_OF_NAMES: dict[tuple[str, str], tuple[str, ...]] = {
    ("loads", "tanks"): ("parts",),
    ("loads", "charge"): ("parts",),
}
"""Maps whose keys are names."""

STAGE_KEYS = ("stage", "until")
"""Keys of any thing, and of any layer of a wall, that name a stage."""

WITH_A_PLACE = frozenset({("straps", "to"), ("wires", "from"), ("wires", "to"), ("pipes", "from"), ("pipes", "to"),
                          ("wires", "fuse.at")})  # fmt: skip
"""Keys whose text may go on behind the name: ``d-rings-left 2``, ``track-left x144``."""

PATH = re.compile(r"\b([a-z]+)\[([^\]]+)\]")
NUMBERED = re.compile(r"\[\d+\]")


@dataclass(frozen=True, slots=True)
class Reference:
    """A place that names a thing. ``text`` is the whole text there, ``start`` and ``end`` the name in it.

    ``is_key`` says that the name is a key itself; ``path`` is then that of its value.
    """

    path: str
    text: str
    start: int
    end: int
    is_key: bool = False


def references(document: Document, section: str, name: str) -> tuple[Reference, ...]:
    """Return every place that names a thing of a section, in the order of the text, outside comments and remarks."""
    found: list[Reference] = []
    for piece in document.pieces:
        holder = piece.section or piece.name
        for suffix, text, is_key in _leaves(piece):
            path = f"{piece.path}{suffix}"
            found += [Reference(path, text, *span, is_key)
                      for span in _spans(document, holder, suffix, text, is_key, section, name)]  # fmt: skip
    return tuple(found)


def is_ambiguous(document: Document, section: str, name: str) -> bool:
    """Return whether a name could mean a thing of another section too wherever it is written."""
    others = {other for targets in (*TARGETS.values(), *KEYS_OF_NAMES.values()) if section in targets
              for other in targets if other != section}  # fmt: skip
    return any((other, name) in document.numbers for other in others)


def _leaves(piece: Piece) -> Iterator[tuple[str, str, bool]]:
    """Yield every text below a thing with its path, and every key that is a name."""
    holder = piece.section or piece.name

    def below(tree: Tree, path: str) -> Iterator[tuple[str, str, bool]]:
        if isinstance(tree, Mapping):
            for key, value in tree.items():
                is_layer = piece.section == "walls" and path == ".layers"
                where = f"{path}[{key}]" if is_layer else f"{path}.{key}"
                if (holder, path.lstrip(".")) in KEYS_OF_NAMES:
                    yield where, key, True
                yield from below(value, where)
        elif isinstance(tree, tuple):
            for number, value in enumerate(tree):
                yield from below(value, f"{path}[{number}]")
        elif tree is not None:
            yield path, tree, False

    return below(piece.tree, "")


def _spans(
    document: Document, holder: str, suffix: str, text: str, is_key: bool, section: str, name: str
) -> list[tuple[int, int]]:
    """Return where in one text a thing is named."""
    if is_key:
        parent = suffix.removesuffix(f".{text}").lstrip(".")
        return [(0, len(text))] if section in KEYS_OF_NAMES[holder, parent] and text == name else []
    key = NUMBERED.sub("", suffix).lstrip(".")
    if key.rpartition(".")[2] in ("where", "asks"):
        return [found.span(2) for found in PATH.finditer(text) if found[1] == section and found[2] == name]
    if key == "route":
        return list(_in_route(document, text, section, name))
    targets = TARGETS.get((holder, key), ())
    if re.sub(r"^layers\[[^\]]*\]\.", "", key) in STAGE_KEYS and holder not in ("measured", "today"):
        targets = ("stages",)
    if section not in targets:
        return []
    named = _leading(document, targets, text) if (holder, key) in WITH_A_PLACE else text
    return [(0, len(name))] if named == name else []


def _leading(document: Document, sections: tuple[str, ...], text: str) -> str:
    """Return the longest name of some sections that a text is, or begins with before a blank."""
    return leading((name for one, name in document.numbers if one in sections), text)


def leading(names: Iterable[str], text: str) -> str:
    """Return the longest of some names that a text is, or begins with before a blank; empty where it is none."""
    return max((name for name in names if text == name or text.startswith(f"{name} ")), key=len, default="")


def _in_route(document: Document, text: str, section: str, name: str) -> Iterator[tuple[int, int]]:
    """Yield where a route names a thing: a step of it begins with the name, or with ``inside`` and the name."""
    if section not in ("parts", "openings"):
        return
    at = 0
    for step in text.split(">"):
        start = at + len(step) - len(step.lstrip())
        bare = step.strip()
        if bare.startswith("inside "):
            start += len("inside ")
            bare = bare.removeprefix("inside ")
        if _leading(document, ("parts", "openings"), bare) == name:
            yield start, start + len(name)
        at += len(step) + 1
