"""Reads a whole text that is YAML: its top-level keys, and under each map of named things the pieces."""

from __future__ import annotations

import re
from dataclasses import replace

from yaml import YAMLError

from boxwright.rig.assembly import Assembly
from boxwright.rig.document import NAMED, TOP_KEYS, Extent, Piece
from boxwright.rig.events import (
    DOCUMENT,
    GROUP,
    GROUP_END,
    LIST,
    LIST_END,
    SCALAR,
    STREAM_END,
    Broken,
    Parsed,
    broken_by,
    is_nothing,
)
from boxwright.rig.lines import not_one_of, seems_one_of
from boxwright.rig.walk import Walk, shortened

LINE_BREAK = re.compile(r"[\r\n]")

NOT_A_RIG = "a rig file is lines such as parts: with the things indented under it; begin with boxwright: 1"


def read_whole(text: str, offset: int, assembly: Assembly, known_keys: frozenset[str]) -> None:
    """Read all pieces of a text into an assembly; raise Broken where it is not YAML. Offsets grow by ``offset``."""
    walk = Walk(text, known_keys)
    assembly.pieces_read += 1
    try:
        _Whole(walk, offset, assembly).read()
    except YAMLError as error:
        raise broken_by(error) from None


def read_piece(text: str, column: int, old: Piece, known_keys: frozenset[str]) -> Piece:
    """Read one piece alone, its key at a column; raise Broken if the text is not that single key any more."""
    walk = Walk(text, known_keys)
    get = walk.get
    try:
        get()
        start, root, key = get(), get(), get()
        if not (start.__class__ is DOCUMENT and root.__class__ is GROUP and key.__class__ is SCALAR):
            raise Broken(0)
        if root.flow_style or key.start_mark.index != column or key.value != old.written:
            raise Broken(0)
        piece = walk.piece(old.section, key, get(), old.name)
        if get().__class__ is not GROUP_END:
            raise Broken(0)
        get()
        if get().__class__ is not STREAM_END or not piece.alone:
            raise Broken(0)
    except YAMLError as error:
        raise broken_by(error) from None
    return piece


class _Whole:
    """The reading of one text from its first event to its last."""

    def __init__(self, walk: Walk, offset: int, assembly: Assembly) -> None:
        self.walk, self.offset, self.assembly, self.get = walk, offset, assembly, walk.get

    def read(self) -> None:
        self.get()
        start = self.get()
        if start.__class__ is STREAM_END:
            self.assembly.trouble(self.offset, "", f"the file is empty; {NOT_A_RIG}")
            return
        root = self.get()
        if root.__class__ is not GROUP:
            self.walk.skip(root)
            self.assembly.trouble(self.at(root), "", f"this cannot be read as a rig; {NOT_A_RIG}")
        else:
            self.walk.refuse_marks(root, "")
            self.members()
        self.get()
        after = self.get()
        if after.__class__ is not STREAM_END:
            says = 'a line "---" or "..." ends the rig; nothing after it is read; delete that line'
            self.assembly.trouble(self.at(after), "", says)

    def at(self, event: Parsed) -> int:
        return event.start_mark.index + self.offset

    def members(self) -> None:
        section = ""
        while (key := self.get()).__class__ is not GROUP_END:
            if key.__class__ is not SCALAR:
                self.walk.begin("", key)
                self.walk.origin = 0
                self.walk.refuse_key(key, "")
                self.take_troubles()
                continue
            value = self.get()
            if key.value in NAMED:
                self.section(key, value)
                section = key.value
            elif section and key.value not in TOP_KEYS and value.__class__ is GROUP and value.flow_style:
                self.stray(section, key, value)
            elif (key.value in ("<<", "") and not key.style) or key.tag or key.anchor:
                self.drop(key, value, "")
            else:
                self.assembly.add(self.walk.piece("", key, value, key.value), self.at(key))

    def stray(self, section: str, key: Parsed, value: Parsed) -> None:
        """Read a thing that is not indented: as one of the section above it if it seems to be, else as a key."""
        text, start = self.walk.text, value.start_mark.index
        line_end = LINE_BREAK.search(text, start)
        if not seems_one_of(section, text[start : line_end.start() if line_end else len(text)]):
            self.assembly.add(self.walk.piece("", key, value, key.value), self.at(key))
            self.assembly.trouble(self.at(key), section, not_one_of(section, shortened(key.value)))
            return
        name = self.assembly.name_for(section, key.value)
        says = f'"{shortened(key.value)}" is not indented; it was read as one of {section}; write two spaces before it'
        self.assembly.add(replace(self.walk.piece(section, key, value, name), alone=False), self.at(key))
        self.assembly.trouble(self.at(key), f"{section}[{name}]", says)

    def drop(self, key: Parsed, value: Parsed, path: str) -> None:
        self.walk.begin("", key)
        self.walk.origin = 0
        self.walk.drop(key, value, path)
        self.take_troubles()

    def take_troubles(self) -> None:
        for trouble in self.walk.troubles:
            self.assembly.trouble(trouble.at + self.offset, trouble.path.lstrip("."), trouble.says, trouble.troubled)
        self.walk.troubles = []

    def section(self, key: Parsed, value: Parsed) -> None:
        name, walk = key.value, self.walk
        key_end = key.end_mark.index + self.offset
        at = key_end if is_nothing(value) else self.at(value)
        self.assembly.open_section(name, Extent(self.at(key), at, key_end))
        walk.begin("", key)
        walk.origin = 0
        walk.refuse_marks(key, name)
        if value.__class__ is not SCALAR:
            walk.refuse_marks(value, name)
        self.take_troubles()
        if value.__class__ is GROUP:
            self.things(name)
        elif value.__class__ is LIST:
            says = f'"{name}:" holds a list; names were expected; write each as   name: {{...}}   on a line of its own'
            self.assembly.trouble(at, name, says)
            self.listed(name)
        elif not is_nothing(value):
            walk.skip(value)
            says = f'"{name}: {shortened(walk.text[value.start_mark.index : value.end_mark.index])}" was left out; ' \
                   "names were expected; write each under it, indented, as   name: {...}"  # fmt: skip
            self.assembly.trouble(at, name, says)
        self.assembly.close_section(name, max(walk.end + self.offset, key_end))

    def things(self, section: str) -> None:
        while (key := self.get()).__class__ is not GROUP_END:
            if key.__class__ is not SCALAR:
                self.walk.begin("", key)
                self.walk.origin = 0
                self.walk.refuse_key(key, section)
                self.take_troubles()
                continue
            value = self.get()
            if (key.value in ("<<", "") and not key.style) or key.tag or key.anchor:
                self.drop(key, value, section)
                continue
            name = self.assembly.name_for(section, key.value)
            self.assembly.add(self.walk.piece(section, key, value, name), self.at(key))

    def listed(self, section: str) -> None:
        """Read a list as named things: an element with one key is named by it, another by its ``name`` or number."""
        count = 0
        while (element := self.get()).__class__ is not LIST_END:
            count += 1
            if element.__class__ is SCALAR and element.value:
                name = self.assembly.name_for(section, element.value)
                self.walk.begin(section, element)
                piece = self.walk.finished(section, element.value, name, None)
                self.assembly.add(piece, self.at(element))
            elif element.__class__ is GROUP:
                self.element(section, element, count)
            else:
                self.walk.skip(element)

    def element(self, section: str, element: Parsed, count: int) -> None:
        walk, key = self.walk, self.get()
        while key.__class__ is not GROUP_END:
            if key.__class__ is not SCALAR:
                walk.skip(key)
                walk.skip(self.get())
                key = self.get()
                continue
            value = self.get()
            if value.__class__ is SCALAR and not is_nothing(value):
                walk.begin(section, element)
                tree = walk.member("", walk.origin, element, 3, (key, value))
                given = tree.get("name") if isinstance(tree, dict) else None
                written = given if isinstance(given, str) else str(count)
                name = self.assembly.name_for(section, written)
                self.assembly.add(walk.finished(section, written, name, tree), self.at(element))
                return
            name = self.assembly.name_for(section, key.value)
            self.assembly.add(walk.piece(section, key, value, name), self.at(key))
            key = self.get()
