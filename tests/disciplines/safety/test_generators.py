"""What is a generator by its key, by its name, or perhaps; and one that stands far off is not taken for mistyped."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from tests.disciplines.safety.test_findings import edited, worked

INSIDE = "x: 3600, side: left"
BESIDE = "x: 5000, side: centre"
"""A metre behind the trailer, whose door ends at 4000 mm."""
AWAY = "x: 3600, side: left, when_sleeping: {x: 11000, side: centre, z: 0}"
FAR_OFF = "x: 11000, side: centre"
ABOARD, ASHORE = "road: {", "road: {out: [quiet-box, generator, rack], "
THING = "  {name}: {{{at}, z: {z}, size: 500 x 300 x 400, weight: 20, stage: shell, kind: cargo{more}}}"


def rig(at: str, more: str = "", name: str = "quiet-box", z: int = 0, rides: bool = True) -> str:
    """Return the small rig with one more thing, towed with it or not."""
    text = edited(("  # one more", THING.format(name=name, at=at, z=z, more=f", {more}" if more else "")))
    return text if rides else text.replace(ABOARD, ASHORE)


def told(text: str) -> list[tuple[str, str]]:
    """Return what is said at night of a generator."""
    return [(one.kind, one.says) for one in worked(text, "sleep") if one.code == "safety/generator-near"]


def doubts(text: str) -> list[str]:
    """Return what reading says of places."""
    return [one.says for one in read_rig(text).problems if "outside the trailer" in one.says]


@pytest.mark.parametrize(
    ("at", "word"), [(INSIDE, "inside where somebody sleeps"), (BESIDE, "from door at night"), (AWAY, "")]
)
def test_its_key_tells_a_generator_whatever_its_name(at: str, word: str) -> None:
    assert told(rig(at)) == []
    found = told(rig(at, "generator: yes"))
    assert [kind for kind, _ in found] == (["stop"] if word else [])
    assert all(word in says for _, says in found)
    perhaps = told(rig(at, "generator: unknown"))
    assert [kind for kind, _ in perhaps] == (["unknown"] if word else [])
    assert all(says.startswith("nobody wrote whether quiet-box is a generator, and if it is") for _, says in perhaps)


@pytest.mark.parametrize("name", ["generator-2000", "gen-set", "genset", "genny"])
def test_its_name_stays_a_hint_that_the_key_overrules(name: str) -> None:
    assert [kind for kind, _ in told(rig(INSIDE, name=name))] == ["stop"]
    assert told(rig(INSIDE, "generator: no", name=name)) == []
    assert [kind for kind, _ in told(rig(INSIDE, "generator: unknown", name=name))] == ["unknown"]


def test_what_only_may_be_a_generator_stops_nothing_by_itself() -> None:
    """Only what is known to burn a liquid needs what puts out liquids."""
    empty = edited(("puts_out: ABC", "puts_out: solids"), ("can: full}, parked", "can: empty}, parked"))
    codes = []
    for more in ("generator: unknown", "generator: yes"):
        text = empty.replace("  # one more", THING.format(name="quiet-box", at=AWAY, z=0, more=f", {more}"))
        codes.append(sorted({one.code for one in worked(text, "sleep")}))
    assert codes == [[], ["safety/extinguisher"]]


def test_a_word_that_tells_nothing_is_a_mistake() -> None:
    (mistake,) = [one for one in read_rig(rig(INSIDE, "generator: perhaps")).problems if "generator" in one.path]
    assert "yes, no or unknown" in mistake.says


@pytest.mark.parametrize(("more", "name"), [("generator: yes", "quiet-box"), ("", "generator")])
def test_a_generator_far_off_is_not_mistyped_and_far_enough(more: str, name: str) -> None:
    ashore = rig(FAR_OFF, more, name, rides=False)
    assert doubts(ashore) == [] and told(ashore) == []
    (says,) = doubts(rig(FAR_OFF, more, name))
    assert "mistyped" not in says and "write x as where it rides, and when_sleeping: {x: ..}" in says


@pytest.mark.parametrize(
    ("at", "z", "rides", "is_doubted"),
    [
        ("x: 2600, side: right+1400", -300, False, False),
        ("x: 2600, side: right+1400", -300, True, True),
        ("x: 2600, side: right+1400", 300, False, True),
        ("x: 2600, side: right-400, when_sleeping: {side: right+1400, z: -300}", 0, True, False),
    ],
)
def test_a_rack_set_down_beside_the_door_is_not_mistyped(at: str, z: int, rides: bool, is_doubted: bool) -> None:
    """It stands on the ground and is not towed with, or is written where it rides and where it stands at night."""
    found = doubts(rig(at, name="rack", z=z, rides=rides))
    assert [("mistyped" in says, "when_sleeping: {side: ..}" in says) for says in found] == [(True, True)] * is_doubted


@pytest.mark.parametrize(
    ("at", "z", "says"),
    [
        ("x: 2600, side: right+29000", -300, ""),
        ("x: 2600, side: right+35000", -300, "over 30 m from the trailer; is side mistyped"),
        ("x: 90000, side: left", -300, "over 30 m from the trailer; is x mistyped"),
        ("x: 2600, side: right-400", -5000, "is z mistyped"),
        ("x: 2600, side: right-400", -2200, "is z mistyped"),
        ("x: 2600, side: right+1400", -2200, "is z mistyped"),
    ],
)
def test_what_is_set_down_stands_neither_out_of_sight_nor_under_the_ground(at: str, z: int, says: str) -> None:
    """Further than a cable reaches, or deeper than a metre under any deck and the ground it stands on, is a slip."""
    found = [one.says for one in read_rig(rig(at, name="rack", z=z, rides=False)).problems if "mistyped" in one.says]
    assert any(says in one for one in found) if says else found == []
