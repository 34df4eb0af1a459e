"""Reads a text that is not YAML as a whole: cut at its keys by indent, each piece read alone (DESIGN 5, step 3)."""

from __future__ import annotations

import re

from yaml import YAMLError

from boxwright.rig.assembly import Assembly
from boxwright.rig.cut import Cut
from boxwright.rig.document import NAMED, TOP_KEYS, Extent, Piece, Tree, Trouble
from boxwright.rig.events import GROUP, GROUP_END, SCALAR, STREAM_END, Broken
from boxwright.rig.lines import Line, groups, lines_of, not_one_of, top_groups, value_text
from boxwright.rig.walk import DEEPEST, TOO_DEEP, Walk, second_name, shortened, twice_named
from boxwright.rig.whole import NOT_A_RIG, read_whole

LINE_BREAK = re.compile(r"[\r\n]")


def read_damaged(text: str, offset: int, broken: Broken, assembly: Assembly, known_keys: frozenset[str]) -> None:
    """Read what can be read of a damaged text into an assembly, and say what could not."""
    _Damaged(text[:offset].replace("\ufeff", " ") + text[offset:], assembly, known_keys).read()
    if not assembly.troubles and not any(piece.troubles for piece in assembly.pieces):
        says = "the lines do not fit together from here; each was read for itself; look at the indents and brackets"
        assembly.trouble(broken.at + offset, "", says)


class _Damaged:
    """The reading of one damaged text."""

    def __init__(self, text: str, assembly: Assembly, known_keys: frozenset[str]) -> None:
        self.text, self.assembly, self.known_keys = text, assembly, known_keys
        self.lines = lines_of(text, known_keys)

    def read(self) -> None:
        above = ""
        for first, last in top_groups(self.text, self.lines):
            head = self.lines[first]
            if above and head.is_head() and head.key not in TOP_KEYS and value_text(self.text, head).startswith("{"):
                self.assembly.trouble(head.start, above, not_one_of(above, shortened(head.key)))
            above = head.key if head.key in NAMED else above
            if not head.is_head():
                self.garbage(first, last, "")
            elif head.key in NAMED:
                if not self.sound_section(first, last):
                    self.section(first, last)
            else:
                self.thing("", first, last, 0)

    def stretch(self, first: int, last: int) -> tuple[int, int]:
        """Return the offsets of some lines, from the first one's start to the end of the last."""
        line = self.lines[first]
        return line.start - line.indent, self.lines[last - 1].end

    def garbage(self, first: int, last: int, path: str) -> None:
        """Say of lines that nothing could be read from them."""
        for line in self.lines[first:last]:
            shown = shortened(self.text[line.start : line.end])
            hint = NOT_A_RIG if not path else "write   name: {key: value, ...}   or put # before a remark"
            self.assembly.trouble(line.start, path, f'the line "{shown}" cannot be read and was left out; {hint}')

    def sound_section(self, first: int, last: int) -> bool:
        """Read a map of named things as a whole, if it alone is YAML."""
        head = self.lines[first]
        if head.key in self.assembly.named or head.indent or not head.colon:
            return False
        start, end = self.stretch(first, last)
        alone = Assembly()
        try:
            read_whole(self.text[start:end], start, alone, self.known_keys)
        except Broken:
            self.assembly.pieces_read += 1
            return False
        self.assembly.pieces_read += 1
        if list(alone.tree) != [head.key] or any(trouble.path != head.key for trouble in alone.troubles):
            return False
        self.assembly.open_section(head.key, alone.sections[head.key])
        for piece, at in zip(alone.pieces, alone.starts, strict=True):
            self.assembly.take(piece, at)
        self.assembly.troubles += alone.troubles
        return True

    def section(self, first: int, last: int) -> None:
        """Read a map of named things one by one."""
        head = self.lines[first]
        self.assembly.open_section(head.key, Extent(head.start, head.value, head.end))
        if value_text(self.text, head):
            says = f'what follows "{head.key}:" on its line was left out; write each thing on a line of its own'
            self.assembly.trouble(head.value, head.key, says)
        if head.indent:
            self.assembly.trouble(head.start, head.key, f'"{head.key}:" is indented; write it at the start of its line')
        width, found = groups(self.text, self.lines, first + 1, last)
        for here, there in found:
            self.thing(head.key, here, there, width)
        self.assembly.close_section(head.key, self.lines[last - 1].end)

    def thing(self, section: str, first: int, last: int, width: int) -> None:
        """Read one thing; what turns out not to belong to it is read as things of their own."""
        head = self.lines[first]
        if not head.is_head():
            self.garbage(first, last, section)
            return
        thing = _Thing(self, section, head)
        tree, rest = thing.value(first, last, "", 2 if section else 1)
        if head.indent != width:
            thing.say_indent(head, width)
        written = thing.written
        name = self.assembly.name_for(section, written) if section else written
        length = max(thing.extents[""].end, 0)
        found = LINE_BREAK.search(self.text, head.start + length)
        length = (found.start() if found is not None else len(self.text)) - head.start
        troubles = tuple(thing.troubles)
        piece = Piece(section, written, name, tree, thing.extents, troubles, head.indent, length, False)
        self.assembly.add(piece, head.start)
        while rest < last:
            there = next((at for at in range(rest + 1, last) if self.lines[at].is_head()), last)
            self.thing(section, rest, there, width) if self.lines[rest].is_head() else self.garbage(
                rest, there, section
            )
            rest = there


class _Thing:
    """The reading of one thing of a damaged text: extents and troubles are relative to its key."""

    def __init__(self, whole: _Damaged, section: str, head: Line) -> None:
        self.whole, self.text, self.lines = whole, whole.text, whole.lines
        self.section, self.origin, self.written = section, head.start, head.key
        self.extents: dict[str, Extent] = {}
        self.troubles: list[Trouble] = []

    def trouble(self, at: int, path: str, says: str) -> None:
        """Keep a problem of this thing."""
        self.troubles.append(Trouble(at - self.origin, path, says))

    def say_indent(self, line: Line, width: int) -> None:
        """Say that a line is not indented as its neighbours are."""
        says = f'"{shortened(line.key)}" is indented by {line.indent}, its neighbours by {width}; write {width} spaces'
        self.trouble(line.start, "", says)

    def value(self, first: int, last: int, path: str, depth: int) -> tuple[Tree, int]:
        """Return the tree of the value that some lines seem to be, and the first line that was not taken."""
        head = self.lines[first]
        if head.colon and self.alone(first, last, path, depth):
            return self.tree, last
        if last - first > 1 and not value_text(self.text, head):
            if depth >= DEEPEST:
                self.trouble(head.start, path, TOO_DEEP)
                at = head.value - self.origin
                self.extents[path] = Extent(head.start - self.origin, at, at)
                return None, last
            return self.children(first, last, path, depth), last
        return self.one_line(first, last, path, depth)

    def alone(self, first: int, last: int, path: str, depth: int) -> bool:
        """Read some lines as YAML; keep the tree and return True if they are one key with its value."""
        start, end = self.whole.stretch(first, last)
        walk = Walk(self.text[start:end], self.whole.known_keys)
        walk.section, self.whole.assembly.pieces_read = self.section, self.whole.assembly.pieces_read + 1
        try:
            walk.get()
            walk.get()
            root, key = walk.get(), walk.get()
            if root.__class__ is not GROUP or root.flow_style or key.__class__ is not SCALAR or key.tag or key.anchor:
                return False
            walk.begin(self.section, key)
            walk.origin = self.origin - start
            tree = walk.member(path, key.start_mark.index, walk.get(), depth)
            if walk.get().__class__ is not GROUP_END:
                return False
            walk.get()
            if walk.get().__class__ is not STREAM_END:
                return False
        except (YAMLError, Broken):
            return False
        self.tree, self.key = tree, key.value
        if not path:
            self.written = key.value
        self.extents.update(walk.extents)
        self.troubles += walk.troubles
        return True

    def children(self, first: int, last: int, path: str, depth: int) -> Tree:
        """Return the keys and values that the lines under a key seem to be."""
        tree: dict[str, Tree] = {}
        head, numbers = self.lines[first], dict[str, int]()
        is_named = self.section == "walls" and path == ".layers"
        width, found = groups(self.text, self.lines, first + 1, last)
        while found:
            here, there = found.pop(0)
            line = self.lines[here]
            key = line.key
            if not key:
                shown = shortened(self.text[line.start : line.end])
                self.trouble(line.start, path, f'the line "{shown}" cannot be read and was left out; write key: value')
                found.insert(0, (here + 1, there)) if here + 1 < there else None
                continue
            if key in tree and is_named:
                key = second_name(key, tree, numbers)
                self.trouble(line.start, f"{path}[{key}]", twice_named(line.key, key))
            elif key in tree:
                says = f'"{shortened(key)}" is written twice; the first one counts; delete one of them'
                self.trouble(line.start, f"{path}.{key}", says)
                continue
            tree[key], rest = self.value(here, there, f"{path}[{key}]" if is_named else f"{path}.{key}", depth + 1)
            if line.indent != width:
                self.say_indent(line, width)
            if rest < there:
                found.insert(0, (rest, there))
        end = self.lines[last - 1].end
        self.extents[path] = Extent(head.start - self.origin, head.value - self.origin, end - self.origin)
        return tree

    def one_line(self, first: int, last: int, path: str, depth: int) -> tuple[Tree, int]:
        """Return what can be read of a broken line by cutting it at known keys, and the first line not taken."""
        head = self.lines[first]
        rest = first + 1
        while rest < last and not self.lines[rest].is_head():
            rest += 1
        # Trying the head line alone first: what is under it may be a thing of its own, indented too far.
        if rest > first + 1 or last > first + 1:
            if head.colon and self.alone(first, first + 1, path, depth):
                return self.tree, first + 1
            if rest < last and head.colon and self.alone(first, rest, path, depth):
                return self.tree, rest
        if not head.colon:
            key = shortened(head.key)
            says = f'a colon and a space must follow "{key}" here; it was read as a key; write {key}: and the value'
            self.trouble(head.start, path, says)
        cut = Cut(self.text, self.origin, self.section, self.whole.known_keys)
        tree = cut.value(head.start, head.value, self.lines[rest - 1].end, path, depth)
        if not head.colon and len(cut.troubles) == 1:
            cut.troubles = []
        self.whole.assembly.pieces_read += cut.pieces_read
        self.extents.update(cut.extents)
        self.troubles += cut.troubles
        if not self.troubles:
            self.trouble(head.start, path, f'the value of "{shortened(head.key)}" cannot be read; write key: value')
        return tree, rest
