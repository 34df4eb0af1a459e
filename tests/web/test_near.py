"""While a hand holds a thing: the clash it is brought into is said, and the nearest gaps stand beside it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from boxwright.web.contract import Slot
from boxwright.web.figures import numbers_of
from boxwright.web.session import Session
from boxwright.web.things import held, thing

KNOT = (Path(__file__).parents[1] / "findings" / "layout" / "rig.yaml").read_text(encoding="utf-8")
INCH = 0.0254
LOOK = Slot(stage="lined", load="road")


def session() -> Session:
    return Session(KNOT, date(2026, 6, 1))


def test_a_thing_brought_into_another_is_said_before_it_is_let_go() -> None:
    desk = session()
    before = desk.text
    seen = desk.preview("parts[box]", (18.0 * INCH, 0.0, 0.0), desk.rev, LOOK)
    told = numbers_of(seen, 1, desk.rev, preview=True)
    assert any(one.code == "layout/one-space" and one.where == "parts[box]" for one in told.findings or [])
    assert desk.text == before
    free = numbers_of(desk.preview("parts[box]", (0.0, INCH, 0.0), desk.rev, LOOK), 2, desk.rev, preview=True)
    assert not any(one.code == "layout/one-space" for one in free.findings or [])


def test_the_nearest_gaps_of_a_held_thing_stand_beside_it() -> None:
    desk, shift = session(), (5.0 * INCH, INCH, 0.0)
    shown = {one.key: (one.text, one.unit, one.kind) for one in held(desk.preview("parts[box]", shift, 0, LOOK),
                                                                     "parts[box]", shift)}  # fmt: skip
    assert shown["near"] == ("1 in", "to the left wall", None)
    assert shown["near-2"] == ("6 in", "to heater", None)
    into = (18.0 * INCH, 0.0, 0.0)
    shown = {one.key: (one.text, one.unit, one.kind) for one in held(desk.preview("parts[box]", into, 0, LOOK),
                                                                     "parts[box]", into)}  # fmt: skip
    assert shown["near"][1:] == ("into heater", "advice")


def test_what_carries_a_thing_is_not_told_as_near_it() -> None:
    desk, shift = session(), (0.0, 0.0, 0.0)
    names = {one.unit for one in held(desk.preview("parts[kettle]", (INCH, 0.0, 0.0), 0, LOOK), "parts[kettle]", shift)}
    assert not any("cabinet" in name for name in names)


NEST = """boxwright: 1
units: {length: in, weight: lb}
parts:
  bench: {x: 40, side: left+1, z: floor, size: 30 x 20 x 18, weight: 30}
  tank: {inside: bench, x: +2, side: left+3, z: +-1, size: 20 x 14 x 10, weight: 12}
  tank-2: {x: 4, side: left+3, z: floor, size: 20 x 14 x 10, weight: 12}
"""


def test_a_place_from_another_thing_is_explained_from_that_thing() -> None:
    found = thing(Session(NEST, date(2026, 6, 1)), "parts[tank]")
    means = {one.label: one.explains for one in found.fields}
    assert means["x"].startswith("behind the front edge of bench")
    assert means["z"].startswith("its underside above the underside of bench")
    assert means["side"].startswith("across: left+6"), "it is written from the wall"
    alone = {one.label: one.explains for one in thing(Session(NEST, date(2026, 6, 1)), "parts[bench]").fields}
    assert alone["x"] == "behind the front stud face, to its front edge"


def test_a_thing_in_hand_tells_the_name_its_copy_takes() -> None:
    assert thing(Session(NEST, date(2026, 6, 1)), "parts[tank]").of_a_copy == "tank-3"
