"""A day of work at one rig: the memory of the program does not grow with what was done, at night only."""

from __future__ import annotations

import gc
import shutil
from datetime import date
from pathlib import Path

import pytest

from boxwright.web.contract import Slot
from boxwright.web.figures import numbers_of
from boxwright.web.session import Session
from tests.web.live import ROOT, Page, Server, serving

EDITS, WARM = 5_000, 2_000
MOST_MORE = 9.0
"""How much more (MB) the program may hold after the last edits than after the first ones."""


def held(server: Server) -> float:
    """Return what the program holds (MB)."""
    pages = int(Path(f"/proc/{server.process.pid}/statm").read_text().split()[1])
    return pages * 4096 / 1e6


def edit(session: Session, of: str, metres: float) -> None:
    """Do what a drag and its drop do: a preview, an edit, the numbers of both."""
    numbers_of(session.preview(of, (metres / 2.0, 0.0, 0.0), session.rev, Slot()), 1, session.rev, preview=True)
    session.move(of, (metres, 0.0, 0.0), session.rev, 0.0)
    numbers_of(session.seen(Slot()), 1, session.rev, preview=False)


def test_an_edit_leaves_nothing_that_holds_itself() -> None:
    """While a hand moves nobody looks for rubbish, so what only that would find stays: a whole text for each edit."""
    session = Session((ROOT / "rigs" / "dunlin.yaml").read_text(encoding="utf-8"), date(2026, 6, 1))
    of = session.reading.rig.parts[3].of
    edit(session, of, 0.02)
    gc.freeze()  # what other tests left is not looked through: it may hold whatever it likes
    gc.disable()
    try:
        for metres in (-0.02, 0.02):
            edit(session, of, metres)
        assert gc.collect() == 0
    finally:
        gc.enable()
        gc.unfreeze()


@pytest.mark.nightly
@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="no /proc to read what a program holds")
def test_five_thousand_edits_leave_the_memory_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "rig.yaml"
    shutil.copy(ROOT / "rigs" / "dunlin.yaml", path)
    with serving(path, tmp_path) as server:
        page = Page(server)
        part = next(one for one in server.json("/screen/plan")["pictures"][0]["movable"] if one.startswith("parts["))
        first = 0.0
        for number in range(EDITS):
            if number == WARM:
                first = held(server)
            far = 20.0 if number % 2 else -20.0
            page.do("move", of=part, x_mm=far / 2.0)
            page.do("drop", of=part, x_mm=far)
            page.every.clear()
        assert held(server) - first < MOST_MORE
        page.close()
