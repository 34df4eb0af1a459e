"""The smallest proved change for one finding, sought apart from the page's own program so that no hand waits for it."""

from __future__ import annotations

import multiprocessing
import os
import threading
from concurrent.futures import Executor, ProcessPoolExecutor
from datetime import date

from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.rig.compose import Composer
from boxwright.rig.keys import KNOWN_KEYS
from boxwright.rig.read import read_document
from boxwright.study.bench import Bench
from boxwright.study.lever import lever_of
from boxwright.study.once import Once
from boxwright.study.remedy import fixes_of, may_be_cured, said_of_none
from boxwright.study.slots import Slot


@dataclass(frozen=True, slots=True)
class Sought:
    """What was found: the values to write, where the path names a list the value joins it; what the change does."""

    edits: tuple[tuple[str, str], ...]
    says: str
    clears: tuple[str, ...] = ()
    then: str = ""

    @property
    def is_of_the_built(self) -> bool:
        """Return whether it would write that something is built: a hand in the workshop makes that true, no button."""
        return any(path.endswith((".done", ".release")) for path, _ in self.edits)


NICE = 5
"""How far behind the page's own program and the browser the seeking process stands in line for a processor."""
Asked = tuple[str, str, str, str, str]
"""What a change is sought for: the code of a finding and where it is; the stage, load state and use it was said of."""


class Kept:
    """The bench of the text a change was last sought in: the next finding is held against what is worked out there.

    The text after it is read and worked out beside it, so that only what was changed is worked out anew.
    """

    def __init__(self) -> None:
        self._composer, self._once = Composer(), Once()
        self._bench: Bench | None = None
        self._of: tuple[str, str, date] | None = None
        self.found: dict[Asked, Sought] = {}
        """What was found for this text already."""

    def bench(self, text: str, vehicle: str, today: date) -> Bench:
        """Return the bench of a text, behind one tow vehicle, on one day."""
        if self._bench is None or self._of != (text, vehicle, today):
            reading = self._composer.compose(read_document(text, known_keys=KNOWN_KEYS))
            rig = reading.rig
            known = vehicle if any(name == vehicle for name, _ in rig.tow) else ""
            self._bench = Bench(reading, today, rig.header.units, once=self._once, vehicle=known)
            self._of = (text, vehicle, today)
            self.found = {}
        return self._bench


_KEPT = Kept()
"""One for the program that seeks: it is asked one thing at a time."""


def sought(text: str, asked: Asked, vehicle: str, today: date) -> Sought:
    """Return the change of least effort that clears a finding and harms nothing, or why there is none.

    It is sought and proved for what the finding was said of, its stage, load state, use and tow vehicle:
    without a stage today as ticked, with one its plan.
    """
    bench = _KEPT.bench(text, vehicle, today)
    if asked not in _KEPT.found:
        _KEPT.found[asked] = _sought(bench, asked)
    return _KEPT.found[asked]


def sought_ahead(text: str, stage: str, wanted: tuple[Asked, ...], vehicle: str, today: date) -> bool:
    """Do one piece of what would be waited for, before anybody asks; True once nothing is left to be done.

    First comes what every change is held against, a stage at a time: it is most of a search, and the same for every
    finding of a text. Then the changes are sought, one finding at a time.
    """
    bench = _KEPT.bench(text, vehicle, today)
    bench.look_at(_looked_at(bench, stage)[0])
    if bench.lay_one_more():
        return False
    left = [one for one in wanted if one not in _KEPT.found]
    if left:
        sought(text, left[0], vehicle, today)
    return len(left) <= 1


def _sought(bench: Bench, asked: Asked) -> Sought:
    code, where, stage, load, use = asked
    number, is_ticked = _looked_at(bench, stage)
    bench.look_at(number)
    for slot in bench.stage_before(number, is_ticked):
        if use in {"", slot.use} and load in {"", slot.load}:
            finding = next((one for one in slot.findings if (one.code, one.where) == (code, where)), None)
            if finding is not None and may_be_cured(finding, slot):
                return _best(bench, finding, slot)
    return Sought((), "no change is known that would clear it; what it asks for is written beside it")


def _looked_at(bench: Bench, stage: str) -> tuple[int, bool]:
    """Return the number of the stage looked at, and whether it is today as ticked."""
    rig = bench.reading.rig
    number = rig.stage_number(stage) if stage else None
    return (rig.header.stage_today, True) if number is None else (number, False)


def _best(bench: Bench, finding: Finding, slot: Slot) -> Sought:
    lever = lever_of(finding, slot)
    fix = next(fixes_of(bench, finding, slot, lever), None)
    if fix is None:
        tried = said_of_none(bench, finding, lever, slot)
        return Sought((), tried or f"no free place was found that clears it and harms nothing: {finding.act}")
    edits = tuple((edit.path, edit.value) for edit in fix.edits)
    return Sought(edits, fix.says, tuple(mark[0] for mark in fix.clears), fix.then)


class Seekers:
    """One process that proves changes, started when the first is asked for: it never shares what is open here."""

    def __init__(self) -> None:
        self._pool: ProcessPoolExecutor | None = None

    def __call__(self) -> Executor:
        """Return the process, started if need be."""
        if self._pool is None:
            context = multiprocessing.get_context("spawn")
            self._pool = ProcessPoolExecutor(max_workers=1, mp_context=context, initializer=_behind_the_page)
        return self._pool

    def stop(self) -> None:
        """End the process; the next that is asked for starts another."""
        if self._pool is not None:
            self._pool.shutdown(wait=False, cancel_futures=True)
            self._pool = None


def _behind_the_page() -> None:
    """Let the page's own program go first, and end with it however it ends: killed, it cannot say that it is gone."""
    if hasattr(os, "nice"):
        os.nice(NICE)
    threading.Thread(target=_end_with_the_page, daemon=True).start()


def _end_with_the_page() -> None:
    page = multiprocessing.parent_process()
    if page is not None:
        page.join()
        os._exit(0)
