"""A whole file becomes a rig: nothing vanishes, every mistake is said with its line and how to write it."""

from pathlib import Path

import pytest

from boxwright.rig.compose import Composer, read_rig
from boxwright.rig.keys import KNOWN_KEYS
from boxwright.rig.read import edited, read_document

RIGS = Path(__file__).parents[2] / "rigs"
IN, LB = 0.0254, 0.45359237  # exact: yard and pound agreement of 1959 (from memory)


def rig_of(name):
    return read_rig((RIGS / f"{name}.yaml").read_bytes())


def part(rig, name):
    return next(item for item in rig.parts if item.name == name)


def middle(place):
    return tuple(round(axis.best / IN, 6) for axis in (place.x, place.y, place.z))


@pytest.mark.parametrize("name", ["whimbrel", "dunlin", "gannet"])
def test_the_demo_rigs_read_without_a_problem(name):
    reading = rig_of(name)
    assert [problem for problem in reading.problems if problem.kind == "problem"] == []
    assert reading.rig.troubled == ()


def test_whimbrels_places_come_out_as_a_tape_would_find_them():
    rig = rig_of("whimbrel").rig
    assert middle(part(rig, "step").place)[0] == 20 + 12
    # left wall: liner 1/4 and strip 1/4 stand inside the studs at -40
    assert middle(part(rig, "front-cabinet").place) == (0.25 + 0.25 + 7.5, -39.5 + 23, 1.5 + 18)
    assert middle(part(rig, "battery").place) == (0.5 + 3 + 4.5, -39.5 + 2 + 10, 1.5 + 1 + 4.5)
    assert middle(part(rig, "counter").place)[2] == 1.5 + 36 + 0.5
    assert middle(part(rig, "d-rings-left").place)[0] == (66 + 102 + 138) / 3
    assert part(rig, "bunk").folded is not None and part(rig, "bedding").folded is not None
    assert part(rig, "duffels").leaves_at_night and part(rig, "cots").asleep is not None


def test_a_weighed_part_weighs_what_the_scale_said():
    boat = part(rig_of("whimbrel").rig, "boat")
    assert boat.mass.known and boat.mass.best == pytest.approx(112 * LB)
    assert boat.mass.low < boat.mass.best < boat.mass.high


def test_what_nobody_wrote_is_unknown_and_never_zero():
    rig = rig_of("whimbrel").rig
    unknown = {item.name for item in rig.parts if not item.mass.known}
    assert unknown == {"launch-wheels", "deck-chairs"}


MISTAKES = [
    ("frist: {x: 3, side: left, z: 0, size: 4 x 4 x 4, weight: 8 stone}", "parts[frist].weight", ["8 stone", "51 kg"]),
    ("a: {x: 3, side: left, z: 0, size: 4 x 4, weight: 8}", "parts[a].size", ["4 x 4"]),
    ("a: {x: frnt, side: left, z: 0, size: 4 x 4 x 4, weight: 8}", "parts[a].x", ["frnt"]),
    ("a: {x: 3, sied: left, z: 0, size: 4 x 4 x 4, weight: 8}", "parts[a].sied", ["sied", "side"]),
    ("a: {x: 3, side: left, z: 0, weight: 8, inside: bux}", "parts[a].inside", ["bux", "box"]),
    ("a: {x: 3, side: left, z: 0, weight: 8, stage: linars}", "parts[a].stage", ["linars", "liners"]),
    ("a: {x: 900, side: left, z: 0, size: 4 x 4 x 4, weight: 8}", "parts[a].x", ["outside"]),
    ("a: {x: 3, side: left, z: 0, weight: 8, battery: {volts: twelve}}", "parts[a].battery.volts", ["twelve"]),
    ("a: just words", "parts[a]", ["just words", "{"]),
    ("a: {x: 3, side: left, z: 0, weight: 8, done: soonish}", "parts[a].done", ["soonish", "part"]),
]

AROUND = """\
boxwright: 1
rig: Trial
units: {length: in, weight: lb}
countries: [US]
trailer:
  body: {length: 168, width: 80, height: 78}
  coupler_x: -52
  axles: {kind: leaf with equaliser, x: [83, 117], gawr: [3500, 3500]}
  empty: {weight: 1960, tongue: 235, cg_z: 22}
stages: {measure: {what: one}, liners: {what: two}}
parts:
  box: {x: 10, side: left, z: 0, size: 10 x 10 x 10, weight: 20, stage: measure}
"""


@pytest.mark.parametrize(("line", "path", "words"), MISTAKES)
def test_each_mistake_is_said_where_it_stands_and_the_part_stays(line, path, words):
    reading = read_rig(AROUND + "  " + line + "\n")
    said = [problem for problem in reading.problems if problem.path == path]
    assert said, reading.problems
    assert said[0].line == 13
    for word in words:
        assert word in said[0].says
    name = line.split(":")[0]
    assert part(reading.rig, name) and part(reading.rig, "box").mass.best == pytest.approx(20 * LB)
    assert path in reading.rig.troubled


def test_a_bad_facet_costs_only_itself():
    reading = read_rig(
        AROUND + "  a: {x: 3, side: left, z: 0, size: 1 x 1 x 1, weight: 8, draw: lots, hinge: {at: oops}}\n"
    )
    assert part(reading.rig, "a").mass.best == pytest.approx(8 * LB)


def test_parts_in_each_other_are_told_and_still_weigh():
    reading = read_rig(AROUND + "  a: {inside: b, x: +1, weight: 5}\n  b: {inside: a, x: +1, weight: 6}\n")
    assert any("itself in or on" in problem.says for problem in reading.problems)
    assert part(reading.rig, "a").mass.known and part(reading.rig, "b").mass.known


@pytest.mark.parametrize(
    "text",
    ["", "\n", "42", "- a\n- b\n", "parts:\n", "parts: 3\n", "trailer: no\n", "rig: [a]\n", "stages: x\nloads: 3\n"],
)
def test_any_text_gives_a_rig(text):
    reading = read_rig(text)
    assert reading.rig.loads and reading.problems


def test_a_later_format_is_read_as_far_as_it_is_known():
    reading = read_rig(AROUND.replace("boxwright: 1", "boxwright: 7"))
    assert reading.rig.header.format == 7 and "boxwright" in reading.rig.troubled


def test_an_edit_composes_only_what_it_touches():
    text = (RIGS / "whimbrel.yaml").read_text(encoding="utf-8")
    document = read_document(text, known_keys=KNOWN_KEYS)
    composer = Composer()
    before = composer.compose(document).rig
    at = text.index("weight: 74, stage: galley")
    after = composer.compose(edited(document, at, at + len("weight: 74"), "weight: 75")).rig
    same = sum(a is b for a, b in zip(before.parts, after.parts, strict=True))
    touched = {a.name for a, b in zip(before.parts, after.parts, strict=True) if a is not b}
    assert "galley" in touched and same >= len(before.parts) - 6, touched
    assert (
        composer.compose(read_document(text[:at] + "weight: 75" + text[at + 10 :], known_keys=KNOWN_KEYS)).rig == after
    )


def test_a_part_without_a_size_may_reach_as_far_as_a_bed_and_is_asked_about() -> None:
    reading = read_rig(AROUND + "  bed: {x: 20, side: left, z: 0, weight: 900, stage: liners}\n")
    assert [problem.path for problem in reading.problems] == ["parts[bed]"]
    place = part(reading.rig, "bed").place.x
    assert place.low == pytest.approx(20 * IN) and place.high == pytest.approx(20 * IN + 1.25)
    assert place.low <= (20 + 35) * IN <= place.high, "a bed of 70 in has its middle there"


def test_a_tank_of_something_unknown_is_asked_about() -> None:
    for tank in ("{volume: 20}", "{of: milk, volume: 20}"):
        line = f"  can: {{x: 20, side: left, z: 0, size: 9 x 9 x 9, weight: 2, stage: liners, tank: {tank}}}\n"
        reading = read_rig(AROUND.replace("weight: lb}", "weight: lb, volume: gal}") + line)
        assert [problem.path for problem in reading.problems] == ["parts[can].tank"]
        assert "water" in reading.problems[0].says
