"""``next``: what to weigh or measure first, which ticks are missing, which stages are ready."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from math import inf

from boxwright.book.numbers import named
from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.screen import Line, hanging, plain, wrapped
from boxwright.finding import Answer, Finding
from boxwright.model.stage import Marks, Stage, stands
from boxwright.records import dataclass
from boxwright.rig.rig import Rig
from boxwright.study.reach import Crossing, crossings
from boxwright.study.remedy_words import look_and_tick
from boxwright.study.slots import Slot
from boxwright.study.verdict import CHAPTERS, verdict
from boxwright.units import Band, HeaderUnits, show, show_band

MOST_STOPS, MOST_STEPS, MOST_TICKS = 4, 7, 12
TICKING = "tick"
"""Stands for looking at all that nobody has ticked."""
BETTER: tuple[Answer, ...] = ("no", "ask", "limits", "go")
ALL = frozenset(chapter.word for chapter in CHAPTERS)


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to look at or measure: how many answers it alone would better, how many it holds back, its minutes.

    ``crossing`` says of a part nobody has weighed from which weight on it alone decides.
    """

    act: str
    minutes: int | None
    betters: int
    holds_back: tuple[str, ...]
    protects: bool
    where: str
    crossing: Crossing | None = None


def next_page(question: Question, today: date, columns: int) -> tuple[list[Line], Answered]:
    """Return the page of ``next``, and the answer as of today."""
    answer = answered(question, today)
    rig = answer.reading.rig
    when = "today as ticked" if answer.study.is_ticked else "as planned"
    title = f"{rig.header.name or 'This rig'}, {when}, stage {answer.study.stage}: what to do next"
    lines = [plain(piece, "head") for piece in wrapped(title, columns)]
    lines += _stops(answer, columns)
    lines += _measures(answer, columns)
    lines += _ticks(answer, columns)
    return lines + _stages(rig, answer.units, columns), answer


def steps(slots: Iterable[Slot]) -> tuple[Step, ...]:
    """Return what is not known, as things to do, the one that betters most answers first.

    An answer is bettered where it would be a better one with everything said away that the same act settles; chapters
    that are not built yet are left out of it, for no measurement brings them.
    """
    slots = tuple(slots)
    acts: dict[str, list[tuple[Slot, Finding]]] = {}
    for slot in slots:
        for finding in slot.findings:
            if finding.kind == "unknown" and finding.act:
                acts.setdefault(_settled_by(finding), []).append((slot, finding))
    deciding = {one.of: one for one in crossings(slots)}
    found = []
    for act, said in acts.items():
        held = {id(slot): slot for slot, _ in said}.values()
        minutes = [finding.minutes for _, finding in said if finding.minutes is not None]
        ticked = tuple(dict.fromkeys(path for _, finding in said for path in finding.because or (finding.where,)))
        found.append(
            Step(
                look_and_tick(ticked) if act == TICKING else act,
                min(minutes, default=None) if act != TICKING else len(ticked),
                sum(_betters(slot, act) for slot in held),
                tuple(dict.fromkeys(slot.use for slot in held)),
                any(finding.protects for _, finding in said),
                said[0][1].where,
                deciding.get(said[0][1].where) if act != TICKING else None,
            )
        )
    return tuple(sorted(found, key=_first))


def _first(step: Step) -> tuple[object, ...]:
    crossing = step.crossing.kg if step.crossing is not None else inf
    return not step.protects, -step.betters, crossing, -len(step.holds_back), step.minutes or 0


def _settled_by(finding: Finding) -> str:
    """Return the act that settles a question: all things nobody has ticked are looked at in one walk."""
    return TICKING if finding.code.endswith("/stands-perhaps") else finding.act


def _betters(slot: Slot, act: str) -> bool:
    """Return whether an answer would be better were one thing known and fine."""
    every = (*slot.findings, *slot.accepted)
    rest = [one for one in every if one.kind != "unknown" or _settled_by(one) != act]
    now = verdict(slot.use, slot.load, slot.stage, every, ALL).answer
    return BETTER.index(verdict(slot.use, slot.load, slot.stage, rest, ALL).answer) > BETTER.index(now)


def _stops(answer: Answered, columns: int) -> list[Line]:
    """Return what is a no for certain, and what ends it: no measurement does."""
    slots = answer.study.asked_slots(load=answer.question.load)
    found: dict[tuple[str, str], Finding] = {}
    for one in (one for slot in slots for one in slot.findings if one.kind == "stop"):
        found.setdefault((one.code, one.where), one)
    lines: list[Line] = [(), plain("PUT RIGHT FIRST: no measurement ends these", "head")] if found else []
    for one in list(found.values())[:MOST_STOPS]:
        lines += hanging(plain("  - "), f"{one.act or one.remedy}: {one.says} (load {one.load})", columns)
    if len(found) > MOST_STOPS:
        lines.append(plain(f"  and {len(found) - MOST_STOPS} more: boxwright check {answer.question.path}", "dim"))
    return lines


def _measures(answer: Answered, columns: int) -> list[Line]:
    found = steps(answer.study.asked_slots(load=answer.question.load))
    if not found:
        return [(), plain("Nothing that is asked for has to be weighed or measured.")]
    lines: list[Line] = [(), plain("WEIGH, MEASURE, LOOK", "head")]
    for count, one in enumerate(found[:MOST_STEPS], start=1):
        minutes = f" ({one.minutes} min)" if one.minutes is not None else ""
        betters = f"; alone it betters {one.betters} answer{'s' if one.betters > 1 else ''}" if one.betters else ""
        lines += hanging(plain(f"  {count} "), f"{one.act}{minutes}: for {', '.join(one.holds_back)}{betters}", columns)
        if one.crossing is not None:
            kg = show(one.crossing.kg, "kg", answer.units)
            says = f"by itself it crosses the limit from {kg} on ({one.crossing.code})"
            lines += hanging(plain("    "), says, columns)
        line = answer.reading.document.spot(one.where).line
        lines += hanging(plain("    "), f"line {line}, {one.where}", columns, "dim")
    if len(found) > MOST_STEPS:
        lines.append(plain(f"  and {len(found) - MOST_STEPS} more", "dim"))
    return lines


def _ticks(answer: Answered, columns: int) -> list[Line]:
    """Return the things of past and present stages nobody has ticked, with their lines."""
    slots = answer.study.asked_slots()
    paths = list(dict.fromkeys(path for slot in slots for path in slot.standing.perhaps))
    if not paths:
        return []
    lines: list[Line] = [(), plain("NOT TICKED YET: done: yes DATE, part, or no", "head")]
    spot = answer.reading.document.spot
    for path in paths[:MOST_TICKS]:
        lines += hanging(plain(f"  line {spot(path).line}".ljust(12)), named(path), columns)
    if len(paths) > MOST_TICKS:
        lines.append(plain(f"  and {len(paths) - MOST_TICKS} more", "dim"))
    return lines


def _stages(rig: Rig, units: HeaderUnits, columns: int) -> list[Line]:
    """Return the stages that can be begun, then what the others wait for."""
    needs = dict(rig.stages.stages)
    done = {stage.name for stage in rig.stages_in_order if is_done(rig, stage)}
    ready, waiting = [], []
    for stage in rig.stages_in_order:
        if stage.name in done:
            continue
        facet = needs.get(stage.name)
        missing = [name for name in (facet.needs if facet is not None else ()) if _name(rig, name) not in done]
        if missing:
            waiting.append(f"{stage.name} (after {', '.join(missing)})")
            continue
        hours = _hours(facet.hours if facet is not None else None, units)
        weather = f", {facet.weather}" if facet is not None and facet.weather else ""
        ready.append((stage, f"{stage.what or stage.name}{hours}{weather}{_not_here(rig, stage)}"))
    lines: list[Line] = [(), plain("STAGES THAT CAN BE DONE NOW", "head")] if ready else []
    for stage, says in ready:
        lines += hanging(plain(f"  {stage.name}: "), says, columns)
    if waiting:
        lines += [(), *hanging(plain("Waiting: "), ", ".join(waiting), columns, "dim")]
    return lines


def _name(rig: Rig, word: str) -> str:
    number = rig.stage_number(word)
    return rig.stages_in_order[number].name if number is not None else word


def is_done(rig: Rig, stage: Stage) -> bool:
    """Return whether a stage is done: ticked itself, or all that belongs to it is."""
    if stage.done.tick == "yes":
        return True
    if stage.done.tick in {"no", "part"}:
        return False
    marks = [marks for marks in _marks(rig) if marks.planned and marks.stage == stage.index and not marks.follows_load]
    return bool(marks) and all(stands(one, stage.index, True) == "yes" for one in marks)


def _marks(rig: Rig) -> Iterable[Marks]:
    yield from (item.marks for item in (*rig.parts, *rig.openings, *rig.wires, *rig.straps, *rig.pipes))
    yield from (layer.marks for layer in rig.layers)


def _hours(hours: Band | None, units: HeaderUnits) -> str:
    return f", {show_band(hours, 's', units)}" if hours is not None and hours.known else ""


def _not_here(rig: Rig, stage: Stage) -> str:
    """Return what still has to come for a stage, with the day it is said to arrive."""
    late = [
        f"{item.name} ({item.words.arrives})"
        for item in rig.parts
        if item.marks.stage == stage.index and item.words.arrives and not item.words.have
    ]
    return f"; not here yet: {', '.join(late)}" if late else ""
