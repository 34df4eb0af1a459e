"""Takes from a rig text: a named thing, a key with its value, an element of a list, each with its own comment only."""

from __future__ import annotations

import re
from collections.abc import Mapping

from boxwright.finding import Problem
from boxwright.rig.change import Change, children, problem_at, proved, steps_of, unsound, without_value
from boxwright.rig.document import NAMED, Document, Extent, Tree
from boxwright.rig.references import references
from boxwright.rig.splice import Splice, tree_at, value_stretch
from boxwright.rig.walk import shortened
from boxwright.rig.writing import is_blank, is_remark, line_end, line_start, next_line

COMMA = re.compile(r"[ \t]*,")
GAP = re.compile(r"[ \t]*,[ \t]*\Z")


def remove(document: Document, path: str) -> Change | Problem:
    """Return the change that takes out what stands at a rig path: a thing, a key, or an element of a list.

    Comments and blank lines around it stay; what names a thing that goes is said.
    """
    refused = unsound(document)
    if refused is not None:
        return refused
    steps, extent = steps_of(document, path), document.extent(path, exact=True)
    if steps is None or extent is None:
        return problem_at(document, path, f'there is no "{shortened(path)}" in this text to take out')
    if len(steps) == 1:
        says = f'"{path}" is a whole section; take out its things one by one' if path in NAMED else (
            f'"{path}" stands at the top of the file; take out what is in it, or write another value')  # fmt: skip
        return problem_at(document, path, says)
    parent = path.removesuffix(f"[{steps[-1]}]") if path.endswith("]") else path.removesuffix(f".{steps[-1]}")
    siblings = children(document, parent)
    outer = document.extent(parent, exact=True)
    is_braced = outer is not None and document.text[outer.value : outer.value + 1] in ("{", "[")
    if is_braced:
        splices = _from_braces(document, siblings, path)
    else:
        splices = _lines(document.text, extent, _end(document, path, extent))
    wanted = without_value(document.tree, steps)
    assert isinstance(wanted, Mapping)
    if not is_braced and len(siblings) == 1 and parent not in document.sections:
        wanted = _emptied(wanted, steps[:-1])
    return proved(document, splices, wanted, path, _named_by(document, steps))


def _named_by(document: Document, steps: list[str]) -> tuple[str, ...]:
    """Return a sentence for each place that names a thing that goes."""
    if len(steps) != 2 or steps[0] not in NAMED:
        return ()
    section, name = steps
    own = f"{section}[{name}]"
    return tuple(
        f"{one.path} names {name}" for one in references(document, section, name) if not one.path.startswith(own)
    )


def _emptied(tree: Tree, steps: list[str]) -> Mapping[str, Tree]:
    """Return a tree in which a group that was written line by line and has lost its last key has no value."""
    assert isinstance(tree, Mapping)
    step, rest = steps[0], steps[1:]
    return {key: (_emptied(value, rest) if rest else None) if key == step else value for key, value in tree.items()}


def _end(document: Document, path: str, extent: Extent) -> int:
    """Return where what stands at a path ends, its colon included where it has no value."""
    if tree_at(document, path) is not None:
        return extent.end
    start, _, lead = value_stretch(document, extent, None)
    return extent.end if lead.startswith(":") else start


def _lines(text: str, extent: Extent, end: int) -> list[Splice]:
    """Return the splice that takes out whole lines, from that of the key to the last of the value."""
    start = line_start(text, extent.key)
    if not is_blank(re.sub(r"-(?= )", " ", text[start : extent.key])):
        start = extent.key
    stop = next_line(text, end)
    if stop == line_end(text, end) and start > 0:  # the last line of a text without a line break behind it
        before = start - (2 if text[:start].endswith("\r\n") else 1 if text[start - 1] in "\r\n" else 0)
        return [Splice(before, stop, "")]
    return [Splice(start, stop, "")]


def _from_braces(document: Document, siblings: list[tuple[str, Extent]], path: str) -> list[Splice]:
    """Return the splices that take one of the members of braces or brackets out, with one comma."""
    text = document.text
    number = next(index for index, (where, _) in enumerate(siblings) if where == path)
    extent = siblings[number][1]
    start, end = extent.key, _end(document, path, extent)
    comma = COMMA.match(text, end)
    if number > 0:
        before = siblings[number - 1]
        previous = _end(document, *before)
        if GAP.fullmatch(text, previous, start):
            return [Splice(previous, end, "")]
    elif comma is not None and len(siblings) > 1 and GAP.fullmatch(text, end, siblings[1][1].key):
        return [Splice(start, siblings[1][1].key, "")]
    behind = comma.end() if comma is not None else end
    at = line_end(text, behind)
    is_alone = is_blank(text[line_start(text, start) : start]) and is_remark(text[behind:at])
    whole = Splice(line_start(text, start), next_line(text, behind), "") if is_alone else Splice(start, behind, "")
    if comma is not None or number == 0:
        return [whole]
    return [_comma_before(text, _end(document, *siblings[number - 1]), start), whole]


def _comma_before(text: str, start: int, end: int) -> Splice:
    """Return the splice that takes out the comma between two members; a comment between them may hold others."""
    at = start
    while at < end and text[at] != ",":
        at = line_end(text, at) if text[at] == "#" and text[at - 1] in " \t" else at + 1
    return Splice(at, min(at + 1, end), "")
