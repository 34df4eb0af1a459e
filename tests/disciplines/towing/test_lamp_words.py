"""Lamps in the words of several countries; a word nobody knows is asked about instead of stopping falsely."""

from __future__ import annotations

import pytest

from boxwright.disciplines.towing.findings.fitted import lamps_listed
from boxwright.disciplines.towing.lamp_words import read_lamps
from boxwright.finding import Finding
from tests.findings.towing.held import said_of

NEBRASKA = ["tail", "stop", "turn", "side", "clearance front", "clearance rear", "identification", "plate"]


def lamps(written: list[str], place: str = "US-NE") -> list[Finding]:
    edits = {"trailer.lamps": written, "countries": [place]}
    return [one for one in said_of(edits) if one.code == "towing/lamps" and one.kind != "advice"]


@pytest.mark.parametrize(
    ("word", "means"),
    [
        ("brake", {"stop"}), ("Brake lights", {"stop"}), ("indicators", {"turn"}), ("turn signals", {"turn"}),
        ("ID bar", {"identification"}), ("clearance", {"clearance front", "clearance rear"}),
        ("rear clearance", {"clearance rear"}), ("clearance front and rear", {"clearance front", "clearance rear"}),
        ("triangles", {"reflectors"}), ("number plate", {"plate"}), ("license", {"plate"}), ("side markers", {"side"}),
        ("tail/stop/turn", {"tail", "stop", "turn"}), ("reflectors triangular", {"reflectors"}), ("fog", set()),
    ],
)  # fmt: skip
def test_ordinary_words_are_known(word: str, means: set[str]) -> None:
    assert read_lamps((word,)) == (frozenset(means), ())


@pytest.mark.parametrize("word", ["blue things", "no tail", "stop (broken)", "side not yet", "tails missing"])
def test_a_lamp_nobody_can_rely_on_is_not_fitted(word: str) -> None:
    assert read_lamps(("turn", word)) == (frozenset({"turn"}), (word,))


def test_the_words_of_two_countries_hold() -> None:
    assert lamps(["tail", "brake", "turn signals", "side markers", "clearance", "ID bar", "license plate"]) == []
    of_uk = ["tail", "brake", "indicators", "number plate", "triangles", "clearance", "front position"]
    assert lamps(of_uk, "UK") == []


def test_an_unknown_word_is_asked_about_where_a_lamp_is_lacking() -> None:
    lacking = [one for one in NEBRASKA if one != "identification"]
    (found,) = lamps([*lacking, "rear glow"])
    assert (found.kind, found.could_stop, found.where) == ("unknown", True, "trailer.lamps")
    assert '"rear glow"' in found.says and "identification" in found.says
    assert lamps([*NEBRASKA, "rear glow"]) == []
    assert [one.kind for one in lamps(lacking)] == ["stop"]
    assert "stop" in [one.kind for one in lamps(["none"])]


def test_reflectors_are_no_lamps() -> None:
    assert lamps_listed(("tail", "stop", "reflectors")) == "tail and stop lamps and reflectors"
    assert lamps_listed(("reflectors",)) == "reflectors" and lamps_listed(("side",)) == "side lamps"
    (found,) = lamps(["side"], "UK")[:1]
    assert "reflectors lamps" not in found.says + found.act and "plate lamps and reflectors" in found.says


def test_what_chains_are_asked_for_is_said_in_full() -> None:
    """New Zealand: each breaks at no less than twice the weight; 2,063 kg ask for 4,126 kg."""
    edits = {"countries": ["NZ"], "trailer.brakes.breakaway": "no", "gross": "2063 kg", "tongue": "200 kg"}
    pair = {"trailer.chains": {"count": "2", "rating": "2500 kg"}}
    (found,) = (one for one in said_of({**edits, **pair}) if one.code == "towing/chains")
    assert found.kind == "stop" and "2 chains of 5,512 lb each are too weak for 4,548 lb: NZ asks for" in found.says
    assert "a breaking load of each of 2 times the weight, 9,096 lb" in found.says
    single = {"countries": ["US-NH"], "trailer.chains": {"count": "1", "rating": "500 kg"}}
    weak = [one.says for one in said_of({**edits, **single}) if "too weak" in one.says]
    assert weak and all("one chain of 1,102 lb is too weak" in says for says in weak)
