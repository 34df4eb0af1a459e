"""What takes longer is done a piece at a time, comes to an end, and is done for every tab."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.web.contract import Slot
from boxwright.web.screens import MOST_SHOWN, Screens
from boxwright.web.session import Session
from tests.web.live import ROOT

TODAY = date(2026, 11, 28)
MOST = 200


def opened(name: str) -> Session:
    return Session((ROOT / "rigs" / f"{name}.yaml").read_text(encoding="utf-8"), TODAY)


def worked_out(session: Session, screens: Screens, slots: list[Slot]) -> tuple[list[int], list[str]]:
    """Return at which turn each slot was told to be done, and the study steps the turns after that still ran."""
    told = [-1] * len(slots)
    for turn in range(MOST):
        for number, slot in enumerate(slots):
            if screens.one_piece(session, "weight", slot):
                assert told[number] < 0, "told twice"
                told[number] = turn
        if min(told) >= 0:
            break
    session.once.clear()
    for slot in slots:
        for _ in range(5):
            assert not screens.one_piece(session, "weight", slot)
    return told, list(session.once.ran)


def test_the_charts_of_two_vehicles_are_both_finished() -> None:
    session, screens = opened("whimbrel"), Screens()
    vehicles = [name for name, _ in session.reading.rig.tow]
    assert len(vehicles) > 1
    slots = [Slot(vehicle=name) for name in vehicles]
    told, ran = worked_out(session, screens, slots)
    stages = len(session.reading.rig.stages_in_order)
    assert told == [stages - 1] * len(slots)
    assert ran == []
    for slot in slots:
        screen = screens.screen(session, "weight", slot)
        assert screen is not None
        assert any(len(chart.labels) > 1 for chart in screen.charts)


def test_a_rig_that_is_not_towed_is_done_with_too() -> None:
    text = "boxwright: 1\nrig: Hut\nstages: {one: {what: all}, two: {what: more}}\nloads: {night: {for: [sleep]}}\n"
    told, ran = worked_out(Session(text, TODAY), Screens(), [Slot()])
    assert told == [1]
    assert ran == []


def test_a_change_begins_it_again() -> None:
    session, screens = opened("dunlin"), Screens()
    worked_out(session, screens, [Slot()])
    session.undo() if session.depth[0] else session.set("rig", "Other", session.rev, 0.0)
    told, _ = worked_out(session, screens, [Slot()])
    assert told[0] >= 0


@pytest.mark.parametrize("looked_at", [1, MOST_SHOWN + 5])
def test_drawings_of_many_screens_are_not_all_remembered(looked_at: int) -> None:
    session, screens = opened("dunlin"), Screens()
    screens.screen(session, "plan", Slot())
    for number in range(looked_at):
        screens.screen(session, "plan", Slot(load=f"load {number}"))
    session.set("rig", "Other", session.rev, 0.0)
    is_whole = any(one.whole for one in screens.patches(session, "plan", Slot()))
    assert is_whole == (looked_at > MOST_SHOWN)
