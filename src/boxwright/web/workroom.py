"""The room where one rig is open for all tabs: their messages come in one after the other, and all hear what changed.

Messages of a tab are handled in the order they came, but of previews only the newest counts. What takes longer (the
drawings and charts over every stage, the proved change for a finding) is done when no hand moves, a piece at a time,
and dropped when the text has moved on.
"""

from __future__ import annotations

import asyncio
import gc
import logging
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from datetime import date
from pathlib import Path
from secrets import token_hex

from pydantic import BaseModel

from boxwright.web import contract, forms, terms
from boxwright.web.ahead import REST as UNTIL_SOUGHT
from boxwright.web.ahead import Ahead
from boxwright.web.beginning import asks, begun_from_answers, begun_from_demo, demos
from boxwright.web.desk import Desk
from boxwright.web.figures import key_for, numbers_of, slot_findings, vehicle_of
from boxwright.web.gestures import Refused
from boxwright.web.in_hand import HAND_RESTS, night_follows, previewed
from boxwright.web.keeping import CannotKeep, ChangedMeanwhile
from boxwright.web.making import Making
from boxwright.web.night import night_beside
from boxwright.web.offsets import shown_text, to_editor
from boxwright.web.said import growth_of, shift_of
from boxwright.web.screens import Screens
from boxwright.web.seeking import Seekers, Sought, sought
from boxwright.web.session import Change, Seen
from boxwright.web.tab import Tab

LOG = logging.getLogger(__name__)
QUIET = 0.15
"""How long (s) no hand may have moved before what takes longer is done."""
REST = 5.0
"""How long (s) no hand may have moved before all memory is tidied up."""
GOING = 5.0
"""How long (s) the last word of a page waits for its line to end, so that nothing it said before comes after."""
MOST_GONE = 50
"""Pages that are gone and whose last word may still come."""
WORST = contract.Choice(name="", label="the worst of all")
"""What is looked at unless somebody chooses: a load state that is fine never hides one that is not."""


class Workroom:
    """One rig open, or none yet. ``clock`` counts seconds; ``today`` is the day the answers are for.

    ``day`` tells the day anew while the workbench stays open; left out, it stays the one it began with.
    """

    def __init__(
        self,
        folder: Path,
        path: Path | None,
        today: date,
        clock: Callable[[], float],
        day: Callable[[], date] | None = None,
    ) -> None:
        self.folder, self.today, self._clock = folder, today, clock
        self._day = day if day is not None else lambda: today
        self.desk = Desk(path, today) if path is not None else None
        self.screens = Screens()
        self.making = Making(self.screens)
        self.program = token_hex(8)
        """Another each time the program is started: revisions of two programs have nothing to do with each other."""
        self.tabs: list[Tab] = []
        self.seekers = Seekers()
        self._ahead = Ahead(self.seekers)
        self._offered: dict[str, tuple[int, Sought]] = {}
        """What was found, by the finding it was proved for (`key_of`) and the text it was proved in."""
        self._moved_at = self._swept_at = 0.0
        self._running: set[asyncio.Task[None] | asyncio.Task[contract.Disk]] = set()
        self._gone: dict[str, Tab] = {}
        self._putting = ThreadPoolExecutor(1, "boxwright-file")
        """Puts texts on the disk one after the other, so that a slow disk stays nobody's hand."""
        self._disk = asyncio.Lock()
        self._drawing: asyncio.Task[None] | None = None
        self._is_stale = False

    # ------------------------------------------------------------------ a tab

    async def serve(self, tab: Tab) -> None:
        """Handle a tab's messages until it is gone and all of them are handled."""
        self.tabs.append(tab)
        try:
            while True:
                while (message := tab.next()) is not None:
                    self._moved_at = self._clock()
                    await self._handled(tab, message)
                    await asyncio.sleep(0)
                if tab.is_over:
                    return
                if await tab.rests(HAND_RESTS) and self.desk is not None:
                    night_follows(tab, self.desk.session)
        finally:
            self.tabs.remove(tab)
            self._gone[tab.page] = tab
            while len(self._gone) > MOST_GONE:
                del self._gone[next(iter(self._gone))]
            tab.is_gone.set()

    async def _greeted(self, tab: Tab, page: str) -> None:
        """Know a page again that lost its line: how far it was heard tells it what to say once more."""
        before = await self._let_end(page) if page not in {"", tab.page} else None
        tab.page, tab.heard = page, max(tab.heard, before.heard if before is not None else 0, 0)

    async def _let_end(self, page: str) -> Tab | None:
        """Return the line a page had, once all is handled that came by it; None where none is known."""
        open_tab = next((tab for tab in self.tabs if tab.page == page), None)
        if open_tab is not None:
            with suppress(TimeoutError):
                await asyncio.wait_for(open_tab.is_gone.wait(), GOING)
        return self._gone.get(page, open_tab)

    async def left_with(self, last: contract.Leaving) -> None:
        """Handle the last word of a page that was closed: what of it had not come in by its line."""
        before = await self._let_end(last.page)
        heard, ghost = before.heard if before is not None else 0, Tab()
        ghost.slot = before.slot if before is not None else ghost.slot
        for edit in last.edits:
            if edit.seq > heard:
                await self._handled(ghost, edit)
        if last.typed is not None:
            rejoin = contract.Rejoin(t="rejoin", seq=0, base=last.typed.base, typed=last.typed)
            await self._handled(ghost, rejoin)

    def turn_the_day(self) -> None:
        """Judge by the new day once midnight has passed, and tell every tab what comes of it."""
        day = self._day()
        if day == self.today:
            return
        self.today = day
        if self.desk is None:
            return
        self.desk.session.turn_to(day)
        for tab in self.tabs:
            tab.tell(self._numbers(tab, 0))
        self._draw_anew()

    async def _handled(self, tab: Tab, message: contract.Up) -> None:
        if isinstance(message, contract.Hello):
            await self._greeted(tab, message.page)
        else:
            tab.heard = max(tab.heard, message.seq)
        tab.in_hand = None
        self.turn_the_day()
        try:
            if isinstance(message, (contract.Hello, contract.Look)):
                self._looked(tab, message)
            elif isinstance(message, contract.Begin):
                self._begun(message)
            elif self.desk is None:
                raise Refused("no rig is open yet")
            elif isinstance(message, contract.Move):
                previewed(tab, message, self.desk.session)
            elif isinstance(message, contract.Cancel):
                tab.tell(self._numbers(tab, message.seq))
            elif isinstance(message, contract.Seek):
                self._seek(tab, message, self.desk)
            elif isinstance(message, contract.KeepWriting):
                self._tell_all(await self._written(self.desk, is_again=True))
            elif isinstance(message, (contract.Resolve, contract.Recover)):
                async with self._disk:  # nothing is on its way to the disk while it is said what shall stand there
                    self._changed(tab, message, self.desk)
                if isinstance(message, contract.Resolve):
                    self._tell_all(await self._written(self.desk))
                self._draw_anew()
            else:
                self._changed(tab, message, self.desk)
                self._draw_anew()
        except Refused as reason:
            self._say_no(tab, message.seq, str(reason), reason.asked)
        except ChangedMeanwhile:
            if self.desk is not None:
                self._tell_all(self.desk.told())
            self._say_no(tab, message.seq, "the file was changed once more; look at both again")

    def _say_no(self, tab: Tab, seq: int, why: str, asked: str = "") -> None:
        tab.tell(contract.No(t="no", seq=seq, why=why, asked=asked))
        if self.desk is not None:
            tab.tell(self._numbers(tab, seq))

    def _looked(self, tab: Tab, message: contract.Hello | contract.Look) -> None:
        if isinstance(message, contract.Hello) and message.contract != contract.CONTRACT:
            tab.tell(contract.Reload(t="reload"))
            return
        tab.screen, tab.slot = message.screen, message.slot
        tab.tell(self.state(tab))
        if self.desk is not None:
            if isinstance(message, contract.Hello):
                tab.tell(self.desk.told())
                text = shown_text(self.desk.session.text)
                rev, length = self.desk.session.rev, to_editor(self.desk.session.text, len(self.desk.session.text))
                tab.tell(contract.TextIs(t="text", rev=rev, length=length, text=text))
            tab.tell(self._numbers(tab, 0))

    def _begun(self, message: contract.Begin) -> None:
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
            self._looked(tab, contract.Hello(t="hello", seq=0, base=0, contract=contract.CONTRACT, screen=tab.screen,
                                             slot=tab.slot))  # fmt: skip

    def _changed(self, tab: Tab, message: contract.Up, desk: Desk) -> None:
        """Make a change, and tell every tab what follows from it."""
        desk.must_take()
        desk.must_not_grow(growth_of(message))
        session, before, at = desk.session, desk.session.text, self._clock()
        made = self._made(tab, message, desk, at)
        if not isinstance(message, contract.Resolve):
            desk.touched(at)
        self._told_of(made, before, tab, message)
        if session.document.is_damaged or desk.state != "step":
            self._tell_all(desk.told())

    def _made(self, tab: Tab, message: contract.Up, desk: Desk, at: float) -> list[Change]:
        session = desk.session
        match message:
            case contract.Drop():
                return [session.move(message.of, shift_of(message), message.base, at)]
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
                return [session.write_all(self._remedy(tab, message, session.rev), at)]
            case contract.Accept():
                number = self._accepted_number(tab, message)
                return [session.accept(message.code, message.where, message.note, number, at)]
            case contract.TextEdit():
                return session.type(message.changes, message.base, at)
            case contract.Rejoin():
                return [desk.rejoined(message.typed, at) or Change(0, "", "")]
            case contract.BringBack():
                return [desk.bring_back(message.name, at) or Change(0, "", "")]
            case contract.EnterReading():
                return [session.become(forms.put_reading(session, message.kind, message.values), at)]
            case contract.WriteMeasures():
                return [session.become(forms.put_measures(session, message.values), at)]
            case contract.Undo():
                return session.undo()
            case contract.Redo():
                return session.redo()
            case contract.Resolve():
                change = desk.resolve(message.text, message.disk_hash, at)
                return [change] if change is not None else []
            case contract.Recover():
                change = desk.recover(message.take, at, message.text, message.rev)
                return [change if change is not None else Change(0, "", "")]
            case _:
                raise Refused("that is no change")

    def _accepted_number(self, tab: Tab, message: contract.Accept) -> str:
        """Return the number a finding is accepted with: with another it comes back. Refuses what cannot be accepted."""
        asked = (message.code, message.where)
        found = [one for one in slot_findings(self._seen(tab)) if (one.code, one.where) == asked]
        if not found:
            raise Refused("nothing of the kind is found any more")
        if any(one.kind == "stop" for one in found):
            raise Refused("a stop cannot be accepted; what it asks for stands beside it")
        number = found[0].number
        unit = found[0].unit if found[0].unit in {"kg", "m"} else ""
        return f"{number:.4g} {unit}".strip() if number is not None else ""

    def _remedy(self, tab: Tab, message: contract.Apply, rev: int) -> tuple[tuple[str, str], ...]:
        key = key_for(message.code, message.where, message.load, message.use, self._seen(tab))
        at, found = self._offered.get(key, (-1, Sought((), "")))
        if at == -1:
            raise Refused("no change was proved for this stage, load state and tow vehicle yet; seek it here")
        if at != rev or not found.edits:
            raise Refused("the change was proved for an earlier text; seek it again")
        return found.edits

    def _told_of(self, made: list[Change], before: str, origin: Tab | None, message: contract.Up | None) -> None:
        """Tell every tab of a change at once, so that all hear of all changes in the same order; drawings follow."""
        desk = self.desk
        if desk is None or not made:
            return
        session = desk.session
        length = to_editor(session.text, len(session.text))
        text = contract.TextIs(t="text", rev=session.rev, length=length, by_another=message is None,
                               changes=session.for_editor(made, before))  # fmt: skip
        own = contract.TextIs(t="text", rev=session.rev, length=length)
        for tab in self.tabs:
            if tab.heard >= 0:  # a page that has not said who it is has no text yet that this could be a change of
                tab.tell(own if tab is origin and isinstance(message, contract.TextEdit) else text)
            tab.tell(self.state(tab))
            tab.tell(self._numbers(tab, message.seq if message is not None and tab is origin else 0))

    def _draw_anew(self) -> None:
        """See to it that every tab is sent what of its drawings has changed."""
        self._is_stale = True
        if self._drawing is None or self._drawing.done():
            self._drawing = asyncio.create_task(self._drawn_anew())

    async def _drawn_anew(self) -> None:
        """Send every tab what of its drawings has changed; tabs that look at the same are sent the same."""
        while self._is_stale and self.desk is not None:
            self._is_stale = False
            for looked_at in dict.fromkeys((tab.screen, tab.slot) for tab in self.tabs):
                changed = await self.making.patches(self.desk.session, *looked_at)
                for patch in changed or ():
                    for tab in self.tabs:
                        if (tab.screen, tab.slot) == looked_at:
                            tab.tell(patch)
                if changed is None:
                    self._is_stale = True  # it was changed again meanwhile: what counts is how it is now

    # ------------------------------------------------------------------ what a tab is told

    def state(self, tab: Tab) -> contract.State:
        """Return what a tab must know of the file and of what can be chosen."""
        if self.desk is None:
            return contract.State(t="state", program=self.program, place="", heard=tab.heard, rev=0, has_file=False,
                                  file="", rig="", undo=0, redo=0, can_write=True, stages=[], loads=[], vehicles=[],
                                  slot=tab.slot, screens=[], demos=demos(), asks=asks())  # fmt: skip
        desk, rig = self.desk, self.desk.session.reading.rig
        undo, redo = desk.session.depth
        stages = [contract.Choice(name="", label="Today, as ticked")]
        stages += [contract.Choice(name=one.name, label=f"{one.name}, as planned") for one in rig.stages_in_order]
        return contract.State(
            t="state",
            program=self.program,
            place=desk.keeper.place,
            heard=tab.heard,
            rev=desk.session.rev,
            has_file=True,
            file=desk.keeper.path.name,
            rig=rig.header.name or desk.keeper.path.stem,
            undo=undo,
            redo=redo,
            can_write=desk.can_write,
            stages=stages,
            loads=[WORST, *(contract.Choice(name=one.name, label=one.name) for one in rig.loads)],
            vehicles=[contract.Choice(name=name, label=one.what or name) for name, one in rig.tow],
            slot=tab.slot,
            screens=self.screens.names(),
            left=desk.left_says,
            terms=terms.SLOT,
        )

    def _seen(self, tab: Tab) -> Seen:
        assert self.desk is not None
        return self.desk.session.seen(tab.slot)

    def _numbers(self, tab: Tab, seq: int) -> contract.Numbers:
        assert self.desk is not None
        seen = self._seen(tab)
        numbers = numbers_of(seen, seq, self.desk.session.rev, preview=False)
        return numbers.model_copy(update={"night": night_beside(tab.screen, seen)})

    def _tell_all(self, message: BaseModel) -> None:
        for tab in self.tabs:
            tab.tell(message)

    # ------------------------------------------------------------------ what takes longer

    def _seek(self, tab: Tab, message: contract.Seek, desk: Desk) -> None:
        task = asyncio.create_task(self._found(tab, message, desk.session.text, desk.session.rev))
        self._running.add(task)
        task.add_done_callback(self._running.discard)

    async def _found(self, tab: Tab, message: contract.Seek, text: str, rev: int) -> None:
        key = key_for(message.code, message.where, message.load, message.use, self._seen(tab))
        asked = (message.code, message.where, tab.slot.stage, message.load, message.use)
        about = (text, asked, vehicle_of(self._seen(tab)), self.today)
        seeking = asyncio.get_running_loop().run_in_executor(self.seekers(), sought, *about)
        await asyncio.wait({seeking})
        failed = seeking.exception()
        if failed is not None:
            LOG.error("no change could be sought", exc_info=failed)
            self.seekers.stop()
        found = seeking.result() if failed is None else Sought((), "it could not be sought; ask once more")
        self._offered = {one: kept for one, kept in self._offered.items() if kept[0] == rev} | {key: (rev, found)}
        says = found.says + (f"; {found.then}" if found.then else "")
        remedy = "; ".join(f"{path} = {value}" for path, value in found.edits)
        tab.tell(contract.Offered(t="offered", seq=message.seq, rev=rev, key=key, remedy=remedy, says=says,
                                  is_of_the_built=found.is_of_the_built))  # fmt: skip

    async def keep(self, turn: float = 0.05, look: float = 2.0) -> None:
        """Write the file when it is due, and look at the disk."""
        looked = self._clock()
        while True:
            await asyncio.sleep(turn)
            now = self._clock()
            if self.desk is None:
                continue
            if self.desk.is_due(now):
                self._look(now)
                if self.desk.is_due(now):
                    self._tell_all(await self._written(self.desk))
            elif now - looked >= look:
                looked = now
                self._look(now)

    async def _written(self, desk: Desk, is_again: bool = False) -> contract.Disk:
        """Put the text on the disk while everything else goes on, and return how the file stands then."""
        task = asyncio.create_task(self._put(desk, is_again))
        self._running.add(task)
        task.add_done_callback(self._running.discard)
        return await asyncio.shield(task)  # whoever asked may go; the text is put down all the same

    async def _put(self, desk: Desk, is_again: bool) -> contract.Disk:
        async with self._disk:
            if desk.state == "step" and not is_again:
                return desk.told()  # an earlier turn has written it
            put = desk.begun(is_again)
            try:
                failed = await asyncio.get_running_loop().run_in_executor(self._putting, desk.put, put)
            except Exception:
                desk.is_putting = False  # or it would never be tried again
                raise
            return desk.ended(put, failed)

    async def ended(self) -> None:
        """Write what waits, after what is on its way; the program ends."""
        async with self._disk:
            pass  # what is on its way is there, or is known not to be
        if self.desk is not None and self.desk.state == "dirty":
            await self._written(self.desk)
        self._putting.shutdown()
        self.making.stop()
        self.seekers.stop()

    async def idle(self, turn: float = 0.05) -> None:
        """Do what takes longer while no hand moves, a piece at a time; memory is tidied up then, not in between."""
        gc.collect()
        gc.freeze()
        gc.disable()
        try:
            while True:
                await asyncio.sleep(turn)
                self.turn_the_day()
                rest = self._clock() - self._moved_at
                if self.desk is None or rest < QUIET:
                    continue
                self._one_piece()
                if rest >= UNTIL_SOUGHT:
                    for tab in self.tabs:
                        self._ahead.piece(self._seen(tab), self.desk.session.rev, self.today)
                if rest < REST:
                    gc.collect(0)
                elif self._swept_at < self._moved_at:
                    self._swept_at = self._clock()
                    gc.collect()
        finally:
            gc.unfreeze()
            gc.enable()

    def look_now(self) -> None:
        """Look at the disk at once: somebody told that the folder changed."""
        if self.desk is not None:
            self._look(self._clock())

    def _look(self, now: float) -> None:
        assert self.desk is not None
        before = self.desk.session.text
        told, change = self.desk.look(now)
        if told is not None:
            self._tell_all(told)
        if change is not None:
            self._told_of([change], before, None, None)
            self._draw_anew()

    def _one_piece(self) -> None:
        """Do one piece of what takes longer for each tab."""
        assert self.desk is not None
        for tab in self.tabs:
            if self.screens.one_piece(self.desk.session, tab.screen, tab.slot):
                tab.tell(contract.Patch(t="patch", rev=self.desk.session.rev, screen=tab.screen, sheet="", whole=True))
