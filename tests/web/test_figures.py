"""The numbers beside the sheet, by hand arithmetic: which side, which end of a band, and what stays open."""

from __future__ import annotations

from datetime import date
from math import isclose

import pytest

from boxwright.web import contract
from boxwright.web.contract import Slot
from boxwright.web.figures import numbers_of
from boxwright.web.session import Session

DAY = date(2026, 5, 2)
LOOK = Slot(load="full")
EMPTY, BALL, PLATE, BOX = 500.0, 50.0, 1000.0, 120.0
COUPLER, AXLE, MIDDLE = -1.2, 1.6, 1.7
"""Where (m) the ball is, the axle, and the middle of the box; weights in kg."""
RIG = """\
boxwright: 1
rig: Plain
units: {length: mm, weight: kg}
trailer:
  body: {length: 3000, width: 1800, height: 1900}
  coupler_x: -1200
  gvwr: 1000
  axles: {x: [1600], gawr: [1500], track: 1600}
  empty: {weight: 500, tongue: 50}
stages: {all: {what: everything, done: yes}}
parts:
  box: {x: 1500, side: left, z: floor, size: 400 x 600 x 300, weight: 120, stage: all, done: yes}
loads: {full: {cargo: none, for: [tow]}}
"""
UNKNOWN = RIG.replace("weight: 120", "weight: unknown")


def told(text: str, slot: Slot = LOOK) -> contract.Numbers:
    return numbers_of(Session(text, DAY).seen(slot), 0, 0, False)


def figure(text: str, key: str) -> contract.Figure:
    return next(one for one in told(text).figures if one.key == key)


@pytest.mark.parametrize(("side", "word"), [("left", "kg left"), ("right", "kg right")])
def test_the_heavier_side_is_the_one_it_was_put_on(side: str, word: str) -> None:
    one = figure(RIG.replace("side: left", f"side: {side}"), "sides")
    # Its middle is 600 mm off the trailer's; a ball holds nothing upright, so the wheels 1.6 m apart take all of that.
    heavier = 2.0 * BOX * 0.6 / 1.6
    assert (one.text, one.unit) == (f"{heavier:,.0f}", word)


def test_the_room_to_the_plate_is_what_is_left_and_never_more_than_is_known() -> None:
    known, open_end = figure(RIG, "room"), figure(UNKNOWN, "room")
    assert (known.text, known.unit) == (f"{PLATE - EMPTY - BOX:.0f}", "kg")
    assert (open_end.text, open_end.band) == ("at most 500", ""), "what is not weighed takes room, it gives none"
    gross = figure(UNKNOWN, "gross")
    assert (gross.text, gross.band) == ("500 + ?", "at least 500"), "here it can only add"
    wide = figure(RIG.replace("{weight: 500, tongue: 50}", "{weight: 480..560, tongue: 50}"), "room")
    assert wide.text.startswith("360 +-"), "between 320 and 400 by the empty weight alone"


def test_the_balance_carries_what_presses_down_and_says_what_stays_open() -> None:
    beam = told(RIG).balance
    assert beam is not None
    down = [one for one in beam.reactions if one.is_down]
    up = [one for one in beam.reactions if not one.is_down]
    assert [one.label for one in down] == ["all"] and [one.label for one in up] == ["ball", "axle 1"]
    assert isclose(sum(one.kg for one in up), down[0].kg, rel_tol=1e-9) and isclose(down[0].kg, EMPTY + BOX)
    assert isclose(sum(one.kg * one.x_mm for one in up), down[0].kg * down[0].x_mm, rel_tol=1e-6)
    ball = BALL + BOX * (AXLE - MIDDLE) / (AXLE - COUPLER)
    assert isclose(up[0].kg, ball, rel_tol=1e-6)
    assert beam.says == f"Balance: 620 kg in all; carried by ball {ball:.0f} kg, axle 1 {620 - ball:.0f} kg"
    doubtful = told(UNKNOWN).balance
    assert doubtful is not None
    assert doubtful.says.startswith("Balance: 500 + ? kg in all"), "never as if all of it were known"
    # The box stands behind the axle: what it weighs presses the axle down and lifts the ball, whose 50 kg are
    # known to 2.5.
    assert [one.text for one in doubtful.reactions] == ["at most 52 kg", "450 + ? kg", "500 + ? kg"]


def test_no_balance_is_drawn_of_what_nobody_knows() -> None:
    assert told(RIG.replace("  empty: {weight: 500, tongue: 50}\n", "")).balance is None, "not of the box alone"
    assert told(RIG.replace("coupler_x: -1200", "coupler_x: unknown")).balance is None


def test_what_the_owner_accepts_stands_apart_and_is_not_lost() -> None:
    session = Session(RIG.replace("track: 1600", "track: 1600, max_speed: unknown"), DAY)
    before = numbers_of(session.seen(LOOK), 0, 0, False)
    one = next(found for found in before.findings or [] if found.may_accept)
    session.accept(one.code, one.where, "I know", "", 0.0)
    after = numbers_of(session.seen(LOOK), 0, 1, False)
    assert (one.code, one.where) in {(kept.code, kept.where) for kept in after.accepted or []}
    assert (one.code, one.where) not in {(kept.code, kept.where) for kept in after.findings or []}
    assert not any(kept.may_accept or kept.may_seek or kept.blanks for kept in after.accepted or [])
    assert before.accepted == []


def test_a_stop_cannot_be_accepted_and_everything_less_can() -> None:
    """500 kg and 120 kg are 20 kg over a plate of 600 kg: by hand."""
    found = told(RIG.replace("gvwr: 1000", "gvwr: 600")).findings or []
    stops = [one for one in found if one.kind == "stop"]
    assert any(one.code == "towing/gross-over-plate" for one in stops)
    assert [one.code for one in stops if one.may_accept] == []
    assert [one.code for one in found if one.kind != "stop" and not one.may_accept] == []
    assert len(found) > len(stops)


def test_a_stop_that_a_page_accepts_all_the_same_stays_a_stop() -> None:
    session = Session(RIG.replace("gvwr: 1000", "gvwr: 600"), DAY)
    one = next(found for found in numbers_of(session.seen(LOOK), 0, 0, False).findings or [] if found.kind == "stop")
    session.accept(one.code, one.where, "it will hold", "", 0.0)
    after = numbers_of(session.seen(LOOK), 0, 1, False)
    assert (one.code, one.where) in {(kept.code, kept.where) for kept in after.findings or []}


def test_a_preview_speaks_only_of_what_is_in_hand() -> None:
    session = Session(RIG, DAY)
    seen = session.preview("parts[box]", (0.5, 0.0, 0.0), 0, LOOK)
    shown = numbers_of(seen, 7, 0, True)
    assert (shown.seq, shown.preview, shown.accepted, shown.problems) == (7, True, None, None)
    session.move("parts[box]", (0.5, 0.0, 0.0), 0, 0.0)
    assert shown.figures == numbers_of(session.seen(LOOK), 0, 1, False).figures
    assert shown.figures != told(RIG).figures
