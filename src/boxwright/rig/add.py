"""Adds to a rig text: a named thing, a copy of one, a key with its value, an element of a list."""

from __future__ import annotations

import re
from collections.abc import Mapping

from boxwright.finding import Problem
from boxwright.rig.change import (
    Change,
    name_refused,
    problem_at,
    proved,
    steps_of,
    unsound,
    value_refused,
    with_value,
)
from boxwright.rig.document import NAMED, TOP_KEYS, Document, Extent, Tree
from boxwright.rig.splice import Splice, into_braces, on_new_line, tree_at, value_stretch
from boxwright.rig.walk import shortened
from boxwright.rig.writing import (
    Manner,
    entry,
    is_blank,
    is_remark,
    key_written,
    line_break,
    line_end,
    line_start,
    manner,
    next_line,
    written,
)

COMMA = re.compile(r"[ \t]*,")
STEP = re.compile(r"\.([^.\[\]]*)|\[([^\]]*)\]")


def add_thing(
    document: Document, section: str, name: str, keys: Mapping[str, Tree], after: str = "", comment: str = ""
) -> Change | Problem:
    """Return the change that adds a named thing to a section, last or after another, written as its neighbours are."""
    path = f"{section}[{name}]"
    refused = unsound(document) or name_refused(document, section, name) or value_refused(document, path, keys)
    if refused is None and not all(key.strip() for key in keys):
        refused = problem_at(document, section, "a key without a name cannot be written; name it, such as weight")
    if refused is None and after and (section, after) not in document.numbers:
        says = f'there is no "{shortened(after)}" under {section} to put it after'
        refused = problem_at(document, section, says)
    if refused is not None:
        return refused
    near = _near(document, section, after)
    how, breaks = manner(document, section, near), line_break(document.text)
    value = _block_of(keys, how, breaks) if how.is_block and keys else written(keys)
    remark = " ".join(comment.split())
    splices = _put(document, section, near, how, entry(how, name, value, breaks, remark))
    return proved(document, splices, _with_thing(document, section, name, keys, after), path)


def copy_thing(document: Document, section: str, name: str, new: str) -> Change | Problem:
    """Return the change that adds a copy of a thing under another name, right after it, without its comment."""
    number = document.numbers.get((section, name))
    if number is None:
        says = f'there is no "{shortened(name)}" under {shortened(section)} to copy'
        return Problem(1, 1, section, says)
    refused = unsound(document) or name_refused(document, section, new)
    if refused is not None:
        return refused
    piece, start, text = document.pieces[number], document.starts[number], document.text
    extent = piece.extents[""]
    how, breaks = manner(document, section, number), line_break(text)
    value = text[start + extent.value : start + extent.end]
    between = text[start : start + extent.value]
    if "\n" in between or "\r" in between:
        value = breaks + text[line_start(text, start + extent.value) : start + extent.end]
        line = f"{key_written(new)}:{value}"
    else:
        line = entry(how, new, value, breaks)
    splices = _put(document, section, number, how, line)
    return proved(document, splices, _with_thing(document, section, new, piece.tree, name), f"{section}[{new}]")


def add_value(document: Document, path: str, value: Tree) -> Change | Problem:
    """Return the change that adds a key with its value, or an element at the end of a list.

    What lies between and is not written yet is added with it: ``reply.was.x`` to a thing that has no ``reply``.
    """
    refused = unsound(document) or value_refused(document, path, value)
    if refused is not None:
        return refused
    parent, missing = _parent_and_missing(document, path)
    if not missing:
        return problem_at(document, path, f'"{shortened(path)}" is there already; change it')
    if any(not step.strip() or step != step.strip() for step in missing):
        return problem_at(document, path, f'"{shortened(path)}" is no path; write it as bunk.weight')
    for step in reversed(missing[1:]):
        value = {step: value}
    if not parent:
        return _add_top(document, missing[0], value)
    steps, group, extent = steps_of(document, parent), tree_at(document, parent), document.extent(parent, exact=True)
    if steps is None or extent is None or parent in document.sections:
        return problem_at(document, path, f'"{shortened(path)}" has nothing yet that it belongs to; add that first')
    if isinstance(group, str):
        says = f'"{parent}" has a value but no keys; write it as a group in braces to add {missing[0]} to it, or take '
        says += f"it out and write its keys in one step: drop {parent}, then {path}=.."
        return problem_at(document, path, says)
    if isinstance(group, tuple):
        missing[0] = str(len(group))
    wanted = with_value(document.tree, [*steps, missing[0]], value)
    assert isinstance(wanted, Mapping)
    return proved(document, _put_inside(document, parent, extent, group, missing[0], value), wanted, path)


def _near(document: Document, section: str, after: str) -> int | None:
    """Return the number of the thing a new one comes after: the one named, or the last of the section."""
    if after:
        return document.numbers[section, after]
    return max((number for number, piece in enumerate(document.pieces) if piece.section == section), default=None)


def _with_thing(document: Document, section: str, name: str, keys: Tree, after: str) -> Mapping[str, Tree]:
    """Return the tree with a thing added in its place."""
    held = document.tree.get(section)
    held = held if isinstance(held, Mapping) else {}
    things: dict[str, Tree] = {}
    for one, value in held.items():
        things[one] = value
        if one == after:
            things[name] = keys
    things.setdefault(name, keys)
    return {**document.tree, section: things}


def _block_of(keys: Mapping[str, Tree], how: Manner, breaks: str) -> str:
    """Return the keys of a thing as lines of their own; what is inside them stays on their line."""
    return "".join(f"{breaks}{how.inner}{key_written(key)}: {written(value, is_block=True)}"
                   for key, value in keys.items())  # fmt: skip


def _put(document: Document, section: str, near: int | None, how: Manner, line: str) -> list[Splice]:
    """Return the splices that put the line of a thing after another, or into a section that is empty or missing."""
    text, breaks, extent = document.text, line_break(document.text), document.sections.get(section)
    if extent is None:
        return [_at_end(text, f"{section}:{breaks}{how.indent}{line}")]
    if near is not None:
        if text.startswith("{", extent.value):
            return _among(document, near, how, line)
        at = line_end(text, document.starts[near] + document.pieces[near].length)
        return [Splice(at, at, f"{breaks}{how.indent}{line}")]
    if text.startswith("{", extent.value):
        return [Splice(extent.value + 1, extent.value + 1, line)]
    at = line_end(text, extent.end)
    while (start := next_line(text, at)) > at and _is_indented_comment(text[start : line_end(text, start)]):
        at = line_end(text, start)
    return [Splice(at, at, f"{breaks}{how.indent}{line}")]


def _is_indented_comment(line: str) -> bool:
    return line[:1] in (" ", "\t") and line.lstrip(" \t").startswith("#")


def _at_end(text: str, lines: str) -> Splice:
    """Return the splice that puts lines last, behind a blank line; a text without a last line break stays so."""
    breaks = line_break(text)
    has_text, is_ended = bool(text.strip("\ufeff")), text.endswith(("\n", "\r"))
    lead = ("" if is_ended else breaks) + breaks if has_text else ""
    return Splice(len(text), len(text), f"{lead}{lines}{breaks if is_ended or not has_text else ''}")


def _among(document: Document, near: int, how: Manner, line: str) -> list[Splice]:
    """Return the splices that put a thing after another inside the braces of a section."""
    text, piece, start = document.text, document.pieces[near], document.starts[near]
    own = piece.extents[""]
    end = start + own.end
    if piece.tree is None:
        end, _, _ = value_stretch(document, Extent(start + own.key, start + own.value, end), None)
    comma = COMMA.match(text, end)
    behind = comma.end() if comma else end
    at = line_end(text, behind)
    if is_blank(text[line_start(text, start) : start]) and is_remark(text[behind:at]):
        last = Splice(at, at, f"{line_break(text)}{how.indent}{line}{',' if comma else ''}")
        return [last] if comma else [Splice(end, end, ","), last]
    return [Splice(end, end, f", {line}")]


def _put_inside(document: Document, parent: str, extent: Extent, group: Tree, key: str, value: Tree) -> list[Splice]:
    """Return the splice that puts a pair, or an element, last into what is written at a path."""
    is_list = isinstance(group, tuple)
    if group is None:
        start, end, lead = value_stretch(document, extent, None)
        return [Splice(start, end, f"{lead}{{{key_written(key)}: {written(value)}}}")]
    is_braced = document.text.startswith("[" if is_list else "{", extent.value)
    text = written(value, is_block=not is_braced and not is_list)
    pair = text if is_list else f"{key_written(key)}: {text}"
    if is_braced:
        return [into_braces(document, parent, extent, pair)]
    return [on_new_line(document, parent, extent, f"- {pair}" if is_list else pair)]


def _parent_and_missing(document: Document, path: str) -> tuple[str, list[str]]:
    """Return the longest start of a path that is written, and the keys behind it that are not."""
    at = len(path)
    while at > 0 and document.extent(path[:at], exact=True) is None:
        at = max(path.rfind(".", 0, at), path.rfind("[", 0, at), 0)
    missing = STEP.findall(path[at:] if at else f".{path}")
    return path[:at], [plain or bracketed for plain, bracketed in missing]


def _add_top(document: Document, key: str, value: Tree) -> Change | Problem:
    """Return the change that adds a key at the top of the file, on a line of its own at the end."""
    if key in NAMED or key not in TOP_KEYS:
        says = f"{key} holds things by name; add one of them" if key in NAMED else f'no key "{shortened(key)}" is known'
        return Problem(1, 1, key, says)
    splice = _at_end(document.text, f"{key}: {written(value, is_block=True)}")
    return proved(document, [splice], {**document.tree, key: value}, key)
