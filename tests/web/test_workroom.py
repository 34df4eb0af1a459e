"""The room without a socket: what waits for what, who is let go of, and that the file is kept whatever fails."""

from __future__ import annotations

import asyncio
import json
import os
import shutil
import threading
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from boxwright.web import contract, serving, things
from boxwright.web.ahead import REST as UNTIL_SOUGHT
from boxwright.web.contract import CONTRACT, Cancel, Drop, Hello, Look, Move, Seek, Slot, Undo
from boxwright.web.figures import numbers_of
from boxwright.web.seeking import Sought
from boxwright.web.tab import MOST_QUEUED, MOST_TOLD, Tab
from boxwright.web.workroom import Workroom
from tests.web.apart import apart, turns, until
from tests.web.live import ROOT

TODAY = date(2026, 11, 28)
PART = "parts[galley]"


def move(seq: int) -> Move:
    return Move(t="move", seq=seq, base=0, of=PART, x_mm=float(seq))


def drained(tab: Tab) -> list[int]:
    found = []
    while (message := tab.next()) is not None:
        found.append(message.seq)
    return found


def test_of_previews_only_the_newest_waits_and_no_edit_is_lost() -> None:
    tab = Tab()
    for seq in range(1, 5):
        tab.put(move(seq))
    tab.put(Drop(t="drop", seq=5, base=0, of=PART))
    tab.put(Undo(t="undo", seq=6, base=0))
    tab.put(move(7))
    tab.put(Look(t="look", seq=8, base=0, screen="plan", slot=Slot()))
    tab.put(Seek(t="seek", seq=9, base=0, code="a/b", where="", load="", use="tow"))
    tab.put(move(10))
    assert drained(tab) == [5, 6, 8, 9, 10]


def test_a_preview_ends_with_the_edit_that_follows_it() -> None:
    tab = Tab()
    tab.put(move(1))
    tab.put(Cancel(t="cancel", seq=2, base=0))
    assert drained(tab) == [2]


def test_a_page_that_sends_more_than_can_wait_is_let_go_of() -> None:
    tab = Tab()
    assert all(tab.put(Undo(t="undo", seq=seq, base=0)) for seq in range(MOST_QUEUED))
    assert not tab.put(Undo(t="undo", seq=0, base=0))


def test_a_page_that_lags_too_far_behind_is_let_go_of_and_nobody_waits_for_it() -> None:
    async def lagging() -> int:
        tab, sent = Tab(), 0
        stuck = asyncio.Event()

        async def send(text: str) -> None:
            nonlocal sent
            sent += 1
            await stuck.wait()

        speaking = asyncio.create_task(tab.speak(send))
        for _ in range(MOST_TOLD + 2):
            tab.tell(contract.Reload(t="reload"))
            await asyncio.sleep(0)
        stuck.set()
        await asyncio.wait_for(speaking, 5.0)
        return sent

    assert apart(lagging()) == 1


def test_what_is_told_goes_out_in_order() -> None:
    async def telling() -> list[int]:
        tab, heard = Tab(), list[int]()

        async def send(text: str) -> None:
            heard.append(json.loads(text)["seq"])
            await asyncio.sleep(0)

        speaking = asyncio.create_task(tab.speak(send))
        for seq in range(50):
            tab.tell(contract.No(t="no", seq=seq, why=""))
            if seq % 7 == 0:
                await asyncio.sleep(0.001)
        await until(lambda: len(heard) >= 50)
        speaking.cancel()
        return heard

    assert apart(telling()) == list(range(50))


class Clock:
    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        self.now += 0.05
        return self.now


def told(tab: Tab) -> list[dict[str, Any]]:
    found = [json.loads(one) for one in tab.told]
    tab.told.clear()
    return found


@pytest.fixture
def room(tmp_path: Path) -> Workroom:
    path = tmp_path / "rig.yaml"
    shutil.copy(ROOT / "rigs" / "dunlin.yaml", path)
    return Workroom(tmp_path, path, TODAY, Clock())


def hello(screen: str = "plan") -> Hello:
    return Hello(t="hello", seq=1, base=0, contract=CONTRACT, screen=screen, slot=Slot())


async def handled(room: Workroom, tab: Tab, *messages: contract.Up) -> None:
    """Serve a tab until its messages are handled."""
    for message in messages:
        tab.put(message)
    serving_it = asyncio.create_task(room.serve(tab))
    while tab.edits or tab.move is not None or tab not in room.tabs:
        await asyncio.sleep(0.005)
    await turns()
    serving_it.cancel()
    await asyncio.wait({serving_it})


def test_a_page_is_told_everything_when_it_comes(room: Workroom) -> None:
    tab = Tab()
    apart(handled(room, tab, hello()))
    assert [one["t"] for one in told(tab)] == ["state", "disk", "text", "numbers"]
    assert room.tabs == []


def test_the_file_is_kept_though_a_drawing_fails(room: Workroom, monkeypatch: pytest.MonkeyPatch) -> None:
    assert room.desk is not None
    path, wanted = room.desk.keeper.path, "rig: Other"

    def failing(*asked: object) -> bool:
        raise ValueError("a drawing that cannot be made")

    monkeypatch.setattr(room.screens, "one_piece", failing)
    monkeypatch.setattr(serving, "AGAIN", 0.01)

    async def working() -> None:
        loops = [asyncio.create_task(serving._kept_going(loop)) for loop in (room.keep, room.idle)]
        tab = Tab()
        room.tabs.append(tab)
        tab.put(contract.Set(t="set", seq=2, base=0, path="rig", value="Other"))
        await handled(room, tab)
        await until(lambda: wanted in path.read_text(encoding="utf-8"))
        for loop in loops:
            loop.cancel()

    apart(working())
    assert wanted in path.read_text(encoding="utf-8")


def test_a_change_that_cannot_be_sought_is_said(room: Workroom, monkeypatch: pytest.MonkeyPatch) -> None:
    class Broken:
        stopped = 0

        def __call__(self) -> None:
            return None  # the loop's own threads, where the search below fails

        def stop(self) -> None:
            self.stopped += 1

    def failing(*asked: object) -> None:
        raise RuntimeError("the process is gone")

    broken = Broken()
    monkeypatch.setattr("boxwright.web.workroom.sought", failing)
    monkeypatch.setattr(room, "seekers", broken)
    tab = Tab()

    async def asking() -> None:
        await handled(room, tab, hello(), Seek(t="seek", seq=2, base=0, code="a/b", where="", load="", use="tow"))
        await until(lambda: any('"offered"' in one for one in tab.told))

    apart(asking())
    offered = [one for one in told(tab) if one["t"] == "offered"]
    assert [one["remedy"] for one in offered] == [""]
    assert broken.stopped == 1


def test_changes_are_sought_ahead_once_the_hands_have_rested(room: Workroom, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[tuple[str, int, date]] = []
    at = [100.0]
    monkeypatch.setattr(room, "_clock", lambda: at[0])
    monkeypatch.setattr(room._ahead, "piece", lambda seen, *about: asked.append((seen.slot.stage, *about)))
    tab = Tab()

    async def resting() -> None:
        await handled(room, tab, hello())
        tab.slot = Slot(stage="safe")
        room.tabs.append(tab)
        room._moved_at = 100.0
        loop = asyncio.create_task(room.idle(0.001))
        at[0] = 100.0 + UNTIL_SOUGHT - 0.01
        await turns()
        assert asked == []
        at[0] = 100.0 + UNTIL_SOUGHT
        await until(lambda: asked != [])
        loop.cancel()

    apart(resting())
    assert set(asked) == {("safe", 0, TODAY)}


def set_name(value: str, seq: int) -> contract.Set:
    return contract.Set(t="set", seq=seq, base=seq - 2, path="rig", value=value)


def test_a_disk_that_takes_its_time_holds_up_nobody_and_gets_the_last_text(
    room: Workroom, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert room.desk is not None
    desk, flush = room.desk, os.fsync
    is_slow, is_let_go = threading.Event(), threading.Event()

    def slow(file: int) -> None:
        is_slow.set()
        assert is_let_go.wait(30.0)
        flush(file)

    monkeypatch.setattr("boxwright.book.saving.os.fsync", slow)

    async def working() -> None:
        keeping, tab = asyncio.create_task(room.keep()), Tab()
        await handled(room, tab, set_name("One", 2))
        await until(is_slow.is_set)
        await handled(room, tab, set_name("Two", 3), set_name("Three", 4))
        assert [one["seq"] for one in told(tab) if one["t"] == "numbers"] == [2, 3, 4]
        assert "Three" not in desk.keeper.path.read_text(encoding="utf-8")
        keeping.cancel()  # and now the program ends
        ending = asyncio.create_task(room.ended())
        await turns()
        assert not ending.done()
        is_let_go.set()
        await ending

    apart(working())
    assert "rig: Three\n" in desk.keeper.path.read_text(encoding="utf-8")
    assert not (desk.keeper.path.parent / ".boxwright" / "rig.yaml.unsaved").exists()
    first, second = desk.keeper.past.every()
    assert b"rig: One\n" in (desk.keeper.past.read(second.name) or b"")
    assert b"rig: Dunlin" in (desk.keeper.past.read(first.name) or b"")


def test_a_page_that_goes_while_its_choice_is_put_down_harms_nothing(
    room: Workroom, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert room.desk is not None
    desk, flush, path = room.desk, os.fsync, room.desk.keeper.path
    is_slow, is_let_go = threading.Event(), threading.Event()

    def slow(file: int) -> None:
        is_slow.set()
        assert is_let_go.wait(30.0)
        flush(file)

    monkeypatch.setattr("boxwright.book.saving.os.fsync", slow)

    async def working() -> None:
        path.unlink()
        room.look_now()
        tab = Tab()
        tab.put(contract.KeepWriting(t="write-again", seq=1, base=0))
        serving_it = asyncio.create_task(room.serve(tab))
        await until(is_slow.is_set)
        serving_it.cancel()
        await asyncio.wait({serving_it})
        is_let_go.set()
        await until(lambda: desk.state == "step")
        assert not desk.is_putting

    apart(working())
    assert path.is_file()


def test_what_a_page_said_before_it_went_is_done_and_its_last_word_comes_once(room: Workroom) -> None:
    assert room.desk is not None
    session = room.desk.session

    async def working() -> None:
        tab = Tab()
        tab.put(hello().model_copy(update={"page": "p1"}))
        tab.put(set_name("One", 2))
        tab.put(set_name("Two", 3))
        tab.end()
        last = contract.Leaving(page="p1", edits=[set_name("Two", 3), set_name("Three", 4)])
        await asyncio.gather(room.serve(tab), room.left_with(last))

    apart(working())
    assert "rig: Three\n" in session.text
    assert session.depth == (3, 0)


def dropped(seq: int, base: int) -> Drop:
    return Drop(t="drop", seq=seq, base=base, of="parts[lathe]", x_mm=100.0)


def test_the_last_word_repeats_nothing_that_was_heard(room: Workroom) -> None:
    assert room.desk is not None
    session, wanted = room.desk.session, Workroom(room.folder, room.desk.keeper.path, TODAY, Clock())
    assert wanted.desk is not None
    for number in range(3):
        wanted.desk.session.move("parts[lathe]", (0.1, 0.0, 0.0), number, 0.0)

    async def working() -> None:
        tab = Tab()
        tab.put(hello().model_copy(update={"page": "p1"}))
        tab.put(dropped(2, 0))
        tab.put(dropped(3, 1))
        tab.put(undo := Undo(t="undo", seq=4, base=2))
        tab.end()
        last = contract.Leaving(page="p1", edits=[undo, dropped(5, 3), dropped(6, 4)])
        await asyncio.gather(room.serve(tab), room.left_with(last))

    apart(working())
    assert session.text == wanted.desk.session.text
    assert session.depth == (3, 0), "a step back that is said twice would go back too far"


def test_a_preview_answers_the_move_it_was_asked_about(room: Workroom) -> None:
    tab = Tab()

    async def moving() -> dict[str, Any]:
        room.tabs.append(tab)
        await room._handled(tab, Move(t="move", seq=6, base=0, of="parts[lathe]", x_mm=100.0))
        await room._handled(tab, Move(t="move", seq=7, base=0, of="parts[lathe]", x_mm=350.0))
        return told(tab)[-1]

    now = apart(moving())
    assert room.desk is not None
    shift = (0.35, 0.0, 0.0)
    seen = room.desk.session.preview("parts[lathe]", shift, 0, Slot())
    wanted = things.held(seen, "parts[lathe]", shift)
    assert (now["seq"], now["preview"]) == (7, True)
    assert now["held"] == [one.model_dump() for one in wanted]
    assert now["held"] != [one.model_dump() for one in things.held(seen, "parts[lathe]", (0.1, 0.0, 0.0))]
    assert now["figures"] == [one.model_dump() for one in numbers_of(seen, 7, 0, True).figures]


def test_a_page_that_comes_back_is_told_how_far_it_was_heard(room: Workroom) -> None:
    async def working() -> list[int]:
        first, again, other = Tab(), Tab(), Tab()
        first.put(hello().model_copy(update={"page": "p1"}))
        first.put(dropped(7, 0))
        first.put(dropped(8, 1))
        again.put(hello().model_copy(update={"page": "p1", "seq": 9}))
        other.put(hello().model_copy(update={"page": "p2"}))
        serving_first, serving_it = (asyncio.create_task(room.serve(tab)) for tab in (first, again))
        await until(lambda: first.heard == 8)
        early = [one["heard"] for one in told(again) if one["t"] == "state"]
        assert not early or set(early) == {-1}, "its hello waits for what still comes by the line it lost"
        first.end()
        await until(lambda: bool(again.told) and again.heard >= 0)
        serving_it.cancel()
        serving_other = asyncio.create_task(room.serve(other))
        await until(lambda: bool(other.told))
        serving_other.cancel()
        await asyncio.wait({serving_first})
        return [[one["heard"] for one in told(tab) if one["t"] == "state"][-1] for tab in (again, other)]

    assert apart(working()) == [8, 0]


def test_a_change_proved_for_an_earlier_text_is_not_made(room: Workroom) -> None:
    assert room.desk is not None
    session, tab = room.desk.session, Tab()
    room.tabs.append(tab)
    found = numbers_of(session.seen(Slot()), 0, 0, False).findings or []
    about = {key: getattr(found[0], key) for key in ("code", "where", "load", "use")}
    room._offered = {found[0].key: (session.rev, Sought((("parts[lathe].weight", "77"),), ""))}
    apply = contract.Apply(t="apply", seq=3, base=1, **{**about, "use": about["use"] or None})

    async def working(*messages: contract.Up) -> list[dict[str, Any]]:
        for message in messages:
            await room._handled(tab, message)
        await until(lambda: room._drawing is None or room._drawing.done())
        return told(tab)

    said = apart(working(set_name("Other", 2), apply))
    assert [one["why"] for one in said if one["t"] == "no"] == [
        "the change was proved for an earlier text; seek it again"
    ]
    assert "weight: 77" not in session.text
    apart(working(contract.Undo(t="undo", seq=4, base=1)))
    room._offered = {found[0].key: (session.rev, Sought((("parts[lathe].weight", "77"),), ""))}
    said = apart(working(apply.model_copy(update={"seq": 5, "base": session.rev})))
    assert "no" not in {one["t"] for one in said} and "weight: 77" in session.text


def test_after_midnight_it_is_judged_by_the_new_day(tmp_path: Path) -> None:
    path = tmp_path / "rig.yaml"
    path.write_text(
        "boxwright: 1\nunits: {length: in, weight: lb}\nstages: {all: {what: everything, done: yes}}\n"
        "people: {owner: {weight: 170, height: 70, sleeps: cot}}\n"
        "loads: {night: {cargo: none, parked: yes, people: [owner], for: [sleep]}}\n"
        "parts:\n  horn: {x: 10, side: centre, z: 70, size: 4 x 4 x 2, stage: all, done: yes, alarm: smoke,"
        " expires: 2026-11-30}\n",
        encoding="utf-8",
    )
    days = [date(2026, 11, 30)]
    room = Workroom(tmp_path, path, days[0], Clock(), lambda: days[-1])

    def is_out_of_date() -> bool:
        assert room.desk is not None
        slots = room.desk.session.seen(Slot()).study.slots
        return any(one.code == "safety/out-of-date" for slot in slots for one in slot.findings)

    async def through_midnight() -> list[str]:
        tab = Tab()
        room.tabs.append(tab)
        room.turn_the_day()
        assert not is_out_of_date() and not tab.told
        days.append(date(2026, 12, 1))
        room.turn_the_day()
        return [one["t"] for one in told(tab)]

    assert "numbers" in apart(through_midnight())
    assert is_out_of_date()
