"""What is made beside the loop: no gesture waits for it, it is of the text as it is, and nothing is made for nobody."""

from __future__ import annotations

import asyncio
import json
import shutil
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from boxwright.book.sheets import Printing, sheets_of_chapter
from boxwright.drawing import Sheet
from boxwright.web import making, printed
from boxwright.web.contract import Drop, Move, Patch, Slot
from boxwright.web.gate import Door
from boxwright.web.making import MOST_TRIES, Making
from boxwright.web.routes import application
from boxwright.web.screens import Asked, Made, Screens, Shown, changed_in, made_of
from boxwright.web.session import Session
from boxwright.web.tab import Tab
from boxwright.web.workroom import Workroom
from tests.web.apart import apart, turns, until
from tests.web.live import ROOT

TODAY, SLOT = date(2026, 11, 28), Slot()
PART = "parts[lathe]"
PATIENCE = 30.0


class Held:
    """A step that stops in its thread until it is let go of; counts how often it was run."""

    def __init__(self, step: Callable[..., Any]) -> None:
        self.step, self.asked = step, list[tuple[Any, ...]]()
        self.begun, self.is_let_go = threading.Event(), threading.Event()
        self.then: Callable[[], None] = lambda: None

    def __call__(self, *asked: Any) -> Any:
        self.asked.append(asked)
        self.begun.set()
        assert threading.current_thread() is not threading.main_thread() or self.is_let_go.is_set()
        assert self.is_let_go.wait(PATIENCE)
        found = self.step(*asked)
        self.then()
        return found


@pytest.fixture
def session() -> Session:
    return Session((ROOT / "rigs" / "dunlin.yaml").read_text(encoding="utf-8"), TODAY)


@pytest.fixture
def room(tmp_path: Path) -> Workroom:
    path = tmp_path / "rig.yaml"
    shutil.copy(ROOT / "rigs" / "dunlin.yaml", path)
    return Workroom(tmp_path, path, TODAY, lambda: 100.0)


async def waits() -> bool:
    return True


async def gone() -> bool:
    return False


def told(tab: Tab, kind: str) -> list[dict[str, Any]]:
    return [found for one in tab.told if (found := json.loads(one))["t"] == kind]


def has_numbers(tab: Tab, seq: int) -> bool:
    return any(one["seq"] == seq for one in told(tab, "numbers"))


def changed(session: Session, value: str) -> None:
    session.set(f"{PART}.weight", value, session.rev, 0.0)


@pytest.mark.parametrize("what", ["screen", "page", "redraw"])
def test_a_gesture_is_answered_while_something_is_made(
    room: Workroom, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    assert room.desk is not None
    session = room.desk.session
    name = {"screen": "made_of", "page": "_pages_of", "redraw": "changed_in"}[what]
    held = Held(getattr(making, name))

    async def working() -> None:
        tab = Tab()
        await room.making.screen(session, "plan", SLOT, waits)
        monkeypatch.setattr(making, name, held)
        serving = asyncio.create_task(room.serve(tab))
        asked: list[asyncio.Task[Any]] = []
        if what == "screen":
            asked.append(asyncio.create_task(room.making.screen(session, "layout", SLOT, waits)))
        elif what == "page":
            asked.append(asyncio.create_task(room.making.pages(session, "plan", SLOT, waits)))
        tab.put(Drop(t="drop", seq=1, base=0, of=PART, x_mm=10.0))
        await until(lambda: held.begun.is_set() and bool(told(tab, "numbers")))
        for seq in range(2, 6):
            tab.put(Move(t="move", seq=seq, base=1, of=PART, x_mm=float(seq)))
            await until(partial(has_numbers, tab, seq))
        assert not told(tab, "patch") if what == "redraw" else not asked[0].done()
        held.is_let_go.set()
        await asyncio.gather(*asked)
        await until(lambda: bool(told(tab, "patch")))
        assert [one["seq"] for one in told(tab, "numbers")] == [1, 2, 3, 4, 5]
        serving.cancel()

    apart(working())


def test_what_is_sent_is_of_the_text_as_it_is_then(session: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    screens, held = Screens(), Held(made_of)
    monkeypatch.setattr(making, "made_of", held)

    async def working() -> None:
        asked = asyncio.create_task(Making(screens).screen(session, "plan", SLOT, waits))
        await until(held.begun.is_set)
        changed(session, "81")
        held.is_let_go.set()
        found = await asked
        assert found is not None and found.rev == session.rev == 1
        assert found == Screens().screen(session, "plan", SLOT)
        assert [one.rev for (one,) in held.asked] == [0, 1]
        assert screens.patches(session, "plan", SLOT) == [], "the page has it as it is"

    apart(working())


def test_a_text_that_does_not_rest_is_followed_a_few_times_only(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    screens, held = Screens(), Held(made_of)
    held.is_let_go.set()
    held.then = lambda: changed(session, str(80 + session.rev))
    monkeypatch.setattr(making, "made_of", held)

    async def working() -> None:
        found = await Making(screens).screen(session, "plan", SLOT, waits)
        assert found is not None and found.rev == MOST_TRIES - 1 < session.rev, (
            "by its number the page knows it is late"
        )
        assert len(held.asked) == MOST_TRIES
        assert [one.whole for one in screens.patches(session, "plan", SLOT)] == [True]

    apart(working())


def test_nothing_is_made_for_nobody(session: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    held, sheets = Held(made_of), Held(lambda asked: [])
    monkeypatch.setattr(making, "made_of", held)
    monkeypatch.setattr(making, "_pages_of", sheets)

    async def working() -> None:
        maker = Making(Screens())
        first = asyncio.create_task(maker.screen(session, "layout", SLOT, waits))
        await until(held.begun.is_set)
        others = [asyncio.create_task(maker.screen(session, name, SLOT, gone)) for name in ("book", "frame")]
        pages = asyncio.create_task(maker.pages(session, "plan", SLOT, gone))
        last = asyncio.create_task(maker.screen(session, "weight", SLOT, waits))
        await turns()
        assert len(held.asked) == 1, "one is made at a time"
        held.is_let_go.set()
        assert (await first) is not None and (await last) is not None
        assert [await one for one in others] == [None, None] and await pages == []
        assert [one.name for (one,) in held.asked] == ["layout", "weight"] and not sheets.asked

    apart(working())


def test_a_screen_of_no_name_is_none(session: Session) -> None:
    async def working() -> None:
        assert await Making(Screens()).screen(session, "no such screen", SLOT, waits) is None

    apart(working())


def test_a_drawing_that_was_changed_meanwhile_is_told_as_it_is_in_the_end(
    room: Workroom, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert room.desk is not None
    session, held = room.desk.session, Held(changed_in)

    async def working() -> list[Patch]:
        tab = Tab()
        await room.making.screen(session, "plan", SLOT, waits)
        monkeypatch.setattr(making, "changed_in", held)
        serving = asyncio.create_task(room.serve(tab))
        tab.put(Drop(t="drop", seq=1, base=0, of=PART, x_mm=10.0))
        await until(held.begun.is_set)
        tab.put(Drop(t="drop", seq=2, base=1, of=PART, x_mm=10.0))
        await until(lambda: session.rev == 2)
        held.is_let_go.set()
        await until(lambda: bool(told(tab, "patch")))
        await turns()
        serving.cancel()
        return [Patch.model_validate(one) for one in told(tab, "patch")]

    (patch,) = apart(working())
    assert patch.rev == 2 and set(patch.groups) >= {PART}
    assert [before.rev for _, before in held.asked] == [0, 0], "both against what the page has"


def test_an_older_drawing_never_stands_for_a_newer_one(session: Session) -> None:
    screens = Screens()
    early = screens.asked(session, "plan", SLOT)
    changed(session, "81")
    assert screens.screen(session, "plan", SLOT) is not None
    screens.sent(early, Shown(early.rev, {}))
    assert screens.patches(session, "plan", SLOT) == []


def test_of_two_threads_that_ask_for_the_same_sheets_one_makes_them(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    held = Held(sheets_of_chapter)
    monkeypatch.setattr(printed, "sheets_of_chapter", held)
    asked: Asked = Screens().asked(session, "layout", SLOT)
    with ThreadPoolExecutor(4) as pool:
        screens = [pool.submit(made_of, asked) for _ in range(4)]
        assert held.begun.wait(PATIENCE)
        held.is_let_go.set()
        found = [one.result() for one in screens]
    assert [chapter for chapter, _ in held.asked] == ["layout"]
    assert all(isinstance(one, Made) and one == found[0] for one in found)


def test_sheets_that_could_not_be_made_are_made_when_they_are_asked_for_again(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Screens().asked(session, "layout", SLOT)
    tries: list[str] = []

    def failing_once(chapter: str, printing: Printing) -> tuple[Sheet, ...]:
        tries.append(chapter)
        if len(tries) == 1:
            raise ValueError("a sheet that cannot be made")
        return sheets_of_chapter(chapter, printing)

    monkeypatch.setattr(printed, "sheets_of_chapter", failing_once)
    with pytest.raises(ValueError, match="cannot be made"):
        made_of(asked)
    found = made_of(asked)
    assert found is not None and found.screen.pictures and len(tries) == 2


def test_a_browser_that_has_gone_is_made_nothing_for(room: Workroom, monkeypatch: pytest.MonkeyPatch) -> None:
    held, answers = Held(made_of), list[dict[str, Any]]()
    held.is_let_go.set()
    monkeypatch.setattr(making, "made_of", held)
    app = application(room, Door(80), lambda: 100.0)
    coming = [{"type": "http.request", "body": b"", "more_body": False}]

    async def receive() -> dict[str, Any]:
        if not coming:
            await asyncio.sleep(3600)
        return coming.pop(0)

    async def send(message: dict[str, Any]) -> None:
        answers.append(message)

    scope = {"type": "http", "method": "GET", "path": "/screen/layout", "raw_path": b"/screen/layout", "headers": [],
             "query_string": b"stage=&load=&vehicle=", "root_path": "", "scheme": "http", "http_version": "1.1",
             "server": ("127.0.0.1", 80), "client": ("127.0.0.1", 1)}  # fmt: skip

    async def asking() -> None:
        await app(scope, receive, send)  # type: ignore[arg-type]
        assert answers[0]["status"] == 200 and len(held.asked) == 1
        coming.append({"type": "http.disconnect"})
        await app(scope, receive, send)  # type: ignore[arg-type]
        assert len(held.asked) == 1

    apart(asking())
