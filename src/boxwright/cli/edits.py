"""An edit as it is typed: ``bunk.x+6in``, ``boat.weight=110``, ``parts[bunk].x=84``; and the text that it gives."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from boxwright.cli.rig_file import NothingAsked, nearest
from boxwright.cli.screen import clean
from boxwright.finding import Problem
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.document import NAMED, Document
from boxwright.rig.splice import apply, splice, splice_new, tree_at
from boxwright.study.rewritten import rewritten, taken_apart
from boxwright.units import CannotRead, HeaderUnits, read_exact

_STEP = re.compile(r"^(.+?\.[A-Za-z_]+)\s*([+\u2212-])\s*(.+)$")
PLACES = ("x", "side", "z")
HOW = 'write it as "bunk.x+6in", "bunk.x=84" or "loads[departure].tanks.fresh=full"'


@dataclass(frozen=True, slots=True)
class Written:
    """One edit carried out: the path, the text before (None where there was none) and after."""

    path: str
    before: str | None
    after: str


@dataclass(frozen=True, slots=True)
class Edited:
    """A rig text with edits made in memory, and what was written where."""

    reading: Reading
    written: tuple[Written, ...]


def edited(reading: Reading, typed: Sequence[str]) -> Edited:
    """Return a rig with every typed edit made, one after the other; says in one sentence which cannot be."""
    if not typed:
        raise NothingAsked(f"no edit was named; {HOW}")
    document, written = reading.document, []
    for text in typed:
        path, value = _understood(document, text, reading.rig.header.units)
        _refuse_where_damaged(document, path)
        before = tree_at(document, path)
        made = splice_new(document, path, value) if _is_new(document, path) else splice(document, path, value)
        if isinstance(made, Problem):
            raise NothingAsked(f"line {made.line}: {clean(made.says)}")
        document = apply(document, [made])
        written.append(Written(path, before if isinstance(before, str) else None, value))
    return Edited(Composer().compose(document), tuple(written))


def _is_new(document: Document, path: str) -> bool:
    return document.extent(path, exact=True) is None


def _understood(document: Document, text: str, header: HeaderUnits) -> tuple[str, str]:
    """Return the path and the new text of a typed edit."""
    name, equals, value = text.partition("=")
    if equals:
        if not value.strip():
            raise NothingAsked(f'"{clean(text)}" says no new value; {HOW}')
        return _path(document, name.strip()), value.strip()
    step = _STEP.match(text.strip())
    if step is None:
        raise NothingAsked(f'cannot read the edit "{clean(text)}"; {HOW}')
    path = _path(document, step[1].strip())
    return path, _stepped(document, path, step[2], step[3], header)


def _path(document: Document, name: str) -> str:
    """Return the rig path of a typed one: ``bunk.x`` is the part's, or that of the one thing with that name."""
    first, dot, rest = name.partition(".")
    if "[" in first or first in document.tree:
        if document.extent(name) is None:
            raise NothingAsked(f'there is no "{clean(name)}" in this file; {HOW}')
        return name
    homes = [section for section in NAMED if (section, first) in document.numbers]
    if "parts" in homes:
        homes = ["parts"]
    if len(homes) > 1:
        ways = " or ".join(f"{section}[{first}]{dot}{rest}" for section in homes)
        raise NothingAsked(f'"{clean(first)}" is the name of several things; write {clean(ways)}')
    if not homes:
        names = [one for section, one in document.numbers if section]
        guess = nearest(first, names)
        meant = f'; did you mean "{clean(guess)}{dot}{clean(rest)}"?' if guess else f"; {HOW}"
        raise NothingAsked(f'there is nothing named "{clean(first)}" in this file{meant}')
    if not dot:
        raise NothingAsked(f'which value of "{clean(first)}"? {HOW}')
    return f"{homes[0]}[{first}]{dot}{rest}"


def _stepped(document: Document, path: str, sign: str, amount: str, header: HeaderUnits) -> str:
    """Return a place moved by a typed step, with the anchor it was written with."""
    key = path.rpartition(".")[2]
    before = tree_at(document, path)
    if key not in PLACES:
        raise NothingAsked(f"only a place can be moved by a step; write the new value as {clean(path)}=...")
    if not isinstance(before, str):
        raise NothingAsked(f"{clean(path)} is not written yet; write it as {clean(path)}=...")
    try:
        shift = read_exact(amount.strip(), "length", header) * (1.0 if sign == "+" else -1.0)
    except CannotRead as reason:
        raise NothingAsked(clean(str(reason))) from None
    is_relative = before.startswith("+")
    offset = taken_apart(before[1:] if is_relative else before, header)
    if offset is None:
        raise NothingAsked(f'"{clean(before)}" is no single place to move; write the new one as {clean(path)}=...')
    moved = rewritten(offset, shift)
    return moved if not is_relative or moved.startswith("-") else f"+{moved}"


def _refuse_where_damaged(document: Document, path: str) -> None:
    """Refuse an edit where the text could not be read as it stands: nobody knows what would be changed."""
    if document.is_damaged:
        line = document.problems[0].line if document.problems else 1
        raise NothingAsked(f"this file cannot be read as a whole from line {line} on; put that right first, by hand")
    item = path.partition("]")[0] + "]" if "[" in path else path.partition(".")[0]
    for place in sorted(document.troubled):
        if place in {"", item} or place.startswith((item, path)) or path.startswith(f"{place}."):
            line = document.spot(place).line
            raise NothingAsked(f'the text of "{clean(place or item)}" (line {line}) is not sound; put it right first')
