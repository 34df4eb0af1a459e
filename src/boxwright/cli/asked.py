"""From a question on the command line to a study, and from the study to what an answer shows."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date
from typing import cast

from boxwright.book import answer as answers
from boxwright.book.numbers import UNIT_SYSTEMS, named, units_asked
from boxwright.cli.compared import compared_sentences, parked_sentences, weigh_next, wheel_sentences
from boxwright.cli.rig_file import NothingAsked, must_be_one_of, read_bytes
from boxwright.cli.shown import Checked, State, Weighed
from boxwright.finding import USES, Answer, Finding, Use, Verdict
from boxwright.records import dataclass
from boxwright.rig.compose import Reading, read_rig
from boxwright.rig.keys import OWNER_OF_SECTION
from boxwright.rig.rig import Rig
from boxwright.rig.spelled import as_written
from boxwright.study.once import Once
from boxwright.study.slots import Slot, Study, study
from boxwright.units import HeaderUnits

EXIT_CODES: dict[Answer, int] = {"go": 0, "limits": 1, "ask": 1, "no": 2}
NOTHING_READ = 3
NAMELESS = "this rig"


@dataclass(frozen=True, slots=True)
class Question:
    """What was typed, word for word; an empty text where nothing was."""

    path: str
    stage: str = ""
    load: str = ""
    use: str = "tow"
    units: str = "file"
    on: str = ""
    vehicle: str = ""


@dataclass(frozen=True, slots=True)
class Answered:
    """A question with the file it was asked of and its study. ``once`` knows which steps ran."""

    question: Question
    reading: Reading
    study: Study
    use: Use
    units: HeaderUnits
    once: Once
    seconds_reading: float = 0.0


def answered(
    question: Question,
    today: date,
    is_every_stage: bool = False,
    clock: Callable[[], float] | None = None,
    change: Callable[[Rig], Rig] | None = None,
) -> Answered:
    """Return the answer to a question; ``is_every_stage`` works out the stages before today's too.

    ``change`` makes another rig of the one that was read, such as one in a colder night; the file stays as it is.

    A stage that is asked for by name is answered for as planned, today's too; without one today is, as ticked.
    """
    use = cast(Use, must_be_one_of(question.use, list(USES), "use"))
    system = must_be_one_of(question.units, list(UNIT_SYSTEMS), "system of units")
    day = _day(question.on)
    data = read_bytes(question.path)
    started = clock() if clock else 0.0
    reading = read_rig(data)
    seconds = clock() - started if clock else 0.0
    if change is not None:
        reading = replace(reading, rig=change(reading.rig))
    rig = reading.rig
    stage = _stage(rig, question.stage)
    _check_load(rig, question.load, use)
    if question.vehicle:
        must_be_one_of(question.vehicle, [name for name, _ in rig.tow], "tow vehicle")
    units = units_asked(system, rig.header.units)
    once = Once(clock)
    found = study(
        rig,
        today,
        stage=None if is_every_stage and not question.stage else stage,
        once=once,
        all_stages=is_every_stage,
        shown_in=units,
        judged_on=day,
        vehicle=question.vehicle,
        ticked=False if question.stage else None,
    )
    return Answered(question, reading, found, use, units, once, seconds)


def _day(text: str) -> date | None:
    if not text:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise NothingAsked(f'cannot read the date "{text}"; write it as 2026-05-02') from None


def _stage(rig: Rig, word: str) -> int:
    """Return the number of the stage asked for, today's where none was named."""
    if not word:
        return rig.header.stage_today
    number = rig.stage_number(word)
    if number is None:
        must_be_one_of(word, [stage.name for stage in rig.stages_in_order], "stage")
        raise NothingAsked("there are no stages in this file")
    return number


def _check_load(rig: Rig, name: str, use: Use) -> None:
    if not name:
        return
    must_be_one_of(name, [state.name for state in rig.loads], "load state")
    uses = next(state.uses for state in rig.loads if state.name == name)
    if use not in uses:
        judged_for = ", ".join(uses) or "nothing"
        raise NothingAsked(
            f'load state "{name}" is judged for {judged_for}, not for {use}; add --use {next(iter(uses), use)}'
        )


def verdict_of(answer: Answered, use: Use) -> Verdict:
    """Return the verdict for a use: in the load state asked for where it is judged in it, else in its worst."""
    return answers.verdict_of(answer.study, use, answer.question.load)


def exit_code(answer: Answered) -> int:
    """Return 0 for go, 1 for limits or ask, 2 for no, of the use asked for; 3 where nothing could be read at all."""
    if not any(key in OWNER_OF_SECTION for key in answer.reading.document.tree):
        return NOTHING_READ
    return EXIT_CODES[verdict_of(answer, answer.use).answer]


def slot_of(answer: Answered, use: Use) -> Slot | None:
    """Return the slot a use's verdict is given in."""
    return answers.slot_of(answer.study, use, answer.question.load)


def worse_elsewhere(answer: Answered, use: Use) -> Verdict | None:
    """Return the verdict of another load state that is worse for a use than the one asked for by name."""
    return answers.worse_elsewhere(answer.study, use, answer.question.load)


def checked(answer: Answered) -> Checked:
    """Return what ``check`` shows."""
    verdicts = tuple(verdict_of(answer, use) for use in USES)
    slots = [slot for slot in (slot_of(answer, use) for use in USES) if slot is not None]
    shown = {(verdict.use, verdict.load) for verdict in verdicts}
    differences = [one for one in answer.study.differences if (one.use, one.load) in shown]
    asked = slot_of(answer, answer.use)
    own = next((one for one in differences if one.use == answer.use), None)
    twin = _planned_twin(answer, asked) if own else None
    return Checked(
        rig=answer.reading.rig.header.name or NAMELESS,
        path=answer.question.path,
        stage=answer.study.stage,
        load=asked.load if asked else "",
        date=answer.study.judged_on.isoformat(),
        is_ticked=answer.study.is_ticked,
        asked=answer.use,
        units=answer.units,
        problems=answer.reading.problems,
        verdicts=verdicts,
        planned=tuple(one.as_planned for one in differences),
        difference=own.parts if own else (),
        state=state_of(asked) if asked else None,
        state_planned=state_of(twin) if twin else None,
        findings=_apart(finding for slot in slots for finding in slot.findings),
        accepted=_apart(finding for slot in slots for finding in slot.accepted),
        line_of=_line_of(answer.reading),
        worse=worse_elsewhere(answer, answer.use),
    )


def of_chapter(shown: Checked, word: str) -> Checked:
    """Return an answer with the findings of one chapter only."""
    return replace(
        shown,
        findings=tuple(one for one in shown.findings if one.code.startswith(f"{word}/")),
        accepted=tuple(one for one in shown.accepted if one.code.startswith(f"{word}/")),
    )


def _planned_twin(answer: Answered, slot: Slot | None) -> Slot | None:
    if slot is None:
        return None
    key = (slot.number, slot.load, slot.use)
    return next((one for one in answer.study.planned() if (one.number, one.load, one.use) == key), None)


def _apart(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(dict.fromkeys(findings))


def _line_of(reading: Reading) -> Callable[[str], int | None]:
    document = reading.document
    return lambda path: document.spot(as_written(document, path)).line if path else None


def state_of(slot: Slot) -> State | None:
    """Return the weights of a slot; None where they could not be worked out."""
    result = slot.weight
    if result is None:
        return None
    return State(
        stage=slot.stage,
        load=slot.load,
        is_ticked=slot.is_ticked,
        gross=result.gross.band,
        tongue=result.tongue.band,
        share=result.share.band,
        on_wheels=result.on_wheels.band,
        axles=tuple(axle.band for axle in result.axles),
        left=result.left.band,
        right=result.right.band,
        centre=(result.centre_x.band, result.centre_y.band, result.centre_z.band),
        unlisted=tuple(named(path) for path in result.gross.unknown),
    )


def weighed(answer: Answered) -> Weighed:
    """Return what ``weight`` shows: one row for each stage and load state, whatever the uses it is judged for."""
    states: dict[tuple[str, str, bool], State] = {}
    loads = [load.name for load in answer.reading.rig.loads if answer.question.load in {"", load.name}]
    for slot in answer.study.slots:
        state = state_of(slot)
        if state is not None and slot.load in loads:
            states.setdefault((slot.stage, slot.load, slot.is_ticked), state)
    asked = slot_of(answer, answer.use)
    return Weighed(
        rig=answer.reading.rig.header.name or NAMELESS,
        path=answer.question.path,
        stage=answer.study.stage,
        load=asked.load if asked else "",
        date=answer.study.judged_on.isoformat(),
        units=answer.units,
        problems=answer.reading.problems,
        ticked=tuple(state for state in states.values() if state.is_ticked),
        planned=tuple(state for state in states.values() if not state.is_ticked),
        weigh_next=weigh_next(asked),
        wheels=wheel_sentences(asked, answer.units),
        parked=parked_sentences(answer.study.asked_slots(), answer.units),
        compared=compared_sentences(answer.study.slots, answer.units),
    )
