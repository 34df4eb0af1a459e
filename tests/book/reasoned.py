"""How the findings of the demo rigs were reached, worked out once for all tests that ask."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from functools import cache

from boxwright.book.reasons import Reason, reason_of
from boxwright.book.traced import Call, calls_of
from boxwright.finding import Finding
from boxwright.rig.compose import Reading, read_rig
from boxwright.study.slots import Slot, study
from tests.web.live import ROOT

DEMOS = ("whimbrel", "dunlin", "gannet")
DAY = date(2026, 6, 1)


@cache
def reading_of(demo: str) -> Reading:
    """Return a demo rig as it is read."""
    return read_rig((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"))


def last_stage(demo: str) -> int:
    """Return the number of the last stage of a demo rig."""
    return len(reading_of(demo).rig.stages_in_order) - 1


@cache
def run_at(demo: str, stage: int) -> tuple[tuple[Slot, tuple[Call, ...]], ...]:
    """Return the slots of a stage as planned, each with the formulas that ran for it."""
    rig = reading_of(demo).rig
    slots = study(rig, DAY, stage=stage, ticked=False).asked_slots()
    return tuple((slot, calls_of(rig, DAY, slot) if slot.findings else ()) for slot in slots)


def every_reason(demo: str, *stages: int) -> Iterator[tuple[Finding, Slot, Reason]]:
    """Yield every finding of some stages, each said once, with how it was reached."""
    said = set[tuple[str, str, str]]()
    for finding, slot, reason in (one for stage in stages for one in _reasons_at(demo, stage)):
        if (finding.code, finding.where, finding.says) not in said:
            said.add((finding.code, finding.where, finding.says))
            yield finding, slot, reason


@cache
def _reasons_at(demo: str, stage: int) -> tuple[tuple[Finding, Slot, Reason], ...]:
    """Return every finding of a stage, each said once, with how it was reached."""
    reading, found = reading_of(demo), dict[tuple[str, str, str], tuple[Finding, Slot, Reason]]()
    units = reading.rig.header.units
    for slot, calls in run_at(demo, stage):
        for one in slot.findings:
            if (one.code, one.where, one.says) not in found:
                reason = reason_of(one, slot, reading.document, calls, units, units)
                found[one.code, one.where, one.says] = (one, slot, reason)
    return tuple(found.values())
