"""The page of ``boxwright working``: the formula of a number, the numbers put in, the result, the source.

For a finding's code it is how each finding of that code was reached.
"""

from __future__ import annotations

from boxwright.book.answer import slots_for_each_use
from boxwright.book.line_numbers import with_lines
from boxwright.book.reasons import in_print, reason_of
from boxwright.book.slow_workings import slow_workings
from boxwright.book.traced import calls_of
from boxwright.cli.asked import Answered
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, plain, wrapped
from boxwright.study.slots import Slot
from boxwright.study.working import numbers, working

FURTHER = "    "
"""How much deeper the further lines of a long formula stand."""


def page(answer: Answered, number: str, columns: int) -> list[Line]:
    """Return the working of one number of the slot asked for."""
    slots = slots_for_each_use(answer.study, answer.use, answer.question.load)
    if not slots:
        raise NothingAsked("no load state of this file is judged for anything, so there is no number to work out")
    slot, wanted = _slot_with(number, answer, slots)
    if "/" in number:
        texts = _reasons(answer, slot, number)
    else:
        slow = slow_workings(answer.reading.rig, slot)
        each = [slow[one](answer.units) if one in slow else working(slot, one, answer.units) for one in wanted]
        texts = [text for one, lines in zip(wanted, each, strict=True)
                 for text in (*((f"{one}:",) if len(wanted) > 1 else ()),
                              *with_lines(lines, answer.reading.document))]  # fmt: skip
    when = "today as ticked" if slot.is_ticked else "as planned"
    title = f"{number}: {answer.reading.rig.header.name}, {when}, stage {slot.stage}, load {slot.load}"
    lines = [*(plain(piece, "head") for piece in wrapped(title, columns)), ()]
    for text in texts:
        if not text:
            lines += [()] if lines[-1] else []
            continue
        bare = text.lstrip(" ")
        indent = " " * (len(text) - len(bare))
        first, *rest = wrapped(bare, columns - len(indent) - len(FURTHER))
        lines += [plain(indent + first), *(plain(indent + FURTHER + piece) for piece in rest)]
        if bare.startswith("("):  # the source closes a step
            lines.append(())
    return lines[:-1] if lines[-1] == () else lines


def _slot_with(number: str, answer: Answered, slots: tuple[Slot, ...]) -> tuple[Slot, list[str]]:
    """Return the first slot that has a number, or a finding of a code, with all that go by that name there.

    A number that each place or heater has its own of may be asked for without it: then it is each of them. Refuses
    what no slot has.
    """
    known = [_has(answer, slot, is_finding="/" in number) for slot in slots]
    for slot, those in zip(slots, known, strict=True):
        wanted = [number] if number in those else [one for one in those if one.startswith(f"{number} ")]
        if wanted:
            return slot, wanted
    every = list(dict.fromkeys(one for those in known for one in those))
    what = "finding of any use" if "/" in number else "number with a working"
    return slots[0], [must_be_one_of(number, every, what)]


def _has(answer: Answered, slot: Slot, is_finding: bool) -> tuple[str, ...]:
    if is_finding:
        return tuple(one.code for one in (*slot.findings, *slot.accepted))
    return (*numbers(slot), *slow_workings(answer.reading.rig, slot))


def _reasons(answer: Answered, slot: Slot, code: str) -> list[str]:
    """Return how each finding of a code was reached in a slot, line by line, its sentence first."""
    said = (*slot.findings, *slot.accepted)
    reading, header = answer.reading, answer.reading.rig.header
    calls = calls_of(reading.rig, answer.study.judged_on, slot, answer.question.vehicle, answer.study.judged_on)
    texts: list[str] = []
    for one in said:
        if one.code == code:
            reason = reason_of(one, slot, reading.document, calls, answer.units, header.units)
            texts += [one.says, "", *in_print(reason), ""]
    return texts
