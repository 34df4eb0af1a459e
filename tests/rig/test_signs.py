"""Lengths and angles whose sign says nothing, and a leaf that both turns and slides: told where they are written."""

from __future__ import annotations

import pytest

from boxwright.disciplines.layout.parts import Facet
from boxwright.rig.compose import read_rig

LESS = "this is a length of nothing or more"
FALLS = "a canopy falls away by 0 to 90 deg"
BOTH = "either turns or slides"


def facet_of(words: str) -> tuple[Facet, list[str]]:
    """Return what layout reads of a thing, and what is said of its text."""
    reading = read_rig(f"boxwright: 1\nunits: {{length: mm}}\nparts:\n  thing: {{{words}}}\n")
    facet = reading.rig.parts[0].facet("layout")
    assert isinstance(facet, Facet)
    return facet, [one.says for one in reading.problems if one.path.startswith("parts[thing]")]


@pytest.mark.parametrize(
    ("words", "given", "says"),
    [
        ("keep_clear: -50", "-50", LESS),
        ("keep_clear: {front: -700}", "-700", LESS),
        ("keep_clear: {width: -600}", "-600", LESS),
        ("keep_clear: {above: -1..20}", "-1..20", LESS),
        ("slides: {to: left, by: -3}", "-3", LESS),
        ("out: {reach: -1200}", "-1200", LESS),
        ("out: {reach: 1200, pitch: -8 deg}", "-8 deg", FALLS),
        ("out: {reach: 1200, pitch: 95 deg}", "95 deg", FALLS),
    ],
)
def test_a_sign_that_says_nothing_is_a_mistake(words: str, given: str, says: str) -> None:
    _, told = facet_of(words)
    assert len(told) == 1 and told[0].startswith(f'"{given}" is not taken: ') and says in told[0]


@pytest.mark.parametrize(
    ("words", "shown"),
    [
        ("generator: [yes]", '"[yes]"'),
        ("generator: []", '"[]"'),
        ("folded_depth: {deep: 4}", '"{deep: 4}"'),
        ("puts_out: {kind: {A: B}}", '"{kind: {A: B}}"'),
    ],
)
def test_a_list_or_a_map_that_is_not_understood_is_shown_as_it_is_written(words: str, shown: str) -> None:
    text = f"boxwright: 1\nunits: {{length: mm}}\nparts:\n  thing: {{{words}}}\n"
    (says,) = [one.says for one in read_rig(text).problems if one.path.startswith("parts[thing]")]
    assert shown in says


@pytest.mark.parametrize("words", ["keep_clear: 0", "slides: {to: left, by: 0}", "out: {reach: 1200, pitch: 0 deg}"])
def test_nothing_at_all_is_taken(words: str) -> None:
    facet, told = facet_of(words)
    assert told == [] and facet != Facet()


def test_an_opening_both_turns_and_slides() -> None:
    moves = "swing: {hinge: front, opens: out, to: 90 deg}", "slides: {to: rear, by: 600, runs: inside}"
    where = "boxwright: 1\nopenings:\n  flap: {wall: right, x: 3000, width: 500, z: 700, height: 500, "
    counts = []
    for words in (moves[0], moves[1], ", ".join(moves)):
        reading = read_rig(f"{where}{words}}}\n")
        counts.append([(one.line, one.path) for one in reading.problems if BOTH in one.says])
    assert counts == [[], [], [(3, "openings[flap].slides")]]


def test_a_fridge_on_runners_has_a_door_too() -> None:
    _, told = facet_of("slides: {to: left, by: 500}, swing: {hinge: front, opens: out, to: 90 deg}")
    assert told == []
