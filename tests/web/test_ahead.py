"""Changes sought before anybody asks: one piece at a time, for what is shown, and not again until the text changes."""

from __future__ import annotations

from concurrent.futures import Future
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from boxwright.web.ahead import Ahead
from boxwright.web.contract import Slot
from boxwright.web.figures import shown_findings, slot_findings
from boxwright.web.seeking import Seekers
from boxwright.web.session import Session

TEXT = (Path(__file__).parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
TODAY = date(2026, 11, 28)
SAFE = Slot(stage="safe", vehicle="borrowed")


class Idle(Seekers):
    """Takes what is asked and does nothing of it."""

    def __init__(self) -> None:
        super().__init__()
        self.asked: list[tuple[Any, ...]] = []
        self.pieces: list[Future[bool]] = []
        self.stopped = 0

    def __call__(self) -> Any:
        return self

    def submit(self, _: object, *asked: Any) -> Future[bool]:
        self.asked.append(asked)
        self.pieces.append(Future())
        return self.pieces[-1]

    def stop(self) -> None:
        self.stopped += 1


@pytest.fixture
def session() -> Session:
    return Session(TEXT, TODAY)


def test_one_piece_is_asked_for_after_the_other_until_nothing_is_left(session: Session) -> None:
    idle = Idle()
    ahead, seen = Ahead(idle), session.seen(SAFE)
    ahead.piece(seen, 0, TODAY)
    ahead.piece(seen, 0, TODAY)
    assert len(idle.asked) == 1, "one is under way"
    may_seek = [one for one in shown_findings(slot_findings(seen), seen) if one.may_seek]
    wanted = tuple((one.code, one.where, "safe", one.load, one.use) for one in may_seek)
    assert len(wanted) > 2
    assert idle.asked == [(TEXT, "safe", wanted, "borrowed", TODAY)]
    idle.pieces[0].set_result(False)
    ahead.piece(seen, 0, TODAY)
    assert len(idle.asked) == 2, "something was left"
    idle.pieces[1].set_result(True)
    ahead.piece(seen, 0, TODAY)
    assert len(idle.asked) == 2, "nothing is left"
    ahead.piece(session.seen(Slot()), 0, TODAY)
    assert len(idle.asked) == 3, "another slot is looked at"
    idle.pieces[2].set_result(True)
    session.set("rig", "Other", 0, 0.0)
    ahead.piece(session.seen(SAFE), 1, TODAY)
    assert len(idle.asked) == 4 and idle.asked[3][0] == session.text, "the text is another"
    assert {rev for rev, _, _ in ahead._wanted} == {1}, "nothing is kept of a text that is gone"


def test_a_process_that_broke_is_let_go_and_not_asked_again_for_the_same(session: Session) -> None:
    idle = Idle()
    ahead, seen = Ahead(idle), session.seen(SAFE)
    ahead.piece(seen, 0, TODAY)
    idle.pieces[0].set_exception(RuntimeError("the process is gone"))
    ahead.piece(seen, 0, TODAY)
    ahead.piece(seen, 0, TODAY)
    assert (idle.stopped, len(idle.asked)) == (1, 1)


def test_a_piece_that_was_called_off_is_not_begun_again(session: Session) -> None:
    idle = Idle()
    ahead, seen = Ahead(idle), session.seen(SAFE)
    ahead.piece(seen, 0, TODAY)
    idle.pieces[0].cancel()
    ahead.piece(seen, 0, TODAY)
    assert (idle.stopped, len(idle.asked)) == (0, 1)


def test_where_nothing_may_be_sought_no_process_is_started() -> None:
    idle = Idle()
    ahead, session = Ahead(idle), Session("rig: Empty\n", TODAY)
    ahead.piece(session.seen(Slot()), 0, TODAY)
    ahead.piece(session.seen(Slot()), 0, TODAY)
    assert idle.asked == []
