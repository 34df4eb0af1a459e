"""The edits that have words: add, copy, rename and drop, as one typed text each or as words one after the other."""

from __future__ import annotations

import re
import shlex
from collections.abc import Sequence

from boxwright.cli.rig_file import NothingAsked, nearest
from boxwright.cli.screen import clean
from boxwright.records import dataclass
from boxwright.rig.document import NAMED, TOP_KEYS, Document
from boxwright.rig.splice import tree_at

VERBS = {
    "add": 'write "add parts.stool", "add parts.stool after bench" or "add outboard to loads[night].out"',
    "copy": 'write "copy bench to bench-2"',
    "rename": 'write "rename bunk to wall-bed"',
    "drop": 'write "drop stool", "drop bench.note" or "drop loads[night].out.boat"',
}
"""The words an edit may begin with, and how it goes on."""

HOW = 'write it as "bunk.x+6in", "bunk.x=84", "add parts.stool", "copy bench to bench-2", "rename bunk to wall-bed" or '
HOW += '"drop stool"'
_TWO = {"copy": ("to",), "rename": ("to",), "add": ("after", "to")}


@dataclass(frozen=True, slots=True)
class Act:
    """One edit in words: what is done, to what, and the word between with what follows it, empty if there is none."""

    verb: str
    what: str
    link: str = ""
    other: str = ""


def gathered(typed: Sequence[str]) -> list[str]:
    """Return the typed words as one text for each edit: words behind a bare ``add`` or ``drop`` belong to it."""
    texts: list[str] = []
    words = list(typed)
    while words:
        word = words.pop(0)
        if word.strip() in VERBS and words:
            verb = word.strip()
            pieces = [verb, words.pop(0)]
            if len(words) > 1 and words[0].strip() in _TWO.get(verb, ()):
                pieces += [words.pop(0), words.pop(0)]
            word = " ".join(pieces)
        texts.append(word)
    return texts


def at_the_shell(edit: str) -> str:
    """Return an edit as it is typed at a shell: as it is, in double quotes, or quoted as its own quotes ask for."""
    if re.fullmatch(r"[\w.=+-]+", edit):
        return edit
    return shlex.quote(edit) if re.search(r'["$`\\!]', edit) else f'"{edit}"'


def act_of(text: str) -> Act | None:
    """Return the edit that a text says in words; None for one that says a value or a step."""
    verb, _, rest = text.strip().partition(" ")
    if verb not in VERBS:
        return None
    rest = rest.strip()
    for link in _TWO.get(verb, ()):
        found = re.fullmatch(rf"(.+?)\s+{link}\s+(.+)", rest)
        if found:
            return Act(verb, found[1], link, found[2])
    if not rest or verb in ("copy", "rename"):
        raise NothingAsked(f'cannot read the edit "{clean(text)}"; {VERBS[verb]}')
    return Act(verb, rest)


def thing_of(document: Document, name: str) -> tuple[str, str]:
    """Return section and name of a thing that is there, typed as ``bunk``, ``parts.bunk`` or ``parts[bunk]``."""
    found = _thing(document, name)
    if found is None:
        names = [one for section, one in document.numbers if section]
        guess = nearest(name.partition(".")[0], names)
        meant = f'; did you mean "{clean(guess)}"?' if guess else f"; {HOW}"
        raise NothingAsked(f'there is nothing named "{clean(name)}" in this file{meant}')
    return found


def new_thing_of(name: str) -> tuple[str, str]:
    """Return section and name of a thing typed with its section, or a part; it need not be there."""
    for section in NAMED:
        if name.startswith(f"{section}["):
            return section, name[len(section) + 1 :].removesuffix("]")
        if name.startswith(f"{section}."):
            return section, name[len(section) + 1 :]
    return "parts", name


def path_of(document: Document, name: str) -> str:
    """Return the rig path of a typed one: ``bunk.x`` is the part's, or that of the one thing with that name."""
    cut = len(name)
    while cut > 0:
        found = _thing(document, name[:cut])
        if found is not None and cut < len(name):
            return f"{found[0]}[{found[1]}]{name[cut:]}"
        cut = max(name.rfind(".", 0, cut), name.rfind("[", 0, cut), 0)
    first = re.split(r"[.\[]", name)[0]
    if first in TOP_KEYS - NAMED and (name == first or document.extent(first) is not None or "." in name):
        return name
    if "[" in name or first in NAMED:
        raise NothingAsked(f'there is no "{clean(name)}" in this file; {HOW}')
    if _thing(document, name) is not None:
        raise NothingAsked(f'which value of "{clean(name)}"? {HOW}')
    names = [one for section, one in document.numbers if section]
    guess = nearest(first, names)
    rest = name[len(first) :]
    meant = f'; did you mean "{clean(guess)}{clean(rest)}"?' if guess else f"; {HOW}"
    raise NothingAsked(f'there is nothing named "{clean(first)}" in this file{meant}')


def place_of(document: Document, name: str) -> str:
    """Return the rig path of what is to be taken out: a thing, a key, or an element of a list by its own text."""
    if _thing(document, name) is not None:
        section, own = thing_of(document, name)
        return f"{section}[{own}]"
    path = name if name in NAMED else path_of(document, name)
    if document.extent(path, exact=True) is not None:
        return path
    if path in NAMED:
        return path
    parent, _, last = path.rpartition(".")
    elements = tree_at(document, parent) if parent else None
    if isinstance(elements, tuple) and last in elements:
        return f"{parent}[{elements.index(last)}]"
    raise NothingAsked(f'there is no "{clean(path)}" in this file to take out; {VERBS["drop"]}')


def _thing(document: Document, name: str) -> tuple[str, str] | None:
    """Return section and name of a typed thing, None where it is none; one name in several sections is refused."""
    section, own = new_thing_of(name)
    if (section, own) in document.numbers:
        return section, own
    if own != name:
        return None
    homes = [one for one in sorted(NAMED) if (one, name) in document.numbers]
    if len(homes) > 1:
        ways = " or ".join(f"{one}[{name}]" for one in homes)
        raise NothingAsked(f'"{clean(name)}" is the name of several things; write {clean(ways)}')
    return (homes[0], name) if homes else None
