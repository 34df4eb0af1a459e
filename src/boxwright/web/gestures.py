"""What the hand does, as changes of the rig text: a thing moved, turned, copied, taken out, a value written.

A change that cannot be made raises ``Refused`` with one sentence; nothing is half done.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from fractions import Fraction

from boxwright.finding import Problem
from boxwright.rig.add import add_thing, add_value, copy_thing
from boxwright.rig.change import Change
from boxwright.rig.document import Document, Tree
from boxwright.rig.far_out import far_outside
from boxwright.rig.remove import remove
from boxwright.rig.rename import rename
from boxwright.rig.rig import Rig
from boxwright.rig.splice import apply, splice, tree_at
from boxwright.study.rewritten import Offset, rewritten, taken_apart
from boxwright.units import HeaderUnits, show

AXES = ("x", "side", "z")
"""The keys of a place, in the order of the rig's axes."""
ACROSS = {"left": "side", "right": "side", "front": "x", "rear": "x"}
"""The axis along which a thing on a wall cannot be moved."""
STEP_OF_UNIT = {"in": Fraction(1, 16), "ft": Fraction(1, 192), "mm": Fraction(1), "cm": Fraction(1, 10),
                "m": Fraction(1, 1000)}  # fmt: skip
"""What a hand can place a thing to, in each unit of length: a sixteenth of an inch, a millimetre."""
AT_LEAST = 1e-6
"""A shift (m) below which nothing moves."""


class Refused(Exception):
    """A change that cannot be made, with why; ``asked`` is the word of the question whose answer is the reason."""

    def __init__(self, why: str, asked: str = "") -> None:
        super().__init__(why)
        self.asked = asked


def moved(document: Document, rig: Rig, of: str, shift: tuple[float, float, float]) -> Document:
    """Return the document with a thing shifted (m: rearward, to the right, up); what is in or on it goes along.

    A place keeps the anchor it was written with. What hangs on a wall slides along it. What stands in or on the thing
    by places of its own is moved too; what is placed from it goes along by itself.
    """
    held = next((item for item in (*rig.parts, *rig.openings) if item.of == of), None)
    hung = ACROSS.get(held.words.wall, "") if held is not None else ""
    header = rig.header.units
    after = document
    for key, far in zip(AXES, shift, strict=True):
        places = _places_of(document, of, key)
        if abs(far) < AT_LEAST or (not places and key == hung):
            continue
        if not places:
            raise Refused(f"{of}.{key} is not written yet, so it cannot be moved along; write it first")
        for path in places:
            after = _stepped(after, path, far, header)
    for path in _carried(rig, of):
        for key, far in zip(AXES, shift, strict=True):
            for place in _places_of(document, path, key) if abs(far) >= AT_LEAST else ():
                if not str(tree_at(document, place)).startswith("+"):
                    after = _stepped(after, place, far, header)
    if after is document and hung and held is not None and any(abs(far) >= AT_LEAST for far in shift):
        raise Refused(f"{held.name} hangs on the {held.words.wall} wall; it moves along the wall")
    return after


def must_stay_near(before: Rig, after: Rig) -> None:
    """Refuse parts moved to where a place counts as mistyped, or further out there; they may come back inward."""
    was = {part.of: far_outside(part, before.trailer, before.loads) for part in before.parts}
    for part in after.parts:
        for key, far in far_outside(part, after.trailer, after.loads).items():
            if far > was.get(part.of, {}).get(key, 0.0) + AT_LEAST:
                raise Refused(f"{part.name} would lie outside the trailer by more than a metre; it stays where it was")


def _places_of(document: Document, of: str, key: str) -> tuple[str, ...]:
    """Return the paths at which a place along one axis is written: one, or one for each of a counted thing."""
    if isinstance(tree_at(document, f"{of}.{key}"), str):
        return (f"{of}.{key}",)
    at = tree_at(document, f"{of}.at")
    return tuple(f"{of}.at[{index}]" for index in range(len(at))) if key == "x" and isinstance(at, tuple) else ()


def _stepped(document: Document, path: str, far: float, header: HeaderUnits) -> Document:
    """Return the document with one written place moved by ``far`` (m)."""
    before = str(tree_at(document, path))
    is_relative = before.startswith("+")
    offset = taken_apart(before[1:] if is_relative else before, header)
    if offset is None:
        raise Refused(f'{path} is "{before}", which is no single place to move')
    text = rewritten(offset, _to_a_step(offset, far))
    text = f"+{text}" if is_relative else text
    return written(document, path, text) if text != before else document


def _to_a_step(offset: Offset, far: float) -> float:
    """Return a shift (m) grown or shrunk so that the new figure is one that can be measured."""
    step = STEP_OF_UNIT[offset.unit]
    figure = offset.figure + Fraction(far / offset.metres)
    return float(round(figure / step) * step - offset.figure) * offset.metres


def _carried(rig: Rig, of: str) -> tuple[str, ...]:
    """Return what stands in or on a thing, and what stands in or on that."""
    borne = [item for item in rig.parts if item.words.inside or item.words.rides_on]
    names = {item.of: item.name for item in rig.parts}
    found = [of]
    for parent in found:  # grows as it goes
        name = names.get(parent)
        found += [
            item.of for item in borne if name in {item.words.inside, item.words.rides_on} and item.of not in found
        ]
    return tuple(found[1:])


def written(document: Document, path: str, value: str) -> Document:
    """Return the document with one value written, or written anew."""
    if not value.strip():
        raise Refused(f"{path} needs a value; to take it out, take it out as a whole")
    if document.extent(path, exact=True) is None:
        return _done(add_value(document, path, value))
    made = splice(document, path, value)
    if isinstance(made, Problem):
        raise Refused(made.says)
    return apply(document, [made])


def added(document: Document, section: str, name: str, entries: Mapping[str, str]) -> Document:
    """Return the document with a new thing."""
    keys: dict[str, Tree] = dict(entries)
    return _done(add_thing(document, section, name, keys))


def copied(document: Document, of: str, new: str) -> Document:
    """Return the document with a thing once more, under a free name where none is given."""
    section, name = thing_of(document, of)
    return _done(copy_thing(document, section, name, new or free_name(document, section, name)))


def free_name(document: Document, section: str, name: str) -> str:
    """Return the name with the first number behind it that nothing has yet."""
    stem = name.rstrip("0123456789").rstrip("-")
    number = 2
    while (section, f"{stem}-{number}") in document.numbers:
        number += 1
    return f"{stem}-{number}"


def taken_out(document: Document, of: str) -> Document:
    """Return the document without a thing."""
    thing_of(document, of)
    return _done(remove(document, of))


def renamed(document: Document, of: str, new: str) -> Document:
    """Return the document with a thing under another name, and every place that names it."""
    section, name = thing_of(document, of)
    return _done(rename(document, section, name, new))


def turned(document: Document, of: str) -> Document:
    """Return the document with a thing turned a quarter: length and width change places, the placed corner stays."""
    size = tree_at(document, f"{of}.size")
    pieces = [piece.strip() for piece in size.split(" x ")] if isinstance(size, str) else []
    if len(pieces) != len(AXES):
        raise Refused(f"{of} has no size of three measures to turn; write it as 24 x 12 x 30")
    return written(document, f"{of}.size", f"{pieces[1]} x {pieces[0]} x {pieces[2]}")


def accepted(document: Document, code: str, where: str, note: str, number: str, on: date) -> Document:
    """Return the document with a finding accepted by the owner, with note and day."""
    stem = code.partition("/")[2] or code
    name, count = stem, 1
    while ("accepted", name) in document.numbers:
        count += 1
        name = f"{stem}-{count}"
    entries = {"code": code, "where": where, "note": note or "accepted", "on": on.isoformat()}
    return added(document, "accepted", name, {**entries, "number": number} if number else entries)


def thing_of(document: Document, of: str) -> tuple[str, str]:
    """Return the section and the name of a thing; refuses a path that leads to none."""
    section, bracket, rest = of.partition("[")
    name = rest.removesuffix("]")
    if not bracket or (section, name) not in document.numbers:
        raise Refused(f'there is no "{of}" in this file')
    return section, name


def in_words(shift: tuple[float, float, float], header: HeaderUnits) -> str:
    """Return how far a hand has moved something, for whoever hears the page read."""
    words = (("rearward", "forward"), ("to the right", "to the left"), ("up", "down"))
    told = [
        f"{show(abs(far), 'm', header, cuts=True)} {ways[far < 0.0]}"
        for far, ways in zip(shift, words, strict=True)
        if abs(far) >= AT_LEAST
    ]
    return " and ".join(told) or "not moved"


def _done(made: Change | Problem) -> Document:
    if isinstance(made, Problem):
        raise Refused(made.says)
    return made.document
