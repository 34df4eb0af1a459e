"""Gives a thing of a rig text another name, and every place that names it with it, as one change."""

from __future__ import annotations

from collections.abc import Mapping

from boxwright.finding import Problem
from boxwright.rig.change import Change, name_refused, problem_at, proved, steps_of, unsound, with_value
from boxwright.rig.document import Document, Tree
from boxwright.rig.references import Reference, is_ambiguous, references
from boxwright.rig.splice import Splice
from boxwright.rig.walk import FREE_TEXT, quoted, shortened
from boxwright.rig.writing import comments_of, key_end, key_written, written

RESERVED = frozenset({"all", "none", "unknown", "out", "studs", "bows", "unplanned", "never", "later"})
"""Words that mean something of their own where a name may stand."""


def rename(document: Document, section: str, name: str, new: str) -> Change | Problem:
    """Return the change that renames a thing and every place that names it; words in remarks stay, and are told."""
    number = document.numbers.get((section, name))
    if number is None:
        return Problem(1, 1, section, f'there is no "{shortened(name)}" under {shortened(section)} to rename')
    path = f"{section}[{name}]"
    refused = unsound(document) or name_refused(document, section, new)
    if refused is not None:
        return refused
    if new in RESERVED:
        return problem_at(document, path, f'"{new}" means something of its own; choose another name')
    found = references(document, section, name)
    if found and (is_ambiguous(document, section, name) or is_ambiguous(document, section, new)):
        says = f"{name} or {new} is the name of something in another section too; rename that first"
        return problem_at(document, path, says)
    own = _key_splice(document, document.starts[number], document.pieces[number].written, new)
    splices = [own, *(_renamed(document, one, new) for one in found)]
    if any(one is None for one in splices):
        return problem_at(document, path, f'a place that names "{name}" is written in a way that is not followed')
    tree = _with_key(document.tree, [section, name], new)
    for one in found:
        tree = _followed(document, tree, one, section, name, new)
    assert isinstance(tree, Mapping)
    done = [one for one in splices if one is not None]
    return proved(document, done, tree, path, _left_as_they_are(document, name, found))


def _key_splice(document: Document, at: int, name: str, new: str) -> Splice | None:
    """Return the splice that writes a key anew; blanks that line its value up with others are kept in line."""
    text, end = document.text, key_end(document.text, at, name)
    if end is None:
        return None
    key = key_written(new)
    colon = text.index(":", end)
    value = colon + 1
    while value < len(text) and text[value] == " ":
        value += 1
    blanks = value - colon - 1
    if blanks < 2 or value == len(text) or text[value] in "\r\n#":
        return Splice(at, end, key)
    kept = max(1, blanks - (len(key) - (end - at)))
    return Splice(at, value, f"{key}{text[end : colon + 1]}{' ' * kept}")


def _renamed(document: Document, one: Reference, new: str) -> Splice | None:
    """Return the splice that names a thing anew in one place."""
    extent = document.extent(one.path, exact=True)
    if extent is None:
        return None
    if one.is_key:
        end = key_end(document.text, extent.key, one.text)
        return None if end is None else Splice(extent.key, end, key_written(new))
    source = document.text[extent.value : extent.end]
    text = one.text[: one.start] + new + one.text[one.end :]
    if source == one.text:
        bare = written(text)
        if bare == text:
            return Splice(extent.value + one.start, extent.value + one.end, new)
        return Splice(extent.value, extent.end, bare)
    return Splice(extent.value, extent.end, quoted(text))


def _followed(document: Document, tree: Tree, one: Reference, section: str, name: str, new: str) -> Tree:
    """Return the tree with one place that names a thing named anew; the place may lie in the renamed thing itself."""
    steps = steps_of(document, one.path) or []
    if steps[:2] == [section, name]:
        steps[1] = new
    if one.is_key:
        return _with_key(tree, steps, new)
    return with_value(tree, steps, one.text[: one.start] + new + one.text[one.end :])


def _with_key(tree: Tree, steps: list[str], new: str) -> Tree:
    """Return a tree in which the last of some steps has another name, in the same place."""
    assert isinstance(tree, Mapping)
    step, rest = steps[0], steps[1:]
    if not rest:
        return {new if key == step else key: value for key, value in tree.items()}
    return {key: _with_key(value, rest, new) if key == step else value for key, value in tree.items()}


def _left_as_they_are(document: Document, name: str, found: tuple[Reference, ...]) -> tuple[str, ...]:
    """Return what is said of remarks and comments that hold the name and stay as they are."""
    lines: set[int] = set()
    paths = {one.path for one in found}
    for piece in document.pieces:
        for suffix in piece.extents:
            path = f"{piece.path}{suffix}"
            if suffix.rpartition(".")[2].partition("[")[0] not in FREE_TEXT or path in paths:
                continue
            extent = document.extent(path, exact=True)
            if extent is not None and _holds(document.text[extent.value : extent.end], name):
                lines.add(document.spot(path).line)
    for at, comment in comments_of(document.text):
        if _holds(comment, name):
            lines.add(document.text.count("\n", 0, at) + 1)
    if not lines:
        return ()
    shown = ", ".join(str(line) for line in sorted(lines)[:8])
    return (f'remarks that hold the word "{name}" stay as they are: line{"s" if len(lines) > 1 else ""} {shown}',)


def _holds(text: str, name: str) -> bool:
    """Return whether a text holds a name as a word of its own."""
    at = text.find(name)
    while at >= 0:
        before, after = text[at - 1 : at], text[at + len(name) : at + len(name) + 1]
        if not (before.isalnum() or before in ("-", "_")) and not (after.isalnum() or after in ("-", "_")):
            return True
        at = text.find(name, at + 1)
    return False
