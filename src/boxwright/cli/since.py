"""``since``: what has changed since a day or a ticket, and which answers moved, in sentences."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from typing import TypeVar

from boxwright.book.numbers import USE_NAMES, mass, named, share
from boxwright.cli.asked import Answered, Question, answered, state_of, verdict_of
from boxwright.cli.changed import finding_changes
from boxwright.cli.ordered import since_order
from boxwright.cli.rig_file import NothingAsked, nearest
from boxwright.cli.screen import Line, clean, hanging, plain, wrapped
from boxwright.exchange import Measured
from boxwright.finding import USES
from boxwright.model.stage import Done, Marks
from boxwright.records import dataclass
from boxwright.rig.rig import Item, Layer, Rig
from boxwright.study.slots import Slot, stage_name, study
from boxwright.units import HeaderUnits

Marked = TypeVar("Marked", Item, Layer)
NOT_YET = Done("no")


@dataclass(frozen=True, slots=True)
class Then:
    """The moment a rig is compared with: its name, its day, the stage it was in, the load state it was weighed in."""

    name: str
    day: date
    stage: int
    load: str
    readings: tuple[Measured, ...]


def since(question: Question, word: str, today: date, columns: int) -> tuple[list[Line], Answered]:
    """Return the page of ``since``, and the answer as of today."""
    if word == "order":
        return since_order(question, today, columns)
    now = answered(question, today)
    rig = now.reading.rig
    then = _then(rig, word, now.study.judged_on)
    old_rig = rig_then(rig, then)
    found = study(old_rig, today, stage=then.stage, shown_in=now.units, judged_on=then.day, vehicle=question.vehicle)
    before = replace(now, reading=replace(now.reading, rig=old_rig), study=found)
    title = f"Since {then.name} ({then.day}, stage {stage_name(rig, then.stage) or then.stage}), by what is written:"
    lines = [plain(piece, "head") for piece in wrapped(clean(title), columns)]
    lines += _ticked(rig, then, columns)
    lines += _measured(rig, then, columns)
    lines += _weights(before, now, then, columns)
    lines += _answers(before, now, columns)
    old, new = (replace(one.study, slots=one.study.asked_slots()) for one in (before, now))
    return lines + finding_changes(old, new, now, columns, is_by_slot=False), now


def _then(rig: Rig, word: str, today: date) -> Then:
    """Return the moment a typed word means: a day, or a named reading with a date."""
    try:
        day = date.fromisoformat(word)
    except ValueError:
        pass
    else:
        if day > today:
            raise NothingAsked(f"{day} is still to come; today is {today}")
        return Then("that day", day, _stage_on(rig, day), "", ())
    path = word if word.startswith("measured[") else f"measured[{word}]"
    readings = tuple(one for one in rig.measured if one.of == path)
    if not readings:
        names = list(dict.fromkeys(named(one.of) for one in rig.measured))
        guess = nearest(word, names)
        meant = f'; did you mean "{clean(guess)}"?' if guess else f" ({', '.join(map(clean, names))})" if names else ""
        raise NothingAsked(f'"{clean(word)}" is no day such as 2026-03-01 and no weighing of this file{meant}')
    first = readings[0]
    if first.on is None:
        raise NothingAsked(f"{clean(named(path))} carries no date, so nobody can say what is newer; write its date")
    stage = rig.stage_number(first.stage)
    return Then(named(path), first.on, stage if stage is not None else _stage_on(rig, first.on), first.load, readings)


def _stage_on(rig: Rig, day: date) -> int:
    """Return the stage a rig was in on a day: that of the first stage ticked later, at most today's."""
    later = [stage.index for stage in rig.stages_in_order if stage.done.on is not None and stage.done.on > day]
    return min([rig.header.stage_today, *later])


def rig_then(rig: Rig, then: Then) -> Rig:
    """Return the rig as its ticks say it was: what was ticked later was not there, what was read later not known."""

    def earlier(marks: Marks) -> Marks:
        return replace(marks, done=NOT_YET) if marks.done.on is not None and marks.done.on > then.day else marks

    def back(items: tuple[Marked, ...]) -> tuple[Marked, ...]:
        return tuple(replace(item, marks=earlier(item.marks)) for item in items)

    return replace(
        rig,
        header=replace(rig.header, stage_today=then.stage, is_demo=True, date_today=then.day),
        stages_in_order=tuple(
            replace(one, done=NOT_YET) if one.done.on is not None and one.done.on > then.day else one
            for one in rig.stages_in_order
        ),
        parts=back(rig.parts),
        openings=back(rig.openings),
        wires=back(rig.wires),
        straps=back(rig.straps),
        pipes=back(rig.pipes),
        layers=back(rig.layers),
        measured=tuple(one for one in rig.measured if one.on is None or one.on <= then.day or one.what == "part"),
    )


def _ticked(rig: Rig, then: Then, columns: int) -> list[Line]:
    """Return what has been ticked since, day by day."""
    by_day: dict[date, list[str]] = {}
    things: Iterable[Item | Layer] = (*rig.parts, *rig.openings, *rig.layers, *rig.wires, *rig.straps, *rig.pipes)
    for thing in things:
        if thing.marks.done.on is not None and thing.marks.done.on > then.day:
            by_day.setdefault(thing.marks.done.on, []).append(named(thing.of))
    for stage in rig.stages_in_order:
        if stage.done.on is not None and stage.done.on > then.day:
            by_day.setdefault(stage.done.on, []).append(f"stage {stage.name}")
    if not by_day:
        return [(), *map(plain, wrapped("Nothing has been ticked with a later date.", columns))]
    lines: list[Line] = [(), plain("TICKED SINCE", "head")]
    for day in sorted(by_day):
        lines += hanging(plain(f"  {day}  "), ", ".join(by_day[day]), columns)
    return lines


def _measured(rig: Rig, then: Then, columns: int) -> list[Line]:
    """Return what has been read since: weighings by name."""
    later = {one.of: one for one in rig.measured if one.on is not None and one.on > then.day}
    if not later:
        return []
    lines: list[Line] = [(), plain("WEIGHED SINCE", "head")]
    for one in later.values():
        about = f" ({one.part})" if one.part else ""
        lines += hanging(plain(f"  {one.on}  "), f"{named(one.of)}{about}", columns)
    return lines


def _weights(before: Answered, now: Answered, then: Then, columns: int) -> list[Line]:
    """Return gross, ball and share then and now, in one load state; beside a ticket's own readings."""
    pairs = list(_same_slots(before, now, then))
    lines: list[Line] = [(), plain("WEIGHT", "head")]
    for one in then.readings:
        lines += hanging(plain("  "), f"{then.name} read {one.what}: {mass(one.value, now.units)}", columns)
    for old, new in pairs:
        lines += _then_and_now(old, new, now.units, columns)
    return lines if len(lines) > 2 else []


def _same_slots(before: Answered, now: Answered, then: Then) -> Iterator[tuple[Slot, Slot]]:
    """Yield the load states of the road, each then and now; that of the ticket alone where it names one."""
    for old in before.study.asked_slots("tow", then.load or now.question.load):
        new = next(iter(now.study.asked_slots("tow", old.load)), None)
        if new is not None:
            yield old, new


def _then_and_now(old: Slot, new: Slot, units: HeaderUnits, columns: int) -> list[Line]:
    was, now = state_of(old), state_of(new)
    if was is None or now is None:
        return []
    says = f"gross {mass(was.gross, units)}, now {mass(now.gross, units)}; "
    says += f"on the ball {mass(was.tongue, units)}, now {mass(now.tongue, units)}; "
    says += f"share {share(was.share, units)}, now {share(now.share, units)}"
    return hanging(plain(f"  {clean(new.load)}: "), says, columns)


def _answers(before: Answered, now: Answered, columns: int) -> list[Line]:
    """Return which answers moved."""
    lines: list[Line] = [(), plain("ANSWERS", "head")]
    for use in USES:
        old, new = verdict_of(before, use), verdict_of(now, use)
        lead = plain(f"  {USE_NAMES[use].ljust(6)} ")
        if old.answer == new.answer:
            lines += hanging(lead, f"{new.answer}, as then", columns)
        else:
            why = new.says[0] if new.says else "every rule that was judged holds"
            lines += hanging(lead, f"was {old.answer}, is {new.answer}: {why}", columns)
    return lines
