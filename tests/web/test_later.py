"""What takes seconds comes to its screen later: nothing waits for it, and it is of the text as it is."""

from __future__ import annotations

import time
from datetime import date

import pytest

from boxwright.drawing import Grid, Sheet
from boxwright.drawing.chart import Chart, Series, charted
from boxwright.web import later
from boxwright.web.contract import Screen, Slot
from boxwright.web.screens import Screens
from boxwright.web.session import Session
from tests.web.live import ROOT

TODAY, SLOT, PATIENCE = date(2026, 11, 28), Slot(stage="finish"), 20.0
LINE = Series("room", (290.0,), (289.0,), (291.0,), ("17 C",))
DAY = Chart("hot-day-x", "A hot day at X", "through", "F", ("6 h",), (LINE,), (), ("",), "said")
MADE = Sheet("hot-day", "A hot day", (charted(DAY),), ("Of the day.",), (Grid("Ways", ("a",), (("b",),), ("",)),))


@pytest.fixture
def session() -> Session:
    return Session((ROOT / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8"), TODAY)


def screen_of(session: Session, screens: Screens) -> Screen:
    found = screens.screen(session, "heat", SLOT)
    assert found is not None
    return found


def waited(screens: Screens, session: Session) -> None:
    until = time.monotonic() + PATIENCE
    while not screens.one_piece(session, "heat", SLOT):
        assert time.monotonic() < until
        time.sleep(0.005)


def test_the_screen_of_heat_shows_its_nights_at_once_and_day_and_year_when_they_are_there(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(later, "made", lambda name, seen: (MADE,))
    screens = Screens()
    first = screen_of(session, screens)
    names = [one.name for one in first.charts]
    assert not first.pictures and any(one.startswith("night-damp") for one in names)
    assert names[-2:] == ["waits-hot-day", "waits-year"] and not first.charts[-1].series
    assert "worked out" in first.charts[-1].says
    waited(screens, session)
    assert not screens.one_piece(session, "heat", SLOT), "it is told once"
    then = screen_of(session, screens)
    assert [one.title for one in then.charts][-1] == "A hot day at X" and "waits-year" not in str(then.charts)
    assert then.notes[-1] == "Of the day." and then.tables[-1].rows == [["b"]]


def test_what_broke_off_says_so_once_and_another_text_waits_anew(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[int] = []

    def made(name: str, seen: object) -> tuple[Sheet, ...]:
        asked.append(session.rev)
        raise OSError("no room")

    monkeypatch.setattr(later, "made", made)
    monkeypatch.setattr("threading.excepthook", lambda told: None)
    screens = Screens()
    waited(screens, session)
    assert [one.says for one in screen_of(session, screens).charts[-2:]] == [later.BROKE_OFF] * 2
    assert not screens.one_piece(session, "heat", SLOT) and len(asked) == 1
    session.rev += 1
    assert screen_of(session, screens).charts[-1].says == later.WAITS


def test_a_screen_without_slow_sheets_waits_for_none(session: Session) -> None:
    screens = Screens()
    assert not screens.one_piece(session, "air", SLOT)
    air = screens.screen(session, "air", SLOT)
    assert air is not None and not [one for one in air.charts if one.name.startswith("waits")]
    assert air.charts and all(one.series for one in air.charts), "the humidity of its nights"
