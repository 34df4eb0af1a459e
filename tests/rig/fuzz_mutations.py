"""Seeded mutations of the demo rigs, and what must hold of every reading."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

from boxwright.rig.document import Document

RIGS = Path(__file__).parents[2] / "rigs"
CORPUS = Path(__file__).parent / "corpus"
NAMES = ("whimbrel", "dunlin", "gannet")
Change = tuple[int, int, str]

SCRAPS = (
    *"{}[]\"':,#?%@|> \n\t\r\x00",
    *(": ", ", ", " #", "\n  ", "*a", "&a ", "!x ", "? ", "- ", "\n---\n", "<<: *a", "\r\n", "\u2028", "\ufeff", "é"),
    *("weight: 47", "| \n   a", "12:30", "~", "6' 5 3/4\"", "}}", "{{", "'", "note: a, b"),
)


def rig_text(name: str) -> str:
    """Return the text of a demo rig."""
    return (RIGS / f"{name}.yaml").read_text(encoding="utf-8")


def changes(text: str, chance: random.Random) -> Iterator[Change]:
    """Give one to three changes (from, to, what stands there instead), each for the text after the one before."""
    for _ in range(chance.choice((1, 1, 1, 2, 3))):
        at = chance.randrange(len(text) + 1)
        kind = chance.randrange(5)
        if kind == 0:
            change = (at, at, chance.choice(SCRAPS))
        elif kind == 1:
            change = (at, min(len(text), at + chance.choice((1, 1, 2, 5, 30))), "")
        elif kind == 2:
            change = (at, min(len(text), at + chance.choice((1, 2, 5))), chance.choice(SCRAPS))
        elif kind == 3:
            other = chance.randrange(len(text) + 1)
            change = (at, at, text[other : other + chance.choice((5, 30, 200))])
        else:
            change = (at, min(len(text), at + 1), chr(chance.randrange(chance.choice((128, 0x3000)))))
        yield change
        text = text[: change[0]] + change[2] + text[change[1] :]


def assert_well_told(document: Document) -> None:
    """Assert that every problem has a place in the text and a sentence, and that reading took a bounded effort."""
    lines = document.text.count("\n") + document.text.count("\r") + 1
    for problem in document.problems:
        assert 1 <= problem.line <= lines
        assert 1 <= problem.column <= len(document.text) + 1
        assert len(problem.says) > 20
    if document.is_damaged:
        assert document.problems
        assert document.troubled
    # Every line is tried at most once for each depth it may stand at, and once for each of its keys.
    assert document.pieces_read <= 20 + 13 * lines + document.text.count(":") + document.text.count(",")


def assert_same(one: Document, other: Document) -> None:
    """Assert that two documents tell the same in every respect."""
    assert one.text == other.text
    assert one.tree == other.tree
    assert list(one.tree) == list(other.tree)
    assert one.problems == other.problems
    assert one.troubled == other.troubled
    assert one.starts == other.starts
    assert one.sections == other.sections
    assert [(piece.path, piece.extents, piece.length, piece.alone) for piece in one.pieces] == [
        (piece.path, piece.extents, piece.length, piece.alone) for piece in other.pieces
    ]
