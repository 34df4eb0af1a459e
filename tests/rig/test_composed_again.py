"""A rig composed after another is the rig composed from nothing: no piece of the reading goes stale."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest

from boxwright.rig.compose import Composer
from boxwright.rig.keys import KNOWN_KEYS
from boxwright.rig.read import read_document
from tests.lanes import IS_NIGHT

RIGS = Path(__file__).resolve().parents[2] / "rigs"
BY_DAY = 8
MEASURED = """\
  door-tape: {date: 2026-05-01, what: tape, opening: side-door, values: {width: 30}}
  night-ticket: {date: 2026-05-02, what: ticket, stage: measure, load: night, axles: 1800, tongue: 240}
"""
AIMED = {
    "whimbrel": (("length: in", "length: mm"), ("temperature: F", "temperature: C"), ("volume: gal", "volume: l"),
                 ("\n  boat:", "\n  skiff:"), ("\n  galley:", "\n  kitchen:"), ("\n  side-door:", "\n  door:"),
                 ("\n  measure:", "\n  tape:"), ("\n  night:", "\n  dark:"), ("length: 168", "length: 16"),
                 ("every: 16, first: 0}", "every: 0, first: 0}"), ("\n  skipper:", "\n  master:")),
    "dunlin": (("weight: kg", "weight: lb"), ("\n  lathe:", "\n  turning-lathe:")),
    "gannet": (("length: in", "length: ft"),),
}  # fmt: skip
"""What other pieces are read from: units, names of parts, openings, stages and load states, the box."""


def changed(text: str) -> Iterator[tuple[str, str]]:
    """Yield the text with one line gone, with one digit another, with one word another; each with what was done."""
    lines = text.splitlines(keepends=True)
    for number, line in enumerate(lines):
        if line.strip() and not line.lstrip().startswith("#"):
            yield f"without line {number + 1}", "".join((*lines[:number], *lines[number + 1 :]))
            digits = [at for at, letter in enumerate(line.partition(" #")[0]) if letter.isdigit()]
            for at in digits[-1:]:
                other = f"{line[:at]}{(int(line[at]) + 1) % 10}{line[at + 1 :]}"
                yield f"another digit on line {number + 1}", "".join((*lines[:number], other, *lines[number + 1 :]))
            other = line.replace("e", "a")
            yield f"a word on line {number + 1}", "".join((*lines[:number], other, *lines[number + 1 :]))


def composed(composer: Composer, text: str) -> str:
    """Return the rig and its problems in full; as text, because an unknown place is not equal to itself."""
    reading = composer.compose(read_document(text, known_keys=KNOWN_KEYS))
    return f"{reading.rig}\n{reading.problems}"


@pytest.mark.parametrize("name", ["whimbrel", "dunlin", "gannet"])
def test_nothing_of_an_earlier_text_is_left_in_a_later_one(name: str) -> None:
    text = (RIGS / f"{name}.yaml").read_text(encoding="utf-8") + (MEASURED if name == "whimbrel" else "")
    every = list(changed(text))
    some = every if IS_NIGHT else Random(name).sample(every, BY_DAY)
    aimed = [(f"{was} becomes {now}", text.replace(was, now, 1)) for was, now in AIMED[name] if was in text]
    assert aimed
    composer = Composer()
    first = composed(composer, text)
    for what, other in (*aimed, *some):
        assert composed(composer, other) == composed(Composer(), other), what
        assert composed(composer, text) == first, f"back from {what}"
