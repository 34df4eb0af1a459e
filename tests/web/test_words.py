"""Every heading and every label of a number is plain, or its word of the trade is explained on the same screen."""

from __future__ import annotations

import re
from datetime import date
from functools import cache

import pytest

from boxwright.web import contract
from boxwright.web.screens import Screens
from boxwright.web.session import Session
from boxwright.web.words import SEVERAL, WORDS, labels_of, without_words, words_in
from tests.web.live import ROOT

DAY = date(2026, 5, 2)
DEMOS = ("whimbrel", "dunlin", "gannet")
PLAIN = frozenset(
    """a above across acts after against air all alone along and are area as asleep at away balance bed before between
    book both bringing brought burnt by c can card carry clear cold coldest comes damp date day deck do done door
    doubtful down drips drive dry each eight either electricity end every exhaust far fed file find first fit flaps
    flat floor folded for frame from front fuel full fumes go goes half hangs heard heater heaters height held high
    hot hour hours how in inside inwards is it its kept kg kind known lay lb least left lets letter lies likely look
    loses lowest makes measure measured month most night nights no nobody not note of off on open opened opening
    openings opens or order ordered out outdoor outside over paper part people per pipes place plan planned prints
    reached reaches rear rearward rides right road roof room runs saw share short side size slides standing stands
    starts take tape taped that the there thick thing things this through tick to today too trailer under wall walls
    wanted warm warmth water way we weighed weighs weight wet what when where while who whole wide wires with
    without work wrong year yet you yourself""".split()
)
"""Words that somebody who never built or towed knows. A new one goes here only if that is so of it."""


@cache
def shown(demo: str) -> tuple[contract.Screen, ...]:
    """Return every screen of a demo rig, today and as it will be."""
    session = Session((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"), DAY)
    screens = Screens()
    stages = ("", session.reading.rig.stages_in_order[-1].name)
    found = [
        screens.screen(session, one.name, contract.Slot(stage=stage)) for one in screens.names() for stage in stages
    ]
    return tuple(one for one in found if one is not None)


def labels(screen: contract.Screen) -> list[str]:
    return list(labels_of(screen.pictures, screen.tables, screen.charts, screen.pages))


@pytest.mark.parametrize("demo", DEMOS)
def test_every_label_is_plain_or_explained(demo: str) -> None:
    reading = Session((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"), DAY).reading
    rig, places = reading.rig, reading.document.tree.get("places") or ()
    own = {one.name.lower() for section in (rig.parts, rig.openings) for one in section}
    own |= {one.name.lower() for one in rig.stages_in_order} | {one.name.lower() for one in rig.loads}
    own |= {name.lower() for name, _ in rig.people}
    own |= {word.lower() for place in places for word in re.findall(r"[A-Za-z][\w-]*", str(place))}
    count = 0
    for screen in shown(demo):
        explained = {one.label.lower() for one in screen.words}
        for label in labels(screen):
            count += 1
            left = {word.lower() for word in re.findall(r"[A-Za-z][\w-]*", without_words(label))}
            assert left - own <= PLAIN, (screen.name, label)
            assert {one.label.lower() for one in words_in([label])} <= explained, (screen.name, label)
    assert count > 60


def test_every_explanation_is_one_line_and_is_needed() -> None:
    said = {one.label.lower() for demo in DEMOS for screen in shown(demo) for one in screen.words}
    assert said == set(WORDS), "a word that stands on no screen needs no line"
    for word, line in WORDS.items():
        assert line[0].isupper() and line.endswith(".") and len(line) < 120, word
        assert f" {word} " not in f" {line.lower().rstrip('.')} ", (word, "explained by itself")
    assert set(SEVERAL) <= set(WORDS)


def test_a_word_is_found_alone_and_in_the_plural_and_not_within_another() -> None:
    assert [one.label for one in words_in(["Studs and bows", "Ways out at night"])] == ["Bow", "Stud", "Way out"]
    assert words_in(["A studio, a ballast and a baylike thing", "stud-free"]) == []
