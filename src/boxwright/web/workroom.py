"""The room where one rig is open for all tabs: their messages come in one after the other, and all hear what changed.

Messages of a tab are handled in the order they came, but of previews only the newest counts. What takes longer (the
drawings and charts over every stage, the proved change for a finding) is done when no hand moves, a piece at a time,
and dropped when the text has moved on.
"""

from __future__ import annotations

import asyncio
import gc
from collections import deque
from collections.abc import Awaitable, Callable
from concurrent.futures import Executor
from datetime import date
from pathlib import Path

from pydantic import BaseModel, TypeAdapter, ValidationError

from boxwright.web import contract, things
from boxwright.web.beginning import asks, begun_from_answers, begun_from_demo, demos
from boxwright.web.desk import Desk
from boxwright.web.figures import numbers_of
from boxwright.web.gestures import Refused
from boxwright.web.keeping import CannotKeep
from boxwright.web.offsets import shown_text, to_editor
from boxwright.web.screens import Screens
from boxwright.web.seeking import Sought, sought
from boxwright.web.session import Change, Seen

UP: TypeAdapter[contract.Up] = TypeAdapter(contract.Up)
QUIET = 0.15
"""How long (s) no hand may have moved before what takes longer is done."""
MILLIMETRE = 0.001
MOST_QUEUED = 200
"""Edits of one tab that may wait; a tab that sends more is shut out."""
Sending = Callable[[str], Awaitable[None]]


class Tab:
    """One open page: what it looks at, and its messages that wait."""

    def __init__(self, send: Sending) -> None:
        self.send = send
        self.slot = contract.Slot()
        self.screen = "plan"
        self.edits: deque[contract.Up] = deque()
        self.move: contract.Move | None = None
        self.woken = asyncio.Event()

    def put(self, message: contract.Up) -> bool:
        """Take a message in; False where too many wait."""
        if isinstance(message, contract.Move):
            self.move = message
        else:
            if not isinstance(message, (contract.Hello, contract.Look, contract.Seek)):
                self.move = None  # an edit or a cancel: the preview before it is over
            self.edits.append(message)
        self.woken.set()
        return len(self.edits) <= MOST_QUEUED

    def next(self) -> contract.Up | None:
        """Return the message that is next: edits first, then the newest preview."""
        if self.edits:
            return self.edits.popleft()
        move, self.move = self.move, None
        return move


class Workroom:
    """One rig open, or none yet. ``clock`` counts seconds; ``today`` is the day the answers are for."""

    def __init__(self, folder: Path, path: Path | None, today: date, clock: Callable[[], float]) -> None:
        self.folder, self.today, self._clock = folder, today, clock
        self.desk = Desk(path, today) if path is not None else None
        self.screens = Screens()
        self.tabs: list[Tab] = []
        self.seekers: Callable[[], Executor] | None = None
        self._offered: dict[tuple[str, str], tuple[int, Sought]] = {}
        self._moved_at = 0.0
        self._running: set[asyncio.Task[None]] = set()

    # ------------------------------------------------------------------ a tab

    async def serve(self, tab: Tab) -> None:
        """Handle a tab's messages until it is cancelled."""
        self.tabs.append(tab)
        try:
            while True:
                await tab.woken.wait()
                tab.woken.clear()
                while (message := tab.next()) is not None:
                    self._moved_at = self._clock()
                    await self._handled(tab, message)
                    await asyncio.sleep(0)
        finally:
            self.tabs.remove(tab)

    async def _handled(self, tab: Tab, message: contract.Up) -> None:
        try:
            if isinstance(message, (contract.Hello, contract.Look)):
                await self._looked(tab, message)
            elif isinstance(message, contract.Begin):
                await self._begun(message)
            elif self.desk is None:
                raise Refused("no rig is open yet")
            elif isinstance(message, contract.Move):
                await self._previewed(tab, message, self.desk)
            elif isinstance(message, contract.Cancel):
                await self._tell(tab, self._numbers(tab, message.seq))
            elif isinstance(message, contract.Seek):
                self._seek(tab, message, self.desk)
            elif isinstance(message, contract.KeepWriting):
                await self._tell_all(self.desk.write_again())
            else:
                await self._changed(tab, message, self.desk)
        except Refused as reason:
            await self._tell(tab, contract.No(t="no", seq=message.seq, why=str(reason)))
            if self.desk is not None:
                await self._tell(tab, self._numbers(tab, message.seq))

    async def _looked(self, tab: Tab, message: contract.Hello | contract.Look) -> None:
        if isinstance(message, contract.Hello) and message.contract != contract.CONTRACT:
            await self._tell(tab, contract.Reload(t="reload"))
            return
        tab.screen, tab.slot = message.screen, message.slot
        await self._tell(tab, self.state(tab))
        if self.desk is not None:
            if isinstance(message, contract.Hello):
                await self._tell(tab, self.desk.told())
                text = shown_text(self.desk.session.text)
                rev, length = self.desk.session.rev, to_editor(self.desk.session.text, len(self.desk.session.text))
                await self._tell(tab, contract.TextIs(t="text", rev=rev, length=length, text=text))
            await self._tell(tab, self._numbers(tab, 0))

    async def _begun(self, message: contract.Begin) -> None:
        if self.desk is not None:
            raise Refused("a rig is open already")
        if message.demo:
            path = begun_from_demo(message.demo, self.folder)
        else:
            path = begun_from_answers(message.answers, self.folder)
        try:
            self.desk = Desk(path, self.today)
        except CannotKeep as reason:
            raise Refused(str(reason)) from None
        for tab in self.tabs:
            await self._looked(tab, contract.Hello(t="hello", seq=0, base=0, contract=contract.CONTRACT,
                                                   screen=tab.screen, slot=tab.slot))  # fmt: skip

    async def _previewed(self, tab: Tab, message: contract.Move, desk: Desk) -> None:
        shift = _shift(message)
        seen = desk.session.preview(message.of, shift, message.base, tab.slot)
        numbers = numbers_of(seen, message.seq, desk.session.rev, preview=True)
        held = things.held(seen, message.of, shift)
        await self._tell(tab, numbers.model_copy(update={"held": held}))

    async def _changed(self, tab: Tab, message: contract.Up, desk: Desk) -> None:
        """Make a change, and tell every tab what follows from it."""
        desk.must_take()
        session, before, at = desk.session, desk.session.text, self._clock()
        made = self._made(message, desk, at)
        if not isinstance(message, contract.Resolve):
            desk.touched(at)
        await self._told_of(made, before, tab, message)
        if isinstance(message, contract.Resolve):
            await self._tell_all(desk.write())
        elif session.document.is_damaged or desk.state != "step":
            await self._tell_all(desk.told())

    def _made(self, message: contract.Up, desk: Desk, at: float) -> list[Change]:
        session = desk.session
        match message:
            case contract.Drop():
                return [session.move(message.of, _shift(message), message.base, at)]
            case contract.Set():
                return [session.set(message.path, message.value, message.base, at)]
            case contract.Add():
                return [session.add(message.section, message.name, message.entries, at)]
            case contract.Copy():
                return [session.copy(message.of, message.name, message.base, at)]
            case contract.TakeOut():
                return [session.take_out(message.of, message.base, at)]
            case contract.Rename():
                return [session.rename(message.of, message.name, message.base, at)]
            case contract.Turn():
                return [session.turn(message.of, message.base, at)]
            case contract.Apply():
                return [session.write_all(self._remedy(message, session.rev), at)]
            case contract.Accept():
                return [session.accept(message.code, message.where, message.note, "", at)]
            case contract.TextEdit():
                return session.type(message.changes, message.base, at)
            case contract.Undo():
                return session.undo()
            case contract.Redo():
                return session.redo()
            case contract.Resolve():
                change = desk.resolve(message.text, message.disk_hash, at)
                return [change] if change is not None else []
            case _:
                raise Refused("that is no change")

    def _remedy(self, message: contract.Apply, rev: int) -> tuple[tuple[str, str], ...]:
        at, found = self._offered.get((message.code, message.where), (-1, Sought((), "")))
        if at != rev or not found.edits:
            raise Refused("the change was proved for an earlier text; seek it again")
        return found.edits

    async def _told_of(self, made: list[Change], before: str, origin: Tab | None, message: contract.Up | None) -> None:
        desk = self.desk
        if desk is None or not made:
            return
        session = desk.session
        length = to_editor(session.text, len(session.text))
        text = contract.TextIs(t="text", rev=session.rev, length=length, changes=session.for_editor(made, before))
        own = contract.TextIs(t="text", rev=session.rev, length=length)
        for tab in list(self.tabs):
            is_typing = tab is origin and isinstance(message, contract.TextEdit)
            await self._tell(tab, own if is_typing else text)
            await self._tell(tab, self.state(tab))
            seq = message.seq if message is not None and tab is origin else 0
            await self._tell(tab, self._numbers(tab, seq))
            for patch in self.screens.patches(desk.session, tab.screen, tab.slot):
                await self._tell(tab, patch)

    # ------------------------------------------------------------------ what a tab is told

    def state(self, tab: Tab) -> contract.State:
        """Return what a tab must know of the file and of what can be chosen."""
        if self.desk is None:
            return contract.State(t="state", rev=0, has_file=False, file="", rig="", undo=0, redo=0, can_write=True,
                                  stages=[], loads=[], vehicles=[], slot=tab.slot, screens=[], demos=demos(),
                                  asks=asks())  # fmt: skip
        desk, rig = self.desk, self.desk.session.reading.rig
        undo, redo = desk.session.depth
        stages = [contract.Choice(name="", label="Today, as ticked")]
        stages += [contract.Choice(name=one.name, label=f"{one.name}, as planned") for one in rig.stages_in_order]
        return contract.State(
            t="state",
            rev=desk.session.rev,
            has_file=True,
            file=desk.keeper.path.name,
            rig=rig.header.name or desk.keeper.path.stem,
            undo=undo,
            redo=redo,
            can_write=desk.can_write,
            stages=stages,
            loads=[contract.Choice(name=one.name, label=one.name) for one in rig.loads],
            vehicles=[contract.Choice(name=name, label=one.what or name) for name, one in rig.tow],
            slot=tab.slot,
            screens=self.screens.names(),
        )

    def _seen(self, tab: Tab) -> Seen:
        assert self.desk is not None
        return self.desk.session.seen(tab.slot)

    def _numbers(self, tab: Tab, seq: int) -> contract.Numbers:
        assert self.desk is not None
        return numbers_of(self._seen(tab), seq, self.desk.session.rev, preview=False)

    async def _tell(self, tab: Tab, message: BaseModel) -> None:
        await tab.send(message.model_dump_json())

    async def _tell_all(self, message: BaseModel) -> None:
        for tab in list(self.tabs):
            await self._tell(tab, message)

    # ------------------------------------------------------------------ what takes longer

    def _seek(self, tab: Tab, message: contract.Seek, desk: Desk) -> None:
        task = asyncio.create_task(self._found(tab, message, desk.session.text, desk.session.rev))
        self._running.add(task)
        task.add_done_callback(self._running.discard)

    async def _found(self, tab: Tab, message: contract.Seek, text: str, rev: int) -> None:
        asked = (text, message.code, message.where, tab.slot.stage, tab.slot.load, tab.slot.vehicle, self.today)
        if self.seekers is None:
            found = await asyncio.to_thread(sought, *asked)
        else:
            found = await asyncio.get_running_loop().run_in_executor(self.seekers(), sought, *asked)
        self._offered[message.code, message.where] = (rev, found)
        says = found.says + (f"; {found.then}" if found.then else "")
        remedy = "; ".join(f"{path} = {value}" for path, value in found.edits)
        await self._tell(tab, contract.Offered(t="offered", seq=message.seq, code=message.code, where=message.where,
                                               remedy=remedy, says=says))  # fmt: skip

    async def keep(self, turn: float = 0.05, look: float = 2.0) -> None:
        """Write the file when it is due, look at the disk, and do what takes longer while no hand moves."""
        looked = self._clock()
        gc.collect()
        gc.freeze()
        gc.disable()
        while True:
            await asyncio.sleep(turn)
            now = self._clock()
            if self.desk is None:
                continue
            if self.desk.is_due(now):
                await self._look(now)
                if self.desk.is_due(now):
                    await self._tell_all(self.desk.write())
            elif now - looked >= look:
                looked = now
                await self._look(now)
            if now - self._moved_at >= QUIET:
                await self._idle()

    async def look_now(self) -> None:
        """Look at the disk at once: somebody told that the folder changed."""
        if self.desk is not None:
            await self._look(self._clock())

    async def _look(self, now: float) -> None:
        assert self.desk is not None
        before = self.desk.session.text
        told, change = self.desk.look(now)
        if told is not None:
            await self._tell_all(told)
        if change is not None:
            await self._told_of([change], before, None, None)

    async def _idle(self) -> None:
        """Do one piece of what takes longer, and tidy up."""
        assert self.desk is not None
        for tab in list(self.tabs):
            if self.screens.one_piece(self.desk.session, tab.screen, tab.slot):
                patch = contract.Patch(t="patch", rev=self.desk.session.rev, screen=tab.screen, sheet="", whole=True)
                await self._tell(tab, patch)
        gc.collect(0)


def _shift(message: contract.Move | contract.Drop) -> tuple[float, float, float]:
    return message.x_mm * MILLIMETRE, message.y_mm * MILLIMETRE, message.z_mm * MILLIMETRE


def understood(text: str) -> contract.Up | None:
    """Return a message a page sent, None where it is none."""
    try:
        return UP.validate_json(text)
    except ValidationError:
        return None
