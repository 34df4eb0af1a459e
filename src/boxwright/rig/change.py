"""A change of the rig text as one step: its splices, proved by reading the new text before anything is done."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from boxwright.finding import Problem
from boxwright.records import dataclass
from boxwright.rig.decode import UNREADABLE
from boxwright.rig.document import NAMED, Document, Extent, Tree
from boxwright.rig.read import edited
from boxwright.rig.splice import Splice
from boxwright.rig.walk import LONGEST, shortened

LONGEST_NAME = 60
_COUNTED = re.compile(r"\d+|(?<=this line) is| and \d+ more are")
"""What of a sentence moves with the lines and their number, and makes no new problem."""


@dataclass(frozen=True, slots=True)
class Change:
    """Splices that belong together, the document with them done, and what should be said with them."""

    splices: tuple[Splice, ...]
    document: Document
    says: tuple[str, ...] = ()


def problem_at(document: Document, path: str, says: str) -> Problem:
    """Return a problem at the place of a rig path."""
    spot = document.spot(path)
    return Problem(spot.line, spot.column, path, says)


def name_refused(document: Document, section: str, name: str) -> Problem | None:
    """Return why a name cannot be given to a new thing of a section, or None where it can."""
    if section not in NAMED:
        says = f'"{shortened(section)}" holds no named things; those that do are {", ".join(sorted(NAMED))}'
        return Problem(1, 1, shortened(section), says)
    shown = shortened(name)
    if not name.strip() or name != name.strip() or len(name) > LONGEST_NAME:
        says = f'"{shown}" is no name; write a word of at most {LONGEST_NAME} letters, such as stool'
    elif UNREADABLE.search(name) or any(letter in name for letter in "\r\n\t[]<>"):
        says = f'"{shown}" holds a letter that no name can hold; write a plain word, such as stool'
    elif (section, name) in document.numbers:
        says = f'there is a "{shown}" under {section} already; choose another name'
    else:
        return None
    return problem_at(document, section, says)


def value_refused(document: Document, path: str, value: Tree) -> Problem | None:
    """Return why a value cannot be written, or None where it can."""
    for text in _texts(value):
        if UNREADABLE.search(text) or "\r" in text:
            return problem_at(document, path, "the text holds a character that cannot be shown; write it without")
        if len(text) > LONGEST:
            says = f"the text is {len(text):,} characters long; write at most {LONGEST:,}"
            return problem_at(document, path, says)
    return None


def _texts(value: Tree) -> list[str]:
    if isinstance(value, Mapping):
        return [*value, *(text for one in value.values() for text in _texts(one))]
    if isinstance(value, tuple):
        return [text for one in value for text in _texts(one)]
    return [] if value is None else [value]


def unsound(document: Document) -> Problem | None:
    """Return why no line can be added to or taken from this text, or None: where it is cut by guessing."""
    if not document.is_damaged:
        return None
    line = document.problems[0].line if document.problems else 1
    return Problem(line, 1, "", f"this file cannot be read as a whole from line {line} on; put that right first")


def proved(
    document: Document, splices: Sequence[Splice], wanted: Mapping[str, Tree], path: str, says: tuple[str, ...] = ()
) -> Change | Problem:
    """Return a change if the text with its splices done reads as wanted, in that order, and nothing new is wrong."""
    after = with_splices(document, splices)
    had = {(problem.path, _COUNTED.sub("", problem.says)) for problem in document.problems}
    if after is None or after.is_damaged or not is_same(after.tree, wanted):
        return problem_at(document, path, "this cannot be written here so that nothing else changes; edit the lines")
    for problem in after.problems:
        if (problem.path, _COUNTED.sub("", problem.says)) not in had:
            return problem_at(document, path, f"this cannot be written here: {problem.says}")
    return Change(tuple(sorted(splices, key=lambda one: one.start)), after, says)


def with_splices(document: Document, splices: Sequence[Splice]) -> Document | None:
    """Return the document with splices done, read once; None where two of them meet."""
    in_order = sorted(splices, key=lambda one: (one.start, one.end))
    if not in_order:
        return document
    pieces, at = [], in_order[0].start
    for one in in_order:
        if one.start < at:
            return None
        pieces += [document.text[at : one.start], one.replacement]
        at = one.end
    return edited(document, in_order[0].start, at, "".join(pieces))


def is_same(one: Tree, other: Tree) -> bool:
    """Return whether two trees are the same with their keys in the same order."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return list(one) == list(other) and all(is_same(one[key], other[key]) for key in one)
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(is_same, one, other))
    return one == other


def with_value(tree: Tree, steps: Sequence[str], value: Tree) -> Tree:
    """Return a tree with the value at some steps set; a key that is new comes last, a number one behind the end too."""
    if not steps:
        return value
    step, rest = steps[0], steps[1:]
    if isinstance(tree, tuple):
        number = int(step)
        return (*tree[:number], with_value(tree[number] if number < len(tree) else None, rest, value),
                *tree[number + 1 :])  # fmt: skip
    held = tree if isinstance(tree, Mapping) else {}
    return {**held, step: with_value(held.get(step), rest, value)}


def without_value(tree: Tree, steps: Sequence[str]) -> Tree:
    """Return a tree without the value at some steps."""
    step, rest = steps[0], steps[1:]
    if isinstance(tree, tuple):
        number = int(step)
        inner = (without_value(tree[number], rest),) if rest else ()
        return (*tree[:number], *inner, *tree[number + 1 :])
    assert isinstance(tree, Mapping)
    if not rest:
        return {key: value for key, value in tree.items() if key != step}
    return {key: without_value(value, rest) if key == step else value for key, value in tree.items()}


def steps_of(document: Document, path: str) -> list[str] | None:
    """Return the keys and numbers that lead from the top of the file to a written path, or None."""
    found = document.find(path)
    if found is None:
        return [path] if path in document.sections else None
    number, suffix = found
    piece = document.pieces[number]
    if suffix and suffix not in piece.extents:
        return None
    steps: list[str] = []
    while suffix:
        start = max((at for at in range(len(suffix)) if suffix[at] in ".[" and suffix[:at] in piece.extents), default=0)
        step = suffix[start + 1 :]
        steps.append(step.removesuffix("]") if suffix[start] == "[" else step)
        suffix = suffix[:start]
    return [*([piece.section] if piece.section else []), piece.name, *steps[::-1]]


def children(document: Document, path: str) -> list[tuple[str, Extent]]:
    """Return what stands directly in the thing at a path: path and place of each, in the order of the text."""
    if path in document.sections:
        names = [piece for piece in document.pieces if piece.section == path]
        found = [(piece.path, document.extent(piece.path, exact=True)) for piece in names]
        return [(where, extent) for where, extent in found if extent is not None]
    at = document.find(path)
    if at is None:
        return []
    number, suffix = at
    start, extents = document.starts[number], document.pieces[number].extents
    inside: list[tuple[str, Extent]] = []
    for one, extent in extents.items():
        if not one.startswith(suffix) or one == suffix or one[len(suffix)] not in ".[":
            continue
        ends = [cut for cut in range(len(suffix) + 1, len(one)) if one[cut] in ".[" and one[:cut] in extents]
        if not ends:
            moved = Extent(extent.key + start, extent.value + start, extent.end + start)
            inside.append((f"{path}{one[len(suffix) :]}", moved))
    return sorted(inside, key=lambda pair: pair[1].key)
