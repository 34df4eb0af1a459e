"""After any edit layout and safety come to what a start from nothing comes to, and no more is looked at than moved."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from random import Random

import pytest

from boxwright.disciplines.layout import bodies, pairs, stopping, sweeps
from boxwright.disciplines.layout.bodies import Body
from boxwright.disciplines.layout.meeting import deepest
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.safety.sourced import word_means
from boxwright.finding import Use
from boxwright.rig import kept
from boxwright.rig.compose import Composer
from boxwright.rig.read import read_document
from boxwright.rig.rig import Rig
from boxwright.study.once import Once
from boxwright.study.slots import Slot, study
from boxwright.web import gestures

RIGS = Path(__file__).resolve().parents[2] / "rigs"
TODAY = date(2026, 5, 2)


@pytest.fixture(autouse=True)
def nothing_remembered() -> Iterator[None]:
    forget()
    yield
    forget()


def forget() -> None:
    pairs._shelf.cache_clear()
    bodies._laid.clear()
    sweeps._before.clear()
    stopping._before.clear()


def thousand() -> str:
    """Return the generated rig of a thousand parts, many of which stand in each other."""
    command = [sys.executable, str(RIGS / "make_gannet.py"), "--parts", "1000"]
    return subprocess.run(command, capture_output=True, check=True, text=True).stdout


def text_of(name: str) -> str:
    return thousand() if name == "thousand" else (RIGS / name).read_text("utf-8")


def worked(rig: Rig, use: Use, once: Once) -> Slot:
    return study(rig, TODAY, stage=len(rig.stages_in_order) - 1, use=use, once=once, ticked=False).slots[0]


@pytest.mark.parametrize(
    ("name", "uses", "edits"),
    [
        ("whimbrel.yaml", ("tow", "sleep"), 4),
        ("dunlin.yaml", ("tow", "sleep"), 4),
        ("thousand", ("tow",), 2),
        pytest.param("whimbrel.yaml", ("tow", "sleep"), 8, marks=pytest.mark.nightly),
        pytest.param("dunlin.yaml", ("tow", "sleep"), 8, marks=pytest.mark.nightly),
        pytest.param("thousand", ("tow",), 4, marks=pytest.mark.nightly),
    ],
)
def test_after_random_moves_it_is_as_from_nothing(name: str, uses: tuple[Use, ...], edits: int) -> None:
    luck, text = Random(name), text_of(name)
    composer, once, document = Composer(), Once(), read_document(text)
    reading = composer.compose(document)
    placed = [one.of for one in reading.rig.parts if not one.words.inside and not one.words.rides_on and one.words.x]
    for use in uses:
        worked(reading.rig, use, once)
    moved = 0
    for _ in range(edits):
        shift = (luck.uniform(-0.4, 0.4), luck.choice([0.0, 0.05]), 0.0)
        try:
            document = gestures.moved(document, reading.rig, luck.choice(placed), shift)
        except gestures.Refused:
            continue
        moved += 1
        reading = composer.compose(document)
        warm = {use: worked(reading.rig, use, once) for use in uses}
        forget()
        afresh = Composer().compose(document)
        assert afresh.rig.safety == reading.rig.safety
        for use in uses:  # what is found afresh is remembered again: the next move starts from it
            cold = worked(afresh.rig, use, Once())
            assert (cold.layout, cold.safety, cold.findings) == (
                warm[use].layout, warm[use].safety, warm[use].findings)  # fmt: skip
    assert moved >= edits // 2


def test_of_a_thousand_parts_only_the_moved_one_is_laid_and_compared(monkeypatch: pytest.MonkeyPatch) -> None:
    laid, compared, named = list[str](), list[tuple[str, str]](), list[str]()
    body_of = bodies.body_of

    def laying(one: Fitted, *how: object) -> Body:
        laid.append(one.of)
        return body_of(one, *how)  # type: ignore[arg-type]

    def comparing(one: Body, other: Body) -> tuple[float, int]:
        compared.append((one.of, other.of))
        return deepest(one, other)

    def naming(name: str) -> str:
        named.append(name)
        return word_means(name)

    monkeypatch.setattr(bodies, "body_of", laying)
    monkeypatch.setattr(pairs, "deepest", comparing)
    monkeypatch.setattr(kept, "word_means", naming)
    composer, once, document = Composer(), Once(), read_document(thousand())
    reading = composer.compose(document)
    worked(reading.rig, "tow", once)
    assert len(laid) > 900
    every = len(compared)
    assert every > 2_000
    for asked in (laid, compared, named):
        asked.clear()
    of = "parts[cabinet-500]"
    reading = composer.compose(gestures.moved(document, reading.rig, of, (0.01, 0.0, 0.0)))
    worked(reading.rig, "tow", once)
    assert laid == [of]
    assert compared
    assert all(of in two for two in compared)
    assert len(compared) < every / 50
    assert len(named) < 20
