"""After an edit: only the piece that was touched is read again, and the outcome is that of reading the whole."""

from __future__ import annotations

import random

import pytest

from boxwright.rig.document import Document
from boxwright.rig.read import edited, read_document
from tests.rig.fuzz_mutations import NAMES, assert_same, assert_well_told, changes, rig_text


def replaced(document: Document, old: str, new: str) -> Document:
    at = document.text.index(old)
    return edited(document, at, at + len(old), new)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("weight: 144", "weight: 150 +-4"),
        ("  # <- seeded: hinges at", "  # and <- seeded: hinges at"),
        ("mattress: 75 x 47 x 4, ", ""),
        ("gvwr: 7000", "gvwr: 7200   # new plate"),
        ("thick: 1, weight: 14", "thick: 1,\n   weight: 14"),
        ("note: licensed hand signs", "note: by hand, signed"),
        ("gauge: 2, fuse", "gauge: 2, gauge: 4, fuse"),
    ],
)
def test_a_change_inside_a_piece_reads_that_piece_alone(old: str, new: str) -> None:
    before = read_document(rig_text("whimbrel"))
    after = replaced(before, old, new)
    assert after.pieces_read == 1
    assert sum(one is not other for one, other in zip(before.pieces, after.pieces, strict=True)) == 1
    assert_same(after, read_document(after.text))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("  bunk:   ", "  bed:    "),
        ("weight: 144,", "weight: 144}\n  second: {x: 1,"),
        ("weight: 144,", 'weight: "144,'),
        ("weight: 144,", "weight: 144\t,"),
        ("gvwr: 7000", "gvwr: |"),
        ("\nstages:", "\nstages: {"),
        ("  bunk:   ", "   bunk:   "),
        ("# -- bunk: hinged", "-- bunk: hinged"),
        ("gvwr: 7000\n", "gvwr: 7000\n---\n"),
    ],
)
def test_a_change_that_reaches_further_reads_the_whole(old: str, new: str) -> None:
    after = replaced(read_document(rig_text("whimbrel")), old, new)
    assert_same(after, read_document(after.text))
    assert after.pieces_read == read_document(after.text).pieces_read


def test_block_text_is_never_read_alone() -> None:
    # A comment further in than the key is a comment after `x: 1`, but part of the text after `x: |`.
    text = "parts:\n  a:\n    x: 1\n      # mine\n  b: {x: 2}\n"
    after = replaced(read_document(text), "x: 1", "x: |")
    assert after.tree == read_document(after.text).tree == {"parts": {"a": {"x": "# mine\n"}, "b": {"x": "2"}}}


def test_trees_of_other_pieces_stay_the_same_objects() -> None:
    before = read_document(rig_text("whimbrel"))
    for after in (
        replaced(before, "weight: 144", "weight: 150"),
        replaced(before, "parts:\n", "parts:\n  # a new line\n"),
        replaced(before, "  bunk:   ", "  bed:    "),
    ):
        assert after.piece("parts", "galley") is before.piece("parts", "galley")
        assert after.piece("wires", "main") is before.piece("wires", "main")
        assert after.piece("", "trailer") is before.piece("", "trailer")
        assert after.tree["trailer"] is before.tree["trailer"]
        parts = after.tree["parts"]
        assert isinstance(parts, dict)
        assert parts["galley"] is before.piece("parts", "galley")


def test_a_document_never_changes() -> None:
    text = rig_text("dunlin")
    before = read_document(text)
    replaced(before, "weight: 24", "weight: 25\n")
    replaced(before, "  lathe:", "  press:")
    assert_same(before, read_document(text))


def run_of_edits(seed: int) -> tuple[int, int]:
    """Make five rounds of edits one after the other; return how many there were and how many read one piece."""
    chance = random.Random(seed)
    document = read_document(rig_text(chance.choice(NAMES[:2])))
    count = alone = 0
    for _ in range(5):
        for start, end, replacement in changes(document.text, chance):
            after = edited(document, start, end, replacement)
            assert_same(after, read_document(after.text))
            assert_well_told(after)
            count, alone = count + 1, alone + (after.pieces_read == 1 and not after.is_damaged)
            if after.is_damaged and chance.random() < 0.9:
                break
            document = after
    return count, alone


def test_an_edit_reads_as_the_whole() -> None:
    runs = [run_of_edits(seed) for seed in range(9)]
    assert sum(count for count, _ in runs) >= 45
    assert sum(alone for _, alone in runs) >= 15


@pytest.mark.nightly
@pytest.mark.parametrize("block", range(10))
def test_ten_thousand_edits_read_as_the_whole(block: int) -> None:
    count = 0
    for seed in range(1_000 * (block + 1), 1_000 * (block + 1) + 160):
        count += run_of_edits(seed)[0]
    assert count >= 1_000
