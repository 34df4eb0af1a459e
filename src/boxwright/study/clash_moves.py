"""What clears a clash: the thing in the way moved to where it is free at every time, or out for the night.

The least move of one slot is layout's own; here it is taken to the nearest place that is free in all slots, in round
figures. None is proved yet.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from boxwright.disciplines.layout.result import Shift
from boxwright.finding import Finding
from boxwright.rig.rig import Item
from boxwright.study.bench import Bench
from boxwright.study.moves import Candidate, Edit, Movable
from boxwright.study.remedy_words import moving, out_for_the_night
from boxwright.study.rewritten import rounded_shift
from boxwright.study.slots import Slot

BED = "layout/sleeping-place"
MET = frozenset({BED, "layout/one-space", "layout/opening-strikes", "layout/kept-clear", "layout/gap-small"})
"""The clashes that moving the thing in the way clears."""
NUDGE = 0.01
"""How far (m) a thing is moved at least the other ways."""
AXES: tuple[Literal[0, 1], ...] = (0, 1)


def clash_moves(bench: Bench, finding: Finding, slot: Slot) -> list[Candidate]:
    """Return the moves that should clear a clash, and for a bed what is taken out for the night."""
    if finding.code not in MET or finding.kind not in {"stop", "fix"} or slot.layout is None:
        return []
    family = {of: top for top, members in bench.rooms.families.items() for of in members if top == _top(bench, of)}
    asked = (finding.where, *finding.because)
    own = dict.fromkeys(family.get(of, of) for of in asked if of.startswith("parts["))
    loose = {(one.item.of, one.axis): one for one in bench.loose(slot, AXES) if one.item.of in own}
    found = [candidate for one in loose.values() for candidate in _moved(bench, one, _shift(slot, one.item.of))]
    return [*found, *_out(bench, finding, [*own])]


def _top(bench: Bench, of: str) -> str:
    """Return the path of what carries a thing in the end."""
    tops = [top for top, members in bench.rooms.families.items() if of in members]
    return max(tops, key=lambda top: len(bench.rooms.families[top]), default=of)


def _shift(slot: Slot, of: str) -> Shift | None:
    """Return the least move of a thing in a slot, as layout has found it."""
    laid = slot.layout
    assert laid is not None
    every = [one.shift for one in laid.meetings]
    every += [one.shift for one in laid.struck]
    every += [one.shift for one in laid.intruders]
    return next((shift for shift in every if shift is not None and shift.of == of), None)


def _moved(bench: Bench, one: Movable, shift: Shift | None) -> Iterator[Candidate]:
    """Yield a thing moved both ways along one axis to the nearest place that is free at every time.

    A thing layout knows no place for in its own slot is not moved: it would only stand in something else.
    """
    if shift is None:
        return
    known = shift.by if shift.axis == one.axis else 0.0
    ways = [known] if known else []
    ways += [sign * NUDGE for sign in (1.0, -1.0) if sign * known <= 0.0]
    for way in ways:
        by = one.room.landing(way, lambda far: rounded_shift(one.offset, far))
        if by:
            says, edit = one.moved(by, bench.units)
            yield Candidate(moving([says]), (edit,), one.kg * abs(by), 1)


def _out(bench: Bench, finding: Finding, own: list[str]) -> Iterator[Candidate]:
    """Yield the cargo in a bed's way taken out for the night."""
    if finding.code != BED or finding.kind != "stop":
        return
    items: list[Item] = [item for item in bench.reading.rig.parts if item.of in own and item.words.kind == "cargo"]
    if items and all(item.words.when_sleeping is None for item in items):
        edits = tuple(Edit(f"{item.of}.when_sleeping", "out") for item in items)
        mass = sum(item.mass.best for item in items if item.mass.known)
        yield Candidate(out_for_the_night([item.name for item in items]), edits, mass, len(items), leaves=True)
