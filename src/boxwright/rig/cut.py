"""Reads a one-line item that is not YAML by cutting it only at ``, knownkey:``, and says what was taken."""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise

from yaml import YAMLError

from boxwright.rig.document import Extent, Tree, Trouble
from boxwright.rig.events import GROUP, Broken
from boxwright.rig.walk import DEEPEST, FREE_TEXT, LONGEST, TOO_DEEP, Walk, no_value, quoted, shortened

LONGEST_LINE = 20_000
QUOTED = re.compile(r"""(?:"(?:[^"\\]|\\.){0,4000}"|'(?:[^']|''){0,4000}')(?=\s*(?:[,}\]]|\Z))""")
CLOSED = re.compile(r"\}[ \t]*(?:[ \t]#[^\r\n]*)?\s*\Z")
COMMENT = re.compile(r"[ \t]+#[ \t<][^\r\n]*")
BLANK = re.compile(r"[ \t]+")
CLOSING = {"[": "]", "{": "}"}
OPENING = {"]": "[", "}": "{", ")": "("}
ANY_KEY = re.compile(r"[ \t]*([^\s:{}\[\],\"']+)[ \t]*:[ \t]*")


@lru_cache(maxsize=8)
def _key_at(known_keys: frozenset[str]) -> re.Pattern[str]:
    words = "|".join(sorted(map(re.escape, known_keys), key=len, reverse=True))
    return re.compile(rf"[\s,]*({words})[ \t]*:(?!//)[ \t]*")


class Cut:
    """The cutting of one text into keys and values; offsets are those of the text, extents relative to ``origin``."""

    def __init__(self, text: str, origin: int, section: str, known_keys: frozenset[str]) -> None:
        self.text, self.origin, self.section, self.known_keys = text, origin, section, known_keys
        self.extents: dict[str, Extent] = {}
        self.troubles: list[Trouble] = []
        self.pieces_read = 0

    def trouble(self, at: int, path: str, says: str) -> None:
        """Keep a problem."""
        self.troubles.append(Trouble(at - self.origin, path, says))

    def value(self, key_at: int, start: int, end: int, path: str, depth: int) -> Tree:
        """Return the tree of the broken value between two offsets."""
        while start < end and self.text[start] in " \t\r\n":
            start += 1
        is_group = end - start <= LONGEST_LINE
        if depth >= DEEPEST and self.text.startswith(("{", "["), start, end):
            self.trouble(start, path, TOO_DEEP)
            self.extents[path] = Extent(key_at - self.origin, start - self.origin, start - self.origin)
            return None
        if is_group and self.text.startswith("{", start, end):
            tree, end = self.braces(start, start + 1, end, path, depth)
        elif is_group and not path and _key_at(self.known_keys).match(self.text, start + self.is_round(start), end):
            self.trouble(start, path, 'the keys here have no "{" before them; write name: {key: value, ...}')
            tree, end = self.braces(start, start + self.is_round(start), end, path, depth)
        else:
            tree, end = self.plain(start, end, path)
        self.extents[path] = Extent(key_at - self.origin, start - self.origin, end - self.origin)
        return tree

    def is_round(self, start: int) -> bool:
        """Return whether a round bracket stands where a brace belongs."""
        return self.text.startswith("(", start)

    def braces(self, start: int, inside: int, end: int, path: str, depth: int) -> tuple[Tree, int]:
        """Return the keys and values of a broken group in braces, and where it ends."""
        closed = CLOSED.search(self.text, start, end)
        if closed is not None:
            stop, end = closed.start(), closed.start() + 1
        else:
            comment = COMMENT.search(self.text, start, end)
            stop = end = comment.start() if comment is not None else end
        before = len(self.troubles)
        tree: dict[str, Tree] = {}
        cuts = self.cuts(inside, stop)
        bounds = [*cuts, stop]
        if bounds[0] > inside:
            self.segment(inside, bounds[0], path, depth, tree)
        for here, there in pairwise(bounds):
            self.segment(here, there, path, depth, tree)
        if closed is None:
            self.trouble(start, path, 'the "{" here is not closed; its line was read; write "}" at the end')
        elif len(self.troubles) == before and self.text.startswith("{", start):
            says = "the brackets, quotes or commas here do not match; each key was read alone; write {key: value, ...}"
            self.trouble(start, path, says)
        return tree, end

    def cuts(self, start: int, stop: int) -> list[int]:
        """Return the offsets at which a known key begins, outside brackets and closed quotes."""
        found, text, key_at = [], self.text, _key_at(self.known_keys)
        at, is_fresh, opened = start, True, ""
        while at < stop:
            letter = text[at]
            if opened in ("", "[") and (letter == "," or at == start):
                key = key_at.match(text, at, stop)
                if key is not None:
                    # A key inside a list means that the list was not closed before it.
                    found.append(key.start(1))
                    at, is_fresh, opened = key.end(), True, ""
                    continue
            if is_fresh and letter in "\"'":
                closed = QUOTED.match(text, at, stop)
                if closed is not None:
                    at, is_fresh = closed.end(), False
                    continue
            if letter in "{[":
                opened += letter
            elif letter in "}]":
                opened = opened[:-1]
            is_fresh = letter in ",:{[" or (is_fresh and letter in " \t")
            at += 1
        return found

    def segment(self, start: int, stop: int, path: str, depth: int, tree: dict[str, Tree]) -> None:
        """Read the stretch from one known key to the next."""
        while stop > start and self.text[stop - 1] in " \t\r\n,":
            stop -= 1
        if start >= stop or self.sound(start, stop, path, depth, tree):
            return
        key = _key_at(self.known_keys).match(self.text, start, stop) or ANY_KEY.match(self.text, start, stop)
        if key is None:
            left = shortened(self.text[start:stop])
            self.trouble(
                start, path, f'"{left}" stands here without a key and was left out; write it as note: {quoted(left)}'
            )
            return
        name, where = key.group(1), f"{path}.{key.group(1)}"
        if name in tree:
            self.trouble(start, where, f'"{name}" is written twice; the first one counts; delete one of them')
            return
        letter = self.text[key.end() : key.end() + 1]
        if letter in CLOSING and self.sound(start, stop, path, depth, tree, CLOSING[letter]):
            says = f'the "{letter}" here is not closed; it was read up to the next key; write "{CLOSING[letter]}" there'
            self.trouble(key.end(), where, says)
            return
        after = self.next_key(key.end(), stop) if name not in FREE_TEXT and letter not in CLOSING else stop
        if after < stop and self.sound(start, after, path, depth, tree):
            self.trouble(after, where, f'a comma is missing after the value of "{name}"; write one there')
        else:
            tree[name] = self.value(key.start(1), key.end(), after, where, depth + 1)
            if tree[name] is None and key.end() >= after:
                self.trouble(key.start(1), where, no_value(name))
        if after < stop:
            self.segment(after, stop, path, depth, tree)

    def next_key(self, start: int, stop: int) -> int:
        """Return where a known key follows after a blank inside a value, its comma missing, or the end."""
        for blank in BLANK.finditer(self.text, start, stop):
            key = _key_at(self.known_keys).match(self.text, blank.end(), stop)
            if key is not None and blank.start() > start and self.text[key.end() - 1] in " \t":
                return blank.end()
        return stop

    def sound(self, start: int, stop: int, path: str, depth: int, tree: dict[str, Tree], closing: str = "") -> bool:
        """Read a stretch as YAML, a missing bracket added, and add its keys; return whether that went well."""
        walk = Walk("{" + self.text[start:stop] + closing + "}", self.known_keys)
        walk.section, walk.origin = self.section, self.origin - start + 1
        self.pieces_read += 1
        try:
            walk.get()
            walk.get()
            group = walk.get()
            if group.__class__ is not GROUP:
                return False
            # Lines and columns of this stretch mean nothing, so nothing in it counts as swallowed.
            walk.column, walk.line = -1, 0
            found = walk.mapping(group, path, depth)
            walk.get()
            walk.get()
        except (YAMLError, Broken):
            return False
        if not isinstance(found, dict) or walk.end != stop - start + len(closing) + 2 or None in found.values():
            return False
        if any(name in tree for name in found):
            return False
        tree.update(found)
        self.extents.update(walk.extents)
        self.troubles += walk.troubles
        return True

    def plain(self, start: int, end: int, path: str) -> tuple[Tree, int]:
        """Return a stretch as the text it seems to be meant as, and where it ends."""
        stop = end
        if end == len(self.text) or self.text[end] in "\r\n":
            comment = COMMENT.search(self.text, start, end)
            stop = comment.start() if comment is not None else end
        while stop > start and self.text[stop - 1] in " \t\r\n":
            stop -= 1
        written = self.text[start:stop]
        if not written:
            return None, start
        text = " ".join(written.split())
        if text[-1] in "}])" and text.count(text[-1]) > text.count(OPENING[text[-1]]):
            self.trouble(start, path, f'there is one "{text[-1]}" too many after this text; delete it')
            return self.without_quotes(text[:-1].rstrip()) or None, stop
        text = self.without_quotes(text)
        key = path.rpartition(".")[2] or "note"
        if len(text) > LONGEST:
            self.trouble(
                start, path, f"this text is {len(text):,} characters long and was left out; write at most {LONGEST:,}"
            )
            return None, stop
        shown = shortened(text)
        self.trouble(start, path, f"{reason(written)}; taken as the text {shown}; write it as {key}: {quoted(shown)}")
        return text, stop

    @staticmethod
    def without_quotes(text: str) -> str:
        """Return a text without quotes around it, also where one of the two is missing."""
        if text.startswith(('"', "'")):
            mark = text[0]
            return text[1:-1] if len(text) > 1 and text.endswith(mark) else text[1:]
        return text


def reason(text: str) -> str:
    """Return why a text cannot stand without quotes, in words."""
    if text[0] in "\"'":
        again = text.count(text[0]) > 1
        return "a text stands beside the quotes here" if again else f"the quote {text[0]} here is not closed"
    if text[0] in "{[":
        return f'the "{text[0]}" here is not closed'
    if text[0] in "*&!|>%@`" or text[:2] in ("? ", "- "):
        return f'a text that is not in quotes cannot begin with "{text[0]}"'
    if " #" in text:
        return 'a "#" after a space begins a comment in a text that is not in quotes'
    if text[0] == "?":
        return 'a text that is not in quotes cannot begin with "?"'
    if ": " in text or text.endswith(":"):
        return "a colon and a space end a key in a text that is not in quotes"
    return "a text with a bracket, a comma or a colon needs quotes"
