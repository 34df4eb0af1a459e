"""Whatever the text: never an exception, always a place for every problem, and effort bounded by the text."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.rig.read import read_document
from tests.rig.fuzz_mutations import CORPUS, NAMES, assert_well_told, changes, rig_text

PUNCTUATION = st.text("{}[]:,\"'# \n\t\r-?&*!|>%@`ax1", max_size=300)


def mutated(seed: int) -> str:
    chance = random.Random(seed)
    text = rig_text(chance.choice(NAMES))
    for start, end, replacement in changes(text, chance):
        text = text[:start] + replacement + text[end:]
    return text


def check_mutations(seeds: range) -> int:
    damaged = 0
    for seed in seeds:
        document = read_document(mutated(seed))
        assert_well_told(document)
        damaged += document.is_damaged
    return damaged


def test_a_hundred_and_fifty_mutations_of_the_demo_rigs() -> None:
    assert check_mutations(range(150)) > 25


@pytest.mark.nightly
@pytest.mark.parametrize("block", range(10))
def test_twenty_thousand_mutations_of_the_demo_rigs(block: int) -> None:
    check_mutations(range(10_000 + 2_000 * block, 12_000 + 2_000 * block))


@given(st.binary(max_size=2_000))
def test_random_bytes(data: bytes) -> None:
    assert_well_told(read_document(data))


@given(st.text(max_size=1_000))
def test_random_text(text: str) -> None:
    assert_well_told(read_document(text))


@given(PUNCTUATION, PUNCTUATION)
def test_random_punctuation_in_a_part(inside: str, after: str) -> None:
    assert_well_told(
        read_document(f"class: cargo\nparts:\n  a: {{x: 1, {inside}}}\n  {after}\n  b: {{x: 2}}\nwires:\n")
    )


def test_files_cut_anywhere() -> None:
    text, chance = rig_text("dunlin"), random.Random(3)
    for _ in range(150):
        assert_well_told(read_document(text.encode()[: chance.randrange(len(text.encode()))]))


def test_shuffled_lines_and_shuffled_keys() -> None:
    lines, chance = rig_text("dunlin").splitlines(keepends=True), random.Random(4)
    sections = ["".join(lines[8:30]), "class: cargo\n", "parts:\n  a: {x: 1}\n", "wires:\n  w: {to: a}\n"]
    for _ in range(40):
        chance.shuffle(sections)
        assert read_document("".join(sections)).tree["parts"] == {"a": {"x": "1"}}
        some = chance.sample(lines, len(lines))
        assert_well_told(read_document("".join(some)))


HOSTILE = {
    "open lists": "[" * 200_000,
    "open groups in a part": "parts:\n  a: " + "{a: " * 20_000,
    "ever deeper": "\n".join(" " * depth + "a:" for depth in range(1_000)),
    "open quotes": "parts:\n" + "  a: {note: 'b}\n" * 2_000,
    "quotes without end": "parts:\n  a: {note: " + ',"\\' * 20_000 + "}",
    "stray commas": "parts:\n  a: {note: b" + ", c" * 30_000 + "}",
    "question marks": "? " * 50_000,
    "stray lines": "%%% }{\n" * 20_000,
    "broken items": "parts:\n" + "  p: {x: 1, note: a: b, weight: 3\n" * 3_000,
    "one name": "parts:\n" + "  a: {x: 1}\n" * 20_000,
    "no characters": "\x00" * 100_000,
}


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_texts_take_bounded_effort(name: str) -> None:
    document = read_document(HOSTILE[name])
    assert_well_told(document)
    assert document.problems
    assert document.troubled


@pytest.mark.parametrize("file", sorted(CORPUS.iterdir()), ids=lambda file: file.name)
def test_texts_that_once_went_wrong(file: object) -> None:
    document = read_document((CORPUS / str(getattr(file, "name", ""))).read_bytes())
    assert_well_told(document)
