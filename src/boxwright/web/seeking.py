"""The smallest proved change for one finding, sought apart from the page's own program so that no hand waits for it."""

from __future__ import annotations

import multiprocessing
from concurrent.futures import Executor, ProcessPoolExecutor
from datetime import date

from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.rig.compose import read_rig
from boxwright.study.bench import Bench
from boxwright.study.lever import lever_of
from boxwright.study.remedy import fixes_of, may_be_cured, said_of_none
from boxwright.study.slots import Slot, study


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


def sought(text: str, code: str, where: str, stage: str, load: str, use: str, vehicle: str, today: date) -> Sought:
    """Return the change of least effort that clears a finding and harms nothing, or why there is none.

    It is sought and proved for what the finding was said of, its stage, load state, use and tow vehicle:
    without a stage today as ticked, with one its plan.
    """
    reading = read_rig(text)
    rig = reading.rig
    number = rig.stage_number(stage) if stage else None
    is_ticked = number is None
    number = rig.header.stage_today if number is None else number
    known = vehicle if any(name == vehicle for name, _ in rig.tow) else ""
    bench = Bench(reading, today, rig.header.units, vehicle=known)
    found = study(rig, today, stage=number, once=bench.once, vehicle=known, ticked=is_ticked)
    bench.look_at(number)
    for slot in found.asked_slots(use, load):
        finding = next((one for one in slot.findings if (one.code, one.where) == (code, where)), None)
        if finding is not None and may_be_cured(finding, slot):
            return _best(bench, finding, slot)
    return Sought((), "no change is known that would clear it; what it asks for is written beside it")


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
            self._pool = ProcessPoolExecutor(max_workers=1, mp_context=multiprocessing.get_context("spawn"))
        return self._pool

    def stop(self) -> None:
        """End the process; the next that is asked for starts another."""
        if self._pool is not None:
            self._pool.shutdown(wait=False, cancel_futures=True)
            self._pool = None
