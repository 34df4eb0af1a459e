"""Changes that should clear a finding of safety, or bring a thing in while there is a way; none proved yet.

A release fitted, fuel put out, a hole closed; a stage at which a big thing still comes in.
"""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.safety import Facet
from boxwright.finding import Finding
from boxwright.rig.rig import Item, Rig
from boxwright.study.moves import Candidate, Edit
from boxwright.study.remedy_words import (
    brought_at,
    hole_closed,
    put_out_at_night,
    release_fitted,
    release_made,
    taken_out,
)
from boxwright.study.slots import Slot

OPENED = frozenset({"safety/two-ways-out", "safety/opens-from-inside", "safety/release-not-fitted"})
PUT_OUT = "safety/fuel-inside"
CLOSED = "safety/open-hole"
BROUGHT = "layout/brought-in"
CHANGED = OPENED | {PUT_OUT, CLOSED, BROUGHT}
"""Rules that something fitted, put out, ticked or brought in at another stage clears."""


FITTED = "fitted"
"""What is written of an opening today once what goes into it is in."""


def way_changes(rig: Rig, finding: Finding, slot: Slot) -> list[Candidate]:
    """Return what should clear a finding of safety or of bringing in, by what the file itself says is to be had."""
    if finding.code == BROUGHT:
        return list(_brought(finding, slot))
    if finding.code not in CHANGED or finding.kind == "unknown":
        return []
    if finding.code == CLOSED:
        return list(_closed(rig, finding, slot))
    if finding.code == PUT_OUT:
        return list(_put_out(rig, finding, slot))
    return list(_opened(rig, finding, slot))


def _brought(finding: Finding, slot: Slot) -> Iterator[Candidate]:
    """Yield the last stage at which a way in was found for a thing and those like it."""
    told = slot.layout.brought if slot.layout is not None else ()
    one = next((one for one in told if one.of == finding.where and one.before), None)
    if one is not None:
        every = ((one.of, one.name), *one.others)
        edits = tuple(Edit(f"{of}.stage", one.before) for of, _ in every)
        yield Candidate(brought_at([name for _, name in every], one.before), edits, 0.0, len(every))


def _closed(rig: Rig, finding: Finding, slot: Slot) -> Iterator[Candidate]:
    item = _named(rig.openings, finding.where)
    if item is not None and slot.is_ticked:
        # What was written of the half-done hole is no longer so either.
        now = (Edit(f"{item.of}.now", FITTED),) if item.words.now.strip() else ()
        yield Candidate(hole_closed(item.name), (Edit(f"{item.of}.done", "yes"), *now), 0.0, 1)


def _put_out(rig: Rig, finding: Finding, slot: Slot) -> Iterator[Candidate]:
    item = _named(rig.parts, finding.where)
    if item is None:
        return
    if slot.use == "sleep":
        yield Candidate(put_out_at_night(item.name), (Edit(f"{item.of}.when_sleeping", "out"),), 0.0, 1)
    elif item.words.kind == "cargo":
        yield Candidate(taken_out(item.name, slot.load), (Edit(f"loads[{slot.load}].out", item.name),), 0.0, 1)


def _opened(rig: Rig, finding: Finding, slot: Slot) -> Iterator[Candidate]:
    """Yield the release that is to be had and not fitted; where the file knows of none, one of the opening's own."""
    there = {frame.of for frame in slot.standing.frames if frame.stands == "yes"}
    release = _named(rig.parts, finding.where)
    if release is None:
        name = finding.where.partition("[")[2].rstrip("]")
        release = next((one for one in rig.parts if _releases(one) == name and one.of not in there), None)
    opening = next((one for one in rig.openings if one.of == finding.where), None)
    if release is not None:
        is_now = slot.number <= rig.header.stage_today
        edits = [Edit(f"{release.of}.stage", slot.stage)] if release.marks.stage is None or not is_now else []
        edits += [Edit(f"{release.of}.done", "yes")] if is_now else []
        yield Candidate(release_fitted(release.name, slot.stage, is_now), tuple(edits), 0.0, 1)
    elif opening is not None:
        yield Candidate(release_made(opening.name), (Edit(f"{opening.of}.release", "inside"),), 0.0, 2)


def _releases(item: Item) -> str:
    facet = item.facet("safety")
    return facet.release.strip() if isinstance(facet, Facet) else ""


def _named(items: tuple[Item, ...], of: str) -> Item | None:
    return next((one for one in items if one.of == of), None)
