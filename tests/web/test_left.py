"""What was left by an earlier session, or typed into lines that changed: taken up beside all that was done since."""

from __future__ import annotations

from pathlib import Path

import pytest

from boxwright.web.contract import Typed
from boxwright.web.desk import Desk
from boxwright.web.gestures import Refused
from tests.web.test_desk import SENT, TEXT, TODAY, TWICE, WAITS, changed, file, with_weights

__all__ = ["file"]


def test_taking_up_what_was_left_undoes_nothing_that_was_done_since(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "44", 1.0)
    desk.rejoined(Typed(known=TEXT, under=[SENT], waits=[WAITS]), 2.0)
    changed(desk, "parts[crate].weight", "9", 3.0)
    before = desk.session.text
    offered = desk.offered()
    assert (offered.text, offered.is_sure) == (with_weights("3012", "9"), False)
    with pytest.raises(Refused, match="look at both first"):
        desk.recover(True, 4.0)
    changed(desk, "parts[crate].weight", "8", 5.0)
    with pytest.raises(Refused, match="look at both again"):
        desk.recover(True, 6.0, offered.text, offered.rev)
    assert desk.session.text == before.replace("weight: 9", "weight: 8")
    assert desk.left == TWICE
    desk.recover(True, 7.0, desk.offered().text, desk.offered().rev)
    assert desk.session.text == with_weights("3012", "8")


def test_what_a_session_left_is_joined_with_what_was_done_after_it(file: Path) -> None:
    changed(Desk(file, TODAY), "parts[bench].weight", "31", 1.0)  # and no more is heard of it
    again = Desk(file, TODAY)
    changed(again, "parts[crate].weight", "9", 2.0)
    assert again.offered().is_sure
    again.recover(True, 3.0)
    assert again.session.text == with_weights("31", "9")


def test_what_was_left_of_a_file_that_somebody_changed_since_is_looked_at_first(file: Path) -> None:
    changed(Desk(file, TODAY), "parts[bench].weight", "31", 1.0)
    file.write_text(with_weights("30", "9"))
    again = Desk(file, TODAY)
    assert again.left == with_weights("31")
    assert not again.offered().is_sure
    with pytest.raises(Refused, match="look at both first"):
        again.recover(True, 2.0)
    assert again.session.text == with_weights("30", "9")
    again.recover(False, 3.0)
    assert not list(file.parent.glob(".boxwright/*.of"))
