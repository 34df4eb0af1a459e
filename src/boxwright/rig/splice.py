"""Changes rig text by splices: exactly the characters that must change, proved by reading before it is done."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from itertools import pairwise

from boxwright.finding import Problem
from boxwright.records import dataclass
from boxwright.rig.decode import UNREADABLE
from boxwright.rig.document import NAMED, Document, Extent, Tree, parents
from boxwright.rig.read import edited, edited_alone
from boxwright.rig.walk import LONGEST, quoted, shortened
from boxwright.rig.writing import is_blank, key_written, line_break, line_end, line_start


@dataclass(frozen=True, slots=True)
class Splice:
    """A stretch of text (character offsets) and what takes its place."""

    start: int
    end: int
    replacement: str


def splice(document: Document, path: str, value: str) -> Splice | Problem:
    """Return the splice that gives the value at a rig path another text, or the problem that stands in its way.

    The text is written bare if it then reads back as exactly itself, else in double quotes; nothing else may change.
    """
    refusal = _refusal(document, path, value)
    if refusal is not None:
        return refusal
    extent = document.extent(path, exact=True)
    if extent is None:
        return _problem(document, path, f'there is no "{path}" in this text to change; add it first')
    before = tree_at(document, path)
    if isinstance(before, (Mapping, tuple)):
        says = f'"{path}" is not one text but several; change one of them, such as {_first(path, before)}'
        return _problem(document, path, says)
    start, end, lead = value_stretch(document, extent, before)
    return _proved(document, path, value, lambda text: Splice(start, end, lead + text))


def splice_new(document: Document, path: str, value: str) -> Splice | Problem:
    """Return the splice that adds a key with a text to a thing that is there, or the problem that stands in its way."""
    refusal = _refusal(document, path, value)
    if refusal is not None:
        return refusal
    parent, key = _parent_and_key(document, path)
    group, extent = tree_at(document, parent), document.extent(parent, exact=True)
    if extent is None or not key or document.extent(path, exact=True) is not None:
        is_there = document.extent(path, exact=True) is not None
        says = "is there already; change it" if is_there else "cannot be added: there is nothing yet that it belongs to"
        return _problem(document, path, f'"{path}" {says}')
    if "." in key or "[" in key:
        missing = f"{parent}.{key.partition('.')[0].partition('[')[0]}"
        return _problem(document, path, f'"{path}" belongs to "{missing}", which is not there; add that first')
    if group is None:
        start, end, lead = value_stretch(document, extent, None)
        return _proved(document, path, value, lambda text: Splice(start, end, f"{lead}{{{key_written(key)}: {text}}}"))
    if not isinstance(group, Mapping):
        says = f'"{parent}" has a value but no keys; write it as a group in braces to add {key} to it'
        return _problem(document, path, says)
    into = into_braces if document.text.startswith("{", extent.value) else on_new_line
    return _proved(document, path, value, lambda text: into(document, parent, extent, f"{key_written(key)}: {text}"))


def apply(document: Document, splices: Iterable[Splice]) -> Document:
    """Return the document with splices done; their offsets are those of the document as given, and they do not meet."""
    done = sorted(splices, key=lambda one: one.start, reverse=True)
    if any(earlier.end > later.start for later, earlier in pairwise(done)):
        raise ValueError("splices that overlap cannot be applied together")
    for one in done:
        document = edited(document, one.start, one.end, one.replacement)
    return document


def tree_at(document: Document, path: str) -> Tree:
    """Return the tree at a rig path; None where nothing is written or the path leads nowhere."""
    found = document.find(path)
    if found is None:
        return document.tree.get(path) if path in document.sections else None
    number, suffix = found
    piece = document.pieces[number]
    tree = piece.tree
    for step in _steps(piece.extents, suffix):
        if isinstance(tree, Mapping):
            tree = tree.get(step)
        elif isinstance(tree, tuple) and step.isdigit() and int(step) < len(tree):
            tree = tree[int(step)]
        else:
            return None
    return tree


def _steps(extents: Mapping[str, Extent], suffix: str) -> list[str]:
    """Return the keys and numbers a path suffix is made of; the places that were read tell where one key ends."""
    steps: list[str] = []
    end = len(suffix)
    while end > 0:
        start = max((at for at in range(end) if suffix[at] in ".[" and suffix[:at] in extents), default=0)
        steps.append(suffix[start + 1 : end].removesuffix("]") if suffix[start] == "[" else suffix[start + 1 : end])
        end = start
    return steps[::-1]


def _refusal(document: Document, path: str, value: str) -> Problem | None:
    if UNREADABLE.search(value) or "\r" in value.replace("\r\n", "\n"):
        return _problem(document, path, "the text holds a character that cannot be shown; write it without")
    if len(value) > LONGEST:
        return _problem(document, path, f"the text is {len(value):,} characters long; write at most {LONGEST:,}")
    return None


def _problem(document: Document, path: str, says: str) -> Problem:
    spot = document.spot(path)
    return Problem(spot.line, spot.column, path, says)


def _first(path: str, tree: Mapping[str, Tree] | tuple[Tree, ...]) -> str:
    if isinstance(tree, tuple):
        return f"{path}[0]"
    return f"{path}.{next(iter(tree), 'key')}"


def value_stretch(document: Document, extent: Extent, before: Tree) -> tuple[int, int, str]:
    """Return the offsets of a value and what must stand before it; a value not written follows its key's colon."""
    if before is not None:
        return extent.value, extent.end, ""
    at = extent.end
    after = document.text[at : at + 200]
    if after.lstrip(" \t").startswith(":"):
        at += after.index(":") + 1
        rest = document.text[at : at + 200]
        if rest.startswith(" ") and rest.lstrip(" ").startswith((",", "}")):
            return at + 1, at + 1, ""
        return at, at, " "
    return at, at, ": "


def _parent_and_key(document: Document, path: str) -> tuple[str, str]:
    """Return the longest start of a path that is written, and the one key after it."""
    at = path.rfind(".")
    while at > 0:
        if document.extent(path[:at], exact=True) is not None:
            return path[:at], path[at + 1 :]
        at = path.rfind(".", 0, at)
    return "", ""


def into_braces(document: Document, parent: str, extent: Extent, pair: str) -> Splice:
    """Return the splice that puts a pair last into braces, right after the last value there."""
    last = max(_extents_inside(document, parent), key=lambda one: one.end, default=None)
    if last is None:
        return Splice(extent.value + 1, extent.value + 1, pair)
    at = last.end
    if last.value == last.end:
        at, _, _ = value_stretch(document, last, None)
        at = at if ":" in document.text[last.end : at] else last.end
    return Splice(at, at, f", {pair}")


def _extents_inside(document: Document, parent: str) -> list[Extent]:
    """Return the places of all that is written inside the thing at a path, as offsets of the text."""
    found = document.find(parent)
    if found is None:
        return []
    number, suffix = found
    start = document.starts[number]
    inside = [extent for path, extent in document.pieces[number].extents.items() if suffix in parents(path)[1:]]
    return [Extent(extent.key + start, extent.value + start, extent.end + start) for extent in inside]


def on_new_line(document: Document, parent: str, extent: Extent, pair: str) -> Splice:
    """Return the splice that adds a line with a pair under the last line of a group written line by line."""
    text, first = document.text, extent.value
    line = line_start(text, first)
    at = max(one.end for one in [extent, *_extents_inside(document, parent)])
    at = line_end(text, at)
    before = text[line:first]
    return Splice(at, at, line_break(text) + (before if is_blank(before) else " " * (first - line)) + pair)


def _proved(document: Document, path: str, value: str, made: Callable[[str], Splice]) -> Splice | Problem:
    """Return the first way of writing a value that reads back as exactly that value and changes nothing else."""
    wanted = value.replace("\r\n", "\n")
    found = document.find(path)
    is_sound = found is not None and document.pieces[found[0]].alone and not document.is_damaged
    for text in (wanted, quoted(wanted)):
        if "\t" in text:  # within a bare text few other readers take it
            continue
        one = made(text)
        if document.troubled and document.text[one.start : one.end] == text:
            # Written as it stands it would stay the guess that it is now; in quotes it is none.
            continue
        after = edited_alone(document, one.start, one.end, one.replacement)
        if after is None and not (is_sound and not document.troubles):
            after = edited(document, one.start, one.end, one.replacement)
        if after is not None and differs_only_at(document, after, path, wanted):
            return one
    says = f'"{shortened(value)}" cannot be written here so that nothing else changes; edit the line itself'
    return _problem(document, path, says)


def differs_only_at(before: Document, after: Document, path: str, wanted: str) -> bool:
    """Return whether two documents differ in the text at a path, which is as wanted, and in nothing else."""
    if tree_at(after, path) != wanted:
        return False
    old_problems = {(problem.path, problem.says) for problem in before.problems}
    found = after.find(path)
    if found is None or any((problem.path, problem.says) not in old_problems for problem in after.problems):
        return False
    piece = after.pieces[found[0]]
    if list(before.tree) != list(after.tree) or before.numbers.keys() != after.numbers.keys():
        return False
    for section, tree in before.tree.items():
        new = after.tree[section]
        if section in NAMED and isinstance(tree, Mapping) and isinstance(new, Mapping):
            if any(new[name] != old for name, old in tree.items() if (section, name) != (piece.section, piece.name)):
                return False
        elif (piece.section, piece.name) != ("", section) and new != tree:
            return False
    return _without(before, path) == _without(after, path)


def _without(document: Document, path: str) -> tuple[object, ...]:
    """Return all leaves of the piece a path leads into, but for the one at the path and the groups it is in."""
    found = document.find(path)
    if found is None:
        return ()
    number, suffix = found
    flat: list[tuple[str, object]] = []
    _flatten(document.pieces[number].tree, "", document.pieces[number].section == "walls", flat)
    left_out = parents(suffix)
    return tuple(leaf for leaf in flat if leaf[0] not in left_out)


def _flatten(tree: Tree, path: str, is_wall: bool, flat: list[tuple[str, object]]) -> None:
    if isinstance(tree, Mapping):
        flat += [(path, "keys")] if tree else []
        for key, value in tree.items():
            _flatten(value, f"{path}[{key}]" if is_wall and path == ".layers" else f"{path}.{key}", is_wall, flat)
    elif isinstance(tree, tuple):
        flat.append((path, len(tree)))
        for number, value in enumerate(tree):
            _flatten(value, f"{path}[{number}]", is_wall, flat)
    else:
        flat.append((path, tree))
