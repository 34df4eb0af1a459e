"""What the hand does becomes the text a builder would have written, and nothing else in the file changes."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.rig.compose import read_rig
from boxwright.rig.read import read_document
from boxwright.web import gestures
from boxwright.web.gestures import Refused

INCH = 0.0254
HEAD = """\
boxwright: 1
rig: Hand
units: {length: in, weight: lb}
trailer:
  body: {length: 168, width: 80, height: 78}
  coupler_x: -52
  axles: {x: [83, 117], gawr: [3500, 3500]}
stages: {all: {what: everything}}
parts:
"""
METRIC = HEAD.replace("length: in, weight: lb", "length: mm, weight: kg").replace("168", "4270")


def after(parts: str, of: str, *shift: float, head: str = HEAD) -> str:
    """Return the parts as written after one of them was moved by millimetres."""
    document = read_document(head + parts)
    x, side, z = (one / 1000.0 for one in shift)
    made = gestures.moved(document, read_rig(head + parts).rig, of, (x, side, z))
    assert made.text.startswith(head)
    return made.text.removeprefix(head)


@pytest.mark.parametrize(
    ("key", "before", "mm", "written"),
    [
        ("x", "36", 25.4, "37"),
        ("x", "36 1/2", 25.4 * 1.26, "37 3/4"),
        ("x", "-30", 25.4 * 2, "-28"),
        ("x", "rear-40", 25.4 * 6, "rear-34"),
        ("x", "rear-40", -25.4 * 6, "rear-46"),
        ("x", "front", 25.4 * 3, "front+3"),
        ("x", "front+3", -25.4 * 3, "front"),
        ("x", "mid 80", 25.4 * 0.5, "mid 80 1/2"),
        ("x", "900 mm", 12.4, "912 mm"),
        ("x", "1.2 m", 12.4, "1.212 m"),
        ("x", "3 ft", 25.4 * 6, "3.5 ft"),
        ("x", "36", 0.7, "36"),
        ("x", "36", 0.9, "36 1/16"),
        ("side", "left+6", 25.4 * 2, "left+8"),
        ("side", "right-6", 25.4 * 2, "right-4"),
        ("side", "right-6", 25.4 * 8, "right+2"),
        ("side", "centre", -25.4, "centre-1"),
        ("side", "centre-1", 25.4, "centre"),
        ("z", "floor", 25.4 * 25, "floor+25"),
        ("z", "ceiling-2", -25.4, "ceiling-3"),
        ("z", "deck", 25.4, "deck+1"),
    ],
)
def test_a_place_keeps_its_anchor_and_its_unit(key: str, before: str, mm: float, written: str) -> None:
    places = {"x": "36", "side": "left+6", "z": "floor", key: before}
    line = "  box: {{x: {x}, side: {side}, z: {z}, size: 10 x 10 x 10, weight: 5}} # mine\n"
    shift = [mm if one == key else 0.0 for one in ("x", "side", "z")]
    assert after(line.format(**places), "parts[box]", *shift) == line.format(**{**places, key: written})


def test_a_metric_rig_is_moved_in_whole_millimetres() -> None:
    line = "  box: {x: 900, side: left+60, z: floor, size: 100 x 100 x 100, weight: 5}\n"
    assert after(line, "parts[box]", 12.4, 10.6, 0.0, head=METRIC) == line.replace("900", "912").replace("+60", "+71")


def test_every_place_of_a_counted_thing_moves() -> None:
    line = "  rings: {side: left+10, z: deck, size: 4 x 4 x 1, at: [66, 102, rear-30], weight: 4}\n"
    moved = line.replace("[66, 102, rear-30]", "[68, 104, rear-28]")
    assert after(line, "parts[rings]", 50.8, 0.0, 0.0) == moved


def test_what_hangs_on_a_wall_slides_along_it() -> None:
    line = "  horn: {x: 50, wall: right, z: 40, size: 5 x 5 x 16, weight: 6}\n"
    assert after(line, "parts[horn]", 25.4, 30.0, 0.0) == line.replace("50", "51")
    with pytest.raises(Refused, match="hangs on the right wall"):
        after(line, "parts[horn]", 0.0, 30.0, 0.0)


@pytest.mark.parametrize("wall", ["front", "rear"])
def test_what_hangs_on_an_end_wall_slides_across(wall: str) -> None:
    line = f"  horn: {{side: left+10, wall: {wall}, z: 40, size: 5 x 5 x 16, weight: 6}}\n"
    assert after(line, "parts[horn]", 30.0, 25.4, 0.0) == line.replace("left+10", "left+11")
    with pytest.raises(Refused, match=f"hangs on the {wall} wall"):
        after(line, "parts[horn]", 30.0, 0.0, 0.0)


@pytest.mark.parametrize(("wall", "at"), [("left", "side"), ("right", "side"), ("front", "x"), ("rear", "x")])
def test_a_place_along_its_wall_that_nobody_wrote_is_not_taken_for_one_across_it(wall: str, at: str) -> None:
    """Only the way through the wall needs no place; along the wall one is missing."""
    along, shift = ("x", (25.4, 0.0, 0.0)) if at == "side" else ("side", (0.0, 25.4, 0.0))
    line = f"  horn: {{wall: {wall}, z: 40, size: 5 x 5 x 16, weight: 6}}\n"
    with pytest.raises(Refused, match=rf"parts\[horn\]\.{along} is not written yet"):
        after(line, "parts[horn]", *shift)


def test_what_is_not_placed_at_all_is_not_moved() -> None:
    line = "  box: {side: left, z: floor, size: 5 x 5 x 16, weight: 6}\n"
    with pytest.raises(Refused, match=r"parts\[box\]\.x is not written yet"):
        after(line, "parts[box]", 25.4, 0.0, 0.0)


@pytest.mark.parametrize("doubtful", ["30..40", "about 30", "30 +-2", "unknown"])
def test_a_doubtful_place_is_not_moved_behind_its_doubt(doubtful: str) -> None:
    line = f"  box: {{x: {doubtful}, side: left, z: floor, size: 5 x 5 x 16, weight: 6}}\n"
    with pytest.raises(Refused, match="no single place"):
        after(line, "parts[box]", 25.4, 0.0, 0.0)


NEST = """\
  bench: {x: 40, side: left+1, z: floor, size: 30 x 20 x 18, weight: 30}
  tank:  {inside: bench, x: +2, side: +1, z: +1, size: 20 x 14 x 10, weight: 12}
  crate: {inside: bench, x: 44, side: left+4, z: +1, size: 6 x 6 x 6, weight: 5}
  tin:   {inside: crate, x: 45, side: +1, z: floor+3, size: 2 x 2 x 2, weight: 1}
  mug:   {rides_on: tin, side: +0, z: +2, size: 2 x 2 x 2, weight: 1}
  other: {x: 44, side: left+4, z: floor+30, size: 6 x 6 x 6, weight: 5}
"""


def test_what_is_in_or_on_a_thing_goes_along() -> None:
    moved = after(NEST, "parts[bench]", 25.4, 25.4, 50.8)
    assert moved == (
        NEST.replace("x: 40, side: left+1, z: floor,", "x: 41, side: left+2, z: floor+2,")
        .replace("x: 44, side: left+4, z: +1", "x: 45, side: left+5, z: +1")
        .replace("x: 45, side: +1, z: floor+3", "x: 46, side: +1, z: floor+5")
    )
    places = {item.name: item.place for item in read_rig(HEAD + NEST).rig.parts}
    for item in read_rig(HEAD + moved).rig.parts:
        far = 0.0 if item.name == "other" else INCH
        was = places[item.name]
        for axis, by in (("x", far), ("y", far), ("z", 2.0 * far)):
            now, then = getattr(item.place, axis), getattr(was, axis)
            assert now.best - then.best == pytest.approx(by, abs=1e-9), (item.name, axis)


def test_a_place_from_another_thing_may_go_below_nothing_and_comes_back() -> None:
    moved = after(NEST, "parts[tank]", -25.4 * 5, 0.0, 0.0)
    assert "tank:  {inside: bench, x: +-3, side: +1" in moved
    rig = read_rig(HEAD + moved)
    assert [one.says for one in rig.problems] == [one.says for one in read_rig(HEAD + NEST).problems]
    tank = next(item for item in rig.rig.parts if item.name == "tank")
    assert tank.place.low_edge(0).best == pytest.approx(37 * INCH)
    assert after(moved, "parts[tank]", 25.4 * 5, 0.0, 0.0) == NEST


def test_things_that_stand_in_each_other_do_not_go_round_for_ever() -> None:
    parts = """\
  a: {inside: b, x: 10, side: left, z: floor, size: 5 x 5 x 5, weight: 1}
  b: {inside: a, x: 20, side: left, z: floor, size: 5 x 5 x 5, weight: 1}
"""
    assert after(parts, "parts[a]", 25.4, 0.0, 0.0) == parts.replace("10", "11").replace("20", "21")


def test_a_quarter_turn_swaps_length_and_width() -> None:
    document = read_document(HEAD + NEST)
    made = gestures.turned(document, "parts[bench]")
    assert made.text == (HEAD + NEST).replace("30 x 20 x 18", "20 x 30 x 18")
    with pytest.raises(Refused, match="no size of three"):
        gestures.turned(read_document(HEAD + "  a: {x: 1, size: 5 x 5, weight: 1}\n"), "parts[a]")


def test_a_copy_takes_the_next_free_name() -> None:
    document = gestures.copied(read_document(HEAD + NEST), "parts[mug]", "")
    document = gestures.copied(document, "parts[mug-2]", "")
    assert {name for section, name in document.numbers if section == "parts"} >= {"mug", "mug-2", "mug-3"}
    with pytest.raises(Refused, match="already"):
        gestures.copied(document, "parts[mug]", "tin")


def test_another_name_is_written_everywhere() -> None:
    made = gestures.renamed(read_document(HEAD + NEST), "parts[bench]", "settle")
    assert made.text == (HEAD + NEST).replace("bench", "settle")


def test_a_thing_taken_out_leaves_the_rest_as_it_was() -> None:
    made = gestures.taken_out(read_document(HEAD + NEST), "parts[other]")
    assert made.text == HEAD + "".join(line for line in NEST.splitlines(keepends=True) if "other" not in line)


NO_THINGS = ["", "parts", "parts[", "parts[none]", "trailer", "trailer.body", "parts[bench].x", "[]"]


@pytest.mark.parametrize("of", NO_THINGS)
def test_a_path_that_leads_to_no_thing_is_refused(of: str) -> None:
    document, rig = read_document(HEAD + NEST), read_rig(HEAD + NEST).rig
    for gesture in (
        lambda: gestures.taken_out(document, of),
        lambda: gestures.copied(document, of, ""),
        lambda: gestures.renamed(document, of, "new"),
        lambda: gestures.moved(document, rig, of, (0.1, 0.0, 0.0)),
    ):
        with pytest.raises(Refused):
            gesture()


@pytest.mark.parametrize("value", ["", "  ", "\n", "a\nb: c"])
def test_a_value_that_is_none_is_refused_or_stays_one_value(value: str) -> None:
    document = read_document(HEAD + NEST)
    try:
        made = gestures.written(document, "parts[bench].x", value)
    except Refused:
        return
    assert made.numbers == document.numbers


def test_an_accepted_finding_is_written_with_note_and_day() -> None:
    document = read_document(HEAD + NEST)
    made = gestures.accepted(document, "weight/sides-differ", "", "seen, it is the bench", "", date(2026, 5, 2))
    made = gestures.accepted(made, "weight/sides-differ", "parts[bench]", "", "", date(2026, 5, 2))
    assert len(read_rig(made.text).problems) == len(read_rig(HEAD + NEST).problems)
    accepted = read_rig(made.text).rig.accepted
    assert [(one.code, one.where) for one in accepted] == [
        ("weight/sides-differ", ""),
        ("weight/sides-differ", "parts[bench]"),
    ]
    assert "seen, it is the bench" in made.text
    assert "2026-05-02" in made.text
