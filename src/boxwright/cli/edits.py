"""An edit as it is typed: ``bunk.x+6in``, ``boat.weight=110``, ``drop stool``; and the text that it gives."""

from __future__ import annotations

import re
from collections.abc import Sequence

from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import clean
from boxwright.cli.worded import HOW, VERBS, Act, act_of, gathered, new_thing_of, path_of, place_of, thing_of
from boxwright.finding import Problem
from boxwright.records import dataclass
from boxwright.rig.add import add_thing, add_value, copy_thing
from boxwright.rig.change import Change
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.document import NAMED, Document
from boxwright.rig.references import references
from boxwright.rig.remove import remove
from boxwright.rig.rename import rename
from boxwright.rig.splice import apply, splice, tree_at
from boxwright.study.bench import edited_by
from boxwright.study.moves import Edit
from boxwright.study.rewritten import rewritten, taken_apart
from boxwright.units import CannotRead, HeaderUnits, read_exact

_STEP = re.compile(r"^(.+?\.[A-Za-z_]+)\s*([+\u2212-])\s*(.+)$")
PLACES = ("x", "side", "z")
MOST_NAMED = 4


@dataclass(frozen=True, slots=True)
class Written:
    """One edit carried out: the path, the text before (None where there was none) and after.

    ``is_new`` says that a thing of its own came with it, which need not be complete yet.
    """

    path: str
    before: str | None
    after: str
    is_new: bool = False


@dataclass(frozen=True, slots=True)
class Edited:
    """A rig text with edits made in memory, what was written where, and what should be said of it.

    ``dangling`` is one sentence for each place that names a thing which is no longer there.
    """

    reading: Reading
    written: tuple[Written, ...]
    says: tuple[str, ...] = ()
    dangling: tuple[str, ...] = ()


def edited(reading: Reading, typed: Sequence[str]) -> Edited:
    """Return a rig with every typed edit made, one after the other; says in one sentence which cannot be."""
    if not typed:
        raise NothingAsked(f"no edit was named; {HOW}")
    document, written, says = reading.document, list[Written](), list[str]()
    dropped: list[tuple[str, str]] = []
    for text in gathered(typed):
        act = act_of(text)
        if act is None:
            document, one = _valued(document, text, reading.rig.header.units)
            written.append(one)
            continue
        if act.verb == "drop":
            path = place_of(document, act.what)
            dropped += [thing for thing in document.numbers if path == f"{thing[0]}[{thing[1]}]"]
        document, one, told = _acted(document, act)
        written.append(one)
        says += told
    dangling = [sentence for thing in dropped if thing not in document.numbers for sentence in _naming(document, thing)]
    return Edited(Composer().compose(document), tuple(written), tuple(says), tuple(dangling))


def _naming(document: Document, thing: tuple[str, str]) -> list[str]:
    """Return a sentence about what still names a thing that is gone, and the edits that would clear it."""
    found = references(document, *thing)
    if not found:
        return []
    ways = [f"drop {one.path.partition('.')[0] if one.path.startswith('straps') else one.path}" for one in found]
    shown = ", ".join(dict.fromkeys(one.path for one in found[:MOST_NAMED]))
    more = f" and {len(found) - MOST_NAMED} more" if len(found) > MOST_NAMED else ""
    return [f"{thing[1]} is still named by {shown}{more}; in the same step, change that or take it out: {ways[0]}"]


def _valued(document: Document, text: str, header: HeaderUnits) -> tuple[Document, Written]:
    """Return the document with one value written, and what was written."""
    return _replaced(document, *_understood(document, text, header))


def _replaced(document: Document, path: str, value: str) -> tuple[Document, Written]:
    """Return the document with a value put in place of another or of none, and what was written."""
    _refuse_where_damaged(document, path)
    before = tree_at(document, path)
    if document.extent(path, exact=True) is None:
        after = _done(add_value(document, path, value)).document
    else:
        made = splice(document, path, value)
        if isinstance(made, Problem):
            raise NothingAsked(f"line {made.line}: {clean(made.says)}")
        after = apply(document, [made])
    return after, Written(path, before if isinstance(before, str) else None, value)


def _acted(document: Document, act: Act) -> tuple[Document, Written, tuple[str, ...]]:
    """Return the document with an edit in words carried out, what was done, and what should be said of it."""
    if act.verb == "drop":
        path = place_of(document, act.what)
        _refuse_where_damaged(document, path)
        before = tree_at(document, path)
        done = _done(remove(document, path))
        return done.document, Written(path, before if isinstance(before, str) else "there", "taken out"), ()
    if act.verb == "add" and act.link == "to":
        path = path_of(document, act.other)
        there = tree_at(document, path)
        if path.endswith(".out") and not isinstance(there, tuple):
            _refuse_where_damaged(document, path)
            joined = edited_by(document, [Edit(path, act.what)])
            if joined is None:
                raise NothingAsked(f'"{clean(act.what)}" cannot be added to "{clean(path)}"; {VERBS["add"]}')
            return joined, Written(path, there if isinstance(there, str) else None, act.what), ()
        if not isinstance(there, tuple):
            raise NothingAsked(f'"{clean(path)}" is no list in brackets to add to; {VERBS["add"]}')
        _refuse_where_damaged(document, path)
        return _done(add_value(document, f"{path}[new]", act.what)).document, Written(path, None, act.what), ()
    if act.verb == "add":
        section, name = new_thing_of(act.what)
        if name == act.what and "." in name:
            sections = ", ".join(sorted(NAMED))
            raise NothingAsked(f'no section of "{clean(name)}" is known; those that hold things are {sections}')
        after = thing_of(document, act.other)[1] if act.link else ""
        done = _done(add_thing(document, section, name, {}, after))
        return done.document, Written(f"{section}[{name}]", None, "a new thing", is_new=True), ()
    section, name = thing_of(document, act.what)
    new = new_thing_of(act.other)[1]
    path = f"{section}[{name}]"
    _refuse_where_damaged(document, path)
    if act.verb == "copy":
        done = _done(copy_thing(document, section, name, new))
        return done.document, Written(f"{section}[{new}]", None, f"a copy of {name}", is_new=True), ()
    count = len(references(document, section, name))
    done = _done(rename(document, section, name, new))
    places = f", and in {count} place{'s' if count > 1 else ''} that name it" if count else ""
    return done.document, Written(path, name, f"{new}{places}"), done.says


def _done(made: Change | Problem) -> Change:
    if isinstance(made, Problem):
        raise NothingAsked(f"line {made.line}: {clean(made.says)}")
    return made


def _understood(document: Document, text: str, header: HeaderUnits) -> tuple[str, str]:
    """Return the path and the new text of a typed edit."""
    name, equals, value = text.partition("=")
    if equals:
        if not value.strip():
            raise NothingAsked(f'"{clean(text)}" says no new value; {HOW}')
        return path_of(document, name.strip()), value.strip()
    step = _STEP.match(text.strip())
    if step is None:
        raise NothingAsked(f'cannot read the edit "{clean(text)}"; {HOW}')
    path = path_of(document, step[1].strip())
    return path, _stepped(document, path, step[2], step[3], header)


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
    return f"+{moved}" if is_relative else moved


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
