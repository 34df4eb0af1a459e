"""Goes through the events of the YAML parser, once, and makes pieces of them: text trees with their places.

Nothing is constructed: every scalar stays its text. Whatever YAML offers beyond texts, lists and keys with values
(aliases, tags, merge keys, lists as keys) is refused with a problem, and the rest is read.
"""

from __future__ import annotations

import re
from collections.abc import Container

from boxwright.rig.document import Extent, Piece, Tree, Trouble
from boxwright.rig.events import ALIAS, GROUP, GROUP_END, LIST, LIST_END, SCALAR, Broken, Parsed, is_nothing, parsed

DEEPEST = 12
LONGEST = 2_000
FREE_TEXT = frozenset({"note", "now", "what", "how"})
"""Keys whose value is the builder's own words."""

TO_LINE_END = re.compile(r"[ \t]*:?[ \t]*(?:(?<![^ \t:])#[^\r\n]*)?(?=[\r\n]|\Z)")
UNSHOWN = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff]")
GLUED = re.compile(r"([^\s:=]+)\s*[:=]\s*(\S.*)")
SPACED = re.compile(r"([^\s:=]+)\s+(\S.*)")
SWALLOWED = re.compile(r"[\r\n]( *)[^\s#\"'{}\[\],:][^\r\n{}]{0,200}?:(?: |[\r\n]|\{)")


def quoted(text: str) -> str:
    """Return a text as a double-quoted YAML scalar on one line."""
    plain = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n").replace("\t", "\\t")
    return f'"{plain}"'


def shortened(text: str) -> str:
    """Return a text short enough to stand in a sentence."""
    one_line = " ".join(text.split())
    return one_line if len(one_line) <= 80 else one_line[:77] + "..."


def no_value(key: str) -> str:
    """Return what is said of a key in braces behind which nothing is written."""
    return f"{key} has no value; it is unknown until you write it"


Pair = tuple[Parsed, Parsed]
"""A key and the first event of its value, read ahead."""


TOO_DEEP = f"things are nested more than {DEEPEST} deep here; what is deeper was left out; write it with fewer brackets"


class Walk:
    """One pass over one text; offsets are those of this text, extents relative to the piece being read."""

    def __init__(self, text: str, known_keys: frozenset[str]) -> None:
        self.text = text
        self.known_keys = known_keys
        self.get = parsed(text)
        self.section = ""
        self.origin = self.end = self.column = self.line = 0
        self.alone = True
        self.extents: dict[str, Extent] = {}
        self.troubles: list[Trouble] = []
        self.numbers: dict[str, int] = {}

    def trouble(self, at: int, path: str, says: str, troubled: bool = True) -> None:
        """Keep a problem of the piece being read."""
        self.troubles.append(Trouble(at - self.origin, path, says, troubled))

    def begin(self, section: str, key: Parsed) -> None:
        """Start a piece at its key."""
        self.section, self.origin, self.end = section, key.start_mark.index, key.end_mark.index
        self.column, self.line = key.start_mark.column, key.start_mark.line
        self.alone, self.extents, self.troubles = True, {}, []

    def piece(self, section: str, key: Parsed, value: Parsed, name: str, first: Pair | None = None) -> Piece:
        """Read the value of a key and return the piece they are."""
        self.begin(section, key)
        self.refuse_marks(key, "")
        tree = self.member("", self.origin, value, 2 if section else 1, first)
        return self.finished(section, key.value, name, tree)

    def finished(self, section: str, written: str, name: str, tree: Tree) -> Piece:
        """Return the piece that was read since `begin`."""
        rest = TO_LINE_END.match(self.text, self.end)
        before = self.text[self.origin - self.column : self.origin]
        alone = self.alone and rest is not None and before == " " * self.column and name == written
        end = rest.end() if rest is not None else self.end
        return Piece(
            section, written, name, tree, self.extents, tuple(self.troubles), self.column, end - self.origin, alone
        )

    def member(self, path: str, key_at: int, event: Parsed, depth: int, first: Pair | None = None) -> Tree:
        """Return the tree of a value and keep its place; a value that is not written stands at the end of its key."""
        tree = self.value(event, path, depth, first)
        start = self.end if tree is None else event.start_mark.index
        origin = self.origin
        self.extents[path] = Extent(key_at - origin, start - origin, self.end - origin)
        return tree

    def value(self, event: Parsed, path: str, depth: int, first: Pair | None = None) -> Tree:
        """Return the tree of the value that begins with an event."""
        kind = event.__class__
        if kind is SCALAR:
            return self.scalar(event, path)
        if kind is ALIAS:
            return self.alias(event, path)
        if depth >= DEEPEST:
            raise Broken(event.start_mark.index, deep=True)
        self.refuse_marks(event, path)
        if kind is GROUP:
            return self.mapping(event, path, depth, first)
        return self.sequence(event, path, depth)

    def scalar(self, event: Parsed, path: str) -> Tree:
        """Return the text of a scalar, or None where nothing is written."""
        start, end = event.start_mark.index, event.end_mark.index
        text, style = event.value, event.style
        if event.tag is not None or event.anchor is not None:
            text = self.text[start:end].strip()
            self.say_text_as_written(start, path, text, f'the "{text[:1]}" it begins with has a meaning of its own')
        elif style:
            end = self.check_quoted(event, start, end)
            if style == '"' and UNSHOWN.search(text):
                text = UNSHOWN.sub(" ", text)
                self.trouble(start, path, "a character that cannot be shown was read as a space; delete it")
        elif not text:
            return None
        self.end = end
        if len(text) > LONGEST:
            says = f"this text is {len(text):,} characters long and was left out; write at most {LONGEST:,}"
            self.trouble(start, path, says)
            return None
        return text

    def check_quoted(self, event: Parsed, start: int, end: int) -> int:
        """Return the end of a quoted or block text; refuse one that has swallowed the start of another line's key."""
        if event.style in ("|", ">"):
            self.alone = False
            return start + len(self.text[start:end].rstrip())
        if event.end_mark.line != event.start_mark.line:
            for found in SWALLOWED.finditer(self.text, start, end):
                if len(found.group(1)) <= self.column:
                    raise Broken(start)
        return end

    def say_text_as_written(self, at: int, path: str, text: str, why: str) -> None:
        """Keep the problem of a text that was taken although YAML reads it otherwise."""
        key = path.rpartition(".")[2] or "note"
        text = shortened(text)
        self.trouble(at, path, f"{why}; taken as the text {text}; write it as {key}: {quoted(text)}")

    def alias(self, event: Parsed, path: str) -> Tree:
        """Refuse a reference to another value."""
        start, self.end = event.start_mark.index, event.end_mark.index
        says = f'"*{event.anchor}" refers to another line, which is not read; write the value itself, or quotes'
        self.trouble(start, path, says)
        return None

    def refuse_marks(self, event: Parsed, path: str) -> None:
        """Refuse the tag or anchor of a key, a list or a group; the thing itself is read."""
        tag, anchor = getattr(event, "tag", None), getattr(event, "anchor", None)
        if tag is not None or anchor is not None:
            self.alone = False
            mark = shortened(tag if tag is not None else f"&{anchor}")
            says = f'the mark "{mark}" has no meaning in a rig file and was left out; delete it'
            self.trouble(event.start_mark.index, path, says)

    def sequence(self, event: Parsed, path: str, depth: int) -> Tree:
        """Return the elements of a list."""
        found: list[Tree] = []
        while (element := self.get()).__class__ is not LIST_END:
            self.end = start = element.start_mark.index
            found.append(self.member(f"{path}[{len(found)}]", start, element, depth + 1))
        if event.flow_style:
            self.end = element.end_mark.index
        return tuple(found)

    def mapping(self, event: Parsed, path: str, depth: int, first: Pair | None = None) -> Tree:
        """Return the keys and values of a group."""
        tree: dict[str, Tree] = {}
        is_flow, last = event.flow_style, ""
        is_named = self.section == "walls" and path == ".layers"
        while True:
            key = first[0] if first else self.get()
            if key.__class__ is GROUP_END:
                break
            if key.__class__ is not SCALAR:
                self.refuse_key(key, path)
                continue
            value = first[1] if first else self.get()
            first = None
            if is_flow:
                self.check_swallowed(key, value)
                if is_nothing(value) and not key.style and key.value not in self.known_keys:
                    mended = self.mended(key, path, last, tree)
                    if mended:
                        last = mended
                        continue
            name, where = key.value, f"{path}[{key.value}]" if is_named else f"{path}.{key.value}"
            if name in tree or key.tag or key.anchor or (name in ("<<", "") and not key.style):
                new_name = self.refused(key, where, tree) if is_named and name in tree else ""
                if not new_name:
                    self.drop(key, value, path)
                    continue
                name, where = new_name, f"{path}[{new_name}]"
            if is_flow and name == "weight" and is_nothing(value):
                self.trouble(key.start_mark.index, where, no_value(name), troubled=False)
            self.end = key.end_mark.index
            tree[name] = self.member(where, key.start_mark.index, value, depth + 1)
            last = name if value.__class__ is SCALAR and not value.style and value.value else ""
        if is_flow:
            self.end = key.end_mark.index
        return tree

    def check_swallowed(self, key: Parsed, value: Parsed) -> None:
        """Refuse a group in braces that has run on into the next item, because a brace was not closed."""
        mark = key.start_mark
        if mark.line > self.line and mark.column <= self.column and value.__class__ is GROUP:
            raise Broken(mark.index)

    def refused(self, key: Parsed, where: str, tree: dict[str, Tree]) -> str:
        """Return the name that the second of two things of one name gets."""
        name = second_name(key.value, tree, self.numbers)
        self.trouble(key.start_mark.index, where, twice_named(key.value, name))
        return name

    def drop(self, key: Parsed, value: Parsed, path: str) -> None:
        """Leave out a key with its value, and say why."""
        start, where = key.start_mark.index, f"{path}.{key.value}" if key.value else path
        self.skip(value)
        if key.value == "<<":
            says = '"<<" takes keys over from another line, which is not read; write the keys themselves'
        elif key.tag or key.anchor:
            mark = shortened(self.text[start : key.end_mark.index])
            says = f'a key cannot begin with "{mark[:1]}"; "{mark}" was left out; write it without, or in quotes'
        elif not key.value:
            says = "a value stands here without its key; it was left out; write the key before the colon"
        else:
            says = f'"{shortened(key.value)}" is written twice; the first one counts; delete one of them'
        self.trouble(start, where, says)

    def refuse_key(self, event: Parsed, path: str) -> None:
        """Leave out a pair whose key is not a text."""
        start = event.start_mark.index
        self.skip(event)
        self.skip(self.get())
        self.trouble(start, path, "a key must be a plain word; what stands here was left out; write key: value")

    def skip(self, event: Parsed) -> None:
        """Go past the value that begins with an event."""
        depth = 0
        while True:
            if event.__class__ in (GROUP, LIST):
                depth += 1
                if depth > DEEPEST:
                    raise Broken(event.start_mark.index, deep=True)
            elif event.__class__ in (GROUP_END, LIST_END):
                depth -= 1
            if event.end_mark.index > event.start_mark.index:
                self.end = max(self.end, event.end_mark.index)
            if depth == 0:
                return
            event = self.get()

    def mended(self, key: Parsed, path: str, last: str, tree: dict[str, Tree]) -> str:
        """Read a stray text inside braces as what was meant; return the key it belongs to, or "" if none is seen."""
        start, end = key.start_mark.index, key.end_mark.index
        source = self.text[start:end]
        found = GLUED.fullmatch(source)
        if found is None and path == "" and last not in FREE_TEXT:
            found = SPACED.fullmatch(source)
        if found is not None and found[1] in self.known_keys and found[1] not in tree:
            return self.split(found, start, path, tree)
        if not last or "\n" in source or "\r" in source:
            return ""
        return self.joined(last, path, end, tree)

    def split(self, found: re.Match[str], start: int, path: str, tree: dict[str, Tree]) -> str:
        """Take ``side:right`` as side: right."""
        key, value = found[1], found[2].rstrip()
        where = f"{path}.{key}"
        value_at = start + found.start(2)
        self.end = value_at + len(value)
        self.extents[where] = Extent(start - self.origin, value_at - self.origin, self.end - self.origin)
        tree[key] = value
        self.trouble(start, where, f'"{shortened(found[0])}" has no colon and space after its key; read as {key}: '
                     f"{shortened(value)}; write it so")  # fmt: skip
        return key

    def joined(self, last: str, path: str, end: int, tree: dict[str, Tree]) -> str:
        """Take a stray text after a comma as the rest of the value before it."""
        where = f"{path}.{last}" if f"{path}.{last}" in self.extents else f"{path}[{last}]"
        extent = self.extents[where]
        text = self.text[extent.value + self.origin : end]
        if "\n" in text or "\r" in text or len(text) > LONGEST:
            return ""
        tree[last] = text
        self.end = end
        self.extents[where] = extent._replace(end=end - self.origin)
        if self.troubles and self.troubles[-1].path == where:
            self.troubles.pop()
        self.say_text_as_written(extent.value + self.origin, where, text, "a comma ends a text that is not in quotes")
        return last


def second_name(name: str, taken: Container[str], numbers: dict[str, int]) -> str:
    """Return the first of name-2, name-3 ... that is free; ``numbers`` keeps how far each name has come."""
    number = numbers.get(name, 2)
    while f"{name}-{number}" in taken:
        number += 1
    numbers[name] = number + 1
    return f"{name}-{number}"


def twice_named(name: str, second: str) -> str:
    """Return the sentence about a name that is used twice."""
    name, second = shortened(name), shortened(second)
    return f'"{name}" is written twice; both are kept, this one as "{second}"; give it a name of its own'
